"""A bunch of radishes lying on its side, for wide faces. Leads with raspberry, rose and fresh leaf green.

In: nothing. Out: `drawing()` gives the sheet.
"""

from __future__ import annotations

from random import Random

from hand import at, bow, curve, heading, marks, placed, ring, shaky, shape, spot, taper, touch
from leaves import leaf
from palette import (
    CREAM,
    LEAF_DARK,
    LEAF_MID,
    LINEN,
    MIST,
    MULBERRY,
    PETAL,
    RADISH,
    RASPBERRY,
    ROSE,
    STRAW,
    WICKER,
    Tones,
)
from sheet import LIGHT, Sheet, cast, modelled

# From the crown (0) to where the tail begins (1), in the root's own measure.
ROOT = marks(
    "0,0.07 0.05,0.26 0.2,0.42 0.42,0.45 0.64,0.36 0.82,0.19 0.95,0.07 1.06,0.02 1.06,-0.02 "
    "0.95,-0.08 0.82,-0.2 0.64,-0.37 0.42,-0.46 0.2,-0.42 0.05,-0.25 0,-0.07"
)
#: Crown, size, the way the tail points, whether its skin is the darker one.
BUNCH = (
    (556 + 222j, 216, 196, True),
    (560 + 380j, 214, 164, True),
    (480 + 146j, 214, 203, False),
    (484 + 452j, 216, 158, False),
    (452 + 300j, 238, 181, False),
)
DARK = Tones("#6b1f4c", MULBERRY, RASPBERRY, ROSE)
TIE = 640 + 292j
TOPS: tuple[tuple[complex, complex, float, Tones, float], ...] = (
    (700 + 250j, 1010 + 50j, 150, LEAF_DARK, -0.16),
    (700 + 330j, 1000 + 552j, 150, LEAF_DARK, 0.16),
    (710 + 270j, 1168 + 176j, 160, LEAF_MID, -0.1),
    (710 + 320j, 1176 + 440j, 160, LEAF_DARK, 0.12),
    (700 + 250j, 868 + 40j, 124, LEAF_MID, -0.1),
    (700 + 336j, 872 + 548j, 124, LEAF_MID, 0.12),
    (716 + 296j, 1150 + 312j, 172, LEAF_MID, -0.06),
)


def root(sheet: Sheet, crown: complex, size: float, turn: float, dark: bool, rng: Random) -> list[complex]:
    """Paint one radish with its pale tip and long tail; gives its outline."""
    knots = shaky(placed(ROOT, crown, size, turn), size * 0.008, rng)
    along = heading(turn, size)
    curl = size * (0.03 if turn < 180 else -0.03)
    tail = [crown + along * (1.0 + 0.11 * k) + heading(turn + 90, curl * k * (k - 2)) for k in range(5)]
    sheet.fill(taper(tail, size * 0.075, size * 0.03, 2), LINEN)
    hairs = [touch(tail[k], tail[k] + heading(turn + s * 50, 26), 3) for k, s in ((1, 1), (2, -1), (3, 1))]
    sheet.fill(hairs, LINEN)
    modelled(sheet, knots, DARK if dark else RADISH_RED, rng, turn=0.3, strokes=7)
    across = along * (1j if (along * 1j * LIGHT.conjugate()).real > 0 else -1j)

    def on(u: float, v: float) -> complex:
        return crown + along * u + across * v

    with sheet.inside(ring(knots)):
        pale = marks("0.8,0.5 0.79,0.2 0.84,0.12 0.77,0.03 0.83,-0.08 0.78,-0.2 0.8,-0.5 1.4,-0.4 1.4,0.4")
        sheet.fill(ring([on(p.real, p.imag) for p in pale]), CREAM)
        sheet.fill(ring([on(u, v) for u, v in ((0.8, -0.34), (0.86, -0.1), (1.1, -0.02), (1, -0.3))]), STRAW, 0.7)
        sheet.fill([touch(on(0.7, v), on(0.86, v * 0.7), 4) for v in (-0.24, -0.1, 0.04, 0.15, 0.26)], PETAL)
        wrinkles = [touch(on(u, -0.3 * w), on(u, 0.1 * w), 3, -0.1) for u, w in ((0.16, 1), (0.3, -1), (0.5, 0.8))]
        sheet.fill(wrinkles, DARK.deep if dark else MULBERRY, 0.6)
    if not dark:
        sheet.fill(
            [touch(on(0.24, 0.27), on(0.46, 0.29), size * 0.04, 0.07), spot(on(0.54, 0.26), size * 0.04)], CREAM
        )
    return knots


RADISH_RED = Tones(RADISH.deep, RADISH.shade, "#d3506f", "#ee8f9f")


def stems(sheet: Sheet, rng: Random) -> None:
    """Paint the stems that run from the crowns through the tie to the leaves."""
    for k, (base, *_) in enumerate(TOPS):
        crown = BUNCH[k % len(BUNCH)][0]
        gather = TIE + complex(0, rng.uniform(-30, 30))
        line = curve([crown, crown + (gather - crown) * 0.5, gather, base + 24], 3)
        sheet.fill(taper(line, 26, 20, 16), LEAF_MID.base if k % 2 else LEAF_MID.shade)
        sheet.fill(taper([p - 4j for p in line], 6, 6, 4), LEAF_MID.light)
        sheet.fill(taper([p + 5j for p in line[:6]], 8, 5, 2), ROSE)


def tie(sheet: Sheet) -> None:
    """Paint the twine round the stems and its bow."""
    for shift in (-15, 0, 15):
        line = bow(TIE + complex(shift, -52), TIE + complex(shift + 4, 54), -0.12, 6)
        sheet.fill(taper(line, 13, 15, 13), WICKER)
        sheet.fill(taper([p - 2 for p in line], 6, 8, 6), STRAW)
    knot = TIE + complex(14, 10)
    for ends in (marks("0,0 -52,-44 -12,-84 18,-50 0,0"), marks("0,0 66,-40 88,0 50,22 0,0")):
        loop = curve([knot + p for p in ends], 3)
        sheet.fill(taper(loop, 8, 12, 8), WICKER)
        sheet.fill(taper([p - 2j for p in loop], 3, 6, 3), STRAW)
    for ends in (at(0, 0, -10, 62, -44, 120), at(0, 0, 44, 56, 52, 132)):
        tail = curve([knot + p for p in ends], 3)
        sheet.fill(taper(tail, 9, 10, 11), WICKER)
        sheet.fill(taper([p - 2 for p in tail], 3, 5, 4), STRAW)
    sheet.fill(spot(knot, 26), WICKER)
    sheet.fill(spot(knot - 2 - 3j, 13), LINEN)


def drawing() -> Sheet:
    """Paint the bunch."""
    sheet, rng = Sheet(1120, 580, 80, 10), Random(5)
    sheet.fill(shape(at(676, 262, 740, 226, 830, 240), at(830, 352, 740, 362, 676, 330)), LEAF_DARK.deep)
    for base, tip, width, tones, bend in TOPS:
        toned = Tones(tones.deep, tones.shade, tones.base, tones.light, MIST)
        leaf(sheet, base, tip, width, toned, rng, bend=bend, veins=4, full=1.25, wave=0.045)
        sheet.fill(taper(bow(base, tip, bend)[:8], 14, 9, 3), ROSE, 0.55)
    stems(sheet, rng)
    for k, (crown, size, turn, dark) in enumerate(BUNCH):
        knots = root(sheet, crown, size, turn, dark, rng)
        if k < len(BUNCH) - 1:
            for other, large, way, _ in BUNCH[k + 1 :]:
                cast(sheet, knots, placed(ROOT, other + complex(16, 13), large, way), DARK.deep, 0.4)
    tie(sheet)
    return sheet
