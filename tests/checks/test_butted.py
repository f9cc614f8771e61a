"""Butted leaves: the two questions pull apart, every remedy cures, and the proof shows what was found.

Limits are common practice, no published source.
"""

from math import cos, radians

import numpy as np
from kit import PLAIN, pad

from padspec.checks import butted, cut_stretches
from padspec.checks.check import Subject
from padspec.checks.cut_stretches import cut_stretches as stretches_of
from padspec.checks.shared_cuts import leaf
from padspec.checks.under import Under, look_under
from padspec.draw.outputs import DrawWish
from padspec.pipeline import Pad, draw

from .cases import BUTTED, TIGHT, UNMARKED, edited, made, mended, of, stripes

CLASH, RUNNING = stripes("8.485 mm"), stripes("7.955 mm")


def built(settings: dict[str, object]) -> Pad:
    return made(edited(PLAIN, settings))


def names(settings: dict[str, object]) -> set[str]:
    """The checks of butted leaves that find something."""
    return {f.check for f in built(settings).findings} & {"cut-visibility", "miscut-shows"}


def cured(settings: dict[str, object], check: str) -> tuple[dict[str, str], set[str]]:
    """What the remedy of a check sets, and which checks of butted leaves find something afterwards."""
    text = edited(PLAIN, settings)
    finding = of(made(text), check)[0]
    changes = {".".join(path): value for path, value in finding.remedy.changes}
    after = made(mended(text, finding))
    return changes, {f.check for f in after.findings} & {"cut-visibility", "miscut-shows"}


# The two questions pull apart.


def test_a_plain_ground_without_end_marks_cannot_be_found_but_forgives():
    assert names(UNMARKED) == {"cut-visibility"}


def test_two_clashing_edges_are_found_but_do_not_forgive():
    assert names({**UNMARKED, **CLASH}) == {"miscut-shows"}


def test_a_ground_that_runs_on_hides_the_cut_and_forgives():
    assert names({**UNMARKED, **RUNNING}) == {"cut-visibility"}


def test_with_end_marks_a_ground_that_runs_on_is_well():
    assert names({**BUTTED, **RUNNING}) == set()


# Remedies, in their order: each rebuilt.


def test_end_marks_cure_a_cut_that_cannot_be_found():
    assert cured(UNMARKED, "cut-visibility") == ({"sheet.marks": "true"}, set())


def test_the_largest_bleed_that_leaves_room_for_end_marks_cures():
    """(201.6 − 190) ÷ 2 = 5.8 mm beside the leaves, less the least mark of 2 mm and its gap of 0.3 mm: 3.5 mm."""
    wide = {**BUTTED, "sheet.bleed": "5 mm"}
    assert cured(wide, "cut-visibility") == ({"sheet.bleed": "3.5 mm"}, set())
    assert "cut-visibility" in names({**BUTTED, "sheet.bleed": "3.6 mm"})


def test_a_pattern_out_of_step_cures_a_cut_that_has_no_room_for_end_marks():
    changes, left = cured({**TIGHT, **RUNNING}, "cut-visibility")
    assert changes == {"ground.pattern.kind": "stripes", "ground.pattern.phase": "out-of-step"}
    assert left == {"miscut-shows"}, "what can be found by its colours shows when it is off"


def test_a_pattern_that_runs_on_cures_a_cut_that_would_show():
    changes, left = cured({**BUTTED, **CLASH}, "miscut-shows")
    assert changes == {"ground.pattern.kind": "stripes", "ground.pattern.phase": "run-on"}
    assert left == set()


def test_a_pattern_that_runs_on_brings_the_end_marks_that_it_then_needs():
    changes, left = cured({**UNMARKED, **CLASH}, "miscut-shows")
    assert changes["sheet.marks"] == "true"
    assert left == set()


def test_a_gutter_cures_both_where_nothing_else_does():
    """Twice the stacked error of 1.22 mm, rounded up to a tenth."""
    cut_off = {**TIGHT, "panel.inset": "0 mm", "ground.colour": "#c0d8e8"}
    assert names(cut_off) == {"cut-visibility", "miscut-shows"}
    for check in ("cut-visibility", "miscut-shows"):
        assert cured(cut_off, check) == ({"sheet.gutter": "2.5 mm"}, set())


def test_a_gutter_that_costs_a_face_says_how_many_then_fit():
    """2.5 mm more than 3 × 95.1 mm + 3 mm have room in 288.6 mm."""
    tight = {**TIGHT, "trim.width": "95.1 mm"}
    finding = of(built(tight), "cut-visibility")[0]
    assert "2-up, not 3" in finding.remedy.text
    assert built({**tight, "sheet.gutter": "2.5 mm"}).sheet.n_up == 2


def test_for_a_mere_note_a_gutter_is_named_and_not_proposed():
    """A split that slants by 15° meets itself 24 mm off, on a cut of 190 mm; no phase would mend it."""
    slanted = {"ground.colour": "#f0e0c0", "ground.pattern": {"kind": "split", "colour": "#305070", "angle": 75}}
    finding = of(built({**BUTTED, **slanted}), "miscut-shows")[0]
    assert finding.severity.word == "note"
    assert "gutter: 2.5 mm" in finding.remedy.text
    assert finding.remedy.changes == ()


def test_a_pattern_that_the_studio_sets_is_mended_in_the_design():
    pattern = "{kind: stripes, colour: '#305070', size: 8.485 mm, angle: 45}"
    studio = f"ground: {{colour: '#f0e0c0', pattern: {pattern}}}\n"
    text = edited(PLAIN, BUTTED)
    finding = of(pad(text, studio), "miscut-shows")[0]
    assert finding.remedy.changes
    assert of(pad(mended(text, finding), studio), "miscut-shows") == []


# What is said.


def test_the_worst_cut_is_named_with_its_length_and_those_like_it():
    finding = of(built(UNMARKED), "cut-visibility")[0]
    assert "The cut between leaf 1 and leaf 2, 190 mm long," in finding.message
    assert "2 cuts are alike" in finding.message
    assert finding.measured.startswith("0 % of 190 mm, 190 mm at a stretch")


def test_a_finding_points_at_the_gutter():
    for settings, check in ((UNMARKED, "cut-visibility"), ({**BUTTED, **CLASH}, "miscut-shows")):
        text = edited(PLAIN, settings)
        line = text.splitlines().index("  gutter: 0 mm") + 1
        assert of(made(text), check)[0].place.line == line


def test_a_limit_of_the_makers_own_holds():
    """In step by a fifth of a stripe: about 40 % differ."""
    across = 90 * cos(radians(45))
    fifth = stripes(f"{across / 7.2:.4f} mm")
    assert "cut-visibility" in names({**UNMARKED, **fifth})
    assert "cut-visibility" not in names({**UNMARKED, **fifth, "limits.cut-visibility": "30 %"})
    softer = built({**BUTTED, **CLASH, "limits.miscut-shows": {"warning": "100 %"}})
    assert [f.severity.word for f in of(softer, "miscut-shows")] == ["note"]


# What it costs.


def test_a_guttered_sheet_costs_nothing(monkeypatch):
    plain = built(CLASH)

    def refuse(*_: object) -> None:
        raise AssertionError("nothing is shared, and nothing is to be looked at")

    monkeypatch.setattr(butted, "leaf_print", refuse)
    subject = Subject(plain.design, plain.face, plain.sheet, Under(np.zeros((1, 1, 3), np.uint8), 3.0))
    assert butted.bench_of(subject) is None


def test_a_butted_sheet_is_not_drawn_again(monkeypatch):
    """What lies under the lines is there already."""
    plain = built({**BUTTED, **RUNNING})
    under = look_under(plain.face)
    monkeypatch.setattr(leaf, "look_under", None)
    bench = butted.bench_of(Subject(plain.design, plain.face, plain.sheet, under))
    assert bench.leaf.raster is under


# The proof.


def outputs(settings: dict[str, object]) -> dict[str, bytes]:
    return {name.rpartition("/")[2]: data for name, data in draw(built(settings), DrawWish()).items()}


def drawn(settings: dict[str, object]) -> list[tuple[str, bool, float, tuple[tuple[float, float], ...]]]:
    whole = built(settings)
    found = stretches_of(whole.design, whole.face, whole.sheet, whole.findings)
    return [(s.kind, s.upright, s.at, s.spans) for s in found]


def test_blind_stretches_are_drawn_on_every_cut_that_is_alike():
    assert drawn(UNMARKED) == [("blind", False, 103.5, ((0.0, 190.0),)), ("blind", False, 193.5, ((0.0, 190.0),))]


def test_telling_stretches_are_drawn_on_both_sides():
    kinds = {(kind, at) for kind, _, at, _ in drawn({**BUTTED, **CLASH})}
    assert kinds == {(f"telling-{way}", at) for way in ("before", "after") for at in (103.5, 193.5)}


def test_nothing_is_drawn_where_nothing_is_found(monkeypatch):
    monkeypatch.setattr(cut_stretches, "look_under", None)
    assert drawn(BUTTED) == []


def test_what_the_maker_allows_is_not_drawn():
    assert drawn({**UNMARKED, "allow.cut-visibility": "by eye"}) == []


def test_the_proof_shows_what_the_paper_never_does():
    found = outputs(UNMARKED)
    accepted = outputs({**UNMARKED, "allow.cut-visibility": "by eye"})
    assert found["sheet.png"] != accepted["sheet.png"]
    assert found["face.png"] == accepted["face.png"]
    assert found["sheet.pdf"] == accepted["sheet.pdf"]
