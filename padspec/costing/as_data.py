"""Costs and prices as plain data: amounts as exact text, in the currency of the studio."""

from collections.abc import Mapping, Sequence
from fractions import Fraction
from typing import Any

from padspec.base.money import exact_text
from padspec.costing.costed import Costed, Offer, Priced
from padspec.costing.lines import CostLine
from padspec.costing.what_if import PARTS, Size
from padspec.schedule.as_data import timeline_data


def cost_data(found: Costed, sizes: Mapping[str, Sequence[Size]]) -> dict[str, Any]:
    """The whole reckoning; `sizes` has the other sizes of batch by SKU."""
    studio = found.batch.lots[0].design.studio
    return {
        "job": found.batch.plan.name,
        "currency": studio.currency,
        "total": exact_text(found.total),
        "lots": [{**_lot(lot), **_other_sizes(lot, sizes)} for lot in found.lots],
        "time": timeline_data(found.timeline),
    }


def _lot(lot: Priced) -> dict[str, Any]:
    cost = lot.cost
    return {
        "sku": cost.lot.design.sku,
        "pads": cost.lot.pads,
        "lines": [_line(line) for line in cost.lines],
        "total": exact_text(cost.total),
        "not_in_it": [line.name for line in cost.lacking],
        "spoilage": _share(cost.spoilage),
        "cost_of_a_good_pad": exact_text(cost.each),
        "hours_by_hand": exact_text(cost.hours),
        "offers": [_offer(offer) for offer in lot.offers],
    }


def _line(line: CostLine) -> dict[str, Any]:
    return {
        "name": line.name,
        "what": line.what,
        "amount": None if line.amount is None else exact_text(line.amount),
        "lacks": line.lacks,
        "estimate": line.estimate,
    }


def _offer(offer: Offer) -> dict[str, Any]:
    price = offer.price
    return {
        "name": offer.name,
        "price": f"{price.shown:f}",
        "customer_pays": exact_text(price.paid),
        "tax": exact_text(price.tax),
        "fee": exact_text(price.fee),
        "kept": exact_text(price.kept),
        "margin": _share(price.margin),
        "for_an_hour": None if price.hourly is None else exact_text(price.hourly),
        "pads_for_a_market_day": offer.market_day,
    }


def _other_sizes(lot: Priced, sizes: Mapping[str, Sequence[Size]]) -> dict[str, Any]:
    found = sizes.get(lot.cost.lot.design.sku)
    return {} if found is None else {"other_sizes": [_size(size) for size in found]}


def _size(size: Size) -> dict[str, Any]:
    return {
        "pads": size.pads,
        "sheets": size.sheets,
        "minutes_by_hand": round(size.hands, 3),
        "minutes": round(size.minutes, 3),
        "cost_of_a_good_pad": exact_text(size.each),
        "made_up_of": {name: exact_text(part) for name, part in zip(PARTS, size.parts, strict=True)},
        "price": f"{size.price:f}",
    }


def _share(share: Fraction) -> float:
    return round(float(share), 6)
