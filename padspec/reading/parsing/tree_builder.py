"""YAML events in, the tree out, with every refusal that does not stop the reading collected on the way.

It works on events rather than on composed nodes: only events tell an explicit tag or an alias, and a stack
of its own refuses deep nesting and swelling aliases before anything is built.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass

import yaml

from padspec.base.errors import Problem, ProblemsError
from padspec.base.nearest import nearest
from padspec.base.place import Place
from padspec.reading.parsing.open_nodes import Opening, OpenMapping, OpenSequence
from padspec.reading.parsing.slips import split_number, without_space
from padspec.reading.parsing.source import MOST_PROBLEMS, Source, clipped
from padspec.reading.tree import Node, Scalar

#: How deep mappings and lists may lie in one another.
DEEPEST = 32
#: How many keys and values a file may hold, each alias counted with all that it stands for.
MOST_NODES = 20_000
#: Top-level keys under which the maker chooses the names.
_FREELY_NAMED = ("palette", "blocks")
# What escapes in quotes can make and XML 1.0 (section 2.2) cannot hold: controls, half pairs, no characters.
_UNWRITABLE = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\ud800-\udfff\ufffe\uffff]")
_PROPERTIES = re.compile(r"(?:&[\w-]+|!\S*|[ \t\r\n]+|#[^\r\n]*)*")
_QUOTED = ("'", '"')
_BLOCK = ("|", ">")
_BLOCK_HEADER = re.compile(r"[|>][-+0-9]*(?: +#[^\r\n]*| *)(?=[\r\n]|\Z)")
_KEY_MEND = "Write a word and a colon; where braces, brackets or * belong to a text, put it in quotes."


@dataclass(frozen=True, slots=True)
class _Anchored:
    """What an anchor stands for: the node, how many nodes that is, and how deep it goes."""

    node: Node
    count: int
    height: int


class TreeBuilder:
    """Builds one tree; `problems` and `quoted` (spans of text in quotes or blocks) are filled on the way."""

    def __init__(self, source: Source) -> None:
        self.problems: list[Problem] = []
        self.quoted: list[tuple[int, int]] = []
        self.source = source
        self._stack: list[OpenMapping | OpenSequence] = []
        self._anchors: dict[str, _Anchored | None] = {}
        self._count = 0
        self._root: Node | None = None

    def build(self, events: Iterable[yaml.Event]) -> Node | None:
        """The root node, None for an empty file; raises ProblemsError where reading on makes no sense."""
        for event in events:
            match event:
                case yaml.DocumentStartEvent() if self._root is not None:
                    mend = "Take the line --- out, or move what follows it to a file of its own."
                    self._refuse(self._place(event), "A second document starts here; a file holds one.", mend)
                    return self._root
                case yaml.AliasEvent():
                    self._alias(event)
                case yaml.ScalarEvent():
                    self._scalar(event, self._start(event))
                case yaml.MappingStartEvent() | yaml.SequenceStartEvent():
                    self._open(event, self._start(event))
                case yaml.MappingEndEvent() | yaml.SequenceEndEvent():
                    self._close(event)
        return self._root

    def _start(self, event: yaml.ScalarEvent | yaml.CollectionStartEvent) -> int:
        """Where the node itself starts, behind its anchor and tag; counts it, refuses the tag."""
        self._grow(1, event)
        start, _ = _span(event)
        if event.anchor is None and event.tag is None:
            return start
        match = _PROPERTIES.match(self.source.text, start)
        behind = match.end() if match else start
        if event.tag is not None:
            message = "An explicit tag stands here; padspec reads none."
            mend = "Take it out, or put the text in quotes if the ! belongs to it."
            self._refuse(self.source.place(start, behind), message, mend)
        return behind

    def _scalar(self, event: yaml.ScalarEvent, start: int) -> None:
        plain = event.style not in (*_QUOTED, *_BLOCK)
        end = _span(event)[1]
        if not plain:
            text_start = self._block_header(start) if event.style in _BLOCK else start
            self.quoted.append((text_start, end))
        elif event.value == "":
            # Parsers disagree about where nothing stands: let it be right behind what comes before it.
            start = end = self.source.behind(end)
        place = self.source.place(start, end)
        if unwritable := _UNWRITABLE.search(event.value):
            message = f"This text hides a character that no file can hold (U+{ord(unwritable.group()):04X})."
            self._refuse(place, message, "Take its escape, such as \\0 or \\x07, out.")
        top = self._stack[-1] if self._stack else None
        if isinstance(top, OpenMapping) and not top.awaits_value:
            self._scalar_key(top, event.value, place, plain)
        else:
            node = Scalar(event.value, place, plain)
            self._remember(event.anchor, _Anchored(node, 1, 0))
            self._value(top, node)

    def _value(self, top: OpenMapping | OpenSequence | None, node: Scalar) -> None:
        """Add a value; a key without one in braces may hide a slip, which is then told and mended."""
        if isinstance(top, OpenMapping) and top.opening.in_brackets and node.is_missing and top.key:
            key = top.key
            if key.plain and (number := split_number(top.last, key.written, key.place)):
                self._tell(number.problem)
                top.mend_last(number.value)
                return
            if key.plain and (meant := without_space(key.written, key.place)):
                self._tell(meant.problem)
                top.take_key(meant.key, meant.key_place, plain=True)
                node = meant.value
        self._add(node, 0)

    def _block_header(self, start: int) -> int:
        """Where the line of a | or > ends; YAMLError for one that only some parsers read."""
        match = _BLOCK_HEADER.match(self.source.text, start)
        if match is None:
            raise yaml.YAMLError("block header")
        return match.end()

    def _scalar_key(self, top: OpenMapping, text: str, place: Place, plain: bool) -> None:
        if plain and text == "<<":
            message = "A merge key (<<) stands here; padspec does not merge mappings that way."
            self._refuse(place, message, "Write the keys out where they are needed.")
            top.skip_key()
        elif plain and text == "":
            self._refuse(place, "A key is missing here.", _KEY_MEND)
            top.skip_key()
        else:
            top.take_key(text, place, plain)

    def _open(self, event: yaml.CollectionStartEvent, start: int) -> None:
        if len(self._stack) >= DEEPEST:
            self._too_deep(event)
        top = self._stack[-1] if self._stack else None
        is_key = isinstance(top, OpenMapping) and not top.awaits_value
        place = self.source.place(start, start + 1)
        if is_key:
            self._refuse(place, "A mapping or list stands where a key belongs.", _KEY_MEND)
        if event.anchor is not None:
            self._anchors[event.anchor] = None
        opening = Opening(start, place, event.anchor, bool(event.flow_style), self._count - 1, is_key)
        if isinstance(event, yaml.SequenceStartEvent):
            self._stack.append(OpenSequence(opening))
            return
        key = top.key if isinstance(top, OpenMapping) and len(self._stack) == 1 else None
        self._stack.append(OpenMapping(opening, key is not None and key.read_as in _FREELY_NAMED))

    def _close(self, event: yaml.CollectionEndEvent) -> None:
        top = self._stack.pop()
        opening = top.opening
        whole = self.source.place(opening.start, _span(event)[1]) if opening.in_brackets else None
        node = top.closed(whole)
        self._remember(opening.anchor, _Anchored(node, self._count - opening.count_before, top.height))
        below = self._stack[-1] if self._stack else None
        if opening.is_key and isinstance(below, OpenMapping):
            below.skip_key()
        else:
            self._add(node, top.height)

    def _alias(self, event: yaml.AliasEvent) -> None:
        name, place = event.anchor or "", self._place(event)
        top = self._stack[-1] if self._stack else None
        if isinstance(top, OpenMapping) and not top.awaits_value:
            self._refuse(place, f"The alias *{clipped(name)} stands where a key belongs.", _KEY_MEND)
            top.skip_key()
            return
        found = self._anchors.get(name)
        if name not in self._anchors:
            mend = "Put the text in quotes if the * belongs to it."
            if near := nearest(name[:60], list(self._anchors)[-100:]):
                mend = f"Did you mean *{near}? {mend}"
            self._refuse(place, f"The alias *{clipped(name)} has no anchor above it.", mend)
            self._add(Scalar(f"*{name}", place, plain=False), 0)
            return
        if found is None:
            message = f"The alias *{clipped(name)} stands inside what it stands for, which would never end."
            raise ProblemsError(*self.problems, Problem(place, message, "Write the values out."))
        self._grow(found.count, event)
        if len(self._stack) + found.height > DEEPEST:
            self._too_deep(event)
        self._add(found.node, found.height)

    def _add(self, node: Node, height: int) -> None:
        if not self._stack:
            self._root = node
            return
        top = self._stack[-1]
        top.height = max(top.height, height + 1)
        problem = top.take(node)
        if problem is not None:
            self._tell(problem)

    def _remember(self, anchor: str | None, what: _Anchored) -> None:
        if anchor is not None:
            self._anchors[anchor] = what

    def _grow(self, count: int, event: yaml.Event) -> None:
        self._count += count
        if self._count > MOST_NODES:
            message = f"The file holds more than {MOST_NODES} keys and values, those behind aliases counted."
            raise ProblemsError(
                *self.problems, Problem(self._place(event), message, "Split it or use fewer aliases.")
            )

    def _too_deep(self, event: yaml.Event) -> None:
        message = f"Mappings and lists lie more than {DEEPEST} deep in one another here."
        mend = "Look for brackets or braces that are opened and never closed."
        raise ProblemsError(*self.problems, Problem(self._place(event), message, mend))

    def _place(self, event: yaml.Event) -> Place:
        return self.source.place(*_span(event))

    def _refuse(self, place: Place, message: str, mend: str) -> None:
        self._tell(Problem(place, message, mend))

    def _tell(self, problem: Problem) -> None:
        self.problems.append(problem)
        if len(self.problems) >= MOST_PROBLEMS:
            raise ProblemsError(*self.problems)


def _span(event: yaml.Event) -> tuple[int, int]:
    start, end = event.start_mark, event.end_mark
    return (start.index, end.index) if start and end else (0, 0)
