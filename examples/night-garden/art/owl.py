"""The owl: on a leafy branch before a full gold moon.

In: nothing. Out: `paint()` gives a canvas with the whole picture on it.
"""

from __future__ import annotations

import math

import numpy as np
from brush import (
    Array,
    Canvas,
    Mark,
    Mask,
    Paint,
    Point,
    blob,
    curve,
    dab,
    doubled,
    hair,
    jitter,
    mix,
    moved,
    outline,
    rgb,
    ribbon,
    wobble,
)
from flora import leaf, star
from palette import AMBER, BARK, BOTTLE, CREAM, DEEP, FOAM, FROND, GOLD, INK, MOSS, NIGHT, SAGE, SEA, SILVER, TEAL

CX = 742  # the owl's middle
Rng = np.random.Generator

BACK = Paint(TEAL, DEEP, SEA, rim=FOAM, rim_width=3, rim_strength=0.7)
PALE = Paint("#dfe6d2", "#8fb7b4", CREAM, low=0.3, high=0.66)


def moon(cv: Canvas, rng: Rng) -> None:
    """Paint the moon's disc with its seas and craters."""
    at, r = (796, 462), 436
    gold = Paint(
        "#efc765",
        "#dda247",
        "#f9e3a0",
        low=0.22,
        high=0.62,
        soft=0.26,
        form=0.3,
        rough=0.07,
        streak=30,
        shadow=0,
        edge=0.2,
        edge_width=14,
        rim="#fff3c9",
        rim_width=5,
    )
    turn = np.linspace(0, 2 * math.pi, 240, endpoint=False)
    circle = np.column_stack([at[0] + r * np.cos(turn), at[1] + r * np.sin(turn)])
    disc = cv.lay(wobble(circle, rng, 0.5, 260), gold)
    sea = gold.but(base="#e3b054", dark="#d59a42", light="#edc163", rim=None, edge=0, rough=0.15)
    for dx, dy, w, h, turn in [
        (220, -190, 230, 130, 30),
        (300, -40, 150, 210, 10),
        (-250, -210, 190, 120, -35),
        (-330, 20, 120, 190, 15),
        (250, 190, 210, 120, -30),
        (90, -330, 160, 70, 8),
        (-270, 240, 170, 90, 35),
    ]:
        cv.lay(blob((at[0] + dx, at[1] + dy), w, h, rng, 0.1, turn=turn), sea, clip=disc, alpha=0.75, dry=0.22)
    for _ in range(34):
        a, d = rng.uniform(0, 6.3), r * math.sqrt(rng.uniform(0.12, 0.9))
        x, y, s = at[0] + math.cos(a) * d, at[1] + math.sin(a) * d, rng.uniform(10, 34)
        cv.lay(blob((x, y), s, s * 0.9, rng, 0.06), sea.but(base="#dca449"), clip=disc, alpha=0.65, dry=0.1)
        cv.lay(
            blob((x + s * 0.1, y + s * 0.12), s * 0.74, s * 0.66, rng, 0.06),
            gold.but(base="#f1cd72", rim=None, edge=0),
            clip=disc,
            alpha=0.7,
        )
    cv.speckle(disc, "#fff0c0", 240, rng, (2, 5), 0.7)
    cv.speckle(disc, "#cf9440", 200, rng, (2, 4.5), 0.5)


def feather(
    cv: Canvas,
    root: Point,
    length: float,
    width: float,
    turn: float,
    paint: Paint,
    rng: Rng,
    *,
    edge: str | Array | None = None,
    bars: int = 0,
    bar: str | Array = DEEP,
    clip: Mask | None = None,
) -> None:
    """Paint one feather hanging from its root; `turn` 90 points straight down."""
    tongue = [
        (0, -0.3),
        (0.3, -0.47),
        (0.66, -0.49),
        (0.9, -0.33),
        (1.0, 0.02),
        (0.91, 0.33),
        (0.66, 0.48),
        (0.3, 0.45),
        (0, 0.3),
    ]
    shape = curve(np.array(tongue) * (length, width), closed=True, step=3)
    shape = wobble(moved(shape, *root, turn=turn), rng, 0.9, 22)
    mask = cv.lay(shape, paint.but(streak=turn + 20), clip=clip)
    a = math.radians(turn)
    out, across = np.array([math.cos(a), math.sin(a)]), np.array([-math.sin(a), math.cos(a)])
    root = np.array(root)
    marks: list[Mark] = []
    if edge is not None:
        rim = [
            root + out * length * u + across * width * v
            for u, v in [(0.62, -0.46), (0.86, -0.34), (0.96, 0.02), (0.87, 0.34), (0.62, 0.46)]
        ]
        marks.append((ribbon(rim, 1.5, 1.5, belly=max(3.5, width * 0.1)), rgb(edge)))
    for k in range(bars):
        u = 0.25 + 0.6 * (k + 0.5) / bars
        line = [
            root + out * length * (u - 0.05) - across * width * 0.42,
            root + out * length * (u + 0.03),
            root + out * length * (u - 0.05) + across * width * 0.42,
        ]
        marks.append((ribbon(line, 2, 2, belly=max(4, length * 0.045)), rgb(bar)))
    cv.marks(marks, clip=mask, alpha=0.8, dry=0.16, streak=turn)
    shaft = [
        root + out * length * 0.05,
        root + out * length * 0.5 + across * width * 0.02,
        root + out * length * 0.94,
    ]
    cv.marks([(ribbon(shaft, max(2, width * 0.05), 1), mix(paint.light, CREAM, 0.3))], clip=mask, alpha=0.65)


def tail(cv: Canvas, rng: Rng) -> None:
    """Paint the tail, which hangs behind the branch."""
    for x, turn in [(-74, 100), (74, 80), (-40, 95), (40, 85), (0, 90)]:
        feather(cv, (CX + x, 850), 232, 66, turn, BACK, rng, edge=FOAM, bars=4, bar=DEEP)


def torso(cv: Canvas, rng: Rng) -> None:
    """Paint the breast in rows of scalloped feathers, lowest row first."""
    half = [(0, 300), (120, 322), (206, 420), (232, 560), (214, 720), (158, 850), (80, 912), (0, 926)]
    shape = doubled(half, CX)
    cv.lay(shape, PALE.but(base="#a9c9c3", dark=TEAL, form=0.9, shadow=0.5, cast=(10, 12, 14)))
    for row, y in enumerate(np.arange(850, 380, -37)):
        half_width = np.interp(y, [300, 420, 560, 720, 850, 900], [110, 190, 214, 190, 136, 60])
        count = max(3, int(half_width * 2 / 46))
        for k in range(count + 1):
            x = (k - count / 2 + (0.5 if row % 2 else 0)) * (half_width * 2 / count)
            if abs(x) > half_width:
                continue
            side = x / half_width
            share = np.clip(0.35 + 0.5 * (x / 230) + 0.25 * (y - 600) / 300, 0, 1)
            tone = PALE.but(
                base=mix("#e9ebd6", "#84b0af", share),
                dark=mix("#a3c4bd", TEAL, share),
                light=mix(CREAM, FOAM, share),
                shadow=0.3,
                cast=(2, 5, 3),
                rim=None,
            )
            feather(cv, (CX + x, y - 26), 70, 60, 90 - side * 16 + rng.uniform(-4, 4), tone, rng, clip=None)
            heart = [
                (CX + x - 10 - side * 3, y + 10),
                (CX + x + side * 3, y + 26),
                (CX + x + 10 + side * 3, y + 10),
            ]
            cv.marks(
                [(ribbon(heart, 2, 2, belly=11), rgb(mix(TEAL, DEEP, 0.3 + 0.5 * share)))], dry=0.12, alpha=0.9
            )
    fluff: list[Mark] = []
    for side in (-1, 1):
        for _ in range(90):
            x = CX + side * 82 + rng.normal(0, 34)
            y = 868 + rng.uniform(-40, 26)
            tone = jitter(mix("#dfe6d2", "#7fabab", np.clip(0.5 + (x - CX) / 260, 0, 1)), rng, 0.03)
            fluff.append((hair((x, y), (x + rng.normal(0, 4), y + rng.uniform(28, 46)), 11), tone))
    cv.marks(fluff, shadow=0.3)


def wing(cv: Canvas, side: int, rng: Rng) -> None:
    """Paint a folded wing: long flight feathers below, small coverts above."""
    light = 1 if side < 0 else 0
    tone = BACK.but(
        base=mix(TEAL, SEA, 0.15 * light),
        dark=DEEP,
        light=mix(SEA, FOAM, 0.25 * light),
        shadow=0.5,
        cast=(4, 6, 5),
    )
    under = np.array(
        [
            (112, 372),
            (190, 366),
            (252, 420),
            (284, 520),
            (292, 640),
            (268, 780),
            (226, 880),
            (166, 934),
            (122, 900),
            (128, 640),
        ],
        float,
    )
    cv.lay(curve(under * (side, 1) + (CX, 0), closed=True), tone.but(shadow=0.5, cast=(5, 10, 10)))
    for k in range(7):
        t = k / 6
        root = (CX + side * (280 - 118 * t), 586 + 28 * t)
        feather(
            cv,
            root,
            322 + 30 * math.sin(t * 3) - 30 * (1 - t),
            74,
            90 + side * (6 + 5 * (1 - t)),
            tone,
            rng,
            edge=FOAM,
            bars=6,
            bar=DEEP,
        )
    rows = [
        (640, 196, 64, 86, 66, 4),
        (574, 196, 74, 78, 58, 5),
        (514, 194, 82, 70, 52, 5),
        (462, 186, 82, 62, 46, 6),
        (416, 172, 74, 54, 40, 6),
    ]
    for y, middle, spread, length, width, count in rows:
        for k in range(count):
            u = (k / (count - 1) - 0.5) * 2
            root = (CX + side * (middle + u * spread), y - 20 * (1 - u * u) + 10 * u)
            small = tone.but(base=jitter(mix(TEAL, SEA, 0.25 * light + 0.15 * rng.uniform()), rng, 0.015))
            feather(
                cv, root, length, width, 90 + side * (7 + 8 * u), small, rng, edge=mix(FOAM, CREAM, 0.4 * light)
            )
            dot = (root[0] + side * -4, root[1] + length * 0.62)
            cv.marks([(blob(dot, width * 0.22, width * 0.26, rng), rgb(GOLD))], alpha=0.9, shadow=0.2)
    cap: list[Mark] = []
    for y in np.sort(rng.uniform(366, 424, 170))[::-1]:
        x = 112 + 128 * rng.uniform(0, 1) * (0.55 + 0.45 * (y - 366) / 58)
        turn = math.radians(90 - side * (8 + (x - 112) * 0.22) + rng.normal(0, 8))
        root = np.array([CX + side * x, y])
        cap.append(
            (
                hair(root, root + np.array([math.cos(turn), math.sin(turn)]) * rng.uniform(30, 42), 13),
                jitter(mix(mix(DEEP, TEAL, rng.uniform(0.3, 1)), SEA, 0.35 * light), rng, 0.025),
            )
        )
    cv.marks(cap, shadow=0.25)


def head(cv: Canvas, rng: Rng) -> None:
    """Paint the head, crown first, then the face with eyes and beak."""
    half = [
        (0, 112),
        (64, 104),
        (124, 106),
        (172, 128),
        (206, 178),
        (222, 246),
        (216, 322),
        (184, 392),
        (118, 438),
        (0, 456),
    ]
    shape = doubled(half, CX)
    crown = cv.lay(wobble(shape, rng, 2, 24), BACK.but(form=0.75, shadow=0.55, cast=(8, 14, 12), rough=0.2))
    strokes: list[Mark] = []
    for y in np.arange(430, 84, -9):
        for x in rng.uniform(-216, 216, 26):
            if (x / 222) ** 2 + ((y - 250) / 210) ** 2 > 1.0:
                continue
            a = math.atan2(y - 300, x) if y < 300 else math.pi / 2 - x / 500
            root = np.array([CX + x, y])
            tip = root + np.array([math.cos(a), math.sin(a)]) * rng.uniform(16, 26)
            lit = np.clip(0.5 - x / 420 - (y - 240) / 500 + rng.normal(0, 0.18), 0, 1)
            tone = mix(DEEP, TEAL, lit * 2) if lit < 0.5 else mix(TEAL, SEA, lit * 2 - 1)
            strokes.append((hair(root, tip, 9), jitter(tone, rng, 0.02)))
    cv.marks(strokes, clip=crown, alpha=0.85)
    spots = []
    for _ in range(46):
        x, y = rng.uniform(-150, 150), rng.uniform(112, 190)
        if y < 186 - 0.002 * (abs(x) - 80) ** 2:
            spots.append((dab((CX + x, y), 8, 5, 90 + x * 0.2, rng), rgb(FOAM if rng.uniform() < 0.6 else GOLD)))
    cv.marks(spots, clip=crown, alpha=0.85)
    for side in (-1, 1):
        ear_tuft(cv, side, rng)
    face(cv, rng)


def ear_tuft(cv: Canvas, side: int, rng: Rng) -> None:
    """Paint one ear tuft as a horn of overlapping feathers."""
    horn = outline(
        [(104, 128), (134, 86), (172, 52), (222, 20)],
        [(222, 20), (228, 76), (222, 132), (204, 180)],
        [(204, 180), (150, 160), (104, 128)],
    )
    cv.lay(moved(horn, scale=0.93, about=(170, 160)) * (side, 1) + (CX, 0), BACK.but(shadow=0.25, cast=(2, 4, 4)))
    strokes: list[Mark] = []
    for _ in range(80):
        u, v = rng.uniform(0, 1), rng.uniform(0, 0.72)
        low = np.array([104 + 100 * u, 136 + 44 * u])
        root = low + (np.array([214, 40]) - low) * v
        tip = root + (np.array([226, 12]) - low) * rng.uniform(0.3, 0.46) + rng.normal(0, 5, 2)
        tone = mix(DEEP, TEAL, rng.uniform(0, 1)) if u > 0.5 else mix(TEAL, SEA, rng.uniform(0, 1))
        strokes.append(
            (hair(root * (side, 1) + (CX, 0), tip * (side, 1) + (CX, 0), 12, 0.04 * side), jitter(tone, rng, 0.02))
        )
    peak = np.array([226, 14])
    for k in range(34):  # loose barbs break the horn's outline on both sides
        inner = k % 2 == 0
        u = rng.uniform(0.05, 0.9)
        root = (1 - u) * np.array([112, 134] if inner else [210, 176]) + u * np.array(
            [206, 42] if inner else [222, 60]
        )
        tip = (
            root
            + (peak - root) * rng.uniform(0.2, 0.34)
            + np.array([-15, -4] if inner else [15, -2]) * rng.uniform(0.5, 1)
        )
        tone = mix(TEAL, SEA, rng.uniform(0.2, 1)) if inner else mix(DEEP, TEAL, rng.uniform(0.1, 0.9))
        strokes.append((hair(root * (side, 1) + (CX, 0), tip * (side, 1) + (CX, 0), 10), jitter(tone, rng, 0.02)))
    strokes.sort(key=lambda mark: mark[0][0][1])
    cv.marks(strokes, alpha=0.97)


def face(cv: Canvas, rng: Rng) -> None:
    """Paint the pale heart of the face, and on it eyes, brows and beak."""
    half = [
        (0, 214),
        (36, 178),
        (96, 158),
        (156, 178),
        (188, 236),
        (188, 308),
        (152, 374),
        (86, 412),
        (34, 420),
        (0, 412),
    ]
    heart = doubled(half, CX)
    big = moved(heart, scale=1.075, about=(CX, 296))
    cv.lay(wobble(big, rng, 2, 18), Paint(DEEP, INK, TEAL, shadow=0.3))
    mask = cv.lay(
        wobble(heart, rng, 1.5, 26), Paint("#ecdfb6", "#9fbfb4", CREAM, low=0.28, high=0.6, form=0.7, shadow=0)
    )
    rays: list[Mark] = []
    for side in (-1, 1):
        eye = np.array([CX + side * 88, 280])
        for ring_r in (150, 118, 90):
            for a in rng.uniform(0, 2 * math.pi, 95):
                out = np.array([math.cos(a), math.sin(a)])
                root, tip = eye + out * (ring_r - 34), eye + out * (ring_r + rng.uniform(-6, 10))
                if side * (tip[0] - CX) < 4:
                    continue
                tone = mix(GOLD, AMBER, 0.3) if ring_r == 90 else mix("#c9c79c", "#7fa9a3", rng.uniform())
                rays.append((hair(root, tip, 5.2), jitter(mix(tone, CREAM, rng.uniform(0, 0.55)), rng, 0.02)))
    cv.marks(rays, clip=mask, alpha=0.7)
    rim = []
    for i in range(0, len(heart), 3):
        if heart[i][1] > 176:
            rim.append(
                (
                    dab(
                        heart[i] + (heart[i] - (CX, 296)) * 0.045,
                        9,
                        5,
                        math.degrees(math.atan2(heart[i][1] - 296, heart[i][0] - CX)),
                        rng,
                    ),
                    jitter(GOLD if i % 2 else CREAM, rng, 0.03),
                )
            )
    cv.marks(rim, alpha=0.85)
    for side in (-1, 1):
        eyeball(cv, side, rng)
    beak(cv, rng)


def eyeball(cv: Canvas, side: int, rng: Rng) -> None:
    """Paint one great eye."""
    at = (CX + side * 88, 282)
    cv.lay(blob(at, 140, 142, rng, 0.012, 16), Paint(DEEP, INK, TEAL, shadow=0.3, cast=(2, 4, 5)))
    iris = cv.lay(
        blob(at, 116, 118, rng, 0.008, 16),
        Paint(
            "#f0b93f",
            "#c9772c",
            "#fbdf83",
            low=0.3,
            high=0.62,
            form=0.0,
            shadow=0,
            edge=0.3,
            edge_width=7,
            streak=90,
        ),
        field=lambda _x, y: np.clip(0.28 + (y - at[1] + 58) / 150, 0, 1),
    )
    spokes = []
    for a in np.linspace(0, 2 * math.pi, 49)[:-1]:
        r0, r1 = 36, rng.uniform(44, 54)
        spokes.append(
            (
                ribbon([(at[0] + math.cos(a) * r, at[1] + math.sin(a) * r) for r in (r0, r1)], 2.6, 0.8),
                rgb("#b8662a"),
            )
        )
    cv.marks(spokes, clip=iris, alpha=0.55)
    cv.lay(blob((at[0] - side * 5, at[1] + 1), 68, 72, rng, 0.01, 16), Paint(INK, "#0b0a1c", NIGHT, shadow=0))
    cv.marks(
        [
            (blob((at[0] - side * 5 - 15, at[1] - 19), 27, 20, rng, 0.03, turn=-40), rgb("#fffaf0")),
            (blob((at[0] - side * 5 + 16, at[1] + 19), 11, 7, rng, 0.03, turn=-40), rgb(FOAM)),
        ],
        alpha=0.95,
    )
    lid = [
        (at[0] - side * 78, at[1] - 14),
        (at[0] - side * 40, at[1] - 56),
        (at[0] + side * 14, at[1] - 66),
        (at[0] + side * 66, at[1] - 34),
    ]
    cv.marks([(ribbon(lid, 8, 5, belly=25), rgb(DEEP))], alpha=0.95, shadow=0.4, cast=(2, 6, 4))
    brow: list[Mark] = []
    for k in range(40):
        u = k / 39
        root = np.array([CX + side * (10 + 60 * u), 262 - 74 * u**0.8])
        tip = root + np.array([side * (24 + 26 * u), -44 + 22 * u]) + rng.normal(0, 5, 2)
        brow.append((hair(root, tip, 10, -0.05 * side), jitter(mix(CREAM, "#e0d3a4", rng.uniform()), rng, 0.02)))
    cv.marks(brow, shadow=0.3)


def beak(cv: Canvas, rng: Rng) -> None:
    """Paint the hooked beak between its whiskers."""
    whiskers: list[Mark] = []
    for side in (-1, 1):
        for k in range(22):
            u = k / 21
            root = np.array([CX + side * (6 + 6 * u), 300 + 44 * u])
            tip = root + np.array([side * (34 - 6 * u), 34 + 26 * u]) + rng.normal(0, 4, 2)
            whiskers.append(
                (hair(root, tip, 7.5, -0.1 * side), jitter(mix(CREAM, "#cfd2ae", rng.uniform()), rng, 0.02))
            )
    cv.marks(whiskers, shadow=0.25)
    shape = outline(
        [(CX - 6, 282), (CX - 26, 308), (CX - 31, 340), (CX - 18, 372), (CX + 1, 400)],
        [(CX + 1, 400), (CX + 19, 372), (CX + 31, 340), (CX + 26, 308), (CX + 6, 282)],
    )
    cv.lay(
        shape,
        Paint(
            "#e0a23c", "#8a4f2b", "#f7d98a", form=0.8, shadow=0.5, cast=(4, 7, 5), low=0.36, high=0.62, rough=0.1
        ),
    )
    cv.marks(
        [(dab((CX - 9, 316), 5, 9, 20), rgb("#7a4326")), (dab((CX + 11, 316), 5, 9, -20), rgb("#7a4326"))],
        alpha=0.8,
    )
    cv.marks(
        [(ribbon([(CX - 6, 300), (CX - 8, 330), (CX - 3, 366)], 2, 1, belly=7), rgb("#fff0bd"))],
        alpha=0.8,
        dry=0.15,
    )


def feet(cv: Canvas) -> None:
    """Paint the toes gripping the branch."""
    toe = Paint("#d9a24a", "#8a5330", "#f3d58f", form=0.9, shadow=0.5, cast=(4, 5, 4))
    for side in (-1, 1):
        for k in (-1, 1, 0):
            x = CX + side * 84 + k * 30
            mask = cv.lay(
                ribbon(
                    [(x - k * 10, 900), (x + k * 3, 924), (x + k * 5, 952), (x + k * 4, 968)], 20, 16, belly=31
                ),
                toe,
            )
            rings = [
                (ribbon([(x - 14, y), (x + k * 4, y + 4), (x + 16, y)], 2, 2), rgb("#8a5330"))
                for y in (918, 930, 942, 953)
            ]
            cv.marks(rings, clip=mask, alpha=0.6)
            cv.lay(
                ribbon([(x + k * 4, 958), (x + k * 5, 976), (x + k * 2, 996)], 15, 1, belly=13),
                Paint(INK, INK, "#5a5272", shadow=0.4, form=0.9, high=0.6),
            )


def branch(cv: Canvas, rng: Rng) -> None:
    """Paint the branch: bark ridges, a knot, moss along its moonlit top."""
    bark = Paint(
        "#4a3b4d",
        "#231d38",
        "#8a7a80",
        streak=2,
        rough=0.26,
        rim=FOAM,
        rim_width=3,
        form=0.8,
        shadow=0.45,
        cast=(6, 10, 8),
    )
    way = [(52, 974), (220, 944), (420, 962), (640, 950), (860, 962), (1080, 944), (1280, 962), (1462, 926)]
    for twig in (
        [(1130, 950), (1240, 900), (1330, 890)],
        [(330, 950), (250, 900), (150, 884)],
        [(980, 960), (1080, 1010), (1180, 1022)],
        [(480, 960), (390, 1010), (300, 1020)],
    ):
        cv.lay(ribbon(twig, 26, 5), bark)
    shape = wobble(ribbon(way, 54, 22, belly=84), rng, 3, 60)
    mask = cv.lay(shape, bark)
    path = curve(way)
    lines: list[Mark] = []
    for _ in range(150):
        i = int(rng.integers(4, len(path) - 30))
        off = rng.uniform(-32, 32)
        piece = np.add(path[i : i + int(rng.integers(10, 26)) : 4], (0, off))
        if len(piece) > 2:
            piece = piece + rng.normal(0, 1, piece.shape)
            lines.append(
                (
                    ribbon(piece, 1, 1, belly=rng.uniform(3, 6)),
                    rgb("#1d1833" if rng.uniform() < 0.6 else "#8d7d86"),
                )
            )
    cv.marks(lines, clip=mask, alpha=0.6, dry=0.12)
    tufts: list[Mark] = []
    for _ in range(2200):
        i = int(rng.integers(0, len(path)))
        if math.sin(i * 0.05) + math.sin(i * 0.021 + 1) < -0.05:
            continue
        x, y = path[i] + (rng.normal(0, 6), -24 - rng.uniform(0, 12) + abs(rng.normal(0, 12)))
        turn = math.radians(-90 + rng.normal(0, 30))
        tone = [BOTTLE, MOSS, SAGE, FROND][int(np.clip(rng.normal(1.6, 0.9), 0, 3))]
        long = rng.uniform(13, 21)
        tufts.append(
            (hair((x, y), (x + math.cos(turn) * long, y + math.sin(turn) * long), 5), jitter(tone, rng, 0.02))
        )
    tufts.sort(key=lambda mark: mark[0][0][1])
    cv.marks(tufts, shadow=0.3)
    end = cv.lay(blob((54, 974), 30, 56, rng, 0.03), Paint("#c99b63", "#8a5b45", "#e8c88f", shadow=0.3))
    rings = [
        (
            ribbon(
                blob((54, 974), r, 2 * r, rng, 0.02),
                1.8,
                1.8,
            ),
            rgb("#8a5b45"),
        )
        for r in (7, 14, 21)
    ]
    cv.marks(rings, clip=end, alpha=0.7)


def foliage(cv: Canvas, rng: Rng, front: bool) -> None:
    """Paint the leaves along the branch, behind it or before it."""
    deep = Paint("#1d4a58", DEEP, "#3d7c86", rim=FOAM, rim_width=2, rim_strength=0.5)
    teal = Paint("#2f7079", "#1b4a5c", "#73aaa6", rim=FOAM, rim_width=2, rim_strength=0.6)
    sage = Paint("#6f9c8d", "#376a6c", "#aecdb4", rim=SILVER, rim_width=2, rim_strength=0.6)
    ochre = Paint("#d0a04a", "#8f6636", "#f0d28a", rim=CREAM, rim_width=2, rim_strength=0.5)
    if front:
        plan = [
            (300, 980, 196, 1070, 76, teal),
            (410, 985, 520, 1078, 74, sage),
            (1090, 985, 1186, 1078, 78, teal),
            (470, 1000, 400, 1090, 66, teal),
            (960, 990, 872, 1076, 72, sage),
            (1270, 950, 1392, 1020, 78, sage),
            (180, 960, 58, 1016, 76, sage),
            (1380, 930, 1482, 876, 66, teal),
            (120, 960, 34, 896, 62, teal),
            (590, 990, 566, 1080, 58, ochre),
            (1016, 985, 1040, 1084, 58, ochre),
            (640, 1006, 706, 1088, 60, teal),
            (860, 1006, 800, 1090, 60, teal),
            (1210, 1000, 1296, 1074, 66, deep),
            (240, 1000, 300, 1086, 62, ochre),
        ]
    else:
        plan = [
            (250, 930, 80, 846, 90, deep),
            (260, 920, 236, 770, 86, teal),
            (330, 930, 330, 794, 78, deep),
            (180, 920, 116, 786, 76, sage),
            (300, 930, 150, 770, 74, deep),
            (400, 940, 410, 850, 56, sage),
            (1090, 940, 1076, 846, 56, deep),
            (1230, 910, 1404, 816, 90, deep),
            (1240, 910, 1252, 760, 84, teal),
            (1160, 930, 1150, 806, 78, sage),
            (1330, 900, 1456, 866, 74, deep),
            (1310, 890, 1362, 760, 70, ochre),
            (1290, 910, 1330, 740, 70, deep),
            (390, 1000, 430, 1096, 86, deep),
            (330, 1010, 256, 1098, 88, deep),
            (480, 1000, 566, 1092, 84, deep),
            (1100, 1010, 1130, 1098, 88, deep),
            (1180, 1010, 1274, 1090, 86, deep),
            (960, 1000, 904, 1094, 84, deep),
            (200, 980, 106, 1074, 86, deep),
            (1300, 980, 1384, 1070, 86, deep),
            (640, 1000, 640, 1098, 74, deep),
            (850, 1000, 836, 1098, 76, deep),
            (130, 900, 28, 950, 68, teal),
            (1020, 1000, 980, 1096, 80, teal),
            (540, 1000, 500, 1096, 76, teal),
        ]
    for x0, y0, x1, y1, width, paint in plan:
        leaf(cv, (x0, y0), (x1, y1), width, paint, rng, bend=rng.uniform(-0.25, 0.25), belly=0.42, veins=6)


def berries(cv: Canvas, rng: Rng) -> None:
    """Hang small gold berries among the leaves."""
    for x, y in [
        (232, 1000),
        (258, 1022),
        (214, 1030),
        (1216, 1000),
        (1240, 1024),
        (1196, 1030),
        (1330, 990),
        (1352, 1008),
        (150, 990),
        (700, 1030),
        (722, 1046),
        (790, 1040),
    ]:
        cv.lay(
            blob((x, y), 27, 27, rng, 0.03), Paint(GOLD, AMBER, "#f8e2a0", form=0.95, shadow=0.5, cast=(3, 4, 3))
        )
        cv.marks(
            [(dab((x - 5, y - 6), 8, 4, -40), rgb("#fffaf0")), (dab((x + 4, y + 6), 4, 4, 0), rgb(BARK))],
            alpha=0.9,
        )


def paint() -> Canvas:
    """Paint the whole picture."""
    rng = np.random.default_rng(2207)
    cv = Canvas(1500, 1180)
    moon(cv, rng)
    foliage(cv, rng, front=False)
    tail(cv, rng)
    torso(cv, rng)
    for side in (-1, 1):
        wing(cv, side, rng)
    head(cv, rng)
    branch(cv, rng)
    feet(cv)
    foliage(cv, rng, front=True)
    berries(cv, rng)
    petal = Paint("#eef0e2", "#a9c6bd", "#fffaf0", form=0.4)
    for x, y, size in [
        (356, 1030, 58),
        (150, 1040, 46),
        (1140, 1036, 58),
        (1340, 1050, 46),
        (236, 850, 46),
        (1250, 850, 46),
    ]:
        star(cv, (x, y), size, rng, petal=petal)
    return cv
