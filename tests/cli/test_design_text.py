"""Whatever a maker says on the command line stands in the design as it was said."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st
from kit import picture

from padspec.design_text import COMMENTS, write_design
from padspec.reading.parsing.yaml_reader import parse
from padspec.reading.tree import as_data

from .command import padspec, put

PATHS = [path for path in COMMENTS if not any(other[: len(path)] == path != other for other in COMMENTS)]
#: Every character that a design may hold, rare line ends among them; and what YAML reads into text.
LETTERS = st.characters(exclude_categories=("Cs", "Cc"), include_characters="\t\n")
TEXTS = st.one_of(
    st.text(LETTERS, max_size=60),
    st.text(alphabet=" \t\n\"'\\#:,-?!&*|>%@`{}[]~=ab0", max_size=50),
    st.sampled_from(
        ["null", "~", "", "yes", "0x1F", "1e3", "12:30", "---", "...", "#f4ecde", "30 %", "- a", '"#abc"']
    ),
)


@given(st.dictionaries(st.sampled_from(PATHS), TEXTS, min_size=1))
def test_values_are_read_as_they_were_written(values):
    tree = as_data(parse(write_design(values), "x.pad.yaml"))
    for path, text in values.items():
        found = tree
        for key in path:
            found = found[key]
        assert found == text


@given(st.sampled_from(["paper of mine", "a: b", "#a", '"q"', "- x", "null"]), TEXTS)
def test_keys_of_a_makers_own_are_too(name, text):
    assert as_data(parse(write_design({("palette", name): text}), "x.pad.yaml"))["palette"] == {name: text}


@pytest.mark.parametrize("words", ['"Quoted" pad', '"a", colour: red', "it's #1: the best"])
@pytest.mark.parametrize(("option", "path"), [("--name", ("name",)), ("--heading", ("face", "heading"))])
def test_new_takes_quotes_and_signs_as_letters(tmp_path, words, option, path):
    put(tmp_path, moth__png=picture(900, 800))
    assert padspec(tmp_path, "new", "moth.png", option, words, "--to", "x.pad.yaml").status in (0, 1)
    shown = padspec(tmp_path, "show", "x.pad.yaml", "--stage", "document").json["design"]
    assert (shown["pad"] if path == ("name",) else shown["heading"]["text"]) == words, json.dumps(shown)


def test_new_takes_a_file_whose_name_begins_with_a_quote(tmp_path):
    (tmp_path / '"b.png').write_bytes(picture(900, 800))
    assert padspec(tmp_path, "new", '"b.png', "--to", "x.pad.yaml").status == 0
    assert padspec(tmp_path, "check").status == 0


def test_a_comment_keeps_its_distance_from_a_long_value():
    text = write_design({("heading", "font"): '"' + "A long name of a family" * 3})
    assert as_data(parse(text, "x.pad.yaml"))["heading"]["font"].startswith('"A long')
    assert '" # or a file' in text
