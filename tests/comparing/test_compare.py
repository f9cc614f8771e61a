"""padspec compare, from the command line to its files, in repositories that the tests make."""

import os
import shutil
from pathlib import Path
from unittest.mock import patch

import pytest
from kit import disc
from PIL import Image

from padspec.comparing import compare as comparing

from .repository import BOTH, MOTH, OWL, as_of, begin, commit, compare, git, put, two_pads

PICTURED = MOTH + "art: {file: art/moth.png}\n"


def whole_state(folder: Path) -> dict[str, tuple[int, int, bytes]]:
    """Every file of a repository, git's own among them, with its size, time of change and content."""
    return {
        path.relative_to(folder).as_posix(): (path.stat().st_size, path.stat().st_mtime_ns, path.read_bytes())
        for path in sorted(folder.rglob("*"))
        if path.is_file() and "out" not in path.relative_to(folder).parts
    }


def test_a_collection_that_is_as_committed_is_the_same(tmp_path: Path) -> None:
    done = compare(two_pads(tmp_path), "--text-only")
    assert (done.status, done.out) == (0, "Night: nothing changed since HEAD\n")


def test_what_is_the_same_is_not_made(tmp_path: Path) -> None:
    project = two_pads(tmp_path)
    put(project, moth__pad__yaml=MOTH + "leaves: 25\n")
    made = []

    def listening(member, workspace):  # type: ignore[no-untyped-def]
        made.append((member.path, type(workspace).__name__))
        return make(member, workspace)

    make = comparing.made_side
    with patch.object(comparing, "made_side", listening):
        assert compare(project, "--text-only").status == 1
    assert made == [("moth.pad.yaml", "FolderWorkspace"), ("moth.pad.yaml", "RevisionWorkspace")]


def test_work_that_is_not_committed_is_told(tmp_path: Path) -> None:
    project = two_pads(tmp_path)
    put(project, moth__pad__yaml=MOTH + "rows: {pitch: 7 mm}\n")
    done = compare(project, "--text-only")
    assert done.status == 1
    assert done.out.startswith("Night: 1 of 2 pads changed\n\nMOTH, Moth list:\n- rows: pitch 8 mm → 7 mm\n")


def test_a_file_that_git_does_not_know_yet_counts(tmp_path: Path) -> None:
    project = two_pads(tmp_path)
    put(project, studio__yaml="studio: Wren\nleaves: 25\n")
    done = compare(project, "--text-only")
    assert "In all 2 pads:" in done.out
    assert "leaves 50 → 25, 25 fewer" in done.out


def test_staged_work_counts_as_now(tmp_path: Path) -> None:
    project = two_pads(tmp_path)
    put(project, moth__pad__yaml=MOTH + "leaves: 25\n")
    git(project, "add", "-A")
    assert "leaves 50 → 25" in compare(project, "--text-only").out


def test_picture_pixels_that_changed_are_told(tmp_path: Path) -> None:
    project = begin(tmp_path, moth__pad__yaml=PICTURED, art___moth__png=disc())
    put(project, art___moth__png=disc(colour=(20, 90, 60)))
    done = compare(project, "--text-only")
    assert done.status == 1
    assert "art: content of the picture" in done.out


def test_an_edit_that_changes_no_pad_is_no_change(tmp_path: Path) -> None:
    project = two_pads(tmp_path)
    put(project, moth__pad__yaml="# A note\n" + MOTH)
    assert compare(project, "--text-only").status == 0


def test_repository_and_files_stay_as_they_are(tmp_path: Path) -> None:
    project = two_pads(tmp_path)
    put(project, __gitignore="out/\n", moth__pad__yaml=MOTH + "leaves: 25\n", new__txt="untracked")
    git(project, "stash", "-q")
    git(project, "stash", "apply", "-q")
    # The index holds a time that is not that of the file, so that git would write it anew where it may.
    os.utime(project / "owl.pad.yaml", (1_700_000_000, 1_700_000_000))
    before = whole_state(project)
    with patch.dict(os.environ, {"GIT_OPTIONAL_LOCKS": "1"}):
        assert compare(project).status == 1
    assert whole_state(project) == before
    assert (project / "out" / "compare" / "index.html").is_file()


def test_text_only_writes_nothing(tmp_path: Path) -> None:
    project = two_pads(tmp_path)
    put(project, moth__pad__yaml=MOTH + "leaves: 25\n")
    compare(project, "--text-only")
    assert not (project / "out").exists()


def test_page_and_pictures_are_written_where_they_are_wanted(tmp_path: Path) -> None:
    project = two_pads(tmp_path / "shop")
    put(project, moth__pad__yaml=MOTH.replace("Moths", "Moth"))
    done = compare(project, "--out", str(tmp_path / "there"), "--json")
    files = done.json["pads"][0]["pictures"]["files"]
    assert sorted(files) == ["before", "difference", "now"]
    assert {Image.open(project / path).size for path in files.values()} == {(502, 960)}
    assert (tmp_path / "there" / "compare" / "index.html").is_file()
    assert not (project / "out").exists()


def test_a_site_of_the_makers_stays_as_it_is(tmp_path: Path) -> None:
    """Their page names pictures where ours would; neither is touched, there or where ours goes."""
    project = two_pads(tmp_path / "shop")
    put(project, moth__pad__yaml=MOTH.replace("Moths", "Moth"))
    site = {"index.html": b'<img src="faces/owl.png">', "faces/owl.png": b"theirs"}
    for place in ("site", "site/compare"):
        (tmp_path / place / "faces").mkdir(parents=True)
        for name, data in site.items():
            (tmp_path / place / name).write_bytes(data)
        done = compare(project, "--out", str(tmp_path / "site"))
        assert {name: (tmp_path / "site" / name).read_bytes() for name in site} == site
        assert done.status == (1 if place == "site" else 2)
        if place == "site":
            shutil.rmtree(tmp_path / "site" / "compare")
    assert "none that padspec compare wrote" in done.err
    assert {name: (tmp_path / "site/compare" / name).read_bytes() for name in site} == site


def test_a_branch_a_tag_or_commits_back_may_be_named(tmp_path: Path) -> None:
    project = two_pads(tmp_path)
    git(project, "tag", "v1")
    put(project, moth__pad__yaml=MOTH + "leaves: 25\n")
    commit(project, "Fewer leaves")
    assert compare(project, "--text-only").status == 0
    for asked in ("v1", "HEAD~1", "HEAD^"):
        assert compare(project, asked, "--text-only").status == 1


def test_one_design_may_be_meant_with_a_revision_and_without(tmp_path: Path) -> None:
    project = two_pads(tmp_path)
    git(project, "tag", "v1")
    put(project, moth__pad__yaml=MOTH + "leaves: 25\n")
    assert compare(project, "moth.pad.yaml", "--text-only").status == 1
    assert compare(project, "v1", "moth.pad.yaml", "--text-only").status == 1
    assert compare(project, "owl.pad.yaml", "--text-only").status == 0
    assert compare(project, "v1", "owl.pad.yaml", "--text-only").status == 0


def test_a_branch_that_is_called_like_a_folder_is_meant_by_since(tmp_path: Path) -> None:
    project = two_pads(tmp_path)
    git(project, "branch", "notes")
    put(project, notes___a__txt="a", moth__pad__yaml=MOTH + "leaves: 25\n")
    assert compare(project, "notes", "--text-only").refused("no design here")
    assert compare(project, "--since", "notes", "--text-only").status == 1


def test_a_project_may_be_a_folder_of_the_repository_with_a_name_of_any_letters(tmp_path: Path) -> None:
    project = tmp_path / "mein Laden" / "nächtlich"
    project.mkdir(parents=True)
    put(project, collection__yaml=BOTH, moth__pad__yaml=MOTH, owl__pad__yaml=OWL)
    begin(tmp_path)
    put(project, owl__pad__yaml=OWL + "leaves: 25\n")
    assert "OWL, Owl list" in compare(project, "--text-only").out
    assert "Night: 1 of 2" in compare(tmp_path, "HEAD", "mein Laden/nächtlich", "--text-only").out


def test_designs_that_are_new_and_that_have_gone_are_told(tmp_path: Path) -> None:
    project = two_pads(tmp_path)
    bat = OWL.replace("OWL", "BAT").replace("Owl", "Bat")
    put(project, owl__pad__yaml=None, bat__pad__yaml=bat, collection__yaml=BOTH.replace("owl", "bat"))
    done = compare(project, "--text-only")
    assert done.status == 1
    assert "2 of 3" not in done.out
    assert "New:\n- BAT, Bat list\n\nTaken away:\n- OWL, Owl list\n" in done.out


def test_a_design_that_has_gone_can_be_meant_by_its_path(tmp_path: Path) -> None:
    project = begin(tmp_path, moth__pad__yaml=MOTH, owl__pad__yaml=OWL)
    put(project, owl__pad__yaml=None)
    assert compare(project, "HEAD", "owl.pad.yaml", "--text-only").out.startswith("Owl list: taken away")


def test_a_path_that_never_was_is_refused(tmp_path: Path) -> None:
    project = two_pads(tmp_path)
    assert compare(project, "HEAD", "bat.pad.yaml").refused("neither now nor as of HEAD")


def test_what_can_be_no_design_is_refused_in_its_own_words(tmp_path: Path) -> None:
    project = two_pads(tmp_path)
    put(project, market__job__yaml="job: Market\npads: {MOTH: 1}\n", moth__png=disc())
    assert compare(project, "market.job.yaml").refused("This is a job, not a design.")
    assert compare(project, "HEAD", "moth.png").refused("designs are YAML files")


def test_a_file_with_another_name_is_the_same_pad_by_its_sku(tmp_path: Path) -> None:
    project = begin(tmp_path, moth__pad__yaml=MOTH)
    put(project, moth__pad__yaml=None, night___moth__pad__yaml=MOTH)
    put(project, collection__yaml="collection: Night\ndesigns: [night/moth.pad.yaml]\n")
    done = compare(project, "--json", "--text-only").json
    assert [(pad["sku"], pad["state"]) for pad in done["pads"]] == [("MOTH", "changed")]
    assert done["pads"][0]["changes"][0]["sentence"] == "file moth.pad.yaml → night/moth.pad.yaml"


def test_a_pad_with_another_sku_is_told_as_renamed(tmp_path: Path) -> None:
    project = two_pads(tmp_path)
    put(project, moth__pad__yaml=MOTH.replace("sku: MOTH", "sku: NG-MOTH"))
    (pad, _) = compare(project, "--json", "--text-only").json["pads"]
    assert (pad["sku"], pad["old_sku"], pad["state"]) == ("NG-MOTH", "MOTH", "changed")
    assert [change["sentence"] for change in pad["changes"]] == ["SKU MOTH → NG-MOTH"]


def test_variants_are_compared_each_with_its_own(tmp_path: Path) -> None:
    axes = """variants:
  - axis: tint
    values:
      dusk: {palette: {rule: "#405a70"}}
      dawn: {palette: {rule: "#80532f"}}
"""
    project = begin(tmp_path, collection__yaml=BOTH + axes, moth__pad__yaml=MOTH, owl__pad__yaml=OWL)
    put(project, collection__yaml=BOTH + axes.replace("#405a70", "#304a60"))
    done = compare(project, "--json", "--text-only").json
    states = {pad["sku"]: pad["state"] for pad in done["pads"]}
    assert states == {
        "MOTH--dusk": "changed",
        "MOTH--dawn": "same",
        "OWL--dusk": "changed",
        "OWL--dawn": "same",
    }
    assert "In the 2 pads with tint dusk:\n- palette: rule #405a70 → #304a60, ΔE" in done["message"]


def test_a_design_that_cannot_be_read_now_is_trouble(tmp_path: Path) -> None:
    project = two_pads(tmp_path)
    put(project, moth__pad__yaml=MOTH + "rows: {pich: 7 mm}\n", owl__pad__yaml=OWL + "leaves: 25\n")
    done = compare(project, "--text-only")
    assert done.refused("pich", "Did you mean pitch?")
    assert "OWL, Owl list" in done.out


def test_a_design_that_could_not_be_read_before_is_told_and_the_rest_goes_on(tmp_path: Path) -> None:
    project = begin(
        tmp_path, collection__yaml=BOTH, moth__pad__yaml=MOTH + "rows: {pich: 7 mm}\n", owl__pad__yaml=OWL
    )
    put(project, moth__pad__yaml=MOTH, owl__pad__yaml=OWL + "leaves: 25\n")
    done = compare(project, "--text-only")
    assert done.status == 1
    assert "As of HEAD it cannot be read: moth.pad.yaml:5:8" in done.out
    assert "leaves 50 → 25" in done.out


def test_a_collection_that_could_not_be_read_before_is_told(tmp_path: Path) -> None:
    project = begin(
        tmp_path, collection__yaml="collection: Night\ndesgins: []\n", moth__pad__yaml=MOTH, owl__pad__yaml=OWL
    )
    put(project, collection__yaml=BOTH)
    done = compare(project, "--text-only")
    assert done.status == 1
    assert "As of HEAD, collection.yaml:2:1" in done.out
    assert "- MOTH, Moth list" in done.out


def test_a_collection_that_cannot_be_read_now_is_trouble(tmp_path: Path) -> None:
    project = two_pads(tmp_path)
    put(project, collection__yaml="collection: Night\ndesgins: []\n")
    assert compare(project).refused("desgins")


@pytest.mark.parametrize("words", [("nowhere",), ("--since", "nowhere")])
def test_an_unknown_revision_is_trouble_and_nothing_is_written(tmp_path: Path, words: tuple[str, ...]) -> None:
    project = two_pads(tmp_path)
    assert compare(project, *words).refused("nowhere is no commit, branch or tag here")
    assert not (project / "out").exists()


def test_json_tells_trouble_as_json(tmp_path: Path) -> None:
    done = compare(two_pads(tmp_path), "nowhere", "--json")
    assert done.status == 2
    assert done.json["problems"][0]["message"].startswith("nowhere is no commit")


def test_quiet_says_nothing_and_still_tells_by_its_status(tmp_path: Path) -> None:
    project = two_pads(tmp_path)
    put(project, moth__pad__yaml=MOTH + "leaves: 25\n")
    done = compare(project, "--quiet", "--text-only")
    assert (done.status, done.out, done.err) == (1, "", "")


def test_the_same_comparison_writes_the_same_bytes(tmp_path: Path) -> None:
    project = two_pads(tmp_path / "a")
    put(project, moth__pad__yaml=MOTH.replace("Moths", "Moth"))
    written = []
    for name in ("one", "two"):
        compare(project, "--out", str(tmp_path / name))
        written.append({p.name: p.read_bytes() for p in sorted((tmp_path / name).rglob("*")) if p.is_file()})
    assert written[0] == written[1]


def test_a_project_that_was_not_committed_yet_is_all_new(tmp_path: Path) -> None:
    begin(tmp_path, notes__txt="notes")
    put(tmp_path, night___moth__pad__yaml=MOTH)
    done = compare(tmp_path, "HEAD", "night", "--text-only")
    assert done.status == 1
    assert "HEAD has nothing of this project, so everything is new." in done.out


def test_the_pads_before_are_those_that_the_revision_lists(tmp_path: Path) -> None:
    project = two_pads(tmp_path)
    put(project, collection__yaml=BOTH.replace(", owl.pad.yaml", ""))
    assert "Taken away:\n- OWL, Owl list" in compare(project, "--text-only").out


def test_lines_that_git_ends_otherwise_are_no_change(tmp_path: Path) -> None:
    project = two_pads(tmp_path)
    put(project, moth__pad__yaml=MOTH.replace("\n", "\r\n"))
    assert as_of(project).read("moth.pad.yaml") != (project / "moth.pad.yaml").read_bytes()
    assert compare(project, "--text-only").status == 0
