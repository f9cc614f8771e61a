"""A font as lettering is shaped from it."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Font:
    """A font file and the weight to set a variable font to (CSS numbers, 400 regular, 700 bold).

    `fallbacks` are the families that stand in, first to last, for characters that it lacks; they are read only
    when one is missing. `beside` are files of the maker's own that have what neither it nor its fallbacks have.
    """

    name: str
    digest: str
    data: bytes
    weight: int
    fallbacks: tuple[str, ...] = ()
    beside: tuple[str, ...] = ()

    def __hash__(self) -> int:
        """Of what tells fonts apart: they are looked up for every letter."""
        return hash((self.digest, self.weight))
