"""A collection as of a git revision and as it is now: what changed, design by design, in words and in pictures."""
