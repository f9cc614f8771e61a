"""Small pictures for the catalogue's page: proofs and flat-lays brought down to what a screen shows."""

from dataclasses import dataclass
from io import BytesIO

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place
from padspec.workspace import Workspace, content_digest

FOLDER = "catalogue/pictures"
#: How many pixels of the page a millimetre of a leaf has, and how many pixels of a fine screen one of those.
PIXELS_A_MM, FINE = 1.9, 2
#: How wide a flat-lay is shown at most.
FLAT_WIDTH = 360
_QUALITY = 88


@dataclass(frozen=True, slots=True)
class Small:
    """A small picture: its path under the output folder, its size in pixels, and its bytes."""

    path: str
    width: int
    height: int
    data: bytes


def small_face(path: str, width_mm: float, output: Workspace) -> Small:
    """The proof of a face, two pixels of a fine screen for each that it is shown with."""
    return _small(path, output, round(width_mm * PIXELS_A_MM * FINE))


def small_flat(path: str, output: Workspace) -> Small:
    """A flat-lay, the same."""
    return _small(path, output, FLAT_WIDTH * FINE)


def _small(path: str, output: Workspace, width: int) -> Small:
    """A JPEG of a picture; raises ProblemsError where that is damaged."""
    from PIL import Image

    try:
        return _brought_down(output.read(path), width)
    except (OSError, ValueError, SyntaxError, Image.DecompressionBombError):
        flat = path.rpartition("/")[2] == "flat-lay.png"
        again = "padspec flat-lay" if flat else "padspec build --again"
        mend = f"Make it again ({again}), or take it away."
        raise ProblemsError(
            Problem(Place(path, 0, 0), "This is no picture, or only a part of one.", mend)
        ) from None


def _brought_down(data: bytes, width: int) -> Small:
    """A JPEG no wider than that, without anything but pixels in it, named by what it was made of."""
    from PIL import Image

    with Image.open(BytesIO(data)) as opened:
        image = opened.convert("RGB")
        if image.width > width:
            height = max(1, round(image.height * width / image.width))
            image = image.resize((width, height), Image.Resampling.LANCZOS, reducing_gap=3.0)
        file = BytesIO()
        image.save(file, "JPEG", quality=_QUALITY, subsampling=0, optimize=True)
    name = content_digest(data + str(width).encode())[:16]
    return Small(f"{FOLDER}/{name}.jpg", image.width, image.height, file.getvalue())
