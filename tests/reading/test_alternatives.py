"""Where a value may be of several forms, a fault is told once and in the words of the form that was meant."""

import pytest

from .told import DESIGN, added, spot, told


def test_a_misspelt_word_beats_the_other_form() -> None:
    problem = added("rows: {checkbox: non}")
    assert problem.mend == "Did you mean none?"


def test_another_text_is_judged_by_the_other_form() -> None:
    assert added("rows: {checkbox: 4}").mend == "Did you mean 4 mm?"


def test_a_mapping_is_judged_by_the_form_that_takes_one() -> None:
    problem = added("sheet: {size: {width: 210 mm}}")
    assert problem.message == "sheet.size lacks height."


def test_a_word_where_only_a_mapping_could_be_meant_shows_one() -> None:
    problem = added("ground: {pattern: dots}")
    assert "pattern: {kind: dots" in problem.mend


def test_a_value_of_no_form_names_them_all() -> None:
    problem = added("rows: {checkbox: [4 mm]}")
    assert "rows.checkbox is a list; none, or a length" in problem.message


def test_faults_inside_the_form_are_told_each_at_its_place() -> None:
    problems = told(DESIGN + "ground: {pattern: {kind: dts, size: 6, angel: 3}}")
    assert [spot(problem)[:2] for problem in problems] == [(3, 26), (3, 37), (3, 40)]
    assert [problem.mend for problem in problems] == [
        "Did you mean dots?",
        "Did you mean 6 mm?",
        "Did you mean angle?",
    ]


def test_a_colour_inside_a_pattern_is_judged_as_deep_as_it_lies() -> None:
    problem = added("ground: {pattern: {kind: dots, colour: {from: art, rank: 99}}}")
    assert problem.message == "ground.pattern.colour.rank is 99; a whole number from 1 to 12 belongs here."


def test_a_block_setting_is_judged_by_the_kind_that_knows_its_keys() -> None:
    problem = added("blocks: {list: {pitch: 8, checkbox: none}}")
    assert problem.message == "blocks.list.pitch: 8 has no unit."


@pytest.mark.parametrize("value", ["3", "[]", "{zzz: 1}", "{pich: 1}", "{colour: 000}", ""])
def test_no_message_speaks_of_schemas(value: str) -> None:
    for key in (
        "palette: {x: %s}",
        "blocks: {x: %s}",
        "sheet: {size: %s}",
        "limits: {row-room: %s}",
        "rows: {checkbox: %s}",
    ):
        for problem in told(DESIGN + key % value):
            assert "schema" not in problem.message.lower()
            assert "valid" not in problem.message
