"""An SVG file read once, element by element, and refused at the first thing that must not be in it."""

from collections.abc import Iterator
from contextlib import suppress
from io import BytesIO
from typing import NoReturn
from xml.sax import SAXParseException
from xml.sax.handler import ContentHandler, feature_namespaces
from xml.sax.xmlreader import AttributesNSImpl, Locator

from defusedxml.common import DefusedXmlException
from defusedxml.expatreader import DefusedExpatParser

from padspec.art.errors import ArtError
from padspec.art.raster.decode import MOST_MEGAPIXELS
from padspec.art.svg.effort import MOST_ELEMENTS, MOST_NESTED, Effort
from padspec.art.svg.links import embedded_size, fragments, is_inside, outside_in_sheet, outside_in_value

SVG = "http://www.w3.org/2000/svg"
#: Larger files are refused unread.
MOST_BYTES = 20_000_000
# CSS beyond this is no style of a drawing; it is also what is slow to read.
_MOST_CSS = 500_000

_XHTML = "http://www.w3.org/1999/xhtml"
_XML = "http://www.w3.org/XML/1998/namespace"
_TEXT = frozenset({"text", "tspan", "textPath", "tref", "altGlyph", "flowRoot", "flowPara"})
_ANIMATION = frozenset({"animate", "set", "animateTransform", "animateMotion"})
_EMBED = "Embed the picture in the drawing, or leave it out."

Name = tuple[str | None, str]


def walk_svg(data: bytes, name: str) -> int:
    """Read the whole file; gives the elements it draws, every reference followed.

    Raises ArtError naming element and line for whatever is not allowed in it.
    """
    walk = _Walk(name)
    _parse(data, name, walk)
    return walk.effort.check(name)


def root_attributes(data: bytes, name: str) -> dict[str, str]:
    """The attributes of the root element that have no namespace."""
    root = _Root()
    with suppress(_RootFoundError):
        _parse(data, name, root)
    return root.attributes


def _parse(data: bytes, name: str, handler: ContentHandler) -> None:
    if len(data) > MOST_BYTES:
        raise ArtError(
            f"{name} is {len(data) / 1e6:.1f} MB; the limit for a drawing is {MOST_BYTES // 1_000_000} MB.",
            "Simplify its paths, or save it as a PNG of the size it is printed at.",
        )
    parser = DefusedExpatParser(forbid_dtd=True)
    parser.setFeature(feature_namespaces, True)
    parser.setContentHandler(handler)
    try:
        parser.parse(BytesIO(data))
    except DefusedXmlException as trouble:
        raise ArtError(
            f"{name} begins with a document type (<!DOCTYPE …>) or defines entities, which are not read.",
            "Delete everything from <!DOCTYPE to its closing > in a text editor; drawings need none of it.",
        ) from trouble
    except SAXParseException as trouble:
        raise ArtError(
            f"{name}, line {trouble.getLineNumber()}: this is not well-formed SVG: {trouble.getMessage()}.",
            "Save it again from the drawing program.",
        ) from trouble
    except (UnicodeError, LookupError, ValueError) as trouble:
        raise ArtError(f"{name} cannot be read as text.", "Save it in UTF-8.") from trouble


class _RootFoundError(Exception):
    """Ends the reading once the root element is known."""


class _Root(ContentHandler):
    def __init__(self) -> None:
        super().__init__()
        self.attributes: dict[str, str] = {}

    def startElementNS(self, name: Name, qname: str | None, attrs: AttributesNSImpl) -> None:  # noqa: N802, ARG002
        self.attributes = {local: value for (space, local), value in attrs.items() if space is None}
        raise _RootFoundError


class _Walk(ContentHandler):
    """The checks, in the callbacks of a SAX reader."""

    def __init__(self, file: str) -> None:
        super().__init__()
        self.file = file
        self.effort = Effort()
        self.open: list[int] = []
        self.style: list[str] | None = None
        self.css = 0
        self.embedded = 0
        self.locator: Locator | None = None

    def setDocumentLocator(self, locator: Locator) -> None:  # noqa: N802
        self.locator = locator

    def startElementNS(self, name: Name, qname: str | None, attrs: AttributesNSImpl) -> None:  # noqa: N802, ARG002
        space, local = name
        if not self.open and name != (SVG, "svg"):
            self._refuse(
                f"the root is <{local}>, not <svg> in the SVG namespace",
                f'Save it again as plain SVG: its root is <svg xmlns="{SVG}">.',
            )
        self._refuse_element(space, local)
        references = [
            found for (where, key), value in attrs.items() for found in self._attribute(local, where, key, value)
        ]
        self._enter(attrs, tuple(references))
        if local == "style":
            self.style = []

    def endElementNS(self, name: Name, qname: str | None) -> None:  # noqa: N802, ARG002
        self.open.pop()
        if name[1] == "style" and self.style is not None:
            sheet, self.style = "".join(self.style), None
            self._count_css(sheet)
            if outside := outside_in_sheet(sheet):
                self._refuse(f"<style> refers to {_short(outside)}, which lies outside the file", _EMBED)

    def characters(self, content: str) -> None:
        if self.style is not None:
            self.style.append(content)

    def processingInstruction(self, target: str, data: str) -> None:  # noqa: N802
        if target == "xml-stylesheet" and 'href="#' not in data and "href='#" not in data:
            self._refuse(
                f"<?xml-stylesheet {_short(data)}?> asks for a file outside",
                "Put the styles into a <style> element, or let the program write them as attributes.",
            )

    def _enter(self, attrs: AttributesNSImpl, references: tuple[str, ...]) -> None:
        plain = {local: value for (space, local), value in attrs.items() if space is None}
        if len(self.open) >= MOST_NESTED:
            self._refuse(f"elements are nested more than {MOST_NESTED} deep", "Ungroup the drawing in its editor.")
        if self.effort.count >= MOST_ELEMENTS:
            self._refuse(f"this is element {MOST_ELEMENTS + 1}, one over the limit", "Simplify the drawing.")
        parent = self.open[-1] if self.open else None
        self.open.append(self.effort.enter(parent, plain.get("id", ""), references, self._line()))

    def _refuse_element(self, space: str | None, local: str) -> None:
        if space == _XHTML or local in ("script", "foreignObject", "handler", "iframe"):
            self._refuse(f"<{local}> is a piece of a web page, which paper cannot show", "Take it out.")
        if space == SVG and local in _TEXT:
            self._refuse(
                f"<{local}> is lettering in a font of this machine, which another may lack",
                "Turn the lettering into paths in the drawing program (convert text to outlines).",
            )

    def _attribute(self, element: str, space: str | None, key: str, value: str) -> Iterator[str]:
        """The ids that an attribute refers to; refuses one that leaves the file."""
        if key == "href":
            if not is_inside(value):
                self._refuse(f"<{element}> refers to {_short(value)}, which lies outside the file", _EMBED)
            self._count_embedded(element, value)
            if value.strip().startswith("#"):
                yield value.strip()[1:]
        elif (space == _XML and key == "base") or (space is None and key.lower().startswith("on")):
            self._refuse(f"<{element}> has the attribute {key}, which belongs to web pages", "Take it out.")
        elif key == "attributeName" and element in _ANIMATION and value.strip().endswith("href"):
            self._refuse(f"<{element}> changes a reference while it is shown", "Take it out.")
        else:
            if key == "style":
                self._count_css(value)
            if outside := outside_in_value(value):
                self._refuse(f"<{element} {key}> refers to {_short(outside)}, outside the file", _EMBED)
            yield from fragments(value)

    def _count_embedded(self, element: str, value: str) -> None:
        if value.strip().startswith("#"):
            return
        size = embedded_size(value)
        if size is None:
            self._refuse(f"the picture embedded in <{element}> cannot be read", "Embed it again as PNG or JPEG.")
        self.embedded += size[0] * size[1]
        if self.embedded > MOST_MEGAPIXELS * 1_000_000:
            self._refuse(
                f"the embedded pictures come to {self.embedded / 1e6:.0f} megapixels by <{element}>"
                f" ({size[0]} × {size[1]}); the limit is {MOST_MEGAPIXELS}",
                "Embed them smaller.",
            )

    def _count_css(self, text: str) -> None:
        self.css += len(text)
        if self.css > _MOST_CSS:
            self._refuse(
                f"the styles come to more than {_MOST_CSS // 1000} kB", "Let the program write attributes."
            )

    def _line(self) -> int:
        return int(self.locator.getLineNumber() or 0) if self.locator else 0

    def _refuse(self, message: str, mend: str) -> NoReturn:
        raise ArtError(f"{self.file}, line {self._line()}: {message}.", mend)


def _short(text: str) -> str:
    text = " ".join(text.split())
    return text if len(text) <= 60 else text[:59] + "…"
