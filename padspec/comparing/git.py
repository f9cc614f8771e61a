"""Asking git, and never telling it anything: no index, branch or file is written, and no shell is used.

Only what reads objects is called. Nothing that the repository's settings name (hooks, filters, monitors) is run,
no lock is taken, and nothing is fetched over the network.
"""

import os
import subprocess
from dataclasses import dataclass
from pathlib import Path

from padspec.base.errors import Problem, ProblemsError
from padspec.base.nearest import nearest
from padspec.base.place import Place

#: What a hook that runs padspec has set for git itself, relative to a folder that is not ours.
_OF_HOOKS = ("GIT_DIR", "GIT_WORK_TREE", "GIT_INDEX_FILE", "GIT_PREFIX")
_QUIETLY = {
    "GIT_OPTIONAL_LOCKS": "0",
    "GIT_NO_LAZY_FETCH": "1",
    "GIT_TERMINAL_PROMPT": "0",
    "LC_ALL": "C",
}
_MOST_NAMES = 2000


@dataclass(frozen=True, slots=True)
class Repository:
    """The repository around a project: `prefix` is the way from its top to the project, with a slash at its end or
    empty; `store` is the folder where git keeps its own.
    """

    project: Path
    prefix: str
    store: Path


@dataclass(frozen=True, slots=True)
class Commit:
    """A commit: the name it was asked for by, its whole and its short hash, and the first line of its message."""

    asked: str
    digest: str
    short: str
    subject: str


@dataclass(frozen=True, slots=True)
class Answer:
    """What git answered: whether it did what was asked, and its output."""

    done: bool
    out: bytes
    trouble: str

    @property
    def text(self) -> str:
        """The output as text, without the line feed at its end."""
        return os.fsdecode(self.out).removesuffix("\n")


def ask(folder: Path, *words: str) -> Answer:
    """Run one git command in a folder. Raises ProblemsError where there is no git."""
    surroundings = {name: value for name, value in os.environ.items() if name not in _OF_HOOKS}
    try:
        ran = subprocess.run(
            ["git", "--no-pager", "-c", "core.fsmonitor=false", *words],
            cwd=folder,
            env={**surroundings, **_QUIETLY},
            stdin=subprocess.DEVNULL,
            capture_output=True,
            check=False,
        )
    except FileNotFoundError:
        message = "To compare, padspec asks git what the files were, and there is no git on this machine."
        raise _problem(folder, message, "Install git, then try again.") from None
    except OSError as error:
        raise _problem(folder, f"git cannot be run: {error.strerror}.") from None
    return Answer(ran.returncode == 0, ran.stdout, ran.stderr.decode("utf-8", "replace").strip())


def repository_of(project: Path) -> Repository:
    """The repository that a project folder lies in; raises ProblemsError where there is none that can be used."""
    prefix = ask(project, "rev-parse", "--show-prefix")
    if not prefix.done:
        if "not a git repository" in prefix.trouble:
            message = "This folder is in no git repository, so there is nothing to compare it with."
            mend = "Begin one here: git init, git add . and git commit -m First."
            raise _problem(project, message, mend)
        if "dubious ownership" in prefix.trouble:
            message = "This repository belongs to another user of this machine, so git does not look into it."
            mend = "If you trust it: git config --global --add safe.directory and its folder."
            raise _problem(project, message, mend)
        raise _problem(project, f"git says: {prefix.trouble.removeprefix('fatal: ')[:200]}")
    store = ask(project, "rev-parse", "--git-common-dir")
    return Repository(project, prefix.text, (project / store.text).resolve())


def commit_of(repository: Repository, revision: str) -> Commit:
    """The commit that a revision means; raises ProblemsError where it means none, with the nearest name."""
    asked = ask(
        repository.project, "rev-parse", "--verify", "--quiet", "--end-of-options", f"{revision}^{{commit}}"
    )
    if not asked.done:
        raise _unknown(repository, revision)
    told = ask(repository.project, "log", "-1", "--no-show-signature", "--format=%h%n%s", asked.text)
    short, _, subject = told.text.partition("\n")
    return Commit(revision, asked.text, short or asked.text[:9], subject)


def _unknown(repository: Repository, revision: str) -> ProblemsError:
    folder = repository.project
    if not ask(folder, "rev-parse", "--verify", "--quiet", "HEAD").done and revision.startswith("HEAD"):
        message = "Nothing has been committed here yet, so there is nothing to compare with."
        return _problem(folder, message, "Commit once: git add . and git commit -m First.")
    message = f"{revision} is no commit, branch or tag here."
    if ask(folder, "rev-parse", "--is-shallow-repository").text == "true":
        depth = len(ask(folder, "rev-list", "--max-count=1000", "HEAD").text.splitlines())
        these = "only its last commit" if depth == 1 else f"only its last {depth} commits"
        return _problem(folder, f"{message} This clone is shallow: it has {these}.", "git fetch --unshallow")
    names = _names(folder)
    near = nearest(revision, names)
    if near:
        return _problem(folder, message, f"Did you mean {near}?")
    return _problem(folder, message, f"Known here: {', '.join(['HEAD', *names[:8]])}, and any commit by its hash.")


def _names(folder: Path) -> list[str]:
    """Branches and tags by the names that a maker uses for them."""
    told = ask(
        folder, "for-each-ref", f"--count={_MOST_NAMES}", "--format=%(refname:short)", "refs/heads", "refs/tags"
    )
    remote = ask(folder, "for-each-ref", f"--count={_MOST_NAMES}", "--format=%(refname:short)", "refs/remotes")
    return list(dict.fromkeys([*told.text.splitlines(), *remote.text.splitlines()]))


def _problem(folder: Path, message: str, mend: str = "") -> ProblemsError:
    return ProblemsError(Problem(Place(str(folder), 0, 0), message, mend))
