"""A costed batch in, its job ticket out: pads, what to fetch, steps, quality points, cautions. A value."""

from dataclasses import dataclass

from padspec.costing.costed import Costed
from padspec.ticket.cautions import Caution, cautions_of
from padspec.ticket.materials import Material, materials_of
from padspec.ticket.steps import Step, steps_of

#: What a good pad shows, and how it is seen: common practice, no published source.
QUALITY = (
    ("Flat glue edge", "A ruler laid along it shows no light; no leaf stands back or out."),
    ("Flip test", "Bend the pad open at three places and flip through it: no leaf comes loose, no glue cracks."),
    ("Clean tear", "Of one pad in each load tear off the last leaf: it comes whole, glue stays behind."),
    ("Count", "Count the leaves of the first and the last pad of each load."),
    (
        "Square and clean",
        "Sides flush with the back, no white edge, no fingerprints, colours as on the last batch.",
    ),
)


@dataclass(frozen=True, slots=True)
class Ticket:
    """Everything on the ticket of one batch. `folder` is where its pages and drawings lie."""

    found: Costed
    folder: str
    materials: tuple[Material, ...]
    steps: tuple[Step, ...]
    quality: tuple[tuple[str, str], ...]
    cautions: tuple[Caution, ...]


def ticket_of(found: Costed, folder: str) -> Ticket:
    """The ticket of a batch."""
    return Ticket(
        found=found,
        folder=folder,
        materials=materials_of(found.batch),
        steps=steps_of(found, folder),
        quality=QUALITY,
        cautions=cautions_of(found.batch),
    )
