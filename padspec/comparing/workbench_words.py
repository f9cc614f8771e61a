"""How the fields of workbench and money are called when a change in them is told; see words.py."""

from padspec.comparing.wording import Apart, Word, Words
from padspec.resolve.money import Aim, Fee, MarketDay, Money, Tax
from padspec.resolve.workbench import Adhesive, Board, Clamp, Extra, Magnets, Sleeve, Times, Workbench

_IN_A_LIST = Apart("told with the others of its list")
_PRICE = "not stated"

WORKBENCH_WORDS: dict[type, Words] = {
    Workbench: {
        "glued_across": Apart("the safe margins tell of the glue edge"),
        "board": Word("", section="board"),
        "adhesive": Word("", section="adhesive"),
        "clamp": Word("", section="clamp"),
        "magnets": Word("", section="magnets"),
        "sleeves": Word("sleeves", "list", key="sleeves", section="sleeves"),
        "ease": Word("ease in the sleeve", "size", key="sleeve-ease", section="sleeves"),
        "sleeve_seconds": Word("time to sleeve a pad", "seconds", key="sleeve-ease.seconds", section="sleeves"),
        "extras": Word("extras", "list", key="extras", section="workbench"),
        "times": Word("", section="times"),
    },
    Board: {
        "thickness": Word("thickness", "mm", key="board.thickness"),
        "density": Word("density", "number", key="board.density"),
        "tolerance": Word("tolerance", "share", key="board.tolerance"),
        "sheet": Word("big sheet", "size", key="board.sheet"),
        "price": Word("price of a big sheet", "money", key="board.price", none=_PRICE),
        "stroke_seconds": Word("time of a stroke", "seconds", key="board.stroke-seconds"),
    },
    Adhesive: {
        "coats": Word("coats", "count", key="adhesive.coats"),
        "rate": Word("grams a square metre", "number", key="adhesive.rate"),
        "dry_minutes": Word("drying of a coat", "minutes", key="adhesive.dry-minutes"),
        "set_minutes": Word("setting", "minutes", key="adhesive.set-minutes"),
        "pad_seconds": Word("brushing of a pad", "seconds", key="adhesive.pad-seconds"),
        "price": Word("price of a kilogram", "money", key="adhesive.price", none=_PRICE),
    },
    Clamp: {
        "height": Word("height", "mm", key="clamp.height"),
        "count": Word("number", "count", key="clamp.count"),
        "load_minutes": Word("time to fill one", "minutes", key="clamp.load-minutes"),
    },
    Magnets: {
        "count": Word("on a pad", "count", key="magnets.count"),
        "size": Word("size", "size", key="magnets.width"),
        "thickness": Word("thickness", "mm", key="magnets.thickness"),
        "density": Word("density", "number", key="magnets.density"),
        "pull": Word("pull in g/cm²", "number", key="magnets.pull"),
        "measured": Word("pull measured", "flag", key="magnets.pull"),
        "slide": Word("hold against sliding", "share", key="magnets.slide"),
        "safety": Word("safety factor", "number", key="magnets.safety"),
        "seconds": Word("time to put one on", "seconds", key="magnets.seconds"),
        "price": Word("price of one", "money", key="magnets.price", none=_PRICE),
    },
    Sleeve: {"name": _IN_A_LIST, "size": _IN_A_LIST, "film": _IN_A_LIST, "price": _IN_A_LIST},
    Extra: {"name": _IN_A_LIST, "price": _IN_A_LIST, "seconds": _IN_A_LIST},
    Times: {
        "page_minutes": Word("time for a page", "minutes", key="times.page-minutes"),
        "ink_dry_minutes": Word("drying of the ink", "minutes", key="times.ink-dry-minutes"),
        "count_seconds": Word("time to count a pad off", "seconds", key="times.count-seconds"),
        "slit_seconds": Word("time to slit a pad off", "seconds", key="times.slit-seconds"),
        "trim_strokes": Word("sides trimmed again", "count", key="times.trim-strokes"),
        "check_seconds": Word("time to look a pad over", "seconds", key="times.check-seconds"),
    },
    Money: {
        "currency": Word("currency", key="money.currency"),
        "wage": Word("wage", "money", key="money.wage", none=_PRICE),
        "overhead": Word("overhead of a pad", "money", key="money.overhead"),
        "spoilage": Word("spoilage", "share", key="money.spoilage"),
        "aim": Word("", section="money"),
        "fee": Word("", section="money"),
        "wholesale": Word("wholesale", "share", key="money.wholesale"),
        "ending": Word("ending of prices", key="money.ending"),
        "tax": Word("", section="money"),
        "market_day": Word("", section="money"),
    },
    Aim: {
        "margin": Word("margin aimed at", "share", key="money.aim.margin"),
        "hourly": Word("aimed at for an hour", "money", key="money.aim.hourly"),
    },
    Fee: {
        "share": Word("share kept of a sale", "share", key="money.fee.share"),
        "each": Word("kept of each sale", "money", key="money.fee.each"),
    },
    Tax: {
        "share": Word("tax", "share", key="money.tax.share"),
        "in_price": Word("tax in the price", "flag", key="money.tax.in-price"),
    },
    MarketDay: {
        "fee": Word("cost of a market day", "money", key="money.market-day.fee", none=_PRICE),
        "hours": Word("hours of a market day", "number", key="money.market-day.hours"),
    },
}
