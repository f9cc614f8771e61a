"""The catalogue's page: cards go in, the text of one HTML file comes out, which asks for nothing but the pictures
beside it.
"""

import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from html import escape
from itertools import groupby
from urllib.parse import quote

from padspec.catalogue.card import STATES, Card, State, Unread
from padspec.catalogue.hue import FAMILIES
from padspec.catalogue.pictures import PIXELS_A_MM, Small
from padspec.catalogue.script import SCRIPT
from padspec.catalogue.style import STYLE

#: Nothing may be fetched but pictures of the page's own disk; `file:` has no 'self' in some browsers.
_POLICY = "default-src 'none'; img-src 'self' file: data:; style-src 'unsafe-inline'; script-src 'unsafe-inline'"
_MARKS: dict[State, str] = {"ready": "✓", "look": "!", "stop": "✕"}
_HUE_DOTS = {
    "red": "#e0554f",
    "orange": "#e8924a",
    "yellow": "#e5c04b",
    "green": "#7fb069",
    "teal": "#4fb0a5",
    "blue": "#6a9bd8",
    "purple": "#9b7fd1",
    "pink": "#e08bb0",
    "neutral": "#b9b4ab",
}


@dataclass(frozen=True, slots=True)
class Catalogue:
    """All that the page shows. `pictures` are the small ones by the paths of what they were made from, `unread`
    the pads that it has no card of.
    """

    name: str
    about: str
    studio: str
    cards: tuple[Card, ...]
    pictures: Mapping[str, Small]
    unread: tuple[Unread, ...] = ()


def page_html(catalogue: Catalogue) -> str:
    """The page."""
    title, studio = escape(catalogue.name), escape(catalogue.studio)
    cards = catalogue.cards
    ranks = {card.sku: at for at, card in enumerate(sorted(cards, key=lambda one: one.hue_order))}
    groups = "\n".join(
        _group(number, tuple(some), catalogue, ranks)
        for number, (_, some) in enumerate(groupby(cards, key=lambda one: one.base_sku), 1)
    )
    return f"""\
<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="{_POLICY}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{title} – catalogue</title>
<style>
{STYLE}</style>
</head>
<body>
<div class="screen">
<a class="skip" href="#pads">To the pads</a>
<header class="wrap head">
{f'<p class="studio" dir="auto">{studio}</p>' if studio else ""}
<h1 dir="auto">{title}</h1>
{f'<p dir="auto">{escape(catalogue.about)}</p>' if catalogue.about else ""}
</header>
{_bar(cards)}
<main class="wrap" id="pads" tabindex="-1">
<div class="told needs-script" hidden>
<output id="count" aria-live="polite" for="search"></output>
<button type="button" id="clear" hidden>Show all</button>
</div>
<p class="empty" hidden>No pad is all of that. Take a filter out, or write fewer words.</p>
<section hidden aria-labelledby="all"><h2 id="all">All pads</h2><ul class="cards" id="in-order"></ul></section>
{groups}
{_unread(catalogue.unread)}</main>
<footer class="wrap"><p>{len(cards)} pads. Beside this page lie catalogue.csv and catalogue.json, for other
programs. Prices are what the designs state; taxes and local rules are yours to mind.</p></footer>
</div>
{_paper(catalogue)}
<script>
{SCRIPT}</script>
</body>
</html>
"""


def _unread(pads: Sequence[Unread]) -> str:
    """What is missing from the page, and why: nobody is to think that these are all pads."""
    if not pads:
        return ""
    lines = (f"{one.file}{', ' * bool(one.variant)}{one.variant}: {one.told}" for one in pads)
    items = "\n".join(f'<li dir="auto">{escape(line)}</li>' for line in lines)
    number = f"{len(pads)} pad{'s' * (len(pads) > 1)}"
    return f"""\
<section aria-labelledby="unread"><h2 id="unread">Not shown: {number} that could not be made</h2>
<ul class="unread">
{items}
</ul></section>
"""


def _bar(cards: Sequence[Card]) -> str:
    axes: dict[str, dict[str, None]] = {}
    for card in cards:
        for axis, value in card.values:
            axes.setdefault(axis, {})[value] = None
    tags = dict.fromkeys(tag for card in cards for tag in card.tags)
    states = {STATES[state]: None for state in STATES if any(card.state == state for card in cards)}
    families = [name for name in FAMILIES if any(card.family == name for card in cards)]
    selects = [_select(f"axis-{axis}", axis, values) for axis, values in axes.items()]
    selects += [_select("tag", "tag", tags)] if tags else []
    selects += [_select("state", "state", states)] if len(states) > 1 else []
    sorts = {"name": "name", "hue": "hue", "sku": "SKU", "price": "price"}
    options = "".join(f'<option value="{value}">{word}</option>' for value, word in sorts.items())
    buttons = "".join(
        f'<button type="button" value="{name}" aria-pressed="false" style="--c:{_HUE_DOTS[name]}">{name}</button>'
        for name in families
    )
    colours = f'<fieldset><legend>ground</legend><div class="hues">{buttons}</div></fieldset>'
    return f"""\
<div class="bar needs-script" hidden><form class="wrap" id="find" role="search" aria-label="Pads">
<div class="field"><label for="search">search</label><input type="search" id="search" autocomplete="off"></div>
{"".join(selects)}
{colours if len(families) > 1 else ""}
<div class="field"><label for="sort">order</label><select id="sort" name="sort">
<option value="">design by design</option>{options}</select></div>
<button type="button" id="print">Print the line sheet</button>
<button type="button" id="scheme" value="">Colours</button>
</form></div>"""


def _select(name: str, label: str, values: Iterable[str]) -> str:
    options = "".join(f'<option value="{escape(value)}">{escape(value)}</option>' for value in values)
    key = escape(name)
    return (
        f'<div class="field"><label for="by-{key}" dir="auto">{escape(label)}</label>'
        f'<select id="by-{key}" name="{key}"><option value="">all</option>{options}</select></div>'
    )


def _group(number: int, cards: tuple[Card, ...], catalogue: Catalogue, ranks: Mapping[str, int]) -> str:
    first = cards[0]
    items = "\n".join(_card(card, catalogue, ranks[card.sku]) for card in cards)
    about = f'\n<p dir="auto">{escape(first.about)}</p>' if first.about else ""
    return f"""\
<section class="group" aria-labelledby="design-{number}">
<h2 id="design-{number}" dir="auto">{escape(first.design)}</h2>{about}
<ul class="cards">
{items}
</ul>
</section>"""


def _card(card: Card, catalogue: Catalogue, rank: int) -> str:
    facets: dict[str, list[str]] = {f"axis-{axis}": [value] for axis, value in card.values}
    facets |= {"tag": list(card.tags), "state": [STATES[card.state]]}
    text = " ".join((card.name, card.sku, *card.tags, *(value for _, value in card.values), card.family))
    width, height = (round(side * PIXELS_A_MM) for side in (card.width, card.height))
    data = {
        "name": card.name,
        "sku": card.sku,
        "hue": card.family,
        "hue-order": str(rank),
        "price": "" if card.price is None else f"{card.price:f}",
        "text": text,
        "facets": json.dumps(facets, ensure_ascii=False),
    }
    attributes = " ".join(f'data-{key}="{escape(value)}"' for key, value in data.items())
    values = " · ".join(value for _, value in card.values)
    title = values or card.design
    # Under its design a variant is told by its values; among all pads in order it needs the design's name too.
    of = f' <span class="of">{escape(card.design)}</span>' if values else ""
    return f"""\
<li class="card" style="--w:{width};--h:{height};--g:{card.ground.hex}" {attributes}>
{_face(card, catalogue, width, height)}
<h3 dir="auto">{escape(title)}{of}</h3>
<p class="sku">{escape(card.sku)}</p>
{_facts(card)}
{_swatches(card)}
{_findings(card)}
{_links(card)}
{_flat(card, catalogue)}</li>"""


def _face(card: Card, catalogue: Catalogue, width: int, height: int) -> str:
    small = catalogue.pictures.get(card.face)
    if small is None:
        return '<div class="face none"><span>no proof was built</span></div>'
    image = (
        f'<img src="{_beside(small.path)}" width="{width}" height="{height}" loading="lazy" '
        f'alt="Face of {escape(card.name)}">'
    )
    return f'<a class="face" href="{_from_here(card.face)}">{image}</a>'


def _facts(card: Card) -> str:
    facts = [("size", card.size, ""), ("leaves", f"{card.leaves} leaves", "")]
    if card.price is not None:
        facts.append(("price", f"{card.price:f} {card.currency}", "price"))
    told = "".join(
        f"<div><dt>{name}</dt><dd{f' class={chr(34)}{kind}{chr(34)}' if kind else ''}>{escape(value)}</dd></div>"
        for name, value, kind in facts
    )
    return f'<dl class="facts">{told}</dl>'


def _swatches(card: Card) -> str:
    items = "".join(
        f'<li style="--c:{swatch.colour}" title="{escape(swatch.name)} {swatch.colour}">'
        f'<span class="unseen">{escape(swatch.name)} {swatch.colour}</span></li>'
        for swatch in card.palette
    )
    return f'<ul class="swatches" aria-label="palette">{items}</ul>'


def _findings(card: Card) -> str:
    mark = f'<span aria-hidden="true">{_MARKS[card.state]}</span>'
    state = f'<p class="state {card.state}">{mark} {STATES[card.state]}</p>'
    if not card.findings:
        return state
    items = "".join(
        f"<li>{'allowed ' if one.allowed else ''}{one.severity} {one.check}: {escape(one.message)}</li>"
        for one in card.findings
    )
    number = len(card.findings)
    return f"{state}\n<details><summary>{number} finding{'s' * (number > 1)}</summary><ul>{items}</ul></details>"


def _links(card: Card) -> str:
    items = "".join(
        f'<li><a href="{_from_here(path)}">{word}<span class="unseen"> of {escape(card.name)}</span></a></li>'
        for path, word in card.files
    )
    return f'<ul class="links" aria-label="files">{items}</ul>'


def _flat(card: Card, catalogue: Catalogue) -> str:
    small = catalogue.pictures.get(card.flat)
    if small is None:
        return ""
    image = (
        f'<img src="{_beside(small.path)}" width="{small.width}" height="{small.height}" loading="lazy" '
        f'alt="{escape(card.name)}, the finished pad">'
    )
    return f'<a class="flat" href="{_from_here(card.flat)}">{image}</a>\n'


def _paper(catalogue: Catalogue) -> str:
    currencies = dict.fromkeys(card.currency for card in catalogue.cards if card.price is not None)
    price = f"price, {escape(next(iter(currencies)))}" if len(currencies) == 1 else "price"
    rows = "\n".join(_row(card, catalogue, len(currencies) > 1) for card in catalogue.cards)
    studio = f"<p>{escape(catalogue.studio)}</p>" if catalogue.studio else ""
    return f"""\
<div class="paper">
<header><div>{studio}<h1 dir="auto">{escape(catalogue.name)}</h1><p dir="auto">{escape(catalogue.about)}</p></div>
<div class="order"><span>shop</span><span>date</span></div></header>
<table><thead><tr><th>pad</th><th></th><th>SKU</th><th>size</th><th class="number">leaves</th>
<th class="number">{price}</th><th>order</th></tr></thead>
<tbody>
{rows}
</tbody></table>
</div>"""


def _row(card: Card, catalogue: Catalogue, with_currency: bool) -> str:
    # What cannot be printed cannot be ordered.
    never = ' class="never"' if card.state == "stop" else ""
    small = catalogue.pictures.get(card.face)
    picture = f'<img src="{_beside(small.path)}" alt="" loading="lazy">' if small else ""
    values = ", ".join(value for _, value in card.values)
    price = "" if card.price is None else f"{card.price:f}" + (f" {card.currency}" if with_currency else "")
    return (
        f'<tr{never}><td>{picture}</td><td dir="auto">{escape(card.design)}<small>{escape(values)}</small></td>'
        f'<td>{escape(card.sku)}</td><td>{card.size}</td><td class="number">{card.leaves}</td>'
        f'<td class="number">{escape(price)}</td><td class="box"></td></tr>'
    )


def _from_here(path: str) -> str:
    """A path under the output folder as the page, one folder below, links it."""
    return f"../{quote(path)}"


def _beside(path: str) -> str:
    """A small picture as the page links it."""
    return quote(path.removeprefix("catalogue/"))
