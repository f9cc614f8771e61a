"""The page of a comparison: whole, safe, and readable by whatever reads it."""

import base64
import hashlib
import re
from html.parser import HTMLParser
from itertools import pairwise

import pytest

from padspec.base.geometry import Box
from padspec.comparing.as_data import comparison_data
from padspec.comparing.comparison import Compared, Comparison, Shown
from padspec.comparing.git import Commit
from padspec.comparing.page import page_html
from padspec.comparing.told import Change
from padspec.comparing.write import write_comparison
from padspec.workspace import MemoryWorkspace

COMMIT = Commit("HEAD", "0123456789abcdef", "0123456", "The <first>")
FILES = {"before": b"old", "now": b"new", "difference": b"apart"}
COLOUR = Change("palette", "rule", "#7a3b58", "#3b587a", "ΔE 24.1", 24.1, ("rows rule colour",))


def moth(**files: bytes) -> Compared:
    shown = Shown(files or FILES, 96.0, 196.0, 0.061, (Box(25.0, 65.0, 40.0, 8.0),))
    return Compared("MOTH", "Moths & <more>", "moth.pad.yaml", "changed", changes=(COLOUR,), shown=shown)


def of(*pads: Compared) -> Comparison:
    return Comparison("Night <garden>", COMMIT, pads)


class Tags(HTMLParser):
    """Every tag with its attributes."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.found: list[tuple[str, dict[str, str | None]]] = []
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found.append((tag, dict(attrs)))

    def all(self, tag: str) -> list[dict[str, str | None]]:
        return [attributes for name, attributes in self.found if name == tag]


def test_names_are_text_and_never_tags() -> None:
    page = page_html(of(moth()))
    assert "Moths &amp; &lt;more&gt;" in page
    assert "Night &lt;garden&gt;" in page
    assert "The &lt;first&gt;" in page
    assert not {tag for tag, _ in Tags(page).found} & {"more", "garden", "first"}


def test_the_policy_lets_in_just_its_own_style_and_script_and_the_pictures_beside_it() -> None:
    page = page_html(of(moth()))
    (policy,) = (meta["content"] for meta in Tags(page).all("meta") if "http-equiv" in meta)
    for tag in ("style", "script"):
        (content,) = re.findall(rf"<{tag}>(.*?)</{tag}>", page, re.DOTALL)
        digest = base64.b64encode(hashlib.sha256(content.encode()).digest()).decode()
        assert f"{tag}-src 'sha256-{digest}'" in str(policy)
    assert "default-src 'none'" in str(policy)
    assert not re.search(r"https?:", page)
    assert 'style="' not in page


def test_before_and_difference_stand_beside_now_which_fades() -> None:
    tags = Tags(page_html(of(moth())))
    pictures = [str(image["src"]).split("-")[1] for image in tags.all("img")]
    assert pictures == ["before", "before", "now", "difference"]
    (range_,) = tags.all("input")
    assert range_["type"] == "range"
    assert range_["aria-label"] == "Moths & <more>: from before to now"


def test_every_picture_says_what_it_is() -> None:
    shown = [image["alt"] for image in Tags(page_html(of(moth()))).all("img") if "hidden" not in image]
    assert shown == [
        "Moths & <more>, before",
        "Moths & <more>, now",
        "Moths & <more>: 6.1 % of the face differs; the largest part is 40 × 8 mm, 25 mm from the left and 65 mm "
        "from the head.",
    ]


@pytest.mark.parametrize(
    ("share", "box", "said"),
    [
        (0.4, Box(-3.0, -3.0, 96.0, 196.0), "40 % of the face differs, all over it."),
        (
            0.1,
            Box(-3.0, 10.0, 43.0, 20.0),
            "largest part is 40 × 20 mm, 0 mm from the left and 10 mm from the head.",
        ),
        (0.0001, Box(1.0, 1.0, 1.0, 1.0), "Less than 0.1 % of the face differs;"),
    ],
)
def test_where_most_of_it_changed_is_told_on_the_leaf(share: float, box: Box, said: str) -> None:
    shown = Shown(FILES, 96.0, 196.0, share, (box,))
    pad = Compared("MOTH", "Moths", "moth.pad.yaml", "changed", changes=(COLOUR,), shown=shown)
    assert said in page_html(of(pad))


def test_headings_and_anchors_are_in_order() -> None:
    new = Compared("NEW", "New", "n.pad.yaml", "added", shown=Shown({"now": b"x"}, 90.0, 90.0, 1.0, ()))
    tags = Tags(page_html(of(moth(), new)))
    anchors = {str(section["id"]) for section in tags.all("section")}
    assert {str(link["href"])[1:] for link in tags.all("a")} == anchors
    levels = [int(tag[1]) for tag, _ in tags.found if re.fullmatch(r"h[1-6]", tag)]
    assert levels[0] == 1
    assert all(after - before <= 1 for before, after in pairwise(levels))


def test_colours_are_shown_beside_their_names() -> None:
    page = page_html(of(moth()))
    assert [rect["fill"] for rect in Tags(page).all("rect")] == ["#7a3b58", "#3b587a"]
    assert "ΔE 24.1" in page
    assert "rows rule colour" in page


def test_pictures_are_written_beside_the_page_and_old_ones_go() -> None:
    output = MemoryWorkspace({"notes.txt": b"mine"})
    first = write_comparison(of(moth()), output)
    assert set(output.files) == {"notes.txt", *first}
    second = write_comparison(of(moth(before=b"1", now=b"2", difference=b"3")), output)
    assert set(output.files) == {"notes.txt", *second}
    assert len(set(first) | set(second)) == 7


def test_what_the_page_names_is_what_is_written() -> None:
    output = MemoryWorkspace({})
    written = write_comparison(of(moth()), output)
    named = {str(image["src"]) for image in Tags(output.files["index.html"].decode()).all("img")}
    assert {"index.html", *named} == set(written)


def test_a_pad_with_no_change_but_shared_ones_has_no_section_of_its_own() -> None:
    pads = [Compared(f"S{n}", f"S{n}", "s", "changed", changes=(COLOUR,), same_face=True) for n in range(3)]
    page = page_html(of(*pads))
    assert len(Tags(page).all("section")) == 1
    assert "In all 3 pads" in page
    assert "S0 (S0), S1 (S1), S2 (S2)" in page


def test_the_data_for_other_programs_holds_changes_and_files() -> None:
    data = comparison_data(of(moth()), "out/compare")
    (pad,) = data["pads"]
    assert data["state"] == "changed"
    assert data["page"] == "out/compare/index.html"
    assert pad["changes"][0]["delta_e"] == 24.1
    assert pad["changes"][0]["sentence"] == COLOUR.sentence
    assert pad["pictures"]["share"] == 0.061
    assert pad["pictures"]["places"] == [{"x": 25.0, "y": 65.0, "width": 40.0, "height": 8.0}]
    assert pad["pictures"]["files"]["now"].startswith("out/compare/faces/MOTH-now-")
