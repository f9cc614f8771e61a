"""What the pattern book shows: specimens, each a layout at one trim on one ground, as data."""

from dataclasses import dataclass
from itertools import groupby

from padspec.base.errors import Problem
from padspec.base.findings import Finding, Severity
from padspec.base.geometry import Size
from padspec.base.numbers import number_text
from padspec.scene.nodes import Scene


@dataclass(frozen=True, slots=True)
class Specimen:
    """One face on show: `scene` ends at the trim, and `findings` are those that count, warnings and errors."""

    layout: str
    about: str
    ground: str
    trim: Size
    scene: Scene
    findings: tuple[Finding, ...]

    @property
    def stem(self) -> str:
        """The name of its file, less the ending.

        >>> Specimen("blank", "", "dots", Size(90, 82.55), Scene(Size(90, 82.55), 0, ()), ()).stem
        'blank-dots-90x82.55'
        """
        trim = f"{number_text(self.trim.width, 2)}x{number_text(self.trim.height, 2)}"
        return f"{self.layout}-{self.ground}-{trim}"

    @property
    def label(self) -> str:
        """What it is, in words."""
        return f"{self.layout} on {self.ground}, {trim_text(self.trim)}"


@dataclass(frozen=True, slots=True)
class Gallery:
    """All that is on show, layout by layout, trim by trim; `problems` are why some of it could not be made."""

    title: str
    studio: str
    specimens: tuple[Specimen, ...]
    problems: tuple[Problem, ...]

    @property
    def failed(self) -> bool:
        """Whether some face has an error."""
        return any(found.severity == Severity.ERROR for one in self.specimens for found in one.findings)


def trim_text(trim: Size) -> str:
    """A trim as a caption gives it.

    >>> trim_text(Size(90, 190.5))
    '90 × 190.5 mm'
    """
    return f"{number_text(trim.width, 2)} × {number_text(trim.height, 2)} mm"


def shown_name(name: str) -> str:
    """The name of a layout or ground as a heading.

    >>> shown_name("two-columns")
    'Two columns'
    """
    return name.replace("-", " ").replace("_", " ").capitalize()


def leaders(specimens: tuple[Specimen, ...]) -> tuple[Specimen, ...]:
    """The first specimen of every layout."""
    return tuple(next(some) for _, some in groupby(specimens, lambda one: one.layout))


def by_page(specimens: tuple[Specimen, ...]) -> tuple[tuple[Specimen, ...], ...]:
    """The specimens of one layout at one trim, together."""
    return tuple(tuple(some) for _, some in groupby(specimens, lambda one: (one.layout, one.trim)))
