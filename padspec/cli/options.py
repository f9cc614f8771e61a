"""Options that several commands share, each defined once."""

from collections.abc import Callable
from typing import Any, TypeVar

import click

F = TypeVar("F", bound=Callable[..., Any])

CONTEXT = {"help_option_names": ["-h", "--help"]}


def paths(function: F) -> F:
    """PATHs: designs, collections or folders."""
    return click.argument("paths", nargs=-1, type=click.Path())(function)


def only_these(function: F) -> F:
    """--only, which picks among the pads meant."""
    return click.option(
        "--only",
        "words",
        multiple=True,
        metavar="WORD",
        help="Just these: a SKU (* for any letters), a value of a variant, or axis=value. May be given again.",
    )(function)


def as_json(function: F) -> F:
    """--json."""
    return click.option(
        "--json", "as_json", is_flag=True, help="Print one JSON document on stdout, nothing else."
    )(function)


def loudness(function: F) -> F:
    """--quiet and --verbose."""
    function = click.option("-q", "--quiet", is_flag=True, help="Say nothing but what is wrong.")(function)
    return click.option("-v", "--verbose", is_flag=True, help="Name each step as it is taken.")(function)


def workers_wanted(function: F) -> F:
    """--jobs and --scheduler: who does the work."""
    function = click.option(
        "--scheduler",
        metavar="ADDRESS",
        help="Hand the work to a cluster, such as tcp://10.0.0.5:8786 (needs padspec[cluster]).",
    )(function)
    return click.option(
        "-j",
        "--jobs",
        type=click.IntRange(1, 256),
        metavar="N",
        help="How many processes work at once. [default: one for each core]",
    )(function)
