"""What was found and made, as plain data and JSON: for findings.json and for every `--json`."""

import json
from typing import TYPE_CHECKING, Any

from padspec.base.errors import Problem
from padspec.base.findings import Finding, Severity, worst
from padspec.sheet.cautions import CAUTIONS

if TYPE_CHECKING:  # a build that has nothing to do speaks through here, and must not load numpy for it
    from padspec.resolve.design import Design
    from padspec.sheet.sheet import Sheet


def findings_json(design: "Design", sheet: "Sheet | None", findings: tuple[Finding, ...]) -> bytes:
    """The content of findings.json."""
    return json_text(pad_data(design, sheet, findings)).encode("utf-8")


def pad_data(design: "Design", sheet: "Sheet | None", findings: tuple[Finding, ...]) -> dict[str, Any]:
    """One pad's outcome: its state, how it sits on the sheet, and its findings."""
    listing = design.listing
    return {
        "design": design.name,
        "sku": design.sku,
        "base_sku": listing.own_sku,
        "base_name": listing.own_name,
        "variant": dict(listing.values),
        "about": listing.about or None,
        "tags": list(listing.tags),
        "price": None if listing.price is None else f"{listing.price:f}",
        "currency": design.studio.currency,
        "studio": design.studio.name,
        "layout": design.layout,
        "trim": {"width": round(design.trim.width, 4), "height": round(design.trim.height, 4)},
        "palette": [{"name": name, "colour": colour.hex} for name, colour in design.palette],
        "file": design.file,
        "state": "failed" if worst(findings) == Severity.ERROR else "passed",
        "n_up": sheet.n_up if sheet else 0,
        "cuts": sheet.cuts if sheet else 0,
        "sheet": design.sheet.size_name,
        "leaves": design.leaves,
        "copies": sheet.copies if sheet else 0,
        "caution": CAUTIONS[design.studio.cutter.kind],
        "findings": [finding_data(finding) for finding in findings],
    }


def finding_data(finding: Finding) -> dict[str, Any]:
    """One finding as plain data."""
    return {
        "check": finding.check,
        "severity": finding.severity.word,
        "file": finding.place.file,
        "line": finding.place.line,
        "column": finding.place.column,
        "length": finding.place.length,
        "message": finding.message,
        "measured": finding.measured,
        "limit": finding.limit,
        "remedy": finding.remedy.text if finding.remedy else None,
        "changes": [
            {"key": ".".join(path), "value": value}
            for path, value in (finding.remedy.changes if finding.remedy else ())
        ],
        "allowed": finding.allowed or None,
    }


def problem_data(problem: Problem) -> dict[str, Any]:
    """One problem as plain data."""
    return {
        "file": problem.place.file,
        "line": problem.place.line,
        "column": problem.place.column,
        "message": problem.message,
        "mend": problem.mend,
    }


def json_text(data: Any) -> str:
    """JSON as padspec writes it everywhere: two spaces, keys in the order given, one line feed at the end."""
    return json.dumps(data, indent=2, ensure_ascii=False) + "\n"
