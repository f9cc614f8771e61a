"""Whether a design is sure to be the same on both sides, found without making it.

What a design is made from is its documents and the files that these name, beside the maker's folder of fonts.
Where the documents read alike, every text in them is taken for the name of a file: where no such file differs,
nothing that the design is made from does.
"""

from collections.abc import Iterable

from padspec.base.errors import ProblemsError
from padspec.collection.cluster.packing import named_paths
from padspec.collection.records.digests import Digests
from padspec.collection.records.variation_digest import settings_digest
from padspec.collection.variants import Member
from padspec.reading.document import Document
from padspec.reading.gather import Documents, gather
from padspec.workspace import Workspace

_FONTS = "fonts"


class Alike:
    """Two workspaces whose files are compared, each read once."""

    __slots__ = ("_before", "_designs", "_new", "_now", "_old")

    def __init__(self, before: Workspace, now: Workspace) -> None:
        self._before, self._now = before, now
        self._old, self._new = Digests(before), Digests(now)
        self._designs: dict[tuple[str, str], bool] = {}

    def members(self, before: Member, now: Member) -> bool:
        """Whether two members are made of the same, byte for byte; no where either cannot be read."""
        old, new = before.variation, now.variation
        if (before.path, old.file) != (now.path, new.file) or settings_digest(old) != settings_digest(new):
            return False
        # Variants of a design read the same files, but for those that their own settings name.
        key = now.path, new.settings.text("layout")
        if key not in self._designs:
            self._designs[key] = self._designs_alike(now)
        return self._designs[key] and self._files_alike(named_paths(new.settings))

    def _designs_alike(self, member: Member) -> bool:
        try:
            old = _documents(gather(member.path, self._before, member.variation))
            new = _documents(gather(member.path, self._now, member.variation))
        except ProblemsError:
            return False
        if [(document.file, document.text) for document in old] != [(one.file, one.text) for one in new]:
            return False
        fonts = (path for workspace in (self._before, self._now) for path in workspace.neighbours(_FONTS, ""))
        return self._files_alike((*fonts, *(path for document in new for path in named_paths(document.root))))

    def _files_alike(self, paths: Iterable[str]) -> bool:
        try:
            return all(self._old.of(path) == self._new.of(path) for path in sorted(set(paths)))
        except ProblemsError:
            return False


def _documents(documents: Documents) -> tuple[Document, ...]:
    return documents.design, documents.studio, documents.layout
