"""`padspec tags` as a maker runs it: what is refused and how it is mended, what is told, and what is left on
disk.
"""

import subprocess

import pikepdf
import pytest
from cli.command import written

from tags.project import STICKERS, Project, load

EAN = 'barcode: "5012345678900"'


@pytest.mark.parametrize(
    ("sheet", "said"),
    [
        (
            "across: 60 mm",
            ("studio.yaml:4:", "Labels 64 mm wide, one every 60 mm, overlap by 4 mm.", "across: 64 mm"),
        ),
        ("down: 30 mm", ("Labels 34 mm high, one every 30 mm, overlap by 4 mm.", "down: 34 mm")),
        ("left: 20 mm", ("leave the sheet: 20 + 2 × 64 + 64 = 212 mm, 2 mm more than fits 210 mm of A4.", "left")),
        ("rows: 9", ("0 + 8 × 34 + 34 = 306 mm, 9 mm more than fits 297 mm of A4", "fewer rows")),
        ("corner: 20 mm", ("A corner of 20 mm", "Write 17 mm or less.")),
        ("hole: {across: 4 mm, distance: 3 mm}", ("A hole of 4 mm", "distance: 4 mm or more")),
        ("widht: 3 mm", ("Did you mean width?",)),
    ],
)
def test_a_sheet_that_cannot_be_is_refused_with_the_sum(
    project: Project, sheet: str, said: tuple[str, ...]
) -> None:
    first = {"rows": "8", "columns": "3", "width": "64 mm", "height": "34 mm"}
    key, _, value = sheet.partition(": ")
    keys = ", ".join(f"{k}: {v}" for k, v in (first | {key: value}).items())
    project.studio(f"{{name: stickers, {keys}}}").pad("M").tags().refused(*said)


def test_a_name_that_stands_twice_is_refused(project: Project) -> None:
    project.studio(STICKERS, STICKERS).pad("M").tags().refused("studio.yaml:5:", "stickers stands twice")


@pytest.mark.parametrize(
    ("key", "said"),
    [
        ('barcode: "03600029145"', ("m.pad.yaml:5:10", "036000291452")),
        ('barcode: "5012345678901"', ("is 1, and should be 0", "5012345678900")),
        ("barcode: 501234567", ("has 9 digits",)),
        ("link: http://example.com", ("does not begin with https://",)),
        ("link: https://", ("names no place",)),
        ("link: https://example.com/müde", ("'ü' cannot stand in an address",)),
        (f"link: https://example.com/{'a' * 2400}", ("has 2420 characters", "holds 2331 at level M")),
    ],
)
def test_a_number_or_link_that_cannot_be_is_refused_where_it_stands(
    project: Project, key: str, said: tuple[str, ...]
) -> None:
    project.pad("M", key).tags().refused(*said)


def test_two_pads_with_one_number_are_refused_however_it_is_written(project: Project) -> None:
    project.pad("A", 'barcode: "036000291452"').pad("B", 'barcode: "0036000291452"')
    project.tags().refused("b.pad.yaml:5:10", "2 pads have the number", "A, B")
    assert project.tags("--symbol", "none").status == 0


def test_variants_take_their_numbers_from_a_table(project: Project) -> None:
    project.pad("M")
    (project.folder / "numbers.csv").write_text("town,number\nSouk,5012345678900\nQuay,036000291452\n", "utf-8")
    (project.folder / "collection.yaml").write_text(
        "collection: Towns\ndesigns: [m.pad.yaml]\nvariants:\n"
        '  - {axis: town, table: numbers.csv, key: town, set: {barcode: "{number}"}}\n',
        "utf-8",
    )
    made = project.made()
    assert [(tag["variant"], tag["symbol"]["text"]) for tag in made.data["tags"]] == [
        ("Souk", "5012345678900"),
        ("Quay", "036000291452"),
    ]


def test_what_does_not_fit_is_refused_with_the_sum(project: Project) -> None:
    project.studio("{name: stickers, rows: 8, columns: 8, width: 24 mm, height: 30 mm}")
    project.pad("M", f"{EAN}\nlink: https://example.com/{'a' * 90}")
    project.tags().refused(
        "95 modules and quiet zones of 11 and 7", "that is 29.83 mm", "are free", "larger label"
    )
    project.tags("--symbol", "link").refused("modules and 2 × 4 of quiet zone; at 0.4 mm each that is", "are free")


@pytest.mark.parametrize(
    ("args", "said"),
    [
        (("--sheet", "sticker"), ("studio.yaml has no tag sheet sticker.", "Did you mean stickers?")),
        (("--from", "25"), ("A sheet of stickers has 24 labels, and --from asks for label 25.",)),
        (("--symbol", "number"), ("M has no number for its tag.", "m.pad.yaml")),
        (("--symbol", "link"), ("M has no link for its tag.",)),
        (("--pads", "X=2"), ("No design here has the SKU X.",)),
    ],
)
def test_what_is_asked_for_in_vain_is_refused(
    project: Project, args: tuple[str, ...], said: tuple[str, ...]
) -> None:
    project.pad("M").tags(*args).refused(*said)


@pytest.mark.parametrize(
    ("money", "said"),
    [
        ("{written: '$'}", "{amount} stands 0 times"),
        ("{written: '{amount} {amount}'}", "{amount} stands 2 times"),
        ("{written: '{amount} {curency}'}", "Did you mean {currency}?"),
        ("{currency: CAX}", "CAX is no currency"),
    ],
)
def test_a_price_that_cannot_be_written_is_refused(project: Project, money: str, said: str) -> None:
    (project.folder / "studio.yaml").write_text(f"studio: U\nmoney: {money}\n", "utf-8")
    project.pad("M").tags().refused("studio.yaml:2:", said)


@pytest.mark.parametrize(
    ("money", "price", "text"),
    [
        ("{currency: CAD}", "6.5", "6.50 CAD"),
        ("{currency: JPY}", "1200", "1200 JPY"),
        ("{currency: KWD, written: '{currency} {amount}'}", "2.5", "KWD 2.500"),
        ("{currency: CAD, written: '${amount}'}", "6.555", "$6.56"),
        ("{currency: EUR, written: '{amount} €', coins-after: comma}", "1206.5", "1206,50 €"),
    ],
)
def test_prices_are_written_as_the_studio_writes_them(project: Project, money: str, price: str, text: str) -> None:
    (project.folder / "studio.yaml").write_text(f"studio: U\nmoney: {money}\n", "utf-8")
    assert project.pad("M", f"price: {price}").made(sheet="cards").data["tags"][0]["price"] == text


def test_what_is_worth_telling_is_told(project: Project) -> None:
    project.pad("A", 'barcode: "2000000000107"', name="Ղ" * 3 + "𒀀").pad("B", EAN)
    notes = project.made().notes
    assert "The numbers of A begin with 02, 04 or 2" in notes
    assert "No price on the tags of A, B: write price: in the design." in notes
    assert "no font at hand has" in notes
    assert "𒀀" in notes


def test_a_name_of_two_hundred_letters_is_set_small_and_told(project: Project) -> None:
    project.studio("{name: stickers, rows: 13, columns: 5, width: 38 mm, height: 21 mm, across: 40 mm}")
    made = project.pad("M", EAN, name="moth list " * 19).made()
    assert "M: the name is set at" in made.notes


def test_a_run_that_fails_leaves_nothing_that_looks_fresh(project: Project) -> None:
    project.pad("M", EAN).made()
    before = project.folder / "out/tags/stickers"
    assert {path.name for path in before.iterdir()} == {"tags.pdf", "tags.png", "tags.json"}
    project.pad("M", 'barcode: "5012345678901"')
    done = project.tags()
    assert done.status == 2
    assert "Tags of an earlier run were set aside: out/tags/stickers/tags.old.pdf" in done.err
    assert {path.name for path in before.iterdir()} == {"tags.old.pdf"}
    project.pad("M", EAN).made()
    assert (before / "tags.pdf").is_file()


def test_the_files_say_what_they_are_and_print_at_true_size(project: Project) -> None:
    made = project.pad("M", f"{EAN}\nprice: 6.50").made("--pads", "30")
    assert load(made.folder / "tags.json") == made.data
    assert made.data["pages"] == 2
    subprocess.run(["qpdf", "--check", made.pdf], check=True, capture_output=True)
    with pikepdf.open(made.pdf) as pdf:
        assert len(pdf.pages) == 2
        assert str(pdf.Root.ViewerPreferences.PrintScaling) == "/None"
        for page in pdf.pages:
            media, trim = ([float(edge) for edge in page[key]] for key in ("/MediaBox", "/TrimBox"))
            assert media[2:] == pytest.approx([210 / 25.4 * 72, 297 / 25.4 * 72], abs=0.01)
            assert media[0] <= trim[0] < trim[2] <= media[2]
    assert made.folder.joinpath("tags.png").read_bytes().startswith(b"\x89PNG")


def test_the_same_input_gives_the_same_bytes(project: Project) -> None:
    project.pad("A", f"{EAN}\nprice: 6.50").pad("B", "link: https://example.com/b")
    project.tags("--out", "one")
    project.tags("--out", "two")
    assert written(project.folder / "one") == written(project.folder / "two") != {}


def test_a_build_of_a_pad_with_a_number_is_the_build_without_it(project: Project) -> None:
    from cli.command import padspec

    project.pad("M", "price: 6.50")
    padspec(project.folder, "build", "--out", "one")
    project.pad("M", f"price: 6.50\n{EAN}")
    padspec(project.folder, "build", "--out", "two")
    one, two = (written(project.folder / name) for name in ("one", "two"))
    drawn = [path for path in one if path.endswith((".pdf", ".svg", ".png"))]
    assert len(drawn) > 3
    assert [path for path in drawn if one[path] != two[path]] == []
