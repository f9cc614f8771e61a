"""The pages of a plan as files: each a sheet to print, its proof, and the drawing of its cuts."""

import re
from unicodedata import normalize

import numpy as np

from padspec.base.geometry import bounded_ppi
from padspec.compose.compose import compose
from padspec.draw.cuts.diagram import cut_diagram_svg
from padspec.draw.pdf import sheets_pdf
from padspec.draw.png import png_file, rasterise
from padspec.draw.stretches import CutStretches, with_stretches
from padspec.jobs.page_checks import Looked
from padspec.jobs.plan import JobPlan, PrintedPage
from padspec.scene.nodes import Scene

FOLDER = "jobs"
PLAN = "plan.json"
PROOF_PPI = 100.0
#: All names that the pages of a plan may have, and what is made from it: its ticket, and plots of its costs.
NAME = re.compile(r"page-\d+(-\d+-copies\.pdf|\.png|-cuts\.svg)|ticket\.(html|json)|.+-sizes\.svg")


def folder_of(name: str) -> str:
    """Where the pages of a job go, below the output folder.

    >>> folder_of("Saturday market")
    'jobs/Saturday-market'
    """
    word = re.sub(r"[^\w-]+", "-", normalize("NFC", name)).strip("-")
    return f"{FOLDER}/{word or 'job'}"


def page_stem(page: PrintedPage, plan: JobPlan) -> str:
    """How the files of a page begin, so that they sort in the order in which pages are printed."""
    return f"page-{page.number:0{len(str(len(plan.pages)))}}"


def page_files(plan: JobPlan, looked: tuple[Looked, ...], proofs: bool) -> dict[str, bytes]:
    """Every page of a plan, by its path under the output folder, in the order in which they are printed."""
    scenes = [compose(one.design).scene for one in plan.wanted]
    folder, files = folder_of(plan.name), {}
    for page in plan.pages:
        stem = f"{folder}/{page_stem(page, plan)}"
        design = plan.wanted[page.designs[0]].design
        paper = _paper(page, scenes, design.date)
        files[f"{stem}-{page.sheet.copies}-copies.pdf"] = paper
        drawing = cut_diagram_svg(page.sheet, page.cuts, design.small_print)
        files[f"{stem}-cuts.svg"] = drawing.encode("utf-8")
        if proofs:
            ppi = bounded_ppi(page.sheet.size, PROOF_PPI)
            marked = with_stretches(rasterise(paper, ppi), ppi, _stretches(page, looked), page.sheet.correction)
            pixels = np.ascontiguousarray(marked)
            files[f"{stem}.png"] = png_file(pixels, ppi)
    return files


def _stretches(page: PrintedPage, looked: tuple[Looked, ...]) -> tuple[CutStretches, ...]:
    return tuple(found for look in looked if look.page == page.number for found in look.stretches)


def _paper(page: PrintedPage, scenes: list[Scene], date: str) -> bytes:
    return sheets_pdf([(page.sheet, [scenes[at] for at in page.designs])], date=date)
