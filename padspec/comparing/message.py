"""A comparison as the text of a commit message: a subject, what many pads share, then pad by pad."""

import textwrap
from collections.abc import Iterator, Sequence

from padspec.comparing.comparison import Compared, Comparison

#: Lines are wrapped here, as `git log` shows them indented on 80 columns.
WIDTH = 72
_MOST_NAMED = 6


def message(comparison: Comparison) -> str:
    """The whole text, with a line feed at its end."""
    paragraphs = [subject(comparison), *_body(comparison)]
    return "\n\n".join(paragraphs) + "\n"


def subject(comparison: Comparison) -> str:
    """One line: what and how much of it changed.

    A single pad is told by its one change, if it has but one.
    """
    differing = comparison.differing
    title = _cut(comparison.title, WIDTH - 30)
    if not differing:
        return f"{title}: nothing changed since {_cut(comparison.commit.asked, 20)}"
    if len(comparison.pads) == 1:
        pad = comparison.pads[0]
        told = _outcome(pad) if len(pad.changes) != 1 else pad.changes[0].sentence
        return _cut(f"{pad.name}: {told}", WIDTH)
    return f"{title}: {_counts(comparison)}"


def shared(pads: Sequence[Compared]) -> tuple[tuple[tuple[str, ...], tuple[str, ...]], ...]:
    """What changed alike in more than one pad: the SKUs, and the sentences that hold for just these."""
    having: dict[str, list[str]] = {}
    for pad in pads:
        for sentence in dict.fromkeys(change.sentence for change in pad.changes):
            having.setdefault(sentence, []).append(pad.sku)
    groups: dict[tuple[str, ...], list[str]] = {}
    for sentence, skus in having.items():
        if len(skus) > 1:
            groups.setdefault(tuple(skus), []).append(sentence)
    return tuple((skus, tuple(said)) for skus, said in groups.items())


def named(skus: Sequence[str], most: int = _MOST_NAMED) -> str:
    """Some SKUs with an `and`, the first few where they are many.

    >>> named(["A"]), named(["A", "B"]), named(["A", "B", "C"]), named(["A", "B", "C", "D"], 3)
    ('A', 'A and B', 'A, B and C', 'A, B and 2 more')
    """
    if len(skus) > most:
        return f"{', '.join(skus[: most - 1])} and {len(skus) - most + 1} more"
    return " and ".join([", ".join(skus[:-1]), skus[-1]] if len(skus) > 1 else skus)


def _counts(comparison: Comparison) -> str:
    whole = len(comparison.pads)
    changed = len(comparison.of_state("changed"))
    parts = [f"{changed} of {whole} pads changed"] if changed else []
    for state, word in (("added", "new"), ("removed", "taken away"), ("unreadable", "unreadable")):
        number = sum(pad.state == state for pad in comparison.pads)
        parts += [f"{number} {word}" if parts else f"{number} of {whole} pads {word}"] if number else []
    return ", ".join(parts)


def _outcome(pad: Compared) -> str:
    match pad.state:
        case "added":
            return "a new pad"
        case "removed":
            return "taken away"
        case "unreadable":
            return "cannot be read now"
        case "same":
            return "the same"
        case "changed":
            return f"{len(pad.changes)} changes" if pad.changes else "changed"


def _body(comparison: Comparison) -> Iterator[str]:
    pads = comparison.pads
    if comparison.note:
        yield _wrapped(comparison.note)
    changed = comparison.of_state("changed")
    together = shared(changed)
    everywhere = {(sku, sentence) for skus, said in together for sku in skus for sentence in said}
    for skus, said in together:
        every = len(skus) == len(pads)
        yield _listed(f"In all {len(pads)} pads:" if every else f"In {named(skus)}:", said)
    for pad in changed:
        own = [c.sentence for c in pad.changes if (pad.sku, c.sentence) not in everywhere]
        own = [
            *([f"SKU was {pad.old_sku}"] if _is_untold(pad) else []),
            *([pad.untold] if pad.untold else []),
            *own,
        ]
        if own:
            yield _listed(f"{pad.sku}, {pad.name}:", own)
    for pad in comparison.of_state("unreadable"):
        yield _listed(f"{pad.sku} cannot be read now:", [str(problem) for problem in pad.problems])
    yield from _rest(comparison)


def _rest(comparison: Comparison) -> Iterator[str]:
    new, gone = comparison.of_state("added"), comparison.of_state("removed")
    if new:
        yield _listed("New:", [f"{pad.sku}, {pad.name}" for pad in new])
    if gone:
        yield _listed("Taken away:", [f"{pad.sku}, {pad.name}" for pad in gone])


def _is_untold(pad: Compared) -> bool:
    return bool(pad.old_sku) and not any(change.what == "SKU" for change in pad.changes)


def _listed(head: str, lines: Sequence[str]) -> str:
    items = (_wrapped(line, "- ", "  ") for line in lines)
    return "\n".join([_wrapped(head), *items])


def _wrapped(text: str, first: str = "", later: str = "") -> str:
    return textwrap.fill(
        text,
        WIDTH,
        initial_indent=first,
        subsequent_indent=later,
        break_long_words=False,
        break_on_hyphens=False,
    )


def _cut(text: str, most: int) -> str:
    return text if len(text) <= most else f"{text[: most - 1].rstrip()}…"
