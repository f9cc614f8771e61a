"""What a check reports: a finding with its severity, place, measured value, limit and remedy."""

from dataclasses import dataclass, replace
from enum import IntEnum

from padspec.base.place import Place


class Severity(IntEnum):
    """How much it matters. An error means: do not print this."""

    NOTE = 1
    WARNING = 2
    ERROR = 3

    @property
    def word(self) -> str:
        """The severity as the maker reads it: note, warning, error."""
        return self.name.lower()


@dataclass(frozen=True, slots=True)
class Remedy:
    """What to do about a finding.

    `changes` are values to set in the design, each a path of keys with its new text; they are offered
    only when applying them was computed to make the finding go away. Without changes the remedy is
    work outside the spec (a sharper picture, say) and the text holds the number to reach.
    """

    text: str
    changes: tuple[tuple[tuple[str, ...], str], ...] = ()


@dataclass(frozen=True, slots=True)
class Finding:
    """One result of a check, a value to collect, sort and print."""

    check: str
    severity: Severity
    place: Place
    message: str
    measured: str
    limit: str
    remedy: Remedy | None = None
    allowed: str = ""

    def allow(self, reason: str) -> "Finding":
        """The same finding, accepted by the maker for this reason: it is shown but no longer counts."""
        return replace(self, allowed=reason)

    @property
    def counts(self) -> bool:
        """Whether it weighs on the outcome; an allowed finding does not."""
        return not self.allowed


def worst(findings: tuple[Finding, ...]) -> Severity | None:
    """The highest severity among the findings that count, or None where none does."""
    return max((finding.severity for finding in findings if finding.counts), default=None)


def in_order(findings: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """Sorted by place, then the worst first, then by name: the order everything is shown in."""
    return tuple(
        sorted(
            findings,
            key=lambda f: (f.place.file, f.place.line, f.place.column, -f.severity, f.check, f.message),
        )
    )
