"""The pattern book: every layout on a choice of grounds, made in memory and laid out to be looked at."""
