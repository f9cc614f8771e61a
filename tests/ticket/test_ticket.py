"""The ticket: figures that agree with the batch, all the steps, and a page that prints on two sheets of paper."""

import base64
import json
import re
import subprocess

import pytest
from browser import browsing
from cli.command import padspec, put
from costing.invented import BATCHES, HOLLOW, TALLOW, reckoned

from padspec.sheet.cautions import CAUTIONS
from padspec.ticket.as_data import ticket_data
from padspec.ticket.cautions import THIN_FILM
from padspec.ticket.page import page_html
from padspec.ticket.ticket import ticket_of

each = pytest.mark.parametrize("name", [batch.name for batch in BATCHES])
ORDER = (
    "Print",
    "Let the ink dry",
    "Cut the leaves",
    "Cut the backs",
    "Count off and jog",
    "Stack and clamp",
    "Brush the glue edge",
    "Slit apart",
    "Trim the pads",
    "Look over and flip",
    "Magnets",
    "Sleeve",
)
DOT = b"\x89PNG"


def ticket(name):
    return ticket_of(reckoned(name), "out/jobs/x")


def page(name):
    found = ticket(name)
    return page_html(found, [DOT] * len(found.found.lots))


@each
def test_everything_is_fetched_that_is_used(name):
    found = ticket(name)
    plan = found.found.batch.plan
    fetched = [(one.number, one.unit) for one in found.materials]
    assert sum(number for number, unit in fetched if unit == "sheets") == plan.sheets
    boards = found.found.batch.boards
    assert sum(number for number, unit in fetched if "big" in unit) == (boards.sheets if boards else 0)
    grams = next(number for number, unit in fetched if unit == "g")
    assert grams >= sum(lot.gluing.grams * lot.pads for lot in found.found.batch.lots)


@each
def test_steps_come_in_the_order_of_the_work_with_the_time_lines_minutes(name):
    found = ticket(name)
    titles = [step.title for step in found.steps]
    known = [title for title in titles if title in ORDER]
    assert known == [title for title in ORDER if title in known]
    assert sum(step.by_hand for step in found.steps) == pytest.approx(found.found.timeline.hands)


def test_a_studio_has_the_steps_that_it_needs_and_no_others():
    stall, mill, fair = ({step.title for step in ticket(batch.name).steps} for batch in BATCHES)
    assert "Trim the pads" in mill
    assert {"Magnets", "Sleeve"} <= stall
    assert {"Magnets", "Sleeve", "Cut the backs"}.isdisjoint(fair)


@each
def test_pads_of_all_loads_are_the_pads_of_the_batch_and_no_stack_is_too_high(name):
    batch = ticket(name).found.batch
    room = batch.lots[0].design.studio.bench.clamp.height
    for index, lot in enumerate(batch.lots):
        assert sum(number for load in batch.loads for at, number in load.pads if at == index) == lot.pads
    assert all(load.height.value + load.height.error <= room + 1e-6 for load in batch.loads)


@each
def test_the_data_says_what_the_page_says(name):
    found = ticket(name)
    data = json.loads(json.dumps(ticket_data(found)))
    text = page(name)
    for lot in data["pads"]:
        assert lot["sku"] in text
        assert f"{lot['pads']} ×" in text
    assert [step["number"] for step in data["steps"]] == list(range(1, len(found.steps) + 1))
    assert all(step["step"] in text for step in data["steps"])


@each
def test_cautions_are_there_where_there_is_cause_and_defer(name):
    found = ticket(name)
    about = {one.about: one.text for one in found.cautions}
    lots = found.found.batch.lots
    assert CAUTIONS[lots[0].design.studio.cutter.kind] in about["Blades"]
    assert "safety data sheet comes first" in about["Adhesive"]
    assert ("Magnets" in about) == any(lot.hold for lot in lots)
    assert ("Bags" in about) == any(lot.sleeve for lot in lots)
    assert "local rules" in page(name)


def test_thin_film_is_named():
    """0.001 in = 0.0254 mm."""
    assert pytest.approx(0.001 * 25.4) == THIN_FILM


def test_nothing_is_fetched_by_the_page():
    text = page("Saturday stall")
    addresses = re.findall(r'(?:src|href)="([^"]*)"|url\(([^)]*)\)', text)
    assert all((a or b).startswith(("data:", "#")) for a, b in addresses)
    assert "default-src 'none'" in text


HOSTILE = '<script>alert(1)</script> & "quotes"'
DESIGN = "pad: {name}\nsku: S\ntrim: {{width: 90 mm, height: 190 mm}}\nlayout: ruled\n"


@pytest.fixture(scope="module")
def browser():
    with browsing() as opened:
        yield opened


def printed(browser, folder, job="fair.job.yaml"):
    """The ticket of a job as Chromium prints it: the PDF's text, its pages and their size, by poppler."""
    outcome = padspec(folder, "ticket", job)
    assert outcome.status == 0, outcome
    (file,) = (folder / "out/jobs").glob("*/ticket.html")
    page = browser.open(file)
    assert [address for address in page.requests if not address.startswith(("file:", "data:"))] == []
    paper = folder / "ticket.pdf"
    told = page.call("Page.printToPDF", preferCSSPageSize=True)
    paper.write_bytes(base64.b64decode(told["data"]))
    info = subprocess.run(["pdfinfo", paper], capture_output=True, text=True, check=True).stdout
    text = subprocess.run(["pdftotext", "-layout", paper, "-"], capture_output=True, text=True, check=True).stdout
    size = tuple(round(float(x)) for x in re.search(r"Page size: +([\d.]+) x ([\d.]+)", info).groups())
    return text, int(re.search(r"Pages: +(\d+)", info)[1]), size


def test_a_batch_of_one_design_prints_on_two_pages_of_a4(browser, tmp_path):
    put(
        tmp_path,
        a__pad__yaml=DESIGN.format(name="Moss list"),
        studio__yaml=TALLOW,
        fair__job__yaml="job: Fair\npads: {S: 20}\n",
    )
    text, pages, size = printed(browser, tmp_path)
    assert (pages, size) == (2, (595, 842))
    for words in ("Moss list", "Count off and jog", "load 1", "Flip test", "Blades", "upright", "Page 1"):
        assert words in text, words


def test_in_a_studio_of_inches_it_is_letter(browser, tmp_path):
    studio = HOLLOW
    trim = DESIGN.replace("190 mm", "7 1/2 in").replace("90 mm", "3 1/4 in")
    put(
        tmp_path,
        a__pad__yaml=trim.format(name="Oats"),
        studio__yaml=studio,
        fair__job__yaml="job: Fair\npads: {S: 20}\n",
    )
    text, pages, size = printed(browser, tmp_path)
    assert size == (612, 792)
    assert pages <= 3
    assert "Trim the pads" in text


def test_names_are_set_and_never_run(browser, tmp_path):
    name = HOSTILE.replace('"', "'")
    put(
        tmp_path,
        a__pad__yaml=DESIGN.format(name=json.dumps(name)),
        studio__yaml=TALLOW,
        fair__job__yaml="job: Fair\npads: {S: 2}\n",
    )
    assert padspec(tmp_path, "ticket", "fair.job.yaml").status == 0
    page = browser.open(tmp_path / "out/jobs/Fair/ticket.html")
    assert page.run("document.querySelector('.pads h3').textContent") == name
    assert page.run("document.scripts.length") == 0


def test_the_same_batch_gives_the_same_bytes(tmp_path):
    made = []
    for name in ("one", "two"):
        folder = tmp_path / name
        folder.mkdir()
        put(folder, a__pad__yaml=DESIGN.format(name="Moss"), studio__yaml=TALLOW)
        assert padspec(folder, "ticket", "--pads", "3").status == 0
        made.append({path.name: path.read_bytes() for path in sorted((folder / "out/jobs/Moss").iterdir())})
    assert made[0] == made[1]
    assert {"ticket.html", "ticket.json", "plan.json"} <= made[0].keys()


def test_a_ticket_of_designs_that_fail_is_withdrawn(tmp_path):
    put(tmp_path, a__pad__yaml=DESIGN.format(name="Moss"), studio__yaml=TALLOW)
    assert padspec(tmp_path, "ticket", "--pads", "3").status == 0
    put(tmp_path, a__pad__yaml=DESIGN.format(name="Moss") + 'rows: {colour: "#eeeeee", checkbox: none}\n')
    outcome = padspec(tmp_path, "ticket", "--pads", "3")
    assert outcome.status == 1
    assert "No ticket was written" in outcome.err
    assert not list((tmp_path / "out").rglob("ticket.*"))


def test_pages_that_are_planned_again_take_the_old_ticket_with_them(tmp_path):
    put(
        tmp_path,
        a__pad__yaml=DESIGN.format(name="Moss"),
        studio__yaml=TALLOW,
        fair__job__yaml="job: Fair\npads: {S: 2}\n",
    )
    assert padspec(tmp_path, "ticket", "fair.job.yaml").status == 0
    assert padspec(tmp_path, "build", "--plan", "fair.job.yaml").status == 0
    assert not (tmp_path / "out/jobs/Fair/ticket.html").exists()
