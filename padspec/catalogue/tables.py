"""The catalogue for other programs: a CSV for spreadsheets and JSON for all else."""

from collections.abc import Sequence
from typing import Any

from padspec.base.spreadsheet import csv_text
from padspec.catalogue.card import STATES, Card, Unread
from padspec.report import json_text

#: Changes when a key of the JSON means something else, or goes.
FORM = "padspec catalogue 1"
_COLUMNS = ("sku", "name", "design sku", "width mm", "height mm", "leaves", "price", "currency", "state")
_MORE_COLUMNS = ("findings", "tags", "ground", "hue")


def catalogue_csv(cards: Sequence[Card]) -> bytes:
    """One line a pad, in UTF-8 with a mark, which spreadsheets need to read it as that.

    Axes have a column each, behind those that every pad has.
    """
    axes = list(dict.fromkeys(axis for card in cards for axis, _ in card.values))
    rows = (_row(card, axes) for card in cards)
    return csv_text([[*_COLUMNS, *_MORE_COLUMNS, *axes], *rows]).encode("utf-8-sig")


def _row(card: Card, axes: list[str]) -> list[str | int | float]:
    values = dict(card.values)
    counting = sum(not finding.allowed for finding in card.findings)
    return [
        card.sku,
        card.name,
        card.base_sku,
        card.width,
        card.height,
        card.leaves,
        "" if card.price is None else float(card.price),
        card.currency,
        STATES[card.state],
        counting,
        ", ".join(card.tags),
        card.ground.hex,
        card.family,
        *(values.get(axis, "") for axis in axes),
    ]


def catalogue_json(
    name: str, about: str, studio: str, cards: Sequence[Card], unread: Sequence[Unread] = ()
) -> bytes:
    """The whole catalogue; paths are seen from the folder that it lies in, and the keys stay as they are."""
    data = {
        "form": FORM,
        "collection": name,
        "about": about or None,
        "studio": studio or None,
        "pads": [_data(card) for card in cards],
        "unreadable": [{"file": one.file, "variant": one.variant or None, "message": one.told} for one in unread],
    }
    return json_text(data).encode("utf-8", "backslashreplace")


def _data(card: Card) -> dict[str, Any]:
    return {
        "sku": card.sku,
        "name": card.name,
        "design": card.design,
        "design_sku": card.base_sku,
        "variant": dict(card.values),
        "about": card.about or None,
        "tags": list(card.tags),
        "width_mm": card.width,
        "height_mm": card.height,
        "leaves": card.leaves,
        "price": None if card.price is None else f"{card.price:f}",
        "currency": card.currency,
        "state": card.state,
        "findings": [
            {"check": one.check, "severity": one.severity, "message": one.message, "allowed": one.allowed or None}
            for one in card.findings
        ],
        "palette": {swatch.name: swatch.colour for swatch in card.palette},
        "hue": card.family,
        "files": {word: f"../{path}" for path, word in card.files},
    }
