"""What a batch costs line by line, what to ask for a pad, and what other batch sizes would come to."""
