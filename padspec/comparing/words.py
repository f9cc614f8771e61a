"""How every field of a resolved design is called and measured when a change in it is told.

One line for each field of each dataclass that a `Design` is made of. A field that no one is told of is `Apart`,
with the reason; a test fails for a field that has neither.
"""

from padspec.base.thickness import Thickness
from padspec.comparing.studio_words import STUDIO_WORDS
from padspec.comparing.wording import Apart, Word, Words
from padspec.comparing.workbench_words import WORKBENCH_WORDS
from padspec.resolve.blocks.art import Art
from padspec.resolve.blocks.columns import Columns
from padspec.resolve.blocks.grid import Grid
from padspec.resolve.blocks.heading import Edge, Heading
from padspec.resolve.blocks.marks import Marks
from padspec.resolve.blocks.panel import Panel
from padspec.resolve.blocks.rows import Labels, Rows, Squares, Tail
from padspec.resolve.blocks.space import Space
from padspec.resolve.blocks.stack import Stack
from padspec.resolve.design import Allowance, Design, Limit, SheetWish
from padspec.resolve.finish import Finish
from padspec.resolve.font import Font
from padspec.resolve.ground import Ground, Pattern
from padspec.resolve.listing import Listing
from padspec.resolve.pictures import CutoutRecord, PlacedPicture

_ID = Apart("blocks are paired by it")
_HOLDS = Apart("what a block holds is compared block by block")
_PIXELS = Apart("they follow from the file, the cutout and the placed size")
_PLACE = Apart("where something stands is not what it says")
_ALIGN = Word("aligned", key="align")

WORDS: dict[type, Words] = {
    Design: {
        "name": Word("name", "quoted", key="pad"),
        "sku": Word("SKU", key="sku"),
        "file": Word("file"),
        "place": _PLACE,
        "trim": Word("trim size", "size", key="trim"),
        "leaves": Word("leaves", "count", key="leaves"),
        "date": Word("date in the files", key="date"),
        "layout": Word("layout", key="layout"),
        "palette": Apart("told name by name"),
        "ground": Word("", section="ground"),
        "face": Apart("told block by block"),
        "sheet": Word("", section="sheet"),
        "studio": Word(""),
        "safe": Word("safe margins", "sides", section="sheet"),
        "small_print": Word("small print", section="sheet"),
        "limits": Apart("told check by check"),
        "allowances": Apart("told check by check"),
        "keys": _PLACE,
        "listing": Word(""),
        "finish": Word("", section="finish"),
    },
    Thickness: {
        "leaves": Word("leaves together", "mm"),
        "board": Word("board of the pad", "mm"),
        "magnet": Word("magnet behind it", "mm"),
    },
    Finish: {
        "thickness": Word(""),
        "magnets": Word("magnets", "count", key="magnets"),
        "sleeve": Word("sleeve", "list", key="sleeve"),
        "wanted": Apart("the sleeve tells of it"),
        "named": Apart("the sleeve tells of it"),
        "magnets_place": _PLACE,
        "place": _PLACE,
    },
    Listing: {
        "own_sku": Word("SKU without the variant", key="sku"),
        "own_name": Apart("the name tells of it"),
        "values": Word("variant", "pairs"),
        "tags": Word("tags", "texts", key="tags"),
        "price": Word("price", "money", key="price"),
        "about": Word("about", "quoted", key="about"),
        "barcode": Word("number", key="barcode"),
        "link": Word("link", "quoted", key="link"),
    },
    Limit: {
        "check": Apart("limits are paired by it"),
        "severity": Apart("limits are paired by it"),
        "text": Word("limit"),
        "place": _PLACE,
    },
    Allowance: {"check": Apart("paired by it"), "reason": Word("accepted", "quoted"), "place": _PLACE},
    SheetWish: {
        "size_name": Word("paper", key="sheet.size"),
        "size": Word("paper size", "size", key="sheet.size"),
        "n_up": Word("leaves wished for on a sheet", "count", key="sheet.n-up", none="as many as fit"),
        "gutter": Word("gutter", "mm", key="sheet.gutter"),
        "bleed": Word("bleed", "mm", key="sheet.bleed"),
        "least_bleed": Word("least bleed", "mm", key="sheet.least-bleed"),
        "marks": Word("crop marks", "flag", key="sheet.marks"),
    },
    Ground: {
        "colour": Word("colour", "colour", key="ground.colour"),
        "pattern": Word("pattern", key="ground.pattern"),
    },
    Pattern: {
        "kind": Word("kind", key="ground.pattern.kind"),
        "colour": Word("colour", "colour", key="ground.pattern.colour"),
        "size": Word("size", "mm", key="ground.pattern.size"),
        "mark": Word("mark", "share", key="ground.pattern.mark"),
        "angle": Word("angle", "degrees", key="ground.pattern.angle"),
        "phase": Word("phase", key="ground.pattern.phase"),
        "colours": Word("further colours", "texts", key="ground.pattern.colours"),
        "seed": Word("seed", "number", key="ground.pattern.seed"),
        "turn": Word("turn", "degrees", key="ground.pattern.turn"),
        "jitter": Word("jitter", "share", key="ground.pattern.jitter"),
        "picture": Word("picture", key="ground.pattern.file"),
    },
    PlacedPicture: {
        "image": _PIXELS,
        "width": Word("width", "mm"),
        "height": Word("height", "mm"),
        "frame": Word("frame", "mm"),
        "fills": Apart("it follows from the file and the cutout"),
        "source": Word("own size", "pixels"),
        "cutout": Word(""),
    },
    CutoutRecord: {
        "wish": Word("cutout asked for", key="cutout"),
        "method": Word("cutout", key="cutout"),
        "border_spread": Apart("findings tell it"),
        "border_limit": Apart("it is padspec's own"),
        "removed": Word("background taken away", "rough share", key="cutout"),
        "doubt": Word("doubt about the cutout", key="cutout"),
        "doubt_share": Apart("findings tell it"),
        "doubt_reach": Apart("findings tell it"),
    },
    Font: {
        "name": Word("font", key="font"),
        "digest": Word("content of the font file", "digest", key="font"),
        "data": Apart("its digest is told"),
        "weight": Word("font weight", "number", key="font-weight"),
        "fallbacks": Word("stand-in fonts", "texts", key="font"),
        "beside": Word("own stand-in fonts", "texts", key="font"),
    },
    Art: {
        "id": _ID,
        "grow": Word("share of spare height", "number"),
        "file": Word("picture", key="file"),
        "image": _PIXELS,
        "width": Word("width", "mm", key="width"),
        "height": Word("height", "mm", key="height"),
        "overlap": Word("overlap", "mm", key="overlap"),
        "inset": Word("inset", "mm", key="inset"),
        "align": _ALIGN,
        "corner": Word("corner", "mm", key="corner"),
        "frame": Word("frame", "mm", key="frame"),
        "frame_colour": Word("frame colour", "colour", key="frame-colour", beside="frame"),
        "source": Word("the picture's own size", "pixels", key="file"),
        "cutout": Word(""),
        "fills": Word("fills", key="fills"),
    },
    Heading: {
        "id": _ID,
        "grow": Word("share of spare height", "number"),
        "text": Word("text", "quoted", key="text"),
        "font": Word(""),
        "size": Word("size", "mm", key="size"),
        "least_size": Word("least size", "mm", key="least-size"),
        "lines": Word("most lines", "count", key="lines"),
        "colour": Word("colour", "colour", key="colour"),
        "align": _ALIGN,
        "space": Word("space below", "mm", key="space"),
        "fit": Word("fitted by", key="fit"),
        "most_size": Word("most size", "mm", key="most-size"),
        "tracking": Word("tracking", "share", key="tracking"),
        "arc": Word("arc", "degrees", key="arc"),
        "edge": Word("outline", key="outline"),
        "seat": Word("seat", key="seat"),
    },
    Edge: {
        "width": Word("width", "mm", key="outline"),
        "colour": Word("colour", "colour", key="outline-colour"),
    },
    Rows: {
        "id": _ID,
        "grow": Word("share of spare height", "number"),
        "pitch": Word("pitch", "mm", key="pitch"),
        "count": Word("count asked for", "count", key="count", none="as many as fit"),
        "squares": Word("check box", key="checkbox"),
        "labels": Word("labels", key="labels"),
        "tail": Word(""),
        "gap": Word("gap before the rule", "mm", key="checkbox-gap"),
        "colour": Word("rule colour", "colour", key="colour"),
        "weight": Word("rule weight", "mm", key="weight"),
        "heavy_every": Word("heavy rule every", "number", key="heavy-every"),
        "heavy_weight": Word("heavy rule weight", "mm", key="heavy-weight", beside="heavy_every"),
        "line": Word("rule", key="line"),
        "ends": Word("ends of the rule", key="ends"),
    },
    Squares: {
        "size": Word("size", "mm", key="checkbox"),
        "count": Word("count", "count", key="checkbox-count"),
        "between": Word("distance", "mm", key="checkbox-between"),
        "corner": Word("corner", "mm", key="checkbox-corner"),
        "double": Word("double line", "flag", key="checkbox-line"),
        "seat": Word("seat", key="checkbox-seat"),
        "colour": Word("colour", "colour", key="checkbox-colour"),
    },
    Labels: {
        "texts": Word("texts", "texts", key="labels", none="numbers"),
        "first": Word("first number", "number", key="label-first"),
        "every": Word("on every", "number", key="label-every"),
        "font": Word(""),
        "size": Word("size", "mm", key="label-size"),
        "colour": Word("colour", "colour", key="label-colour"),
        "width": Word("column", "mm", key="label-width", none="as wide as needed"),
    },
    Tail: {
        "quantity": Word("rule for a quantity", "mm", key="quantity"),
        "priority": Word("circles for a priority", "count", key="priority"),
    },
    Grid: {
        "id": _ID,
        "grow": Word("share of spare height", "number"),
        "pitch": Word("pitch", "mm", key="pitch"),
        "mark": Word("drawn as", key="mark"),
        "weight": Word("weight", "mm", key="weight"),
        "dot": Word("dot", "mm", key="dot"),
        "colour": Word("colour", "colour", key="colour"),
        "heavy_every": Word("heavy line every", "number", key="heavy-every"),
    },
    Marks: {
        "id": _ID,
        "grow": Word("share of spare height", "number"),
        "count": Word("count", "count", key="count"),
        "across": Word("in a line", "number", key="across"),
        "size": Word("size", "mm", key="size"),
        "gap": Word("gap", "mm", key="gap"),
        "shape": Word("shape", key="shape"),
        "numbered": Word("numbered", "flag", key="numbered"),
        "numeral": Word("size of the numbers", "share", key="numeral", beside="numbered"),
        "font": Word(""),
        "colour": Word("colour", "colour", key="colour"),
        "numeral_colour": Word("colour of the numbers", "colour", key="numeral-colour", beside="numbered"),
        "weight": Word("weight", "mm", key="weight"),
    },
    Space: {
        "id": _ID,
        "grow": Word("share of spare height", "number"),
        "height": Word("height", "mm", key="height", none="what is left"),
    },
    Panel: {
        "id": _ID,
        "grow": Word("share of spare height", "number"),
        "holds": _HOLDS,
        "colour": Word("colour", "colour", key="colour"),
        "opacity": Word("opacity", "share", key="opacity"),
        "corner": Word("corner", "mm", key="corner"),
        "inset": Word("inset", "mm", key="inset"),
        "pad": Word("padding", "mm", key="pad"),
    },
    Columns: {
        "id": _ID,
        "grow": Word("share of spare height", "number"),
        "holds": _HOLDS,
        "shares": Word("widths", "numbers", key="shares"),
        "gap": Word("gap", "mm", key="gap"),
        "inset": Word("inset", "mm", key="inset"),
        "seat": Word("seat", key="seat"),
    },
    Stack: {
        "id": _ID,
        "grow": Word("share of spare height", "number"),
        "holds": _HOLDS,
        "gap": Word("gap", "mm", key="gap"),
        "inset": Word("inset", "mm", key="inset"),
    },
    **STUDIO_WORDS,
    **WORKBENCH_WORDS,
}
