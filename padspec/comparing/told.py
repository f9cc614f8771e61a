"""A change as a value, and as a sentence."""

from dataclasses import dataclass

from padspec.base.place import Place


@dataclass(frozen=True, slots=True)
class Change:
    """One thing that changed: under which head, what, and how it was and is in words, either empty where it speaks
    for itself.

    `measure` says by how much (ΔE 12, 2 more), `delta` is the colour difference as a number, `shows` what is drawn
    in a colour of the palette, `place` where it stands in the YAML now, None where it no longer does.
    """

    section: str
    what: str
    before: str
    after: str
    measure: str = ""
    delta: float | None = None
    shows: tuple[str, ...] = ()
    place: Place | None = None

    @property
    def sentence(self) -> str:
        """The change in one line.

        >>> Change("rows", "pitch", "8 mm", "7 mm").sentence
        'rows: pitch 8 mm → 7 mm'
        """
        head = f"{self.section}: {self.what}" if self.section else self.what
        if self.before and self.after:
            told = f"{head} {self.before} → {self.after}"
        elif self.before or self.after:
            told = f"{head}: {self.before or self.after}"
        else:
            told = head
        told += f", {self.measure}" if self.measure else ""
        return told + (f" ({', '.join(self.shows)})" if self.shows else "")
