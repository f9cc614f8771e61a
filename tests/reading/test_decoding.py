import pytest

from padspec.base.errors import ProblemsError
from padspec.base.place import Place
from padspec.reading.parsing.yaml_reader import decode


def test_utf8_is_decoded() -> None:
    assert decode("pad: Glühwürmchen".encode(), "f") == "pad: Glühwürmchen"


def test_a_byte_order_mark_is_dropped() -> None:
    assert decode(b"\xef\xbb\xbfpad: x", "f") == "pad: x"


def test_a_byte_that_is_not_utf8_is_told_with_its_place() -> None:
    with pytest.raises(ProblemsError) as caught:
        decode("pad: x\nsku: ä".encode() + b"\xe4b", "f")
    (problem,) = caught.value.problems
    assert problem.place == Place("f", 2, 7)
    assert "0xe4" in problem.message


def test_a_file_of_exactly_one_mebibyte_is_read() -> None:
    assert len(decode(b"a" * 1048576, "f")) == 1048576


def test_a_larger_file_is_refused_before_it_is_decoded() -> None:
    with pytest.raises(ProblemsError, match="1048576"):
        decode(b"\xff" * 1048577, "f")
