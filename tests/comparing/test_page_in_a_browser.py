"""The page of a comparison as a browser shows it: nobody is shut out, nothing is fetched, the slider fades."""

import pytest
from axe import violations
from browser import browsing

from .repository import compare, put, two_pads


@pytest.fixture(scope="module")
def page(tmp_path_factory):
    folder = two_pads(tmp_path_factory.mktemp("compared"))
    put(folder, moth__pad__yaml=(folder / "moth.pad.yaml").read_text().replace("text: Moths", "text: After dark"))
    assert compare(folder).status == 1
    with browsing() as browser:
        yield browser.open(folder / "out/compare/index.html")


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_nobody_is_shut_out(page, scheme):
    page.emulate(scheme)
    assert violations(page) == []


def test_every_picture_is_there_and_nothing_is_asked_of_any_network(page):
    assert page.run("[...document.images].every(one => one.complete && one.naturalWidth > 0)")
    assert all(address.startswith("file:") for address in page.requests)


def test_the_slider_fades_from_now_to_before(page):
    page.run("document.querySelector('input[type=range]').focus()")
    seen = "[...document.images].map(one => getComputedStyle(one).opacity).join()"
    now = page.run(seen)
    for _ in range(3):
        page.press("ArrowLeft")
    assert page.run("document.querySelector('input[type=range]').value") != "100"
    assert page.run(seen) != now
