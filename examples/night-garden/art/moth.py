"""The moth: wings spread in moonlight over a sprig of night flowers.

In: nothing. Out: `paint()` gives a canvas with the whole picture on it.
"""

from __future__ import annotations

import math

import numpy as np
from brush import (
    Array,
    Canvas,
    Field,
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
    normals,
    rgb,
    ribbon,
    wobble,
)
from flora import fern, leaf, star
from palette import (
    AMBER,
    CREAM,
    FROND,
    GOLD,
    INK,
    LEAF,
    LEAF_DARK,
    LEAF_PALE,
    LILAC,
    MIST,
    MOSS,
    NIGHT,
    PLUM,
    SAGE,
    SILVER,
    VIOLET,
)

CX, CY = 750, 400  # where the wings meet

FORE_COSTA = [(26, -52), (120, -140), (270, -238), (440, -312), (590, -344), (680, -338), (722, -312)]
FORE_MARGIN = [(722, -312), (714, -270), (676, -216), (655, -150), (646, -76), (624, -6), (576, 48), (540, 66)]
FORE_INNER = [(540, 66), (430, 46), (300, 34), (160, 34), (40, 36)]
HIND_TOP = [(34, 6), (160, -20), (330, -14), (480, 36), (560, 96)]
HIND_MARGIN = [
    (560, 96),
    (588, 150),
    (580, 214),
    (545, 276),
    (492, 326),
    (432, 358),
    (372, 376),
    (318, 398),
    (286, 436),
]
HIND_INNER = [(286, 436), (236, 404), (196, 340), (140, 258), (84, 180), (40, 110)]


def placed(points: Array, side: int) -> Array:
    """Put wing coordinates on the sheet, on the right (1) or the left (-1)."""
    out = np.array(points, float)
    out[:, 0] = CX + side * out[:, 0]
    out[:, 1] += CY
    return out


def band(edge: Array, root: Array, scale: float, scallop: float = 0, count: float = 9, phase: float = 0) -> Array:
    """Draw a wing's outline again nearer its root, scalloped between the veins."""
    away = edge - root
    angle = np.arctan2(away[:, 1], away[:, 0])
    wave = np.abs(np.sin(angle * count + phase)) if scale > 0.5 else np.sin(angle * count * 0.6 + phase) ** 2
    reach = scale + scallop * (wave - 0.5)
    return root + away * reach[:, None]


def scale_rows(
    cv: Canvas, edge: Array, root: Array, clip: Mask, rng: np.random.Generator, first: float, gap: float = 0.02
) -> None:
    """Lay rows of wing scales, each taking its colour from what lies beneath it."""
    marks: list[Mark] = []
    for s in np.arange(0.99, first, -gap):
        row = root + (edge - root) * (s + 0.006 * math.sin(s * 90))
        steps = np.hypot(*np.diff(row, axis=0).T)
        along = np.concatenate([[0], np.cumsum(steps)])
        for d in np.arange(rng.uniform(0, 8), along[-1], 8.5):
            i = min(int(np.searchsorted(along, d)), len(row) - 1)
            x, y = row[i] + rng.normal(0, 1.6, 2)
            if rng.uniform() < 0.3 or not (0 <= x < cv.width and 0 <= y < cv.height):
                continue
            a = float(cv.a[int(y), int(x)])
            if a < 0.9:
                continue
            under = cv.rgb[int(y), int(x)] / a
            tone = mix(under, SILVER if rng.uniform() < 0.5 else INK, abs(rng.normal(0, 0.1)))
            heading = math.degrees(math.atan2(y - root[1], x - root[0])) + rng.normal(0, 6)
            marks.append(
                (dab((x, y), rng.uniform(10, 17), rng.uniform(3.2, 5), heading), jitter(tone, rng, 0.015))
            )
    cv.marks(marks, clip=clip, alpha=0.62, dry=0.15)


def eyespot(cv: Canvas, at: Point, size: float, side: int, clip: Mask, rng: np.random.Generator) -> None:
    """Paint one eye-spot: dark ring, gold iris, plum pupil, moon-white glint."""
    paint = Paint(INK, "#100e25", NIGHT, shadow=0, rough=0.18)
    rings = [
        (1.0, 0.94, paint),
        (0.87, 0.86, paint.but(base=SILVER, dark=SAGE, light=CREAM)),
        (0.77, 0.8, paint.but(base=INK, light=PLUM)),
        (0.7, 0.78, paint.but(base=GOLD, dark=AMBER, light="#f6dc90", low=0.3, high=0.7)),
        (0.46, 0.9, paint.but(base=PLUM, dark=INK, light=VIOLET, high=0.8)),
        (0.3, 0.95, paint),
    ]
    for share, squash, tone in rings:
        ring = blob(at, size * share, size * share * squash, rng, 0.012, 14, turn=-18 * side)
        cv.lay(ring, tone, clip=clip)
    spokes = []
    for a in np.linspace(0, 2 * math.pi, 34)[:-1]:
        inner, outer = size * 0.24, size * rng.uniform(0.29, 0.335)
        line = [(at[0] + math.cos(a) * r, at[1] + math.sin(a) * r * 0.8) for r in (inner, outer)]
        spokes.append((ribbon(line, 2.4, 0.8), mix(AMBER, PLUM, 0.45)))
    cv.marks(spokes, clip=clip, alpha=0.7)
    glint = curve(
        [(-0.18, 0.02), (-0.15, -0.13), (0.0, -0.19), (0.05, -0.14), (-0.08, -0.08)], closed=True, step=0.02
    )
    cv.marks(
        [
            (glint * size + at, rgb(CREAM)),
            (dab((at[0] + size * 0.08, at[1] + size * 0.1), size * 0.07, size * 0.06, 0), rgb(LILAC)),
        ],
        alpha=0.92,
    )


def veins(cv: Canvas, root: Array, ends: Array, side: int, clip: Mask, hub: tuple[float, float]) -> None:
    """Draw veins that run together from the root to a hub, then fan to the margin."""
    dark, pale = [], []
    middle = placed(np.array([hub]), side)[0]
    for end in ends:
        way = [
            root,
            root + (middle - root) * 0.5 + (end - root) * 0.08,
            middle * 0.55 + (root + (end - root) * 0.52) * 0.45,
            end,
        ]
        dark.append((ribbon(way, 5.5, 1.6), rgb(PLUM)))
        pale.append((ribbon(np.array(way) - (1.5, 2.2), 2, 0.6), rgb(MIST)))
    cv.marks(dark, clip=clip, alpha=0.62, dry=0.12)
    cv.marks(pale, clip=clip, alpha=0.5, dry=0.28)


def fringe(cv: Canvas, margin: Array, root: Array, rng: np.random.Generator, colours: list[str]) -> None:
    """Edge a wing with short hairs, chequered pale and dark."""
    steps = np.concatenate([[0], np.cumsum(np.hypot(*np.diff(margin, axis=0).T))])
    hairs = []
    for d in np.arange(2, steps[-1] - 2, 2.1):
        i = min(int(np.searchsorted(steps, d)), len(margin) - 1)
        out = (margin[i] - root) / np.hypot(*(margin[i] - root))
        tone = colours[int(d // 26) % len(colours)]
        tip = margin[i] + out * rng.uniform(5, 8.5) + rng.normal(0, 0.7, 2)
        hairs.append((hair(margin[i] - out * 9, tip, 5.5), jitter(tone, rng, 0.03)))
    cv.marks(hairs)


def radial(root: Array, reach: float, start: float = 0.0) -> Field:
    """Make a field that grows lighter from the wing's root outwards."""
    return lambda x, y: np.clip(np.hypot(x - root[0], y - root[1]) / reach - start, 0, 1)


def hindwing(cv: Canvas, side: int, rng: np.random.Generator) -> None:
    """Paint a hind wing, root to scalloped margin."""
    margin = curve(HIND_MARGIN)
    t = np.linspace(0, 1, len(margin))
    margin = margin + normals(margin) * (-7 * np.abs(np.sin(t * math.pi * 7)) + 3)[:, None] * -1
    edge = placed(np.vstack([curve(HIND_TOP), margin, curve(HIND_INNER)]), side)
    root = placed(np.array([(34, 40)]), side)[0]
    heading = 50 if side > 0 else 130
    fringe(cv, placed(margin, side), root, rng, [MIST, VIOLET])
    base = Paint(
        PLUM, INK, VIOLET, streak=heading, shadow=0.5, cast=(6, 12, 12), rough=0.2, rim=LILAC, rim_width=2
    )
    wing = cv.lay(edge, base, field=radial(root, 900))
    plan = [
        (0.93, 0.02, base.but(base=VIOLET, dark=PLUM, light=LILAC, high=0.6), radial(root, 620)),
        (0.80, 0.035, base.but(base=MIST, dark=LILAC, light=CREAM), radial(root, 560)),
        (0.775, 0.035, base.but(base=SAGE, dark=MOSS, light=FROND, low=0.3, high=0.66), radial(root, 560)),
        (0.66, 0.035, base.but(base=SILVER, dark=SAGE, light="#eef0da", low=0.4, high=0.75), radial(root, 520)),
        (0.385, 0.03, base.but(base=INK, dark=INK, light=PLUM), None),
        (0.36, 0.03, base.but(base=VIOLET, dark=PLUM, light=LILAC, low=0.3, high=0.8), radial(root, 300)),
    ]
    for share, scallop, paint, field in plan:
        cv.lay(
            wobble(band(edge, root, share, scallop, 6, 0.4), rng, 1.6, 50),
            paint.but(shadow=0, rim=None),
            clip=wing,
            field=field,
        )
    scale_rows(cv, edge, root, wing, rng, 0.18)
    ends = placed(margin[np.linspace(4, len(margin) - 6, 7).astype(int)], side)
    veins(cv, root, ends, side, wing, (190, 130))
    eyespot(cv, tuple(placed(np.array([(352, 188)]), side)[0]), 168, side, wing, rng)
    dots = placed(margin[np.linspace(16, len(margin) - 14, 8).astype(int)], side)
    cv.marks(
        [(blob(root + (p - root) * 0.885, 17, 14, rng), rgb(GOLD)) for p in dots],
        clip=wing,
        alpha=0.95,
        shadow=0.3,
    )


def forewing(cv: Canvas, side: int, rng: np.random.Generator) -> None:
    """Paint a fore wing, with its banded margin and dark leading edge."""
    margin = curve(FORE_MARGIN)
    t = np.linspace(0, 1, len(margin))
    margin = margin + normals(margin) * (6 * np.abs(np.sin(t * math.pi * 6)) * (t > 0.12))[:, None] * -1
    edge = placed(np.vstack([curve(FORE_COSTA), margin, curve(FORE_INNER)]), side)
    root = placed(np.array([(26, -10)]), side)[0]
    heading = -25 if side > 0 else 25
    fringe(cv, placed(margin, side), root, rng, [MIST, VIOLET])
    base = Paint(
        PLUM,
        INK,
        VIOLET,
        streak=heading,
        shadow=0.55,
        cast=(5, 14, 11),
        rough=0.2,
        rim=MIST,
        rim_width=3,
        rim_strength=0.9,
    )
    wing = cv.lay(edge, base, field=radial(root, 1150))
    tone = base.but(shadow=0, rim=None)
    plan = [
        (0.945, 0.012, tone.but(base=VIOLET, dark=PLUM, light=LILAC, high=0.62), radial(root, 800)),
        (0.835, 0.03, tone.but(base=MIST, dark=LILAC, light=CREAM), radial(root, 700)),
        (0.812, 0.03, tone.but(base=PLUM, dark=INK, light=VIOLET, high=0.7), radial(root, 850)),
        (0.755, 0.03, tone.but(base=SAGE, dark=MOSS, light=FROND, low=0.35, high=0.7), radial(root, 760)),
        (0.66, 0.025, tone.but(base=SILVER, dark=SAGE, light="#eef0da", low=0.42, high=0.68), radial(root, 560)),
        (0.405, 0.07, tone.but(base=MIST, dark=LILAC, light=CREAM), None),
        (0.385, 0.07, tone.but(base=INK, light=PLUM), None),
        (0.355, 0.07, tone.but(base=VIOLET, dark=PLUM, light=LILAC, low=0.36, high=0.8), radial(root, 320)),
        (0.2, 0.03, tone.but(base=LILAC, dark=VIOLET, light=MIST), None),
        (0.18, 0.03, tone.but(base=PLUM, dark=INK, light=VIOLET), None),
    ]
    for share, scallop, paint, field in plan:
        cv.lay(wobble(band(edge, root, share, scallop, 11, 0.2), rng, 1.8, 60), paint, clip=wing, field=field)
    scale_rows(cv, edge, root, wing, rng, 0.12)
    ends = placed(margin[np.linspace(6, len(margin) - 4, 8).astype(int)], side)
    veins(cv, root, ends, side, wing, (270, -120))
    costa = placed(curve(FORE_COSTA), side)
    cv.lay(
        ribbon(costa[::4], 34, 18, belly=36),
        tone.but(base=PLUM, dark=INK, light=VIOLET, rough=0.25),
        clip=wing,
        alpha=0.95,
        dry=0.08,
    )
    ticks = []
    for i in range(14, len(costa) - 6, 9):
        inward = normals(costa)[i] * side
        ticks.append(
            (hair(costa[i] + inward * 4, costa[i] + inward * rng.uniform(20, 27) - (side * 9, 0), 6.5), rgb(MIST))
        )
    cv.marks(ticks, clip=wing, alpha=0.85, dry=0.1)
    eyespot(cv, tuple(placed(np.array([(412, -158)]), side)[0]), 142, side, wing, rng)
    dots = placed(margin[np.linspace(24, len(margin) - 14, 8).astype(int)], side)
    cv.marks(
        [(blob(root + (p - root) * 0.895, 15, 12, rng), rgb(GOLD)) for p in dots],
        clip=wing,
        alpha=0.95,
        shadow=0.3,
    )


def fur(
    cv: Canvas,
    rows: list[tuple[float, float, float, list[str]]],
    rng: np.random.Generator,
    length: float,
    fan: float = 30,
) -> None:
    """Cover part of the body in fur; each row gives y, half-width, lift and its colours.

    Rows are laid from the tail up, so each covers the roots of the one below.
    """
    marks: list[Mark] = []
    for y, half, lift, colours in rows:
        for x in np.sort(rng.uniform(-half, half, int(half * 1.25))):
            lean = x / max(half, 1) * fan + rng.normal(0, 7)
            a = math.radians(90 - lean)
            root = np.array([CX + x * 0.92, CY + y - lift * math.cos(x / max(half, 1) * 1.4)])
            tip = root + np.array([math.cos(a), math.sin(a)]) * length * rng.uniform(0.75, 1.15)
            light = -x / max(half, 1)
            tone = jitter(
                mix(colours[int(rng.integers(len(colours)))], INK if light < 0 else CREAM, abs(light) * 0.2),
                rng,
                0.03,
            )
            marks.append((hair(root, tip, 7, 0.03), tone))
    cv.marks(marks, shadow=0.3, cast=(3, 5, 4))


def body(cv: Canvas, rng: np.random.Generator) -> None:
    """Paint the abdomen, furry thorax and head."""
    half = [(0, 10), (40, 40), (50, 110), (45, 190), (33, 262), (16, 318), (0, 340)]
    belly = placed(doubled(half, 0), 1)
    cv.lay(belly, Paint(LILAC, PLUM, MIST, form=0.9, shadow=0.55, cast=(7, 10, 9), streak=0))
    rows = []
    for y in np.arange(322, 20, -9):
        k = np.interp(y, [10, 40, 110, 190, 262, 318, 340], [36, 40, 50, 45, 33, 16, 4])
        stripe = int((322 - y) // 27) % 2
        rows.append((float(y), float(k), 6.0, [VIOLET, PLUM, "#5f3d74"] if stripe == 0 else [MIST, SILVER, LILAC]))
    fur(cv, rows, rng, 24, 26)
    thorax = placed(blob((0, -28), 128, 190, rng, 0.015), 1)
    cv.lay(thorax, Paint(LILAC, PLUM, MIST, form=0.9, shadow=0.55, cast=(7, 10, 9)))
    rows = []
    for y in np.arange(62, -118, -8):
        k = 66 * math.sqrt(max(0.08, 1 - ((y + 28) / 104) ** 2))
        pale = y > 30 or y < -84
        colours = [MIST, CREAM, SILVER] if pale else ([VIOLET, LILAC, PLUM] if y > -10 else [LILAC, MIST, VIOLET])
        rows.append((float(y), k, 8.0, colours))
    fur(cv, rows, rng, 34, 46)
    head(cv, rng)


def head(cv: Canvas, rng: np.random.Generator) -> None:
    """Paint the head, its dark bright eyes and a pale ruff."""
    for side in (-1, 1):
        eye = (CX + side * 33, CY - 134)
        cv.lay(blob(eye, 36, 40, rng, 0.02), Paint(INK, "#0d0b20", NIGHT, form=0.9, shadow=0.4))
        cv.marks([(dab((eye[0] - 6, eye[1] - 8), 12, 7, -40), rgb(CREAM))], alpha=0.9)
        cv.marks([(dab((eye[0] + 7, eye[1] + 8), 8, 4, -40), rgb(VIOLET))], alpha=0.9)
    cv.lay(placed(blob((0, -132), 62, 62, rng, 0.02), 1), Paint(LILAC, VIOLET, MIST, form=0.9))
    rows = [
        (float(y), k, 5.0, colours)
        for y, k, colours in [
            (-120, 29, [VIOLET, LILAC]),
            (-130, 30, [LILAC, MIST]),
            (-140, 29, [VIOLET, LILAC]),
            (-150, 24, [MIST, LILAC]),
            (-158, 16, [MIST, CREAM]),
        ]
    ]
    fur(cv, rows, rng, 20, 40)


def antenna(cv: Canvas, side: int, rng: np.random.Generator) -> None:
    """Paint a feathered antenna, barbs first and the shaft over them."""
    shaft = placed(curve([(14, -156), (36, -214), (84, -268), (150, -304), (214, -314), (252, -304)]), side)
    across = normals(shaft)
    barbs: list[Mark] = []
    for i in range(6, len(shaft) - 1):
        t = i / len(shaft)
        long = 50 * math.sin(math.pi * min(1, t * 0.93 + 0.1)) ** 0.75
        forward = shaft[min(i + 1, len(shaft) - 1)] - shaft[i - 1]
        forward = forward / np.hypot(*forward)
        for s in (1, -1):
            tip = shaft[i] + across[i] * s * long * 0.8 + forward * long * 0.55
            mid = shaft[i] + across[i] * s * long * 0.45 + forward * long * 0.16
            barbs.append(
                (ribbon([shaft[i], mid, tip], 4.6, 1.8), jitter(LILAC if s * side > 0 else VIOLET, rng, 0.03))
            )
    cv.marks(barbs)
    cv.marks([(ribbon(shaft[::3], 9, 4), rgb(PLUM))])
    cv.marks([(ribbon(shaft[::3] - (1.2, 1.8), 3, 1.4), rgb(MIST))], alpha=0.8)


DARK = LEAF_DARK.but(base="#2a4a4c", light=MOSS, rim=SAGE)
DUSK = Paint("#5b4575", "#33264f", "#8b72a0", rim=MIST, rim_width=2, rim_strength=0.5)
NEST = (CX, 878)  # the middle of the sprig

# Each leaf of the sprig: heading in degrees (0 is outwards, 90 up), where along
# that heading it starts and ends, its width and its paint.
SPRIG = [
    (3, 300, 690, 112, DARK),
    (-9, 300, 650, 112, DUSK),
    (13, 280, 600, 108, DUSK),
    (52, 40, 330, 104, DARK),
    (74, 40, 320, 104, DUSK),
    (36, 60, 400, 104, DARK),
    (-20, 200, 470, 112, DARK),
    (-3, 260, 610, 100, LEAF),
    (62, 60, 250, 84, LEAF),
    (84, 60, 250, 80, DARK),
    (8, 200, 500, 104, LEAF_PALE),
    (-32, 130, 330, 104, DUSK),
    (-14, 190, 500, 98, LEAF),
    (24, 120, 380, 96, LEAF),
    (-50, 80, 214, 92, DARK),
    (44, 50, 230, 80, LEAF_PALE),
    (0, 130, 380, 98, DUSK),
    (-26, 120, 330, 92, LEAF_PALE),
    (-74, 0, 170, 96, LEAF),
    (-88, 0, 168, 90, DARK),
    (30, 0, 200, 90, DARK),
    (-30, 0, 230, 96, LEAF),
    (88, -20, 200, 100, LEAF),
    (60, 0, 170, 90, DUSK),
    (14, 70, 250, 84, LEAF),
    (-8, 80, 270, 90, DARK),
]


def sprig(cv: Canvas, rng: np.random.Generator) -> None:
    """Paint the bed of leaves and ferns the moth rests over."""
    for side in (-1, 1):
        for heading, long, width in [(20, 560, 170), (66, 400, 150)]:
            a = math.radians(heading)
            tip = (NEST[0] + side * math.cos(a) * long, NEST[1] - math.sin(a) * long)
            fern(
                cv,
                (NEST[0] + side * 40, NEST[1]),
                tip,
                width,
                LEAF.but(base="#46705c", dark="#22474a", light="#9dbb95"),
                rng,
                bend=0.2 * side,
            )
    for n, (heading, first, last, width, paint) in enumerate(SPRIG):
        for side in (-1, 1):
            # The two sides share a plan but not their colours or exact places.
            tone = (
                paint
                if (n + (side > 0)) % 3
                else {id(DARK): LEAF, id(LEAF): LEAF_PALE, id(DUSK): DARK}.get(id(paint), DUSK)
            )
            a = math.radians(heading + rng.uniform(-3, 3))
            way = np.array([side * math.cos(a), -math.sin(a)])
            last_ = last * rng.uniform(0.95, 1.03)
            leaf(
                cv,
                NEST + way * first,
                NEST + way * last_,
                width * rng.uniform(0.92, 1.06),
                tone,
                rng,
                bend=side * rng.uniform(0.02, 0.28),
                belly=0.42,
                veins=7,
            )


def blossoms(cv: Canvas, rng: np.random.Generator) -> None:
    """Paint the pale night flowers at the moth's tail."""
    petal = Paint("#ece6ee", LILAC, "#fffaf0", low=0.36, high=0.66, form=0.4, rim=None)
    lilac = Paint(LILAC, VIOLET, MIST, form=0.4)
    plan = [
        (-236, 930, 74, lilac),
        (250, 918, 80, lilac),
        (-330, 884, 62, petal),
        (346, 892, 58, petal),
        (-448, 902, 46, lilac),
        (452, 896, 48, petal),
        (-560, 884, 38, petal),
        (566, 880, 38, lilac),
        (-120, 948, 74, petal),
        (132, 954, 66, lilac),
        (12, 966, 70, petal),
        (-150, 858, 98, petal),
        (156, 850, 94, petal),
        (-70, 900, 84, lilac),
        (80, 900, 90, lilac),
        (2, 838, 132, petal),
    ]
    berries = []
    for x, y in [
        (-216, 858),
        (-196, 838),
        (214, 858),
        (236, 842),
        (-300, 934),
        (318, 944),
        (-392, 872),
        (402, 924),
        (-180, 962),
        (196, 966),
        (-502, 918),
        (512, 910),
        (64, 968),
        (-46, 974),
    ]:
        berries.append((blob((CX + x, y), 19, 19, rng, 0.03), rgb(GOLD)))
        berries.append((dab((CX + x + 2, y + 3), 11, 10, 0), mix(GOLD, AMBER, 0.6)))
        berries.append((dab((CX + x - 4, y - 5), 6, 4, -40), rgb(CREAM)))
    cv.marks(berries, shadow=0.45, cast=(3, 4, 3))
    for x, y, size, paint in plan:
        star(cv, (CX + x, y), size, rng, petal=paint)


def paint() -> Canvas:
    """Paint the whole picture."""
    rng = np.random.default_rng(1103)
    cv = Canvas(1500, 1120)
    sprig(cv, rng)
    for side in (-1, 1):
        hindwing(cv, side, rng)
    for side in (-1, 1):
        forewing(cv, side, rng)
    for side in (-1, 1):
        antenna(cv, side, rng)
    body(cv, rng)
    blossoms(cv, rng)
    return cv
