"""The finished size of a leaf: as the design writes it, or the largest that a sleeve takes."""

from padspec.base.geometry import Size
from padspec.base.numbers import mm_text
from padspec.resolve.finish import fitted_trim
from padspec.resolve.settings import Settings
from padspec.resolve.studio import Studio

LEAST_TRIM, MOST_TRIM = 20.0, 1000.0
_SIDES = ("width", "height")


def read_trim(own: Settings, studio: Studio) -> Size:
    """Width and height, each as written, else from the sleeve to fit; what cannot be bound is told."""
    trim = own.section("trim")
    written = {side: trim.length(side) for side in _SIDES if trim.has(side)}
    if not trim.has("fit-sleeve"):
        return _bounded(trim, written)
    fitted = fitted_trim(own, studio)
    if fitted is None:
        return Size(LEAST_TRIM, LEAST_TRIM)
    largest, sleeve = fitted
    return _bounded(trim, {"width": largest.width, "height": largest.height, **written}, sleeve.name)


def _bounded(trim: Settings, sides: dict[str, float], sleeve: str = "") -> Size:
    for side, length in sides.items():
        if not LEAST_TRIM <= length <= MOST_TRIM:
            of_sleeve = bool(sleeve) and not trim.has(side)
            what = f", all that the sleeve {sleeve} leaves," if of_sleeve else ""
            trim.troubles.add(
                trim.place("fit-sleeve" if of_sleeve else side),
                f"A {side} of {mm_text(length)}{what} is not one that can be cut and bound here.",
                f"Write {LEAST_TRIM:g} mm to {MOST_TRIM:g} mm.",
            )
    return Size(max(sides["width"], LEAST_TRIM), max(sides["height"], LEAST_TRIM))
