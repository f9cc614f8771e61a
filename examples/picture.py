"""The pictures of the README: the leaves of each example collection laid out on a table, as cut.

    padspec build examples/night-garden examples/almanac && python examples/picture.py

Reads the proofs that the build wrote; writes examples/night-garden.jpg and examples/almanac.jpg.
"""

from dataclasses import dataclass
from pathlib import Path

from PIL import Image, ImageFilter

HERE = Path(__file__).resolve().parent
#: Rows of leaves; leaves in brackets stand one above the other.
Row = tuple[str | tuple[str, ...], ...]
NIGHT_GARDEN: tuple[Row, ...] = (("NG-MOTH", "NG-HEDGEHOG", "NG-TOADSTOOLS", "NG-OWL", "NG-FOXGLOVE"),)
ALMANAC: tuple[Row, ...] = (
    ("KA-HABITS", "KA-ERRANDS", "KA-WEEK", "KA-MARKET", "KA-DAY", "KA-TEN"),
    ("KA-STORES", "KA-MEALS", ("KA-BROAD", "KA-FRIDGE"), "KA-DESK"),
    ("KA-LETTERS", "KA-SKETCHES", "KA-VIEW", "KA-SUMS", "KA-NOTE"),
)
WIDTH, GAP, EDGE = 1800, 44, 70
TABLE, SHADE = (226, 221, 214), (70, 60, 55)
#: The proofs are at 200 pixels an inch; all leaves of a picture are shown at one scale.
SHADOW, SHADOW_DROP, SHADOW_SOFT = 70, 10, 14


@dataclass(frozen=True, slots=True)
class Column:
    """Leaves one above the other."""

    faces: tuple[Image.Image, ...]

    @property
    def width(self) -> int:
        """That of the widest."""
        return max(face.width for face in self.faces)

    @property
    def height(self) -> int:
        """Of all with the gaps between them."""
        return sum(face.height for face in self.faces) + GAP * (len(self.faces) - 1)


def columns(folder: str, row: Row, scale: float) -> list[Column]:
    """The faces of a row at a scale."""
    named = [(sku,) if isinstance(sku, str) else sku for sku in row]
    return [Column(tuple(face(folder, sku, scale) for sku in skus)) for skus in named]


def face(folder: str, sku: str, scale: float) -> Image.Image:
    """The proof of one face at a scale."""
    whole = Image.open(HERE / folder / "out" / sku / "face.png").convert("RGB")
    size = (round(whole.width * scale), round(whole.height * scale))
    return whole.resize(size, Image.Resampling.LANCZOS)


def scale_of(folder: str, rows: tuple[Row, ...]) -> float:
    """The scale at which the widest row fills the width."""

    def share(row: Row) -> float:
        return (WIDTH - 2 * EDGE - GAP * (len(row) - 1)) / sum(c.width for c in columns(folder, row, 1.0))

    return min(share(row) for row in rows)


def laid_out(folder: str, rows: tuple[Row, ...]) -> Image.Image:
    """Rows of leaves, their heads level and their outer edges in line, each with a soft shadow on the table."""
    scale, places, top = scale_of(folder, rows), [], EDGE
    for row in rows:
        stood = columns(folder, row, scale)
        spare = WIDTH - 2 * EDGE - sum(column.width for column in stood)
        gap, x = spare / max(len(stood) - 1, 1), float(EDGE)
        for column in stood:
            y = top
            for leaf in column.faces:
                places.append((leaf, round(x + (column.width - leaf.width) / 2), y))
                y += leaf.height + GAP
            x += column.width + gap
        top += max(column.height for column in stood) + GAP
    return on_table(places, top - GAP + EDGE)


def on_table(places: list[tuple[Image.Image, int, int]], height: int) -> Image.Image:
    """Leaves at their places, with their shadows under them."""
    picture = Image.new("RGB", (WIDTH, height), TABLE)
    shadow = Image.new("L", picture.size, 0)
    for leaf, x, y in places:
        shadow.paste(SHADOW, (x, y + SHADOW_DROP, x + leaf.width, y + SHADOW_DROP + leaf.height))
    shadow = shadow.filter(ImageFilter.GaussianBlur(SHADOW_SOFT))
    picture = Image.composite(Image.new("RGB", picture.size, SHADE), picture, shadow)
    for leaf, x, y in places:
        picture.paste(leaf, (x, y))
    return picture


if __name__ == "__main__":
    for name, rows in (("night-garden", NIGHT_GARDEN), ("almanac", ALMANAC)):
        # Full colour resolution (no subsampling): thin coloured lines would grey otherwise.
        laid_out(name, rows).save(HERE / f"{name}.jpg", quality=86, subsampling=0, optimize=True)
