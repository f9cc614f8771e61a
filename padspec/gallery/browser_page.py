"""The pattern book for a browser: the gallery goes in, the text of one page and an SVG for each face come out.

The page asks for nothing but the files beside it.
"""

import base64
from collections.abc import Iterable, Iterator
from html import escape
from itertools import groupby

from padspec.base.findings import Finding
from padspec.base.numbers import number_text
from padspec.draw.png import picture_png
from padspec.draw.svg import face_svg
from padspec.gallery.art import Reducer
from padspec.gallery.script import SCRIPT
from padspec.gallery.specimen import Gallery, Specimen, shown_name, trim_text
from padspec.gallery.style import STYLE
from padspec.scene.nodes import Raster, Vector

#: Resolution that pictures keep inside an SVG, at the leaf's own size: two pixels of a fine screen each.
_SCREEN_PPI = 96.0


def face_files(gallery: Gallery) -> dict[str, bytes]:
    """The SVG of every face, pictures inside, by its path beside the page."""
    reducer, pictures = Reducer(_SCREEN_PPI), _PictureLinks()
    return {
        face_path(one): face_svg(reducer.scene(one.scene), one.label, pictures.href).encode("utf-8")
        for one in gallery.specimens
    }


def face_path(specimen: Specimen) -> str:
    """Where the SVG of a face lies, from the page."""
    return f"faces/{specimen.stem}.svg"


class _PictureLinks:
    """Links that hold the picture itself; each is made once."""

    __slots__ = ("_made",)

    def __init__(self) -> None:
        self._made: dict[str, str] = {}

    def href(self, image: Raster | Vector) -> str:
        if image.digest not in self._made:
            raster = isinstance(image, Raster)
            data = picture_png(image) if isinstance(image, Raster) else image.svg
            kind = "png" if raster else "svg+xml"
            self._made[image.digest] = f"data:image/{kind};base64,{base64.b64encode(data).decode('ascii')}"
        return self._made[image.digest]


def page_html(gallery: Gallery) -> str:
    """The page."""
    title = escape(gallery.title)
    by_layout = groupby(gallery.specimens, lambda one: one.layout)
    sections = "\n".join(_section(tuple(some)) for _, some in by_layout)
    studio = f'<p class="studio">{escape(gallery.studio)}</p>\n' if gallery.studio else ""
    layouts, grounds = _names(gallery, "layout"), _names(gallery, "ground")
    return f"""\
<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{title} – gallery</title>
<style>
{STYLE}</style>
</head>
<body>
<header class="wrap head">
{studio}<h1>{title}</h1>
<p>{len(layouts)} layouts on {len(grounds)} grounds, all at one scale. Choose a face to hold it up close;
arrow keys go from face to face.</p>
</header>
<div class="bar"><form class="wrap" hidden>
{_select("layout", "Layout", layouts)}
{_select("ground", "Ground", grounds)}
<label class="check"><input type="checkbox" name="found"> with findings</label>
<button type="reset">Show all</button>
<output id="count"></output>
</form></div>
<main class="wrap">
{sections}
<p class="none" hidden>No face is both. Show all, or choose another.</p>
</main>
<footer class="wrap">{_tally(gallery)}</footer>
<dialog aria-label="A face held up close">
<img alt="" src="data:,">
<div class="foot"><button class="back" aria-label="Back">←</button><output></output>\
<button class="on" aria-label="On">→</button><button class="close" autofocus>Close</button></div>
</dialog>
<script>
{SCRIPT}</script>
</body>
</html>
"""


def _names(gallery: Gallery, of: str) -> tuple[str, ...]:
    names = {one.layout if of == "layout" else one.ground for one in gallery.specimens}
    return tuple(sorted(names))


def _select(name: str, label: str, values: Iterable[str]) -> str:
    options = "".join(f'<option value="{escape(v)}">{escape(shown_name(v))}</option>' for v in values)
    return f'<label>{label} <select name="{name}"><option value="">Every one</option>{options}</select></label>'


def _section(specimens: tuple[Specimen, ...]) -> str:
    first = specimens[0]
    return "\n".join(
        (
            f'<section aria-label="{escape(shown_name(first.layout))}">',
            f"<h2>{escape(shown_name(first.layout))}</h2>",
            f"<p>{escape(first.about)}</p>",
            '<div class="faces">',
            *(_figure(one) for one in specimens),
            "</div>",
            "</section>",
        )
    )


def _figure(one: Specimen) -> str:
    width, height = (number_text(side, 2) for side in (one.trim.width, one.trim.height))
    label, path = escape(one.label), escape(face_path(one))
    found = "".join(_told(finding) for finding in one.findings)
    return (
        f'<figure data-layout="{escape(one.layout)}" data-ground="{escape(one.ground)}" '
        f'data-found="{len(one.findings)}" style="--w:{width}">'
        f'<a href="{path}"><img src="{path}" alt="{label}" width="{width}" height="{height}" loading="lazy"></a>'
        f"<figcaption><strong>{escape(shown_name(one.ground))}</strong>{trim_text(one.trim)}{found}</figcaption>"
        "</figure>"
    )


def _told(finding: Finding) -> str:
    text = f"{finding.check}: {finding.measured}, limit {finding.limit}"
    return f'<span class="{finding.severity.word}" title="{escape(finding.message)}">{escape(text)}</span>'


def _tally(gallery: Gallery) -> str:
    return " ".join(_tallied(gallery))


def _tallied(gallery: Gallery) -> Iterator[str]:
    found = [finding for one in gallery.specimens for finding in one.findings]
    yield f"{len(gallery.specimens)} faces."
    for word in ("error", "warning"):
        number = sum(finding.severity.word == word for finding in found)
        if number:
            yield f'<span class="{word}">{number} {word}{"s" if number > 1 else ""}.</span>'
    if not found:
        yield "Nothing to warn of."
