"""The facts of a pad before and now become changes, each a sentence with its place in the YAML of now."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from padspec.base.colour import Colour, lab_from_srgb
from padspec.base.difference import ciede2000
from padspec.base.numbers import number_text
from padspec.base.place import Place
from padspec.comparing.facts import HEADS, ORDERS, Fact, Facts, kinds
from padspec.comparing.findings import finding_changes
from padspec.comparing.places import place_of
from padspec.comparing.told import Change
from padspec.pipeline import Pad

#: Words that follow from the SKU or the file, where these are told already.
_FOLLOWING = (("", "SKU without the variant"),)


def delta_e(one: Colour, other: Colour) -> float:
    """CIEDE2000 between two colours.

    >>> delta_e(Colour(0, 0, 0), Colour(0, 0, 0))
    0.0
    """
    return float(ciede2000(lab_from_srgb(one.unit), lab_from_srgb(other.unit)))


@dataclass(frozen=True, slots=True)
class Made:
    """A pad of one side with its facts."""

    pad: Pad
    facts: Facts


def changes(before: Made, now: Made) -> tuple[Change, ...]:
    """Everything that changed from before to now, in the order of the facts of now, findings last."""
    old_kinds, new_kinds = kinds(before.pad.design), kinds(now.pad.design)
    apart = {block for block in {*old_kinds, *new_kinds} if old_kinds.get(block) != new_kinds.get(block)}
    # A block may be called like another head: what stands there is told then, rather than lost.
    apart -= HEADS
    found = [
        *_of_blocks(old_kinds, new_kinds, now.pad),
        *_of_facts(before.facts, now, apart),
    ]
    found = _palette_once(found)
    found += finding_changes(before.pad.findings, now.pad.findings)
    if not found:
        found += _drawn(before.pad, now.pad)
    return tuple(found)


def _of_blocks(old: dict[str, str], new: dict[str, str], pad: Pad) -> Iterator[Change]:
    """Blocks that came, went or became another kind: what they are made of is not told then."""
    for block, kind in new.items():
        place = place_of(pad, block, "")
        if block not in old:
            yield Change(block, "block added", "", kind, place=place)
        elif old[block] != kind:
            yield Change(block, "kind of block", old[block], kind, place=place)
    for block, kind in old.items():
        if block not in new:
            yield Change(block, "block taken away", kind, "")


def _of_facts(old: Facts, now: Made, apart: set[str]) -> Iterator[Change]:
    new = now.facts
    whole = {key for key in {*old, *new} if _comes_or_goes(old.get(key), new.get(key))}
    for key in dict.fromkeys((*new, *old)):
        before, after = old.get(key), new.get(key)
        told_elsewhere = key[0] in apart or key in _FOLLOWING or (apart and key[1] in ORDERS)
        if told_elsewhere or _is_part(key, whole) or not _differ(before, after, key in whole):
            continue
        yield _change(before, after, now.pad)


def _differ(before: Fact | None, after: Fact | None, is_whole: bool) -> bool:
    """Whether a fact is to be told. Of what stands on both sides and is told part by part, only the parts are."""
    if before is None or after is None:
        return True
    return before.text != after.text and (is_whole or not after.head)


def _change(before: Fact | None, after: Fact | None, pad: Pad) -> Change:
    fact = after or before
    if fact is None:
        raise ValueError("a change has a fact on one side at least")
    missing = "as asked for" if fact.what.endswith("as drawn") else "none"
    return Change(
        section=fact.section,
        what=fact.what,
        before=before.text if before else missing,
        after=after.text if after else missing,
        measure=_measure(before, after),
        delta=_delta(before, after),
        place=place_of(pad, fact.section, fact.key),
    )


def _comes_or_goes(before: Fact | None, after: Fact | None) -> bool:
    """Whether something that is made up of parts is on one side only."""
    was, stays = before is not None and before.head, after is not None and after.head
    return was != stays


def _is_part(key: tuple[str, str], whole: set[tuple[str, str]]) -> bool:
    """Whether a fact is told with the whole that it belongs to."""
    section, what = key
    return any(one == section and what.startswith(f"{of} ") for one, of in whole)


def _measure(before: Fact | None, after: Fact | None) -> str:
    if before is None or after is None:
        return ""
    delta = _delta(before, after)
    if delta is not None:
        return f"ΔE {number_text(delta, 1)}"
    if before.count is not None and after.count is not None:
        more = after.count - before.count
        return f"{abs(more)} {'more' if more > 0 else 'fewer'}"
    return ""


def _delta(before: Fact | None, after: Fact | None) -> float | None:
    if before is None or after is None or before.colour is None or after.colour is None:
        return None
    return round(delta_e(before.colour, after.colour), 4)


def _palette_once(found: list[Change]) -> list[Change]:
    """A colour of the palette is told once, with what is drawn in it, and not again for each of these."""
    named: dict[tuple[str, str], Change] = {}
    for change in found:
        if change.section == "palette" and change.delta is not None:
            named.setdefault((change.before, change.after), change)
    shown: dict[tuple[str, str], list[str]] = {pair: [] for pair in named}
    rest = []
    for change in found:
        pair = change.before, change.after
        if change.section == "palette":
            if named.get(pair, change) is change or change.delta is None:
                rest.append(change)
            else:
                shown[pair].append(f"palette {change.what}")
        elif change.delta is not None and pair in shown:
            shown[pair].append(f"{change.section} {change.what}")
        else:
            rest.append(change)
    return [_with_shown(c, shown.get((c.before, c.after), [])) if c.section == "palette" else c for c in rest]


def _with_shown(change: Change, shown: list[str]) -> Change:
    return replace(change, shows=tuple(shown))


def _drawn(before: Pad, now: Pad) -> Iterator[Change]:
    """What no fact tells."""
    place = Place(now.design.file, 0, 0)
    if before.face.scene != now.face.scene:
        yield Change("face", "drawn differently", "", "", place=place)
    if before.sheet != now.sheet:
        yield Change("sheet", "laid out differently", "", "", place=place)
