"""Where a heading breaks into lines: a text and a number of lines in, the words of each line out.

Lines may break where Unicode allows it (UAX #14, through uniseg). Of all ways the one is taken whose widest line
is as narrow as can be, so that lines come out even.
"""

import re
from dataclasses import dataclass
from functools import lru_cache
from itertools import accumulate

from padspec.compose.lettering.setting import set_line
from padspec.resolve.font import Font

#: Texts that may break at spaces alone; no rule need be looked up for them.
_PLAIN = re.compile(r"[A-Za-zÀ-ÖØ-öø-ɏ0-9 '’,.!?&-]*")
_DASHES = "-‐–—"


@lru_cache(maxsize=256)
def broken(font: Font, text: str, count: int, tracking: float = 0.0) -> tuple[str, ...]:
    """The text in at most `count` lines whose widest line is as narrow as can be.

    Lines break where the maker broke them, however many that makes; else where Unicode allows (UAX #14). Each
    piece is shaped once and the search runs on sums, so that a long heading stays quick.
    """
    if "\n" in text:
        return tuple(text.split("\n"))
    pieces = _pieces(text)
    if count == 1 or len(pieces) == 1:
        return (text,)

    shaped = [_shaped_piece(font, piece, tracking) for piece in pieces]
    starts = [0.0, *accumulate(piece.advance for piece in shaped)]

    def width(start: int, end: int) -> float:
        """From the first ink to the last; kerning across a space is too little to matter."""
        return starts[end - 1] + shaped[end - 1].right - starts[start] - shaped[start].left

    # best[k][end]: the narrowest widest line when the first `end` pieces stand in k lines, and the last break.
    best: dict[tuple[int, int], tuple[float, int]] = {(0, 0): (0.0, 0)}
    for lines in range(1, count + 1):
        for end in range(lines, len(pieces) + 1):
            options = [
                (max(best[(lines - 1, start)][0], width(start, end)), start)
                for start in range(lines - 1, end)
                if (lines - 1, start) in best
            ]
            best[(lines, end)] = min(options)
    used = min(range(1, min(count, len(pieces)) + 1), key=lambda k: (round(best[(k, len(pieces))][0], 6), k))
    return _lines(pieces, best, used)


@dataclass(frozen=True, slots=True)
class _Piece:
    """A piece of a line at an em of 1 mm: how far it moves the pen, and where its ink begins and ends."""

    advance: float
    left: float
    right: float


@lru_cache(maxsize=1024)
def _shaped_piece(font: Font, text: str, tracking: float) -> _Piece:
    line = set_line(font, text, tracking)
    air = tracking if line.letters and not line.letters[-1].joined else 0.0
    return _Piece(line.advance + air, line.ink.x, line.ink.right)


def _lines(pieces: list[str], best: dict[tuple[int, int], tuple[float, int]], used: int) -> tuple[str, ...]:
    found: list[str] = []
    end = len(pieces)
    for lines in range(used, 0, -1):
        start = best[(lines, end)][1]
        found.insert(0, "".join(pieces[start:end]).strip())
        end = start
    return tuple(found)


def _pieces(text: str) -> list[str]:
    """The text cut at every place where a line may break; long texts only at spaces, to bound the work.

    A compound keeps together where there is a space to break at: a hyphen at the end of a line stops the eye.
    """
    if (_PLAIN.fullmatch(text) and " " in text) or len(text) > 200:
        words = text.split(" ")
        return [word + " " for word in words[:-1]] + words[-1:]
    from uniseg.linebreak import line_break_units

    pieces: list[str] = []
    for unit in line_break_units(text):
        if pieces and " " in text and pieces[-1][-1] in _DASHES:
            pieces[-1] += unit
        else:
            pieces.append(unit)
    return pieces
