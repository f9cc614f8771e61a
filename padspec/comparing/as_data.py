"""A comparison as plain data, for other programs."""

from typing import Any

from padspec.comparing.comparison import Compared, Comparison, Shown
from padspec.comparing.message import message
from padspec.comparing.told import Change
from padspec.report import problem_data
from padspec.workspace import content_digest


def comparison_data(comparison: Comparison, folder: str) -> dict[str, Any]:
    """The whole; `folder` is where page and pictures were written, empty where they were not."""
    commit = comparison.commit
    return {
        "title": comparison.title,
        "revision": {"asked": commit.asked, "commit": commit.digest, "subject": commit.subject},
        "state": ("same", "changed", "trouble")[comparison.status],
        "note": comparison.note or None,
        "message": message(comparison),
        "page": f"{folder}/index.html" if folder else None,
        "pads": [_pad(pad, folder) for pad in comparison.pads],
        "problems": [problem_data(problem) for problem in comparison.problems],
    }


def _pad(pad: Compared, folder: str) -> dict[str, Any]:
    return {
        "sku": pad.sku,
        "name": pad.name,
        "file": pad.file,
        "state": pad.state,
        "old_sku": pad.old_sku or None,
        "unreadable_before": pad.untold or None,
        "same_face": pad.same_face,
        "changes": [_change(change) for change in pad.changes],
        "pictures": _shown(pad, pad.shown, folder) if pad.shown else None,
    }


def _change(change: Change) -> dict[str, Any]:
    place = change.place
    return {
        "section": change.section,
        "what": change.what,
        "before": change.before or None,
        "after": change.after or None,
        "measure": change.measure or None,
        "delta_e": change.delta,
        "shows": list(change.shows),
        "sentence": change.sentence,
        "file": place.file if place else None,
        "line": place.line if place else None,
        "column": place.column if place else None,
    }


def _shown(pad: Compared, shown: Shown, folder: str) -> dict[str, Any]:
    return {
        "share": round(shown.share, 6),
        "places": [
            {"x": round(b.x, 2), "y": round(b.y, 2), "width": round(b.width, 2), "height": round(b.height, 2)}
            for b in shown.places
        ],
        "files": {name: f"{folder}/{picture_path(pad, name, shown)}" for name in shown.files} if folder else {},
    }


def picture_path(pad: Compared, name: str, shown: Shown) -> str:
    """Where a picture of a pad lies, from the page.

    It is named by its content too: pads of two projects may share a SKU, and a browser must not show an older one.
    """
    return f"faces/{pad.sku}-{name}-{content_digest(shown.files[name])[:8]}.png"
