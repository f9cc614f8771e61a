"""Any pattern on any leaf: it is drawn, it stays where it can be seen, and there is not too much of it."""

from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.base.geometry import Box, Size
from padspec.resolve.ground import KINDS, MOST_MARKS
from padspec.scene.nodes import Group
from padspec.scene.outline import bounds, points

from .drawn import marks, pattern, scene

sides = st.floats(60, 300)
phases = st.sampled_from(["centred", "run-on", "out-of-step"])
#: Kinds whose every mark shows in the area; waves, scales, the holes of rings and squares that stand askew (which
#: reach further one way than the other) may lie past it, and are clipped.
WHOLE = ("split", "gradient", "stripes", "dots")


def some_pattern(kind, width, height, size, mark, angle, phase):
    least = (width * height / KINDS[kind].most) ** 0.5
    return pattern(kind, size=max(size, least), mark=mark, angle=angle, phase=phase)


@settings(max_examples=80, deadline=None)
@given(
    st.sampled_from([kind for kind in KINDS if kind not in ("motif", "gradient")]),
    sides,
    sides,
    st.floats(8, 400),
    st.floats(0.0, 1.0),
    st.floats(-180, 180),
    phases,
    st.floats(0, 6),
)
def test_it_is_drawn_within_reach(kind, width, height, size, mark, angle, phase, bleed):
    some, trim = some_pattern(kind, width, height, size, mark, angle, phase), Size(width, height)
    area = Box(0, 0, width, height).inset(-bleed)
    past = 1e-6 if kind in WHOLE else 8 * some.size + max(width, height)
    if not any(isinstance(node, Group) for node in scene(some, trim, bleed).layers[0].nodes):
        return
    for mark_drawn in marks(some, trim, bleed):
        box = bounds(mark_drawn)
        assert all(abs(part) < 1e5 for point in points(mark_drawn) for part in point)
        assert box.x <= area.right + past
        assert box.right >= area.x - past
        assert box.y <= area.bottom + past
        assert box.bottom >= area.y - past


@settings(max_examples=10, deadline=None)
@given(
    st.sampled_from(["dots", "checks", "gingham", "lattice", "scallop", "wave", "stripes"]),
    sides,
    sides,
    st.floats(-180, 180),
    phases,
)
def test_even_the_finest_that_is_taken_has_a_bounded_number_of_marks(kind, width, height, angle, phase):
    """On the smallest leaf the bleed holds a fifth more; the stripes under gingham and the like are few."""
    some = some_pattern(kind, width, height, 0.0, 0.4, angle, phase)
    assert len(marks(some, Size(width, height), 3.0)) < 1.6 * MOST_MARKS


@settings(max_examples=15, deadline=None)
@given(sides, sides, st.floats(10, 200), st.floats(0.1, 1), st.floats(-180, 180), phases)
def test_motifs_of_any_size_are_placed(width, height, size, mark, angle, phase):
    some = pattern("motif", size=size, mark=round(mark, 1), angle=angle, phase=phase, turn=180, jitter=1.0)
    nodes = scene(some, Size(width, height)).layers[0].nodes
    copies = nodes[1].children if len(nodes) > 1 else ()
    assert len(copies) < 4 * width * height / size**2 + 40
