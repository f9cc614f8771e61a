"""One small file a kind of block: what it is once resolved, and how it is read from its settings."""
