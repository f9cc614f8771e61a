"""Which layouts and grounds the pattern book shows, and what the words of the command mean."""

import itertools
import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from padspec.base.errors import ProblemsError
from padspec.base.geometry import Size
from padspec.gallery.grounds import MOTIF, PLAIN, chosen_grounds, ground_data, pattern_kinds, usual
from padspec.gallery.layouts import shown_layouts
from padspec.gallery.wish import names_in, trims_in
from padspec.resources import layout_names, schema_text
from padspec.workspace import MemoryWorkspace

TALL = (
    b"layout: tall\nabout: Tall.\ntrims: [{width: 50 mm, height: 300 mm}]\nface:\n  - rows: {id: rows, grow: 1}\n"
)


def shown(files: dict[str, bytes], names=None, trims="first"):
    return shown_layouts(names, trims, "x.pad.yaml", MemoryWorkspace(files))


def test_every_kind_of_pattern_in_the_schema_is_shown_and_plain_last() -> None:
    told = json.loads(schema_text("ground"))["$defs"]["pattern"]["properties"]["kind"]["enum"]
    assert chosen_grounds(("all",), 0, True) == (*told, PLAIN)


def test_all_begins_with_another_kind_at_every_place() -> None:
    kinds = pattern_kinds()
    found = [chosen_grounds(("all",), place, True) for place in range(len(kinds))]
    assert {grounds[0] for grounds in found} == set(kinds)
    assert {frozenset(grounds) for grounds in found} == {frozenset((*kinds, PLAIN))}


def test_without_a_picture_to_repeat_there_is_no_motif() -> None:
    assert MOTIF not in chosen_grounds(("all",), 0, False)
    with pytest.raises(ProblemsError, match="There is no motif"):
        chosen_grounds((MOTIF,), 0, False)


@given(st.integers(0, 200), st.lists(st.sampled_from("abcdefghijkl"), min_size=1, unique=True))
def test_the_usual_choice_has_as_many_different_kinds_as_there_can_be(place: int, kinds: list[str]) -> None:
    found = usual(place, tuple(kinds))
    assert len(set(found)) == len(found)
    # A stride of two meets every other kind of an even number.
    assert len(found) == min(5, len(kinds) if len(kinds) % 2 else len(kinds) // 2)


def test_neighbouring_layouts_begin_with_different_grounds() -> None:
    first = [chosen_grounds(None, place, True)[0] for place in range(8)]
    assert all(one != other for one, other in itertools.pairwise(first))


def test_a_ground_that_is_misspelt_is_refused_with_the_likely_one() -> None:
    with pytest.raises(ProblemsError, match=r"There is no doots\. Did you mean dots\?"):
        chosen_grounds(("doots", PLAIN), 0, True)


def test_a_plain_ground_has_no_pattern_and_a_motif_names_its_picture() -> None:
    assert ground_data(PLAIN, None) == {"pattern": "none"}
    assert ground_data("dots", "a.svg") == {"pattern": {"kind": "dots"}}
    assert ground_data(MOTIF, "a.svg") == {"pattern": {"kind": MOTIF, "file": "a.svg"}}


def test_every_built_in_layout_is_shown_and_the_makers_own_with_them_tallest_first() -> None:
    found = shown({"layouts/tall.yaml": TALL})
    assert {layout.name for layout in found} == {*layout_names(), "tall"}
    assert found[0].name == "tall"
    heights = [layout.trims[0].height for layout in found]
    assert heights == sorted(heights, reverse=True)


def test_a_layout_is_shown_at_its_first_trim_or_all_of_its_own_or_at_a_size() -> None:
    own = TALL.replace(b"[{", b"[{width: 90 mm, height: 100 mm}, {").replace(b"layout: tall", b"layout: two")
    files = {"layouts/two.yaml": own}
    first, second = Size(90.0, 100.0), Size(50.0, 300.0)
    assert shown(files, ("two",))[0].trims == (first,)
    assert shown(files, ("two",), "own")[0].trims == (first, second)
    assert shown(files, ("two",), (Size(80, 80),))[0].trims == (Size(80, 80),)


def test_a_layout_without_trims_is_shown_at_the_usual_one() -> None:
    bare = TALL.replace(b"trims: [{width: 50 mm, height: 300 mm}]\n", b"")
    for trims in ("first", "own"):
        assert shown({"layouts/tall.yaml": bare}, ("tall",), trims)[0].trims == (Size(90.0, 190.0),)


def test_the_kinds_of_blocks_are_found_inside_others() -> None:
    (layout,) = shown({}, ("square",))
    assert {"panel", "columns", "heading", "art", "rows"} == layout.kinds


def test_a_layout_that_is_misspelt_is_refused_with_the_likely_one() -> None:
    with pytest.raises(ProblemsError, match=r"There is no weak\. Did you mean week\?"):
        shown({}, ("weak",))


def test_sizes_are_read_in_any_unit_each_once() -> None:
    assert trims_in("90mm x 190mm,3 1/2 in × 5 in, 9 cm x 19 cm") == (Size(90, 190), Size(88.9, 127))


@pytest.mark.parametrize("text", ["90 mm", "90 x 190", "90 mm x", "big", "1 mm x 2 mm x 3 mm"])
def test_what_is_no_trim_is_refused_with_a_size_that_is(text: str) -> None:
    with pytest.raises(ProblemsError, match="mm"):
        trims_in(text)


def test_names_stand_once_in_their_order() -> None:
    assert names_in(" b, a,,b ") == ("b", "a")
