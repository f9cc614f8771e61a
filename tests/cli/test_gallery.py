"""padspec gallery, as a maker runs it."""

from pathlib import Path

from kit import disc

from .command import PLAIN, padspec, padspec_process, put, written

PALE = """\
layout: pale
about: Pale.
trims: [{width: 90 mm, height: 100 mm}]
face:
  - rows: {id: rows, grow: 1, colour: "#eeeeee", checkbox: none}
"""


def one(folder: Path, *args: str):
    return padspec(folder, "gallery", "--layouts", "ruled", "--grounds", "plain", *args)


def test_the_book_lies_in_the_output_and_is_told(tmp_path: Path) -> None:
    put(tmp_path, x__pad__yaml=PLAIN)
    done = one(tmp_path)
    assert done.status == 0
    assert "Wrote out/gallery/gallery.pdf: 1 face of 1 layout on 2 pages." in done.out
    assert set(written(tmp_path / "out" / "gallery")) == {
        "gallery.pdf",
        "gallery.html",
        "faces/ruled-plain-90x190.svg",
    }


def test_a_folder_without_designs_is_shown_without_pictures(tmp_path: Path) -> None:
    assert one(tmp_path, "--out", "book").status == 0
    assert "<image" not in (tmp_path / "book" / "faces" / "ruled-plain-90x190.svg").read_text()


def test_the_picture_of_a_design_is_used(tmp_path: Path) -> None:
    put(tmp_path, x__pad__yaml=PLAIN + "art: {file: a.png}\n", a__png=disc(900, 900))
    one(tmp_path, "--out", "book")
    assert "<image" in (tmp_path / "book" / "faces" / "ruled-plain-90x190.svg").read_text()


def test_a_face_with_an_error_makes_the_status_one_and_is_shown(tmp_path: Path) -> None:
    (tmp_path / "layouts").mkdir()
    (tmp_path / "layouts" / "pale.yaml").write_text(PALE)
    done = padspec(tmp_path, "gallery", "--layouts", "pale", "--grounds", "plain,dots")
    assert done.status == 1
    assert "pale, 90 × 100 mm, on plain, dots: error rule-contrast: " in done.err
    assert (tmp_path / "out" / "gallery" / "gallery.pdf").is_file()


def test_a_layout_that_cannot_be_read_is_refused_at_its_line(tmp_path: Path) -> None:
    (tmp_path / "layouts").mkdir()
    (tmp_path / "layouts" / "pale.yaml").write_text(PALE + "nonsense: 1\n")
    assert padspec(tmp_path, "gallery").refused("layouts/pale.yaml:6")
    assert not (tmp_path / "out").exists()


def test_wrong_words_are_refused_with_the_right_ones(tmp_path: Path) -> None:
    assert padspec(tmp_path, "gallery", "--grounds", "doots").refused("Did you mean dots?")
    assert padspec(tmp_path, "gallery", "--layouts", "ruld").refused("Did you mean ruled?")
    assert padspec(tmp_path, "gallery", "--layouts", ",").refused("This names nothing.")
    assert padspec(tmp_path, "gallery", "--trims", "90 mm").refused("--trims '90 mm x 190 mm'")
    assert padspec(tmp_path, "gallery", "nowhere").refused("no such file or folder")


def test_a_trim_that_cannot_be_leaves_nothing_to_show(tmp_path: Path) -> None:
    done = one(tmp_path, "--trims", "5 mm x 190 mm")
    assert done.refused("ruled on plain, 5 × 190 mm", "5 mm")
    assert "Nothing could be shown." in done.err
    assert not (tmp_path / "out").exists()


def test_json_tells_faces_and_files_and_nothing_else(tmp_path: Path) -> None:
    told = one(tmp_path, "--trims", "own", "--json").json
    (layout,) = told["layouts"]
    assert layout["layout"] == "ruled"
    assert [(face["width"], face["height"]) for face in layout["faces"]] == [(90, 190), (148, 210), (74, 105)]
    assert told["problems"] == []
    assert len(told["written"]) == 5


def test_a_title_comes_from_the_collection(tmp_path: Path) -> None:
    put(tmp_path, x__pad__yaml=PLAIN, collection__yaml="collection: Late lists\ndesigns: [x.pad.yaml]\n")
    one(tmp_path)
    assert "<h1>Late lists</h1>" in (tmp_path / "out" / "gallery" / "gallery.html").read_text()


def test_two_runs_with_different_hashes_write_the_same_bytes(tmp_path: Path) -> None:
    put(tmp_path, x__pad__yaml=PLAIN + "art: {file: a.png}\n", a__png=disc(200, 200))
    args = ("gallery", "--layouts", "ruled,square", "--grounds", "dots,sprinkle")
    for seed in ("1", "2"):
        padspec_process(tmp_path, *args, "--out", seed, PYTHONHASHSEED=seed)
    assert written(tmp_path / "1")
    assert written(tmp_path / "1") == written(tmp_path / "2")
