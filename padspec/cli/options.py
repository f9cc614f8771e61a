"""Options that several commands share, each defined once."""

from collections.abc import Callable
from typing import Any, TypeVar

import click

F = TypeVar("F", bound=Callable[..., Any])

CONTEXT = {"help_option_names": ["-h", "--help"]}


def paths(function: F) -> F:
    """PATHs: designs, collections or folders."""
    return click.argument("paths", nargs=-1, type=click.Path())(function)


def as_json(function: F) -> F:
    """--json."""
    return click.option(
        "--json", "as_json", is_flag=True, help="Print one JSON document on stdout, nothing else."
    )(function)


def loudness(function: F) -> F:
    """--quiet and --verbose."""
    function = click.option("-q", "--quiet", is_flag=True, help="Say nothing but what is wrong.")(function)
    return click.option("-v", "--verbose", is_flag=True, help="Name each step as it is taken.")(function)
