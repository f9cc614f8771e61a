"""A composed face with other words on it: what does not hang on them is kept, and only they are set anew.

On a leaf whose lettering changes, everything else hangs on one thing, the height that each text needs. Faces whose
texts need the same heights share a template: all but their lettering, and the seats that it was given.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from padspec.compose.blocks.heading import Laid, draw, lay, need
from padspec.compose.compose import compose
from padspec.compose.face import Face, Seat
from padspec.resolve.blocks.block import Block, Holder
from padspec.resolve.blocks.heading import Heading
from padspec.resolve.design import Design, blocks
from padspec.scene.nodes import Layer, Node, Scene, Shape

#: So many different texts of a block are kept measured.
_MOST_KEPT = 4096
#: So many templates, each of about a million bytes.
_MOST_TEMPLATES = 32


@dataclass(frozen=True, slots=True)
class Template:
    """All of a face but some lettering: what is drawn under it and over it, and its seats by block.

    `key` is what faces of one design have in common that share it: the heights that their texts need.
    """

    key: tuple[tuple[float, bool], ...]
    under: Scene
    over: Scene
    seats: Mapping[str, Seat]


@dataclass(frozen=True, slots=True)
class Words:
    """One block of lettering in its seat, with how its words lie there."""

    block: Heading
    seat: Seat
    laid: Laid

    @property
    def nodes(self) -> tuple[Node, ...]:
        """The lettering drawn."""
        return tuple(node for _, node in draw(self.block, self.seat.room, self.seat.margin).nodes)


@dataclass(frozen=True, slots=True)
class Reset:
    """A face with other words: its template, and each block of lettering in its seat."""

    template: Template
    lettering: tuple[Words, ...]


class Faces:
    """The faces of one design with other texts in some of its blocks of lettering, by their ids."""

    def __init__(self, design: Design, changing: tuple[str, ...]) -> None:
        self._design = design
        found = {block.id: block for block in blocks(design) if isinstance(block, Heading)}
        self._blocks = {name: found[name] for name in changing}
        seats = {seat.block: seat for seat in compose(design).seats}
        self._rooms = {name: (seats[name].room.box.width, seats[name].margin) for name in changing}
        self._measured: dict[tuple[str, str], tuple[Heading, float]] = {}
        self._templates: dict[tuple[tuple[float, bool], ...], Template] = {}

    def design(self, texts: Mapping[str, str]) -> Design:
        """The design with these texts."""
        return replace(self._design, face=_with_texts(self._design.face, texts))

    def reset(self, texts: Mapping[str, str]) -> Reset:
        """The face with a text for each of the changing blocks; what compose gives for `design(texts)`."""
        measured = {name: self._measure(name, texts[name]) for name in self._blocks}
        key = tuple((height, bool(block.text)) for block, height in measured.values())
        # The last that were used are kept: a long table would come to have a hundred.
        template = self._templates.pop(key, None) or self._template(key, compose(self.design(texts)))
        self._templates[key] = template
        if len(self._templates) > _MOST_TEMPLATES:
            self._templates.pop(next(iter(self._templates)))
        seats = template.seats
        return Reset(
            template,
            tuple(
                Words(block, seats[name], lay(block, seats[name].room, seats[name].margin))
                for name, (block, _) in measured.items()
            ),
        )

    def _measure(self, name: str, text: str) -> tuple[Heading, float]:
        """A block with a text, and the height that it needs."""
        found = self._measured.get((name, text))
        if found is None:
            if len(self._measured) >= _MOST_KEPT:
                self._measured.clear()
            block = replace(self._blocks[name], text=text)
            found = self._measured[name, text] = (block, need(block, *self._rooms[name]))
        return found

    def _template(self, key: tuple[tuple[float, bool], ...], face: Face) -> Template:
        scene = face.scene
        names = [layer.name for layer in scene.layers]
        end = names.index("lettering") + 1 if "lettering" in names else len(names)
        under = tuple(self._without_words(layer) for layer in scene.layers[:end])
        seats = {seat.block: seat for seat in face.seats}
        return Template(key, replace(scene, layers=under), replace(scene, layers=scene.layers[end:]), seats)

    def _without_words(self, layer: Layer) -> Layer:
        kept = (node for node in layer.nodes if not (isinstance(node, Shape) and node.cause.block in self._blocks))
        return Layer(layer.name, tuple(kept)) if layer.name == "lettering" else layer


def _with_texts(face: tuple[Block, ...], texts: Mapping[str, str]) -> tuple[Block, ...]:
    return tuple(_with_text(block, texts) for block in face)


def _with_text(block: Block, texts: Mapping[str, str]) -> Block:
    if isinstance(block, Holder):
        return replace(block, holds=_with_texts(block.holds, texts))
    if isinstance(block, Heading) and block.id in texts:
        return replace(block, text=texts[block.id])
    return block
