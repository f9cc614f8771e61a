"""Fonts that come as Python packages: a family name in, the bytes of its file out.

A package that declares itself under the entry points `fontpkg.family` or `fonts_ttf` is found as soon
as it is installed; the ones padspec depends on are looked up first, without a search.
"""

import json
from functools import lru_cache
from importlib.metadata import entry_points
from importlib.resources import files
from importlib.resources.abc import Traversable

#: The families that padspec brings, with the package that holds each.
BUNDLED = {
    "Baloo 2": "fontpkg_baloo_2",
    "Caveat": "fontpkg_caveat",
    "Fredoka": "fontpkg_fredoka",
    "Fredoka One": "font_fredoka_one",
    "Lilita One": "fontpkg_lilita_one",
    "Lora": "fontpkg_lora",
    "Nunito": "fontpkg_nunito",
    "Rubik": "fontpkg_rubik",
}
#: Families that stand in for what a font lacks, first to last: Baloo 2 has Devanagari and the accents of Europe
#: and Vietnam, Nunito has Cyrillic, Rubik Arabic and Hebrew. All are round, as the usual font is.
FALLBACKS = ("Baloo 2", "Nunito", "Rubik")
#: The family of slugs and other small print.
PLAIN = "Nunito"


@lru_cache(maxsize=16)
def family_file(family: str) -> bytes | None:
    """The upright file of an installed family, or None where no package holds it."""
    package = BUNDLED.get(family) or _found_packages().get(family.casefold(), "")
    if not package:
        return None
    upright = [entry for entry in _font_entries(package) if "italic" not in entry.name.lower()]
    regular = [entry for entry in upright if "[" in entry.name or "regular" in entry.name.lower()]
    chosen = regular or upright
    return chosen[0].read_bytes() if chosen else None


def families() -> tuple[str, ...]:
    """Every family at hand, sorted."""
    names = {family.casefold(): family for family in BUNDLED}
    for family in _found_packages():
        names.setdefault(family, family.title())
    return tuple(sorted(names.values()))


def _font_entries(package: str) -> list[Traversable]:
    folder = files(package).joinpath("files")
    return sorted(
        (entry for entry in folder.iterdir() if entry.name.lower().endswith((".ttf", ".otf"))),
        key=lambda entry: entry.name,
    )


@lru_cache(maxsize=1)
def _found_packages() -> dict[str, str]:
    found: dict[str, str] = {}
    for entry in sorted(entry_points(group="fonts_ttf"), key=lambda e: e.name):
        found[entry.name.replace("-", " ").casefold()] = entry.value.partition(":")[0]
    for entry in sorted(entry_points(group="fontpkg.family"), key=lambda e: e.name):
        package = entry.value.partition(":")[0]
        metadata = json.loads(files(package).joinpath("metadata.json").read_text("utf-8"))
        found[str(metadata["family"]).casefold()] = package
    return found
