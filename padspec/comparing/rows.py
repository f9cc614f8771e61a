"""The table of a pad's changes on the page: what, before, now, by how much, and where in the YAML."""

import re
from collections.abc import Sequence
from html import escape

from padspec.comparing.told import Change

_COLOUR = re.compile(r"#[0-9a-f]{6}")


def change_table(name: str, changes: Sequence[Change]) -> str:
    """The table, or nothing where there is nothing to tell."""
    if not changes:
        return ""
    rows = "\n".join(_row(change) for change in changes)
    heads = "".join(f'<th scope="col">{head}</th>' for head in ("What", "Before", "Now", "By", "In"))
    return f"""\
<table>
<caption>What changed in {escape(name)}</caption>
<thead><tr>{heads}</tr></thead>
<tbody>
{rows}
</tbody>
</table>"""


def _row(change: Change) -> str:
    head = f"{change.section}: {change.what}" if change.section else change.what
    also = f'<span class="also">{escape(", ".join(change.shows))}</span>' if change.shows else ""
    place = f"<code>{escape(_place(change))}</code>" if change.place else ""
    return (
        f'<tr><th scope="row">{escape(head)}{also}</th><td class="was">{_value(change.before)}</td>'
        f'<td>{_value(change.after)}</td><td class="by">{escape(change.measure)}</td>'
        f'<td class="at">{place}</td></tr>'
    )


def _place(change: Change) -> str:
    place = change.place
    if place is None:
        return ""
    return f"{place.file}:{place.line}" if place.line else place.file


def _value(text: str) -> str:
    """A value, colours shown before their names."""
    return _COLOUR.sub(lambda match: f"{_swatch(match[0])}{match[0]}", escape(text))


def _swatch(colour: str) -> str:
    return (
        '<svg viewBox="0 0 10 10" aria-hidden="true">'
        f'<rect x=".5" y=".5" width="9" height="9" rx="2" fill="{colour}"/></svg>'
    )
