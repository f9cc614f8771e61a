"""Blocks that repeat: one stack of what is held for each title, in even columns.

A `repeat` block is structure only: it becomes columns of stacks before its settings are typed, so that no later
stage need know of it. What is held keeps the name that the layout gives it; each copy has an id of its own.
"""

from dataclasses import replace
from math import ceil

from padspec.base.nearest import did_you_mean
from padspec.base.place import Place
from padspec.reading.defaults import block_defaults
from padspec.reading.tree import Entry, Mapping, Scalar, Sequence
from padspec.resolve.drafts import Draft
from padspec.resolve.settings import Settings, merge

#: Kinds of block that take a title.
_TITLED = ("label", "heading")
_NO_TITLE = Scalar("", Place("padspec's default", 0, 0), plain=False)


def spread(drafts: tuple[Draft, ...]) -> tuple[Draft, ...]:
    """The drafts with every `repeat` in them spread out, the outer ones first."""
    found = (_spread(draft) if draft.kind == "repeat" else draft for draft in drafts)
    return tuple(replace(draft, holds=spread(draft.holds)) for draft in found)


def _spread(draft: Draft) -> Draft:
    """Columns of stacks, filled line by line or column by column; a place that is left over stays empty."""
    titles = _titles(draft)
    across = min(draft.settings.integer("columns"), len(titles))
    down = ceil(len(titles) / across)
    cells = [_cell(draft, n, title) for n, title in enumerate(titles)]
    cells += [_filler(draft, n) for n in range(len(titles), across * down)]
    by_column = draft.settings.text("order") == "down"
    lines = [
        [cells[column * down + row] if by_column else cells[row * across + column] for row in range(down)]
        for column in range(across)
    ]
    if across == 1:
        whole = _stack(draft, draft.id, lines[0], {"row-gap": "gap", "inset": "inset"})
        return replace(whole, held=draft.held)
    stacks = (
        _stack(draft, f"{draft.id}/column-{n + 1}", line, {"row-gap": "gap"}) for n, line in enumerate(lines)
    )
    settings = _settings(draft, "columns", {"gap": "gap", "inset": "inset"})
    return replace(draft, kind="columns", settings=settings, holds=tuple(stacks))


def _titles(draft: Draft) -> list[Scalar]:
    """The title of each copy, from the one wanted first, then the last; empty ones where there are none."""
    items, last = _items(draft, "titles"), _items(draft, "last")
    if not items:
        return [_NO_TITLE] * draft.settings.integer("times")
    if not draft.settings.has("first"):
        return items + last
    texts, first = [item.text for item in items], draft.settings.text("first")
    if first not in texts:
        draft.settings.troubles.add(
            draft.settings.place("first"), f"{first} is none of the titles.", did_you_mean(first, texts)
        )
        return items + last
    start = texts.index(first)
    return items[start:] + items[:start] + last


def _items(draft: Draft, key: str) -> list[Scalar]:
    node = draft.settings.bundle.get(key)
    return [item for item in node.items if isinstance(item, Scalar)] if isinstance(node, Sequence) else []


def _cell(draft: Draft, n: int, title: Scalar) -> Draft:
    """One copy of what is held, with its title."""
    name = f"{draft.id}/{n + 1}"
    return _stack(draft, name, [_copy(inner, name, title) for inner in draft.holds], {})


def _copy(draft: Draft, under: str, title: Scalar) -> Draft:
    """A block of a copy; what repeats inside it with titles of its own keeps those."""
    settings = draft.settings
    if draft.kind == "repeat" and settings.has("titles"):
        title = _NO_TITLE
    if draft.kind in _TITLED and title.text:
        entry = Entry("text", title.place, title)
        settings = Settings(merge(settings.bundle, Mapping((entry,), settings.bundle.place)), settings.troubles)
    holds = tuple(_copy(inner, under, title) for inner in draft.holds)
    return replace(draft, id=f"{under}/{draft.id}", settings=settings, holds=holds)


def _filler(draft: Draft, n: int) -> Draft:
    return _stack(draft, f"{draft.id}/{n + 1}", [], {})


def _stack(draft: Draft, name: str, holds: list[Draft], taken: dict[str, str]) -> Draft:
    """A stack inside the repeat, with the settings that are `taken` from it, each as it is called there."""
    settings = _settings(draft, "stack", taken)
    return replace(draft, kind="stack", id=name, held=True, settings=settings, holds=tuple(holds))


def _settings(draft: Draft, kind: str, taken: dict[str, str]) -> Settings:
    """The settings of a stack or of columns, some of them the repeat's."""
    found = tuple(
        Entry(taken[entry.key], entry.key_place, entry.value)
        for entry in draft.settings.bundle.entries
        if entry.key in taken
    )
    bundle = merge(block_defaults(kind), Mapping(found, draft.settings.bundle.place))
    return Settings(bundle, draft.settings.troubles)
