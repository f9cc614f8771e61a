"""How long personal faces take against bare pikepdf writing the very same streams, and how both grow.

    python tests/benchmarks/personal.py [--faces 1000 10000 100000]

Both run in this process, one after the other, volume by volume. The reference is given every content stream and
form that the volume came to have, deflates them as padspec does and puts them into a file; a second time with the
outlines of all letters written out on each page, as they would be without forms for glyphs. Peak memory is that of
a process of its own that only builds. Ratios count; no test depends on them.
"""

import argparse
import random
import re
import tempfile
import time
from io import BytesIO
from pathlib import Path

import pikepdf
from peak import timed_with_peak

from padspec.collection.collection_file import read_collection
from padspec.draw.deflate import deflated
from padspec.draw.pages import saved
from padspec.personal.bench import bench_of
from padspec.personal.run import wished_pads
from padspec.personal.units import cut_of, first_unit, units_of
from padspec.personal.volume import make_volume
from padspec.workspace import FolderWorkspace

DESIGN = """\
pad: Benchmark list
trim: {width: 90 mm, height: 190 mm}
ground: {pattern: {kind: dots, size: 6 mm}}
"""
COLLECTION = """\
collection: Names
designs: [bench.pad.yaml]
personal: {table: names.csv, set: {heading: {text: "{first}'s list"}}, key: order}
"""
SYLLABLES = "a be ca da el fi ga ho i jo ka li ma no o pe ri sa ta u vi wen xa yo zu".split()  # noqa: SIM905


def names(faces: int) -> str:
    """A table of invented names of one to six syllables, nearly all different."""
    chance = random.Random(4)
    rows = (f"{n},{''.join(chance.choices(SYLLABLES, k=chance.randint(1, 6))).title()}" for n in range(faces))
    return "\n".join(("order,first", *rows)) + "\n"


def set_up(folder: Path, faces: int) -> None:
    """A maker's folder with a table of so many rows."""
    (folder / "bench.pad.yaml").write_text(DESIGN, "utf-8")
    (folder / "collection.yaml").write_text(COLLECTION, "utf-8")
    (folder / "names.csv").write_text(names(faces), "utf-8")


def streams(data: bytes) -> tuple[list[bytes], dict[str, bytes]]:
    """The content streams of a volume's pages and its forms."""
    with pikepdf.open(BytesIO(data)) as made:
        contents = [page.Contents.read_bytes() for page in made.pages]
        resources = made.pages[0].Resources.XObject
        return contents, {name: form.read_bytes() for name, form in resources.items()}


def written_out(contents: list[bytes], forms: dict[str, bytes]) -> list[bytes]:
    """The content streams with every glyph's outline where its form is placed."""
    glyphs = {name.encode(): form for name, form in forms.items() if name.startswith("/Glyph")}
    pattern = re.compile(rb"(/Glyph-\d+) Do")
    return [pattern.sub(lambda one: b"q 0.001 0 0 -0.001 0 0 cm " + glyphs[one[1]] + b" Q", c) for c in contents]


def bare(contents: list[bytes], forms: dict[str, bytes]) -> float:
    """Seconds that pikepdf alone takes for some streams."""
    start = time.perf_counter()
    with pikepdf.new() as pdf:
        objects = pdf.make_indirect(pikepdf.Dictionary())
        common = {"/Type": pikepdf.Name.Page, "/MediaBox": pikepdf.Array([0, 0, 842, 595])}
        common["/Resources"] = pdf.make_indirect(pikepdf.Dictionary(XObject=objects))
        for name, form in forms.items():
            objects[name] = pdf.make_indirect(stream(pdf, form))
        for content in contents:
            page = pikepdf.Dictionary(common)
            page.Contents = pdf.make_indirect(stream(pdf, content))
            pdf.pages.append(pikepdf.Page(pdf.make_indirect(page)))
        saved(pdf)
    return time.perf_counter() - start


def stream(pdf: pikepdf.Pdf, data: bytes) -> pikepdf.Stream:
    """A deflated stream."""
    made = pikepdf.Stream(pdf, b"")
    made.write(deflated(data), filter=pikepdf.Name.FlateDecode)
    return made


def measured(folder: Path) -> tuple[float, float, float]:
    """Seconds of padspec and of both references for every volume of a folder's run."""
    collection = read_collection("collection.yaml", FolderWorkspace(folder))
    found = wished_pads(collection, folder)
    assert found is not None
    wish, (pad,) = found
    mine = theirs = out = 0.0
    first = first_unit(wish, pad, despite_errors=False)
    ready = bench_of(first.run, first.pattern).ready(wish.table.values(first.rows[0]), 1)
    for unit in units_of(wish, pad, first, cut_of(wish, pad, first, ready, 3)):
        start = time.perf_counter()
        made = make_volume(unit)
        mine += time.perf_counter() - start
        contents, forms = streams(made.pdf)
        theirs += bare(contents, forms)
        out += bare(written_out(contents, forms), forms)
    return mine, theirs, out


def main() -> None:
    """Every number of faces in turn."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--faces", type=int, nargs="+", default=[1000, 10_000, 100_000])
    for faces in parser.parse_args().faces:
        with tempfile.TemporaryDirectory() as name:
            folder = Path(name)
            set_up(folder, faces)
            mine, theirs, out = measured(folder)
            _, memory, _, _ = timed_with_peak(folder, "build", "--no-proofs", "--quiet", "--jobs", "1")
            print(
                f"{faces:7} faces, 3-up: padspec {mine:6.2f} s ({mine / faces * 1000:.3f} ms a face, "
                f"{faces / mine:.0f} faces a second), bare pikepdf {theirs:6.2f} s, ratio {mine / theirs:.2f}, "
                f"outlines written out {out:6.2f} s, ratio {mine / out:.2f}; "
                f"peak of a whole build {memory:.0f} MB"
            )


if __name__ == "__main__":
    main()
