"""How large a font file is once unpacked, told before it is: a small WOFF2 may hold a very large font.

WOFF2 (W3C Recommendation, section 4): a header that states the size, a directory of tables, and one Brotli stream.
The header may lie, so the stream is unpacked a little at a time and given up where it grows too long.
"""

MOST_FONT = 60_000_000
_CHUNK = 2048
_HEADER = 48
_KNOWN_TAGS = 0x3F
_GLYF, _LOCA = 10, 11


def too_large(data: bytes) -> bool:
    """Whether a font would unpack to more than 60 MB. Raises ValueError or IndexError for a broken WOFF2."""
    if data[:4] != b"wOF2":
        return len(data) > MOST_FONT
    stated, packed = int.from_bytes(data[16:20], "big"), int.from_bytes(data[20:24], "big")
    if stated > MOST_FONT:
        return True
    start = _directory_end(data)
    return _stream_is_longer(data[start : start + packed])


def _stream_is_longer(packed: bytes) -> bool:
    import brotli

    unpacking, total = brotli.Decompressor(), 0
    for start in range(0, len(packed), _CHUNK):
        if unpacking.is_finished():
            break
        try:
            total += len(unpacking.process(packed[start : start + _CHUNK]))
        except brotli.error:
            raise ValueError("its stream is broken") from None
        if total > MOST_FONT:
            return True
    return False


def _directory_end(data: bytes) -> int:
    """Where the directory of tables ends and the stream begins (WOFF2, section 4.2)."""
    at = _HEADER
    for _ in range(int.from_bytes(data[12:14], "big")):
        flags = data[at]
        tag, version = flags & _KNOWN_TAGS, flags >> 6
        at = _past_number(data, at + (5 if tag == _KNOWN_TAGS else 1))
        transformed = version != 3 if tag in (_GLYF, _LOCA) else version != 0
        at = _past_number(data, at) if transformed else at
    return at


def _past_number(data: bytes, at: int) -> int:
    """Behind a number of up to five bytes, each but the last with its high bit set (UIntBase128)."""
    for byte in range(at, at + 5):
        if data[byte] < 0x80:
            return byte + 1
    raise ValueError("a number in its directory has no end")
