"""Sleeves: W >= w + t and L >= h + t / 2 (bag makers' measuring guides: width + depth, height + half the
depth).
"""

from math import hypot

from hypothesis import given
from hypothesis import strategies as st

from padspec.base.geometry import Size
from padspec.base.sleeve_fit import largest_pad, least_bag

_SIDE = st.integers(400, 6000).map(lambda n: n / 20)
_THIN = st.integers(0, 600).map(lambda n: n / 20)


def test_a_worked_example():
    """A pad of 90 × 190 × 7.5 mm takes 97.5 × 193.75; with 3 and 6 mm of ease 100.5 × 199.75. The diagonal of its
    section is not what counts."""
    least = least_bag(Size(90, 190), 7.5)
    assert least == Size(97.5, 193.75)
    assert (least.width + 3, least.height + 6) == (100.5, 199.75)
    assert hypot(90, 7.5) < 90.4 < least.width


@given(_SIDE, _SIDE, _THIN)
def test_the_largest_pad_goes_in_with_its_ease_and_half_a_millimetre_more_does_not(width, length, thick):
    ease, bag = Size(3, 6), Size(width, length)
    pad = largest_pad(bag, thick, ease)
    least = least_bag(pad, thick)
    assert least.width + ease.width <= bag.width + 1e-6
    assert least.height + ease.height <= bag.height + 1e-6
    wider, longer = (
        least_bag(Size(pad.width + 0.5, pad.height), thick),
        least_bag(Size(pad.width, pad.height + 0.5), thick),
    )
    assert wider.width + ease.width > bag.width - 1e-6
    assert longer.height + ease.height > bag.height - 1e-6
