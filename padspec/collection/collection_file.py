"""A collection as it stands in its file: its designs, the variants of each, and a personal run if it has one."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import prod

from padspec.base.errors import Problem, ProblemsError
from padspec.base.nearest import did_you_mean
from padspec.collection.axes import Axis, read_axes
from padspec.collection.variants import Member, Patterns, combined, nameless, read_exclusions
from padspec.reading.gather import read_file
from padspec.reading.parsing.yaml_reader import in_order
from padspec.reading.tree import Mapping, Scalar, Sequence
from padspec.reading.variation import PLAIN
from padspec.workspace import Workspace, joined

COLLECTION_FILE = "collection.yaml"
COLLECTION_ENDING = ".collection.yaml"
DESIGN_ENDING = ".pad.yaml"
#: More variants than this are a slip, or work for several collections.
MOST_MEMBERS = 100_000


@dataclass(frozen=True, slots=True)
class Collection:
    """Designs that belong together. `members` are their variants, design by design; `personal` is the bundle of
    that name as it was written, None where the collection has none.
    """

    name: str
    about: str
    file: str
    axes: tuple[Axis, ...]
    members: tuple[Member, ...]
    personal: Mapping | None


def read_collection(file: str, workspace: Workspace) -> Collection:
    """A collection from its file; raises ProblemsError with all that is wrong in it, its tables included.

    The designs themselves are not read, only looked for.
    """
    root = read_file(file, "collection", workspace).root
    problems: list[Problem] = []
    designs = _designs(root, file, workspace, problems)
    axes = read_axes(root, file, workspace, problems)
    excluded = read_exclusions(root, axes, designs, problems)
    patterns = Patterns.of(root, axes, problems)
    problems += nameless(axes)
    problems += _too_many(root, len(designs), axes)
    if problems:
        raise ProblemsError(*in_order(tuple(problems)))
    members = tuple(
        Member(path, variation)
        for path in designs.values()
        for variation in (combined(path, axes, excluded, patterns, file) if axes else (PLAIN,))
    )
    problems += _twins(members, root)
    if problems:
        raise ProblemsError(*in_order(tuple(problems)))
    personal = root.get("personal")
    return Collection(
        name=root.text("collection"),
        about=root.text("about"),
        file=file,
        axes=axes,
        members=members,
        personal=personal if isinstance(personal, Mapping) else None,
    )


def _too_many(root: Mapping, designs: int, axes: tuple[Axis, ...]) -> Iterator[Problem]:
    number = designs * prod(len(axis.values) for axis in axes)
    if number > MOST_MEMBERS:
        sizes = " × ".join(str(len(axis.values)) for axis in axes)
        message = f"{designs} designs × {sizes} are {number} variants; at most {MOST_MEMBERS} are made."
        yield Problem(root.place, message, "Put some values into a collection of their own.")


def _twins(members: tuple[Member, ...], root: Mapping) -> Iterator[Problem]:
    """Variants of one design that would be coded alike, and a collection of which nothing is left."""
    if not members:
        entry = root.entry("exclude")
        place = entry.key_place if entry else root.place
        yield Problem(place, "Every variant is excluded, so nothing is left to make.", "Take a combination out.")
    first: dict[tuple[str, str], Member] = {}
    for member in members:
        other = first.setdefault((member.path, member.variation.sku.casefold()), member)
        if other is not member:
            told = [", ".join(value for _, value in some.variation.values) for some in (other, member)]
            sku = member.variation.sku.replace("{sku}", "SKU")
            message = f"{told[0]} and {told[1]} of {member.path} would both be coded {sku}."
            mend = "Call one of them by other letters or digits: all other signs become hyphens."
            yield Problem(root.place, message, mend)


def _designs(root: Mapping, file: str, workspace: Workspace, problems: list[Problem]) -> dict[str, str]:
    """The designs of a collection, as they are written there, with their paths in the project."""
    listed = root.get("designs")
    found: dict[str, str] = {}
    for item in listed.items if isinstance(listed, Sequence) else ():
        if isinstance(item, Scalar):
            path = _design(item, file, workspace, problems)
            if path in found.values():
                problems.append(Problem(item.place, f"{path} is listed twice.", "Leave one of them out."))
            elif path is not None:
                found[item.text] = path
    return found


def _design(item: Scalar, file: str, workspace: Workspace, problems: list[Problem]) -> str | None:
    try:
        path = joined(file, item.text)
    except ValueError:
        message = f"{item.text} leads outside the project folder."
        problems.append(Problem(item.place, message, "Put the design into the folder and name it from there."))
        return None
    if not path.endswith((".yaml", ".yml")):
        mend = f"To make one from a picture: padspec new {item.text}"
        problems.append(Problem(item.place, f"{item.text} is not a design: designs are YAML files.", mend))
    elif not workspace.is_file(path):
        folder = path.rpartition("/")[0] or "."
        near = [name.rpartition("/")[2] for name in workspace.neighbours(folder, DESIGN_ENDING)]
        mend = did_you_mean(item.text.rpartition("/")[2], near) if near else ""
        problems.append(Problem(item.place, f"There is no design {path}.", mend))
    else:
        return path
    return None
