"""The program that draws one SVG file: run by `padspec.art.svg.drawing` as a process of its own, not imported.

A process can be stopped and held to its memory; a drawing of a kilobyte may keep a renderer busy for
hours or take it down. SVG text comes on standard input, the PNG goes to standard output; arguments are
width and height in pixels. It imports nothing of padspec, so that it starts in a moment.
"""

import sys

from resvg_py import svg_to_bytes

# Room for the renderer's layers, beside the picture itself.
_MEMORY = 1 << 30
_BYTES_A_PIXEL = 8


def _limit_memory(pixels: int) -> None:
    try:
        from resource import RLIMIT_AS, setrlimit
    except ImportError:  # not on Windows
        return
    most = _MEMORY + _BYTES_A_PIXEL * pixels
    setrlimit(RLIMIT_AS, (most, most))


def _main() -> None:
    width, height = int(sys.argv[1]), int(sys.argv[2])
    _limit_memory(width * height)
    text = sys.stdin.buffer.read().decode("utf-8")
    png = svg_to_bytes(svg_string=text, width=width, height=height, dpi=96, skip_system_fonts=True)
    sys.stdout.buffer.write(png)


if __name__ == "__main__":
    _main()
