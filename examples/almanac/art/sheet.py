"""A sheet being painted: fills and clips gathered into one self-contained SVG, and forms modelled in tones.

In: path texts of `hand` and colours of `palette`. Out: a `Sheet`, whose
`text()` is the whole file. Paths, clips and gradients only.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from random import Random

from hand import Points, curve, drawn_in, middle, oval, reach, ring, touch
from palette import Tones

LIGHT = complex(-0.75, -0.66)  # where the light comes from, in every picture
AROUND = "M-300-300h1600v1600h-1600z"  # all of any sheet, to be left open where a second outline lies


class Sheet:
    """An SVG of `width` × `height` units being painted; `left` and `top` are its corner's place."""

    def __init__(self, width: int, height: int, left: int = 0, top: int = 0) -> None:
        self.width, self.height, self.left, self.top = width, height, left, top
        self._body: list[str] = []
        self._defs = 0

    def fill(self, paths: str | Iterable[str], colour: str, opacity: float = 1, holes: bool = False) -> None:
        """Fill one or several paths as one; `holes` leaves out what is covered twice."""
        d = paths if isinstance(paths, str) else "".join(paths)
        if not d:
            return
        veil = f' fill-opacity="{opacity:.2g}"'.replace('"0.', '".') if opacity < 1 else ""
        rule = ' fill-rule="evenodd"' if holes else ""
        self._body.append(f'<path d="{d}" fill="{colour}"{veil}{rule}/>')

    def blend(self, first: str, last: str, down: bool = True) -> str:
        """Define a gradient from one colour to another, downwards or to the right, and name it as a fill."""
        self._defs += 1
        way = 'x2="0" y2="1"' if down else 'x2="1" y2="0"'
        self._body.append(
            f'<linearGradient id="g{self._defs}" x1="0" y1="0" {way}>'
            f'<stop offset="0" stop-color="{first}"/><stop offset="1" stop-color="{last}"/></linearGradient>'
        )
        return f"url(#g{self._defs})"

    @contextmanager
    def inside(self, outline: str) -> Iterator[None]:
        """Keep what is painted meanwhile inside an outline."""
        self._defs += 1
        self._body.append(f'<clipPath id="k{self._defs}"><path d="{outline}"/></clipPath>')
        self._body.append(f'<g clip-path="url(#k{self._defs})">')
        yield
        self._body.append("</g>")

    @contextmanager
    def stamp(self, name: str) -> Iterator[None]:
        """Keep what is painted meanwhile as a stamp, to be printed where it is wanted."""
        self._body.append(f'<defs><g id="{name}">')
        yield
        self._body.append("</g></defs>")

    def press(self, name: str, where: complex, across: float, turn: float = 0, down: float = 0) -> None:
        """Print a stamp, its origin at `where`, scaled and turned; `down` scales it otherwise the other way."""
        place = f"translate({round(where.real)} {round(where.imag)})"
        place += f"rotate({round(turn)})" if turn else ""
        place += f"scale({across:.2f}" + (f" {down:.2f})" if down else ")")
        self._body.append(f'<use href="#{name}" transform="{place}"/>')

    def text(self) -> str:
        """Give the whole file."""
        size = f'width="{self.width}" height="{self.height}"'
        box = f'{size} viewBox="{self.left} {self.top} {self.width} {self.height}"'
        return "\n".join([f'<svg xmlns="http://www.w3.org/2000/svg" {box}>', *self._body, "</svg>", ""])


def hatching(
    knots: Points,
    rng: Random,
    count: int,
    lit: bool,
    inset: tuple[float, float],
    width: float,
    spread: float = 0.2,
) -> list[str]:
    """Give dry-brush touches that follow a form's outline on its lit or shaded side.

    `inset` is how far in from the outline they lie, as shares of the way to
    the middle; `spread` how far round they go, as a share of the outline.
    """
    rim, centre = curve(knots, 6, closed=True), middle(knots)
    n, toward = len(rim), LIGHT if lit else -LIGHT
    start = max(range(n), key=lambda i: round(((rim[i] - centre) * toward.conjugate()).real, 6))
    out = []
    for _ in range(count):
        place, long = rng.uniform(-spread, spread), rng.uniform(0.03, 0.09)
        depth = rng.uniform(*inset)
        a, m, b = (
            centre + (rim[(start + round((place + s * long) * n)) % n] - centre) * (1 - depth) for s in (-1, 0, 1)
        )
        if abs(b - a) < 1:
            continue
        bend = ((m - (a + b) / 2) * (1j / (b - a))).real
        out.append(touch(a, b, width * rng.uniform(0.5, 1.1), bend))
    return out


def _half(points: Points) -> tuple[float, float]:
    """Give half the width and half the height of the points' box."""
    corner = max(p.real for p in points) + max(p.imag for p in points) * 1j - middle(points)
    return corner.real, corner.imag


def modelled(
    sheet: Sheet, knots: Points, tones: Tones, rng: Random, turn: float = 0.2, strokes: int = 10, outline: str = ""
) -> None:
    """Paint a rounded form: ground tone, two shades away from the light, a lit patch, dry touches between.

    `turn` is how much of the form turns from the light, as a share of its half size.
    """
    edge, size = outline or ring(knots), reach(knots)
    sheet.fill(edge, tones.base)
    with sheet.inside(edge):
        sheet.fill(AROUND + ring(drawn_in(knots, 0.97, LIGHT * size * turn)), tones.shade, holes=True)
        sheet.fill(AROUND + ring(drawn_in(knots, 1, LIGHT * size * turn * 0.42)), tones.deep, 0.75, holes=True)
        sheet.fill(ring(oval(middle(knots) + LIGHT * size * 0.3, *_half(knots), -20, rng, 0.06)), tones.light, 0.5)
        sheet.fill(hatching(knots, rng, strokes, False, (0.2, 0.5), size * 0.035), tones.shade, 0.8)
        sheet.fill(hatching(knots, rng, strokes // 2, False, (0.05, 0.2), size * 0.03), tones.deep, 0.7)
        sheet.fill(hatching(knots, rng, strokes, True, (0.12, 0.55), size * 0.03), tones.light, 0.9)


def stamped(sheet: Sheet, knots: Points, tones: Tones, rng: Random) -> None:
    """Paint a small rounded form for a stamp, its shades kept inside without a clip, which is slow in a stamp."""
    edge, size = ring(knots), reach(knots)
    sheet.fill(edge, tones.base)
    sheet.fill(edge + ring(drawn_in(knots, 0.82, LIGHT * size * 0.13)), tones.shade, holes=True)
    sheet.fill(edge + ring(drawn_in(knots, 0.91, LIGHT * size * 0.065)), tones.deep, 0.75, holes=True)
    patch = oval(middle(knots) + LIGHT * size * 0.3, *(side * 0.6 for side in _half(knots)), -20, rng, 0.06)
    sheet.fill(ring(patch), tones.light, 0.5)


def cast(sheet: Sheet, onto: Points, caster: Points, colour: str, strength: float = 0.5) -> None:
    """Paint the shadow that one form throws on another; `caster` is its outline, moved to the shadow's place."""
    with sheet.inside(ring(onto)):
        sheet.fill(ring(caster), colour, strength)
