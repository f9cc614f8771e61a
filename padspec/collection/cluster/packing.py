"""A unit's source packed up for another machine: every file of the maker's that the unit may come to read.

Which it reads is known only once it has read them. But each is named by a text that stands in the design, its
studio, its layout or what is varied, and is looked for from the file that the text stands in: whatever such a text
leads to is packed, a picture as well as a heading that happens to be the name of a file.
"""

from collections.abc import Iterable, Iterator
from contextlib import suppress
from functools import lru_cache
from pathlib import PurePosixPath

from padspec.base.errors import ProblemsError
from padspec.collection.source import Folder, Packed
from padspec.reading.defaults import defaults
from padspec.reading.gather import STUDIO_FILE
from padspec.reading.parsing.yaml_reader import decode, parse_leniently
from padspec.reading.tree import Mapping, scalars
from padspec.reading.variation import Variation
from padspec.resolve.lettering_fonts import FILE_ENDINGS
from padspec.workspace import FolderWorkspace, Workspace, joined

#: Where a font is looked for that has what another lacks.
FONTS = "fonts"


def packed(source: Folder, path: str, variations: tuple[Variation, ...]) -> Packed:
    """The files that variants of a design may read. What is missing or cannot be read here is left out.

    Raises ProblemsError where the date that the surroundings name is none.
    """
    workspace = FolderWorkspace(source.root)
    box = _Box(workspace)
    roots = [variation.settings for variation in variations]
    roots += box.documents([path])
    roots += box.documents(_above(path, STUDIO_FILE))
    roots += box.documents(place for name in _layouts(roots) for place in _above(path, f"layouts/{name}.yaml"))
    for file in dict.fromkeys(file for root in roots for file in named_paths(root)):
        box.put(file)
    for ending in FILE_ENDINGS:
        for file in workspace.neighbours(FONTS, ending):
            box.put(file)
    return Packed(tuple(sorted(box.files.items())), workspace.date())


class _Box:
    """Files as they are taken from a folder, each once."""

    def __init__(self, workspace: Workspace) -> None:
        self._workspace = workspace
        self.files: dict[str, bytes] = {}

    def put(self, path: str) -> bytes | None:
        """Take a file, if there is one and it can be read."""
        if path not in self.files:
            # What is wrong with a file is told by whoever needs it.
            with suppress(ProblemsError):
                if self._workspace.is_file(path):
                    self.files[path] = self._workspace.read(path)
        return self.files.get(path)

    def documents(self, paths: Iterable[str]) -> list[Mapping]:
        """Take documents; what stands in them, as far as they can be read."""
        taken = [(path, self.put(path)) for path in paths]
        roots = [_root(data, path) for path, data in taken if data is not None]
        return [root for root in roots if root is not None]


def _above(path: str, name: str) -> list[str]:
    """Where a file of this name would hold for another: in its folder and those above."""
    return [str(folder / name) for folder in PurePosixPath(path).parents]


def _layouts(roots: list[Mapping]) -> tuple[str, ...]:
    """Every layout that is named anywhere, and the usual one."""
    names = [root.text("layout") for root in [*roots, defaults("design")]]
    return tuple(dict.fromkeys(name for name in names if name and "/" not in name))


@lru_cache(maxsize=64)
def _root(data: bytes, file: str) -> Mapping | None:
    """A document's tree: most units of a build are of one studio, and many of one design."""
    try:
        return parse_leniently(decode(data, file), file)[0]
    except ProblemsError:
        return None


def named_paths(root: Mapping) -> Iterator[str]:
    """The path that each text of a tree would mean."""
    for scalar in scalars(root):
        with suppress(ValueError):
            yield joined(scalar.place.file, scalar.text)
