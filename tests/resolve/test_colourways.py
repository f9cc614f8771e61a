"""The ready colourways of a picture: they pass the contrasts that the checks ask for, and are told apart."""

from itertools import combinations

import pytest
from kit import PLAIN, apply, bands, pad

from padspec.base.colour import WHITE, Colour
from padspec.base.colour_vision import DEFICIENCIES, colour_as_seen
from padspec.base.contrast import contrast, delta_e
from padspec.base.errors import ProblemsError
from padspec.base.mixing import lch
from padspec.reading.tree import Mapping
from padspec.resolve import roles
from padspec.resolve.colours import ArtColours, Palette
from padspec.resolve.role_names import ROLE_NAMES
from padspec.resolve.roles import COLOURWAYS, RECIPES, Recipe, ready_set, recipe_named
from padspec.resolve.settings import Troubles

HUES: list[float | None] = [None, *(float(hue) for hue in range(0, 360, 5))]
EVERY = pytest.mark.parametrize("recipe", RECIPES, ids=lambda recipe: recipe.name)


def worst(recipe: Recipe, over: str, under: str) -> float:
    """The least contrast of one role on another among all hues."""
    sets = [dict(ready_set(hue, recipe)) for hue in HUES]
    return min(contrast(found[over], found[under]) for found in sets)


def turned(one: Colour, other: Colour) -> float:
    """How far the hues of two colours lie apart, 0 to 180 degrees."""
    return abs((lch(one)[2] - lch(other)[2] + 180) % 360 - 180)


@EVERY
def test_squares_show_on_the_paper_with_room_to_spare(recipe: Recipe) -> None:
    # The checks warn below 3 for squares, by analogy with WCAG 2.2 SC 1.4.11.
    assert worst(recipe, "rule", "paper") >= 3.3


@EVERY
def test_rules_are_never_harsh(recipe: Recipe) -> None:
    # Above 10 the checks note harsh rules (common practice, no published source).
    assert max(contrast(dict(ready_set(hue, recipe))["rule"], WHITE) for hue in HUES) < 5


@EVERY
def test_rules_show_with_every_deficiency(recipe: Recipe) -> None:
    for hue in HUES:
        found = dict(ready_set(hue, recipe))
        for name in DEFICIENCIES:
            assert contrast(colour_as_seen(found["rule"], name), colour_as_seen(found["paper"], name)) >= 3.0


@EVERY
def test_small_lettering_can_be_read_on_the_paper(recipe: Recipe) -> None:
    # The checks warn below 4.5 for small lettering, by analogy with WCAG 2.2 SC 1.4.3.
    assert worst(recipe, "lettering", "paper") >= 5.5


@EVERY
@pytest.mark.parametrize("under", ["ground", "pattern"])
def test_what_stands_on_the_ground_can_be_read_there_and_on_its_pattern(recipe: Recipe, under: str) -> None:
    for hue in HUES:
        found = dict(ready_set(hue, recipe))
        lies_on = found["ground"], found["pattern"]
        assert contrast(roles.lettering_on_ground(hue, lies_on, found["lettering"], recipe), found[under]) >= 4.5
        assert contrast(roles.rule_on_ground(hue, lies_on, found["rule"], recipe), found[under]) >= 3.0


@EVERY
def test_the_pattern_stays_quieter_than_a_rule_and_can_be_seen(recipe: Recipe) -> None:
    for hue in HUES:
        found = dict(ready_set(hue, recipe))
        assert 1.08 < contrast(found["ground"], found["pattern"]) < 2.0


@EVERY
def test_rules_and_lettering_keep_the_hue_of_the_picture(recipe: Recipe) -> None:
    for hue in HUES[1:]:
        found = dict(ready_set(hue, recipe))
        for name in ("rule", "lettering"):
            away = abs((lch(found[name])[2] - hue + 180) % 360 - 180)
            assert away < 6  # 8 bits a channel at a chroma of 0.04 hold a hue to a few degrees


def test_the_ground_of_complementary_is_of_the_opposite_hue() -> None:
    for hue in HUES[1:]:
        found = dict(ready_set(hue, recipe_named("complementary")))
        assert turned(found["ground"], found["rule"]) > 174


def test_single_hue_tints_the_paper_and_the_others_leave_it_white() -> None:
    for recipe in RECIPES:
        papers = {dict(ready_set(hue, recipe))["paper"] for hue in HUES}
        assert (papers == {WHITE}) == (recipe.name != "single-hue")


def test_single_hue_is_of_one_hue() -> None:
    for hue in HUES[1:]:
        found = dict(ready_set(hue, recipe_named("single-hue")))
        assert all(turned(found[name], found["rule"]) < 5 for name in ("ground", "pattern", "lettering"))


def test_lightness_of_the_grounds_goes_from_lighter_over_natural_to_deeper() -> None:
    for hue in HUES:
        lighter, natural, deeper = (
            lch(roles.ground(hue, recipe_named(name)))[0] for name in ("lighter", "natural", "deeper")
        )
        assert lighter > natural + 0.03
        assert natural > deeper + 0.4


def test_muted_has_less_colour_than_natural() -> None:
    for hue in HUES[1:]:
        muted, natural = (dict(ready_set(hue, recipe_named(name))) for name in ("muted", "natural"))
        assert all(lch(muted[role])[1] < lch(natural[role])[1] - 0.002 for role in ROLE_NAMES[1:])


@pytest.mark.parametrize(("one", "other"), list(combinations(COLOURWAYS, 2)))
def test_two_colourways_of_a_picture_are_told_apart_at_a_glance(one: str, other: str) -> None:
    """By CIEDE2000 of the grounds; above 2.3 a difference is just seen (common practice, from memory)."""
    first, second = recipe_named(one), recipe_named(other)
    assert min(delta_e(roles.ground(hue, first), roles.ground(hue, second)) for hue in HUES) > 3.9


@pytest.mark.parametrize(
    ("hue", "expected"),
    [
        (None, "#ffffff #ece5dc #e1d8cc #918473 #5d503e"),
        (30.0, "#ffffff #ffddd7 #ffcbc2 #bb6e62 #85362c"),
        (250.0, "#ffffff #d4e9ff #bdddff #558ac0 #16558c"),
    ],
)
def test_natural_is_what_it_always_was(hue: float | None, expected: str) -> None:
    assert " ".join(colour.hex for _, colour in ready_set(hue)) == expected


def test_a_colourway_that_there_is_not_is_refused() -> None:
    with pytest.raises(KeyError):
        recipe_named("sepia")


def test_the_palette_of_a_colourway_has_its_ready_set() -> None:
    place = pad(PLAIN).documents.design.root.place
    for name in COLOURWAYS:
        palette = Palette(
            Mapping((), place), ArtColours(lambda: (), lambda: 200.0, has_art=True), Troubles(), colourway=name
        )
        assert palette.all() == ready_set(200.0, recipe_named(name))


ART = apply(PLAIN, {"art.file": "art/bands.png", "art.cutout": "none"})
FILES = {"art/bands.png": bands((186, 84, 48), (84, 124, 60), width=700, height=700)}


def named(changes: dict[str, object], name: str) -> Colour:
    """What a palette name comes to, asked for by a name of the maker's own."""
    return dict(pad(apply(ART, {**changes, "palette.asked": name}), files=FILES).design.palette)["asked"]


@pytest.mark.parametrize(("on_ground", "own"), [("lettering-on-ground", "lettering"), ("rule-on-ground", "rule")])
def test_what_shows_on_the_ground_as_it_is_stays_as_it_is(on_ground: str, own: str) -> None:
    changes: dict[str, object] = {"palette.ground": "#ffffff", "palette.pattern": "#fafafa"}
    assert named(changes, on_ground) == named(changes, own)


@pytest.mark.parametrize(("name", "least"), [("lettering-on-ground", 4.5), ("rule-on-ground", 3.0)])
def test_what_would_not_show_on_a_ground_of_the_makers_own_is_made_to(name: str, least: float) -> None:
    changes: dict[str, object] = {"palette.ground": "#26324a", "palette.pattern": "#33405c"}
    assert contrast(named(changes, name), Colour.from_hex("#33405c")) >= least


def test_lettering_made_of_what_stands_on_the_ground_leads_in_a_circle() -> None:
    with pytest.raises(ProblemsError, match="circle"):
        pad(apply(ART, {"palette.lettering": "lettering-on-ground"}), files=FILES)
