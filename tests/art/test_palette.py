"""The palette against an independent clustering: scikit-learn's k-means in CIELAB."""

import numpy as np
import pytest
from PIL import Image
from skimage import color, data
from sklearn.cluster import KMeans

from padspec.art.palette import LEAST_SHARE, TWINS, lead_hue, sample
from padspec.art.pixels import Pixels
from padspec.art.raster.decode import decode
from padspec.base.colour import Colour, lab_from_srgb
from padspec.base.contrast import delta_e, delta_e_lab
from padspec.base.mixing import from_lch

from .made import opaque, saved

PHOTOGRAPHS = ["astronaut", "coffee", "chelsea", "rocket"]
BIG = 0.08
# The most that a big cluster of one may be from the nearest of the other, by CIEDE2000: measured at up to
# 7.3 on these pictures. Both cut a continuum in their own places; no published source.
APART = 9


def picture(name):
    return getattr(data, name)()


def k_means(rgb, clusters=10):
    """Colours in CIELAB and their shares, found from a thinned-out copy."""
    lab = color.rgb2lab(rgb[::3, ::3].reshape(-1, 3))
    found = KMeans(clusters, n_init=4, random_state=0).fit(lab)
    return found.cluster_centers_, np.bincount(found.labels_, minlength=clusters) / len(lab)


def blocks(*parts):
    """A picture of upright bands, each a colour and its number of columns of 100."""
    columns = [np.tile(np.array([c.red, c.green, c.blue]), (100, width, 1)) for c, width in parts]
    return np.concatenate(columns, axis=1).astype(np.uint8)


PLUM, CREAM, TEAL, RED = (Colour.from_hex(text) for text in ("#7a3b58", "#f6f0e4", "#1d6f73", "#e8112d"))


class TestAgainstAnother:
    @pytest.mark.parametrize("name", PHOTOGRAPHS)
    def test_its_big_clusters_are_ours(self, name):
        ours = np.array([lab_from_srgb(cluster.colour.unit) for cluster in sample(opaque(picture(name)))])
        theirs, shares = k_means(picture(name))
        assert max(delta_e_lab(lab, ours).min() for lab in theirs[shares > BIG]) < APART

    @pytest.mark.parametrize("name", PHOTOGRAPHS)
    def test_our_big_clusters_are_its(self, name):
        ours = [cluster for cluster in sample(opaque(picture(name))) if cluster.share > BIG]
        theirs, _ = k_means(picture(name))
        assert max(delta_e_lab(lab_from_srgb(c.colour.unit), theirs).min() for c in ours) < APART


class TestSample:
    @pytest.mark.parametrize("name", PHOTOGRAPHS)
    def test_shares_sum_to_one_largest_first(self, name):
        shares = [cluster.share for cluster in sample(opaque(picture(name)))]
        assert sum(shares) == pytest.approx(1, abs=1e-6)
        assert shares == sorted(shares, reverse=True)

    @pytest.mark.parametrize("most", [1, 2, 5, 12])
    def test_no_more_than_asked_for(self, most):
        assert len(sample(opaque(picture("coffee")), most)) <= most

    def test_flat_colours_come_back_exactly(self):
        found = sample(opaque(blocks((PLUM, 50), (CREAM, 30), (TEAL, 20))))
        assert [(c.colour, round(c.share, 2)) for c in found] == [(PLUM, 0.5), (CREAM, 0.3), (TEAL, 0.2)]

    def test_equal_shares_are_ordered_by_colour(self):
        found = sample(opaque(blocks((TEAL, 50), (PLUM, 50))))
        assert [c.colour for c in found] == sorted([TEAL, PLUM])

    def test_a_vivid_accent_survives(self):
        """A dot of a two-hundredth of the area in a picture of many quiet shades."""
        rgb = np.array(picture("camera")[..., None].repeat(3, axis=2))
        rgb[200:236, 300:336] = (RED.red, RED.green, RED.blue)
        accent = min(sample(opaque(rgb)), key=lambda c: delta_e(c.colour, RED))
        assert delta_e(accent.colour, RED) < 3
        assert accent.share == pytest.approx(36 * 36 / 512**2, rel=0.2)

    @pytest.mark.parametrize("name", PHOTOGRAPHS)
    def test_no_twins_are_left(self, name):
        """Medoids may lie a little nearer than the means that the limit is held to."""
        found = [cluster.colour for cluster in sample(opaque(picture(name)))]
        pairs = [delta_e(a, b) for i, a in enumerate(found) for b in found[i + 1 :]]
        assert min(pairs) > TWINS * 0.7

    def test_near_twins_are_one(self):
        near = Colour(PLUM.red + 4, PLUM.green, PLUM.blue)
        assert len(sample(opaque(blocks((PLUM, 60), (near, 40))))) == 1

    def test_specks_are_no_clusters(self):
        assert min(c.share for c in sample(opaque(picture("astronaut")))) >= LEAST_SHARE

    def test_hidden_colours_do_not_count(self):
        rgba = np.dstack([blocks((PLUM, 50), (TEAL, 50)), np.full((100, 100), 255)]).astype(np.uint8)
        rgba[:, 50:, 3] = 0
        assert [c.colour for c in sample(Pixels(rgba))] == [PLUM]

    def test_area_is_weighted_with_alpha(self):
        rgba = np.dstack([blocks((PLUM, 50), (TEAL, 50)), np.full((100, 100), 255)]).astype(np.uint8)
        rgba[:, 50:, 3] = 85
        assert [round(c.share, 3) for c in sample(Pixels(rgba))] == [0.75, 0.25]

    def test_nothing_visible_has_no_palette(self):
        assert sample(Pixels(np.zeros((5, 5, 4), np.uint8))) == ()

    @pytest.mark.parametrize("turns", [1, 2, 3])
    def test_turning_the_picture_changes_next_to_nothing(self, turns):
        upright = sample(opaque(blocks((PLUM, 55), (CREAM, 30), (TEAL, 15))))
        turned = sample(opaque(np.rot90(blocks((PLUM, 55), (CREAM, 30), (TEAL, 15)), turns)))
        assert [c.colour for c in turned] == [c.colour for c in upright]
        assert [c.share for c in turned] == pytest.approx([c.share for c in upright], abs=0.01)

    def test_same_result_for_the_file_saved_again(self):
        first = decode(saved(Image.fromarray(picture("coffee")), "PNG"), "cup")
        again = decode(saved(Image.fromarray(first.rgba), "PNG", compress_level=1), "cup")
        assert sample(first) == sample(again) == sample(first)


class TestLeadHue:
    @pytest.mark.parametrize("hue", range(0, 360, 40))
    def test_one_hue_is_found_with_full_strength(self, hue):
        tone = from_lch(0.7, 0.1, hue)
        found, strength = lead_hue(opaque(blocks((tone, 40), (Colour(250, 250, 250), 60))))
        assert abs((found - hue + 180) % 360 - 180) < 2  # an 8-bit colour is off by up to that
        assert strength == 1

    def test_chroma_outweighs_area(self):
        pale, vivid = from_lch(0.8, 0.04, 250), from_lch(0.6, 0.2, 30)
        found, _ = lead_hue(opaque(blocks((pale, 70), (vivid, 30))))
        assert found == pytest.approx(30, abs=2)

    def test_strength_is_the_share_of_colourfulness(self):
        one, other = from_lch(0.7, 0.1, 140), from_lch(0.7, 0.1, 320)
        _, strength = lead_hue(opaque(blocks((one, 75), (other, 25))))
        assert strength == pytest.approx(0.75, abs=0.02)

    def test_the_peak_may_lie_across_zero(self):
        pair = [(from_lch(0.7, 0.1, hue), 50) for hue in (355, 5)]
        found, _ = lead_hue(opaque(blocks(*pair)))
        assert min(found, 360 - found) < 6

    def test_a_grey_picture_has_none(self):
        assert lead_hue(opaque(picture("camera")[..., None].repeat(3, axis=2))) is None

    def test_a_warm_paper_is_neutral(self):
        assert lead_hue(opaque(blocks((Colour(248, 245, 238), 100)))) is None

    def test_nothing_visible_has_none(self):
        assert lead_hue(Pixels(np.zeros((5, 5, 4), np.uint8))) is None

    def test_a_photograph_of_one_hue(self):
        """A cup of coffee on wood: orange by any reckoning (OKLab hue of pure orange #ff8000: 56°)."""
        found, strength = lead_hue(opaque(picture("coffee")))
        assert 30 < found < 70
        assert strength > 0.9
