"""The text of long outlines, made once: variants of a design share the pattern on their grounds, and every file of
one shows it.
"""

from collections.abc import Callable

from padspec.scene.outline import Outline

#: Shorter outlines are written as quickly as they are looked up.
_LONG = 200
_MOST_KEPT = 16


class KeptText:
    """The texts of the long outlines that were last written, each known by being the very same outline."""

    __slots__ = ("_kept", "_write")

    def __init__(self, write: Callable[[Outline], str]) -> None:
        self._write = write
        self._kept: dict[int, tuple[Outline, str]] = {}

    def of(self, outline: Outline) -> str:
        """What `write` makes of an outline."""
        if len(outline) < _LONG:
            return self._write(outline)
        # By identity: to compare the values of a thousand dots costs more than writing a few.
        known = self._kept.get(id(outline))
        if known is None or known[0] is not outline:
            if len(self._kept) >= _MOST_KEPT:
                self._kept.pop(next(iter(self._kept)))
            known = self._kept[id(outline)] = (outline, self._write(outline))
        return known[1]
