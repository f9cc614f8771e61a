"""What a built-in layout is, for `padspec explain` and for the table of layouts."""

from dataclasses import dataclass
from textwrap import fill, indent

from padspec.reading.document import read
from padspec.reading.tree import Mapping, Sequence
from padspec.resources import layout_names, layout_text

_WIDTH = 88


@dataclass(frozen=True, slots=True)
class LayoutSummary:
    """A layout in short: what it is for, and the trims it is made for as they are written, best first."""

    name: str
    about: str
    trims: tuple[tuple[str, str], ...]


def layout_summaries() -> tuple[LayoutSummary, ...]:
    """Every built-in layout, by name."""
    return tuple(layout_summary(name) for name in layout_names())


def layout_summary(name: str) -> LayoutSummary:
    """One built-in layout; FileNotFoundError where there is none of that name."""
    return summary_of(read(layout_text(name), f"padspec/layouts/{name}.yaml", "layout").root)


def summary_of(root: Mapping) -> LayoutSummary:
    """The summary of a layout that has been read; a maker's own may state no trims."""
    trims = root.get("trims")
    sizes = [item for item in trims.items if isinstance(item, Mapping)] if isinstance(trims, Sequence) else []
    return LayoutSummary(
        root.text("layout"),
        root.text("about"),
        tuple((size.text("width"), size.text("height")) for size in sizes),
    )


def describe_layout(name: str) -> str | None:
    """A layout as it is explained, its blocks as they are written; None where there is none of that name."""
    if name not in layout_names():
        return None
    summary = layout_summary(name)
    trims = ", ".join(f"{width} × {height}" for width, height in summary.trims)
    _, _, blocks = layout_text(name).partition("face:\n")
    return "\n".join(
        (
            f"{name}: a layout",
            "",
            fill(summary.about, _WIDTH),
            "",
            f"Made for {trims}; it adapts to other sizes.",
            f"Use it with layout: {name}. To change its blocks, copy this to layouts/{name}.yaml:",
            "",
            indent(layout_text(name).partition("trims:")[0] + "face:\n" + blocks, "  ").rstrip(),
        )
    )
