"""padspec cost: from the command line, with what is wrong told."""

import pytest

from .command import padspec, put

PAD = "pad: Moss list\nsku: M\ntrim: {width: 90 mm, height: 190 mm}\nlayout: ruled\nprice: 6.50\n"
STUDIO = "stock: {price: 0.05}\nmoney: {currency: CAD, wage: 20}\n"


@pytest.fixture
def stall(tmp_path):
    return put(tmp_path, m__pad__yaml=PAD, studio__yaml=STUDIO)


def test_what_has_no_price_is_named_with_its_key(stall):
    out = padspec(stall, "cost", "--pads", "6").out
    for key in ("ink: the cartridges", "board.price", "adhesive.price", "price of the extra label"):
        assert key in out
    assert "Not in it: ink" in out


def test_as_data_all_amounts_are_exact_text(stall):
    data = padspec(stall, "cost", "--pads", "6", "--json").json
    (lot,) = data["lots"]
    # 6 × 52.5 ÷ 3 = 105 sheets and 2 tests
    assert lot["lines"][0] == {
        "name": "paper",
        "what": "107 sheets of A4, overs and tests in",
        "amount": "5.35",
        "lacks": "",
        "estimate": "",
    }
    assert [offer["price"] for offer in lot["offers"]][1] == "6.50"


def test_other_sizes_are_a_table_and_a_plot(stall):
    outcome = padspec(stall, "cost", "--pads", "6", "--what-if", "5,20")
    assert "until done" in outcome.out
    drawn = (stall / "out/jobs/Moss-list/M-sizes.svg").read_text()
    assert drawn.startswith("<?xml")
    assert "Moss list" in drawn


@pytest.mark.parametrize(("sizes", "words"), [("5,x", "x is no number"), ("0", "1 to 2000"), (",", "0 sizes")])
def test_sizes_that_are_none_are_told(stall, sizes, words):
    assert padspec(stall, "cost", "--what-if", sizes).refused(words)


@pytest.mark.parametrize(
    ("studio", "words"),
    [
        ("money: {currency: CAF}", ("CAF is no currency", "CAD")),
        ("money: {currency: XAU}", ("XAU", "counted in coins")),
        ("money: {currency: JPY, ending: .99}", ("JPY is counted in 0 digits", "none or .00")),
        ("money: {aim: {margin: 98 %}, fee: {share: 2.6 %}}", ("97.4 %", "Aim for less")),
        ("money: {spoilage: 100 %}", ("less than 100 %",)),
        ("stock: {grammage: 28 lb}", ("names no grade", "bond")),
        ("sleeves: [{name: auto, width: 100 mm, length: 200 mm}]", ("another name",)),
    ],
)
def test_a_studio_that_cannot_be_is_told_at_its_place(stall, studio, words):
    put(stall, studio__yaml=f"{studio}\n")
    assert padspec(stall, "cost").refused("studio.yaml:1:", *words)
