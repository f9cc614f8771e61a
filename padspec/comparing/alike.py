"""Whether a design is sure to be the same on both sides, found without making it.

What a design is made from is its documents and the files that these name, beside the maker's folder of fonts.
Where the documents read alike, every text in them is taken for the name of a file: where no such file differs,
nothing that the design is made from does.
"""

from collections.abc import Iterator

from padspec.base.errors import ProblemsError
from padspec.collection.digests import Digests
from padspec.collection.variants import Member
from padspec.collection.variation_digest import settings_digest
from padspec.reading.gather import Documents, gather
from padspec.reading.tree import Mapping, Node, Scalar, Sequence
from padspec.workspace import Workspace, joined

_FONTS = "fonts"


class Alike:
    """Two workspaces whose files are compared, each read once."""

    __slots__ = ("_before", "_new", "_now", "_old")

    def __init__(self, before: Workspace, now: Workspace) -> None:
        self._before, self._now = before, now
        self._old, self._new = Digests(before), Digests(now)

    def members(self, before: Member, now: Member) -> bool:
        """Whether two members are made of the same, byte for byte; no where either cannot be read."""
        if (before.path, before.variation.file) != (now.path, now.variation.file):
            return False
        if settings_digest(before.variation) != settings_digest(now.variation):
            return False
        try:
            old = gather(before.path, self._before, before.variation)
            new = gather(now.path, self._now, now.variation)
            return _texts(old) == _texts(new) and self._files_alike(new)
        except ProblemsError:
            return False

    def _files_alike(self, documents: Documents) -> bool:
        fonts = {path for workspace in (self._before, self._now) for path in workspace.neighbours(_FONTS, "")}
        paths = fonts.union(_named(documents))
        return all(self._old.of(path) == self._new.of(path) for path in sorted(paths))


def _texts(documents: Documents) -> tuple[tuple[str, str], ...]:
    sides = documents.design, documents.studio, documents.layout
    return tuple((document.file, document.text) for document in sides)


def _named(documents: Documents) -> Iterator[str]:
    """Every path that a text of the documents could mean."""
    roots = documents.design.root, documents.studio.root, documents.layout.root, documents.variation.settings
    for scalar in (scalar for root in roots for scalar in _scalars(root)):
        try:
            yield joined(scalar.place.file, scalar.text)
        except ValueError:
            continue


def _scalars(node: Node) -> Iterator[Scalar]:
    match node:
        case Scalar():
            yield node
        case Sequence():
            for item in node.items:
                yield from _scalars(item)
        case Mapping():
            for entry in node.entries:
                yield from _scalars(entry.value)
