"""The browser and the judge of accessibility that other tests lean on can both say no."""

import pytest
from axe import violations
from browser import browsing

PAGE = "<!doctype html><html lang=en><title>A page</title><main><h1>A page</h1>{body}</main>"


@pytest.fixture(scope="module")
def browser():
    with browsing() as found:
        yield found


def page(browser, tmp_path, body: str):
    file = tmp_path / "page.html"
    file.write_text(PAGE.format(body=body))
    return browser.open(file)


def test_scripts_keys_and_media(browser, tmp_path):
    made = page(browser, tmp_path, "<button onclick='this.textContent += 1'>a</button>")
    assert made.run("Promise.resolve(1 + 1)") == 2
    made.press("Tab")
    made.press("Enter")
    assert made.run("document.activeElement.textContent") == "a1"
    made.emulate("dark")
    assert made.run("matchMedia('(prefers-color-scheme: dark)').matches")


def test_every_request_is_seen(browser, tmp_path):
    made = page(browser, tmp_path, "<img src='https://nowhere.invalid/x.png' alt=''>")
    assert "https://nowhere.invalid/x.png" in made.requests


def test_a_page_that_shuts_people_out_is_told(browser, tmp_path):
    bad = page(browser, tmp_path, "<img src='x.png'><p style='color:#ccc'>faint</p>")
    assert {told.split(":")[0] for told in violations(bad)} >= {"image-alt", "color-contrast"}
    assert violations(page(browser, tmp_path, "<p>plain</p>")) == []
