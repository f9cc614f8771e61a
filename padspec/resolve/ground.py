"""The background of a face: its colour and its pattern.

What a maker leaves out is filled in here by kind of pattern, so that nothing in a Pattern is open.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from math import sqrt
from typing import Literal, cast

from padspec.art.errors import ArtError
from padspec.base.colour import Colour
from padspec.base.geometry import Size
from padspec.base.numbers import mm_text, round_up
from padspec.reading.defaults import defaults
from padspec.reading.tree import Entry, Mapping, Sequence
from padspec.resolve.colours import Palette
from padspec.resolve.drafts import bundle_at
from padspec.resolve.pictures import PictureWish, PlacedPicture, prepare
from padspec.resolve.settings import Settings, merge

Kind = Literal[
    "split",
    "gradient",
    "stripes",
    "dots",
    "gingham",
    "checks",
    "scallop",
    "wave",
    "lattice",
    "sprinkle",
    "motif",
]
Phase = Literal["centred", "run-on", "out-of-step"]
#: The bytes of the picture that a bundle names under `file`; None where it is missing, which has then been told.
ArtBytes = Callable[[Settings], bytes | None]

MOST_MARKS = 20_000


@dataclass(frozen=True, slots=True)
class Usual:
    """The keys that a kind of pattern uses, what `auto` means for it, and the most squares of its size that a face
    may hold: fewer where each bears more than one mark.
    """

    keys: tuple[str, ...]
    size: float = 0.0
    mark: float = 0.5
    angle: float = 0.0
    most: int = MOST_MARKS


_COLOURED = ("colour", "lighten", "darken")
_REPEATED = (*_COLOURED, "size", "mark", "angle", "phase")

#: One line for each kind of pattern.
KINDS: dict[Kind, Usual] = {
    "split": Usual((*_COLOURED, "mark", "angle"), angle=90.0),
    "gradient": Usual((*_COLOURED, "angle"), angle=90.0),
    "stripes": Usual(_REPEATED, size=6.0, mark=0.4),
    "dots": Usual(_REPEATED, size=6.0, mark=0.4),
    "gingham": Usual(_REPEATED, size=9.0),
    "checks": Usual((*_COLOURED, "size", "angle", "phase"), size=12.0, most=10_000),
    "scallop": Usual(_REPEATED, size=13.0, mark=0.065, most=5_000),
    "wave": Usual(_REPEATED, size=7.0, mark=0.34),
    "lattice": Usual(_REPEATED, size=11.0, mark=0.07),
    "sprinkle": Usual((*_COLOURED, "colours", "size", "mark", "seed", "phase"), size=6.5, mark=0.7, most=6_000),
    "motif": Usual(
        ("file", "size", "mark", "angle", "phase", "seed", "jitter", "turn"), size=18.0, mark=0.6, most=2_000
    ),
}


@dataclass(frozen=True, slots=True)
class Pattern:
    """A pattern on the ground: `size` centre to centre, `mark` the share of it that is coloured, `angle` in
    degrees clockwise.

    `colours` are further colours beside the first; `seed` sets what is scattered; of a motif, `picture` is what is
    repeated, `turn` by how many degrees either way a copy may be turned and `jitter` which share of its free room
    it may use up (0 to 1).
    """

    kind: Kind
    colour: Colour
    size: float
    mark: float
    angle: float
    phase: Phase = "centred"
    colours: tuple[Colour, ...] = ()
    seed: int = 1
    turn: float = 0.0
    jitter: float = 0.0
    picture: PlacedPicture | None = None


@dataclass(frozen=True, slots=True)
class Ground:
    """The background of the face."""

    colour: Colour
    pattern: Pattern | None


def read_ground(own: Settings, palette: Palette, trim: Size, art_bytes: ArtBytes) -> Ground:
    """The ground that a design asks for; `art_bytes` reads the picture of a motif."""
    colour = palette.colour(own, "colour")
    if not isinstance(own.node("pattern"), Mapping):
        return Ground(colour, None)
    bundle = merge(bundle_at(defaults("design", "ground"), "pattern"), own.section("pattern").bundle)
    written = Settings(bundle, own.troubles)
    settings = Settings(merge(defaults("design", "ground", "pattern"), bundle), own.troubles)
    _refuse_unused(written)
    pattern = _pattern(settings, palette, trim)
    if pattern.kind != "motif":
        return Ground(colour, pattern)
    return Ground(colour, _with_picture(pattern, settings, art_bytes))


def _pattern(settings: Settings, palette: Palette, trim: Size) -> Pattern:
    kind = cast(Kind, settings.text("kind"))
    usual = KINDS[kind]
    return Pattern(
        kind=kind,
        colour=palette.colour(settings, "colour"),
        size=_size(settings, usual, trim),
        mark=usual.mark if _auto(settings, "mark") else settings.share("mark"),
        angle=usual.angle if _auto(settings, "angle") else settings.number("angle"),
        phase=cast(Phase, settings.text("phase")),
        colours=_colours(settings, palette),
        seed=settings.integer("seed"),
        turn=settings.number("turn"),
        jitter=settings.share("jitter"),
    )


def _refuse_unused(written: Settings) -> None:
    """A key beside the kind that does nothing for it is a slip. One that the studio sets for a kind of its own,
    where the design names another, is not.
    """
    kind = cast(Kind, written.text("kind"))
    used = KINDS[kind].keys
    for entry in written.bundle.entries:
        beside = entry.key_place.file == written.place("kind").file
        if beside and entry.key not in ("kind", *used):
            *most, last = (key for key in used if key not in ("lighten", "darken"))
            mend = f"Leave it out; {kind} takes {', '.join(most)} and {last}."
            written.troubles.add(entry.key_place, f"A pattern of kind {kind} has no {entry.key}.", mend)


def _auto(settings: Settings, key: str) -> bool:
    return settings.text(key) == "auto"


def _size(settings: Settings, usual: Usual, trim: Size) -> float:
    """A pattern too fine for its face would make files that no printer takes: `auto` is larger on a poster, and
    what is written is refused.
    """
    least = round_up(sqrt(trim.width * trim.height / usual.most), 0.1)
    if _auto(settings, "size") or "size" not in usual.keys:
        return max(usual.size, least)
    size = settings.length("size")
    if size < sqrt(trim.width * trim.height / usual.most):
        settings.troubles.add(
            settings.place("size"),
            f"Marks {mm_text(size)} apart would be more than {usual.most} on a face of this size.",
            f"Write {mm_text(least)} or more.",
        )
    return max(size, least)


def _colours(settings: Settings, palette: Palette) -> tuple[Colour, ...]:
    node = settings.node("colours")
    items = node.items if isinstance(node, Sequence) else ()
    single = (Mapping((Entry("colour", item.place, item),), item.place) for item in items)
    return tuple(palette.colour(Settings(bundle, settings.troubles), "colour") for bundle in single)


def _with_picture(pattern: Pattern, settings: Settings, art_bytes: ArtBytes) -> Pattern:
    """The pattern with its picture at the size at which it is placed."""
    if not settings.has("file"):
        message = "A motif repeats a picture of yours, and none is named."
        settings.troubles.add(settings.place("kind"), message, "Name one beside it: file: art/leaf.png.")
        return pattern
    data = art_bytes(settings)
    if data is None:
        return pattern
    side = pattern.size * pattern.mark
    wish = PictureWish(settings.text("file"), side, side, "auto", trim_empty=True, keep_vector=False, frame=0.0)
    try:
        return replace(pattern, picture=prepare(data, wish))
    except ArtError as error:
        settings.troubles.add(settings.place("file"), error.message, error.mend)
        return pattern
