"""What a check is, what it looks at, and the limits it holds to."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Literal

from padspec.base.errors import Problem, ProblemsError, UnitError
from padspec.base.findings import Finding, Severity
from padspec.base.numbers import number_text
from padspec.base.units import parse_length, parse_share
from padspec.checks.under import Under
from padspec.compose.face import Face
from padspec.resolve.design import Design, Limit
from padspec.sheet.sheet import Sheet

Unit = Literal["ratio", "ppi", "mm", "share", "cover", "difference"]


@dataclass(frozen=True, slots=True)
class Subject:
    """What a check looks at. `sheet` is None where not one face fits; `under` is what lies under the lines."""

    design: Design
    face: Face
    sheet: Sheet | None
    under: Under


@dataclass(frozen=True, slots=True)
class Level:
    """One limit: how much it matters when missed, the value in the check's unit, and whether the maker set it."""

    severity: Severity
    value: float
    unit: Unit
    usual: float | None = None

    @property
    def text(self) -> str:
        """The limit as shown: a limit of the maker's own says so, with the usual one beside it."""
        own = _quantity(self.value, self.unit)
        return own if self.usual is None else f"{own} (your limit; usually {_quantity(self.usual, self.unit)})"


@dataclass(frozen=True, slots=True)
class Limits:
    """The levels of one check, worst first."""

    levels: tuple[Level, ...]

    def missed_below(self, measured: float) -> Level | None:
        """The worst level that a measured value falls short of; compared unrounded."""
        return next((level for level in self.levels if measured < level.value - 1e-9), None)

    def missed_above(self, measured: float) -> Level | None:
        """The worst level that a measured value exceeds."""
        return next((level for level in self.levels if measured > level.value + 1e-9), None)

    def at(self, severity: Severity) -> Level:
        """The level of one severity; KeyError where the check has none."""
        for level in self.levels:
            if level.severity == severity:
                return level
        raise KeyError(severity)

    @property
    def mildest(self) -> Level:
        """The level to reach so that nothing at all is found: a maker may set the warning below the error."""
        return max(self.levels, key=lambda level: level.value)


@dataclass(frozen=True, slots=True)
class Usual:
    """A limit that holds unless the maker sets another."""

    severity: Severity
    value: float
    unit: Unit


@dataclass(frozen=True, slots=True)
class Check:
    """One check: its name, its usual limits (worst first), its function, and whether a finding may be allowed.

    The function's docstring is what `padspec explain` prints: what is measured, the limit, and its source.
    """

    name: str
    usual: tuple[Usual, ...]
    run: Callable[[Subject, Limits], Iterable[Finding]]
    may_be_allowed: bool = True


def limits_for(check: Check, wishes: tuple[Limit, ...]) -> Limits:
    """The usual limits with the maker's own laid over them; raises ProblemsError for one of the wrong kind.

    A bare value sets the warning, or the only level of a check that has one.
    """
    levels = {usual.severity: Level(usual.severity, usual.value, usual.unit) for usual in check.usual}
    for wish in wishes:
        if wish.check != check.name:
            continue
        severity = wish.severity or _main(check)
        usual = next((u for u in check.usual if u.severity == severity), None)
        if usual is None:
            has = ", ".join(u.severity.word for u in check.usual) or "no limit that can be set"
            raise ProblemsError(
                Problem(wish.place, f"{check.name} has no level {severity.word}.", f"It has: {has}.")
            )
        levels[severity] = Level(severity, _parsed(wish, usual.unit), usual.unit, usual.value)
    return Limits(tuple(sorted(levels.values(), key=lambda level: -level.severity)))


def _main(check: Check) -> Severity:
    severities = [usual.severity for usual in check.usual]
    return Severity.WARNING if Severity.WARNING in severities or not severities else severities[-1]


def _parsed(wish: Limit, unit: Unit) -> float:
    try:
        match unit:
            case "mm":
                return parse_length(wish.text)
            case "share" | "cover":
                return parse_share(wish.text)
            case "ratio" | "ppi" | "difference":
                return float(wish.text)
    except UnitError as error:
        raise ProblemsError(Problem(wish.place, error.message, error.mend)) from None
    except ValueError:
        likely = {"ppi": "300", "difference": "5"}.get(unit, "1.8")
        mend = f"Write a bare number, such as {likely}."
        raise ProblemsError(Problem(wish.place, f"{wish.text} is not a plain number.", mend)) from None


def _quantity(value: float, unit: Unit) -> str:
    match unit:
        case "ratio":
            return f"{number_text(value, 2)} : 1"
        case "ppi":
            return f"{number_text(value, 0)} ppi"
        case "mm":
            return f"{number_text(value, 2)} mm"
        case "share" | "cover":
            return f"{number_text(value * 100, 1)} %"
        case "difference":
            return f"ΔE {number_text(value, 1)}"
