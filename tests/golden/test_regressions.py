"""The picture of what changed in a drawing."""

import subprocess
import sys
from io import BytesIO
from pathlib import Path

import numpy as np
import pytest
from PIL import Image
from regressions import LONGEST, comparison, difference, drawn, shown

RED = [214, 28, 36]
TESTS = Path(__file__).parents[1]


def square(x: int, side: int = 40) -> str:
    """A black square of 10 in a field of `side`, in mm."""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{side}mm" height="40mm" viewBox="0 0 {side} 40">'
        f'<path d="M{x} 10h10v10h-10z"/></svg>'
    )


def red(pixels: np.ndarray) -> np.ndarray:
    return (pixels == RED).all(axis=2)


def test_a_drawing_fills_its_panel() -> None:
    assert drawn(square(5)).shape == (LONGEST, LONGEST, 3)
    assert drawn(square(5, 80)).shape == (LONGEST // 2, LONGEST, 3)


def test_equal_drawings_show_no_red() -> None:
    assert not red(difference(drawn(square(5)), drawn(square(5)))).any()


def test_what_moved_is_red_where_it_was_and_where_it_is() -> None:
    found = red(difference(drawn(square(5)), drawn(square(20))))
    # 30 pixels to the millimetre: two squares of 300, from 150 and from 600, between 300 and 600 down.
    rows, columns = np.nonzero(found)
    assert found.sum() == pytest.approx(2 * 300 * 300, rel=0.01)
    assert (rows.min(), rows.max(), columns.min(), columns.max()) == pytest.approx((300, 599, 150, 899), abs=1)


def test_a_change_of_size_is_red_where_one_ends_early() -> None:
    small, large = np.full((10, 10, 3), 255, np.uint8), np.full((10, 14, 3), 255, np.uint8)
    for pair in ((small, large), (large, small)):
        found = red(difference(*pair))
        assert found[:, 10:].all()
        assert not found[:, :10].any()


def test_a_shade_of_two_is_not_a_change_and_of_three_is() -> None:
    plain = np.full((4, 4, 3), 100, np.uint8)
    assert not red(difference(plain, plain + 2)).any()
    assert red(difference(plain, plain + 3)).all()


def test_before_after_and_difference_stand_side_by_side() -> None:
    sheet = np.asarray(Image.open(BytesIO(comparison(square(5), square(20)))))
    panel = sheet[40 : 40 + LONGEST]
    before, after, changed = (panel[:, 24 + n * (LONGEST + 24) :][:, :LONGEST] for n in range(3))
    assert np.array_equal(before, drawn(square(5)))
    assert np.array_equal(after, drawn(square(20)))
    assert red(changed).any()


def test_the_picture_lies_in_the_folder_under_the_name_of_its_golden(tmp_path: Path) -> None:
    path = shown(tmp_path / "new", "layouts/week.svg", square(5), square(6))
    assert path == tmp_path / "new" / "week.png"
    assert path.read_bytes() == comparison(square(5), square(6))


def test_a_golden_that_differs_fails_with_the_path_of_its_picture(tmp_path: Path) -> None:
    # The fixtures that goldens use, in a folder of its own with one kept drawing.
    folder = tmp_path / "golden"
    (folder / "goldens").mkdir(parents=True)
    (folder / "goldens" / "a.svg").write_text(square(5))
    (folder / "test_it.py").write_text(
        f"def test_it(golden_drawing):\n    golden_drawing('a.svg', {square(20)!r})\n"
    )
    for name, source in (("conftest.py", TESTS / "conftest.py"), ("regressions.py", TESTS / "regressions.py")):
        (tmp_path / name).write_bytes(source.read_bytes())
    (folder / "conftest.py").write_bytes((TESTS / "golden" / "conftest.py").read_bytes())
    ran = subprocess.run(
        [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", f"--basetemp={tmp_path / 'made'}", "."],
        cwd=tmp_path,
        capture_output=True,
        text=True,
        check=False,
    )
    assert ran.returncode == 1, ran.stdout
    (picture,) = (tmp_path / "made").rglob("a.png")
    assert f"before, after, difference: {picture}" in ran.stdout
    assert picture.read_bytes() == comparison(square(5), square(20))
