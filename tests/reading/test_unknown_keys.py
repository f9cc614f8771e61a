"""A key that is not known: the nearest one of its mapping, or where it belongs."""

import pytest

from .told import added, only, spot, told


def test_the_nearest_key_of_the_mapping_is_named() -> None:
    problem = added("rows: {pitch: 8 mm, weigth: 0.3 mm}")
    assert problem.message == "weigth is not a key of rows."
    assert problem.mend == "Did you mean weight?"


def test_it_is_told_at_the_key() -> None:
    assert spot(added("rows: {pitch: 8 mm, weigth: 0.3 mm}")) == (3, 21, 6)


def test_a_key_known_elsewhere_is_sent_there_with_an_example() -> None:
    problem = added("pitch: 8 mm")
    assert problem.mend == "It belongs in rows or grid: rows: {pitch: 8 mm}."


def test_a_key_known_in_several_places_names_up_to_three() -> None:
    assert added("inset: 6 mm").mend == "It belongs in art, panel or columns: art: {inset: 6 mm}."


def test_a_shortened_key_of_the_same_mapping_wins_over_one_elsewhere() -> None:
    assert added("heading: {weight: 700}").mend == "Did you mean font-weight?"


def test_a_key_known_elsewhere_in_a_block_is_sent_there() -> None:
    assert added("heading: {pitch: 8 mm}").mend == "It belongs in rows or grid: rows: {pitch: 8 mm}."


def test_a_key_of_another_file_is_sent_there() -> None:
    assert added("printer: {}").mend == "It belongs in the studio (studio.yaml)."


def test_a_key_of_another_file_is_sent_there_even_if_one_here_is_near() -> None:
    assert added("face: []").mend == "It belongs in a layout (layouts/NAME.yaml)."


def test_a_key_known_nowhere_gets_the_list() -> None:
    assert added("trim-marks-please: 1").mend.startswith("Known here: pad, sku, trim")


def test_a_check_that_is_not_known_gets_the_nearest() -> None:
    assert added("limits: {rule-contrst: 2}").mend == "Did you mean rule-contrast?"


def test_a_misspelt_key_of_a_block_is_matched_among_all_kinds() -> None:
    assert added("blocks: {list: {pich: 7 mm}}").mend == "Did you mean pitch?"


def test_a_key_of_a_colour_is_matched_there() -> None:
    problem = added("palette: {x: {from: art, lightn: 3 %}}")
    assert (problem.message, problem.mend) == ("lightn is not a key of palette.x.", "Did you mean lighten?")


def test_an_unknown_key_of_a_studio_names_the_studio() -> None:
    assert only("sleeve: 1", "studio").message == "sleeve is not a key of the studio."


@pytest.mark.parametrize(
    ("word", "meant"), [("heder", "heading"), ("grund", "ground"), ("haeding", "heading"), ("Sheet", "sheet")]
)
def test_a_misspelt_key_of_a_design_gets_the_one_that_was_meant(word: str, meant: str) -> None:
    assert added(f"{word}: {{}}").mend == f"Did you mean {meant}?"


@pytest.mark.parametrize("word", ["binding", "title", "currency"])
def test_a_key_that_is_near_none_gets_the_list(word: str) -> None:
    assert added(f"{word}: x").mend.startswith("Known here: pad, ")


def test_a_key_that_is_needed_and_misspelt_is_told_as_misspelt_only() -> None:
    problem = only("pad: x\ntrim: {widht: 90 mm, height: 190 mm}\n")
    assert (problem.message, problem.mend) == ("widht is not a key of trim.", "Did you mean width?")


def test_a_misspelt_key_at_the_top_is_not_told_as_missing_too() -> None:
    assert only("trm: {width: 90 mm, height: 190 mm}\npad: x\n").mend == "Did you mean trim?"


def test_another_key_that_is_needed_is_still_told_beside_a_misspelt_one() -> None:
    messages = [problem.message for problem in told("pad: x\ntrim: {widht: 90 mm}\n")]
    assert messages == ["trim lacks height.", "widht is not a key of trim."]


def test_a_key_that_belongs_elsewhere_does_not_hide_one_that_is_missing() -> None:
    messages = [problem.message for problem in told("pad: x\nwidth: 90 mm\n")]
    assert "the design lacks trim." in messages


def test_a_key_without_a_space_before_its_braces_is_told_so() -> None:
    problem = added("heading:{text: Hello}\n")
    assert problem.message == "A space is missing after heading: here."
    assert spot(problem) == (3, 1, 13)
