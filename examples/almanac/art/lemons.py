"""Two lemons on a branch in blossom. Leads with mustard and honey on deep leaf green.

In: nothing. Out: `drawing()` gives the sheet.
"""

from __future__ import annotations

from random import Random

from hand import at, bow, curve, heading, marks, middle, oval, placed, ring, shaky, spot, taper, touch
from leaves import blossom, bud, leaf
from palette import (
    BARK,
    BLUSH,
    BUTTER,
    CREAM,
    LEAF_DARK,
    LEAF_MID,
    LEMON,
    OCHRE,
    PETAL,
    SOIL,
    STRAW,
    WICKER,
    Tones,
)
from sheet import Sheet, cast, modelled

# From the stalk (left) to the nipple, in the lemon's own measure.
RIND = marks(
    "-1.0,0.02 -0.95,0.17 -0.72,0.47 -0.3,0.7 0.15,0.71 0.55,0.53 0.8,0.3 0.93,0.18 1.04,0.1 "
    "1.04,-0.05 0.94,-0.14 0.8,-0.27 0.54,-0.52 0.14,-0.69 -0.3,-0.67 -0.72,-0.45 -0.95,-0.15"
)


def lemon(sheet: Sheet, centre: complex, size: float, turn: float, rng: Random) -> list[complex]:
    """Paint one lemon with its pores and a window of light; gives its outline."""
    knots = shaky(placed(RIND, centre, size, turn), size * 0.008, rng)
    modelled(sheet, knots, LEMON, rng, turn=0.26, strokes=16)
    pores = placed(
        [heading(rng.uniform(0, 360), 0.6 * rng.uniform(0.1, 1) ** 0.5) for _ in range(36)], centre, size, turn
    )
    sheet.fill([spot(p, size * 0.028) for p in pores[::2]], OCHRE, 0.55)
    sheet.fill([spot(p, size * 0.026) for p in pores[1::2]], BUTTER, 0.9)
    lit = middle(knots) + complex(-0.36, -0.3) * size
    sheet.fill(
        touch(lit + complex(-0.1, 0.16) * size, lit + complex(0.16, -0.12) * size, size * 0.07, 0.12), CREAM
    )
    sheet.fill(spot(lit + complex(0.27, -0.18) * size, size * 0.06), CREAM)
    cap = [0.3 * heading(40 * k, (0.62, 1)[k % 2]) for k in range(9)]
    root = placed(at(-0.95, 0.02), centre, size, turn)[0]
    sheet.fill(ring(shaky(placed(cap, root, size * 0.52, turn), size * 0.01, rng)), LEAF_DARK.base)
    sheet.fill(ring(oval(root + complex(-3, -3), size * 0.15, size * 0.17, turn, rng, 0.1)), LEAF_DARK.light)
    return knots


def twig(sheet: Sheet) -> None:
    """Paint the branch that everything hangs from."""
    sheet.fill(ring(oval(45 + 262j, 18, 36, -12)), STRAW)
    main = curve(marks("40,262 230,196 450,190 690,150 905,176"), 4)
    sheet.fill(taper(main, 34, 26, 8), BARK)
    sheet.fill(taper([p - 7j for p in main[1:]], 4, 12, 2), WICKER)
    for stalk in (at(350, 190, 385, 235, 412, 306), at(640, 158, 650, 250, 626, 352)):
        sheet.fill(taper(stalk, 20, 13, 14), BARK)
        sheet.fill(taper([p - 4 for p in stalk], 3, 6, 3), WICKER)
    knots = [main[k] + 4j for k in (2, 5, 9, 12)]
    sheet.fill([touch(p - 22, p + 26, 5, 0.1) for p in knots], SOIL)


LEAVES_BEHIND: tuple[tuple[complex, complex, float, Tones, float], ...] = (
    (430 + 195j, 545 + 20j, 108, LEAF_MID, 0.16),
    (300 + 195j, 205 + 30j, 104, LEAF_DARK, -0.16),
    (640 + 165j, 905 + 330j, 150, LEAF_DARK, -0.12),
    (290 + 206j, 62 + 470j, 190, LEAF_DARK, 0.16),
    (344 + 196j, 520 + 470j, 170, LEAF_DARK, -0.2),
    (634 + 360j, 945 + 520j, 140, LEAF_DARK, -0.2),
    (720 + 160j, 760 + 20j, 96, LEAF_DARK, 0.14),
)
LEAVES_BEFORE: tuple[tuple[complex, complex, float, Tones, float], ...] = (
    (110 + 240j, 20 + 110j, 84, LEAF_MID, -0.14),
    (606 + 160j, 470 + 400j, 140, LEAF_MID, 0.14),
    (365 + 215j, 205 + 395j, 128, LEAF_MID, -0.12),
    (860 + 172j, 975 + 270j, 92, LEAF_MID, 0.16),
    (890 + 176j, 985 + 100j, 74, LEAF_DARK, 0.1),
    (690 + 190j, 850 + 300j, 92, LEAF_MID, 0.14),
)


def drawing() -> Sheet:
    """Paint the branch."""
    sheet, rng = Sheet(1000, 860), Random(31)
    for base, tip, width, tones, bend in LEAVES_BEHIND:
        leaf(sheet, base, tip, width, tones, rng, bend=bend)
    twig(sheet)
    far = lemon(sheet, 665 + 575j, 236, 80, rng)
    cast(sheet, far, placed(RIND, 376 + 576j, 262, 104), OCHRE)
    lemon(sheet, 350 + 560j, 262, 104, rng)
    for base, tip, width, tones, bend in LEAVES_BEFORE:
        leaf(sheet, base, tip, width, tones, rng, bend=bend)
    petals = Tones(PETAL, BLUSH, CREAM, CREAM)
    for root, tip in ((540 + 172j, 610 + 75j), (215 + 205j, 120 + 150j), (800 + 160j, 845 + 85j)):
        sheet.fill(taper(bow(root, tip, 0.1, 4), 9, 7, 6), LEAF_DARK.base)
        bud(sheet, tip, tip + (tip - root) * 0.55, 38, petals, LEAF_MID)
    blossom(sheet, 500 + 205j, 82, rng, turn=20)
    blossom(sheet, 235 + 215j, 66, rng, turn=50)
    blossom(sheet, 742 + 165j, 70, rng, turn=5)
    return sheet
