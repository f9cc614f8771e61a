"""What is measured along a cut is what the sheet prints there, and cuts lie where leaves touch.

Shares that are looked for follow from the stripes' own arithmetic: of two rows of stripes, half stripe and half
gap, one shifted by d against the other, a share of 2 d ÷ size differs.
"""

from dataclasses import dataclass
from math import cos, radians

import numpy as np
import pytest
from kit import PLAIN

from padspec.base.colour import Colour
from padspec.base.geometry import Box
from padspec.checks.butted import LEAST_SIGHT, NOTED_SLIP, bench_of
from padspec.checks.check import Subject
from padspec.checks.shared_cuts.cuts import ends_marked, shared_cuts
from padspec.checks.shared_cuts.measures import HAIR, STEP, sights, slips
from padspec.checks.shared_cuts.prints import RasterPrint, print_of, seen
from padspec.checks.shared_cuts.remedies import Bench, out_of_step, run_on
from padspec.checks.sheet import USUAL_STACK
from padspec.checks.under import Under, look_under
from padspec.draw.pdf import sheet_pdf
from padspec.draw.png import rasterise
from padspec.pipeline import Pad

from .cases import BUTTED, UNMARKED, edited, made, stripes

MIXED = {**BUTTED, "trim.width": "60 mm", "trim.height": "144 mm"}
FOUR = {**BUTTED, "trim.width": "95 mm", "trim.height": "138 mm"}
#: How far apart the middles of the cells are that are compared across a cut.
APART = 2 * HAIR + STEP


def built(settings: dict[str, object]) -> Pad:
    return made(edited(PLAIN, settings))


@dataclass(frozen=True)
class Flat:
    """A leaf that prints one colour everywhere."""

    colour: Colour
    bleed: float = 3.0

    def cells(self, _: Box, rows: int, columns: int) -> np.ndarray:
        return np.broadcast_to(self.colour.unit, (rows, columns, 3))


def flat(red: int, green: int, blue: int) -> Flat:
    return Flat(Colour(red, green, blue))


# What is measured.


@pytest.mark.parametrize("size", [7.2, 7.6, 8.3, 8.8])
def test_the_share_that_differs_is_that_of_shifted_stripes(size):
    leaf = print_from(stripes(f"{size} mm"))
    shift = (90 - APART) * cos(radians(45)) % size
    expected = 2 * min(shift, size - shift) / size
    sheet = built(UNMARKED).sheet
    (sight,) = sights(sheet, [leaf] * sheet.n_up)
    # A cell of 0.25 mm differs as soon as a part of it does: 0 to 0.35 mm more at each of four edges a period.
    period = size / cos(radians(45))
    assert expected - 0.01 < sight.share < expected + 4 * 0.35 / period
    assert sight.longest_blind == pytest.approx((1 - sight.share) / 2 * period, abs=0.3)


def print_from(settings: dict[str, object]) -> RasterPrint:
    face = built({**UNMARKED, **settings}).face
    return print_of(face, look_under(face), 1.3)


@pytest.mark.parametrize(
    ("size", "telling"),
    [("10 mm", False), ("12 mm", True), ("15 mm", False), ("90 mm", False), ("60 mm", True), ("400 mm", False)],
)
def test_upright_stripes_forgive_where_the_width_holds_them_a_whole_number_of_times(size, telling):
    """90 mm: 9 of 10 mm, 6 of 15 mm; 7½ of 12 mm and 1½ of 60 mm change at the cut itself, into stripe on one side
    and gap on the other. Of 400 mm there is but one stripe, which covers the cut and all around it.
    """
    sheet = built(UNMARKED).sheet
    leaf = print_from(stripes(size, angle=0))
    (slip,) = slips(sheet, [leaf] * sheet.n_up, USUAL_STACK)
    assert slip.share == (1.0 if telling else 0.0)


def test_colours_of_both_neighbours_are_compared():
    """Leaves of two colours, as a gang sheet has them: a cut between unlike ones is found, and shows."""
    sheet = built(UNMARKED).sheet
    red, blue = flat(200, 60, 60), flat(60, 60, 200)
    found = [(s.kind.cut.name, s.share) for s in sights(sheet, [red, red, blue])]
    assert found == [("the cut between leaf 1 and leaf 2", 0.0), ("the cut between leaf 2 and leaf 3", 1.0)]
    assert [slip.share for slip in slips(sheet, [red, red, blue], 1.2)] == [0.0, 1.0]


def test_a_cut_that_would_show_one_way_only_tells_on_that_side():
    """The first leaf's ground goes on as the second's; the second's own, continued, is not like the first's."""

    class HalfBlue(Flat):
        def cells(self, box: Box, rows: int, columns: int) -> np.ndarray:
            x = box.x + (np.arange(columns) + 0.5) * box.width / columns
            colours = np.where((x > 90)[:, None], [0.2, 0.2, 0.8], [0.8, 0.2, 0.2])
            return np.broadcast_to(colours, (rows, columns, 3))

    red_with_blue_bleed = HalfBlue(Colour(200, 60, 60))
    sheet = built(UNMARKED).sheet
    (first, _) = slips(sheet, [red_with_blue_bleed, flat(51, 51, 204), flat(51, 51, 204)], 1.2)
    assert first.ways == (((0.0, 190.0),), ())


@pytest.mark.parametrize("settings", [BUTTED, FOUR, MIXED], ids=["lying", "four", "mixed"])
def test_what_is_seen_of_a_leaf_is_what_the_sheet_prints_there(settings):
    """Inside every trim line, of upright and of lying leaves: against the pixels of the very PDF that prints."""
    whole = built({**settings, **stripes("9 mm", angle=30), "art.file": "moth.png", "panel.inset": "0 mm"})
    face, sheet = whole.face, whole.sheet
    leaf = print_of(face, look_under(face), 1.3)
    paper = RasterPrint(Under(rasterise(sheet_pdf(face.scene, sheet), 300), 0.0))
    for slot in sheet.slots:
        inner = slot.trim.inset(0.1)  # past the pixels that neighbours share
        for edge in (
            Box(inner.x, inner.y, 1.0, inner.height),
            Box(inner.right - 1, inner.y, 1.0, inner.height),
            Box(inner.x, inner.y, inner.width, 1.0),
            Box(inner.x, inner.bottom - 1, inner.width, 1.0),
        ):
            rows, columns = round(edge.height * 2), round(edge.width * 2)
            off = np.abs(seen(leaf, slot, edge, rows, columns) - paper.cells(edge, rows, columns))
            assert off.mean() < 0.01


def test_rules_that_run_into_the_trim_are_seen():
    near = built({**BUTTED, "panel.inset": "0 mm", "panel.pad": "0 mm", "rows.colour": "black"}).face
    under = look_under(near)
    assert print_of(near, under, 1.3).raster is not under
    darkest = print_of(near, under, 1.3).cells(Box(0, 0, 0.5, 190), 760, 1).min()
    assert darkest < 0.3
    far = built(BUTTED).face
    assert print_of(far, under, 1.3).raster is under


def test_cells_are_exact_means_of_pixels():
    """A ramp of pixels of 1 mm: the mean from 0.5 to 2.0 is (0.5 × 0 + 1 × 50) ÷ 1.5."""
    pixels = np.zeros((2, 4, 3), np.uint8)
    pixels[...] = np.array([0, 50, 100, 150])[None, :, None]
    leaf = RasterPrint(Under(pixels, 0.0, 25.4))
    cells = leaf.cells(Box(0.5, 0.0, 3.0, 2.0), 1, 2)[0, :, 0] * 255
    assert cells == pytest.approx([(0.5 * 0 + 50) / 1.5, (100 + 0.5 * 150) / 1.5])


def test_past_the_bleed_its_outermost_goes_on():
    pixels = np.zeros((2, 3, 3), np.uint8)
    pixels[:, 2] = 90
    leaf = RasterPrint(Under(pixels, 1.0, 25.4))
    assert leaf.cells(Box(1.0, 0.0, 4.0, 1.0), 1, 4)[0, :, 0] * 255 == pytest.approx([90] * 4)


# What would mend a cut, each tried on the leaf that it makes.


def bench(settings: dict[str, object]) -> Bench:
    whole = built(settings)
    return bench_of(Subject(whole.design, whole.face, whole.sheet, look_under(whole.face)))


def all_told_apart(seen):
    return all(sight.share >= LEAST_SIGHT for sight in seen)


def always(_):
    return True


def hardly_shown(shown):
    return all(slip.share <= NOTED_SLIP for slip in shown)


@pytest.mark.parametrize("kind", ["stripes", "dots", "gingham", "scallop", "lattice", "wave"])
def test_running_on_is_offered_for_every_kind_at_any_angle(kind):
    some = bench({**BUTTED, **stripes("8.3 mm", angle=20, kind=kind)})
    assert not hardly_shown(some.shown())
    remedy = run_on(some, hardly_shown, all_told_apart)
    assert (("ground", "pattern", "phase"), "run-on") in remedy.changes


def test_running_on_is_not_offered_where_more_than_the_pattern_shows():
    """A panel that reaches the trim breaks off at the cut, whatever its ground does."""
    some = bench({**BUTTED, **stripes("8.485 mm"), "panel.inset": "0 mm"})
    assert run_on(some, hardly_shown, all_told_apart) is None


def test_out_of_step_is_offered_where_it_makes_the_sides_differ():
    remedy = out_of_step(bench({**UNMARKED, **stripes("7.955 mm")}), all_told_apart)
    assert remedy.changes == (
        (("ground", "pattern", "kind"), "stripes"),
        (("ground", "pattern", "phase"), "out-of-step"),
    )


def test_out_of_step_is_not_offered_where_that_is_not_enough():
    """Small dots out of step differ along twice the share of the edge that they take up, a third at most."""
    assert out_of_step(bench({**UNMARKED, **stripes("6 mm", mark="20 %", kind="dots")}), all_told_apart) is None


@pytest.mark.parametrize("kind", ["split", "gradient"])
def test_no_phase_is_offered_for_a_kind_that_has_none(kind):
    pattern = {"kind": kind, "colour": "#305070", "angle": 0}
    some = bench({**UNMARKED, "ground.colour": "#f0e0c0", "ground.pattern": pattern})
    assert run_on(some, always, all_told_apart) is None
    assert out_of_step(some, always) is None


def test_the_phase_that_a_pattern_has_is_not_offered_again():
    settings = {**UNMARKED, **stripes("7.955 mm")}
    settings["ground.pattern"] = {**settings["ground.pattern"], "phase": "out-of-step"}
    assert out_of_step(bench(settings), always) is None


# Where cuts lie.


def test_rows_and_columns_share_one_cut_right_across():
    cuts = [(cut.name, cut.upright, cut.length) for cut in shared_cuts(built(FOUR).sheet)]
    assert cuts == [
        ("the cut between leaves 1, 2 and leaves 3, 4", False, 190.0),
        ("the cut between leaves 1, 3 and leaves 2, 4", True, 276.0),
    ]


def test_cuts_of_a_mixed_sheet_end_where_their_leaves_do():
    """Two lying leaves of 144 × 60 mm above three upright ones of 60 × 144 mm, all from x = 15 mm: the lower three
    reach to 195 mm, and only 144 mm of their head is shared. Inner cuts end at a leaf, where no mark can stand.
    """
    sheet = built(MIXED).sheet
    cuts = [(c.name, c.upright, c.at, c.start, c.end, ends_marked(c, sheet)) for c in shared_cuts(sheet)]
    assert cuts == [
        ("the cut between leaf 1 and leaf 2", False, 76.5, 15.0, 159.0, True),
        ("the cut between leaf 2 and leaves 3, 4, 5", False, 136.5, 15.0, 159.0, True),
        ("the cut between leaf 3 and leaf 4", True, 75.0, 136.5, 280.5, False),
        ("the cut between leaf 4 and leaf 5", True, 135.0, 136.5, 280.5, False),
    ]


def test_end_marks_must_stand_at_both_ends():
    marked, one_end = built(BUTTED).sheet, built({**BUTTED, "sheet.bleed": "5 mm"}).sheet
    assert all(ends_marked(cut, marked) for cut in shared_cuts(marked))
    assert not any(ends_marked(cut, one_end) for cut in shared_cuts(one_end))


def test_leaves_without_any_bleed_share_their_cuts_too():
    bare = built({**BUTTED, "sheet.bleed": "0 mm", "sheet.least-bleed": "0 mm"}).sheet
    assert len(shared_cuts(bare)) == 2
