"""Nothing stale looks fresh: an edit of whatever a run hangs on is seen, and volumes go with their pad."""

from contextlib import contextmanager

import pypdfium2
import pytest
from cli.command import PLAIN, padspec, put, written

from personal.names import COLLECTION, NAMES, build, folder, run_of, volume

OLD = {"volume-001.old.pdf"}


def words(pdf) -> str:
    """What the list beside a volume says is on it."""
    return pdf.with_suffix(".csv").read_text(encoding="utf-8-sig")


def there(path) -> set[str]:
    return {file.name for file in (path / "out/moth/personal").iterdir()}


@pytest.fixture
def built(tmp_path):
    folder(tmp_path)
    assert build(tmp_path).status == 0
    return tmp_path


class TestTheTable:
    def test_may_be_another_file(self, built):
        put(built, others__csv=NAMES.replace("Ada", "Ida"))
        put(built, collection__yaml=COLLECTION.replace("names.csv", "others.csv"))
        one = run_of(build(built))
        assert (one["unchanged"], one["table"]) == (False, "others.csv")
        assert "Ida's list" in words(volume(built))

    def test_that_is_edited_while_it_is_set_is_set_again(self, tmp_path, monkeypatch):
        from padspec.personal import making

        folder(tmp_path)

        def edited(unit):
            put(tmp_path, names__csv=NAMES.replace("Ada", "Ida"))
            return make(unit)

        make = making.make_volume
        monkeypatch.setattr(making, "make_volume", edited)
        build(tmp_path)
        assert "Ada's list" in words(volume(tmp_path))
        monkeypatch.undo()
        assert not run_of(build(tmp_path))["unchanged"]
        assert "Ida's list" in words(volume(tmp_path))

    @pytest.mark.parametrize(
        "files",
        [
            {"names__csv": NAMES.replace("first", "name")},
            {"names__csv": ""},
            {"collection__yaml": COLLECTION.replace("names.csv", "nmes.csv")},
            {"collection__yaml": COLLECTION.replace("table:", "sku: owl, table:")},
        ],
        ids=["column", "rows", "table", "sku"],
    )
    def test_that_cannot_be_used_leaves_no_volume_that_seems_to_be_of_it(self, built, files):
        put(built, **files)
        assert build(built).status == 2
        assert there(built) == OLD

    def test_lacks_a_file_that_comes_later(self, tmp_path):
        """A row at fault is looked at again when what it lacked is there."""
        from kit import picture

        collection = COLLECTION.replace('heading: {text: "{first}\'s list"}', 'art: {file: "{first}.png"}')
        folder(tmp_path, "order,first\n1,a\n2,b\n", collection)
        put(tmp_path, a__png=picture(600, 600))
        assert run_of(build(tmp_path))["state"] == "failed"
        put(tmp_path, b__png=picture(600, 600))
        assert not run_of(build(tmp_path))["unchanged"]


class TestVolumes:
    def test_of_the_second_build_in_a_process_are_those_of_the_edited_design(self, built, tmp_path_factory):
        edited = PLAIN + "rows: {pitch: 9 mm}\n"
        put(built, moth__pad__yaml=edited)
        build(built)
        fresh = folder(tmp_path_factory.mktemp("fresh"), design=edited)
        build(fresh)
        assert volume(built).read_bytes() == volume(fresh).read_bytes()

    @pytest.mark.parametrize("args", [["moth.pad.yaml"], ["--only", "moth"]])
    def test_do_not_outlive_the_face_that_they_show(self, built, args):
        put(built, moth__pad__yaml=PLAIN + "rows: {pitch: 9 mm}\n")
        build(built, *args)
        assert there(built) == OLD
        assert not run_of(build(built))["unchanged"]

    def test_do_not_outlive_the_sheet_that_they_lie_on(self, built):
        put(built, studio__yaml="sheet: {size: A3}\n")
        build(built, "moth.pad.yaml")
        assert there(built) == OLD

    def test_stay_where_a_build_changes_nothing_that_they_show(self, built):
        before = there(built)
        put(built, moth__pad__yaml="# kept short\n" + PLAIN)
        build(built, "moth.pad.yaml")
        assert there(built) == before

    def test_go_when_their_design_cannot_be_read(self, built):
        put(built, moth__pad__yaml=PLAIN + "rowz: {}\n")
        build(built, "moth.pad.yaml")
        assert there(built) == OLD

    def test_of_pads_behind_one_that_fails_go_too(self, tmp_path):
        collection = """collection: Names
designs: [moth.pad.yaml, owl.pad.yaml]
personal: {table: names.csv, sku: "{pad}", set: {heading: {text: "{first}"}}}
"""
        folder(tmp_path, "pad,first\nmoth,Ada\nowl,Bo\n", collection)
        put(tmp_path, owl__pad__yaml=PLAIN)
        build(tmp_path)
        put(tmp_path, names__csv="pad,first\nmoth,Ada\nowl,Bob\n", moth__pad__yaml=PLAIN + "rowz: {}\n")
        assert build(tmp_path).status == 2
        assert {file.name for file in (tmp_path / "out/owl/personal").iterdir()} == OLD

    def test_of_two_projects_in_one_folder_stay_where_they_are(self, tmp_path):
        for name, sku in (("one", "OWL"), ("two", "MOTH")):
            (tmp_path / name).mkdir()
            folder(tmp_path / name, design=PLAIN + f"sku: {sku}\n")
        for name in ("one", "two"):
            assert build(tmp_path / name, "--out", str(tmp_path / "both")).status == 0
        assert (tmp_path / "both/OWL/personal/volume-001.pdf").is_file()
        assert run_of(build(tmp_path / "one", "--out", str(tmp_path / "both")))["unchanged"]

    def test_of_two_projects_are_not_written_over_each_other(self, tmp_path):
        for name in ("one", "two"):
            (tmp_path / name).mkdir()
            folder(tmp_path / name)
        build(tmp_path / "one", "--out", str(tmp_path / "both"))
        put(tmp_path / "two", owl__pad__yaml=PLAIN + "sku: OWL\n")
        put(tmp_path / "two", collection__yaml=COLLECTION.replace("moth.pad", "owl.pad"))
        put(tmp_path / "two", owl__pad__yaml=PLAIN + "sku: moth\n")
        outcome = build(tmp_path / "two", "--out", str(tmp_path / "both"))
        assert outcome.status == 2
        assert "Ada" in words(tmp_path / "both/moth/personal/volume-001.pdf")


class TestTheLock:
    def test_is_held_while_volumes_are_made_and_taken_away(self, tmp_path, monkeypatch):
        from padspec.personal import making, run

        held = []

        @contextmanager
        def watched(folder, waiting):
            with alone(folder, waiting) as waited:
                held.append(folder)
                yield waited
                held.pop()

        def asked(*args):
            assert held
            return make(*args)

        alone, make = run.alone, making.make_personal
        monkeypatch.setattr(run, "alone", watched)
        monkeypatch.setattr(making, "make_personal", asked)
        folder(tmp_path)
        assert run_of(build(tmp_path))["state"] == "passed"

    def test_had_to_be_waited_for_so_all_is_looked_at_again(self, tmp_path, monkeypatch):
        """Another build made the same volumes meanwhile: nothing is left to do."""
        from padspec.personal import run

        folder(tmp_path)
        assert build(tmp_path, "moth.pad.yaml").status == 0

        @contextmanager
        def late(_folder, _waiting):
            monkeypatch.setattr(run, "alone", alone)
            assert not run_of(build(tmp_path))["unchanged"]
            yield True

        alone = run.alone
        monkeypatch.setattr(run, "alone", late)
        assert run_of(build(tmp_path))["unchanged"]


def test_findings_follow_the_lines_of_the_collection(tmp_path):
    collection = COLLECTION.replace("set: {", 'set: {rows: {colour: "#dddddd"}, ')
    folder(tmp_path, collection=collection)
    (before,) = {f["line"] for f in run_of(build(tmp_path))["findings"] if f["file"] == "collection.yaml"}
    put(tmp_path, collection__yaml="# names\n\n" + collection)
    (after,) = {f["line"] for f in run_of(build(tmp_path))["findings"] if f["file"] == "collection.yaml"}
    assert after == before + 2


def test_lines_that_no_finding_points_to_may_move(built):
    put(built, collection__yaml="# names\n\n" + COLLECTION)
    assert run_of(build(built))["unchanged"]


def test_an_interrupt_leaves_no_volume_where_nobody_looks(tmp_path, monkeypatch):
    from padspec.personal import making

    def stopped(unit):
        if unit.number == 2:
            raise KeyboardInterrupt
        return make(unit)

    make = making.make_volume
    monkeypatch.setattr(making, "make_volume", stopped)
    monkeypatch.setattr("padspec.personal.units.MOST_SHEETS", 1)
    folder(tmp_path)
    build(tmp_path)
    assert not [path for path in written(tmp_path / "out") if "passing" in path or "volume" in path]


def test_a_font_that_was_exchanged_makes_them_again(built, monkeypatch):
    from padspec.personal import record

    found = record.font_digests
    monkeypatch.setattr(record, "font_digests", lambda names: dict.fromkeys(found(names), "another"))
    assert not run_of(build(built))["unchanged"]


def test_a_volume_is_as_large_as_its_sheet(built):
    """Trim lies in bleed, bleed in the paper (ISO 32000-1, 14.11.2), as the ordinary sheet of the pad has them."""
    page = pypdfium2.PdfDocument(volume(built))[0]
    sheet = pypdfium2.PdfDocument(built / "out/moth/sheet.pdf")[0]
    for box in (page.get_trimbox, page.get_bleedbox, page.get_mediabox):
        assert box() == pytest.approx(getattr(sheet, box.__name__)(), abs=0.01)
    assert page.get_trimbox()[0] > page.get_bleedbox()[0] > page.get_mediabox()[0]


def test_a_volume_that_is_settled_tells_the_same_again(built):
    first, again = run_of(build(built)), run_of(build(built))
    assert first == again
    assert padspec(built, "build", "--no-proofs", "--jobs", "1").status == 0
