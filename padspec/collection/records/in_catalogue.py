"""The catalogue that an earlier run wrote: it must not offer a pad that is not to be had any more."""

import json

from padspec.base.errors import ProblemsError
from padspec.workspace import FolderWorkspace

PAGE, ASIDE, DATA = "catalogue/index.html", "catalogue/index.old.html", "catalogue/catalogue.json"


def set_catalogue_aside(sku: str, output: FolderWorkspace) -> None:
    """Set the page aside where it has a pad that cannot be used or printed now; the next catalogue says so."""
    if sku in _offered(output):
        output.set_aside(PAGE, ASIDE)


def _offered(output: FolderWorkspace) -> frozenset[str]:
    try:
        data = json.loads(output.read(DATA)) if output.is_file(PAGE) and output.is_file(DATA) else {}
        return frozenset(pad["sku"] for pad in data.get("pads", ()) if pad["state"] != "stop")
    except (ProblemsError, ValueError, TypeError, KeyError, AttributeError, RecursionError):
        return frozenset()
