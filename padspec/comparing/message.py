"""A comparison as the text of a commit message: a subject, what many pads share, then pad by pad."""

import textwrap
from collections.abc import Iterator, Sequence

from padspec.comparing.comparison import Compared, Comparison
from padspec.comparing.together import shared, told_together

#: Lines are wrapped here, as `git log` shows them indented on 80 columns.
WIDTH = 72


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


def _counts(comparison: Comparison) -> str:
    whole = len(comparison.pads)
    changed = len(comparison.of_state("changed"))
    share = f"all {whole}" if changed == whole > 1 else f"{changed} of {whole}"
    parts = [f"{share} pads changed"] if changed else []
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
    if comparison.note:
        yield _wrapped(comparison.note)
    changed = comparison.of_state("changed")
    everywhere = told_together(comparison.pads)
    for one in shared(comparison.pads):
        yield _listed(f"In {one.called}:", one.sentences)
    for pad in changed:
        own = [change.sentence for change in pad.changes if (pad.sku, change.sentence) not in everywhere]
        told = [line for line in (_old_sku(pad), pad.untold, *own) if line]
        if told:
            yield _listed(f"{pad.sku}, {pad.name}:", told)
    for pad in comparison.of_state("unreadable"):
        yield _listed(f"{pad.sku} cannot be read now:", [str(problem) for problem in pad.problems])
    yield from _rest(comparison)


def _rest(comparison: Comparison) -> Iterator[str]:
    new, gone = comparison.of_state("added"), comparison.of_state("removed")
    if new:
        yield _listed("New:", [f"{pad.sku}, {pad.name}" for pad in new])
    if gone:
        yield _listed("Taken away:", [f"{pad.sku}, {pad.name}" for pad in gone])


def _old_sku(pad: Compared) -> str:
    """Its SKU before, where no change tells it."""
    told = any(change.what == "SKU" for change in pad.changes)
    return f"its SKU was {pad.old_sku}" if pad.old_sku and not told else ""


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
