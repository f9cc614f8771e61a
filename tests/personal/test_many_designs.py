"""Rows that differ in more than words: each design is checked; volumes hang neither on workers nor on memory."""

import subprocess

import pytest
from cli.command import PLAIN, padspec, put, written
from kit import picture

from padspec.collection.collection_file import read_collection
from padspec.personal.bench import Bench, Pattern
from padspec.personal.run import wished_pads
from padspec.workspace import FolderWorkspace
from personal.names import build, folder, run_of

COLOURS = """collection: Names
designs: [moth.pad.yaml]
personal: {table: names.csv, key: order, set: {heading: {text: "{first}"}, palette: {lettering: "{colour}"}}}
"""
PICTURES = """collection: Names
designs: [moth.pad.yaml]
personal: {table: names.csv, set: {heading: {text: "{first}"}, art: {file: "{picture}.png"}}}
"""


def test_the_design_of_every_row_is_checked(tmp_path):
    collection = COLOURS.replace("palette: {lettering:", "rows: {checkbox: none, colour:")
    names = 'order,first,colour\n101,Ada,"#702040"\n102,Bo,"#eeeeee"\n103,Cleo,"#eeeeee"\n'
    folder(tmp_path, names, collection)
    outcome = build(tmp_path)
    one = run_of(outcome)
    assert (outcome.status, one["state"], one["volumes"], one["errors"]) == (1, "failed", 0, 1)
    (fault,) = one["rows"]
    assert (fault["row"], fault["severity"], fault["line"]) == (2, "error", 3)
    assert fault["message"].startswith("row 2 (102): rule-contrast: ")


def test_what_another_design_only_warns_of_is_told_with_its_row(tmp_path):
    names = 'order,first,colour\n1,Ada,"#702040"\n2,Bo,"#fefefe"\n3,Cleo,"#fefefe"\n'
    folder(tmp_path, names, COLOURS)
    one = run_of(build(tmp_path))
    assert (one["state"], one["volumes"]) == ("passed", 1)
    assert [(row["row"], row["severity"]) for row in one["rows"]] == [(2, "warning")]


def test_a_first_design_that_is_not_to_be_printed_holds_back_its_own_run(tmp_path):
    """The pad as it stands passes; what the run makes of it does not."""
    collection = COLOURS.replace("palette: {lettering:", "rows: {checkbox: none, colour:")
    folder(tmp_path, 'order,first,colour\n1,Ada,"#eeeeee"\n', collection)
    outcome = build(tmp_path)
    assert [one["state"] for one in outcome.json["designs"]] == ["passed"]
    one = run_of(outcome)
    assert (outcome.status, one["state"], one["volumes"], one["errors"]) == (1, "failed", 0, 0)


def test_what_only_extreme_words_of_another_design_show_is_told(tmp_path):
    design = PLAIN + "heading: {least-size: 1 mm, font-weight: 400, size: 14 mm}\n"
    names = f'order,first,colour\n1,Ada,"#702040"\n2,Bo,"#808080"\n3,{"Wilhelmina" * 3},"#808080"\n'
    folder(tmp_path, names, COLOURS, design)
    one = run_of(build(tmp_path))
    assert [row["row"] for row in one["rows"] if "lettering-contrast" in row["message"]] == [3]


def test_of_rows_that_go_as_far_the_first_is_told(tmp_path, monkeypatch):
    monkeypatch.setattr("padspec.personal.units.MOST_SHEETS", 1)
    design = PLAIN + 'heading: {least-size: 1 mm, font-weight: 400, size: 14 mm, colour: "#808080"}\n'
    collection = COLOURS.replace(', palette: {lettering: "{colour}"}', "")
    long = "Wilhelmina" * 3
    folder(tmp_path, f"order,first\n1,Ada\n2,{long}\n3,Bo\n4,{long}\n", collection, design)
    one = run_of(build(tmp_path))
    assert [row["row"] for row in one["rows"] if "lettering-contrast" in row["message"]] == [2]


def test_bytes_hang_neither_on_workers_nor_on_what_they_kept_of_volumes_before(tmp_path, monkeypatch):
    """One process that keeps two designs has lost maroon when volume 2 comes back to it; a fresh one has not."""
    monkeypatch.setattr("padspec.personal.units.MOST_SHEETS", 1)
    monkeypatch.setattr("padspec.personal.bench._MOST_READY", 2)
    monkeypatch.setattr("padspec.compose.other_words._MOST_TEMPLATES", 2)
    colours = ("maroon", "maroon", "navy", "maroon", "indigo", "maroon")
    names = "order,first,colour\n" + "".join(f"{n},Name {n},{colour}\n" for n, colour in enumerate(colours))
    made = []
    for jobs in ("1", "2"):
        place = tmp_path / jobs
        place.mkdir()
        folder(place, names, COLOURS)
        assert padspec(place, "build", "--no-proofs", "--jobs", jobs, "-q").status == 0
        made.append({k: v for k, v in written(place / "out/moth").items() if "personal" in k})
    assert [name for name in sorted(made[0]) if name.endswith(".pdf")] == [
        "personal/volume-001.pdf",
        "personal/volume-002.pdf",
    ]
    assert made[0] == made[1]


def test_a_design_that_was_made_for_a_later_row_is_made_again(tmp_path):
    """What is said of a design is said of its first row, whatever volume a worker had before."""
    folder(tmp_path, "order,first,colour\n1,Ada,red\n2,Bo,red\n", COLOURS)
    wish, (pad,) = wished_pads(read_collection("collection.yaml", FolderWorkspace(tmp_path)), tmp_path)
    bench = Bench(Pattern.of_pad(wish, pad.target))
    rows = [wish.table.values(row) for row in wish.table]
    assert [bench.ready(rows[row - 1], row).row for row in (2, 1, 2)] == [2, 1, 1]


class TestPicturesOfRows:
    @pytest.fixture
    def pictured(self, tmp_path):
        names = "first,picture\n" + "".join(f"Name {n},p{n % 8}\n" for n in range(12))
        folder(tmp_path, names, PICTURES)
        for n in range(8):
            put(tmp_path, **{f"p{n}__png": picture(500, 500, (20 * n, 60, 90))})
        return tmp_path

    def test_end_a_volume_before_they_fill_the_memory(self, pictured, monkeypatch):
        """8 pictures and room for the bytes of one: a volume has as many as a sheet has leaves, 3."""
        monkeypatch.setattr("padspec.personal.units._BYTES", 1)
        one = run_of(build(pictured))
        assert (one["volumes"], one["sheets"]) == (4, 4)
        first = pictured / "out/moth/personal/volume-004.csv"
        assert [line.split(",")[3] for line in first.read_text(encoding="utf-8-sig").splitlines()] == [
            "sheet",
            "4",
            "4",
            "4",
        ]

    def test_are_one_volume_where_they_are_few(self, pictured):
        assert run_of(build(pictured))["volumes"] == 1

    def test_that_come_to_too_much_all_the_same_are_refused_with_the_sum(self, pictured, monkeypatch):
        monkeypatch.setattr("padspec.personal.volume.MOST_BYTES", 2**20)
        outcome = build(pictured)
        assert outcome.status == 2
        assert "MiB in one volume; it holds 1." in outcome.json["problems"][0]["message"]
        assert not (pictured / "out/moth/personal").exists()

    def test_are_all_remembered_so_that_an_edit_of_any_is_seen(self, pictured, monkeypatch):
        monkeypatch.setattr("padspec.personal.bench._MOST_READY", 2)
        build(pictured)
        for n in (0, 7):
            put(pictured, **{f"p{n}__png": picture(500, 500, (200, 60, 90))})
            assert not run_of(build(pictured))["unchanged"]
        assert run_of(build(pictured))["unchanged"]

    def test_that_change_while_they_are_set_stop_the_run(self, pictured, monkeypatch):
        from padspec.personal import making

        def edited(unit):
            if unit.number == 2:
                put(pictured, p0__png=picture(500, 500, (200, 60, 90)))
            return make(unit)

        make = making.make_volume
        monkeypatch.setattr("padspec.personal.units._BYTES", 1)
        monkeypatch.setattr("padspec.personal.bench._MOST_READY", 1)
        monkeypatch.setattr(making, "make_volume", edited)
        outcome = build(pictured)
        assert outcome.status == 1
        told = [row["message"] for row in run_of(outcome)["rows"]]
        assert any("It changed while the volumes were made" in message for message in told)

    def test_stand_in_a_sound_volume(self, pictured):
        build(pictured)
        made = pictured / "out/moth/personal/volume-001.pdf"
        assert subprocess.run(["qpdf", "--check", made], capture_output=True).returncode == 0
        listed = subprocess.run(["pdfimages", "-list", made], capture_output=True, text=True, check=True).stdout
        assert len({line.split()[10] for line in listed.splitlines()[2:] if " image " in line}) == 8
