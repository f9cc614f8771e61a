"""The settings of lettering: what they come to, and contradictions told where they stand."""

from kit import PLAIN, apply, pad, problems

from padspec.resolve.blocks.heading import Heading
from padspec.resolve.design import blocks


def heading(changes: dict[str, object], studio: str = "") -> Heading:
    found = [b for b in blocks(pad(apply(PLAIN, changes), studio).design) if isinstance(b, Heading)]
    return found[0]


def test_lettering_is_plain_until_it_is_told_otherwise() -> None:
    block = heading({})
    assert (block.fit, block.tracking, block.arc, block.edge, block.seat) == ("size", 0.0, 0.0, None, "head")


def test_tracking_is_counted_in_thousandths_of_the_em() -> None:
    assert heading({"heading.tracking": 60}).tracking == 0.06
    assert heading({"heading.tracking": -25}).tracking == -0.025


def test_the_most_size_is_twice_the_size_until_it_is_written() -> None:
    assert heading({"heading.size": "8 mm"}).most_size == 16.0
    assert heading({"heading.size": "8 mm", "heading.most-size": "11 mm"}).most_size == 11.0


def test_a_most_size_under_the_size_is_refused() -> None:
    (problem,) = problems(apply(PLAIN, {"heading.size": "8 mm", "heading.most-size": "7 mm"}))
    assert "The most size, 7 mm, is less than the size, 8 mm. Write 8 mm or more." in problem


def test_an_arc_holds_one_line() -> None:
    assert heading({"heading.arc": 60, "heading.text": "A long heading that would break"}).lines == 1
    (problem,) = problems(PLAIN + 'heading:\n  text: "Owls\\nand moths"\n  arc: 60\n')
    assert problem.startswith("x.pad.yaml:5:8 An arc holds 1 line, and the text has 2.")


def test_an_outline_has_its_own_colour() -> None:
    block = heading({"heading.outline": "0.6 mm", "heading.outline-colour": "#112233"})
    assert block.edge is not None
    assert (block.edge.width, block.edge.colour.hex) == (0.6, "#112233")


def test_an_outline_of_no_width_is_none() -> None:
    assert heading({"heading.outline": "0 mm"}).edge is None


def test_tracking_outside_its_bounds_is_refused() -> None:
    for value in (-101, 501):
        assert problems(apply(PLAIN, {"heading.tracking": value}))
