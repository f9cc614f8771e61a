"""A leaf that a message names is written into the design, and the finding is gone."""

import re

import pytest
from kit import disc, pad

ART = {"disc.png": disc(900, 700)}


def told(layout: str, width: str, height: str, extra: str = "") -> list[tuple[str, str, str]]:
    """What is found about room: check, message and remedy."""
    text = f"pad: A leaf\nlayout: {layout}\ntrim: {{width: {width} mm, height: {height} mm}}\n"
    made = pad(text + "art: {file: disc.png}\n" + extra, files=ART)
    return [
        (found.check, found.message, found.remedy.text)
        for found in made.findings
        if found.check in ("row-room", "block-room") and found.remedy
    ]


CASES = [
    ("meals", "76", "203"),
    ("week", "76", "203"),
    ("two-columns", "76", "203"),
    ("sections", "60", "60"),
    ("week", "60", "60"),
    ("half-page", "60", "60"),
    ("habits", "60", "60"),
    ("day-plan", "60", "60"),
]


@pytest.mark.parametrize(("layout", "width", "height"), CASES)
def test_on_the_leaf_that_is_named_the_finding_is_gone(layout: str, width: str, height: str) -> None:
    found = told(layout, width, height)
    assert found
    for check, message, remedy in found:
        named = re.search(r"leaf (?:of )?([\d.]+) mm × ([\d.]+) mm", remedy)
        assert named, remedy
        about = re.sub(r"[\d.]+", "N", message)
        left = [(c, re.sub(r"[\d.]+", "N", m)) for c, m, _ in told(layout, named[1], named[2])]
        assert (check, about) not in left


def test_new_writes_no_text_over_two_headings() -> None:
    from padspec.first_design import FirstWish, first_design
    from padspec.workspace import MemoryWorkspace

    layout = b"""layout: pair
about: Two headed lists.
face:
  - art: {id: art}
  - panel:
      id: panel
      grow: 1
      holds:
        - heading: {id: first, text: To do}
        - rows: {id: doing, grow: 1}
        - heading: {id: second, text: To buy}
        - rows: {id: buying, grow: 1}
"""
    folder = MemoryWorkspace({"disc.png": ART["disc.png"], "layouts/pair.yaml": layout, "studio.yaml": b"{}"})
    begun = first_design("x.pad.yaml", FirstWish("disc.png", layout="pair"), folder)
    assert "text:" not in begun.text
