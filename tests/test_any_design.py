"""Whatever a maker writes, a design is made or refused in words: nothing else comes out of the pipeline."""

from functools import cache

from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st
from kit import PLAIN, apply, disc, pad

from padspec.base.errors import Problem, ProblemsError
from padspec.base.geometry import Box
from padspec.pipeline import Pad
from padspec.resolve.ground import KINDS as PATTERNS
from padspec.resolve.roles import COLOURWAYS
from padspec.resources import layout_names
from padspec.scene.nodes import pictures, shapes
from padspec.scene.outline import points

lengths = st.sampled_from(
    [
        "0 mm",
        "0.1 mm",
        "1 mm",
        "2 mm",
        "4 mm",
        "5 mm",
        "8 mm",
        "1/4 in",
        "15 mm",
        "40 mm",
        "90 mm",
        "200 mm",
        "1000 mm",
    ]
)
shares = st.sampled_from(["0 %", "1 %", "30 %", "100 %"])
colours = st.sampled_from(["white", "black", "rule", "ground", "#808080", "art"])
texts = st.sampled_from(
    ["", "To do", "A", "Everything before the lamps go out, and twice after", "日本語", "שלום", "🦔", "x" * 300]
)

KEYS = {
    "trim.width": lengths,
    "trim.height": lengths,
    "leaves": st.integers(0, 1001),
    "layout": st.sampled_from(layout_names()),
    "art.height": st.one_of(lengths, shares),
    "art.width": st.one_of(lengths, shares),
    "art.overlap": lengths,
    "art.inset": lengths,
    "heading.text": texts,
    "heading.size": lengths,
    "heading.least-size": lengths,
    "heading.lines": st.integers(0, 5),
    "heading.space": lengths,
    "panel.corner": lengths,
    "panel.inset": lengths,
    "panel.pad": lengths,
    "panel.colour": colours,
    "rows.pitch": lengths,
    "rows.count": st.integers(0, 201),
    "rows.checkbox": st.one_of(lengths, st.just("none")),
    "rows.checkbox-corner": lengths,
    "rows.checkbox-gap": lengths,
    "rows.weight": lengths,
    "rows.colour": colours,
    "ground.pattern.kind": st.sampled_from(sorted(set(PATTERNS) - {"motif"})),
    "ground.pattern.size": lengths,
    "ground.pattern.mark": shares,
    "ground.pattern.angle": st.sampled_from([0, 45, 90, -30, 360]),
    "ground.pattern.phase": st.sampled_from(["centred", "run-on", "out-of-step"]),
    "colourway": st.sampled_from(COLOURWAYS),
    "art.fills": st.sampled_from(["block", "face"]),
    "heading.arc": st.sampled_from([0, 30, -180, 180]),
    "heading.tracking": st.sampled_from([-100, 0, 200]),
    "heading.outline": lengths,
    "heading.fit": st.sampled_from(["size", "width"]),
    "panel.opacity": shares,
    "rows.labels": st.sampled_from(["none", "numbers"]),
    "rows.line": st.sampled_from(["solid", "dashed", "dotted", "none"]),
    "rows.checkbox-count": st.integers(0, 6),
    "rows.quantity": lengths,
    "rows.priority": st.integers(0, 6),
    "grid.pitch": lengths,
    "marks.size": lengths,
    "columns.gap": lengths,
    "repeat.columns": st.integers(0, 13),
    "sheet.gutter": lengths,
    "sheet.bleed": lengths,
    "sheet.least-bleed": lengths,
    "sheet.size": st.sampled_from(["A4", "letter", "A6", "A3"]),
}
#: A few keys at a time, so that most designs are readable and the odd value meets an otherwise plain design.
changes = st.lists(st.sampled_from(sorted(KEYS)), max_size=5, unique=True).flatmap(
    lambda keys: st.fixed_dictionaries({key: KEYS[key] for key in keys})
)


@cache
def picture() -> bytes:
    return disc(120, 120)


@settings(max_examples=120, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@example({"art.height": "200 mm"})
@example({"trim.height": "40 mm", "art.height": "90 mm"})
@given(changes)
def test_a_design_is_made_or_refused_with_its_place(some: dict[str, object]) -> None:
    text = apply(PLAIN, {"art.file": "disc.png"} | some)
    made, refused = made_or_refused(text)
    assert (made is None) == bool(refused)
    assert all(problem.place.file == "x.pad.yaml" and problem.message for problem in refused)
    if made is None:
        return
    for finding in made.findings:
        assert finding.place.file == "x.pad.yaml"
        assert finding.place.line > 0
        assert finding.message
    assert_drawable(
        made.face.scene.bleed_box, [p for shape in shapes(made.face.scene) for p in points(shape.outline)]
    )
    assert all(picture.box.width > 0 and picture.box.height > 0 for picture in pictures(made.face.scene))


def made_or_refused(text: str) -> tuple[Pad | None, tuple[Problem, ...]]:
    try:
        return pad(text, files={"disc.png": picture()}), ()
    except ProblemsError as error:
        return None, error.problems


def assert_drawable(area: Box, found: list[tuple[float, float]]) -> None:
    assert all(abs(x) < 1e5 and abs(y) < 1e5 for x, y in found)
    assert area.width > 0
