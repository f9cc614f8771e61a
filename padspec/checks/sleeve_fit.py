"""Does the pad go into its sleeve, with air to slide and not to rattle?"""

from collections.abc import Iterator

from padspec.base.findings import Finding, Remedy, Severity
from padspec.base.geometry import Size
from padspec.base.numbers import mm_text, number_text, round_up
from padspec.base.sleeve_fit import largest_pad, least_bag
from padspec.checks.check import Limits, Subject
from padspec.making.block import block_of
from padspec.making.sleeve import SleeveFit, fit_in
from padspec.resolve.design import Design
from padspec.resolve.trim import LEAST_TRIM


def sleeve_fit(subject: Subject, limits: Limits) -> Iterator[Finding]:
    """Does the pad go into its sleeve, with enough air to slide in and not so much that it rattles?

    Width ≥ w + t and length ≥ h + t ÷ 2, t being the thickness of leaves, board and magnets: geometry, and the bag
    makers' measuring rule. Error where a sleeve that the design names is smaller, warning where no sleeve of the
    studio takes the pad or the air is under the studio's sleeve-ease (3 and 6 mm), note over 15 mm (common
    practice).
    Remedy: the largest trim that slides in, or the size of sleeve that would do.
    """
    design = subject.design
    if not design.finish.wanted:
        return
    block = block_of(design)
    if design.finish.sleeve is None:
        yield _fits_none(design, block.thickness.value)
        return
    fit = fit_in(design.finish.sleeve, design, block)
    tight, ease = fit.spare, design.studio.bench.ease
    loose = limits.at(Severity.NOTE)
    if tight.width < -1e-6 or tight.height < -1e-6:
        severity = Severity.ERROR if design.finish.named else Severity.WARNING
        yield _found(severity, "does not go into", fit, design, _size(fit.least))
    elif tight.width < ease.width - 1e-6 or tight.height < ease.height - 1e-6:
        yield _found(Severity.WARNING, "has little air in", fit, design, f"{_size(ease)} of air")
    elif max(tight.width - ease.width, tight.height - ease.height) > loose.value:
        yield _loose(fit, design, loose.text)


def _fits_none(design: Design, thickness: float) -> Finding:
    least = least_bag(design.trim, thickness)
    number = len(design.studio.bench.sleeves)
    ease = design.studio.bench.ease
    wanted = _up(Size(least.width + ease.width, least.height + ease.height))
    return Finding(
        check="sleeve-fit",
        severity=Severity.WARNING,
        place=design.finish.place,
        message=f"The pad, {mm_text(thickness, 1)} thick, goes into none of the studio's {number} sleeves.",
        measured=_size(least),
        limit=", ".join(f"{one.name} {_size(one.size)}" for one in design.studio.bench.sleeves[:4]),
        remedy=Remedy(
            f"A sleeve of {_size(wanted)} would take it. For a pad without one write sleeve: none.",
            ((("sleeve",), "none"),),
        ),
    )


def _found(severity: Severity, what: str, fit: SleeveFit, design: Design, limit: str) -> Finding:
    air = f"{number_text(fit.spare.width, 1)} mm across, {number_text(fit.spare.height, 1)} mm along"
    return Finding(
        check="sleeve-fit",
        severity=severity,
        place=design.finish.place,
        message=f"The pad {what} the sleeve {fit.sleeve.name}, {_size(fit.sleeve.size)}: air {air}.",
        measured=air if severity == Severity.WARNING else _size(fit.sleeve.size),
        limit=limit,
        remedy=_smaller(fit, design),
    )


def _smaller(fit: SleeveFit, design: Design) -> Remedy:
    """The largest trim that slides in; where that is none to print on, the sleeve that this pad wants."""
    ease = design.studio.bench.ease
    largest = largest_pad(fit.sleeve.size, design.finish.thickness.whole, ease)
    trim = Size(min(largest.width, design.trim.width), min(largest.height, design.trim.height))
    if min(trim.width, trim.height) < LEAST_TRIM:
        wanted = _up(Size(fit.least.width + ease.width, fit.least.height + ease.height))
        return Remedy(f"Take a sleeve of {_size(wanted)}.")
    texts = (mm_text(trim.width, 1), mm_text(trim.height, 1))
    changes = tuple(
        (("trim", side), text)
        for side, text, now, then in (
            ("width", texts[0], design.trim.width, trim.width),
            ("height", texts[1], design.trim.height, trim.height),
        )
        if then < now
    )
    return Remedy(f"The largest leaf that slides into it is {texts[0]} wide and {texts[1]} high.", changes)


def _loose(fit: SleeveFit, design: Design, limit: str) -> Finding:
    ease = design.studio.bench.ease
    wanted = _up(Size(fit.least.width + ease.width, fit.least.height + ease.height))
    air = f"{number_text(fit.spare.width, 1)} mm across, {number_text(fit.spare.height, 1)} mm along"
    return Finding(
        check="sleeve-fit",
        severity=Severity.NOTE,
        place=design.finish.place,
        message=f"The pad lies loose in the sleeve {fit.sleeve.name}: air {air}.",
        measured=air,
        limit=f"{limit} beyond the ease of {_size(ease)}",
        remedy=Remedy(f"A sleeve of {_size(wanted)} would hold it better."),
    )


def _up(size: Size) -> Size:
    return Size(round_up(size.width, 0.5), round_up(size.height, 0.5))


def _size(size: Size) -> str:
    return f"{number_text(size.width, 1)} × {mm_text(size.height, 1)}"
