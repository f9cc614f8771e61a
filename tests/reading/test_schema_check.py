"""Each kind of fault in a file: where it is, what it says, how it is mended."""

import pytest

from padspec.reading.checking.schema_check import check
from padspec.reading.parsing.yaml_reader import parse

from .told import DESIGN, added, only, spot, told


def test_the_least_design_is_accepted() -> None:
    assert told(DESIGN) == ()


@pytest.mark.parametrize("length", ["8 mm", "0.8 cm", "3/8 in", "1 1/8 in", "24 pt", "8mm", '"8 mm"'])
def test_a_length_is_accepted_in_every_unit(length: str) -> None:
    assert told(f"{DESIGN}rows: {{pitch: {length}}}") == ()


def test_a_bare_number_where_a_length_belongs_gets_its_unit() -> None:
    problem = added("rows: {pitch: 8}")
    assert problem.message == "rows.pitch: 8 has no unit."
    assert problem.mend == "Did you mean 8 mm?"
    assert spot(problem) == (3, 15, 1)


@pytest.mark.parametrize(
    ("pitch", "accepted"), [("0.9 mm", False), ("1 mm", True), ("300 mm", True), ("301 mm", False)]
)
def test_a_length_keeps_its_bounds(pitch: str, accepted: bool) -> None:
    assert (told(f"{DESIGN}rows: {{pitch: {pitch}}}") == ()) is accepted


def test_a_length_out_of_bounds_is_told_with_them() -> None:
    problem = added("rows: {pitch: 0.1 mm}")
    assert "rows.pitch is 0.1 mm" in problem.message
    assert "from 1 mm to 300 mm" in problem.mend


@pytest.mark.parametrize(
    ("text", "limits"),
    [
        ("rows: {pitch: -8 mm}", "from 1 mm to 300 mm"),
        ("rows: {checkbox: -1 mm}", "none, or a length with its unit (mm, cm, in or pt) from 0.5 mm to 100 mm"),
        ("space: {height: -3 mm}", "from 0 mm to 2000 mm"),
        ("limits: {line-weight: -1 mm}", "of at least 0"),
    ],
)
def test_a_length_under_nothing_is_told_with_its_real_limits(text: str, limits: str) -> None:
    problem = added(text)
    assert limits in problem.message
    assert limits in problem.mend


@pytest.mark.parametrize("side", ["-90 mm", "19.9 mm", "1001 mm"])
def test_a_trim_is_told_with_its_limits(side: str) -> None:
    problem = only(f"pad: x\ntrim: {{width: {side}, height: 190 mm}}\n")
    assert "from 20 mm to 1000 mm" in problem.mend


@pytest.mark.parametrize(
    ("text", "limit"),
    [
        ("art: {height: 4.9 mm}", "from 5 mm"),
        ("art: {height: 0 %}", "above 0 %"),
        ("art: {width: 0 mm}", "from 5 mm"),
        ("art: {inset: 101 mm}", "to 100 mm"),
        ("art: {overlap: 101 mm}", "to 100 mm"),
        ("art: {corner: 61 mm}", "to 60 mm"),
        ("panel: {corner: 61 mm}", "to 60 mm"),
        ("panel: {inset: 101 mm}", "to 100 mm"),
        ("panel: {pad: 101 mm}", "to 100 mm"),
        ("rows: {weight: 5.1 mm}", "to 5 mm"),
        ("rows: {checkbox-gap: 51 mm}", "to 50 mm"),
    ],
)
def test_a_setting_ends_where_it_would_make_no_pad(text: str, limit: str) -> None:
    """Common practice, no published source."""
    assert limit in added(text).mend


@pytest.mark.parametrize(
    "text", ["art: {height: 5 mm, width: 1 %}", "panel: {corner: 60 mm, inset: 100 mm}", "rows: {weight: 5 mm}"]
)
def test_the_limit_itself_is_accepted(text: str) -> None:
    assert told(DESIGN + text) == ()


@pytest.mark.parametrize(
    ("count", "accepted"),
    [
        ("0", False),
        ("1", True),
        ("200", True),
        ("201", False),
        ("0xC", True),
        ("012", True),
        ("12.0", False),
        ("1_0", False),
        ("12:30", False),
        ('"12"', False),
        ("many", False),
    ],
)
def test_a_whole_number_is_what_yaml_writes_so(count: str, accepted: bool) -> None:
    assert (told(f"{DESIGN}rows: {{count: {count}}}") == ()) is accepted


def test_a_number_out_of_bounds_is_told_with_them() -> None:
    problem = added("leaves: 1001")
    assert problem.message == "leaves is 1001; a whole number from 1 to 1000 belongs here."
    assert spot(problem) == (3, 9, 4)


@pytest.mark.parametrize(
    ("angle", "accepted"),
    [("-180", True), ("12.5", True), ("1e2", True), ("180.5", False), (".nan", False), (".inf", False)],
)
def test_a_number_is_finite_and_in_bounds(angle: str, accepted: bool) -> None:
    text = f"{DESIGN}ground: {{pattern: {{kind: dots, angle: {angle}}}}}"
    assert (told(text) == ()) is accepted


@pytest.mark.parametrize("word", ["yes", "on", "True", "1"])
def test_a_truth_value_is_true_or_false(word: str) -> None:
    problem = added(f"art: {{file: a.png, trim-empty: {word}}}")
    assert "true or false" in problem.message
    assert problem.mend == "Did you mean true?"


def test_a_number_in_quotes_is_told_to_lose_them() -> None:
    assert added('leaves: "50"').mend == "Take the quotes off: leaves: 50."


@pytest.mark.parametrize("text", ["12:30", "0012", "off", "50", "~", "2025-10-31"])
def test_any_scalar_is_a_text(text: str) -> None:
    assert told(f"pad: {text}\ntrim: {{width: 90 mm, height: 190 mm}}\nheading: {{text: {text}}}") == ()


def test_a_heading_may_be_empty_in_quotes() -> None:
    assert told(DESIGN + 'heading: {text: ""}') == ()


def test_a_missing_value_says_what_is_expected() -> None:
    problem = added("heading:\n  text:\n")
    assert problem.message == "heading.text has no value; a text of 0 to 300 characters belongs here."
    assert "text: Before dark" in problem.mend
    assert spot(problem) == (4, 8, 1)


def test_null_is_a_word_like_any_other() -> None:
    assert added("rows: {pitch: null}").message == "rows.pitch: 'null' is not a quantity."


def test_a_missing_mapping_shows_an_example() -> None:
    assert "rows: {pitch: 8 mm" in added("rows:\n  # pitch: 9 mm\n").mend


@pytest.mark.parametrize("text", ["ground:\n  colour: #fff\n", "ground:\n  color:   #fff # white\n"])
def test_a_colour_without_quotes_is_told_as_the_comment_it_is(text: str) -> None:
    problem = added(text)
    assert "comment" in problem.message
    assert problem.mend == 'Put the colour in quotes: "#fff".'
    assert spot(problem)[:2] == (4, text.splitlines()[1].index("#") + 1)
    assert problem.place.length == 4


def test_without_the_text_a_colour_lost_to_a_comment_is_a_missing_value() -> None:
    (problem,) = check(parse(DESIGN + "ground:\n  colour: #fff\n", "f"), "design")
    assert "has no value" in problem.message


@pytest.mark.parametrize(
    "colour",
    [
        '"#fff"',
        "'#7a3b58'",
        "teal",
        "rule",
        "my-own_2",
        "{from: art}",
        "{from: art, near: teal, darken: 10 %}",
        '{from: "#fff", lighten: 5 %}',
    ],
)
def test_a_colour_is_accepted(colour: str) -> None:
    assert told(f"{DESIGN}ground: {{colour: {colour}}}") == ()


def test_transparency_is_refused_since_paper_knows_none() -> None:
    assert "paper knows none" in added('ground: {colour: "#ff000080"}').message


def test_bare_digits_of_a_colour_are_shown_with_their_sign() -> None:
    assert added("ground: {colour: 000}").mend == 'Did you mean "#000"?'


@pytest.mark.parametrize(
    ("colour", "key", "words"),
    [
        ("{from: art, rank: 1, near: teal}", "near", "rank and near exclude each other"),
        ("{from: art, lighten: 1 %, darken: 1 %}", "darken", "lighten and darken exclude each other"),
        ("{from: rule, rank: 2}", "rank", "needs from: art"),
        ("{from: rule, near: teal}", "near", "needs from: art"),
    ],
)
def test_keys_of_a_colour_that_exclude_each_other(colour: str, key: str, words: str) -> None:
    text = f"palette: {{x: {colour}}}"
    problem = added(text)
    assert words in problem.message
    assert problem.place.column == text.index(key) + 1


def test_lighten_and_darken_of_a_pattern_exclude_each_other() -> None:
    assert "exclude" in added("ground: {pattern: {kind: dots, lighten: 1 %, darken: 2 %}}").message


def test_a_key_that_must_stand_is_told_at_the_mapping_that_lacks_it() -> None:
    problem = only("pad: x\ntrim: {width: 90 mm}\n")
    assert problem.message == "trim lacks height."
    assert problem.mend == "Add, for example, height: 190 mm."
    assert spot(problem) == (2, 7, 14)


def test_a_design_without_trim_is_told_at_its_start() -> None:
    problem = only("\npad: x\n")
    assert problem.message == "the design lacks trim."
    assert spot(problem) == (2, 1, 3)


def test_a_word_that_is_no_choice_gets_the_nearest_one() -> None:
    problem = added("rows: {ends: rond}")
    assert problem.message == "rows.ends is rond; butt or round belongs here."
    assert problem.mend == "Did you mean round?"


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("sku: a b", "a code of letters"),
        ("date: 2025-02-30", "calendar"),
        ("allow: {harsh-rules: ok}", "at least 3 characters"),
        ("leaves: [50]", "leaves is a list; a whole number"),
        ("rows: 8 mm", "rows is 8 mm; a mapping"),
        ("rows: [8 mm]", "rows is a list; a mapping"),
        ("limits: {rule-contrast: {}}", "0 keys"),
        ("limits: {rule-contrast: -2}", "at least 0"),
        ("layout: ''", "1 to 100 characters"),
        (f"heading: {{text: {'x' * 301}}}", "0 to 300 characters"),
        ("palette: {art: red}", "cannot be a name"),
        ("palette: {9: red}", "cannot be a name"),
        ("blocks: {Rows: {pitch: 8 mm}}", "lower-case"),
    ],
)
def test_other_faults_say_what_belongs_there(text: str, words: str) -> None:
    assert words in added(text).message


def test_a_name_of_the_wrong_form_is_told_at_the_name() -> None:
    assert spot(added("palette: {ok: red, 9x: red}")) == (3, 20, 2)


@pytest.mark.parametrize("check_name", ["missing-glyph", "sheet-fit"])
def test_what_cannot_be_allowed_says_so(check_name: str) -> None:
    problem = added(f"allow: {{{check_name}: never mind}}")
    assert f"{check_name} cannot be allowed" in problem.message
    assert problem.place.column == 9


@pytest.mark.parametrize("limit", ["2", "1.5", "0.25 pt", "60 %", "{error: 1.5, warning: 2}", "{note: 3 mm}"])
def test_a_limit_may_be_a_number_a_length_a_share_or_one_for_each_severity(limit: str) -> None:
    assert told(f"{DESIGN}limits: {{line-weight: {limit}}}") == ()


@pytest.mark.parametrize("size", ["A4", "a10", "jis b5", "Letter", "half-letter", "{width: 32 cm, height: 45 cm}"])
def test_a_sheet_is_named_or_measured(size: str) -> None:
    assert told(f"{DESIGN}sheet: {{size: {size}}}") == ()


def test_several_faults_are_all_told_in_order_of_place() -> None:
    text = "leaves: 0\ntrim:\n  width: 90\nrows: {pich: 8 mm, weight: 1}\npad: x\nsheet: {size: A44}\n"
    places = [spot(problem)[:2] for problem in told(text)]
    assert places == [(1, 9), (3, 3), (3, 10), (4, 8), (4, 28), (6, 15)]


def test_faults_of_every_sort_are_told_each_once() -> None:
    text = (
        "pad:\ntrim: {widht: 90 mm, height: 190,5 mm}\nrows: {pitch: -8 mm, weight:3 mm}\nleaves: 0\nheder: no\n"
    )
    places = [spot(problem)[:2] for problem in told(text)]
    assert places == [(1, 5), (2, 8), (2, 30), (3, 15), (3, 22), (4, 9), (5, 1)]


def test_a_fault_behind_an_alias_is_told_once_where_it_was_written() -> None:
    (problem,) = (
        p for p in told(DESIGN + "heading: {colour: &c 000}\nground: {colour: *c}\n") if "heading" in p.message
    )
    assert spot(problem) == (3, 22, 3)


@pytest.mark.parametrize(
    "text", ["{}", "studio: Umberwick Paper", "printer: {margins: {left: 3 mm}}\ncutter: {kind: lever}"]
)
def test_every_key_of_a_studio_may_be_left_out(text: str) -> None:
    assert told(text, "studio") == ()


def test_a_studio_holds_the_house_style() -> None:
    bundles = "".join(f"{key}: {{}}\n" for key in ("ground", "art", "heading", "panel", "rows", "space", "limits"))
    text = "leaves: 25\nlayout: ruled\npalette: {paper: white}\n" + bundles
    assert told(text, "studio") == ()


def test_a_collection_needs_a_design() -> None:
    problem = only("collection: x\ndesigns: []", "collection")
    assert "at least 1" in problem.message


def test_a_design_stands_once_in_a_collection() -> None:
    problem = only("collection: x\ndesigns: [a.yaml, b.yaml, a.yaml]", "collection")
    assert problem.message == "a.yaml stands twice in designs."
    assert spot(problem) == (2, 27, 6)
