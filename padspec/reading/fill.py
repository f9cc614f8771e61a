"""Texts with gaps: {column} stands for the cell of that column, a doubled brace for a brace."""

import re
from collections.abc import Iterable, Iterator
from collections.abc import Mapping as Cells

from padspec.base.errors import Problem
from padspec.base.nearest import did_you_mean
from padspec.reading.tree import Entry, Mapping, Node, Scalar, Sequence, scalars

_GAP = re.compile(r"\{\{|\}\}|\{([^{}]*)\}")


def filled_text(text: str, cells: Cells[str, str]) -> str:
    """A text with its gaps filled; a gap that no column fits stays as it is.

    >>> filled_text("{first}'s {{list}}", {"first": "Ada"})
    "Ada's {list}"
    """
    return _GAP.sub(lambda gap: _filling(gap, cells), text)


def gaps_in(text: str) -> tuple[str, ...]:
    """The columns that a text names, in order, each once."""
    return tuple(dict.fromkeys(gap[1] for gap in _GAP.finditer(text) if gap[1] is not None))


def filled(node: Node, cells: Cells[str, str]) -> Node:
    """A tree with the gaps of every text in it filled; every value keeps its place."""
    match node:
        case Scalar():
            # What a cell says is a text, as if it stood in quotes, unless it is the whole value.
            plain = node.plain or (len(_GAP.findall(node.text)) == 1 and _GAP.fullmatch(node.text) is not None)
            return Scalar(filled_text(node.text, cells), node.place, plain)
        case Sequence():
            return Sequence(tuple(filled(item, cells) for item in node.items), node.place)
        case Mapping():
            return filled_bundle(node, cells)


def filled_bundle(bundle: Mapping, cells: Cells[str, str]) -> Mapping:
    """A bundle with the gaps of every text in it filled; keys stay as they are."""
    entries = (Entry(entry.key, entry.key_place, filled(entry.value, cells)) for entry in bundle.entries)
    return Mapping(tuple(entries), bundle.place)


def columns_in(node: Node) -> tuple[str, ...]:
    """Every column that a tree names, in order, each once."""
    return tuple(dict.fromkeys(name for scalar in scalars(node) for name in gaps_in(scalar.text)))


def unknown_columns(node: Node, columns: Iterable[str]) -> Iterator[Problem]:
    """A problem for each gap that none of the columns fits."""
    known = tuple(columns)
    for scalar in scalars(node):
        for name in gaps_in(scalar.text):
            if name not in known:
                yield Problem(scalar.place, f"The table has no column {name}.", did_you_mean(name, known))


def _filling(gap: re.Match[str], cells: Cells[str, str]) -> str:
    if gap[1] is None:
        return gap[0][0]
    return cells.get(gap[1], gap[0])
