"""What a press PDF says of itself, as PDF/X-4 (ISO 15930-7) wants it: title, dates, trapping, output intent.

Clauses are those of ISO 32000-1. The XMP packet (ISO 16684-1) is written here, since the library's own writer
puts the clock into it; ids are made from the content.
"""

import hashlib
from uuid import NAMESPACE_OID, uuid5
from xml.sax.saxutils import escape

from pikepdf import Array, Dictionary, Name, Pdf, Stream, String

from padspec.draw.deflate import deflated
from padspec.press.profile import Profile

_PRODUCER = "padspec"

_PACKET = """<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/"
 xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:xmpMM="http://ns.adobe.com/xap/1.0/mm/"
 xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:pdfxid="http://www.npes.org/pdfx/ns/id/">
<pdfxid:GTS_PDFXVersion>PDF/X-4</pdfxid:GTS_PDFXVersion>
<dc:format>application/pdf</dc:format>
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">{title}</rdf:li></rdf:Alt></dc:title>
<xmp:CreatorTool>{producer}</xmp:CreatorTool>
<xmp:CreateDate>{moment}</xmp:CreateDate>
<xmp:ModifyDate>{moment}</xmp:ModifyDate>
<xmp:MetadataDate>{moment}</xmp:MetadataDate>
<xmpMM:DocumentID>uuid:{identity}</xmpMM:DocumentID>
<xmpMM:VersionID>1</xmpMM:VersionID>
<xmpMM:RenditionClass>default</xmpMM:RenditionClass>
<pdf:Producer>{producer}</pdf:Producer>
<pdf:Trapped>False</pdf:Trapped>
</rdf:Description>
</rdf:RDF>
</x:xmpmeta>
<?xpacket end="r"?>
"""


def describe_for_press(pdf: Pdf, title: str, date: str, profile: Profile) -> None:
    """Give the finished pages their title, `date` (YYYY-MM-DD), identity and output intent."""
    identity = _identity(pdf, title, date, profile)
    _set_info(pdf, title, date)
    pdf.Root.ViewerPreferences = Dictionary(DisplayDocTitle=True)
    pdf.Root.OutputIntents = Array([_output_intent(pdf, profile)])
    packet = Stream(pdf, press_packet(title, date, identity).encode(), Type=Name.Metadata, Subtype=Name.XML)
    pdf.Root.Metadata = pdf.make_indirect(packet)


def press_packet(title: str, date: str, identity: str) -> str:
    """The XMP packet of a press PDF."""
    return _PACKET.format(title=escape(title), producer=_PRODUCER, moment=f"{date}T00:00:00Z", identity=identity)


def _set_info(pdf: Pdf, title: str, date: str) -> None:
    """The document information dictionary (14.3.3), saying the same as the packet."""
    moment = String(f"D:{date.replace('-', '')}000000Z")
    info = Dictionary(
        Title=String(title),
        Creator=String(_PRODUCER),
        Producer=String(_PRODUCER),
        CreationDate=moment,
        ModDate=moment,
        Trapped=Name("/False"),
    )
    pdf.trailer.Info = pdf.make_indirect(info)


def _output_intent(pdf: Pdf, profile: Profile) -> Dictionary:
    """The condition that the inks are meant for, with its profile (14.11.5, tables 365 and 366).

    The maker's profile may be of no registered condition: its identifier is then Custom, and Info tells it.
    """
    embedded = Stream(pdf, b"", N=4)
    embedded.write(deflated(profile.data), filter=Name.FlateDecode)
    condition = profile.description or "the press of the embedded profile"
    return Dictionary(
        Type=Name.OutputIntent,
        S=Name.GTS_PDFX,
        OutputConditionIdentifier=String("Custom"),
        OutputCondition=String(condition),
        Info=String(f"{condition} (profile embedded)"),
        DestOutputProfile=pdf.make_indirect(embedded),
    )


def _identity(pdf: Pdf, title: str, date: str, profile: Profile) -> str:
    """A name-based UUID (RFC 4122, 4.3) of what the pages draw, for which press, and the document's title."""
    digest = hashlib.sha256(f"{title}\n{date}\n".encode() + profile.data)
    for held in pdf.objects:
        if isinstance(held, Stream):
            digest.update(held.read_raw_bytes())
    return str(uuid5(NAMESPACE_OID, digest.hexdigest()))
