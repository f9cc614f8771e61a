"""What a maker may ask the pattern book for, and what the words of the command mean."""

import re
from dataclasses import dataclass
from typing import Literal

from padspec.base.errors import Problem, ProblemsError, UnitError
from padspec.base.geometry import Size
from padspec.base.nearest import did_you_mean
from padspec.base.place import Place
from padspec.base.units import parse_length

#: A layout's first trim, or all that it states, or sizes for every layout alike.
Trims = Literal["first", "own"] | tuple[Size, ...]

#: Texts that stress lettering: too much for one line, next to nothing, and two scripts other than Latin.
HEADINGS = {
    "long": "Everything to see to before the guests arrive on Saturday evening",
    "short": "Jam",
    "arabic": "قائمة المشتريات لهذا الأسبوع",
    "hindi": "इस हफ़्ते की ख़रीदारी की सूची",
}
_TIMES = re.compile(r"\s*[x×]\s*")


@dataclass(frozen=True, slots=True)
class GalleryWish:
    """Which layouts (None: every one), on which grounds (None: a choice that differs by layout; `all` among them:
    every one), at which trims, and with what heading (None: the layout's own).
    """

    layouts: tuple[str, ...] | None = None
    grounds: tuple[str, ...] | None = None
    trims: Trims = "first"
    heading: str | None = None


def names_in(text: str) -> tuple[str, ...]:
    """Names with commas between, each once.

    >>> names_in("dots, plain,dots")
    ('dots', 'plain')
    """
    return tuple(dict.fromkeys(word for word in (part.strip() for part in text.split(",")) if word))


def trims_in(text: str) -> Trims:
    """`first`, `own`, or sizes with commas between; raises ProblemsError for a size that cannot be read.

    >>> trims_in("90 mm x 190 mm, 3 1/2 in × 5 in")
    (Size(width=90.0, height=190.0), Size(width=88.9, height=127.0))
    """
    match text.strip():
        case "first":
            return "first"
        case "own":
            return "own"
        case sizes:
            return tuple(dict.fromkeys(_size(part) for part in names_in(sizes)))


def _size(text: str) -> Size:
    sides = _TIMES.split(text)
    mend = "Write first, own, or a width and a height: --trims '90 mm x 190 mm'."
    if len(sides) != 2:
        raise _no_trim(f"{text} is not a trim.", mend)
    try:
        return Size(parse_length(sides[0]), parse_length(sides[1]))
    except UnitError as error:
        raise _no_trim(error.message, error.mend) from None


def _no_trim(message: str, mend: str) -> ProblemsError:
    return ProblemsError(Problem(Place("--trims", 0, 0), message, mend))


def refuse_unknown(option: str, wished: tuple[str, ...], known: tuple[str, ...]) -> None:
    """Raise ProblemsError for names of an option that are not known."""
    place = Place(option, 0, 0)
    problems = [
        Problem(place, f"There is no {name}.", did_you_mean(name, known)) for name in wished if name not in known
    ]
    if problems:
        raise ProblemsError(*problems)
