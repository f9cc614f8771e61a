"""The foxgloves: spires, bees and a crescent moon, as an SVG.

In: nothing. Out: `drawing()` gives the file's text.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

import numpy as np
from brush import Array, Point, curve, moved, normals
from flora import blade, midrib
from palette import (
    AMBER,
    BOTTLE,
    CREAM,
    FROND,
    GOLD,
    INK,
    MAGENTA,
    MIST,
    PINK,
    SAGE,
    WINE,
)
from vector import Sheet, fleck, oval, ring, scratch, smooth, spot, taper, tone

Rng = np.random.Generator
Placer = Callable[[Any], Array]  # puts a flower's own measure on the sheet

# The bell in its own measure: calyx at 0, mouth near 1 along the first axis;
# the second axis runs from the lit upper side (-) to the shaded lower side (+).
UPPER = [(0.0, -0.07), (0.10, -0.16), (0.30, -0.225), (0.55, -0.26), (0.78, -0.28), (0.88, -0.35)]
LOWER = [(1.08, 0.37), (0.88, 0.30), (0.62, 0.29), (0.34, 0.245), (0.12, 0.16), (0.0, 0.07)]
MOUTH = [
    (0.86, -0.37),
    (1.0, -0.335),
    (1.08, -0.15),
    (1.25, 0.04),
    (1.31, 0.25),
    (1.2, 0.40),
    (1.04, 0.39),
    (0.90, 0.16),
    (0.815, -0.12),
    (0.795, -0.30),
]
THROAT = [
    (0.875, -0.27),
    (0.985, -0.23),
    (1.06, -0.06),
    (1.165, 0.13),
    (1.14, 0.275),
    (1.05, 0.275),
    (0.94, 0.09),
    (0.86, -0.14),
]
CREAMY = [(0.97, 0.03), (1.07, 0.02), (1.19, 0.17), (1.18, 0.305), (1.06, 0.30)]
FRECKLES = [
    (1.035, 0.07),
    (1.09, 0.13),
    (1.03, 0.16),
    (1.14, 0.20),
    (1.08, 0.225),
    (1.115, 0.28),
    (1.18, 0.27),
    (0.98, -0.03),
]


def gradients(sh: Sheet) -> None:
    """Define the few gradients everything is filled with."""
    sh.linear("bell0", [(0, "#d873b0"), (0.45, MAGENTA), (1, "#7a2268")], (0.2, 0, 0.55, 1))
    sh.linear("bell1", [(0, "#e795c3"), (0.5, "#c9529a"), (1, "#8c2a75")], (0.2, 0, 0.55, 1))
    sh.linear("bell2", [(0, "#c266b3"), (0.5, "#93388a"), (1, "#5b2163")], (0.2, 0, 0.55, 1))
    sh.linear("lip0", [(0, "#f6bfd9"), (1, "#e389bb")], (0, 0, 0.6, 1))
    sh.linear("lip1", [(0, "#eda3cb"), (1, "#c867ab")], (0, 0, 0.6, 1))
    sh.linear("lip2", [(0, "#d79bd0"), (1, "#a95cab")], (0, 0, 0.6, 1))
    sh.linear("leafA", [(0, "#7fa681"), (0.5, "#4b7259"), (1, "#2a4d48")], (0.1, 0, 0.6, 1))
    sh.linear("leafB", [(0, "#4d7a66"), (0.5, "#2d5750"), (1, BOTTLE)], (0.1, 0, 0.6, 1))
    sh.linear("leafC", [(0, "#6b4a7d"), (0.5, "#49305f"), (1, "#2b1f47")], (0.1, 0, 0.6, 1))
    sh.linear("moon", [(0, "#fbecbd"), (0.5, "#f0cd77"), (1, "#dca24a")], (0.1, 0, 0.8, 1))
    sh.linear("bee", [(0, "#f8d77e"), (0.6, GOLD), (1, AMBER)], (0.3, 0, 0.6, 1))
    sh.linear("bank", [(0, "#557f62"), (0.5, "#37604f"), (1, "#1e4240")], (0, 0, 0.05, 1))


def leaf(
    sh: Sheet,
    base: Point,
    tip: Point,
    width: float,
    fill: str,
    rng: Rng,
    *,
    bend: float = 0.15,
    veins: int = 7,
    light: str = FROND,
    dark: str = BOTTLE,
    teeth: int = 0,
) -> None:
    """Draw a leaf with a shaded half, veins and brush flecks."""
    spine = midrib(base, tip, bend)
    left, right = blade(spine, width, 0.42)
    pick = (
        ((1 - np.cos(np.pi * np.linspace(0, 1, 7 + teeth))) / 2 * (len(spine) - 1)).round().astype(int)
    )  # closer at the ends
    a, b = left[pick], right[pick]
    if teeth:
        wave = (
            np.where(np.arange(len(pick)) % 2, 0.05, -0.03)[:, None]
            * np.sin(np.linspace(0, np.pi, len(pick)))[:, None]
        )
        a, b = a + (a - spine[pick]) * wave * 2, b + (b - spine[pick]) * wave * 2
    a, b = a + rng.normal(0, width * 0.012, a.shape), b + rng.normal(0, width * 0.012, b.shape)
    a[0] = b[0] = spine[0]
    a[-1] = b[-1] = spine[-1]
    sh.path(smooth(a, b[::-1]), fill)
    upper, lower = (a, b) if a[len(a) // 2][1] < b[len(b) // 2][1] else (b, a)
    middle = spine[pick]
    sh.path(smooth(middle[::2], lower[::-1]), dark, 0.34)
    lit = upper[1:-1]
    sh.path(smooth(lit, (lit + (middle[1:-1] - lit) * 0.08)[::-1]), light, 0.65)
    lines = [taper(spine[np.linspace(0, len(spine) - 1, 6).astype(int)], width * 0.05, width * 0.012)]
    n = len(spine)
    for k in range(veins):
        i = int(n * (0.08 + 0.74 * k / veins))
        j = min(n - 1, i + int(n * 0.15))
        for edge in (left, right):
            end = spine[j] + (edge[j] - spine[j]) * 0.88
            lines.append(scratch(spine[i], end, width * 0.016))
    washes: dict[int, list[str]] = {1: [], -1: []}
    for _ in range(6):
        u, v = rng.uniform(0.1, 0.75), rng.uniform(0.2, 0.7)
        i, j = int(u * n), min(n - 1, int((u + rng.uniform(0.12, 0.2)) * n))
        for sign, edge in ((1, left), (-1, right)):
            bright = 1 if (edge[n // 2][1] < spine[n // 2][1]) else -1
            start, stop = spine[i] + (edge[i] - spine[i]) * v, spine[j] + (edge[j] - spine[j]) * min(0.86, v + 0.2)
            washes[bright].append(fleck(start, stop, width * rng.uniform(0.02, 0.05), 0.04 * sign))
    sh.many(washes[1], light, 0.22)
    sh.many(washes[-1], dark, 0.3)
    sh.many(lines, light, 0.75)


def fern(
    sh: Sheet,
    base: Point,
    tip: Point,
    width: float,
    fill: str,
    light: str,
    rng: Rng,
    bend: float = 0.2,
    pairs: int = 19,
) -> None:
    """Draw a fern frond."""
    spine = midrib(base, tip, bend)
    side, n = normals(spine), len(spine)
    leaflets, ribs = [], []
    for k in range(pairs):
        t = 0.12 + 0.84 * k / (pairs - 1)
        i = min(n - 2, int(t * n))
        forward = (spine[i + 1] - spine[i]) / max(np.hypot(*(spine[i + 1] - spine[i])), 1e-6)
        long = width / 2 * (1 - t) ** 0.6 * (0.55 + 0.75 * min(1, t * 3.5)) + 5
        for s in (1, -1):
            end = spine[i] + (side[i] * s * 0.88 + forward * 0.5) * long * rng.uniform(0.93, 1.06)
            leaflets.append(fleck(spine[i], end, max(6, width * 0.1), 0.1 * -s))
            if s > 0:  # only the lit side of each frond carries its ribs
                ribs.append(scratch(spine[i], spine[i] + (end - spine[i]) * 0.7, 1.2))
    pick = np.linspace(0, n - 1, 7).astype(int)
    sh.many([*leaflets, taper(spine[pick], 6, 2)], fill)
    sh.many([*ribs, taper(spine[pick], 2, 0.6)], light, 0.6)


def bell(
    sh: Sheet, at: Array, size: float, turn: float, side: int, shade: int, rng: Rng, open_: bool = True
) -> None:
    """Draw one flower hanging from `at`; `turn` is how far it droops below level."""

    def p(points: list[tuple[float, float]]) -> Array:
        local = moved(np.asarray(points, float) * size, turn=turn)
        local[:, 0] *= side
        return local + at

    grow = rng.uniform(0.96, 1.05)
    upper, lower = [(u, v * grow) for u, v in UPPER], [(u, v * grow) for u, v in LOWER]
    if open_:
        sh.path(
            smooth(
                p(upper), p([upper[-1], (1.02, 0.0), lower[0]]), p(lower), p([lower[-1], (-0.03, 0), upper[0]])
            ),
            f"url(#bell{shade})",
        )
    else:
        tip = [
            (0.0, -0.09),
            (0.2, -0.19),
            (0.5, -0.22),
            (0.8, -0.16),
            (0.98, 0.0),
            (0.82, 0.18),
            (0.5, 0.24),
            (0.2, 0.19),
            (0.0, 0.09),
        ]
        sh.path(ring(p(tip)), f"url(#bell{shade})")
    belly = (
        [(0.04, 0.06), (0.25, 0.11), (0.55, 0.13), (0.85, 0.13), (0.98, 0.17)]
        if open_
        else [(0.06, 0.05), (0.4, 0.1), (0.8, 0.08), (0.95, 0.02)]
    )
    under = (
        [(0.98, 0.285), (0.86, 0.26), (0.62, 0.26), (0.34, 0.22), (0.12, 0.14), (0.04, 0.06)]
        if open_
        else [(0.95, 0.02), (0.8, 0.18), (0.5, 0.23), (0.2, 0.18), (0.06, 0.05)]
    )
    sh.path(smooth(p(belly), p(under)), WINE, 0.42)
    lights, darks = [], []
    for _ in range(5 if open_ else 3):
        u, v = rng.uniform(0.1, 0.62), rng.uniform(-0.19, -0.02)
        v *= min(1, 0.5 + u)
        a, b = p([(u, v), (u + rng.uniform(0.12, 0.26), v * 1.12)])
        lights.append(scratch(a, b, size * rng.uniform(0.01, 0.024)))
    if open_:  # one broad dry stroke along the lit shoulder
        lights.append(fleck(*p([(0.14, -0.1), (0.74, -0.2)]), size * 0.024))
    for _ in range(4 if open_ else 2):
        u, v = rng.uniform(0.12, 0.66), rng.uniform(0.02, 0.19)
        a, b = p([(u, v * min(1, 0.55 + u)), (u + rng.uniform(0.1, 0.22), v * 1.08)])
        darks.append(scratch(a, b, size * rng.uniform(0.01, 0.022)))
    sh.many(darks, "#515", 0.45)
    sh.many(lights, "#fbd", 0.6)
    sh.path(
        smooth(
            p([(0.06, -0.125), (0.3, -0.22), (0.78, -0.275)]), p([(0.78, -0.255), (0.32, -0.18), (0.06, -0.125)])
        ),
        MIST,
        0.85,
    )
    if open_:
        mouth(sh, p, size, 2 if shade == 2 else int(side > 0), rng)
    calyx(sh, p)


def mouth(sh: Sheet, p: Placer, size: float, tint: int, rng: Rng) -> None:
    """Draw the flared lip, the dark throat and the freckles."""
    lip = [(u + rng.normal(0, 0.008), v + rng.normal(0, 0.008)) for u, v in MOUTH]
    sh.path(ring(p(lip)), f"url(#lip{tint})")
    sh.path(ring(p(THROAT)), "#615")
    sh.path(ring(p(CREAMY)), "#fde")
    spots = [p([q])[0] for q in FRECKLES[: 7 if size > 70 else 5]]
    sh.many([spot(s, size * 0.04) for s in spots], "#414")


def front_bell(sh: Sheet, at: Array, size: float, turn: float, shade: int, rng: Rng) -> None:
    """Draw a flower hanging towards us, so that we look into its mouth."""

    def p(points: object) -> Array:
        return moved(np.asarray(points, float) * size, *at, turn=turn)

    fall = [(0.66, -0.3), (0.92, -0.39), (1.08, -0.31), (1.235, -0.03), (1.17, 0.2), (1.0, 0.28), (0.7, 0.2)]
    sh.path(ring(p(fall)), "#414", 0.3)
    left = [(0.0, 0.08), (0.1, 0.19), (0.3, 0.27), (0.55, 0.31), (0.74, 0.37)]
    right = [(u, -v) for u, v in left[::-1]]
    sh.path(
        smooth(
            p(left), p([(0.74, 0.37), (0.9, 0.0), (0.74, -0.37)]), p(right), p([(0, -0.08), (-0.02, 0), (0, 0.08)])
        ),
        f"url(#bell{shade})",
    )
    sh.path(
        smooth(p([(0.06, -0.12), (0.3, -0.14), (0.62, -0.16)]), p([(0.66, -0.33), (0.3, -0.26), (0.06, -0.12)])),
        WINE,
        0.4,
    )
    lights = []
    for _ in range(5):
        u, v = rng.uniform(0.1, 0.42), rng.uniform(0.0, 0.22)
        lights.append(scratch(*p([(u, v * (0.6 + u)), (u + rng.uniform(0.1, 0.18), v * (0.7 + u))]), size * 0.014))
    sh.many(lights, "#fbd", 0.6)
    lobes = [
        (0.61, 0.0),
        (0.62, 0.26),
        (0.80, 0.43),
        (0.95, 0.34),
        (1.08, 0.26),
        (1.16, 0.02),
        (1.09, -0.25),
        (0.96, -0.35),
        (0.81, -0.43),
        (0.62, -0.26),
    ]
    sh.path(ring(p([(u + rng.normal(0, 0.01), v + rng.normal(0, 0.01)) for u, v in lobes])), "url(#lip0)")
    sh.path(
        ring(
            p(
                [
                    (0.68, 0.0),
                    (0.69, 0.22),
                    (0.80, 0.32),
                    (0.93, 0.24),
                    (0.99, 0.0),
                    (0.93, -0.24),
                    (0.80, -0.32),
                    (0.69, -0.22),
                ]
            )
        ),
        "#615",
    )
    sh.path(ring(p([(0.86, 0.0), (0.90, 0.18), (1.04, 0.15), (1.08, 0.0), (1.04, -0.15), (0.90, -0.18)])), "#fde")
    spots = [
        (0.90, 0.07),
        (0.91, -0.08),
        (0.955, 0.0),
        (0.96, 0.12),
        (0.965, -0.12),
        (1.02, 0.055),
        (1.02, -0.06),
        (0.83, 0.0),
    ]
    sh.many([spot(p([q])[0], size * 0.044) for q in spots], "#414")
    sh.path(
        smooth(p([(0.86, 0.42), (1.07, 0.275), (1.16, 0.02)]), p([(1.13, 0.04), (1.04, 0.26), (0.86, 0.42)])),
        "#fef",
        0.8,
    )
    calyx(sh, p)


def calyx(sh: Sheet, p: Placer) -> None:
    """Draw the green cup of pointed sepals."""
    sepals = [
        [(-0.05, -0.02), (0.06, -0.13), (0.25, -0.20), (0.13, -0.04)],
        [(-0.05, 0.02), (0.05, 0.13), (0.24, 0.19), (0.13, 0.05)],
        [(-0.06, -0.05), (0.08, -0.075), (0.30, -0.01), (0.09, 0.075), (-0.06, 0.05)],
    ]
    for sepal, fill in zip(sepals, ("#86ad84", "#365f50", "#5c8a68"), strict=True):
        sh.path(smooth(p(sepal[: len(sepal) // 2 + 1]), p([*sepal[len(sepal) // 2 :], sepal[0]])), fill)


def spire(
    sh: Sheet,
    name: str,
    foot: Point,
    tip: Point,
    bend: float,
    size: float,
    count: int,
    rng: Rng,
    first: float = 0.33,
    lean: int = 1,
) -> None:
    """Draw a flower spike: stem, leaves, open bells below, buds to the tip."""
    sh.open(name)
    stem = midrib(foot, tip, bend)
    pick = np.linspace(0, len(stem) - 1, 9).astype(int)
    sh.path(taper(stem[pick], size * 0.17, 2.5), "#3f6b55")
    sh.path(taper(stem[pick] - (size * 0.03, 0), size * 0.05, 0.8), "#9cbf92", 0.8)
    for k, t in enumerate((0.10,)):
        i = int(t * len(stem))
        s = -1 if k % 2 else 1
        reach = size * (1.5 - k * 0.25)
        leaf(
            sh,
            tuple(stem[i]),
            (stem[i][0] + s * reach, stem[i][1] - reach * 0.42),
            size * 0.42,
            "url(#leafA)" if k % 2 else "url(#leafB)",
            rng,
            bend=-0.25 * s,
            veins=5,
        )
    order = []
    for k in range(count):
        u = k / (count - 1)
        t = first + (0.985 - first) * u**0.88
        grow = size * (1 - 0.80 * u**1.25)
        order.append((t, u, grow, (1 if k % 2 else -1) * lean))
    for t, u, grow, s in order:
        i = min(len(stem) - 1, int(t * len(stem)))
        droop = 56 - 50 * u + rng.normal(0, 4)
        joint = stem[i] + np.array([s * grow * 0.15, -grow * 0.04])
        sh.path(
            taper(
                [stem[i] + (0, grow * 0.1), (stem[i] + joint) / 2 + (0, -grow * 0.05), joint],
                grow * 0.09,
                grow * 0.06,
            ),
            "#4d7a5c",
        )
        if u < 0.80:
            bell(sh, joint, grow, droop, s, int(rng.choice([0, 0, 1, 1, 2])), rng, u < 0.66)
        else:
            bud(sh, joint, grow * 1.15, droop - 18, s, u)
        if u < 0.62 and s == lean:
            front = stem[i] + (lean * grow * 0.02, grow * 0.2)
            front_bell(sh, front, grow * 0.92, 90 + rng.normal(0, 7), int(rng.integers(0, 2)), rng)
    sh.close()


def bud(sh: Sheet, at: Array, size: float, turn: float, side: int, u: float) -> None:
    """Draw a closed green bud with a blush at its tip."""
    shape = moved(
        np.array([(0, -0.12), (0.3, -0.26), (0.65, -0.2), (0.9, 0), (0.65, 0.22), (0.3, 0.26), (0, 0.12)]) * size,
        turn=turn,
    )
    shape[:, 0] *= side
    fill = tone(PINK, "#8fb58a", (u - 0.76) / 0.16)
    sh.path(ring(shape + at), fill)
    sh.path(smooth((shape + at)[:4], (shape * 0.86 + at)[:4][::-1]), "#f0f2dc", 0.55)
    cup = moved(
        np.array([(-0.1, 0), (0.1, -0.22), (0.42, -0.14), (0.3, 0), (0.42, 0.14), (0.1, 0.22)]) * size, turn=turn
    )
    cup[:, 0] *= side
    sh.path(ring(cup + at), "#4d7a5c")


def moon(sh: Sheet, at: Point, r: float, rng: Rng) -> None:
    """Draw the crescent."""
    sh.open("crescent")
    cx, cy = at
    tilt = math.radians(-28)
    outer_a = np.linspace(math.radians(68), math.radians(292), 15)
    outer = np.column_stack([np.cos(outer_a), np.sin(outer_a)]) * r
    ends = outer[0], outer[-1]
    ix = r * 0.62
    ir = math.hypot(ends[0][0] - ix, ends[0][1])
    start, stop = math.atan2(ends[1][1], ends[1][0] - ix) % (2 * math.pi), math.atan2(ends[0][1], ends[0][0] - ix)
    inner_a = np.linspace(start, stop, 11)
    inner = np.column_stack([ix + np.cos(inner_a) * ir, np.sin(inner_a) * ir])

    def p(points: Array) -> Array:
        return moved(points, cx, cy, turn=math.degrees(tilt)) * (1, 1)

    outer[1:-1] += rng.normal(0, r * 0.004, outer[1:-1].shape)
    sh.path(smooth(p(outer), p(inner)), "url(#moon)")
    inside = (
        inner[::-1] * 0.72
        + np.column_stack([np.interp(np.linspace(0, 14, 11), range(15), outer[:, i]) for i in (0, 1)]) * 0.28
    )
    sh.path(smooth(p(inner), p(inside)), "#c98f3d", 0.32)
    rim = outer * 0.965
    rim[0], rim[-1] = outer[0], outer[-1]
    sh.path(smooth(p(outer), p(rim[::-1])), "#fffbe6", 0.8)
    craters, pits, flecks = [], [], []
    for a, d, s in [
        (150, 0.80, 24),
        (186, 0.72, 34),
        (214, 0.84, 20),
        (236, 0.78, 16),
        (122, 0.84, 16),
        (168, 0.9, 12),
        (200, 0.90, 12),
        (255, 0.86, 10),
        (104, 0.9, 9),
    ]:
        c = p(np.array([(math.cos(math.radians(a)) * r * d, math.sin(math.radians(a)) * r * d)]))[0]
        craters.append(oval(c, s, s * 0.86, rng.uniform(0, 90), rng))
        pits.append(oval(np.add(c, s * 0.1), s * 0.66, s * 0.56, 0, rng))
    for _ in range(50):
        a, d = math.radians(rng.uniform(96, 262)), rng.uniform(0.74, 0.96)
        if d < 0.82 and abs(a - math.pi) > 0.9:
            continue
        q = p(
            np.array(
                [
                    (math.cos(a) * r * d, math.sin(a) * r * d),
                    (math.cos(a + 0.05) * r * d, math.sin(a + 0.05) * r * d),
                ]
            )
        )
        flecks.append(fleck(q[0], q[1], rng.uniform(0.6, 1.6)))
    sh.many(flecks, "#fff6d8", 0.6)
    sh.many(craters, "#d39a44", 0.6)
    sh.many(pits, "#efcb7c", 0.9)
    sh.close()


def bee(sh: Sheet, at: Point, size: float, side: int, tilt: float, rng: Rng) -> None:
    """Draw a plump bee flying to the right (1) or left (-1)."""

    def p(points: object) -> Array:
        local = moved(np.asarray(points, float) * size, turn=tilt)
        local[:, 0] *= side
        return local + at

    sh.open(f"bee{int(at[0])}")
    legs = [
        taper(p([(x, 0.2), (x - 0.05, 0.33), (x - 0.13, 0.38)]), size * 0.05, size * 0.02)
        for x in (-0.1, 0.06, 0.2)
    ]
    sh.many(legs, INK)
    sh.path(
        ring(p([(-0.02, -0.18), (-0.2, -0.5), (-0.36, -0.66), (-0.5, -0.6), (-0.46, -0.42), (-0.26, -0.24)])),
        "#a99bc9",
    )
    body = [
        (-0.56, 0.06),
        (-0.46, -0.16),
        (-0.22, -0.28),
        (0.06, -0.27),
        (0.22, -0.2),
        (0.27, 0.0),
        (0.2, 0.2),
        (0.0, 0.27),
        (-0.28, 0.25),
        (-0.48, 0.17),
    ]
    sh.path(ring(p(body)), "url(#bee)")
    for u, w, h in [(-0.1, 0.11, 0.255), (-0.3, 0.10, 0.215), (-0.46, 0.08, 0.12)]:
        stripe = [
            (u, -h),
            (u + w * 0.6, -h * 0.3),
            (u + w * 0.5, h * 0.5),
            (u + 0.02, h),
            (u - w, h * 0.9),
            (u - w * 0.6, 0),
            (u - w, -h * 0.9),
        ]
        sh.path(ring(p(stripe)), INK, 0.94)
    sh.path(
        ring(
            p(
                [
                    (-0.5, 0.1),
                    (-0.2, 0.14),
                    (0.1, 0.12),
                    (0.24, 0.08),
                    (0.18, 0.2),
                    (0.0, 0.26),
                    (-0.28, 0.245),
                    (-0.46, 0.17),
                ]
            )
        ),
        "#7a3d3a",
        0.35,
    )
    sh.path(
        ring(p([(0.2, -0.17), (0.36, -0.18), (0.45, -0.06), (0.43, 0.1), (0.32, 0.18), (0.2, 0.14), (0.16, 0)])),
        "#3a2a4d",
    )
    eye = p([(0.36, -0.03)])[0]
    sh.path(oval(eye, size * 0.11, size * 0.14), "#0e0b20")
    sh.path(oval(np.add(eye, (side * size * 0.015, -size * 0.03)), size * 0.04, size * 0.04), CREAM)
    sh.many(
        [
            taper(p([(0.36, -0.17), (0.46, -0.3), (0.57, -0.33)]), size * 0.03, size * 0.02),
            taper(p([(0.3, -0.18), (0.36, -0.34), (0.46, -0.4)]), size * 0.03, size * 0.02),
        ],
        INK,
    )
    tufts, gold = [], []
    for _ in range(22):
        a = rng.uniform(0, 2 * math.pi)
        q = np.array([0.1 + math.cos(a) * 0.1, math.sin(a) * 0.17])
        r = q + np.array([math.cos(a) * 0.05 - 0.08, math.sin(a) * 0.1])
        tufts.append(fleck(*p([q, r]), size * 0.022))
    for _ in range(16):
        x, y = rng.uniform(-0.5, -0.05), rng.uniform(-0.24, -0.05)
        gold.append(fleck(*p([(x, y), (x - 0.09, y + 0.02)]), size * 0.014))
    sh.many(tufts, "#fbe6a8", 0.9)
    sh.many(gold, "#fff3c9", 0.65)
    wing = [(0.02, -0.2), (-0.02, -0.52), (0.08, -0.82), (0.26, -0.9), (0.34, -0.74), (0.26, -0.46), (0.12, -0.24)]
    sh.path(ring(p(wing)), "#d5cce6")
    sh.path(
        smooth(p([(0.02, -0.24), (0.0, -0.54), (0.1, -0.8)]), p([(0.12, -0.74), (0.06, -0.52), (0.02, -0.24)])),
        "#f8f5fb",
        0.9,
    )
    lines = [
        fleck(*p([(0.06, -0.24), q]), size * 0.013)
        for q in [(0.1, -0.74), (0.2, -0.8), (0.25, -0.66), (0.2, -0.5)]
    ]
    sh.many(lines, "#7d68a0", 0.9)
    sh.close()


def star(sh: Sheet, at: Point, size: float, rng: Rng, fill: str = "#f6e6ee") -> None:
    """Draw a small white flower."""
    petals, lines = [], []
    start = rng.uniform(0, 72)
    for k in range(5):
        a = start + 72 * k
        petal = moved(
            np.array([(0.06, 0), (0.28, 0.18), (0.47, 0.14), (0.44, 0), (0.48, -0.13), (0.28, -0.18)]) * size,
            *at,
            turn=a,
        )
        petals.append(ring(petal))
        lines.append(fleck(*moved(np.array([(0.12, 0), (0.36, 0.02)]) * size, *at, turn=a), size * 0.02))
    sh.many(petals, fill)
    sh.many(lines, "#c98bb5", 0.7)
    sh.path(oval(at, size * 0.22, size * 0.2, 0, rng), GOLD)
    sh.path(oval((at[0] + size * 0.02, at[1] + size * 0.03), size * 0.1, size * 0.08), AMBER)


def bank(sh: Sheet, rng: Rng) -> None:
    """Draw the mossy foot the whole garden stands on."""
    top = [(84, 884), (180, 842), (340, 822), (560, 816), (760, 818), (960, 828), (1090, 850), (1140, 884)]
    foot = [
        (1140, 884),
        (1060, 908),
        (960, 912),
        (840, 928),
        (700, 922),
        (600, 934),
        (480, 924),
        (350, 930),
        (250, 912),
        (150, 910),
        (84, 884),
    ]
    sh.path(smooth(top, foot), "url(#bank)")
    ridge, low = curve(top), curve(foot)
    groups: dict[str, list[str]] = {"#1f4441": [], "#4d7a5c": [], "#93b585": [], "#c3d3a0": []}
    names = list(groups)
    for _ in range(44):
        x, u = rng.uniform(84, 250), rng.uniform(0, 1)  # only the bank's ends show beyond the leaves
        x = x if rng.uniform() < 0.5 else 1224 - x
        y0 = np.interp(x, ridge[:, 0], ridge[:, 1])
        y1 = np.interp(x, low[::-1, 0], low[::-1, 1])
        y = y0 + (y1 - y0) * u
        name = names[int(np.clip(round(3.1 - 3.4 * u + rng.normal(0, 0.6)), 0, 3))]
        for s in (-1, 0, 1):
            groups[name].append(
                scratch((x, y), (x + s * 5 + rng.normal(0, 1), y - rng.uniform(8, 13) + abs(s) * 3), 1.7)
            )
    for name, marks in groups.items():
        sh.many(marks, name, 0.9)


def drawing() -> str:
    """Draw the whole picture and give the SVG's text."""
    rng = np.random.default_rng(5532)
    sh = Sheet(1200, 960)
    gradients(sh)
    moon(sh, (806, 196), 158, rng)
    sh.open("behind")
    for base, tip, width, bend in [
        ((420, 860), (140, 440), 180, -0.2),
        ((800, 860), (1090, 560), 170, 0.2),
        ((690, 860), (742, 430), 160, 0.1),
    ]:
        fern(sh, base, tip, width, "#2a5450", "#6f9c7c", rng, bend)
    for base, tip, width, bend, kind in [
        ((330, 870), (84, 640), 110, 0.2, "C"),
        ((500, 870), (440, 500), 140, -0.2, "C"),
        ((700, 870), (800, 520), 130, 0.2, "C"),
        ((880, 870), (1124, 660), 110, -0.2, "C"),
        ((640, 870), (690, 540), 130, 0.15, "B"),
        ((840, 870), (1010, 560), 120, 0.2, "B"),
        ((380, 870), (250, 560), 120, -0.15, "B"),
        ((430, 880), (352, 590), 130, 0.15, "C"),
        ((596, 880), (566, 560), 150, 0.1, "B"),
        ((620, 880), (650, 590), 120, -0.1, "C"),
    ]:
        light, dark = ("#a58bb8", "#241a3d") if kind == "C" else (SAGE, BOTTLE)
        leaf(sh, base, tip, width, f"url(#leaf{kind})", rng, bend=bend, light=light, dark=dark, veins=6)
    sh.close()
    spire(sh, "spire-left", (404, 850), (246, 186), 0.12, 106, 14, rng, lean=-1)
    spire(sh, "spire-right", (800, 850), (982, 300), -0.1, 98, 12, rng)
    spire(sh, "spire-middle", (596, 860), (574, 26), -0.06, 128, 18, rng, first=0.28)
    bank(sh, rng)
    sh.open("rosette")
    for base, tip, width, fill, bend in [
        ((520, 850), (200, 774), 120, "B", 0.2),
        ((700, 850), (1010, 766), 120, "B", -0.2),
        ((420, 868), (46, 842), 100, "A", 0.25),
        ((800, 868), (1166, 838), 100, "A", -0.25),
        ((600, 890), (530, 720), 120, "B", -0.2),
        ((620, 890), (668, 716), 120, "B", 0.2),
        ((580, 890), (588, 740), 90, "C", 0.1),
        ((560, 870), (370, 748), 110, "A", -0.2),
        ((660, 870), (830, 746), 110, "A", 0.2),
        ((380, 888), (92, 914), 84, "C", 0.15),
        ((820, 888), (1120, 912), 84, "C", -0.15),
        ((560, 876), (262, 912), 100, "B", 0.2),
        ((660, 876), (944, 914), 100, "B", -0.2),
        ((600, 866), (500, 936), 84, "C", 0.2),
        ((640, 870), (752, 936), 84, "A", -0.2),
    ]:
        light, dark = ("#a58bb8", "#241a3d") if fill == "C" else (FROND, BOTTLE)
        leaf(sh, base, tip, width, f"url(#leaf{fill})", rng, bend=bend, veins=7, light=light, dark=dark, teeth=4)
    for at, size in [
        ((300, 872), 46),
        ((340, 894), 34),
        ((900, 876), 46),
        ((858, 898), 34),
        ((606, 888), 52),
        ((652, 908), 36),
        ((150, 878), 36),
        ((1062, 882), 38),
        ((546, 912), 32),
    ]:
        star(sh, at, size, rng)
    sh.close()
    bee(sh, (412, 176), 96, 1, -8, rng)
    bee(sh, (1098, 430), 108, -1, -10, rng)
    return sh.text((36, 16, 1140, 930))
