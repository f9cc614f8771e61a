"""A maker's file, read and checked: the tree, the text it came from, and what kind of file it is."""

from dataclasses import dataclass, replace
from functools import lru_cache

from padspec.base.errors import ProblemsError
from padspec.reading.checking.schema_check import check
from padspec.reading.checking.schemas import Kind
from padspec.reading.parsing.yaml_reader import in_order, parse_leniently
from padspec.reading.tree import Mapping

__all__ = ["Document", "Kind", "read"]


@dataclass(frozen=True, slots=True)
class Document:
    """One file that has passed its schema. `text` is what the places in `root` count in."""

    kind: Kind
    file: str
    text: str
    root: Mapping

    def with_root(self, root: Mapping) -> "Document":
        """The document as if this stood in it."""
        return replace(self, root=root)


# Studio and layout are the same for many designs, and a design for all of its variants.
@lru_cache(maxsize=64)
def read(text: str, file: str, kind: Kind) -> Document:
    """Read one file of a kind; `file` is its name in places.

    Raises ProblemsError with everything that is wrong with it, what YAML refuses and what the schema
    refuses together, in order of place.
    """
    text = text.removeprefix("\ufeff")
    root, problems = parse_leniently(text, file)
    if root is None:
        raise ProblemsError(*in_order(problems))
    known = {problem.place for problem in problems}
    problems += tuple(problem for problem in check(root, kind, text) if problem.place not in known)
    if problems:
        raise ProblemsError(*in_order(problems))
    return Document(kind, file, text, root)
