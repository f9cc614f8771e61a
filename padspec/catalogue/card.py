"""One pad as a catalogue shows it, from what its build told and wrote."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Any, Literal

from padspec.base.colour import Colour
from padspec.base.numbers import number_text
from padspec.catalogue.hue import family, hue_order

State = Literal["ready", "look", "stop"]
STATES: dict[State, str] = {"ready": "ready to print", "look": "to be looked at", "stop": "not to be printed"}
_FACE, _FLAT = "face.png", "flat-lay.png"
#: What a card links to, by the names of files.
_LINKS = (
    ("sheet.pdf", "sheet"),
    ("face.svg", "face"),
    ("cuts.svg", "cuts"),
    ("press.pdf", "press"),
    ("findings.json", "findings"),
)


@dataclass(frozen=True, slots=True)
class Swatch:
    """A colour of the palette by its name."""

    name: str
    colour: str


@dataclass(frozen=True, slots=True)
class Said:
    """One finding: its check, severity and message; `allowed` is the reason why it counts no more, or empty."""

    check: str
    severity: str
    message: str
    allowed: str


@dataclass(frozen=True, slots=True)
class Unread:
    """A pad that could not be made: its design's file, its variant in words or empty, and what is wrong."""

    file: str
    variant: str
    told: str


@dataclass(frozen=True, slots=True)
class Card:
    """One pad. `values` are those of its variant by axis; sizes are in mm; `face` and `flat` are the paths of
    proof and flat-lay under the output folder, empty where there is none; `files` are paths with a word for each.
    """

    sku: str
    name: str
    design: str
    base_sku: str
    values: tuple[tuple[str, str], ...]
    about: str
    tags: tuple[str, ...]
    width: float
    height: float
    leaves: int
    price: Decimal | None
    currency: str
    state: State
    findings: tuple[Said, ...]
    palette: tuple[Swatch, ...]
    face: str
    flat: str
    files: tuple[tuple[str, str], ...]

    @property
    def size(self) -> str:
        """Its trim, as people write it."""
        return f"{number_text(self.width, 1)} × {number_text(self.height, 1)} mm"

    @property
    def ground(self) -> Colour:
        """The colour of its ground, which it is sorted by."""
        named = {swatch.name: swatch.colour for swatch in self.palette}
        return Colour.from_hex(named.get("ground", "#ffffff"))

    @property
    def family(self) -> str:
        """The family of hues of its ground."""
        return family(self.ground)

    @property
    def hue_order(self) -> tuple[int, float, float]:
        """What it is sorted by among other colours."""
        return hue_order(self.ground)


def card_of(summary: dict[str, Any], files: Sequence[str], flat: bool) -> Card:
    """The card of one pad, from its summary (report.pad_data) and the paths of its files.

    `flat` says whether its flat-lay lies in its folder.
    """
    sku, there = summary["sku"], frozenset(files)
    links = ((f"{sku}/{name}", word) for name, word in _LINKS)
    return Card(
        sku=sku,
        name=summary["design"],
        design=summary["base_name"],
        base_sku=summary["base_sku"],
        values=tuple(summary["variant"].items()),
        about=summary["about"] or "",
        tags=tuple(summary["tags"]),
        width=summary["trim"]["width"],
        height=summary["trim"]["height"],
        leaves=summary["leaves"],
        price=None if summary["price"] is None else Decimal(summary["price"]),
        currency=summary["currency"],
        state=_state(summary),
        findings=tuple(_said(finding) for finding in summary["findings"]),
        palette=tuple(Swatch(one["name"], one["colour"]) for one in summary["palette"]),
        face=f"{sku}/{_FACE}" if f"{sku}/{_FACE}" in there else "",
        flat=f"{sku}/{_FLAT}" if flat else "",
        files=tuple((path, word) for path, word in links if path in there),
    )


def _state(summary: dict[str, Any]) -> State:
    if summary["state"] == "failed":
        return "stop"
    counting = {finding["severity"] for finding in summary["findings"] if not finding["allowed"]}
    return "look" if "warning" in counting else "ready"


def _said(finding: dict[str, Any]) -> Said:
    return Said(finding["check"], finding["severity"], finding["message"], finding["allowed"] or "")
