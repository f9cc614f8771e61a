"""What stands near in the kitchen garden: sunflowers, beans and tomatoes on canes, cabbages and pots.

In: the sheet of the garden. Out: paint along its left, right and lower edges and its upper corners.
"""

from __future__ import annotations

import cmath
import math
from random import Random

from hand import at, bow, curve, heading, marks, oval, ring, shaky, shape, spot, taper, touch
from leaves import blossom, frilled, leaf, pompom
from palette import (
    BARK,
    BRICK,
    BUTTER,
    CORAL,
    HONEY,
    LEAF,
    LEAF_DARK,
    LEAF_MID,
    MIST,
    MUSTARD,
    OCHRE,
    PETAL,
    PINE,
    RED,
    SAGE,
    SOIL,
    STRAW,
    TOMATO,
    WICKER,
    Tones,
)
from sheet import LIGHT, Sheet, stamped

BOUGH: tuple[tuple[complex, complex, float, Tones], ...] = (
    (30 + 66j, -10 + 170j, 70, LEAF_DARK),
    (84 + 74j, 120 + 180j, 66, LEAF_MID),
    (120 + 66j, 60 - 20j, 64, LEAF_MID),
    (170 + 54j, 186 - 40j, 62, LEAF_DARK),
    (214 + 54j, 236 + 152j, 60, LEAF_DARK),
    (300 + 62j, 280 - 20j, 60, LEAF_MID),
    (320 + 66j, 330 + 150j, 52, LEAF_MID),
    (400 + 50j, 470 + 100j, 46, LEAF_DARK),
    (420 + 44j, 500 + 22j, 42, LEAF_MID),
    (870 + 40j, 890 + 140j, 62, LEAF_DARK),
    (820 + 52j, 780 + 140j, 58, LEAF_MID),
    (800 + 50j, 790 - 30j, 58, LEAF_DARK),
    (700 + 50j, 650 - 14j, 50, LEAF_MID),
    (670 + 58j, 590 + 96j, 46, LEAF_DARK),
)
# Which way each outer leaf lies, its length and width in hundredths of the cabbage.
CABBAGE_LEAVES = ((238, 98, 100), (302, 98, 100), (192, 100, 90), (348, 100, 90), (146, 74, 80), (34, 74, 80))
CABBAGE_FAR = Tones("#2a5560", "#3f6f72", "#5f8e88", "#84ac9f", "#9fc0b0")
CABBAGE_NEAR = Tones("#235049", "#386b60", "#4f8072", "#7ba591", "#98bda6")
CLAY = Tones("#8b3f2c", "#b4573a", "#d17a50", "#eba67a")


def stamps(sheet: Sheet, rng: Random) -> None:
    """Paint what is repeated, each once: leaves, flowers, tomatoes, cabbage, pot."""
    for tones, letter in ((LEAF_DARK, "d"), (LEAF_MID, "m")):
        with sheet.stamp(letter):
            leaf(sheet, 0j, 200 + 0j, 160, tones, rng, bend=0.08, veins=3, full=0.74)
    with sheet.stamp("sunflower"):
        sunflower(sheet, 0j, 100, rng)
    for ripe, tones in ((1, RED), (0, Tones(OCHRE, MUSTARD, HONEY, BUTTER))):
        with sheet.stamp(f"tomato{ripe}"):
            tomato(sheet, tones, rng)
    for name, tones in (("far", CABBAGE_FAR), ("near", CABBAGE_NEAR)):
        with sheet.stamp(name):
            frilled(sheet, 0j, 100 + 0j, 100, tones, rng, bend=0.03)
    with sheet.stamp("cabbage"):
        cabbage(sheet, 0j, 128, rng)
    with sheet.stamp("blossom"):
        blossom(sheet, 0j, 60, rng, blush=PETAL)
    with sheet.stamp("marigold"):
        pompom(sheet, 0j, 60, Tones(BRICK, "#c2402c", TOMATO, CORAL), rng)
    with sheet.stamp("pot"):
        pot(sheet, 0j, 120, rng)


def put_leaf(sheet: Sheet, base: complex, tip: complex, width: float, tones: Tones) -> None:
    """Print a leaf stamp from a base to a tip, turned over where its lit side would lie away from the light."""
    along = tip - base
    side = 1 if (-1j * along * LIGHT.conjugate()).real > 0 else -1
    name = "d" if tones is LEAF_DARK else "m"
    sheet.press(name, base, abs(along) / 200, math.degrees(cmath.phase(along)), side * width / 160)


def tomato(sheet: Sheet, tones: Tones, rng: Random) -> None:
    """Paint one tomato, sixty units across."""
    stamped(sheet, shaky(oval(0j, 60, 56), 1.5, rng), tones, rng)
    sheet.fill([touch(-24j, -24j + heading(a, 21), 4) for a in (-160, -20, 40, 90, 150)], PINE)
    sheet.fill(touch(-17 + 1j, -6 - 14j, 3, 0.14), "#ffe9d8")


def bough(sheet: Sheet) -> None:
    """Paint the apple bough in blossom that hangs in from above."""
    line = curve(marks("-20,60 90,74 200,50 330,66 430,42"), 4)
    sheet.fill(taper(line, 30, 20, 6), BARK)
    sheet.fill(taper([p - 4j for p in line], 8, 6, 2), WICKER)
    twig = curve(at(910, 30, 820, 52, 730, 44, 660, 60), 4)
    sheet.fill(taper(twig, 24, 15, 6), BARK)
    sheet.fill(taper([p - 3j for p in twig], 7, 5, 2), WICKER)
    for base, tip, width, tones in BOUGH:
        put_leaf(sheet, base, tip, width, tones)
    for centre, size in (
        (58 + 66j, 40),
        (172 + 62j, 36),
        (268 + 84j, 34),
        (356 + 52j, 30),
        (846 + 58j, 38),
        (742 + 40j, 32),
    ):
        sheet.press("blossom", centre, size / 60, centre.real % 72)


def sunflower(sheet: Sheet, centre: complex, size: float, rng: Random) -> None:
    """Paint one sunflower."""
    for colour, count, share, wide in ((OCHRE, 15, 1.0, 0.17), (MUSTARD, 15, 0.95, 0.16), (HONEY, 13, 0.84, 0.13)):
        out = [
            heading(360 / count * (k + rng.uniform(-0.2, 0.2)), size * share * rng.uniform(0.92, 1.05))
            for k in range(count)
        ]
        sheet.fill([touch(centre + p * 0.2, centre + p, size * wide) for p in out], colour)
    stamped(sheet, oval(centre, size * 0.98, size * 0.94, 0, rng), Tones(SOIL, SOIL, BARK, WICKER), rng)
    seeds = [centre + heading(k * 137.5, size * 0.09 * k**0.5) for k in range(1, 20)]
    sheet.fill([spot(p, size * 0.06) for p in seeds[::2]], MUSTARD, 0.8)


def left_edge(sheet: Sheet) -> None:
    """Paint the sunflowers on the left."""
    for foot, head, bend in (
        (40 + 1200j, 96 + 452j, 0.05),
        (110 + 1200j, 62 + 742j, -0.08),
        (10 + 900j, 16 + 250j, 0.02),
    ):
        stem = bow(foot, head, bend, 6)
        sheet.fill(taper(stem, 24, 18, 14), LEAF)
        sheet.fill(taper([p - 4 for p in stem], 6, 5, 4), SAGE)
    for base, tip, width, tones in (
        (24 + 400j, 112 + 330j, 84, LEAF_DARK),
        (84 + 600j, -30 + 560j, 110, LEAF_DARK),
        (84 + 640j, 206 + 590j, 104, LEAF_MID),
        (70 + 860j, 214 + 800j, 116, LEAF_DARK),
        (70 + 900j, -30 + 900j, 116, LEAF_MID),
        (80 + 980j, 190 + 960j, 100, LEAF_MID),
    ):
        put_leaf(sheet, base, tip, width, tones)
    sheet.press("sunflower", 6 + 250j, 0.78, 12)
    sheet.press("sunflower", 100 + 446j, 0.98)
    sheet.press("sunflower", 62 + 734j, 0.84, -10)


def right_edge(sheet: Sheet) -> None:
    """Paint the tomatoes on their canes on the right."""
    for a, b in ((884 + 1200j, 800 + 190j), (770 + 1200j, 872 + 150j)):
        sheet.fill(taper([a, (a + b) / 2, b], 17, 14, 10), WICKER)
        sheet.fill(taper([a - 3, (a + b) / 2 - 3, b - 2], 5, 4, 3), STRAW)
    vine = curve(marks("826,1200 862,1020 800,860 858,690 816,520 858,350 836,210"), 4)
    sheet.fill(taper(vine, 20, 15, 6), LEAF)
    for base, tip, width, tones in (
        (846 + 260j, 760 + 190j, 74, LEAF_MID),
        (846 + 260j, 930 + 180j, 82, LEAF_DARK),
        (852 + 380j, 740 + 340j, 92, LEAF_DARK),
        (836 + 440j, 930 + 390j, 92, LEAF_MID),
        (824 + 540j, 712 + 560j, 96, LEAF_MID),
        (850 + 690j, 730 + 700j, 104, LEAF_DARK),
        (840 + 640j, 940 + 620j, 100, LEAF_DARK),
        (808 + 870j, 690 + 870j, 106, LEAF_MID),
        (830 + 850j, 940 + 880j, 106, LEAF_MID),
        (846 + 1010j, 720 + 1040j, 104, LEAF_DARK),
    ):
        put_leaf(sheet, base, tip, width, tones)
    for p, size, ripe in (
        (800 + 476j, 58, 1),
        (862 + 520j, 66, 1),
        (806 + 776j, 66, 1),
        (868 + 800j, 74, 1),
        (786 + 640j, 44, 0),
        (868 + 326j, 44, 0),
        (802 + 960j, 62, 1),
        (872 + 990j, 70, 1),
    ):
        sheet.press(f"tomato{ripe}", p, size / 60)


def cabbage(sheet: Sheet, centre: complex, size: float, rng: Random) -> None:
    """Paint one cabbage, its outer leaves lying open."""
    for a, far, wide in CABBAGE_LEAVES:
        name, side = ("far" if a > 180 else "near"), (1 if 90 < a < 270 else -1)
        sheet.press(name, centre + 0.14j * size, size * far / 1e4, a, side * size * wide / 1e4)
    stamped(
        sheet,
        shaky(oval(centre - 0.08j * size, size * 0.96, size * 0.84), 3, rng),
        Tones("#5f9186", "#93b99f", "#b6d2b0", MIST),
        rng,
    )
    for s in (-1, 1):
        fold = bow(centre + complex(s * 0.06, -0.46) * size, centre + complex(s * 0.3, 0.3) * size, -0.24 * s, 5)
        sheet.fill(taper(fold, 3, size * 0.045, 2), "#79a596")
        sheet.fill([touch(p, p + complex(s * 0.2, -0.12) * size, size * 0.02) for p in fold[1:4]], "#e6efd2")


def pot(sheet: Sheet, centre: complex, size: float, rng: Random) -> None:
    """Paint one clay pot; `centre` is the middle of its mouth."""

    def on(*numbers: float) -> list[complex]:
        return [centre + p * size for p in at(*numbers)]

    sheet.fill(ring(oval(centre, size, size * 0.26)), SOIL)
    body = on(-0.46, 0.1, -0.4, 0.5, -0.34, 0.94, 0, 1.02, 0.34, 0.94, 0.4, 0.5, 0.46, 0.1, 0, 0.2)
    stamped(sheet, body, CLAY, rng)
    lip = shape(on(-0.52, 0, 0, 0.13, 0.52, 0), on(0.5, 0.24, 0, 0.38, -0.5, 0.24))
    sheet.fill(shape(on(-0.44, 0.28, 0, 0.42, 0.44, 0.28), on(0.43, 0.36, 0, 0.52, -0.43, 0.36)), CLAY.deep, 0.5)
    sheet.fill(lip, CLAY.base)
    sheet.fill(shape(on(0.2, 0.1, 0.52, 0), on(0.5, 0.24, 0.22, 0.35)), CLAY.shade)
    sheet.fill([touch(*on(-0.48, 0.08, -0.1, 0.16), size * 0.03, -0.05)], CLAY.light)


def foreground(sheet: Sheet, rng: Random) -> None:
    """Paint the cabbages, pots and marigolds along the lower edge."""
    sheet.fill(
        shape(marks("-10,1130 160,1096 450,1120 740,1092 910,1128"), at(910, 1210, -10, 1210)), LEAF_DARK.shade
    )
    sheet.press("cabbage", 336 + 1112j, 1)
    sheet.press("cabbage", 566 + 1126j, 0.92, 6)
    sheet.press("pot", 150 + 1064j, 1.06)
    for tip, tones in ((104 + 968j, LEAF_DARK), (196 + 962j, LEAF_MID), (150 + 940j, LEAF_MID)):
        put_leaf(sheet, 150 + 1070j, tip, 50, tones)
    sheet.press("blossom", 126 + 1010j, 0.6, 12)
    sheet.press("blossom", 182 + 1020j, 0.56, 40)
    sheet.press("pot", 738 + 1090j, 0.92)
    for p, size in ((706 + 1056j, 34), (764 + 1050j, 36), (736 + 1024j, 36)):
        sheet.fill(touch(738 + 1094j, p, 4), LEAF)
        sheet.press("marigold", p, size / 60, p.real % 50)
    grass = [complex(rng.uniform(0, 900), 1206) for _ in range(14)]
    sheet.fill(
        [touch(p, p + complex(rng.uniform(-20, 20), -rng.uniform(30, 66)), 6) for p in grass[::2]], LEAF_MID.base
    )
    sheet.fill(
        [touch(p, p + complex(rng.uniform(-20, 20), -rng.uniform(24, 54)), 6) for p in grass[1::2]], LEAF_DARK.deep
    )
