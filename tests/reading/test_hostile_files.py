"""No file costs more than it is worth: each is refused or read in under a second."""

from itertools import pairwise
from time import process_time

import pytest

from padspec.base.errors import ProblemsError
from padspec.reading.document import read
from padspec.reading.parsing.yaml_reader import parse

from .told import DESIGN, refused, told

MEBIBYTE = 1024 * 1024
LETTERS = "abcdefghij"
BOMB = "a: &a [x,x,x,x,x,x,x,x,x]\n" + "".join(
    f"{name}: &{name} [{','.join([f'*{before}'] * 9)}]\n" for before, name in pairwise(LETTERS)
)


def fast(text: str) -> str:
    """The first message, told within a second of the processor's time."""
    start = process_time()
    problems = told(text)
    assert process_time() - start < 1
    return problems[0].message


def test_swelling_aliases_are_refused() -> None:
    assert "more than 20000 keys and values" in fast(BOMB)


@pytest.mark.parametrize("text", ["a: " + "[" * 100_000, "- " * 100_000, "{a: " * 100_000])
def test_deep_nesting_is_refused(text: str) -> None:
    assert "more than 32 deep" in fast(text)


def test_nesting_of_32_is_read() -> None:
    assert refused("a: " + "[" * 31 + "]" * 31) == ()
    assert refused("a: " + "[" * 32 + "]" * 32) != ()


def test_nesting_behind_an_alias_counts() -> None:
    half = "[" * 17 + "]" * 17
    assert refused(f"a: &x {half}\nb: {'[' * 14}*x{']' * 14}") == ()
    assert "32 deep" in refused(f"a: &x {half}\nb: {'[' * 15}*x{']' * 15}")[0].message


def test_aliases_count_with_all_they_stand_for() -> None:
    anchored = "a: &x [" + ",".join(["1"] * 1996) + "]\n"  # with root, key and list 1999 nodes
    nine = "b: [" + ",".join(["*x"] * 9) + "]\n"  # 2 and 9 times 1997
    assert refused(anchored + nine) == ()
    assert "20000" in refused(anchored + nine + "c: [" + ",".join(["1"] * 30) + "]\n")[0].message


def test_a_file_over_a_mebibyte_is_refused() -> None:
    assert "larger than 1048576 bytes" in fast("a" * (MEBIBYTE + 1))


def test_bytes_count_not_characters() -> None:
    assert "larger than" in fast("ä" * (MEBIBYTE // 2 + 1))


@pytest.mark.parametrize(
    "text",
    [
        "".join(f"k{i}: &a{i} 1\nj{i}: *b{i}\n" for i in range(4900)),
        DESIGN + "rows:\n" + "".join(f"  pich{i}: 1\n" for i in range(9000)),
        DESIGN + "palette:\n" + "".join(f"  p{i}: {{frm: art, zzz: 1}}\n" for i in range(3000)),
        "a: 1 #" + "\t" * (MEBIBYTE - 10),
        "pad: '" + "\t" * (MEBIBYTE - 10) + "'",
        "pad: " + "x" * (MEBIBYTE - 10),
        "a: 1\n" * 9900,
        "{a: " + " " * (MEBIBYTE // 2) + ", " + ",".join(f"k{i}" for i in range(9000)) + "}",
    ],
    ids=[
        "aliases",
        "unknown keys",
        "bad colours",
        "tab comment",
        "tabs",
        "long text",
        "repeated keys",
        "missing values",
    ],
)
def test_large_files_full_of_faults_are_told_quickly(text: str) -> None:
    assert fast(text)


def test_no_more_than_200_problems_of_a_kind_are_told() -> None:
    assert len(refused("a: 1\n" * 9900)) == 200


def test_messages_stay_short_whatever_was_written() -> None:
    problems = told(
        f"pad: {'x' * 9000}\n{'y' * 900}: {'z' * 9000}\ntrim: {{width: {'8' * 9000}, height: 190 mm}}\n"
    )
    assert len(problems) == 3
    assert all(len(problem.message) < 200 for problem in problems)


def test_a_design_of_many_colours_is_read() -> None:
    text = DESIGN + "palette:\n" + "".join(f"  p{i}: {{from: art, rank: 3}}\n" for i in range(500))
    with_palette = read(text, "f", "design").root.get("palette")
    assert with_palette == parse(text, "f").get("palette")


def test_any_problem_of_parsing_is_a_problems_error() -> None:
    with pytest.raises(ProblemsError):
        parse("\x00" * 100, "f")
