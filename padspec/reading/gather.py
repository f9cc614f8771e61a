"""Which files make up one design: its own, the studio's and the layout's, read and checked together."""

from dataclasses import dataclass
from pathlib import PurePosixPath

from padspec.base.errors import Problem, ProblemsError
from padspec.base.nearest import did_you_mean
from padspec.reading.defaults import defaults
from padspec.reading.document import Document, Kind, read
from padspec.reading.parsing.yaml_reader import decode
from padspec.reading.tree import Mapping, Scalar
from padspec.reading.variation import PLAIN, Variation
from padspec.resources import layout_names, layout_text
from padspec.workspace import Workspace

STUDIO_FILE = "studio.yaml"


@dataclass(frozen=True, slots=True)
class Documents:
    """The three documents that a design is resolved from, and what is varied in it."""

    design: Document
    studio: Document
    layout: Document
    variation: Variation = PLAIN


def gather(path: str, workspace: Workspace, variation: Variation = PLAIN) -> Documents:
    """Read a design with its studio and its layout; raises ProblemsError with all that is wrong in them.

    A variation may name another layout; it is not laid over the design here (see resolve/vary.py).
    """
    design, problems = _attempt(path, "design", workspace)
    studio_path = find_studio(path, workspace)
    if studio_path:
        studio, more = _attempt(studio_path, "studio", workspace)
        problems += more
    else:
        studio = read("{}\n", STUDIO_FILE, "studio")
    if design is None or studio is None:
        raise ProblemsError(*problems)
    layout = read_layout(_layout_name(variation.settings, design.root, studio.root), path, workspace)
    return Documents(design, studio, layout, variation)


def read_file(path: str, kind: Kind, workspace: Workspace) -> Document:
    """One file of the maker's, decoded, parsed and checked against the schema of its kind."""
    return read(decode(workspace.read(path), path), path, kind)


def find_studio(path: str, workspace: Workspace) -> str | None:
    """The studio.yaml that holds for a file: in its folder or the nearest one above, inside the project."""
    for folder in PurePosixPath(path).parents:
        candidate = str(folder / STUDIO_FILE)
        if workspace.is_file(candidate):
            return candidate
    return None


def read_layout(name: Scalar, design_path: str, workspace: Workspace) -> Document:
    """A layout by name: the maker's own in `layouts/` next to the design or above it, else the built-in one."""
    names = list(layout_names())
    for folder in PurePosixPath(design_path).parents:
        candidate = str(folder / "layouts" / f"{name.text}.yaml")
        if "/" not in name.text and workspace.is_file(candidate):
            return read_file(candidate, "layout", workspace)
    if name.text not in names:
        message = f"There is no layout {name.text}, neither built in nor in layouts/{name.text}.yaml."
        raise ProblemsError(Problem(name.place, message, did_you_mean(name.text, names)))
    return read(layout_text(name.text), f"padspec/layouts/{name.text}.yaml", "layout")


def _attempt(path: str, kind: Kind, workspace: Workspace) -> tuple[Document | None, list[Problem]]:
    try:
        return read_file(path, kind, workspace), []
    except ProblemsError as error:
        return None, list(error.problems)


def _layout_name(*roots: Mapping) -> Scalar:
    for root in (*roots, defaults("design")):
        node = root.get("layout")
        if isinstance(node, Scalar):
            return node
    raise LookupError("the design schema gives no default layout")
