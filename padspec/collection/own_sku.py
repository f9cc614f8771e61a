"""The SKUs that designs give themselves, read without resolving them."""

from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path

from padspec.base.errors import ProblemsError
from padspec.collection.targets import Target
from padspec.resolve.naming import sku_from
from padspec.workspace import FolderWorkspace


def own_skus(targets: Sequence[Target]) -> dict[tuple[Path, str], str]:
    """The SKU of every design among some pads, by project and path; of its name where it is unreadable."""
    return {key: _own_sku(*key) for key in dict.fromkeys((target.root, target.path) for target in targets)}


def _own_sku(root: Path, path: str) -> str:
    from padspec.reading.parsing.yaml_reader import decode, parse_leniently

    named = ""
    with suppress(ProblemsError):
        tree, _ = parse_leniently(decode(FolderWorkspace(root).read(path), path), path)
        named = tree.text("sku") if tree else ""
    return sku_from(named, path)
