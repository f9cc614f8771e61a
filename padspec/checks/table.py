"""Every check, one line each, in the order they are explained; and running them all."""

from padspec.base.findings import Finding, Severity, in_order
from padspec.checks.art import art_cutout, art_resolution
from padspec.checks.block_room import block_room
from padspec.checks.butted import CUT_VISIBILITY, MISCUT_SHOWS
from padspec.checks.check import Check, Subject, Usual, limits_for
from padspec.checks.colour_vision import colour_vision
from padspec.checks.contrast import checkbox_contrast, harsh_rules, lettering_contrast, rule_contrast
from padspec.checks.glyphs import missing_glyph
from padspec.checks.line_weight import MM_PER_PT, line_weight
from padspec.checks.magnet_hold import magnet_hold
from padspec.checks.page_turn import page_turn
from padspec.checks.press import USUAL_LIMIT, gamut, ink_cover
from padspec.checks.room import NARROW, art_room, heading_room, row_room
from padspec.checks.safe_margin import safe_margin
from padspec.checks.sheet import USUAL_STACK, bleed_room, mark_room
from padspec.checks.sheet_fit import sheet_fit
from padspec.checks.sleeve_fit import sleeve_fit
from padspec.checks.under import look_under
from padspec.compose.face import Face
from padspec.resolve.design import Design
from padspec.sheet.sheet import Sheet

_ERROR, _WARNING, _NOTE = Severity.ERROR, Severity.WARNING, Severity.NOTE

CHECKS: tuple[Check, ...] = (
    Check("rule-contrast", (Usual(_ERROR, 1.5, "ratio"), Usual(_WARNING, 1.8, "ratio")), rule_contrast),
    Check("checkbox-contrast", (Usual(_WARNING, 3.0, "ratio"),), checkbox_contrast),
    Check("colour-vision", (Usual(_WARNING, 1.5, "ratio"),), colour_vision),
    Check("harsh-rules", (Usual(_NOTE, 10.0, "ratio"),), harsh_rules),
    Check("lettering-contrast", (Usual(_WARNING, 3.0, "ratio"),), lettering_contrast),
    Check(
        "line-weight",
        (Usual(_ERROR, 0.25 * MM_PER_PT, "mm"), Usual(_WARNING, 0.75 * MM_PER_PT, "mm")),
        line_weight,
    ),
    Check("art-resolution", (Usual(_ERROR, 150.0, "ppi"), Usual(_WARNING, 300.0, "ppi")), art_resolution),
    Check("art-cutout", (), art_cutout),
    Check("safe-margin", (Usual(_WARNING, 3.0, "mm"),), safe_margin),
    Check("row-room", (Usual(_ERROR, 0.8, "share"), Usual(_WARNING, NARROW, "mm")), row_room),
    Check("heading-room", (), heading_room),
    Check("block-room", (), block_room),
    Check("art-room", (), art_room),
    Check("missing-glyph", (), missing_glyph, may_be_allowed=False),
    Check("sheet-fit", (), sheet_fit, may_be_allowed=False),
    Check("bleed-room", (Usual(_WARNING, USUAL_STACK, "mm"),), bleed_room),
    Check("mark-room", (), mark_room),
    Check("page-turn", (), page_turn),
    Check("sleeve-fit", (Usual(_NOTE, 15.0, "mm"),), sleeve_fit),
    Check("magnet-hold", (), magnet_hold),
    CUT_VISIBILITY,
    MISCUT_SHOWS,
    Check("ink-cover", (Usual(_WARNING, USUAL_LIMIT, "cover"),), ink_cover),
    Check("gamut", (Usual(_WARNING, 5.0, "difference"),), gamut),
)


def run_checks(design: Design, face: Face, sheet: Sheet | None) -> tuple[Finding, ...]:
    """Every finding about a design, allowed ones marked, in order of place.

    Raises ProblemsError for a limit that a check does not have.
    """
    subject = Subject(design, face, sheet, look_under(face))
    found: list[Finding] = []
    for check in CHECKS:
        limits = limits_for(check, design.limits)
        found += (_weighed(finding, check, design) for finding in check.run(subject, limits))
    # What repeats on a face is told once.
    return in_order(tuple(dict.fromkeys(found)))


def _weighed(finding: Finding, check: Check, design: Design) -> Finding:
    reasons = [allowance.reason for allowance in design.allowances if allowance.check == check.name]
    return finding.allow(reasons[-1]) if reasons and check.may_be_allowed else finding
