"""A comparison as a page for a browser, which asks for nothing but the pictures beside it."""

import base64
import hashlib
from collections.abc import Iterator, Sequence
from html import escape

from padspec.base.geometry import Box
from padspec.base.numbers import number_text
from padspec.comparing.as_data import picture_path
from padspec.comparing.comparison import Compared, Comparison, Shown
from padspec.comparing.held_up import BEFORE, DIFFERENCE, NOW
from padspec.comparing.message import subject
from padspec.comparing.rows import change_table
from padspec.comparing.script import SCRIPT
from padspec.comparing.style import STYLE
from padspec.comparing.together import shared, told_together

#: What a page that this wrote is known by.
MARK = '<meta name="generator" content="padspec compare">'
#: A face is shown at so many CSS pixels a millimetre, at most.
_PER_MM = 2.6
#: A region of so much of the face needs no place.
_MOST_OF_IT = 0.8
_STATES = {"changed": "changed", "added": "new", "removed": "taken away", "unreadable": "unreadable"}
_SIDES = {BEFORE: "Before", NOW: "Now", DIFFERENCE: "Difference"}


def page_html(comparison: Comparison) -> str:
    """The page. Its policy lets in the pictures beside it, and the one style and script that it holds."""
    title = escape(comparison.title)
    return f"""\
<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="{_policy()}">
{MARK}
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{title} – what changed</title>
<style>{STYLE}</style>
</head>
<body>
<header class="wrap head">
<h1>{title}</h1>
{_head(comparison)}
</header>
<main class="wrap">
{"".join(_sections(comparison))}</main>
<footer class="wrap">{_rest(comparison)}</footer>
<script>{SCRIPT}</script>
</body>
</html>
"""


def _policy() -> str:
    style, script = (_digest(text) for text in (STYLE, SCRIPT))
    return f"default-src 'none'; img-src 'self' file:; style-src {style}; script-src {script}; base-uri 'none'"


def _digest(text: str) -> str:
    return f"'sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode('ascii')}'"


def _head(comparison: Comparison) -> str:
    commit = comparison.commit
    told = subject(comparison).removeprefix(f"{comparison.title}: ")
    asked = "" if commit.digest.startswith(commit.asked) else f"{escape(commit.asked)}, "
    since = f"Since {asked}<code>{escape(commit.short)}</code> {escape(commit.subject)}".rstrip()
    note = f"<p>{escape(comparison.note)}</p>" if comparison.note else ""
    lines = [f'<p class="sum">{escape(told)}</p>', f'<p class="since">{since}</p>', note, _contents(comparison)]
    return "\n".join(line for line in lines if line)


def _contents(comparison: Comparison) -> str:
    """Links to the pads, where there is more than one to be seen."""
    pads = seen(comparison)
    if len(pads) < 2:
        return ""
    items = "".join(
        f'<li><a href="#{_anchor(pad)}">{escape(pad.name)}</a><span>{_short(pad)}</span></li>' for pad in pads
    )
    return f'<nav aria-label="Pads that differ"><ul>{items}</ul></nav>'


def _short(pad: Compared) -> str:
    number = len(pad.changes)
    if pad.state != "changed" or not number:
        return _STATES.get(pad.state, pad.state)
    return f"{number} change{'s' if number > 1 else ''}"


def _anchor(pad: Compared) -> str:
    return escape(f"{pad.state}-{pad.sku}".replace(" ", "-"))


def _sections(comparison: Comparison) -> Iterator[str]:
    together = shared(comparison.pads)
    if together:
        yield '<section class="shared" id="shared" aria-labelledby="shared-name">'
        yield '<h2 id="shared-name">In several pads</h2>\n'
        for one in together:
            items = "".join(f"<li>{escape(sentence)}</li>" for sentence in one.sentences)
            yield f"<h3>In {escape(one.called)}</h3><ul>{items}</ul>\n"
        yield "</section>\n"
    for pad in seen(comparison):
        yield _section(pad)


def seen(comparison: Comparison) -> tuple[Compared, ...]:
    """The pads that have something of their own to show: more than changes that several pads share."""
    together = told_together(comparison.pads)
    return tuple(
        pad
        for pad in comparison.differing
        if pad.shown
        or pad.untold
        or pad.state != "changed"
        or any((pad.sku, change.sentence) not in together for change in pad.changes)
    )


def _section(pad: Compared) -> str:
    anchor = _anchor(pad)
    was = f'<span class="sku">before: {escape(pad.old_sku)}</span>' if pad.old_sku else ""
    return "\n".join(
        part
        for part in (
            f'<section id="{anchor}" aria-labelledby="{anchor}-name">',
            f'<div class="title"><h2 id="{anchor}-name">{escape(pad.name)}</h2>'
            f'<span class="sku">{escape(pad.sku)}</span>{was}'
            f'<span class="state {pad.state}">{_STATES.get(pad.state, pad.state)}</span></div>',
            *(f'<p class="bad">{escape(str(problem))}</p>' for problem in pad.problems),
            f"<p>{escape(pad.untold)}</p>" if pad.untold else "",
            _panes(pad),
            change_table(pad.name, pad.changes),
            "</section>\n",
        )
        if part
    )


def _panes(pad: Compared) -> str:
    shown = pad.shown
    if shown is None:
        return "<p>Not one point of the face is drawn otherwise.</p>" if pad.same_face else ""
    if DIFFERENCE not in shown.files:
        only = next(iter(shown.files))
        return f'<div class="panes one">{_figure(_SIDES[only], _image(pad, shown, only), "")}</div>'
    over = f'<div class="over">{_image(pad, shown, BEFORE, beneath=True)}{_image(pad, shown, NOW)}</div>'
    fade = (
        "<label hidden><span>before</span>"
        f'<input type="range" min="0" max="100" step="10" value="100" aria-label="{escape(pad.name)}: '
        'from before to now"><span>now</span></label>'
    )
    return "\n".join(
        (
            '<div class="panes">',
            _figure("Before", _image(pad, shown, BEFORE), ""),
            _figure("Now", over, fade, "fades"),
            _figure("Difference", _image(pad, shown, DIFFERENCE), f'<span class="key"></span> {_where(shown)}'),
            "</div>",
        )
    )


def _figure(head: str, inside: str, caption: str, kind: str = "") -> str:
    attribute = f' class="{kind}"' if kind else ""
    picture = f'<h3>{head}</h3><div class="well">{inside}</div>'
    return f"<figure{attribute}>{picture}<figcaption>{caption}</figcaption></figure>"


def _image(pad: Compared, shown: Shown, name: str, beneath: bool = False) -> str:
    width, height = (round(side * _PER_MM) for side in (shown.width, shown.height))
    alt = "" if beneath else f"{pad.name}, {_SIDES[name].lower()}"
    if name == DIFFERENCE:
        alt = f"{pad.name}: {_where(shown)}"
    path = escape(picture_path(pad, name, shown))
    state = " hidden" if beneath else ""
    return f'<img src="{path}" alt="{escape(alt)}" width="{width}" height="{height}" loading="lazy"{state}>'


def _where(shown: Shown) -> str:
    """How much of the face changed and where most of it is, in words."""
    share = number_text(shown.share * 100, 1)
    told = f"{share if share != '0' else 'Less than 0.1'} % of the face differs"
    if not shown.places:
        return f"{told}."
    largest = shown.places[0]
    if largest.width * largest.height > _MOST_OF_IT * shown.width * shown.height:
        return f"{told}, all over it."
    return f"{told}; the largest part is {_box(largest)}."


def _box(box: Box) -> str:
    # What prints past the trim is cut away: places are told on the leaf.
    left, top = max(box.x, 0.0), max(box.y, 0.0)
    width, height, x, y = (number_text(side, 0) for side in (box.right - left, box.bottom - top, left, top))
    return f"{width} × {height} mm, {x} mm from the left and {y} mm from the head"


def _rest(comparison: Comparison) -> str:
    """Pads that have no section of their own."""
    told = seen(comparison)
    only_shared = [pad for pad in comparison.differing if pad not in told]
    lines = [("No change but those in several pads, and the face as it was", only_shared)]
    lines.append(("The same as before", list(comparison.of_state("same"))))
    return "".join(f"<p>{head}: {_names(pads)}.</p>" for head, pads in lines if pads)


def _names(pads: Sequence[Compared]) -> str:
    return ", ".join(escape(f"{pad.name} ({pad.sku})") for pad in pads)
