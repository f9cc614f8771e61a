"""The recipe of colours passes every contrast that the checks ask for, whatever hue leads the picture."""

import pytest

from padspec.base.colour import BLACK, WHITE, Colour
from padspec.base.contrast import contrast
from padspec.base.mixing import lch
from padspec.resolve import roles

HUES = [None, *(float(hue) for hue in range(0, 360, 10))]
PAPERS = [WHITE, Colour.from_hex("#f6f0e4"), Colour.from_hex("#e8eef4"), Colour.from_hex("#1c2430"), BLACK]


@pytest.mark.parametrize("paper", PAPERS, ids=lambda paper: paper.hex)
@pytest.mark.parametrize("hue", HUES)
def test_rules_and_squares_stand_out_with_room_to_spare(hue: float | None, paper: Colour) -> None:
    # The checks warn below 3 for squares, by analogy with WCAG 2.2 SC 1.4.11.
    assert contrast(roles.rule(hue, paper), paper) >= 3.3


KRAFT = Colour.from_hex("#b89f7c")


@pytest.mark.parametrize("paper", [*PAPERS[:3], KRAFT], ids=lambda paper: paper.hex)
@pytest.mark.parametrize("hue", HUES)
def test_lettering_is_legible_on_paper_and_ground(hue: float | None, paper: Colour) -> None:
    # The checks warn below 4.5 for small lettering, by analogy with WCAG 2.2 SC 1.4.3.
    ground = roles.ground(hue)
    lettering = roles.lettering(hue, paper, ground)
    assert min(contrast(lettering, paper), contrast(lettering, ground)) >= 5.5


@pytest.mark.parametrize("hue", HUES)
def test_rules_are_never_harsh_on_white(hue: float | None) -> None:
    # Above 10 the checks note harsh rules (common practice, no published source).
    assert contrast(roles.rule(hue, WHITE), WHITE) < 5


@pytest.mark.parametrize("hue", HUES)
def test_the_pattern_is_quiet_on_the_ground(hue: float | None) -> None:
    ground, pattern = roles.ground(hue), roles.pattern(hue)
    assert lch(pattern)[0] < lch(ground)[0]
    assert 1.05 < contrast(ground, pattern) < 1.3


@pytest.mark.parametrize("hue", [hue for hue in HUES if hue is not None])
def test_every_role_keeps_the_leading_hue(hue: float) -> None:
    for colour in (roles.ground(hue), roles.pattern(hue), roles.rule(hue, WHITE)):
        turned = abs((lch(colour)[2] - hue + 180) % 360 - 180)
        assert turned < 4  # 8 bits a channel at a chroma of 0.045 hold a hue to a few degrees


def test_a_picture_without_colour_gets_the_warm_grey_of_paper() -> None:
    _, chroma, hue = lch(roles.ground(None))
    assert chroma < 0.02
    assert hue == pytest.approx(roles.PAPER_HUE, abs=8)


def test_paper_so_grey_that_no_lettering_can_pass_gets_the_end_of_the_scale() -> None:
    grey = Colour(119, 119, 119)
    assert roles.lettering(200, grey, grey) in (BLACK, WHITE)
