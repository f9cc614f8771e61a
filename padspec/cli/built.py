"""What a build made, in words: findings once for all the variants that share them, and a table."""

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

import click

from padspec.cli.running import problems_of
from padspec.cli.say import (
    counted,
    say_finding,
    say_problems,
    shown_path,
    table,
    tally,
)
from padspec.collection.build import Failed
from padspec.collection.site import Built

#: So many pads are named where a finding is shared by more.
_MOST_NAMED = 4
_SEVERITIES = ("error", "warning", "note")


def say_failures(failed: Sequence[Failed]) -> None:
    """What could not be used, each problem once."""
    roots = {str(failure.error): failure.target.root for failure in failed}
    for error in problems_of(failed):
        say_problems(error, roots[str(error)])


def say_findings(built: Sequence[Built]) -> None:
    """Every finding on stderr, in the order of the pads; one that several share is said once, and of which."""
    groups: dict[tuple[object, ...], list[Built]] = {}
    findings: dict[tuple[object, ...], dict[str, Any]] = {}
    for one in built:
        for finding in one.summary["findings"]:
            key = (one.target.root, *(repr(finding[name]) for name in sorted(finding)))
            groups.setdefault(key, []).append(one)
            findings[key] = finding
    for key, sharing in groups.items():
        say_finding(findings[key], sharing[0].target.root)
        if any(one.target.variation.values for one in sharing):
            click.echo(f"  in {named([one.summary['sku'] for one in sharing])}", err=True)


def say_made(built: Sequence[Built], folder_of: Callable[[Path], Path]) -> None:
    """The table of what was made, the cautions, and what was held back."""
    varied = any(one.target.variation.values for one in built)
    click.echo(variants_table(built) if varied else _designs_table(built, folder_of))
    if varied:
        click.echo(_sum(built, folder_of))
    for caution in dict.fromkeys(one.summary["caution"] for one in built):
        click.echo(caution)
    held = [one.summary["sku" if varied else "design"] for one in built if _is_held_back(one)]
    if held:
        click.echo(f"No sheet was written for {', '.join(held)}: mend the errors first, or add --despite-errors.")


def say_why(built: Sequence[Built]) -> None:
    """Why each pad was made, pads with the same reasons together."""
    groups: dict[tuple[tuple[str, ...], bool], list[str]] = {}
    for one in built:
        groups.setdefault((one.reasons, one.redrawn), []).append(one.summary["sku"])
    for (reasons, redrawn), skus in groups.items():
        state = "unchanged" if not reasons else "made" if redrawn else "checked again, drawn as before"
        click.echo(f"{named(skus)}: {state}")
        for reason in reasons:
            click.echo(f"  because {reason}")


def made_data(one: Built, folder_of: Callable[[Path], Path]) -> dict[str, Any]:
    """One pad for --json."""
    folder = shown_path(folder_of(one.target.root))
    return {
        **one.summary,
        "unchanged": one.was_current,
        "reasons": list(one.reasons),
        "files": [f"{folder}/{name}" for name in one.files],
    }


def _designs_table(built: Sequence[Built], folder_of: Callable[[Path], Path]) -> str:
    rows = [_row(one, folder_of) for one in built]
    return table(("design", "sheet", "sheets for a pad", "cuts", "findings", "files"), rows)


def _row(one: Built, folder_of: Callable[[Path], Path]) -> tuple[str, ...]:
    summary = one.summary
    fits = summary["n_up"] > 0
    files = shown_path(folder_of(one.target.root) / summary["sku"]) + "/"
    return (
        summary["design"],
        _seat(summary),
        str(summary["copies"]) if fits else "–",
        str(summary["cuts"]) if fits else "–",
        tally(summary["findings"]),
        f"{files} (unchanged)" if one.was_current else files,
    )


def variants_table(built: Sequence[Built]) -> str:
    """Variants × checks that found anything: the worst severity of each, and how often."""
    checks = list(dict.fromkeys(finding["check"] for one in built for finding in one.summary["findings"]))
    rows = [(one.summary["sku"], _seat(one.summary), *(_cell(one, check) for check in checks)) for one in built]
    return table(("variant", "sheet", *(checks or ["findings"])), rows if checks else [(*r, "none") for r in rows])


def _cell(one: Built, check: str) -> str:
    found = [finding for finding in one.summary["findings"] if finding["check"] == check]
    counting = [finding["severity"] for finding in found if not finding["allowed"]]
    if not found:
        return "·"
    if not counting:
        return "allowed"
    worst = min(counting, key=_SEVERITIES.index)
    return worst if len(counting) == 1 else counted(len(counting), worst)


def _seat(summary: dict[str, Any]) -> str:
    return f"{summary['n_up']}-up on {summary['sheet']}" if summary["n_up"] else f"does not fit {summary['sheet']}"


def _sum(built: Sequence[Built], folder_of: Callable[[Path], Path]) -> str:
    folders = ", ".join(f"{shown_path(folder_of(root))}/" for root in dict.fromkeys(o.target.root for o in built))
    made = sum(not one.was_current for one in built)
    state = f"{made} made, {len(built) - made} unchanged" if made else "nothing had changed"
    return f"{counted(len(built), 'pad')} in {folders}: {state}."


def named(skus: Sequence[str]) -> str:
    """Some SKUs, the first few by name where they are many."""
    if len(skus) <= _MOST_NAMED:
        return ", ".join(skus)
    return f"{', '.join(skus[: _MOST_NAMED - 1])} and {len(skus) - _MOST_NAMED + 1} more"


def _is_held_back(one: Built) -> bool:
    return f"{one.summary['sku']}/sheet.pdf" not in one.files
