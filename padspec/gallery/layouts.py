"""The layouts on show: the built-in ones and the maker's own, in the order of the book."""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import PurePosixPath

from padspec.base.geometry import Size
from padspec.base.place import Place
from padspec.base.units import parse_length
from padspec.gallery.wish import Trims, refuse_unknown
from padspec.reading.describe_layout import summary_of
from padspec.reading.gather import read_layout
from padspec.reading.tree import Mapping, Node, Scalar, Sequence
from padspec.resources import layout_names
from padspec.workspace import Workspace

_FOLDER, _ENDING = "layouts", ".yaml"
#: A layout that states no trim is shown at this one, the commonest list pad.
_USUAL_TRIM = Size(90.0, 190.0)


@dataclass(frozen=True, slots=True)
class ShownLayout:
    """A layout: what it is for, the trims it is shown at, and the kinds of block on it, each once."""

    name: str
    about: str
    trims: tuple[Size, ...]
    kinds: frozenset[str]


def shown_layouts(
    wished: tuple[str, ...] | None, trims: Trims, design_path: str, workspace: Workspace
) -> tuple[ShownLayout, ...]:
    """The layouts that a design at this path could name, the tallest leaves first.

    Raises ProblemsError for a name that is not known and for a file that cannot be read.
    """
    known = tuple(sorted({*layout_names(), *_own_names(workspace)}))
    refuse_unknown("--layouts", wished or (), known)
    found = [_shown(name, trims, design_path, workspace) for name in wished or known]
    return tuple(sorted(found, key=lambda layout: (-layout.trims[0].height, -layout.trims[0].width, layout.name)))


def _own_names(workspace: Workspace) -> tuple[str, ...]:
    return tuple(PurePosixPath(path).stem for path in workspace.neighbours(_FOLDER, _ENDING))


def _shown(name: str, trims: Trims, design_path: str, workspace: Workspace) -> ShownLayout:
    root = read_layout(Scalar(name, Place("--layouts", 0, 0)), design_path, workspace).root
    summary = summary_of(root)
    own = tuple(Size(parse_length(width), parse_length(height)) for width, height in summary.trims)
    match trims:
        case "first":
            sizes = own[:1]
        case "own":
            sizes = own
        case _:
            sizes = trims
    return ShownLayout(name, summary.about, sizes or (_USUAL_TRIM,), frozenset(_kinds(root.get("face"))))


def _kinds(face: Node | None) -> Iterator[str]:
    """The kinds of the blocks in a list of blocks, what they hold included."""
    for item in face.items if isinstance(face, Sequence) else ():
        for entry in item.entries if isinstance(item, Mapping) else ():
            yield entry.key
            if isinstance(entry.value, Mapping):
                yield from _kinds(entry.value.get("holds"))
