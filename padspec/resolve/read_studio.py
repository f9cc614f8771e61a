"""studio.yaml into the typed workshop, the schema's defaults beneath it."""

from typing import cast

from padspec.base.errors import UnitError
from padspec.base.geometry import Sides
from padspec.base.grammage import parse_grammage
from padspec.base.numbers import mm_text
from padspec.reading.defaults import defaults
from padspec.reading.tree import Mapping
from padspec.resolve.price import price_of
from padspec.resolve.read_money import read_money
from padspec.resolve.read_workbench import read_workbench
from padspec.resolve.settings import Settings, Troubles, merge
from padspec.resolve.studio import (
    INKS,
    Cartridge,
    Cutter,
    CutterKind,
    Ink,
    Intent,
    Offcut,
    OtherSheet,
    Press,
    Printer,
    Stock,
    Studio,
    Tolerance,
    Turn,
)
from padspec.resolve.workshop import size_of, written_size
from padspec.workspace import Workspace, joined

#: What each tool takes at once and how long a stroke lasts, where the maker says `usual`: common practice, no
#: published source. A guillotine goes by its clamp.
_USUAL_SHEETS = {"knife": 2, "lever": 10, "guillotine": 1}
_USUAL_SECONDS = {"knife": 30, "lever": 15, "guillotine": 25}


def read_studio(root: Mapping, workspace: Workspace, troubles: Troubles) -> Studio:
    """The workshop from studio.yaml over the schema's defaults."""
    studio = Settings(merge(defaults("studio"), root), troubles)
    overs = studio.section("overs")
    return Studio(
        name=studio.text("studio"),
        sheet=written_size(studio.section("sheet"))[1],
        printer=_printer(studio.section("printer")),
        cutter=_cutter(studio.section("cutter")),
        stock=_stock(studio.section("stock")),
        other_sheets=tuple(_other_sheet(item) for item in studio.sections("other-sheets")),
        tolerance=_tolerance(studio.section("tolerance")),
        offcuts=tuple(Offcut(item.text("name"), size_of(item)) for item in studio.sections("offcuts")),
        ink=_ink(studio.section("ink")),
        press=_press(studio.section("press"), workspace) if root.get("press") is not None else None,
        money=read_money(studio.section("money")),
        bench=read_workbench(studio),
        overs=overs.share("share"),
        test_sheets=overs.integer("test-sheets"),
    )


def _printer(printer: Settings) -> Printer:
    margins, offset, scale = (printer.section(key) for key in ("margins", "offset", "scale"))
    return Printer(
        margins=Sides(*(margins.length(side) for side in ("left", "top", "right", "bottom"))),
        offset=(offset.length("x"), offset.length("y")),
        scale=(scale.share("x"), scale.share("y")),
        turn=cast(Turn, printer.text("turn")),
        placement_error=printer.length("placement-error"),
        skew_error=printer.length("skew-error"),
        least_line=printer.length("least-line"),
        least_screened_line=printer.length("least-screened-line"),
        sheet_minutes=printer.number("sheet-minutes"),
    )


def _cutter(cutter: Settings) -> Cutter:
    kind = cast(CutterKind, cutter.text("kind"))
    return Cutter(
        kind=kind,
        error=cutter.length("error"),
        sheets_at_once=_or_usual(cutter, "sheets-at-once", _USUAL_SHEETS[kind]),
        clamp_height=cutter.length("clamp-height"),
        stroke_seconds=_or_usual(cutter, "stroke-seconds", _USUAL_SECONDS[kind]),
    )


def _or_usual(settings: Settings, key: str, usual: int) -> int:
    return usual if settings.text(key) == "usual" else settings.integer(key)


def _stock(stock: Settings) -> Stock:
    return Stock(
        grammage=_grammage(stock),
        caliper=_caliper(stock),
        tolerance=stock.share("tolerance"),
        price=price_of(stock),
        ink_limit=stock.share("ink-limit"),
    )


def _grammage(stock: Settings) -> float:
    try:
        return parse_grammage(stock.text("grammage"))
    except UnitError as error:
        stock.troubles.add(stock.place("grammage"), error.message, error.mend)
        return 100.0


def _caliper(stock: Settings) -> float:
    """As measured, or grammage × bulk ÷ 1000 (ISO 534)."""
    if stock.text("bulk") == "unknown":
        return stock.length("caliper")
    caliper = _grammage(stock) * stock.number("bulk") / 1000
    if stock.place("caliper").line:
        written = mm_text(stock.length("caliper"), 3)
        message = f"Here are a caliper of {written} and a bulk, which makes {mm_text(caliper, 3)}."
        stock.troubles.add(
            stock.place("bulk"), message, "Keep the caliper if you measured it; take the other out."
        )
    return caliper


def _other_sheet(sheet: Settings) -> OtherSheet:
    name, size = written_size(sheet)
    return OtherSheet(name, size, price_of(sheet))


def _tolerance(tolerance: Settings) -> Tolerance:
    return Tolerance(
        sliver=tolerance.length("sliver"),
        off_centre=tolerance.length("off-centre"),
        chance=tolerance.share("chance"),
    )


def _ink(ink: Settings) -> Ink:
    cyan, magenta, yellow, black = (_cartridge(ink, name) for name in INKS)
    return Ink(cyan, magenta, yellow, black, ink.share("allowance"))


def _cartridge(ink: Settings, name: str) -> Cartridge | None:
    if not ink.has(name):
        return None
    cartridge = ink.section(name)
    return Cartridge(cartridge.amount("price"), cartridge.integer("pages"))


def _press(press: Settings, workspace: Workspace) -> Press | None:
    place, name = press.place("profile"), press.text("profile")
    try:
        path = joined(place.file, name)
    except ValueError:
        press.troubles.add(place, f"{name} leads outside the project folder.", "Copy the profile into profiles/.")
        return None
    if not workspace.is_file(path):
        press.troubles.add(place, f"There is no profile {path}.", f"Paths start at the folder of {place.file}.")
        return None
    return Press(
        place=place,
        profile_file=path,
        profile=workspace.read(path),
        intent=cast(Intent, press.text("intent")),
        black_point=press.flag("black-point"),
        pages="sheet" if press.text("pages") == "sheet" else "face",
    )
