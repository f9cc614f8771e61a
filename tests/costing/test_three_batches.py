"""Three invented batches, each cost summed up again here from the studio's own numbers, without padspec's sums."""

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

import pytest

from padspec.base.money import minor_digits
from padspec.cli.cost_text import cost_lines
from padspec.costing.as_data import cost_data
from padspec.costing.what_if import what_if
from padspec.jobs.inks import face_ink

from .invented import BATCHES, reckoned

each = pytest.mark.parametrize("name", [batch.name for batch in BATCHES])
F = Fraction


def amounts(name, sku):
    data = cost_data(reckoned(name), {})
    lot = next(lot for lot in data["lots"] if lot["sku"] == sku)
    return {line["name"]: line["amount"] and F(line["amount"]) for line in lot["lines"]}, lot


def test_the_stall_on_a4():
    """12 and 7 pads of 50 leaves, 3-up. Joined: 12 × 52.5 ÷ 3 = 210 sheets and 2 tests, 7 × 52.5 ÷ 3 = 122.5: 123
    and 2. Backs: 4 × 11 = 44 of a 30 × 40 in board. Edge: 90 × 6.6 mm × 2 × 200 g/m²."""
    moss, lot = amounts("Saturday stall", "T-MOSS")
    assert moss["paper"] == 212 * F("0.05")
    assert moss["board"] == pytest.approx(12 * F("3.30") / 44)
    assert float(moss["adhesive"]) == pytest.approx(12 * 90 * 6.6 * 400 / 1e9 * 24)
    assert (moss["magnets"], moss["sleeve"]) == (24 * F("0.11"), 12 * F("0.06"))
    assert (moss["label"], moss["ribbon"]) == (12 * F("0.03"), 12 * F("0.125"))
    assert moss["overhead"] == 12 * F("0.35")
    fern, other = amounts("Saturday stall", "T-FERN")
    assert fern["paper"] == 125 * F("0.05")
    assert "magnets" not in fern
    # All the hands: 2 pages to set up, 8 cuts a lift in 21 and 13 lifts, 15 cuts of one board, 4 min for one load
    # of the clamp (19 × 7.02 = 133 mm at most), and by the pad: count 40 s, 2 coats of 5, slit 15, look 10, sleeve
    # 20, extras 30; and 24 magnets of 15 s.
    by_the_pad = F(40 + 10 + 15 + 10 + 20 + 30, 60)
    hands = 2 * 3 + 8 * (21 + 13) * F(15, 60) + 15 * F(40, 60) + 4 + 19 * by_the_pad + 24 * F(15, 60)
    hours = F(lot["hours_by_hand"]) + F(other["hours_by_hand"])
    assert float(hours * 60) == pytest.approx(float(hands))
    assert moss["labour"] + fern["labour"] == pytest.approx(float(hands / 60 * 19))


def test_the_mill_on_letter():
    """40 pads of 75 leaves, three lying on letter paper: 40 × 78.75 ÷ 3 = 1050 sheets and 2 tests."""
    oats, lot = amounts("Mill shop", "H-OATS")
    assert oats["paper"] == 1052 * F("0.035")
    assert oats["ink"] is None
    assert lot["not_in_it"] == ["ink"]
    aimed = lot["offers"][0]
    assert aimed["price"].endswith(".99")
    before_tax = F(aimed["price"]) / F("1.08")
    assert float(before_tax) == pytest.approx(float(aimed["customer_pays"]) - float(aimed["tax"]))
    assert F(aimed["for_an_hour"]) >= 30


def test_the_fair_in_yen():
    kuri, lot = amounts("Autumn fair", "K-KURI")
    assert {"board", "magnets", "sleeve", "overhead"}.isdisjoint(kuri)
    assert kuri["label"] is None
    assert "." not in lot["offers"][0]["price"]
    assert F(lot["cost_of_a_good_pad"]) == pytest.approx(F(lot["total"]) / 5)


@each
def test_lines_add_up_to_the_last_digit(name):
    found = reckoned(name)
    data = cost_data(found, {})
    exact = F(0)
    for lot in found.lots:
        summed = sum((line.amount for line in lot.cost.lines if line.amount is not None), F(0))
        assert summed == lot.cost.total
        exact += summed
    assert exact == found.total
    assert float(F(data["total"])) == pytest.approx(float(exact), abs=1e-9)


@each
def test_what_the_terminal_shows_adds_up_to_the_coin(name):
    """The amounts in the table, read back from the text and added."""
    found = reckoned(name)
    money = found.batch.lots[0].design.studio.money
    coin = Decimal(1).scaleb(-minor_digits(money.currency))
    lines = iter("\n".join(cost_lines(found, {})).splitlines())
    shown = []
    for line in lines:
        if line.startswith("cost "):
            whole, one = Decimal(0), Decimal(0)
            for row in lines:
                words = row.split()
                if words[0] == "spoilage":
                    one += Decimal(words[1])
                elif words[0] == "together":
                    assert (whole, one) == (Decimal(words[1]), Decimal(words[2]))
                    shown.append(whole)
                    break
                else:
                    whole, one = whole + Decimal(words[1]), one + Decimal(words[2])
    assert len(shown) == len(found.lots)
    for amount, lot in zip(shown, found.lots, strict=True):
        exact = Decimal(lot.cost.total.numerator) / Decimal(lot.cost.total.denominator)
        assert amount == exact.quantize(coin, ROUND_HALF_UP)


@each
def test_good_pads_pay_for_spoilt_ones(name):
    for lot in reckoned(name).lots:
        assert lot.cost.each * lot.cost.lot.pads * (1 - lot.cost.spoilage) == lot.cost.total


@each
def test_hours_of_all_lots_are_the_hands_of_the_time_line(name):
    found = reckoned(name)
    assert float(sum(lot.cost.hours for lot in found.lots) * 60) == pytest.approx(found.timeline.hands, abs=1e-3)


def test_a_batch_of_its_own_size_comes_to_the_same():
    """What-if with the batch's own number is the batch, for a job of one design."""
    found = reckoned("Mill shop")
    design = found.batch.lots[0].design
    same, twice = what_if(design, face_ink(design), (40, 80))
    assert same.each == found.lots[0].cost.each
    assert sum(same.parts) == same.each
    assert twice.each < same.each


@each
def test_what_is_no_exact_figure_says_so(name):
    text = "\n".join(cost_lines(reckoned(name), {}))
    for line in text.splitlines():
        if line.startswith(("ink ", "labour ", "adhesive ")):
            assert line.rstrip().endswith("*")
    assert "estimate" in text.lower()
    assert "padspec knows no tax law" in text
