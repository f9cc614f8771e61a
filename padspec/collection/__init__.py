"""Which designs are meant, what is stale, and building them."""
