"""The text of a page in, the face that it is set in out: just the letters that it has, to be carried by the page.

So a ticket looks and breaks alike on every machine, and fetches nothing.
"""

import base64
from io import BytesIO

from padspec.fonts import PLAIN, family_file

#: Weights that the page uses; letters outside the face are set in whatever the machine has.
_WEIGHTS = (400, 700)


def face_rule(text: str) -> str:
    """A `@font-face` rule with the letters of a text, as WOFF2; the same text gives the same bytes."""
    packed = base64.b64encode(_subset(text)).decode("ascii")
    first, last = _WEIGHTS
    return (
        f'@font-face {{ font-family: "{PLAIN}"; font-weight: {first} {last}; '
        f'src: url(data:font/woff2;base64,{packed}) format("woff2"); }}\n'
    )


def _subset(text: str) -> bytes:
    from fontTools.subset import Options, Subsetter
    from fontTools.ttLib import TTFont
    from fontTools.varLib.instancer import instantiateVariableFont

    data = family_file(PLAIN)
    assert data is not None, "the small print's family is installed with padspec"
    font = TTFont(BytesIO(data), recalcTimestamp=False)
    options = Options(layout_features=["kern", "mark", "ccmp", "tnum"], notdef_outline=True, desubroutinize=True)
    options.recalc_timestamp = False
    subsetter = Subsetter(options)
    subsetter.populate(text=text)
    subsetter.subset(font)
    font = instantiateVariableFont(font, {"wght": _WEIGHTS})
    font.flavor = "woff2"
    out = BytesIO()
    font.save(out, reorderTables=False)
    return out.getvalue()
