"""Designs that each check finds fault with, and designs that it passes: at least one of each for every check.

A case is the plain design of the kit with some keys set. Colours are chosen so that what they measure can be
looked up: contrasts of greys on white are those of WCAG 2's formula (#bbbbbb on white 1.920, #cccccc 1.606,
#dddddd 1.358, #999999 2.849, #949494 3.033, #767676 4.542, black 21).
"""

import re
from dataclasses import dataclass, field
from functools import cache

import numpy as np
from kit import PLAIN, apply, pad, picture, png
from PIL import Image, ImageDraw
from press.made import profile_bytes

from padspec.base.findings import Finding
from padspec.checks.check import Check
from padspec.checks.table import CHECKS
from padspec.pipeline import Pad

#: Heading and rows on the bare ground, without a panel.
OPEN_LAYOUT = b"""layout: open
about: Heading and rows on the bare ground.
face:
  - heading: {id: heading, text: To do}
  - rows: {id: rows, grow: 1}
"""
#: Two blocks of rows with a picture beside the design's own keys, so that settings go by block.
PAIR_LAYOUT = b"""layout: pair
about: Two blocks of rows.
face:
  - panel:
      id: panel
      grow: 1
      holds:
        - rows: {id: first, grow: 1}
        - rows: {id: second, grow: 1}
"""
#: A tall picture over a panel of words, which keep their height.
FIXED_LAYOUT = b"""layout: fixed
about: A picture over a heading that gives no way.
face:
  - art: {id: art, height: 80 mm}
  - panel:
      id: panel
      holds:
        - heading: {id: heading, text: To do}
  - heading: {id: foot, text: Thank you}
"""
ART = {"art.file": "moth.png"}


def open_ring() -> bytes:
    """A pen ring with a wide gap, on white: what it encloses goes with the background."""
    image = Image.new("RGB", (900, 900), "white")
    ImageDraw.Draw(image).arc([150, 150, 750, 750], 10, 350, fill=(60, 60, 70), width=14)
    return png(np.asarray(image))


def wash(depth: float) -> bytes:
    """A round wash that fades into off-white over a third of its width; `depth` is how dark its middle is."""
    y, x = np.mgrid[:900, :900] - 450
    alpha = np.clip((340 - np.hypot(y, x)) / 220, 0, 1)[..., None]
    return png(np.round(246 - depth * alpha * np.array([0.3, 0.8, 0.6])).astype(np.uint8))


FILES = {
    "layouts/open.yaml": OPEN_LAYOUT,
    "layouts/pair.yaml": PAIR_LAYOUT,
    "layouts/fixed.yaml": FIXED_LAYOUT,
    "moth.png": picture(1400, 1120),
    "few.png": picture(330, 330),
    "tiny.png": picture(60, 60),
    "plain.png": picture(800, 640, ground=(244, 236, 222)),
    "ring.png": open_ring(),
    "faint.png": wash(18),
    "wash.png": wash(190),
    "press.icc": profile_bytes(),
    "noisy.png": picture(800, 640, ground=(128, 128, 128), noise=110),
}
WIDE = {"sheet.size": {"width": "297 mm", "height": "210 mm"}}
SHIFTED = "printer: {offset: {x: 2 mm, y: -1 mm}}\n"
#: A studio that sends its work to the invented press of the examples, which holds 280 %.
BAG = "sleeves: [{{name: bag, width: {} mm, length: {} mm}}]\n"
MAGNET = "magnets: {count: 1, width: 20 mm, height: 40 mm, thickness: 0.5 mm}\n"
PRESS = "press: {profile: press.icc}\n"
HOME_PAPER = PRESS + "stock: {ink-limit: 150 %}\n"
#: Leaves edge to edge, with end marks and without.
BUTTED = {"sheet.gutter": "0 mm"}
UNMARKED = {**BUTTED, "sheet.marks": False}
#: So long that three leaves edge to edge leave no room for crop marks beside them.
TIGHT = {**BUTTED, "trim.height": "198 mm"}


def stripes(size: str, angle: int = 45, mark: str = "50 %", kind: str = "stripes") -> dict[str, object]:
    """A bold pattern. At 45° a face of 90 mm is 63.64 mm across: 8 stripes of 7.955 mm, 7½ of 8.485 mm."""
    pattern = {"kind": kind, "colour": "#305070", "mark": mark, "angle": angle, "size": size}
    return {"ground.colour": "#f0e0c0", "ground.pattern": pattern}


#: White, so that neither bleed nor pattern has a say.
BARE = {"ground.colour": "white"}


@dataclass(frozen=True)
class Case:
    """A design and what one check is to say of it: a severity, or nothing."""

    check: str
    name: str
    severity: str
    settings: dict[str, object] = field(default_factory=dict)
    studio: str = ""
    #: Whether the remedy holds values to set.
    mends: bool = True

    @property
    def yaml(self) -> str:
        return edited(PLAIN, self.settings)

    def __str__(self) -> str:
        return f"{self.check}: {self.name}"

    def made(self) -> Pad:
        return made(self.yaml, self.studio)


@cache
def made(yaml: str, studio: str = "") -> Pad:
    return pad(yaml, studio, FILES)


def of(pad: Pad, check: str) -> list[Finding]:
    """The findings of one check."""
    return [finding for finding in pad.findings if finding.check == check]


def mended(yaml: str, finding: Finding) -> str:
    """The design with the values of a remedy set."""
    changes = finding.remedy.changes if finding.remedy else ()
    return edited(yaml, {".".join(path): value for path, value in changes})


def edited(yaml: str, changes: dict[str, object]) -> str:
    """A text with keys set; counts and flags that stand in it stay without quotes."""
    return re.sub(r": '(\d+|true|false)'$", r": \1", apply(yaml, changes), flags=re.MULTILINE)


def named(name: str) -> Check:
    return next(check for check in CHECKS if check.name == name)


def _failing() -> list[Case]:
    return [
        Case("rule-contrast", "hardly a line on white", "error", {"rows.colour": "#dddddd"}),
        Case("rule-contrast", "a faint line on white", "warning", {"rows.colour": "#cccccc"}),
        Case("rule-contrast", "coloured paper", "error", {"palette.paper": "#f2c9a0", "rows.colour": "#e0b080"}),
        Case("rule-contrast", "dark on dark", "error", {"palette.paper": "#222233", "rows.colour": "#333355"}),
        Case(
            "rule-contrast",
            "over bold stripes",
            "error",
            {
                "layout": "open",
                "ground.colour": "#fdfdfd",
                "ground.pattern": {"kind": "stripes", "colour": "#8899aa", "size": "10 mm", "mark": "40 %"},
                "rows.colour": "#8090a0",
            },
        ),
        Case("rule-contrast", "one of two", "error", {"layout": "pair", "blocks.second.colour": "#e8e8e8"}),
        Case("checkbox-contrast", "squares that follow the rules", "warning", {"rows.colour": "#999999"}),
        Case(
            "checkbox-contrast",
            "a colour of their own",
            "warning",
            {"rows.colour": "#767676", "rows.checkbox-colour": "#bbbbbb"},
        ),
        Case(
            "checkbox-contrast",
            "a colour of their own that is that of the rules",
            "warning",
            {"rows.colour": "#999999", "rows.checkbox-colour": "#999999"},
        ),
        Case(
            "checkbox-contrast",
            "pale squares on dark paper",
            "warning",
            {"palette.paper": "#203040", "rows.colour": "#dfe9f2", "rows.checkbox-colour": "#405060"},
        ),
        Case("harsh-rules", "black on white", "note", {"rows.colour": "black"}),
        Case("harsh-rules", "white on black", "note", {"palette.paper": "black", "rows.colour": "white"}),
        Case("lettering-contrast", "large on the panel", "warning", {"heading.colour": "#999999"}),
        Case(
            "lettering-contrast",
            "small on the panel",
            "warning",
            {"heading.size": "5 mm", "heading.colour": "#808080"},
        ),
        Case(
            "lettering-contrast",
            "large on the ground",
            "warning",
            {"layout": "open", "ground.colour": "#445566", "heading.colour": "#223344"},
        ),
        Case(
            "lettering-contrast",
            "small on the ground",
            "warning",
            {"layout": "open", "ground.colour": "#dddddd", "heading.size": "5 mm", "heading.colour": "#808080"},
        ),
        Case("line-weight", "thinner than a hairline", "error", {"rows.weight": "0.2 pt"}),
        Case("line-weight", "thin and screened", "warning", {"rows.weight": "0.5 pt"}),
        Case("line-weight", "black but too thin", "error", {"rows.weight": "0.05 mm", "rows.colour": "black"}),
        Case(
            "line-weight",
            "black rules and screened squares",
            "warning",
            {"rows.weight": "0.2 mm", "rows.colour": "black", "rows.checkbox-colour": "#666666"},
        ),
        Case(
            "line-weight", "less than this printer holds", "error", {}, "printer: {least-line: 0.4 mm}\n"
        ),
        Case(
            "line-weight",
            "less than this printer holds of a screened line",
            "warning",
            {},
            "printer: {least-screened-line: 0.35 mm}\n",
        ),
        Case("art-resolution", "few pixels", "warning", {"art.file": "few.png", "art.height": "30 mm"}),
        Case("art-resolution", "too few pixels", "error", {"art.file": "few.png", "art.height": "75 mm"}),
        Case("art-resolution", "not worth making smaller", "error", {"art.file": "tiny.png"}, mends=False),
        Case("art-cutout", "an uneven border is left alone", "note", {"art.file": "noisy.png"}),
        Case(
            "art-cutout",
            "an even border was asked for",
            "error",
            {"art.file": "noisy.png", "art.cutout": "even"},
        ),
        Case("art-cutout", "a leak in the outline", "warning", {"art.file": "ring.png"}),
        Case("art-cutout", "a wash too faint to cut", "note", {"art.file": "faint.png"}),
        Case("safe-margin", "a panel near the sides", "warning", {"panel.inset": "2 mm"}),
        Case("safe-margin", "a panel near the glue", "warning", {"panel.inset": "4 mm"}),
        Case("safe-margin", "a picture near the glue", "warning", {**ART, "art.inset": "4.9 mm"}),
        Case(
            "safe-margin",
            "a panel near glue at the side",
            "warning",
            {"panel.inset": "6 mm"},
            "glue-edge: {edge: left, margin: 9 mm}\n",
        ),
        Case("row-room", "a narrow pitch", "warning", {"rows.pitch": "4.9 mm", "rows.checkbox": "3 mm"}),
        Case("row-room", "too many rows", "warning", {"rows.count": 40, "rows.checkbox": "none"}),
        Case("row-room", "crowded squares", "error", {"rows.checkbox": "6.5 mm"}),
        Case(
            "row-room",
            "not one row",
            "error",
            {"trim.height": "60 mm", "rows.pitch": "40 mm"},
            mends=False,
        ),
        Case(
            "row-room", "short rules", "warning", {"trim.width": "50 mm", "heading.text": "To do"}, mends=False
        ),
        Case(
            "heading-room",
            "one long word",
            "warning",
            {"heading.text": "Rhabarberkuchenbäckereibesuch", "heading.least-size": "7 mm"},
        ),
        Case("art-room", "a picture squeezed by fixed rows", "warning",
             {"layout": "fixed", "art.file": "moth.png", "trim.height": "96 mm"}),
        Case("colour-vision", "red rules on dark paper", "warning",
             {"palette.paper": "#1c2430", "rows.colour": "#9f0000"}),
        Case("colour-vision", "red squares on dark paper", "warning",
             {"palette.paper": "#1c2430", "rows.colour": "#c8d0da", "rows.checkbox-colour": "#df0000"}),
        Case("row-room", "a label without a row", "error",
             {"rows.labels": ["Mon", "Tue", "Wed"], "rows.count": 2}, mends=False),
        Case("block-room", "a month on a low leaf", "error",
             {"layout": "habits", "trim.width": "105 mm", "trim.height": "66 mm"}, mends=False),
        Case("missing-glyph", "a sign of another country", "error", {"heading.text": "₨ 20"}),
        Case("missing-glyph", "no font has it", "error", {"heading.text": "𓀀"}, mends=False),
        Case("sheet-fit", "a leaf wider than A4", "error", {"trim.width": "230 mm", "trim.height": "290 mm"}),
        Case("sheet-fit", "a leaf as large as letter", "error", {"trim.width": "8 1/2 in", "trim.height": "11 in",
             "sheet.size": "letter"}),
        Case("sheet-fit", "a long leaf on A5", "error", {"sheet.size": "A5", "trim.height": "230 mm"}),
        Case(
            "sheet-fit",
            "a leaf on a sheet of its own size",
            "error",
            {"sheet.size": {"width": "90 mm", "height": "190 mm"}},
        ),
        Case("row-room", "lines that fill the squares", "error", {"rows.weight": "1 mm"}),
        Case("row-room", "lines that close the rows", "error", {"rows.weight": "2 mm", "rows.checkbox": "none"}),
        Case("row-room", "nothing left to write on", "error", {"panel.pad": "38 mm"}, mends=False),
        Case("safe-margin", "lettering past the trim", "error",
             {"heading.text": "Rhabarberkuchenbäckereibesuchsverabredung", "heading.least-size": "7 mm"},
             mends=False),
        Case("bleed-room", "little bleed", "warning", {"sheet.bleed": "1 mm", "ground.colour": "#c0d8e8"}),
        Case(
            "bleed-room",
            "no bleed",
            "error",
            {"sheet.bleed": "0 mm", "sheet.least-bleed": "0 mm", "ground.colour": "#c0d8e8"},
        ),
        Case("bleed-room", "a narrow gutter", "warning", {"sheet.gutter": "1 mm", "ground.colour": "#c0d8e8"}),
        Case(
            "bleed-room",
            "no bleed at the edge of what prints",
            "error",
            {
                "trim.width": "201.6 mm",
                "trim.height": "280 mm",
                "sheet.least-bleed": "0 mm",
                "ground.colour": "#c0d8e8",
            },
            mends=False,
        ),
        Case("mark-room", "a bleed that takes all the room", "note", {"sheet.bleed": "9 mm"}),
        Case("mark-room", "leaves that fill the sheet", "note",
             {"trim.width": "198 mm", "trim.height": "285 mm"}, mends=False),
        Case("page-turn", "a wide sheet and an offset", "warning", WIDE, SHIFTED, mends=False),
        # 90 + 6 + 0.6 = 96.6 mm of girth, 190 + 3.3 = 193.3 mm of length.
        Case("sleeve-fit", "a bag too narrow, by name", "error", {"sleeve": "bag"}, BAG.format(92, 205)),
        Case("sleeve-fit", "a bag too short, by name", "error", {"sleeve": "bag"}, BAG.format(101, 193)),
        Case("sleeve-fit", "a bag without ease", "warning", {}, BAG.format(98, 205)),
        Case("sleeve-fit", "no bag that takes it", "warning", {}, BAG.format(90, 205)),
        Case("sleeve-fit", "a bag to rattle in", "note", {}, BAG.format(150, 300), mends=False),
        Case("magnet-hold", "one small magnet", "warning", {}, MAGNET),
        Case("magnet-hold", "a magnet too weak for any number", "warning", {},
             MAGNET.replace("0.5 mm", "0.5 mm, pull: 2"), mends=False),
        Case("ink-cover", "a black panel on paper that takes little", "warning",
             {"panel.colour": "black", "ground.colour": "white"}, HOME_PAPER, mends=False),
        Case("ink-cover", "a ground over the maker's own limit", "warning",
             {"ground.colour": "#203040", "limits.ink-cover": "120 %"}, PRESS, mends=False),
        Case("gamut", "a ground as a screen alone shows it", "warning", {"ground.colour": "#00e0ff"}, PRESS),
        Case("gamut", "a panel too green", "warning",
             {"panel.colour": "#60ff60", "ground.colour": "white"}, PRESS),
        Case("cut-visibility", "plain leaves without end marks", "warning", UNMARKED),
        Case("cut-visibility", "a bleed that takes the room of end marks", "warning",
             {**BUTTED, "sheet.bleed": "5 mm"}),
        Case("cut-visibility", "end marks off and no room for them", "warning",
             {**UNMARKED, "sheet.bleed": "5 mm", "sheet.least-bleed": "4 mm"}),
        Case("cut-visibility", "stripes in step and no room for end marks", "warning",
             {**TIGHT, **stripes("7.955 mm")}),
        Case("cut-visibility", "no room for end marks and no pattern", "warning", TIGHT),
        Case("cut-visibility", "as many leaves as a gutter has no room for", "warning",
             {**TIGHT, "trim.width": "95.1 mm", "sheet.n-up": 3}),
        Case("cut-visibility", "a mixed sheet, whose inner cuts end at a leaf", "warning",
             {**BUTTED, "trim.width": "60 mm", "trim.height": "144 mm"}),
        Case("miscut-shows", "stripes out of step", "warning", {**BUTTED, **stripes("8.485 mm")}),
        Case("miscut-shows", "stripes out of step and no end marks", "warning",
             {**UNMARKED, **stripes("8.485 mm")}),
        Case("miscut-shows", "stripes out of step and hardly any bleed", "warning",
             {**BUTTED, **stripes("8.485 mm"), "sheet.bleed": "0.5 mm", "sheet.least-bleed": "0.5 mm"}),
        Case("miscut-shows", "upright stripes that end in a stripe", "warning",
             {**BUTTED, **stripes("6.3 mm", angle=0)}),
        Case("miscut-shows", "stripes that run on one way only", "warning",
             {**BUTTED, **stripes("7 mm", angle=30), "trim.width": "95 mm", "trim.height": "138 mm"}),
        Case("miscut-shows", "a panel that reaches the trim", "warning",
             {**BUTTED, "ground.colour": "#c0d8e8", "panel.inset": "0 mm"}),
        Case("miscut-shows", "small dots out of step", "note",
             {**BUTTED, **stripes("6.2 mm", angle=0, mark="20 %", kind="dots")}),
        Case("miscut-shows", "a slanted split", "note",
             {**BUTTED, "ground.colour": "#f0e0c0",
              "ground.pattern": {"kind": "split", "colour": "#305070", "angle": 75}}, mends=False),
    ]  # fmt: skip


def _passing() -> list[Case]:
    return [
        Case("rule-contrast", "grey on white", "", {"rows.colour": "#bbbbbb"}),
        Case("rule-contrast", "pale on dark paper", "", {"palette.paper": "#222233", "rows.colour": "#aabbcc"}),
        Case("checkbox-contrast", "grey on white", "", {"rows.colour": "#949494"}),
        Case("checkbox-contrast", "no squares", "", {"rows.colour": "#bbbbbb", "rows.checkbox": "none"}),
        Case("harsh-rules", "a dark grey", "", {"rows.colour": "#444444"}),
        Case("lettering-contrast", "large", "", {"heading.colour": "#949494"}),
        Case("lettering-contrast", "small", "", {"heading.size": "5 mm", "heading.colour": "#767676"}),
        Case("line-weight", "0.3 mm", "", {"rows.weight": "0.3 mm"}),
        Case("line-weight", "thin but black", "", {"rows.weight": "0.25 pt", "rows.colour": "black"}),
        Case(
            "line-weight", "thin where the printer holds it", "", {"rows.weight": "0.3 pt"},
            "printer: {least-screened-line: 0.3 pt}\n",
        ),
        Case("art-resolution", "pixels enough", "", ART),
        Case("art-cutout", "transparency", "", ART),
        Case("art-cutout", "an even border", "", {"art.file": "plain.png", "art.cutout": "even"}),
        Case("art-cutout", "a wash that fades out", "", {"art.file": "wash.png"}),
        Case("art-cutout", "not wished for", "", {"art.file": "noisy.png", "art.cutout": "none"}),
        Case("safe-margin", "6 mm", "", ART),
        Case("row-room", "8 mm", "", {"rows.pitch": "8 mm"}),
        Case("heading-room", "short words", "", {"heading.text": "To do"}),
        Case("art-room", "height enough", "", ART),
        Case("colour-vision", "pale red on dark paper", "",
             {"palette.paper": "#1c2430", "rows.colour": "#e8a0a0"}),
        Case("block-room", "a month with room", "",
             {"layout": "habits", "trim.width": "105 mm", "trim.height": "210 mm"}),
        Case("missing-glyph", "Latin letters", "", {"heading.text": "Éclairs & thé"}),
        Case("sheet-fit", "two across", "", {"trim.width": "95 mm"}),
        Case("bleed-room", "the usual bleed", "", {"ground.colour": "#c0d8e8"}),
        Case("bleed-room", "white needs none", "", {**BARE, "sheet.bleed": "0 mm", "sheet.least-bleed": "0 mm"}),
        Case("bleed-room", "butted leaves share a line", "", {"sheet.gutter": "0 mm",
             "ground.colour": "#c0d8e8"}),
        Case("mark-room", "room all round", "", {}),
        Case("mark-room", "no marks wished for", "", {"sheet.bleed": "9 mm", "sheet.marks": False}),
        Case("sleeve-fit", "a bag with its ease", "", {}, BAG.format(101, 205)),
        Case("sleeve-fit", "no bag wanted", "", {"sleeve": "none"}, BAG.format(80, 100)),
        Case("sleeve-fit", "a studio without bags", "", {}),
        Case("magnet-hold", "two long ones", "", {},
             "magnets: {count: 2, width: 25 mm, height: 80 mm, thickness: 0.76 mm}\n"),
        Case("magnet-hold", "none at all", "", {"magnets": 0}, MAGNET),
        Case("page-turn", "a wide sheet that is turned left", "", WIDE, SHIFTED.replace("}}", "}, turn: left}")),
        Case("page-turn", "an upright sheet and an offset", "", {}, SHIFTED),
        Case("page-turn", "a wide sheet and no offset", "", WIDE),
        Case("ink-cover", "a pale ground", "", {"ground.colour": "#e8e0d0"}, HOME_PAPER),
        Case("ink-cover", "no press", "", {"ground.colour": "#203040"}),
        Case("gamut", "a quiet ground", "", {"ground.colour": "#e8e0d0"}, PRESS),
        Case("gamut", "no press", "", {"ground.colour": "#00e0ff"}),
        Case("cut-visibility", "end marks", "", BUTTED),
        Case("cut-visibility", "a gutter", "", {"sheet.marks": False}),
        Case("cut-visibility", "stripes out of step", "", {**UNMARKED, **stripes("8.485 mm")}),
        Case("miscut-shows", "a plain ground", "", {**BUTTED, "ground.colour": "#c0d8e8"}),
        Case("miscut-shows", "stripes that run on", "", {**BUTTED, **stripes("7.955 mm")}),
        Case("miscut-shows", "dots that run on", "", {**BUTTED, **stripes("6 mm", angle=0, kind="dots")}),
        Case("miscut-shows", "a gutter", "", stripes("8.485 mm")),
    ]  # fmt: skip


FAILING = _failing()
PASSING = _passing()
