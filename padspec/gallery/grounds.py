"""The grounds that faces are shown on: plain, and every kind of pattern that the schema knows."""

import json
from typing import Any

from padspec.gallery.wish import refuse_unknown
from padspec.resources import schema_text

PLAIN, MOTIF, EVERY = "plain", "motif", "all"
#: So many patterns a layout is shown on, beside the plain ground, where none are named.
_USUAL = 5
#: From one of them to the next, so that neighbours in the schema, which are akin, part company.
_STRIDE = 2


def pattern_kinds() -> tuple[str, ...]:
    """Every kind of pattern, in the schema's order."""
    schema = json.loads(schema_text("ground"))
    return tuple(schema["$defs"]["pattern"]["properties"]["kind"]["enum"])


def chosen_grounds(wished: tuple[str, ...] | None, place: int, has_motif: bool) -> tuple[str, ...]:
    """The grounds for the layout at a place in the book; `has_motif` says whether a picture is there to repeat.

    Raises ProblemsError for a ground that is not known, and for a motif without a picture that is asked for.
    """
    kinds = tuple(kind for kind in pattern_kinds() if kind != MOTIF or has_motif)
    if wished is None:
        return (*usual(place, kinds), PLAIN)
    refuse_unknown("--grounds", wished, (EVERY, *kinds, PLAIN))
    if EVERY not in wished:
        return wished
    first = place % len(kinds)
    return (*kinds[first:], *kinds[:first], PLAIN)


def usual(place: int, kinds: tuple[str, ...]) -> tuple[str, ...]:
    """Some kinds of pattern, other ones first at every place.

    >>> usual(1, ("stripes", "dots", "wave"))
    ('dots', 'stripes', 'wave')
    """
    turns = (kinds[(place + _STRIDE * n) % len(kinds)] for n in range(len(kinds)))
    return tuple(dict.fromkeys(turns))[:_USUAL]


def ground_data(name: str, motif: str | None) -> dict[str, Any]:
    """The ground as a design states it; `motif` is the picture to repeat."""
    if name == PLAIN:
        return {"pattern": "none"}
    return {"pattern": {"kind": name, "file": motif} if name == MOTIF else {"kind": name}}
