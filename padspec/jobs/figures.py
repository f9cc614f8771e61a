"""All that is reckoned about a plan besides the plan: chances, other paper, butted or guttered, ink."""

from dataclasses import dataclass
from decimal import Decimal
from typing import Any

from padspec.jobs.chances import Chances, chances_of
from padspec.jobs.inks import FaceInk, face_ink
from padspec.jobs.page_checks import Looked, look_over
from padspec.jobs.papers import Paper, compare_papers
from padspec.jobs.plan import JobPlan
from padspec.making.ink import InkUse
from padspec.report import finding_data
from padspec.resolve.studio import INKS
from padspec.sheet.chances.tolerance import OverLeaves
from padspec.sheet.cutting.compare import GutterRow, compare_gutters

_HUNDREDTH_OF_A_CENT = Decimal("0.0001")
ESTIMATE = (
    "an estimate, good to a factor of two: inks are guessed from the colours of the screen; "
    "a page is A4 with 5 % of each ink"
)


@dataclass(frozen=True, slots=True)
class Figures:
    """For each page findings and chances; for each paper the whole job; for each design gutters and ink."""

    looked: tuple[Looked, ...]
    chances: tuple[Chances, ...]
    papers: tuple[Paper, ...]
    gutters: tuple[tuple[str, GutterRow, GutterRow], ...]
    inks: tuple[FaceInk, ...]

    def data(self) -> dict[str, Any]:
        """As plain data, keys for `plan_data`."""
        return {
            "findings": [finding_data(finding) for looked in self.looked for finding in looked.findings],
            "chances": [_chances(one) for one in self.chances],
            "papers": [_paper(paper) for paper in self.papers],
            "butted_or_guttered": [
                {"sku": sku, "butted": _gutter(butted), "guttered": _gutter(guttered)}
                for sku, butted, guttered in self.gutters
            ],
            "ink": {"note": ESTIMATE, "leaves": [_ink(one) for one in self.inks]},
        }


def figures_of(plan: JobPlan) -> Figures:
    """Everything about one plan."""
    studio = plan.wanted[0].design.studio
    designs = [one.design for one in plan.wanted]
    return Figures(
        looked=tuple(look_over(page, plan.wanted) for page in plan.pages),
        chances=tuple(chances_of(page, studio) for page in plan.pages),
        papers=compare_papers(plan),
        gutters=tuple((design.sku, *compare_gutters(design)) for design in designs),
        inks=tuple(face_ink(design) for design in designs),
    )


def _chances(one: Chances) -> dict[str, Any]:
    return {
        "page": one.page,
        "white_sliver": _over_leaves(one.sliver),
        "panel_off_centre": _over_leaves(one.off_centre),
        "bleed_that_keeps_slivers_within_the_chance": one.bleed,
    }


def _over_leaves(chance: OverLeaves) -> dict[str, float | int]:
    return {"worst": chance.worst, "worst_leaf": chance.worst_leaf + 1, "mean": chance.mean}


def _paper(paper: Paper) -> dict[str, Any]:
    return {
        "sheet": paper.size_name,
        "n_up": list(paper.n_up),
        "pages": paper.pages,
        "sheets": paper.sheets,
        "strokes": paper.strokes,
        "waste": round(paper.waste, 6),
        "cost": None if paper.cost is None else str(paper.cost),
        "does_not_fit": list(paper.misfits),
    }


def _gutter(row: GutterRow) -> dict[str, Any]:
    return {
        "gutter": row.gutter,
        "n_up": row.n_up,
        "sheets_for_a_pad": row.sheets,
        "cuts": row.cuts,
        "lifts": row.lifts,
        "strokes": row.strokes,
        "minutes": round(row.minutes, 3),
    }


def _ink(one: FaceInk) -> dict[str, Any]:
    return {
        "sku": one.sku,
        "cover": dict(zip(INKS, one.cover.inks, strict=True)),
        "yield_pages": _pages(one.use),
        "cost_a_leaf": _money(one.use),
        "white_panel_saves": None
        if one.panel_saves is None
        else {"yield_pages": _pages(one.panel_saves), "cost_a_leaf": _money(one.panel_saves)},
    }


def _pages(use: InkUse) -> dict[str, float]:
    return {name: round(float(pages), 6) for name, pages in zip(INKS, use.pages, strict=True)}


def _money(use: InkUse) -> str | None:
    return None if use.cost is None else str(use.cost.quantize(_HUNDREDTH_OF_A_CENT))
