"""Which designs a command is about: paths of designs, collections and folders, opened into design files."""

from dataclasses import dataclass
from pathlib import Path

from padspec.base.errors import Problem, ProblemsError
from padspec.base.nearest import did_you_mean
from padspec.base.place import Place
from padspec.collection.collection_file import (
    COLLECTION_ENDING,
    COLLECTION_FILE,
    DESIGN_ENDING,
    Collection,
    read_collection,
)
from padspec.collection.variants import Member
from padspec.reading.gather import STUDIO_FILE
from padspec.reading.variation import PLAIN, Variation
from padspec.workspace import FolderWorkspace, Workspace


@dataclass(frozen=True, slots=True)
class Target:
    """One pad: the project folder that its design belongs to, the design's path inside it, and what is varied."""

    root: Path
    path: str
    variation: Variation = PLAIN

    @property
    def key(self) -> tuple[str, str, str, tuple[tuple[str, str], ...]]:
        """What tells it from every other: quick to compare, as the settings behind it are not.

        Two collections may call different settings alike, so that the file is part of it.
        """
        return str(self.root), self.path, self.variation.file, self.variation.values

    @property
    def told(self) -> str:
        """The file that makes it what it is, for messages: the collection's of a variant, else the design's."""
        return self.variation.file or self.path


@dataclass(frozen=True, slots=True)
class Meant:
    """What a command is about: every pad, and the collections that were opened for them, each with its root."""

    targets: tuple[Target, ...]
    collections: tuple[tuple[Path, Collection], ...]


def targets(paths: tuple[str, ...]) -> tuple[Target, ...]:
    """Every pad meant, each once, in the order given. Raises ProblemsError for a path that means none."""
    return meant(paths).targets


def meant(paths: tuple[str, ...]) -> Meant:
    """Every pad meant, each once, in the order given, with their collections; raises ProblemsError as targets."""
    found: dict[object, Target] = {}
    collections: dict[tuple[Path, str], Collection] = {}
    for text in paths or (".",):
        try:
            some, collection = _of(Path(text))
        except (OSError, RuntimeError, ValueError) as error:
            raise ProblemsError(Problem(Place(text, 0, 0), f"This path cannot be used: {why(error)}.")) from None
        for target in some:
            found.setdefault(target.key, target)
        if collection is not None:
            collections[some[0].root, collection.file] = collection
    opened = tuple((root, collection) for (root, _), collection in collections.items())
    return Meant(tuple(found.values()), opened)


def members_in(path: str, workspace: Workspace) -> tuple[Member, ...]:
    """The pads that a design or a collection file stands for, in any workspace; raises ProblemsError."""
    if is_collection(path):
        return read_collection(path, workspace).members
    return (Member(path, PLAIN),)


def is_collection(path: str) -> bool:
    """Whether a path is that of a collection file, by its name."""
    return path.rpartition("/")[2] == COLLECTION_FILE or path.endswith(COLLECTION_ENDING)


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


_Found = tuple[tuple[Target, ...], Collection | None]


def _of(path: Path) -> _Found:
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
    if is_collection(inside):
        collection = read_collection(inside, FolderWorkspace(root))
        return tuple(Target(root, member.path, member.variation) for member in collection.members), collection
    if path.name.endswith((".job.yaml", ".job.yml")):
        mend = f"To plan it: padspec plan {path}; to make its pages: padspec build --plan {path}"
        raise ProblemsError(Problem(Place(str(path), 0, 0), "This is a job, not a design.", mend))
    if path.suffix not in (".yaml", ".yml"):
        mend = f"To begin a design from a picture: padspec new {path}"
        raise ProblemsError(Problem(Place(str(path), 0, 0), "This is not a design: designs are YAML files.", mend))
    return (Target(root, inside),), None


def _in_folder(folder: Path) -> _Found:
    if (folder / COLLECTION_FILE).is_file():
        return _of(folder / COLLECTION_FILE)
    designs = sorted(entry for entry in folder.iterdir() if entry.name.endswith(DESIGN_ENDING))
    if not designs:
        message = f"There is no design here: no {COLLECTION_FILE} and no file that ends in {DESIGN_ENDING}."
        raise ProblemsError(
            Problem(Place(str(folder), 0, 0), message, "Begin one from a picture: padspec new PICTURE")
        )
    return tuple(target for design in designs for target in _of(design)[0]), None


def left_out(paths: tuple[str, ...], found: tuple[Target, ...]) -> tuple[Path, ...]:
    """Designs that lie in a folder that was meant, and that its collection does not list."""
    listed = {target.root / target.path for target in found}
    folders = [Path(text).resolve() for text in paths or (".",) if Path(text).is_dir()]
    designs = (
        entry for folder in folders for entry in sorted(folder.iterdir()) if entry.name.endswith(DESIGN_ENDING)
    )
    return tuple(design for design in designs if design not in listed)


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
