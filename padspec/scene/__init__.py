"""The picture as data: a few frozen node kinds, each remembering what caused it."""
