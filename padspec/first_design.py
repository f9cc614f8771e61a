"""A first design from nothing but a picture: written, checked, mended until it passes, and explained.

In goes a picture inside a project folder; out comes the text of a design whose colours, sizes and heading a
maker would keep. What the checks propose is taken up here, again and again, so that it passes them all.
"""

import re
from dataclasses import dataclass, replace

from padspec.base.errors import Problem, ProblemsError
from padspec.base.findings import Finding
from padspec.base.numbers import number_text
from padspec.base.place import Place
from padspec.base.units import is_share, parse_length
from padspec.design_text import Values, key_at, write_design
from padspec.pipeline import Pad, make
from padspec.reading.describe_layout import summary_of
from padspec.reading.gather import Documents, gather
from padspec.reading.tree import Mapping, Node, Scalar, Sequence
from padspec.resolve.blocks.art import Art
from padspec.resolve.blocks.block import Block
from padspec.resolve.blocks.heading import Heading
from padspec.resolve.blocks.rows import Rows
from padspec.resolve.design import Design, blocks
from padspec.resolve.resolve import resolve
from padspec.sheet.tile import tile
from padspec.workspace import MemoryWorkspace, Workspace

#: Trims that sit well on office sheets, best first; the first with the most faces a sheet is taken.
TRIMS = (("90 mm", "190 mm"), ("3 1/4 in", "7 1/2 in"))
#: `new` makes a picture with few pixels smaller, but no smaller than this share of the trim's height.
LEAST_ART_SHARE = 0.12
_ROUNDS = 8
#: A picture this many times as wide as high is a frieze rather than a figure.
WIDE = 2.2
#: Names that cameras and scanners give say nothing about the picture.
_CAMERA = re.compile(
    r"(img|dsc|dscn|dscf|pxl|scan|image|photo|picture|screenshot|untitled)?[ \d()]*", re.IGNORECASE
)


@dataclass(frozen=True, slots=True)
class FirstWish:
    """What the maker says about the first design; an empty text leaves it to padspec."""

    art: str
    name: str = ""
    heading: str = ""
    layout: str = ""
    width: str = ""
    height: str = ""
    colourway: str = ""


@dataclass(frozen=True, slots=True)
class FirstDesign:
    """The text of the design and what it makes."""

    text: str
    pad: Pad


@dataclass(frozen=True, slots=True)
class _Draft:
    """A design that is not looked over yet: what its trim is chosen by, and its defaults are taken from."""

    documents: Documents
    design: Design
    faces: int


def first_design(path: str, wish: FirstWish, workspace: Workspace) -> FirstDesign:
    """Write the design that would stand at `path`.

    Raises ProblemsError where the picture or a wish cannot be used; a problem's place is then the key that
    holds it, such as `trim.width`.
    """
    asked = bool(wish.width and wish.height)
    trim = (wish.width, wish.height) if asked else TRIMS[0]
    trials = {trim: _trial(path, _values(wish, trim), workspace)}
    if not asked:
        wanted = _trims(trials[trim][1].documents.layout.root)
        trials = {t: trials.get(t) or _trial(path, _values(wish, t), workspace) for t in wanted}
    values, draft = max(trials.values(), key=lambda trial: trial[1].faces)
    written_out = _written_out(draft, with_colours=not wish.colourway)
    return _settled(path, {**values, **written_out}, workspace, keep_trim=asked)


def title_from(stem: str) -> str:
    """A name from a file's stem, or an empty text where it says nothing.

    >>> title_from("night_moth-02"), title_from("IMG_2034")
    ('Night moth 02', '')
    """
    words = re.sub(r"[-_.\s]+", " ", stem).strip()
    return "" if _CAMERA.fullmatch(words) else words[0].upper() + words[1:]


def _trial(path: str, values: Values, workspace: Workspace) -> tuple[Values, _Draft]:
    return values, _draft(path, values, workspace)


def _trims(layout: Mapping) -> tuple[tuple[str, str], ...]:
    """The trims to choose among: the one that the layout is best at, or padspec's own where it takes those."""
    stated = summary_of(layout).trims
    return stated[:1] if stated and stated[0] not in TRIMS else TRIMS


def _values(wish: FirstWish, trim: tuple[str, str]) -> Values:
    """What the maker said and nothing else; the rest is the studio's or the schema's."""
    stem = wish.art.rpartition("/")[2].rpartition(".")[0]
    kind = "notes" if wish.layout == "ruled" else "list"
    title = wish.name or f"{title_from(stem) or 'New'} {kind}"
    values: Values = {
        ("pad",): title,
        ("trim", "width"): trim[0],
        ("trim", "height"): trim[1],
        ("art", "file"): wish.art,
    }
    if wish.layout:
        values[("layout",)] = wish.layout
    if wish.colourway:
        values[("colourway",)] = wish.colourway
    if wish.heading:
        values[("heading", "text")] = wish.heading
    return values


def _settled(path: str, values: Values, workspace: Workspace, keep_trim: bool) -> FirstDesign:
    """Take up remedies until nothing more is proposed; a trim that the maker asked for stays as it is."""
    pad = _make(path, values, workspace)
    for _ in range(_ROUNDS):
        changes = [change for finding in pad.findings for change in _taken_up(finding, pad, keep_trim)]
        mended = {**values, **dict(changes)}
        if mended == values:
            break
        values = mended
        pad = _make(path, values, workspace)
    return FirstDesign(write_design(values), pad)


def _make(path: str, values: Values, workspace: Workspace) -> Pad:
    try:
        return make(path, _with_design(path, values, workspace))
    except ProblemsError as error:
        raise ProblemsError(*(_by_key(problem, path, values) for problem in error.problems)) from None


def _draft(path: str, values: Values, workspace: Workspace) -> _Draft:
    folder = _with_design(path, values, workspace)
    try:
        documents = gather(path, folder)
        design = resolve(documents, folder)
    except ProblemsError as error:
        raise ProblemsError(*(_by_key(problem, path, values) for problem in error.problems)) from None
    sheet = tile(design)
    return _Draft(documents, design, sheet.n_up if sheet else 0)


def _with_design(path: str, values: Values, workspace: Workspace) -> Workspace:
    return MemoryWorkspace({path: write_design(values).encode("utf-8")}, behind=workspace)


def _by_key(problem: Problem, path: str, values: Values) -> Problem:
    """A fault of the design told by the key alone: there is no file yet whose line could be shown."""
    key = key_at(values, problem.place.line) if problem.place.file == path else ()
    return replace(problem, place=Place(".".join(key), 0, 0)) if key else problem


def _written_out(draft: _Draft, with_colours: bool) -> Values:
    """The choices that a maker will want to see and change, written down; what the studio sets stays there.

    The colours of a colourway that was asked for by name go on following that name.
    """
    design = draft.design
    colours = design.palette if with_colours else ()
    found = blocks(design)
    chosen: Values = {
        ("leaves",): "50",
        ("layout",): design.layout,
        **{("palette", name): colour.hex for name, colour in colours},
    }
    if any(isinstance(block, Art) and block.fills == "block" for block in found):
        chosen |= {
            ("art", "height"): "30 %",
            ("ground", "pattern", "kind"): "dots",
            ("ground", "pattern", "size"): "6 mm",
        }
    headings = _headed(draft)
    if headings:
        heading = next(block for block in found if isinstance(block, Heading) and block.called == headings[0])
        # One text would stand at the head of each list.
        chosen |= {("heading", "text"): heading.text} if len(headings) == 1 else {}
        chosen |= {
            ("heading", "font"): "Fredoka",
            ("heading", "size"): f"{number_text(heading.size)} mm",
        }
    rows = [block for block in found if isinstance(block, Rows)]
    if rows:
        chosen |= {("rows", "pitch"): "8 mm", ("rows", "weight"): "0.3 mm"}
    if any(block.squares for block in rows):
        chosen[("rows", "checkbox")] = "4 mm"
    if any(_spans_panel(block, design) for block in found):
        # A low, wide picture would cover both of the panel's upper corners: it stands on its edge instead.
        chosen[("art", "overlap")] = "0 mm"
    studio, layout = draft.documents.studio.root, draft.documents.layout.root.get("face")
    return {
        path: value
        for path, value in chosen.items()
        if not _set_in(studio, path) and not (path != ("heading", "text") and _laid(layout, path))
    }


def _headed(draft: _Draft) -> list[str]:
    """The blocks of kind heading, each by its name in the layout."""
    named = (block.called for block in blocks(draft.design) if isinstance(block, Heading))
    kinds = _kinds(draft.documents.layout.root.get("face"))
    return [name for name in dict.fromkeys(named) if kinds.get(name) == "heading"]


def _kinds(face: Node | None) -> dict[str, str]:
    """The kind of each block of a layout, by its name."""
    found: dict[str, str] = {}
    for item in face.items if isinstance(face, Sequence) else ():
        if isinstance(item, Mapping) and isinstance(item.entries[0].value, Mapping):
            body = item.entries[0].value
            name = body.get("id")
            found |= {name.text: item.entries[0].key} if isinstance(name, Scalar) else {}
            found |= _kinds(body.get("holds"))
    return found


def _laid(face: Node | None, path: tuple[str, ...]) -> bool:
    """Whether a block of the layout sets a key itself, which a setting for all of its kind would override."""
    if isinstance(face, Sequence):
        return any(_laid(item, path) for item in face.items)
    if not isinstance(face, Mapping):
        return False
    kind = face.entries[0]
    body = kind.value
    if not isinstance(body, Mapping):
        return False
    return (kind.key == path[0] and _set_in(body, path[1:])) or _laid(body.get("holds"), path)


def _spans_panel(block: Block, design: Design) -> bool:
    return isinstance(block, Art) and block.width > WIDE * block.height and block.width > 0.8 * design.trim.width


def _set_in(root: Mapping, path: tuple[str, ...]) -> bool:
    """Whether a file sets a key, or something whole above it (`pattern: none`)."""
    node: Node | None = root
    for key in path:
        if not isinstance(node, Mapping):
            return node is not None
        node = node.get(key)
    return node is not None


def _taken_up(finding: Finding, pad: Pad, keep_trim: bool) -> list[tuple[tuple[str, ...], str]]:
    if finding.remedy is None or (keep_trim and finding.check == "sheet-fit"):
        return []
    fills = any(isinstance(block, Art) and block.fills == "face" for block in blocks(pad.design))
    if finding.check == "art-resolution" and not finding.remedy.changes and not fills:
        # Too few pixels for any size that would serve: as small as a picture may be, and the finding stays.
        return [(("art", "height"), f"{LEAST_ART_SHARE * 100:.0f} %")]
    return [(_home(path, pad), _bounded(path, value, pad)) for path, value in finding.remedy.changes]


def _home(path: tuple[str, ...], pad: Pad) -> tuple[str, ...]:
    """Squares that follow the rules go on doing so: their colour is mended where both stand, in the palette."""
    studio = pad.documents.studio.root
    ruled_by_palette = not _set_in(studio, ("rows", "colour")) and not _set_in(studio, path)
    return ("palette", "rule") if path == ("rows", "checkbox-colour") and ruled_by_palette else path


def _bounded(path: tuple[str, ...], value: str, pad: Pad) -> str:
    if path == ("art", "height") and not is_share(value):
        least = LEAST_ART_SHARE * pad.design.trim.height
        return value if parse_length(value) >= least else f"{LEAST_ART_SHARE * 100:.0f} %"
    return value
