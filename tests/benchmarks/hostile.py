"""What inputs that mean harm cost: seconds and memory of padspec against the limits of 10 s and 1 GB.

    python tests/benchmarks/hostile.py

Each input is read by a process of its own. It has to be made, or refused in plain words; a traceback, or neither,
ends the benchmark. No test depends on the figures.
"""

import resource
import sys
import tempfile
import zlib
from collections.abc import Callable
from pathlib import Path

from peak import timed_with_peak

MOST_SECONDS, MOST_MEMORY = 10.0, 1000.0
PLAIN = "pad: Errands\ntrim: {width: 90 mm, height: 190 mm}\n"
WITH_PNG, WITH_SVG = (PLAIN + f"art: {{file: p.{kind}}}\n" for kind in ("png", "svg"))


def written(**files: str | bytes) -> Callable[[Path], None]:
    """Puts files into a folder, two underscores for a dot."""

    def write(folder: Path) -> None:
        for name, content in files.items():
            data = content if isinstance(content, bytes) else content.encode()
            (folder / name.replace("__", ".")).write_bytes(data)

    return write


def png(width: int, height: int) -> bytes:
    """A picture of one colour that takes few bytes, whatever its size."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return len(data).to_bytes(4, "big") + kind + data + zlib.crc32(kind + data).to_bytes(4, "big")

    head = width.to_bytes(4, "big") + height.to_bytes(4, "big") + b"\x08\x02\x00\x00\x00"
    packer = zlib.compressobj(9)
    row = b"\0" + bytes(3 * width)
    rows = b"".join(packer.compress(row) for _ in range(height)) + packer.flush()
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", rows) + chunk(b"IEND", b"")


def aliases(depth: int) -> str:
    """YAML whose anchors would unfold to ten to the power of a depth."""
    lines = [f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 10) if n else 'x'}]" for n in range(depth)]
    return PLAIN + "\n".join(lines) + "\n"


def personal(table: str) -> dict[str, str]:
    """A collection with a personal run over a table."""
    text = 'collection: C\ndesigns: [x.pad.yaml]\npersonal: {table: t.csv, set: {heading: {text: "{a}"}}}\n'
    return {"x__pad__yaml": PLAIN, "collection__yaml": text, "t__csv": table}


def axes(number: int, values: int) -> str:
    """A collection with so many axes of so many values."""
    some = ", ".join(f"v{n}: {{}}" for n in range(values))
    listed = ", ".join(f"{{axis: a{n}, values: {{{some}}}}}" for n in range(number))
    return f"collection: C\ndesigns: [x.pad.yaml]\nvariants: [{listed}]\n"


SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100">{}</svg>'
CASES: dict[str, Callable[[Path], None]] = {
    "YAML anchors that unfold": written(x__pad__yaml=aliases(9)),
    "YAML nested 100,000 deep": written(x__pad__yaml="[" * 100_000),
    "a design of 20 MB": written(x__pad__yaml=PLAIN + "# \n" * 7_000_000),
    "a picture of 60,000 × 60,000": written(x__pad__yaml=WITH_PNG, p__png=png(60_000, 600)),
    "a picture of 10,000 × 10,000": written(x__pad__yaml=WITH_PNG, p__png=png(10_000, 10_000)),
    "an SVG of 200,000 shapes": written(
        x__pad__yaml=WITH_SVG,
        p__svg=SVG.format('<path d="M0 0L9 9" stroke="#000"/>' * 200_000),
    ),
    "an SVG that draws itself": written(
        x__pad__yaml=WITH_SVG,
        p__svg=SVG.format('<g id="a"><use href="#b"/></g><g id="b"><use href="#a"/></g>'),
    ),
    "10 ^ 24 variants": written(x__pad__yaml=PLAIN, collection__yaml=axes(8, 1000)),
    "100,001 variants": written(x__pad__yaml=PLAIN, collection__yaml=axes(2, 317)),
    "a table of one quote": written(**personal('a\n"' + "x" * 20_000_000)),
    "a table of 10,000 columns": written(**personal(",".join(f"c{n}" for n in range(10_000)) + "\n1\n")),
    "a table of 2 million empty rows": written(**personal("a\n" + ",\n" * 2_000_000)),
    "a table of 200,000 faulty rows": written(**personal("a,b\n" + "x\n" * 200_000)),
    "names of 2,000 letters": written(**personal("a\n" + "\n".join("W" * 2000 for _ in range(50)) + "\n")),
    "a heading of 100,000 letters": written(x__pad__yaml=PLAIN + f"heading: {{text: {'W ' * 50_000}}}\n"),
    "dots of 0.1 mm on 1 m²": written(
        x__pad__yaml=PLAIN.replace("190", "1000").replace("90", "1000")
        + "ground: {pattern: {kind: dots, size: 0.1 mm}}\n"
    ),
}


def main() -> None:
    """Every case in turn."""
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
    for name, write in CASES.items():
        with tempfile.TemporaryDirectory() as place:
            folder = Path(place)
            write(folder)
            seconds, memory, status, said = timed_with_peak(folder, "build", "--no-proofs", "--quiet")
        if status not in (0, 1, 2) or "Traceback" in said or "mistake of its own" in said:
            sys.exit(f"{name}: ended with {status}: {said[-500:]}")
        over = " OVER" if seconds > MOST_SECONDS or memory > MOST_MEMORY else ""
        first = said.splitlines()[0][:70] if said else "made"
        print(f"{name:34} {seconds:6.2f} s {memory:6.0f} MB  status {status}  {first}{over}")


if __name__ == "__main__":
    main()
