"""A market basket full of vegetables. Leads with straw, tomato, carrot and sage.

In: nothing. Out: `drawing()` gives the sheet.
"""

from __future__ import annotations

import math
from random import Random

from hand import (
    Points,
    at,
    bow,
    curve,
    heading,
    marks,
    oval,
    placed,
    ring,
    shaky,
    shape,
    sides,
    spot,
    taper,
    touch,
)
from leaves import frilled, leaf
from palette import (
    BARK,
    CARROT,
    CREAM,
    DAMSON,
    DENIM,
    DUSTY,
    FERN,
    GARNET,
    LEAF,
    LEAF_DARK,
    LEAF_MID,
    LEAF_PALE,
    LINEN,
    MIST,
    PINE,
    RED,
    SAGE,
    SKY,
    SOIL,
    STRAW,
    WICKER,
)
from sheet import Sheet, cast, modelled

HEART = complex(500, 600)  # the middle of the rim
HALF, DIP = 360, 46  # half the rim's width, and how far its near side sags
FLOOR = 850


def woven(u: float, v: float) -> complex:
    """Give a place on the basket's near side: `u` from -1 to 1 across, `v` from 0 at the rim to 1 at the foot."""
    half = HALF - 66 * v - 26 * v * v
    return complex(
        HEART.real + half * math.sin(u * math.pi / 2),
        HEART.imag + DIP * math.cos(u * math.pi / 2) * (1 - v * 0.4) + v * 212,
    )


def weave(sheet: Sheet, rng: Random) -> None:
    """Paint the wickerwork: rods in rows, over and under in turn."""
    us = [k / 8 for k in range(-8, 9)]
    outline = shape(
        [woven(u, 0) for u in us[::2]],
        [woven(1, v / 4) for v in range(5)],
        [woven(u, 1) for u in us[::-2]],
        [woven(-1, 1 - v / 4) for v in range(5)],
    )
    sheet.fill(outline, BARK)
    rods: dict[str, list[str]] = {STRAW: [], WICKER: [], "#c99a58": []}
    glints = []
    with sheet.inside(outline):
        for row in range(8):
            v = (row + 0.5) / 8
            for k in range(-7, 7):
                u = (k + (row % 2) * 0.5) / 6.7
                a, b = woven(u - 0.02, v), woven(u + 0.165, v + 0.006)
                colour = WICKER if u > 0.6 or (k + row) % 5 == 0 else "#c99a58" if u > 0.25 or row > 5 else STRAW
                rods[colour].append(touch(a, b, 26, -0.01))
                if u < 0.4 and rng.uniform(0, 1) < 0.45:
                    glints.append(touch(a * 0.75 + b * 0.25 - 5j, a * 0.25 + b * 0.75 - 6j, 3, 0.05))
        for colour, paths in rods.items():
            sheet.fill(paths, colour)
        sheet.fill(glints, LINEN)
        sheet.fill(ring([woven(u, 0.06) for u in us[::2]] + [woven(u, 0.2) for u in us[::-2]]), SOIL, 0.3)
        dark = ([woven(0.5, 0), woven(0.66, 0.5), woven(0.5, 1)], [woven(1, 1), woven(1.2, 0.5), woven(1, 0)])
        sheet.fill(shape(*dark), SOIL, 0.22)
        fall = (at(664, 652, 750, 650, 866, 640), at(872, 690, 846, 764, 758, 830), at(690, 780, 644, 766))
        sheet.fill(shape(*fall), SOIL, 0.4)


def braid(sheet: Sheet, line: Points, width: float, skip: int = 0) -> None:
    """Paint a plaited edge along a line."""
    sheet.fill(taper(line, width, width * 1.05, width), WICKER)
    plaits, lights = [], []
    for a, b in zip(line[skip:], line[skip + 1 :], strict=False):
        side = -1j * (b - a) / abs(b - a) * width / 2
        plaits.append(touch(a - side * 0.86, b + (b - a) * 0.15 + side * 0.9, width * 0.3, 0.06))
        if (b - a).real > abs(b - a) * 0.3 and a.real < 560:
            lights.append(touch(a - side * 0.4, b + side * 0.7, width * 0.06, 0.1))
    sheet.fill(plaits, STRAW)
    sheet.fill(lights, LINEN)


def rim(sheet: Sheet) -> None:
    """Paint the rim's near side and the braid at the foot."""
    braid(sheet, [woven(k / 11, -0.02) for k in range(-11, 12)], 40)
    braid(sheet, [woven(k / 9, 1.0) for k in range(-9, 10)], 28)


def handle(sheet: Sheet) -> None:
    """Paint the arched handle."""
    arch = [
        HEART + complex(-math.cos(t) * 318, -math.sin(t) * 470 + 10) for t in (math.pi * k / 26 for k in range(27))
    ]
    sheet.fill(taper([p + complex(7, 5) for p in arch], 44, 36, 44), BARK)
    braid(sheet, arch, 36)


def carrot(sheet: Sheet, crown: complex, tip: complex, wide: float, rng: Random) -> None:
    """Paint one carrot, point down in the basket, with its feathery top."""
    spine = bow(crown, tip, 0.03, 6)
    left, right = sides(spine, [wide * w for w in (0.7, 1, 0.94, 0.8, 0.6, 0.4, 0.1)])
    up = (crown - tip) / abs(crown - tip)
    for k, a in enumerate((-40, -14, 12, 40)):
        stem = bow(crown, crown + up * heading(a, rng.uniform(150, 205)), a / 420, 6)
        fronds = [
            touch(p, p + (stem[i + 1] - p) * heading(s * 46, 1.9 - 0.16 * i), 8, 0.1 * s)
            for i, p in enumerate(stem[1:-1], 1)
            for s in (-1, 1)
        ]
        sheet.fill([taper(stem, 8, 5, 2), *fronds], (LEAF, FERN, SAGE)[k % 3])
    modelled(sheet, [*left, *right[::-1]], CARROT, rng, turn=0.22, strokes=4)
    nicks = [
        touch(left[i] * 0.9 + right[i] * 0.1, left[i] * (0.9 - w) + right[i] * (0.1 + w), 2.5, 0.08)
        for i, w in ((1, 0.4), (2, 0.25), (3, 0.5))
    ]
    sheet.fill(nicks, CARROT.deep)
    sheet.fill(touch(left[1] * 0.8 + right[1] * 0.2, left[3] * 0.78 + right[3] * 0.22, 4, 0.02), CARROT.glint)


def lettuce(sheet: Sheet, rng: Random) -> None:
    """Paint the frilled lettuce on the left."""
    for root, tip, width, tones, bend in (
        (300 + 620j, 118 + 420j, 190, LEAF_DARK, 0.1),
        (330 + 620j, 300 + 330j, 200, LEAF_DARK, -0.06),
        (310 + 620j, 196 + 366j, 196, LEAF_MID, 0.08),
        (330 + 630j, 92 + 516j, 150, LEAF_MID, 0.12),
        (330 + 640j, 262 + 430j, 170, LEAF_PALE, 0.08),
    ):
        frilled(sheet, root, tip, width, tones, rng, bend=bend)


TOMATO = marks(
    "0,-0.86 0.5,-0.92 0.98,-0.5 1.06,0.08 0.78,0.68 0.2,0.92 -0.32,0.9 -0.86,0.6 -1.08,0 -0.94,-0.56 -0.46,-0.92"
)


def tomato(sheet: Sheet, rng: Random) -> None:
    """Paint one tomato with its green star, its half width a hundred units."""
    modelled(sheet, placed(TOMATO, 0, 100), RED, rng, turn=0.28, strokes=9)
    top = -72j
    sheet.fill([touch(top, top + heading(s, 36), 3, 0.1) for s in (30, 150)], GARNET, 0.7)
    tips = [heading(20 + 60 * k, rng.uniform(40, 56)) for k in range(6)]
    sheet.fill([touch(top, top + p, 9, 0.12) for p in tips], PINE)
    star = [touch(top - 3j, top - 3j + p * 0.9, 6, 0.12) for p in tips]
    sheet.fill([*star, taper([top, top - complex(-3, 14), top - complex(-10, 26)], 10, 7, 9)], FERN)
    sheet.fill([touch(-66 + 2j, -42 - 44j, 8, 0.14), spot(-26 - 54j, 8)], CREAM)


def aubergine(sheet: Sheet, rng: Random) -> None:
    """Paint the aubergine that lies across the middle."""
    knots = marks(
        "342,520 372,488 430,486 490,510 552,528 602,560 616,610 584,650 520,664 440,650 378,606 346,560"
    )
    modelled(sheet, knots, DAMSON, rng, turn=0.24, strokes=8)
    sheet.fill([touch(402 + 520j, 520 + 544j, 9, 0.05), spot(548 + 558j, 11)], DAMSON.glint)
    cap = shaky(marks("330,490 372,470 420,486 398,508 424,532 384,536 376,578 350,548 320,560 326,520"), 2, rng)
    modelled(sheet, cap, LEAF_MID, rng, turn=0.2, strokes=4)
    stalk = curve(at(340, 506, 310, 482, 300, 448), 3)
    sheet.fill(taper(stalk, 32, 22, 26), LEAF)
    sheet.fill(taper([p - 4 for p in stalk], 8, 7, 9), SAGE)


def peas(sheet: Sheet, rng: Random) -> None:
    """Paint an open pea pod that hangs over the rim."""
    for line, wide in ((bow(452 + 620j, 560 + 742j, -0.16, 6), 52), (bow(420 + 628j, 440 + 770j, 0.12, 6), 46)):
        left, right = sides(line, [wide * w for w in (0.1, 0.6, 0.9, 1, 0.9, 0.6, 0.04)])
        sheet.fill(shape(left, right[::-1]), LEAF_DARK.shade)
        sheet.fill(shape(line, right[::-1]), LEAF_DARK.base)
        for p in line[1:-1]:
            size = wide * rng.uniform(0.5, 0.6)
            sheet.fill(ring(oval(p, size, size, 0, rng)), FERN)
            sheet.fill(ring(oval(p - 2 - 2j, size * 0.7, size * 0.7, 0, rng)), SAGE)
            sheet.fill(spot(p - 5 - 5j, size * 0.24), MIST)
        sheet.fill(
            shape(left, [p * 0.76 + q * 0.24 for p, q in zip(left, right, strict=True)][::-1]), LEAF_DARK.light
        )
        sheet.fill(taper([line[0], line[0] - 14j, line[0] - complex(10, 24)], 8, 6, 7), LEAF)


def napkin(sheet: Sheet) -> None:
    """Paint the striped cloth that hangs out of the basket on the right."""
    cloth = shape(
        at(664, 640, 752, 628, 838, 600),
        at(838, 600, 862, 668, 836, 742),
        at(836, 742, 790, 772, 748, 806),
        at(748, 806, 690, 760, 650, 748),
        at(650, 748, 672, 690, 664, 640),
    )
    sheet.fill(cloth, CREAM)
    with sheet.inside(cloth):
        for x, wide in ((676, 8), (696, 18), (726, 8), (776, 8), (796, 18), (826, 8)):
            lean = [complex(x + 4, 590), complex(x, 700), complex(x - 14 + (x - 740) * 0.06, 820)]
            sheet.fill(shape(lean, [p + wide for p in lean[::-1]]), DENIM)
        sheet.fill(
            shape(
                marks("640,748 690,752 748,800 790,762 850,732"), marks("850,716 790,744 748,780 690,734 640,730")
            ),
            DUSTY,
        )
        sheet.fill(
            [
                touch(760 + 634j, 752 + 800j, 12, 0.03),
                touch(700 + 650j, 690 + 752j, 7),
                touch(812 + 620j, 822 + 740j, 7),
            ],
            DUSTY,
            0.6,
        )
        sheet.fill(touch(744 + 640j, 736 + 790j, 6), SKY, 0.8)


def drawing() -> Sheet:
    """Paint the basket."""
    sheet, rng = Sheet(920, 800, 44, 96), Random(41)
    back = [
        HEART + complex(HALF * math.sin(k / 8 * math.pi / 2), -DIP * 0.9 * math.cos(k / 8 * math.pi / 2))
        for k in range(-8, 9)
    ]
    sheet.fill(shape(back, [woven(k / 8, 0) for k in range(8, -9, -1)]), SOIL)
    sheet.fill(taper(back, 26, 26, 26), WICKER)
    sheet.fill(taper([p - 4j for p in back], 8, 9, 8), STRAW)
    with sheet.stamp("carrot"):
        carrot(sheet, 0j, -60 + 280j, 66, rng)
    for crown, size, turn in ((622 + 346j, 1.0, 3), (700 + 372j, 1.04, 8), (772 + 430j, 0.98, 18)):
        sheet.press("carrot", crown, size, turn)
    handle(sheet)
    lettuce(sheet, rng)
    leaf(sheet, 470 + 560j, 452 + 336j, 96, LEAF_DARK, rng, bend=0.06, veins=3)
    leaf(sheet, 490 + 560j, 530 + 380j, 84, LEAF_MID, rng, bend=-0.08, veins=3)
    aubergine(sheet, rng)
    with sheet.stamp("tomato"):
        tomato(sheet, rng)
    sheet.press("tomato", 760 + 566j, 0.88, 8)
    cast(sheet, placed(TOMATO, 760 + 566j, 88, 8), oval(668 + 614j, 196, 190), GARNET, 0.5)
    sheet.press("tomato", 654 + 588j, 0.94, -8, 0.98)
    sheet.press("tomato", 300 + 606j, 0.76, -16, 0.72)
    weave(sheet, rng)
    napkin(sheet)
    rim(sheet)
    peas(sheet, rng)
    return sheet
