"""What makes a variant of a design: settings that lie over it, and how it is then called."""

from dataclasses import dataclass

from padspec.base.place import Place
from padspec.reading.tree import Mapping

#: What stands for the design's own SKU and name in the patterns of a variation.
OWN_SKU, OWN_NAME = "{sku}", "{name}"
_NOTHING = Mapping((), Place("", 0, 0))


@dataclass(frozen=True, slots=True)
class Variation:
    """Settings over a design, and the values of the axes (such as colourway, dusk) that led to them.

    In `sku` and `name` the design's own stand as {sku} and {name}; all else there is plain text. `file` is the one
    that the settings stand in, empty where there are none.
    """

    values: tuple[tuple[str, str], ...] = ()
    settings: Mapping = _NOTHING
    sku: str = OWN_SKU
    name: str = OWN_NAME
    file: str = ""

    def sku_of(self, own: str) -> str:
        """The SKU of the variant of a design with this one."""
        return self.sku.replace(OWN_SKU, own)

    def name_of(self, own: str) -> str:
        """The name of the variant of a design with this one."""
        return self.name.replace(OWN_NAME, own)


#: The design as it stands in its file.
PLAIN = Variation()
