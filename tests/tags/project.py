"""A small project with tags to be made, and the sheets that come of it: printed to pixels by poppler, and read."""

import json
import subprocess
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pdfplumber
import zxingcpp
from cli.command import Outcome, padspec
from PIL import Image

MM = 25.4 / 72
STICKERS = (
    "{name: stickers, rows: 8, columns: 3, width: 64 mm, height: 34 mm, left: 7 mm, top: 12.5 mm, "
    "across: 66 mm, down: 34 mm, corner: 2 mm}"
)
DESIGN = "pad: {name}\nsku: {sku}\ntrim: {{width: 60 mm, height: 120 mm}}\nlayout: ruled\n{more}\n"


@dataclass(frozen=True)
class Project:
    """A folder of designs with a studio."""

    folder: Path

    def studio(self, *sheets: str, more: str = "") -> "Project":
        listed = "".join(f"  - {sheet}\n" for sheet in sheets)
        text = (
            "studio: Umberwick Paper\nmoney: {currency: CAD}\n"
            + (f"tag-sheets:\n{listed}" if sheets else "")
            + more
        )
        (self.folder / "studio.yaml").write_text(text, "utf-8")
        return self

    def pad(self, sku: str, more: str = "price: 6.50", name: str = "Night moth list") -> "Project":
        text = DESIGN.format(name=name, sku=sku, more=more)
        (self.folder / f"{sku.lower()}.pad.yaml").write_text(text, "utf-8")
        return self

    def tags(self, *args: str) -> Outcome:
        return padspec(self.folder, "tags", *args)

    def made(self, *args: str, sheet: str = "stickers") -> "Made":
        done = self.tags("--json", *args)
        assert done.status == 0, done
        return Made(self.folder / "out/tags" / sheet, done.json)


@dataclass(frozen=True)
class Made:
    """What a run wrote."""

    folder: Path
    data: dict[str, Any]

    @property
    def pdf(self) -> Path:
        return self.folder / "tags.pdf"

    @property
    def notes(self) -> str:
        return "\n".join(self.data["notes"])

    def symbol(self, sku: str) -> dict[str, Any]:
        found: dict[str, Any] = next(tag["symbol"] for tag in self.data["tags"] if tag["sku"] == sku)
        return found

    def box(self, place: dict[str, Any]) -> tuple[float, float, float, float]:
        """Where a label must lie by the figures of its sheet: left, top, right, foot in mm."""
        sheet = self.data["sheet"]
        left = sheet["left"] + (place["column"] - 1) * sheet["across"]
        top = sheet["top"] + (place["row"] - 1) * sheet["down"]
        return left, top, left + sheet["label_width"], top + sheet["label_height"]

    def read(self, dpi: int = 600) -> list[tuple[str, list[tuple[str, str]]]]:
        """For each label, its SKU and what a scanner reads on that label alone: kind and text."""
        pages = [Image.open(path) for path in pixels(self.pdf, dpi)]
        found = []
        for place in self.data["places"]:
            edges = [round(edge / 25.4 * dpi) for edge in self.box(place)]
            label = pages[place["page"] - 1].crop((edges[0], edges[1], edges[2], edges[3])).convert("L")
            read = [(_kind(code), code.text) for code in zxingcpp.read_barcodes(label)]
            found.append((place["sku"], read))
        return found

    def black_boxes(self, page: int = 0) -> list[tuple[float, float, float, float]]:
        """Every filled black rectangle of a page: left, top, width, height in mm."""
        with pdfplumber.open(self.pdf) as document:
            rects = document.pages[page].rects
        black = [r for r in rects if r["fill"] and tuple(r["non_stroking_color"] or ()) == (0, 0, 0)]
        return [(r["x0"] * MM, r["top"] * MM, r["width"] * MM, r["height"] * MM) for r in black]


def _kind(code: Any) -> str:
    return str(code.format).rpartition(".")[2].replace("-", "").replace(" ", "").upper()


def pixels(pdf: Path, dpi: int) -> list[Path]:
    """The pages as a printer of this resolution would have them, by poppler."""
    stem = pdf.with_suffix("")
    subprocess.run(["pdftoppm", "-r", str(dpi), "-gray", "-png", pdf, stem], check=True)
    return sorted(pdf.parent.glob(f"{stem.name}-*.png"))


def load(path: Path) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(path.read_text("utf-8"))
    return found
