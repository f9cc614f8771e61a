"""The toadstools: a cluster lit from within, with fern, moss and a snail.

In: nothing. Out: `paint()` gives a canvas with the whole picture on it.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from brush import (
    Array,
    Canvas,
    Mark,
    Mask,
    Paint,
    Point,
    Points,
    blob,
    curve,
    dab,
    hair,
    mix,
    moved,
    outline,
    rgb,
    ribbon,
    wobble,
)
from flora import clover, fern, grass, leaf, litter, moss, skirt_of_moss, star
from palette import (
    BERRY,
    BLUSH,
    BOTTLE,
    CORAL,
    CREAM,
    INK,
    LEAF,
    LEAF_DARK,
    PLUM,
    ROSE,
    SILVER,
)

Rng = np.random.Generator

DUSK = Paint("#4a2348", "#2b1838", "#7b3f63", rim=ROSE, rim_width=2, rim_strength=0.4)
FERN = Paint("#2d5a50", "#173437", "#5f8f70", rim=SILVER, rim_width=2, rim_strength=0.4)


@dataclass(frozen=True)
class Stool:
    """One toadstool: middle and half-width of its cap, lean in degrees, foot of its stem."""

    x: float
    y: float
    half: float
    lean: float
    foot: Point
    stem: float
    tall: float = 0.84

    def at(self, points: Points) -> Array:
        """Turn cap coordinates (half-width 1) into places on the sheet."""
        return moved(np.asarray(points, float) * self.half, self.x, self.y, turn=self.lean)


def stem(cv: Canvas, s: Stool, rng: Rng) -> None:
    """Paint the stem, brightest under the cap, with its frilled ring."""
    top = s.at([(0, 0.06)])[0]
    foot = np.array(s.foot, float)
    bow = (top + foot) / 2 + (s.half * 0.05 * (1 if s.lean >= 0 else -1), 0)
    t = s.stem
    path = curve([top, bow, foot])
    share = np.linspace(0, 1, len(path))
    width = t * (0.72 + 0.25 * share + 0.55 * share**5)
    side = np.column_stack([width / 2, np.zeros(len(path))])
    shape = wobble(np.vstack([path - side, (path + side)[::-1]]), rng, t * 0.014, t * 0.6)
    length = float(np.hypot(*(foot - top)))
    body = Paint(
        "#f1cda6", "#a9636b", "#fff1cf", low=0.3, high=0.66, rough=0.13, shadow=0.5, cast=(8, 6, 10), streak=90
    )

    def light(x: Array, y: Array) -> Array:
        u = np.clip((y - top[1]) / length, 0, 1)
        across = (x - np.interp(y, path[:, 1], path[:, 0])) / (t / 2)
        return np.clip(0.98 - 0.62 * u - 0.24 * np.clip(across, -1, 1.2) * (0.3 + u), 0, 1)

    mask = cv.lay(shape, body, field=light)
    lines: list[Mark] = []
    for _ in range(int(t * 0.75)):
        u, v = rng.uniform(0.1, 0.92), rng.uniform(-0.44, 0.44)
        i = int(u * (len(path) - 1))
        j = min(len(path) - 1, i + int(rng.uniform(4, 14)))
        off = v * width[i]
        lines.append(
            (
                hair(path[i] + (off, 0), path[j] + (off, 0), rng.uniform(2, 4.5)),
                mix("#fff6dd", "#a4606a", np.clip(u * 0.9 + v * 0.5, 0, 1)),
            )
        )
    cv.marks(lines, clip=mask, alpha=0.6, dry=0.1)
    if s.half > 130:
        skirt(cv, s, path, width, rng)


def skirt(cv: Canvas, s: Stool, path: Array, width: Array, rng: Rng) -> None:
    """Paint the torn frill round the upper stem."""
    i = int(len(path) * 0.30)
    x, y = path[i]
    w = width[i] * 0.5
    drop = s.half * 0.20
    top = [(x - w * 0.95, y - drop * 0.5), (x, y - drop * 0.28), (x + w * 0.95, y - drop * 0.5)]
    hem = []
    for k in range(11):
        u = 1 - 2 * k / 10
        hem.append(
            (
                x + u * w * 1.75,
                y + drop * (0.42 - 0.32 * u * u) + (drop * 0.12 if k % 2 else -drop * 0.04) + rng.normal(0, 1),
            )
        )
    mask = cv.lay(
        np.vstack([curve(top), curve(hem)]),
        Paint("#f6d9b2", "#bb7672", "#fff6dc", form=0.5, shadow=0.5, cast=(3, 9, 7), rim=CREAM),
    )
    pleats = [
        (
            hair((x + u * w * 0.8, y - drop * 0.34), (x + u * w * 1.55, y + drop * (0.36 - 0.3 * u * u)), 4),
            mix("#bb7672", "#e8b28e", abs(u) * 0.3),
        )
        for u in np.linspace(-0.92, 0.92, 13)
    ]
    cv.marks(pleats, clip=mask, alpha=0.55, dry=0.1)


def gills(cv: Canvas, s: Stool, rng: Rng) -> None:
    """Paint the glowing underside, gill by gill."""
    ellipse = [(math.cos(a), 0.02 + 0.235 * math.sin(a)) for a in np.linspace(0, 2 * math.pi, 40)[:-1]]
    ring = wobble(s.at(ellipse), rng, s.half * 0.006, s.half * 0.3)
    hub = s.at([(0, 0.06)])[0]
    mask = cv.lay(
        ring,
        Paint("#f9c46d", "#e0714a", "#fff6cf", low=0.24, high=0.6, shadow=0.4, cast=(4, 10, 10), rough=0.08),
        field=lambda x, y: 1.02 - np.hypot((x - hub[0]), (y - hub[1]) * 2.2) / (s.half * 1.02),
    )
    lines: list[Mark] = []
    for a in np.linspace(0, 2 * math.pi, int(34 + s.half / 5)):
        inner, outer = (
            s.at([(math.cos(a) * 0.16, 0.055 + 0.03 * math.sin(a))])[0],
            s.at([(math.cos(a) * 0.985, 0.02 + 0.228 * math.sin(a))])[0],
        )
        lines.append((hair(outer, inner, s.half * 0.018 + 1.4), mix("#b5483f", "#e08a4c", rng.uniform(0, 0.6))))
        b = a + 0.02
        inner, outer = (
            s.at([(math.cos(b) * 0.3, 0.05 + 0.06 * math.sin(b))])[0],
            s.at([(math.cos(b) * 0.93, 0.02 + 0.215 * math.sin(b))])[0],
        )
        lines.append((hair(outer, inner, s.half * 0.01 + 1.2), rgb("#fff3c9")))
    cv.marks(lines, clip=mask, alpha=0.75)


def cap(cv: Canvas, s: Stool, rng: Rng) -> None:
    """Paint the cap: berry above, translucent coral to apricot at the rim, warts on top."""
    h = s.tall
    dome = [
        (-1.0, 0.03),
        (-0.995, -0.09 * h),
        (-0.93, -0.34 * h),
        (-0.76, -0.66 * h),
        (-0.44, -0.92 * h),
        (-0.04, -1.02 * h),
        (0.38, -0.94 * h),
        (0.72, -0.69 * h),
        (0.92, -0.35 * h),
        (0.995, -0.08 * h),
        (1.0, 0.03),
    ]
    rim = [(1.0, 0.03), (0.82, 0.075), (0.45, 0.055), (0.0, 0.03), (-0.45, 0.055), (-0.82, 0.075), (-1.0, 0.03)]
    shape = wobble(np.vstack([curve(s.at(dome)), curve(s.at(rim))]), rng, s.half * 0.005, s.half * 0.5)
    inverse = moved(np.eye(2), turn=-s.lean)

    def light(x: Array, y: Array) -> Array:
        u = ((x - s.x) * inverse[0, 0] + (y - s.y) * inverse[1, 0]) / s.half
        v = ((x - s.x) * inverse[0, 1] + (y - s.y) * inverse[1, 1]) / s.half
        inner = np.clip(1 + v / (0.95 * h), 0, 1.1) ** 1.5  # light from below, through the flesh
        side = np.clip(0.12 * -u, -0.2, 0.2)
        return 0.14 + 0.86 * inner * (1 - 0.25 * u * u) + side

    paint = Paint(
        CORAL,
        BERRY,
        "#fab466",
        low=0.33,
        high=0.80,
        soft=0.2,
        rough=0.085,
        streak=s.lean + 75,
        shadow=0.45,
        cast=(5, 10, 10),
        rim="#fbd0bd",
        rim_width=max(2, s.half * 0.014),
        rim_strength=0.9,
    )
    mask = cv.lay(shape, paint, field=light)
    # The moon's cool light lies dry across the shoulder of the cap.
    sheen = s.at(
        [
            (-0.86, -0.30 * h),
            (-0.72, -0.60 * h),
            (-0.40, -0.86 * h),
            (-0.02, -0.93 * h),
            (-0.30, -0.76 * h),
            (-0.58, -0.52 * h),
            (-0.74, -0.26 * h),
        ]
    )
    cv.lay(
        curve(sheen, closed=True),
        Paint("#f2a39b", ROSE, "#fbd0c4", shadow=0, streak=s.lean - 35),
        clip=mask,
        alpha=0.75,
        dry=0.52,
    )
    edge = curve(
        s.at(
            [
                (-0.97, 0.015),
                (-0.80, 0.052),
                (-0.45, 0.033),
                (0.0, 0.008),
                (0.45, 0.033),
                (0.80, 0.052),
                (0.97, 0.015),
            ]
        )
    )
    cv.marks(
        [(ribbon(edge[::3], 1.5, 1.5, belly=s.half * 0.035), rgb("#ffdf9c"))], clip=mask, alpha=0.95, dry=0.06
    )
    notches = [
        (
            hair(s.at([(u, 0.05 - 0.02 * abs(u))])[0], s.at([(u * 0.96, -0.09 * h)])[0], s.half * 0.016 + 1),
            rgb("#ffd694"),
        )
        for u in np.linspace(-0.94, 0.94, int(20 + s.half / 12))
    ]
    cv.marks(notches, clip=mask, alpha=0.6, dry=0.12)
    warts(cv, s, mask, rng)
    cv.speckle(mask, "#ffd9b0", int(s.half * 0.6), rng, (1.5, 3.6), 0.6)


def warts(cv: Canvas, s: Stool, mask: Mask, rng: Rng) -> None:
    """Dot the cap with raised cream flecks, foreshortened towards its edges."""
    paint = Paint("#fbe3bf", "#dda48c", "#fffaf0", form=0.85, low=0.34, high=0.58, rough=0.06)
    taken: list[tuple[float, float, float]] = []
    for _ in range(420):
        u, v = rng.uniform(-0.95, 0.95), rng.uniform(-0.97, -0.13)
        r = rng.choice([0.045, 0.06, 0.08, 0.10]) * (0.75 + 0.4 * abs(v)) * (1.15 if s.half < 130 else 1)
        squeeze = math.sqrt(max(0.15, 1 - u * u))
        if len(taken) >= 30 or any(
            math.hypot((u - x) / squeeze, (v - y) * s.tall) < (r + q) * 1.22 + 0.02 for x, y, q in taken
        ):
            continue
        at = s.at([(u, v * s.tall)])[0]
        big = r * s.half * 2
        ring = blob(
            at, big * (0.4 + 0.6 * squeeze), big * (0.6 + 0.3 * abs(v)), rng, 0.07, 9, turn=s.lean + u * 42
        )
        dot = cv.cut(ring)
        if dot.within(mask).a.sum() < dot.a.sum() * 0.92:
            continue
        taken.append((u, v, r))
        cv.shade(dot, 0.5, (s.half * 0.010 + 1, s.half * 0.018 + 2, 3), tint="#5a1233", clip=mask)
        cv.lay(ring, paint.but(shadow=0, streak=s.lean), clip=mask)


def toadstool(cv: Canvas, s: Stool, rng: Rng) -> None:
    """Paint one whole toadstool, back to front."""
    gills(cv, s, rng)
    stem(cv, s, rng)
    cap(cv, s, rng)


def snail(cv: Canvas, at: Point, size: float, rng: Rng) -> None:
    """Paint a small snail creeping left, its shell banded rose and cream."""
    x, y = at
    k = size / 100

    def p(*points: tuple[float, float]) -> list[tuple[float, float]]:
        return [(x + a * k, y + b * k) for a, b in points]

    flesh = Paint("#e9b48c", "#9c5a5c", "#ffe4bd", form=0.8, shadow=0.5, cast=(3, 5, 5), rim=CREAM, rim_width=2)
    for a, b in [((-78, -34), (-100, -82)), ((-68, -36), (-74, -88))]:
        cv.lay(ribbon(p(a, ((a[0] + b[0]) / 2 - 2, (a[1] + b[1]) / 2), b), 7 * k, 4 * k), flesh)
        cv.lay(blob(p(b)[0], 11 * k, 11 * k, rng, 0.02), Paint(INK, INK, PLUM, shadow=0))
        cv.marks([(dab((p(b)[0][0] - 1.5 * k, p(b)[0][1] - 1.5 * k), 3.6 * k, 3 * k, 0), rgb(CREAM))])
    body = outline(
        p((-102, -6), (-104, -30), (-88, -44), (-66, -40), (-50, -20), (-20, -10), (40, -12), (80, -6), (122, 8)),
        p((122, 8), (60, 12), (-60, 12), (-94, 8), (-102, -6)),
    )
    mask = cv.lay(wobble(body, rng, 0.8, 18), flesh)
    wrinkles = [
        (hair(p((u, 2 + 3 * math.sin(u)))[0], p((u + 10, -9))[0], 3 * k), rgb("#b5716a"))
        for u in range(-88, 90, 13)
    ]
    cv.marks(wrinkles, clip=mask, alpha=0.5)
    cv.marks([(ribbon(p((-98, -14), (-90, -9), (-82, -11)), 1, 1, belly=3.2 * k), rgb("#6b3040"))])
    cv.lay(
        blob(p((-80, -18))[0], 15 * k, 9 * k, rng, 0.05), Paint(CORAL, CORAL, ROSE, shadow=0), clip=mask, alpha=0.5
    )
    shell_at = p((14, -54))[0]
    shell = cv.lay(
        blob(shell_at, 124 * k, 112 * k, rng, 0.012, 14),
        Paint("#d9697a", "#7d2850", "#f7b59f", form=0.95, shadow=0.55, cast=(3, 7, 6), rim=BLUSH, rim_width=3),
    )
    turn = np.linspace(0, 5.2 * math.pi, 150)
    reach = 58 * k * (1 - turn / (5.2 * math.pi)) ** 0.82
    spiral = np.column_stack(
        [shell_at[0] + 4 * k + np.cos(turn + 1.1) * reach, shell_at[1] + np.sin(turn + 1.1) * reach * 0.92]
    )
    cv.marks([(ribbon(spiral[::3], 9 * k, 3 * k), rgb("#6c2046"))], clip=shell, alpha=0.9, dry=0.06)
    cv.marks(
        [(ribbon(spiral[::3] - (2.5 * k, 4 * k), 4.4 * k, 1.6 * k), rgb("#ffe0c0"))],
        clip=shell,
        alpha=0.85,
        dry=0.18,
    )
    ribs: list[Mark] = []
    for i in range(4, 105, 4):
        c, t = spiral[i], turn[i] + 1.1
        out = np.array([math.cos(t), math.sin(t)])
        ribs.append(
            (hair(c - out * 15 * k, c - out * 3 * k, 3 * k), mix("#a33f5f", "#ffd2b5", 0.5 + 0.5 * math.sin(i)))
        )
    cv.marks(ribs, clip=shell, alpha=0.5)


def backdrop(cv: Canvas, rng: Rng) -> None:
    """Paint the dusky leaves and ferns behind, which make the glow show."""
    deep = FERN.but(base="#21464a", dark="#152c36", light="#3f7267")
    for x0, y0, x1, y1, w, b in [
        (1100, 980, 1330, 400, 210, -0.2),
        (420, 990, 110, 460, 200, 0.25),
        (1100, 990, 1420, 540, 190, -0.2),
        (420, 980, 216, 360, 200, 0.15),
    ]:
        fern(cv, (x0, y0), (x1, y1), w, deep, rng, bend=b)
    shade = LEAF_DARK.but(base="#1d3a41", light="#315b58")
    thicket = [
        (350, 1000),
        (400, 760),
        (450, 600),
        (510, 440),
        (640, 400),
        (790, 420),
        (880, 520),
        (930, 600),
        (1060, 640),
        (1190, 690),
        (1250, 800),
        (1290, 1000),
    ]
    cv.lay(
        wobble(curve(thicket, closed=True), rng, 3, 90),
        Paint("#1b2f3b", "#1a1f38", "#2b4a4b", rough=0.2, shadow=0),
    )
    for x0, y0, x1, y1, w, paint in [
        (300, 1000, 110, 690, 150, DUSK),
        (400, 1000, 330, 520, 170, DUSK),
        (1150, 1000, 1290, 560, 160, DUSK),
        (1240, 1000, 1430, 720, 140, DUSK),
        (560, 1000, 470, 420, 200, shade),
        (640, 1000, 540, 330, 210, DUSK),
        (600, 1000, 640, 330, 240, shade),
        (720, 1000, 740, 360, 210, shade),
        (820, 1000, 850, 420, 200, DUSK),
        (900, 1000, 930, 500, 180, shade),
        (960, 1000, 1010, 560, 190, shade),
        (560, 1000, 560, 420, 170, shade),
        (480, 1000, 420, 600, 160, shade),
        (1010, 1000, 1110, 480, 180, DUSK),
        (240, 1000, 60, 800, 120, shade),
        (1290, 1000, 1450, 850, 110, shade),
        (1080, 1000, 1190, 640, 150, shade),
        (330, 1000, 240, 700, 130, shade),
    ]:
        leaf(cv, (x0, y0), (x1, y1), w, paint, rng, bend=rng.uniform(-0.2, 0.2), veins=8)
    fern(cv, (260, 1000), (52, 620), 180, FERN, rng, bend=-0.25)
    fern(cv, (1290, 1000), (1460, 620), 170, FERN, rng, bend=0.25)
    fern(cv, (560, 1000), (440, 700), 130, FERN, rng, bend=-0.2)
    fern(cv, (900, 1000), (948, 700), 130, FERN, rng, bend=0.2)


def ground(cv: Canvas, rng: Rng) -> None:
    """Paint the moss bank."""
    bank = Paint("#40654f", "#1c3b3c", "#86a878", shadow=0.5, cast=(0, -5, 9))
    moss(
        cv,
        [(40, 1030), (130, 978), (340, 948), (600, 940), (860, 952), (1100, 944), (1350, 972), (1462, 1030)],
        [(40, 1030), (300, 1092), (750, 1106), (1200, 1092), (1462, 1030)],
        bank,
        rng,
        tuft=18,
        tips="#c3cf9b",
    )


def before(cv: Canvas, rng: Rng) -> None:
    """Paint the small things in front of the stems."""
    paints = [
        LEAF,
        DUSK,
        LEAF_DARK,
        LEAF,
        DUSK.but(base="#6b3350", light="#a45a72"),
        LEAF.but(base="#5a8266", light="#a3bf93"),
    ]
    litter(cv, 70, 1436, [(1072, 13, 128), (1098, 11, 150)], paints, rng, rise=40, teeth=0, plump=0.46)
    grass(cv, (420, 1050), 130, 120, LEAF, rng, 7)
    grass(cv, (990, 1056), 120, 120, LEAF, rng, 7)
    grass(cv, (104, 1050), 140, 90, LEAF, rng, 6)
    for x, y, s in [(510, 1046, 54), (560, 1068, 46), (260, 1024, 48), (1040, 1036, 46), (884, 1060, 50)]:
        clover(cv, (x, y), s, Paint("#5f8a66", BOTTLE, "#a9c596", rim=SILVER, rim_width=2, rim_strength=0.4), rng)
    petal = Paint("#f8dfd6", "#dc9a9c", "#fffaf0", form=0.4)
    for x, y, s in [
        (330, 1040, 58),
        (372, 1072, 46),
        (690, 1050, 60),
        (736, 1076, 46),
        (1236, 1068, 52),
        (1340, 1040, 44),
        (150, 1030, 44),
    ]:
        star(cv, (x, y), s, rng, petal=petal)


def paint() -> Canvas:
    """Paint the whole picture."""
    rng = np.random.default_rng(4421)
    cv = Canvas(1500, 1200)
    backdrop(cv, rng)
    big = Stool(640, 392, 362, -5, (668, 1000), 126, 0.76)
    tall = Stool(1066, 612, 226, 9, (1004, 990), 84, 0.86)
    left = Stool(300, 730, 162, -11, (362, 990), 60, 0.8)
    near = Stool(838, 842, 124, 5, (822, 1026), 54, 0.92)
    tiny = Stool(508, 896, 80, -8, (522, 1024), 38, 1.0)
    bud = Stool(1256, 846, 96, 12, (1222, 1000), 42, 0.95)
    for s in (tall, left, big, bud):
        toadstool(cv, s, rng)
    for s in (big, tall, left):  # warm light falls on the leaves under each cap
        cv.glow((s.x, s.y + s.half * 0.35), s.half * 1.2, "#ff9440", 0.6, squash=0.8)
    ground(cv, rng)
    for s in (big, tall, left, near, tiny):  # and pools on the moss
        cv.glow((s.foot[0], s.foot[1] + 12), s.half * 0.9, "#ffb050", 0.5, squash=0.34)
    for s in (near, tiny):
        toadstool(cv, s, rng)
    for s in (near, tiny, bud):
        cv.glow((s.x, s.y + s.half * 0.5), s.half * 1.2, "#ff9a4d", 0.4, squash=0.7)
    green = Paint("#40654f", "#1c3b3c", "#86a878")
    for s in (big, tall, left, near, tiny, bud):
        skirt_of_moss(cv, (s.foot[0], s.foot[1] + 2), s.stem * 2.0, green, rng, int(s.stem * 0.5), 22)
        before(cv, rng)
    snail(cv, (1150, 1044), 100, rng)
    return cv
