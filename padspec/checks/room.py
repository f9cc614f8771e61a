"""Room for writing and for the heading."""

from collections.abc import Iterator
from dataclasses import replace
from math import ceil, floor

from padspec.base.findings import Finding, Remedy, Severity
from padspec.base.numbers import mm_text, number_text, round_down, round_up
from padspec.checks.check import Limits, Subject
from padspec.checks.least_trim import leaf_text, least_trim
from padspec.compose.blocks.heading import fit
from padspec.compose.blocks.rows import rule_length
from padspec.compose.face import Face, Placement
from padspec.resolve.blocks.art import Art
from padspec.resolve.blocks.heading import Heading
from padspec.resolve.blocks.rows import Rows
from padspec.resolve.design import blocks

LEAST_WRITING, NO_WRITING = 30.0, 10.0
#: The narrowest ruling in common use.
NARROW = 5.0
#: Nobody writes in rows as low as this.
NO_PITCH = 3.0
#: Lines may take this share of the pitch or of the square, whichever is smaller.
MOST_LINE = 0.2
#: The schema allows no thinner line.
LEAST_WEIGHT = 0.01
_PARTS_OF_LEAST = 0.98
#: The schema allows a heading so many lines.
MOST_LINES = 4
#: No design may ask for less (schema of designs: heading.least-size, rows.checkbox).
_LEAST_SIZE, _LEAST_SQUARE = 1.0, 0.5


def row_room(subject: Subject, limits: Limits) -> Iterator[Finding]:
    """Is there room to write? Pitch, square against pitch, length of the rules, and whether a row fits at all.

    Warning for a pitch below 5 mm (the narrowest ruling in common use, the Japanese C ruling, is 5 mm; trade
    usage), error below 3 mm; error for a square larger than 80 % of the pitch, for lines heavier than a fifth of
    the pitch or the square, where not one row fits and where a label has no row; warning for rules shorter than
    30 mm, error below 10 mm (common practice, no published source). Remedy: the pitch, square or weight that
    passes, or the least leaf with room.
    """
    for block in blocks(subject.design):
        if isinstance(block, Rows):
            placed = subject.face.placement(block.id)
            if placed.rows == 0:
                yield _no_row(subject, block, placed)
            else:
                yield from _pitch(subject, block, placed, limits)
                yield from _words(subject, block, placed)
                yield from _square(subject, block, placed, limits)
                yield from _heavy(subject, block, placed)
                yield from _length(subject, block, placed)


def heading_room(subject: Subject, limits: Limits) -> Iterator[Finding]:  # noqa: ARG001 (the limit is the design's own least-size)
    """Does the heading fit? Its widest line at the least size against the width it has.

    Warning where lettering at `least-size` in as many `lines` as are allowed is still wider than its room.
    Common practice, no published source. Remedy: the lines, else the least size, that make it fit.
    """
    for block in blocks(subject.design):
        if not isinstance(block, Heading):
            continue
        placed = subject.face.placement(block.id)
        if placed.short_by <= 1e-6:
            continue
        width = placed.box.width
        yield Finding(
            check="heading-room",
            severity=Severity.WARNING,
            place=subject.design.key(block.id, "text").place,
            message=f"The heading is {mm_text(placed.short_by)} wider than its room of {mm_text(width)} "
            f"at its least size, {mm_text(placed.size)}.",
            measured=mm_text(width + placed.short_by),
            limit=mm_text(width),
            remedy=_roomier(subject, block, placed),
        )


def art_room(subject: Subject, limits: Limits) -> Iterator[Finding]:  # noqa: ARG001 (there is room or there is not)
    """Does the picture have the height it was given? The height that the other blocks leave it against its own.

    Warning where it had to be drawn smaller, which is not what was asked for (common practice, no published
    source). Remedy: the height that there is.
    """
    for block in blocks(subject.design):
        if not isinstance(block, Art):
            continue
        placed = subject.face.placement(block.id)
        if placed.short_by <= 1e-6:
            continue
        whole = block.height + 2 * block.frame
        height = round_down(whole - placed.short_by, 0.1)
        key = subject.design.key(block.id, "height")
        text = f"{number_text(height)} mm"
        yield Finding(
            check="art-room",
            severity=Severity.WARNING,
            place=key.place,
            message=f"The picture has {mm_text(height)} of height, and {mm_text(whole)} were asked for.",
            measured=mm_text(height),
            limit=mm_text(whole),
            remedy=Remedy(
                f"Set height: {text}, or give the other blocks less.", ((key.path, text),) if height >= 5 else ()
            ),
        )


def _roomier(subject: Subject, block: Heading, placed: Placement) -> Remedy:
    """More lines where they make it fit, else a smaller least size, else fewer words; each one tried."""
    width = placed.box.width
    for lines in range(block.lines + 1, MOST_LINES + 1):
        if fit(replace(block, lines=lines), width).too_wide_by <= 1e-6:
            key = subject.design.key(block.id, "lines")
            return Remedy(f"Set lines: {lines}.", ((key.path, str(lines)),))
    size = round_down(placed.size * width / (width + placed.short_by) * _PARTS_OF_LEAST, 0.1)
    if size >= _LEAST_SIZE and fit(replace(block, least_size=size), width).too_wide_by <= 1e-6:
        key = subject.design.key(block.id, "least-size")
        return Remedy(f"Set least-size: {number_text(size)} mm.", ((key.path, f"{number_text(size)} mm"),))
    words = max(floor(len(block.text) * width / (width + placed.short_by) * 0.9), 1)
    return Remedy(f"Use a heading of no more than about {words} characters, or set it in a narrower font.")


def _no_row(subject: Subject, block: Rows, placed: Placement) -> Finding:
    key = subject.design.key(block.id, "pitch")
    return Finding(
        check="row-room",
        severity=Severity.ERROR,
        place=key.place,
        message=f"Not one row of {mm_text(block.pitch)} fits a height of {mm_text(max(placed.box.height, 0))}"
        f"{_which(subject, block)}.",
        measured=mm_text(max(placed.box.height, 0)),
        limit=mm_text(block.pitch),
        remedy=Remedy(_more_height(subject, block)),
    )


def _more_height(subject: Subject, block: Rows) -> str:
    """The least leaf that has room for a row, tried."""
    pitch = min(block.pitch, NARROW)
    trim = least_trim(
        subject.design,
        lambda face: face.placement(block.id).rows > 0 and face.placement(block.id).pitch >= pitch - 1e-9,
    )
    if trim is not None:
        lower = ", or make the picture lower" if any(isinstance(b, Art) for b in blocks(subject.design)) else ""
        return f"A leaf of {leaf_text(trim)} has room for one{lower}."
    if not block.grow and not block.count:
        return "Give the rows grow: 1 in the layout, so that they take what is left, or a count."
    return "Set a smaller pitch, or let the panel's inset, pad and corner be smaller."


def _pitch(subject: Subject, block: Rows, placed: Placement, limits: Limits) -> Iterator[Finding]:
    level = limits.at(Severity.WARNING)
    if placed.pitch >= level.value - 1e-9:
        return
    if block.count:
        key = subject.design.key(block.id, "count")
        count = floor(placed.box.height / level.value + 1e-9)
        leaf = _on_a_leaf(subject, block, level.value)
        remedy = Remedy(f"Rule {count} rows instead of {block.count}{leaf}.", ((key.path, str(count)),))
        if block.labels and block.labels.texts:
            # Fewer rows would leave words out.
            named = max(count // block.labels.every, 1)
            remedy = Remedy(f"Name {named} labels instead of {len(block.labels.texts)}{leaf}.")
    else:
        key = subject.design.key(block.id, "pitch")
        pitch = round_up(level.value, 0.1)
        count = floor(placed.box.height / pitch + 1e-9)
        enough = f"{number_text(pitch)} mm"
        remedy = Remedy(f"Set pitch: {enough}.", ((key.path, enough),))
    if count < 1:
        lack = mm_text(level.value - max(placed.box.height, 0))
        remedy = Remedy(f"The rows need {lack} more height{_on_a_leaf(subject, block, level.value)}.")
    hopeless = placed.pitch < NO_PITCH - 1e-9
    yield Finding(
        check="row-room",
        severity=Severity.ERROR if hopeless else level.severity,
        place=key.place,
        message=f"A pitch of {mm_text(placed.pitch)} is narrow for handwriting{_which(subject, block)}.",
        measured=mm_text(placed.pitch),
        limit=mm_text(NO_PITCH) if hopeless else level.text,
        remedy=remedy,
    )


def _on_a_leaf(subject: Subject, block: Rows, pitch: float) -> str:
    """The least leaf on which the rows have this pitch, as the end of a sentence; empty where there is none."""
    trim = least_trim(subject.design, lambda face: face.placement(block.id).pitch >= pitch - 1e-9)
    return f", or make the leaf {leaf_text(trim)}" if trim else ""


def _words(subject: Subject, block: Rows, placed: Placement) -> Iterator[Finding]:
    """Words at the front of rows for which there is no row."""
    if block.labels is None:
        return
    shown, wanted = ceil(placed.rows / block.labels.every), len(block.labels.texts)
    if wanted <= shown:
        return
    yield Finding(
        check="row-room",
        severity=Severity.ERROR,
        place=subject.design.key(block.id, "labels").place,
        message=f"{wanted} labels have {placed.rows} rows: {wanted - shown} would not be printed"
        f"{_which(subject, block)}.",
        measured=f"{shown} printed",
        limit=str(wanted),
        remedy=Remedy(f"Leave count out, or set it to {wanted * block.labels.every}; or name {shown} labels."),
    )


def _square(subject: Subject, block: Rows, placed: Placement, limits: Limits) -> Iterator[Finding]:
    level = limits.at(Severity.ERROR)
    if block.squares is None or block.squares.size <= level.value * placed.pitch + 1e-9:
        return
    key = subject.design.key(block.id, "checkbox")
    side = round_down(level.value * placed.pitch, 0.1)
    enough = f"{number_text(side)} mm" if side >= _LEAST_SQUARE else "none"
    yield Finding(
        check="row-room",
        severity=level.severity,
        place=key.place,
        message=f"Squares of {mm_text(block.squares.size)} crowd a pitch of {mm_text(placed.pitch)}.",
        measured=f"{number_text(block.squares.size / placed.pitch * 100, 0)} % of the pitch",
        limit=level.text,
        remedy=Remedy(f"Set checkbox: {enough}.", ((key.path, enough),)),
    )


def _heavy(subject: Subject, block: Rows, placed: Placement) -> Iterator[Finding]:
    """Lines so heavy that rows close up or squares fill in."""
    room = min(placed.pitch, block.squares.size if block.squares else placed.pitch)
    most = MOST_LINE * room
    if block.weight <= most + 1e-9:
        return
    key = subject.design.key(block.id, "weight")
    lighter = round_down(most, 0.01)
    enough = f"{number_text(lighter)} mm"
    what = "a square" if block.squares and block.squares.size <= placed.pitch else "a pitch"
    yield Finding(
        check="row-room",
        severity=Severity.ERROR,
        place=key.place,
        message=f"Lines of {mm_text(block.weight)} fill {what} of {mm_text(room)}.",
        measured=f"{number_text(block.weight / room * 100, 0)} %",
        limit=f"{number_text(MOST_LINE * 100, 0)} %",
        remedy=Remedy(f"Draw them {enough} or lighter.", ((key.path, enough),))
        if lighter >= LEAST_WEIGHT
        else Remedy("Give the rows more height, or rule fewer of them."),
    )


def _length(subject: Subject, block: Rows, placed: Placement) -> Iterator[Finding]:
    writing = rule_length(block, placed.box, placed.rows)
    aside = subject.design.trim.width - writing
    if block.line == "none" or writing >= LEAST_WRITING - 1e-9:
        return
    yield Finding(
        check="row-room",
        severity=Severity.ERROR if writing < NO_WRITING - 1e-9 else Severity.WARNING,
        place=subject.design.key(block.id, "checkbox").place,
        message=f"Only {mm_text(max(writing, 0))} of each row are left to write on{_which(subject, block)}.",
        measured=mm_text(max(writing, 0)),
        limit=mm_text(NO_WRITING if writing < NO_WRITING - 1e-9 else LEAST_WRITING),
        remedy=Remedy(
            f"Of the leaf's {mm_text(subject.design.trim.width)}, {mm_text(aside)} go to insets, pads, "
            f"what stands beside, squares and their gaps; {mm_text(LEAST_WRITING)} are to be left"
            f"{_long_enough(subject, block)}."
        ),
    )


def _long_enough(subject: Subject, block: Rows) -> str:
    """The least leaf whose rules are long enough, as the end of a sentence; empty where there is none."""

    def fits(face: Face) -> bool:
        placed = face.placement(block.id)
        return rule_length(block, placed.box, placed.rows) >= LEAST_WRITING - 1e-9

    trim = least_trim(subject.design, fits)
    return f", as on a leaf of {leaf_text(trim)}" if trim else ""


def _which(subject: Subject, block: Rows) -> str:
    """Which rows are meant, as the end of a sentence, where a face has several kinds of them."""
    called = {other.called for other in blocks(subject.design) if isinstance(other, Rows)}
    return f" in {block.called}" if len(called) > 1 else ""
