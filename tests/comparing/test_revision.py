"""Files as of a commit: read through git, and nothing of the repository touched."""

import hashlib
import os
from pathlib import Path
from unittest.mock import patch

import pytest

from padspec.base.errors import ProblemsError
from padspec.comparing import git as asking
from padspec.comparing import revision
from padspec.comparing.git import commit_of, repository_of
from padspec.workspace import content_digest

from .repository import MOTH, OWL, as_of, begin, commit, git, put, two_pads


def refused(project: Path, asked: str = "HEAD") -> str:
    with pytest.raises(ProblemsError) as caught:
        commit_of(repository_of(project), asked)
    return str(caught.value)


def test_a_file_is_read_as_it_was_committed_and_not_as_it_is(tmp_path: Path) -> None:
    project = begin(tmp_path, moth__pad__yaml=MOTH)
    put(project, moth__pad__yaml=OWL)
    assert as_of(project).read("moth.pad.yaml") == MOTH.encode()


def test_bytes_come_back_as_they_are_whatever_they_hold(tmp_path: Path) -> None:
    content = bytes(range(256)) * 3 + b"\r\n\n"
    project = begin(tmp_path, art___moth__png=content)
    assert as_of(project).read("art/moth.png") == content


def test_what_was_read_is_remembered_as_any_workspace_does(tmp_path: Path) -> None:
    workspace = as_of(begin(tmp_path, moth__pad__yaml=MOTH))
    workspace.read("moth.pad.yaml")
    assert not workspace.is_file("studio.yaml")
    assert workspace.seen == {"moth.pad.yaml": content_digest(MOTH.encode()), "studio.yaml": ""}


def test_paths_start_at_the_project_where_it_is_a_folder_of_the_repository(tmp_path: Path) -> None:
    begin(tmp_path, shop___night___moth__pad__yaml=MOTH, moth__pad__yaml=OWL)
    assert as_of(tmp_path / "shop" / "night").read("moth.pad.yaml") == MOTH.encode()


def test_a_folder_with_a_name_that_begins_alike_is_another(tmp_path: Path) -> None:
    begin(tmp_path, night___a__yaml="a", nightly___b__yaml="b")
    assert as_of(tmp_path / "night").neighbours(".", "") == ("a.yaml",)


def test_spaces_and_letters_of_any_script_may_stand_in_paths(tmp_path: Path) -> None:
    name = "nächtliche Liste – 夜.pad.yaml"
    (tmp_path / "mein Laden é").mkdir()
    (tmp_path / "mein Laden é" / name).write_text(MOTH, "utf-8")
    begin(tmp_path)
    workspace = as_of(tmp_path / "mein Laden é")
    assert workspace.neighbours(".", ".pad.yaml") == (name,)
    assert workspace.read(name) == MOTH.encode()


def test_neighbours_are_the_files_of_one_folder_only(tmp_path: Path) -> None:
    workspace = as_of(begin(tmp_path, art___b__png="b", art___a__png="a", art___old___c__png="c", d__png="d"))
    assert workspace.neighbours("art", ".png") == ("art/a.png", "art/b.png")
    assert workspace.neighbours(".", ".png") == ("d.png",)
    assert workspace.neighbours("nowhere", "") == ()


@pytest.mark.parametrize("link", ["moth.png", "../art/moth.png", "./again.png"])
def test_links_are_followed_inside_the_project(tmp_path: Path, link: str) -> None:
    put(tmp_path, art___moth__png="pixels")
    (tmp_path / "art" / "again.png").symlink_to("moth.png")
    (tmp_path / "art" / "it.png").symlink_to(link)
    assert as_of(begin(tmp_path)).read("art/it.png") == b"pixels"


def test_a_folder_that_is_a_link_is_followed_too(tmp_path: Path) -> None:
    put(tmp_path, pictures___moth__png="pixels")
    (tmp_path / "art").symlink_to("pictures")
    workspace = as_of(begin(tmp_path))
    assert workspace.read("art/moth.png") == b"pixels"
    assert workspace.neighbours("art", ".png") == ("art/moth.png",)


@pytest.mark.parametrize("link", ["../secret.txt", "/etc/hostname"])
def test_a_link_out_of_the_project_is_refused(tmp_path: Path, link: str) -> None:
    put(tmp_path, secret__txt="secret", shop___moth__pad__yaml=MOTH)
    (tmp_path / "shop" / "it.txt").symlink_to(link)
    begin(tmp_path)
    with pytest.raises(ProblemsError, match="project folder"):
        as_of(tmp_path / "shop").read("it.txt")


def test_links_in_a_circle_are_told(tmp_path: Path) -> None:
    (tmp_path / "a.png").symlink_to("b.png")
    (tmp_path / "b.png").symlink_to("a.png")
    with pytest.raises(ProblemsError, match="circle"):
        as_of(begin(tmp_path)).read("a.png")


def test_a_file_in_a_submodule_is_told_as_such(tmp_path: Path) -> None:
    other = begin(tmp_path / "other", moth__png="pixels")
    project = begin(tmp_path / "shop", moth__pad__yaml=MOTH)
    git(project, "-c", "protocol.file.allow=always", "submodule", "add", "-q", str(other), "art")
    commit(project, "Pictures")
    with pytest.raises(ProblemsError, match=r"art is a repository of its own \(a submodule\)"):
        as_of(project).read("art/moth.png")


def test_a_file_over_the_size_that_is_read_is_refused_before_it_is_read(tmp_path: Path) -> None:
    project = begin(tmp_path, art___moth__png=b"x" * 3_000_000)
    with (
        patch.object(revision, "MOST_BYTES", 2 * 2**20),
        pytest.raises(ProblemsError, match="3 MiB; at most 2 MiB"),
    ):
        as_of(project).read("art/moth.png")


def pointer(content: bytes) -> bytes:
    """Version 1 of the pointer format of large-file storage: three lines, the keys in this order."""
    digest = hashlib.sha256(content).hexdigest()
    return f"version https://git-lfs.github.com/spec/v1\noid sha256:{digest}\nsize {len(content)}\n".encode()


def test_a_pointer_to_a_large_file_is_told_as_one(tmp_path: Path) -> None:
    project = begin(tmp_path, art___moth__png=pointer(b"x" * 1_500_000))
    with pytest.raises(ProblemsError, match=r"only a pointer .* 1\.4 MiB in large-file storage"):
        as_of(project).read("art/moth.png")


def test_a_large_file_that_is_in_the_store_beside_the_repository_is_read_from_there(tmp_path: Path) -> None:
    content = b"the pixels"
    project = begin(tmp_path, art___moth__png=pointer(content))
    digest = hashlib.sha256(content).hexdigest()
    kept = project / ".git" / "lfs" / "objects" / digest[:2] / digest[2:4] / digest
    kept.parent.mkdir(parents=True)
    kept.write_bytes(content)
    assert as_of(project).read("art/moth.png") == content


def test_a_file_in_that_store_that_is_not_what_it_is_named_by_is_not_taken(tmp_path: Path) -> None:
    project = begin(tmp_path, art___moth__png=pointer(b"the pixels"))
    digest = hashlib.sha256(b"the pixels").hexdigest()
    kept = project / ".git" / "lfs" / "objects" / digest[:2] / digest[2:4] / digest
    kept.parent.mkdir(parents=True)
    kept.write_bytes(b"other ones")
    with pytest.raises(ProblemsError, match="only a pointer"):
        as_of(project).read("art/moth.png")


def test_a_clone_that_holds_only_names_of_files_is_told(tmp_path: Path) -> None:
    project = begin(tmp_path, art___moth__png="pixels")
    digest = git(project, "rev-parse", "HEAD:art/moth.png").strip()
    (project / ".git" / "objects" / digest[:2] / digest[2:]).unlink()
    with pytest.raises(ProblemsError, match="does not hold the file as of HEAD"):
        as_of(project).read("art/moth.png")


def test_nothing_is_written_to_a_revision(tmp_path: Path) -> None:
    workspace = as_of(begin(tmp_path, a__txt="a"))
    for forbidden in (
        lambda: workspace.write("a.txt", b""),
        lambda: workspace.remove("a.txt"),
        lambda: workspace.set_aside("a.txt", "b.txt"),
    ):
        with pytest.raises(ProblemsError, match="committed"):
            forbidden()


def test_a_folder_in_no_repository_is_told_with_what_to_do(tmp_path: Path) -> None:
    with patch.dict(os.environ, {"GIT_CEILING_DIRECTORIES": str(tmp_path.parent)}):
        assert "in no git repository" in refused(tmp_path)
        assert "git init" in refused(tmp_path)


def test_a_repository_of_another_user_is_told_with_how_to_trust_it(tmp_path: Path) -> None:
    begin(tmp_path, a__txt="a")
    with patch.dict(os.environ, {"GIT_TEST_ASSUME_DIFFERENT_OWNER": "1"}):
        assert "belongs to another user" in refused(tmp_path)
        assert "safe.directory" in refused(tmp_path)


def test_a_repository_without_a_commit_is_told(tmp_path: Path) -> None:
    git(tmp_path, "init", "-q")
    assert "Nothing has been committed here yet" in refused(tmp_path)


@pytest.mark.parametrize(("asked", "near"), [("mian", "main"), ("summer-fiar", "summer-fair"), ("HAED", "")])
def test_an_unknown_revision_is_told_with_the_nearest_branch_or_tag(tmp_path: Path, asked: str, near: str) -> None:
    begin(tmp_path, a__txt="a")
    git(tmp_path, "tag", "summer-fair")
    told = refused(tmp_path, asked)
    assert f"{asked} is no commit, branch or tag here." in told
    assert (f"Did you mean {near}?" if near else "Known here: HEAD, main, summer-fair") in told


@pytest.mark.parametrize("asked", ["--help", "-1", "HEAD:a.txt", "main..HEAD", "", "HEAD^{tree}"])
def test_what_is_no_commit_is_refused_and_never_taken_for_an_option(tmp_path: Path, asked: str) -> None:
    begin(tmp_path, a__txt="a")
    assert "is no commit, branch or tag here" in refused(tmp_path, asked)


def test_a_shallow_clone_is_told_with_how_to_deepen_it(tmp_path: Path) -> None:
    first = begin(tmp_path / "first", a__txt="a")
    put(first, a__txt="b")
    commit(first, "Second")
    git(tmp_path, "clone", "-q", "--depth", "1", first.as_uri(), "clone")
    told = refused(tmp_path / "clone", "HEAD~1")
    assert "shallow: it has only its last commit" in told
    assert "git fetch --unshallow" in told


def test_a_machine_without_git_is_told(tmp_path: Path) -> None:
    with patch.dict(os.environ, {"PATH": str(tmp_path)}):
        assert "no git on this machine" in refused(tmp_path)


def test_a_hook_that_names_its_own_repository_does_not_lead_astray(tmp_path: Path) -> None:
    begin(tmp_path / "other", a__txt="other")
    project = begin(tmp_path / "shop", night___a__txt="here") / "night"
    with patch.dict(os.environ, {"GIT_DIR": str(tmp_path / "other" / ".git"), "GIT_INDEX_FILE": "nowhere"}):
        assert as_of(project).read("a.txt") == b"here"


def test_a_tag_and_a_short_hash_mean_their_commits(tmp_path: Path) -> None:
    project = two_pads(tmp_path)
    git(project, "tag", "-a", "v1", "-m", "The first")
    repository = repository_of(project)
    whole = git(project, "rev-parse", "HEAD").strip()
    for asked in ("v1", whole[:8], "HEAD", "main"):
        assert commit_of(repository, asked).digest == whole
    assert commit_of(repository, "v1").subject == "First"


def test_git_is_asked_only_what_reads_objects(tmp_path: Path) -> None:
    asked: list[str] = []

    def listening(folder: Path, *words: str) -> asking.Answer:
        asked.append(words[0])
        return ask(folder, *words)

    ask = asking.ask
    project = two_pads(tmp_path)
    with patch.object(asking, "ask", listening), patch.object(revision, "ask", listening):
        as_of(project).read("moth.pad.yaml")
        refused(project, "nothing")
    assert set(asked) <= {"rev-parse", "log", "ls-tree", "cat-file", "for-each-ref", "rev-list"}
    assert "ls-tree" in asked
