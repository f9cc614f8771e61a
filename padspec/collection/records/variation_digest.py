"""A variation in two digests: what it says, and where it says so."""

import json
from collections.abc import Iterator

from padspec.reading.tree import Mapping, Node, Sequence, as_data
from padspec.reading.variation import Variation
from padspec.workspace import content_digest


def settings_digest(variation: Variation) -> str:
    """Changes when what the variation sets does, whatever lines it stands on."""
    said = [variation.values, variation.sku, variation.name, as_data(variation.settings)]
    return content_digest(json.dumps(said).encode())


def places_digest(variation: Variation) -> str:
    """Changes when anything that the variation sets stands on another line or column."""
    return content_digest(repr(tuple(_places(variation.settings))).encode())


def _places(node: Node) -> Iterator[tuple[int, int]]:
    yield node.place.line, node.place.column
    match node:
        case Mapping():
            for entry in node.entries:
                yield from _places(entry.value)
        case Sequence():
            for item in node.items:
                yield from _places(item)
