"""A maker's YAML in, a tree of values that remember their places out.

Scalars stay text as written, so that `sku: 0012`, `off` and `12:30` mean what they say; what they are is
for the schema to tell. Much of YAML is refused on purpose (tags, merge keys, several documents, keys that
are no text), and nothing hostile is built: size, depth and the number of values are bounded first.
"""

from collections.abc import Iterator
from contextlib import suppress
from typing import Any

import yaml

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place
from padspec.reading.parsing.slips import without_space
from padspec.reading.parsing.source import Source, checked, decode
from padspec.reading.parsing.tree_builder import TreeBuilder
from padspec.reading.parsing.yaml_faults import stray_tab, syntax_problem
from padspec.reading.tree import Mapping, Node, Scalar

__all__ = ["decode", "parse", "parse_leniently"]


def parse(text: str, file: str) -> Mapping:
    """The tree of a file; `file` is its name in places. Raises ProblemsError with all that is wrong in it."""
    root, problems = parse_leniently(text, file)
    if problems or root is None:
        raise ProblemsError(*in_order(problems))
    return root


def parse_leniently(text: str, file: str) -> tuple[Mapping | None, tuple[Problem, ...]]:
    """The tree, as far as there is one, and every problem, so that the schema can still be checked.

    Of a key that stands twice the first is kept; refused keys are left out. Never raises ProblemsError.
    """
    try:
        source = checked(text, file)
        node, problems = _tree(source)
    except ProblemsError as error:
        return None, error.problems
    if isinstance(node, Mapping):
        return node, problems
    return None, problems or (_no_mapping(node, file),)


def in_order(problems: tuple[Problem, ...]) -> tuple[Problem, ...]:
    """Problems file by file, each from head to foot, each once."""
    once = dict.fromkeys(problems)
    return tuple(sorted(once, key=lambda p: (p.place.file, p.place.line, p.place.column, p.message)))


def _tree(source: Source) -> tuple[Node | None, tuple[Problem, ...]]:
    if yaml.__with_libyaml__:
        # Where the fast parser gives up, the other one judges, so that both give the same.
        with suppress(yaml.YAMLError):
            return _built(TreeBuilder(source), yaml.parse(source.text, Loader=yaml.CSafeLoader))
    builder = TreeBuilder(source)
    try:
        return _built(builder, yaml.parse(source.text, Loader=_QuestionsAllowed))
    except yaml.MarkedYAMLError as error:
        raise ProblemsError(*builder.problems, syntax_problem(error, source)) from None


class _QuestionsAllowed(yaml.SafeLoader):
    """The parser in plain Python, taught to read `{text: What now?}` as the fast one does."""

    def __init__(self, stream: str) -> None:
        self._in_text = False
        super().__init__(stream)

    def scan_plain(self) -> Any:
        """An unquoted text."""
        self._in_text = True
        try:
            return super().scan_plain()
        finally:
            self._in_text = False

    def peek(self, index: int = 0) -> Any:
        """A character ahead; a ? is a letter like any other while an unquoted text is read."""
        found = super().peek(index)
        return "x" if found == "?" and self._in_text else found


def _built(builder: TreeBuilder, events: Iterator[yaml.Event]) -> tuple[Node | None, tuple[Problem, ...]]:
    node = builder.build(events)
    tab = stray_tab(builder.source, builder.quoted)
    return node, (*builder.problems, *([tab] if tab else []))


def _no_mapping(node: Node | None, file: str) -> Problem:
    if isinstance(node, Scalar) and node.plain and (meant := without_space(node.text, node.place)):
        return meant.problem
    place = Place(file, 1, 1) if node is None else node.place
    message = "The file is empty." if node is None else "The file does not start with a key."
    return Problem(place, message, "Write settings as key: value, one a line.")
