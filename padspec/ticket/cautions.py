"""What to mind in the workshop: the usual cautions, each where the batch gives cause for it.

Common practice but where a source is named; the maker of a tool or a product, and the rules of the place, come
first.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from padspec.batch.batch import Batch
from padspec.sheet.cautions import CAUTIONS

#: Film thinner than this, 0.001 in, has to carry a warning in several places of the United States (from a summary
#: of their codes); other places have rules of their own.
THIN_FILM = 0.0254


@dataclass(frozen=True, slots=True)
class Caution:
    """A heading and what to mind."""

    about: str
    text: str


def cautions_of(batch: Batch) -> tuple[Caution, ...]:
    """Those that the batch gives cause for."""
    return tuple(_cautions(batch))


def _cautions(batch: Batch) -> Iterator[Caution]:
    cutter = batch.lots[0].design.studio.cutter
    blades = CAUTIONS[cutter.kind]
    if batch.boards and cutter.kind != "knife":
        blades += (
            " Board and slitting by knife: a metal safety rule, a fresh blade, several light passes, away from"
        )
        blades += " the hand; spent blades into a closed tin."
    yield Caution("Blades", blades)
    yield Caution(
        "Adhesive",
        "Its safety data sheet comes first. Air the room, keep it off skin and eyes, away from food and "
        "children; one "
        "with solvent wants extraction and no flame near. Its own drying times win over those printed here.",
    )
    if any(lot.hold is not None for lot in batch.lots):
        yield Caution(
            "Magnets",
            "Keep loose magnets from children: swallowed ones injure. Small strong ones stay off pads or are "
            "held fast "
            "under board; keep all magnets 15 cm and more from pacemakers and other implants. Rules differ by "
            "place.",
        )
    films = [lot.sleeve.sleeve.film for lot in batch.lots if lot.sleeve is not None]
    if films:
        yield Caution("Bags", f"Plastic bags are no toy: danger of suffocation. {_film(films)}")


def _film(films: list[float | None]) -> str:
    thin = any(film is not None and film < THIN_FILM for film in films)
    if thin:
        told = (
            "This film is thinner than 0.001 in, for which several places ask a printed warning; see your local "
            "rules."
        )
    elif None in films:
        told = (
            "Film thinner than 0.001 in has to carry a warning in several places: look at the pack and at local "
            "rules."
        )
    else:
        told = "Whether a bag of this size must carry a warning, your local rules say."
    return told
