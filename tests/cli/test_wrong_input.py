"""Whatever is wrong with what a maker gives: one clear message with its place and the mend, and status 2."""

import sys
from pathlib import Path

import pytest
from kit import PLAIN, picture

from .command import padspec, put

PNG = picture(900, 800)


@pytest.fixture
def folder(tmp_path):
    return put(tmp_path, moth__png=PNG)


@pytest.mark.parametrize(
    ("args", "said"),
    [
        (("biuld",), ("There is no command biuld", "Did you mean padspec build?")),
        (("xyzzy",), ("There is no command xyzzy", "new, check, build")),
        (("build", "--jason"), ("--jason", "--json")),
        (("check", "--out", "x"), ("--out",)),
        (("build", "--out"), ("--out", "argument")),
        (("show",), ("PATH",)),
        (("show", "x.pad.yaml", "--stage", "fase"), ("fase", "face")),
        (("new",), ("ART",)),
        (("new", "a.png", "b.png"), ("b.png",)),
        (("check", "moth.pad.yml"), ("moth.pad.yml", "no such file")),
        (("build", "nowhere/"), ("nowhere", "no such file")),
        (("check", "moth.png"), ("moth.png", "padspec new moth.png")),
        (("check",), ("no design here", "padspec new")),
        (("new", "mth.png"), ("mth.png", "no such picture")),
        (("new", "."), ("This is a folder", "PNG")),
        (("new", "moth.png", "--trim", "90 mm"), ("--trim", "90 mm x 190 mm")),
        (("new", "moth.png", "--trim", "90 x 190"), ("--trim", "90 has no unit", "90 mm")),
        (("new", "moth.png", "--trim", "9 mm x 190 mm"), ("9 mm", "20 mm")),
        (("new", "moth.png", "--trim", "90 furlong x 190 mm"), ("--trim", "furlong")),
        (("new", "moth.png", "--layout", "cheklist"), ("--layout", "cheklist", "Did you mean checklist?")),
        (("new", "moth.png", "--layout", "../x"), ("--layout", "../x")),
        (("new", "moth.png", "--to", "."), ("--to", "directory")),
        (("new", "moth.png", "--name", "x" * 300), ("200",)),
        (("palette", "mth.png"), ("mth.png", "no such picture")),
        (("palette", "."), ("This is a folder", "PNG")),
        (("explain", "rule-contrst"), ("rule-contrst", "Did you mean rule-contrast?")),
        (("explain", "qqqq"), ("qqqq", "padspec explain")),
        (("explain", ""), ("padspec explain",)),
    ],
    ids=lambda value: " ".join(value)[:40] if value and isinstance(value[0], str) else None,
)
def test_a_wrong_word_on_the_command_line(folder, args, said):
    assert padspec(folder, *args).refused(*said)


@pytest.mark.parametrize(
    ("text", "place", "said"),
    [
        ("", "x.pad.yaml", ("empty",)),
        ("   \n\n# only a comment\n", "x.pad.yaml", ("empty",)),
        ("just words\n", "x.pad.yaml:1:1", ()),
        ("- a\n- list\n", "x.pad.yaml:1:1", ()),
        ("pad: Errands\n", "x.pad.yaml", ("trim",)),
        (PLAIN + "rowz: {pitch: 8 mm}\n", "x.pad.yaml:3:1", ("rowz", "rows")),
        (PLAIN + "rows: {pich: 8 mm}\n", "x.pad.yaml:3:8", ("pich", "pitch")),
        (PLAIN + "rows: {pitch: 8}\n", "x.pad.yaml:3:15", ("8 mm",)),
        (PLAIN + "rows: {pitch: 8 mmm}\n", "x.pad.yaml:3:15", ("8 mm",)),
        (PLAIN + "rows: {pitch: '8,5 mm'}\n", "x.pad.yaml:3:15", ("8.5",)),
        (PLAIN + "rows: {colour: blurple}\n", "x.pad.yaml:3:16", ("blurple",)),
        (PLAIN + "rows:\n  colour: #fff\n", "x.pad.yaml:4:", ('"#fff"',)),
        (PLAIN + 'rows: {colour: "#ggg"}\n', "x.pad.yaml:3:16", ("#ggg",)),
        (PLAIN + "rows: {pitch: 8 mm, pitch: 9 mm}\n", "x.pad.yaml:3:21", ("pitch", "twice")),
        (PLAIN + "layout: chequelist\n", "x.pad.yaml:3:9", ("chequelist", "checklist")),
        (PLAIN + "sheet: {size: A44}\n", "x.pad.yaml:3:15", ("A44",)),
        ("pad: E\ntrim: {width: 9 mm, height: 190 mm}\n", "x.pad.yaml:2:15", ("9 mm", "20 mm")),
        ("pad: E\ntrim: {width: 90 mm, height: 19 m}\n", "x.pad.yaml:2:30", ("19 m",)),
        ("pad: E\ntrim: {width: 90 mm}\n", "x.pad.yaml:2:", ("height",)),
        (PLAIN + "art: {file: mooth.png}\n", "x.pad.yaml:3:13", ("mooth.png", "moth.png")),
        (PLAIN + "art: {file: ../moth.png}\n", "x.pad.yaml:3:13", ("../moth.png", "outside")),
        (PLAIN + "art: {file: /etc/hostname}\n", "x.pad.yaml:3:13", ("outside",)),
        (PLAIN + "art: {file: folder.png}\n", "x.pad.yaml:3:13", ("folder.png",)),
        (PLAIN + "art: {file: words.png}\n", "x.pad.yaml:3:13", ("words.png",)),
        (PLAIN + "art: {file: broken.png}\n", "x.pad.yaml:3:13", ("broken.png",)),
        (PLAIN + "art: {file: nothing.png}\n", "x.pad.yaml:3:13", ("nothing.png",)),
        (PLAIN + "art: {file: linked.png}\n", "", ("outside",)),
        (PLAIN + "heading: {font: No Such Family}\n", "x.pad.yaml:3:17", ("No Such Family",)),
        (PLAIN + "heading: {font: moth.png}\n", "x.pad.yaml:3:17", ("moth.png",)),
        (PLAIN + "palette: {a: b, b: a}\nrows: {colour: a}\n", "x.pad.yaml:3:", ("a", "b")),
        (PLAIN + "rows: {colour: {from: art}}\n", "x.pad.yaml:3:", ("art",)),
        (PLAIN + "sku: ../../etc\n", "x.pad.yaml:3:6", ("sku",)),
        (PLAIN + "rows: [8 mm\n", "x.pad.yaml:", ()),
        (PLAIN + "\trows: {}\n", "x.pad.yaml:3:", ("tab",)),
        (PLAIN + "rows: &a [*a]\n", "x.pad.yaml:3:", ()),
        ("pad: 'oh\n", "x.pad.yaml:", ()),
    ],
)  # fmt: skip
@pytest.mark.parametrize("command", ["check", "build"])
def test_a_wrong_word_in_a_design(folder, command, text, place, said):
    (folder / "folder.png").mkdir()
    (folder.parent / "secret.png").write_bytes(PNG)
    (folder / "linked.png").symlink_to(folder.parent / "secret.png")
    put(folder, x__pad__yaml=text, words__png="not a picture", broken__png=PNG[:200], nothing__png=b"")
    assert padspec(folder, command, "x.pad.yaml").refused(place, *said)
    assert not (folder / "out").exists()


@pytest.mark.parametrize(
    "data", [b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR", b"\xff\xfe\x00p", bytes(range(256)), b"pad: \x00\n", b"\x00" * 4000]
)
def test_a_binary_file_as_a_design(folder, data):
    put(folder, x__pad__yaml=data)
    assert padspec(folder, "check", "x.pad.yaml").refused("x.pad.yaml")


@pytest.mark.parametrize("data", [b"\xef\xbb\xbf" + PLAIN.encode(), PLAIN.replace("\n", "\r\n").encode()])
def test_a_byte_order_mark_and_other_line_ends_are_no_fault(folder, data):
    put(folder, x__pad__yaml=data)
    assert padspec(folder, "check", "x.pad.yaml").status == 0


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "studio.yaml"),
        ("printer: {margin: 3 mm}\n", "margins"),
        ("sheet: {size: A44}\n", "A44"),
        ("cutter: {kind: axe}\n", "knife"),
    ],
)
def test_a_wrong_word_in_the_studio(folder, text, said):
    put(folder, x__pad__yaml=PLAIN, studio__yaml=text)
    checked = padspec(folder, "check")
    if text:
        assert checked.refused("studio.yaml", said)
    else:
        assert checked.status in (0, 2)
        assert "mistake of its own" not in checked.err


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("collection: N\ndesigns: [mooth.pad.yaml]\n", ("collection.yaml:2:11", "moth.pad.yaml")),
        ("collection: N\ndesigns: [../../x.pad.yaml]\n", ("collection.yaml:2:11", "outside")),
        ("collection: N\ndesigns: [/etc/x.pad.yaml]\n", ("collection.yaml:2:11", "outside")),
        ("collection: N\n", ("collection.yaml", "designs")),
        ("collection: N\ndesigns: []\n", ("collection.yaml", "designs")),
        ("collection: N\ndesigns: [moth.png]\n", ("moth.png",)),
        ("", ("collection.yaml",)),
    ],
)
def test_a_wrong_word_in_a_collection(folder, text, said):
    put(folder, moth__pad__yaml=PLAIN, collection__yaml=text)
    assert padspec(folder, "check").refused(*said)


def test_a_wrong_word_in_a_layout_of_the_makers_own(folder):
    (folder / "layouts").mkdir()
    (folder / "layouts/mine.yaml").write_text("layout: mine\nabout: Mine.\nface:\n  - rowz: {id: rows}\n")
    put(folder, x__pad__yaml=PLAIN + "layout: mine\n")
    assert padspec(folder, "check").refused("layouts/mine.yaml:4:5", "rowz", "rows")


def test_every_fault_of_a_design_is_told_at_once(folder):
    put(folder, x__pad__yaml=PLAIN + "rowz: {}\nsheet: {size: A44}\nleaves: many\n")
    told = padspec(folder, "check").err
    for place in ("x.pad.yaml:3:1", "x.pad.yaml:4:15", "x.pad.yaml:5:9"):
        assert place in told


def test_an_out_folder_that_is_a_file(folder):
    put(folder, x__pad__yaml=PLAIN, taken="a file")
    assert padspec(folder, "build", "--out", "taken").refused("taken")


def test_an_out_folder_below_a_file(folder):
    put(folder, x__pad__yaml=PLAIN, taken="a file")
    assert padspec(folder, "build", "--out", "taken/out").refused("cannot be written")


def test_a_file_where_a_designs_folder_should_be(folder):
    put(folder, x__pad__yaml=PLAIN)
    (folder / "out").mkdir()
    (folder / "out/x").write_text("a file")
    assert padspec(folder, "build").refused("x/", "cannot be written")


def test_a_folder_where_a_file_should_be(folder):
    put(folder, x__pad__yaml=PLAIN)
    (folder / "out/x/face.svg").mkdir(parents=True)
    assert padspec(folder, "build").refused("x/face.svg", "cannot be written")


def denied(*_: object, **__: object) -> None:
    """What the system says to anyone but the superuser, who may do everything and runs these tests too."""
    raise PermissionError(13, "Permission denied")


def test_an_out_folder_that_may_not_be_written(folder, monkeypatch):
    put(folder, x__pad__yaml=PLAIN)
    monkeypatch.setattr("padspec.workspace.os.open", denied)
    assert padspec(folder, "build").refused("cannot be written", "Permission denied")


@pytest.mark.parametrize("name", ["x.pad.yaml", "moth.png"])
def test_a_file_that_may_not_be_read(folder, monkeypatch, name):
    put(folder, x__pad__yaml=PLAIN + "art: {file: moth.png}\n")
    opened = Path.open
    monkeypatch.setattr(
        Path, "open", lambda path, *how, **more: denied() if path.name == name else opened(path, *how, **more)
    )
    assert padspec(folder, "check").refused(name, "cannot be read", "Permission denied")


def test_a_full_disk_leaves_no_half_files(folder, monkeypatch):
    """A write that fails: the message names the file, and no temporary file stays."""
    put(folder, x__pad__yaml=PLAIN)

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("pathlib.Path.replace", full)
    assert padspec(folder, "build").refused("cannot be written", "No space left on device")
    assert not list((folder / "out").rglob("*.part"))


def test_a_design_that_is_a_link_to_a_file_elsewhere(folder, tmp_path_factory):
    elsewhere = put(tmp_path_factory.mktemp("elsewhere"), x__pad__yaml=PLAIN)
    (folder / "x.pad.yaml").symlink_to(elsewhere / "x.pad.yaml")
    assert padspec(folder, "check", "x.pad.yaml").refused("x.pad.yaml", "outside")


def test_a_link_that_leads_nowhere(folder):
    (folder / "x.pad.yaml").symlink_to(folder / "gone.yaml")
    assert padspec(folder, "check", "x.pad.yaml").refused("x.pad.yaml", "no such file")


def test_a_folder_that_is_called_like_a_design(folder):
    (folder / "x.pad.yaml").mkdir()
    assert padspec(folder, "check").refused("no design here")


def test_show_needs_one_design(folder):
    put(folder, x__pad__yaml=PLAIN, y__pad__yaml=PLAIN)
    assert padspec(folder, "show", ".").refused("2 designs", "x.pad.yaml")


def test_a_picture_that_is_none_given_to_new(folder):
    put(folder, words__png="not a picture")
    new = padspec(folder, "new", "words.png")
    assert new.refused("words.png")
    assert "words.pad.yaml:" not in new.err, "a file that was never written is no place to point at"
    assert not (folder / "words.pad.yaml").exists()


def test_new_does_not_point_into_a_design_that_was_not_written(folder):
    for args in (("--layout", "cheklist"), ("--trim", "9 mm x 190 mm"), ("--name", "x" * 300)):
        assert ".pad.yaml:" not in padspec(folder, "new", "moth.png", *args).err


def test_a_picture_that_is_none_given_to_palette(folder):
    put(folder, words__png="not a picture")
    assert padspec(folder, "palette", "words.png").refused("words.png")


def test_a_bomb_of_a_picture_is_refused_with_its_size(folder):
    """A PNG that says it is 60,000 pixels each way: 3.6 thousand megapixels."""
    import struct
    import zlib

    header = struct.pack(">IIBBBBB", 60_000, 60_000, 8, 6, 0, 0, 0)
    chunk = struct.pack(">I", 13) + b"IHDR" + header + struct.pack(">I", zlib.crc32(b"IHDR" + header))
    put(folder, bomb__png=b"\x89PNG\r\n\x1a\n" + chunk + PNG[33:])
    put(folder, x__pad__yaml=PLAIN + "art: {file: bomb.png}\n")
    assert padspec(folder, "check").refused("bomb.png", "60", "megapixels")


def test_ctrl_c_ends_with_130_and_one_line(folder, monkeypatch):
    def interrupted(*_: object) -> None:
        raise KeyboardInterrupt

    put(folder, x__pad__yaml=PLAIN)
    monkeypatch.setattr("padspec.cli.check.targets", interrupted)
    outcome = padspec(folder, "check")
    assert outcome.status == 130
    assert len(outcome.err.strip().splitlines()) == 1


def test_a_fault_of_padspecs_own_is_one_line_that_says_so(folder, monkeypatch):
    def broken(*_: object) -> None:
        raise RuntimeError("a cog is loose")

    put(folder, x__pad__yaml=PLAIN)
    monkeypatch.setattr("padspec.cli.check.targets", broken)
    monkeypatch.delenv("PADSPEC_TRACE", raising=False)
    outcome = padspec(folder, "check")
    assert outcome.status == 2
    assert "mistake of its own" in outcome.err
    assert "PADSPEC_TRACE" in outcome.err
    assert len(outcome.err.strip().splitlines()) == 1


def test_text_that_the_terminal_cannot_show_is_no_fault(folder):
    """A terminal of plain ASCII: what cannot be shown is replaced, the work is done."""
    from .command import padspec_process

    put(folder, x__pad__yaml='pad: "Nächtliche Liste – für Käuze"\ntrim: {width: 90 mm, height: 190 mm}\n')
    built = padspec_process(folder, "build", "--no-proofs", PYTHONIOENCODING="ascii", PYTHONUTF8="0")
    assert built.status == 0, built
    assert (folder / "out/x/sheet.pdf").is_file()


def test_this_machine_has_links(folder):
    assert sys.platform != "win32"
    assert folder.is_dir()
