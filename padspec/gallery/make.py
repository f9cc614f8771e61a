"""Every face of the pattern book, made: layouts and grounds go in, specimens come out.

The designs stand in no file. Each is written in memory over the maker's folder and goes the whole way of a design,
so that what is shown is what would print, with what the checks find.
"""

import json
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Any

from padspec.base.errors import Problem, ProblemsError
from padspec.base.findings import Finding, Severity
from padspec.base.geometry import Size
from padspec.base.numbers import number_text
from padspec.base.place import Place
from padspec.gallery.art import BorrowedArt, Reducer, art_for, borrowed_art, motif_file
from padspec.gallery.grounds import chosen_grounds, ground_data
from padspec.gallery.layouts import ShownLayout, shown_layouts
from padspec.gallery.specimen import Gallery, Specimen, trim_text
from padspec.gallery.wish import GalleryWish
from padspec.pipeline import make
from padspec.reading.gather import find_studio, read_file
from padspec.reading.tree import Mapping
from padspec.workspace import MemoryWorkspace, Workspace

#: Where the designs stand in memory: beside studio.yaml and layouts/.
DESIGN_PATH = "gallery.pad.yaml"
#: Resolution that pictures keep, at the leaf's own size. On a page faces stand at half of that and less.
PAPER_PPI = 160.0


@dataclass(frozen=True, slots=True)
class _Plan:
    """One face to be made: its place in the book, and what a design for it says."""

    layout: ShownLayout
    trim: Size
    ground: str
    art: BorrowedArt | None
    motif: str | None
    heading: str | None

    @property
    def label(self) -> str:
        return f"{self.layout.name} on {self.ground}, {trim_text(self.trim)}"

    @property
    def picture(self) -> str:
        return self.art.file if self.art else ""


def make_gallery(
    designs: tuple[str, ...], workspace: Workspace, wish: GalleryWish, title: str, tell: Callable[[str], None]
) -> Gallery:
    """All specimens that are wished for, with the pictures of these designs.

    `tell` is called with the name of each layout as it begins. Raises ProblemsError where a wish, a design or a
    layout cannot be read; a face that cannot be made is left out, and the gallery says why.
    """
    plans = _plans(designs, workspace, wish)
    # One picture after the other, so that each is decoded once; the book keeps its own order.
    order = sorted(range(len(plans)), key=lambda n: plans[n].picture)
    reducer = Reducer(PAPER_PPI)
    made: dict[int, Specimen] = {}
    failed: dict[tuple[_Plan, Problem], list[str]] = {}
    begun = None
    for n in order:
        plan = plans[n]
        if plan.layout.name != begun:
            begun = plan.layout.name
            tell(begun)
        try:
            made[n] = _specimen(plan, workspace, reducer)
        except ProblemsError as error:
            for problem in error.problems:
                at = problem.place if problem.place.file != DESIGN_PATH else Place(DESIGN_PATH, 0, 0)
                failed.setdefault((replace(plan, ground=""), replace(problem, place=at)), []).append(plan.ground)
    specimens = tuple(made[n] for n in sorted(made))
    problems = (_told(problem, replace(plan, ground=", ".join(on))) for (plan, problem), on in failed.items())
    return Gallery(title, _studio_name(workspace), specimens, tuple(dict.fromkeys(problems)))


def _told(problem: Problem, plan: _Plan) -> Problem:
    """A problem told once for all grounds that share it."""
    return replace(problem, place=_at(problem.place, plan))


def _plans(designs: tuple[str, ...], workspace: Workspace, wish: GalleryWish) -> tuple[_Plan, ...]:
    art = borrowed_art(designs, workspace)
    motif = motif_file(art, workspace)
    layouts = shown_layouts(wish.layouts, wish.trims, DESIGN_PATH, workspace)
    return tuple(
        _Plan(layout, trim, ground, art_for(layout.name, n, art), motif, wish.heading)
        for n, layout in enumerate(layouts)
        for trim in layout.trims
        for ground in chosen_grounds(wish.grounds, n, motif is not None)
    )


def _specimen(plan: _Plan, workspace: Workspace, reducer: Reducer) -> Specimen:
    text = json.dumps(_design(plan), ensure_ascii=False)
    pad = make(DESIGN_PATH, MemoryWorkspace({DESIGN_PATH: text.encode("utf-8")}, workspace))
    counting = (found for found in pad.findings if found.counts and found.severity >= Severity.WARNING)
    return Specimen(
        layout=plan.layout.name,
        about=plan.layout.about,
        ground=plan.ground,
        trim=pad.design.trim,
        scene=reducer.scene(replace(pad.face.scene, bleed=0.0)),
        findings=tuple(_placed(found, plan) for found in counting),
    )


def _design(plan: _Plan) -> dict[str, Any]:
    """The design as data; a picture and a heading only where the layout has a place for one."""
    kinds = plan.layout.kinds
    data: dict[str, Any] = {
        "pad": plan.label,
        "sku": "SPECIMEN",
        "layout": plan.layout.name,
        "trim": {"width": _mm(plan.trim.width), "height": _mm(plan.trim.height)},
        "ground": ground_data(plan.ground, plan.motif),
    }
    if plan.art is not None and "art" in kinds:
        data["art"] = plan.art.data
    if plan.heading is not None and "heading" in kinds:
        data["heading"] = {"text": plan.heading}
    return data


def _mm(length: float) -> str:
    return f"{number_text(length, 9)} mm"


def _placed(finding: Finding, plan: _Plan) -> Finding:
    return replace(finding, place=_at(finding.place, plan))


def _at(place: Place, plan: _Plan) -> Place:
    """A place in the design in memory means the face as a whole; one in a file of the maker's stays."""
    return Place(plan.label, 0, 0) if place.file == DESIGN_PATH else place


def _studio_name(workspace: Workspace) -> str:
    path = find_studio(DESIGN_PATH, workspace)
    root = read_file(path, "studio", workspace).root if path else Mapping((), Place("", 0, 0))
    return root.text("studio")
