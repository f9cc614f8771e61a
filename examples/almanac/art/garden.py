"""The kitchen garden in the morning: a whole face, quiet in its middle and rich along its edges.

In: nothing. Out: `drawing()` gives the sheet. Leads with sage, dusty blue and blush; mustard and
tomato at the edges.
"""

from __future__ import annotations

from random import Random

from garden_edge import bough, foreground, left_edge, right_edge, stamps
from hand import Points, at, marks, oval, ring, shaky, shape, spot, touch
from palette import (
    BARK,
    BLUSH,
    BUTTER,
    CORAL,
    CREAM,
    DENIM,
    FERN,
    SAGE,
    SKY,
    SLATE,
    STRAW,
)
from sheet import Sheet

# Where each bed begins and ends along the lower edge, and how far down its plants stand.
BEDS = ((-930, -700), (-580, -330), (-210, 70), (200, 380), (520, 700), (830, 1110), (1230, 1480))
ROWS = (535, 551, 572, 599, 633, 676, 730, 800, 886, 990, 1110)
WIDTH, HEIGHT = 900, 1200
HORIZON = 470


def sky(sheet: Sheet, rng: Random) -> None:
    """Paint the morning sky, its low sun and streaks of cloud."""
    sheet.fill(f"M0 0h{WIDTH}v{HORIZON + 40}H0z", sheet.blend("#b9d3db", "#fbe3c4"))
    sun = 610 + 330j
    for size, veil in ((330, 0.25), (230, 0.4)):
        sheet.fill(ring(oval(sun, size, size, 0, rng, 0.02)), BUTTER, veil)
    sheet.fill(ring(oval(sun, 132, 132, 0, rng, 0.02)), "#fdeebb")
    for x, y, long, deep in (
        (60, 150, 330, 22),
        (420, 96, 300, 18),
        (560, 214, 300, 20),
        (-30, 262, 300, 18),
        (300, 300, 210, 12),
    ):
        streak = at(
            x,
            y,
            x + long * 0.3,
            y - deep,
            x + long * 0.55,
            y - deep * 0.5,
            x + long * 0.8,
            y - deep * 1.1,
            x + long,
            y,
            x + long * 0.6,
            y + deep * 0.4,
        )
        sheet.fill(ring(shaky(streak, 4, rng)), "#fdf0dc", 0.85)
        sheet.fill(touch(complex(x + 30, y + 3), complex(x + long * 0.8, y + 4), 5), BLUSH, 0.7)
    birds = [
        touch(p, p + complex(s * 20, -8), 3, s * 0.2)
        for p in (350 + 210j, 400 + 190j, 388 + 232j)
        for s in (-1, 1)
    ]
    sheet.fill(birds, SLATE, 0.8)


def ridge(sheet: Sheet, tops: Points, colour: str, veil: float = 1) -> None:
    """Paint one line of hills down to the garden."""
    sheet.fill(shape(tops, at(WIDTH + 20, HORIZON + 90, -20, HORIZON + 90)), colour, veil)


def hills(sheet: Sheet, rng: Random) -> None:
    """Paint the hills, fields and hedges in the distance."""
    ridge(sheet, marks("-20,372 140,330 300,372 460,352 640,392 800,342 920,364"), "#a9c3cd")
    ridge(sheet, marks("-20,420 110,402 280,424 480,388 700,424 920,392"), "#a8c2b4")
    ridge(sheet, marks("-20,440 200,452 420,430 650,452 920,428"), "#bccda3")
    fields = [
        shape(at(470, 436, 640, 450), at(560, 470, 420, 462)),
        shape(at(90, 444, 250, 450), at(200, 474, 30, 470)),
    ]
    sheet.fill(fields, "#dccf93", 0.8)
    for x, y, size in (
        (40, 424, 60),
        (92, 432, 46),
        (138, 438, 36),
        (706, 438, 38),
        (752, 430, 54),
        (806, 426, 70),
        (866, 420, 78),
        (400, 440, 24),
        (430, 441, 30),
    ):
        crown = ring(oval(complex(x, y), size, size * 1.05, 0, rng, 0.1))
        sheet.fill(crown, "#86a98b")
        sheet.fill(
            ring(oval(complex(x - size * 0.1, y - size * 0.12), size * 0.66, size * 0.6, 0, rng, 0.1)), "#a3bf9a"
        )


def cottage(sheet: Sheet) -> None:
    """Paint the glass house and the shed beyond the fence."""
    sheet.fill(
        shape(at(150, 478), at(150, 412), at(196, 372), at(290, 372), at(318, 412), at(318, 478)), "#cfe0dc"
    )
    panes = [touch(complex(x, 414), complex(x, 478), 2) for x in (172, 194, 216, 238, 260, 282, 304)]
    panes += [touch(complex(154 + k * 24, 412), complex(192 + k * 17, 374), 2) for k in range(1, 7)]
    sheet.fill(
        [
            *panes,
            touch(150 + 412j, 318 + 412j, 3),
            touch(190 + 373j, 296 + 373j, 3),
            touch(150 + 446j, 318 + 446j, 2),
        ],
        CREAM,
    )
    sheet.fill(
        [
            touch(complex(x, 474), complex(x + d, 430), 7, 0.1)
            for x, d in ((176, -8), (204, 6), (232, -6), (262, 8), (296, -4))
        ],
        FERN,
        0.7,
    )
    sheet.fill(shape(at(640, 480), at(640, 418), at(684, 374), at(728, 418), at(728, 480)), "#d9a27f")
    sheet.fill(
        shape(at(626, 424), at(684, 362), at(742, 424), at(732, 428), at(684, 380), at(636, 428)), "#a8564a"
    )
    sheet.fill(shape(at(668, 480), at(668, 436), at(700, 436), at(700, 480)), DENIM)
    sheet.fill(spot(684 + 410j, 15), SKY)
    sheet.fill([touch(complex(x, 426), complex(x, 478), 1.5) for x in (652, 712)], BARK, 0.4)


def fence(sheet: Sheet, rng: Random) -> None:
    """Paint the paling at the garden's end."""
    pales, shades = [], []
    for k in range(24):
        x, top = round(k * 40 - 14 + rng.uniform(-3, 3)), round(452 + rng.uniform(-5, 5))
        pales.append(f"M{x} 524V{top + 12}l9-12 9 12V524z")
        shades.append(f"M{x + 13} 524V{top + 6}l5 6V524z")
    rails = [shape(at(-10, y), at(910, y - 3), at(910, y + 9), at(-10, y + 11)) for y in (472, 502)]
    sheet.fill(rails, STRAW)
    sheet.fill(pales, "#f8ead0")
    sheet.fill(shades, "#dfc6a0")
    tufts = [complex(rng.uniform(0, 900), 530) for _ in range(14)]
    sheet.fill([touch(p, p + complex(rng.uniform(-8, 8), -rng.uniform(12, 26)), 4) for p in tufts], SAGE)


def plot(sheet: Sheet, rng: Random) -> None:
    """Paint the beds that run towards the fence, pale enough to lie under writing."""
    sheet.fill(f"M0 516h{WIDTH}v{HEIGHT}H0z", sheet.blend("#e9dcae", "#c9cf9d"))
    crop_stamps(sheet, rng)
    gone = complex(450, 392)

    def on(x: float, y: float) -> complex:
        return gone + (complex(x, 1200) - gone) * (y - 392) / 808

    for k, (a, b) in enumerate(BEDS):
        bed = [[on(a, 528), on(a, 800), on(a, 1200)], [on(b, 1200), on(b, 800), on(b, 528)]]
        sheet.fill(shape(*bed), "#d9c096")
        sheet.fill(shape(bed[0], [on(a + 40, 1200), on(a + 34, 800), on(a + 30, 528)]), "#c6a67c")
        crop(
            sheet,
            [on((a + b) / 2 + 10, y) for y in ROWS],
            (b - a) / 808,
            k,
            rng,
        )
    light = [shape([on(x, 530), on(x, 900)], [on(x + 60, 1200), on(x + 30, 900)]) for x in (-260, 450, 760)]
    sheet.fill(light, CREAM, 0.35)


CROPS = (("#a9c497", "#cbdab0", "#8db088"), ("#bdd098", "#dde5b8", "#9fba88"), ("#9dbdab", "#c3d9c6", "#84a89b"))


def crop_stamps(sheet: Sheet, rng: Random) -> None:
    """Paint three kinds of round plant, each once, a hundred units across."""
    for kind, (base, lit, dark) in enumerate(CROPS):
        with sheet.stamp(f"c{kind}"):
            sheet.fill(ring(oval(4 + 10j, 108, 56)), "#b3966c", 0.5)
            sheet.fill(ring(shaky(oval(0, 100, 66, 0), 5, rng)), base)
            sheet.fill(ring(shaky(oval(-8 - 8j, 66, 40, 0), 5, rng)), lit)
            veins = [touch(10j, complex(s * x, y), 4, s * 0.1) for s in (-1, 1) for x, y in ((36, -14), (22, -24))]
            sheet.fill(veins, dark)
            if kind == 1:
                sheet.fill([spot(p, 11) for p in (-20 + 5j, 16 - 10j, 24 + 12j)], CORAL, 0.8)


def crop(sheet: Sheet, places: Points, spread: float, kind: int, rng: Random) -> None:
    """Print one kind of plant at each place of a bed, its size as near as it stands."""
    for p in places:
        size = (p.imag - 392) * spread * 0.0092
        if -50 * size < p.real < WIDTH + 50 * size:
            across = size * rng.uniform(0.94, 1.06)
            sheet.press(f"c{kind % 3}", p, across, 0, size * rng.uniform(0.9, 1.06))


def drawing() -> Sheet:
    """Paint the garden."""
    sheet, rng = Sheet(WIDTH, HEIGHT), Random(64)
    sky(sheet, rng)
    hills(sheet, rng)
    cottage(sheet)
    fence(sheet, rng)
    plot(sheet, rng)
    stamps(sheet, rng)
    bough(sheet)
    left_edge(sheet)
    right_edge(sheet)
    foreground(sheet, rng)
    return sheet
