"""padspec stock and plan --restock, as a maker types them."""

import json

import pytest

from .command import padspec, padspec_process, put

PAD = "pad: {name}\nsku: {name}\ntrim: {{width: 90 mm, height: 190 mm}}\nlayout: ruled\n"
HEAD = "date,event,sku,pads,each,place\n"
SALES = HEAD + "".join(
    f"2026-05-0{day},sold,A,{pads},6.50,Fair\n" if pads else f"2026-05-01,made,{day},20,,\n"
    for day, pads in (("A", 0), ("B", 0), (2, 3), (3, 4), (4, 2))
)


@pytest.fixture
def stall(tmp_path, monkeypatch):
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1780704000")  # 2026-06-06
    return put(
        tmp_path,
        a__pad__yaml=PAD.format(name="A"),
        b__pad__yaml=PAD.format(name="B"),
        fair__job__yaml="job: Fair\npads: {A: 4, B: 1}\n",
        studio__yaml="money: {currency: CAD}\n",
    )


def lines(folder) -> list[str]:
    return (folder / "stock.csv").read_text().splitlines()[1:]


def test_a_week_of_a_stall(stall):
    assert padspec(stall, "stock", "made", "fair.job.yaml").status == 0
    sold = padspec(stall, "stock", "sold", "A=3", "B=1", "--each", "6.50", "--at", "Saturday market")
    assert "Takings 26.00 CAD" in sold.out
    assert padspec(stall, "stock", "returned", "B=1", "--each", "6.5", "--date", "2026-06-07").status == 0
    assert padspec(stall, "stock", "counted", "A=0").status == 0
    assert lines(stall) == [
        "2026-06-06,made,A,4,,",
        "2026-06-06,made,B,1,,",
        "2026-06-06,sold,A,3,6.50,Saturday market",
        "2026-06-06,sold,B,1,6.50,Saturday market",
        "2026-06-07,returned,B,1,6.50,",
        "2026-06-06,counted,A,0,,",
    ]
    shown = padspec(stall, "stock").out.splitlines()
    assert shown[0].split() == ["sku", "on", "hand", "made", "sold", "returned", "corrected", "takings", "CAD"]
    assert shown[1].split() == ["A", "0", "4", "3", "0", "−1", "19.50"]
    assert shown[3].split() == ["in", "all", "1", "5", "4", "1", "−1", "19.50"]
    assert {len(line) for line in shown[:4]} == {len(shown[0])}
    data = padspec(stall, "stock", "--json").json
    assert (data["in_all"]["takings"], data["pads"][0]["corrected"]) == ("19.50", -1)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("sold", "A=9"), ("A: 4 on hand, 9 to be sold, 5 short", "padspec stock counted A=9")),
        (("sold", "AA=1"), ("has this SKU", "--new")),
        (("made", "B-OWL"), ("B-OWL=NUMBER, from 1 to 100000",)),
        (("made",), ("names no pads", "NG-MOTH=3")),
        (("mad", "A=1"), ("Did you mean padspec stock made?",)),
        (("A=1",), ("What became of these pads?", "made, sold, returned, counted")),
        (("sold", "A=1", "--each", "6,50"), ("Decimals take a point: 6.50",)),
        (("made", "A=1", "--each", "6"), ("nothing is paid where pads are made",)),
        (("sold", "A=1", "--date", "06/07/2026"), ("2026-07-06 or 2026-06-07",)),
        (("sold", "A=1", "A=2"), ("2 numbers are given",)),
        (("sold", "fair.job.yaml"), ("A job says what is made",)),
        (("sold", "A=1", "--at", "two\nlines"), ("one line",)),
        (("--each", "6.50"), ("belongs to an event",)),
        (("made", "none.job.yaml"), ("There is no such job",)),
    ],
)
def test_what_cannot_be_entered_is_told_and_changes_nothing(stall, words, said):
    padspec(stall, "stock", "made", "A=4")
    before = (stall / "stock.csv").read_bytes()
    assert padspec(stall, "stock", *words).refused(*said)
    assert padspec(stall, "stock", *words, "--json").json["problems"]
    assert (stall / "stock.csv").read_bytes() == before


def test_a_pad_without_a_design_is_entered_if_it_is_new_or_known(stall):
    assert padspec(stall, "stock", "made", "OLD=4").status == 2
    assert padspec(stall, "stock", "made", "OLD=4", "--new").status == 0
    assert padspec(stall, "stock", "sold", "OLD=1").status == 0


def test_variants_of_a_collection_are_known(stall):
    put(
        stall,
        x__collection__yaml="collection: X\ndesigns: [a.pad.yaml]\nvariants: [{axis: c, values: {red: {}}}]\n",
    )
    assert padspec(stall, "stock", "made", "A--red=1").status == 0


def test_a_history_that_sells_what_is_not_there_is_told_at_its_line_and_shown(stall):
    put(stall, stock__csv=HEAD + "2026-06-06,made,A,2,,\n2026-06-06,sold,A,3,,\n")
    done = padspec(stall, "stock")
    assert done.status == 1
    assert "stock.csv:3:1: A: 2 on hand before this line, 3 sold" in done.err
    assert "\nA" in done.out
    assert padspec(stall, "plan", "--restock").refused("stock.csv:3:1")


def test_a_currency_that_is_none_is_told(stall):
    put(stall, studio__yaml="money: {currency: CAX}\n")
    assert padspec(stall, "stock").refused("studio.yaml:1:", "CAX")


def test_without_a_ledger_nothing_is_on_hand(stall):
    assert "no line yet" in padspec(stall, "stock").out
    assert padspec(stall, "stock", "--json").json["pads"] == []
    assert not (stall / "stock.csv").exists()


def test_a_restock_by_hand_is_planned_and_written(stall):
    """A: 9 in 3 days, B none in 3; mean 1.5. A: r = 10.5, p = 4 ÷ 5, mean 2.625; B: r = 1.5, p = 4 ÷ 5."""
    put(stall, stock__csv=SALES + "2026-05-09,counted,A,1,,\n2026-05-09,counted,B,0,,\n")
    done = padspec(stall, "plan", "--restock", "--write", "--json")
    assert done.status == 0, done.err
    data = done.json
    assert data["restock"]["prior"]["mean_a_day"] == 1.5
    a, b = data["restock"]["pads"]
    assert (a["negative_binomial"], b["negative_binomial"]) == ({"r": 10.5, "p": 0.8}, {"r": 1.5, "p": 0.8})
    # B: P(0) = 0.8^1.5 = 0.7155, P(1) = 1.5 × 0.2 × P(0) = 0.2147: 0.930. A: nbinom.ppf(0.9, 10.5, 0.8) = 5.
    assert (a["wanted"], a["on_hand"], b["wanted"]) == (5, 1, 1)
    assert (a["make"] >= 4, b["make"] >= 1) == (True, True)
    job = json.loads(padspec(stall, "plan", "restock.job.yaml", "--json").out)
    assert [one["pads_wanted"] for one in job["designs"]] == [a["make"], b["make"]]
    assert job["sheets"] == data["sheets"]
    assert padspec(stall, "stock", "made", "restock.job.yaml").status == 0


def test_what_fills_the_sheets_costs_no_more_of_them(stall):
    put(stall, stock__csv=SALES + "2026-05-09,counted,A,1,,\n2026-05-09,counted,B,0,,\n")
    filled = padspec(stall, "plan", "--restock", "--json").json
    a, b = (one["wanted"] - one["on_hand"] for one in filled["restock"]["pads"])
    bare = padspec(stall, "plan", "--pads", f"A={a}", "--pads", f"B={b}", "--json").json
    assert filled["sheets"] == bare["sheets"]
    assert [d["pads_wanted"] for d in filled["designs"]] == [d["pads_made"] for d in bare["designs"]]


def test_numbers_of_the_maker_win(stall):
    put(stall, stock__csv=SALES, studio__yaml="restock: {chance: 80 %, least: 25}\n")
    done = padspec(stall, "plan", "--restock", "--pads", "A=2", "--json").json["restock"]
    assert (done["chance"], done["least"]) == (0.8, 25)
    assert [(one["make"] if one["as_asked"] else one["wanted"]) for one in done["pads"]] == [2, 25]
    assert padspec(stall, "plan", "--restock", "--least", "0", "--markets", "1").out.count("as you asked") == 0


def test_with_no_sale_it_says_so_and_proposes_nothing_or_the_least(stall):
    done = padspec(stall, "plan", "--restock")
    assert done.status == 0
    assert "No pad was sold yet" in done.out
    assert "Nothing needs to be made" in done.out
    least = padspec(stall, "plan", "--restock", "--least", "2", "--json").json
    assert [one["wanted"] for one in least["restock"]["pads"]] == [2, 2]


def test_a_day_that_sold_out_is_said_to_be_a_lower_bound(stall):
    put(stall, stock__csv=HEAD + "2026-05-01,made,A,3,,\n2026-05-02,sold,A,3,,Fair\n")
    assert "Sold out on some days: A." in padspec(stall, "plan", "--restock").out


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--restock", "--at", "Fare"), "Did you mean Fair?"),
        (("--restock", "--chance", "90"), "Did you mean 90 %?"),
        (("--restock", "--chance", "100 %"), "from 50 % to 99.9 %"),
        (("--restock", "--pads", "4"), "--least 4"),
        (("--restock", "--pads", "AB=4"), "No design here has the SKU AB"),
        (("--restock", "fair.job.yaml"), "A job says what to make"),
        (("--write",), "belongs to --restock"),
    ],
)
def test_what_is_wrong_with_a_restock_is_told(stall, words, said):
    put(stall, stock__csv=SALES)
    assert padspec(stall, "plan", *words).refused(said)


def test_a_job_of_the_makers_own_is_not_written_over(stall):
    put(stall, stock__csv=SALES + "2026-05-09,counted,A,0,,\n", restock__job__yaml="job: Mine\npads: {A: 1}\n")
    assert padspec(stall, "plan", "--restock", "--write").refused("This job is your own", "Rename it")
    assert "Mine" in (stall / "restock.job.yaml").read_text()


@pytest.mark.parametrize("words", ["['padspec', '--version']", "['padspec', 'build', '--quiet']"])
def test_the_ledger_is_not_loaded_by_what_does_not_need_it(stall, words):
    put(stall, stock__csv=SALES)
    assert padspec_process(stall, "build", "--quiet").status == 0
    code = (
        f"import sys, atexit\nsys.argv = {words}\n"
        "atexit.register(lambda: print('LOADED', [m for m in sys.modules if m.startswith('padspec.stock')]))\n"
        "from padspec.cli.main import main\nmain()"
    )
    import subprocess
    import sys

    done = subprocess.run([sys.executable, "-c", code], cwd=stall, capture_output=True, text=True, check=True)
    assert "LOADED []" in done.stdout
