"""One value where keys belong: the mend shows what was written, under the key that takes it."""

import pytest

from .told import DESIGN, added, only, spot, told


@pytest.mark.parametrize(
    ("text", "mend"),
    [
        ("art: phone.jpg", "Write art: {file: phone.jpg}."),
        ("heading: Hello", "Write heading: {text: Hello}."),
        ('heading: "Hello: you"', 'Write heading: {text: "Hello: you"}.'),
        ("ground: red", "Write ground: {colour: red}."),
        ('ground: "#ff0000"', 'Write ground: {colour: "#ff0000"}.'),
        ("ground: dots", "Write ground: {pattern: {kind: dots}}."),
        ("ground: {pattern: stripes}", "Write pattern: {kind: stripes}."),
        ('ground: {pattern: "dots"}', "Write pattern: {kind: dots}."),
        ("sheet: letter", "Write sheet: {size: letter}."),
        ("sheet: 210 x 297 mm", "Write sheet: {size: {width: 210 mm, height: 297 mm}}."),
        ("sheet: {size: 210 x 297 mm}", "Write size: {width: 210 mm, height: 297 mm}."),
        ("panel: white", "Write panel: {colour: white}."),
        ("rows: 8 mm", "Write rows: {pitch: 8 mm}."),
        ("rows: 12", "Write rows: {count: 12}."),
        ("art: 40 mm", "Write art: {height: 40 mm}."),
        ("space: 3 mm", "Write space: {height: 3 mm}."),
    ],
)
def test_a_value_is_shown_under_the_key_that_takes_it(text: str, mend: str) -> None:
    assert added(text).mend == mend


@pytest.mark.parametrize(
    "text", ["art: {file: phone.jpg}", "ground: {pattern: {kind: dots}}", "sheet: {size: letter}"]
)
def test_what_is_shown_is_accepted(text: str) -> None:
    assert told(DESIGN + text) == ()


@pytest.mark.parametrize(
    ("trim", "mapping"),
    [
        ("90 x 190 mm", "{width: 90 mm, height: 190 mm}"),
        ("90x190mm", "{width: 90 mm, height: 190 mm}"),
        ("9 cm × 190 mm", "{width: 9 cm, height: 190 mm}"),
        ("3 1/2 in by 8 1/2 in", "{width: 3 1/2 in, height: 8 1/2 in}"),
        ('3½" x 8½"', "{width: 3½ in, height: 8½ in}"),
        ("90,5 x 190 mm", "{width: 90.5 mm, height: 190 mm}"),
        ("90 x 190", "{width: 90 mm, height: 190 mm}"),
        ("A6", "{width: 105 mm, height: 148 mm}"),  # ISO 216
    ],
)
def test_a_size_in_one_piece_is_shown_as_width_and_height(trim: str, mapping: str) -> None:
    assert only(f"pad: x\ntrim: '{trim}'\n").mend == f"Write trim: {mapping}."


@pytest.mark.parametrize("trim", ["90 mm", "none", "big", "x", "90 x", "1 x 2 x 3 mm"])
def test_what_is_no_size_gets_the_example(trim: str) -> None:
    assert only(f"pad: x\ntrim: {trim}\n").mend == "Write, for example, trim: {width: 90 mm, height: 190 mm}."


def test_a_value_that_no_key_takes_gets_the_example() -> None:
    assert added("sheet: A44").mend == "Write, for example, sheet: {size: A4, gutter: 4 mm, bleed: 3 mm}."


def test_one_value_where_a_list_belongs_is_shown_in_brackets() -> None:
    assert only("collection: x\ndesigns: a.yaml\n", "collection").mend == "Write designs: [a.yaml]."


@pytest.mark.parametrize("word", ["none", "no", "off", "false", "None", "~"])
def test_a_heading_that_is_not_wanted_is_an_empty_text(word: str) -> None:
    assert added(f"heading: {word}").mend == 'To leave it out, write heading: {text: ""}.'


@pytest.mark.parametrize(
    ("key", "words"),
    [
        ("art", "leave art out"),
        ("ground", "ground: {pattern: none}"),
        ("panel", "panel: {colour: ground}"),
        ("rows", "rows: {checkbox: none}"),
        ("space", "space: {height: 0 mm}"),
        ("limits", "Take limits out"),
    ],
)
def test_what_is_not_wanted_is_told_how_to_be_left_out(key: str, words: str) -> None:
    assert words in added(f"{key}: none").mend


@pytest.mark.parametrize(
    "text", ['heading: {text: ""}', "ground: {pattern: none}", "rows: {checkbox: none}", "space: {height: 0 mm}"]
)
def test_what_leaves_a_part_out_is_accepted(text: str) -> None:
    assert told(DESIGN + text) == ()


def test_a_block_that_is_not_wanted_is_told_how_to_be_left_out() -> None:
    problem = added("blocks: {heading: none}")
    assert 'A heading is left out by {text: ""}' in problem.mend
    assert spot(problem) == (3, 19, 4)


@pytest.mark.parametrize("word", ["yes", "true", "square"])
def test_a_word_where_none_or_a_size_belongs_names_both(word: str) -> None:
    problem = added(f"rows: {{checkbox: {word}}}")
    assert "none, or a length" in problem.message
    assert problem.mend == "Write none, or a size such as 4 mm."


def test_a_word_where_none_or_keys_belong_names_both() -> None:
    mend = added("ground: {pattern: yes}").mend
    assert mend == "Write none, or keys such as {kind: dots, colour: pattern, size: 6 mm}."


def test_a_size_with_a_strange_unit_is_told_by_its_unit() -> None:
    assert added("rows: {checkbox: 4mmm}").mend == "Did you mean 4 mm?"
