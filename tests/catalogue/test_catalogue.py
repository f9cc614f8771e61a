"""The catalogue: what stands on its page and in its tables, and what the page does in a browser."""

import csv
import io
import json
import time
from dataclasses import replace
from decimal import Decimal
from html.parser import HTMLParser

import pdfplumber
import pytest
from axe import violations
from browser import browsing
from kit import picture

from padspec.base.colour import Colour
from padspec.base.spreadsheet import csv_text, safe_cell
from padspec.catalogue.card import Card, Said, Swatch
from padspec.catalogue.hue import FAMILIES, family
from padspec.catalogue.page import Catalogue, page_html
from padspec.catalogue.pictures import small_face
from padspec.catalogue.tables import FORM, catalogue_csv, catalogue_json
from padspec.workspace import MemoryWorkspace

GROUNDS = {"dusk": "#dfe9f2", "ember": "#f2ddd6", "moss": "#dcebd5"}


def card(colourway: str = "dusk", design: str = "Night moth list", **changes: object) -> Card:
    sku = design.split()[0].upper()
    made = Card(
        sku=f"{sku}--{colourway}",
        name=f"{design}, {colourway}",
        design=design,
        base_sku=sku,
        values=(("colourway", colourway),),
        about="",
        tags=("night",) if design.startswith("Night") else ("market", "to do"),
        width=90.0,
        height=190.0,
        leaves=50,
        price=Decimal("6.50"),
        currency="CAD",
        state="ready",
        findings=(),
        palette=(Swatch("paper", "#ffffff"), Swatch("ground", GROUNDS[colourway]), Swatch("rule", "#7a3b58")),
        face=f"{sku}--{colourway}/face.png",
        flat="",
        files=((f"{sku}--{colourway}/sheet.pdf", "sheet"),),
    )
    return replace(made, **changes)


CARDS = (
    *(card(colourway) for colourway in GROUNDS),
    card("dusk", "Market list", state="look", findings=(Said("rule-contrast", "warning", "faint", ""),)),
    card("moss", "Market list", state="stop", price=None, findings=(Said("sheet-fit", "error", "too large", ""),)),
)


def page(cards: tuple[Card, ...] = CARDS, name: str = "Night garden", about: str = "After dark.") -> str:
    return page_html(Catalogue(name, about, "Umberwick Paper", cards, {}))


class TestTables:
    def rows(self, cards: tuple[Card, ...] = CARDS) -> list[dict[str, str]]:
        text = catalogue_csv(cards).decode("utf-8-sig")
        return [*csv.DictReader(io.StringIO(text, newline=""))]

    def test_a_line_a_pad_with_a_column_for_each_axis(self):
        rows = self.rows()
        assert [row["colourway"] for row in rows] == ["dusk", "ember", "moss", "dusk", "moss"]
        assert (rows[0]["price"], rows[0]["currency"], rows[4]["price"]) == ("6.5", "CAD", "")

    @pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\r"])
    def test_no_cell_is_taken_for_a_formula(self, start):
        """OWASP, CSV Injection (from memory): a cell must begin with none of these."""
        text = f'{start}cmd|"/C calc"!A0'
        (row,) = self.rows((card(name=text, tags=(text,)),))
        assert (row["name"], row["tags"]) == (f"'{text}", f"'{text}")
        assert not any(value.startswith(("=", "+", "-", "@", "\t", "\r")) for value in row.values())

    def test_other_text_comes_back_as_it_is(self):
        text = 'Zoë, "quoted"\nand more; ليلى'
        assert self.rows((card(name=text),))[0]["name"] == text
        assert csv_text([[safe_cell(text)]]).endswith("\r\n")

    def test_the_json_says_its_form_and_everything_else(self):
        told = json.loads(catalogue_json("Night garden", "", "Umberwick Paper", CARDS))
        assert (told["form"], told["about"], len(told["pads"])) == (FORM, None, 5)
        pad = told["pads"][3]
        assert (pad["price"], pad["variant"], pad["state"]) == ("6.50", {"colourway": "dusk"}, "look")
        assert pad["findings"][0]["check"] == "rule-contrast"
        assert pad["files"] == {"sheet": "../MARKET--dusk/sheet.pdf"}


class TestHues:
    @pytest.mark.parametrize(
        ("colour", "name"),
        [
            ("#d9534f", "red"),
            ("#e8924a", "orange"),
            ("#e5c04b", "yellow"),
            ("#7fb069", "green"),
            ("#3fa79b", "teal"),
            ("#6a9bd8", "blue"),
            ("#8e6bd0", "purple"),
            ("#e08bb0", "pink"),
            ("#f4f2ee", "neutral"),
        ],
    )
    def test_are_called_what_people_call_them(self, colour, name):
        """Names of hues: common practice, no published source."""
        assert family(Colour.from_hex(colour)) == name

    def test_every_family_has_a_dot_and_an_order(self):
        from padspec.catalogue.page import _HUE_DOTS

        assert tuple(_HUE_DOTS) == FAMILIES


class TestThePage:
    def test_is_well_formed_and_links_only_what_is_there(self):
        links: list[str] = []

        class Reader(HTMLParser):
            def handle_starttag(self, _tag, attributes):
                links.extend(value for name, value in attributes if name in ("href", "src"))

        Reader().feed(page())
        inside = [link for link in links if not link.startswith("#")]
        assert set(inside) == {f"../{c.sku}/sheet.pdf" for c in CARDS}

    def test_escapes_every_text_of_the_makers(self):
        wild = "<script>alert(1)</script>\"'&"
        made = page((card(name=wild, design=wild, about=wild, tags=(wild,), sku="S"),), wild, wild)
        assert "<script>alert" not in made
        assert made.count("<script>") == 1

    def test_of_no_pads_is_a_page_all_the_same(self):
        assert "0 pads" in page(())

    def test_small_pictures_are_named_by_what_is_in_them(self):
        output = MemoryWorkspace({"a.png": picture(720, 1520), "b.png": picture(720, 1520, (9, 9, 9))})
        one, same, other = (small_face(name, 90.0, output) for name in ("a.png", "a.png", "b.png"))
        assert (one, one.width) == (same, 342)
        assert one.path != other.path
        assert b"Exif" not in one.data


@pytest.fixture(scope="module")
def browser():
    with browsing() as found:
        yield found


@pytest.fixture
def opened(browser, tmp_path):
    file = tmp_path / "index.html"
    file.write_text(page(), "utf-8")
    return browser.open(file)


SHOWN = "[...document.querySelectorAll('.card')].filter(c => c.offsetParent).map(c => c.dataset.sku)"
COUNT = "document.querySelector('#count').textContent"


def shown(made) -> list[str]:
    return made.run(SHOWN)


def set_field(made, selector: str, value: str) -> None:
    made.run(
        f"(() => {{ const one = document.querySelector({selector!r}); one.value = {value!r}; "
        "one.dispatchEvent(new Event('input', {bubbles: true})); })()"
    )


class TestInABrowser:
    def test_all_is_shown_and_counted_at_first(self, opened):
        assert (len(shown(opened)), opened.run(COUNT)) == (5, "5 pads")

    def test_search_finds_parts_of_words_whatever_their_accents(self, opened):
        set_field(opened, "#search", "MÓSS market")
        assert shown(opened) == ["MARKET--moss"]
        assert opened.run(COUNT) == "1 of 5 pads"

    @pytest.mark.parametrize(
        ("selector", "value", "found"),
        [
            ("#by-axis-colourway", "dusk", ["NIGHT--dusk", "MARKET--dusk"]),
            ("#by-tag", "to do", ["MARKET--dusk", "MARKET--moss"]),
            ("#by-state", "not to be printed", ["MARKET--moss"]),
        ],
    )
    def test_each_filter_narrows_down(self, opened, selector, value, found):
        set_field(opened, selector, value)
        assert shown(opened) == found

    def test_hues_add_up_and_are_told_to_be_pressed(self, opened):
        for hue in ("blue", "green"):
            opened.run(f"document.querySelector('.hues button[value={hue}]').click()")
        assert sorted(shown(opened)) == ["MARKET--dusk", "MARKET--moss", "NIGHT--dusk", "NIGHT--moss"]
        pressed = "[...document.querySelectorAll('.hues [aria-pressed=true]')].map(b => b.value)"
        assert sorted(opened.run(pressed)) == ["blue", "green"]

    def test_nothing_found_says_so_and_shows_the_way_back(self, opened):
        set_field(opened, "#search", "owl")
        assert opened.run("document.querySelector('.empty').offsetParent !== null")
        opened.run("document.querySelector('#clear').click()")
        assert len(shown(opened)) == 5

    def test_in_order_of_hue_families_stand_together(self, opened):
        set_field(opened, "#sort", "hue")
        families = opened.run(SHOWN.replace("c.dataset.sku", "c.dataset.hue"))
        assert families == sorted(families, key=FAMILIES.index)
        set_field(opened, "#sort", "")
        assert shown(opened) == [c.sku for c in CARDS]

    def test_in_order_of_price_those_without_come_last(self, opened):
        set_field(opened, "#sort", "price")
        assert shown(opened)[-1] == "MARKET--moss"

    def test_a_view_is_kept_in_the_address(self, opened):
        set_field(opened, "#by-tag", "night")
        set_field(opened, "#sort", "name")
        address = opened.run("location.href")
        assert address.endswith("#tag=night&sort=name")
        opened.go("about:blank")
        opened.go(address)
        assert shown(opened) == ["NIGHT--dusk", "NIGHT--ember", "NIGHT--moss"]

    def test_the_link_to_the_pads_leaves_the_filters_as_they_are(self, opened):
        set_field(opened, "#search", "moss")
        before = shown(opened)
        opened.run("document.querySelector('.skip').click()")
        time.sleep(0.2)  # the address changes, and the page is told so
        assert 0 < len(shown(opened)) < 5
        assert shown(opened) == before
        assert opened.run("document.querySelector('#search').value") == "moss"
        assert opened.run("location.hash") == "#q=moss"

    def test_an_address_that_leads_to_the_pads_shows_all(self, opened):
        address = opened.run("location.href")
        opened.go("about:blank")
        opened.go(f"{address.partition('#')[0]}#pads")
        assert (len(shown(opened)), opened.run(COUNT)) == (5, "5 pads")

    def test_the_keyboard_reaches_a_filter_and_works_it(self, opened):
        opened.press("Tab")
        assert opened.run("document.activeElement.className") == "skip"
        for _ in range(30):
            opened.press("Tab")
            if opened.run("document.activeElement.value") == "green":
                break
        opened.press(" ")
        assert {sku.split("--")[1] for sku in shown(opened)} == {"moss"}

    def test_colours_follow_the_system_until_the_switch_says_otherwise(self, opened):
        ground = "getComputedStyle(document.documentElement).backgroundColor"
        opened.emulate("light")
        light = opened.run(ground)
        opened.emulate("dark")
        dark = opened.run(ground)
        assert light != dark
        opened.run("document.querySelector('#scheme').click()")
        assert opened.run(ground) == light
        opened.run("localStorage.clear()")

    @pytest.mark.parametrize("scheme", ["light", "dark"])
    @pytest.mark.parametrize("width", [1200, 380])
    def test_nobody_is_shut_out(self, browser, tmp_path, scheme, width):
        """axe-core, with the rules for contrast, names and structure of WCAG 2.2 A and AA."""
        file = tmp_path / "index.html"
        file.write_text(page(), "utf-8")
        made = browser.open(file, width)
        made.emulate(scheme)
        made.go(file)
        assert violations(made) == []
        set_field(made, "#sort", "hue")
        set_field(made, "#search", "market")
        assert violations(made) == []

    def test_nothing_is_wider_than_a_narrow_screen(self, browser, tmp_path):
        file = tmp_path / "index.html"
        file.write_text(page((card(name="Wide " * 40, design="Unbreakable" * 12),)), "utf-8")
        made = browser.open(file, 320)
        assert made.run("document.documentElement.scrollWidth") <= 320

    def test_nothing_is_asked_of_any_network(self, opened):
        assert all(address.startswith("file:") for address in opened.requests)

    def test_without_scripts_every_card_is_there_and_no_control(self, browser, tmp_path):
        file = tmp_path / "index.html"
        file.write_text(page().replace("script-src 'unsafe-inline'", "script-src 'none'"), "utf-8")
        made = browser.open(file)
        assert len(shown(made)) == 5
        assert not made.run("document.querySelector('#find').offsetParent")

    def test_on_paper_it_is_a_line_sheet_with_room_to_order(self, opened):
        text = read_pdf(opened.pdf())
        assert [c.sku in text for c in CARDS] == [c.state != "stop" for c in CARDS]
        assert "order" in text
        assert "price, CAD" in text
        assert "search" not in text
        assert "rule-contrast" not in text

    def test_on_paper_stands_what_was_filtered(self, opened):
        set_field(opened, "#search", "ember")
        text = read_pdf(opened.pdf())
        assert "NIGHT--ember" in text
        assert "NIGHT--dusk" not in text


def read_pdf(data: bytes) -> str:
    with pdfplumber.open(io.BytesIO(data)) as pdf:
        return "\n".join(found.extract_text() for found in pdf.pages)
