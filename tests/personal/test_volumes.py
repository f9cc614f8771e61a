"""Personal runs, from a table to volumes read back by programs that did not write them."""

import csv
import json
import subprocess
from dataclasses import replace

import kit
import numpy as np
import pypdfium2
import pytest
from cli.command import PLAIN, padspec, put, written
from kit import pad

from padspec.compose.lettering.setting import set_line
from padspec.personal.bench import directed
from padspec.personal.sheet import NO_KEYS, NO_SLUG, personal_sheet
from padspec.workspace import content_digest
from personal.names import COLLECTION, NAMES, build, cut, folder, pixels, run_of, slots, volume


@pytest.fixture(scope="module")
def built(tmp_path_factory):
    path = folder(tmp_path_factory.mktemp("names"))
    assert build(path).status == 0
    return path


class TestTheVolume:
    def test_has_a_sheet_for_every_three_rows(self, built):
        """5 rows, 3-up: ⌈5 ÷ 3⌉ = 2 sheets."""
        assert len(pypdfium2.PdfDocument(volume(built))) == 2

    def test_names_as_many_copies_as_a_pad_has_leaves_with_overs(self, built):
        """⌈50 × 1.05⌉ = 53: the stack in every slot is one pad. Read back by qpdf."""
        said = subprocess.run(["qpdf", "--json", volume(built)], capture_output=True, check=True)
        objects = json.loads(said.stdout)["qpdf"][1]
        found = [o["value"] for o in objects.values() if "/NumCopies" in str(o.get("value"))]
        assert any(v.get("/ViewerPreferences", {}).get("/NumCopies") == 53 for v in found if isinstance(v, dict))
        assert run_of(build(built))["copies"] == 53

    def test_is_sound(self, built):
        assert subprocess.run(["qpdf", "--check", volume(built)], capture_output=True).returncode == 0

    @pytest.mark.parametrize(("slot", "page", "name"), [(0, 0, "Ada"), (2, 0, "Cleo"), (1, 1, "Eve")])
    def test_shows_each_name_where_the_ordinary_sheet_of_that_text_has_it(self, built, tmp_path, slot, page, name):
        """Pixels of the slot against those of `padspec build` of a design with that heading, both by pdfium."""
        folder(tmp_path, collection="collection: C\ndesigns: [moth.pad.yaml]\n")
        put(tmp_path, moth__pad__yaml=PLAIN + f'heading: {{text: "{name}\'s list"}}\n')
        assert build(tmp_path).status == 0
        boxes = slots(built)
        mine = cut(pixels(volume(built), page), boxes[slot])
        theirs = cut(pixels(tmp_path / "out/moth/sheet.pdf", 0), boxes[slot])
        # Glyph by glyph, edges that touch are blended twice: a level or two.
        assert np.abs(mine - theirs).max() <= 40
        assert np.abs(mine - theirs).mean() < 0.02

    def test_differs_from_another_name(self, built):
        boxes = slots(built)
        one, other = (cut(pixels(volume(built), 0), boxes[slot]) for slot in (0, 1))
        least = tuple(min(a, b) for a, b in zip(one.shape, other.shape, strict=True))
        one, other = (found[: least[0], : least[1]] for found in (one, other))
        assert np.abs(one - other).max() > 100

    def test_leaves_slots_without_a_row_white(self, built):
        assert (cut(pixels(volume(built), 1), slots(built)[2]) == 255).all()

    def test_lists_who_is_where(self, built):
        with volume(built).with_suffix(".csv").open(encoding="utf-8-sig", newline="") as file:
            rows = [*csv.DictReader(file)]
        assert [(r["key"], r["sheet"], r["slot"], r["words"]) for r in rows][2:4] == [
            ("103", "1", "3", "Cleo's list"),
            ("104", "2", "1", "Dov's list"),
        ]


class TestRowsAtFault:
    @pytest.mark.parametrize(
        ("row", "said", "mend"),
        [
            ("106,", "row 6 (106): first is empty, and the lettering needs it.", "Fill the cell"),
            ("106,Ada 日", "has 日 in “Ada 日's list”", "Write it in other letters"),
            (f"106,{'Wilhelmina' * 12}", "wider than its room, even at the least size", "Shorten it to about "),
        ],
    )
    def test_are_told_with_row_and_key_and_hold_the_run_back(self, tmp_path, row, said, mend):
        folder(tmp_path, NAMES + row + "\n")
        outcome = build(tmp_path)
        one = run_of(outcome)
        assert (outcome.status, one["state"], one["volumes"], one["errors"]) == (1, "failed", 0, 1)
        (fault,) = one["rows"]
        assert said in fault["message"]
        assert mend in fault["mend"]
        assert (fault["file"], fault["line"], fault["key"]) == ("names.csv", 7, "106")
        assert {p.name for p in (tmp_path / "out/moth/personal").iterdir()} == {"findings.json"}

    def test_many_are_counted(self, tmp_path):
        folder(tmp_path, "order,first\n" + "1,\n" * 224)
        one = run_of(build(tmp_path))
        assert (one["errors"], len(one["rows"])) == (224, 50)
        assert "and 174 errors more in names.csv" in padspec(tmp_path, "build", "--no-proofs", "-q").err

    def test_set_aside_what_an_earlier_run_made(self, tmp_path):
        folder(tmp_path)
        build(tmp_path)
        put(tmp_path, names__csv=NAMES + "106,\n")
        build(tmp_path)
        names = {p.name for p in (tmp_path / "out/moth/personal").iterdir()}
        assert names == {"volume-001.old.pdf", "findings.json"}

    def test_are_printed_all_the_same_where_that_is_asked_for(self, tmp_path):
        folder(tmp_path, NAMES + "106,\n")
        one = run_of(build(tmp_path, "--despite-errors"))
        assert (one["state"], one["volumes"]) == ("failed", 1)
        text = subprocess.run(["pdfinfo", volume(tmp_path)], capture_output=True, text=True, check=True).stdout
        assert "PRINTED DESPITE ERRORS" in text

    def test_words_that_only_a_check_minds_are_told_with_their_row(self, tmp_path):
        """The smallest lettering of a run is looked at by every check, as that of a design is."""
        design = PLAIN + 'heading: {least-size: 1 mm, colour: "#808080", font-weight: 400, size: 14 mm}\n'
        folder(tmp_path, NAMES + f"106,{'Wilhelmina' * 3}\n", design=design)
        told = [row["message"] for row in run_of(build(tmp_path))["rows"]]
        assert any(message.startswith("row 6 (106): lettering-contrast") for message in told), told


class TestABuildAgain:
    def test_of_nothing_new_makes_nothing(self, tmp_path):
        folder(tmp_path)
        build(tmp_path)
        before = written(tmp_path / "out/moth")
        assert run_of(build(tmp_path))["unchanged"]
        assert written(tmp_path / "out/moth") == before

    @pytest.mark.parametrize(
        "files",
        [
            {"names__csv": NAMES.replace("Dov", "Dora")},
            {"collection__yaml": COLLECTION.replace("'s list", "'s things")},
            {"moth__pad__yaml": PLAIN + "rows: {pitch: 9 mm}\n"},
            {"studio__yaml": "overs: {share: 10 %}\n"},
        ],
        ids=lambda files: next(iter(files)),
    )
    def test_of_anything_it_hangs_on_makes_it_again(self, tmp_path, files):
        folder(tmp_path)
        build(tmp_path)
        put(tmp_path, **files)
        assert not run_of(build(tmp_path))["unchanged"]

    def test_takes_a_volume_away_that_is_no_longer_needed(self, tmp_path, monkeypatch):
        monkeypatch.setattr("padspec.personal.units.MOST_SHEETS", 1)
        folder(tmp_path)
        build(tmp_path)
        place = tmp_path / "out/moth/personal"
        assert {p.name for p in place.glob("*.pdf")} == {"volume-001.pdf", "volume-002.pdf"}
        put(tmp_path, names__csv="\n".join(NAMES.splitlines()[:4]) + "\n")
        build(tmp_path)
        assert {p.name for p in place.iterdir()} == {
            "volume-001.pdf",
            "volume-001.csv",
            "volume-002.old.pdf",
            "findings.json",
        }


def test_settings_are_looked_over_once_their_gaps_are_filled(tmp_path):
    folder(tmp_path, collection=COLLECTION.replace("text:", "txt:"))
    outcome = build(tmp_path)
    assert outcome.status == 2
    assert "txt is not a key of heading." in outcome.json["problems"][0]["message"]


def test_a_design_that_is_not_to_be_printed_says_why_it_holds_the_run_back(tmp_path):
    folder(tmp_path, design=PLAIN + "rows: {pitch: 3 mm, checkbox: 3 mm}\n")
    outcome = padspec(tmp_path, "build", "--no-proofs", "--jobs", "1")
    assert outcome.status == 1
    assert outcome.err.count("error row-room") == 2
    assert "held back: mend the errors first" in outcome.out
    assert "Print all copies" not in outcome.out


def test_keys_that_do_not_tell_rows_apart_are_told(tmp_path):
    folder(tmp_path, NAMES + "103,Fay\n,Gus\n")
    one = run_of(build(tmp_path))
    assert (one["state"], one["volumes"]) == ("passed", 1)
    assert [row["message"] for row in one["rows"]] == [
        "row 6 (103): its order is that of row 3 too.",
        "row 7: order is empty, so nothing tells this row from others.",
    ]


def test_two_collections_do_not_take_each_others_volumes(tmp_path):
    folder(tmp_path)
    build(tmp_path)
    (tmp_path / "more.collection.yaml").write_text(COLLECTION)
    outcome = build(tmp_path, "more.collection.yaml")
    assert outcome.status == 2
    assert "are those of collection.yaml." in outcome.json["problems"][0]["message"]
    assert volume(tmp_path).is_file()


@pytest.mark.parametrize(
    ("template", "name", "mark"),
    [
        ("{first}'s list", "Ada", ""),
        ("{first}'s list", "נועה", "\u200e"),
        ("קניות של {first}", "Ada", ""),
        ("{first} ב", "Ada", "\u200f"),
        ("{first}", "נועה", ""),
    ],
)
def test_a_line_runs_the_way_its_template_does(template, name, mark):
    """UAX #9: the first strong letter decides; a mark before it (section 2.6) keeps the template's own way."""
    filled = template.replace("{first}", name)
    assert directed(template, filled) == mark + filled


class TestWhatIsNotWishedForAnyMore:
    def test_is_set_aside_when_the_collection_has_no_run(self, tmp_path):
        folder(tmp_path)
        build(tmp_path)
        put(tmp_path, collection__yaml="collection: Names\ndesigns: [moth.pad.yaml]\n")
        assert build(tmp_path).json["personal"] == []
        assert {p.name for p in (tmp_path / "out/moth/personal").iterdir()} == {"volume-001.old.pdf"}

    def test_is_set_aside_when_the_design_cannot_be_used(self, tmp_path):
        folder(tmp_path)
        build(tmp_path)
        put(tmp_path, moth__pad__yaml=PLAIN + "rowz: {}\n")
        assert build(tmp_path).status == 2
        assert {p.name for p in (tmp_path / "out/moth/personal").iterdir()} == {"volume-001.old.pdf"}

    def test_leftovers_of_a_run_that_was_stopped_go(self, tmp_path):
        folder(tmp_path)
        build(tmp_path)
        left = tmp_path / "out/.cache/passing" / content_digest(b"moth/personal")[:16]
        left.mkdir(parents=True, exist_ok=True)
        (left / "volume-009.pdf").write_bytes(b"half")
        put(tmp_path, names__csv=NAMES.replace("Ada", "Ida"))
        build(tmp_path)
        assert not [*(tmp_path / "out/.cache/passing").rglob("*.pdf")]
        assert not (tmp_path / "out/moth/personal/volume-009.pdf").exists()


def test_several_processes_write_the_same_volumes(tmp_path, monkeypatch):
    names = "order,first\n" + "".join(f"{n},Name {n}\n" for n in range(40))
    made = []
    for jobs in ("1", "2"):
        place = tmp_path / jobs
        place.mkdir()
        folder(place, names)
        monkeypatch.setattr("padspec.personal.units.MOST_SHEETS", 3)
        assert padspec(place, "build", "--no-proofs", "--jobs", jobs).status == 0
        made.append({k: v for k, v in written(place / "out/moth").items() if "personal" in k})
    assert len(made[0]) == 11
    assert made[0] == made[1]


def test_rows_may_name_their_pad_and_differ_in_more_than_words(tmp_path):
    collection = """collection: Names
designs: [moth.pad.yaml]
variants: [{axis: ruling, values: {wide: {rows: {pitch: 9 mm}}, narrow: {}}}]
personal:
  table: names.csv
  sku: "{pad}"
  set: {heading: {text: "{first}"}, palette: {lettering: "{colour}"}}
"""
    names = 'pad,first,colour\nmoth--wide,Ada,"#702040"\nmoth--narrow,Bo,"#204070"\nmoth--wide,Cleo,"#204070"\n'
    folder(tmp_path, names, collection)
    outcome = build(tmp_path)
    assert [(one["sku"], one["pads"]) for one in outcome.json["personal"]] == [
        ("moth--wide", 2),
        ("moth--narrow", 1),
    ]
    boxes = slots_of(tmp_path, "moth--wide")
    page = pixels(tmp_path / "out/moth--wide/personal/volume-001.pdf", 0)
    dark = [cut(page, box).reshape(-1, 3).min(axis=0).tolist() for box in boxes[:2]]
    # pdfium's pixels are blue, green, red; nothing else on the face is as dark.
    assert [pixel[::2] for pixel in dark] == [[0x40, 0x70], [0x70, 0x20]]


def slots_of(path, sku: str):
    sheet = padspec(path, "show", "collection.yaml", "--only", sku, "--stage", "sheet").json
    return [
        (b["x"] + 1, b["y"] + 1, b["x"] + b["width"] - 1, b["y"] + b["height"] - 1)
        for b in (slot["trim"] for slot in sheet["slots"])
    ]


@pytest.mark.parametrize(
    ("collection", "said"),
    [
        (COLLECTION.replace("names.csv", "nmes.csv"), "There is no table nmes.csv."),
        (COLLECTION.replace("{first}", "{frst}"), "The table has no column frst. "),
        (COLLECTION.replace("key: order", "key: number"), "The table has no column number."),
        (COLLECTION.replace("{first}'s list", "Our list"), "No {column} stands in set"),
        (COLLECTION.replace("heading: {text", 'leaves: "{order}", heading: {text'), "leaves has to be the same"),
        (COLLECTION.replace("table:", "sku: owl, table:"), "No pad of this collection has the SKU owl."),
        (
            COLLECTION.replace("[moth.pad.yaml]", "[moth.pad.yaml, owl.pad.yaml]"),
            "makes 2 pads, and personal does not",
        ),
        (COLLECTION.replace("heading", "brand"), "has no block"),
    ],
    ids=lambda text: str(text)[:40],
)
def test_what_cannot_be_made_is_told(tmp_path, collection, said):
    folder(tmp_path, collection=collection)
    put(tmp_path, owl__pad__yaml=PLAIN)
    outcome = build(tmp_path)
    assert outcome.status == 2
    told = [problem["message"] + problem["mend"] for problem in outcome.json["problems"]]
    assert any(said.strip() in text for text in told), told


KEYS = "10001, 10002, 10003, 1000"


class TestTheSlug:
    """Outlines hold no text to be read back; the sheet tells what is set where its slug goes on."""

    @pytest.mark.parametrize(
        ("times", "said", "note"),
        [
            (1, f"volume 1 of 1, sheet 7  ·  {KEYS}", ""),
            (7, "volume 1 of 1, sheet 7", NO_KEYS),
            (8, "sheet 7", NO_KEYS),
            (20, "", NO_SLUG),
        ],
    )
    def test_says_less_before_it_says_nothing(self, times, said, note):
        """The longer the name that goes before, the less room is left of the sheet's 297 mm."""
        design = pad(kit.PLAIN).design
        made = personal_sheet(replace(design, name="Errands of a long week " * times), "volume 1 of 1", "")
        line = made.slug(7, KEYS)
        whole = set_line(design.small_print, said).advance if said else None
        assert (line.line.advance if line else None, made.note) == (whole, note)

    def test_that_has_no_room_is_told_at_the_end(self, tmp_path):
        folder(tmp_path, design="pad: Errands\ntrim: {width: 93 mm, height: 136 mm}\nsheet: {size: A6}\n")
        outcome = padspec(tmp_path, "build", "--no-proofs", "--jobs", "1", "--despite-errors")
        assert NO_SLUG in outcome.out
