"""What changed, in words: each kind of change that a maker may make is told, and nothing else is."""

from dataclasses import replace
from functools import lru_cache

import pytest
from coloraide import Color
from kit import MULBERRY, PLAIN, apply, disc, disc_on_ground, folder

from padspec.base.colour import Colour
from padspec.base.findings import Finding, Severity
from padspec.base.numbers import mm_text
from padspec.base.place import Place
from padspec.comparing.changes import Made, changes, delta_e
from padspec.comparing.facts import every_fact, facts
from padspec.comparing.findings import finding_changes
from padspec.comparing.told import Change
from padspec.compose.compose import compose
from padspec.pipeline import Pad, make
from padspec.reading.gather import gather
from padspec.resolve.resolve import resolve
from padspec.sheet.tile import tile

PICTURE = PLAIN + "art: {file: art/moth.png}\n"


def made(yaml: str, studio: str = "", files: dict[str, bytes] | None = None, path: str = "x.pad.yaml") -> Made:
    workspace = folder(yaml, studio, files, path)
    pad = make(path, workspace)
    return Made(pad, facts(pad, workspace.seen))


def found(before: str, after: str, studio: str = "", studio_after: str | None = None) -> tuple[Change, ...]:
    return changes(pictured(before, studio), pictured(after, studio if studio_after is None else studio_after))


@lru_cache(maxsize=8)
def pictured(yaml: str, studio: str) -> Made:
    """A design beside a picture; the same one is made once for many tests."""
    return made(yaml, studio, {"art/moth.png": disc()})


@lru_cache(maxsize=8)
def unchecked(yaml: str) -> Made:
    """A design of which nothing is asked but what it is: checks take most of the time."""
    workspace = folder(yaml)
    documents = gather("x.pad.yaml", workspace)
    design = resolve(documents, workspace)
    pad = Pad(documents, design, compose(design), tile(design), ())
    return Made(pad, facts(pad))


def told_unchecked(before: str, after: str) -> list[str]:
    return [change.sentence for change in changes(unchecked(before), unchecked(after))]


def told(before: str, after: str, studio: str = "", studio_after: str | None = None) -> list[str]:
    return [change.sentence for change in found(before, after, studio, studio_after)]


def test_nothing_is_told_where_nothing_changed() -> None:
    assert told(PICTURE, PICTURE) == []


def test_a_comment_and_another_order_of_keys_are_no_change() -> None:
    assert told(PLAIN, f"# a note\n{PLAIN.splitlines()[1]}\n{PLAIN.splitlines()[0]}\n") == []


@pytest.mark.parametrize(
    ("changed", "said"),
    [
        ({"pad": "Shopping"}, "name “Errands” → “Shopping”"),
        ({"sku": "NG-1"}, "SKU x → NG-1"),
        ({"leaves": "60"}, "leaves 50 → 60, 10 more"),
        ({"trim.height": "180 mm"}, "trim size 90 mm × 190 mm → 90 mm × 180 mm"),
        ({"layout": "numbered"}, "layout checklist → numbered"),
        ({"rows.pitch": "7 mm"}, "rows: pitch 8 mm → 7 mm"),
        ({"rows.weight": "0.35 mm"}, "rows: rule weight 0.3 mm → 0.35 mm"),
        ({"rows.line": "dotted"}, "rows: rule solid → dotted"),
        ({"rows.checkbox": "none"}, "rows: check box size 4 mm, count 1, distance 1.2 mm, corner 0.8 mm → none"),
        ({"rows.checkbox": "5 mm"}, "rows: check box size 4 mm → 5 mm"),
        ({"rows.checkbox-count": "2"}, "rows: check box count 1 → 2, 1 more"),
        ({"heading.text": "Before dark"}, "heading: text “To do” → “Before dark”"),
        ({"heading.font": "Nunito"}, "heading: font Fredoka → Nunito"),
        ({"heading.font-weight": "400"}, "heading: font weight 600 → 400"),
        ({"heading.size": "9 mm"}, "heading: size 7.5 mm → 9 mm"),
        ({"heading.outline": "0.5 mm"}, "heading: outline none → width 0.5 mm, colour #ffffff"),
        ({"panel.corner": "2 mm"}, "panel: corner 6 mm → 2 mm"),
        ({"panel.opacity": "80 %"}, "panel: opacity 100 % → 80 %"),
        ({"sheet.size": "A3"}, "sheet: paper A4 → A3"),
        ({"sheet.gutter": "6 mm"}, "sheet: gutter 4 mm → 6 mm"),
        ({"sheet.n-up": "1"}, "sheet: leaves wished for on a sheet as many as fit → 1"),
        ({"sheet.marks": "false"}, "sheet: crop marks yes → no"),
        ({"ground.pattern.kind": "dots"}, "ground: pattern none → "),
        ({"price": "6.50"}, "price none → 6.50"),
        ({"tags": ["night", "moth"]}, "tags none → night, moth"),
        ({"about": "For lists"}, "about none → “For lists”"),
        ({"limits.safe-margin": "3 mm"}, "limits: safe-margin none → 3 mm"),
    ],
    ids=lambda value: next(iter(value)) if isinstance(value, dict) else "",
)
def test_a_change_is_told_in_words(changed: dict[str, object], said: str) -> None:
    sentences = told_unchecked(PLAIN, apply(PLAIN, changed))
    assert any(sentence.startswith(said) for sentence in sentences), sentences


def test_rows_that_a_pitch_makes_are_counted() -> None:
    sentences = told_unchecked(PLAIN, apply(PLAIN, {"rows.pitch": "7 mm"}))
    (rows,) = (sentence for sentence in sentences if "number of rows" in sentence)
    faces = (unchecked(apply(PLAIN, {"rows.pitch": pitch})).pad.face for pitch in ("8 mm", "7 mm"))
    before, after = (face.placement("rows").rows for face in faces)
    assert rows == f"rows: number of rows {before} → {after}, {after - before} more"


@pytest.mark.parametrize(
    ("changed", "said"),
    [
        ({"kind": "stripes"}, "ground: pattern kind dots → stripes"),
        ({"size": "8 mm"}, "ground: pattern size 6 mm → 8 mm"),
        ({"mark": "30 %"}, "ground: pattern mark 40 % → 30 %"),
        ({"angle": "30"}, "ground: pattern angle 0° → 30°"),
        ({"phase": "out-of-step"}, "ground: pattern phase centred → out-of-step"),
    ],
    ids=lambda value: next(iter(value)) if isinstance(value, dict) else "",
)
def test_a_pattern_is_told_setting_by_setting(changed: dict[str, str], said: str) -> None:
    dots = apply(PLAIN, {"ground.pattern.kind": "dots"})
    after = apply(dots, {f"ground.pattern.{key}": value for key, value in changed.items()})
    assert said in told_unchecked(dots, after)


def test_a_colour_of_the_palette_is_told_once_with_its_difference_and_what_is_drawn_in_it() -> None:
    before, after = (apply(PLAIN, {"palette.rule": colour}) for colour in ("#7a3b58", "#3b587a"))
    (change,) = (change for change in found(before, after) if change.delta is not None)
    assert change.sentence.startswith("palette: rule #7a3b58 → #3b587a, ΔE ")
    assert set(change.shows) >= {"rows rule colour", "rows check box colour"}


@pytest.mark.parametrize(
    ("one", "other"),
    [("#7a3b58", "#3b587a"), ("#ffffff", "#f4ecde"), ("#000000", "#ffffff"), ("#1f5f73", "#1f6073")],
)
def test_the_difference_of_colours_is_ciede2000(one: str, other: str) -> None:
    # Judge: coloraide's CIEDE2000 over its own CIELAB under D65.
    judged = Color(one).convert("lab-d65").delta_e(Color(other).convert("lab-d65"), method="2000")
    assert delta_e(Colour.from_hex(one), Colour.from_hex(other)) == pytest.approx(judged, abs=2e-3)


def test_a_change_in_the_studio_shows_as_what_it_does_in_the_design() -> None:
    studio = "studio: Wren\nleaves: 50\nprinter: {margins: {left: 4 mm, right: 4 mm, top: 4 mm, bottom: 4 mm}}\n"
    after = apply(studio, {"leaves": "25", "printer.margins.left": "6 mm"})
    sentences = told(PLAIN, PLAIN, studio, after)
    assert "leaves 50 → 25, 25 fewer" in sentences
    assert "printer: margins 4 mm → left 6 mm, head 4 mm, right 4 mm, foot 4 mm" in sentences


def test_a_picture_with_other_pixels_under_its_name_is_told() -> None:
    before = made(PICTURE, files={"art/moth.png": disc()})
    after = made(PICTURE, files={"art/moth.png": disc(colour=(20, 90, 60))})
    sentences = [change.sentence for change in changes(before, after)]
    assert any(sentence.startswith("art: content of the picture ") for sentence in sentences)


def test_another_picture_and_its_placed_size_are_told() -> None:
    files = {"art/moth.png": disc(), "art/owl.png": disc(300, 200)}
    before, after = (made(PICTURE.replace("moth", name), files=files) for name in ("moth", "owl"))
    sentences = [change.sentence for change in changes(before, after)]
    assert "art: picture art/moth.png → art/owl.png" in sentences
    assert any(sentence.startswith("art: height ") for sentence in sentences)


def test_how_a_picture_is_cut_out_is_told() -> None:
    files = {"art/moth.png": disc_on_ground()}
    before, after = (made(apply(PICTURE, {"art.cutout": how}), files=files) for how in ("even", "none"))
    sentences = [change.sentence for change in changes(before, after)]
    assert "art: cutout asked for even → none" in sentences
    assert "art: cutout even → none" in sentences


def test_blocks_that_come_and_go_are_told_without_their_settings() -> None:
    sentences = told(apply(PLAIN, {"layout": "checklist"}), apply(PLAIN, {"layout": "squared"}))
    assert any(sentence.endswith("block added: grid") for sentence in sentences)
    assert "rows: block taken away: rows" in sentences
    assert not any(sentence.startswith("rows: pitch") for sentence in sentences)


def test_a_finding_that_is_new_and_one_that_is_gone_are_told() -> None:
    faint = apply(PLAIN, {"rows.colour": "#eeeeee"})
    assert any(sentence.startswith("findings: new error rule-contrast: ") for sentence in told(PLAIN, faint))
    assert "findings: error rule-contrast is gone" in told(faint, PLAIN)


def test_a_finding_that_is_worse_is_told_with_both_measures() -> None:
    faint, fainter = (apply(PLAIN, {"rows.colour": colour}) for colour in ("#e0e0e0", "#eeeeee"))
    (sentence,) = (one for one in told(faint, fainter) if one.startswith("findings: rule-contrast"))
    assert sentence.count("measured") == 2


def test_a_finding_on_another_line_is_the_same() -> None:
    faint = apply(PLAIN, {"rows.colour": "#eeeeee"})
    assert told(faint, "\n\n" + faint) == []


def test_a_change_points_at_its_line_in_the_yaml_of_now() -> None:
    after = PLAIN + "heading: {text: Moths}\nrows:\n  weight: 0.4 mm\n  pitch: 7 mm\n"
    lines = {change.what: change.place.line for change in found(PLAIN, after) if change.place}
    assert (lines["text"], lines["rule weight"], lines["pitch"], lines["number of rows"]) == (3, 5, 6, 6)


def test_what_is_drawn_otherwise_though_no_fact_changed_is_told() -> None:
    before = made(PLAIN)
    face = before.pad.face
    layers = face.scene.layers
    fewer = replace(face.scene, layers=layers[:-1])
    after = Made(replace(before.pad, face=replace(face, scene=fewer)), before.facts)
    assert [change.sentence for change in changes(before, after)] == ["face: drawn differently"]


def test_the_least_change_of_colour_is_told() -> None:
    red, green, blue = MULBERRY
    one, other = (f"#{red:02x}{green:02x}{blue + step:02x}" for step in (0, 1))
    sentences = told(apply(PLAIN, {"rows.colour": one}), apply(PLAIN, {"rows.colour": other}))
    assert any(one in sentence and other in sentence for sentence in sentences)


@pytest.mark.parametrize("layout", ["week", "habits", "two-columns"])
def test_no_two_facts_have_one_name(layout: str) -> None:
    pad = unchecked(apply(PLAIN, {"layout": layout, "ground.pattern.kind": "dots"})).pad
    names = [(fact.section, fact.what) for fact in every_fact(pad)]
    assert len(names) == len(set(names))


def test_what_has_no_effect_is_not_told() -> None:
    assert not any(
        "heavy rule weight" in one for one in told_unchecked(PLAIN, apply(PLAIN, {"rows.weight": "0.35 mm"}))
    )
    heavy = apply(PLAIN, {"rows.heavy-every": "5"})
    thicker = told_unchecked(heavy, apply(heavy, {"rows.weight": "0.35 mm"}))
    assert "rows: heavy rule weight 0.6 mm → 0.7 mm" in thicker


def test_lettering_that_had_to_shrink_is_told_as_it_is_drawn() -> None:
    long = apply(PLAIN, {"heading.text": "Everything that has to be done", "heading.lines": "1"})
    sentences = told_unchecked(PLAIN, long)
    assert any(sentence.startswith("heading: size as drawn as asked for → ") for sentence in sentences)


def test_rows_that_are_spread_are_told_with_their_real_pitch() -> None:
    counted = apply(PLAIN, {"rows.count": "9"})
    real = unchecked(counted).pad.face.placement("rows").pitch
    said = f"rows: pitch as drawn as asked for → {mm_text(real)}"
    assert (said in told_unchecked(PLAIN, counted)) == (abs(real - 8) > 0.005)
    assert "rows: count asked for as many as fit → 9" in told_unchecked(PLAIN, counted)


def test_a_block_that_is_called_like_another_head_hides_nothing() -> None:
    own = "layout: mine\nabout: Mine.\nface:\n  - rows: {id: rows}\n"
    files = {"layouts/mine.yaml": own.encode()}
    with_ground = {"layouts/mine.yaml": (own + "  - space: {id: ground, height: 5 mm}\n").encode()}
    yaml = PLAIN + "layout: mine\n"
    before = made(yaml, files=files)
    after = made(apply(yaml, {"ground.pattern.kind": "dots"}), files=with_ground)
    sentences = [change.sentence for change in changes(before, after)]
    assert "ground: block added: space" in sentences
    assert any(sentence.startswith("ground: pattern none → ") for sentence in sentences)


def test_just_what_changed_is_told_and_no_more() -> None:
    assert told_unchecked(PLAIN, apply(PLAIN, {"heading.text": "Moths"})) == ["heading: text “To do” → “Moths”"]


def test_what_comes_or_goes_as_a_whole_is_not_told_part_by_part() -> None:
    sentences = told_unchecked(PLAIN, apply(PLAIN, {"rows.checkbox": "none"}))
    assert [one for one in sentences if "check box" in one] == [
        "rows: check box size 4 mm, count 1, distance 1.2 mm, corner 0.8 mm → none"
    ]


def test_one_more_of_the_same_finding_is_new() -> None:
    finding = Finding("rule-contrast", Severity.NOTE, Place("x.pad.yaml", 1, 1), "Faint.", "1", "3")
    sentences = [change.sentence for change in finding_changes([finding], [finding, finding])]
    assert sentences == ["findings: new note rule-contrast: Faint."]


def test_a_finding_that_is_accepted_now_is_told() -> None:
    finding = Finding("rule-contrast", Severity.ERROR, Place("x.pad.yaml", 1, 1), "Faint.", "1", "3")
    (change,) = finding_changes([finding], [finding.allow("as the maker wants it")])
    assert change.sentence == (
        "findings: rule-contrast error, measured 1, limit 3 → accepted error, measured 1, limit 3"
    )
