"""padspec catalogue: from a folder to the page, its pictures and its tables."""

import csv
import json

import pytest
from cli.command import FAULTY, PLAIN, padspec, put, written

COLLECTION = """collection: Errands
about: Two colours.
designs: [moth.pad.yaml]
variants: [{axis: colour, values: {red: {palette: {ground: "#f4dcd8"}}, blue: {palette: {ground: "#dce6f4"}}}}]
"""


def test_the_catalogue_of_a_collection(tmp_path):
    put(tmp_path, collection__yaml=COLLECTION, moth__pad__yaml=PLAIN + "tags: [night]\nprice: 6.50\n")
    outcome = padspec(tmp_path, "catalogue", "--jobs", "1")
    assert (outcome.status, "2 pads on out/catalogue/index.html" in outcome.out) == (0, True), outcome
    names = written(tmp_path / "out/catalogue")
    assert len([name for name in names if name.startswith("pictures/")]) == 2
    page = names["index.html"].decode()
    assert "Two colours." in page
    assert page.count('class="card"') == 2
    rows = [*csv.DictReader(names["catalogue.csv"].decode("utf-8-sig").splitlines())]
    assert [(row["sku"], row["colour"], row["price"]) for row in rows] == [
        ("moth--red", "red", "6.5"),
        ("moth--blue", "blue", "6.5"),
    ]
    # Again, with nothing new, it is the same; with another ground, an old picture goes.
    assert padspec(tmp_path, "catalogue", "--jobs", "1").status == 0
    assert written(tmp_path / "out/catalogue") == names
    put(tmp_path, collection__yaml=COLLECTION.replace("#dce6f4", "#d0e0f8"))
    padspec(tmp_path, "catalogue", "--jobs", "1")
    pictures = [name for name in written(tmp_path / "out/catalogue") if name.startswith("pictures/")]
    assert len(pictures) == 2
    assert set(pictures) != {name for name in names if name.startswith("pictures/")}


def test_a_pad_that_is_not_to_be_printed_is_shown_as_such(tmp_path):
    put(tmp_path, moth__pad__yaml=PLAIN + 'rows: {colour: "#eeeeee", checkbox: none}\n')
    outcome = padspec(tmp_path, "catalogue", "--jobs", "1")
    assert outcome.status == 1
    page = (tmp_path / "out/catalogue/index.html").read_text("utf-8")
    assert "not to be printed" in page
    assert "rule-contrast" in page


class TestWhatCannotBeShown:
    @pytest.fixture
    def shown(self, tmp_path):
        put(tmp_path, moth__pad__yaml=PLAIN, owl__pad__yaml=PLAIN)
        assert padspec(tmp_path, "catalogue", "--jobs", "1").status == 0
        return tmp_path

    def test_is_named_on_the_page_in_the_json_and_at_the_end(self, shown):
        put(shown, owl__pad__yaml=PLAIN + "rowz: {}\n")
        outcome = padspec(shown, "catalogue", "--jobs", "1")
        assert (outcome.status, "1 pad could not be made" in outcome.out) == (2, True)
        names = written(shown / "out/catalogue")
        page = names["index.html"].decode()
        assert "Not shown: 1 pad that could not be made" in page
        assert "rowz is no key" in page or "rowz" in page
        (unreadable,) = json.loads(names["catalogue.json"])["unreadable"]
        assert (unreadable["file"], "rowz" in unreadable["message"]) == ("owl.pad.yaml", True)

    @pytest.mark.parametrize("faulty", [PLAIN + "rowz: {}\n", FAULTY], ids=["unreadable", "not to be printed"])
    def test_is_not_offered_any_more_by_the_page_of_before(self, shown, faulty):
        put(shown, owl__pad__yaml=faulty)
        padspec(shown, "build", "--jobs", "1")
        names = written(shown / "out/catalogue")
        assert ("index.html" in names, "index.old.html" in names) == (False, True)
        padspec(shown, "catalogue", "--jobs", "1")
        names = written(shown / "out/catalogue")
        assert ("index.html" in names, "index.old.html" in names) == (True, False)

    def test_and_the_page_stays_where_every_pad_is_still_to_be_had(self, shown):
        put(shown, owl__pad__yaml=PLAIN + "rows: {pitch: 9 mm}\n")
        padspec(shown, "build", "--jobs", "1")
        assert (shown / "out/catalogue/index.html").is_file()


def test_a_damaged_small_picture_is_mended(tmp_path):
    put(tmp_path, moth__pad__yaml=PLAIN)
    padspec(tmp_path, "catalogue", "--jobs", "1")
    (small,) = (tmp_path / "out/catalogue/pictures").iterdir()
    whole = small.read_bytes()
    small.write_bytes(whole[:100])
    padspec(tmp_path, "catalogue", "--jobs", "1")
    assert small.read_bytes() == whole


@pytest.mark.parametrize(
    "damage", [lambda _: b"no picture", lambda data: data[: len(data) // 2]], ids=["none", "half"]
)
def test_a_damaged_flat_lay_is_told_with_its_path(tmp_path, damage):
    put(tmp_path, moth__pad__yaml=PLAIN)
    padspec(tmp_path, "build", "--jobs", "1")
    face = (tmp_path / "out/moth/face.png").read_bytes()
    (tmp_path / "out/moth/flat-lay.png").write_bytes(damage(face))
    assert padspec(tmp_path, "catalogue", "--jobs", "1").refused("moth/flat-lay.png", "padspec flat-lay")
