"""What a colour strip shows: for each property a ladder of designs, each rung with the line that gives it."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

import numpy as np

from padspec.base.colour import Colour, oklab_from_srgb, srgb_from_oklab
from padspec.base.mixing import from_lch, lch
from padspec.base.numbers import EPSILON, number_text
from padspec.resolve.design import Design
from padspec.resolve.roles import PAPER_HUE
from padspec.test_prints.spec_lines import Reach, Reaches, SpecLine, first_panel, first_rows
from padspec.test_prints.steps import written_weight
from padspec.test_prints.variants import with_ground, with_panel, with_rule, with_weight

AS_IT_IS = "as it is"
RUNGS = 5
#: Steps of OKLab lightness in per cent: less for large areas, where less is seen.
_GROUND_STEP, _PANEL_STEP, _RULE_STEP = 3, 2, 6
#: Shares of the way from a white panel to the ground, in per cent.
_TO_GROUND = (0, 10, 20, 35, 50)
#: Chroma in per cent more or less; where sRGB ends early, the lower ones make up for it.
_CHROMA = (-100, -75, -50, -25, 0, 25, 50)
#: Two colours nearer than this in OKLab look like one.
_ALIKE = 0.004
#: A ground with less chroma than this is varied by steps, not by shares of it; with less than that it has no hue.
_PALE, _GREY, _CHROMA_STEPS = 0.03, 0.004, (0.01, 0.005)
_WHITE = 0.985
_WEIGHT_STEP, _LEAST_WEIGHT = 0.05, 0.05


@dataclass(frozen=True, slots=True)
class Rung:
    """One design of a ladder. `line` gives it; at the design's own place, it is what the design has already."""

    step: str
    line: SpecLine
    design: Design

    @property
    def is_own(self) -> bool:
        """Whether this is the design as it is."""
        return self.step == AS_IT_IS


@dataclass(frozen=True, slots=True)
class Ladder:
    """The rungs of one property, in steps from less to more."""

    name: str
    rungs: tuple[Rung, ...]


def ladders(design: Design, found: Reaches) -> tuple[Ladder, ...]:
    """Every ladder of a design that has more than one rung."""
    every = (
        _ground_lightness(design),
        _ground_chroma(design),
        _panel(design, found.panel),
        _rule_lightness(design, found.rule),
        _rule_weight(design, found.weight),
    )
    return tuple(ladder for ladder in every if len(ladder.rungs) > 1)


def _ground_lightness(design: Design) -> Ladder:
    steps = _lightnesses(design.ground.colour, _GROUND_STEP)
    return Ladder("Ground, lightness", _coloured(design, ("ground", "colour"), steps, with_ground))


def _ground_chroma(design: Design) -> Ladder:
    own = design.ground.colour
    fitting = (_coloured(design, ("ground", "colour"), steps, with_ground) for steps in _chromas(design, own))
    tried = [rungs[-RUNGS:] for rungs in fitting]
    return Ladder("Ground, chroma", max(tried, key=len))


def _chromas(design: Design, own: Colour) -> list[list[tuple[str, Colour]]]:
    """Rungs of chroma around a colour: shares of what it has, or where that is little, steps of one size; then
    smaller ones, for a colour that has little room in sRGB. The first of most rungs is the one to take.
    """
    lightness, chroma, hue = lch(own)

    def rung(step: str, change: float) -> tuple[str, Colour]:
        return step, from_lch(lightness, chroma + change, hue)

    if chroma >= _PALE:
        return [[rung(_more_or_less(n, "chroma"), chroma * n / 100) if n else (AS_IT_IS, own) for n in _CHROMA]]
    hue = hue if chroma >= _GREY else _borrowed_hue(design)
    found = []
    for size in _CHROMA_STEPS:
        below = min(RUNGS // 2, int(chroma / size + EPSILON))
        changes = [n * size for n in range(-below, RUNGS - below)]
        found.append([rung(_signed(change), change) if change else (AS_IT_IS, own) for change in changes])
    return found


def _borrowed_hue(design: Design) -> float:
    """The hue that a grey ground turns to: that of the rules, else that of warm paper."""
    rows = first_rows(design)
    _, chroma, hue = lch(rows.colour) if rows else (0.0, 0.0, 0.0)
    return hue if chroma >= _GREY else PAPER_HUE


def _panel(design: Design, reach: Reach | None) -> Ladder:
    panel = first_panel(design)
    if panel is None or reach is None:
        return Ladder("Panel", ())

    def varied(some: Design, colour: Colour) -> Design:
        return with_panel(some, reach, colour)

    if lch(panel.colour)[0] < _WHITE:
        steps = _lightnesses(panel.colour, _PANEL_STEP)
        return Ladder("Panel, lightness", _coloured(design, reach.path, steps, varied))
    steps = [
        (f"{n} % to the ground" if n else AS_IT_IS, _between(panel.colour, design.ground.colour, n / 100))
        for n in _TO_GROUND
    ]
    return Ladder("Panel, towards the ground", _coloured(design, reach.path, steps, varied))


def _rule_lightness(design: Design, reach: Reach | None) -> Ladder:
    rows = first_rows(design)
    if rows is None or reach is None:
        return Ladder("Rules", ())

    def varied(some: Design, colour: Colour) -> Design:
        return with_rule(some, reach, colour)

    steps = _lightnesses(rows.colour, _RULE_STEP)
    return Ladder("Rules, lightness", _coloured(design, reach.path, steps, varied))


def _rule_weight(design: Design, reach: Reach | None) -> Ladder:
    rows = first_rows(design)
    if rows is None or reach is None:
        return Ladder("Rules, weight", ())
    below = min(RUNGS // 2, int((rows.weight - _LEAST_WEIGHT) / _WEIGHT_STEP + EPSILON))
    rungs = []
    for n in range(-max(below, 0), RUNGS - max(below, 0)):
        weight = round(rows.weight + n * _WEIGHT_STEP, 3) if n else rows.weight
        step = f"{number_text(abs(n) * _WEIGHT_STEP)} mm {'lighter' if n < 0 else 'heavier'}" if n else AS_IT_IS
        line = SpecLine(reach.path, written_weight(weight))
        rungs.append(Rung(step, line, with_weight(design, reach, weight) if n else design))
    return Ladder("Rules, weight", tuple(rungs))


def _lightnesses(colour: Colour, step: int) -> list[tuple[str, Colour]]:
    """Rungs around a colour, moved down or up where white or black would cut them off."""
    lightness, chroma, hue = lch(colour)
    room_up = int((1 - lightness) * 100 / step + EPSILON)
    room_down = int(lightness * 100 / step + EPSILON)
    above = min(RUNGS // 2, room_up) if room_down >= RUNGS // 2 else RUNGS - 1 - room_down
    first = above - RUNGS + 1
    return [
        (_lighter_or_darker(n * step), from_lch(lightness + n * step / 100, chroma, hue) if n else colour)
        for n in range(first, above + 1)
    ]


def _lighter_or_darker(percent: int) -> str:
    if percent == 0:
        return AS_IT_IS
    return f"{abs(percent)} % {'darker' if percent < 0 else 'lighter'}"


def _signed(step: float) -> str:
    return f"chroma {'+' if step > 0 else '−'} {number_text(abs(step))}"


def _more_or_less(percent: int, what: str) -> str:
    if percent == 0:
        return AS_IT_IS
    return f"{abs(percent)} % {'less' if percent < 0 else 'more'} {what}"


def _coloured(
    design: Design,
    path: tuple[str, ...],
    steps: Iterable[tuple[str, Colour]],
    varied: Callable[[Design, Colour], Design],
) -> tuple[Rung, ...]:
    """A rung for each colour that looks like none before: near the limits of sRGB steps come to the same."""
    ordered = list(steps)
    own = next(colour for step, colour in ordered if step == AS_IT_IS)
    rungs: list[Rung] = []
    kept = [own]
    for step, colour in ordered:
        if step == AS_IT_IS:
            rungs.append(Rung(step, SpecLine(path, colour.hex), design))
        elif all(_apart(colour, other) > _ALIKE for other in kept):
            kept.append(colour)
            rungs.append(Rung(step, SpecLine(path, colour.hex), varied(design, colour)))
    return tuple(rungs)


def _apart(one: Colour, other: Colour) -> float:
    return float(np.round(np.linalg.norm(oklab_from_srgb(one.unit) - oklab_from_srgb(other.unit)), 9))


def _between(one: Colour, other: Colour, share: float) -> Colour:
    """A colour so far on the straight way from one to another in OKLab."""
    a, b = oklab_from_srgb(one.unit), oklab_from_srgb(other.unit)
    return Colour.from_unit(srgb_from_oklab(a + (b - a) * share)) if share else one
