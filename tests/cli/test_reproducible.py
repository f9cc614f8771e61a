"""The same folder gives the same bytes: elsewhere on the disk, in another time zone, locale and hash seed."""

import subprocess

import pytest
from kit import PLAIN, apply, picture

from .command import padspec_process, put, written

DESIGN = apply(
    PLAIN,
    {
        "pad": "Nächtliche Liste",
        "art.file": "moth.png",
        "ground.pattern": {"kind": "dots", "colour": {"from": "art", "rank": 1, "lighten": "60 %"}},
        "heading.text": "Before dark",
    },
)
STUDIO = "studio: Umberwick Paper\nsheet: {size: letter}\n"


def built(folder, *args: str, **surroundings: str) -> dict[str, bytes]:
    folder.mkdir(parents=True, exist_ok=True)
    put(folder, night__pad__yaml=DESIGN, studio__yaml=STUDIO, moth__png=picture(1400, 1200))
    outcome = padspec_process(folder, "build", *args, **surroundings)
    assert outcome.status == 0, outcome
    # Stamps are those of this disk: they only save work.
    return {name: data for name, data in written(folder / "out").items() if name != ".cache/stamps.json"}


@pytest.fixture(scope="module")
def here(tmp_path_factory):
    return built(tmp_path_factory.mktemp("here"), PYTHONHASHSEED="1", SOURCE_DATE_EPOCH="")


def differing(one: dict[str, bytes], other: dict[str, bytes]) -> list[str]:
    return sorted(name for name in one.keys() | other.keys() if one.get(name) != other.get(name))


def test_another_folder_hash_seed_time_zone_and_locale_change_nothing(here, tmp_path):
    """The record of the build is among the files compared."""
    deeper = tmp_path / "a folder with spaces" / "Käuze"
    elsewhere = built(
        deeper,
        PYTHONHASHSEED="4711",
        TZ="Pacific/Chatham",
        LC_ALL="tr_TR.UTF-8",
        LANG="de_DE",
        SOURCE_DATE_EPOCH="",
    )
    assert len(here) >= 7
    assert differing(here, elsewhere) == []


def test_building_again_over_what_is_there_changes_nothing(here, tmp_path):
    built(tmp_path)
    assert differing(here, built(tmp_path, "--again", SOURCE_DATE_EPOCH="")) == []


def test_no_path_of_this_machine_is_in_what_is_written(here, tmp_path):
    home = str(tmp_path.parent.parent).encode()
    assert [name for name, data in here.items() if home in data] == []


def test_the_day_comes_from_source_date_epoch(here, tmp_path):
    """86,400 × 18,000 s after 1970 is 2019-04-14; see reproducible-builds.org for the variable."""
    dated = built(tmp_path, SOURCE_DATE_EPOCH=str(86_400 * 18_000))
    said = subprocess.run(
        ["pdfinfo", "-isodates", tmp_path / "out/night/sheet.pdf"], capture_output=True, text=True, check=True
    )
    assert "2019-04-14T00:00:00" in said.stdout
    assert "night/sheet.pdf" in differing(here, dated)


def test_another_source_date_epoch_is_not_taken_for_unchanged(tmp_path):
    first = built(tmp_path, SOURCE_DATE_EPOCH="0")
    second = built(tmp_path, SOURCE_DATE_EPOCH=str(86_400 * 18_000))
    assert "night/sheet.pdf" in differing(first, second)


def test_without_it_the_day_is_that_of_the_design(tmp_path):
    folder = tmp_path / "dated"
    folder.mkdir()
    put(folder, x__pad__yaml=PLAIN + "date: 2024-02-29\n")
    assert padspec_process(folder, "build", "--no-proofs", SOURCE_DATE_EPOCH="").status == 0
    said = subprocess.run(
        ["pdfinfo", "-isodates", folder / "out/x/sheet.pdf"], capture_output=True, text=True, check=True
    )
    assert "2024-02-29T00:00:00" in said.stdout
