"""The sheet that a design wishes for, its margins and sizes, typed."""

from padspec.base.geometry import Sides, Size
from padspec.base.numbers import mm_text
from padspec.base.paper import sheet_size
from padspec.reading.defaults import defaults
from padspec.reading.tree import Mapping, Scalar
from padspec.resolve.design import SheetWish
from padspec.resolve.drafts import bundle_at
from padspec.resolve.settings import Settings, Troubles, merge
from padspec.resolve.studio import Studio


def read_sheet(studio: Mapping, design: Mapping, troubles: Troubles) -> SheetWish:
    """The sheet: the schema's defaults, then the studio's, then the design's own."""
    bundle = merge(
        merge(bundle_at(defaults("studio"), "sheet"), bundle_at(studio, "sheet")), bundle_at(design, "sheet")
    )
    settings = Settings(bundle, troubles)
    name, size = written_size(settings)
    bleed, least = settings.length("bleed"), settings.length("least-bleed")
    if least > bleed and settings.place("least-bleed").line:
        message = f"The least bleed, {mm_text(least)}, is more than the bleed, {mm_text(bleed)}."
        troubles.add(settings.place("least-bleed"), message, f"Write {mm_text(bleed)} or less.")
    return SheetWish(
        size_name=name,
        size=size,
        n_up=None if settings.text("n-up") == "most" else settings.integer("n-up"),
        gutter=settings.length("gutter"),
        bleed=bleed,
        least_bleed=min(least, bleed),
        marks=settings.flag("marks"),
    )


def refuse_margins(studio: Studio, sheet: SheetWish, root: Mapping, troubles: Troubles) -> None:
    """Margins that leave nothing of the sheet are a fault of the studio, wherever they show."""
    margins = studio.printer.margins
    width = sheet.size.width - margins.left - margins.right
    height = sheet.size.height - margins.top - margins.bottom
    if width <= 0 or height <= 0:
        place = bundle_at(root, "printer").entry("margins")
        across, upright = mm_text(margins.left + margins.right), mm_text(margins.top + margins.bottom)
        troubles.add(
            place.key_place if place else root.place,
            f"The printer's margins, {across} across and {upright} upright, leave nothing of {sheet.size_name}.",
            f"It measures {mm_text(sheet.size.width)} × {mm_text(sheet.size.height)}; margins are 3 mm to 13 mm.",
        )


def read_safe_margins(root: Mapping, troubles: Troubles) -> Sides:
    """How far from the trim anything but ground stays: wider along the glue edge."""
    studio = Settings(merge(defaults("studio"), root), troubles)
    glue = studio.section("glue-edge")
    common, glued = studio.length("safe-margin"), glue.length("margin")
    edge = glue.text("edge")
    left, head, right, foot = (glued if side == edge else common for side in ("left", "head", "right", "foot"))
    return Sides(left, head, right, foot)


def written_size(settings: Settings) -> tuple[str, Size]:
    """The name and the size of a sheet, from its name or from width and height."""
    node = settings.node("size")
    if isinstance(node, Scalar):
        try:
            return sheet_size(node.text)
        except KeyError as error:
            settings.troubles.add(node.place, f"{node.text} is not a sheet size known here.", str(error.args[0]))
            return sheet_size("A4")
    own = settings.section("size")
    return f"{own.text('width')} × {own.text('height')}", size_of(own)


def size_of(settings: Settings) -> Size:
    """A size written as width and height."""
    return Size(settings.length("width"), settings.length("height"))
