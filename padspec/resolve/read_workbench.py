"""The workbench of studio.yaml, typed; what cannot be is told."""

from itertools import pairwise

from padspec.base.geometry import Size
from padspec.base.numbers import mm_text, number_text
from padspec.resolve.price import price_of
from padspec.resolve.settings import Settings
from padspec.resolve.workbench import (
    Adhesive,
    Board,
    Clamp,
    Extra,
    Magnets,
    Sleeve,
    Times,
    Workbench,
)

#: Grams a square centimetre that flexible magnet of a thickness in mm holds: from memory, no source found.
USUAL_PULL = ((0.5, 24.0), (0.76, 40.0), (1.5, 65.0))
_POINT = 0.0254


def read_workbench(studio: Settings) -> Workbench:
    """Everything under the keys of the workbench, defaults beneath; faults go to the studio's troubles."""
    ease = studio.section("sleeve-ease")
    return Workbench(
        glued_across=studio.section("glue-edge").text("edge") in ("head", "foot"),
        board=_board(studio.section("board")),
        adhesive=_adhesive(studio.section("adhesive")),
        clamp=_clamp(studio.section("clamp")),
        magnets=_magnets(studio.section("magnets")),
        sleeves=_sleeves(studio),
        ease=Size(ease.length("width"), ease.length("length")),
        sleeve_seconds=ease.number("seconds"),
        extras=_extras(studio),
        times=_times(studio.section("times")),
    )


def _board(board: Settings) -> Board:
    thickness = board.length("thickness")
    written = board.text("thickness").strip()
    if written.endswith("pt"):
        # Board is sold by another point than type: 22 pt would be 7.8 mm.
        points = written.removesuffix("pt").strip()
        board.troubles.add(
            board.place("thickness"),
            f"{written} is {mm_text(thickness)} here: a point of type is 1/72 in, a point of board 0.001 in.",
            f"For {points} points of board write {_board_points(points)}; else write millimetres.",
        )
    sheet = board.section("sheet")
    return Board(
        thickness=thickness,
        density=board.number("density"),
        tolerance=board.share("tolerance"),
        sheet=Size(sheet.length("width"), sheet.length("height")),
        price=price_of(board),
        stroke_seconds=board.integer("stroke-seconds"),
    )


def _board_points(points: str) -> str:
    try:
        return f"{number_text(float(points) * _POINT)} mm"
    except ValueError:
        return "its thickness in mm"


def _adhesive(adhesive: Settings) -> Adhesive:
    return Adhesive(
        coats=adhesive.integer("coats"),
        rate=adhesive.number("rate"),
        dry_minutes=adhesive.number("dry-minutes"),
        set_minutes=adhesive.number("set-minutes"),
        pad_seconds=adhesive.number("pad-seconds"),
        price=price_of(adhesive),
    )


def _clamp(clamp: Settings) -> Clamp:
    return Clamp(clamp.length("height"), clamp.integer("count"), clamp.number("load-minutes"))


def _magnets(magnets: Settings) -> Magnets:
    thickness, measured = magnets.length("thickness"), magnets.text("pull") != "usual"
    return Magnets(
        count=magnets.integer("count"),
        size=Size(magnets.length("width"), magnets.length("height")),
        thickness=thickness,
        density=magnets.number("density"),
        pull=magnets.number("pull") if measured else usual_pull(thickness),
        measured=measured,
        slide=magnets.share("slide"),
        safety=magnets.number("safety"),
        seconds=magnets.number("seconds"),
        price=price_of(magnets),
    )


def usual_pull(thickness: float) -> float:
    """What flexible magnet of a thickness in mm usually holds, in g/cm²: along the figures, straight between them,
    and in proportion outside, never more than the last.

    >>> usual_pull(0.76), usual_pull(0.25), round(usual_pull(1.13), 1), usual_pull(3)
    (40.0, 12.0, 52.5, 65.0)
    """
    (low, least), *_ = USUAL_PULL
    if thickness <= low:
        return least * thickness / low
    for (start, first), (end, second) in pairwise(USUAL_PULL):
        if thickness <= end:
            return first + (second - first) * (thickness - start) / (end - start)
    return USUAL_PULL[-1][1]


def _sleeves(studio: Settings) -> tuple[Sleeve, ...]:
    found: dict[str, Sleeve] = {}
    for item in studio.sections("sleeves"):
        name = item.text("name")
        if name in ("none", "auto") or name in found:
            why = "is one already" if name in found else "is a word that designs use for something else"
            item.troubles.add(item.place("name"), f"A sleeve named {name} {why}.", "Give it another name.")
        stated = item.has("film") and item.text("film") != "unknown"
        film = item.length("film") if stated else None
        found[name] = Sleeve(name, Size(item.length("width"), item.length("length")), film, price_of(item))
    return tuple(found.values())


def _extras(studio: Settings) -> tuple[Extra, ...]:
    return tuple(
        Extra(item.text("name"), price_of(item), item.number("seconds") if item.has("seconds") else 10.0)
        for item in studio.sections("extras")
    )


def _times(times: Settings) -> Times:
    return Times(
        page_minutes=times.number("page-minutes"),
        ink_dry_minutes=times.number("ink-dry-minutes"),
        count_seconds=times.number("count-seconds"),
        slit_seconds=times.number("slit-seconds"),
        trim_strokes=times.integer("trim-strokes"),
        check_seconds=times.number("check-seconds"),
    )
