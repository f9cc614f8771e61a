"""A killed process, two at once, another program in between, two branches of git: every entered line is there."""

import os
import signal
import subprocess
import sys
import time
from itertools import pairwise
from pathlib import Path
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.errors import ProblemsError
from padspec.stock.append import enter, load
from padspec.stock.events import LEDGER, Event
from padspec.stock.lock import held
from padspec.stock.on_hand import on_hand
from padspec.workspace import FolderWorkspace

SCRIPT = Path(__file__).with_name("appending.py")


def made(sku: str, pads: int = 1, place: str = "") -> Event:
    return Event("2026-06-06", "made", sku, pads, None, place)


def started(folder: Path, name: str, count: int) -> subprocess.Popen[str]:
    words = [sys.executable, str(SCRIPT), str(folder), name, str(count)]
    return subprocess.Popen(words, stdout=subprocess.PIPE, text=True)


def entered(folder: Path, name: str) -> list[list[int]]:
    """The numbers that stand in the ledger for each half of a process's pairs."""
    events = load(FolderWorkspace(folder), "CAD").events
    return [[int(event.place) for event in events if event.sku == f"{name}-{half}"] for half in "ab"]


def test_every_line_that_was_entered_outlives_a_kill_at_any_moment(tmp_path: Path) -> None:
    random, folder = Random(5), tmp_path
    acknowledged = 0
    for turn in range(12):
        process = started(folder, f"P{turn}", 100_000)
        assert process.stdout is not None
        said = [process.stdout.readline()]
        time.sleep(random.random() * 0.08)
        os.kill(process.pid, signal.SIGKILL)
        said += process.stdout.readlines()
        process.wait()
        known = [int(line) for line in said if line.endswith("\n")]
        first, second = entered(folder, f"P{turn}")
        assert first == second, "half of a pair was entered"
        assert first == list(range(len(first)))
        assert len(first) - len(known) in (0, 1), "a line that was acknowledged is gone"
        acknowledged += len(known)
    assert acknowledged >= 12


def test_two_processes_at_once_lose_nothing(tmp_path: Path) -> None:
    both = [started(tmp_path, name, 60) for name in ("P", "Q")]
    for process in both:
        process.communicate(timeout=60)
        assert process.returncode == 0
    for name in ("P", "Q"):
        assert entered(tmp_path, name) == [list(range(60))] * 2
    skus = [event.sku[0] for event in load(FolderWorkspace(tmp_path), "CAD").events]
    assert sum(one != two for one, two in pairwise(skus)) > 1, "they did not run at once"


class Meddled(FolderWorkspace):
    """A folder in which another program adds a line of its own between reading and writing, a few times."""

    times = 3

    def read(self, path: str) -> bytes:
        data = super().read(path)
        if self.times:
            self.times -= 1
            with (self.root / path).open("ab") as file:
                file.write(b"2026-06-06,made,OTHER,1,,\n")
        return data


def test_a_line_that_another_program_adds_meanwhile_is_kept(tmp_path: Path) -> None:
    enter([made("A")], FolderWorkspace(tmp_path), "CAD")
    enter([made("B")], Meddled(tmp_path), "CAD")
    skus = [event.sku for event in load(FolderWorkspace(tmp_path), "CAD").events]
    assert skus == ["A", "OTHER", "OTHER", "OTHER", "B"]


@settings(max_examples=30, deadline=None)
@given(st.lists(st.lists(st.text("ABC", min_size=1, max_size=2), min_size=1, max_size=3), min_size=1, max_size=4))
def test_entering_never_alters_earlier_bytes(tmp_path_factory, turns) -> None:  # type: ignore[no-untyped-def]
    folder = tmp_path_factory.mktemp("ledger")
    old = "\ufeffdate;event;sku;pads;each;place\r\n2026-06-06;made;Z;01;;odd  \r\n".encode()
    (folder / LEDGER).write_bytes(old)
    for skus in turns:
        enter([made(sku) for sku in skus], FolderWorkspace(folder), "CAD")
        new = (folder / LEDGER).read_bytes()
        assert new.startswith(old)
        assert new[len(old) :].count(b"\n") == len(skus)
        old = new


@pytest.mark.parametrize("tail", [b"2026-06-06,made,A,1", b"2026-06-06,made,A,1,,", b"x"])
def test_nothing_is_glued_to_a_torn_line(tmp_path: Path, tail: bytes) -> None:
    enter([made("A")], FolderWorkspace(tmp_path), "CAD")
    with (tmp_path / LEDGER).open("ab") as file:
        file.write(tail)
    before = (tmp_path / LEDGER).read_bytes()
    with pytest.raises(ProblemsError, match="has no end"):
        enter([made("B")], FolderWorkspace(tmp_path), "CAD")
    assert (tmp_path / LEDGER).read_bytes() == before


def test_all_are_entered_or_none(tmp_path: Path) -> None:
    workspace = FolderWorkspace(tmp_path)
    enter([made("A", 5)], workspace, "CAD")
    before = (tmp_path / LEDGER).read_bytes()
    sales = [Event("2026-06-06", "sold", sku, 2) for sku in ("A", "B")]
    with pytest.raises(ProblemsError, match="B: 0 on hand, 2 to be sold, 2 short"):
        enter(sales, workspace, "CAD")
    assert (tmp_path / LEDGER).read_bytes() == before


def test_rights_and_links_stay(tmp_path: Path) -> None:
    real = tmp_path / "kept" / "ledger.csv"
    real.parent.mkdir()
    real.write_bytes(b"")
    real.chmod(0o600)
    (tmp_path / LEDGER).symlink_to(real)
    enter([made("A")], FolderWorkspace(tmp_path), "CAD")
    assert (tmp_path / LEDGER).is_symlink()
    assert (real.stat().st_mode & 0o777, real.read_bytes().count(b"\n")) == (0o600, 2)


def test_a_ledger_that_is_held_too_long_is_told(tmp_path: Path) -> None:
    told = pytest.raises(ProblemsError, match=r"held the ledger for 0\.1 seconds")
    with held(tmp_path), told, held(tmp_path, 0.1):
        pass


def git(folder: Path, *words: str) -> subprocess.CompletedProcess[str]:
    who = ["-c", "user.name=Nobody", "-c", "user.email=nobody@example.invalid"]
    return subprocess.run(["git", *who, *words], cwd=folder, capture_output=True, text=True, check=False)


def branched(folder: Path, first: list[Event], here: list[Event], there: list[Event], union: bool = True) -> int:
    """Two branches that each enter something after what both have, merged; the exit status of git."""
    workspace = FolderWorkspace(folder)
    git(folder, "init", "-q", "-b", "main")
    (folder / ".gitattributes").write_text("stock.csv merge=union\n" if union else "")
    if first:
        enter(first, workspace, "CAD")
    git(folder, "add", ".")
    git(folder, "commit", "-qm", "first")
    git(folder, "branch", "other")
    for events, name in ((here, "here"), (there, "there")):
        enter(events, workspace, "CAD")
        git(folder, "add", ".")
        git(folder, "commit", "-qm", name)
        git(folder, "checkout", "-q", "other")
    return git(folder, "merge", "main", "-m", "both").returncode


def sold(pads: int, place: str) -> Event:
    return Event("2026-06-06", "sold", "A", pads, None, place)


def test_a_ledger_that_two_branches_began_is_one_ledger(tmp_path: Path) -> None:
    assert branched(tmp_path, [], [made("A", 9)], [made("B", 8)]) == 0
    assert {event.sku for event in load(FolderWorkspace(tmp_path), "CAD").events} == {"A", "B"}


def test_git_takes_the_same_line_of_two_branches_for_one_and_another_place_keeps_both(tmp_path: Path) -> None:
    """What the README warns of, and its mend."""
    for name, places, left in (("same", ("fair", "fair"), 8), ("other", ("fair", "fair, second day"), 7)):
        folder = tmp_path / name
        folder.mkdir()
        assert branched(folder, [made("A", 9)], [sold(1, places[0])], [sold(1, places[1])]) == 0
        assert on_hand(load(FolderWorkspace(folder), "CAD").events) == {"A": left}


@pytest.mark.parametrize("union", [True, False])
def test_lines_of_two_branches_are_both_kept(tmp_path: Path, union: bool) -> None:
    """With the line of the README git keeps both; without it the marks it leaves are told."""
    merged = branched(tmp_path, [made("A", 9)], [sold(2, "here")], [sold(3, "there"), made("B")], union)
    workspace = FolderWorkspace(tmp_path)
    if union:
        assert merged == 0
        events = load(workspace, "CAD").events
        assert sorted((event.sku, event.pads) for event in events) == [("A", 2), ("A", 3), ("A", 9), ("B", 1)]
    else:
        with pytest.raises(ProblemsError, match="A merge left its mark here"):
            load(workspace, "CAD")
