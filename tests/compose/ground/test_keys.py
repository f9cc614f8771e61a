"""What a maker may write of a pattern: each kind takes its own keys, and what is left out suits the kind."""

import pytest
from kit import PLAIN, apply, disc, pad, problems

from padspec.base.geometry import Size
from padspec.base.place import Place
from padspec.reading.checking.schemas import schema_data
from padspec.reading.defaults import defaults
from padspec.reading.parsing.yaml_reader import parse
from padspec.reading.tree import Mapping
from padspec.resolve.colours import ArtColours, Palette
from padspec.resolve.ground import KINDS, MOST_MARKS, Pattern, read_ground
from padspec.resolve.settings import Settings, Troubles, merge

WRITTEN = {
    "colour": "black", "lighten": "10 %", "darken": "10 %", "colours": ["red"], "file": "leaf.png", "size": "9 mm",
    "mark": "30 %", "angle": 10, "phase": "run-on", "seed": 3, "turn": 10, "jitter": "20 %",
}  # fmt: skip

TRIM = Size(90, 190)


def told(pattern: dict[str, object], studio: str = "") -> list[str]:
    return problems(apply(PLAIN, {"ground.pattern": pattern}), studio)


def read(text: str, trim: Size = TRIM, files: dict[str, bytes] | None = None) -> Pattern:
    """A pattern from the text of a ground, its pictures from memory."""
    troubles = Troubles()
    own = Settings(merge(defaults("design"), parse(f"ground: {text}", "f")), troubles)
    nothing = ArtColours(tuple, lambda: None, has_art=False)
    palette = Palette(Mapping((), Place("f", 1, 1)), nothing, troubles)
    ground = read_ground(own.section("ground"), palette, trim, lambda s: (files or {}).get(s.text("file")))
    troubles.raise_if_any()
    assert ground.pattern is not None
    return ground.pattern


def test_the_schema_names_every_kind_and_every_key() -> None:
    properties = schema_data("ground")["$defs"]["pattern"]["properties"]
    assert properties["kind"]["enum"] == list(KINDS)
    assert set(properties) == {"kind"}.union(*(usual.keys for usual in KINDS.values()))
    assert set(WRITTEN) == set(properties) - {"kind"}


@pytest.mark.parametrize(
    ("kind", "key"),
    [(kind, key) for kind, usual in KINDS.items() for key in WRITTEN if key not in usual.keys],
)
def test_a_key_that_a_kind_has_no_use_for_is_refused_with_those_it_takes(kind: str, key: str) -> None:
    needed = {"file": "leaf.png"} if kind == "motif" else {}
    found = [line for line in told({"kind": kind, key: WRITTEN[key], **needed}) if f"no {key}." in line]
    assert len(found) == 1
    assert f"{kind} takes {KINDS[kind].keys[0]}" in found[0]


@pytest.mark.parametrize("kind", [kind for kind in KINDS if kind != "motif"])
def test_every_key_that_a_kind_takes_is_accepted(kind: str) -> None:
    keys = [key for key in KINDS[kind].keys if key != "darken"]
    assert pad(apply(PLAIN, {"ground.pattern": {"kind": kind, **{key: WRITTEN[key] for key in keys}}})).design


def test_it_is_refused_where_it_stands() -> None:
    text = PLAIN + "ground:\n  pattern:\n    kind: split\n    size: 5 mm\n"
    (told_of,) = problems(text)
    assert told_of == (
        "x.pad.yaml:6:5 A pattern of kind split has no size. Leave it out; split takes colour, mark and angle."
    )


def test_a_key_that_the_studio_sets_for_a_kind_of_its_own_is_no_fault_of_the_design() -> None:
    studio = "ground: {pattern: {kind: sprinkle, seed: 4, colours: [red]}}\n"
    assert pad(apply(PLAIN, {"ground.pattern": {"kind": "dots"}}), studio).design.ground.pattern.kind == "dots"


@pytest.mark.parametrize("kind", [kind for kind in KINDS if kind != "motif"])
def test_what_is_left_out_is_what_suits_the_kind(kind: str) -> None:
    found, usual = read(f"{{pattern: {{kind: {kind}}}}}"), KINDS[kind]
    assert (found.mark, found.angle, found.phase) == (usual.mark, usual.angle, "centred")
    assert found.size == pytest.approx(usual.size, abs=2)


def test_the_usual_stripes_and_dots_are_six_millimetres_apart_and_two_fifths_of_that_wide() -> None:
    for kind in ("stripes", "dots"):
        found = read(f"{{pattern: {{kind: {kind}}}}}")
        assert (found.size, found.mark, found.angle) == (6.0, 0.4, 0.0)


def test_colours_of_a_sprinkle_come_from_the_palette_or_are_written() -> None:
    found = read("{pattern: {kind: sprinkle, colour: black, colours: [paper, '#102030']}}")
    assert [colour.hex for colour in (found.colour, *found.colours)] == ["#000000", "#ffffff", "#102030"]


def test_a_size_too_fine_is_refused_with_the_least_that_is_not() -> None:
    """√(90 × 190 ÷ 20 000) = 0.925 mm."""
    (found,) = told({"kind": "dots", "size": "0.9 mm"})
    assert f"more than {MOST_MARKS}" in found
    assert "Write 1 mm or more." in found


def test_a_size_left_out_on_a_poster_is_as_fine_as_it_may_be() -> None:
    """√(1000 × 1000 ÷ 20 000) = 7.07 mm."""
    assert read("{pattern: {kind: dots}}", Size(1000, 1000)).size == pytest.approx(7.1)


# The picture of a motif.


def test_the_picture_of_a_motif_is_as_large_as_its_mark_and_sampled_for_that() -> None:
    found = read("{pattern: {kind: motif, file: a.png, size: 20 mm, mark: 50 %}}", files={"a.png": disc(900, 900)})
    assert found.picture is not None
    assert (found.picture.width, found.picture.height) == (10, 10)
    # 10 mm at 450 pixels an inch.
    assert (found.picture.image.width, found.picture.image.height) == (177, 177)


def test_a_motif_without_a_picture_says_how_to_name_one() -> None:
    (found,) = told({"kind": "motif"})
    assert "none is named" in found
    assert "file: art/leaf.png" in found


def test_a_motif_whose_picture_is_missing_is_told_as_art_is() -> None:
    (found,) = told({"kind": "motif", "file": "art/leaf.png"})
    assert found.startswith("x.pad.yaml")
    assert "There is no picture art/leaf.png." in found


def test_a_motif_that_is_no_picture_is_told_at_its_file() -> None:
    text = apply(PLAIN, {"ground.pattern": {"kind": "motif", "file": "leaf.png"}})
    (found,) = problems(text, files={"leaf.png": b"not a picture"})
    assert "leaf.png" in found


def test_a_motif_is_drawn_on_the_face() -> None:
    text = apply(PLAIN, {"ground.pattern": {"kind": "motif", "file": "leaf.png"}})
    assert pad(text, files={"leaf.png": disc()}).design.ground.pattern.picture is not None
