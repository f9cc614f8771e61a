"""Building a collection: only what depends on an edit, the same bytes however it is shared out, nothing half."""

import json
import os
import signal
import subprocess
import sys
import time

import pytest
from cli.command import FAULTY, PLAIN, padspec, padspec_process, put, written
from kit import picture

COLLECTION = """collection: Errands
designs: [moth.pad.yaml, owl.pad.yaml]
variants:
  - axis: colour
    values:
      red: {palette: {rule: "#a05050"}}
      blue: {palette: {rule: "#5060a0"}}
  - axis: ruling
    values: {wide: {rows: {pitch: 9 mm}}, narrow: {rows: {pitch: 7 mm}}}
"""
WITH_ART = PLAIN + "art: {file: moth.png}\n"


def stood(folder) -> dict[str, bytes]:
    """All that was written but the stamps, which are those of this disk."""
    return {name: data for name, data in written(folder / "out").items() if name != ".cache/stamps.json"}


def made(outcome) -> list[str]:
    """The SKUs that were made, not found unchanged."""
    return [pad["sku"] for pad in outcome.json["designs"] if not pad["unchanged"]]


def build(folder, *args: str):
    return padspec(folder, "build", "--no-proofs", "--json", "--jobs", "1", *args)


@pytest.fixture(scope="module")
def kept(tmp_path_factory):
    folder = tmp_path_factory.mktemp("kept")
    put(folder, collection__yaml=COLLECTION, owl__pad__yaml=PLAIN)
    put(folder, moth__pad__yaml=WITH_ART, moth__png=picture(1000, 850))
    assert len(made(build(folder))) == 8
    return folder


@pytest.fixture
def built(kept, tmp_path):
    """The built collection, to be changed."""
    import shutil

    return shutil.copytree(kept, tmp_path / "here")


class TestAfterOneEdit:
    def test_of_nothing_nothing_is_made(self, built):
        before = stood(built)
        assert made(build(built)) == []
        assert stood(built) == before

    def test_of_one_value_its_variants_are(self, built):
        put(built, collection__yaml=COLLECTION.replace("#5060a0", "#506090"))
        assert made(build(built)) == [
            f"{pad}--blue-{ruling}" for pad in ("moth", "owl") for ruling in ("wide", "narrow")
        ]

    def test_of_one_design_its_variants_are(self, built):
        put(built, owl__pad__yaml=PLAIN + "leaves: 40\n")
        assert all(sku.startswith("owl--") for sku in made(build(built)))

    def test_of_the_picture_only_what_shows_it(self, built):
        put(built, moth__png=picture(1000, 850, (20, 90, 60)))
        assert {sku.split("--")[0] for sku in made(build(built))} == {"moth"}

    def test_of_the_studio_all(self, built):
        put(built, studio__yaml="studio: Umberwick Paper\n")
        assert len(made(build(built))) == 8

    def test_that_only_moves_lines_nothing_is_made_where_no_finding_points_there(self, built):
        put(built, collection__yaml="# Errands\n" + COLLECTION)
        assert made(build(built)) == []

    def test_that_moves_lines_findings_are_made_that_point_there(self, built):
        text = COLLECTION.replace("#a05050", "#eeeeee")
        put(built, collection__yaml=text)
        build(built)
        put(built, collection__yaml="# Errands\n" + text)
        again = build(built)
        assert made(again) == [f"{pad}--red-{ruling}" for pad in ("moth", "owl") for ruling in ("wide", "narrow")]
        places = {
            f["line"] for pad in again.json["designs"] for f in pad["findings"] if f["check"] == "rule-contrast"
        }
        assert places == {7}

    def test_of_a_comment_the_findings_are_made_and_the_drawn_files_stay(self, built):
        before = (built / "out/owl--red-wide/face.svg").stat().st_mtime_ns
        put(built, owl__pad__yaml="# kept short\n" + PLAIN)
        outcome = build(built)
        assert len(made(outcome)) == 4
        assert (built / "out/owl--red-wide/face.svg").stat().st_mtime_ns == before
        assert made(build(built)) == []

    def test_a_file_that_something_else_wrote_is_made_again(self, built):
        (built / "out/owl--red-wide/face.svg").write_text("scribble")
        assert made(build(built)) == ["owl--red-wide"]
        assert "scribble" not in (built / "out/owl--red-wide/face.svg").read_text()

    def test_even_when_it_has_as_many_bytes(self, built):
        face = built / "out/owl--red-wide/face.svg"
        face.write_bytes(bytes(face.stat().st_size))
        assert made(build(built)) == ["owl--red-wide"]

    def test_why_says_what_it_was(self, built):
        put(
            built,
            owl__pad__yaml="# kept short\n" + PLAIN,
            collection__yaml=COLLECTION.replace("#5060a0", "#506090"),
        )
        said = padspec(built, "build", "--no-proofs", "--why", "--jobs", "1").out
        assert "moth--red-wide, moth--red-narrow: unchanged" in said
        assert (
            "moth--blue-wide, moth--blue-narrow: made\n  because collection.yaml sets something else for it"
            in said
        )
        assert (
            "owl--red-wide, owl--red-narrow: checked again, drawn as before\n  because owl.pad.yaml has changed"
            in said
        )


class TestWhatACollectionNoLongerMakes:
    def test_is_taken_away_and_its_sheet_set_aside(self, built):
        put(built, collection__yaml=COLLECTION.replace(", narrow: {rows: {pitch: 7 mm}}", ""))
        outcome = padspec(built, "build", "--no-proofs")
        assert (
            "no longer makes moth--blue-narrow, moth--red-narrow, owl--blue-narrow, owl--red-narrow" in outcome.err
        )
        assert {p.name for p in (built / "out/moth--red-narrow").iterdir()} == {"sheet.old.pdf"}
        assert (built / "out/moth--red-wide/sheet.pdf").is_file()

    def test_stays_while_only_some_are_picked(self, built):
        put(built, collection__yaml=COLLECTION.replace(", narrow: {rows: {pitch: 7 mm}}", ""))
        build(built, "--only", "moth")
        assert (built / "out/owl--red-narrow/sheet.pdf").is_file()

    def test_does_not_touch_the_variants_of_another_collection(self, built):
        other = COLLECTION.replace("axis: colour\n", "axis: shade\n").replace("red:", "rust:")
        (built / "spring.collection.yaml").write_text(other)
        build(built, "spring.collection.yaml")
        assert (built / "out/owl--red-wide/sheet.pdf").is_file()


def test_variants_of_two_designs_that_share_a_sku_are_refused(built):
    put(built, owl__pad__yaml=PLAIN + "sku: moth\n")
    outcome = build(built)
    assert outcome.status == 2
    assert "Its SKU moth--red-wide is that of" in outcome.json["problems"][0]["message"]


def test_a_finding_that_variants_share_is_told_once_with_all_their_names(built):
    put(built, owl__pad__yaml=FAULTY.replace("checkbox: none", "weight: 0.05 mm"), collection__yaml=COLLECTION)
    outcome = padspec(built, "build", "--no-proofs", "--jobs", "1")
    assert outcome.err.count("error line-weight") == 1
    assert "in owl--red-wide, owl--red-narrow, owl--blue-wide, owl--blue-narrow" in outcome.err
    head, *rows = outcome.out.splitlines()
    assert head.split()[:2] == ["variant", "sheet"]
    assert "line-weight" in head
    assert "·" in next(row for row in rows if row.startswith("moth--red-wide"))
    assert " error" in next(row for row in rows if row.startswith("owl--red-wide"))
    assert "No sheet was written for owl--red-wide" in outcome.out


def test_several_processes_write_the_same_bytes(kept, tmp_path):
    put(tmp_path, collection__yaml=COLLECTION, owl__pad__yaml=PLAIN)
    put(tmp_path, moth__pad__yaml=WITH_ART, moth__png=picture(1000, 850))
    outcome = padspec_process(
        tmp_path, "build", "--no-proofs", "--jobs", "3", PYTHONHASHSEED="7", TZ="Asia/Kathmandu"
    )
    assert outcome.status == 0, outcome
    assert stood(tmp_path) == stood(kept)


def program(*args: str) -> list[str]:
    return [sys.executable, "-c", "from padspec.cli.main import main; main()", "build", "--no-proofs", *args]


def test_two_builds_at_once_do_not_harm_each_other(kept, tmp_path):
    put(tmp_path, collection__yaml=COLLECTION, owl__pad__yaml=PLAIN)
    put(tmp_path, moth__pad__yaml=WITH_ART, moth__png=picture(1000, 850))
    both = [subprocess.Popen(program("--jobs", "1"), cwd=tmp_path, stdout=subprocess.PIPE) for _ in range(2)]
    said = [process.communicate()[0].decode() for process in both]
    assert [process.returncode for process in both] == [0, 0]
    assert sorted("nothing had changed" in text for text in said) == [False, True]
    assert stood(tmp_path) == stood(kept)


@pytest.mark.parametrize("jobs", ["1", "2"])
def test_an_interrupt_leaves_whole_files_only(kept, tmp_path, jobs):
    put(tmp_path, collection__yaml=COLLECTION, owl__pad__yaml=PLAIN)
    put(tmp_path, moth__pad__yaml=WITH_ART, moth__png=picture(1000, 850))
    process = subprocess.Popen(
        program("--jobs", jobs),
        cwd=tmp_path,
        stderr=subprocess.PIPE,
        stdout=subprocess.PIPE,
        start_new_session=True,
    )
    while not [*tmp_path.glob("out/.cache/builds/*.json")]:
        assert process.poll() is None, process.communicate()
        time.sleep(0.005)
    os.killpg(process.pid, signal.SIGINT)
    _, told = process.communicate(timeout=20)
    assert process.returncode == 130, told
    assert b"Stopped. Every file written so far is whole." in told
    assert b"Traceback" not in told
    whole, there = stood(kept), stood(tmp_path)
    assert there.keys() < whole.keys()
    assert all(whole[name] == data for name, data in there.items())
    assert not [*tmp_path.rglob("*.part")]


def test_a_record_in_json_keeps_what_the_variant_is(kept):
    records = [json.loads(path.read_bytes()) for path in (kept / "out/.cache/builds").iterdir()]
    assert {record["summary"]["base_sku"] for record in records} == {"moth", "owl"}
    assert all(record["summary"]["variant"].keys() == {"colour", "ruling"} for record in records)


def test_another_colour_changes_a_few_lines_of_the_face_and_no_others(built):
    face = built / "out/owl--blue-wide/face.svg"
    before = face.read_text("utf-8").splitlines()
    put(built, collection__yaml=COLLECTION.replace("#5060a0", "#506090"))
    build(built)
    after = face.read_text("utf-8").splitlines()
    differing = [(a, b) for a, b in zip(before, after, strict=True) if a != b]
    assert 0 < len(differing) <= 6
    assert all(a.replace("#5060a0", "#506090") == b for a, b in differing)
    assert face.stat().st_size < 40_000


class TestOtherCommandsKnowVariants:
    def test_a_job_makes_only_the_variants_that_it_names(self, built, monkeypatch):
        from padspec.jobs import load

        made: list[str] = []
        whole = load.make
        monkeypatch.setattr(load, "make", lambda *a: made.append(a[3].values) or whole(*a))
        (built / "market.job.yaml").write_text("job: Market\npads: {moth--red-wide: 2, owl--blue-narrow: 1}\n")
        outcome = padspec(built, "plan", "market.job.yaml", "--json")
        assert outcome.status in (0, 1), outcome
        assert len(made) == 2
        assert "moth--red-wide" in outcome.out

    def test_a_job_that_names_none_of_them_is_told_all(self, built):
        (built / "market.job.yaml").write_text("job: Market\npads: {moth--red-wid: 2}\n")
        assert padspec(built, "plan", "market.job.yaml").refused("moth--red-wid", "Did you mean moth--red-wide?")

    def test_a_flat_lay_a_stage_and_a_check_of_one_variant(self, built):
        only = ("--only", "owl--blue-wide")
        assert padspec(built, "flat-lay", *only, "--size", "400").status == 0
        assert (built / "out/owl--blue-wide/flat-lay.png").is_file()
        assert padspec(built, "show", ".", *only).json["sku"] == "owl--blue-wide"
        assert len(padspec(built, "check", *only, "--json").json["designs"]) == 1
        assert padspec(built, "show", ".").refused("This holds 8 designs and variants.", "--only SKU")


def test_the_flat_lay_of_a_face_that_has_changed_is_set_aside(built):
    flat = built / "out/owl--blue-wide/flat-lay.png"
    flat.write_bytes(b"a picture")
    build(built, "--again")
    assert flat.is_file()
    put(built, collection__yaml=COLLECTION.replace("#5060a0", "#506090"))
    build(built)
    assert not flat.exists()
    assert flat.with_name("flat-lay.old.png").read_bytes() == b"a picture"
