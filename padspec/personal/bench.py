"""A pad made ready for many names: resolved once, its sheet laid out, its faces waiting for their words."""

import re
from collections.abc import Iterator
from collections.abc import Mapping as Cells
from dataclasses import dataclass, replace
from functools import lru_cache
from unicodedata import bidirectional

from padspec.base.errors import Problem, ProblemsError
from padspec.base.geometry import Affine
from padspec.base.place import Place
from padspec.collection.records.fonts_used import fonts_used
from padspec.collection.source import Folder, Source
from padspec.collection.targets import Target
from padspec.compose.lettering.setting import set_line
from padspec.compose.other_words import Faces, Reset, Words
from padspec.draw.volume import Leaf, LetteredLine
from padspec.personal.wish import PersonalWish
from padspec.pipeline import Pad, make
from padspec.reading.checking.settings_check import check_settings
from padspec.reading.fill import columns_in, filled_bundle, filled_text
from padspec.reading.tree import Mapping, Scalar, scalars
from padspec.reading.variation import Variation
from padspec.resolve.blocks.heading import Heading, lines_of
from padspec.resolve.design import Design, blocks
from padspec.resolve.vary import over
from padspec.scene.nodes import Node, Raster, pictures
from padspec.workspace import Workspace

#: So many designs are kept ready where rows differ in more than lettering, and so many bytes of their pictures.
_MOST_READY = 32
_MOST_BYTES = 128 * 2**20
_GAP = re.compile(r"\{[^{}]*\}")
_MARKS = {"L": "\u200e", "R": "\u200f"}


@dataclass(frozen=True, slots=True)
class Pattern:
    """A pad that is to be personalised: its design's path, what is varied, and the settings with gaps."""

    source: Source
    path: str
    variation: Variation
    settings: Mapping

    @classmethod
    def of_pad(cls, wish: PersonalWish, target: Target) -> "Pattern":
        """What a run makes of a pad."""
        return cls(Folder(target.root), target.path, target.variation, wish.settings)

    def of(self, cells: Cells[str, str]) -> Variation:
        """The variation that one row makes of it."""
        settings = over(self.variation.settings, filled_bundle(self.settings, cells))
        file = self.variation.file or self.settings.place.file
        return replace(self.variation, settings=settings, file=file)


@dataclass(frozen=True, slots=True)
class Ready:
    """One design ready for words: every stage of it with the words of one row, the texts with their gaps, and the
    files that it was made from. `key` is what rows have in common that share it, `row` the first of them.
    """

    key: tuple[str, ...]
    row: int
    pad: Pad
    faces: Faces
    texts: tuple[tuple[str, str], ...]

    @property
    def weight(self) -> int:
        """So many bytes its pictures have, each counted once: nearly all that it holds where it has some."""
        images = {p.image.digest: p.image for p in pictures(self.pad.face.scene)}.values()
        return sum(
            len(image.rgb) + len(image.alpha or b"") if isinstance(image, Raster) else len(image.pdf)
            for image in images
        )

    def reset(self, cells: Cells[str, str]) -> Reset:
        """The face with the words of a row."""
        return self.faces.reset(self.words(cells))

    def words(self, cells: Cells[str, str]) -> dict[str, str]:
        """What each changing block says in a row."""
        return {block: lines_of(directed(text, filled_text(text, cells))) for block, text in self.texts}


def directed(template: str, filled: str) -> str:
    """A filled text that runs the way its template does: a name in another script stands where its gap stood.

    A mark that shows nothing says so (UAX #9, section 2.6) where the name would turn the line around.
    """
    way = _way(_GAP.sub("", template))
    if not way or _way(filled) == way:
        return filled
    return f"{_MARKS[way]}{filled}"


def _way(text: str) -> str:
    """The way that the first letter of a text runs, L or R; empty where none tells."""
    found = (bidirectional(character) for character in text)
    strong = next((kind for kind in found if kind in ("L", "R", "AL")), "")
    return "R" if strong == "AL" else strong


class Bench:
    """The designs that rows make of a pattern: one, where they differ in lettering alone."""

    def __init__(self, pattern: Pattern) -> None:
        self._pattern = pattern
        lettering = {scalar.place for scalar in _lettering(pattern.settings)}
        others = [s for s in scalars(pattern.settings) if s.place not in lettering]
        self._columns = tuple(dict.fromkeys(name for scalar in others for name in columns_in(scalar)))
        self._ready: dict[tuple[str, ...], Ready] = {}
        #: Every file that designs were made from, or were to be; and the packaged fonts that their lettering is
        #: set in, or may be. Also those of designs that are not held any more.
        self.seen: dict[str, str] = {}
        self.families: dict[str, None] = {}

    @property
    def is_one_design(self) -> bool:
        """Whether rows differ in their lettering alone."""
        return not self._columns

    def key(self, cells: Cells[str, str]) -> tuple[str, ...]:
        """The cells that decide which design a row is set on."""
        return tuple(cells[name] for name in self._columns)

    def ready(self, cells: Cells[str, str], row: int) -> Ready:
        """The design that is ready for a row; raises ProblemsError where its cells make none.

        One that was made for a later row does not do: what is said of a design must not hang on who was first.
        """
        key = self.key(cells)
        found = self._ready.get(key)
        if found is None or found.row > row:
            found = self._make(cells, key, row)
            self._ready.pop(key, None)
            self._ready[key] = found
            while len(self._ready) > 1 and self._is_full():
                self._ready.pop(next(iter(self._ready)))
        return found

    def _is_full(self) -> bool:
        held = self._ready.values()
        return len(held) > _MOST_READY or sum(ready.weight for ready in held) > _MOST_BYTES

    def _make(self, cells: Cells[str, str], key: tuple[str, ...], row: int) -> Ready:
        workspace = self._pattern.source.open()
        try:
            made = make_ready(self._pattern, cells, workspace, key, row)
        finally:
            # Also of a row at fault: the file that it lacks may come.
            join_seen(self.seen, workspace.seen)
        self.families |= dict.fromkeys(_families(made.pad.design))
        return made


# One process makes many volumes of the same pad. By the next run its files may be others: runs are told apart.
@lru_cache(maxsize=2)
def bench_of(run: str, pattern: Pattern) -> Bench:  # noqa: ARG001 (part of what it is known by)
    """The bench that all work of a run shares in this process."""
    return Bench(pattern)


def join_seen(seen: dict[str, str], more: Cells[str, str]) -> None:
    """Add files with their digests to others; raises ProblemsError where one was another in between."""
    for path, digest in more.items():
        if seen.setdefault(path, digest) != digest:
            message = "It changed while the volumes were made, so that some would show it as it was before."
            raise ProblemsError(Problem(Place(path, 0, 0), message, "Build again."))


def _families(design: Design) -> Iterator[str]:
    yield from fonts_used(design)
    for block in blocks(design):
        if isinstance(block, Heading):
            yield from block.font.fallbacks


def make_ready(
    pattern: Pattern, cells: Cells[str, str], workspace: Workspace, key: tuple[str, ...], row: int
) -> Ready:
    """A pattern with the words of one row at every stage; raises ProblemsError where its cells make no design."""
    # What stands in gaps is known only now, so that only now the settings can be looked over.
    problems = check_settings(filled_bundle(pattern.settings, cells))
    if problems:
        raise ProblemsError(*problems)
    pad = make(pattern.path, workspace, variation=pattern.of(cells))
    gaps = {scalar.place: scalar.text for scalar in _lettering(pattern.settings) if columns_in(scalar)}
    texts = tuple(
        (block.id, gaps[place])
        for block in blocks(pad.design)
        if isinstance(block, Heading) and (place := pad.design.key(block.id, "text").place) in gaps
    )
    _refuse_unplaced(gaps, {pad.design.key(block, "text").place for block, _ in texts}, pad.design)
    return Ready(key, row, pad, Faces(pad.design, tuple(block for block, _ in texts)), texts)


def _refuse_unplaced(gaps: dict[Place, str], placed: set[Place], design: Design) -> None:
    """Words that no block of the layout sets would be lost in silence."""
    problems = [
        Problem(place, f"The layout {design.layout} has no block for these words.", "Take another layout, or key.")
        for place in gaps
        if place not in placed
    ]
    if problems:
        raise ProblemsError(*problems)


def leaf_of(key: tuple[str, ...], reset: Reset) -> Leaf:
    """A face with its own words, as volumes draw it: lines of glyphs where it is plain, shapes elsewhere.

    `key` is that of its design.
    """
    lines: list[LetteredLine] = []
    nodes: list[Node] = []
    for words in reset.lettering:
        if words.block.arc or words.block.edge is not None:
            nodes += words.nodes
        else:
            lines += _lines(words)
    template = reset.template
    return Leaf((key, template.key), template.under, template.over, tuple(lines), tuple(nodes))


def _lines(words: Words) -> list[LetteredLine]:
    block, size = words.block, words.laid.fitted.size
    return [
        LetteredLine(
            set_line(block.font, line.text, block.tracking), Affine(a=size, d=size, e=x, f=y), block.colour
        )
        for line, (x, y) in zip(words.laid.fitted.lines, words.laid.origins, strict=True)
    ]


def _lettering(settings: Mapping) -> list[Scalar]:
    """The texts of lettering among some settings: of a kind of block, and of one block."""
    kinds = [settings.get(kind) for kind in ("heading", "label", "brand")]
    one_by_one = settings.get("blocks")
    kinds += [entry.value for entry in one_by_one.entries] if isinstance(one_by_one, Mapping) else []
    found = [kind.get("text") for kind in kinds if isinstance(kind, Mapping)]
    return [text for text in found if isinstance(text, Scalar)]
