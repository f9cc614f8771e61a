"""The hedgehog: out among autumn leaves with a candle lantern.

In: nothing. Out: `paint()` gives a canvas with the whole picture on it; it is
written on an even teal ground, so no colour near that teal may touch the
outline (greens here are olive, and edges are lit cream or gold).
"""

from __future__ import annotations

import math
from collections.abc import Callable

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
    hair,
    jitter,
    mix,
    moved,
    outline,
    rgb,
    ribbon,
)
from flora import berry, fern, grass, leaf, litter, moss, skirt_of_moss, star
from palette import AMBER, BARK, BLUSH, CORAL, CREAM, GOLD, INK, RUSSET, RUST
from PIL import Image, ImageDraw, ImageFilter

Rng = np.random.Generator

FACE = np.array([1052.0, 742.0])  # the quills all lean away from here
LAMP = np.array([1308.0, 836.0])  # the candle flame

OLIVE = Paint("#56552f", "#2b2e28", "#9d9550", rim="#d9c888", rim_width=2, rim_strength=0.4)
NIGHTLEAF = Paint("#34402f", "#1d2527", "#66683a", rim="#b5a566", rim_width=2, rim_strength=0.35)
RUSTY = Paint(RUSSET, RUST, "#d9834a", rim=CREAM, rim_width=2, rim_strength=0.45)
OCHRE = Paint("#d49a44", "#99592f", "#f0cd80", rim=CREAM, rim_width=2, rim_strength=0.5)
WINEY = Paint("#7c2c3a", "#4a1d30", "#b2504c", rim=BLUSH, rim_width=2, rim_strength=0.4)

BACK = [(372, 918), (320, 806), (326, 656), (386, 512), (490, 396), (624, 334), (756, 340), (860, 402), (918, 486)]
HAIRLINE = [(918, 486), (930, 560), (908, 640), (896, 730), (916, 800), (900, 880)]
BELLY = [(900, 880), (790, 934), (580, 948), (372, 918)]


def behind(cv: Canvas, rng: Rng) -> None:
    """Paint the grasses, ferns and leaves that stand behind."""
    bracken = OLIVE.but(base="#7d5a2f", dark="#4a3328", light="#c99a50")
    fern(cv, (360, 970), (276, 540), 140, bracken, rng, bend=-0.3)
    fern(cv, (400, 970), (272, 690), 130, NIGHTLEAF, rng, bend=-0.2)
    fern(cv, (1360, 970), (1406, 590), 140, bracken, rng, bend=0.25)
    fern(cv, (1210, 970), (1190, 640), 130, bracken.but(base="#5e4a2c", light="#97743f"), rng, bend=-0.15)
    grass(cv, (330, 990), 300, 120, NIGHTLEAF, rng, 8)
    grass(cv, (1250, 990), 330, 230, NIGHTLEAF, rng, 9)
    for x0, y0, x1, y1, w, paint in [
        (380, 970, 236, 810, 100, RUSTY),
        (340, 1000, 212, 910, 88, OCHRE),
        (400, 980, 290, 740, 96, WINEY),
        (1010, 990, 1060, 740, 130, NIGHTLEAF),
        (1100, 990, 1128, 730, 110, NIGHTLEAF.but(base="#3d4a30")),
        (960, 990, 990, 760, 120, NIGHTLEAF),
        (1060, 990, 1130, 800, 104, WINEY.but(base="#55243a", light="#8a3a48")),
        (1120, 990, 1200, 760, 100, WINEY),
        (1000, 990, 1060, 830, 104, NIGHTLEAF),
        (1190, 990, 1250, 740, 96, NIGHTLEAF),
        (1376, 970, 1444, 800, 88, RUSTY),
        (1346, 970, 1408, 740, 92, WINEY),
        (1300, 970, 1226, 700, 92, NIGHTLEAF),
        (1400, 990, 1456, 900, 78, OCHRE),
        (1290, 970, 1300, 640, 96, NIGHTLEAF),
        (1350, 970, 1366, 640, 92, NIGHTLEAF),
        (1150, 990, 1130, 860, 80, RUSTY),
        (1080, 990, 1040, 880, 80, OLIVE),
    ]:
        leaf(cv, (x0, y0), (x1, y1), w, paint, rng, bend=rng.uniform(-0.25, 0.25), teeth=9, veins=6)


def lit(point: Array) -> float:
    """Say how moonlit a place on the hedgehog's back is, from 0 to 1."""
    x, y = (point[0] - 620) / 340, (point[1] - 640) / 330
    return float(np.clip(0.56 - 0.30 * x - 0.46 * y, 0, 1))


def quill_colours(root: Array, rng: Rng) -> tuple[Array, Array, Array]:
    """Choose a quill's root, middle and tip colours from the light on it."""
    light = np.clip(lit(root) + rng.normal(0, 0.11), 0, 1)
    dark = mix(BARK, "#5a2428", light)
    middle = mix(RUST, "#c8683a", light)
    tip = mix("#b0623c", "#ffe9c4", light)
    warm = max(0.0, 1 - np.hypot(*(root - (980, 700))) / 330) * 0.55
    return (
        jitter(mix(dark, RUSSET, warm), rng, 0.02),
        jitter(mix(middle, "#dd8440", warm), rng, 0.025),
        jitter(mix(tip, "#ffd98c", warm), rng, 0.025),
    )


def quills(cv: Canvas, rng: Rng) -> None:
    """Paint the back: a dark dome, then quills from the rump towards the brow.

    Nearer quills lie over the roots of those behind, as they do on the animal.
    """
    dome = np.vstack([curve(BACK), curve(HAIRLINE), curve(BELLY)])
    mask = cv.lay(dome, Paint(RUST, BARK, RUSSET, form=0.8, shadow=0.5, streak=30))
    roots = []
    for gx in np.arange(300, 960, 23):
        for gy in np.arange(310, 950, 21):
            p = np.array([gx + (gy // 21 % 2) * 11, gy]) + rng.normal(0, 5, 2)
            ix, iy = int(p[0]) - mask.x, int(p[1]) - mask.y
            if 0 <= ix < mask.a.shape[1] and 0 <= iy < mask.a.shape[0] and mask.a[iy, ix] > 0.5:
                roots.append(p)
    roots.sort(key=lambda p: -np.hypot(*(p - FACE)))
    batch: list[Mark] = []
    for n, root in enumerate(roots):
        away = root - FACE
        far = np.hypot(*away)
        turn = math.atan2(away[1] * 0.92, away[0]) + rng.normal(0, 0.13)
        length = np.interp(far, [130, 330, 700], [64, 98, 118]) * rng.uniform(0.85, 1.12)
        out = np.array([math.cos(turn), math.sin(turn)])
        if root[1] + out[1] * length > 958:
            length *= 0.6
        tip = root + out * length
        bow = rng.normal(0.02, 0.02)
        a, b, c = quill_colours(root, rng)
        batch.append((hair(root - out * 6, tip, 13.5, bow), a))
        batch.append((hair(root + out * length * 0.14, tip + out * 1, 9.5, bow * 0.8), b))
        batch.append((hair(root + out * length * 0.48, tip + out * 2, 6.6, bow * 0.4), c))
        if n % 130 == 129:  # a soft shadow between the ranks keeps them apart
            cv.marks(batch, shadow=0.32, cast=(4, 6, 5))
            batch = []
    cv.marks(batch, shadow=0.32, cast=(4, 6, 5))


def coat(
    cv: Canvas,
    places: list[tuple[float, float]],
    away: Array,
    lengths: tuple[float, float],
    rng: Rng,
    tone: Callable[[Array], Array],
    width: float = 7,
    clip: Mask | None = None,
) -> None:
    """Cover places with soft hairs that lie away from a point."""
    marks: list[Mark] = []
    for x, y in places:
        root = np.array([x, y])
        turn = math.atan2(y - away[1], x - away[0]) + rng.normal(0, 0.2)
        tip = root + np.array([math.cos(turn), math.sin(turn)]) * rng.uniform(*lengths)
        marks.append((hair(root, tip, width, rng.normal(0.03, 0.04)), jitter(tone(root), rng, 0.022)))
    cv.marks(marks, clip=clip, alpha=0.92)


def fur_tone(root: Array) -> Array:
    """Choose the face's fur colour: pale muzzle and cheek, a dusky mask by the eye."""
    to_lamp = np.clip(1 - np.hypot(*(root - LAMP)) / 460, 0, 1)
    base = mix("#c98a5c", "#f3d3a2", np.clip(0.2 + to_lamp * 1.1, 0, 1))
    bar = math.exp(-(((root[0] - 1052) / 74) ** 2) - ((root[1] - (638 + (root[0] - 1052) * 0.33)) / 27) ** 2)
    base = mix(base, "#6d3a2c", 0.72 * bar)
    return mix(base, CREAM, 0.35 * np.clip((root[1] - 690) / 90, 0, 1))


def scatter(mask: Mask, gap: float, rng: Rng) -> list[tuple[float, float]]:
    """Give jittered places all over a mask."""
    places = []
    for gy in np.arange(0, mask.a.shape[0], gap):
        for gx in np.arange(0, mask.a.shape[1], gap):
            x, y = gx + rng.normal(0, gap * 0.3), gy + rng.normal(0, gap * 0.3)
            ix, iy = int(x), int(y)
            if 0 <= ix < mask.a.shape[1] and 0 <= iy < mask.a.shape[0] and mask.a[iy, ix] > 0.6:
                places.append((x + mask.x, y + mask.y))
    return places


def underside(cv: Canvas, rng: Rng) -> None:
    """Paint the soft belly and chest and the feet on the far side."""
    foot(cv, (1076, 944), rng, dark=True)
    foot(cv, (640, 958), rng, dark=True, size=1.05)
    chest = outline(
        [(880, 700), (1000, 760), (1040, 820), (1030, 890), (960, 940)],
        [(960, 940), (800, 962), (560, 962), (420, 930)],
        [(420, 930), (600, 880), (880, 700)],
    )
    mask = cv.lay(chest, Paint("#b0754f", RUST, "#e3b384", form=0.6, shadow=0.3))
    places = sorted(scatter(mask, 11, rng), key=lambda p: -p[1])
    coat(
        cv,
        places,
        np.array([820, 380]),
        (20, 34),
        rng,
        lambda p: mix(
            mix(RUST, "#b98058", np.clip((p[0] - 350) / 520, 0, 1)),
            "#f2cf9f",
            np.clip((p[0] - 850) / 240, 0, 1) * 0.8,
        ),
    )


def foot(cv: Canvas, at: Point, rng: Rng, dark: bool = False, size: float = 1.0) -> None:
    """Paint a small paw, pointing right: a furry instep, then long toes with claws."""
    skin = Paint("#c58a66", "#6d3a34", "#f6cda2", form=0.9, shadow=0.6, cast=(2, 4, 3), rough=0.06)
    if dark:
        skin = skin.but(base="#7f4e42", dark="#45262c", light="#a57460")
    x, y = at

    def p(*points: tuple[float, float]) -> list[tuple[float, float]]:
        return [(x + a * size, y + b * size) for a, b in points]

    palm = curve(
        p((-58, -6), (-44, -32), (-10, -40), (20, -28), (28, -4), (10, 14), (-24, 16), (-50, 10)), closed=True
    )
    mask = cv.lay(palm, skin.but(base=mix(skin.base, RUST, 0.25), shadow=0.3))
    fur = [
        (
            hair((px, py), (px + rng.uniform(14, 24), py + rng.uniform(2, 8)), 5),
            jitter(mix(skin.base, skin.light, rng.uniform(0, 0.7)), rng, 0.02),
        )
        for px, py in scatter(mask, 9, rng)
        if px < x + 10 * size
    ]
    cv.marks(fur, clip=mask, alpha=0.8)
    for root, knuckle, tip in [
        ((4, -24), (34, -22), (58, -6)),
        ((-8, 10), (14, 20), (38, 22)),
        ((2, -10), (40, -10), (68, 6)),
        ((-2, 2), (32, 6), (58, 17)),
    ]:
        claw = p((tip[0] - 6, tip[1] - 2), (tip[0] + 12, tip[1] + 1), (tip[0] + 24, tip[1] + 9))
        cv.lay(ribbon(claw, 8 * size, 1), Paint("#f3e2bf", "#a57b58", CREAM, shadow=0.35))
        cv.lay(ribbon(p(root, knuckle, tip), 17 * size, 9 * size, belly=18 * size), skin)


def head(cv: Canvas, rng: Rng) -> None:
    """Paint the face: fur, ear, eye, nose and a contented mouth."""
    shape = outline(
        [(880, 500), (936, 500), (990, 536), (1048, 586), (1104, 626), (1152, 642), (1190, 640)],
        [(1190, 640), (1206, 656), (1200, 680), (1176, 700)],
        [(1176, 700), (1128, 734), (1072, 768), (1016, 796), (950, 808), (880, 790)],
    )
    fur = Paint("#d39a68", "#8a5238", "#f5d6a6", form=0.6, shadow=0.4, cast=(-4, 8, 8))
    mask = cv.lay(shape, fur, field=lambda x, _y: np.clip(0.3 + (x - 900) / 480, 0, 1))
    places = sorted(scatter(mask, 8.5, rng), key=lambda p: p[0])
    coat(cv, places, np.array([1230, 664]), (17, 29), rng, fur_tone, 6)
    coat(
        cv,
        [p for p in scatter(mask, 9, rng) if p[0] < 975 and p[1] > 640],
        np.array([1200, 560]),
        (26, 44),
        rng,
        fur_tone,
        7,
    )
    crest: list[Mark] = []
    for x, y in curve([(926, 504), (990, 538), (1048, 588), (1100, 626), (1140, 642)], step=5):
        short = np.interp(x, [926, 1140], [1, 0.45])
        tip = (x - rng.uniform(14, 24) * short, y - rng.uniform(9, 15) * short)
        crest.append(
            (
                hair((x + 2, y + 5), tip, 6.5, -0.08),
                jitter(mix(fur_tone(np.array([x, y])), "#fbe3b8", 0.35), rng, 0.025),
            )
        )
    for x, y in curve([(1120, 740), (1072, 768), (1016, 796), (950, 808)], step=6):
        crest.append(
            (
                hair((x, y - 6), (x - rng.uniform(18, 30), y + rng.uniform(8, 16)), 7, 0.08),
                jitter(fur_tone(np.array([x, y])), rng, 0.025),
            )
        )
    cv.marks(crest)
    ear(cv, rng)
    fringe = [(x, y) for x, y in scatter(cv.cut(curve([*HAIRLINE, (860, 800), (880, 560)], closed=True)), 10, rng)]
    marks: list[Mark] = []
    for x, y in sorted(fringe, key=lambda p: -np.hypot(p[0] - FACE[0], p[1] - FACE[1])):
        turn = math.atan2(y - FACE[1], x - FACE[0] - 40) + rng.normal(0, 0.14)
        tip = np.array([x, y]) + np.array([math.cos(turn), math.sin(turn)]) * rng.uniform(30, 50)
        dark, _, pale = quill_colours(np.array([x, y]), rng)
        marks += [(hair((x, y), tip, 9), dark), (hair(tip * 0.5 + np.array([x, y]) * 0.5, tip, 5.5), pale)]
    cv.marks(marks)
    features(cv, mask, rng)


def ear(cv: Canvas, rng: Rng) -> None:
    """Paint the near ear."""
    at = (938, 572)
    rim = Paint("#b9764e", "#6d3a2c", "#f0c794", form=0.9, shadow=0.45, cast=(4, 6, 6))
    cv.lay(moved(blob((0, 0), 82, 92, rng, 0.02), *at, turn=-14), rim)
    cv.lay(
        moved(blob((0, 0), 54, 62, rng, 0.03), at[0] + 5, at[1] + 7, turn=-14),
        Paint("#8f4a42", "#4e2730", "#d98a76", shadow=0, form=0.3, streak=80),
    )
    marks: list[Mark] = []
    for k in range(22):
        root = (at[0] - 30 + k * 2.1 + rng.normal(0, 1.5), at[1] + 42 + rng.normal(0, 3) - k * 0.2)
        tip = (root[0] + 5 + rng.normal(0, 4), root[1] - rng.uniform(18, 40) * (1 - abs(k - 9) / 24))
        marks.append((hair(root, tip, 4.2, 0.06), jitter(mix("#d39a68", "#f3d3a2", rng.uniform()), rng, 0.025)))
    cv.marks(marks, alpha=0.92)


def features(cv: Canvas, mask: Mask, rng: Rng) -> None:
    """Paint cheek, eye, nose, mouth and whiskers."""
    cv.lay(
        blob((1040, 716), 92, 54, rng, 0.04, turn=-20),
        Paint(CORAL, CORAL, "#f08d6c", shadow=0),
        clip=mask,
        alpha=0.34,
        dry=0.25,
    )
    eye = (1056, 634)
    cv.lay(blob(eye, 58, 60, rng, 0.02), Paint("#4e2a2a", "#33202c", "#7a4836", shadow=0), alpha=0.85)
    cv.lay(blob(eye, 45, 47, rng, 0.015), Paint(INK, "#0c0a1a", "#4a3450", form=0.9, shadow=0, high=0.8))
    cv.marks(
        [
            (blob((eye[0] + 7, eye[1] - 9), 15, 12, rng, 0.03, turn=-30), rgb("#fffaf0")),
            (dab((eye[0] - 8, eye[1] + 10), 7, 5, 20), rgb(AMBER)),
        ]
    )
    lid = [
        (eye[0] - 30, eye[1] - 6),
        (eye[0] - 14, eye[1] - 27),
        (eye[0] + 12, eye[1] - 27),
        (eye[0] + 29, eye[1] - 6),
    ]
    cv.marks([(ribbon(lid, 2, 2, belly=6), rgb("#3b1f2a"))])
    nose = outline(
        [(1164, 640), (1184, 622), (1212, 626), (1222, 648)],
        [(1222, 648), (1216, 670), (1196, 678), (1172, 664), (1164, 640)],
    )
    cv.lay(nose, Paint(INK, "#0e0b1c", "#5a4062", form=0.95, shadow=0.35, high=0.7))
    cv.marks(
        [
            (dab((1198, 636), 18, 8, 10), rgb("#e9d7d2")),
            (ribbon([(1206, 668), (1198, 664), (1190, 668)], 2, 2, belly=3), rgb("#6d5a72")),
        ],
        alpha=0.9,
    )
    mouth = [(1190, 680), (1178, 696), (1152, 708), (1118, 708), (1094, 694)]
    cv.marks(
        [
            (ribbon(mouth, 5, 1, belly=5), rgb("#54262a")),
            (ribbon([(1098, 686), (1090, 694), (1090, 704)], 1, 1, belly=4), rgb("#54262a")),
        ],
        alpha=0.9,
    )
    whiskers = [
        (
            ribbon(
                [(1140 - 10 * k, 676 + 5 * k), (1166 - 10 * k, 700 + 12 * k), (1172 - 16 * k, 734 + 16 * k)],
                2.6,
                0.8,
            ),
            rgb("#fff0cf"),
        )
        for k in range(4)
    ]
    cv.marks(whiskers, alpha=0.9)
    dots = [(dab((1134 - 12 * k, 672 + 7 * k), 4, 4, 0), rgb("#6d3a2c")) for k in range(4)]
    cv.marks(dots)


def lantern(cv: Canvas, rng: Rng) -> None:
    """Paint the candle lantern."""
    x, y = LAMP
    iron = Paint("#4a3040", "#221a2c", "#a0705a", form=0.8, shadow=0.5, rim="#f6d79a", rim_width=3)
    handle = [(x - 44, y - 132), (x - 58, y - 196), (x, y - 236), (x + 58, y - 196), (x + 44, y - 132)]
    cv.lay(ribbon(handle, 9, 9, belly=10), iron)
    glass = curve(
        [
            (x - 62, y - 92),
            (x - 78, y - 10),
            (x - 70, y + 88),
            (x, y + 104),
            (x + 70, y + 88),
            (x + 78, y - 10),
            (x + 62, y - 92),
            (x, y - 104),
        ],
        closed=True,
    )
    glow = Paint(
        "#f4b14a",
        "#cf6f33",
        "#ffe08c",
        low=0.34,
        high=0.66,
        soft=0.17,
        rough=0.08,
        shadow=0.4,
        edge=0.4,
        edge_width=9,
        streak=90,
    )
    mask = cv.lay(
        glass, glow, field=lambda px, py: np.clip(1.12 - np.hypot((px - x) * 1.15, py - y - 8) / 116, 0, 1)
    )
    cv.lay(
        outline([(x - 30, y + 40), (x, y + 34), (x + 30, y + 40)], [(x + 32, y + 104), (x - 32, y + 104)]),
        Paint(CREAM, "#e9b873", "#fff8e6", shadow=0.2),
        clip=mask,
    )
    cv.marks([(ribbon([(x, y + 40), (x + 2, y + 26), (x, y + 14)], 4, 3), rgb("#5a3030"))])
    flame = outline(
        [(x, y - 48), (x - 12, y - 22), (x - 20, y + 4), (x - 12, y + 24), (x, y + 29)],
        [(x, y + 29), (x + 13, y + 23), (x + 19, y + 3), (x + 9, y - 22), (x, y - 48)],
    )
    cv.lay(flame, Paint("#ffe9a6", "#fbc65c", "#fff8dc", shadow=0, low=0.25), clip=mask)
    cv.lay(
        moved(flame, scale=0.58, about=(x, y + 20)), Paint("#fffaf0", "#fff0c0", "#ffffff", shadow=0), clip=mask
    )
    bars = [ribbon([(x + dx, y - 98), (x + dx * 1.32, y - 4), (x + dx * 1.16, y + 96)], 9, 9) for dx in (-60, 60)]
    bars.append(ribbon([(x - 22, y - 100), (x - 30, y), (x - 26, y + 98)], 5, 5))
    for bar in bars:
        cv.lay(bar, iron.but(shadow=0.25))
    cap = outline(
        [(x - 88, y - 88), (x - 60, y - 112), (x - 30, y - 142), (x - 14, y - 160)],
        [(x - 14, y - 160), (x + 14, y - 160)],
        [(x + 14, y - 160), (x + 30, y - 142), (x + 60, y - 112), (x + 88, y - 88)],
        [(x + 88, y - 88), (x, y - 76), (x - 88, y - 88)],
    )
    cv.lay(cap, iron)
    cv.lay(blob((x, y - 166), 40, 22, rng, 0.03), iron)
    base = outline(
        [(x - 86, y + 92), (x, y + 104), (x + 86, y + 92)], [(x + 92, y + 122), (x, y + 138), (x - 92, y + 122)]
    )
    cv.lay(base, iron)
    dots = [
        (dab((x - 66 + 22 * k, y + 116 - abs(k - 3) * 0 + 4 * math.cos((k - 3) / 2)), 7, 6, 0), rgb(GOLD))
        for k in range(7)
    ]
    cv.marks(dots, alpha=0.9)
    cv.marks(
        [(ribbon([(x - 56, y - 60), (x - 60, y), (x - 54, y + 60)], 2, 2, belly=8), rgb("#fffbe8"))],
        alpha=0.75,
        dry=0.2,
    )


def ground(cv: Canvas, rng: Rng) -> None:
    """Paint the mossy bank and what lies on it."""
    bank = Paint("#625b32", "#2e2e28", "#a39748", shadow=0.45, cast=(0, -4, 8))
    moss(
        cv,
        [(216, 1016), (262, 980), (420, 958), (700, 962), (980, 958), (1240, 956), (1390, 976), (1440, 1012)],
        [(216, 1016), (330, 1068), (750, 1084), (1250, 1074), (1440, 1012)],
        bank,
        rng,
        tuft=17,
        tips="#d3c26a",
    )


def before(cv: Canvas, rng: Rng) -> None:
    """Paint the leaf litter, berries, flowers and grass in front."""
    paints = [WINEY, RUSTY, OCHRE, RUSTY, WINEY.but(base="#5d2438", light="#8f3d48"), OLIVE]
    litter(cv, 236, 1440, [(1046, 16, 100), (1086, 13, 124)], paints, rng, rise=30)
    for x, height, spread, n in [(770, 130, 130, 8), (290, 150, 110, 8), (1180, 140, 120, 8), (520, 90, 90, 6)]:
        grass(cv, (x, 1052), height, spread, OLIVE, rng, n)
    red = Paint("#c23a3c", "#6f1d33", "#f0775c")
    for x, y, s in [
        (650, 1050, 36),
        (684, 1062, 32),
        (664, 1024, 30),
        (330, 1040, 34),
        (362, 1056, 28),
        (1090, 1050, 36),
        (1120, 1064, 30),
        (1106, 1026, 28),
        (1376, 1040, 32),
    ]:
        berry(cv, (x, y), s, red, rng)
    petal = Paint("#f4e6d4", "#d3a894", "#fffaf0", form=0.4)
    for x, y, s in [
        (860, 1044, 60),
        (904, 1066, 46),
        (420, 1052, 54),
        (1300, 1050, 52),
        (560, 1066, 42),
        (1010, 1072, 42),
    ]:
        star(cv, (x, y), s, rng, petal=petal)


def passengers(cv: Canvas, rng: Rng) -> None:
    """Catch a leaf and a berry on the quills."""
    leaf(cv, (560, 480), (694, 404), 84, OCHRE.but(shadow=0.5, cast=(5, 9, 7)), rng, bend=0.2, teeth=9, veins=6)
    leaf(
        cv,
        (476, 650),
        (400, 566),
        64,
        WINEY.but(light="#c9645a", shadow=0.5, cast=(5, 9, 7)),
        rng,
        bend=-0.2,
        teeth=9,
        veins=5,
    )
    berry(cv, (716, 450), 38, Paint("#c23a3c", "#6f1d33", "#f0775c", shadow=0.5), rng)
    star(cv, (744, 556), 62, rng, petal=Paint("#f4e6d4", "#d3a894", "#fffaf0", form=0.4))


def close_gaps(cv: Canvas) -> None:
    """Put dark undergrowth behind any gap the outside cannot reach.

    The ground is cut away later by flooding in from the border; a window of
    ground left between blades of grass would stay behind as a stray patch.
    """
    edge = 2  # the outside must be able to run all the way round
    solid = Image.fromarray(np.pad(cv.a > 0.05, edge).astype(np.uint8) * 255).copy()
    ImageDraw.floodfill(solid, (0, 0), 128)
    inside = solid.point(lambda v: 255 if v == 0 else 0).filter(ImageFilter.MaxFilter(3))
    grown = np.asarray(inside.crop((edge, edge, edge + cv.width, edge + cv.height)), np.float32) / 255
    fill = Canvas(cv.width, cv.height)
    fill.lay(Mask(0, 0, grown), Paint("#2b2e28", "#1f2224", "#3a3c2e", shadow=0))
    cv.under(fill)


def paint() -> Canvas:
    """Paint the whole picture."""
    rng = np.random.default_rng(3310)
    cv = Canvas(1500, 1180)
    behind(cv, rng)
    ground(cv, rng)
    underside(cv, rng)
    quills(cv, rng)
    head(cv, rng)
    foot(cv, (1000, 952), rng)
    foot(cv, (520, 956), rng, size=1.15)
    passengers(cv, rng)
    lantern(cv, rng)
    cv.glow((LAMP[0], LAMP[1]), 400, "#ffb347", 0.5)
    green = Paint("#625b32", "#2e2e28", "#a39748")
    for x, y, spread in [
        (LAMP[0], LAMP[1] + 140, 220),
        (500, 992, 150),
        (990, 986, 140),
        (640, 976, 120),
        (760, 972, 160),
        (1076, 976, 100),
    ]:
        skirt_of_moss(cv, (x, y), spread, green, rng, int(spread * 0.32), 22)
    before(cv, rng)
    close_gaps(cv)
    return cv
