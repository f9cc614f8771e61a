"""Work that is sent out: how much ink lies in one place, and which colours the press cannot print."""

from collections.abc import Iterator

from padspec.base.colour import Colour
from padspec.base.findings import Finding, Remedy, Severity
from padspec.base.mixing import from_lch, lch
from padspec.base.numbers import number_text
from padspec.checks.check import Limits, Subject
from padspec.draw.press.separations import face_cover
from padspec.press.gamut import FlatMiss, flat_misses, miss_of, picture_misses
from padspec.press.of_design import separator_of
from padspec.press.separate import Separator
from padspec.resolve.blocks.art import Art
from padspec.resolve.blocks.rows import Rows
from padspec.resolve.design import Design, blocks
from padspec.resolve.key import Key

#: A picture may hold this share of pixels that print otherwise before it is told.
PICTURE_SHARE = 0.05
USUAL_LIMIT = 2.6


def ink_cover(subject: Subject, limits: Limits) -> Iterator[Finding]:
    """Does the paper take the ink? Total area coverage on the converted page, over squares of 1 mm, inks rendered
    one by one through the press's profile.

    Warning above the stock's limit (260 % by default; common practice is 240 % to 280 % for uncoated paper, 300 %
    to 340 % for coated) or above the maker's own. Only where the studio has a press. Remedy: what to ask
    the press, since the profile decides how dark colours are made up.
    """
    design = subject.design
    separator = separator_of(design)
    if separator is None:
        return
    level = limits.at(Severity.WARNING)
    limit = design.studio.stock.ink_limit if level.usual is None else level.value
    cover = face_cover(subject.face.scene, separator)
    if cover.most <= limit + 1e-9:
        return
    x, y = (number_text(at, 1) for at in cover.at)
    yield Finding(
        check="ink-cover",
        severity=Severity.WARNING,
        place=design.place,
        message=f"{_percent(cover.most)} of ink lie {x} mm from the left and {y} mm from the head of the face, "
        f"and the paper takes {_percent(limit)}: it may smear, set off or curl.",
        measured=_percent(cover.most),
        limit=_percent(limit),
        remedy=Remedy(
            f"Ask the press for a profile that holds {_percent(limit)}, or lighten what is darkest there; where "
            f"the paper takes more, say so: stock: {{ink-limit: {_percent(cover.most)}}}."
        ),
    )


def gamut(subject: Subject, limits: Limits) -> Iterator[Finding]:
    """Can the press print the colours? CIEDE2000 between each plain colour and what its inks print by the profile,
    black-point compensation allowed for; for pictures the share of pixels that are off.

    Warning above 5 (common practice: a difference anyone sees side by side), for a picture where over 5 % of it is
    off by more. Only where the studio has a press. Remedy: the colour of the same hue and lightness, less strong,
    that prints true.
    """
    design, scene = subject.design, subject.face.scene
    separator = separator_of(design)
    if separator is None:
        return
    level = limits.at(Severity.WARNING)
    for miss in flat_misses(scene, separator):
        if miss.delta_e > level.value + 1e-9:
            yield _flat(miss, design, separator, level.value, level.text)
    for picture in picture_misses(scene, separator, level.value):
        if picture.share_above > PICTURE_SHARE:
            yield Finding(
                check="gamut",
                severity=Severity.WARNING,
                place=_picture_key(design).place,
                message=f"{_percent(picture.share_above)} of the picture {picture.name} print off by more than "
                f"{level.text}, {picture.colour.hex} by {number_text(picture.delta_e, 1)}.",
                measured=_percent(picture.share_above),
                limit=f"{_percent(PICTURE_SHARE)} over {level.text}",
                remedy=Remedy("Look at press.png, which shows the face as the press prints it."),
            )


def _flat(miss: FlatMiss, design: Design, separator: Separator, limit: float, limit_text: str) -> Finding:
    key = _key(miss, design)
    printable = _printable(miss, separator, limit)
    remedy = Remedy("Look at press.png, which shows the face as the press prints it.")
    if printable is not None:
        remedy = Remedy(f'Set {".".join(key.path)}: "{printable.hex}".', ((key.path, printable.hex),))
    return Finding(
        check="gamut",
        severity=Severity.WARNING,
        place=key.place,
        message=f"The press cannot print {miss.colour.hex} of the {miss.layer}: it comes out "
        f"{number_text(miss.delta_e, 1)} off (CIEDE2000).",
        measured=number_text(miss.delta_e, 1),
        limit=limit_text,
        remedy=remedy,
    )


def _printable(miss: FlatMiss, separator: Separator, limit: float) -> Colour | None:
    """The strongest colour of the same lightness and hue that the press prints within the limit."""
    lightness, chroma, hue = lch(miss.colour)
    for share in range(95, -1, -5):
        colour = from_lch(lightness, chroma * share / 100, hue)
        if miss_of(colour, miss.layer, separator) <= limit:
            return colour
    return None


def _key(miss: FlatMiss, design: Design) -> Key:
    """The setting that a colour comes from."""
    if miss.layer == "ground":
        return design.key("ground", "colour" if miss.colour == design.ground.colour else "pattern-colour")
    block = next((one for one in blocks(design) if one.id == miss.block), None)
    if isinstance(block, Rows) and miss.colour != block.colour:
        return design.key(miss.block, "checkbox-colour")
    return design.key(miss.block, "frame-colour" if isinstance(block, Art) else "colour")


def _picture_key(design: Design) -> Key:
    art = next((block.id for block in blocks(design) if isinstance(block, Art)), "art")
    return design.key(art, "file")


def _percent(share: float) -> str:
    return f"{number_text(share * 100, 0)} %"
