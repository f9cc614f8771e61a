"""The same work for the press gives the same bytes in another process with other surroundings."""

import hashlib
import os
import subprocess
import sys
from pathlib import Path

from press.made import separator

from padspec.draw.press.pdf import press_pdf
from padspec.draw.press.separations import press_proof_png

from .press_small import with_everything
from .small import sheet_of

TESTS = Path(__file__).parents[1]


def digests() -> list[str]:
    scene = with_everything()
    pdf = press_pdf([(sheet_of(scene), [scene] * 3)], separator(), "Ömkel", "2000-01-01")
    return [hashlib.sha256(data).hexdigest() for data in (pdf, press_proof_png(scene, separator(), 100))]


def test_press_files_are_the_same_under_another_hash_seed_time_zone_and_locale_and_a_second_later():
    surroundings = os.environ | {
        "PYTHONHASHSEED": "4711",
        "TZ": "Pacific/Chatham",
        "LC_ALL": "C",
        "PYTHONPATH": f"{TESTS.parent}{os.pathsep}{TESTS}",
    }
    program = (
        "import time; time.sleep(1.1)  # what hangs on the clock changes with the second\n"
        "from draw.test_press_same_bytes import digests\nprint(*digests())"
    )
    ran = subprocess.run(
        [sys.executable, "-c", program], env=surroundings, capture_output=True, text=True, check=True
    )
    assert ran.stdout.split() == digests()
