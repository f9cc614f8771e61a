"""The vocabulary of marks the Night garden pictures are painted with.

In: points placed by hand, palette colours and seeded random generators.
Out: shapes (closed outlines as arrays of points), paint laid on a `Canvas`,
and at the end a Pillow picture trimmed close to what was painted.

All lengths are pixels of the finished picture, and the moon always stands up
and to the left, so every sheet is lit the same way.
"""

from __future__ import annotations

import math
import zlib
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
from PIL import Image, ImageDraw, ImageFilter

Array = np.ndarray[Any, np.dtype[Any]]
Point = Sequence[float] | Array
Points = Sequence[Any] | Array
Shape = Array | Sequence[Array]
Field = Callable[[Array, Array], Array]
Mark = tuple[Array, Array]

MOON = np.array([-0.55, -0.835])  # unit vector pointing towards the moon
TILE = 1024
SUPER = 4  # samples each way per pixel when a shape is cut out


# --------------------------------------------------------------------------
# Colour


def rgb(colour: str | Array) -> Array:
    """Give a `#rrggbb` colour as three floats from 0 to 1."""
    if isinstance(colour, str):
        digits = colour.lstrip("#")
        return np.array([int(digits[i : i + 2], 16) / 255 for i in (0, 2, 4)])
    return np.asarray(colour, dtype=float)


def mix(first: str | Array, second: str | Array, share: float) -> Array:
    """Blend two colours; `share` is how much of the second goes in."""
    return rgb(first) * (1 - share) + rgb(second) * share


def jitter(colour: str | Array, rng: np.random.Generator, amount: float) -> Array:
    """Vary a colour slightly, mostly in lightness, as a loaded brush does."""
    shift = rng.normal(0, amount) + rng.normal(0, amount * 0.35, 3)
    return np.clip(rgb(colour) + shift, 0, 1)


# --------------------------------------------------------------------------
# Curves and outlines


def curve(points: Points, closed: bool = False, step: float = 5) -> Array:
    """Run a Catmull-Rom curve through the points."""
    knots = np.asarray(points, dtype=float)
    count = len(knots)
    if closed:
        ring = np.vstack([knots[-1], knots, knots[0], knots[1]])
        spans = count
    else:
        ring = np.vstack([2 * knots[0] - knots[1], knots, 2 * knots[-1] - knots[-2]])
        spans = count - 1
    pieces = []
    for i in range(spans):
        p0, p1, p2, p3 = ring[i : i + 4]
        steps = max(2, int(np.hypot(*(p2 - p1)) / step))
        t = np.linspace(0, 1, steps, endpoint=False)[:, None]
        pieces.append(
            0.5
            * (
                2 * p1
                + (p2 - p0) * t
                + (2 * p0 - 5 * p1 + 4 * p2 - p3) * t**2
                + (3 * p1 - p0 - 3 * p2 + p3) * t**3
            )
        )
    if not closed:
        pieces.append(knots[-1:])
    return np.vstack(pieces)


def outline(*runs: Points) -> Array:
    """Join several smooth runs into one closed outline with corners between."""
    return np.vstack([curve(run) for run in runs])


def moved(
    shape: Array,
    dx: float = 0,
    dy: float = 0,
    scale: float = 1,
    turn: float = 0,
    about: Point = (0, 0),
) -> Array:
    """Scale and turn (in degrees) about a point, then shift."""
    angle = math.radians(turn)
    spin = np.array([[math.cos(angle), math.sin(angle)], [-math.sin(angle), math.cos(angle)]])
    return (np.asarray(shape, float) - about) @ spin * scale + about + (dx, dy)


def mirrored(shape: Array, axis: float) -> Array:
    """Flip left for right about the vertical line x = `axis`."""
    out = np.array(shape, float)
    out[:, 0] = 2 * axis - out[:, 0]
    return out


def doubled(half: Points, middle: float) -> Array:
    """Draw the right half of a thing, measured from its middle, and its mirror image with it."""
    edge = curve(half)
    return np.vstack([edge, mirrored(edge, 0)[::-1]]) + np.array([middle, 0.0])


def normals(path: Array) -> Array:
    """Give the unit normal at each point of a path."""
    along = np.gradient(path, axis=0)
    length = np.maximum(np.hypot(along[:, 0], along[:, 1]), 1e-6)[:, None]
    return np.column_stack([-along[:, 1], along[:, 0]]) / length


def wobble(shape: Array, rng: np.random.Generator, amount: float = 2, wave: float = 40) -> Array:
    """Move a closed outline in and out a little, as scissors and brush do."""
    ring = np.vstack([shape, shape[:1]])
    steps = np.hypot(*np.diff(ring, axis=0).T)
    along = np.concatenate([[0], np.cumsum(steps)])[:-1]
    total = max(float(steps.sum()), 1)
    middle = max(total / wave, 2)
    shift = np.zeros(len(shape))
    for share in (0.4, 0.7, 1.0, 1.6):
        turns = max(1, round(middle * share))
        shift += np.sin(2 * np.pi * turns * along / total + rng.uniform(0, 7)) * rng.uniform(0.3, 0.7)
    return shape + normals(shape) * (shift * amount)[:, None]


def ribbon(
    points: Points,
    start: float,
    end: float = 0,
    belly: float | None = None,
    step: float = 5,
) -> Array:
    """Make a stroke along a curve whose width runs start -> (belly) -> end."""
    path = curve(points, step=step)
    t = np.linspace(0, 1, len(path))
    if belly is None:
        width = start + (end - start) * t
    else:
        width = (1 - t) ** 2 * start + 2 * t * (1 - t) * (2 * belly - (start + end) / 2) + t**2 * end
    side = normals(path) * (width / 2)[:, None]
    return np.vstack([path + side, (path - side)[::-1]])


def hair(root: Point, tip: Point, width: float, bow: float = 0) -> Array:
    """Make one short stroke, fine at both ends; `bow` bends it (a share of its length)."""
    start, end = np.asarray(root, float), np.asarray(tip, float)
    along = end - start
    across = np.array([-along[1], along[0]])
    side = across / max(float(np.hypot(*along)), 1e-6) * width / 2
    path = [start + along * t + across * bow * 4 * t * (1 - t) for t in (0.12, 0.38, 0.7)]
    swell = (0.62, 1.0, 0.66)
    left = [p + side * w for p, w in zip(path, swell, strict=True)]
    right = [p - side * w for p, w in zip(path, swell, strict=True)]
    return np.array([start, *left, end, *right[::-1]])


def dab(at: Point, length: float, width: float, turn: float, rng: np.random.Generator | None = None) -> Array:
    """Make one touch of a round brush: an egg, blunt in front, thin behind."""
    t = np.linspace(0, 2 * np.pi, 12, endpoint=False)
    egg = np.column_stack([np.cos(t) * length / 2, np.sin(t) * width / 2 * (1 + 0.3 * np.cos(t))])
    if rng is not None:
        egg *= rng.uniform(0.82, 1.18, (12, 1))
    return moved(egg, *at, turn=turn)


def blob(
    at: Point,
    across: float,
    down: float,
    rng: np.random.Generator,
    rough: float = 0.05,
    knots: int = 11,
    turn: float = 0,
) -> Array:
    """Make a rounded, hand-cut shape."""
    t = np.linspace(0, 2 * np.pi, knots, endpoint=False) + rng.uniform(-1, 1, knots) * min(0.12, rough * 3)
    reach = 1 + rng.normal(0, rough, knots)
    ring = np.column_stack([np.cos(t) * reach * across / 2, np.sin(t) * reach * down / 2])
    return moved(curve(ring, closed=True, step=4), *at, turn=turn)


# --------------------------------------------------------------------------
# Texture


@cache
def tile(kind: str, angle: int = 0) -> Array:
    """Make a repeating square of brush texture: mean 0, spread 1."""
    rng = np.random.default_rng(zlib.crc32(f"{kind}{angle}".encode()))
    fy = np.fft.fftfreq(TILE)[:, None]
    fx = np.fft.rfftfreq(TILE)[None, :]
    radius = np.hypot(fx, fy)
    turn = math.radians(angle)
    along = fx * math.cos(turn) + fy * math.sin(turn)
    across = -fx * math.sin(turn) + fy * math.cos(turn)
    if kind == "cloud":
        sieve = 1 / np.maximum(radius, 3 / TILE) ** 1.6
    elif kind == "grain":
        sieve = np.exp(-((radius * 5.5) ** 2))
    elif kind == "tooth":  # the paper's own tooth, which catches a dry brush
        sieve = np.exp(-((radius * 11) ** 2)) * radius**0.4
    else:  # "streak": bristle marks
        sieve = np.exp(-((along * 75) ** 2) - (across * 7) ** 2) * (np.abs(across) + 0.01) ** 0.3
    field = np.fft.irfft2(np.fft.rfft2(rng.standard_normal((TILE, TILE))) * sieve, (TILE, TILE))
    field = (field - field.mean()) / field.std()
    return np.clip(field, -2.4, 2.4).astype(np.float32)


def texture(kind: str, x: int, y: int, w: int, h: int, angle: float = 0, seed: int = 0) -> Array:
    """Cut a piece of texture, placed differently for each seed."""
    square = tile(kind, int(round(angle / 15) * 15) % 180)
    ys = (np.arange(y, y + h) + seed * 197) % TILE
    xs = (np.arange(x, x + w) + seed * 419) % TILE
    return square[np.ix_(ys, xs)]


def ramp(low: float, high: float, value: Array) -> Array:
    """Rise smoothly from 0 at `low` to 1 at `high`."""
    t = np.clip((value - low) / (high - low), 0, 1)
    return t * t * (3 - 2 * t)


def soften(field: Array, radius: float) -> Array:
    """Blur a field of values from 0 to 1."""
    if radius < 0.3:
        return field
    flat = Image.fromarray((np.clip(field, 0, 1) * 255 + 0.5).astype(np.uint8))
    return np.asarray(flat.filter(ImageFilter.GaussianBlur(radius)), np.float32) / 255


def shifted(field: Array, dx: float, dy: float) -> Array:
    """Move a field by whole pixels, filling with nothing."""
    dx, dy = round(dx), round(dy)
    out = np.zeros_like(field)
    h, w = field.shape
    ys, yd = (slice(0, h - dy), slice(dy, h)) if dy >= 0 else (slice(-dy, h), slice(0, h + dy))
    xs, xd = (slice(0, w - dx), slice(dx, w)) if dx >= 0 else (slice(-dx, w), slice(0, w + dx))
    if abs(dx) < w and abs(dy) < h:
        out[yd, xd] = field[ys, xs]
    return out


# --------------------------------------------------------------------------
# Paint


@dataclass(frozen=True)
class Paint:
    """How a shape is painted: three tones of one colour and the brush's manners.

    `low` and `high` say where along the light (0 away, 1 towards) the dark and
    the light tone take over; `rough` is how far the bristles break that border.
    """

    base: str | Array
    dark: str | Array
    light: str | Array
    low: float = 0.34
    high: float = 0.72
    soft: float = 0.16
    rough: float = 0.13
    streak: float = 60
    form: float = 0.55
    grain: float = 0.022
    mottle: float = 0.02
    edge: float = 0.0
    edge_width: float = 5
    rim: str | Array | None = None
    rim_width: float = 3
    rim_strength: float = 0.8
    shadow: float = 0.35
    cast: tuple[float, float, float] = (4, 7, 6)

    def but(self, **changes: Any) -> Paint:
        """Give the same paint with some manners changed."""
        return replace(self, **changes)


@dataclass
class Mask:
    """A cut-out: coverage from 0 to 1 and where its corner lies."""

    x: int
    y: int
    a: Array

    @property
    def box(self) -> tuple[slice, slice]:
        """Where the cut-out lies on the sheet."""
        h, w = self.a.shape
        return slice(self.y, self.y + h), slice(self.x, self.x + w)

    def within(self, other: Mask) -> Mask:
        """Keep only what also lies inside the other mask."""
        h, w = self.a.shape
        frame = np.zeros((h, w), np.float32)
        oh, ow = other.a.shape
        x0, x1 = max(self.x, other.x), min(self.x + w, other.x + ow)
        y0, y1 = max(self.y, other.y), min(self.y + h, other.y + oh)
        if x1 > x0 and y1 > y0:
            frame[y0 - self.y : y1 - self.y, x0 - self.x : x1 - self.x] = other.a[
                y0 - other.y : y1 - other.y, x0 - other.x : x1 - other.x
            ]
        return Mask(self.x, self.y, self.a * frame)


def relief(a: Array, reach: float) -> Array:
    """Light a flat cut-out as if it were gently domed: -1 away, +1 towards the moon."""
    factor = max(1, int(reach / 5))
    h, w = a.shape
    margin = int(reach * 2 / factor) + 2
    small = Image.fromarray((a * 255).astype(np.uint8)).resize(
        (max(1, w // factor), max(1, h // factor)), Image.Resampling.BOX
    )
    padded = np.pad(np.asarray(small, np.float32) / 255, margin)
    dome = soften(padded, reach / factor)
    dx, dy = MOON * reach / factor
    slope = shifted(dome, dx, dy) - shifted(dome, -dx, -dy)
    slope = slope[margin:-margin, margin:-margin]
    packed = Image.fromarray(((slope + 1) * 127.5).clip(0, 255).astype(np.uint8))
    back = np.asarray(packed.resize((w, h), Image.Resampling.BICUBIC), np.float32)
    return -(back / 127.5 - 1)


class Canvas:
    """A transparent sheet; colour is kept multiplied by coverage."""

    def __init__(self, width: int, height: int) -> None:
        self.width, self.height = width, height
        self.rgb = np.zeros((height, width, 3), np.float32)
        self.a = np.zeros((height, width), np.float32)
        self.laid = 0

    # ---- cutting

    def cut(self, shape: Shape, pad: int = 2) -> Mask:
        """Cut a shape (or several as one) out of the sheet; nothing but one clear pixel when off it."""
        rings = [shape] if isinstance(shape, np.ndarray) else list(shape)
        every = np.vstack(rings)
        x0 = max(0, math.floor(every[:, 0].min()) - pad)
        y0 = max(0, math.floor(every[:, 1].min()) - pad)
        x1 = min(self.width, math.ceil(every[:, 0].max()) + pad)
        y1 = min(self.height, math.ceil(every[:, 1].max()) + pad)
        if x1 <= x0 or y1 <= y0:
            return Mask(0, 0, np.zeros((1, 1), np.float32))
        sheet = Image.new("L", ((x1 - x0) * SUPER, (y1 - y0) * SUPER))
        pen = ImageDraw.Draw(sheet)
        for ring in rings:
            pen.polygon(((ring - (x0, y0)) * SUPER).ravel().tolist(), fill=255)
        a = np.asarray(sheet.reduce(SUPER), np.float32) / 255
        return Mask(x0, y0, a)

    # ---- laying paint

    def lay(
        self,
        shape: Shape | Mask,
        paint: Paint,
        *,
        clip: Mask | None = None,
        field: Field | None = None,
        alpha: float = 1,
        dry: float = 0,
    ) -> Mask:
        """Paint a shape; give back its mask, so that details can keep inside it.

        `field` replaces the light's own run over the shape (0 dark, 1 light);
        `dry` lets the paint skip over the paper's tooth.
        """
        mask = shape if isinstance(shape, Mask) else self.cut(shape)
        if clip is not None:
            mask = mask.within(clip)
        self.laid += 1
        if paint.shadow and clip is None:
            self.shade(mask, paint.shadow, paint.cast)
        colour = self._tones(mask, paint, field)
        a = mask.a * alpha
        if dry:
            h, w = a.shape
            tooth = texture("tooth", mask.x, mask.y, w, h, seed=self.laid)
            bristle = texture("streak", mask.x, mask.y, w, h, paint.streak, self.laid)
            a = a * ramp(-0.35, 0.35, tooth * 0.6 + bristle * 0.6 + 1.4 - dry * 2.2)
        self._over(mask.box, colour, a)
        return mask

    def _tones(self, mask: Mask, paint: Paint, field: Field | None) -> Array:
        """Mix the three tones over a mask's frame."""
        h, w = mask.a.shape
        ys, xs = np.mgrid[0:h, 0:w].astype(np.float32)
        reach = max(2.5, 0.2 * min(h, w))
        if field is not None:
            t = field(xs + mask.x, ys + mask.y).astype(np.float32)
        else:
            run = (xs - w / 2) * MOON[0] + (ys - h / 2) * MOON[1]
            run = run / (abs(w * MOON[0]) + abs(h * MOON[1])) * 2
            t = 0.5 + 0.42 * (1 - paint.form) * run + 0.42 * paint.form * relief(mask.a, reach)
        seed = self.laid
        cloud = texture("cloud", mask.x, mask.y, w, h, 0, seed)
        # Bristle marks come and go over the shape instead of raining evenly.
        bristle = texture("streak", mask.x, mask.y, w, h, paint.streak, seed) * (0.62 + 0.5 * cloud).clip(0.1, 1.3)
        tooth = texture("tooth", mask.x, mask.y, w, h, 0, seed)
        t = t + paint.rough * (0.55 * bristle + 0.35 * cloud + 0.35 * tooth)
        colour = np.empty((h, w, 3), np.float32)
        colour[:] = rgb(paint.base)
        for tone, share in (
            (paint.dark, ramp(paint.low + paint.soft, paint.low - paint.soft, t)),
            (paint.light, ramp(paint.high - paint.soft, paint.high + paint.soft, t)),
        ):
            colour += (rgb(tone).astype(np.float32) - colour) * share[..., None]
        if paint.edge:
            border = 1 - soften(mask.a, paint.edge_width)
            border = np.clip(border * 2 - 0.1, 0, 1) * (0.75 + 0.25 * tooth)
            colour += (rgb(paint.dark).astype(np.float32) - colour) * (border * paint.edge).clip(0, 1)[..., None]
        if paint.rim is not None:
            dx, dy = -MOON * paint.rim_width
            lit = (mask.a - shifted(mask.a, dx, dy)).clip(0, 1)
            lit *= ramp(-1.2, 0.3, bristle * 0.5 + tooth * 0.5 + 0.35) * paint.rim_strength
            colour += (rgb(paint.rim).astype(np.float32) - colour) * lit[..., None]
        grain = texture("grain", mask.x, mask.y, w, h, 0, seed)
        colour *= (1 + paint.grain * grain + paint.mottle * cloud)[..., None]
        return colour.clip(0, 1)

    def _over(self, box: tuple[slice, slice], colour: Array, a: Array) -> None:
        keep = 1 - a
        self.rgb[box] = self.rgb[box] * keep[..., None] + colour * a[..., None]
        self.a[box] = self.a[box] * keep + a

    def shade(
        self,
        mask: Mask,
        strength: float,
        cast: tuple[float, float, float],
        tint: str | Array = "#1b1736",
        clip: Mask | None = None,
    ) -> None:
        """Let a shape throw a soft shadow on what is painted under it.

        Only colour is darkened, never coverage, so nothing spills on to the
        transparent surround.
        """
        dx, dy, blur = cast
        margin = int(blur * 2.5 + max(abs(dx), abs(dy))) + 1
        h, w = mask.a.shape
        x0, y0 = max(0, mask.x - margin), max(0, mask.y - margin)
        x1, y1 = min(self.width, mask.x + w + margin), min(self.height, mask.y + h + margin)
        frame = np.zeros((y1 - y0, x1 - x0), np.float32)
        frame[mask.y - y0 : mask.y - y0 + h, mask.x - x0 : mask.x - x0 + w] = mask.a
        fall = Mask(x0, y0, shifted(soften(frame, blur), dx, dy) * strength)
        if clip is not None:
            fall = fall.within(clip)
        ink = (1 - rgb(tint)).astype(np.float32)
        self.rgb[fall.box] *= 1 - fall.a[..., None] * ink

    def marks(
        self,
        marks: Iterable[Mark],
        *,
        clip: Mask | None = None,
        dry: float = 0,
        alpha: float = 1,
        shadow: float = 0,
        cast: tuple[float, float, float] = (2, 3, 2),
        streak: float = 60,
    ) -> None:
        """Lay many small flat touches at once, each with its own colour, in order."""
        marks = list(marks)
        if not marks:
            return
        every = np.vstack([ring for ring, _ in marks])
        x0, y0 = np.maximum(np.floor(every.min(0)).astype(int) - 2, 0)
        x1 = min(self.width, int(every[:, 0].max()) + 3)
        y1 = min(self.height, int(every[:, 1].max()) + 3)
        if x1 <= x0 or y1 <= y0:
            return
        fine = 3
        sheet = Image.new("RGBA", (int(x1 - x0) * fine, int(y1 - y0) * fine))
        pen = ImageDraw.Draw(sheet)
        for ring, colour in marks:
            ink = tuple(int(v) for v in (np.clip(rgb(colour), 0, 1) * 255).round())
            pen.polygon(((ring - (x0, y0)) * fine).ravel().tolist(), fill=(*ink, 255))
        flat = np.asarray(sheet.reduce(fine), np.float32) / 255
        mask = Mask(int(x0), int(y0), flat[..., 3])
        if clip is not None:
            mask = mask.within(clip)
        self.laid += 1
        a = mask.a * alpha
        h, w = a.shape
        if shadow:
            self.shade(mask, shadow, cast, clip=clip)
        tooth = texture("tooth", mask.x, mask.y, w, h, seed=self.laid)
        if dry:
            bristle = texture("streak", mask.x, mask.y, w, h, streak, self.laid)
            a = a * ramp(-0.4, 0.4, tooth * 0.7 + bristle * 0.5 + 1.4 - dry * 2.2)
        colour = flat[..., :3] * (1 + 0.03 * tooth)[..., None]
        self._over(mask.box, colour.clip(0, 1), a)

    def speckle(
        self,
        clip: Mask,
        colour: str | Array,
        count: int,
        rng: np.random.Generator,
        size: tuple[float, float] = (1.5, 4),
        alpha: float = 0.7,
        where: Field | None = None,
    ) -> None:
        """Flick small drops of paint inside a mask."""
        h, w = clip.a.shape
        drops = []
        for _ in range(count):
            x, y = clip.x + rng.uniform(0, w), clip.y + rng.uniform(0, h)
            if where is not None and rng.uniform() > where(np.array(x), np.array(y)):
                continue
            r = rng.uniform(*size) * rng.uniform(0.6, 1)
            drops.append((dab((x, y), r * rng.uniform(1, 1.5), r, rng.uniform(0, 180)), jitter(colour, rng, 0.03)))
        self.marks(drops, clip=clip, alpha=alpha)

    def glow(
        self,
        at: Point,
        radius: float,
        colour: str | Array,
        strength: float,
        clip: Mask | None = None,
        squash: float = 1,
    ) -> None:
        """Warm what is already painted round a light, without touching the surround."""
        x0, x1 = max(0, int(at[0] - radius)), min(self.width, int(at[0] + radius))
        y0, y1 = max(0, int(at[1] - radius * squash)), min(self.height, int(at[1] + radius * squash))
        ys, xs = np.mgrid[y0:y1, x0:x1].astype(np.float32)
        away = np.hypot(xs - at[0], (ys - at[1]) / squash) / radius
        tooth = texture("tooth", x0, y0, x1 - x0, y1 - y0) * 0.05
        fall = Mask(x0, y0, (np.clip(1 - away + tooth * (away < 1), 0, 1) ** 1.7 * strength).astype(np.float32))
        if clip is not None:
            fall = fall.within(clip)
        cover = self.a[fall.box][..., None]
        old = self.rgb[fall.box]
        # Screening keeps the drawing under the light visible.
        lit = cover - (cover - old) * (1 - rgb(colour).astype(np.float32))
        self.rgb[fall.box] = old + (lit - old) * fall.a[..., None]

    def whole(self) -> Mask:
        """Give everything painted so far as a mask."""
        return Mask(0, 0, self.a.copy())

    def under(self, other: Canvas) -> None:
        """Slip another sheet beneath this one."""
        keep = (1 - self.a)[..., None]
        self.rgb += other.rgb * keep
        self.a += other.a * keep[..., 0]

    # ---- finishing

    def picture(self, border: int = 5, step: int = 5, ground: str | None = None) -> Image.Image:
        """Trim to the painting and give it as RGBA, or as RGB on a flat ground.

        Colours are rounded to `step` levels: the grain hides it, and the file
        is far smaller.
        """
        a = np.where(self.a < 0.02, 0, np.where(self.a > 0.985, 1, self.a))
        rows, cols = np.nonzero(a.max(1))[0], np.nonzero(a.max(0))[0]
        y0, y1, x0, x1 = rows[0], rows[-1] + 1, cols[0], cols[-1] + 1
        a = np.pad(a[y0:y1, x0:x1], border)
        colour = np.pad(self.rgb[y0:y1, x0:x1], ((border, border), (border, border), (0, 0)))
        colour = colour / np.maximum(np.pad(self.a[y0:y1, x0:x1], border), 1e-3)[..., None]
        colour = (np.round(colour.clip(0, 1) * 255 / step) * step).clip(0, 255)
        if ground is None:
            colour[a == 0] = 0
            full = np.dstack([colour, np.round(a * 255)])
            return Image.fromarray(full.astype(np.uint8))
        flat = colour * a[..., None] + rgb(ground) * 255 * (1 - a[..., None])
        return Image.fromarray(flat.round().astype(np.uint8))


def save(picture: Image.Image, path: Path) -> None:
    """Write a picture as a PNG made small."""
    picture.save(path, optimize=True, dpi=(450, 450))
