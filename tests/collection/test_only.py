"""--only: which pads a word means."""

import pytest
from kit import PLAIN

from padspec.base.errors import ProblemsError
from padspec.collection.only import only
from padspec.collection.targets import targets

TEXT = """collection: C
designs: [moth.pad.yaml, owl.pad.yaml]
variants:
  - {axis: colourway, values: {dusk: {}, frost: {leaves: 40}, both: {leaves: 30}}}
  - {axis: ruling, values: {wide: {rows: {pitch: 9 mm}}, both: {}}}
"""


@pytest.fixture
def found(tmp_path):
    (tmp_path / "collection.yaml").write_text(TEXT)
    (tmp_path / "moth.pad.yaml").write_text(PLAIN + "sku: NG-MOTH\n")
    (tmp_path / "owl.pad.yaml").write_text(PLAIN)
    return targets((str(tmp_path),))


def picked(found, *words: str) -> list[str]:
    names = {"moth.pad.yaml": "NG-MOTH", "owl.pad.yaml": "owl"}
    return [target.variation.sku_of(names[target.path]) for target in only(found, words)]


def test_no_word_means_all(found):
    assert len(picked(found)) == 12


def test_a_sku(found):
    assert picked(found, "NG-MOTH--dusk-wide") == ["NG-MOTH--dusk-wide"]


def test_the_sku_of_a_design_means_all_its_variants(found):
    assert picked(found, "ng-moth") == picked(found, "NG-MOTH--*")
    assert len(picked(found, "ng-moth")) == 6


def test_a_value_of_one_axis(found):
    assert picked(found, "frost", "owl") == ["owl--frost-wide", "owl--frost-both"]


def test_values_of_one_axis_add_up_and_axes_narrow_down(found):
    assert picked(found, "dusk", "frost", "ruling=wide", "NG-MOTH") == [
        "NG-MOTH--dusk-wide",
        "NG-MOTH--frost-wide",
    ]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["both"], "both is a value of colourway and of ruling. Write colourway=both."),
        (["frist"], "frist is no SKU and no value of a variant here. Did you mean frost?"),
        (["ruling=wid"], "ruling has no value wid. Did you mean wide?"),
        (["NG-MOTH--dusk-wide", "frost"], "No pad is all of NG-MOTH--dusk-wide, frost at once."),
    ],
    ids=repr,
)
def test_words_that_mean_nothing(found, words, said):
    with pytest.raises(ProblemsError) as caught:
        picked(found, *words)
    assert said in str(caught.value)
