"""One pad worked out by hand, every step of the sum shown, beside what `padspec show` prints of it.

The design: a trim of 90 × 190 mm without picture or heading, 50 leaves, rules 7.5 mm apart, all else at its
default. The studio: A4, printer margins of 4.2 mm, a gutter of 4 mm, 3 mm of bleed of which 1.5 mm must print.
"""

from functools import cache
from typing import Any

import pytest
from kit import pad

from padspec.stages import stage_data

DESIGN = """\
pad: By hand
trim: {width: 90 mm, height: 190 mm}
leaves: 50
heading: {text: ""}
panel: {inset: 6 mm, pad: 5 mm, corner: 6 mm}
rows: {pitch: 7.5 mm, checkbox: 4 mm, checkbox-corner: 0 mm, checkbox-gap: 2.5 mm, weight: 0.3 mm}
ground: {pattern: none}
"""
STUDIO = """\
studio: Umberwick Paper
sheet: {size: A4, gutter: 4 mm, bleed: 3 mm, least-bleed: 1.5 mm}
printer: {margins: {left: 4.2 mm, right: 4.2 mm, top: 4.2 mm, bottom: 4.2 mm}}
overs: {share: 5 %, test-sheets: 2}
"""


@cache
def shown(stage: str) -> Any:
    return stage_data(pad(DESIGN, STUDIO), stage)


def placement(block: str) -> dict[str, Any]:
    return next(one for one in shown("face")["placements"] if one["block"] == block)


def outlines(part: str) -> list[str]:
    nodes = [node for layer in shown("face")["scene"]["layers"] for node in layer["nodes"]]
    return [node["outline"] for node in nodes if node.get("cause", {}).get("part") == part]


def box(x: float, y: float, width: float, height: float) -> dict[str, Any]:
    return {"kind": "box", "x": x, "y": y, "width": width, "height": height}


def test_the_ground_reaches_3_mm_past_the_trim() -> None:
    # from 0 − 3 to 90 + 3 across, from 0 − 3 to 190 + 3 down
    assert outlines("ground") == ["M-3 -3H93V193H-3Z"]


def test_the_panel_stands_6_mm_from_every_edge() -> None:
    # 90 − 2 × 6 = 78 wide, 190 − 2 × 6 = 178 high
    assert placement("panel")["box"] == box(6, 6, 78, 178)


def test_the_rows_have_the_panel_less_its_pad() -> None:
    # x: 6 + 5 = 11; width: 78 − 2 × 5 = 68
    # y: the corner's arc at 5 mm from the side is 6 − √(5² − 1²) = 1.10 mm down (1 mm of clearance): the pad of
    #    5 mm is more, so 6 + 5 = 11; height: 178 − 2 × 5 = 168. An empty heading takes no height.
    # rows: 168 ÷ 7.5 = 22.4, so 22
    rows = placement("rows")
    assert rows["box"] == box(11, 11, 68, 168)
    assert (rows["rows"], rows["pitch"], rows["short_by"]) == (22, 7.5, 0)


def test_the_first_and_the_last_rule() -> None:
    # The ink of the block runs from the top of the first square to the foot of the last rule:
    #   above the first rule's middle: 4 − 0.3 ÷ 2 = 3.85      below the last rule's middle: 0.3 ÷ 2 = 0.15
    #   in all: 3.85 + 21 × 7.5 + 0.15 = 161.5
    # It is centred: (168 − 161.5) ÷ 2 = 3.25 above and below.
    #   first rule: 11 + 3.25 + 3.85 = 18.1                    last rule: 18.1 + 21 × 7.5 = 175.6
    # It starts beside the square and its gap, 11 + 4 + 2.5 = 17.5, and ends at 11 + 68 = 79.
    rules = outlines("rule")
    assert len(rules) == 22
    assert rules[0] == "M17.5 18.1H79"
    assert rules[1] == "M17.5 25.6H79"
    assert rules[-1] == "M17.5 175.6H79"


def test_the_corners_of_the_first_and_the_last_square() -> None:
    # Its foot is the foot of the rule: 18.1 + 0.15 = 18.25; it is 4 high: top 14.25; it lies from x 11 to 15.
    # The middle of its line runs half a weight inside: x 11.15 to 14.85, y 14.4 to 18.1.
    # The last: 21 × 7.5 = 157.5 lower, y 171.9 to 175.6.
    squares = outlines("checkbox")
    assert len(squares) == 22
    assert squares[0] == "M11.15 14.4H14.85V18.1H11.15Z"
    assert squares[-1] == "M11.15 171.9H14.85V175.6H11.15Z"


def test_three_faces_lie_on_their_sides_on_an_upright_sheet() -> None:
    # Printable: 210 − 2 × 4.2 = 201.6 by 297 − 2 × 4.2 = 288.6; less 1.5 mm of bleed at both ends: 198.6, 285.6.
    #   upright: ⌊(198.6 + 4) ÷ (90 + 4)⌋ = ⌊2.16⌋ = 2 by ⌊(285.6 + 4) ÷ (190 + 4)⌋ = ⌊1.49⌋ = 1: 2 faces
    #   turned:  ⌊(198.6 + 4) ÷ (190 + 4)⌋ = ⌊1.04⌋ = 1 by ⌊(285.6 + 4) ÷ (90 + 4)⌋ = ⌊3.08⌋ = 3: 3 faces
    # Cuts: two for each row and each column, 2 × 3 + 2 × 1 = 8.
    grid = shown("sheet")["arrangement"]
    assert (grid["rows"], grid["columns"], grid["turned"]) == (3, 1, True)
    assert shown("sheet")["cuts"] == 8
    assert shown("sheet")["printable"] == box(4.2, 4.2, 201.6, 288.6)


def test_the_slots_are_centred_on_the_sheet() -> None:
    # The block: 190 wide, 3 × 90 + 2 × 4 = 278 high. Centred: (210 − 190) ÷ 2 = 10, (297 − 278) ÷ 2 = 9.5, which
    # clears the margins. Each next slot: 90 + 4 = 94 lower.
    # Bleed: 3 outside (9.5 − 3 = 6.5 is still printable), half the gutter, 2, between.
    slots = shown("sheet")["slots"]
    assert [slot["trim"] for slot in slots] == [
        box(10, 9.5, 190, 90),
        box(10, 103.5, 190, 90),
        box(10, 197.5, 190, 90),
    ]
    assert [slot["printed"] for slot in slots] == [
        [box(7, 6.5, 196, 95)],
        [box(7, 101.5, 196, 94)],
        [box(7, 195.5, 196, 95)],
    ]


def test_where_the_first_rule_of_the_first_leaf_lies_on_the_paper() -> None:
    # A quarter turn clockwise takes (x, y) of the face to (190 − y, x); the slot adds (10, 9.5).
    #   (17.5, 18.1) → (171.9, 17.5) → (181.9, 27)             (79, 18.1) → (171.9, 79) → (181.9, 88.5)
    turn = shown("sheet")["slots"][0]["transform"]
    ends = [
        (turn["a"] * x + turn["c"] * y + turn["e"], turn["b"] * x + turn["d"] * y + turn["f"])
        for x, y in ((17.5, 18.1), (79, 18.1))
    ]
    assert ends == [pytest.approx((181.9, 27)), pytest.approx((181.9, 88.5))]


def test_the_crop_marks_at_the_head_stand_on_both_trim_lines() -> None:
    # Between the printable edge at 4.2 and the bleed at 6.5 are 2.3 mm; 0.3 mm are kept free: marks of 2 mm,
    # from 6.5 − 0.3 = 6.2 up to 4.2, at x = 10 and x = 10 + 190 = 200.
    marks = [node["outline"] for node in shown("sheet")["marks"] if node["cause"]["part"] == "crop-mark"]
    assert {"M10 6.2V4.2", "M200 6.2V4.2"} <= set(marks)


def test_the_copies() -> None:
    # 50 leaves and 5 % over are 52.5; 2 test sheets of 3 faces are 6; 58.5 ÷ 3 = 19.5: 20 sheets.
    assert shown("sheet")["copies"] == 20
