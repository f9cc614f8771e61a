"""Fonts by family name or by file, as the bytes that lettering is shaped from."""

from dataclasses import replace
from pathlib import PurePosixPath

from padspec.base.nearest import did_you_mean
from padspec.base.place import Place
from padspec.fonts import FALLBACKS, PLAIN, families, family_file
from padspec.resolve.coverage import lacking, missing_characters
from padspec.resolve.font import Font
from padspec.resolve.font_size import MOST_FONT, too_large
from padspec.resolve.settings import Troubles
from padspec.workspace import Workspace, content_digest, joined

FILE_ENDINGS = (".ttf", ".otf", ".woff2")
#: Where makers keep their own fonts.
_FOLDER = "fonts"


class FontShelf:
    """Finds a font for a design; a font that is not at hand is a trouble and the plain one stands in."""

    def __init__(self, workspace: Workspace, troubles: Troubles) -> None:
        self._workspace = workspace
        self._troubles = troubles

    def find(self, name: str, weight: int, place: Place, words: str = "") -> Font:
        """The font that a setting names: a family from a package, or a file of the maker's.

        Given the words that are set in it, it also tells the maker's own files that have what it cannot set.
        """
        is_file = PurePosixPath(name).suffix.lower() in FILE_ENDINGS
        data = self._file(name, place) if is_file else family_file(name)
        if data is None and not is_file:
            mend = f"{did_you_mean(name, families())} Or name a file: fonts/{name.replace(' ', '')}.ttf."
            self._troubles.add(place, f"No installed package holds the font {name}.", mend)
        font = self._font(name, data, weight) if data is not None else self.plain()
        lost = lacking(font, words)
        return replace(font, beside=self._files_with(lost)) if lost else font

    def plain(self, weight: int = 600) -> Font:
        """The font of small print."""
        data = family_file(PLAIN)
        if data is None:
            raise LookupError(f"the package of {PLAIN} is not installed")
        return self._font(PLAIN, data, weight)

    def _font(self, name: str, data: bytes, weight: int) -> Font:
        fallbacks = tuple(family for family in FALLBACKS if family != name)
        return Font(name, content_digest(data), data, weight, fallbacks)

    def _files_with(self, characters: str) -> tuple[str, ...]:
        """The files in the maker's folder of fonts that have all of some characters; broken ones do not count."""
        found = []
        for ending in FILE_ENDINGS:
            for path in self._workspace.neighbours(_FOLDER, ending):
                data = FontShelf(self._workspace, Troubles())._file(path, Place("", 0, 0))
                if data is not None and not missing_characters(Font(path, path, data, 400), characters):
                    found.append(path)
        return tuple(found)

    def _file(self, name: str, place: Place) -> bytes | None:
        try:
            path = joined(place.file, name)
        except ValueError:
            self._troubles.add(place, f"{name} leads outside the project folder.", "Copy the font into fonts/.")
            return None
        if not self._workspace.is_file(path):
            self._troubles.add(
                place, f"There is no font file {path}.", "Check the path; it starts at this file's folder."
            )
            return None
        return self._usable(self._workspace.read(path), name, place)

    def _usable(self, data: bytes, name: str, place: Place) -> bytes | None:
        """The font as HarfBuzz can read it: WOFF2 is unpacked, and what is no font is refused."""
        from io import BytesIO

        from fontTools.ttLib import TTFont, TTLibError

        try:
            if too_large(data):
                message = f"{name} would unpack to more than {MOST_FONT // 1_000_000} MB."
                self._troubles.add(place, message, "Use a font of one family and one style; most have under 1 MB.")
                return None
            font = TTFont(BytesIO(data), lazy=True)
            if font["maxp"].numGlyphs < 2 or not font.getBestCmap():
                raise TTLibError("no glyphs")
            if font.flavor is None:
                return data
            font.flavor = None
            plain = BytesIO()
            font.save(plain, reorderTables=None)
            return plain.getvalue()
        except Exception as error:  # fontTools lets many kinds of error out of a broken file
            message = f"{name} cannot be read as a font ({str(error) or type(error).__name__})."
            self._troubles.add(place, message, "Use a whole TTF, OTF or WOFF2 file.")
            return None
