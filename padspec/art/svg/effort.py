"""How much work a drawing is once all that it refers to is put in place, found before it is drawn.

A few lines of SVG can ask for millions of shapes: ten uses of ten uses of ten. The count follows every
reference as a renderer would.
"""

from dataclasses import dataclass

from padspec.art.errors import ArtError

#: Shapes and other elements, every use counted: a detailed traced picture has some tens of thousands.
MOST_ELEMENTS = 300_000
#: Elements within elements, through references too; a renderer follows them on its stack.
MOST_NESTED = 64

_SIMPLIFY = "Simplify the drawing, or save it as a PNG of the size it is printed at."


@dataclass(frozen=True, slots=True)
class Load:
    """Elements and depth of a part of the drawing with all it refers to."""

    elements: int
    depth: int


class Effort:
    """The elements of a drawing by number, gathered as they are read: `enter` each one, then `check`."""

    def __init__(self) -> None:
        self._children: list[list[int]] = []
        self._references: list[tuple[str, ...]] = []
        self._lines: list[int] = []
        self._by_id: dict[str, int] = {}

    @property
    def count(self) -> int:
        """How many elements have been entered."""
        return len(self._children)

    def enter(self, parent: int | None, ident: str, references: tuple[str, ...], line: int) -> int:
        """Note an element under its parent; gives the element's number."""
        number = len(self._children)
        self._children.append([])
        self._references.append(references)
        self._lines.append(line)
        if parent is not None:
            self._children[parent].append(number)
        if ident:
            self._by_id.setdefault(ident, number)
        return number

    def check(self, name: str) -> int:
        """The elements that are drawn, every reference followed; raises ArtError over one of the limits."""
        load = self._load(0, (), {}, name)
        if load.elements > MOST_ELEMENTS:
            raise ArtError(
                f"{name} draws {load.elements} elements once its references are followed;"
                f" the limit is {MOST_ELEMENTS}.",
                _SIMPLIFY,
            )
        return load.elements

    def _load(self, number: int, path: tuple[int, ...], known: dict[int, Load], name: str) -> Load:
        if number in known:
            load = known[number]
            if len(path) + load.depth > MOST_NESTED:
                raise self._too_deep(number, name)
            return load
        if number in path:
            raise ArtError(
                f"{name}, line {self._lines[number]}: an element refers to itself.",
                "Take the reference out of it.",
            )
        if len(path) >= MOST_NESTED:
            raise self._too_deep(number, name)
        elements, depth = 1, 0
        targets = [self._by_id[ident] for ident in self._references[number] if ident in self._by_id]
        for part in [*self._children[number], *targets]:
            load = self._load(part, (*path, number), known, name)
            elements += load.elements
            depth = max(depth, load.depth)
        known[number] = Load(elements, depth + 1)
        return known[number]

    def _too_deep(self, number: int, name: str) -> ArtError:
        return ArtError(
            f"{name}, line {self._lines[number]}: elements are nested more than {MOST_NESTED} deep.",
            "Ungroup the drawing in its editor until it is flatter.",
        )
