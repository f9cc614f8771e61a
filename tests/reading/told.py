"""Reads a text as a file f.yaml and gives what the maker is told."""

from padspec.base.errors import Problem, ProblemsError
from padspec.reading.document import Kind, read
from padspec.reading.parsing.yaml_reader import parse

#: The least that a design needs; what a test adds starts on line 3.
DESIGN = "pad: Moths\ntrim: {width: 90 mm, height: 190 mm}\n"


def told(text: str, kind: Kind = "design") -> tuple[Problem, ...]:
    """All problems of a file; empty where it is accepted."""
    try:
        read(text, "f.yaml", kind)
    except ProblemsError as error:
        return error.problems
    return ()


def only(text: str, kind: Kind = "design") -> Problem:
    """The one problem of a file that has exactly one."""
    (problem,) = told(text, kind)
    return problem


def added(text: str) -> Problem:
    """The one problem that a text added to a small design makes."""
    return only(DESIGN + text)


def refused(text: str) -> tuple[Problem, ...]:
    """What YAML alone refuses in a text."""
    try:
        parse(text, "f.yaml")
    except ProblemsError as error:
        return error.problems
    return ()


def spot(problem: Problem) -> tuple[int, int, int]:
    """Line, column and length of a problem's place."""
    return problem.place.line, problem.place.column, problem.place.length
