"""Which designs a command is about: paths of designs, collections and folders, opened into design files."""

from dataclasses import dataclass
from pathlib import Path

from padspec.base.errors import Problem, ProblemsError
from padspec.base.nearest import did_you_mean
from padspec.base.place import Place
from padspec.reading.gather import STUDIO_FILE, read_file
from padspec.reading.tree import Scalar, Sequence
from padspec.workspace import FolderWorkspace, joined

COLLECTION_FILE = "collection.yaml"
DESIGN_ENDING = ".pad.yaml"


@dataclass(frozen=True, slots=True)
class Target:
    """One design: the project folder it belongs to and its path inside it."""

    root: Path
    path: str


def targets(paths: tuple[str, ...]) -> tuple[Target, ...]:
    """Every design meant, each once, in the order given. Raises ProblemsError for a path that means none."""
    found: dict[Target, None] = {}
    for text in paths or (".",):
        try:
            found.update(dict.fromkeys(_of(Path(text))))
        except (OSError, RuntimeError, ValueError) as error:
            raise ProblemsError(Problem(Place(text, 0, 0), f"This path cannot be used: {why(error)}.")) from None
    return tuple(found)


def why(error: Exception) -> str:
    """What the system has against a path: a name that is too long, a link that leads in a circle."""
    if isinstance(error, OSError):
        return error.strerror or type(error).__name__
    return "it leads in a circle" if isinstance(error, RuntimeError) else "no file can have this name"


def project_root(path: Path) -> Path:
    """The folder of the nearest studio.yaml above a file, else of the nearest collection.yaml, else its own."""
    folder = (path if path.is_dir() else path.parent).resolve()
    for name in (STUDIO_FILE, COLLECTION_FILE):
        for candidate in (folder, *folder.parents):
            if (candidate / name).is_file():
                return candidate
    return folder


def _of(path: Path) -> tuple[Target, ...]:
    if path.is_dir():
        return _in_folder(path)
    if not path.is_file():
        raise _missing(path)
    root = project_root(path)
    # The folder's links are followed, the file's are not: one that leads out of the project is told as such.
    inside = (path.parent.resolve() / path.name).relative_to(root).as_posix()
    if not _is_text(inside):
        shown = inside.encode("utf-8", "replace").decode("utf-8")
        raise ProblemsError(Problem(Place(shown, 0, 0), "Its name holds bytes that are not UTF-8.", "Rename it."))
    if path.name == COLLECTION_FILE or path.name.endswith(".collection.yaml"):
        return _in_collection(root, inside)
    if path.name.endswith((".job.yaml", ".job.yml")):
        mend = f"To plan it: padspec plan {path}; to make its pages: padspec build --plan {path}"
        raise ProblemsError(Problem(Place(str(path), 0, 0), "This is a job, not a design.", mend))
    if path.suffix not in (".yaml", ".yml"):
        mend = f"To begin a design from a picture: padspec new {path}"
        raise ProblemsError(Problem(Place(str(path), 0, 0), "This is not a design: designs are YAML files.", mend))
    return (Target(root, inside),)


def _in_folder(folder: Path) -> tuple[Target, ...]:
    if (folder / COLLECTION_FILE).is_file():
        return _of(folder / COLLECTION_FILE)
    designs = sorted(entry for entry in folder.iterdir() if entry.name.endswith(DESIGN_ENDING))
    if not designs:
        message = f"There is no design here: no {COLLECTION_FILE} and no file that ends in {DESIGN_ENDING}."
        raise ProblemsError(
            Problem(Place(str(folder), 0, 0), message, "Begin one from a picture: padspec new PICTURE")
        )
    return tuple(target for design in designs for target in _of(design))


def _in_collection(root: Path, inside: str) -> tuple[Target, ...]:
    workspace = FolderWorkspace(root)
    document = read_file(inside, "collection", workspace)
    designs = document.root.get("designs")
    found: list[Target] = []
    problems: list[Problem] = []
    for item in designs.items if isinstance(designs, Sequence) else ():
        if not isinstance(item, Scalar):
            continue
        try:
            path = joined(inside, item.text)
        except ValueError:
            problems.append(Problem(item.place, f"{item.text} leads outside the project folder {root}."))
            continue
        if not path.endswith((".yaml", ".yml")):
            mend = f"To make one from a picture: padspec new {item.text}"
            problems.append(Problem(item.place, f"{item.text} is not a design: designs are YAML files.", mend))
        elif not workspace.is_file(path):
            folder = path.rpartition("/")[0] or "."
            near = [name.rpartition("/")[2] for name in workspace.neighbours(folder, DESIGN_ENDING)]
            mend = did_you_mean(item.text.rpartition("/")[2], near) if near else ""
            problems.append(Problem(item.place, f"There is no design {path}.", mend))
        found.append(Target(root, path))
    if problems:
        raise ProblemsError(*problems)
    return tuple(found)


def left_out(paths: tuple[str, ...], found: tuple[Target, ...]) -> tuple[Path, ...]:
    """Designs that lie in a folder that was meant, and that its collection does not list."""
    meant = {target.root / target.path for target in found}
    folders = [Path(text).resolve() for text in paths or (".",) if Path(text).is_dir()]
    designs = (
        entry for folder in folders for entry in sorted(folder.iterdir()) if entry.name.endswith(DESIGN_ENDING)
    )
    return tuple(design for design in designs if design not in meant)


def _is_text(path: str) -> bool:
    return not any("\ud800" <= letter <= "\udfff" for letter in path)


def _missing(path: Path) -> ProblemsError:
    if path.is_symlink():
        message = f"There is no such file: this link leads to {path.readlink()}, and nothing is there."
        mend = "Put the file itself here, or mend the link."
        return ProblemsError(Problem(Place(str(path), 0, 0), message, mend))
    if path.exists():
        return ProblemsError(Problem(Place(str(path), 0, 0), "This is neither a file nor a folder."))
    return ProblemsError(Problem(Place(str(path), 0, 0), "There is no such file or folder.", _likely(path)))


def _likely(path: Path) -> str:
    parent = path.parent
    names = [entry.name for entry in parent.iterdir()] if parent.is_dir() else []
    hint = did_you_mean(path.name, names) if names else ""
    return hint if hint.startswith("Did") else ""
