"""What is wrong is told all at once, each with its place and a mend."""

from pathlib import Path

import pytest
from kit import PLAIN, apply, disc, pad, problems

from padspec.base.errors import ProblemsError
from padspec.pipeline import make
from padspec.resolve.blocks.heading import Heading
from padspec.workspace import FolderWorkspace


def test_a_picture_that_is_not_there_is_refused_with_the_nearest_name() -> None:
    text = apply(PLAIN, {"art.file": "art/moht.png"})
    assert problems(text, files={"art/moth.png": disc(), "art/owl.png": disc()}) == [
        "x.pad.yaml:6:9 There is no picture art/moht.png. Did you mean moth.png?"
    ]


def test_a_picture_with_no_likely_neighbour_says_where_paths_start() -> None:
    text = apply(PLAIN, {"art.file": "art/zebra.png"})
    (problem,) = problems(text, files={"art/moth.png": disc()})
    assert problem.endswith("There is no picture art/zebra.png. Paths start at the folder of x.pad.yaml.")


def test_a_picture_in_a_folder_that_is_not_there_is_refused_too(tmp_path: Path) -> None:
    (tmp_path / "x.pad.yaml").write_text(apply(PLAIN, {"art.file": "art/moth.png"}), "utf-8")
    with pytest.raises(ProblemsError, match=r"There is no picture art/moth\.png\."):
        make("x.pad.yaml", FolderWorkspace(tmp_path))


def test_a_picture_outside_the_project_is_refused() -> None:
    (problem,) = problems(apply(PLAIN, {"art.file": "../moth.png"}))
    assert "../moth.png leads outside the project folder." in problem


def test_several_faults_are_told_together_in_order_of_place() -> None:
    text = apply(
        PLAIN,
        {
            "art.file": "moht.png",
            "palette.ink.from": "art",
            "heading.font": "Nunitto",
            "rows.colour": "ruel",
            "blocks.pannel.corner": "3 mm",
        },
    )
    found = problems(text, files={"moth.png": disc()})
    assert [problem.split()[0] for problem in found] == [
        "x.pad.yaml:6:9",
        "x.pad.yaml:11:9",
        "x.pad.yaml:13:11",
        "x.pad.yaml:15:3",
    ]
    for problem, part in zip(found, ("moht.png", "Nunitto", "ruel", "pannel"), strict=True):
        assert part in problem


def test_a_trim_that_cannot_be_made_is_refused_with_the_range() -> None:
    (problem,) = problems(apply(PLAIN, {"trim.width": "12 mm"}))
    assert "12 mm" in problem
    assert "20 mm" in problem


def test_a_heading_keeps_its_line_breaks_and_no_break_spaces_and_loses_the_rest() -> None:
    made = pad('pad: X\ntrim: {width: 90 mm, height: 190 mm}\nheading: {text: "  No\\u00a05  \\n lamps\\t"}\n')
    block = made.design.face[0].holds[0]
    assert isinstance(block, Heading)
    assert block.text == "No\u00a05\nlamps"


def test_a_setting_of_the_built_in_layout_is_placed_where_the_maker_can_write_it() -> None:
    # The heading's text comes from the layout that padspec brings; a finding on it points at the design.
    place = pad(PLAIN).design.key("heading", "text").place
    assert (place.file, place.line) == ("x.pad.yaml", 1)


def test_a_setting_of_the_makers_own_layout_is_placed_there() -> None:
    layout = (
        "layout: mine\nabout: One panel.\nface:\n"
        "  - panel: {id: panel, grow: 1, holds: [{rows: {id: rows, grow: 1, pitch: 9 mm}}]}\n"
    )
    design = pad(apply(PLAIN, {"layout": "mine"}), files={"layouts/mine.yaml": layout.encode()}).design
    place = design.key("rows", "pitch").place
    assert (place.file, place.line) == ("layouts/mine.yaml", 4)


def test_a_name_left_out_is_taken_from_the_file() -> None:
    assert pad(PLAIN, path="cards/night-moth.pad.yaml").design.sku == "night-moth"


def test_a_least_bleed_above_the_bleed_contradicts_it() -> None:
    text = apply(PLAIN, {"sheet.bleed": "1 mm", "sheet.least-bleed": "2 mm"})
    assert problems(text) == [
        "x.pad.yaml:7:16 The least bleed, 2 mm, is more than the bleed, 1 mm. Write 1 mm or less."
    ]


def test_a_least_size_above_the_size_contradicts_it() -> None:
    text = apply(PLAIN, {"heading.size": "5 mm", "heading.least-size": "9 mm"})
    (problem,) = problems(text)
    assert "The least size, 9 mm, is more than the size, 5 mm." in problem


def test_a_palette_name_that_is_almost_a_role_and_never_used_is_a_slip() -> None:
    (problem,) = problems(apply(PLAIN, {"palette.grund": "red"}))
    assert problem.endswith("Nothing uses the palette name grund, and ground is not set. Did you mean ground?")


def test_a_palette_name_of_ones_own_may_stand_unused() -> None:
    assert pad(apply(PLAIN, {"palette.midnight": "#101030"})).design.ground.pattern is None


def test_art_with_settings_but_no_picture_is_a_slip() -> None:
    (problem,) = problems(apply(PLAIN, {"art.height": "40 %"}))
    assert "no picture" in problem


def test_insets_that_leave_nothing_for_the_picture_are_refused() -> None:
    (problem,) = problems(apply(PLAIN, {"art.file": "moth.png", "art.inset": "44 mm"}), files={"moth.png": disc()})
    assert "Write 42.5 mm or less." in problem


def test_vectors_cannot_be_kept_of_a_picture_made_of_pixels() -> None:
    text = apply(PLAIN, {"art.file": "moth.png", "art.keep-vector": "true"})
    (problem,) = problems(text, files={"moth.png": disc()})
    assert "made of pixels" in problem


def test_margins_that_leave_nothing_of_the_sheet_are_a_fault_of_the_studio() -> None:
    (problem,) = problems(PLAIN, "printer:\n  margins: {left: 110 mm, right: 110 mm}\n")
    assert problem.startswith("studio.yaml:2:3 The printer's margins")
