"""Blocks that repeat: a copy for each title, in the order asked for, each with its own name and a known place."""

from itertools import pairwise

import pytest
from kit import disc, folder, pad, problems

from padspec.base.findings import Finding
from padspec.base.geometry import Box
from padspec.pipeline import Pad, make
from padspec.resolve.blocks.block import Block
from padspec.resolve.blocks.columns import Columns
from padspec.resolve.blocks.heading import Heading
from padspec.resolve.blocks.panel import Panel
from padspec.resolve.blocks.rows import Rows
from padspec.resolve.blocks.stack import Stack
from padspec.resolve.design import blocks

DAYS = ["Mo", "Tu", "We", "Th", "Fr", "Sa", "Su"]
DESIGN = "layout: parts\npad: Parts\ntrim: {width: 148 mm, height: 210 mm}\n"
LAYOUT = """layout: parts
about: A part for each title.
face:
  - panel:
      id: panel
      grow: 1
      holds:
        - repeat:
            id: parts
            grow: 1
            SETTINGS
            holds:
              - label: {id: title}
              - rows: {id: rows, grow: 1, checkbox: none, pitch: 6 mm}
"""
NESTED = """layout: parts
about: Rooms, and in each the same corners.
face:
  - repeat:
      id: rooms
      grow: 1
      inset: 7 mm
      titles: [Kitchen, Hall]
      holds:
        - label: {id: room}
        - repeat:
            id: corners
            grow: 1
            columns: 2
            INNER
            holds:
              - label: {id: corner}
              - rows: {id: rows, grow: 1}
"""


def made(design: str = "", layout: str = LAYOUT, **settings: str) -> Pad:
    written = [f"{key.replace('_', '-')}: {value}" for key, value in settings.items()]
    text = layout.replace("SETTINGS", "\n            ".join(written))
    return pad(DESIGN + design, files={"layouts/parts.yaml": text.encode()})


def of(some: Pad, kind: type[Block]) -> list[Block]:
    return [block for block in blocks(some.design) if isinstance(block, kind)]


def titles(some: Pad) -> list[str]:
    return [block.text for block in of(some, Heading) if isinstance(block, Heading)]


def places(some: Pad) -> dict[str, Box]:
    """Where the title of each part stands on the face."""
    return {
        block.text: some.face.placement(block.id).box for block in of(some, Heading) if isinstance(block, Heading)
    }


def test_there_is_a_copy_for_each_title_in_their_order() -> None:
    some = made(titles=f"[{', '.join(DAYS)}]")
    assert titles(some) == DAYS
    assert len(of(some, Rows)) == 7


def test_titles_may_be_in_any_letters() -> None:
    names = ["Δευτέρα", "вторник", "mercredi"]
    assert titles(made(titles=f"[{', '.join(names)}]")) == names


def test_without_titles_there_are_so_many_copies_as_times_says() -> None:
    some = made(times="4")
    assert len(of(some, Rows)) == 4
    assert len(titles(some)) == 4
    assert len(set(titles(some))) == 1


def test_a_week_may_begin_on_its_last_day() -> None:
    some = made(titles=f"[{', '.join(DAYS)}]", first="Su")
    assert titles(some) == ["Su", *DAYS[:6]]


def test_a_design_says_which_title_comes_first() -> None:
    some = made("blocks: {parts: {first: We}}\n", titles=f"[{', '.join(DAYS)}]")
    assert titles(some) == ["We", "Th", "Fr", "Sa", "Su", "Mo", "Tu"]


def test_a_design_gives_the_titles_of_its_own_language() -> None:
    some = made("blocks: {parts: {titles: [lun, mar]}}\n", titles=f"[{', '.join(DAYS)}]")
    assert titles(some) == ["lun", "mar"]


def test_a_first_that_is_no_title_is_told_with_its_place_and_the_likely_one() -> None:
    text = LAYOUT.replace("SETTINGS", f"titles: [{', '.join(DAYS)}]")
    (told,) = problems(DESIGN + "blocks:\n  parts:\n    first: Suu\n", files={"layouts/parts.yaml": text.encode()})
    assert told.startswith("x.pad.yaml:6:12")
    assert "Suu is none of the titles" in told
    assert "Su" in told.partition("titles")[2]


def test_across_fills_line_by_line() -> None:
    """Mo Tu / We Th / Fr Sa / Su."""
    found = places(made(titles=f"[{', '.join(DAYS)}]", columns="2"))
    assert found["Mo"].y == pytest.approx(found["Tu"].y)
    assert found["Mo"].x < found["Tu"].x
    assert found["We"].y > found["Mo"].y
    assert found["We"].x == pytest.approx(found["Mo"].x)


def test_down_fills_column_by_column() -> None:
    """Mo to Th in the first column, Fr to Su in the second."""
    found = places(made(titles=f"[{', '.join(DAYS)}]", columns="2", order="down"))
    assert {found[day].x for day in DAYS[:4]} == {found["Mo"].x}
    assert {found[day].x for day in DAYS[4:]} == {found["Fr"].x}
    assert found["Fr"].y == pytest.approx(found["Mo"].y)
    assert found["Su"].y == pytest.approx(found["We"].y)


@pytest.mark.parametrize("order", ["across", "down"])
@pytest.mark.parametrize("count", [1, 2, 3, 5, 7, 8])
@pytest.mark.parametrize("columns", [1, 2, 3])
def test_copies_are_all_of_one_size_and_a_place_left_over_stays_empty(
    order: str, count: int, columns: int
) -> None:
    some = made(titles=f"[{', '.join(f'T{n}' for n in range(count))}]", columns=str(columns), order=order)
    boxes = [some.face.placement(f"parts/{n + 1}").box for n in range(count)]
    for box in boxes:
        assert (box.width, box.height) == pytest.approx((boxes[0].width, boxes[0].height))


def test_there_are_no_more_columns_than_titles() -> None:
    some = made(titles="[A, B]", columns="5")
    (held,) = of(some, Columns)
    assert isinstance(held, Columns)
    assert len(held.holds) == 2


def test_no_two_blocks_have_the_same_name() -> None:
    for some in (made(titles="[A, B, C]", columns="2"), made(layout=NESTED.replace("INNER", "titles: [x, y, z]"))):
        names = [block.id for block in blocks(some.design)]
        assert len(names) == len(set(names))
        assert sorted(one.block for one in some.face.placements if one.block != "ground") == sorted(names)


def test_a_copy_is_called_as_its_layout_calls_it() -> None:
    some = made(titles="[A, B]")
    assert {block.called for block in of(some, Rows)} == {"rows"}


def test_the_distance_between_columns_and_between_lines_is_kept() -> None:
    some = made(titles="[A, B, C, D]", columns="2", gap="9 mm", row_gap="4 mm")
    box = {n: some.face.placement(f"parts/{n}").box for n in (1, 2, 3, 4)}
    assert box[2].x - box[1].right == pytest.approx(9)
    assert box[3].y - box[1].bottom == pytest.approx(4)


@pytest.mark.parametrize("columns", [1, 2])
def test_an_inset_that_is_written_is_kept_once(columns: int) -> None:
    """Round the whole, not again round each column and each copy."""
    some = made(titles="[A, B, C, D]", columns=str(columns), inset="7 mm")
    panel = some.face.placement("panel").box
    last = some.face.placement("parts/4").box
    first = some.face.placement("parts/1").box
    assert first.x - panel.x == pytest.approx(7 + panel_pad(some))
    assert panel.right - last.right == pytest.approx(7 + panel_pad(some))


def panel_pad(some: Pad) -> float:
    (panel,) = of(some, Panel)
    assert isinstance(panel, Panel)
    return panel.pad


def test_repeats_inside_repeats_have_each_their_own_titles() -> None:
    some = made(layout=NESTED.replace("INNER", "titles: [x, y, z]"))
    assert titles(some) == ["Kitchen", "x", "z", "y", "Hall", "x", "z", "y"]  # by columns: x and z, then y
    assert len(of(some, Rows)) == 6


def test_a_repeat_without_titles_inside_another_takes_the_outer_title() -> None:
    some = made(layout=NESTED.replace("INNER", "times: 2"))
    assert titles(some) == ["Kitchen"] * 3 + ["Hall"] * 3


def test_a_repeat_is_columns_or_a_stack_once_it_is_resolved() -> None:
    assert {type(block) for block in blocks(made(titles="[A, B]").design)} >= {Stack}
    assert {type(block) for block in blocks(made(titles="[A, B]", columns="2").design)} >= {Columns, Stack}


def test_a_picture_may_repeat() -> None:
    layout = LAYOUT.replace("SETTINGS", "times: 3").replace("label: {id: title}", "art: {id: art, height: 20 mm}")
    text = DESIGN + "art: {file: a.png}\n"
    some = pad(text, files={"layouts/parts.yaml": layout.encode(), "a.png": disc()})
    ys = [some.face.placement(f"parts/{n}/art").box.y for n in (1, 2, 3)]
    assert all(below > above + 20 for above, below in pairwise(ys))


# Where findings point


def narrow(some: Pad) -> list[Finding]:
    return [finding for finding in some.findings if finding.check == "row-room"]


def test_a_finding_about_a_copy_points_at_the_line_of_the_design() -> None:
    some = made("blocks:\n  rows:\n    pitch: 3 mm\n", titles="[A, B]")
    finding, *others = narrow(some)
    assert (finding.place.file, finding.place.line) == ("x.pad.yaml", 6)
    assert others == []  # what repeats is told once


def test_a_finding_about_a_copy_points_at_the_line_of_the_makers_own_layout() -> None:
    layout = LAYOUT.replace("SETTINGS", "titles: [A, B]").replace("pitch: 6 mm", "pitch: 3 mm")
    finding, *_ = narrow(made(layout=layout))
    assert finding.place.file == "layouts/parts.yaml"
    assert "pitch: 3 mm" in layout.splitlines()[finding.place.line - 1]


def test_what_a_finding_offers_sets_all_copies() -> None:
    finding, *_ = narrow(made("rows: {pitch: 3 mm}\n", titles="[A, B]"))
    assert finding.remedy is not None
    assert finding.remedy.changes == ((("rows", "pitch"), "5 mm"),)


def test_a_setting_for_a_block_that_repeats_reaches_each_copy() -> None:
    some = made("blocks: {rows: {pitch: 7.5 mm}}\n", titles="[A, B, C]")
    assert [block.pitch for block in of(some, Rows) if isinstance(block, Rows)] == [7.5, 7.5, 7.5]


def test_a_name_that_the_layout_lacks_is_told_with_the_likely_one() -> None:
    text = LAYOUT.replace("SETTINGS", "titles: [A, B]")
    (told,) = problems(DESIGN + "blocks: {part: {first: B}}\n", files={"layouts/parts.yaml": text.encode()})
    assert "no block part" in told
    assert "parts" in told


def test_the_weeks_of_a_shop_are_made_the_same_way_twice() -> None:
    text = DESIGN.replace("parts", "week")
    assert make("x.pad.yaml", folder(text)).face == make("x.pad.yaml", folder(text)).face
