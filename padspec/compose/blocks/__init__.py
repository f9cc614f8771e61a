"""One small file a kind of block: the height it needs, and what it draws in the room it is given."""
