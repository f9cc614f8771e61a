"""How a pad is finished: how thick it is, its magnets, and the sleeve that it goes into."""

from dataclasses import dataclass

from padspec.base.geometry import Size
from padspec.base.nearest import did_you_mean
from padspec.base.numbers import mm_text
from padspec.base.place import Place
from padspec.base.sleeve_fit import largest_pad, least_bag
from padspec.base.thickness import Thickness
from padspec.resolve.settings import Settings
from padspec.resolve.studio import Studio
from padspec.resolve.workbench import Sleeve


@dataclass(frozen=True, slots=True)
class Finish:
    """What is done to the block. `sleeve` is None where the pad goes into none; `wanted` says that one was meant
    to be found, by name or because the studio keeps sleeves (`named`: by name); `place` is where the design says
    so, `magnets_place` where it says its magnets.
    """

    thickness: Thickness
    magnets: int
    sleeve: Sleeve | None
    wanted: bool
    named: bool
    place: Place
    magnets_place: Place


def thickness_of(own: Settings, studio: Studio) -> Thickness:
    """Of a design with these settings: leaves × caliper, the board, and the magnets it takes."""
    bench = studio.bench
    magnet = bench.magnets.thickness if magnets_of(own, studio) else 0.0
    return Thickness(own.integer("leaves") * studio.stock.caliper, bench.board.thickness, magnet)


def magnets_of(own: Settings, studio: Studio) -> int:
    """How many magnets go on: the design's own number, else the studio's."""
    return own.integer("magnets") if own.has("magnets") else studio.bench.magnets.count


def read_finish(own: Settings, trim: Size, studio: Studio) -> Finish:
    """The finish of a design of this trim; a sleeve that the studio does not have is told."""
    thickness = thickness_of(own, studio)
    named = own.text("sleeve")
    fitted = own.section("trim").text("fit-sleeve") if own.section("trim").has("fit-sleeve") else ""
    if named == "auto" and fitted:
        named = fitted
    sleeve = None
    if named == "auto":
        sleeve = best_sleeve(trim, thickness.whole, studio)
    elif named != "none":
        sleeve = sleeve_named(named, own, "sleeve", studio)
    return Finish(
        thickness=thickness,
        magnets=magnets_of(own, studio),
        sleeve=sleeve,
        wanted=named != "none" and (named != "auto" or bool(studio.bench.sleeves)),
        named=named not in ("none", "auto"),
        place=own.place("sleeve") if own.place("sleeve").line else own.place("trim"),
        magnets_place=own.place("magnets") if own.has("magnets") else own.place("pad"),
    )


def sleeve_named(name: str, own: Settings, key: str, studio: Studio) -> Sleeve | None:
    """The studio's sleeve of a name; one that it does not have is told, and None."""
    sleeves = {sleeve.name: sleeve for sleeve in studio.bench.sleeves}
    if name in sleeves:
        return sleeves[name]
    mend = "Write into studio.yaml: sleeves: [{name: slim, width: 100 mm, length: 205 mm}]."
    if sleeves:
        mend = did_you_mean(name, tuple(sleeves)) or f"It has {', '.join(sleeves)}."
    own.troubles.add(own.place(key), f"The studio has no sleeve {name}.", mend)
    return None


def best_sleeve(trim: Size, thickness: float, studio: Studio) -> Sleeve | None:
    """The sleeve that the pad goes into with most of its ease, and of those with the least air; None where it goes
    into none.
    """
    least = least_bag(trim, thickness)
    ease = studio.bench.ease

    def fit(sleeve: Sleeve) -> tuple[float, float]:
        spare = Size(sleeve.size.width - least.width, sleeve.size.height - least.height)
        lacking = max(ease.width - spare.width, 0.0) + max(ease.height - spare.height, 0.0)
        return round(lacking, 6), round(sleeve.size.width * sleeve.size.height, 6)

    holding = [
        sleeve
        for sleeve in studio.bench.sleeves
        if sleeve.size.width >= least.width - 1e-9 and sleeve.size.height >= least.height - 1e-9
    ]
    return min(holding, key=fit, default=None)


def fitted_trim(own: Settings, studio: Studio) -> tuple[Size, Sleeve] | None:
    """The largest leaf for the sleeve that `trim` names; None where it names none that can be had."""
    trim = own.section("trim")
    sleeve = sleeve_named(trim.text("fit-sleeve"), trim, "fit-sleeve", studio)
    if sleeve is None:
        return None
    thickness = thickness_of(own, studio).whole
    largest = largest_pad(sleeve.size, thickness, studio.bench.ease)
    if min(largest.width, largest.height) <= 0:
        message = f"A block of {mm_text(thickness)} fills the sleeve {sleeve.name} by its thickness alone."
        trim.troubles.add(trim.place("fit-sleeve"), message, "Choose a larger sleeve, or fewer leaves.")
        return None
    return largest, sleeve
