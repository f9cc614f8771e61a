"""A watering can with herbs growing out of it, and a snail. Leads with tomato red and herb greens.

In: nothing. Out: `drawing()` gives the sheet.
"""

from __future__ import annotations

from random import Random

from hand import at, bow, curve, heading, marks, oval, ring, shaky, shape, spot, taper, touch
from leaves import daisy, leaf, needles, pompom
from palette import (
    BASKET,
    BLUSH,
    BRICK,
    CORAL,
    CREAM,
    DENIM,
    GARNET,
    HONEY,
    LEAF,
    LEAF_BLUE,
    LEAF_DARK,
    LEAF_MID,
    LEAF_PALE,
    LEMON,
    LINEN,
    MULBERRY,
    PETAL,
    RASPBERRY,
    RED,
    SAGE,
    SKY,
    SOIL,
    TOMATO,
    Tones,
)
from sheet import Sheet, modelled

RIM = marks("330,470 380,496 452,510 530,514 608,510 680,496 730,470")
SIDE = at(730, 470, 738, 560, 750, 680, 760, 796)
FOOT = marks("760,796 740,826 650,846 530,852 410,846 320,826 300,796")
NEAR = at(300, 796, 310, 680, 322, 560, 330, 470)
SPOUT = marks("330,772 264,700 190,560 128,436 116,404 148,388 170,414 236,520 300,620 340,660")
CHIVE = Tones(MULBERRY, RASPBERRY, "#cf6a97", PETAL)


def handles(sheet: Sheet) -> None:
    """Paint the great handle behind and the stay of the spout."""
    line = curve(marks("640,480 716,392 836,368 916,430 924,548 866,660 748,724"), 4)
    sheet.fill(taper(line, 40, 42, 36), BRICK)
    sheet.fill(taper([p + complex(-4, -6) for p in line], 24, 26, 22), TOMATO)
    sheet.fill(taper([p + complex(-8, -10) for p in line[5:-4]], 3, 10, 3), BLUSH)
    sheet.fill(taper(bow(170 + 440j, 340 + 516j, -0.06, 6), 17, 14, 17), BRICK)
    sheet.fill(taper(bow(172 + 436j, 340 + 511j, -0.06, 6), 6, 5, 6), CORAL)


def rose(sheet: Sheet, rng: Random) -> None:
    """Paint the spout with its sprinkling rose and the last drops."""
    modelled(sheet, SPOUT, RED, rng, turn=0.16, strokes=6)
    modelled(sheet, marks("112,444 176,398 168,372 128,318 60,366 34,402 74,424"), RED, rng, turn=0.2, strokes=2)
    sheet.fill(ring(oval(82 + 366j, 152, 62, -39, rng, 0.02)), GARNET)
    sheet.fill(ring(oval(78 + 362j, 138, 50, -39, rng, 0.02)), CORAL)
    holes = [78 + 362j + heading(-39, u) + heading(51, v) for u in (-46, -23, 0, 23, 46) for v in (-11, 0, 11)]
    sheet.fill([spot(p, 7) for p in holes if abs(p - 78 - 362j) < 48], GARNET)
    for drop, long in ((30 + 448j, 44), (62 + 494j, 34), (14 + 530j, 28)):
        knots = [
            drop,
            drop + complex(long * 0.3, long * 0.62),
            drop + 1j * long,
            drop + complex(-long * 0.3, long * 0.62),
        ]
        sheet.fill(ring(knots), DENIM)
        sheet.fill(
            ring(
                [p + complex(-1, 1) for p in knots[:1]]
                + [
                    drop + complex(long * 0.1, long * 0.6),
                    drop + 0.8j * long,
                    drop + complex(-long * 0.2, long * 0.6),
                ]
            ),
            SKY,
        )


def herbs_behind(sheet: Sheet, rng: Random) -> None:
    """Paint what stands at the back: chives in flower and rosemary."""
    stalks = ((420, 120), (486, 62), (560, 108), (338, 190))
    for x, y in stalks:
        root = complex(500 + (x - 470) * 0.5, 486)
        sheet.fill(taper(bow(root, complex(x, y), (470 - x) / 1600, 6), 11, 9, 7), LEAF)
        sheet.fill(taper(bow(root - 3, complex(x - 2, y), (470 - x) / 1600, 6), 3, 3, 2), SAGE)
    tips = [(360, 248), (398, 190), (452, 236), (520, 176), (590, 214), (616, 178), (300, 292), (540, 260)]
    for k, (x, y) in enumerate(tips):
        root = complex(490 + (x - 470) * 0.5, 490)
        colour = (LEAF_MID.base, LEAF_DARK.base, LEAF_MID.light)[k % 3]
        sheet.fill(touch(root, complex(x, y), 9, (470 - x) / 1800), colour)
    for x, y in stalks:
        pompom(sheet, complex(x, y), 52 if x != 338 else 40, CHIVE, rng)
    for tip, bend in ((672 + 92j, -0.1), (742 + 196j, -0.14), (604 + 196j, -0.04)):
        needles(sheet, bow(complex(600, 490), tip, bend, 9), 78, LEAF_BLUE, rng)


def herbs_before(sheet: Sheet, rng: Random) -> None:
    """Paint what hangs over the rim: basil, sage and daisies."""
    for root, tip, width, tones, bend in (
        (420 + 480j, 250 + 370j, 104, LEAF_DARK, 0.16),
        (440 + 470j, 330 + 318j, 96, LEAF_MID, 0.14),
        (640 + 470j, 800 + 312j, 84, LEAF_PALE, -0.14),
        (620 + 480j, 700 + 320j, 84, LEAF_PALE, 0.1),
        (480 + 490j, 440 + 332j, 110, LEAF_DARK, 0.12),
        (530 + 490j, 560 + 330j, 104, LEAF_MID, -0.12),
        (400 + 484j, 288 + 500j, 92, LEAF_MID, -0.2),
        (450 + 490j, 372 + 590j, 104, LEAF_MID, 0.14),
        (640 + 490j, 742 + 560j, 84, LEAF_PALE, 0.2),
    ):
        leaf(sheet, root, tip, width, tones, rng, bend=bend, veins=2, full=0.78)
    flowers = ((500, 420, 54), (596, 452, 46), (690, 400, 42))
    sheet.fill([taper(bow(complex(540, 500), complex(x, y), 0.05, 4), 8, 6, 6) for x, y, _ in flowers], LEAF)
    for x, y, size in flowers:
        daisy(sheet, complex(x, y), size, rng, squash=0.86)
    leaf(sheet, 540 + 500j, 610 + 590j, 86, LEAF_DARK, rng, bend=0.1, veins=3, full=0.78)
    leaf(sheet, 520 + 500j, 470 + 570j, 74, LEAF_MID, rng, bend=-0.1, veins=3, full=0.78)


def body(sheet: Sheet, rng: Random) -> None:
    """Paint the can's body: rims, a painted sprig, a chip or two in the enamel."""
    edge = shape(RIM, SIDE, FOOT, NEAR)
    modelled(sheet, [*RIM[1:], *SIDE[1:], *FOOT[1:], *NEAR[1:]], RED, rng, turn=0.24, strokes=8, outline=edge)
    with sheet.inside(edge):
        for low, wide in ((0, 26), (300, 22)):
            top = [complex(530 + (p.real - 530) * (1 + low / 2400), p.imag + 8 + low) for p in RIM]
            sheet.fill(shape(top, [p + 1j * wide for p in top[::-1]]), CREAM if low else LINEN)
            sheet.fill(shape(top[4:], [p + 1j * wide for p in top[:3:-1]]), BLUSH, 0.6)
        stem = curve(at(420, 774, 470, 728, 540, 708, 622, 690), 4)
        sheet.fill(taper(stem, 5, 7, 4), CREAM)
        pairs = [
            touch(stem[k], stem[k] + heading(-20 + s * 62, 50), 11, -0.1 * s) for k in (2, 5, 8) for s in (-1, 1)
        ]
        sheet.fill(pairs, CREAM)
        bloom = 642 + 684j
        sheet.fill([touch(bloom, bloom + heading(a, 42), 10) for a in range(-190, 130, 45)], CREAM)
        sheet.fill(spot(bloom, 26), HONEY)
        sheet.fill([touch(336 + 740j, 352 + 560j, 13, 0.02), touch(372 + 640j, 378 + 570j, 6)], CREAM, 0.9)


def snail(sheet: Sheet, rng: Random) -> None:
    """Paint the snail that sets out from the can's foot."""
    foot = marks("700,858 730,834 800,836 862,822 882,780 902,768 920,784 912,824 880,856 790,868")
    modelled(sheet, foot, BASKET, rng, turn=0.16, strokes=2)
    horns = [
        taper(bow(complex(904, 776), tip, b, 4), 6, 4, 4) for tip, b in ((896 + 736j, 0.1), (930 + 742j, -0.1))
    ]
    sheet.fill([*horns, spot(896 + 734j, 11), spot(931 + 740j, 11)], BASKET.shade)
    sheet.fill(spot(902 + 790j, 8), SOIL)
    modelled(sheet, shaky(oval(796 + 794j, 118, 108, -10), 2, rng), LEMON, rng, strokes=4)
    whorl = [796 + 796j + heading(200 + k * 40, 48 - k * 2.7) for k in range(17)]
    sheet.fill(taper(whorl, 4, 9, 3), BRICK)


def drawing() -> Sheet:
    """Paint the watering can."""
    sheet, rng = Sheet(980, 890), Random(23)
    handles(sheet)
    sheet.fill(ring(oval(530 + 470j, 402, 84, 0)), GARNET)
    sheet.fill(ring(oval(530 + 480j, 360, 62, 0)), SOIL)
    herbs_behind(sheet, rng)
    rose(sheet, rng)
    body(sheet, rng)
    herbs_before(sheet, rng)
    snail(sheet, rng)
    return sheet
