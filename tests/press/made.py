"""The invented press of `examples/press_profile.py`: its profile, made once, and separators for it."""

import importlib.util
import struct
from functools import cache
from pathlib import Path
from types import ModuleType

from padspec.base.geometry import Size
from padspec.press.profile import Intent, Press, read_profile
from padspec.press.separate import Separator
from padspec.scene.nodes import Layer, Node, Scene

_SCRIPT = Path(__file__).parents[2] / "examples" / "press_profile.py"
#: The file of Ghostscript's package, made by others: a press that this repository knows nothing of.
OUTSIDE = Path("/usr/share/color/icc/ghostscript/default_cmyk.icc")


@cache
def model() -> ModuleType:
    """The script as a module: its equations are what LittleCMS is held against."""
    spec = importlib.util.spec_from_file_location("press_profile", _SCRIPT)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@cache
def profile_bytes() -> bytes:
    return model().profile_bytes()


@cache
def separator(intent: Intent = "relative", black_point: bool = True, outside: bool = False) -> Separator:
    data = OUTSIDE.read_bytes() if outside else profile_bytes()
    return Separator(Press(read_profile(data, "press.icc"), intent, black_point))


def relabelled(place: int, words: bytes) -> bytes:
    """The profile with some bytes of its header changed."""
    data = bytearray(profile_bytes())
    data[place : place + len(words)] = words
    return bytes(data)


def without_tag(tag: bytes) -> bytes:
    """The profile with one tag under a name that nobody knows."""
    data = bytearray(profile_bytes())
    (count,) = struct.unpack_from(">I", data, 128)
    for place in range(132, 132 + 12 * count, 12):
        if data[place : place + 4] == tag:
            data[place : place + 4] = b"none"
    return bytes(data)


def scene_of(**layers: tuple[Node, ...]) -> Scene:
    """A face of 50.8 × 50.8 mm without bleed."""
    return Scene(Size(50.8, 50.8), 0, tuple(Layer(name, nodes) for name, nodes in layers.items()))
