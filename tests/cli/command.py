"""Running padspec as a maker does: the real entry point, in a folder, with what it said and how it ended."""

import io
import json
import os
import subprocess
import sys
from contextlib import chdir, redirect_stderr, redirect_stdout
from dataclasses import dataclass
from pathlib import Path
from typing import Any
from unittest.mock import patch

from padspec.cli.main import main

PLAIN = "pad: Errands\ntrim: {width: 90 mm, height: 190 mm}\n"
#: Rules that hardly show: one error.
FAULTY = PLAIN + 'rows: {colour: "#eeeeee", checkbox: none}\n'


@dataclass(frozen=True)
class Outcome:
    """Exit status, stdout and stderr."""

    status: int
    out: str
    err: str

    @property
    def json(self) -> Any:
        return json.loads(self.out)

    def refused(self, *said: str) -> bool:
        """Whether the input was refused as it should be: status 2, all of these words, and no fault of its own."""
        told = self.out + self.err
        assert self.status == 2, self
        assert "Traceback" not in told, self
        assert "mistake of its own" not in told, self
        for words in said:
            assert words in told, (words, self)
        return True


def padspec(folder: Path, *args: str) -> Outcome:
    """In this process, through `main`; streams that are not a terminal, as in a pipe."""
    out, err = io.StringIO(), io.StringIO()
    status = 0
    with chdir(folder), patch.object(sys, "argv", ["padspec", *args]), redirect_stdout(out), redirect_stderr(err):
        try:
            main()
        except SystemExit as end:
            status = int(end.code or 0)
    return Outcome(status, out.getvalue(), err.getvalue())


def padspec_process(folder: Path, *args: str, **surroundings: str) -> Outcome:
    """In a process of its own, with some environment variables set."""
    done = subprocess.run(
        [sys.executable, "-c", "from padspec.cli.main import main; main()", *args],
        cwd=folder,
        env=os.environ | surroundings,
        capture_output=True,
        encoding="utf-8",
    )
    return Outcome(done.returncode, done.stdout, done.stderr)


def put(folder: Path, **files: str | bytes) -> Path:
    """Files in a folder, two underscores for a dot and none for a slash: `moth__pad__yaml`."""
    for name, content in files.items():
        path = folder / name.replace("__", ".")
        path.write_bytes(content if isinstance(content, bytes) else content.encode())
    return folder


def written(folder: Path) -> dict[str, bytes]:
    """Every file under a folder, hidden ones included."""
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}
