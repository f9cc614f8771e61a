"""What every folder of tests shares: goldens, and the flag that renews them."""

from collections.abc import Callable

import pytest


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--renew-goldens", action="store_true", help="write goldens anew where they differ")


@pytest.fixture
def golden(request: pytest.FixtureRequest) -> Callable[[str, str], None]:
    """Compares a text with a file in the folder `goldens` beside the test; a run that renews one fails."""
    folder = request.path.parent / "goldens"

    def compare(name: str, text: str) -> None:
        file = folder / name
        kept = file.read_bytes().decode() if file.exists() else None
        if kept != text and request.config.getoption("--renew-goldens"):
            file.parent.mkdir(exist_ok=True)
            file.write_bytes(text.encode())
            pytest.fail(f"{name} renewed: look at the diff, then run again")
        assert text == kept, f"{name} differs; python -m pytest --renew-goldens writes it anew"

    return compare
