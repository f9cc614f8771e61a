import pytest

from padspec.reading.describe import describe, known_words
from padspec.reading.document import Kind, read


def test_a_key_is_told_with_title_meaning_form_default_and_examples() -> None:
    assert describe("rows.pitch") == (
        "rows.pitch (design and studio)\n"
        "  Pitch. Distance between two rules, centre to centre. 8 mm suits most hands, 6 mm a\n"
        "    small one; under 5 mm is hard to write in. As many rows as fit are drawn.\n"
        "  Expected: a length with its unit (mm, cm, in or pt) from 1 mm to 300 mm.\n"
        "  Default: 8 mm\n"
        "  For example:\n"
        "    pitch: 8 mm\n"
        "    pitch: 9/32 in"
    )


def told(word: str) -> str:
    text = describe(word)
    assert text is not None
    return text


def test_a_bundle_lists_its_keys() -> None:
    text = told("sheet")
    assert "  Keys:\n    size         The sheet" in text
    assert "least-bleed" in text


@pytest.mark.parametrize("word", ["panel", "layout", "face"])
def test_what_a_panel_holds_is_shown_in_a_layout(word: str) -> None:
    text = told(word)
    assert "holds: [{heading: {id: heading}}, {rows: {id: rows, grow: 1}}]" in text


def test_a_block_is_shown_as_a_layout_places_it() -> None:
    assert told("rows").endswith("  In a layout, under face:\n    - rows: {id: rows, grow: 1}")


def test_a_long_example_stands_on_several_lines() -> None:
    assert "    palette:\n      paper: white\n      ground: {from: art" in told("palette")


@pytest.mark.parametrize("word", ["design", "layout", "studio", "collection"])
def test_the_example_of_a_whole_file_is_a_file(word: Kind) -> None:
    body = told(word).rpartition("a file of this kind")[2]
    lines = body.partition("For example:\n")[2].partition("  Keys:")[0]
    assert read(lines, "f", word).kind == word


def test_a_word_that_means_several_things_is_told_for_each() -> None:
    text = told("layout")
    assert text.count("\n\n") == 2
    assert "layout (design and studio)" in text
    assert "a file of this kind (layout)" in text


def test_the_same_key_in_two_kinds_of_file_is_told_once() -> None:
    assert told("heading.text").count("An empty text in quotes") == 1


def test_the_last_part_of_a_path_is_enough() -> None:
    assert told("pitch").startswith(told("rows.pitch"))


def test_a_path_may_start_with_the_kind_of_file() -> None:
    assert told("studio.printer.margins").startswith("printer.margins (studio)")


def test_color_is_understood() -> None:
    assert told("rows.checkbox-color") == told("rows.checkbox-colour")


@pytest.mark.parametrize("kind", ["design", "studio", "layout", "collection"])
def test_every_kind_of_file_is_told(kind: str) -> None:
    assert f"a file of this kind ({kind})" in told(kind)


@pytest.mark.parametrize("word", ["", " ", ".", "rows.", "rows.pich", "nothing", "rows..pitch"])
def test_a_word_that_is_not_known_gives_none(word: str) -> None:
    assert describe(word) is None


@pytest.mark.parametrize("name", ["rule-contrast", "row-room"])
def test_the_bare_name_of_a_check_is_left_to_the_checks(name: str) -> None:
    assert describe(name) is None
    assert describe(f"limits.{name}") is not None


def test_every_known_word_can_be_told() -> None:
    assert [word for word in known_words() if not describe(word)] == []


def test_known_words_are_sorted_and_stand_once() -> None:
    assert list(known_words()) == sorted(set(known_words()))


def test_lines_fit_a_terminal() -> None:
    long = [line for word in known_words() for line in told(word).splitlines() if len(line) > 100]
    assert [line for line in long if ": {" not in line and ", …" not in line] == []
