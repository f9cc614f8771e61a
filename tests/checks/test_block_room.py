"""Room for grids and marks: told where it lacks, with the leaf that has it, and not told where there is enough."""

import re
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from kit import pad

from padspec.base.findings import Finding
from padspec.base.geometry import Size
from padspec.compose.compose import compose
from padspec.compose.face import Face
from padspec.pipeline import Pad
from padspec.resolve.design import Design

LAYOUT = """layout: own
about: One block that has to fit.
face:
  - panel:
      id: panel
      grow: 1
      inset: 6 mm
      pad: 5 mm
      corner: 0 mm
      holds:
        - BLOCK
"""


def made(block: str, width: float = 90, height: float = 190, design: str = "") -> Pad:
    text = f"layout: own\npad: Own\ntrim: {{width: {width} mm, height: {height} mm}}\n{design}"
    return pad(text, files={"layouts/own.yaml": LAYOUT.replace("BLOCK", block).encode()})


def found(some: Pad) -> list[Finding]:
    return [finding for finding in some.findings if finding.check == "block-room"]


def leaf(finding: Finding) -> Size:
    """The leaf that the remedy names."""
    assert finding.remedy is not None
    said = re.search(r"leaf of ([\d.]+) mm × ([\d.]+) mm", finding.remedy.text)
    assert said, finding.remedy.text
    return Size(float(said[1]), float(said[2]))


def on(design: Design, trim: Size) -> Face:
    return compose(replace(design, trim=trim))


def test_marks_that_fit_are_not_told() -> None:
    assert found(made("marks: {id: days, grow: 1, count: 31}")) == []


def test_a_grid_that_fits_is_not_told() -> None:
    assert found(made("grid: {id: squares, grow: 1}")) == []


def test_marks_without_room_are_an_error_that_names_them_and_what_they_lack() -> None:
    """On 60 × 60 mm a panel holds 38 × 38 mm. Six circles of 5 mm with gaps of 1 mm go across, so 48 need eight
    lines: 8 × 5 + 7 × 1 = 47 mm.
    """
    (finding,) = found(made("marks: {id: days, grow: 1, count: 48}", 60, 60))
    assert finding.severity.word == "error"
    assert "days" in finding.message
    assert (finding.measured, finding.limit) == ("38 mm", "47 mm")


def test_the_leaf_that_is_offered_holds_the_marks_and_one_a_millimetre_less_does_not() -> None:
    """On 63 × 63 mm seven go across, and 48 need seven lines: 7 × 5 + 6 × 1 = 41 mm, which is what there is."""
    some = made("marks: {id: days, grow: 1, count: 48}", 60, 60)
    trim = leaf(found(some)[0])
    assert trim == Size(63, 63)
    assert on(some.design, trim).placement("days").rows == 7
    assert on(some.design, Size(62, 62)).placement("days").rows == 0


@settings(deadline=None, max_examples=12)
@given(st.integers(20, 400), st.integers(60, 110), st.integers(60, 110))
def test_marks_are_told_exactly_where_they_are_left_out(count: int, width: int, height: int) -> None:
    some = made(f"marks: {{id: days, grow: 1, count: {count}, numbered: false}}", width, height)
    drawn = any(part.cause.block == "days" for layer in some.face.scene.layers for part in layer.nodes)  # type: ignore[union-attr]
    assert bool(found(some)) == (not drawn)


@pytest.mark.parametrize("pitch", [12.5, 12.57, 12.58, 13])
def test_a_grid_needs_three_squares_and_its_lines(pitch: float) -> None:
    """38 mm hold three squares of 12.57 mm with a line of 0.27 mm, and not three of 12.58 mm."""
    some = made(f"grid: {{id: squares, grow: 1, pitch: {pitch} mm}}", 60, 60)
    assert bool(found(some)) == (3 * pitch + 0.27 > 38)
    assert (some.face.placement("squares").rows >= 3) == (not found(some))


@pytest.mark.parametrize(("width", "height"), [(60, 190), (190, 60)])
def test_a_grid_is_told_whichever_side_is_short(width: int, height: int) -> None:
    (finding,) = found(made("grid: {id: squares, grow: 1, pitch: 14 mm}", width, height))
    assert "squares" in finding.message
    assert finding.measured == "38 mm"
    assert finding.limit == "42.27 mm"


def test_the_leaf_that_is_offered_for_a_grid_is_the_least() -> None:
    """Three squares of 14 mm, a line, pads and insets: 42.27 + 10 + 12 = 64.27 mm."""
    some = made("grid: {id: squares, grow: 1, pitch: 14 mm}", 60, 190)
    assert leaf(found(some)[0]) == Size(65, 190)


def test_a_single_mark_wider_than_its_room_is_told() -> None:
    (finding,) = found(made("marks: {id: days, grow: 1, count: 2, size: 50 mm}", 60, 190))
    assert "wider" in finding.message
    assert (finding.measured, finding.limit) == ("38 mm", "50 mm")
    assert leaf(finding) == Size(72, 190)


def test_a_finding_stands_at_the_setting_that_makes_it_too_large() -> None:
    some = made("grid: {id: squares, grow: 1}", 60, 60, "grid:\n  pitch: 14 mm\n")
    assert (found(some)[0].place.file, found(some)[0].place.line) == ("x.pad.yaml", 5)


def test_marks_that_repeat_are_told_once_with_a_leaf_that_holds_all_of_them() -> None:
    repeat = "repeat: {id: habits, grow: 1, times: 4, holds: [{marks: {id: days, grow: 1, count: 31}}]}"
    some = made(repeat, 70, 70)
    (finding,) = found(some)
    face = on(some.design, leaf(finding))
    assert all(face.placement(f"habits/{n}/days").rows for n in (1, 2, 3, 4))


def test_where_no_leaf_helps_the_words_name_none() -> None:
    (finding,) = found(made("marks: {id: days, grow: 1, count: 400, size: 60 mm}", 60, 60))
    assert finding.remedy is not None
    assert "leaf" not in finding.remedy.text
    assert "smaller size or count" in finding.remedy.text
