"""Ground in, nodes out: the background out to the bleed, and one small file a kind of pattern."""
