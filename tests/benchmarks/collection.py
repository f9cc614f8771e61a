"""How long a collection takes: 24 designs in 6 colourways, cold, two processes, against one conversion a variant.

    python tests/benchmarks/collection.py [--designs 24] [--conversions 6]

The reference makes a PDF of one sheet, given as SVG, by cairosvg in a process of its own for each of 144 variants:
some are timed and the rest reckoned. Then the same with PNG proofs, against cairosvg making PDF and PNG; the build
again where nothing changed; and after one edit of one design. Ratios count; no test depends on them.
"""

import argparse
import statistics
import sys
import tempfile
from pathlib import Path

from run import IMPORTS, PADSPEC, picture, sheet_svg_with_full_pictures, timed

COLOURWAYS = ("natural", "lighter", "deeper", "muted", "complementary", "single-hue")
TO_PDF = "import cairosvg; cairosvg.svg2pdf(url='sheet.svg', write_to='reference.pdf', unsafe=True)"
TO_BOTH = TO_PDF + "; cairosvg.svg2png(url='sheet.svg', write_to='reference.png', unsafe=True, dpi=100)"
DESIGN = """\
pad: Benchmark list {number}
trim: {{width: {width} mm, height: 190 mm}}
art: {{file: art-{art}.png}}
ground: {{pattern: {{kind: {kind}, size: {size} mm}}}}
heading: {{text: Before dark {number}}}
"""


def set_up(folder: Path, designs: int) -> None:
    """Designs that differ in picture, trim, ground and words, and a collection of them in six colourways."""
    for art in range(6):
        picture(2400).rotate(60 * art).save(folder / f"art-{art}.png", compress_level=6)
    for number in range(designs):
        kind = ("dots", "stripes", "gingham", "plain")[number % 4]
        text = DESIGN.format(number=number, width=80 + number % 8, art=number % 6, kind=kind, size=5 + number % 3)
        text = text.replace("{pattern: {kind: plain, size: 5 mm}}", "{}").replace("kind: plain", "kind: dots")
        (folder / f"d{number}.pad.yaml").write_text(text, "utf-8")
    listed = ", ".join(f"d{number}.pad.yaml" for number in range(designs))
    values = ", ".join(f"{name}: {{colourway: {name}}}" for name in COLOURWAYS)
    text = f"collection: Benchmark\ndesigns: [{listed}]\nvariants: [{{axis: colourway, values: {{{values}}}}}]\n"
    (folder / "collection.yaml").write_text(text, "utf-8")


def reference(folder: Path, command: str, conversions: int) -> float:
    """Seconds that one conversion takes: the median of some."""
    return statistics.median(timed((sys.executable, "-c", command), folder) for _ in range(conversions))


def told(title: str, mine: float, theirs: float) -> None:
    """One row."""
    print(
        f"{title}\n  padspec {mine:7.2f} s   reference {theirs:7.2f} s   reference / padspec {theirs / mine:6.1f}"
    )


def main() -> None:
    """Set up a folder, then row by row."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--designs", type=int, default=24)
    parser.add_argument("--conversions", type=int, default=6)
    wish = parser.parse_args()
    variants = wish.designs * len(COLOURWAYS)
    build = (*PADSPEC, "build", "--quiet", "--jobs", "2")
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        set_up(folder, wish.designs)
        cold = timed((*build, "--no-proofs"), folder)
        sheet_of_first(folder)
        to_pdf = reference(folder, TO_PDF, wish.conversions)
        told(f"{variants} variants, cold, two processes, no proofs", cold, to_pdf * variants)
        again = timed((*build, "--no-proofs"), folder)
        imports = reference(folder, IMPORTS, wish.conversions)
        told("nothing changed; against python -c 'import yaml, jsonschema'", again, imports)
        with (folder / "d0.pad.yaml").open("a") as file:
            file.write("leaves: 40\n")
        edited = timed((*build, "--no-proofs"), folder)
        told("one design edited; against its six conversions", edited, to_pdf * len(COLOURWAYS))
        proofs = timed((*build, "--again"), folder)
        to_both = reference(folder, TO_BOTH, wish.conversions)
        told("the same variants with proofs; against PDF and PNG", proofs, to_both * variants)


def sheet_of_first(folder: Path) -> None:
    """The sheet of one variant as SVG with the maker's own picture, for the reference."""
    face = folder / "out" / "d0--natural"
    (folder / "out" / "bench").mkdir()
    (folder / "out" / "bench" / "face.svg").write_bytes((face / "face.svg").read_bytes())
    (folder / "art.png").write_bytes((folder / "art-0.png").read_bytes())
    sheet_svg_with_full_pictures(folder)


if __name__ == "__main__":
    main()
