"""A round enamel teapot on a striped towel, steaming. Leads with dusty blue, cream and a tomato knob.

In: nothing. Out: `drawing()` gives the sheet.
"""

from __future__ import annotations

import math
from random import Random

from hand import at, curve, heading, marks, oval, ring, shaky, shape, spot, taper, touch
from leaves import leaf
from palette import (
    BUTTER,
    CREAM,
    DENIM,
    DUSTY,
    ENAMEL,
    HONEY,
    INK,
    LEAF,
    LEAF_MID,
    LEMON,
    LINEN,
    RED,
    SKY,
    SLATE,
    STRAW,
    TOMATO,
)
from sheet import Sheet, modelled

POT = marks("310,384 238,446 198,560 222,682 312,762 480,786 650,762 738,682 762,560 722,446 650,384 480,368")
SPOUT = marks("300,690 205,640 148,552 122,468 66,402 76,372 134,362 186,396 220,462 262,498 330,520")
LID = marks("338,388 352,346 400,312 480,298 560,312 610,346 624,388 560,408 480,414 400,408")
TOWEL = (
    at(58, 806, 150, 780, 196, 738),
    at(196, 738, 420, 744, 660, 730, 850, 736),
    at(850, 736, 880, 782, 962, 822),
    marks("962,822 760,846 560,838 340,858 96,868"),
    at(96, 868, 92, 836, 58, 806),
)


def steam(sheet: Sheet) -> None:
    """Paint the curl that rises from the spout."""
    curl = curve(
        marks("86,350 58,312 58,274 88,240 122,208 136,170 118,132 112,92 140,58 184,56 208,84 198,116 172,118"), 3
    )
    sheet.fill(taper([p + complex(4, 3) for p in curl], 5, 38, 5), DUSTY)
    sheet.fill(taper(curl, 5, 34, 5), SKY)
    sheet.fill(taper([p + complex(-3, -2) for p in curl[3:32]], 2, 13, 2), CREAM)
    wisp = curve(marks("140,344 166,312 178,276 180,244 196,214 226,192 236,160 226,136"), 3)
    sheet.fill(taper([p + 3 for p in wisp], 3, 23, 3), DUSTY)
    sheet.fill(taper(wisp, 3, 20, 3), SKY)
    sheet.fill(taper([p - 2 for p in wisp[3:-4]], 2, 7, 2), CREAM)


def towel(sheet: Sheet, rng: Random) -> None:
    """Paint the folded towel with its stripes and the pot's shadow on it."""
    edge = shape(*TOWEL)
    fringe = [(complex(62 + k * 5, 808 + k * 9), complex(34 + k * 6, 822 + k * 9)) for k in range(7)]
    fringe += [(complex(872 + k * 14, 772 + k * 8), complex(902 + k * 14, 768 + k * 8)) for k in range(7)]
    sheet.fill([touch(a, b, 4, rng.uniform(-0.1, 0.1)) for a, b in fringe], STRAW)
    sheet.fill(edge, LINEN)
    with sheet.inside(edge):
        sheet.fill(
            shape(at(40, 790, 190, 728, 860, 726, 970, 812), at(970, 812, 700, 826, 420, 830, 70, 850)), CREAM
        )
        for x, wide in ((120, 11), (148, 26), (190, 11), (800, 11), (828, 26), (870, 11)):
            way = 0.5 if x < 500 else -0.42
            lean = [complex(x + (800 - y) * way, y) for y in (700, 790, 880)]
            sheet.fill(shape(lean, [p + wide * (1 + (p.imag - 790) / 300) for p in lean[::-1]]), TOMATO)
        sheet.fill(ring(oval(530 + 788j, 580, 70, 0, rng)), SLATE, 0.3)
        sheet.fill(ring(oval(500 + 784j, 400, 42, 0, rng)), INK, 0.5)
        folds = [touch(complex(x, 832), complex(x + 130, 830), 4, 0.08) for x in (230, 430, 640)]
        sheet.fill(folds, STRAW)


def handle(sheet: Sheet) -> None:
    """Paint the handle behind the pot."""
    line = curve(marks("690,442 772,386 868,400 912,482 894,588 826,650 690,690"), 4)
    sheet.fill(taper(line, 44, 52, 36), SLATE)
    sheet.fill(taper([p + complex(-4, -6) for p in line], 26, 34, 22), DENIM)
    sheet.fill(taper([p + complex(-9, -10) for p in line[3:-4]], 3, 14, 3), SKY)
    sheet.fill([touch(line[k] + 14, line[k + 3] + complex(12, 8), 4, -0.1) for k in (9, 14, 18)], INK, 0.8)


def flower(sheet: Sheet, around: float, height: float, size: float, rng: Random) -> None:
    """Paint one of the pattern's flowers, `around` degrees from the front of the pot."""
    squeeze = math.cos(math.radians(around))
    centre = complex(480 + 292 * math.sin(math.radians(around)), height + 34 * squeeze)

    def on(p: complex) -> complex:
        return centre + complex(p.real * squeeze, p.imag) * size

    petals = []
    for k in range(7):
        out = heading(k * 360 / 7 - 90 + rng.uniform(-4, 4))
        petals.append(ring([on(out * p) for p in (0.2, 0.62 - 0.24j, 1, 0.64 + 0.26j)]))
    leaves = [touch(on(1.82j), on(s * 1.05 + 1.0j), size * 0.3 * squeeze, 0.14 * s) for s in (-1, 1)]
    sheet.fill([*leaves, taper([on(0.5j), on(1.2j + 0.04), on(1.95j)], 5, 5, 6)], INK, 0.85)
    sheet.fill([touch(on(1.7j + s * 0.1), on(s * 0.92 + 1.08j), size * 0.05, 0.14 * s) for s in (-1, 1)], DENIM)
    sheet.fill(petals, CREAM)
    sheet.fill([touch(on(0.3 * w), on(0.75 * w), size * 0.05) for w in map(heading, range(-90, 250, 103))], DUSTY)
    sheet.fill(ring([on(p) for p in oval(0, 0.56, 0.56, 0, rng, 0.1)]), TOMATO)
    sheet.fill(spot(on(-0.08 - 0.08j), size * 0.16), HONEY)


def pattern(sheet: Sheet, rng: Random) -> None:
    """Paint the band of flowers, with scallops above and dots below."""
    with sheet.inside(ring(POT)):
        for around in (-66, 66, -34, 34, 0):
            flower(sheet, around, 512, 66, rng)
        tips, dots = [], []
        for k in range(-9, 10):
            a = math.radians(k * 9.6)
            squeeze = math.cos(a)
            x, y = 480 + 262 * math.sin(a), 398 + 30 * squeeze
            tips.append(ring(oval(complex(x, y + 6), 40 * squeeze + 6, 34, 0, rng)))
            x = 480 + 262 * math.sin(a)
            dots.append(spot(complex(x, 688 + 36 * squeeze), 9 + 9 * squeeze))
        sheet.fill(tips, CREAM, 0.95)
        sheet.fill(dots, CREAM, 0.9)
        sheet.fill(
            shape(at(150, 372, 480, 356, 800, 372), marks("800,398 650,414 480,420 310,414 160,398")), DENIM
        )


def lid(sheet: Sheet, rng: Random) -> None:
    """Paint the lid with its rim and knob."""
    sheet.fill(ring(oval(480 + 394j, 336, 58, 0, rng, 0.01)), INK)
    modelled(sheet, LID, ENAMEL, rng, strokes=8)
    sheet.fill(taper(curve(marks("334,390 400,410 480,416 560,410 628,388"), 3), 8, 13, 8), INK)
    sheet.fill(
        [spot(complex(x, y), 13) for x, y in ((388, 372), (432, 382), (480, 386), (528, 382), (574, 372))], CREAM
    )
    sheet.fill(ring(oval(480 + 300j, 66, 24, 0, rng)), SLATE)
    modelled(sheet, shaky(oval(480 + 266j, 82, 74), 2, rng), RED, rng, strokes=4)
    sheet.fill(touch(456 + 268j, 474 + 244j, 6, 0.14), CREAM)


def lemon_half(sheet: Sheet, centre: complex, size: float, rng: Random) -> None:
    """Paint half a lemon lying against the pot, its cut face to the front."""
    modelled(sheet, oval(centre + 10 + 4j, size * 2.15, size * 2, -16, rng), LEMON, rng, strokes=2)
    sheet.fill(ring(oval(centre, size * 1.92, size * 1.84, -16, rng, 0.02)), CREAM)
    wedges, grain = [], []
    for k in range(9):
        a = 40 * k + 8
        knots = [
            heading(a, 0.12),
            heading(a - 15, 0.6),
            heading(a - 14, 0.78),
            heading(a, 0.83),
            heading(a + 14, 0.78),
        ]
        wedges.append(ring([centre + size * p for p in [*knots, heading(a + 15, 0.6)]]))
        grain += [
            touch(centre + heading(a + s, size * 0.3), centre + heading(a + s, size * 0.7), 2) for s in (-7, 6)
        ]
    sheet.fill(wedges, HONEY)
    sheet.fill(grain, BUTTER)
    sheet.fill(touch(centre + heading(200, size * 0.72), centre + heading(265, size * 0.74), 4, 0.2), CREAM)


def drawing() -> Sheet:
    """Paint the teapot."""
    sheet, rng = Sheet(1000, 880), Random(7)
    steam(sheet)
    towel(sheet, rng)
    handle(sheet)
    modelled(sheet, SPOUT, ENAMEL, rng, turn=0.3, strokes=8)
    sheet.fill(ring(oval(100 + 380j, 80, 30, -16, rng)), INK)
    sheet.fill(ring(oval(103 + 384j, 52, 14, -16, rng)), SLATE)
    modelled(sheet, POT, ENAMEL, rng, strokes=18)
    pattern(sheet, rng)
    with sheet.inside(ring(POT)):
        sheet.fill(ring(POT) + ring([p + complex(-46, -26) for p in POT]), SLATE, 0.35, holes=True)
    foot = curve(marks("330,768 400,784 480,790 560,784 634,766"), 3)
    sheet.fill(taper(foot, 14, 24, 14), INK)
    sheet.fill([spot(p, s) for p, s in ((372 + 776j, 10), (384 + 780j, 6), (604 + 774j, 8))], DUSTY)
    lid(sheet, rng)
    leaf(sheet, 250 + 800j, 120 + 736j, 74, LEAF_MID, rng, bend=0.14)
    leaf(sheet, 256 + 806j, 150 + 842j, 62, LEAF_MID, rng, bend=-0.14)
    sheet.fill(touch(240 + 800j, 306 + 812j, 5, 0.1), LEAF)
    lemon_half(sheet, 786 + 762j, 68, rng)
    return sheet
