"""What build writes, says and remembers."""

import json
import os

import numpy as np
import pikepdf
import pytest
from kit import picture
from PIL import Image

from .command import FAULTY, PLAIN, padspec, put, written

WITH_ART = PLAIN + "art: {file: moth.png}\n"


@pytest.fixture
def project(tmp_path):
    return put(tmp_path, moth__pad__yaml=WITH_ART, moth__png=picture(1400, 1200))


def times(folder) -> dict[str, int]:
    return {str(path): path.stat().st_mtime_ns for path in (folder / "out").rglob("*") if path.is_file()}


def test_build_writes_face_sheet_proofs_findings_and_picture(project):
    assert padspec(project, "build").status == 0
    names = {name for name in written(project / "out") if not name.startswith((".cache/", "art/"))}
    assert names == {
        f"moth/{name}" for name in ("face.svg", "face.png", "sheet.pdf", "sheet.png", "cuts.svg", "findings.json")
    }
    assert len(list((project / "out/art").iterdir())) == 1


def test_the_face_links_the_picture_that_was_written(project):
    padspec(project, "build")
    name = next((project / "out/art").iterdir()).name
    assert f"../art/{name}" in (project / "out/moth/face.svg").read_text()


def test_embed_puts_the_picture_into_the_face(project):
    padspec(project, "build", "--embed")
    assert "data:image/png;base64," in (project / "out/moth/face.svg").read_text()
    assert not (project / "out/art").exists()


def test_no_proofs_leaves_the_pngs_out(project):
    padspec(project, "build", "--no-proofs")
    assert not list((project / "out").rglob("moth/*.png"))


def test_the_table_tells_design_fit_sheets_findings_and_files(project):
    """3 leaves on A4; (50 × 1.05 + 3 × 2) ÷ 3 = 19.5, so 20 sheets."""
    head, row = padspec(project, "build", "--no-proofs").out.splitlines()[:2]
    assert [cell.strip() for cell in row.split("  ") if cell.strip()] == [
        "Errands",
        "3-up on A4",
        "20",
        "8",
        "none",
        "out/moth/",
    ]
    for word in ("design", "sheet", "sheets for a pad", "cuts", "findings", "files"):
        assert word in head


def test_columns_of_the_table_stand_under_each_other(tmp_path):
    put(tmp_path, a__pad__yaml=PLAIN, b__pad__yaml=FAULTY.replace("Errands", "A much longer name"))
    lines = padspec(tmp_path, "build", "--no-proofs").out.splitlines()
    at = lines[0].index("sheet")
    assert [line[at : at + 10] for line in lines[1:3]] == ["3-up on A4"] * 2


def test_out_puts_everything_elsewhere(project, tmp_path_factory):
    elsewhere = tmp_path_factory.mktemp("elsewhere") / "to print"
    built = padspec(project, "build", "--out", str(elsewhere))
    assert built.status == 0
    assert (elsewhere / "moth/sheet.pdf").is_file()
    assert not (project / "out").exists()


class TestErrorsHoldBackTheSheet:
    @pytest.fixture
    def failed(self, tmp_path):
        put(tmp_path, moth__pad__yaml=PLAIN)
        padspec(tmp_path, "build")
        self.sound = written(tmp_path / "out/moth")
        put(tmp_path, moth__pad__yaml=FAULTY)
        self.built = padspec(tmp_path, "build")
        return tmp_path

    @pytest.mark.usefixtures("failed")
    def test_the_status_is_1(self):
        assert self.built.status == 1

    def test_an_earlier_sheet_is_set_aside(self, failed):
        now = written(failed / "out/moth")
        assert "sheet.pdf" not in now
        assert now["sheet.old.pdf"] == self.sound["sheet.pdf"]

    def test_findings_say_failed(self, failed):
        assert json.loads((failed / "out/moth/findings.json").read_bytes())["state"] == "failed"

    @pytest.mark.usefixtures("failed")
    def test_the_message_says_what_was_held_back_and_how_to_go_on(self):
        last = self.built.out.splitlines()[-1]
        assert "Errands" in last
        assert "--despite-errors" in last

    @pytest.mark.parametrize("proof", ["face.png", "sheet.png"])
    def test_a_proof_is_marked(self, failed, proof):
        """A red frame: the corner is red, which nothing of the design is."""
        corner = np.asarray(Image.open(failed / "out/moth" / proof).convert("RGB"))[1, 1].astype(int)
        assert corner[0] > 180
        assert corner[1:].max() < 80

    def test_a_second_build_is_unchanged_and_still_fails(self, failed):
        again = padspec(failed, "build")
        assert again.status == 1
        assert "(unchanged)" in again.out
        assert "--despite-errors" in again.out

    def test_mending_the_error_brings_the_sheet_back(self, failed):
        put(failed, moth__pad__yaml=PLAIN)
        assert padspec(failed, "build").status == 0
        assert written(failed / "out/moth")["sheet.pdf"] == self.sound["sheet.pdf"]

    def test_despite_errors_writes_the_sheet_with_a_longer_slug(self, failed):
        built = padspec(failed, "build", "--despite-errors")
        assert built.status == 1
        assert slug_parts(failed / "out/moth/sheet.pdf") > slug_parts_of(self.sound["sheet.pdf"]) + 20


def slug_parts(file) -> int:
    return slug_parts_of(file.read_bytes())


def slug_parts_of(pdf: bytes) -> int:
    """How many closed outlines stand on the page beside its faces: the letters of slug and scale bar."""
    import io

    with pikepdf.open(io.BytesIO(pdf)) as document:
        operators = [str(line.operator) for line in pikepdf.parse_content_stream(document.pages[0])]
    return operators.count("h")


def test_despite_errors_says_nothing_on_a_sound_design(project):
    padspec(project, "build")
    plain = (project / "out/moth/sheet.pdf").read_bytes()
    padspec(project, "build", "--despite-errors")
    assert (project / "out/moth/sheet.pdf").read_bytes() == plain


class TestWhatHasNotChanged:
    def test_is_not_written_again(self, project):
        padspec(project, "build")
        before = times(project)
        again = padspec(project, "build")
        assert "(unchanged)" in again.out
        assert times(project) == before

    def test_is_told_in_json(self, project):
        assert padspec(project, "build", "--json").json["designs"][0]["unchanged"] is False
        assert padspec(project, "build", "--json").json["designs"][0]["unchanged"] is True

    def test_is_made_again_when_asked(self, project):
        padspec(project, "build")
        assert "(unchanged)" not in padspec(project, "build", "--again").out

    @pytest.mark.parametrize(
        "change",
        [
            lambda folder: put(folder, moth__png=picture(900, 800, (20, 90, 60))),
            lambda folder: put(folder, studio__yaml="studio: Umberwick Paper\n"),
            lambda folder: put(folder, moth__pad__yaml=WITH_ART + "leaves: 60\n"),
            lambda folder: (folder / "out/moth/sheet.pdf").unlink(),
            lambda folder: (folder / "out/moth/face.svg").write_text("<svg/>"),
            lambda folder: next((folder / "out/art").iterdir()).unlink(),
            lambda folder: (folder / "out/moth/findings.json").unlink(),
        ],
        ids=["art", "studio appears", "design", "no sheet", "other face", "no picture", "no findings"],
    )
    def test_is_told_from_what_has(self, project, change):
        padspec(project, "build")
        change(project)
        assert "(unchanged)" not in padspec(project, "build").out
        assert "(unchanged)" in padspec(project, "build").out

    def test_a_layout_of_the_makers_own_that_appears_counts(self, project):
        from padspec.resources import layout_text

        padspec(project, "build")
        (project / "layouts").mkdir()
        (project / "layouts/checklist.yaml").write_text(layout_text("checklist").replace("To do", "To buy"))
        assert "(unchanged)" not in padspec(project, "build").out

    def test_a_touched_file_with_the_same_content_counts_as_unchanged(self, project):
        padspec(project, "build")
        os.utime(project / "moth.png", (1, 1))
        assert "(unchanged)" in padspec(project, "build").out

    def test_other_options_make_it_again(self, project):
        padspec(project, "build")
        assert "(unchanged)" not in padspec(project, "build", "--embed").out

    def test_a_record_that_cannot_be_read_is_as_good_as_none(self, project):
        padspec(project, "build")
        for record in (project / "out/.cache").rglob("*.json"):
            record.write_bytes(b"\xff\xfe not json")
        built = padspec(project, "build")
        assert (built.status, "(unchanged)" in built.out) == (0, False)


class TestMoreThanOneDesign:
    def test_two_with_one_sku_are_refused(self, tmp_path):
        put(tmp_path, a__pad__yaml=PLAIN + "sku: MOTH\n", b__pad__yaml=PLAIN + "sku: moth\n")
        built = padspec(tmp_path, "build", "--no-proofs")
        assert built.refused("b.pad.yaml", "a.pad.yaml", "moth", "sku of its own")

    def test_two_with_one_sku_are_refused_when_nothing_changed_too(self, tmp_path):
        put(tmp_path, a__pad__yaml=PLAIN + "sku: MOTH\n", b__pad__yaml=PLAIN + "sku: MOTH\n")
        padspec(tmp_path, "build", "--no-proofs")
        assert padspec(tmp_path, "build", "--no-proofs").refused("MOTH")

    def test_one_that_cannot_be_read_does_not_hold_up_the_others(self, tmp_path):
        put(tmp_path, a__pad__yaml="pad: [\n", b__pad__yaml=PLAIN)
        built = padspec(tmp_path, "build", "--no-proofs")
        assert built.refused("a.pad.yaml")
        assert (tmp_path / "out/b/sheet.pdf").is_file()

    def test_a_folder_means_its_designs_in_order(self, tmp_path):
        (tmp_path / "pads").mkdir()
        put(tmp_path / "pads", b__pad__yaml=PLAIN, a__pad__yaml=PLAIN, notes__yaml="not: a design\n")
        data = padspec(tmp_path, "build", "pads", "--json", "--no-proofs").json
        assert [design["file"] for design in data["designs"]] == ["a.pad.yaml", "b.pad.yaml"]

    def test_a_collection_says_which_and_in_which_order(self, tmp_path):
        collection = "collection: Night\ndesigns: [z.pad.yaml, a.pad.yaml]\n"
        put(tmp_path, a__pad__yaml=PLAIN, z__pad__yaml=PLAIN, y__pad__yaml=PLAIN, collection__yaml=collection)
        data = padspec(tmp_path, "check", "--json").json
        assert [design["file"] for design in data["designs"]] == ["z.pad.yaml", "a.pad.yaml"]

    def test_a_design_named_twice_is_built_once(self, tmp_path):
        put(tmp_path, a__pad__yaml=PLAIN)
        data = padspec(tmp_path, "build", "a.pad.yaml", ".", "./a.pad.yaml", "--json", "--no-proofs").json
        assert len(data["designs"]) == 1

    def test_a_design_in_a_folder_below_goes_by_the_studio_above(self, tmp_path):
        (tmp_path / "cards").mkdir()
        put(tmp_path, studio__yaml="sheet: {size: letter}\n")
        put(tmp_path / "cards", a__pad__yaml=PLAIN)
        data = padspec(tmp_path / "cards", "build", "--json", "--no-proofs").json
        assert (data["designs"][0]["sheet"], data["designs"][0]["file"]) == ("letter", "cards/a.pad.yaml")
        assert (tmp_path / "out/a/sheet.pdf").is_file()


def test_a_design_that_the_collection_does_not_list_is_named(tmp_path):
    listed, other = PLAIN, PLAIN.replace("Errands", "Other")
    put(
        tmp_path,
        x__pad__yaml=listed,
        y__pad__yaml=other,
        collection__yaml="collection: C\ndesigns: [x.pad.yaml]\n",
    )
    done = padspec(tmp_path, "build", "--no-proofs")
    assert done.status == 0
    assert "y.pad.yaml is not in collection.yaml, so it was left out." in done.err
    assert not (tmp_path / "out" / "y").exists()


def test_a_picture_listed_in_a_collection_is_no_design(tmp_path):
    put(tmp_path, collection__yaml="collection: C\ndesigns: [fox.webp]\n")
    assert padspec(tmp_path, "build").refused(
        "collection.yaml:2:11", "fox.webp is not a design", "padspec new fox.webp"
    )
