"""The axes along which the designs of a collection vary: values written out, or the rows of a table."""

from collections.abc import Iterator
from dataclasses import dataclass

from padspec.base.errors import Problem, ProblemsError
from padspec.base.nearest import did_you_mean
from padspec.base.place import Place
from padspec.reading.checking.settings_check import check_settings
from padspec.reading.tree import Mapping, Scalar, Sequence
from padspec.resolve.vary import over
from padspec.workspace import Workspace, joined

#: The keys under which patterns and exclusions know something else.
_TAKEN = ("sku", "name", "design")
#: A value's name has at most so many characters, as the schema says of those that are written out.
MOST_LETTERS = 60
#: So many faulty rows of a table are told.
_MOST_TOLD = 20


@dataclass(frozen=True, slots=True)
class Value:
    """One value of an axis and the settings that make it."""

    name: str
    settings: Mapping
    place: Place


@dataclass(frozen=True, slots=True)
class Axis:
    """What varies along it, and its values in the order written."""

    name: str
    values: tuple[Value, ...]
    place: Place


def read_axes(root: Mapping, file: str, workspace: Workspace, problems: list[Problem]) -> tuple[Axis, ...]:
    """The axes of a collection file; what is wrong with them is added to the problems."""
    listed = root.get("variants")
    items = listed.items if isinstance(listed, Sequence) else ()
    axes = [_axis(item, file, workspace, problems) for item in items if isinstance(item, Mapping)]
    problems += _name_clashes(axes)
    problems += _key_clashes(axes)
    return tuple(axes)


def merged(values: tuple[Value, ...]) -> Mapping:
    """The settings of one value of each axis together; axes never set the same key."""
    settings = values[0].settings
    for value in values[1:]:
        settings = over(settings, value.settings)
    return settings


def _axis(item: Mapping, file: str, workspace: Workspace, problems: list[Problem]) -> Axis:
    name = item.get("axis")
    place = name.place if isinstance(name, Scalar) else item.place
    written, table = item.get("values"), item.get("table")
    if (written is None) == (table is None):
        message = "An axis has values or a table, and this one has " + ("neither." if table is None else "both.")
        mend = "Leave one of them out."
        if table is None:
            mend = 'Write its values: values: {dusk: {}, frost: {palette: {ground: "#dfe9f2"}}}.'
        problems.append(Problem(place, message, mend))
        return Axis(item.text("axis"), (), place)
    if isinstance(written, Mapping):
        problems += _strays(item)
        values = tuple(
            Value(entry.key, entry.value, entry.key_place)
            for entry in written.entries
            if isinstance(entry.value, Mapping)
        )
        return Axis(item.text("axis"), values, place)
    try:
        return Axis(item.text("axis"), tuple(_rows(item, file, workspace)), place)
    except ProblemsError as error:
        problems += error.problems
        return Axis(item.text("axis"), (), place)


def _strays(item: Mapping) -> Iterator[Problem]:
    for key in ("key", "set"):
        entry = item.entry(key)
        if entry is not None:
            yield Problem(entry.key_place, f"{key} belongs to a table, and this axis has values.", "Leave it out.")


def _rows(item: Mapping, file: str, workspace: Workspace) -> Iterator[Value]:
    """One value for each row of the axis's table; raises ProblemsError with what is wrong in either."""
    # Imported only where an axis has a table: finding that nothing changed must stay quick.
    from padspec.reading.fill import filled_bundle, unknown_columns
    from padspec.reading.rows import read_table

    named, settings, key = item.get("table"), item.get("set"), item.get("key")
    if not isinstance(named, Scalar) or not isinstance(settings, Mapping) or not isinstance(key, Scalar):
        mend = 'Write both: key: town, set: {heading: {text: "Off to {town}"}}.'
        raise ProblemsError(Problem(item.place, "A table needs set, and key for the column of names.", mend))
    table = read_table(table_bytes(named, file, workspace), joined(file, named.text))
    problems = [*unknown_columns(settings, table.columns)]
    if key.text not in table.columns:
        message = f"The table has no column {key.text}."
        problems.append(Problem(key.place, message, did_you_mean(key.text, table.columns)))
    if problems:
        raise ProblemsError(*problems)
    first: dict[str, int] = {}
    for row in table:
        cells = table.values(row)
        value = Value(cells[key.text], filled_bundle(settings, cells), table.place(row))
        problems += _row_problems(value, key.text, first.setdefault(value.name, row.line))
        yield value
    if problems:
        raise ProblemsError(*problems[:_MOST_TOLD])


def _row_problems(value: Value, key: str, first: int) -> Iterator[Problem]:
    """What is wrong with one row: its name, and what its cells make of the settings."""
    if not value.name:
        yield Problem(value.place, f"This row has no {key} to be called by.", "Fill the cell.")
    elif len(value.name) > MOST_LETTERS:
        message = f"The {key} of this row has {len(value.name)} characters; at most {MOST_LETTERS} name a variant."
        yield Problem(value.place, message, "Shorten it, or take another column for key.")
    elif first != value.place.line:
        message = f"{value.name} stands twice under {key}; the first is on line {first}."
        yield Problem(value.place, message, "Give each row a name of its own.")
    for problem in check_settings(value.settings):
        yield Problem(value.place, f"{problem.message} That is what this row makes of set.", problem.mend)


def table_bytes(named: Scalar, file: str, workspace: Workspace) -> bytes:
    """The table that a collection file names; raises ProblemsError where there is none."""
    try:
        path = joined(file, named.text)
    except ValueError:
        message = f"{named.text} leads outside the project folder."
        mend = "Put the table into the folder and name it from there."
        raise ProblemsError(Problem(named.place, message, mend)) from None
    if not workspace.is_file(path):
        near = [name.rpartition("/")[2] for name in workspace.neighbours(path.rpartition("/")[0] or ".", ".csv")]
        mend = did_you_mean(named.text.rpartition("/")[2], near) if near else "Save it there as CSV in UTF-8."
        raise ProblemsError(Problem(named.place, f"There is no table {path}.", mend))
    return workspace.read(path)


def _name_clashes(axes: list[Axis]) -> Iterator[Problem]:
    """Axes that share a name, and names that mean something else."""
    first: dict[str, Axis] = {}
    for axis in axes:
        other = first.setdefault(axis.name.casefold(), axis)
        if other is not axis:
            message = f"The axis {axis.name} stands twice; the first is on line {other.place.line}."
            yield Problem(axis.place, message, "Give one of them another name, or put their values together.")
        elif axis.name.casefold() in _TAKEN:
            message = f"An axis cannot be called {axis.name}: that word means the design's own."
            yield Problem(axis.place, message, "Call it by what varies: colourway, ruling, wording.")


def _key_clashes(axes: list[Axis]) -> Iterator[Problem]:
    """Keys that two axes set: which of them holds would hang on their order."""
    first: dict[tuple[str, ...], tuple[Axis, Place]] = {}
    for axis in axes:
        mine = _paths_of(axis)
        for path, place in mine.items():
            other = next((key for key in first if key == path[: len(key)] or path == key[: len(path)]), None)
            if other is not None:
                yield _clash(max(path, other, key=len), axis, place, *first[other])
        for path, place in mine.items():
            first.setdefault(path, (axis, place))


def _paths_of(axis: Axis) -> dict[tuple[str, ...], Place]:
    """Every key that a value of the axis sets, as a path, with the first place where it does."""
    found: dict[tuple[str, ...], Place] = {}
    for value in axis.values:
        for path, place in _leaves(value.settings, ()):
            found.setdefault(path, place)
    return found


def _leaves(bundle: Mapping, above: tuple[str, ...]) -> Iterator[tuple[tuple[str, ...], Place]]:
    for entry in bundle.entries:
        path = (*above, entry.key)
        # A colour of the palette is one value, however it is mixed.
        if isinstance(entry.value, Mapping) and above != ("palette",):
            yield from _leaves(entry.value, path)
        else:
            yield path, entry.key_place


def _clash(path: tuple[str, ...], axis: Axis, place: Place, other: Axis, there: Place) -> Problem:
    key = ".".join(path)
    message = f"The axes {other.name} and {axis.name} both set {key}; {other.name} does on line {there.line}."
    return Problem(place, message, "Let one axis set it, or make one axis of both.")
