"""A browser for tests: the system's headless Chromium, spoken to through a pipe by its DevTools protocol.

Nothing is downloaded and no driver is needed. `Page.requests` holds every address that a page asked for.
"""

import base64
import json
import os
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

FLAGS = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--remote-debugging-pipe",
)
_NAMES = ("chromium", "chromium-browser", "google-chrome")


class Browser:
    """A running browser with an empty profile."""

    def __init__(self, profile: Path) -> None:
        name = next((found for found in map(shutil.which, _NAMES) if found), None)
        assert name, f"a browser is needed: install one of {', '.join(_NAMES)}"
        theirs_in, mine_out = os.pipe()
        mine_in, theirs_out = os.pipe()

        def as_three_and_four() -> None:
            # Chromium reads from 3 and writes to 4; either may be one of the ends just made.
            one, other = os.dup(theirs_in), os.dup(theirs_out)
            os.dup2(one, 3)
            os.dup2(other, 4)

        self._process = subprocess.Popen(
            [name, *FLAGS, f"--user-data-dir={profile}", "about:blank"],
            pass_fds=(3, 4),
            preexec_fn=as_three_and_four,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        os.close(theirs_in)
        os.close(theirs_out)
        self._to, self._from = os.fdopen(mine_out, "wb", 0), os.fdopen(mine_in, "rb", 0)
        self._number, self._buffer = 0, b""
        self.events: list[dict[str, Any]] = []

    def call(self, method: str, session: str | None = None, **parameters: Any) -> Any:
        """One command and its result; what happens meanwhile goes to `events`."""
        self._number += 1
        number = self._number
        message = {"id": number, "method": method, "params": parameters}
        self._to.write(json.dumps(message | ({"sessionId": session} if session else {})).encode() + b"\0")
        while True:
            told = self._next()
            if told.get("id") == number:
                assert "error" not in told, told
                return told["result"]
            self.events.append(told)

    def wait_for(self, method: str, session: str) -> dict[str, Any]:
        """The next event of a kind."""
        while True:
            for at, event in enumerate(self.events):
                if event.get("method") == method and event.get("sessionId") == session:
                    return self.events.pop(at)["params"]
            self.events.append(self._next())

    def _next(self) -> dict[str, Any]:
        while b"\0" not in self._buffer:
            data = self._from.read(1 << 16)
            assert data, "the browser has ended"
            self._buffer += data
        line, _, self._buffer = self._buffer.partition(b"\0")
        return json.loads(line)

    def open(self, path: Path | str, width: int = 1200, height: int = 900) -> "Page":
        """A page of its own at a file or an address, loaded."""
        target = self.call("Target.createTarget", url="about:blank")["targetId"]
        session = self.call("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]
        page = Page(self, session)
        for domain in ("Page", "Runtime", "Network"):
            page.call(f"{domain}.enable")
        page.call(
            "Emulation.setDeviceMetricsOverride", width=width, height=height, deviceScaleFactor=1, mobile=False
        )
        page.go(path)
        return page

    def close(self) -> None:
        """End it."""
        self._process.kill()
        self._process.wait()
        self._to.close()
        self._from.close()


class Page:
    """One page of a browser."""

    def __init__(self, browser: Browser, session: str) -> None:
        self._browser, self._session = browser, session

    def call(self, method: str, **parameters: Any) -> Any:
        return self._browser.call(method, self._session, **parameters)

    def go(self, path: Path | str) -> None:
        """Load a file or an address."""
        self.call("Page.navigate", url=path.as_uri() if isinstance(path, Path) else path)
        self._browser.wait_for("Page.loadEventFired", self._session)

    def run(self, script: str) -> Any:
        """What a JavaScript expression comes to, promises awaited."""
        told = self.call("Runtime.evaluate", expression=script, awaitPromise=True, returnByValue=True)
        assert "exceptionDetails" not in told, told["exceptionDetails"]
        return told["result"].get("value")

    def press(self, key: str, text: str = "") -> None:
        """A key as a person presses it, such as Tab, Enter or a letter."""
        codes = {"Tab": 9, "Enter": 13, " ": 32, "Escape": 27, "ArrowLeft": 37, "ArrowRight": 39}
        code = codes.get(key, ord(key[0].upper()))
        text = text or {"Enter": "\r", " ": " "}.get(key, key if len(key) == 1 else "")
        down = {"type": "keyDown", "key": key, "windowsVirtualKeyCode": code}
        self.call("Input.dispatchKeyEvent", **(down | ({"text": text} if text else {})))
        self.call("Input.dispatchKeyEvent", type="keyUp", key=key, windowsVirtualKeyCode=code)

    def emulate(self, scheme: str = "light", media: str = "") -> None:
        """As a reader with this scheme of colours, or on paper (`media` print), would see it."""
        features = [{"name": "prefers-color-scheme", "value": scheme}]
        self.call("Emulation.setEmulatedMedia", media=media, features=features)

    def pdf(self) -> bytes:
        """The page as it is printed."""
        told = self.call("Page.printToPDF", preferCSSPageSize=False, printBackground=True)
        return base64.b64decode(told["data"])

    def png(self) -> bytes:
        """The page as it is seen."""
        return base64.b64decode(self.call("Page.captureScreenshot")["data"])

    @property
    def requests(self) -> list[str]:
        """Every address that was asked for so far."""
        return [
            event["params"]["request"]["url"]
            for event in self._browser.events
            if event.get("method") == "Network.requestWillBeSent" and event.get("sessionId") == self._session
        ]


@contextmanager
def browsing() -> Iterator[Browser]:
    """A browser for some tests."""
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile:
        browser = Browser(Path(profile))
        try:
            yield browser
        finally:
            browser.close()
