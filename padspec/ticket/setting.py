"""Plain text in, HTML out: what means something to HTML escaped, a number kept on one line with its unit."""

import re
from html import escape

_NUMBER_AND_UNIT = re.compile(r"(?<=[0-9]) (?=(?:mm|cm|min|h|g|%|×|leaves|pads|sheets)\b|%|×)")
_NO_BREAK = "\N{NO-BREAK SPACE}"


def set_text(text: str) -> str:
    """The text, to stand in a page.

    >>> set_text("7 mm & 50 %").replace("\N{NO-BREAK SPACE}", "~")
    '7~mm &amp; 50~%'
    """
    return escape(_NUMBER_AND_UNIT.sub(_NO_BREAK, text))
