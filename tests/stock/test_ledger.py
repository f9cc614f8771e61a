"""The ledger as it is read and written: what spreadsheets, crashes and merges do to it, and what is said of it."""

from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.errors import ProblemsError
from padspec.reading.rows import tidied
from padspec.stock.append import added
from padspec.stock.events import COLUMNS, KINDS, PRICED, Event
from padspec.stock.ledger import Ledger, head, read_ledger

HEAD = "date,event,sku,pads,each,place\n"
SOLD = "2026-06-06,sold,NG-MOTH,3,6.50,Saturday market\n"


def faults(text: str | bytes, currency: str = "CAD") -> list[str]:
    try:
        read_ledger(text.encode() if isinstance(text, str) else text, currency)
    except ProblemsError as error:
        return [f"{one.place} {one.message} {one.mend}" for one in error.problems]
    return []


#: Letters of several scripts, those that part cells, those that begin formulas.
LETTERS = "aZ0é\u0308שー🦔 ,;'\"=+-@#\u00a0"
notes = st.text(LETTERS, max_size=20).map(tidied)


@st.composite
def events(draw: st.DrawFn) -> Event:
    kind = draw(st.sampled_from(KINDS))
    each = st.none() | st.integers(0, 10**8).map(lambda cents: Decimal(cents).scaleb(-2))
    return Event(
        draw(st.dates(min_value=_day("2000-01-01"), max_value=_day("2099-12-31"))).isoformat(),
        kind,
        draw(st.sampled_from("A7é")) + draw(st.text("NGabz09._-", max_size=9)),
        draw(st.integers(0 if kind == "counted" else 1, 100_000)),
        draw(each) if kind in PRICED else None,
        draw(notes | st.sampled_from(["=1+1", "'=1", "''-x", "'Tis", "@fair", 'a "b", c;d', "#N/A"])),
    )


def _day(text: str):  # type: ignore[no-untyped-def]
    from datetime import date

    return date.fromisoformat(text)


@settings(deadline=None)
@given(st.lists(events(), max_size=8), st.sampled_from(",;\t"))
def test_what_is_written_is_read_again(some: list[Event], delimiter: str) -> None:
    old = head(delimiter).encode()
    data = old + added(Ledger(delimiter=delimiter, is_new=False), some, "CAD")
    read = read_ledger(data, "CAD").events
    assert [(e.date, e.kind, e.sku, e.pads, e.each, e.place) for e in read] == [
        (e.date, e.kind, e.sku, e.pads, e.each, e.place) for e in some
    ]
    assert [e.line for e in read] == list(range(2, len(some) + 2))


@settings(deadline=None)
@given(st.lists(events(), max_size=6))
def test_no_cell_is_one_that_a_spreadsheet_would_work_out(some: list[Event]) -> None:
    import csv
    from io import StringIO

    text = added(Ledger(), some, "CAD").decode()
    cells = [cell for row in csv.reader(StringIO(text, newline="")) for cell in row]
    assert not [cell for cell in cells if cell[:1] in ("=", "+", "-", "@", "\t", "\r") and cell]
    assert text.count("\n") == len(some) + 1
    assert "\r" not in text


@pytest.mark.parametrize("currency", ["JPY", "CAD", "KWD"])
def test_prices_are_written_in_the_coins_of_the_currency(currency: str) -> None:
    written = added(Ledger(), [Event("2026-06-06", "sold", "A", 1, Decimal(6))], currency).decode()
    assert written.endswith({"JPY": ",6,\n", "CAD": ",6.00,\n", "KWD": ",6.000,\n"}[currency])


@pytest.mark.parametrize(
    "data",
    [
        "\ufeff" + HEAD + SOLD,
        HEAD.replace(",", ";") + SOLD.replace(",", ";"),
        HEAD.replace(",", "\t") + SOLD.replace(",", "\t"),
        (HEAD + SOLD).replace("\n", "\r\n"),
        HEAD.replace("\n", ",,,\n") + SOLD.replace("\n", ",,,\n") + ",,,,,,,,\n",
        "sep=,\n" + HEAD + SOLD,
        HEAD + SOLD.replace(",3,", ",03,").replace("6.50", "6.5").replace("sold", "Sold"),
    ],
    ids=["mark", "semicolons", "tabs", "CRLF", "empty columns", "sep line", "noughts"],
)
def test_what_spreadsheets_make_of_it_is_read(data: str) -> None:
    (event,) = read_ledger(data.encode(), "CAD").events
    assert (event.pads, event.each, event.place) == (3, Decimal("6.50"), "Saturday market")


def test_a_ledger_of_a_head_line_alone_is_one() -> None:
    assert read_ledger(HEAD.encode(), "CAD").events == ()
    assert read_ledger(b"", "CAD").is_new


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("06/06/2026,sold,A,1,,", "stock.csv:2:1 date: 06/06/2026 is not a day"),
        ("06/06/2026,sold,A,1,,", "Write 2026-06-06: year-month-day."),
        ("05/06/2026,sold,A,1,,", "Write 2026-06-05 or 2026-05-06"),
        ("2026-6-6,sold,A,1,,", "Write 2026-06-06"),
        ("2026-02-30,sold,A,1,,", "The calendar has no 2026-02-30"),
        ("0206-06-06,sold,A,1,,", "from 2000-01-01 to 2099-12-31"),
        ("2026-06-06,sodl,A,1,,", "stock.csv:2:12 event: sodl is no event. Did you mean sold?"),
        ("2026-06-06,sold,A B,1,,", "stock.csv:2:17 sku: A B is no SKU"),
        (
            "2026-06-06,sold,A,0,,",
            "stock.csv:2:19 pads: 0 is no number of pads. Write a whole number from 1 to 100000",
        ),
        ("2026-06-06,sold,A,-1,,", "pads: -1"),
        ("2026-06-06,sold,A,1.0,,", "pads: 1.0"),
        ("2026-06-06,sold,A,100001,,", "from 1 to 100000"),
        ("2026-06-06,counted,A,-1,,", "from 0 to 100000"),
        ('2026-06-06,sold,A,1,"6,50",', "each: 6,50 is no price. Decimals take a point: 6.50"),
        ("2026-06-06,sold,A,1,$6,", "stock.csv:2:21 each: $6 is no price. Write a number from 0 to 1000000"),
        ("2026-06-06,sold,A,1,6.505,", "counts in 0.01. Enter some pads at 6.50 and the others at 6.51"),
        ("2026-06-06,made,A,1,6.50,", "nothing is paid where pads are made"),
        ("2026-06-06,sold,A,1", "This row has 4 cells, and the head line names 6"),
        (f"2026-06-06,sold,A,1,,{'x' * 201}", "201 characters"),
        ('2026-06-06,sold,A,1,,"two\nlines"', "Write it in one line"),
        (HEAD.strip(), "stock.csv:2:1 The head line stands here again"),
    ],
)
def test_a_fault_is_told_with_line_column_range_and_mend(line: str, said: str) -> None:
    told = faults(f"{HEAD}{line}\n")
    assert len(told) == 1
    assert said in told[0]


def test_all_faults_are_told_and_no_more_than_twenty_in_full() -> None:
    assert len(faults(HEAD + "x,y,,z,w,\n")) == 5
    told = faults(HEAD + "x,sold,A,1,,\n" * 30)
    assert len(told) == 21
    assert "10 more" in told[-1]


@pytest.mark.parametrize("cut", range(1, len(SOLD.encode())))
def test_a_line_that_is_torn_anywhere_is_told_and_never_read(cut: int) -> None:
    told = faults((HEAD + SOLD).encode() + SOLD.encode()[:cut])
    assert any("stock.csv:3:1 The last line has no end" in one for one in told)


def test_marks_of_a_merge_are_told_by_line_with_the_mend() -> None:
    told = faults(f"{HEAD}<<<<<<< HEAD\n{SOLD}=======\n{SOLD}>>>>>>> other\n")
    assert [one.split()[0] for one in told] == ["stock.csv:2:1", "stock.csv:4:1", "stock.csv:6:1"]
    assert "stock.csv merge=union" in told[0]


def test_another_head_line_and_another_encoding_are_told() -> None:
    assert "has to be date,event,sku,pads,each,place" in faults("a,b\n1,2\n")[0]
    assert "UTF-16" in faults((HEAD + SOLD).encode("utf-16"))[0]
    assert "not UTF-8" in faults(HEAD.encode() + b"2026-06-06,sold,A,1,,\xff\n")[0]


def test_the_columns_are_those_that_the_head_line_names() -> None:
    assert head(",") == HEAD == ",".join(COLUMNS) + "\n"
