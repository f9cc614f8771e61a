"""padspec flat-lay as a maker runs it: where pictures go, what is said, and what is refused."""

from io import BytesIO

import pytest
from PIL import Image

from .command import PLAIN, padspec, put, written

SMALL = ("flat-lay", "--size", "200")
OWL = PLAIN.replace("Errands", "Owls")


@pytest.fixture
def one(tmp_path):
    return put(tmp_path, moth__pad__yaml=PLAIN + "sku: MOTH\n")


@pytest.fixture
def two(one):
    return put(one, owl__pad__yaml=OWL + "sku: OWL\n")


def made(folder, *args):
    """The files that a run wrote, having ended well."""
    before = written(folder)
    outcome = padspec(folder, *SMALL, *args)
    assert outcome.status == 0, outcome
    return {name: data for name, data in written(folder).items() if before.get(name) != data}


def corner(data):
    """The colour of the first pixel."""
    with Image.open(BytesIO(data)) as image:
        return image.getpixel((0, 0))


def test_a_picture_lies_beside_the_files_of_its_design(one):
    assert list(made(one, "moth.pad.yaml")) == ["out/MOTH/flat-lay.png"]


def test_every_design_gets_a_picture_of_its_own(two):
    assert sorted(made(two)) == ["out/MOTH/flat-lay.png", "out/OWL/flat-lay.png"]


def test_a_fan_is_one_picture(two):
    assert list(made(two, "--arrange", "fan")) == ["out/flat-lay-fan.png"]


def test_a_picture_goes_where_it_is_sent(one):
    assert list(made(one, "--out", "shop")) == ["shop/MOTH/flat-lay.png"]


def test_the_shape_is_the_one_asked_for(one):
    (data,) = made(one, "--shape", "landscape").values()
    with Image.open(BytesIO(data)) as image:
        assert image.size == (200, 160)


def test_it_says_what_was_written(one):
    assert "Wrote out/MOTH/flat-lay.png: 200 × 200 pixels, sRGB, on #" in padspec(one, *SMALL).out


def test_the_arrangements_are_unlike(one):
    (single,), (stack,) = made(one).values(), made(one, "--arrange", "stack").values()
    assert single != stack


def test_a_turn_is_taken(one):
    (left,), (right,) = made(one, "--turn", "-10").values(), made(one, "--turn", "10").values()
    assert left != right


def test_boards_are_unlike(one):
    (kraft,), (grey,) = made(one, "--board", "kraft").values(), made(one, "--board", "grey").values()
    assert kraft != grey


@pytest.mark.parametrize("colour", ["#ff0000", "#f00", "red", "mine"])
def test_a_backdrop_is_named_in_figures_in_words_or_by_the_palette(one, colour):
    put(one, moth__pad__yaml=PLAIN + 'palette: {mine: "#ff0000"}\n')
    (data,) = made(one, "--backdrop", colour).values()
    red, green, blue = corner(data)
    assert red > 220
    assert max(green, blue) < 12


def test_json_tells_what_was_made(two):
    pictures = padspec(two, *SMALL, "--arrange", "fan", "--json").json["pictures"]
    assert len(pictures) == 1
    assert [design["sku"] for design in pictures[0]["designs"]] == ["MOTH", "OWL"]
    assert (pictures[0]["width"], pictures[0]["height"], pictures[0]["turn"]) == (200, 200, 0)
    assert pictures[0]["written"] == "out/flat-lay-fan.png"


def test_a_fan_of_one_says_to_add_more(one):
    assert padspec(one, *SMALL, "--arrange", "fan").refused(
        "moth.pad.yaml", "A fan needs 2 designs or more, and this is 1.", "Add more paths"
    )


def test_a_fan_of_ten_says_to_name_nine(tmp_path):
    put(tmp_path, **{f"pad{n}__pad__yaml": PLAIN + f"sku: P{n}\n" for n in range(10)})
    assert padspec(tmp_path, *SMALL, "--arrange", "fan").refused(
        "9 designs at most, and these are 10", "Name the 9"
    )


def test_a_colour_that_is_none_names_the_nearest(one):
    assert padspec(one, *SMALL, "--backdrop", "linene").refused("--backdrop", "Did you mean linen?", "lettering")


@pytest.mark.parametrize("colour", ["#12", "#12345g", "#"])
def test_figures_that_are_no_colour_are_refused(one, colour):
    assert padspec(one, *SMALL, "--backdrop", colour).refused(f"{colour} is not a colour", "three or six digits")


@pytest.mark.parametrize(
    ("args", "said"),
    [
        (("--size", "100"), "200<=x<=4000"),
        (("--size", "99999"), "200<=x<=4000"),
        (("--turn", "60"), "-45"),
        (("--turn", "nan"), "not a number of degrees"),
        (("--arrange", "heap"), "heap"),
        (("--shape", "round"), "round"),
        (("missing.pad.yaml",), "There is no such file"),
    ],
)
def test_wrong_wishes_are_refused(one, args, said):
    assert padspec(one, "flat-lay", *args).refused(said)


def test_a_design_that_cannot_be_read_does_not_hold_up_the_others(one):
    put(one, broken__pad__yaml="pad: Broken\ntrimm: 3\n")
    outcome = padspec(one, *SMALL)
    assert outcome.refused("broken.pad.yaml:2:1", "trimm", "Wrote out/MOTH/flat-lay.png")


def test_two_designs_with_one_sku_are_told_apart_or_not_written(one):
    put(one, owl__pad__yaml=OWL + "sku: MOTH\n")
    assert padspec(one, *SMALL).refused("owl.pad.yaml", "Its sku MOTH is that of moth.pad.yaml too")


def test_json_tells_problems_too(one):
    outcome = padspec(one, *SMALL, "--arrange", "fan", "--json")
    assert (outcome.status, outcome.err) == (2, "")
    assert "A fan needs 2 designs" in outcome.json["problems"][0]["message"]


def test_a_design_is_fanned_in_its_colourways(one):
    (natural, name), *_ = [(data, name) for name, data in made(one, "--colourways", "natural,deeper").items()]
    assert name == "out/MOTH/flat-lay-colourways.png"
    (muted,) = made(one, "--colourways", "natural,muted").values()
    assert natural != muted


@pytest.mark.parametrize(
    ("names", "says"),
    [("deepr,muted", "Did you mean deeper?"), ("deeper", "needs 2 colourways"), ("deeper,deeper", "this is 1")],
)
def test_colourways_that_make_no_fan_are_refused(one, names, says):
    outcome = padspec(one, *SMALL, "--colourways", names)
    assert outcome.status == 2
    assert says in outcome.err
