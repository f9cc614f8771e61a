"""What a pad is coded: the SKU that its design names, else the name of its file."""

import re
from unicodedata import normalize

from padspec.resolve.settings import Settings

#: Folders of the output that are not a design's.
TAKEN = ("art", "catalogue", "compare", "gallery", "jobs", "stamp", "tags")


def own_sku(own: Settings, file: str) -> str:
    """The design's own, else the stem of its file; where nothing is left to name a folder by, a trouble."""
    sku = sku_from(own.text("sku") if own.has("sku") else "", file)
    if not sku:
        message = f"The SKU {_stem(file)} leaves nothing to name a folder by."
        own.troubles.add(own.place("sku"), message, "Write one: sku: NG-MOTH.")
    return sku


def refuse_taken(sku: str, own: Settings) -> None:
    """A SKU, that of a variant too, whose folder is one of padspec's own is a trouble."""
    if sku.casefold() in TAKEN:
        message = f"The SKU {sku} is the name of a folder that padspec writes."
        own.troubles.add(own.place("sku"), message, "Write one: sku: NG-MOTH.")


def sku_from(named: str, file: str) -> str:
    """The SKU that a design names, else the stem of its file as far as it can name a folder.

    >>> sku_from("NG-MOTH", "moth.pad.yaml"), sku_from("", "night/moth list.pad.yaml")
    ('NG-MOTH', 'moth-list')
    """
    return named or re.sub(r"[^\w-]+", "-", normalize("NFC", _stem(file))).strip("-")


def _stem(file: str) -> str:
    return file.rpartition("/")[2].removesuffix(".yaml").removesuffix(".yml").removesuffix(".pad")
