"""How long padspec takes, as ratios against a reference that does the same work in the same run.

    python tests/benchmarks/run.py [--runs N]

Machines differ and are noisy: the ratio of the two medians is what counts, and no test depends on it. Every
command is a process of its own, Python's start included; reference and padspec take turns.
"""

import argparse
import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from PIL import Image

ROOT = Path(__file__).resolve().parents[2]
PADSPEC = (str(Path(sys.executable).with_name("padspec")),)
DESIGN = """\
pad: Benchmark list
trim: {width: 90 mm, height: 190 mm}
art: {file: art.png}
ground: {pattern: {kind: dots, size: 6 mm}}
heading: {text: Before dark}
"""
#: The reference is given the sheet as SVG and only has to make a PDF: no YAML, no checks, no cutout. `unsafe` lets
#: it read the picture that the SVG links; without it the picture would silently be missing.
REFERENCE = "import cairosvg; cairosvg.svg2pdf(url='sheet.svg', write_to='reference.pdf', unsafe=True)"
IMPORTS = "import yaml, jsonschema"


def picture(side: int) -> Image.Image:
    """A painted picture of the examples, enlarged to a square: as heavy as a maker's own."""
    with Image.open(ROOT / "examples" / "night-garden" / "art" / "toadstools.png") as art:
        return art.convert("RGBA").resize((side, side), Image.Resampling.LANCZOS)


def sheet_svg(folder: Path) -> None:
    """The same three-up sheet as one SVG, made of the face that padspec wrote, for a general converter."""
    face = (folder / "out" / "bench" / "face.svg").read_text("utf-8")
    body = face[face.index("<g id=") : face.rindex("</svg>")].replace(
        "../art/", f"{(folder / 'out' / 'art').as_uri()}/"
    )
    defs = face[face.index("<defs>") : face.index("</defs>") + 7] if "<defs>" in face else ""
    places = (f'<g transform="translate({9.5 + n * 94} 10)">{body}</g>' for n in range(3))
    (folder / "sheet.svg").write_text(
        '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" '
        f'width="297mm" height="210mm" viewBox="0 0 297 210">{defs}{"".join(places)}</svg>',
        "utf-8",
    )


def sheet_svg_with_full_pictures(folder: Path) -> None:
    """As `sheet_svg`, with the maker's own picture as it is."""
    sheet_svg(folder)
    text = (folder / "sheet.svg").read_text("utf-8")
    drawn = next((folder / "out" / "art").iterdir())
    (folder / "sheet.svg").write_text(text.replace(drawn.as_uri(), (folder / "art.png").as_uri()), "utf-8")


def timed(command: tuple[str, ...], folder: Path) -> float:
    """Seconds of one run of a command; a command that fails ends the benchmark."""
    start = time.perf_counter()
    done = subprocess.run(command, cwd=folder, capture_output=True, check=False)
    elapsed = time.perf_counter() - start
    if done.returncode:
        sys.exit(f"{' '.join(command)} failed:\n{done.stderr.decode()}")
    return elapsed


def compare(name: str, ours: tuple[str, ...], reference: tuple[str, ...], folder: Path, runs: int) -> None:
    """Run both in turn and print medians and their ratio."""
    timed(ours, folder)
    timed(reference, folder)
    pairs = [(timed(ours, folder), timed(reference, folder)) for _ in range(runs)]
    mine, theirs = (statistics.median(side) for side in zip(*pairs, strict=True))
    print(f"{name}\n  padspec {mine * 1000:7.0f} ms   reference {theirs * 1000:7.0f} ms   "
          f"padspec / reference {mine / theirs:5.2f}   reference / padspec {theirs / mine:5.2f}")  # fmt: skip


def main() -> None:
    """Set up a folder, then compare row by row."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--runs", type=int, default=5)
    runs = parser.parse_args().runs
    os.environ["PYTHONDONTWRITEBYTECODE"] = ""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        picture(2400).save(folder / "art.png", compress_level=6)
        (folder / "bench.pad.yaml").write_text(DESIGN, "utf-8")
        timed((*PADSPEC, "build", "--quiet"), folder)
        print(f"sheet.pdf {(folder / 'out' / 'bench' / 'sheet.pdf').stat().st_size / 1000:.0f} kB")
        python = sys.executable
        build = (*PADSPEC, "build", "--quiet", "--again")
        cold = (*build, "--no-proofs")
        sheet_svg_with_full_pictures(folder)
        title = "one design, picture 2400 × 2400, spec to SVG, checks and 3-up PDF, cold; against cairosvg.svg2pdf"
        compare(title, cold, (python, "-c", REFERENCE), folder, runs)
        compare("the same with PNG proofs", build, (python, "-c", REFERENCE), folder, runs)
        sheet_svg(folder)
        print(f"reference.pdf {(folder / 'reference.pdf').stat().st_size / 1000:.0f} kB")
        title = "the same, the reference given the picture already brought down to size"
        compare(title, cold, (python, "-c", REFERENCE), folder, runs)
        timed((*PADSPEC, "build", "--quiet"), folder)
        title = "nothing changed; against python -c 'import yaml, jsonschema'"
        compare(title, (*PADSPEC, "build", "--quiet"), (python, "-c", IMPORTS), folder, runs)
        compare(
            "padspec --version; against the same", (*PADSPEC, "--version"), (python, "-c", IMPORTS), folder, runs
        )


if __name__ == "__main__":
    main()
