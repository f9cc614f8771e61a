"""The picture: is it sharp enough, and was its background taken away as asked?"""

from collections.abc import Iterator
from math import ceil

from padspec.base.findings import Finding, Remedy, Severity
from padspec.base.numbers import mm_text, number_text, round_down
from padspec.checks.check import Limits, Subject
from padspec.resolve.blocks.art import Art
from padspec.resolve.design import blocks

#: A picture smaller than this is no remedy for too few pixels.
LEAST_HEIGHT = 10.0


def art_resolution(subject: Subject, limits: Limits) -> Iterator[Finding]:
    """Is the picture sharp enough? Pixels an inch of the visible picture at its placed size.

    Warning below 300, error below 150: common practice of prepress handbooks (300 is twice the 150 lines an inch
    of a fine screen). Drawings in SVG are made to measure and always pass. Remedy: the height at which the
    pixels at hand suffice, and the size in pixels that the placed size needs.
    """
    for block in _arts(subject):
        if block.ppi is None:
            continue
        level = limits.missed_below(block.ppi)
        if level is None:
            continue
        target = limits.mildest.value
        key = subject.design.key(block.id, "height")
        needed = (ceil(block.width / 25.4 * target), ceil(block.height / 25.4 * target))
        height = round_down(block.source[1] * 25.4 / target + 2 * block.frame, 0.1)
        bigger = f"use a picture of at least {needed[0]} × {needed[1]} pixels"
        smaller = block.fills == "block" and height >= LEAST_HEIGHT
        text = f"Place it {number_text(height)} mm high or {bigger}." if smaller else f"{bigger}."
        yield Finding(
            check="art-resolution",
            severity=level.severity,
            place=key.place,
            message=f"{block.file} has {block.source[0]} × {block.source[1]} visible pixels for "
            f"{mm_text(block.width, 1)} × {mm_text(block.height, 1)}: {number_text(block.ppi, 0)} ppi.",
            measured=f"{number_text(block.ppi, 1)} ppi",
            limit=level.text,
            remedy=Remedy(
                text[0].upper() + text[1:],
                ((key.path, f"{number_text(height)} mm"),) if smaller else (),
            ),
        )


def art_cutout(subject: Subject, limits: Limits) -> Iterator[Finding]:  # noqa: ARG001 (what counts as even is fixed in the art stage)
    """Was the background of the picture taken away? How even its border was, and how much of it went.

    `auto` uses the picture's transparency if it has any, takes away an even background, and else leaves the
    picture alone with a note; `even` asks for it, and an uneven border is an error. A picture that fades into its
    background is cut out softly; where more than a quarter of its edge fades too faintly or too roughly to be
    measured, it is left alone with a note (with `even` it is cut all the same). An outline with a gap of more
    than 0.6 % of the longer side holds nothing: a warning if more than half of what it encloses goes with the
    background. Common practice, no published source. Remedy: `cutout: none`, or a picture with a transparent or
    plain background.
    """
    for block in _arts(subject):
        cut = block.cutout
        if cut.wish == "none":
            continue
        if cut.doubt:
            yield _doubtful(subject, block)
        elif cut.method == "none":
            yield _uneven(subject, block)


def _uneven(subject: Subject, block: Art) -> Finding:
    cut = block.cutout
    key = subject.design.key(block.id, "cutout")
    done = "it cannot be cut out" if cut.wish == "even" else "it was left as it is"
    return Finding(
        check="art-cutout",
        severity=Severity.ERROR if cut.wish == "even" else Severity.NOTE,
        place=key.place,
        message=f"The border of {block.file} is not one even colour, so {done}.",
        measured=f"border unlike its own middle colour by {number_text(cut.border_spread, 3)}",
        limit=number_text(cut.border_limit, 3),
        remedy=Remedy(
            "Say cutout: none to keep the background, or save the picture with a transparent one.",
            ((key.path, "none"),),
        ),
    )


def _doubtful(subject: Subject, block: Art) -> Finding:
    """A picture too faint at its fading edge, or a drawing whose outline does not hold."""
    cut = block.cutout
    key = subject.design.key(block.id, "cutout")
    share = f"{number_text(100 * cut.doubt_share, 0)} %"
    left = cut.method == "none"
    if cut.doubt == "soft-edge":
        severity = Severity.NOTE
        done = "it was left as it is" if left else "the cut may show"
        message = f"{block.file} fades into its background without a clear end, so {done}."
        measured = f"{share} of the edge fades over more than {cut.doubt_reach} pixels"
        limit = "25 %"
        text = "Say cutout: none to keep the background, or save the picture with a transparent one."
    else:
        severity = Severity.WARNING
        done = "so it was left as it is" if left else "and what it encloses was taken away too"
        message = f"The outline of {block.file} has gaps wider than {cut.doubt_reach} pixels, {done}."
        measured = f"{share} of what the outline encloses {'would go' if left else 'went'} with the background"
        limit = "50 %"
        text = "Say cutout: none to keep it all, or close the gaps in the outline."
    return Finding(
        "art-cutout", severity, key.place, message, measured, limit, Remedy(text, ((key.path, "none"),))
    )


def _arts(subject: Subject) -> Iterator[Art]:
    return (block for block in blocks(subject.design) if isinstance(block, Art))
