"""Which settings each kind of block takes, as the schema lists them."""

import json
from functools import lru_cache

from padspec.resources import schema_text

BLOCK_KINDS = ("art", "heading", "panel", "rows", "space")


@lru_cache(maxsize=1)
def block_keys() -> dict[str, tuple[str, ...]]:
    """The keys of each kind of block, in the schema's order."""
    schema = json.loads(schema_text("common"))
    return {kind: tuple(schema["$defs"][kind]["properties"]) for kind in BLOCK_KINDS}
