"""Settings that lie over a design, against the schema of designs."""

from padspec.base.errors import Problem
from padspec.reading.checking.schema_check import check
from padspec.reading.tree import Entry, Mapping, Scalar


def check_settings(settings: Mapping) -> tuple[Problem, ...]:
    """Every fault of a bundle that holds any of a design's keys, from head to foot."""
    place = settings.place
    size = Mapping(tuple(Entry(side, place, Scalar("100 mm", place)) for side in ("width", "height")), place)
    needed = (Entry("pad", place, Scalar("x", place)), Entry("trim", place, size))
    missing = tuple(entry for entry in needed if settings.get(entry.key) is None)
    return check(Mapping((*missing, *settings.entries), place), "design")
