"""A comparison as a commit message."""

from collections.abc import Callable

import pytest

from padspec.base.errors import Problem
from padspec.base.place import Place
from padspec.comparing.comparison import Compared, Comparison
from padspec.comparing.git import Commit
from padspec.comparing.message import message, subject
from padspec.comparing.together import called, shared
from padspec.comparing.told import Change

COMMIT = Commit("v1", "0123456789abcdef", "0123456", "The first")
PITCH = Change("rows", "pitch", "8 mm", "7 mm")
LEAVES = Change("", "leaves", "50", "60", "10 more")
TITLE = Change("heading", "text", "“Before dark”", "“After dark”")


def changed(sku: str, *changes: Change) -> Compared:
    return Compared(sku, f"{sku.title()} list", f"{sku.lower()}.pad.yaml", "changed", changes=changes)


def same(sku: str) -> Compared:
    return Compared(sku, f"{sku.title()} list", f"{sku.lower()}.pad.yaml", "same")


def of(*pads: Compared, title: str = "Night garden", note: str = "") -> Comparison:
    return Comparison(title, COMMIT, pads, note)


def test_the_subject_says_how_many_of_how_many_changed() -> None:
    assert subject(of(changed("MOTH", PITCH), same("OWL"), same("BAT"))) == "Night garden: 1 of 3 pads changed"


def test_the_subject_tells_what_came_and_went() -> None:
    new, gone = Compared("NEW", "New", "n", "added"), Compared("GONE", "Gone", "g", "removed")
    assert subject(of(changed("MOTH", PITCH), new, gone)) == (
        "Night garden: 1 of 3 pads changed, 1 new, 1 taken away"
    )


def test_a_single_pad_is_told_by_its_one_change() -> None:
    assert subject(of(changed("MOTH", PITCH))) == "Moth list: rows: pitch 8 mm → 7 mm"
    assert subject(of(changed("MOTH", PITCH, LEAVES))) == "Moth list: 2 changes"


def test_where_nothing_changed_it_says_so() -> None:
    assert message(of(same("MOTH"))) == "Night garden: nothing changed since v1\n"


def test_what_several_pads_share_is_told_once_and_the_rest_pad_by_pad() -> None:
    text = message(of(changed("MOTH", PITCH, TITLE), changed("OWL", PITCH), same("BAT")))
    assert text == (
        "Night garden: 2 of 3 pads changed\n\n"
        "In MOTH and OWL:\n- rows: pitch 8 mm → 7 mm\n\n"
        "MOTH, Moth list:\n- heading: text “Before dark” → “After dark”\n"
    )


def test_what_is_the_same_everywhere_is_told_of_all() -> None:
    text = message(of(*(changed(f"S{n}", LEAVES) for n in range(12))))
    assert text == "Night garden: all 12 pads changed\n\nIn all 12 pads:\n- leaves 50 → 60, 10 more\n"


def test_changes_that_hold_for_other_pads_stand_in_other_groups() -> None:
    groups = shared([changed("A", PITCH, LEAVES), changed("B", PITCH, LEAVES), changed("C", PITCH), same("D")])
    assert [(one.skus, one.sentences) for one in groups] == [
        (("A", "B", "C"), (PITCH.sentence,)),
        (("A", "B"), (LEAVES.sentence,)),
    ]


def variant(design: str, colour: str, ruling: str) -> Compared:
    values = (("colour", colour), ("ruling", ruling))
    return Compared(f"{design}--{colour}-{ruling}", design, "x", "changed", design, values, changes=(PITCH,))


VARIANTS = [
    variant(design, colour, ruling)
    for design in ("MOTH", "OWL", "BAT")
    for colour in ("dusk", "dawn")
    for ruling in ("wide", "narrow")
]


@pytest.mark.parametrize(
    ("meant", "said"),
    [
        (lambda _: True, "all 12 pads"),
        (lambda pad: pad.own_sku == "MOTH", "the 4 pads of MOTH"),
        (lambda pad: pad.own_sku != "OWL", "the 8 pads of MOTH and BAT"),
        (lambda pad: ("colour", "dusk") in pad.values, "the 6 pads with colour dusk"),
        (lambda pad: "dusk-wide" in pad.sku, "the 3 pads with colour dusk and ruling wide"),
        (lambda pad: "dusk" in pad.sku and pad.own_sku == "OWL", "the 2 pads of OWL with colour dusk"),
        (lambda pad: pad.sku in ("MOTH--dusk-wide", "OWL--dawn-narrow"), "MOTH--dusk-wide and OWL--dawn-narrow"),
        (
            lambda pad: pad.sku in ("MOTH--dusk-wide", "MOTH--dawn-wide", "OWL--dusk-wide"),
            "MOTH--dusk-wide, MOTH--dawn-wide and OWL--dusk-wide",
        ),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_pads_are_called_by_what_just_they_have_in_common(meant: Callable[[Compared], bool], said: str) -> None:
    assert called([pad for pad in VARIANTS if meant(pad)], VARIANTS) == said


def test_no_line_is_wider_than_a_log_shows() -> None:
    long = Change("heading", "text", "“" + "dark and " * 12 + "”", "“light”")
    text = message(of(changed("MOTH", long), same("B"), title="A very long name of a collection " * 3))
    # git log shows a message four columns in, on a screen of eighty: common practice, no published source.
    assert 60 < max(map(len, text.splitlines())) <= 72
    assert text.splitlines()[1] == ""
    assert all(line.startswith(("- ", "  ")) for line in text.splitlines()[3:])


def test_a_pad_that_cannot_be_read_now_is_told_with_why() -> None:
    problem = Problem(Place("moth.pad.yaml", 3, 1), "There is no key pich.", "Did you mean pitch?")
    text = message(of(Compared("MOTH", "Moth", "moth.pad.yaml", "unreadable", problems=(problem,)), same("OWL")))
    assert "1 of 2 pads unreadable" in text
    assert "moth.pad.yaml:3:1: There is no key pich." in text.replace("\n  ", " ")


def test_another_sku_is_told() -> None:
    pad = Compared(
        "NEW", "Moth list", "moth.pad.yaml", "changed", old_sku="OLD", untold="As of v1 it cannot be read."
    )
    assert "- its SKU was OLD\n- As of v1 it cannot be read.\n" in message(of(pad, same("B")))
