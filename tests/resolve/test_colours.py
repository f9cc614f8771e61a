"""Colours by name, from the art and mixed, and the ones that are refused."""

import pytest
from kit import PLAIN, apply, bands, disc, pad, problems

from padspec.base.colour import Colour
from padspec.base.contrast import delta_e
from padspec.base.mixing import darken, lighten

RUST, MOSS, DUSK = (186, 84, 48), (84, 124, 60), (70, 82, 150)
ART = apply(PLAIN, {"art.file": "art/bands.png", "art.cutout": "none"})
FILES = {"art/bands.png": bands(RUST, MOSS, DUSK, width=700, height=700)}


def palette(changes: dict[str, object], text: str = ART) -> dict[str, Colour]:
    return dict(pad(apply(text, changes), files=FILES).design.palette)


def test_a_colour_is_a_hex_value_a_css_name_or_a_palette_name() -> None:
    # CSS Color 4: rebeccapurple is #663399.
    found = palette({"palette.a": "#12ab9f", "palette.b": "RebeccaPurple", "palette.c": "a", "palette.d": "#abc"})
    assert [found[name].hex for name in "abcd"] == ["#12ab9f", "#663399", "#12ab9f", "#aabbcc"]


def test_a_name_of_the_palette_wins_over_a_css_colour() -> None:
    assert palette({"palette.red": "#123456", "palette.ground": "red"})["ground"].hex == "#123456"


@pytest.mark.parametrize(("rank", "band"), [(1, RUST), (2, MOSS), (3, DUSK)])
def test_rank_counts_the_colours_of_the_art_by_area(rank: int, band: tuple[int, int, int]) -> None:
    found = palette({"palette.x.from": "art", "palette.x.rank": str(rank)})["x"]
    assert delta_e(found, Colour(*band)) < 2


def test_from_art_without_a_rank_is_the_first() -> None:
    assert delta_e(palette({"palette.x.from": "art"})["x"], Colour(*RUST)) < 2


@pytest.mark.parametrize(("wish", "band"), [("#b05030", RUST), ("#4a7a30", MOSS), ("navy", DUSK)])
def test_near_takes_the_colour_of_the_art_that_differs_least(wish: str, band: tuple[int, int, int]) -> None:
    found = palette({"palette.x.from": "art", "palette.x.near": wish})["x"]
    assert delta_e(found, Colour(*band)) < 2


def test_the_transparent_surround_of_a_picture_is_none_of_its_colours() -> None:
    design = pad(
        apply(PLAIN, {"art.file": "a.png", "palette.x.from": "art"}), files={"a.png": disc(700, 700, DUSK)}
    ).design
    assert delta_e(dict(design.palette)["x"], Colour(*DUSK)) < 2


def test_lighten_and_darken_mix_the_colour_they_stand_beside() -> None:
    found = palette(
        {"palette.x": "#7a3b58", "palette.up.from": "x", "palette.up.lighten": "40 %"}
        | {"palette.down.from": "x", "palette.down.darken": "25 %"}
    )
    assert found["up"] == lighten(found["x"], 0.4)
    assert found["down"] == darken(found["x"], 0.25)


def test_a_pattern_may_lighten_its_colour_beside_it() -> None:
    text = apply(ART, {"ground.pattern": {"kind": "dots", "colour": "#7a3b58", "lighten": "80 %"}})
    pattern = pad(text, files=FILES).design.ground.pattern
    assert pattern is not None
    assert pattern.colour == lighten(Colour.from_hex("#7a3b58"), 0.8)


def test_a_square_takes_the_colour_of_the_rules_until_it_has_its_own() -> None:
    def rows(changes: dict[str, object]) -> object:
        return pad(apply(ART, changes), files=FILES).design.face[1].holds[1]

    assert rows({"rows.colour": "#123456"}).squares.colour.hex == "#123456"
    own = rows({"rows.colour": "#123456", "rows.checkbox-colour": "#654321"})
    assert (own.colour.hex, own.squares.colour.hex) == ("#123456", "#654321")


def test_names_that_lead_in_a_circle_are_refused_naming_the_circle() -> None:
    text = apply(PLAIN, {"palette.a": "b", "palette.b": "c", "palette.c.from": "a", "palette.c.lighten": "5 %"})
    (problem,) = problems(text)
    assert "These palette names lead in a circle: a → b → c → a." in problem


def test_a_name_that_means_itself_is_a_circle_too() -> None:
    assert "circle: ink → ink." in problems(apply(PLAIN, {"palette.ink": "ink"}))[0]


def test_a_circle_through_a_role_that_padspec_mixes_is_found() -> None:
    # Lettering is chosen to be legible on the ground, so a ground made of it has no beginning.
    (problem,) = problems(apply(PLAIN, {"palette.ground.from": "lettering"}))
    assert "circle: lettering → ground → lettering." in problem


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"rows.colour": "ruel"}, "ruel is neither a palette name nor a CSS colour. Did you mean rule?"),
        ({"palette.ground": "tael"}, "tael is neither a palette name nor a CSS colour. Did you mean teal?"),
        (
            {"palette.x.from": "lettring"},
            "lettring is neither a palette name nor a CSS colour. Did you mean lettering?",
        ),
    ],
)
def test_an_unknown_name_is_refused_with_the_nearest(changes: dict[str, object], message: str) -> None:
    (problem,) = problems(apply(ART, changes), files=FILES)
    assert problem.endswith(message)


def test_a_rank_past_the_last_says_how_many_there_are() -> None:
    (problem,) = problems(apply(ART, {"palette.x.from": "art", "palette.x.rank": "12"}), files=FILES)
    assert "The picture has 3 colours that can be told apart; rank 12" in problem
    assert "Write a rank from 1 to 3" in problem


def test_a_colour_from_the_art_of_a_design_without_art_is_refused() -> None:
    (problem,) = problems(apply(PLAIN, {"palette.x.from": "art"}))
    assert "taken from the art, and the design has none" in problem


@pytest.mark.parametrize("key", ["rank", "near"])
def test_a_picture_that_cannot_be_read_is_told_of_once(key: str) -> None:
    wish = {"palette.x.from": "art", f"palette.x.{key}": {"rank": "1", "near": "red"}[key]}
    found = problems(apply(ART, wish), files={"art/bands.png": b"no picture"})
    assert len(found) == 1
    assert found[0].startswith("x.pad.yaml:6:9 art/bands.png ")
