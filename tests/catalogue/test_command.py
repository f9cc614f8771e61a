"""padspec catalogue: from a folder to the page, its pictures and its tables."""

import csv

from cli.command import PLAIN, padspec, put, written

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
