"""A folder with a personal run of five names, built as a maker does."""

import numpy as np
import pypdfium2
from cli.command import PLAIN, padspec, put

COLLECTION = """collection: Names
designs: [moth.pad.yaml]
personal: {table: names.csv, set: {heading: {text: "{first}'s list"}}, key: order}
"""
NAMES = "order,first\n" + "".join(
    f"{n},{name}\n" for n, name in enumerate(["Ada", "Bo", "Cleo", "Dov", "Eve"], 101)
)


def folder(path, names: str | bytes = NAMES, collection: str = COLLECTION, design: str = PLAIN):
    return put(path, collection__yaml=collection, names__csv=names, moth__pad__yaml=design)


def build(path, *args: str):
    return padspec(path, "build", "--no-proofs", "--jobs", "1", "--json", *args)


def run_of(outcome):
    (one,) = outcome.json["personal"]
    return one


def pixels(pdf, page: int, ppi: float = 100) -> np.ndarray:
    return pypdfium2.PdfDocument(pdf)[page].render(scale=ppi / 72).to_numpy().astype(int)


def volume(path):
    return path / "out/moth/personal/volume-001.pdf"


def slots(path) -> list[tuple[float, float, float, float]]:
    """The trims on the sheet, a millimetre inside, as the tool's own stage says."""
    sheet = padspec(path, "show", "moth.pad.yaml", "--stage", "sheet").json
    boxes = [slot["trim"] for slot in sheet["slots"]]
    return [(b["x"] + 1, b["y"] + 1, b["x"] + b["width"] - 1, b["y"] + b["height"] - 1) for b in boxes]


def cut(found: np.ndarray, box: tuple[float, float, float, float], ppi: float = 100) -> np.ndarray:
    left, top, right, foot = (round(v * ppi / 25.4) for v in box)
    return found[top:foot, left:right]
