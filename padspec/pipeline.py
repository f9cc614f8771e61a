"""The whole story, one call a step and no logic:

1. read     the maker's files become documents: YAML with positions, checked against the schemas, a variant's
            settings laid over its design
2. resolve  documents become a Design: typed, frozen, nothing left to look up
3. compose  the Design becomes a Face: a scene in millimetres, in named layers
4. tile     the Face's place on paper: a Sheet with slots, bleed and marks
5. check    Design, Face and Sheet become findings, each with its place in the YAML
6. draw     Face and Sheet become SVG, PDF and PNG
"""

from collections.abc import Callable
from dataclasses import dataclass

from padspec.base.findings import Finding, Severity, worst
from padspec.checks.cut_stretches import cut_stretches
from padspec.checks.table import run_checks
from padspec.compose.compose import compose
from padspec.compose.face import Face
from padspec.draw.outputs import DrawWish, draw_outputs
from padspec.press.of_design import separator_of
from padspec.reading.gather import Documents, gather
from padspec.reading.variation import PLAIN, Variation
from padspec.report import findings_json
from padspec.resolve.design import Design
from padspec.resolve.resolve import resolve
from padspec.resolve.vary import varied
from padspec.sheet.sheet import Sheet
from padspec.sheet.tile import tile
from padspec.trial import tried
from padspec.workspace import Workspace

STEPS = ("read", "resolve", "compose", "tile", "check", "draw")

Tell = Callable[[str], None]


def silent(step: str) -> None:
    """The listener of a run that nobody watches."""


@dataclass(frozen=True, slots=True)
class Pad:
    """A design at every stage. `sheet` is None where not one face fits the paper."""

    documents: Documents
    design: Design
    face: Face
    sheet: Sheet | None
    findings: tuple[Finding, ...]

    @property
    def failed(self) -> bool:
        """Whether a finding says: do not print."""
        return worst(self.findings) == Severity.ERROR


def make(path: str, workspace: Workspace, tell: Tell = silent, variation: Variation = PLAIN) -> Pad:
    """Steps 1 to 5. `tell` is called with each step's name as it begins. Raises ProblemsError."""
    tell("read")
    documents = varied(gather(path, workspace, variation))
    tell("resolve")
    design = resolve(documents, workspace)
    tell("compose")
    face = compose(design)
    tell("tile")
    sheet = tile(design)
    tell("check")
    findings = tried(run_checks(design, face, sheet), documents, workspace)
    return Pad(documents, design, face, sheet, findings)


def draw(pad: Pad, wish: DrawWish, tell: Tell = silent) -> dict[str, bytes]:
    """Step 6: every file of one pad, by its path under the output folder."""
    tell("draw")
    sheet = pad.sheet
    if pad.failed and wish.despite_errors:
        sheet = tile(pad.design, remark="PRINTED DESPITE ERRORS")
    overlays = cut_stretches(pad.design, pad.face, sheet, pad.findings) if wish.proofs else ()
    press = separator_of(pad.design)
    files = draw_outputs(pad.design, pad.face, sheet, pad.failed, wish, overlays, press)
    files[f"{pad.design.sku}/findings.json"] = findings_json(pad.design, sheet, pad.findings)
    return files
