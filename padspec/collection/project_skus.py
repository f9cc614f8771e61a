"""Every SKU that a project makes: of its designs, and of the variants of each of its collections."""

from contextlib import suppress
from pathlib import Path

from padspec.base.errors import ProblemsError
from padspec.collection.collection_file import COLLECTION_ENDING, COLLECTION_FILE, DESIGN_ENDING
from padspec.collection.own_sku import own_skus
from padspec.collection.targets import Target, targets

#: Folders of a project that hold no designs of the maker's.
_OTHERS = ("out", "node_modules")


def project_skus(root: Path) -> tuple[str, ...]:
    """The SKUs of a project, sorted. A file that cannot be read adds none: sales are entered all the same."""
    found: dict[object, Target] = {}
    for path in _files(root):
        with suppress(ProblemsError):
            found |= {target.key: target for target in targets((str(path),)) if target.root == root}
    own = own_skus(tuple(found.values()))
    return tuple(sorted({one.variation.sku_of(own[one.root, one.path]) for one in found.values()}))


def _files(folder: Path) -> list[Path]:
    """Designs and collections in a folder and below, in order."""
    found = []
    for entry in sorted(folder.iterdir()):
        if entry.is_dir():
            hidden = entry.name.startswith(".") or entry.name in _OTHERS or entry.is_symlink()
            found += [] if hidden else _files(entry)
        elif entry.name == COLLECTION_FILE or entry.name.endswith((COLLECTION_ENDING, DESIGN_ENDING)):
            found.append(entry)
    return found
