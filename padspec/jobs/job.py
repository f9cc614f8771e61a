"""What is wanted: how many pads of which designs, from a job file or from the command line."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from padspec.base.errors import Problem, ProblemsError
from padspec.base.nearest import did_you_mean
from padspec.base.place import Place
from padspec.jobs.plan import Wanted
from padspec.reading.checking.core_schema import integer
from padspec.reading.gather import read_file
from padspec.reading.tree import Mapping, Scalar
from padspec.resolve.design import Design
from padspec.workspace import Workspace

JOB_ENDING = ".job.yaml"
MOST_PADS = 100_000
_SKU_AND_NUMBER = re.compile(r"(?:(?P<sku>.+)=)?(?P<number>[0-9]+)")


@dataclass(frozen=True, slots=True)
class Wish:
    """So many pads of the design with this SKU; an empty SKU means every design."""

    sku: str
    pads: int
    place: Place


@dataclass(frozen=True, slots=True)
class Job:
    """What is to be made. `gang`: whether different designs may share a sheet."""

    name: str
    wishes: tuple[Wish, ...]
    gang: bool = True


def read_job(path: str, workspace: Workspace) -> Job:
    """A job from its file; raises ProblemsError with what is wrong with it."""
    root = read_file(path, "job", workspace).root
    pads = root.get("pads")
    wishes = tuple(
        Wish(entry.key, integer(entry.value.text) or 0, entry.key_place)
        for entry in (pads.entries if isinstance(pads, Mapping) else ())
        if isinstance(entry.value, Scalar)
    )
    return Job(
        name=root.text("job"),
        wishes=wishes,
        gang=root.text("gang").lower() != "false",
    )


def job_from_words(name: str, words: tuple[str, ...], gang: bool) -> Job:
    """A job from `SKU=12` and bare numbers, as a command line has them; one pad of each where there are none."""
    wishes, problems = [], []
    for word in words or ("1",):
        place = Place(f"--pads {word}", 0, 0)
        match = _SKU_AND_NUMBER.fullmatch(word.strip())
        number = int(match["number"][:9]) if match else 0
        if match is None or not 1 <= number <= MOST_PADS:
            mend = f"Write --pads 12 or --pads SKU=12, from 1 to {MOST_PADS} pads."
            problems.append(Problem(place, f"{word} does not say how many pads.", mend))
        else:
            wishes.append(Wish(match["sku"] or "", number, place))
    if problems:
        raise ProblemsError(*problems)
    return Job(name, tuple(wishes), gang)


def wanted_of(job: Job, designs: tuple[Design, ...]) -> tuple[Wanted, ...]:
    """The designs that a job wants, in their own order; raises ProblemsError for a SKU that none of them has."""
    known = [design.sku for design in designs]
    problems = [*_twins(designs)]
    problems += [
        Problem(wish.place, f"No design here has the SKU {wish.sku}.", did_you_mean(wish.sku, known))
        for wish in job.wishes
        if wish.sku and wish.sku not in known
    ]
    if problems:
        raise ProblemsError(*problems)
    every = sum(wish.pads for wish in job.wishes if not wish.sku)
    named = {sku: sum(w.pads for w in job.wishes if w.sku == sku) for sku in known}
    return tuple(Wanted(design, named[design.sku] or every) for design in designs if named[design.sku] or every)


def _twins(designs: tuple[Design, ...]) -> Iterator[Problem]:
    """Designs that share a SKU: nobody could say which of them is meant."""
    first: dict[str, Design] = {}
    for design in designs:
        other = first.setdefault(design.sku.casefold(), design)
        if other is not design:
            message = f"Its SKU {design.sku} is that of {other.file} too."
            yield Problem(Place(design.file, 0, 0), message, "Give one of them a sku of its own.")
