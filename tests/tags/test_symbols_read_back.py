"""What is printed can be read: every kind of symbol, rasterised by poppler and decoded by zxing-cpp, label by
label.
"""

import pytest

from padspec.base.gtin import check_digit
from tags.project import STICKERS, Project

HANG = "{name: hang, rows: 3, columns: 3, width: 55 mm, height: 90 mm, hole: {across: 4 mm}, cut: true}"
TINY = "{name: tiny, rows: 13, columns: 5, width: 38 mm, height: 21 mm, across: 40 mm, down: 21 mm}"
LOW = "{name: low, rows: 10, columns: 2, width: 90 mm, height: 25 mm}"
LINK = "link: https://example.com/night-moth?from=tag"


@pytest.mark.parametrize("dpi", [300, 600])
@pytest.mark.parametrize("sheet", ["stickers", "hang", "tiny", "low"])
def test_a_number_is_read_on_labels_of_every_shape(project: Project, sheet: str, dpi: int) -> None:
    project.studio(STICKERS, HANG, TINY, LOW).pad("M", 'barcode: "5012345678900"\nprice: 6.50')
    project.pad("U", 'barcode: "036000291452"\nprice: 6.50')
    made = project.made("--sheet", sheet, sheet=sheet)
    # A UPC-A is an EAN-13 with a nought in front: readers tell it as either (GS1 General Specifications, 5.2).
    read = {sku: [text.zfill(13) for _, text in codes] for sku, codes in made.read(dpi)}
    assert read == {"M": ["5012345678900"], "U": ["0036000291452"]}


@pytest.mark.parametrize("digit", range(10))
def test_every_first_digit_of_an_ean_13_is_read(project: Project, digit: int) -> None:
    # The first digit has no bars of its own: it is told by which sets the others are taken from.
    body = f"{digit}48215093671"
    project.pad("M", f'barcode: "{body}{check_digit(body)}"')
    assert project.made().read(300) == [("M", [("EAN13", body + check_digit(body))])]


@pytest.mark.parametrize("sku", ["NG-MOTH", "A", "ng_moth.2", "12345678", "AB1234567"])
def test_a_sku_is_read(project: Project, sku: str) -> None:
    project.studio("{name: stickers, rows: 4, columns: 2, width: 90 mm, height: 40 mm}").pad(sku)
    assert project.made("--symbol", "sku").read() == [(sku, [("CODE128", sku)])]


@pytest.mark.parametrize("sheet", ["stickers", "hang", "tiny"])
def test_a_link_is_read(project: Project, sheet: str) -> None:
    project.studio(STICKERS, HANG, TINY).pad("M", LINK)
    made = project.made("--sheet", sheet, sheet=sheet)
    assert made.read(300) == [("M", [("QRCODE", "https://example.com/night-moth?from=tag")])]


def test_auto_takes_the_number_then_the_link_then_nothing(project: Project) -> None:
    project.pad("A", f'barcode: "5012345678900"\n{LINK}').pad("B", LINK).pad("C", "price: 5")
    kinds = {tag["sku"]: tag["symbol"] and tag["symbol"]["kind"] for tag in project.made().data["tags"]}
    assert kinds == {"A": "EAN-13", "B": "QR", "C": None}


def test_a_dark_pad_in_a_crowd_of_labels_keeps_every_symbol_readable(project: Project) -> None:
    numbers = {}
    for n in range(5):
        body = f"2000000{n}{n}106"
        numbers[f"P{n}"] = body + check_digit(body)
        project.pad(f"P{n}", f'barcode: "{numbers[f"P{n}"]}"\nground: {{colour: "#111111"}}\nprice: 4')
    read = project.made("--pads", "7").read(300)
    assert len(read) == 35
    assert all(codes == [("EAN13", numbers[sku])] for sku, codes in read)
