"""Leaves, stems and blossoms, which most of the pictures share.

In: a sheet, places by eye, tones. Out: paint on the sheet.
"""

from __future__ import annotations

import math
from random import Random

from hand import Points, bow, heading, oval, ring, shaky, shape, sides, spot, taper, touch
from palette import CREAM, HONEY, LINEN, MUSTARD, OCHRE, Tones
from sheet import LIGHT, Sheet

KNOTS = (0, 1, 3, 5, 7, 9, 11, 12)  # of the twelve steps along a midrib
FRILLS = 20


def leaf(
    sheet: Sheet,
    base: complex,
    tip: complex,
    width: float,
    tones: Tones,
    rng: Random,
    *,
    bend: float = 0.12,
    veins: int = 5,
    full: float = 0.85,
    wave: float = 0.02,
) -> None:
    """Paint one leaf: a lit and a shaded half, midrib, veins and a few dry touches.

    `full` below 1 makes it broadest nearer its base; `wave` is how much its
    edges waver, as a share of the width.
    """
    spine = [bow(base, tip, bend)[k] for k in KNOTS]
    widths = [width * math.sin(math.pi * (k / 12) ** full) ** 0.85 for k in KNOTS]
    left, right = sides(spine, widths)
    left, right = ([run[0], *shaky(run[1:-1], width * wave, rng), run[-1]] for run in (left, right))
    left[0] = right[0] = base
    left[-1] = right[-1] = tip
    sheet.fill(shape(left, right[::-1]), tones.base)
    lit = ((left[4] - right[4]) * LIGHT.conjugate()).real > 0
    dark, bright = (right, left) if lit else (left, right)
    sheet.fill(shape(spine[::2] + spine[-1:], dark[::-1]), tones.shade)
    way = -1 if lit else 1
    rim = [e + (s - e) * 0.14 for e, s in zip(bright, spine, strict=True)]
    sheet.fill(shape(bright[1:], rim[:1:-1]), tones.light, 0.85)
    ribs, dry, low = [taper(spine[::2] + spine[-1:], width * 0.055, width * 0.045, 2)], [], []
    for k in range(veins):
        i = 1 + k * 5 // max(veins, 1)
        for edge, sign in ((bright, way), (dark, -way)):
            end = spine[i + 1] + (edge[i + 1] - spine[i + 1]) * rng.uniform(0.7, 0.86)
            ribs.append(touch(spine[i], end, width * 0.016, 0.08 * sign))
            share = rng.uniform(0.25, 0.6)
            start = spine[i] + (edge[i] - spine[i]) * share
            stop = spine[i + 1] + (edge[i + 1] - spine[i + 1]) * min(0.85, share + 0.3)
            (dry if edge is bright else low).append(
                touch(start, stop, width * rng.uniform(0.02, 0.045), 0.05 * sign)
            )
    sheet.fill(dry, tones.light, 0.7)
    sheet.fill(low, tones.deep, 0.7)
    sheet.fill(ribs, tones.glint, 0.8)


def blades(sheet: Sheet, roots: Points, tips: Points, width: float, tones: Tones, rng: Random) -> None:
    """Paint thin blades, as of grass or chives, every third one darker and every third lighter."""
    for shade in range(3):
        colour = (tones.shade, tones.base, tones.light)[shade]
        pairs = list(zip(roots, tips, strict=True))[shade::3]
        sheet.fill([touch(a, b, width * rng.uniform(0.8, 1.2), rng.uniform(-0.1, 0.1)) for a, b in pairs], colour)


def blossom(
    sheet: Sheet,
    centre: complex,
    size: float,
    rng: Random,
    *,
    turn: float = 0,
    petals: int = 5,
    blush: str = LINEN,
) -> None:
    """Paint an open flower seen from the front, with a fringe of stamens."""
    below, above, veins = [], [], []
    for k in range(petals):
        out = heading(turn + 360 / petals * (k + rng.uniform(-0.08, 0.08)), size * rng.uniform(0.94, 1.06))
        knots = [0.08, 0.4 - 0.3j, 0.8 - 0.38j, 1.02 - 0.14j, 0.97 + 0.05j, 1.0 + 0.2j, 0.76 + 0.4j, 0.38 + 0.28j]
        below.append(ring([centre + out * p for p in knots]))
        above.append(ring([centre + out * (0.05 + (p - 0.05) * 0.86) - size * 0.04 for p in knots]))
        veins += [
            touch(centre + out * 0.25, centre + out * (0.62 + s * 0.2j), size * 0.03, s * 0.08) for s in (-1, 1)
        ]
    sheet.fill(below, blush)
    sheet.fill(above, CREAM)
    sheet.fill(veins, blush)
    ends = [centre + heading(turn + 20 + 360 / 8 * k, size * rng.uniform(0.26, 0.4)) for k in range(8)]
    sheet.fill([touch(centre, end, size * 0.05) for end in ends], MUSTARD)
    sheet.fill([spot(end, size * 0.12) for end in ends], OCHRE)
    sheet.fill(ring(oval(centre, size * 0.32, size * 0.3, 0, rng)), HONEY)


def bud(sheet: Sheet, root: complex, tip: complex, width: float, tones: Tones, cup: Tones) -> None:
    """Paint a closed bud in its green cup."""
    along = tip - root
    side = 1j * along / abs(along) * width / 2
    sheet.fill(ring([root, root + along * 0.45 - side, tip, root + along * 0.45 + side]), tones.base)
    sheet.fill(touch(root + along * 0.2 - side * 0.4, tip, width * 0.18, -0.1), tones.light)
    sheet.fill(touch(root + along * 0.2 + side * 0.6, tip, width * 0.12, 0.12), tones.shade)
    sheet.fill(
        ring([root - along * 0.1, root + along * 0.3 - side * 0.8, root + along * 0.3 + side * 0.8]), cup.shade
    )
    sheet.fill(touch(root, root + along * 0.42 - side * 0.7, width * 0.12), cup.light)


def daisy(sheet: Sheet, centre: complex, size: float, rng: Random, petals: int = 13, squash: float = 1) -> None:
    """Paint a daisy; `squash` below 1 tips it away."""

    def on(p: complex) -> complex:
        return centre + complex(p.real, p.imag * squash) * size

    tips = [heading(360 / petals * (k + rng.uniform(-0.15, 0.15)), rng.uniform(0.9, 1.08)) for k in range(petals)]
    sheet.fill([touch(centre, on(p) + complex(2, 4), size * 0.22) for p in tips], LINEN)
    sheet.fill([touch(centre, on(p), size * 0.19) for p in tips], CREAM)
    sheet.fill(ring(oval(on(0.02 + 0.04j), size * 0.68, size * 0.62 * squash, 0, rng)), OCHRE)
    sheet.fill(ring(oval(on(-0.02 - 0.03j), size * 0.6, size * 0.54 * squash, 0, rng)), MUSTARD)
    sheet.fill([spot(on(heading(a, 0.14)), size * 0.1) for a in (170, 230, 300)], HONEY)


def needles(sheet: Sheet, spine: Points, long: float, tones: Tones, rng: Random) -> None:
    """Paint a sprig of narrow leaves in pairs along a stem, as of rosemary."""
    dark, pale = [], []
    for k, p in enumerate(spine[1:], 1):
        way = p - spine[k - 1]
        way /= abs(way)
        reach = long * (1.1 - 0.5 * k / len(spine)) * rng.uniform(0.9, 1.1)
        for side in (-1, 1):
            tip = p + way * heading(side * rng.uniform(36, 56), reach)
            dark.append(touch(p, tip, reach * 0.19, -0.08 * side))
            if side > 0 or k % 2:
                pale.append(touch(p + (tip - p) * 0.15, p + (tip - p) * 0.85, reach * 0.045, -0.08 * side))
    top = spine[-1] + (spine[-1] - spine[-2])
    sheet.fill([*dark, taper(spine, 7, 5, 3), touch(spine[-1], top, long * 0.16)], tones.base)
    sheet.fill(pale, tones.light, 0.9)


def pompom(sheet: Sheet, centre: complex, size: float, tones: Tones, rng: Random) -> None:
    """Paint a round head of small florets, as of chives."""
    florets: dict[str, str] = {}
    sheet.fill(ring(oval(centre, size * 1.5, size * 1.4, 0, rng)), tones.shade)
    for colour, count, share in ((tones.shade, 13, 1.0), (tones.base, 11, 0.82), (tones.light, 8, 0.56)):
        middle = centre + LIGHT * size * (1 - share) * 0.6
        for k in range(count):
            out = heading(360 / count * (k + rng.uniform(-0.2, 0.2)), size * share * rng.uniform(0.9, 1.08))
            florets[colour] = florets.get(colour, "") + touch(middle + out * 0.2, middle + out, size * 0.15)
    for colour, paths in florets.items():
        sheet.fill(paths, colour)


def frilled(
    sheet: Sheet, root: complex, tip: complex, width: float, tones: Tones, rng: Random, *, bend: float = 0.08
) -> None:
    """Paint one broad frilled leaf, as of lettuce or cabbage."""
    spine, along = bow(root, tip, bend, 8), tip - root
    frill = []
    for k in range(1, FRILLS):
        a = 2 * math.pi * k / FRILLS
        p = complex(0.52 - 0.5 * math.cos(a), -width / 2 / abs(along) * math.sin(a) * (1.0 - 0.28 * math.cos(a)))
        p = (p - 0.55) * (1.07 if k % 2 else 0.95) + 0.55
        frill.append(along * p + spine[round(min(1, max(0, p.real)) * 8)] - along * p.real)
    frill, heart = shaky(frill, 4, rng), spine[5]
    sheet.fill(ring([root, *frill]), tones.base)
    inner = [p * 0.8 + heart * 0.2 for p in frill]
    lit = ((frill[4] - frill[-5]) * LIGHT.conjugate()).real > 0
    sheet.fill(
        shape(spine[::2], [tip, *(inner[FRILLS // 2 + 1 :] if lit else inner[FRILLS // 2 - 3 :: -1])]),
        tones.shade,
        0.8,
    )
    sheet.fill([touch(p, p * 0.76 + heart * 0.24, width * 0.04, 0.1) for p in frill[2:-2:2]], tones.light)
    ends = zip((1, 3, 4), (3, 6, 8), strict=True)
    ribs = [touch(spine[i], inner[k if s else -1 - k], width * 0.02, 0.06) for i, k in ends for s in (0, 1)]
    sheet.fill([taper(spine[::2], width * 0.12, width * 0.06, 3), *ribs], tones.glint, 0.85)
