"""Cuts that butted leaves share: where they lie, what prints on both sides of them, and what would mend them."""
