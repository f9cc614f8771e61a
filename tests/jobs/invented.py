"""Ten invented jobs: workshops, papers, trims, gutters and cutters that differ in all that a plan depends on."""

from dataclasses import dataclass
from functools import cache

from kit import apply, folder

from padspec.jobs.plan import JobPlan, Wanted, make_plan
from padspec.pipeline import Pad, make

STUDIO = """studio: Tallow Lane
stock: {caliper: 0.11 mm, price: 0.05}
other-sheets: [{size: A3, price: 0.11}, {size: letter, price: 0.045}]
money: {currency: GBP}
"""
GUILLOTINE = STUDIO + "cutter: {kind: guillotine, error: 0.3 mm, clamp-height: 30 mm}\n"
LEVER = STUDIO + "cutter: {kind: lever, sheets-at-once: 12}\n"
SHIFTED = STUDIO + "printer: {offset: {x: 0.7 mm, y: -0.4 mm}, scale: {x: 99.6 %, y: 100.3 %}}\n"


@dataclass(frozen=True, eq=False)
class Invented:
    """A job: designs as (SKU, trim, pads, further keys), the studio, and what a person would work out for it."""

    name: str
    studio: str
    designs: tuple[tuple[str, str, str, int, dict[str, object]], ...]
    #: Sheets that one design a sheet takes, by hand.
    solo: int
    #: Sheets and pages of the plan.
    sheets: int
    pages: int


TEN = (
    # 12 × 50 × 1.05 ÷ 3 = 210, and 2 test sheets.
    Invented("One slim list", STUDIO, (("A", "90 mm", "190 mm", 12, {}),), 212, 212, 1),
    # Each alone: ⌈52.5 ÷ 3⌉ + 2 = 20; together one pad deep: ⌈52.5⌉ + 2 = 55 against 60.
    Invented("Three tasters", GUILLOTINE, tuple((sku, "90 mm", "190 mm", 1, {}) for sku in "ABC"), 60, 55, 1),
    # 198.6 × 285.6 mm hold four upright (100 wide) beside two that lie: 20 × 52.5 ÷ 6 = 175, and 2.
    Invented("Butted stubs", LEVER, (("A", "100 mm", "70 mm", 20, {"sheet.gutter": "0 mm"}),), 177, 177, 1),
    Invented(
        "Two trims",
        STUDIO,
        (("A", "90 mm", "190 mm", 2, {}), ("B", "92 mm", "136 mm", 3, {})),
        79,  # 105 ÷ 3 + 2 = 37 and ⌈157.5 ÷ 4⌉ + 2 = 42; nothing shared is better
        79,
        2,
    ),
    # 6 × 52.5 ÷ 3 + 2.
    Invented(
        "Letter in inches", SHIFTED, (("A", "3 1/4 in", "7 1/2 in", 6, {"sheet.size": "letter"}),), 107, 107, 1
    ),
    Invented(
        "Thick and thin",
        GUILLOTINE,
        (("A", "90 mm", "190 mm", 4, {"leaves": 100}), ("B", "90 mm", "190 mm", 4, {"leaves": 25})),
        179,  # 4 × 105 ÷ 3 + 2 = 142 and 4 × 26.25 ÷ 3 + 2 = 37
        179,
        2,
    ),
    # 6 × 52.5 ÷ 2 = 157.5: 158, and 2.
    Invented("Two asked for", STUDIO, (("A", "90 mm", "190 mm", 6, {"sheet.n-up": 2}),), 160, 160, 1),
    # Two by two upright and one that lies under them: 10 × 52.5 ÷ 5 + 2.
    Invented(
        "A mixture on one sheet",
        GUILLOTINE,
        (("A", "75 mm", "105 mm", 10, {"sheet.gutter": "0 mm"}),),
        107,
        107,
        1,
    ),
    Invented(
        "Wide paper",
        SHIFTED.replace("offset:", "turn: left, offset:"),
        (("A", "90 mm", "190 mm", 5, {"sheet.size": {"width": "420 mm", "height": "297 mm"}}),),
        46,  # 5 × 52.5 ÷ 6 = 43.75: 44, and 2
        46,
        1,
    ),
    Invented(
        "A stall of seven",
        LEVER,
        tuple((f"S{n}", "90 mm", "130 mm", pads, {}) for n, pads in enumerate((1, 2, 2, 3, 4, 5, 7))),
        333,  # 16 + 29 + 29 + 42 + 55 + 68 + 94, each ⌈pads × 52.5 ÷ 4⌉ + 2
        324,  # 24 pads in stacks: 6 depths of 53 on four slots, 318, and 2 test sheets for each of 3 pages
        3,
    ),
)


@cache
def pads(job: Invented) -> tuple[Pad, ...]:
    return tuple(_pad(job.studio, *design) for design in job.designs)


def _pad(studio: str, sku: str, width: str, height: str, _: int, keys: dict[str, object]) -> Pad:
    text = f"pad: List {sku}\nsku: {sku}\ntrim: {{width: {width}, height: {height}}}\nlayout: ruled\n"
    return make("x.pad.yaml", folder(apply(text, keys), studio))


@cache
def planned(job: Invented) -> JobPlan:
    wanted = tuple(Wanted(pad.design, design[3]) for pad, design in zip(pads(job), job.designs, strict=True))
    return make_plan(job.name, wanted)
