"""Goldens that are drawings: where one differs, the failure names a picture of before, after and difference."""

from collections.abc import Callable
from pathlib import Path

import pytest
from regressions import shown


@pytest.fixture
def golden_drawing(
    request: pytest.FixtureRequest, golden: Callable[[str, str], None], tmp_path_factory: pytest.TempPathFactory
) -> Callable[[str, str], None]:
    """As `golden`, for the text of an SVG."""

    def compare(name: str, text: str) -> None:
        file: Path = request.path.parent / "goldens" / name
        kept = file.read_bytes().decode() if file.exists() else None
        path = None
        if kept is not None and kept != text:
            path = shown(tmp_path_factory.mktemp("regressions"), name, kept, text)
            # Told aloud as well, for the run that renews it ends before anything else is said.
            print(f"before, after, difference: {path}")
        try:
            golden(name, text)
        except AssertionError as error:
            # The texts themselves would hide what matters; git shows their diff.
            summary = str(error).partition("\n")[0]
            raise AssertionError(f"{summary}\nbefore, after, difference: {path}") from None

    return compare
