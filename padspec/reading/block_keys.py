"""Which settings each kind of block takes, as the schema lists them."""

from functools import lru_cache

from padspec.reading.checking.schemas import BLOCKS, schema_data


@lru_cache(maxsize=1)
def block_keys() -> dict[str, tuple[str, ...]]:
    """The keys of each kind of block, in the schema's order."""
    return {kind: tuple(schema_data(f"block-{kind}")["properties"]) for kind in BLOCKS}
