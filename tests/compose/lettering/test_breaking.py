"""Line breaks by the Unicode Line Breaking Algorithm (UAX #14); the rule is named beside each case."""

import pytest

from padspec.compose.lettering.breaking import broken

from .fonts import shelved


def lines(text: str, count: int = 4) -> tuple[str, ...]:
    return broken(shelved("Nunito"), text, count)


def test_a_compound_alone_breaks_after_its_hyphen() -> None:
    """LB21: after a hyphen, not before it."""
    assert lines("Sonntagnachmittags-Kuchentafel", 2) == ("Sonntagnachmittags-", "Kuchentafel")


def test_a_compound_among_words_is_kept_together() -> None:
    assert lines("a well-known list", 3) == ("a", "well-known", "list")


def test_a_line_does_not_begin_with_a_closing_mark() -> None:
    """LB13: no break before closing punctuation and exclamation marks."""
    found = lines("\u9b5a\u3001\u8089\u3001\u91ce\u83dc\uff01\u679c\u7269", 4)
    assert len(found) > 2
    assert not any(line[0] in "\u3001\uff01" for line in found)


def test_a_line_does_not_end_with_an_opening_mark() -> None:
    """LB14: no break after opening punctuation."""
    found = lines("\u591c\uff08\u8cb7\u3044\u7269\uff09\u671d", 4)
    assert len(found) > 2
    assert not any(line.endswith("\uff08") for line in found)


@pytest.mark.parametrize("glue", ["\u00a0", "\u202f", "\u2060"])
def test_what_glues_words_holds_them_on_one_line(glue: str) -> None:
    """LB11 and LB12: no break at a word joiner or a no-break space."""
    assert f"7{glue}kg" in " ".join(lines(f"flour é 7{glue}kg", 3)).split(" ")


def test_a_fraction_of_numbers_is_not_torn() -> None:
    """LB25: no break inside a number with its signs."""
    assert lines("$(12.35)é", 3) == ("$(12.35)é",)


def test_tracked_words_are_measured_with_their_air() -> None:
    plain, tracked = lines("a bc def gh i", 2), broken(shelved("Nunito"), "a bc def gh i", 2, 0.5)
    assert " ".join(plain) == " ".join(tracked) == "a bc def gh i"
