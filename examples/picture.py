"""The picture at the head of the README: the example collection's leaves side by side, as cut.

    padspec build examples/night-garden && python examples/picture.py

Reads the proofs that the build wrote; writes examples/night-garden.jpg.
"""

from pathlib import Path

from PIL import Image, ImageFilter

HERE = Path(__file__).resolve().parent
LEAVES = ("NG-MOTH", "NG-HEDGEHOG", "NG-TOADSTOOLS", "NG-OWL", "NG-FOXGLOVE")
WIDTH, GAP, EDGE = 1800, 44, 70
TABLE = (226, 221, 214)
#: The proofs are at 200 pixels an inch; all leaves are shown at one scale.
SHADOW, SHADOW_DROP, SHADOW_SOFT = 70, 10, 14


def leaves() -> list[Image.Image]:
    """The faces at one scale, so that together they fill the width."""
    faces = [Image.open(HERE / "night-garden" / "out" / sku / "face.png").convert("RGB") for sku in LEAVES]
    room = WIDTH - 2 * EDGE - GAP * (len(faces) - 1)
    scale = room / sum(face.width for face in faces)
    return [
        face.resize((round(face.width * scale), round(face.height * scale)), Image.Resampling.LANCZOS)
        for face in faces
    ]


def laid_out(faces: list[Image.Image]) -> Image.Image:
    """Leaves in a row, their heads level, each with a soft shadow on the table."""
    height = max(face.height for face in faces) + 2 * EDGE
    picture = Image.new("RGB", (WIDTH, height), TABLE)
    shadow = Image.new("L", picture.size, 0)
    x, places = EDGE, []
    for face in faces:
        places.append((x, EDGE))
        shadow.paste(SHADOW, (x, EDGE + SHADOW_DROP, x + face.width, EDGE + SHADOW_DROP + face.height))
        x += face.width + GAP
    shadow = shadow.filter(ImageFilter.GaussianBlur(SHADOW_SOFT))
    picture = Image.composite(Image.new("RGB", picture.size, (70, 60, 55)), picture, shadow)
    for face, place in zip(faces, places, strict=True):
        picture.paste(face, place)
    return picture


if __name__ == "__main__":
    # Full colour resolution (no subsampling): thin coloured lines would grey otherwise.
    laid_out(leaves()).save(HERE / "night-garden.jpg", quality=90, subsampling=0, optimize=True)
