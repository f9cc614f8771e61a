"""Ten invented jobs, each plan looked over as a print shop would: sums, cuts carried out, positions read back."""

from math import ceil

import numpy as np
import pytest
from draw.reading_back import farthest, parts_in_pdf, parts_of_nodes

from padspec.base.geometry import Affine, Size
from padspec.draw.pdf import sheets_pdf
from padspec.jobs.as_data import plan_data
from padspec.jobs.figures import Figures
from padspec.jobs.papers import compare_papers
from padspec.jobs.plan import PrintedPage
from padspec.scene.nodes import shapes
from padspec.sheet.cutting.carry_out import carry_out
from padspec.sheet.fitting.strokes import strokes

from .invented import TEN, Invented, pads, planned

each = pytest.mark.parametrize("job", TEN, ids=[job.name for job in TEN])
#: How near positions in the PDF must be to the plan, in mm.
LIMIT = 0.01


@each
def test_the_sheets_are_what_a_person_works_out(job: Invented) -> None:
    plan = planned(job)
    assert (plan.solo_sheets, plan.sheets, len(plan.pages)) == (job.solo, job.sheets, job.pages)
    assert plan.bound <= plan.sheets <= plan.solo_sheets


@each
def test_every_pad_that_is_wanted_is_made(job: Invented) -> None:
    plan = planned(job)
    wanted = [design[3] for design in job.designs]
    assert all(made >= pads for made, pads in zip(plan.made, wanted, strict=True))
    assert [made - spare for made, spare in zip(plan.made, plan.spare, strict=True)] == wanted


@each
def test_each_run_holds_the_leaves_of_its_pads_with_overs(job: Invented) -> None:
    for page in planned(job).pages:
        leaves = [planned(job).wanted[at].design.leaves for at in page.designs]
        if page.joined:
            assert page.sheets * page.sheet.n_up >= sum(page.pads) * leaves[0] * 1.05 - 1e-9
        else:
            for pad, count in zip(page.pads, leaves, strict=True):
                assert page.sheets >= pad * ceil(count * 1.05 - 1e-9)
        assert page.sheet.copies == page.sheets + page.test_sheets


@each
def test_the_cuts_carried_out_leave_every_leaf_and_nothing_more(job: Invented) -> None:
    for page in planned(job).pages:
        leaves = carry_out(page.cuts.cuts, page.sheet).leaves
        wanted = sorted((s.trim.x, s.trim.y, s.trim.width, s.trim.height) for s in page.sheet.slots)
        assert np.allclose(sorted((b.x, b.y, b.width, b.height) for b in leaves), wanted, atol=1e-6)
        assert len(page.cuts.cuts) == strokes(page.sheet.arrangement, page.sheet.gutter) == page.sheet.cuts


@each
def test_leaves_come_out_square_and_as_large_as_their_trim(job: Invented) -> None:
    for page in planned(job).pages:
        for slot, at in zip(page.sheet.slots, page.designs, strict=True):
            trim = planned(job).wanted[at].design.trim
            size = trim.turned() if slot.turned else trim
            assert (slot.trim.width, slot.trim.height) == pytest.approx((size.width, size.height), abs=1e-9)


@each
def test_a_second_program_reads_every_rule_where_the_plan_has_its_leaf(job: Invented) -> None:
    """By pdfplumber, on the sheet as the printer will shift and stretch it back: paper = the plan's own places."""
    for page in planned(job).pages:
        found = parts_in_pdf(paper_of(job, page))
        for slot, at in zip(page.sheet.slots, page.designs, strict=True):
            scene = pads(job)[at].face.scene
            rules = tuple(shape for shape in shapes(scene) if shape.cause.part in ("rule", "panel"))
            drawn = slot.transform.then(page.sheet.correction)
            # A stretch of up to 1 % stretches the weight of a line as well, by up to 0.003 mm.
            wanted = [part._replace(weight=0.0) for part in parts_of_nodes(rules, drawn)]
            commands = {part.commands for part in wanted}
            read = [part._replace(weight=0.0) for part in found if part.commands in commands]
            assert farthest(wanted, read) < LIMIT


@each
def test_a_second_program_reads_a_crop_mark_on_every_line_that_it_marks(job: Invented) -> None:
    for page in planned(job).pages:
        found = parts_in_pdf(paper_of(job, page))
        marks = tuple(node for node in page.sheet.marks if node.cause.part == "crop-mark")
        lines = [p for p in found if p.commands == "ml"]
        assert farthest(parts_of_nodes(marks, page.sheet.correction), lines) < LIMIT
        edges = {round(v, 3) for s in page.sheet.slots for v in (s.trim.x, s.trim.right, s.trim.y, s.trim.bottom)}
        places = {
            round(x0 if abs(x0 - x1) < 1e-6 else y0, 3)
            for mark in marks
            for (x0, y0), (x1, y1) in [mark_ends(mark)]
        }
        assert places <= edges


def mark_ends(mark) -> list[tuple[float, float]]:  # type: ignore[no-untyped-def]
    return [(step.x, step.y) for step in mark.outline]


@each
def test_what_the_printer_does_is_undone(job: Invented) -> None:
    """Drawn places sent through the studio's own shift and stretch land where the plan has them."""
    plan = planned(job)
    printer = plan.wanted[0].design.studio.printer
    for page in plan.pages:
        size, correction = page.sheet.size, page.sheet.correction
        offset, scale = printer.offset, printer.scale
        if size.width > size.height:  # turned left: right on the sheet as fed is down on the page
            offset, scale = (-offset[1], offset[0]), (scale[1], scale[0])
        for slot in page.sheet.slots:
            x, y = correction.of(slot.trim.x, slot.trim.bottom)
            on_paper = (
                size.width / 2 + offset[0] + scale[0] * (x - size.width / 2),
                size.height / 2 + offset[1] + scale[1] * (y - size.height / 2),
            )
            assert on_paper == pytest.approx((slot.trim.x, slot.trim.bottom), abs=1e-9)


@each
def test_every_number_of_the_plan_adds_up_in_its_data(job: Invented) -> None:
    data = plan_data(planned(job), Figures((), (), (), (), ()))
    copies = [page["copies"] for page in data["pages"]]
    assert data["sheets"] == sum(copies)
    assert copies == [page["sheets"] + page["test_sheets"] for page in data["pages"]]
    for design in data["designs"]:
        made = sum(
            slot["pads"] for page in data["pages"] for slot in page["slots"] if slot["sku"] == design["sku"]
        )
        assert design["pads_made"] == made == design["pads_wanted"] + design["pads_spare"]
    for page in data["pages"]:
        cuts = page["cut_plan"]
        assert cuts["strokes"] == cuts["lifts"] * len(cuts["cuts"])
        assert cuts["lifts"] * cuts["sheets_a_lift"] >= cuts["sheets"] == page["sheets"]
    area = sum(page["size"]["width"] * page["size"]["height"] * page["copies"] for page in data["pages"])
    leaf = sum(d["trim"]["width"] * d["trim"]["height"] * d["leaves"] * d["pads_wanted"] for d in data["designs"])
    assert data["waste"] == pytest.approx(1 - leaf / area, abs=1e-6)


def test_paper_costs_what_its_sheets_cost() -> None:
    # 212 sheets at 0.05, to the penny.
    data = plan_data(planned(TEN[0]), Figures((), (), (), (), ()))
    assert (data["paper_cost"], data["currency"]) == ("10.60", "GBP")


def test_other_paper_is_compared_on_the_whole_job() -> None:
    """By hand, 12 pads of 90 × 190: A3 holds six, 630 ÷ 6 + 2 = 107 at 0.11; letter two, 317 at 0.045."""
    papers = {paper.size_name: paper for paper in compare_papers(planned(TEN[0]))}
    assert {name: (paper.sheets, str(paper.cost)) for name, paper in papers.items()} == {
        "A4": (212, "10.60"),
        "A3": (107, "11.77"),
        "letter": (317, "14.265"),
    }
    assert papers["A4"].waste == pytest.approx(1 - 600 * 90 * 190 / (212 * 210 * 297), abs=1e-9)


def paper_of(job: Invented, page: PrintedPage) -> bytes:
    return sheets_pdf([(page.sheet, [pads(job)[at].face.scene for at in page.designs])])


def test_the_ten_jobs_differ_in_what_matters() -> None:
    pages = [page for job in TEN for page in planned(job).pages]
    assert {page.joined for page in pages} == {True, False}
    assert {page.sheet.gutter == 0 for page in pages} == {True, False}
    assert {page.sheet.correction == Affine() for page in pages} == {True, False}
    assert {page.cuts.kind for page in pages} == {"knife", "lever", "guillotine"}
    assert Size(420, 297) in {page.sheet.size for page in pages}
