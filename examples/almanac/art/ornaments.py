"""A sprig for repeating on a ground, and a sun for the habit grid. They lead with sage, and with mustard.

In: nothing. Out: `sprig()` and `sun()` give the sheets.
"""

from __future__ import annotations

from random import Random

from hand import bow, curve, heading, marks, oval, ring, shape, sides, spot, taper, touch
from palette import BRICK, CORAL, CREAM, FERN, HONEY, LEMON, MUSTARD, OCHRE, SAGE, TOMATO
from sheet import Sheet, modelled


def sprig() -> Sheet:
    """Paint one sprig of thyme in two tones, bold enough to be printed at five millimetres."""
    sheet, rng = Sheet(1000, 1000), Random(3)
    stem = curve(marks("250,930 380,760 490,540 560,330 640,200"), 4)
    leaves, halves = [], []

    def add(base: complex, tip: complex, bend: float) -> None:
        spine, long = bow(base, tip, bend, 8), abs(tip - base)
        left, right = sides(spine, [long * w for w in (0.03, 0.2, 0.34, 0.43, 0.45, 0.41, 0.31, 0.17, 0)])
        leaves.append(shape(left, right[::-1]))
        halves.append(shape(spine, (right if bend > 0 else left)[::-1]))

    for k, (step, long) in enumerate(((2, 262), (5, 270), (8, 244), (11, 206), (14, 130))):
        way = (stem[step] - stem[step - 1]) / abs(stem[step] - stem[step - 1])
        for side in (-1, 1):
            turn = side * (62 - k * 6 + rng.uniform(-5, 5))
            add(stem[step], stem[step] + way * heading(turn, long * rng.uniform(0.94, 1.06)), 0.1 * side)
    add(stem[-2], stem[-1] + complex(40, -104), 0.04)
    sheet.fill(leaves, SAGE)
    sheet.fill(halves, FERN)
    sheet.fill(taper(stem, 34, 26, 12), FERN)
    return sheet


def rays(sheet: Sheet, centre: complex, rng: Random) -> None:
    """Paint the rays, straight and flaming in turn."""
    back, straight, flaming, veins = [], [], [], []
    for k in range(16):
        a, long = k * 22.5 + rng.uniform(-1.5, 1.5), rng.uniform(0.97, 1.03)

        def on(u: float, v: float, a: float = a, long: float = long) -> complex:
            return centre + heading(a, u * long if u > 160 else u) + heading(a + 90, v)

        if k % 2:
            side = [on(140, -30), on(200, -26), on(236, 2), on(282, 8)]
            other = [on(282, 8), on(246, 26), on(204, 22), on(140, 30)]
            flaming.append(shape(side, other))
            veins.append(touch(on(156, 0), on(252, 12), 5, -0.1))
        else:
            straight.append(
                shape([on(140, -38), on(206, -19), on(262, 0)], [on(262, 0), on(206, 19), on(140, 38)])
            )
            back.append(shape([on(150, 0), on(262, 0)], [on(262, 0), on(206, 19), on(140, 38)]))
    sheet.fill(flaming, TOMATO)
    sheet.fill(veins, CORAL)
    sheet.fill(straight, HONEY)
    sheet.fill(back, MUSTARD)


def sun() -> Sheet:
    """Paint a sun with a sleepy face."""
    sheet, rng = Sheet(600, 600), Random(8)
    centre = 300 + 300j
    rays(sheet, centre, rng)
    sheet.fill(ring(oval(centre, 336, 332, 0, rng, 0.01)), OCHRE)
    modelled(sheet, oval(centre, 318, 314, 0, rng, 0.01), LEMON, rng, turn=0.14, strokes=14)
    sheet.fill([spot(centre + heading(a, 143), 9) for a in range(0, 360, 15)], BRICK, 0.75)
    sheet.fill([ring(oval(complex(x, 334), 62, 46, t, rng)) for x, t in ((218, 8), (384, -8))], CORAL, 0.6)
    for s in (-1, 1):
        eye = [complex(300 + s * x, y) for x, y in ((34, 282), (52, 296), (76, 296), (94, 280))]
        sheet.fill(taper(curve(eye, 3), 4, 10, 4), BRICK)
        sheet.fill(
            [
                touch(complex(300 + s * x, y), complex(300 + s * u, v), 3.5)
                for x, y, u, v in ((46, 290, 40, 304), (62, 296, 61, 312), (80, 292, 86, 306))
            ],
            BRICK,
        )
        sheet.fill(touch(complex(300 + s * 26, 254), complex(300 + s * 98, 250), 7, s * 0.12), OCHRE)
    nose = curve(marks("297,264 294,296 282,324 286,336 300,338 310,332"), 3)
    sheet.fill(taper(nose, 2, 9, 1), OCHRE)
    smile = curve(marks("252,360 268,374 300,382 332,374 348,360"), 3)
    sheet.fill(shape(smile[2:-2], marks("332,374 318,394 300,398 282,394 268,374")), TOMATO)
    sheet.fill(taper(smile, 2, 12, 2), BRICK)
    sheet.fill([touch(246 + 366j, 256 + 350j, 4), touch(354 + 366j, 344 + 350j, 4)], BRICK)
    sheet.fill(touch(214 + 250j, 252 + 206j, 10, 0.12), CREAM)
    return sheet
