"""A picture file decoded once, though it is asked for twice: by a build beside its own start, and in its turn."""

from functools import lru_cache
from threading import Lock

from padspec.art.pixels import Pixels
from padspec.art.raster.decode import decode

_decoding = Lock()


def decoded(data: bytes, name: str, keep: bool = False) -> Pixels:
    """As `decode`; the result stays for the next who asks for it, who may ask to `keep` it there.

    One file at a time: who asks for a picture that is being decoded waits for it. Raises ArtError.
    """
    with _decoding:
        pixels: Pixels = _kept(data, name)
        if not keep:
            # A picture may take 400 MB.
            _kept.cache_clear()
        return pixels


_kept = lru_cache(maxsize=1)(decode)
