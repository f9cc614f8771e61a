"""Sheet sizes against the published standards."""

import pytest

from padspec.base.geometry import Size
from padspec.base.paper import sheet_names, sheet_size

# ISO 216:2007, table of trimmed sizes, in mm.
ISO_A = ("841×1189", "594×841", "420×594", "297×420", "210×297", "148×210", "105×148", "74×105", "52×74",
         "37×52", "26×37")  # fmt: skip
ISO_B = ("1000×1414", "707×1000", "500×707", "353×500", "250×353", "176×250", "125×176", "88×125", "62×88",
         "44×62", "31×44")  # fmt: skip
# JIS P 0138, B series, in mm (the standard itself not opened: B0 of 1.5 m², halved and rounded down).
JIS_B = ("1030×1456", "728×1030", "515×728", "364×515", "257×364", "182×257", "128×182", "91×128", "64×91",
         "45×64", "32×45")  # fmt: skip


@pytest.mark.parametrize(("series", "table"), [("A", ISO_A), ("B", ISO_B), ("JIS B", JIS_B)])
def test_a_metric_series_is_its_published_table(series: str, table: tuple[str, ...]) -> None:
    sizes = [sheet_size(f"{series}{n}")[1] for n in range(11)]
    assert tuple(f"{size.width:g}×{size.height:g}" for size in sizes) == table


@pytest.mark.parametrize(
    ("name", "points"),
    [
        ("letter", (612, 792)),  # ANSI/ASME Y14.1, size A: 8.5 × 11 in
        ("tabloid", (792, 1224)),  # ANSI/ASME Y14.1, size B: 11 × 17 in
        ("ledger", (792, 1224)),  # the same sheet, upright as it is fed
        ("legal", (612, 1008)),  # common practice: 8.5 × 14 in
        ("half-letter", (396, 612)),  # common practice: 5.5 × 8.5 in
    ],
)
def test_an_inch_size_is_whole_points(name: str, points: tuple[int, int]) -> None:
    size = sheet_size(name)[1]
    assert (size.width * 72 / 25.4, size.height * 72 / 25.4) == pytest.approx(points, abs=1e-9)


@pytest.mark.parametrize("name", ["a4", "A4", " a4 ", "A 4"])
def test_a_name_is_read_in_any_case(name: str) -> None:
    assert sheet_size(name) == ("A4", Size(210, 297))


@pytest.mark.parametrize("name", ["jis b5", "JISB5", "JIS B5", "jis b 5"])
def test_the_japanese_b_series_is_told_from_the_iso_one(name: str) -> None:
    assert sheet_size(name) == ("JIS B5", Size(182, 257))
    assert sheet_size("B5") == ("B5", Size(176, 250))


def test_every_listed_name_is_a_size_that_stands_upright() -> None:
    assert len(sheet_names()) == 38
    for name in sheet_names():
        tidy, size = sheet_size(name)
        assert tidy == name
        assert 0 < size.width < size.height


@pytest.mark.parametrize(
    ("name", "mend"),
    [("leter", "Did you mean letter?"), ("a44", "Did you mean A4?"), ("quarto", "Known here: A0, ")],
)
def test_an_unknown_name_is_refused_with_the_nearest(name: str, mend: str) -> None:
    with pytest.raises(KeyError) as caught:
        sheet_size(name)
    assert str(caught.value.args[0]).startswith(mend)


@pytest.mark.parametrize("name", ["A11", "A-1", "C4", ""])
def test_a_size_outside_the_series_is_not_made_up(name: str) -> None:
    with pytest.raises(KeyError):
        sheet_size(name)
