"""The maker's ICC profile: bytes in, a profile that can separate colours out, or an error that says what it is.

Clauses are those of ICC.1:2010 (ISO 15076-1).
"""

import struct
from dataclasses import dataclass
from io import BytesIO
from typing import Any, Literal

from padspec.base.errors import PadspecError

Intent = Literal["perceptual", "relative", "saturation", "absolute"]
#: The rendering intents in the order that ICC.1 numbers them (7.2.15).
INTENTS: tuple[Intent, ...] = ("perceptual", "relative", "saturation", "absolute")

#: What an output profile made of tables must have, less the tables of intents that may stand in for each other
#: (ICC.1, 8.5.2 and table 25).
_NEEDED = ("desc", "wtpt", "A2B0", "B2A0")
_CLASSES = {
    "scnr": "an input profile, for a scanner or camera",
    "mntr": "a display profile, for a screen",
    "prtr": "an output profile",
    "link": "a device link",
    "spac": "a colour space conversion",
    "abst": "an abstract profile",
    "nmcl": "a list of named colours",
}
#: PDF 1.6 knows profiles up to ICC.1:2003, version 4.x (ISO 32000-1, table 67).
_NEWEST = 4
_ASK = "Ask the press for its CMYK output profile (ICC, device class prtr) and name that file."


class ProfileError(PadspecError):
    """A profile cannot be used. `message` says what it is, `mend` what to do about it."""

    def __init__(self, message: str, mend: str) -> None:
        super().__init__(f"{message} {mend}")
        self.message = message
        self.mend = mend


@dataclass(frozen=True, slots=True)
class Profile:
    """A CMYK output profile: the bytes of its file, and what it calls itself."""

    data: bytes
    description: str


@dataclass(frozen=True, slots=True)
class Press:
    """How work is separated: profile, rendering intent, and whether black is brought to the darkest print.

    `line_tolerance` is the CIEDE2000 by which thin lines may differ from their full separation to save inks.
    """

    profile: Profile
    intent: Intent = "relative"
    black_point: bool = True
    line_tolerance: float = 3.0


def read_profile(data: bytes, name: str) -> Profile:
    """The profile in a file's bytes; `name` stands in messages.

    Raises ProfileError for what is no ICC profile, is for another device or colour space, lacks a tag that
    separating needs or holds one that LittleCMS cannot use, or is newer than PDF 1.6 may hold.
    """
    from PIL import ImageCms

    _refuse_newer(data, name)
    try:
        opened = ImageCms.ImageCmsProfile(BytesIO(data))
    except (ImageCms.PyCMSError, OSError, ValueError, TypeError) as trouble:
        raise ProfileError(
            f"{name} ({len(data)} bytes) is not an ICC profile that can be read.", _ASK
        ) from trouble
    profile: Any = opened.profile
    description = " ".join((profile.profile_description or "").split())
    _refuse_other_kinds(profile, description, name)
    _refuse_missing_tags(data, description, name)
    _refuse_useless_tables(opened, description, name)
    return Profile(data, description)


def _refuse_newer(data: bytes, name: str) -> None:
    """Looks at the header alone (ICC.1, 7.2.4): the library opens no profile that is newer than itself."""
    if data[36:40] == b"acsp" and data[8] > _NEWEST:
        raise ProfileError(
            f"{name} is an ICC profile of version {data[8]}; PDF/X-4 may hold version {_NEWEST} at most.",
            "Ask the press for the same condition as a profile of version 2 or 4.",
        )


def _refuse_other_kinds(profile: Any, description: str, name: str) -> None:
    kind, space = profile.device_class.strip(), profile.xcolor_space.strip()
    if kind == "prtr" and space == "CMYK":
        return
    raise ProfileError(
        f"{name} (“{description}”) is {_CLASSES.get(kind, 'a profile of an unknown class')} (class {kind})"
        f" for {space}, not an output profile for CMYK.",
        _ASK,
    )


def _refuse_missing_tags(data: bytes, description: str, name: str) -> None:
    held = tags(data)
    missing = [tag for tag in _NEEDED if tag not in held]
    if missing:
        raise ProfileError(
            f"{name} (“{description}”) lacks {len(missing)} of the {len(_NEEDED)} tags that separating needs:"
            f" {', '.join(missing)}.",
            _ASK,
        )


def _refuse_useless_tables(opened: Any, description: str, name: str) -> None:
    """Both ways are tried once: a broken table would else show only when the work is sent."""
    from PIL import ImageCms

    screen = ImageCms.createProfile("sRGB")
    plain = ImageCms.Flags.NOOPTIMIZE
    try:
        for intent in ImageCms.Intent:
            ImageCms.buildTransform(screen, opened, "RGB", "CMYK", intent, plain)
            ImageCms.buildTransform(opened, screen, "CMYK", "RGB", intent, plain)
    except ImageCms.PyCMSError as trouble:
        raise ProfileError(
            f"{name} (“{description}”) holds a table that cannot be used: {trouble}.", _ASK
        ) from trouble


def tags(data: bytes) -> tuple[str, ...]:
    """The signatures in the tag table of a profile (ICC.1, 7.3)."""
    (count,) = struct.unpack_from(">I", data, 128)
    table = data[132 : 132 + 12 * count]
    return tuple(table[at : at + 4].decode("latin-1") for at in range(0, len(table) - 11, 12))
