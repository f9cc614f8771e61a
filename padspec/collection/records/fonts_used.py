"""Which packaged fonts a design is set in, and what their files hold."""

from padspec.collection.records.font_files import font_digests
from padspec.resolve.blocks.words import words_of
from padspec.resolve.coverage import families_used
from padspec.resolve.design import Design, blocks
from padspec.resolve.lettering_fonts import FILE_ENDINGS


def fonts_used(design: Design) -> dict[str, str]:
    """The families that came from packages, stand-ins too; a file of the maker's is among what was read."""
    words = words_of(blocks(design))
    names = [design.small_print.name, *(some.font.name for some in words)]
    names += [family for some in words for family in families_used(some.font, some.text)]
    return font_digests(tuple(name for name in dict.fromkeys(names) if not name.lower().endswith(FILE_ENDINGS)))
