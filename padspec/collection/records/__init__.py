"""What a build was made from and wrote, kept beside it; why it is stale, and what goes when it is."""
