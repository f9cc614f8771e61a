"""Where labels lie: the nth label by the figures of its sheet, inside it, beside each other, and from where a used
one goes on."""

import pdfplumber
import pytest
from hypothesis import given
from hypothesis import strategies as st

from padspec.base.geometry import Box, Size
from padspec.resolve.tag_sheets import TagSheet
from padspec.tags.sheets import seated
from tags.project import MM, Project

_mm = st.integers(10, 80)


@given(st.integers(1, 12), st.integers(1, 8), _mm, _mm, st.integers(0, 9), st.integers(0, 9), st.integers(0, 20))
def test_labels_never_overlap_and_stay_on_the_sheet(
    rows: int, columns: int, width: int, height: int, gap_x: int, gap_y: int, edge: int
) -> None:
    across, down = width + gap_x, height + gap_y
    size = Size(2 * edge + (columns - 1) * across + width, 2 * edge + (rows - 1) * down + height)
    sheet = TagSheet("s", "s", size, rows, columns, Size(width, height), edge, edge, across, down)
    boxes = [sheet.box(n) for n in range(sheet.count)]
    paper = Box(0, 0, size.width, size.height)
    assert all(paper.covers(box) for box in boxes)
    assert not any(one.overlaps(other) for n, one in enumerate(boxes) for other in boxes[n + 1 :])


@given(st.lists(st.integers(0, 9), max_size=6), st.integers(1, 20), st.data())
def test_every_copy_gets_one_free_label_in_order(copies: list[int], count: int, data: st.DataObject) -> None:
    start = data.draw(st.integers(0, count - 1))
    seats = seated(copies, count, start)
    assert [seat.tag for seat in seats] == [n for n, number in enumerate(copies) for _ in range(number)]
    at = [seat.page * count + seat.place for seat in seats]
    assert at == list(range(start, start + sum(copies)))
    assert all(0 <= seat.place < count for seat in seats)


def test_the_nth_label_lies_where_a_ruler_finds_it(project: Project) -> None:
    # Label 5 of 3 across is the second of the second row: 7 + 66 mm from the left, 12.5 + 34 mm from the top.
    project.pad("M", 'barcode: "5012345678900"')
    made = project.made("--from", "5", "--outline")
    assert made.data["places"] == [{"page": 1, "row": 2, "column": 2, "sku": "M"}]
    with pdfplumber.open(made.pdf) as document:
        page = document.pages[0]
        plate = next(r for r in page.rects if r["fill"] and tuple(r["non_stroking_color"]) == (1, 1, 1))
        outlines = [c for c in page.curves if c["stroke"] and c["width"] * MM == pytest.approx(64, abs=0.01)]
    assert plate["x0"] * MM >= 73
    assert plate["x1"] * MM <= 73 + 64
    assert plate["top"] * MM >= 46.5
    assert plate["bottom"] * MM <= 46.5 + 34
    corners = sorted((round(c["x0"] * MM, 2), round(c["top"] * MM, 2)) for c in outlines)
    wanted = [(7 + 66 * column, 12.5 + 34 * row) for column in range(3) for row in range(8)]
    assert corners == [pytest.approx(corner, abs=0.011) for corner in wanted]


def test_a_second_sheet_begins_at_its_first_label(project: Project) -> None:
    places = project.pad("M").made("--pads", "3", "--from", "23").data["places"]
    assert [(p["page"], p["row"], p["column"]) for p in places] == [(1, 8, 2), (1, 8, 3), (2, 1, 1)]


def test_tags_come_in_the_order_of_the_job(project: Project) -> None:
    project.pad("A").pad("B")
    (project.folder / "saturday.job.yaml").write_text("job: Saturday\npads: {B: 2, A: 1}\n", "utf-8")
    made = project.made("saturday.job.yaml")
    assert sorted(place["sku"] for place in made.data["places"]) == ["A", "B", "B"]
    assert [place["sku"] for place in made.data["places"]] == [
        tag["sku"] for tag in made.data["tags"] for _ in range(tag["labels"])
    ]


@pytest.mark.parametrize(("size", "count"), [("A4", 9), ("letter", 9), ("A5", 4), ("A3", 20)])
def test_without_a_studio_card_tags_are_laid_out_to_be_cut(project: Project, size: str, count: int) -> None:
    (project.folder / "studio.yaml").write_text(f"sheet: {{size: {size}}}\n", "utf-8")
    made = project.pad("M").made(sheet="cards")
    sheet = made.data["sheet"]
    assert (sheet["rows"] * sheet["columns"], sheet["cut"]) == (count, True)
    # Every cut is marked at both ends, outside the block of tags.
    right = sheet["left"] + sheet["columns"] * sheet["label_width"]
    foot = sheet["top"] + sheet["rows"] * sheet["label_height"]
    with pdfplumber.open(made.pdf) as document:
        lines = [line for line in document.pages[0].lines if line["height"] * MM >= 2]
    outside = [line for line in lines if line["bottom"] * MM < sheet["top"] or line["top"] * MM > foot]
    wanted = [sheet["left"] + n * sheet["label_width"] for n in range(sheet["columns"] + 1)]
    for x in wanted:
        assert sum(abs(line["x0"] * MM - x) < 0.01 for line in outside) == 2
    assert all(sheet["left"] - 0.01 < line["x0"] * MM < right + 0.01 for line in outside)


def test_it_works_with_no_studio_at_all(project: Project) -> None:
    (project.folder / "studio.yaml").unlink()
    assert project.pad("M").made(sheet="cards").data["labels"] == 1


def test_what_the_printer_does_not_reach_is_told_and_left_free(project: Project) -> None:
    project.studio("{name: stickers, rows: 10, columns: 3, width: 70 mm, height: 29.7 mm}")
    made = project.pad("M", 'barcode: "5012345678900"').made("--pads", "30")
    told = "reach into the printer's margins, 4.2 mm at the left, 4.2 mm at the top, 4.2 mm at the right"
    assert told in made.notes
    with pdfplumber.open(made.pdf) as document:
        page = document.pages[0]
        drawn = [*page.rects, *page.curves]
    assert min(d["x0"] for d in drawn) * MM >= 4.2 - 0.01
    assert max(d["x1"] for d in drawn) * MM <= 210 - 4.2 + 0.01
    assert min(d["top"] for d in drawn) * MM >= 4.2 - 0.01


def test_nothing_is_printed_in_a_hole(project: Project) -> None:
    hole = "hole: {across: 6 mm, distance: 8 mm}"
    project.studio(f"{{name: stickers, rows: 3, columns: 3, width: 55 mm, height: 90 mm, {hole}}}")
    made = project.pad("M", 'barcode: "5012345678900"').made()
    sheet = made.data["sheet"]
    with pdfplumber.open(made.pdf) as document:
        page = document.pages[0]
        drawn = [d for d in (*page.rects, *page.curves) if d["top"] * MM < sheet["top"] + 50]
    assert min(d["top"] for d in drawn) * MM >= sheet["top"] + 8 + 3
