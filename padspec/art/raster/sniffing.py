"""What kind of file some bytes are, by their content; the ending of a file's name proves nothing."""

import re
from typing import Literal

RasterFormat = Literal["PNG", "JPEG", "WebP", "TIFF"]

_TIFF_STARTS = (b"II*\0", b"MM\0*", b"II+\0", b"MM\0+")
# What a file of another kind begins with, and what to call it.
_FOREIGN_STARTS: tuple[tuple[bytes, str], ...] = (
    (b"GIF8", "a GIF picture"),
    (b"%PDF", "a PDF file"),
    (b"%!PS", "a PostScript file"),
    (b"8BPS", "a layered picture of an editor (PSD)"),
    (b"gimp xcf", "a layered picture of an editor (XCF)"),
    (b"BM", "a BMP picture"),
    (b"\0\0\1\0", "an icon file"),
    (b"\xff\x0a", "a JPEG XL picture"),
    (b"\0\0\0\x0cJXL ", "a JPEG XL picture"),
    (b"\0\0\0\x0cjP  ", "a JPEG 2000 picture"),
    (b"PK\3\4", "a packed folder (ZIP) or a document"),
    (b"\x1f\x8b", "a gzip-compressed file, perhaps a compressed SVG (svgz)"),
)
_BRANDS = {
    b"avif": "an AVIF picture",
    b"avis": "an AVIF picture",
    b"heic": "a HEIC picture",
    b"heix": "a HEIC picture",
    b"hevc": "a HEIC picture",
    b"mif1": "a HEIC picture",
    b"msf1": "a HEIC picture",
}
_PROLOGUE = re.compile(r"\s*(?:<\?.*?\?>|<!--.*?-->|<!DOCTYPE[^\[>]*(?:\[.*?\]\s*)?>|\s+)*", re.S | re.I)
_SVG_ROOT = re.compile(r"<(?:[A-Za-z_][\w.-]*:)?svg[\s/>]")
_SNIFFED = 65536


def sniff(data: bytes) -> Literal["svg", "raster"]:
    """Whether the bytes are an SVG drawing; anything else is for `decode` to read or to refuse.

    >>> sniff(b"<?xml version='1.0'?><!-- moth --><svg xmlns='http://www.w3.org/2000/svg'/>")
    'svg'
    >>> sniff(b"<html><svg/></html>")
    'raster'
    """
    head = data[:_SNIFFED]
    encoding = "utf-16" if head[:2] in (b"\xff\xfe", b"\xfe\xff") else "utf-8-sig"
    text = head.decode(encoding, "replace")
    root = _PROLOGUE.match(text)
    return "svg" if root and _SVG_ROOT.match(text, root.end()) else "raster"


def raster_format(data: bytes) -> RasterFormat | None:
    """Which of the picture formats that are read the bytes are, or None."""
    if data.startswith(b"\x89PNG\r\n\x1a\n"):
        return "PNG"
    if data.startswith(b"\xff\xd8\xff"):
        return "JPEG"
    if data[:4] == b"RIFF" and data[8:12] == b"WEBP":
        return "WebP"
    return "TIFF" if data.startswith(_TIFF_STARTS) else None


def foreign_kind(data: bytes) -> str:
    """A name for bytes that are none of these formats, for the message that refuses them."""
    if not data:
        return "an empty file"
    if sniff(data) == "svg":
        return "an SVG drawing"
    if data[4:8] == b"ftyp":
        return _BRANDS.get(data[8:12], "a film")
    for start, kind in _FOREIGN_STARTS:
        if data.startswith(start):
            return kind
    if b"\0" not in data[:1024]:
        return "text" if data[:1024].isascii() else "no picture format that is known here"
    return "no picture format that is known here"
