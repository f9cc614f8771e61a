"""The least leaf on which something fits, against trying every leaf there is."""

from dataclasses import replace

import pytest
from kit import pad

from padspec.base.geometry import Size
from padspec.checks.least_trim import leaf_text, least_trim
from padspec.compose.compose import compose
from padspec.compose.face import Face
from padspec.resolve.design import Design

LAYOUTS = {
    "marks": "- panel: {id: p, grow: 1, holds: [{marks: {id: it, grow: 1, count: 60}}]}",
    "grid": "- panel: {id: p, grow: 1, holds: [{grid: {id: it, grow: 1, pitch: 25 mm}}]}",
    "rows": "- panel: {id: p, grow: 1, holds: [{heading: {id: h, text: To do}}, "
    "{marks: {id: m, count: 40}}, {rows: {id: it, grow: 1}}]}",
    "columns": "- columns: {id: c, grow: 1, holds: [{marks: {id: it, grow: 1, count: 40}}, "
    "{grid: {id: g, grow: 1}}]}",
}


def design(name: str, width: float = 60, height: float = 60) -> Design:
    layout = f"layout: own\nabout: One.\nface:\n  {LAYOUTS[name]}\n"
    text = f"layout: own\npad: Own\ntrim: {{width: {width} mm, height: {height} mm}}\n"
    return pad(text, files={"layouts/own.yaml": layout.encode()}).design


def fits(face: Face) -> bool:
    return face.placement("it").rows > 1


def brute(some: Design, step: int) -> Size | None:
    """The first of all larger leaves, tried one by one: taller, else wider, else both."""
    ways = ((0, 1), (1, 0), (1, 1))
    for n in range(1, step):
        for across, upright in ways:
            trim = Size(some.trim.width + n * across, some.trim.height + n * upright)
            if fits(compose(replace(some, trim=trim))):
                return trim
    return None


@pytest.mark.parametrize("name", sorted(LAYOUTS))
def test_it_is_the_first_leaf_that_fits_when_all_are_tried(name: str) -> None:
    some = design(name)
    assert not fits(compose(some))
    assert least_trim(some, fits) == brute(some, 80)


def test_the_way_that_asks_for_least_paper_wins() -> None:
    """Twelve millimetres wider rather than forty taller."""
    some = design("marks")
    trim = least_trim(some, lambda face: face.placement("it").box.width >= 50)
    assert trim is not None
    assert trim.height == 60
    assert trim.width > 60


def test_a_leaf_that_must_be_larger_both_ways_is_found() -> None:
    some = design("grid")
    trim = least_trim(
        some, lambda face: min(face.placement("it").box.width, face.placement("it").box.height) >= 60
    )
    assert trim is not None
    assert trim.width == trim.height > 60


def test_nothing_is_offered_where_no_leaf_will_do() -> None:
    assert least_trim(design("grid"), lambda face: False) is None  # noqa: ARG005


def test_a_trim_of_a_broken_size_is_offered_in_whole_millimetres() -> None:
    trim = least_trim(design("grid", 60.4, 190.7), lambda face: face.placement("it").box.width > 60)
    assert trim is not None
    assert trim.width == int(trim.width) > 60.4
    assert trim.height == 190.7


def test_the_largest_trim_is_never_passed() -> None:
    trim = least_trim(design("marks", 60, 60), lambda face: face.placement("it").box.height > 230)
    assert trim is not None
    assert trim.height <= 300


def test_a_leaf_is_said_as_width_by_height() -> None:
    assert leaf_text(Size(60, 104.5)) == "60 mm × 104.5 mm"
