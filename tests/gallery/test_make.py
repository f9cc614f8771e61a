"""Specimens: designs in memory over a maker's folder, made as any design is."""

from kit import disc

from padspec.base.findings import Severity
from padspec.base.geometry import Size
from padspec.gallery.art import BorrowedArt, Reducer, art_for, borrowed_art, motif_file
from padspec.gallery.make import make_gallery
from padspec.gallery.specimen import Gallery
from padspec.gallery.wish import HEADINGS, GalleryWish
from padspec.resolve.pictures import PictureWish, prepare
from padspec.scene.nodes import Cause, Group, Layer, Picture, Scene, pictures
from padspec.workspace import MemoryWorkspace

STUDIO = b"studio: Umberwick Paper\n"
FIRST = b"pad: A\nlayout: ruled\ntrim: {width: 90 mm, height: 190 mm}\nart: {file: art/a.png}\n"
SECOND = b"pad: B\nsku: B\ntrim: {width: 90 mm, height: 190 mm}\nart: {file: ../art/b.png, cutout: none}\n"
FILES = {
    "studio.yaml": STUDIO,
    "a.pad.yaml": FIRST,
    "cards/b.pad.yaml": SECOND,
    "art/a.png": disc(900, 900),
    "art/b.png": disc(700, 900, (20, 90, 70)),
}
DESIGNS = ("a.pad.yaml", "cards/b.pad.yaml")
LINES = "rows: {id: rows, grow: 1, colour: '#eeeeee', checkbox: none}"
PALE = f"layout: pale\nabout: Pale.\ntrims: [{{width: 90 mm, height: 100 mm}}]\nface:\n  - {LINES}\n".encode()


def made(files=FILES, designs=DESIGNS, **wish) -> Gallery:
    return make_gallery(designs, MemoryWorkspace(files), GalleryWish(**wish), "Book", lambda _: None)


def test_layouts_stand_on_grounds_in_the_order_asked_for() -> None:
    gallery = made(layouts=("ruled", "square"), grounds=("stripes", "plain"))
    told = [(one.layout, one.ground, one.trim) for one in gallery.specimens]
    tall, square = Size(90, 190), Size(90, 90)
    assert told == [
        ("ruled", "stripes", tall),
        ("ruled", "plain", tall),
        ("square", "stripes", square),
        ("square", "plain", square),
    ]
    assert (gallery.title, gallery.studio, gallery.problems) == ("Book", "Umberwick Paper", ())


def test_a_face_ends_at_its_trim() -> None:
    (one,) = made(layouts=("ruled",), grounds=("plain",)).specimens
    assert one.scene.bleed == 0
    assert one.scene.size == Size(90, 190)


def test_a_layout_takes_the_picture_of_the_design_that_has_it_and_others_take_turns() -> None:
    art = (BorrowedArt("a.png", None, "ruled"), BorrowedArt("b.png", None))
    assert [one.file for one in (art_for("week", n, art) for n in range(3))] == ["a.png", "b.png", "a.png"]
    assert art_for("ruled", 1, art) == art[0]
    assert art_for("ruled", 0, ()) is None


def test_pictures_are_named_from_the_project_folder_with_their_cutout() -> None:
    found = borrowed_art(DESIGNS, MemoryWorkspace(FILES))
    assert found == (BorrowedArt("art/a.png", None, "ruled"), BorrowedArt("art/b.png", "none"))


def test_a_picture_that_is_not_there_is_not_borrowed() -> None:
    files = {name: data for name, data in FILES.items() if name != "art/a.png"}
    assert [one.file for one in borrowed_art(DESIGNS, MemoryWorkspace(files))] == ["art/b.png"]


def test_the_smallest_picture_beside_the_art_makes_the_motif() -> None:
    small = disc(40, 40)
    workspace = MemoryWorkspace({**FILES, "art/z.png": small, "elsewhere/y.png": disc(8, 8)})
    assert motif_file(borrowed_art(DESIGNS, workspace), workspace) == "art/z.png"


def test_large_pictures_make_no_motif() -> None:
    workspace = MemoryWorkspace({"a.pad.yaml": FIRST, "art/a.png": disc() + bytes(200_001)})
    assert motif_file(borrowed_art(("a.pad.yaml",), workspace), workspace) is None


def test_without_designs_faces_have_no_picture_and_no_motif() -> None:
    gallery = made({}, (), layouts=("ruled",), grounds=("all",))
    assert not any(pictures(one.scene) for one in gallery.specimens)
    assert "motif" not in {one.ground for one in gallery.specimens}
    assert gallery.studio == ""


def test_a_heading_is_set_where_the_layout_has_one() -> None:
    own = b"layout: own\nabout: Own.\nface:\n  - rows: {id: rows, grow: 1}\n"
    files = {"layouts/own.yaml": own}
    for heading in (None, *HEADINGS.values()):
        gallery = made(files, (), layouts=("own", "ruled"), grounds=("plain",), heading=heading)
        assert not gallery.problems
        assert len(gallery.specimens) == 2
    plain, longer = (
        made({}, (), layouts=("ruled",), grounds=("plain",), heading=text).specimens[0].scene
        for text in (None, HEADINGS["long"])
    )
    assert plain != longer


def test_what_the_checks_find_is_told_of_the_face_not_of_a_file_that_is_not_there() -> None:
    gallery = made({"layouts/pale.yaml": PALE}, (), layouts=("pale",), grounds=("plain",))
    (one,) = gallery.specimens
    found = [finding for finding in one.findings if finding.check == "rule-contrast"]
    assert gallery.failed
    assert [finding.severity for finding in found] == [Severity.ERROR]
    assert found[0].place.file == "layouts/pale.yaml"
    assert not any(finding.place.file == "gallery.pad.yaml" for finding in one.findings)


def test_notes_are_not_told() -> None:
    gallery = made(layouts=("square",), grounds=("plain",))
    assert all(finding.severity > Severity.NOTE for one in gallery.specimens for finding in one.findings)


def test_a_trim_that_cannot_be_is_told_once_for_all_grounds_and_the_rest_is_shown() -> None:
    gallery = made(layouts=("ruled",), grounds=("plain", "dots"), trims=(Size(90, 190), Size(5, 190)))
    assert [one.ground for one in gallery.specimens] == ["plain", "dots"]
    assert [str(problem.place) for problem in gallery.problems] == ["ruled on plain, dots, 5 × 190 mm"]
    assert "5 mm" in gallery.problems[0].message


def test_pictures_are_brought_down_once_and_stay_in_their_boxes() -> None:
    image = prepare(disc(600, 600), PictureWish("a.png", 40, 40, "none", False, False, 0.0)).image
    box = (
        picture := Picture(
            image, made(layouts=("ruled",), grounds=("plain",)).specimens[0].scene.bleed_box, Cause("a", "art")
        )
    ).box
    scene = Scene(Size(90, 190), 0, (Layer("art", (picture, Group((picture,)))),))
    reducer = Reducer(25.4)
    one, other = pictures(reducer.scene(scene))
    assert one.image is other.image
    assert (one.image.width, one.image.height) == (90, 190)
    assert one.box == box


def test_a_small_picture_stays_as_it_is() -> None:
    gallery = made(layouts=("ruled",), grounds=("plain", "dots"))
    one, other = (pictures(specimen.scene)[0].image for specimen in gallery.specimens)
    assert one is other
