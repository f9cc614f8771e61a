"""Names that no file can have, links that lead nowhere, files without end: told, and never a traceback."""

import os
import stat
import sys

import pytest
from kit import picture

from .command import PLAIN, padspec, padspec_process, put

LONG = "n" * 900
PNG = picture(900, 800)


@pytest.fixture
def folder(tmp_path):
    return put(tmp_path, x__pad__yaml=PLAIN)


@pytest.mark.parametrize("name", [r"a\0b", LONG], ids=["null", "long"])
@pytest.mark.parametrize("command", ["check", "build"])
@pytest.mark.parametrize(
    ("text", "place"),
    [
        ('art: {file: "NAME.png"}\n', "x.pad.yaml:3:13"),
        ('layout: "NAME"\n', "x.pad.yaml:3:9"),
        ('heading: {font: "NAME.ttf"}\n', "x.pad.yaml:3:17"),
    ],
    ids=["art", "layout", "font"],
)
def test_a_name_in_a_design_that_no_file_can_have(folder, command, name, text, place):
    put(folder, x__pad__yaml=PLAIN + text.replace("NAME", name))
    assert padspec(folder, command).refused(place)


@pytest.mark.parametrize("name", [r"a\0b", LONG], ids=["null", "long"])
def test_a_name_in_a_collection_that_no_file_can_have(folder, name):
    put(folder, collection__yaml=f'collection: C\ndesigns: ["{name}.pad.yaml"]\n')
    assert padspec(folder, "build").refused("collection.yaml:2:11")


@pytest.mark.parametrize(
    "args",
    [
        ("check", LONG),
        ("build", f"{LONG}.pad.yaml"),
        ("new", f"{LONG}.png"),
        ("palette", f"{LONG}.png"),
        ("new", "moth.png", "--to", f"{LONG}.pad.yaml"),
        ("new", "moth.png", "--to", "../nowhere/x.pad.yaml", "--trim", "9 mm x 9 mm"),
        ("build", "--out", LONG),
    ],
    ids=lambda args: " ".join(args)[:30],
)
def test_a_name_on_the_command_line_that_no_file_can_have(folder, args):
    put(folder, moth__png=PNG)
    assert padspec(folder, *args).refused()


class TestLinks:
    @pytest.fixture
    def loop(self, folder):
        (folder / "loop").symlink_to("pool")
        (folder / "pool").symlink_to("loop")
        return folder

    @pytest.mark.parametrize("args", [("check", "loop"), ("build", "loop/x.pad.yaml"), ("palette", "loop")])
    def test_that_lead_in_a_circle_are_told_on_the_command_line(self, loop, args):
        assert padspec(loop, *args).refused("loop")

    @pytest.mark.parametrize(
        "line", ["art: {file: loop}", "art: {file: loop/a.png}", "heading: {font: loop/a.ttf}"]
    )
    def test_that_lead_in_a_circle_are_told_in_a_design(self, loop, line):
        put(loop, x__pad__yaml=f"{PLAIN}{line}\n")
        assert padspec(loop, "check", "x.pad.yaml").refused("loop")

    def test_that_lead_nowhere_are_not_proposed_themselves(self, folder):
        (folder / "dang.pad.yaml").symlink_to("gone.yaml")
        told = padspec(folder, "check", "dang.pad.yaml")
        assert told.refused("dang.pad.yaml", "leads to gone.yaml")
        assert "Did you mean" not in told.err

    def test_out_of_the_written_folder_are_told_with_a_mend_for_writing(self, folder, tmp_path_factory):
        (folder / "out").mkdir()
        (folder / "out/x").symlink_to(tmp_path_factory.mktemp("elsewhere"))
        told = padspec(folder, "build", "--no-proofs")
        assert told.refused("--out FOLDER")
        assert "Copy the file" not in told.err


@pytest.mark.parametrize("epoch", ["²", "253402300800", "9" * 5000, "-1", "1e9", " 1"])
def test_a_source_date_that_is_none(folder, monkeypatch, epoch):
    """reproducible-builds.org: a malformed SOURCE_DATE_EPOCH should end the build."""
    monkeypatch.setenv("SOURCE_DATE_EPOCH", epoch)
    assert padspec(folder, "check").refused("SOURCE_DATE_EPOCH", "253402300799")


def test_the_last_second_of_9999_is_a_source_date(folder, monkeypatch):
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "253402300799")
    assert padspec(folder, "show", "x.pad.yaml").json["date"] == "9999-12-31"


def test_an_argument_that_is_no_text(folder):
    for args in (("new", "\udcff.png"), ("build", "\udcff.pad.yaml"), ("palette", "\udcff.png", "--json")):
        assert padspec_process(folder, *args).refused("not UTF-8")


def test_a_design_in_the_folder_whose_name_is_no_text(folder):
    with open(os.fsencode(folder) + b"/\xff.pad.yaml", "w") as file:  # noqa: PTH123 (a name in bytes)
        file.write(PLAIN)
    assert padspec_process(folder, "build").refused("not UTF-8", "Rename")


def test_a_folder_where_the_old_sheet_should_go(folder):
    padspec(folder, "build", "--no-proofs")
    (folder / "out/x/sheet.old.pdf/kept").mkdir(parents=True)
    put(folder, x__pad__yaml=PLAIN.replace("width: 90 mm", "width: 500 mm"))
    assert padspec(folder, "build", "--no-proofs").refused("sheet.old.pdf", "cannot be written")


class TestFilesWithoutEnd:
    @pytest.fixture
    def sparse(self, folder):
        """3 GB that take no room."""
        with (folder / "large.png").open("wb") as file:
            file.truncate(3 * 10**9)
        return folder

    @pytest.mark.parametrize("args", [("palette", "large.png"), ("new", "large.png"), ("new", "../large.png")])
    def test_three_gigabytes_are_refused_before_they_are_read(self, sparse, args):
        (sparse / "below").mkdir()
        where = sparse / "below" if args[1].startswith("..") else sparse
        assert padspec(where, *args).refused("large.png", "2861 MiB", "160 MiB")
        assert not (sparse / "below/art").exists()

    @pytest.mark.skipif(not os.path.exists("/proc/self/mem"), reason="no such file here")  # noqa: PTH110
    @pytest.mark.parametrize("command", ["palette", "new"])
    def test_the_memory_of_the_process_is_refused(self, folder, command):
        assert padspec(folder, command, "/proc/self/mem").refused("/proc/self/mem", "cannot be read")


@pytest.mark.parametrize(("umask", "rights"), [(0o077, 0o600), (0o022, 0o644), (0o002, 0o664)])
def test_the_umask_decides_who_may_read_what_is_written(folder, umask, rights):
    before = os.umask(umask)
    try:
        padspec(folder, "build", "--no-proofs")
    finally:
        os.umask(before)
    assert stat.S_IMODE((folder / "out/x/sheet.pdf").stat().st_mode) == rights


@pytest.mark.parametrize(
    ("args", "said"),
    [
        (("build", "--json", "--nope"), "--nope"),
        (("biuld", "--json"), "biuld"),
        (("new", "--json"), "ART"),
        (("check", "--json", "--out", "x"), "--out"),
    ],
    ids=" ".join,
)
def test_json_tells_wrong_words_too(folder, args, said):
    told = padspec(folder, *args)
    assert (told.status, told.err) == (2, "")
    assert said in told.json["problems"][0]["message"]


def test_building_from_a_program_leaves_the_process_as_it_is(folder):
    import gc

    from padspec.collection.build import Run, build_all
    from padspec.collection.targets import Target
    from padspec.collection.work import BuildWish, work
    from padspec.collection.workers import Here

    before = gc.get_threshold(), sys.getswitchinterval()
    gc.set_threshold(777, 10, 10)
    sys.setswitchinterval(0.004)
    try:
        run = Run(lambda root: root / "out", BuildWish(proofs=False), Here(), work, 1, lambda _: None)
        assert len([*build_all([Target(folder, "x.pad.yaml")], run)]) == 1
        assert (gc.get_threshold()[0], round(sys.getswitchinterval(), 6)) == (777, 0.004)
    finally:
        gc.set_threshold(*before[0])
        sys.setswitchinterval(before[1])
