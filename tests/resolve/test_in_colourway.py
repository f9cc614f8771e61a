"""A design in another colourway: its roles give way to the ready set, names of its own and all else stay."""

from kit import disc

from padspec.reading.gather import gather
from padspec.resolve.in_colourway import in_colourway
from padspec.resolve.resolve import resolve
from padspec.resolve.roles import COLOURWAYS, ready_set, recipe_named
from padspec.workspace import MemoryWorkspace

DESIGN = """pad: Errands
trim: {width: 90 mm, height: 190 mm}
art: {file: disc.png}
palette: {ground: "#123456", rule: "#654321", ribbon: "#abcdef"}
heading: {colour: ribbon}
"""


def colours(colourway: str, studio: str = "") -> dict[str, str]:
    files = {"x.pad.yaml": DESIGN.encode(), "disc.png": disc(60, 60), "studio.yaml": studio.encode() or b"{}"}
    folder = MemoryWorkspace(files)
    documents = in_colourway(gather("x.pad.yaml", folder), colourway)
    return {name: colour.hex for name, colour in resolve(documents, folder).palette}


def test_the_roles_that_a_design_sets_give_way() -> None:
    assert colours("deeper")["ground"] != "#123456"
    assert len({colours(name)["ground"] for name in COLOURWAYS}) == len(COLOURWAYS)


def test_names_of_the_designs_own_stay() -> None:
    assert colours("muted")["ribbon"] == "#abcdef"


def test_the_roles_that_the_studio_sets_give_way_too() -> None:
    assert colours("lighter", "palette: {paper: black}") == colours("lighter")


def test_each_role_is_that_of_the_recipe() -> None:
    found = colours("single-hue")
    hues = [dict(ready_set(hue, recipe_named("single-hue")))["paper"].hex for hue in range(360)]
    assert found["paper"] in hues
