"""Nothing stale looks fresh: what an earlier build left goes, whatever the next one does or cannot do."""

import json
import shutil

import pytest
from kit import picture

from padspec.collection.records import circumstances as outside
from padspec.workspace import FolderWorkspace, MemoryWorkspace

from .command import FAULTY, PLAIN, padspec, put, written

TOO_LARGE = PLAIN.replace("width: 90 mm", "width: 500 mm")
WITH_ART = PLAIN + "art: {file: moth.png}\n"


def results(folder, sku: str = "moth") -> set[str]:
    """The names in the folder of a SKU."""
    place = folder / "out" / sku
    return {path.name for path in place.iterdir()} if place.is_dir() else set()


@pytest.fixture
def built(tmp_path):
    put(tmp_path, moth__pad__yaml=PLAIN)
    assert padspec(tmp_path, "build").status == 0
    return tmp_path


class TestWhatTheNewBuildDoesNotMakeGoes:
    def test_the_proof_of_a_sheet_that_no_longer_holds_the_leaf(self, built):
        put(built, moth__pad__yaml=TOO_LARGE)
        padspec(built, "build")
        assert results(built) == {"face.svg", "face.png", "findings.json", "sheet.old.pdf"}

    def test_proofs_that_are_not_wished_for_any_more(self, built):
        put(built, moth__pad__yaml=PLAIN + "leaves: 60\n")
        padspec(built, "build", "--no-proofs")
        assert results(built) == {"face.svg", "cuts.svg", "sheet.pdf", "findings.json"}

    def test_proofs_whose_record_was_lost(self, built):
        shutil.rmtree(built / "out/.cache")
        padspec(built, "build", "--no-proofs")
        assert results(built) == {"face.svg", "cuts.svg", "sheet.pdf", "findings.json"}

    def test_a_proof_that_comes_back_counts_as_a_change(self, built):
        padspec(built, "build", "--no-proofs")
        assert "(unchanged)" in padspec(built, "build", "--no-proofs").out
        (built / "out/moth/face.png").write_bytes(b"an old one")
        assert "(unchanged)" not in padspec(built, "build", "--no-proofs").out
        assert "face.png" not in results(built)

    def test_the_folder_of_an_earlier_sku(self, tmp_path):
        put(tmp_path, moth__pad__yaml=FAULTY + "sku: ONE\n")
        padspec(tmp_path, "build")
        put(tmp_path, moth__pad__yaml=FAULTY + "sku: TWO\n")
        padspec(tmp_path, "build")
        assert not (tmp_path / "out/ONE").exists()
        assert "face.svg" in results(tmp_path, "TWO")

    def test_the_sheet_of_an_earlier_sku_is_set_aside(self, tmp_path):
        put(tmp_path, moth__pad__yaml=PLAIN + "sku: ONE\n")
        padspec(tmp_path, "build")
        put(tmp_path, moth__pad__yaml=PLAIN + "sku: TWO\n")
        padspec(tmp_path, "build")
        assert results(tmp_path, "ONE") == {"sheet.old.pdf"}
        assert "(unchanged)" in padspec(tmp_path, "build").out

    def test_an_earlier_picture(self, tmp_path):
        put(tmp_path, moth__pad__yaml=WITH_ART, moth__png=picture(900, 800))
        padspec(tmp_path, "build", "--no-proofs")
        put(tmp_path, moth__png=picture(900, 800, (20, 90, 60)))
        padspec(tmp_path, "build", "--no-proofs")
        assert len(results(tmp_path, "art")) == 1

    def test_but_not_a_picture_that_another_design_shows(self, tmp_path):
        put(tmp_path, a__pad__yaml=WITH_ART, b__pad__yaml=WITH_ART, moth__png=picture(900, 800))
        padspec(tmp_path, "build", "--no-proofs")
        put(tmp_path, a__pad__yaml=PLAIN)
        padspec(tmp_path, "build", "--no-proofs")
        assert len(results(tmp_path, "art")) == 1
        put(tmp_path, b__pad__yaml=PLAIN)
        padspec(tmp_path, "build", "--no-proofs")
        assert not results(tmp_path, "art")


class TestADesignThatCannotBeUsedAnyMore:
    @pytest.fixture
    def broken(self, built):
        put(built, moth__pad__yaml=PLAIN + "rowz: {}\n")
        padspec(built, "build")
        return built

    def test_has_no_sheet_proof_or_face(self, broken):
        assert results(broken) == {"findings.json", "sheet.old.pdf"}

    def test_is_told_to_have_failed_and_why(self, broken):
        told = json.loads((broken / "out/moth/findings.json").read_bytes())
        assert (told["state"], told["design"]) == ("failed", "Errands")
        assert "rowz" in told["problems"][0]["message"]

    def test_comes_back_whole_when_it_is_mended(self, broken):
        put(broken, moth__pad__yaml=PLAIN)
        mended = padspec(broken, "build")
        assert "(unchanged)" not in mended.out
        assert results(broken) >= {"face.svg", "face.png", "sheet.pdf", "sheet.png"}
        assert json.loads((broken / "out/moth/findings.json").read_bytes())["state"] == "passed"

    def test_leaves_the_others_as_they_are(self, built):
        put(built, owl__pad__yaml=PLAIN)
        padspec(built, "build")
        put(built, moth__pad__yaml="pad: [\n")
        before = written(built / "out/owl")
        padspec(built, "build")
        assert written(built / "out/owl") == before

    def test_a_wrong_date_in_the_surroundings_is_no_fault_of_the_design(self, built, monkeypatch):
        before = written(built / "out")
        monkeypatch.setenv("SOURCE_DATE_EPOCH", "soon")
        assert padspec(built, "build").refused("SOURCE_DATE_EPOCH")
        assert written(built / "out") == before


class TestOneOutputFolderForManyProjects:
    @pytest.fixture
    def projects(self, tmp_path):
        for name in ("one", "two"):
            (tmp_path / name).mkdir()
            put(tmp_path / name, moth__pad__yaml=PLAIN.replace("Errands", f"Errands {name}"))
        return tmp_path

    def build(self, folder, name: str):
        return padspec(folder, "build", name, "--out", "out", "--no-proofs")

    def test_the_second_with_the_same_sku_is_refused(self, projects):
        self.build(projects, "one")
        before = written(projects / "out")
        refused = self.build(projects, "two")
        assert refused.refused("one/moth.pad.yaml", "two/moth.pad.yaml", "a sku of its own", "--out")
        assert written(projects / "out") == before

    def test_with_skus_of_their_own_both_are_remembered(self, projects):
        for name in ("one", "two"):
            put(projects / name, moth__pad__yaml=PLAIN + f"sku: {name}\n")
            self.build(projects, name)
        for name in ("one", "two"):
            assert "(unchanged)" in self.build(projects, name).out

    def test_a_design_that_has_gone_gives_its_sku_free(self, projects):
        self.build(projects, "one")
        (projects / "one/moth.pad.yaml").unlink()
        assert self.build(projects, "two").status == 0
        assert json.loads((projects / "out/moth/findings.json").read_bytes())["design"] == "Errands two"
        assert "(unchanged)" in self.build(projects, "two").out

    def test_one_that_comes_back_does_not_take_it_again(self, projects):
        self.build(projects, "one")
        away = (projects / "one/moth.pad.yaml").rename(projects / "away")
        self.build(projects, "two")
        away.rename(projects / "one/moth.pad.yaml")
        assert self.build(projects, "one").refused("two/moth.pad.yaml")

    def test_two_designs_may_change_their_skus_with_each_other(self, tmp_path):
        put(tmp_path, a__pad__yaml=PLAIN + "sku: ONE\n", b__pad__yaml=FAULTY + "sku: TWO\n")
        padspec(tmp_path, "build", "--no-proofs")
        put(tmp_path, a__pad__yaml=PLAIN + "sku: TWO\n", b__pad__yaml=FAULTY + "sku: ONE\n")
        assert padspec(tmp_path, "build", "--no-proofs").status == 1
        assert "sheet.pdf" in results(tmp_path, "TWO")
        assert results(tmp_path, "ONE") == {"face.svg", "findings.json", "sheet.old.pdf"}

    def test_a_project_that_moves_with_its_results_stays_unchanged(self, built, tmp_path_factory):
        moved = tmp_path_factory.mktemp("moved") / "there"
        shutil.copytree(built, moved)
        assert "(unchanged)" in padspec(moved, "build").out


class TestWhatCountsAsAChange:
    def test_a_font_package_with_another_font(self, built, monkeypatch):
        from padspec import fonts

        nunito = fonts.family_file("Nunito")
        other = {"Fredoka": nunito + b"\0"}
        for where in ("padspec.collection.records.font_files", "padspec.resolve.lettering_fonts"):
            monkeypatch.setattr(f"{where}.family_file", lambda name: other.get(name) or fonts.family_file(name))
        assert "(unchanged)" not in padspec(built, "build").out
        assert "(unchanged)" in padspec(built, "build").out

    @pytest.mark.parametrize("library", ["fonttools", "jsonschema", "brotli", "pillow"])
    def test_another_version_of_a_required_package(self, built, monkeypatch, library):
        known = outside.version
        monkeypatch.setattr(outside, "version", lambda name: "99" if name == library else known(name))
        monkeypatch.setattr(outside, "requires", lambda _: ["brotli>=1", "fonttools", "jsonschema>=4", "pillow"])
        outside._versions.cache_clear()
        try:
            assert "(unchanged)" not in padspec(built, "build").out
        finally:
            outside._versions.cache_clear()

    def test_packages_that_only_tests_want_do_not_count(self, monkeypatch):
        monkeypatch.setattr(outside, "requires", lambda _: ["numpy>=1.26", 'scipy>=1.11; extra == "test"'])
        assert outside._required() == ("numpy",)

    def test_python_and_zlib_count(self):
        import platform
        import zlib

        now = outside.circumstances("", {})
        assert (now["python"], now["zlib"]) == (platform.python_version(), zlib.ZLIB_RUNTIME_VERSION)

    def test_schemas_and_layouts_count_as_padspecs_own_files(self):
        named = {path.name for folder, pattern in outside.own_files() for path in folder.rglob(pattern)}
        assert named >= {
            "workspace.py",
            "design.schema.json",
            "common.schema.json",
            "checklist.yaml",
            "ruled.yaml",
        }

    def test_a_file_of_padspecs_own_that_changes(self, monkeypatch, tmp_path):
        put(tmp_path, design__schema__json="{}")
        monkeypatch.setattr(outside, "own_files", lambda: ((tmp_path, "*.json"),))
        before = outside._code_stamp.__wrapped__()
        put(tmp_path, design__schema__json="{} ")
        assert outside._code_stamp.__wrapped__() != before

    @pytest.mark.parametrize(
        "damage",
        [
            {"summary": {}},
            {"summary": []},
            {"inputs": []},
            {"outputs": {"moth/face.svg": 3}},
            {"outputs": {"../moth.pad.yaml": "ab"}},
            {"circumstances": None},
            {"path": 1},
            {"more": "than is known"},
            *({"summary": {key: None}} for key in ("sku", "n_up", "findings", "caution", "state")),
            {"summary": {"findings": [{}]}},
        ],
        ids=repr,
    )
    def test_a_damaged_record_counts_as_none(self, built, damage):
        record = next((built / "out/.cache/builds").rglob("*.json"))
        data = json.loads(record.read_bytes())
        for key, value in damage.items():
            whole = isinstance(value, dict) and value and key == "summary"
            data[key] = {**data[key], **value} if whole else value
        record.write_text(json.dumps(data))
        again = padspec(built, "build")
        assert (again.status, "(unchanged)" in again.out) == (0, False), again
        assert (built / "moth.pad.yaml").is_file()


class TestRemoving:
    def test_a_file_goes_and_an_empty_folder_with_it(self, tmp_path):
        workspace = FolderWorkspace(tmp_path)
        workspace.write("a/b", b"1")
        workspace.write("a/c", b"2")
        workspace.remove("a/b")
        assert set(written(tmp_path)) == {"a/c"}
        workspace.remove("a/c")
        assert not (tmp_path / "a").exists()

    @pytest.mark.parametrize("path", ["missing", "no/folder", "file/below"])
    def test_what_is_not_there_is_no_fault(self, tmp_path, path):
        put(tmp_path, file=b"a file")
        FolderWorkspace(tmp_path).remove(path)
        assert set(written(tmp_path)) == {"file"}

    def test_a_link_goes_and_what_it_leads_to_stays(self, tmp_path):
        put(tmp_path, kept=b"here")
        (tmp_path / "link").symlink_to(tmp_path / "kept")
        FolderWorkspace(tmp_path).remove("link")
        assert set(written(tmp_path)) == {"kept"}

    def test_in_memory_likewise(self):
        workspace = MemoryWorkspace({"a/b": b"1"})
        workspace.remove("a/b")
        workspace.remove("a/b")
        assert workspace.files == {}
