"""Ink of a face by hand, and the figures of a plan as a whole."""

from math import pi

import pytest
from kit import pad

from padspec.jobs.figures import figures_of
from padspec.jobs.inks import face_ink
from padspec.jobs.plan import Wanted, make_plan

PANEL = b"""layout: only-panel
about: A panel with rows that nobody sees.
face:
  - panel: {id: panel, grow: 1, holds: [{rows: {id: rows, grow: 1}}]}
"""
CYAN = """pad: Sea
trim: {width: 100 mm, height: 120 mm}
layout: only-panel
ground: {colour: "#00ffff"}
panel: {colour: white, inset: 10 mm, corner: 8 mm}
rows: {colour: white, checkbox: none}
"""
STUDIO = "ink: {cyan: {price: 15.00, pages: 300}, allowance: 0 %}\n"


def made():  # type: ignore[no-untyped-def]
    return pad(CYAN, STUDIO, {"layouts/only-panel.yaml": PANEL}).design


def test_the_cover_of_a_ground_round_a_panel_by_hand() -> None:
    # The panel takes 80 × 100 less four corners of (4 − π) ÷ 4 × 8² each; cyan is all of the rest of 100 × 120.
    panel = 80 * 100 - (4 - pi) * 8**2
    ink = face_ink(made())
    assert ink.cover.inks == pytest.approx((1 - panel / 12_000, 0, 0, 0), abs=2e-3)
    pages = (12_000 - panel) / (210 * 297 * 0.05)
    assert float(ink.use.pages[0]) == pytest.approx(pages, rel=5e-3)
    assert float(ink.use.cost or 0) == pytest.approx(pages * 15 / 300, rel=5e-3)


def test_what_the_white_panel_saves_by_hand() -> None:
    # White rules, which the panel hides, take up to 4 % of the ground that would be there without it.
    panel = 80 * 100 - (4 - pi) * 8**2
    saves = face_ink(made()).panel_saves
    assert saves is not None
    assert float(saves.pages[0]) == pytest.approx(panel / (210 * 297 * 0.05), rel=4e-2)


def test_a_plan_has_a_figure_for_every_page_paper_and_design() -> None:
    plan = make_plan("Sea", (Wanted(made(), 3),))
    figures = figures_of(plan)
    assert [one.page for one in figures.chances] == [page.number for page in plan.pages]
    assert [paper.sheets for paper in figures.papers] == [plan.sheets]
    assert [sku for sku, _, _ in figures.gutters] == ["x"]
    assert [one.sku for one in figures.inks] == ["x"]
    data = figures.data()
    assert data["ink"]["leaves"][0]["cost_a_leaf"] == str(round(float(figures.inks[0].use.cost or 0), 4))
