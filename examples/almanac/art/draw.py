"""Draw the Kitchen Almanac pictures beside this file.

Run `python draw.py` to write them all, `--only hen` for one, or `--check` to
say whether the files are what this script draws. In: the picture modules of
this folder. Out: one SVG a picture, the same bytes every time, since every
touch is seeded and no library draws.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable
from pathlib import Path

import basket
import can
import garden
import hen
import jar
import lemons
import ornaments
import radishes
import teapot
from sheet import Sheet

HERE = Path(__file__).resolve().parent
PICTURES: dict[str, Callable[[], Sheet]] = {
    "lemons": lemons.drawing,
    "teapot": teapot.drawing,
    "watering-can": can.drawing,
    "radishes": radishes.drawing,
    "hen": hen.drawing,
    "sprig": ornaments.sprig,
    "sun": ornaments.sun,
    "basket": basket.drawing,
    "kitchen-garden": garden.drawing,
    "jam-jar": jar.drawing,
}


def stale(names: list[str], folder: Path) -> list[str]:
    """Give the pictures whose file in the folder is missing or is not what is drawn."""
    return [
        name
        for name in names
        if not (file := folder / f"{name}.svg").is_file() or file.read_bytes() != PICTURES[name]().text().encode()
    ]


def write(names: list[str], folder: Path) -> None:
    """Draw the pictures into the folder and say how large each file is."""
    for name in names:
        text = PICTURES[name]().text()
        (folder / f"{name}.svg").write_bytes(text.encode())
        print(f"{name}.svg: {len(text) / 1000:.1f} kB")


def main() -> int:
    """Read the command line and do what it asks for; give 1 if a checked picture differs."""
    parser = argparse.ArgumentParser(description="Draw the Kitchen Almanac pictures.")
    parser.add_argument("--only", choices=PICTURES, help="this picture alone")
    parser.add_argument("--into", type=Path, default=HERE, help="folder to write to, or to check")
    parser.add_argument(
        "--check", action="store_true", help="write nothing; exit 1 if a file is not what is drawn"
    )
    chosen = parser.parse_args()
    names = [chosen.only] if chosen.only else list(PICTURES)
    if not chosen.check:
        write(names, chosen.into)
        return 0
    differing = stale(names, chosen.into)
    for name in differing:
        print(f"{name}.svg is not what draw.py draws; run draw.py and look at it.")
    return 1 if differing else 0


if __name__ == "__main__":
    sys.exit(main())
