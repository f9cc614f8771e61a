"""Everything outside the maker's files that decides what is written: versions, padspec's own files, options."""

import platform
import re
import zlib
from functools import lru_cache
from importlib.metadata import PackageNotFoundError, requires, version
from importlib.resources import files
from pathlib import Path

import padspec
from padspec import __version__
from padspec.workspace import content_digest

_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]*")


def circumstances(date: str, options: dict[str, str]) -> dict[str, str]:
    """What must be the same for a build to be the same; `date` is the workspace's, or empty."""
    return {**_versions(), "padspec": __version__, "code": _code_stamp(), "date": date, **options}


def tools() -> dict[str, str]:
    """What must be the same on another machine for it to make the same; its files may have other times there."""
    return {"padspec": __version__, **_versions(), "padspec's own files": _code_digest()}


@lru_cache(maxsize=1)
def _versions() -> dict[str, str]:
    """The versions of Python, of the library that deflates, and of every package that padspec requires."""
    return {
        "python": platform.python_version(),
        "zlib": zlib.ZLIB_RUNTIME_VERSION,
        **{name: _version(name) for name in _required()},
    }


def _required() -> tuple[str, ...]:
    try:
        lines = requires("padspec") or []
    except PackageNotFoundError:  # run from its source: the code stamp still tells of its own changes
        return ()
    names = (_NAME.match(line) for line in lines if "extra ==" not in line)
    return tuple(sorted(name.group() for name in names if name))


def _version(name: str) -> str:
    try:
        return version(name)
    except PackageNotFoundError:
        return ""


@lru_cache(maxsize=1)
def _code_stamp() -> str:
    """Changes when padspec's own files do, so that whoever works on it never looks at an old picture."""
    stamps = []
    for folder, pattern in own_files():
        for path in sorted(folder.rglob(pattern)):
            stat = path.stat()
            stamps.append((path.relative_to(folder).as_posix(), stat.st_size, stat.st_mtime_ns))
    return content_digest(repr(stamps).encode())


@lru_cache(maxsize=1)
def _code_digest() -> str:
    """Over padspec's own files, by name and content."""
    contents = [
        (path.relative_to(folder).as_posix(), content_digest(path.read_bytes()))
        for folder, pattern in own_files()
        for path in sorted(folder.rglob(pattern))
    ]
    return content_digest(repr(contents).encode())[:12]


def own_files() -> tuple[tuple[Path, str], ...]:
    """The folders of padspec's code, schemas and layouts, each with the names that count there."""
    schema = next(entry for entry in files("padspec.schemas").iterdir() if entry.name.endswith(".json"))
    layout = next(entry for entry in files("padspec.layouts").iterdir() if entry.name.endswith(".yaml"))
    return (
        (Path(padspec.__file__).parent, "*.py"),
        (Path(str(schema)).parent, "*.json"),
        (Path(str(layout)).parent, "*.yaml"),
    )
