"""What the checks find now and did not before, and what they no longer find."""

from collections import Counter
from collections.abc import Iterator, Sequence

from padspec.base.findings import Finding
from padspec.comparing.told import Change


def finding_changes(before: Sequence[Finding], now: Sequence[Finding]) -> Iterator[Change]:
    """Findings new, gone and changed, check by check. One that only stands on another line is the same."""
    for check in dict.fromkeys(finding.check for finding in (*now, *before)):
        old = [finding for finding in before if finding.check == check]
        new = [finding for finding in now if finding.check == check]
        gone, come = _without(old, new), _without(new, old)
        for one, other in zip(gone, come, strict=False):
            yield Change("findings", check, _short(one), _short(other), place=other.place)
        for one in come[len(gone) :]:
            yield Change("findings", f"new {_level(one)} {check}", "", one.message, place=one.place)
        for one in gone[len(come) :]:
            yield Change("findings", f"{_level(one)} {check} is gone", "", "")


def _without(some: Sequence[Finding], others: Sequence[Finding]) -> list[Finding]:
    """Those that have no like among the others, each of which stands for one."""
    left = Counter(_said(finding) for finding in others)
    found = []
    for finding in some:
        if left[_said(finding)]:
            left[_said(finding)] -= 1
        else:
            found.append(finding)
    return found


def _said(finding: Finding) -> tuple[str, ...]:
    return finding.severity.word, finding.message, finding.measured, finding.limit, finding.allowed


def _short(finding: Finding) -> str:
    return f"{_level(finding)}, measured {finding.measured}, limit {finding.limit}"


def _level(finding: Finding) -> str:
    return f"accepted {finding.severity.word}" if finding.allowed else finding.severity.word
