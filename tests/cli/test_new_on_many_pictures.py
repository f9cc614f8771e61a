"""`new` on three hundred pictures of every kind: the first design passes every check, or says what is true.

What may be said is that a picture has too few pixels, where that is so at the least size that `new` places a
picture at: 12 % of the height of the leaf.
"""

from functools import cache

import pytest
from kit import picture

from padspec.base.colour import Colour
from padspec.base.errors import ProblemsError
from padspec.base.findings import Finding, Severity
from padspec.base.mixing import lch
from padspec.first_design import LEAST_ART_SHARE, FirstWish, first_design
from padspec.pipeline import Pad, make
from padspec.resolve.blocks.art import Art
from padspec.resolve.design import blocks
from padspec.resolve.roles import COLOURWAYS
from padspec.workspace import MemoryWorkspace

from .many_pictures import PICTURES, PLUM, egg, in_file, toned

#: One picture in fifty may be warned of, and must be warned of truthfully.
LEAST_PASSING = 0.98
#: Pictures that each colourway is tried on here: hues all around, no colour, dark, pale, a photograph.
A_FEW = (
    *("hue 0", "hue 60", "hue 100", "hue 140", "hue 200", "hue 260", "hue 310"),
    *("grey 40", "hue 80 lightness 2", "hue 200 lightness 97", "on noise", "skimage coffee.png"),
)


def begun(name: str, colourway: str = ""):
    made = PICTURES[name]
    file = f"p.{made.ending}"
    workspace = MemoryWorkspace({file: made.data()})
    return first_design("p.pad.yaml", FirstWish(file, colourway=colourway), workspace), workspace


@cache
def pad_of(name: str) -> Pad:
    return begun(name)[0].pad


def objections(pad: Pad) -> list[Finding]:
    """Errors and warnings."""
    return [finding for finding in pad.findings if finding.severity >= Severity.WARNING]


def is_true(finding: Finding, pad: Pad) -> bool:
    """Whether the picture has too few pixels even as small as `new` may place it."""
    art = next(block for block in blocks(pad.design) if isinstance(block, Art))
    as_small_as_may_be = art.height <= LEAST_ART_SHARE * pad.design.trim.height + 0.1
    return finding.check == "art-resolution" and art.ppi is not None and art.ppi < 300 and as_small_as_may_be


def told(against: dict[str, list[Finding]]) -> str:
    passed = sum(not found for found in against.values())
    lines = [f"{name}: {finding.message}" for name, found in against.items() for finding in found]
    return "\n".join([f"{passed} of {len(against)} pictures pass", *lines])


def test_there_are_three_hundred_pictures():
    assert len(PICTURES) >= 300


def test_98_of_100_first_designs_are_free_of_errors_and_warnings():
    against = {name: objections(pad_of(name)) for name in PICTURES}
    assert sum(not found for found in against.values()) >= LEAST_PASSING * len(against), told(against)


def test_the_rest_are_told_of_too_few_pixels_and_truly_have_too_few():
    untrue = {name: [f for f in objections(pad_of(name)) if not is_true(f, pad_of(name))] for name in PICTURES}
    assert not any(untrue.values()), told(untrue)


def test_nothing_is_said_at_all_about_most_pictures():
    """Notes count here: a first design should be quiet."""
    quiet = [name for name in PICTURES if not pad_of(name).findings]
    assert len(quiet) >= 0.8 * len(PICTURES), sorted(set(PICTURES) - set(quiet))


@pytest.mark.parametrize("colourway", COLOURWAYS[1:])
def test_a_colourway_passes_on_pictures_of_every_hue(colourway):
    against = {name: objections(begun(name, colourway)[0].pad) for name in A_FEW}
    assert not any(against.values()), told(against)


@pytest.mark.parametrize("name", ["hue 40", "tiny", "on noise", "drawing 0 0 60 60", "skimage coffee.png"])
def test_the_text_that_new_writes_makes_the_very_pad_that_it_checked(name):
    first, workspace = begun(name)
    again = make("p.pad.yaml", MemoryWorkspace({"p.pad.yaml": first.text.encode()}, behind=workspace))
    assert (again.face, again.sheet, again.findings) == (first.pad.face, first.pad.sheet, first.pad.findings)


def test_a_design_of_a_colourway_names_it_and_leaves_its_colours_to_it():
    first, _ = begun("hue 200", "deeper")
    assert "colourway: deeper" in first.text
    assert "palette:" not in first.text


@pytest.mark.parametrize("hue", [0, 90, 220, 310])
def test_the_ground_is_pale_and_of_the_hue_that_leads_the_picture(hue):
    """OKLab lightness about 0.93; the hue within 10° of the picture's own."""
    ground = pad_of(f"hue {hue}").design.ground.colour
    lightness, _, ground_hue = lch(ground)
    assert lightness == pytest.approx(0.925, abs=0.02)
    assert abs((ground_hue - lch(Colour(*toned(0.6, 0.12, hue)))[2] + 180) % 360 - 180) < 10


@pytest.mark.parametrize(
    ("file", "data", "words"),
    [
        ("p.gif", in_file(picture(400, 400, PLUM), "GIF", "P"), "GIF"),
        ("p.png", egg(PLUM, alpha=2), "transparent"),
        ("p.png", b"\x89PNG\r\n\x1a\nbroken", "p.png"),
    ],
)
def test_a_picture_that_cannot_be_used_is_refused_by_the_key_that_names_it(file, data, words):
    with pytest.raises(ProblemsError, match=words) as refused:
        first_design("p.pad.yaml", FirstWish(file), MemoryWorkspace({file: data}))
    assert [problem.place.file for problem in refused.value.problems] == ["art.file"]
