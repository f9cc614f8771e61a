"""Small git repositories made by the tests, with no settings but their own."""

import os
import subprocess
from pathlib import Path
from unittest.mock import patch

from cli.command import Outcome, padspec

from padspec.cli.main import COMMANDS
from padspec.comparing.git import commit_of, repository_of
from padspec.comparing.revision import RevisionWorkspace

WHO = {
    "GIT_AUTHOR_NAME": "Wren Umber",
    "GIT_AUTHOR_EMAIL": "wren@umberwick.invalid",
    "GIT_COMMITTER_NAME": "Wren Umber",
    "GIT_COMMITTER_EMAIL": "wren@umberwick.invalid",
    "GIT_AUTHOR_DATE": "2025-03-01T12:00:00Z",
    "GIT_COMMITTER_DATE": "2025-03-01T12:00:00Z",
    "GIT_CONFIG_GLOBAL": os.devnull,
    "GIT_CONFIG_NOSYSTEM": "1",
}
MOTH = "pad: Moth list\nsku: MOTH\ntrim: {width: 60 mm, height: 120 mm}\nheading: {text: Moths}\n"
OWL = "pad: Owl list\nsku: OWL\ntrim: {width: 60 mm, height: 120 mm}\nheading: {text: Owls}\n"
BOTH = "collection: Night\ndesigns: [moth.pad.yaml, owl.pad.yaml]\n"


def git(folder: Path, *words: str) -> str:
    ran = subprocess.run(
        ["git", *words], cwd=folder, env={**os.environ, **WHO}, capture_output=True, text=True, check=True
    )
    return ran.stdout


def put(folder: Path, **files: str | bytes | None) -> None:
    """Files by path: `moth__pad__yaml` is moth.pad.yaml, `art___moth__png` art/moth.png; None takes one away."""
    for name, content in files.items():
        path = folder / name.replace("___", "/").replace("__", ".")
        path.parent.mkdir(parents=True, exist_ok=True)
        if content is None:
            path.unlink()
        else:
            path.write_bytes(content if isinstance(content, bytes) else content.encode())


def begin(folder: Path, **files: str | bytes | None) -> Path:
    """A repository with one commit that holds some files."""
    folder.mkdir(parents=True, exist_ok=True)
    git(folder, "init", "-q", "-b", "main")
    put(folder, **files)
    return commit(folder, "First")


def commit(folder: Path, message: str) -> Path:
    git(folder, "add", "-A", "-f")
    git(folder, "commit", "-q", "-m", message)
    return folder


def two_pads(folder: Path) -> Path:
    """A collection of two pads, committed."""
    return begin(folder, collection__yaml=BOTH, moth__pad__yaml=MOTH, owl__pad__yaml=OWL)


def as_of(project: Path, revision: str = "HEAD") -> RevisionWorkspace:
    repository = repository_of(project)
    return RevisionWorkspace(repository, commit_of(repository, revision))


def compare(folder: Path, *words: str) -> Outcome:
    """padspec compare in this process, one design after the other."""
    named = {"compare": ("padspec.cli.compare", "Show what changed.")}
    with patch.dict(COMMANDS, named):
        return padspec(folder, "compare", "--jobs", "1", *words)
