"""Remedies tried before they are offered: each change is made in the design, and the design is checked again.

A check proposes what it computed for its own measure; whether that cures the finding, with everything else as it
is, only the whole way from the documents to the findings can tell. What does not pass is withdrawn.
"""

from dataclasses import replace

from padspec.base.errors import ProblemsError
from padspec.base.findings import Finding, Remedy
from padspec.checks.table import run_checks
from padspec.compose.compose import compose
from padspec.reading.checking.schema_check import check
from padspec.reading.gather import Documents
from padspec.reading.with_value import with_value
from padspec.resolve.resolve import resolve
from padspec.sheet.tile import tile
from padspec.workspace import Workspace

#: So many remedies are tried; more findings than this are not mended one value at a time.
MOST_TRIALS = 12
WITHDRAWN = "No single value mends this as things stand: look at what stands beside it."


def tried(findings: tuple[Finding, ...], documents: Documents, workspace: Workspace) -> tuple[Finding, ...]:
    """The findings with the changes that cure them; a remedy that was tried and does not is withdrawn."""
    known: dict[tuple[tuple[tuple[str, ...], str], ...], tuple[Finding, ...] | None] = {}
    told: list[Finding] = []
    for finding in findings:
        changes = finding.remedy.changes if finding.remedy else ()
        if changes and changes not in known:
            known[changes] = _after(changes, documents, workspace) if len(known) < MOST_TRIALS else None
        cured = not changes or _cures(finding, findings, known[changes])
        told.append(finding if cured else replace(finding, remedy=Remedy(WITHDRAWN)))
    return tuple(told)


def _after(
    changes: tuple[tuple[tuple[str, ...], str], ...], documents: Documents, workspace: Workspace
) -> tuple[Finding, ...] | None:
    """What the checks find once the changes are made; None where the design could not even be read."""
    root = documents.design.root
    for path, text in changes:
        root = with_value(root, path, text)
    if check(root, "design"):
        return None
    changed = documents.design.with_root(root)
    try:
        design = resolve(replace(documents, design=changed), workspace)
    except ProblemsError:
        return None
    return run_checks(design, compose(design), tile(design))


def _cures(finding: Finding, before: tuple[Finding, ...], after: tuple[Finding, ...] | None) -> bool:
    """Whether fewer findings of this check are left than there were."""
    if after is None:
        return False
    left, were = (sum(other.check == finding.check for other in some) for some in (after, before))
    return left < were
