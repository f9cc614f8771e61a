"""Three invented batches: a lever and board on A4, a guillotine on letter paper in inches with tax in the
price, and a knife in yen without board, magnets or sleeve. Each from its specs to what a person sums up by
hand."""

from dataclasses import dataclass
from functools import cache

from kit import apply, folder

from padspec.costing.costed import Costed, costed
from padspec.jobs.inks import face_ink
from padspec.jobs.plan import Wanted, make_plan
from padspec.pipeline import make

TALLOW = """studio: Tallow Lane
stock: {grammage: 100 g/m2, caliper: 0.12 mm, price: 0.05}
printer: {sheet-minutes: 0.5}
cutter: {kind: lever, sheets-at-once: 10, stroke-seconds: 15}
board: {thickness: 0.6 mm, sheet: {width: 30 in, height: 40 in}, price: 3.30, stroke-seconds: 40}
adhesive: {coats: 2, rate: 200, dry-minutes: 15, set-minutes: 60, pad-seconds: 5, price: 24.00}
clamp: {height: 150 mm, count: 1, load-minutes: 4}
magnets: {count: 2, width: 25 mm, height: 80 mm, thickness: 0.76 mm, price: 0.11, seconds: 15}
sleeves: [{name: slim, width: 101 mm, length: 205 mm, price: 0.06}]
extras: [{name: label, price: 0.03, seconds: 10}, {name: ribbon, price: 0.125, seconds: 20}]
ink: {cyan: {price: 15, pages: 4000}, magenta: {price: 15, pages: 4000}, yellow: {price: 15, pages: 4000},
      black: {price: 18, pages: 6000}}
money: {currency: GBP, wage: 19.00, overhead: 0.35, spoilage: 3 %, aim: {margin: 40 %},
        fee: {share: 2.6 %, each: 0.10}, ending: .50, market-day: {fee: 60, hours: 7}}
"""
HOLLOW = """studio: Hollow Mill
sheet: {size: letter}
stock: {grammage: 28 lb bond, caliper: 0.0047 in, price: 0.035}
printer: {sheet-minutes: 0.1}
cutter: {kind: guillotine, clamp-height: 40 mm, stroke-seconds: 25}
board: {thickness: 0.022 in, sheet: {width: 26 in, height: 38 in}, price: 2.10}
adhesive: {coats: 1, rate: 250, set-minutes: 480, price: 19.50}
clamp: {height: 6 in, count: 2}
extras: []
times: {trim-strokes: 3}
money: {currency: USD, wage: 22.50, aim: {hourly: 30.00}, ending: .99, tax: {share: 8 %, in-price: true}}
"""
KURI = """studio: Kuri no ki
stock: {price: 4}
cutter: {kind: knife}
board: {thickness: 0 mm}
adhesive: {price: 3200}
extras: [{name: label, price: unknown, seconds: 0}]
money: {currency: JPY, wage: 1200, spoilage: 0 %, aim: {margin: 30 %}}
"""


@dataclass(frozen=True)
class Invented:
    """A batch: its studio, and designs as (SKU, width, height, pads, further keys)."""

    name: str
    studio: str
    designs: tuple[tuple[str, str, str, int, dict[str, object]], ...]


BATCHES = (
    Invented(
        "Saturday stall",
        TALLOW,
        (("T-MOSS", "90 mm", "190 mm", 12, {}), ("T-FERN", "90 mm", "190 mm", 7, {"magnets": 0, "price": 6.5})),
    ),
    Invented("Mill shop", HOLLOW, (("H-OATS", "3 1/4 in", "7 1/2 in", 40, {"leaves": 75}),)),
    Invented("Autumn fair", KURI, (("K-KURI", "105 mm", "148 mm", 5, {"leaves": 40}),)),
)


@cache
def reckoned(name: str) -> Costed:
    """A batch worked through."""
    batch = next(one for one in BATCHES if one.name == name)
    designs = [_design(batch.studio, *design) for design in batch.designs]
    wanted = tuple(Wanted(design, pads) for design, (_, _, _, pads, _) in zip(designs, batch.designs, strict=True))
    return costed(make_plan(batch.name, wanted), [face_ink(design) for design in designs])


def _design(studio, sku, width, height, _, keys):
    text = f"pad: List {sku}\nsku: {sku}\ntrim: {{width: {width}, height: {height}}}\nlayout: ruled\n"
    return make("x.pad.yaml", folder(apply(text, keys), studio)).design
