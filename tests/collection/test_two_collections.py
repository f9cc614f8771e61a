"""Two collections of one folder: pads that they call alike are told, and none of them is lost in silence."""

import pytest
from cli.command import PLAIN, padspec, put, written

COLLECTION = """collection: Errands
designs: [moth.pad.yaml]
variants: [{axis: ruling, values: {wide: {rows: {pitch: 9 mm}}, narrow: {rows: {pitch: 7 mm}}}}]
"""
OTHER = COLLECTION.replace("9 mm", "8 mm").replace("narrow", "square")


@pytest.fixture
def folder(tmp_path):
    put(tmp_path, moth__pad__yaml=PLAIN, a__collection__yaml=COLLECTION, b__collection__yaml=OTHER)
    return tmp_path


def build(folder, *args: str):
    return padspec(folder, "build", "--no-proofs", "--jobs", "1", "--json", *args)


def test_a_variant_that_both_call_alike_is_refused_and_the_others_are_made(folder):
    outcome = build(folder, "a.collection.yaml", "b.collection.yaml")
    assert outcome.status == 2
    (problem,) = outcome.json["problems"]
    assert problem["message"].startswith("moth--wide of b.collection.yaml is made by a.collection.yaml too")
    assert [one["sku"] for one in outcome.json["designs"]] == ["moth--wide", "moth--narrow", "moth--square"]


def test_one_after_the_other_they_are_not_written_over_each_other(folder):
    build(folder, "a.collection.yaml")
    face = (folder / "out/moth--wide/face.svg").read_bytes()
    outcome = build(folder, "b.collection.yaml")
    assert outcome.status == 2
    (problem,) = outcome.json["problems"]
    assert problem["message"].startswith("moth--wide of b.collection.yaml is made by a.collection.yaml too")
    assert problem["file"] == "b.collection.yaml"
    assert (folder / "out/moth--wide/face.svg").read_bytes() == face
    assert all(one["unchanged"] for one in build(folder, "a.collection.yaml").json["designs"])


def test_what_the_first_no_longer_makes_the_other_may(folder):
    build(folder, "a.collection.yaml")
    put(folder, a__collection__yaml=COLLECTION.replace("wide: {rows: {pitch: 9 mm}}, ", ""))
    assert build(folder, "b.collection.yaml").status == 0
    assert build(folder, "a.collection.yaml").status == 0
    assert (folder / "out/moth--wide/face.svg").is_file()
    assert all(one["unchanged"] for one in build(folder, "b.collection.yaml").json["designs"])


def test_a_collection_that_was_renamed_keeps_its_pads(folder):
    build(folder, "a.collection.yaml")
    before = {name for name in written(folder / "out") if ".cache" not in name}
    (folder / "a.collection.yaml").rename(folder / "c.collection.yaml")
    assert build(folder, "c.collection.yaml").status == 0
    assert {name for name in written(folder / "out") if ".cache" not in name} == before
    put(folder, c__collection__yaml=COLLECTION.replace(", narrow: {rows: {pitch: 7 mm}}", ""))
    build(folder, "c.collection.yaml")
    assert not (folder / "out/moth--narrow/face.svg").exists()


def test_a_design_as_it_is_may_stand_in_both(folder):
    for name in ("a__collection__yaml", "b__collection__yaml"):
        put(folder, **{name: "collection: Errands\ndesigns: [moth.pad.yaml]\n"})
    outcome = build(folder, "a.collection.yaml", "b.collection.yaml")
    assert (outcome.status, len(outcome.json["designs"])) == (0, 1)
