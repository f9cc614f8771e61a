"""The lettering of the pattern book's pages: its fonts, its greys, and the words under a face."""

from collections.abc import Iterator
from dataclasses import dataclass

from padspec.base.colour import Colour
from padspec.base.findings import Finding, Severity
from padspec.base.place import Place
from padspec.gallery.specimen import Specimen
from padspec.resolve.font import Font
from padspec.resolve.lettering_fonts import FontShelf
from padspec.resolve.settings import Troubles
from padspec.scene.nodes import Shape
from padspec.test_prints.setting import broken, words
from padspec.workspace import MemoryWorkspace

INK, QUIET = Colour.from_hex("#2d2a26"), Colour.from_hex("#78726a")
_TINTS = {Severity.ERROR: Colour.from_hex("#b3261e"), Severity.WARNING: Colour.from_hex("#96590a")}

#: Sizes (em) in mm.
TITLE, LEAD, NAME, NOTE, FOOT = 8.4, 3.0, 2.65, 2.2, 2.25
#: From the edge of a face to the first baseline under it, and from baseline to baseline.
DROP, LEADING = 4.6, 3.15
#: So many findings are told under a face; the command tells them all.
_MOST_FINDINGS = 2


@dataclass(frozen=True, slots=True)
class Fonts:
    """A serif for titles, and a plain font in two weights."""

    title: Font
    text: Font
    strong: Font


@dataclass(frozen=True, slots=True)
class Line:
    """One line of words under a face."""

    text: str
    font: Font
    size: float
    colour: Colour


def book_fonts() -> Fonts:
    """The fonts that the book is set in; they come with padspec."""
    shelf = FontShelf(MemoryWorkspace({}), Troubles())
    return Fonts(shelf.find("Lora", 500, Place("", 0, 0)), shelf.plain(500), shelf.plain(700))


def caption(name: str, told: str, specimen: Specimen, width: float, fonts: Fonts) -> tuple[Line, ...]:
    """The words under a face: its name, what else is told of it, and what was found, set to a width in mm."""
    lines = [Line(part, fonts.strong, NAME, INK) for part in broken(name, width, fonts.strong, NAME)]
    lines += [Line(part, fonts.text, NOTE, QUIET) for part in broken(told, width, fonts.text, NOTE)]
    for text, colour in _found(specimen.findings):
        lines += [Line(part, fonts.strong, NOTE, colour) for part in broken(text, width, fonts.strong, NOTE)]
    return tuple(lines)


def caption_height(lines: tuple[Line, ...]) -> float:
    """From the foot of the face to under the last line."""
    return DROP + (len(lines) - 1) * LEADING + NOTE * 0.3


def caption_shapes(lines: tuple[Line, ...], x: float, foot: float) -> tuple[Shape, ...]:
    """The words as outlines, from the left edge of the face and under its foot."""
    return tuple(
        words(line.text, x, foot + DROP + n * LEADING, line.font, line.size, colour=line.colour)
        for n, line in enumerate(lines)
    )


def _found(findings: tuple[Finding, ...]) -> Iterator[tuple[str, Colour]]:
    for finding in findings[:_MOST_FINDINGS]:
        yield f"{finding.check}: {finding.measured}, limit {finding.limit}", _TINTS[finding.severity]
    if len(findings) > _MOST_FINDINGS:
        yield f"and {len(findings) - _MOST_FINDINGS} more", _TINTS[findings[_MOST_FINDINGS].severity]
