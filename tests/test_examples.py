"""The example collections are what they say: every layout has a design there, and each passes its checks."""

import subprocess
import sys
from pathlib import Path

import pytest

from padspec.base.findings import Severity
from padspec.pipeline import make
from padspec.resources import layout_names
from padspec.stock.append import load
from padspec.stock.on_hand import late_counts, shortfalls
from padspec.stock.selling_days import selling_days
from padspec.workspace import FolderWorkspace

EXAMPLES = Path(__file__).resolve().parent.parent / "examples"
ALMANAC = sorted(path.name for path in (EXAMPLES / "almanac").glob("*.pad.yaml"))


def test_every_layout_has_a_design_in_the_almanac() -> None:
    designs = [(EXAMPLES / "almanac" / name).read_text("utf-8") for name in ALMANAC]
    assert {text.partition("layout: ")[2].split()[0] for text in designs} == set(layout_names())


@pytest.mark.parametrize("name", ALMANAC)
def test_a_design_of_the_almanac_has_nothing_to_look_at(name: str) -> None:
    pad = make(name, FolderWorkspace(EXAMPLES / "almanac"))
    assert [finding for finding in pad.findings if finding.severity >= Severity.WARNING] == []


def test_every_design_of_the_almanac_is_in_its_collection() -> None:
    collection = (EXAMPLES / "almanac" / "collection.yaml").read_text("utf-8")
    assert all(f"- {name}\n" in collection for name in ALMANAC)


def test_the_ledger_of_the_night_garden_sells_only_what_was_there() -> None:
    events = load(FolderWorkspace(EXAMPLES / "night-garden"), "CAD").events
    assert len(selling_days(events)) == 4
    assert [*shortfalls(events), *late_counts(events)] == []


def test_the_pictures_are_those_that_the_script_draws() -> None:
    script = EXAMPLES / "almanac" / "art" / "draw.py"
    ran = subprocess.run([sys.executable, script, "--check"], capture_output=True, text=True, check=False)
    assert ran.returncode == 0, ran.stdout
