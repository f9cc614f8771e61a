"""Block ids in a layout are names to be set by, so each stands once: the one rule no JSON Schema can say."""

from collections.abc import Iterator

from padspec.base.errors import Problem
from padspec.reading.tree import Mapping, Scalar, Sequence


def repeated_ids(layout: Mapping) -> tuple[Problem, ...]:
    """A problem for each id that stands a second time, blocks inside panels included."""
    first: dict[str, Scalar] = {}
    problems = []
    for name in _ids(layout.get("face")):
        before = first.setdefault(name.text, name)
        if before is not name:
            message = f"The id {name.text} stands twice in this layout; the first is on line {before.place.line}."
            problems.append(Problem(name.place, message, f"Call one of them {name.text}-2, say."))
    return tuple(problems)


def _ids(blocks: object) -> Iterator[Scalar]:
    """The ids of blocks head to foot; what has not the form of a block is the schema's to tell."""
    bodies = (
        entry.value
        for block in (blocks.items if isinstance(blocks, Sequence) else ())
        if isinstance(block, Mapping)
        for entry in block.entries
    )
    for body in bodies:
        if isinstance(body, Mapping):
            name = body.get("id")
            if isinstance(name, Scalar) and not name.is_missing:
                yield name
            yield from _ids(body.get("holds"))
