"""padspec calibrate and padspec strip as a maker runs them."""

import io

import pikepdf
import pytest
import yaml
from cli.command import PLAIN, padspec, padspec_process, put, written

STUDIO = "printer: {offset: {x: 0.8 mm, y: -0.5 mm}, scale: {x: 99.6 %, y: 100.2 %}, turn: left}\n"


class TestCalibrate:
    def test_writes_two_pages_into_out(self, tmp_path):
        done = padspec(tmp_path, "calibrate")
        assert done.status == 0
        with pikepdf.open(tmp_path / "out/calibration.pdf") as document:
            assert len(document.pages) == 2

    def test_says_what_to_do_next_with_the_lines_to_fill_in(self, tmp_path):
        put(tmp_path, studio__yaml=STUDIO)
        said = padspec(tmp_path, "calibrate").out
        assert said.startswith("Wrote out/calibration.pdf, for A4.\nNext: print it at 100 %")
        assert "    offset: {x: 0.8 mm, y: -0.5 mm}\n" in said

    def test_the_lines_that_it_prints_may_stand_in_the_studio_as_they_are(self, tmp_path):
        block = padspec(tmp_path, "calibrate").out.partition("\n\n")[2].partition("\n\n")[0]
        lines = "".join(f"{line[2:]}\n" for line in block.splitlines())
        assert set(yaml.safe_load(lines)["printer"]) == {
            "margins",
            "offset",
            "scale",
            "turn",
            "least-line",
            "least-screened-line",
        }
        first = padspec(tmp_path, "calibrate", "--json").json["printer"]
        put(tmp_path, studio__yaml=lines)
        assert padspec(tmp_path, "calibrate", "--json").json["printer"] == first

    def test_corrected_writes_a_proof_beside_it(self, tmp_path):
        put(tmp_path, studio__yaml=STUDIO)
        done = padspec(tmp_path, "calibrate", "--corrected")
        assert (done.status, set(written(tmp_path / "out"))) == (0, {"calibration-proof.pdf"})
        assert "true to half a millimetre" in done.out

    def test_corrected_says_that_there_is_nothing_to_prove_yet(self, tmp_path):
        assert "Nothing is corrected yet" in padspec(tmp_path, "calibrate", "--corrected").out

    def test_json_prints_what_was_written_and_nothing_else(self, tmp_path):
        data = padspec(tmp_path, "calibrate", "--json", "--out", "to-print").json
        assert data["written"] == "to-print/calibration.pdf"
        assert (tmp_path / "to-print/calibration.pdf").is_file()

    @pytest.mark.parametrize("path", [".", "studio.yaml", "pads"])
    def test_a_path_means_the_studio_above_it(self, tmp_path, path):
        (tmp_path / "pads").mkdir()
        put(tmp_path, studio__yaml="sheet: {size: letter}\n")
        assert padspec(tmp_path, "calibrate", path, "--json").json["sheet"] == "letter"

    def test_a_path_that_is_not_there_is_refused(self, tmp_path):
        assert padspec(tmp_path, "calibrate", "nowhere").refused("nowhere", "There is no such file or folder")

    def test_a_studio_with_a_fault_is_told_with_its_line(self, tmp_path):
        put(tmp_path, studio__yaml="printer: {scale: {x: 97 %}}\n")
        assert padspec(tmp_path, "calibrate").refused("studio.yaml:1:", "97 %", "99 % to 101 %")

    def test_a_fault_in_json_is_json(self, tmp_path):
        put(tmp_path, studio__yaml="printer: {turn: up}\n")
        done = padspec(tmp_path, "calibrate", "--json")
        assert done.status == 2
        assert done.json["problems"][0]["file"] == "studio.yaml"

    def test_carries_the_day_of_the_surroundings(self, tmp_path):
        padspec_process(tmp_path, "calibrate", SOURCE_DATE_EPOCH="1735689600")
        with pikepdf.open(tmp_path / "out/calibration.pdf") as document:
            assert str(document.docinfo["/CreationDate"]) == "D:20250101000000Z"

    def test_the_same_bytes_in_another_folder_and_time_zone(self, tmp_path):
        one, other = tmp_path / "a", tmp_path / "b"
        for folder, zone, seed in ((one, "Asia/Tokyo", "1"), (other, "America/Lima", "2")):
            folder.mkdir()
            padspec_process(folder, "calibrate", TZ=zone, PYTHONHASHSEED=seed)
        assert written(one) == written(other)


class TestStrip:
    @pytest.fixture
    def project(self, tmp_path):
        return put(tmp_path, moth__pad__yaml=PLAIN + "sku: NG-MOTH\n")

    def test_writes_the_strip_beside_the_sheet(self, project):
        assert padspec(project, "strip", "moth.pad.yaml").status == 0
        assert set(written(project / "out")) == {"NG-MOTH/strip.pdf"}

    def test_says_what_to_do_next(self, project):
        said = padspec(project, "strip", "moth.pad.yaml").out
        assert said.startswith(
            "Wrote out/NG-MOTH/strip.pdf: 25 patches in 5 rows, on A4.\nNext: print it at 100 %"
        )
        assert "padspec check moth.pad.yaml" in said

    def test_json_holds_the_line_of_every_patch(self, project):
        data = padspec(project, "strip", "moth.pad.yaml", "--json").json
        assert data["written"] == "out/NG-MOTH/strip.pdf"
        assert [row["row"] for row in data["rows"]] == [
            "Ground, lightness",
            "Ground, chroma",
            "Panel, towards the ground",
            "Rules, lightness",
            "Rules, weight",
        ]
        last = data["rows"][-1]["patches"][-1]
        assert last == {
            "step": "0.1 mm heavier",
            "key": "rows.weight",
            "value": "0.4 mm",
            "line": "rows: {weight: 0.4 mm}",
        }

    def test_a_line_of_the_strip_written_into_the_design_becomes_its_own_value(self, project):
        patch = padspec(project, "strip", "moth.pad.yaml", "--json").json["rows"][0]["patches"][0]
        put(project, moth__pad__yaml=PLAIN + f"sku: NG-MOTH\n{patch['line']}\n")
        now = padspec(project, "strip", "moth.pad.yaml", "--json").json["rows"][0]["patches"]
        assert next(p["value"] for p in now if p["step"] == "as it is") == patch["value"]

    def test_a_folder_of_several_designs_is_refused_with_one_to_name(self, project):
        put(project, owl__pad__yaml=PLAIN)
        assert padspec(project, "strip", ".").refused("This holds 2 designs", "moth.pad.yaml")

    def test_a_design_that_cannot_be_read_is_told_with_its_line(self, project):
        put(project, moth__pad__yaml=PLAIN + "rows: {weight: 0.3}\n")
        assert padspec(project, "strip", "moth.pad.yaml").refused("moth.pad.yaml:3:", "0.3 mm")

    def test_a_strip_carries_the_date_of_the_design(self, project):
        put(project, moth__pad__yaml=PLAIN + "sku: NG-MOTH\ndate: 2026-03-01\n")
        padspec(project, "strip", "moth.pad.yaml")
        data = (project / "out/NG-MOTH/strip.pdf").read_bytes()
        with pikepdf.open(io.BytesIO(data)) as document:
            assert str(document.docinfo["/CreationDate"]) == "D:20260301000000Z"
