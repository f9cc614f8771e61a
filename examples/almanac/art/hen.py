"""A speckled hen and her chick in the daisies. Leads with russet and cream, tomato comb, mustard chick.

In: nothing. Out: `drawing()` gives the sheet.
"""

from __future__ import annotations

from random import Random

from hand import Points, at, curve, heading, marks, oval, placed, ring, shaky, shape, sides, spot, taper, touch
from leaves import blades, daisy
from palette import (
    AUBERGINE,
    BUTTER,
    CREAM,
    HONEY,
    INK,
    LEAF_DARK,
    LEAF_MID,
    LEAF_PALE,
    LEMON,
    LINEN,
    MUSTARD,
    OCHRE,
    PINE,
    RED,
    SLATE,
    Tones,
)
from sheet import Sheet, modelled

RUSSET = Tones("#4f2229", "#78352f", "#a3533a", "#c88159", LINEN)
BODY = marks(
    "236,150 284,164 316,210 334,280 378,346 460,388 560,396 650,372 726,338 776,372 788,450 764,548 "
    "704,640 610,706 490,732 370,712 276,652 220,566 204,470 206,380 198,300 180,240 186,180"
)
WING = marks(
    "388,462 470,430 566,438 650,470 728,512 784,566 724,584 690,616 640,622 590,644 520,634 450,606 396,556"
)
COMB = marks(
    "186,172 176,130 192,100 210,126 214,84 238,62 250,104 270,78 290,90 286,130 308,118 316,146 "
    "298,176 262,190 222,186"
)


# Where the speckles lie: the body without the head.
NAPE = [*at(200, 300, 330, 268), *BODY[4:-2]]
SHOULDER = 330 + 478j
#: Rows of wing coverts, the farthest first: how far from the shoulder, how many, from which way to which.
COVERTS = ((300, 5, -7, 25), (248, 5, -9, 29), (196, 5, -13, 36), (144, 4, -15, 44), (94, 3, -12, 56))


def within(point: complex, outline: Points) -> bool:
    """Say whether a point lies inside an outline (even-odd rule)."""
    inside = False
    for a, b in zip(outline, [*outline[1:], outline[0]], strict=True):
        if (a.imag > point.imag) != (b.imag > point.imag):
            inside ^= point.real < a.real + (point.imag - a.imag) / (b.imag - a.imag) * (b.real - a.real)
    return inside


def feather(sheet: Sheet, root: complex, tip: complex, width: float, tones: Tones, bend: float) -> None:
    """Paint one long feather with its shaft and pale tip."""
    middle = (root + tip) / 2 - 1j * (tip - root) * bend
    spine = curve([root, middle, tip], 4)
    left, right = sides(spine, [width * w for w in (0.5, 0.72, 0.9, 1, 1.02, 1, 0.94, 0.72, 0)])
    sheet.fill(shape(left, right[::-1]), tones.base)
    sheet.fill(shape(spine[1:], right[:0:-1]), tones.shade)
    sheet.fill(taper(spine, 4, 5, 2), tones.light)
    bite = spine[6] * 0.35 + spine[7] * 0.65
    edges = [spine[7] + (p - spine[7]) * 1.06 for p in (left[7], right[7])]
    sheet.fill(
        shape([edges[0], spine[8] + (spine[8] - spine[7]) * 0.06, edges[1]], [edges[1], bite, edges[0]]),
        tones.glint,
    )


def tail(sheet: Sheet) -> None:
    """Paint the fan of tail feathers, the farthest first."""
    dark = Tones(PINE, "#241c36", AUBERGINE, SLATE, LINEN)
    warm = Tones(RUSSET.deep, RUSSET.deep, RUSSET.shade, RUSSET.light, LINEN)
    for k, tip in enumerate((716 + 128j, 930 + 356j, 778 + 104j, 936 + 288j, 842 + 122j, 916 + 212j)):
        feather(
            sheet,
            700 + 420j + (k % 3) * 12,
            tip,
            78,
            warm if k in (2, 3) else dark,
            0.12 if k % 2 == 0 else -0.12,
        )


def speckles(sheet: Sheet, outline: Points, avoid: Points, gap: float, size: float, rng: Random) -> None:
    """Scatter cream speckles, each with its dark edge, along the lie of the feathers."""
    dark, pale = [], []
    rim = curve(outline, 3, closed=True)
    for row in range(int(720 / gap)):
        for column in range(int(800 / gap)):
            p = complex(170 + (column + row % 2 / 2) * gap, 150 + row * gap * 0.86)
            p += complex(rng.uniform(-0.24, 0.24), rng.uniform(-0.24, 0.24)) * gap
            if not within(p, rim) or (avoid and within(p, avoid)):
                continue
            way = heading(96 - (p.real - 200) * 0.13 - max(0, 420 - p.imag) * 0.06, size * rng.uniform(0.8, 1.2))
            dark.append(touch(p - way * 0.35, p + way * 1.25, size * 0.5))
            pale.append(touch(p, p + way, size * 0.36))
    sheet.fill(dark, RUSSET.deep, 0.8)
    sheet.fill(pale, CREAM)


def wing(sheet: Sheet, rng: Random) -> None:
    """Paint the folded wing: long feathers below, rows of coverts above."""
    for root, tip in (
        (520 + 560j, 640 + 640j),
        (560 + 548j, 706 + 622j),
        (580 + 528j, 750 + 596j),
        (590 + 506j, 800 + 566j),
        (580 + 488j, 776 + 520j),
    ):
        feather(sheet, root, tip, 54, Tones(RUSSET.deep, RUSSET.shade, "#8f4435", RUSSET.light, LINEN), 0.06)
    shoulder = marks("384,470 440,430 530,424 610,446 660,486 640,548 580,600 500,618 430,590 390,536")
    modelled(sheet, shoulder, RUSSET, rng, turn=0.14, strokes=6)
    for far, count, first, last in COVERTS:
        dark, pale, shafts = [], [], []
        for k in range(count):
            a = first + (last - first) * k / (count - 1) + rng.uniform(-1.5, 1.5)
            root = SHOULDER + heading(a, far)
            knots, drop = marks("-48,-20 6,-24 32,1 6,24 -48,20"), marks("3,-13 17,-9 25,1 17,10 3,14 12,1")
            dark.append(ring(placed(knots, root, 1, a)))
            pale.append(ring(placed(drop, root, 1, a)))
            shafts.append(touch(*placed(at(-16, 0, 10, 0), root, 1, a), 3))
        sheet.fill(dark[::2], RUSSET.shade)
        sheet.fill(dark[1::2], "#8b4237")
        sheet.fill(pale, CREAM)
        sheet.fill(shafts, RUSSET.light)


def face(sheet: Sheet, rng: Random) -> None:
    """Paint comb, cheek, wattles, beak and eye."""
    beak = shape(at(190, 222, 150, 226, 112, 254), at(112, 254, 146, 258, 190, 266))
    sheet.fill(beak, MUSTARD)
    sheet.fill(shape(at(190, 222, 152, 228, 114, 253), at(114, 253, 150, 246, 190, 242)), HONEY)
    sheet.fill([touch(124 + 253j, 186 + 246j, 3), touch(160 + 234j, 172 + 234j, 3)], OCHRE)
    for low in (
        marks("196,262 222,270 226,306 210,334 190,320 184,288"),
        marks("178,258 198,264 202,296 188,316 172,302 168,276"),
    ):
        modelled(sheet, low, RED, rng, turn=0.2, strokes=3)
    modelled(
        sheet, marks("190,206 224,184 262,196 274,232 256,266 220,274 190,256"), RED, rng, turn=0.16, strokes=4
    )
    sheet.fill(ring(oval(228 + 222j, 46, 42, -10, rng)), BUTTER)
    sheet.fill(ring(oval(226 + 223j, 33, 33, 0, rng)), INK)
    sheet.fill([spot(219 + 215j, 11), spot(232 + 231j, 5)], CREAM)
    sheet.fill(touch(202 + 204j, 252 + 200j, 5, 0.14), RED.deep)
    ear = ring(oval(276 + 252j, 26, 36, 20, rng))
    sheet.fill(ear, LINEN)


def legs(sheet: Sheet) -> None:
    """Paint the legs and feet."""
    for hip, foot in ((430 + 700j, 420 + 832j), (536 + 700j, 546 + 828j)):
        shin = curve([hip, (hip + foot) / 2 + 5, foot], 3)
        toes = [
            (foot, foot + complex(-66, 20)),
            (foot, foot + complex(-28, 34)),
            (foot, foot + complex(34, 26)),
            (foot - 6j, foot + complex(44, -2)),
        ]
        sheet.fill([taper(shin, 28, 18, 18), *[touch(a - (b - a) * 0.1, b, 9, 0.05) for a, b in toes]], OCHRE)
        sheet.fill(
            [
                taper([p - 3 for p in shin], 16, 9, 9),
                *[touch(a, a + (b - a) * 0.85 - 3j, 4, 0.05) for a, b in toes],
            ],
            HONEY,
        )
        sheet.fill([touch(p - 9, p + 8, 2) for p in shin[2:]], OCHRE)


def chick(sheet: Sheet, rng: Random) -> None:
    """Paint the chick that looks up at her."""
    for x in (128, 164):
        sheet.fill(
            [
                taper(at(x, 790, x + 2, 820, x, 842), 12, 9, 9),
                touch(complex(x - 4, 842), complex(x + 30, 852), 6),
                touch(complex(x + 4, 840), complex(x - 20, 854), 6),
            ],
            OCHRE,
        )
    down = marks(
        "118,620 160,596 200,612 214,652 208,690 228,730 212,782 164,810 108,802 70,762 58,704 78,700 "
        "104,690 106,654"
    )
    knots = shaky(down, 2, rng)
    modelled(sheet, knots, LEMON, rng, turn=0.2, strokes=8)
    fluff = [
        touch(p, p + heading(rng.uniform(60, 130), 20), 4)
        for p in shaky(marks("120,720 150,760 180,740 140,790 190,780 100,760 196,700 150,690"), 14, rng)
    ]
    sheet.fill(fluff, BUTTER)
    sheet.fill([touch(160 + 598j, 150 + 572j, 4), touch(166 + 598j, 172 + 570j, 4)], MUSTARD)
    stub = marks("84,716 126,702 160,726 150,760 112,778 76,756")
    modelled(sheet, stub, Tones(OCHRE, OCHRE, MUSTARD, HONEY), rng, turn=0.14, strokes=4)
    sheet.fill(shape(at(206, 632, 240, 622), at(240, 622, 212, 656)), RED.light)
    sheet.fill(touch(210 + 644j, 236 + 624j, 2), RED.shade)
    sheet.fill(ring(oval(182 + 638j, 20, 22, 0)), INK)
    sheet.fill(spot(179 + 633j, 7), CREAM)
    sheet.fill(ring(oval(176 + 666j, 30, 18, 10)), RED.light, 0.5)


def meadow(sheet: Sheet, rng: Random, front: bool) -> None:
    """Paint the grass behind the feet, or the tufts, leaves and daisies before them."""
    if not front:
        bank = shaky(
            marks("20,842 140,822 330,812 540,808 740,816 880,838 930,856 780,872 480,880 180,876"), 4, rng
        )
        sheet.fill(ring(bank), LEAF_MID.base)
        sheet.fill(ring(oval(480 + 846j, 440, 38, 0, rng)), LEAF_MID.shade)
        roots = [complex(rng.uniform(40, 900), rng.uniform(826, 850)) for _ in range(20)]
        blades(
            sheet,
            roots,
            [p + complex(rng.uniform(-26, 26), -rng.uniform(36, 78)) for p in roots],
            7,
            LEAF_DARK,
            rng,
        )
        return
    for x, lean in ((300, 1), (640, 1), (760, -1), (840, 1), (60, -1), (250, -1)):
        roots = [complex(x + k * 9, 868) for k in range(6)]
        tips = [p + complex((k - 3) * 15 + lean * 8, -rng.uniform(44, 96)) for k, p in enumerate(roots)]
        blades(sheet, roots, tips, 8, LEAF_PALE if lean > 0 else LEAF_MID, rng)
    for x, y, size in ((690, 780, 38), (764, 812, 30), (856, 774, 34), (36, 806, 26)):
        sheet.fill(touch(complex(x, y), complex(x + 6, 868), 4, 0.04), LEAF_DARK.base)
        daisy(sheet, complex(x, y), size, rng, petals=9, squash=0.8)


def drawing() -> Sheet:
    """Paint the hen."""
    sheet, rng = Sheet(960, 890), Random(12)
    meadow(sheet, rng, front=False)
    tail(sheet)
    legs(sheet)
    modelled(sheet, COMB, RED, rng, turn=0.14, strokes=6)
    modelled(sheet, BODY, RUSSET, rng, turn=0.2, strokes=7)
    thigh = ring(marks("392,676 470,690 580,680 560,730 548,752 510,726 470,734 430,756 410,730"))
    sheet.fill(thigh, RUSSET.shade)
    with sheet.inside(ring(BODY)):
        speckles(sheet, NAPE, WING, 50, 22, rng)
        neck = [complex(rng.uniform(206, 330), rng.uniform(276, 430)) for _ in range(20)]
        sheet.fill(
            [touch(p, p + heading(98 - (p.real - 200) * 0.22, 46), 6, 0.05) for p in neck[::2]], RUSSET.light
        )
        sheet.fill([touch(p, p + heading(98 - (p.real - 200) * 0.22, 38), 4, 0.05) for p in neck[1::2]], LINEN)
        sheet.fill(ring([p + complex(8, 20) for p in WING]), RUSSET.deep, 0.6)
    wing(sheet, rng)
    face(sheet, rng)
    chick(sheet, rng)
    meadow(sheet, rng, front=True)
    return sheet
