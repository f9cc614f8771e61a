"""The most memory that a run of padspec takes, as the run itself reads it: what a parent is told of a child counts
the parent's own memory too, until the child becomes another program.
"""

import subprocess
import sys
import time
from pathlib import Path

_PROGRAM = """
import atexit
def keep():
    lines = open("/proc/self/status").read().splitlines()
    open("peak", "w").write(next(line.split()[1] for line in lines if line.startswith("VmHWM")))
atexit.register(keep)
from padspec.cli.main import main
main()
"""


def timed_with_peak(folder: Path, *words: str) -> tuple[float, float, int, str]:
    """Seconds, peak memory in MB, exit status and what was said, of one command in a folder (Linux)."""
    start = time.perf_counter()
    done = subprocess.run([sys.executable, "-c", _PROGRAM, *words], cwd=folder, capture_output=True, check=False)
    seconds = time.perf_counter() - start
    memory = int((folder / "peak").read_text()) / 1000
    return seconds, memory, done.returncode, (done.stdout + done.stderr).decode("utf-8", "replace")
