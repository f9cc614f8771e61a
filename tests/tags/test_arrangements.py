"""Tags of any size: words, price, picture and symbol keep inside the label, off its hole, and off each other."""

import re
from dataclasses import replace
from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from kit import disc, pad

from padspec.base.geometry import Box, Size
from padspec.base.gtin import gtin
from padspec.compose.lettering.ink import true_bounds
from padspec.resolve.studio import Studio
from padspec.resolve.tag_sheets import Hole, TagSheet
from padspec.resolve.written_price import WrittenPrice
from padspec.scene.nodes import Group, Node
from padspec.scene.outline import bounds
from padspec.tags.arrange import arranged
from padspec.tags.content import Content, content_of
from padspec.tags.grid import bed_of_tags, inner_box
from padspec.tags.pattern import Pattern, link_squares, number_bars, sku_bars
from padspec.tags.pieces import Tag, TagMisfitError

NAMES = {
    "short": "Owl",
    "usual": "Night moth list",
    "long": "The owl who carries every letter through the rain and never asks for postage",
    "leftwards": "רשימת קניות של קיפוד",
    "one word": "Donaudampfschifffahrtsgesellschaftskapitän",
}
PATTERNS: dict[str, Pattern | None] = {
    "none": None,
    "EAN-13": number_bars(gtin("5012345678900")),
    "UPC-A": number_bars(gtin("036000291452")),
    "Code 128": sku_bars("NG-MOTH"),
    "QR": link_squares("https://example.com/moth"),
}


@cache
def _usual() -> tuple[Content, Studio]:
    made = pad(
        "pad: X\nprice: 6.50\ntrim: {width: 90 mm, height: 190 mm}\nart: {file: a.png}\n", files={"a.png": disc()}
    )
    content = content_of(made.design, made.face, WrittenPrice("CAD", "", " CAD", "."), None)
    return replace(content, sku="NG-MOTH", studio="Umberwick Paper"), made.design.studio


def _tag(size: Size, name: str, kind: str, variant: str, hole: Hole | None, corner: float) -> tuple[Tag, Box]:
    content, studio = _usual()
    sheet = TagSheet("s", "A4", Size(210, 297), 1, 1, size, 40, 40, size.width, size.height, corner, hole)
    inner = inner_box(sheet, bed_of_tags(sheet, studio))
    own = replace(content, name=NAMES[name], pattern=PATTERNS[kind], variant=variant)
    return arranged(own, sheet, inner), inner


def _boxes(nodes: tuple[Node, ...], part: str) -> list[Box]:
    """The box of every node of a part; a picture's window is its clip."""
    found = []
    for node in nodes:
        if isinstance(node, Group):
            found += [bounds(node.clip)] if node.clip and part == "picture" else []
        elif getattr(node.cause, "part", "") == part and node.outline:
            found.append(true_bounds(node.outline))
    return found


@settings(max_examples=150, deadline=None)
@given(
    st.integers(36, 110),
    st.integers(20, 110),
    st.sampled_from(list(NAMES)),
    st.sampled_from(list(PATTERNS)),
    st.sampled_from(["", "midnight, wide ruling"]),
    st.sampled_from([None, Hole(4, "head", 7), Hole(4, "left", 7)]),
    st.sampled_from([0.0, 3.0, 9.0]),
)
def test_nothing_lies_on_anything_else_or_off_the_label(
    width: int, height: int, name: str, kind: str, variant: str, hole: Hole | None, corner: float
) -> None:
    try:
        tag, inner = _tag(Size(width, height), name, kind, variant, hole, corner)
    except TagMisfitError as misfit:
        told = str(misfit)
    else:
        _look(tag, inner, kind)
        return
    assert re.search(r"\d mm", told)


def _look(tag: Tag, inner: Box, kind: str) -> None:
    # A sign may hang a little past its line: a comma, the foot of a g.
    room = inner.inset(-0.9)
    plates, windows = _boxes(tag.nodes, "panel"), _boxes(tag.nodes, "picture")
    words = [box for box in _boxes(tag.nodes, "lettering") if not any(plate.covers(box, 0.1) for plate in plates)]
    for box in (*plates, *windows, *words):
        assert room.covers(box), box
    assert len(plates) == (kind != "none")
    assert tag.symbol is None or inner.covers(plates[0], 0.002)
    solid = [*plates, *windows]
    for n, one in enumerate(solid):
        assert not any(one.overlaps(other, 0.01) for other in solid[n + 1 :])
    for box in words:
        assert not any(
            box.inset(0.05).overlaps(other, 0.01) for other in solid if min(box.width, box.height) > 0.2
        )
    for n, one in enumerate(words):
        assert not any(_overlap(one, other) > 0.25 for other in words[n + 1 :])


def _overlap(one: Box, other: Box) -> float:
    """How deep two boxes lie in each other, in mm: tight lines may touch where a g meets an h."""
    across = min(one.right, other.right) - max(one.x, other.x)
    down = min(one.bottom, other.bottom) - max(one.y, other.y)
    return min(across, down) if across > 0 and down > 0 else 0.0


@pytest.mark.parametrize("kind", ["none", "EAN-13", "QR"])
def test_prices_stand_on_one_height_on_all_tags_of_a_sheet(kind: str) -> None:
    # Names of one line: the price does not follow the height that each needs.
    feet = set()
    for name in ("short", "usual", "leftwards"):
        tag, _ = _tag(Size(55, 85), name, kind, "", Hole(4, "head", 7), 0.0)
        prices = sorted(_boxes(tag.nodes, "lettering"), key=lambda box: box.height)
        feet.add(round(max(box.height for box in prices), 3))
        tallest = [box for box in prices if box.height == prices[-1].height]
        feet.add(round(tallest[0].bottom, 3))
    assert len(feet) <= 2
