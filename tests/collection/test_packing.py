"""A packed unit sees every file that one in its folder sees, and makes the same bytes of them."""

from contextlib import suppress
from pathlib import Path

import pytest
from kit import PLAIN, apply, disc
from press.made import profile_bytes

from padspec.art.errors import ArtError
from padspec.base.errors import ProblemsError
from padspec.collection.cluster.packing import packed
from padspec.collection.cluster.parcels import parcel, whole
from padspec.collection.cluster.shelf import Shelf
from padspec.collection.source import Folder, Packed
from padspec.collection.targets import Target, targets
from padspec.collection.work import BuildWish, Unit, work
from padspec.fonts import family_file
from padspec.reading.gather import gather
from padspec.resolve import pictures
from padspec.resolve.resolve import resolve
from padspec.resolve.vary import varied
from padspec.workspace import Workspace, content_digest

EXAMPLES = Path(__file__).parents[2] / "examples"

STUDIO = "studio: Umberwick Paper\npress: {profile: profiles/press.icc}\n"
LAYOUT = """
layout: mine
about: A maker's own.
trims: [{width: 90 mm, height: 190 mm}]
face:
  - heading: {id: heading, font: ../../fonts/hand.ttf}
  - art: {id: art}
  - rows: {id: rows, grow: 1}
"""
COLLECTION = """
collection: Errands
designs: [cards/x.pad.yaml]
variants:
  - axis: look
    values: {usual: {}, other: {art: {file: art/other.png}, layout: theirs}}
"""
#: Beside what its keys name, a design may use a font that lies at hand for letters that another lacks.
DESIGN = apply(
    PLAIN,
    {
        "layout": "mine",
        "trim": {"width": "60 mm", "height": "90 mm"},
        "heading.text": "Ωμέγα",
        "art.file": "art.png",
        "art.width": "16 mm",
        "ground.colour": "#f6f4f0",
        "ground.pattern": {"kind": "motif", "file": "../motif.png"},
    },
)


@pytest.fixture(scope="module")
def project(tmp_path_factory):
    root = tmp_path_factory.mktemp("project")
    font = family_file("Caveat") or b""
    assert font
    files = {
        "studio.yaml": STUDIO.encode(),
        "collection.yaml": COLLECTION.encode(),
        "cards/x.pad.yaml": DESIGN.encode(),
        "cards/layouts/mine.yaml": LAYOUT.encode(),
        "layouts/theirs.yaml": LAYOUT.replace("mine", "theirs").replace("../../", "../").encode(),
        "cards/art.png": disc(300, 300),
        "art/other.png": disc(300, 200, (20, 90, 120)),
        "motif.png": disc(120, 120, (238, 236, 232)),
        "profiles/press.icc": profile_bytes(),
        "fonts/hand.ttf": font,
        "fonts/more.ttf": family_file("Lora") or b"",
        "unused.png": disc(),
    }
    for name, data in files.items():
        path = root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)
    return root


def unit(*alike: Target) -> Unit:
    variations = tuple(target.variation for target in alike)
    return Unit(
        Folder(alike[0].root),
        alike[0].path,
        variations,
        ("",) * len(alike),
        BuildWish(despite_errors=True, proofs=False),
    )


def as_packed(one: Unit) -> Unit:
    assert isinstance(one.source, Folder)
    return Unit(packed(one.source, one.path, one.variations), one.path, one.variations, one.drawn, one.wish)


def seen(workspace: Workspace, target: Target) -> dict[str, str]:
    """All that a design asks for while it is read; what its pictures show is left out."""
    with suppress(ProblemsError):
        resolve(varied(gather(target.path, workspace, target.variation)), workspace)
    return workspace.seen


def example_designs() -> list[Target]:
    return list(targets((str(EXAMPLES / "night-garden"), str(EXAMPLES / "almanac"))))


@pytest.mark.parametrize("target", example_designs(), ids=lambda target: f"{target.root.name}/{target.path}")
def test_every_example_sees_the_same_files(target, monkeypatch):
    def undecoded(*_: object) -> None:
        raise ArtError("Not looked at.", "")

    monkeypatch.setattr(pictures, "prepare", undecoded)
    monkeypatch.setattr(pictures, "colours", undecoded)
    here = seen(Folder(target.root).open(), target)
    assert any(path.startswith("art/") and digest for path, digest in here.items())
    box = packed(Folder(target.root), target.path, (target.variation,))
    assert seen(box.open(), target) == here


def test_fonts_profiles_motifs_layouts_and_what_variants_name_are_packed(project):
    """Seen are all: those of the layout from its folder, those of the variant from the collection's."""
    one = unit(*targets((str(project),)))
    here, there = work(one), work(as_packed(one))
    assert [made.problems for made in here] == [(), ()]
    assert here == there
    assert all(any(path.endswith("sheet.pdf") for path in made.files) for made in here)
    usual, other = (made.seen for made in here)
    common = {"studio.yaml", "profiles/press.icc", "motif.png", "fonts/hand.ttf", "fonts/more.ttf"}
    assert common | {"cards/layouts/mine.yaml", "cards/art.png"} <= {path for path in usual if usual[path]}
    assert common | {"layouts/theirs.yaml", "art/other.png"} <= {path for path in other if other[path]}


def test_what_no_text_names_stays_at_home(project):
    one = unit(*targets((str(project),)))
    box = packed(Folder(project), one.path, one.variations)
    assert "unused.png" not in dict(box.files)
    assert "collection.yaml" not in dict(box.files)


def test_the_date_of_here_goes_along(tmp_path, monkeypatch):
    """86,400 × 18,000 s after 1970 is 2019-04-14; see reproducible-builds.org for the variable."""
    (tmp_path / "x.pad.yaml").write_text(PLAIN)
    monkeypatch.setenv("SOURCE_DATE_EPOCH", str(86_400 * 18_000))
    box = packed(Folder(tmp_path), "x.pad.yaml", ())
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "0")
    assert box.open().date() == "2019-04-14"


def test_a_file_that_leads_out_of_the_project_is_left_out(tmp_path, tmp_path_factory):
    outside = tmp_path_factory.mktemp("outside") / "art.png"
    outside.write_bytes(disc())
    (tmp_path / "art.png").symlink_to(outside)
    (tmp_path / "x.pad.yaml").write_text(PLAIN + "art: {file: art.png}\n")
    box = packed(Folder(tmp_path), "x.pad.yaml", ())
    assert [path for path, _ in box.files] == ["x.pad.yaml"]


def test_a_design_that_cannot_be_parsed_is_packed_as_it_is(tmp_path):
    (tmp_path / "x.pad.yaml").write_bytes(b"pad: [\xff")
    assert dict(packed(Folder(tmp_path), "x.pad.yaml", ()).files) == {"x.pad.yaml": b"pad: [\xff"}


class TestParcels:
    def test_a_large_file_travels_by_its_content_alone(self, project):
        one = unit(*targets((str(project),)))
        sent, contents = parcel(one)
        assert {path for path, _ in sent.large} >= {"profiles/press.icc", "fonts/hand.ttf"}
        assert max(len(data) for _, data in sent.small) < 32 * 1024
        assert sent.task.source == Packed((), None)
        assert {digest for _, digest in sent.large} == contents.keys()

    def test_whole_it_holds_what_was_packed(self, project):
        one = unit(*targets((str(project),)))
        sent = whole(*parcel(one))
        assert dict(sent.small) == dict(packed(Folder(project), one.path, one.variations).files)
        assert sent.large == ()

    def test_a_unit_that_is_packed_already_is_not_packed_again(self, project):
        one = as_packed(unit(*targets((str(project),))))
        sent = whole(*parcel(one))
        assert dict(sent.small) == dict(one.source.files)

    def test_a_task_without_files_travels_as_it_is(self):
        sent, contents = parcel("a task")
        assert (sent.task, sent.packed, contents) == ("a task", False, {})


class TestShelf:
    def test_what_was_not_asked_for_the_longest_goes_first(self):
        shelf = Shelf(most=6)
        one, two, three = b"ab", b"cd", b"efg"
        shelf.put(one)
        shelf.put(two)
        assert shelf.get(content_digest(one)) == one
        shelf.put(three)
        assert shelf.digests == (content_digest(one), content_digest(three))

    def test_the_latest_stays_however_large(self):
        shelf = Shelf(most=1)
        shelf.put(b"abc")
        assert shelf.get(content_digest(b"abc")) == b"abc"
