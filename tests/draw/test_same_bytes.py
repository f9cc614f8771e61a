"""The same scene gives the same bytes: twice in one process, and in another with other surroundings."""

import hashlib
import os
import subprocess
import sys
from pathlib import Path

import pytest

from padspec.draw.pdf import face_pdf, sheet_pdf
from padspec.draw.png import picture_png, proof_png
from padspec.draw.svg import face_svg

from .small import sheet_of, small_scene, tiles

ROOT = Path(__file__).parents[2]


def drawn() -> dict[str, bytes]:
    """Every kind of file that is drawn, from a scene made afresh."""
    scene = small_scene(5)
    return {
        "svg": face_svg(scene, "Ömkel", lambda image: f"../art/{image.name}.png").encode(),
        "face": face_pdf(scene),
        "sheet": sheet_pdf(scene, sheet_of(scene)),
        "dated": sheet_pdf(scene, sheet_of(scene), date="2020-02-02"),
        "proof": proof_png(face_pdf(scene), 100),
        "picture": picture_png(tiles(5)),
    }


def digests() -> dict[str, str]:
    return {name: hashlib.sha256(data).hexdigest() for name, data in drawn().items()}


@pytest.fixture(scope="module")
def here():
    return digests()


@pytest.fixture(scope="module")
def elsewhere():
    """The digests made by another process, more than a second after those made here."""
    surroundings = os.environ | {
        "PYTHONHASHSEED": "4711",
        "TZ": "Pacific/Chatham",
        "LC_ALL": "C",
        "PYTHONPATH": f"{ROOT}{os.pathsep}{ROOT / 'tests'}",
    }
    program = "\n".join(
        [
            "import time",
            "time.sleep(1.1)  # an identifier made from the clock changes with the second",
            "from draw.test_same_bytes import digests",
            "for name, digest in digests().items(): print(name, digest)",
        ]
    )
    result = subprocess.run(
        [sys.executable, "-c", program], env=surroundings, capture_output=True, text=True, check=True
    )
    return dict(line.split() for line in result.stdout.splitlines())


@pytest.mark.parametrize("name", ["svg", "face", "sheet", "dated", "proof", "picture"])
def test_a_file_is_the_same_when_drawn_again(name):
    assert drawn()[name] == drawn()[name]


@pytest.mark.parametrize("name", ["svg", "face", "sheet", "dated", "proof", "picture"])
def test_a_file_is_the_same_under_another_hash_seed_time_zone_and_locale(here, elsewhere, name):
    assert elsewhere[name] == here[name]
