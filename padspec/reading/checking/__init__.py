"""A tree and its schema in; every fault in plain words, with the nearest mend, out."""
