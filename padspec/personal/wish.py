"""What a collection asks of a personal run: which table, which pad, which texts."""

from dataclasses import dataclass

from padspec.base.errors import Problem, ProblemsError
from padspec.base.nearest import did_you_mean
from padspec.base.place import Place
from padspec.collection.axes import table_bytes
from padspec.collection.collection_file import Collection
from padspec.collection.targets import Target
from padspec.reading.fill import columns_in, filled_text, gaps_in, unknown_columns
from padspec.reading.rows import Row, Table, read_table
from padspec.reading.tree import Mapping, Scalar
from padspec.workspace import Workspace, joined

#: What has to be the same for every pad of a sheet, and so for every row.
_THE_SAME = ("trim", "sheet", "leaves", "limits", "allow")


@dataclass(frozen=True, slots=True)
class PersonalWish:
    """A personal run as its collection has it. `sku` names the pad, with {column} where each row names its own;
    empty where the collection makes but one. `key` is the column that tells rows apart, empty for none.
    """

    table: Table
    sku: str
    settings: Mapping
    key: str
    place: Place

    def sku_of(self, row: Row) -> str:
        """The SKU of the pad that a row is for."""
        return filled_text(self.sku, self.table.values(row))

    def key_of(self, row: Row) -> str:
        """What a row is known by: its key, or its number."""
        return self.table.values(row)[self.key] if self.key else str(row.number)


@dataclass(frozen=True, slots=True)
class PersonalPad:
    """One pad of a run: its target and SKU, and how many rows are for it."""

    target: Target
    sku: str
    rows: int


def read_wish(collection: Collection, workspace: Workspace) -> PersonalWish | None:
    """The personal run of a collection, None where it has none; ProblemsError with all that is wrong with it."""
    bundle = collection.personal
    if bundle is None:
        return None
    named, settings = bundle.get("table"), bundle.get("set")
    assert isinstance(named, Scalar)
    assert isinstance(settings, Mapping)
    table = read_table(table_bytes(named, collection.file, workspace), joined(collection.file, named.text))
    problems = [*unknown_columns(settings, table.columns)]
    for key in ("sku", "key"):
        problems += _unknown(bundle.get(key), key, table)
    for name in _THE_SAME:
        entry = settings.entry(name)
        if entry is not None and columns_in(entry.value):
            message = f"{name} has to be the same for every row: pads share sheets, and sheets share cuts."
            problems.append(Problem(entry.key_place, message, "Take {column} out of it, or make a variant of it."))
    if not columns_in(settings):
        mend = "Write a column's name in braces: heading: {text: \"{first}'s list\"}."
        problems.append(
            Problem(settings.place, "No {column} stands in set, so every pad would be the same.", mend)
        )
    if problems:
        raise ProblemsError(*problems)
    return PersonalWish(table, bundle.text("sku"), settings, bundle.text("key"), bundle.place)


def _unknown(node: object, key: str, table: Table) -> list[Problem]:
    if not isinstance(node, Scalar):
        return []
    names = (node.text,) if key == "key" else gaps_in(node.text)
    return [
        Problem(node.place, f"The table has no column {name}.", did_you_mean(name, table.columns))
        for name in names
        if name not in table.columns
    ]
