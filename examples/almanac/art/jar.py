"""A jar of plum jam under gingham, with a spoon, a pear and plums. Leads with plum, pear green and coral.

In: nothing. Out: `drawing()` gives the sheet.
"""

from __future__ import annotations

from random import Random

from hand import Points, at, bow, curve, heading, marks, oval, placed, ring, shaky, shape, spot, taper, touch
from leaves import leaf
from palette import (
    AUBERGINE,
    BARK,
    BRICK,
    CORAL,
    CREAM,
    DAMSON,
    DUSTY,
    HONEY,
    LEAF_DARK,
    LEAF_MID,
    LINEN,
    MULBERRY,
    MUSTARD,
    PEAR,
    PLUM,
    RASPBERRY,
    SKY,
    SOIL,
    STRAW,
    TOMATO,
    WICKER,
    WOOD,
)
from sheet import Sheet, cast, modelled

GLASS = marks(
    "292,330 286,372 252,412 238,470 236,600 240,740 256,806 300,830 450,838 600,830 644,806 660,740 "
    "664,600 662,470 648,412 614,372 608,330 450,340"
)
JAM = marks(
    "262,448 258,600 262,736 276,794 310,812 450,818 590,812 624,794 638,736 642,600 638,448 560,436 "
    "450,444 350,434"
)
CAP = marks("282,318 284,262 318,226 450,206 582,226 616,262 618,318")
SKIRT = marks(
    "660,372 690,412 646,404 606,436 556,410 506,444 452,414 396,446 346,410 296,436 256,404 210,410 242,370"
)
FRUIT = marks(
    "-0.02,-1.02 -0.2,-0.98 -0.32,-0.72 -0.37,-0.36 -0.58,-0.02 -0.7,0.36 -0.56,0.76 -0.22,0.95 "
    "0.06,0.9 0.34,0.93 0.63,0.7 0.74,0.3 0.6,-0.08 0.38,-0.4 0.3,-0.76 0.18,-0.97"
)


def spoon(sheet: Sheet, rng: Random) -> None:
    """Paint the wooden spoon that leans behind the jar, jam on its tip."""
    stick = curve(at(560, 700, 680, 420, 752, 236), 5)
    sheet.fill(taper(stick, 40, 34, 30), WICKER)
    sheet.fill(taper([p - 7 for p in stick[2:]], 6, 12, 5), STRAW)
    sheet.fill(taper([p + 11 for p in stick[2:]], 4, 8, 4), BARK)
    modelled(sheet, oval(790 + 148j, 124, 196, 22, rng, 0.02), WOOD, rng, strokes=8)
    hollow = oval(786 + 144j, 88, 150, 22, rng, 0.02)
    sheet.fill(ring(hollow), BARK)
    jam = shaky(marks("756,118 800,78 838,104 826,160 800,206 776,214 760,176"), 3, rng)
    modelled(sheet, jam, DAMSON, rng, strokes=4)
    sheet.fill([touch(780 + 120j, 812 + 96j, 7, 0.15), spot(772 + 140j, 9)], CREAM)
    drip = ring(marks("758,190 752,226 744,262 748,286 758,292 768,284 768,260 766,228 790,196"))
    sheet.fill(drip, DAMSON.base)
    sheet.fill(touch(766 + 216j, 762 + 282j, 5, -0.06), PLUM)
    sheet.fill(spot(754 + 272j, 8), DAMSON.glint)


def jam(sheet: Sheet, rng: Random) -> None:
    """Paint the glass and what is in it."""
    modelled(sheet, GLASS, type(DAMSON)(DUSTY, DUSTY, SKY, CREAM), rng, turn=0.1, strokes=4)
    modelled(sheet, JAM, DAMSON, rng, turn=0.16, strokes=10)
    with sheet.inside(ring(JAM)):
        skins = [complex(rng.uniform(270, 630), rng.uniform(480, 800)) for _ in range(16)]
        sheet.fill(
            [
                ring(oval(p, rng.uniform(26, 62), rng.uniform(16, 34), rng.uniform(0, 180), rng, 0.15))
                for p in skins
            ],
            PLUM,
            0.7,
        )
        sheet.fill([touch(p, p + heading(rng.uniform(150, 240), 34), 5, 0.1) for p in skins[::2]], MULBERRY)
        sheet.fill([spot(p + 14, 7) for p in skins[::3]], DAMSON.glint, 0.7)
        sheet.fill(ring(oval(450 + 442j, 384, 34, 0, rng)), RASPBERRY, 0.6)
        sheet.fill(ring(oval(450 + 440j, 330, 16, 0, rng)), DAMSON.light, 0.6)


def label(sheet: Sheet, rng: Random) -> None:
    """Paint the paper label with a plum on it."""
    paper = marks("318,540 440,530 580,540 590,640 582,748 450,758 318,748 310,640")
    corners = [paper[:3], paper[2:5], paper[4:7], [*paper[6:], paper[0]]]
    sheet.fill(shape(*[shaky([p + complex(5, 7) for p in run], 2, rng) for run in corners]), AUBERGINE, 0.6)
    sheet.fill(shape(*corners), CREAM)
    lines = [taper(bow(complex(334, y), complex(568, y), -b, 6), 3, 5, 3) for y, b in ((560, -0.02), (730, 0.02))]
    sheet.fill(lines, CORAL)
    leaf(sheet, 452 + 606j, 528 + 572j, 34, LEAF_MID, rng, veins=3)
    leaf(sheet, 448 + 606j, 384 + 582j, 28, LEAF_DARK, rng, bend=-0.12, veins=3)
    modelled(sheet, oval(450 + 658j, 96, 104, 0, rng), DAMSON, rng, strokes=6)
    sheet.fill(touch(452 + 612j, 462 + 704j, 4, -0.14), AUBERGINE)
    sheet.fill(touch(420 + 664j, 434 + 632j, 6, 0.14), DAMSON.glint)
    sheet.fill(touch(450 + 614j, 446 + 582j, 4), BARK)
    grasses = [touch(complex(450 + s * 66, 712), complex(450 + s * 104, 640), 6, 0.12 * s) for s in (-1, 1)]
    sheet.fill(grasses, LEAF_MID.base)
    sheet.fill(
        [spot(complex(450 + s * x, y), 11) for s in (-1, 1) for x, y in ((96, 690), (108, 664), (80, 664))], TOMATO
    )


def gingham(sheet: Sheet, edge: str, spread: float) -> None:
    """Paint checks inside an edge: bands down that fan out by `spread`, bands across that sag."""
    with sheet.inside(edge):
        down, over = [], []
        for k in range(-6, 7):
            x, low = 450 + k * 54, 450 + k * 54 * spread
            down.append(shape(at(x - 13, 190, low - 15, 450), at(low + 15, 450, x + 13, 190)))
        for y in range(200, 460, 50):
            over.append(
                shape(
                    at(180, y - 12, 320, y + 8, 450, y + 14, 580, y + 8, 720, y - 12),
                    at(720, y + 12, 580, y + 32, 450, y + 38, 320, y + 32, 180, y + 12),
                )
            )
        sheet.fill(down, CORAL, 0.6)
        sheet.fill(over, CORAL, 0.6)


def cloth(sheet: Sheet) -> None:
    """Paint the gingham cover with its skirt and twine."""
    skirt = shape(at(282, 310, 450, 322, 618, 310), SKIRT)
    with sheet.inside(ring(GLASS)):
        sheet.fill(shape(at(282, 330, 618, 330), [p + 16j for p in SKIRT]), AUBERGINE, 0.35)
    sheet.fill(skirt, CREAM)
    gingham(sheet, skirt, 1.22)
    folds = [
        touch(complex(450 + x * 0.74, 322), complex(450 + x, 426), 9, x / 4000) for x in (-190, -98, 8, 112, 196)
    ]
    with sheet.inside(skirt):
        sheet.fill(folds, BRICK, 0.45)
        sheet.fill(
            [touch(complex(450 + x * 0.74, 326), complex(450 + x, 420), 7) for x in (-146, -46, 58, 156)],
            CREAM,
            0.6,
        )
    dome = shape(CAP, at(618, 318, 450, 332, 282, 318))
    sheet.fill(dome, CREAM)
    gingham(sheet, dome, 1)
    with sheet.inside(dome):
        sheet.fill(
            dome + shape([p + complex(-34, -18) for p in CAP], at(584, 300, 450, 316, 248, 300)),
            BRICK,
            0.35,
            holes=True,
        )
        sheet.fill(touch(312 + 290j, 420 + 226j, 12, 0.16), CREAM, 0.8)
    band = curve(marks("278,312 360,326 450,330 540,326 622,312"), 4)
    sheet.fill(taper(band, 18, 20, 18), STRAW)
    sheet.fill([touch(p + complex(-5, -8), p + complex(5, 8), 4) for p in band[1::1]], WICKER)
    bow_knot(sheet, 392 + 330j)


def bow_knot(sheet: Sheet, knot: complex) -> None:
    """Paint the bow in which the twine is tied."""
    for ends in (marks("0,0 -50,-34 -74,6 -36,22 0,4"), marks("0,0 46,-38 76,-2 40,22 0,4")):
        loop = curve([knot + p for p in ends], 3)
        sheet.fill(taper(loop, 8, 11, 8), WICKER)
        sheet.fill(taper([p - 2j for p in loop], 3, 5, 3), STRAW)
    for ends in (at(0, 0, -22, 40, -44, 96), at(2, 0, 18, 50, 10, 112)):
        tail = curve([knot + p for p in ends], 3)
        sheet.fill(taper(tail, 8, 9, 10), WICKER)
        sheet.fill(taper([p - 2 for p in tail], 3, 4, 3), STRAW)
    sheet.fill(spot(knot, 22), WICKER)
    sheet.fill(spot(knot - 2 - 2j, 11), LINEN)


def pear(sheet: Sheet, rng: Random) -> None:
    """Paint the pear that stands before the jar on the left."""
    knots = placed(FRUIT, 176 + 668j, 186, -7)
    cast(sheet, GLASS, [p + complex(34, 14) for p in knots], AUBERGINE, 0.4)
    leaf(sheet, 150 + 478j, 40 + 420j, 78, LEAF_DARK, rng, bend=-0.16)
    modelled(sheet, knots, PEAR, rng, turn=0.28, strokes=16)
    with sheet.inside(ring(knots)):
        for across, veil in ((180, 0.25), (120, 0.3)):
            sheet.fill(ring(oval(270 + 712j, across, across * 1.8, 6, rng, 0.1)), CORAL, veil)
        rub = [complex(rng.uniform(212, 272), rng.uniform(590, 760)) for _ in range(18)]
        sheet.fill([touch(p, p + complex(rng.uniform(4, 12), 62), 5, -0.09) for p in rub], CORAL, 0.8)
        sheet.fill([touch(p + 20, p + complex(26, 44), 4, -0.09) for p in rub[::2]], TOMATO, 0.55)
        dots = [
            complex(176, 720) + heading(rng.uniform(0, 360), 118 * rng.uniform(0, 1) ** 0.5) for _ in range(26)
        ]
        sheet.fill([spot(p, 6) for p in dots], PEAR.deep, 0.6)
    sheet.fill(touch(104 + 730j, 122 + 640j, 13, 0.14), CREAM)
    sheet.fill(spot(126 + 612j, 11), CREAM)
    sheet.fill(taper(curve(at(152, 486, 150, 452, 168, 418), 3), 14, 10, 18), SOIL)
    sheet.fill(touch(150 + 470j, 162 + 424j, 3), WICKER)


def plum(sheet: Sheet, centre: complex, size: float, turn: float, rng: Random) -> list[complex]:
    """Paint one plum with its seam and bloom; gives its outline."""
    knots = placed(oval(0, 1.86, 2.04, 0, rng, 0.03), centre, size, turn)
    modelled(sheet, knots, DAMSON, rng, turn=0.3, strokes=10)
    top, end = centre + heading(turn - 84, size), centre + heading(turn + 72, size * 0.98)
    sheet.fill(touch(top, end, size * 0.06, -0.13), AUBERGINE)
    shine = centre + complex(-0.42, -0.28) * size
    sheet.fill(touch(shine + 0.24j * size, shine + complex(0.2, -0.2) * size, size * 0.09, 0.14), DAMSON.glint)
    return knots


def half_plum(sheet: Sheet, centre: complex, rng: Random) -> None:
    """Paint half a plum, its golden flesh and stone to the front."""
    sheet.fill(ring(oval(centre + 4 + 5j, 148, 128, -12, rng)), PLUM)
    sheet.fill(ring(oval(centre, 132, 112, -12, rng)), MUSTARD)
    sheet.fill(ring(oval(centre + complex(-4, -4), 114, 94, -12, rng)), HONEY)
    rays = [touch(centre + heading(a, 30), centre + heading(a, 50), 3) for a in range(0, 360, 24)]
    sheet.fill(rays, MUSTARD)
    modelled(sheet, oval(centre, 66, 46, -12, rng), WOOD, rng, strokes=4)
    sheet.fill(touch(centre + complex(-50, 8), centre + complex(-22, -40), 4, 0.16), CREAM)


def ground(sheet: Sheet, rng: Random) -> None:
    """Paint what lies before the jar on the right."""
    knots: Points = plum(sheet, 716 + 740j, 92, 8, rng)
    leaf(sheet, 722 + 650j, 846 + 590j, 70, LEAF_MID, rng)
    sheet.fill(taper(curve(at(720, 658, 714, 628, 728, 600), 3), 9, 7, 11), BARK)
    cast(sheet, knots, oval(640 + 790j, 150, 130), AUBERGINE, 0.6)
    half_plum(sheet, 622 + 794j, rng)
    leaf(sheet, 290 + 822j, 420 + 856j, 54, LEAF_MID, rng, bend=0.1, veins=4)


def drawing() -> Sheet:
    """Paint the jar."""
    sheet, rng = Sheet(880, 890), Random(19)
    spoon(sheet, rng)
    jam(sheet, rng)
    label(sheet, rng)
    sheet.fill([touch(258 + 770j, 262 + 470j, 11, -0.02), touch(284 + 560j, 286 + 470j, 6)], CREAM, 0.9)
    sheet.fill([touch(646 + 760j, 644 + 480j, 6, 0.02)], SKY, 0.8)
    cloth(sheet)
    pear(sheet, rng)
    ground(sheet, rng)
    return sheet
