from padspec.base.place import Place
from padspec.reading.tree import Entry, Mapping, Scalar, Sequence, as_data

HERE = Place("f", 1, 1)
TREE = Mapping(
    (
        Entry("sku", HERE, Scalar("0012", HERE)),
        Entry("designs", HERE, Sequence((Scalar("a", HERE), Mapping((), HERE)), HERE)),
    ),
    HERE,
)


def test_get_gives_the_value_of_a_key() -> None:
    assert TREE.get("sku") == Scalar("0012", HERE)


def test_get_gives_none_for_an_absent_key() -> None:
    assert TREE.get("pad") is None


def test_entry_gives_key_and_value() -> None:
    assert TREE.entry("sku") == Entry("sku", HERE, Scalar("0012", HERE))


def test_keys_stand_in_the_order_written() -> None:
    assert TREE.keys == ("sku", "designs")


def test_as_data_leaves_scalars_text() -> None:
    assert as_data(TREE) == {"sku": "0012", "designs": ["a", {}]}


def test_only_an_empty_text_without_quotes_is_missing() -> None:
    assert Scalar("", HERE).is_missing
    assert not Scalar("", HERE, plain=False).is_missing
    assert not Scalar("~", HERE).is_missing
