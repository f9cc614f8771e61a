"""What a sheet PDF says of itself: its title, and how a viewer should print it.

The XMP packet is written here, since the library's own writer puts the clock into it.
"""

from xml.sax.saxutils import escape

from pikepdf import Dictionary, Name, Pdf, Stream, String

_PRODUCER = "padspec"

_PACKET = """<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/"
 xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">{title}</rdf:li></rdf:Alt></dc:title>
<xmp:CreatorTool>{producer}</xmp:CreatorTool>
<pdf:Producer>{producer}</pdf:Producer>
{dates}</rdf:Description>
</rdf:RDF>
</x:xmpmeta>
<?xpacket end="r"?>
"""


def describe(pdf: Pdf, title: str, copies: int, date: str | None) -> None:
    """Give the document its title, its printing wishes and, only if there is one, its `date` (YYYY-MM-DD).

    Printing wishes are those of ISO 32000-1, table 150: no scaling, and the number of copies, which
    viewers take up only when it is small.
    """
    _set_info(pdf, title, date)
    pdf.Root.ViewerPreferences = Dictionary(PrintScaling=Name("/None"), NumCopies=copies, DisplayDocTitle=True)
    packet = Stream(pdf, xmp_packet(title, date).encode(), Type=Name.Metadata, Subtype=Name.XML)
    pdf.Root.Metadata = pdf.make_indirect(packet)


def _set_info(pdf: Pdf, title: str, date: str | None) -> None:
    info = Dictionary(Title=String(title), Creator=String(_PRODUCER), Producer=String(_PRODUCER))
    if date is not None:
        moment = String(f"D:{date.replace('-', '')}000000Z")
        info.CreationDate = moment
        info.ModDate = moment
    pdf.trailer.Info = pdf.make_indirect(info)


def xmp_packet(title: str, date: str | None) -> str:
    """The same statements as an XMP packet (ISO 16684-1)."""
    dates = ""
    if date is not None:
        moment = f"{date}T00:00:00Z"
        dates = f"<xmp:CreateDate>{moment}</xmp:CreateDate>\n<xmp:ModifyDate>{moment}</xmp:ModifyDate>\n"
    return _PACKET.format(title=escape(title), producer=_PRODUCER, dates=dates)
