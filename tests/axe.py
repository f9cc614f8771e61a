"""Accessibility judged from outside: axe-core (Deque, MPL 2.0), one pinned version, fetched from the npm registry.

It is kept in the user's folder for passing files and never in this project; a file that is not the pinned one by
its SHA-512 (as the registry states it) is not run.
"""

import base64
import hashlib
import io
import os
import tarfile
from functools import cache
from pathlib import Path
from typing import Any
from urllib.request import urlopen

from browser import Page

VERSION = "4.14.1"
_ADDRESS = f"https://registry.npmjs.org/axe-core/-/axe-core-{VERSION}.tgz"
_SHA512 = "FHfa+lmNjQZfJz1q8wKqIDwC6DExcHt/pkjNQb09a3NPjCKg2rhu5qb2S4r76ASyFNNtuFooJpZe37OgudVGtQ=="


@cache
def axe_source() -> str:
    """The text of axe.min.js."""
    kept = (
        Path(os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache") / "padspec-tests" / f"axe-{VERSION}.tgz"
    )
    data = kept.read_bytes() if kept.is_file() else b""
    if _digest(data) != _SHA512:
        with urlopen(_ADDRESS, timeout=60) as answer:
            data = answer.read()
        assert _digest(data) == _SHA512, f"{_ADDRESS} is not the file that it was"
        kept.parent.mkdir(parents=True, exist_ok=True)
        part = kept.with_suffix(f".{os.getpid()}")
        part.write_bytes(data)
        part.replace(kept)
    with tarfile.open(fileobj=io.BytesIO(data)) as packed:
        found = packed.extractfile("package/axe.min.js")
        assert found is not None
        return found.read().decode()


def violations(page: Page) -> list[str]:
    """Every rule that a page breaks, with the first elements at fault; WCAG 2.2 A and AA, and best practices.

    The page's own policy does not hold for what the protocol runs in it.
    """
    page.run(axe_source() + "; undefined")
    told: list[dict[str, Any]] = page.run(
        "axe.run(document, {resultTypes: ['violations']}).then(r => r.violations)"
    )
    return [f"{one['id']}: {one['help']} at {[n['target'] for n in one['nodes'][:3]]}" for one in told]


def _digest(data: bytes) -> str:
    return base64.b64encode(hashlib.sha512(data).digest()).decode()
