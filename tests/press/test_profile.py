"""Which profiles can separate, and what is said of the others. Tags and classes: ICC.1:2010."""

import struct
import subprocess
import sys

import pytest
from PIL import ImageCms

from padspec.press.profile import ProfileError, read_profile, tags

from .made import OUTSIDE, profile_bytes, relabelled, without_tag


def refused(data: bytes) -> str:
    with pytest.raises(ProfileError) as caught:
        read_profile(data, "profiles/mine.icc")
    assert caught.value.mend in str(caught.value)
    return caught.value.message


def test_a_press_profile_says_what_it_is_called():
    assert read_profile(profile_bytes(), "x.icc").description == "Invented uncoated press, 280 %"


def test_a_press_profile_is_kept_byte_for_byte():
    assert read_profile(profile_bytes(), "x.icc").data == profile_bytes()


def test_a_profile_made_by_others_is_read():
    """Judge: the CMYK profile in Debian's libgs-common."""
    assert read_profile(OUTSIDE.read_bytes(), "x.icc").description


def test_the_profile_of_a_screen_is_refused_by_class_and_space():
    said = refused(ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes())
    assert "profiles/mine.icc" in said
    assert "a display profile, for a screen (class mntr) for RGB" in said


def test_an_output_profile_for_another_space_is_refused():
    assert "an output profile (class prtr) for RGB, not an output profile for CMYK" in refused(
        relabelled(16, b"RGB ")
    )


def test_a_cmyk_profile_of_a_scanner_is_refused():
    assert "an input profile, for a scanner or camera (class scnr) for CMYK" in refused(relabelled(12, b"scnr"))


@pytest.mark.parametrize("data", [b"", b"not a profile at all", profile_bytes()[:60], b"\0" * 500])
def test_what_is_no_profile_is_refused_with_its_size(data):
    assert f"({len(data)} bytes) is not an ICC profile" in refused(data)


@pytest.mark.parametrize("tag", ["A2B0", "B2A0", "wtpt"])
def test_a_profile_that_lacks_a_table_is_refused_by_the_name_of_the_tag(tag):
    assert f"lacks 1 of the 4 tags that separating needs: {tag}." in refused(without_tag(tag.encode()))


def test_a_profile_newer_than_pdf_1_6_may_hold_is_refused():
    """ISO 32000-1, table 67: profiles up to version 4; iccMAX is version 5."""
    assert "of version 5; PDF/X-4 may hold version 4 at most" in refused(relabelled(8, b"\5"))


@pytest.mark.parametrize("tag", ["A2B1", "B2A1"])
def test_a_table_that_cannot_be_used_is_found_before_the_work_is_sent(tag):
    """The type of the table is changed to one that nobody knows."""
    data = bytearray(profile_bytes())
    entry = 132 + 12 * tags(bytes(data)).index(tag)
    (place,) = struct.unpack_from(">I", data, entry + 4)
    data[place : place + 4] = b"zzzz"
    assert "holds a table that cannot be used" in refused(bytes(data))


def test_every_refusal_says_how_to_mend_it():
    with pytest.raises(ProfileError, match="Ask the press for its CMYK output profile"):
        read_profile(b"", "x.icc")


def test_the_tag_table_is_read_in_order():
    assert tags(profile_bytes()) == (
        "desc", "cprt", "wtpt", "A2B0", "A2B1", "A2B2", "B2A0", "B2A1", "B2A2", "gamt",
    )  # fmt: skip


def test_the_made_profile_has_every_tag_that_its_class_must_have():
    """ICC.1:2001-04, 6.3.3.1, from memory."""
    needed = {"desc", "cprt", "wtpt", "A2B0", "A2B1", "A2B2", "B2A0", "B2A1", "B2A2", "gamt"}
    assert needed <= set(tags(profile_bytes()))


def test_the_script_writes_the_same_bytes_in_another_process(tmp_path):
    from .made import _SCRIPT

    out = tmp_path / "press.icc"
    subprocess.run([sys.executable, _SCRIPT, out], check=True)
    assert out.read_bytes() == profile_bytes()
