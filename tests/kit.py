"""What the tests build with: pads from YAML text in memory, and small pictures whose every pixel is known."""

from collections.abc import Mapping
from io import BytesIO
from typing import Any, ClassVar

import numpy as np
import yaml
from PIL import Image

from padspec.base.errors import ProblemsError
from padspec.pipeline import Pad, make
from padspec.workspace import MemoryWorkspace

#: The least a design needs, with no picture: every other key takes its default.
PLAIN = "pad: Errands\ntrim: {width: 90 mm, height: 190 mm}\n"

MULBERRY = (122, 59, 88)
CREAM = (244, 236, 222)


def pad(
    yaml: str = PLAIN, studio: str = "", files: dict[str, bytes] | None = None, path: str = "x.pad.yaml"
) -> Pad:
    """A design at every stage, from its text, the studio's and whatever other files the folder holds."""
    return make(path, folder(yaml, studio, files, path))


def folder(
    yaml: str = PLAIN, studio: str = "", files: dict[str, bytes] | None = None, path: str = "x.pad.yaml"
) -> MemoryWorkspace:
    """A maker's folder in memory. An empty studio text means that there is no studio.yaml."""
    texts = {path: yaml} | ({"studio.yaml": studio} if studio else {})
    return MemoryWorkspace({name: text.encode() for name, text in texts.items()} | (files or {}))


def problems(yaml: str, studio: str = "", files: dict[str, bytes] | None = None) -> list[str]:
    """What a design that cannot be read is refused with, `place message mend` in the order they are told."""
    try:
        pad(yaml, studio, files)
    except ProblemsError as error:
        return [f"{problem.place} {problem.message} {problem.mend}".strip() for problem in error.problems]
    raise AssertionError("the design was read, and should have been refused")


class _Plain(yaml.SafeDumper):
    """Writes `25` and `false` without quotes, as a maker does: no text looks like another type to it."""

    yaml_implicit_resolvers: ClassVar[dict[str, list[Any]]] = {}

    def plain(self, value: object) -> yaml.ScalarNode:
        """Any scalar without a tag or quotes; an empty text keeps its quotes, or it would be a missing value."""
        text = str(value).lower() if isinstance(value, bool) else str(value)
        return self.represent_scalar("tag:yaml.org,2002:str", text, style=None if text else "'")


for kind in (str, int, float, bool):
    _Plain.add_representer(kind, _Plain.plain)


def apply(text: str, changes: Mapping[str, Any]) -> str:
    """A YAML text with dotted key paths set: `{"rows.pitch": "7 mm"}`. A value of None takes the key out.

    Scalars stay text on the way, so that nothing but the named keys changes its meaning.
    """
    root = yaml.load(text, Loader=yaml.BaseLoader) or {}
    for path, value in changes.items():
        *parents, last = path.split(".")
        bundle = root
        for parent in parents:
            if not isinstance(bundle.get(parent), dict):
                bundle[parent] = {}
            bundle = bundle[parent]
        if value is None:
            bundle.pop(last, None)
        else:
            bundle[last] = value
    return yaml.dump(root, Dumper=_Plain, sort_keys=False, allow_unicode=True, width=10_000)


def picture(
    width: int = 240,
    height: int = 240,
    colour: tuple[int, int, int] = MULBERRY,
    ground: tuple[int, int, int] | None = None,
    noise: int = 0,
) -> bytes:
    """A PNG of an ellipse that keeps an eighth of each side free.

    Without `ground` what surrounds it is transparent; with one it is that even colour, each channel off by
    up to ± `noise`, the same on every run.
    """
    y, x = np.mgrid[0:height, 0:width]
    inside = ((x + 0.5) / width * 2 - 1) ** 2 + ((y + 0.5) / height * 2 - 1) ** 2 <= 0.75**2
    pixels = np.zeros((height, width, 4), np.uint8)
    pixels[inside] = (*colour, 255)
    if ground is not None:
        shift = np.random.default_rng(7).integers(-noise, noise + 1, (height, width, 3))
        pixels[~inside, :3] = np.clip(np.array(ground) + shift, 0, 255)[~inside]
        pixels[..., 3] = 255
    return png(pixels if ground is None else pixels[..., :3])


def disc(width: int = 240, height: int = 240, colour: tuple[int, int, int] = MULBERRY) -> bytes:
    """A disc on transparency."""
    return picture(width, height, colour)


def disc_on_ground(
    width: int = 240,
    height: int = 240,
    colour: tuple[int, int, int] = MULBERRY,
    ground: tuple[int, int, int] = CREAM,
) -> bytes:
    """A disc on an even ground, without transparency."""
    return picture(width, height, colour, ground)


def disc_on_noise(width: int = 240, height: int = 240) -> bytes:
    """A disc on a ground so uneven that no cut-out can follow it."""
    return picture(width, height, ground=(128, 128, 128), noise=110)


def bands(*colours: tuple[int, int, int], width: int = 240, height: int = 240) -> bytes:
    """Upright bands from left to right, each twice as wide as the next: the areas rank the colours."""
    shares = [2.0**-n for n in range(len(colours))]
    edges = np.rint(np.cumsum([0.0, *shares]) / sum(shares) * width).astype(int)
    pixels = np.zeros((height, width, 3), np.uint8)
    for colour, left, right in zip(colours, edges[:-1], edges[1:], strict=True):
        pixels[:, left:right] = colour
    return png(pixels)


def png(pixels: np.ndarray) -> bytes:
    """PNG bytes of an array of height × width × 3 or 4."""
    file = BytesIO()
    Image.fromarray(pixels).save(file, "PNG")
    return file.getvalue()
