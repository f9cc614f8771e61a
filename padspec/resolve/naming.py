"""What a pad is coded: the SKU that its design names, else the name of its file."""

import re
from unicodedata import normalize

from padspec.resolve.settings import Settings

#: Folders of the output that are not a design's.
TAKEN = ("art", "catalogue", "compare", "jobs")


def own_sku(own: Settings, file: str) -> str:
    """The design's own, else the stem of its file; one that can name no folder is a trouble."""
    sku = sku_from(own.text("sku") if own.has("sku") else "", file)
    if sku.casefold() in ("", *TAKEN):
        why = "is the name of a folder that padspec writes" if sku else "leaves nothing to name a folder by"
        own.troubles.add(own.place("sku"), f"The SKU {sku or _stem(file)} {why}.", "Write one: sku: NG-MOTH.")
    return sku


def sku_from(named: str, file: str) -> str:
    """The SKU that a design names, else the stem of its file as far as it can name a folder.

    >>> sku_from("NG-MOTH", "moth.pad.yaml"), sku_from("", "night/moth list.pad.yaml")
    ('NG-MOTH', 'moth-list')
    """
    return named or re.sub(r"[^\w-]+", "-", normalize("NFC", _stem(file))).strip("-")


def _stem(file: str) -> str:
    return file.rpartition("/")[2].removesuffix(".yaml").removesuffix(".yml").removesuffix(".pad")
