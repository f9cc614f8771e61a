"""Which variants a collection makes, how they are called, and what is refused."""

import pytest
from kit import PLAIN

from padspec.base.errors import ProblemsError
from padspec.collection.collection_file import Collection, read_collection
from padspec.pipeline import make
from padspec.reading.checking.schemas import schema_data
from padspec.workspace import MemoryWorkspace

COLOURWAYS = '{axis: colourway, values: {dusk: {}, frost: {palette: {ground: "#dfe9f2"}}}}'
RULINGS = "{axis: ruling, values: {wide: {rows: {pitch: 8.7 mm}}, narrow: {rows: {pitch: 6.35 mm}}}}"
TOWNS = "town,say\nKöln,Hallo\nLyon,Salut\n"


def folder(text: str, **files: str) -> MemoryWorkspace:
    made = {"collection.yaml": text, "a.pad.yaml": PLAIN, "b.pad.yaml": PLAIN} | files
    return MemoryWorkspace({name: content.encode() for name, content in made.items()})


def collection(*axes: str, more: str = "", designs: str = "[a.pad.yaml]", towns: str = TOWNS) -> Collection:
    variants = f"variants: [{', '.join(axes)}]\n" if axes else ""
    text = f"collection: C\ndesigns: {designs}\n{variants}{more}"
    return read_collection("collection.yaml", folder(text, **{"towns.csv": towns}))


def called(*axes: str, **how: str) -> list[str]:
    return [f"{m.path} {m.variation.sku}" for m in collection(*axes, **how).members]


def refused(*axes: str, **how: str) -> list[str]:
    with pytest.raises(ProblemsError) as caught:
        collection(*axes, **how)
    return [str(problem) for problem in caught.value.problems]


class TestWhichAreMade:
    def test_without_axes_the_designs_themselves(self):
        assert called(designs="[b.pad.yaml, a.pad.yaml]") == ["b.pad.yaml {sku}", "a.pad.yaml {sku}"]

    def test_every_combination_in_the_order_of_the_axes(self):
        assert called(COLOURWAYS, RULINGS) == [
            "a.pad.yaml {sku}--dusk-wide",
            "a.pad.yaml {sku}--dusk-narrow",
            "a.pad.yaml {sku}--frost-wide",
            "a.pad.yaml {sku}--frost-narrow",
        ]

    def test_an_excluded_combination_is_not(self):
        made = called(COLOURWAYS, RULINGS, more="exclude: [{colourway: frost, ruling: narrow}]\n")
        assert made == [f"a.pad.yaml {{sku}}--{name}" for name in ("dusk-wide", "dusk-narrow", "frost-wide")]

    def test_an_exclusion_may_name_designs_and_several_values(self):
        more = "exclude: [{design: b.pad.yaml, colourway: [dusk, frost]}]\n"
        assert called(COLOURWAYS, designs="[a.pad.yaml, b.pad.yaml]", more=more) == [
            "a.pad.yaml {sku}--dusk",
            "a.pad.yaml {sku}--frost",
        ]

    def test_the_rows_of_a_table_are_values_too(self):
        axis = '{axis: town, table: towns.csv, key: town, set: {heading: {text: "{say}, {town}"}}}'
        members = collection(axis).members
        assert [m.variation.values for m in members] == [(("town", "Köln"),), (("town", "Lyon"),)]
        assert members[0].variation.settings.get("heading").text("text") == "Hallo, Köln"


class TestHowTheyAreCalled:
    def test_signs_that_no_code_takes_become_hyphens(self):
        axis = "{axis: colour, values: {Dusk blue: {}, a.b: {}, Nr_5-x: {}}}"
        assert [name.split("--")[1] for name in called(axis)] == ["Dusk-blue", "a-b", "Nr_5-x"]

    def test_by_patterns(self):
        more = 'sku: "{ruling}-{sku}"\nname: "{name} ({ruling})"\n'
        (one, _) = collection(RULINGS, more=more).members
        assert one.variation.sku_of("NG-MOTH") == "wide-NG-MOTH"
        assert one.variation.name_of("Night moth list") == "Night moth list (wide)"

    def test_the_usual_name_lists_the_values(self):
        assert collection(COLOURWAYS, RULINGS).members[0].variation.name_of("Moth") == "Moth, dusk, wide"

    def test_a_design_knows_its_variant_and_its_own_sku(self):
        workspace = folder(f"collection: C\ndesigns: [a.pad.yaml]\nvariants: [{RULINGS}]\n")
        member = read_collection("collection.yaml", workspace).members[1]
        design = make(member.path, workspace, variation=member.variation).design
        assert (design.sku, design.name) == ("a--narrow", "Errands, narrow")
        assert (design.listing.own_sku, design.listing.values) == ("a", (("ruling", "narrow"),))


@pytest.mark.parametrize(
    ("axes", "how", "said"),
    [
        ([RULINGS, RULINGS.replace("ruling", "Ruling")], {}, "The axis Ruling stands twice"),
        ([COLOURWAYS.replace("colourway", "sku")], {}, "An axis cannot be called sku"),
        ([RULINGS, RULINGS.replace("ruling", "rows")], {}, "The axes ruling and rows both set rows.pitch;"),
        (
            ["{axis: x, values: {a: {palette: {ground: white}}}}", COLOURWAYS],
            {},
            "The axes x and colourway both set palette.ground;",
        ),
        (["{axis: x}"], {}, "An axis has values or a table, and this one has neither."),
        (["{axis: x, values: {a: {}}, set: {rows: {pitch: 8 mm}}}"], {}, "set belongs to a table"),
        (["{axis: x, table: towns.csv, key: town}"], {}, "A table needs set"),
        (["{axis: x, table: twons.csv, key: town, set: {leaves: 50}}"], {}, "Did you mean towns.csv?"),
        (["{axis: x, table: ../t.csv, key: town, set: {leaves: 50}}"], {}, "leads outside the project folder"),
        (["{axis: x, table: towns.csv, key: twn, set: {leaves: 50}}"], {}, "Did you mean town?"),
        (['{axis: x, table: towns.csv, key: town, set: {leaves: "{say}"}}'], {}, "towns.csv:2:1"),
        (
            ["{axis: x, table: towns.csv, key: town, set: {leaves: 50}}"],
            {"towns": TOWNS + "Lyon,x\n"},
            "towns.csv:4:1: Lyon stands twice under town; the first is on line 3.",
        ),
        (
            ["{axis: x, table: towns.csv, key: town, set: {leaves: 50}}"],
            {"towns": TOWNS + ",x\n"},
            "towns.csv:4:1: This row has no town to be called by.",
        ),
        (
            ["{axis: x, table: towns.csv, key: town, set: {leaves: 50}}"],
            {"towns": TOWNS + f"{'Lyon' * 16},x\n"},
            "towns.csv:4:1: The town of this row has 64 characters; at most 60 name a variant.",
        ),
        (
            ["{axis: x, table: towns.csv, key: town, set: {leaves: 50}}"],
            {"towns": TOWNS + "京都,x\n"},
            "towns.csv:4:1: 京都 has no letter A to Z and no digit, so nothing of it is left in a SKU.",
        ),
        (
            [COLOURWAYS],
            {"more": "exclude: [{colour: dusk}]\n"},
            "No axis is called colour. Did you mean colourway?",
        ),
        ([COLOURWAYS], {"more": "exclude: [{colourway: dsk}]\n"}, "dsk is no value of colourway here."),
        ([COLOURWAYS], {"more": "exclude: [{design: c.pad.yaml}]\n"}, "c.pad.yaml is no design here."),
        ([COLOURWAYS], {"more": "exclude: [{colourway: [dusk, frost]}]\n"}, "Every variant is excluded"),
        ([COLOURWAYS], {"more": 'sku: "{sku}"\n'}, "would share a SKU: {colourway} is not in it."),
        ([COLOURWAYS], {"more": 'sku: "{colourway}"\n'}, "every design would have the same sku."),
        ([COLOURWAYS], {"more": 'sku: "../{sku}-{colourway}"\n'}, "/ stands in sku, which names folders."),
        ([COLOURWAYS], {"more": 'name: "{name} {colour}"\n'}, "{colour} means nothing in name."),
        (["{axis: x, values: {a b: {}, a-b: {}}}"], {}, "would both be coded SKU--a-b."),
        ([], {"designs": "[a.pad.yaml, ./a.pad.yaml]"}, "a.pad.yaml is listed twice."),
        (["{axis: x, values: {a: {rows: {pitsh: 8 mm}}}}"], {}, "Did you mean pitch?"),
        (["{axis: x, values: {a: {sku: Z}}}"], {}, "sku is not a key of"),
    ],
    ids=repr,
)
def test_what_is_refused(axes, how, said):
    assert any(said in problem for problem in refused(*axes, **how)), refused(*axes, **how)


def test_axes_may_set_different_keys_of_one_bundle():
    assert called(RULINGS, "{axis: lines, values: {fine: {rows: {weight: 0.2 mm}}}}")


def test_too_many_variants_are_refused_with_the_sum():
    axis = "{axis: NAME, values: {" + ", ".join(f"v{n}: {{}}" for n in range(400)) + "}}"
    (problem,) = refused(axis.replace("NAME", "a"), axis.replace("NAME", "b"))
    assert "1 designs × 400 × 400 are 160000 variants; at most 100000 are made." in problem


def test_a_variant_may_set_every_key_of_a_design_but_its_names():
    settings = schema_data("collection")["$defs"]["settings"]["properties"]
    assert set(settings) == set(schema_data("design")["properties"]) - {"pad", "sku"}
