"""The block: thickness and weight against sums worked by hand, and what a studio may write of its paper and
board.
"""

import pytest
from kit import pad, problems

from padspec.making.adhesive import drying_minutes, gluing_of
from padspec.making.block import block_of
from padspec.making.magnets import hold_of
from padspec.making.sleeve import fit_in

SLIM = "pad: List\ntrim: {width: 3 1/2 in, height: 8 1/2 in}\nleaves: 50\nlayout: ruled\n"
#: 28 lb bond at 0.120 mm (US Government Paper Specification Standards, O-63), a back of 22 point, 0.645 g/cm³.
PAPER = "stock: {grammage: 28 lb bond, caliper: 0.120 mm}\nboard: {thickness: 0.022 in, density: 0.645}\n"


def block(design=SLIM, studio=PAPER):
    return block_of(pad(design, studio).design)


def test_fifty_leaves_on_22_point_board():
    """50 × 0.120 = 6.00 mm, and 22 × 0.0254 = 0.5588: 6.5588 mm; 211.67 sheets to the inch."""
    found = block()
    assert found.thickness.value == pytest.approx(6.5588)
    assert pytest.approx(211.67, abs=0.005) == 25.4 / 0.120


def test_its_weight():
    """50 leaves of 3.5 × 8.5 in at 105.27 g/m²: 101.03 g; the back 6.92 g."""
    assert block().weight.value == pytest.approx(101.03 + 6.92, abs=0.01)


def test_what_a_delivery_is_off_counts_whole_and_paper_and_board_join_by_squares():
    """7 % of 6 mm and 5 % of 0.5588 mm."""
    assert block().thickness.error == pytest.approx((0.42**2 + 0.02794**2) ** 0.5)


def test_bulk_makes_the_caliper():
    """ISO 534: 105 g/m² at 1.143 cm³/g is 0.120 mm."""
    found = block(studio="stock: {grammage: 105 g/m2, bulk: 1.143}\nboard: {thickness: 0 mm}\n")
    assert found.thickness.value == pytest.approx(6.0, abs=0.002)


def test_caliper_and_bulk_together_are_refused():
    told = problems(SLIM, "stock: {caliper: 0.12 mm, grammage: 100 g/m2, bulk: 1.3}\n")
    assert any("0.13 mm" in line and "take the other out" in line for line in told)


def test_points_of_board_are_not_points_of_type():
    told = problems(SLIM, "board: {thickness: 22 pt}\n")
    assert any("0.5588 mm" in line for line in told)


def test_magnets_make_it_thicker_and_heavier():
    bare = block()
    found = block(
        studio=PAPER + "magnets: {count: 2, width: 25 mm, height: 80 mm, thickness: 0.5 mm, density: 3.7}\n"
    )
    assert found.thickness.value - bare.thickness.value == pytest.approx(0.5)
    assert found.stacked.value == bare.stacked.value
    # 2 × 2.5 × 8 × 0.05 cm³ × 3.7 g/cm³
    assert found.weight.value - bare.weight.value == pytest.approx(7.4)


def test_one_thin_strip_lets_a_fresh_pad_slide():
    """25 × 80 mm are 20 cm²; × 24.4 = 488 g straight off, × 0.20 = 98 g against sliding, under the 108 g of the
    pad.
    """
    strip = "{count: 1, width: 25 mm, height: 80 mm, thickness: 0.1 mm, density: 0.5, pull: 24.4, safety: 1}"
    studio = f"{PAPER}magnets: {strip}\n"
    design = pad(SLIM, studio).design
    hold = hold_of(design, block_of(design))
    assert (hold.pull, hold.slide) == (pytest.approx(488), pytest.approx(97.6))
    assert hold.slide < 108 < hold.needed
    assert not hold.holds
    assert hold.measured


def test_as_many_magnets_as_are_called_enough_are_and_one_less_is_not():
    studio = PAPER + "magnets: {count: 1, width: 20 mm, height: 40 mm, thickness: 0.5 mm}\n"
    design = pad(SLIM, studio).design
    enough = hold_of(design, block_of(design)).enough
    for count, holds in ((enough, True), (enough - 1, False)):
        tried = pad(f"{SLIM}magnets: {count}\n", studio).design
        assert hold_of(tried, block_of(tried)).holds is holds


def test_a_design_without_magnets_has_none_whatever_the_studio_says():
    design = pad(f"{SLIM}magnets: 0\n", PAPER + "magnets: {count: 2}\n").design
    assert hold_of(design, block_of(design)) is None


@pytest.mark.parametrize(("edge", "length"), [("head", 88.9), ("foot", 88.9), ("left", 215.9)])
def test_the_edge_that_is_brushed_is_as_long_as_the_side_that_is_glued(edge, length):
    design = pad(SLIM, f"{PAPER}glue-edge: {{edge: {edge}}}\nadhesive: {{coats: 2, rate: 150}}\n").design
    found = gluing_of(design, block_of(design))
    assert found.area == pytest.approx(length * 6.5588)
    assert found.grams == pytest.approx(length * 6.5588 * 150 * 2 / 1e6)


def test_coats_dry_one_after_the_other_and_the_last_sets():
    assert (
        drying_minutes(pad(SLIM, "adhesive: {coats: 3, dry-minutes: 12, set-minutes: 45}\n").design) == 2 * 12 + 45
    )


SLEEVES = """sleeves:
  - {name: snug, width: 97 mm, length: 224 mm}
  - {name: right, width: 99 mm, length: 226 mm}
  - {name: huge, width: 150 mm, length: 300 mm}
"""


def test_the_sleeve_with_its_ease_and_least_air_is_taken():
    design = pad(SLIM, PAPER + SLEEVES).design
    assert design.finish.sleeve.name == "right"
    fit = fit_in(design.finish.sleeve, design, block_of(design))
    assert (fit.spare.width, fit.spare.height) == (
        pytest.approx(99 - 88.9 - 6.5588),
        pytest.approx(226 - 215.9 - 3.2794),
    )


def test_a_leaf_made_for_a_sleeve_slides_into_it_and_passes():
    """97 − 6.5588 − 3 = 87.44 wide and 224 − 3.2794 − 6 = 214.72 high, down to half a millimetre."""
    made = pad(SLIM.replace("{width: 3 1/2 in, height: 8 1/2 in}", "{fit-sleeve: snug}"), PAPER + SLEEVES)
    assert (made.design.trim.width, made.design.trim.height) == (87.0, 214.5)
    assert made.design.finish.sleeve.name == "snug"
    assert not [finding for finding in made.findings if finding.check == "sleeve-fit"]


def test_a_side_that_is_written_stays():
    made = pad(
        SLIM.replace("{width: 3 1/2 in, height: 8 1/2 in}", "{fit-sleeve: snug, height: 190 mm}"), PAPER + SLEEVES
    )
    assert (made.design.trim.width, made.design.trim.height) == (87.0, 190.0)


@pytest.mark.parametrize(
    ("design", "words"),
    [
        ("trim: {fit-sleeve: snugg}", ("no sleeve snugg", "snug")),
        ("trim: {width: 90 mm}", ("trim lacks height",)),
        ("trim: {width: 90 mm, height: 190 mm}\nsleeve: bag", ("no sleeve bag", "snug, right, huge")),
        ("trim: {fit-sleeve: snug}\nleaves: 620", ("all that the sleeve snug leaves", "20 mm")),
        ("trim: {fit-sleeve: snug}\nleaves: 900", ("by its thickness alone", "fewer leaves")),
    ],
)
def test_what_cannot_be_sleeved_is_told(design, words):
    told = " ".join(problems(f"pad: List\n{design}\nlayout: ruled\n", PAPER + SLEEVES))
    assert all(word in told for word in words), told
