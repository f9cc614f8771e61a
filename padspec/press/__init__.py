"""Colours of the screen in, inks of a press out, by its profile."""
