import io
import struct
import zlib
from contextlib import suppress

import numpy as np
import pytest
import tifffile
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image, ImageOps
from skimage import data
from skimage import io as reader

from padspec.art.errors import ArtError
from padspec.art.pixels import Pixels
from padspec.art.raster.decode import decode, sniff

from .made import SVG, png, saved, swapped_profile

RGB = data.astronaut()[100:180, 200:260]
RAMP16 = np.linspace(0, 65535, 60 * 40).round().astype(np.uint16).reshape(40, 60)


def rgb_of(file):
    return decode(file, "moth").rgba[..., :3]


def alpha_of(file):
    return decode(file, "moth").rgba[..., 3]


class TestPng:
    def test_rgb_is_read_exactly(self):
        np.testing.assert_array_equal(rgb_of(png(RGB, 8, 2)), RGB)

    def test_rgba_keeps_its_alpha_straight(self):
        rgba = np.dstack([RGB, RGB[..., :1]])
        np.testing.assert_array_equal(decode(png(rgba, 8, 6), "moth").rgba, rgba)

    def test_grey_becomes_three_equal_channels(self):
        np.testing.assert_array_equal(rgb_of(png(RGB[..., :1], 8, 0)), RGB[..., [0, 0, 0]])

    def test_grey_with_alpha(self):
        found = decode(png(RGB[..., :2], 8, 4), "moth").rgba
        np.testing.assert_array_equal(found, RGB[..., [0, 0, 0, 1]])

    @pytest.mark.parametrize("bits", [1, 2, 4])
    def test_shallow_grey_is_scaled_to_white(self, bits):
        steps = (1 << bits) - 1
        samples = np.arange(16).reshape(4, 4, 1) % (steps + 1)
        np.testing.assert_array_equal(rgb_of(png(samples, bits, 0))[..., :1], samples * (255 // steps))

    def test_sixteen_bit_grey_is_rounded_not_clipped(self):
        found = rgb_of(png(RAMP16[..., None], 16, 0))[..., 0]
        np.testing.assert_array_equal(found, np.round(RAMP16 / 257))

    @pytest.mark.parametrize(("channels", "kind"), [(2, 4), (3, 2), (4, 6)])
    def test_sixteen_bit_colour_is_within_one_step(self, channels, kind):
        samples = np.stack([RAMP16, RAMP16[::-1], RAMP16[:, ::-1], RAMP16.T.reshape(40, 60)], axis=2)[
            ..., :channels
        ]
        found = decode(png(samples, 16, kind), "moth").rgba
        shown = found[..., [0, 3]] if channels == 2 else found[..., :channels]
        assert np.abs(shown - samples / 257).max() <= 1

    def test_palette_with_transparency_of_each_entry(self):
        entries = bytes([200, 10, 20, 30, 200, 40, 50, 60, 200])
        index = np.array([[0, 1, 2]])[..., None]
        found = decode(png(index, 8, 3, (b"PLTE", entries), (b"tRNS", bytes([0, 128]))), "moth").rgba
        np.testing.assert_array_equal(found[0], [[200, 10, 20, 0], [30, 200, 40, 128], [50, 60, 200, 255]])

    def test_palette_with_one_transparent_entry(self):
        entries = bytes([200, 10, 20, 30, 200, 40])
        file = png(np.array([[1, 0]])[..., None], 8, 3, (b"PLTE", entries), (b"tRNS", bytes([0])))
        np.testing.assert_array_equal(alpha_of(file), [[255, 0]])

    @pytest.mark.parametrize(("bits", "key"), [(1, 1), (2, 2), (4, 9), (8, 77), (16, 30000)])
    def test_grey_key_is_transparent_at_every_depth(self, bits, key):
        samples = np.array([[0, key]])[..., None]
        file = png(samples, bits, 0, (b"tRNS", struct.pack(">H", key)))
        np.testing.assert_array_equal(alpha_of(file), [[255, 0]])

    def test_rgb_key_is_transparent_only_where_all_channels_match(self):
        file = png(np.array([[[9, 8, 7], [9, 8, 6]]]), 8, 2, (b"tRNS", struct.pack(">HHH", 9, 8, 7)))
        np.testing.assert_array_equal(alpha_of(file), [[0, 255]])

    def test_rgb_key_of_sixteen_bits(self):
        samples = np.array([[[9000, 8000, 7000], [9000, 8000, 60]]])
        file = png(samples, 16, 2, (b"tRNS", struct.pack(">HHH", 9000, 8000, 7000)))
        np.testing.assert_array_equal(alpha_of(file), [[0, 255]])

    def test_another_reader_sees_the_same(self):
        file = png(RGB, 8, 2)
        np.testing.assert_array_equal(rgb_of(file), reader.imread(io.BytesIO(file)))

    def test_first_frame_of_an_animation(self):
        frames = [Image.fromarray(RGB), Image.fromarray(255 - RGB)]
        file = saved(frames[0], "PNG", save_all=True, append_images=frames[1:])
        np.testing.assert_array_equal(rgb_of(file), RGB)


class TestJpeg:
    def test_within_the_loss_of_the_format(self):
        found = rgb_of(saved(Image.fromarray(RGB), "JPEG", quality=95, subsampling=0)).astype(int)
        assert np.abs(found - RGB).mean() < 4

    def test_grey(self):
        found = rgb_of(saved(Image.fromarray(RGB[..., 0]), "JPEG", quality=95))
        assert (found[..., 0] == found[..., 2]).all()
        assert np.abs(found[..., 0].astype(int) - RGB[..., 0]).mean() < 2

    def test_cmyk_by_plain_complement(self):
        plain = Image.new("CMYK", (16, 16), (0, 255, 255, 0))
        np.testing.assert_allclose(rgb_of(saved(plain, "JPEG", quality=95))[8, 8], [255, 0, 0], atol=3)

    @pytest.mark.parametrize("orientation", range(1, 9))
    def test_orientation_is_applied(self, orientation):
        exif = Image.Exif()
        exif[0x0112] = orientation
        image = Image.fromarray(np.kron(RGB[:7, :5], np.ones((16, 16, 1), np.uint8)))
        file = saved(image, "JPEG", quality=95, exif=exif)
        wanted = np.asarray(ImageOps.exif_transpose(Image.open(io.BytesIO(file))))
        np.testing.assert_array_equal(rgb_of(file), wanted)

    def test_cut_off_is_refused(self):
        file = saved(Image.fromarray(RGB), "JPEG")
        with pytest.raises(ArtError, match="damaged or cut-off JPEG"):
            decode(file[: len(file) // 2], "moth.jpg")


class TestWebP:
    def test_lossless_with_alpha(self):
        rgba = np.dstack([RGB, np.maximum(RGB[..., 0], 1)])
        file = saved(Image.fromarray(rgba), "WEBP", lossless=True, exact=True)
        np.testing.assert_array_equal(decode(file, "moth").rgba, rgba)

    def test_first_frame_of_an_animation(self):
        frames = [Image.fromarray(RGB), Image.fromarray(255 - RGB)]
        file = saved(frames[0], "WEBP", save_all=True, append_images=frames[1:], lossless=True)
        np.testing.assert_array_equal(rgb_of(file), RGB)


class TestTiff:
    """The files are written by another library than the one that reads them."""

    @staticmethod
    def written(array, **options):
        out = io.BytesIO()
        tifffile.imwrite(out, array, **options)
        return out.getvalue()

    def test_tiled(self):
        file = self.written(np.ascontiguousarray(RGB), tile=(16, 16), photometric="rgb")
        np.testing.assert_array_equal(rgb_of(file), RGB)

    def test_lzw(self):
        np.testing.assert_array_equal(rgb_of(saved(Image.fromarray(RGB), "TIFF", compression="tiff_lzw")), RGB)

    @pytest.mark.parametrize("order", ["<", ">"])
    def test_sixteen_bit_grey_of_either_byte_order(self, order):
        found = rgb_of(self.written(RAMP16, byteorder=order))[..., 0]
        np.testing.assert_array_equal(found, np.round(RAMP16 / 257))

    def test_sixteen_bit_grey_where_zero_is_white(self):
        found = rgb_of(self.written(RAMP16, photometric="miniswhite"))[..., 0]
        np.testing.assert_array_equal(found, 255 - np.round(RAMP16 / 257))

    def test_sixteen_bit_rgb(self):
        samples = np.stack([RAMP16, RAMP16[::-1], RAMP16[:, ::-1]], axis=2)
        assert np.abs(rgb_of(self.written(samples, photometric="rgb")) - samples / 257).max() <= 1

    def test_cmyk(self):
        found = rgb_of(saved(Image.new("CMYK", (4, 4), (255, 0, 255, 0)), "TIFF"))
        np.testing.assert_array_equal(found[0, 0], [0, 255, 0])

    def test_first_page(self):
        file = saved(Image.fromarray(RGB), "TIFF", save_all=True, append_images=[Image.fromarray(255 - RGB)])
        np.testing.assert_array_equal(rgb_of(file), RGB)

    def test_orientation_is_applied_once(self):
        exif = Image.Exif()
        exif[0x0112] = 6
        file = saved(Image.fromarray(RGB), "TIFF", exif=exif)
        np.testing.assert_array_equal(rgb_of(file), np.rot90(RGB, -1))

    def test_floating_point_is_refused_with_what_to_save(self):
        with pytest.raises(ArtError, match="8 or 16 bits"):
            decode(self.written(RAMP16.astype(np.float32)), "moth.tif")


class TestProfiles:
    def test_profile_is_honoured(self):
        """By the profile's own primaries: its red is sRGB's green, and so on round (0 and 255 move little)."""
        image = Image.fromarray(np.array([[[255, 0, 0], [0, 255, 0], [0, 0, 255]]], np.uint8))
        found = rgb_of(saved(image, "PNG", icc_profile=swapped_profile()))
        np.testing.assert_allclose(found[0], [[0, 255, 0], [0, 0, 255], [255, 0, 0]], atol=3)

    def test_alpha_is_kept_out_of_the_conversion(self):
        rgba = np.dstack([RGB, RGB[..., 0]])
        found = decode(saved(Image.fromarray(rgba), "PNG", icc_profile=swapped_profile()), "moth").rgba
        np.testing.assert_array_equal(found[..., 3], RGB[..., 0])

    def test_srgb_profile_changes_nothing(self):
        from PIL import ImageCms

        profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
        np.testing.assert_array_equal(rgb_of(saved(Image.fromarray(RGB), "PNG", icc_profile=profile)), RGB)

    def test_grey_picture_with_a_profile_for_rgb(self):
        found = rgb_of(saved(Image.fromarray(RGB[..., 0]), "PNG", icc_profile=swapped_profile()))
        assert np.ptp(found.astype(int), axis=2).max() <= 3

    @pytest.mark.parametrize("profile", [b"no profile", swapped_profile()[:200]])
    def test_broken_profile_is_refused(self, profile):
        with pytest.raises(ArtError, match=f"profile embedded in the picture .{len(profile)} bytes"):
            decode(saved(Image.fromarray(RGB), "PNG", icc_profile=profile), "moth.png")

    def test_profile_for_other_colours_is_refused(self):
        file = saved(Image.new("CMYK", (4, 4)), "TIFF", icc_profile=swapped_profile())
        with pytest.raises(ArtError, match="profile"):
            decode(file, "moth.tif")


class TestRefusals:
    def test_too_large_is_refused_before_decoding(self):
        """The file has a header and next to no pixels, so that decoding it would fail otherwise."""
        header = struct.pack(">IIBBBBB", 20000, 15000, 8, 2, 0, 0, 0)
        start = png(RGB, 8, 2)[:8]
        chunk = struct.pack(">I", 13) + b"IHDR" + header + struct.pack(">I", zlib.crc32(b"IHDR" + header))
        body = zlib.compress(b"\0" * 50)
        idat = struct.pack(">I", len(body)) + b"IDAT" + body + struct.pack(">I", zlib.crc32(b"IDAT" + body))
        with pytest.raises(ArtError) as refusal:
            decode(start + chunk + idat, "moth.png")
        assert "20000 × 15000 pixels, 300 megapixels; the limit is 100" in refusal.value.message
        assert "11547 × 8660" in refusal.value.mend  # 20000 and 15000 times the root of a third

    @pytest.mark.parametrize(
        ("start", "kind"),
        [
            (b"GIF89a\1\0\1\0", "a GIF"),
            (b"%PDF-1.7", "a PDF"),
            (b"\0\0\0\x18ftypheic", "a HEIC"),
            (b"\0\0\0\x18ftypavif", "an AVIF"),
            (b"8BPS\0\1", "layered"),
            (b"Dear moth,", "text"),
            (b"", "an empty file"),
            (b"\1\2\3\0\4", "no picture format"),
            (SVG.encode() + b"</svg>", "an SVG drawing"),
        ],
    )
    def test_other_files_are_named_with_what_works(self, start, kind):
        with pytest.raises(ArtError) as refusal:
            decode(start, "moth")
        assert kind in refusal.value.message
        assert "PNG, JPEG, WebP or TIFF" in refusal.value.mend

    @settings(max_examples=60, deadline=None)
    @given(st.sampled_from(["PNG", "JPEG", "WEBP", "TIFF"]), st.data())
    def test_a_damaged_file_is_read_or_refused(self, form, draw):
        file = bytearray(saved(Image.fromarray(RGB), form))
        for _ in range(draw.draw(st.integers(1, 4))):
            file[draw.draw(st.integers(0, len(file) - 1))] = draw.draw(st.integers(0, 255))
        cut = draw.draw(st.integers(1, len(file)))
        with suppress(ArtError):
            assert isinstance(decode(bytes(file[:cut]), "moth"), Pixels)


class TestSniff:
    @pytest.mark.parametrize(
        "start",
        [
            SVG,
            "\ufeff" + SVG,
            '<?xml version="1.0"?>\n<!-- a moth -->\n' + SVG,
            '<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "x">\n' + SVG,
            '<s:svg xmlns:s="http://www.w3.org/2000/svg"/>',
        ],
    )
    def test_svg_by_content(self, start):
        assert sniff(start.encode()) == "svg"

    def test_svg_in_utf_16(self):
        assert sniff(SVG.encode("utf-16")) == "svg"

    @pytest.mark.parametrize("start", [b"<html><svg/></html>", b"\x89PNG\r\n\x1a\n<svg>", b"", b"<svgx/>"])
    def test_anything_else_is_for_decode(self, start):
        assert sniff(start) == "raster"


def test_pixels_are_read_only():
    with pytest.raises(ValueError, match="read-only"):
        decode(png(RGB, 8, 2), "moth").rgba[0, 0, 0] = 1


def test_pixels_refuse_another_shape():
    with pytest.raises(ValueError, match="RGBA"):
        Pixels(np.zeros((4, 4, 3), np.uint8))
