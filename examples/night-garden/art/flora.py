"""Leaves, ferns, grass, moss and small flowers that all the pictures share.

In: a canvas, places and sizes in pixels, paints and a seeded generator.
Out: the plant painted on the canvas.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from brush import (
    MOON,
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
    normals,
    rgb,
    ribbon,
    texture,
    wobble,
)
from palette import AMBER, CREAM, GOLD, INK

Rng = np.random.Generator


def midrib(base: Point, tip: Point, bend: float) -> Array:
    """Run a bowed line from a leaf's base to its tip."""
    start, end = np.asarray(base, float), np.asarray(tip, float)
    across = np.array([-(end - start)[1], (end - start)[0]])
    t = np.linspace(0, 1, max(12, int(np.hypot(*(end - start)) / 5)))[:, None]
    return start + (end - start) * t + across * (bend * 4 * t * (1 - t)) * 0.5


def blade(spine: Array, width: float, belly: float = 0.4, teeth: float = 0) -> tuple[Array, Array]:
    """Give a leaf's left and right edges round its midrib; widest at `belly`."""
    t = np.linspace(0, 1, len(spine))
    power = math.log(0.5) / math.log(belly)
    swell = np.sin(np.pi * t**power) ** 0.85 * (1 - 0.15 * t)
    if teeth:
        saw = (t * teeth) % 1
        swell = swell * (1 - 0.16 * (1 - saw))
    side = normals(spine) * (swell * width / 2)[:, None]
    return spine + side, spine - side


def leaf(
    cv: Canvas,
    base: Point,
    tip: Point,
    width: float,
    paint: Paint,
    rng: Rng,
    *,
    bend: float = 0.15,
    belly: float = 0.4,
    teeth: float = 0,
    veins: int = 6,
    line: str | Array | None = None,
    stalk: float = 0,
) -> Mask:
    """Paint a leaf: one half in shade, a pale midrib and side veins."""
    spine = midrib(base, tip, bend)
    left, right = blade(spine, width, belly, teeth)
    shape = wobble(np.vstack([left, right[::-1]]), rng, width * 0.012, width * 0.8)
    heading = math.degrees(math.atan2(tip[1] - base[1], tip[0] - base[0]))
    mask = cv.lay(shape, paint.but(streak=heading + 35))
    # The half that looks away from the moon is glazed darker.
    across = (left - right)[len(spine) // 2]
    shaded = right if across @ MOON > 0 else left
    cv.lay(
        np.vstack([spine, shaded[::-1]]),
        paint.but(base=paint.dark, light=paint.base, high=0.8, shadow=0, rim=None),
        clip=mask,
        alpha=0.5,
        dry=0.12,
    )
    line = mix(paint.light, CREAM, 0.15) if line is None else line
    cv.marks(vein_marks(spine, left, right, width, veins, line), clip=mask, dry=0.22, alpha=0.85)
    if stalk:
        back = spine[0] - (spine[3] - spine[0]) / np.hypot(*(spine[3] - spine[0])) * stalk
        cv.marks([(ribbon([back, spine[0], spine[4]], width * 0.1, width * 0.05), rgb(paint.base))])
    return mask


def vein_marks(spine: Array, left: Array, right: Array, width: float, veins: int, line: str | Array) -> list[Mark]:
    """Draw the midrib and side veins of a leaf."""
    thick = max(1.6, width * 0.045)
    lines = [(ribbon(spine[::3], thick, thick * 0.3), rgb(line))]
    count = len(spine)
    for k in range(veins):
        root = int(count * (0.1 + 0.72 * k / max(veins, 1)))
        reach = min(count - 1, root + int(count * 0.17))
        for edge in (left, right):
            end = spine[reach] + (edge[reach] - spine[reach]) * 0.86
            middle = (spine[root] * 0.45 + end * 0.55) + (spine[root] - spine[reach]) * 0.08
            lines.append((ribbon([spine[root], middle, end], thick * 0.6, thick * 0.25), rgb(line)))
    return lines


def fern(
    cv: Canvas,
    base: Point,
    tip: Point,
    width: float,
    paint: Paint,
    rng: Rng,
    *,
    bend: float = 0.2,
    pairs: int = 19,
) -> None:
    """Paint a fern frond: leaflets in pairs, shrinking to the tip."""
    spine = midrib(base, tip, bend)
    count = len(spine)
    side = normals(spine)
    leaflets, lines = [], []
    for k in range(pairs):
        t = 0.10 + 0.89 * (k / (pairs - 1)) ** 0.92
        i = min(count - 2, int(t * count))
        forward = spine[i + 1] - spine[i]
        forward = forward / max(np.hypot(*forward), 1e-6)
        length = width / 2 * (1 - t) ** 0.62 * (0.6 + 0.75 * min(1, t * 3.2)) + 7
        for sign in (1, -1):
            end = spine[i] + (side[i] * sign * 0.88 + forward * (0.45 + 0.5 * t)) * length * rng.uniform(
                0.94, 1.05
            )
            rib = midrib(spine[i], end, -0.16 * sign)
            left, right = blade(rib, min(length * 0.4, width * 0.105), 0.36)
            leaflets.append(np.vstack([left, right[::-1]]))
            lines.append((hair(rib[0], rib[int(len(rib) * 0.75)], 2.4), rgb(paint.light)))
    heading = math.degrees(math.atan2(tip[1] - base[1], tip[0] - base[0]))
    stem = ribbon(spine[::4], max(3, width * 0.03), 1.5)
    mask = cv.lay([*leaflets, stem], paint.but(streak=heading + 60, form=0.2))
    cv.marks(
        [*lines, (ribbon(spine[::4], max(2.2, width * 0.02), 1), rgb(paint.light))], clip=mask, alpha=0.65, dry=0.1
    )


def grass(cv: Canvas, at: Point, height: float, spread: float, paint: Paint, rng: Rng, blades: int = 9) -> None:
    """Paint a tuft of grass, the tall blades behind."""
    for k in range(blades):
        lean = (k / max(blades - 1, 1) - 0.5) * 2
        lean = lean * 0.9 + rng.uniform(-0.2, 0.2)
        tall = height * (1 - 0.35 * abs(lean)) * rng.uniform(0.7, 1.05)
        x, y = at[0] + lean * spread * 0.18, at[1]
        tip = (at[0] + lean * spread * 0.62 + lean * abs(lean) * spread * 0.2, y - tall)
        mid = (x + (tip[0] - x) * 0.3, y - tall * 0.55)
        cv.lay(
            ribbon([(x, y), mid, tip], height * 0.03, 1, belly=height * 0.05),
            paint.but(streak=90, shadow=0.25),
        )


def star(
    cv: Canvas,
    at: Point,
    size: float,
    rng: Rng,
    *,
    petal: Paint,
    petals: int = 5,
    turn: float | None = None,
    heart: str | Array = GOLD,
    tilt: float = 0.85,
) -> None:
    """Paint a small open flower with notched petals and a gold heart."""
    turn = rng.uniform(0, 360) if turn is None else turn
    for k in range(petals):
        angle = math.radians(turn + k * 360 / petals)
        out = np.array([math.cos(angle), math.sin(angle) * tilt])
        across = np.array([-out[1], out[0]])
        r = size / 2 * rng.uniform(0.93, 1.06)
        ring = [
            out * r * 0.12,
            out * r * 0.55 + across * r * 0.36,
            out * r * 0.94 + across * r * 0.27,
            out * r * 0.88,
            out * r * 0.98 - across * r * 0.24,
            out * r * 0.55 - across * r * 0.36,
        ]
        shape = curve(np.array(ring) + at, closed=True, step=3)
        mask = cv.lay(shape, petal.but(shadow=0.28, cast=(2, 3, 2.5), streak=math.degrees(angle)))
        if size > 34:
            lines = [
                (
                    ribbon(
                        [
                            np.array(at) + out * r * 0.2,
                            np.array(at) + out * r * 0.5 + across * r * s * 0.08,
                            np.array(at) + out * r * 0.78 + across * r * s * 0.16,
                        ],
                        size * 0.025,
                        0.6,
                    ),
                    rgb(petal.dark),
                )
                for s in (-1, 0, 1)
            ]
            cv.marks(lines, clip=mask, alpha=0.5, dry=0.2)
    cv.marks([(blob(at, size * 0.2, size * 0.18, rng), rgb(heart))], shadow=0.3)
    dots = [
        (
            dab(
                (at[0] + math.cos(a) * size * 0.15, at[1] + math.sin(a) * size * 0.13),
                size * 0.055,
                size * 0.055,
                0,
            ),
            mix(AMBER, INK, 0.2),
        )
        for a in np.linspace(0, 6.28, 8)[:-1]
    ]
    cv.marks(dots)


def berry(cv: Canvas, at: Point, size: float, paint: Paint, rng: Rng) -> None:
    """Paint a round berry with a dark crown and a glint."""
    mask = cv.lay(blob(at, size, size * 0.97, rng, 0.02), paint.but(form=0.95, edge=0.35))
    crown = [
        (
            ribbon([at, (at[0] + math.cos(a) * size * 0.14, at[1] + math.sin(a) * size * 0.12)], size * 0.06, 0.5),
            rgb(INK),
        )
        for a in np.linspace(0.3, 6.6, 6)[:-1]
    ]
    shifted_crown = [(np.add(ring, (size * 0.16, size * 0.2)), colour) for ring, colour in crown]
    cv.marks(shifted_crown, clip=mask, alpha=0.85)
    cv.marks(
        [(dab((at[0] - size * 0.18, at[1] - size * 0.22), size * 0.2, size * 0.11, -40, rng), rgb(CREAM))],
        alpha=0.85,
    )


def moss(
    cv: Canvas,
    ridge: Sequence[Point],
    foot: Sequence[Point],
    paint: Paint,
    rng: Rng,
    *,
    tuft: float = 15,
    density: float = 2.0,
    tips: str | Array | None = None,
) -> Mask:
    """Paint a bank of moss between its ridge and its foot, tufted all over.

    Tufts are little fans of strokes, laid from the ridge down so that the near
    ones overlap the far ones; they gather in lit cushions and dark hollows.
    """
    top, bottom = curve(ridge), curve(foot)
    shape = wobble(np.vstack([top, bottom[::-1]]), rng, tuft * 0.2, tuft * 3)
    mask = cv.lay(shape, paint.but(streak=90, rough=0.07, base=mix(paint.base, paint.dark, 0.45)))
    h, w = mask.a.shape
    depth = np.cumsum(mask.a, axis=0) / np.maximum(mask.a.sum(0, keepdims=True), 1)
    cushions = texture("cloud", mask.x * 2, mask.y * 2, w, h, seed=5)
    strokes: list[Mark] = []
    for y in np.sort(rng.uniform(0, h, int(float(mask.a.sum()) / tuft**2 * density))):
        x = rng.uniform(0, w)
        ix, iy = int(x), int(y)
        if mask.a[iy, ix] < 0.5:
            continue
        light = 0.98 - depth[iy, ix] * 0.85 + 0.16 * float(cushions[iy, ix]) + rng.normal(0, 0.1)
        tone = tufted(paint, light, tips)
        for lean in (-1, 1, -0.5, 0.5, 0):
            turn = math.radians(-90 + lean * 46 + rng.normal(0, 8))
            long = tuft * rng.uniform(0.6, 0.95)
            root = (mask.x + x, mask.y + y)
            end = (root[0] + math.cos(turn) * long, root[1] + math.sin(turn) * long)
            strokes.append((hair(root, end, tuft * 0.2, lean * 0.06), jitter(tone, rng, 0.02)))
    cv.marks(strokes, alpha=0.95)
    return mask


def tufted(paint: Paint, light: float, tips: str | Array | None) -> Array:
    """Choose a moss tuft's tone for the light on it."""
    if light < 0.5:
        return mix(paint.dark, paint.base, max(0.0, light) * 2)
    if tips is not None and light > 0.92:
        return rgb(tips)
    return mix(paint.base, paint.light, min(1.0, light * 2 - 1))


def skirt_of_moss(
    cv: Canvas, at: Point, spread: float, paint: Paint, rng: Rng, count: int = 26, tall: float = 20
) -> None:
    """Bed something in the ground with a few tufts over its foot."""
    strokes: list[Mark] = []
    for _ in range(count):
        x = at[0] + rng.uniform(-0.5, 0.5) * spread
        y = at[1] + rng.uniform(-4, 8)
        tone = tufted(paint, rng.uniform(0.25, 0.85), None)
        for lean in (-1, 1, 0):
            turn = math.radians(-90 + lean * 38 + rng.normal(0, 9))
            long = tall * rng.uniform(0.6, 1.05)
            strokes.append(
                (
                    hair((x, y), (x + math.cos(turn) * long, y + math.sin(turn) * long), tall * 0.2),
                    jitter(tone, rng, 0.02),
                )
            )
    cv.marks(strokes, shadow=0.2)


def clover(cv: Canvas, at: Point, size: float, paint: Paint, rng: Rng) -> None:
    """Paint a three-part clover leaf."""
    for turn in (-90, 30, 150):
        a = math.radians(turn + rng.uniform(-8, 8))
        out = np.array([math.cos(a), math.sin(a) * 0.85])
        across = np.array([-out[1], out[0]])
        r = size / 2
        ring = [
            (0, 0),
            out * r * 0.6 + across * r * 0.42,
            out * r + across * r * 0.3,
            out * r * 0.88,
            out * r - across * r * 0.3,
            out * r * 0.6 - across * r * 0.42,
        ]
        mask = cv.lay(curve(np.array(ring) + at, closed=True, step=3), paint.but(shadow=0.25, cast=(2, 3, 2)))
        mark = [
            np.array(at) + out * r * 0.45 + across * r * 0.3,
            np.array(at) + out * r * 0.62,
            np.array(at) + out * r * 0.45 - across * r * 0.3,
        ]
        cv.marks([(ribbon(mark, 1, 1, belly=size * 0.06), rgb(paint.light))], clip=mask, alpha=0.7, dry=0.15)


def litter(
    cv: Canvas,
    left: float,
    right: float,
    rows: Sequence[tuple[float, int, float]],
    paints: Sequence[Paint],
    rng: Rng,
    *,
    rise: float = 26,
    teeth: float = 9,
    plump: float = 0.61,
) -> None:
    """Strew leaves along the foot of a picture; each row gives y, how many and how long.

    The rows rise towards both ends, so that the whole sits like a shallow dish.
    """
    middle, half = (left + right) / 2, (right - left) / 2
    for row, (y, count, size) in enumerate(rows):
        for k in range(count):
            x = left + (right - left) * (k + 0.5 + rng.uniform(-0.3, 0.3)) / count
            a = math.radians(rng.choice([0, 180]) + rng.uniform(-30, 30))
            long = size * rng.uniform(0.8, 1.1)
            way = np.array([math.cos(a), math.sin(a) * 0.6]) * long / 2
            at = np.array([x, y - rise * ((x - middle) / half) ** 2])
            paint = paints[(k * 2 + row * 3 + int(rng.integers(0, 2))) % len(paints)]
            leaf(
                cv,
                at - way,
                at + way,
                long * plump * rng.uniform(0.9, 1.1),
                paint,
                rng,
                bend=rng.uniform(-0.35, 0.35),
                teeth=teeth,
                veins=5,
            )
