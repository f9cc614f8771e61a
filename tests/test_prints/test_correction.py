"""Corrected sheets land where they should: a simulated printer shifts, stretches and turns what the PDF says."""

import numpy as np
import pytest
from draw.reading_back import parts_of_nodes
from hypothesis import given, settings
from hypothesis import strategies as st
from kit import PLAIN, apply, pad

from padspec.base.geometry import Affine, Size
from padspec.draw.pdf import sheet_pdf
from padspec.scene.nodes import shapes
from padspec.sheet.bed import make_bed

from .printer import Printer, nearest, pages_of
from .workshops import workshop

LIMIT = 0.01
UPRIGHT, WIDE = {"width": "210 mm", "height": "297 mm"}, {"width": "297 mm", "height": "210 mm"}
PRINTERS = {
    "true": Printer((0.0, 0.0), (1.0, 1.0)),
    "shifts": Printer((0.8, -0.5), (1.0, 1.0)),
    "stretches": Printer((0.0, 0.0), (0.996, 1.0025)),
    "shifts and stretches": Printer((-1.3, 0.7), (1.01, 0.99)),
}
MARGINS = "margins: {left: 3 mm, right: 4 mm, top: 5 mm, bottom: 12 mm}"


def made(printer: Printer, size: dict[str, str]):
    studio = printer.yaml.replace("printer: {", f"printer: {{{MARGINS}, ")
    return pad(apply(PLAIN, {"sheet.size": size}), studio)


@pytest.mark.parametrize("turn", ["left", "right"])
@pytest.mark.parametrize("size", [UPRIGHT, WIDE], ids=["upright", "wide"])
@pytest.mark.parametrize("name", list(PRINTERS))
def test_every_rule_and_mark_of_a_corrected_sheet_lands_where_the_sheet_has_it(name, size, turn):
    """By pdfplumber, within 0.01 mm on the paper as it is fed."""
    printer = Printer(PRINTERS[name].shift, PRINTERS[name].stretch, turn)
    one = made(printer, size)
    rules = tuple(shape for shape in shapes(one.face.scene) if shape.cause.part in ("rule", "checkbox", "panel"))
    wanted = [part.points for slot in one.sheet.slots for part in parts_of_nodes(rules, slot.transform)]
    wanted += [part.points for part in parts_of_nodes(one.sheet.marks, Affine())]
    (page, found), *_ = pages_of(sheet_pdf(one.face.scene, one.sheet))
    printed = [printer.printed(page, part.points) for part in found]
    assert nearest([printer.fed(page, points) for points in wanted], printed) < LIMIT


@pytest.mark.parametrize("turn", ["left", "right"])
def test_without_the_correction_the_same_sheet_would_be_off(turn):
    """The simulation can fail: what is drawn for a true printer lands 0.8 mm off on one that shifts so far."""
    one = made(PRINTERS["true"], WIDE)
    printer = Printer((0.8, -0.5), (1.0, 1.0), turn)
    rules = tuple(shape for shape in shapes(one.face.scene) if shape.cause.part == "rule")
    wanted = [part.points for part in parts_of_nodes(rules[:1], one.sheet.slots[0].transform)]
    (page, found), *_ = pages_of(sheet_pdf(one.face.scene, one.sheet))
    lines = [part.points for part in found if part.commands == "ml"]
    off = nearest([printer.fed(page, w) for w in wanted], [printer.printed(page, p) for p in lines])
    assert off == pytest.approx(0.8, abs=LIMIT)


def test_a_turn_that_is_entered_wrongly_doubles_the_shift():
    studio = workshop(Printer((1.0, 0.0), (1.0, 1.0), "right").yaml)
    bed = make_bed(_wide(studio), studio.studio)
    printer = Printer((1.0, 0.0), (1.0, 1.0), "left")
    drawn = np.array([bed.correction.of(100.0, 50.0)])
    off = printer.printed((297.0, 210.0), drawn) - printer.fed((297.0, 210.0), np.array([[100.0, 50.0]]))
    assert np.abs(off).max() == pytest.approx(2.0)


@pytest.mark.parametrize("turn", ["left", "right"])
def test_the_margins_of_a_wide_page_are_those_of_the_sheet_as_it_is_fed(turn):
    """A corner of the printable area lies, on the fed sheet, where the two margins meet there."""
    studio = workshop(f"printer: {{{MARGINS}, turn: {turn}}}")
    area = make_bed(_wide(studio), studio.studio).printable
    corners = np.array([[area.x, area.y], [area.right, area.bottom]])
    fed = Printer((0, 0), (1, 1), turn).fed((297.0, 210.0), corners)
    assert sorted(fed[:, 0]) == pytest.approx([3.0, 210.0 - 4.0])
    assert sorted(fed[:, 1]) == pytest.approx([5.0, 297.0 - 12.0])


@pytest.mark.parametrize("turn", ["left", "right"])
def test_while_the_turn_is_unknown_a_wide_page_stays_printable_whichever_it_is(turn):
    studio = workshop(f"printer: {{{MARGINS}, offset: {{x: 1 mm, y: 1 mm}}}}")
    bed = make_bed(_wide(studio), studio.studio)
    area = bed.printable
    corners = np.array([[area.x, area.y], [area.right, area.bottom]])
    fed = Printer((0, 0), (1, 1), turn).fed((297.0, 210.0), corners)
    assert fed[:, 0].min() >= 3.0 - 1e-9
    assert fed[:, 0].max() <= 206.0 + 1e-9
    assert fed[:, 1].min() >= 5.0 - 1e-9
    assert fed[:, 1].max() <= 285.0 + 1e-9
    assert bed.correction == Affine()


@settings(max_examples=60, deadline=None)
@given(
    shift=st.tuples(st.floats(-20, 20), st.floats(-20, 20)),
    stretch=st.tuples(st.floats(0.99, 1.01), st.floats(0.99, 1.01)),
    turn=st.sampled_from(["left", "right"]),
    size=st.sampled_from([(210.0, 297.0), (297.0, 210.0), (431.8, 279.4), (200.0, 200.0)]),
    at=st.tuples(st.floats(0, 1), st.floats(0, 1)),
)
def test_any_place_on_any_sheet_lands_there_through_any_printer(shift, stretch, turn, size, at):
    from dataclasses import replace

    plain = workshop()
    printer = replace(plain.studio.printer, offset=shift, scale=stretch, turn=turn)
    bed = make_bed(replace(plain.wish, size=Size(*size)), replace(plain.studio, printer=printer))
    place = np.array([[at[0] * size[0], at[1] * size[1]]])
    simulated = Printer(shift, stretch, turn)
    drawn = np.array([bed.correction.of(*place[0])])
    assert simulated.printed(size, drawn) == pytest.approx(simulated.fed(size, place), abs=1e-9)


def _wide(studio):
    from dataclasses import replace

    return replace(studio.wish, size=studio.wish.size.turned())
