"""Draw the five Night garden pictures beside this file.

Run `python draw.py` for all of them, or `python draw.py --only owl` for one.
In: the picture modules in this folder. Out: moth.png, hedgehog.png,
toadstools.png, foxglove.svg and owl.png. The same library versions always
give the same bytes, since every brush is seeded.
"""

from __future__ import annotations

import argparse
import importlib
from pathlib import Path

from brush import save

HERE = Path(__file__).resolve().parent
GROUND = "#8fb1ae"  # the hedgehog is painted on this even teal, to be cut out later
PICTURES = ("moth", "hedgehog", "toadstools", "foxglove", "owl")


def draw(name: str, folder: Path) -> Path:
    """Paint one picture and write it; give back the file's path."""
    module = importlib.import_module(name)
    if name == "foxglove":
        path = folder / "foxglove.svg"
        path.write_text(module.drawing(), encoding="utf-8", newline="\n")
        return path
    path = folder / f"{name}.png"
    save(
        module.paint().picture(
            ground=GROUND if name == "hedgehog" else None, border=14 if name == "hedgehog" else 5
        ),
        path,
    )
    return path


def main() -> None:
    """Read the command line and draw what it asks for."""
    parser = argparse.ArgumentParser(description="Draw the Night garden pictures.")
    parser.add_argument("--only", choices=PICTURES, help="draw just this picture")
    parser.add_argument("--into", type=Path, default=HERE, help="folder to write to")
    chosen = parser.parse_args()
    for name in [chosen.only] if chosen.only else PICTURES:
        path = draw(name, chosen.into)
        print(f"{path.name}: {path.stat().st_size / 1024:.0f} KB")


if __name__ == "__main__":
    main()
