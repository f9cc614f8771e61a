"""What changed alike in several pads, and how these are called together."""

from collections.abc import Sequence
from dataclasses import dataclass

from padspec.comparing.comparison import Compared

_MOST_NAMED = 6


@dataclass(frozen=True, slots=True)
class Shared:
    """Pads by their SKUs, how they are called together, and the sentences that hold for just these."""

    skus: tuple[str, ...]
    called: str
    sentences: tuple[str, ...]


def shared(pads: Sequence[Compared]) -> tuple[Shared, ...]:
    """What changed alike in more than one pad, of all that were compared."""
    having: dict[str, list[Compared]] = {}
    for pad in pads:
        for sentence in dict.fromkeys(change.sentence for change in pad.changes):
            having.setdefault(sentence, []).append(pad)
    groups: dict[tuple[str, ...], list[str]] = {}
    for sentence, some in having.items():
        if len(some) > 1:
            groups.setdefault(tuple(pad.sku for pad in some), []).append(sentence)
    by_sku = {pad.sku: pad for pad in pads}
    return tuple(
        Shared(skus, called([by_sku[sku] for sku in skus], pads), tuple(said)) for skus, said in groups.items()
    )


def called(some: Sequence[Compared], pads: Sequence[Compared]) -> str:
    """Some of all pads by what just they have in common, else by their SKUs: `the 12 pads of NG-MOTH`."""
    if len(some) == len(pads):
        return f"all {len(pads)} pads"
    common = [value for value in some[0].values if all(value in pad.values for pad in some)]
    alike = [pad for pad in pads if all(value in pad.values for value in common)]
    designs = list(dict.fromkeys(pad.own_sku for pad in some))
    in_designs = [pad for pad in alike if pad.own_sku in designs]
    no_others = len(alike) == len(some) and bool(common)
    if not (no_others or len(in_designs) == len(some) > len(designs)):
        return named([pad.sku for pad in some])
    of = "" if no_others and len(designs) > 1 else f" of {named(designs)}"
    with_ = f" with {' and '.join(f'{axis} {value}' for axis, value in common)}" if common else ""
    return f"the {len(some)} pads{of}{with_}"


def told_together(pads: Sequence[Compared]) -> frozenset[tuple[str, str]]:
    """SKU and sentence of every change that is told for several pads at once."""
    return frozenset((sku, sentence) for one in shared(pads) for sku in one.skus for sentence in one.sentences)


def named(skus: Sequence[str], most: int = _MOST_NAMED) -> str:
    """Some SKUs with an `and`, the first few where they are many.

    >>> named(["A"]), named(["A", "B"]), named(["A", "B", "C"]), named(["A", "B", "C", "D"], 3)
    ('A', 'A and B', 'A, B and C', 'A, B and 2 more')
    """
    if len(skus) > most:
        return f"{', '.join(skus[: most - 1])} and {len(skus) - most + 1} more"
    return " and ".join([", ".join(skus[:-1]), skus[-1]] if len(skus) > 1 else skus)
