"""Every layout that padspec has: sound at the trims it is made for, and honest at all others."""

import re
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.findings import Finding, Severity
from padspec.base.geometry import Size
from padspec.checks.block_room import LEAST_SQUARES
from padspec.checks.room import NO_PITCH
from padspec.compose.blocks.grid import lattice_in
from padspec.compose.blocks.rows import rule_length
from padspec.compose.compose import compose
from padspec.compose.face import Face
from padspec.pipeline import Pad
from padspec.resolve.blocks.block import Block
from padspec.resolve.blocks.grid import Grid
from padspec.resolve.blocks.marks import Marks
from padspec.resolve.blocks.rows import Rows
from padspec.resolve.design import blocks

from .leaves import LONG, NAMES, SHORT, collisions, leaf, outside_their_panel, told, trims, written

STATED = [(name, *trim) for name in NAMES for trim in trims(name)]
any_width, any_height = st.integers(60, 210), st.integers(60, 297)
#: What says that a block has no room, with the least leaf that has it.
OF_ROOM = ("row-room", "block-room")


def test_there_is_a_layout_for_each_kind_of_list_that_is_sold() -> None:
    """Check list, ruled, numbered, two columns, sections, week, meals, habits, day plan, both grids, blank, whole
    picture, picture beside the heading, half page, square.
    """
    assert len(NAMES) >= 16


@pytest.mark.parametrize("name", NAMES)
def test_a_layout_says_what_it_is_for_and_on_which_trims(name: str) -> None:
    layout = written(name)
    assert layout["layout"] == name
    about = layout["about"]
    assert isinstance(about, str)
    assert about.endswith(".")
    assert 30 <= len(about) <= 140
    assert len(trims(name)) >= 2


@pytest.mark.parametrize(("name", "width", "height"), STATED)
@pytest.mark.parametrize(("picture", "heading"), [(False, ""), (True, SHORT)], ids=["bare", "picture"])
def test_nothing_is_found_at_a_trim_that_a_layout_states(
    name: str, width: float, height: float, picture: bool, heading: str
) -> None:
    """With its own heading and no picture; with a short heading and a picture."""
    some = leaf(name, width, height, picture, heading)
    assert [finding.message for finding in told(some, Severity.WARNING)] == []
    assert collisions(some.face) == []
    assert outside_their_panel(some) == []


@pytest.mark.parametrize(("name", "width", "height"), STATED)
def test_a_long_heading_is_no_error_at_a_trim_that_a_layout_states(name: str, width: float, height: float) -> None:
    some = leaf(name, width, height, True, LONG)
    assert [finding.message for finding in told(some, Severity.ERROR)] == []
    assert collisions(some.face) == []
    assert in_their_panels(some)


@pytest.mark.parametrize(("name", "width", "height"), STATED)
def test_rows_grids_and_marks_have_room_to_be_used_at_a_stated_trim(
    name: str, width: float, height: float
) -> None:
    """Two rows at least, but for a line that only bears a name; rules of 30 mm; six squares each way."""
    some = leaf(name, width, height, True, SHORT)
    for block in blocks(some.design):
        placed = some.face.placement(block.id)
        if isinstance(block, Rows):
            assert placed.rows >= 2 or block.count == 1
            assert rule_length(block, placed.box, placed.rows) >= 30
        if isinstance(block, Grid):
            assert min(lattice_in(block, placed.box).across, lattice_in(block, placed.box).down) >= 6
        if isinstance(block, Marks):
            assert placed.rows > 0


@pytest.mark.parametrize("name", NAMES)
@settings(deadline=None, max_examples=2)
@given(any_width, any_height, st.booleans(), st.sampled_from(["", SHORT, LONG]))
def test_any_trim_is_composed_without_collisions_or_says_which_leaf_it_wants(
    name: str, width: int, height: int, picture: bool, heading: str
) -> None:
    some = leaf(name, width, height, picture, heading)
    errors = told(some, Severity.ERROR)
    if not errors:
        assert collisions(some.face) == []
        assert in_their_panels(some)
    for finding in errors:
        honest(some, finding)


def in_their_panels(some: Pad) -> bool:
    """Whether all ink is in the panel that holds it; words too wide for it may reach past it if that is told."""
    warned = any(finding.check == "heading-room" for finding in some.findings)
    return all(block == "heading" and warned for _, block in outside_their_panel(some))


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize(("width", "height"), [(60, 60), (210, 297)])
def test_the_ends_of_the_range_are_composed_or_say_which_leaf_they_want(
    name: str, width: int, height: int
) -> None:
    some = leaf(name, width, height, True, SHORT)
    errors = told(some, Severity.ERROR)
    if not errors:
        assert collisions(some.face) == []
        assert in_their_panels(some)
    for finding in errors:
        honest(some, finding)


def honest(some: Pad, finding: Finding) -> None:
    """An error tells a number and how to mend it; one about room names a leaf, and on that leaf there is room."""
    assert re.search(r"\d", finding.message)
    assert finding.remedy is not None
    if finding.check not in OF_ROOM:
        return
    said = re.search(r"leaf of ([\d.]+) mm × ([\d.]+) mm", finding.remedy.text) or re.search(
        r"leaf ([\d.]+) mm × ([\d.]+) mm", finding.remedy.text
    )
    assert said, finding.remedy.text
    trim = Size(float(said[1]), float(said[2]))
    wants = wanting(some, finding, some.face)
    assert wants, finding
    assert wanting(some, finding, compose(replace(some.design, trim=trim))) != wants


def wanting(some: Pad, finding: Finding, face: Face) -> list[str]:
    """The blocks that have no room on a face, of the kinds that a check is about."""
    return [block.id for block in blocks(some.design) if lacks(block, face, finding.check)]


def lacks(block: Block, face: Face, check: str) -> bool:
    placed = face.placement(block.id)
    if check == "row-room":
        short = isinstance(block, Rows) and rule_length(block, placed.box, placed.rows) < 10
        return isinstance(block, Rows) and (placed.rows == 0 or placed.pitch < NO_PITCH or short)
    if isinstance(block, Grid):
        lattice = lattice_in(block, placed.box)
        return min(lattice.across, lattice.down) < LEAST_SQUARES
    return isinstance(block, Marks) and placed.rows == 0


@pytest.mark.parametrize("name", NAMES)
def test_a_picture_is_where_the_layout_is_told_to_have_one(name: str) -> None:
    """On the largest trim that it states, as large as asked for."""
    width, height = max(trims(name))
    some = leaf(name, width, height, True, SHORT)
    assert "art" in {placed.block for placed in some.face.placements}
    assert [finding.check for finding in some.findings if finding.check == "art-room"] == []


@pytest.mark.parametrize("name", NAMES)
def test_without_a_picture_nothing_is_left_where_it_was(name: str) -> None:
    """No column or band stays empty for it: what is highest on the leaf begins within a fifth of its height, but
    for a layout that shows the picture alone there.
    """
    width, height = trims(name)[0]
    some = leaf(name, width, height, False, "")
    assert "art" not in {placed.block for placed in some.face.placements}
    if name != "full-picture":
        assert min(placed.box.y for placed in some.face.placements if placed.block != "ground") <= height / 5
