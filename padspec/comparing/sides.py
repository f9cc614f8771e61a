"""Which pads there are on either side, before and now, and which of them belong together."""

from collections.abc import Iterable, Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place
from padspec.collection.collection_file import COLLECTION_FILE, DESIGN_ENDING, read_collection
from padspec.collection.targets import is_collection, members_in, project_root, targets, why
from padspec.collection.variants import Member
from padspec.reading.parsing.yaml_reader import decode, parse_leniently
from padspec.resolve.naming import sku_from
from padspec.workspace import FolderWorkspace, Workspace


@dataclass(frozen=True, slots=True)
class Source:
    """What a path on the command line means: a project and a file or folder in it, empty for the whole."""

    root: Path
    inside: str


@dataclass(frozen=True, slots=True)
class Coded:
    """One pad of one side with its SKU and name, which are guesses where its file cannot be read; `own_sku` is
    that of its design without the variant.
    """

    member: Member
    sku: str
    name: str
    own_sku: str


@dataclass(frozen=True, slots=True)
class Pair:
    """A pad before and now; None on the side where there is none."""

    before: Coded | None
    now: Coded | None


def source_of(text: str) -> Source:
    """What a path means, whether or not it is still there. Raises ProblemsError for what can be no design."""
    path = Path(text)
    try:
        if path.is_file() and not is_collection(path.name):
            targets((text,))  # which refuses jobs, pictures and the like in their own words
        if path.is_dir():
            root = project_root(path)
            inside = path.resolve().relative_to(root).as_posix()
            return Source(root, "" if inside == "." else inside)
        root = project_root(_nearest_folder(path))
        inside = (path.parent.resolve() / path.name).relative_to(root).as_posix()
    except (OSError, RuntimeError, ValueError) as error:
        message = f"This path cannot be used: {why(error)}."
        raise ProblemsError(Problem(Place(text, 0, 0), message)) from None
    return Source(root, inside)


def _nearest_folder(path: Path) -> Path:
    """The folder of a path, or the nearest one above that is there."""
    return next((folder for folder in path.resolve().parents if folder.is_dir()), path.parent)


def members_of(source: Source, workspace: Workspace) -> tuple[Member, ...]:
    """Every pad that a source means on one side; none where it is not there. Raises ProblemsError."""
    file = _collection_file(source, workspace)
    if file:
        return members_in(file, workspace)
    if source.inside.endswith((".yaml", ".yml")):
        return members_in(source.inside, workspace) if workspace.is_file(source.inside) else ()
    designs = workspace.neighbours(source.inside or ".", DESIGN_ENDING)
    return tuple(member for design in designs for member in members_in(design, workspace))


def _collection_file(source: Source, workspace: Workspace) -> str:
    """The collection file that a source means, or an empty text."""
    listed = source.inside if source.inside.endswith((".yaml", ".yml")) else ""
    file = listed or str(PurePosixPath(source.inside) / COLLECTION_FILE)
    return file if is_collection(file) and workspace.is_file(file) else ""


def title_of(sources: Sequence[Source]) -> str:
    """What is compared, by its name: the collection's, else its folder's."""
    for source in sources:
        workspace = FolderWorkspace(source.root)
        with suppress(ProblemsError):
            file = _collection_file(source, workspace)
            if file:
                return read_collection(file, workspace).name
    first = sources[0]
    return (first.root / first.inside).name or "This folder"


def coded(members: Iterable[Member], workspace: Workspace) -> tuple[Coded, ...]:
    """Members with their SKUs, each once; a design that cannot be read is coded by its file."""
    own: dict[str, tuple[str, str]] = {}
    found: dict[object, Coded] = {}
    for member in members:
        if member.path not in own:
            own[member.path] = _own(member.path, workspace)
        key = member.path, member.variation.values
        sku, name = own[member.path]
        found.setdefault(key, Coded(member, member.variation.sku_of(sku), member.variation.name_of(name), sku))
    return tuple(found.values())


def _own(path: str, workspace: Workspace) -> tuple[str, str]:
    """The SKU and the name that a design gives itself."""
    sku = name = ""
    with suppress(ProblemsError):
        tree, _ = parse_leniently(decode(workspace.read(path), path), path)
        sku, name = (tree.text("sku"), tree.text("pad")) if tree else ("", "")
    return sku_from(sku, path), name or path.rpartition("/")[2]


def paired(before: Sequence[Coded], now: Sequence[Coded]) -> tuple[Pair, ...]:
    """Pads that belong together: by SKU, else by file and variant; in the order of now, what has gone last."""
    free = dict(enumerate(before))
    partner: dict[int, int] = {}
    for same in (_both, _by_sku, _by_file):
        by_key: dict[object, int] = {}
        for place, one in free.items():
            by_key.setdefault(same(one), place)
        for index, one in enumerate(now):
            found = None if index in partner else by_key.pop(same(one), None)
            if found is not None:
                partner[index] = found
                del free[found]
    old = {index: before[place] for index, place in partner.items()}
    together = (Pair(old.get(index), one) for index, one in enumerate(now))
    return (*together, *(Pair(one, None) for one in free.values()))


def _both(one: Coded) -> object:
    return _by_sku(one), _by_file(one)


def _by_sku(one: Coded) -> object:
    return one.sku.casefold()


def _by_file(one: Coded) -> object:
    return one.member.path, one.member.variation.values
