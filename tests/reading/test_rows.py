"""Tables: what RFC 4180 says and what spreadsheets write, with Python's csv module as the judge of quoting."""

import csv
from io import StringIO

import pytest
from hypothesis import given
from hypothesis import strategies as st

from padspec.base.errors import ProblemsError
from padspec.reading.rows import MOST_CHARACTERS, MOST_COLUMNS, read_table

PLAIN = "order,first\n1,Ada\n2,Björn\n"


def rows(data: bytes | str) -> list[tuple[str, ...]]:
    return [row.cells for row in read_table(data.encode() if isinstance(data, str) else data, "names.csv")]


def faults(data: bytes | str) -> list[str]:
    with pytest.raises(ProblemsError) as caught:
        read_table(data.encode() if isinstance(data, str) else data, "names.csv")
    return [str(problem) for problem in caught.value.problems]


NAMES = [("1", "Ada"), ("2", "Björn")]


@pytest.mark.parametrize(
    "data",
    [
        PLAIN,
        PLAIN.encode("utf-8-sig"),
        PLAIN.encode("utf-16"),
        PLAIN.encode("utf-16-be").join([b"\xfe\xff", b""]),
        PLAIN.replace(",", ";"),
        PLAIN.replace(",", "\t"),
        PLAIN.replace("\n", "\r\n"),
        PLAIN.replace("\n", "\r"),
        "sep=;\n" + PLAIN.replace(",", ";"),
        PLAIN.rstrip("\n"),
        PLAIN + "\n\n,\n",
        "\n" + PLAIN,
        PLAIN.replace(",", " , "),
        PLAIN.replace("\n", ",,\n"),
        PLAIN.replace("ö", "o\u0308"),
        '"order","first"\n"1","Ada"\n"2","Björn"\n',
    ],
    ids=repr,
)
def test_however_a_spreadsheet_saves_it_the_table_is_the_same(data):
    assert rows(data) == NAMES


def test_a_comma_inside_a_quoted_name_of_a_column_parts_nothing():
    assert read_table(b'"first, short";order\nAda;1\n', "x.csv").columns == ("first, short", "order")


def test_rows_know_their_lines_past_cells_with_line_breaks():
    """RFC 4180, section 2, rule 6: a quoted cell may hold line breaks."""
    table = read_table(b'a,b\n"one\ntwo",x\n\n3,y\n', "x.csv")
    assert [(row.number, row.line, row.cells[0]) for row in table] == [(1, 2, "one\ntwo"), (2, 5, "3")]


def test_the_separator_line_does_not_shift_the_lines():
    table = read_table(b"sep=;\r\na;b\r\n1;2\r\n", "x.csv")
    assert [row.line for row in table] == [3]


CELLS = st.text(st.characters(blacklist_categories=("Cs", "Cc")), max_size=12)


@given(st.lists(st.tuples(CELLS, CELLS), min_size=1, max_size=6))
def test_what_pythons_writer_quotes_comes_back(cells):
    """csv.writer follows RFC 4180 in its usual dialect; cells of white space alone make no row."""
    kept = [pair for pair in cells if any(cell.strip() for cell in pair)]
    if not kept:
        return
    file = StringIO()
    csv.writer(file).writerows([("a", "b"), *kept])
    from padspec.reading.rows import tidied

    assert rows(file.getvalue()) == [tuple(tidied(cell) for cell in pair) for pair in kept]


@pytest.mark.parametrize(
    ("data", "said"),
    [
        ("", "The table is empty."),
        ("\n\n", "The table is empty."),
        ("a,b\n", "no rows under its head line"),
        ("a,,b\n1,2,3\n", "names.csv:1:1: Column 2 has no name"),
        ("a,b,a\n1,2,3\n", "2 columns are called a."),
        ("a,b\n1\n", "names.csv:2:1: This row has 1 cell, and the head line names 2 columns."),
        ("a,b\n1,2,3\n", "This row has 3 cells, and the head line names 2"),
        ('a,b\n1,"2\n3,4\n', "names.csv:2:1: A quotation mark that opens from here on is never closed."),
        ('a,b\n1,"2"x\n', "names.csv:2:1: Text stands behind the closing quotation mark"),
        ("a,b\nK\xf6ln,1\n".encode("latin-1"), "names.csv:2:1: Byte 0xf6 on this line is not UTF-8."),
        ("a,b\n1,\0\n", "names.csv:2:1: A character of no meaning (NUL)"),
        (f"a,b\n1,{'x' * (MOST_CHARACTERS + 1)}\n", f"The cell of b has {MOST_CHARACTERS + 1} characters"),
        (f"a,b\n1,{'x' * 200_000}\n", "A cell from here on has no end in sight."),
        (",".join(f"c{n}" for n in range(MOST_COLUMNS + 1)) + "\n1\n", f"has {MOST_COLUMNS + 1} columns"),
    ],
    ids=lambda value: repr(value)[:40],
)
def test_what_cannot_be_read_is_told_with_its_line(data, said):
    assert said in faults(data)[0]


def test_many_faulty_rows_are_counted_and_the_first_twenty_told():
    told = faults("a,b\n" + "1\n" * 224)
    assert len(told) == 21
    assert "And 204 more lines of this table are at fault." in told[-1]
