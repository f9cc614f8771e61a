"""How the fields of the workshop are called when a change in them is told; see words.py."""

from padspec.comparing.wording import Apart, Word, Words
from padspec.resolve.studio import (
    Cartridge,
    Cutter,
    Ink,
    Offcut,
    OtherSheet,
    Press,
    Printer,
    Stock,
    Studio,
    Tolerance,
)

_IN_A_LIST = Apart("told with the others of its list")

STUDIO_WORDS: dict[type, Words] = {
    Studio: {
        "name": Word("studio", "quoted", key="studio"),
        "sheet": Word("usual paper", "size", key="sheet.size", section="studio"),
        "printer": Word("", section="printer"),
        "cutter": Word("", section="cutter"),
        "stock": Word("", section="stock"),
        "other_sheets": Word("other paper", "list", key="other-sheets", section="stock"),
        "tolerance": Word("", section="tolerance"),
        "offcuts": Word("wanted offcuts", "list", key="offcuts", section="stock"),
        "ink": Word("", section="ink"),
        "press": Word("press", key="press", section="press"),
        "money": Word("", section="money"),
        "bench": Word("", section="workbench"),
        "overs": Word("overs", "share", key="overs.share", section="studio"),
        "test_sheets": Word("test sheets", "count", key="overs.test-sheets", section="studio"),
    },
    Printer: {
        "margins": Word("margins", "sides", key="printer.margins"),
        "offset": Word("offset", "shifts", key="printer.offset"),
        "scale": Word("scale", "factors", key="printer.scale"),
        "turn": Word("turn", key="printer.turn"),
        "placement_error": Word("placement error", "mm", key="printer.placement-error"),
        "skew_error": Word("skew error", "mm", key="printer.skew-error"),
        "least_line": Word("least line", "mm", key="printer.least-line"),
        "least_screened_line": Word("least screened line", "mm", key="printer.least-screened-line"),
        "sheet_minutes": Word("time of a sheet", "minutes", key="printer.sheet-minutes"),
    },
    Cutter: {
        "kind": Word("kind", key="cutter.kind"),
        "error": Word("error", "mm", key="cutter.error"),
        "sheets_at_once": Word("sheets at once", "count", key="cutter.sheets-at-once"),
        "clamp_height": Word("clamp height", "mm", key="cutter.clamp-height"),
        "stroke_seconds": Word("time of a stroke", "seconds", key="cutter.stroke-seconds"),
    },
    Stock: {
        "grammage": Word("grammage", "number", key="stock.grammage"),
        "caliper": Word("caliper", "mm", key="stock.caliper"),
        "tolerance": Word("tolerance of the paper", "share", key="stock.tolerance"),
        "price": Word("price of a sheet", "money", key="stock.price", none="not stated"),
        "ink_limit": Word("ink limit", "share", key="stock.ink-limit"),
    },
    OtherSheet: {"size_name": _IN_A_LIST, "size": _IN_A_LIST, "price": _IN_A_LIST},
    Tolerance: {
        "sliver": Word("sliver", "mm", key="tolerance.sliver"),
        "off_centre": Word("off centre", "mm", key="tolerance.off-centre"),
        "chance": Word("chance", "share", key="tolerance.chance"),
    },
    Offcut: {"name": _IN_A_LIST, "size": _IN_A_LIST},
    Ink: {
        "cyan": Word("cyan cartridge", "list", key="ink.cyan", none="not stated"),
        "magenta": Word("magenta cartridge", "list", key="ink.magenta", none="not stated"),
        "yellow": Word("yellow cartridge", "list", key="ink.yellow", none="not stated"),
        "black": Word("black cartridge", "list", key="ink.black", none="not stated"),
        "allowance": Word("allowance for cleaning", "share", key="ink.allowance"),
    },
    Cartridge: {"price": _IN_A_LIST, "pages": _IN_A_LIST},
    Press: {
        "place": Apart("where something stands is not what it says"),
        "profile_file": Word("profile", key="press.profile"),
        "profile": Word("content of the profile", "content", key="press.profile"),
        "intent": Word("intent", key="press.intent"),
        "black_point": Word("black point compensation", "flag", key="press.black-point"),
        "pages": Word("pages", key="press.pages"),
    },
}
