"""The schemas as such: right by their own standard, every key explained, every default and example right.

The metaschema is json-schema.org's of draft 2020-12, as the jsonschema package carries it.
"""

from collections.abc import Iterator
from typing import Any

import pytest
from jsonschema import Draft202012Validator
from referencing import Registry, Resource

from padspec.reading.checking.expectation import as_yaml
from padspec.reading.checking.schemas import KINDS, SCHEMAS, known_keys, opened, root, schema_data
from padspec.reading.defaults import node_from
from padspec.reading.parsing.yaml_reader import parse
from padspec.reading.tree import as_data

FILES = SCHEMAS
REGISTRY: Any = Registry().with_resources(
    (schema_data(f)["$id"], Resource.from_contents(schema_data(f))) for f in FILES
)


def sub_schemas(data: Any, path: str = "#") -> Iterator[tuple[str, dict[str, Any]]]:
    """Every schema object inside another with its JSON pointer."""
    yield path, data
    for word in ("properties", "$defs"):
        for key, inner in data.get(word, {}).items():
            yield from sub_schemas(inner, f"{path}/{word}/{key}")
    for index, inner in enumerate(data.get("anyOf", ())):
        yield from sub_schemas(inner, f"{path}/anyOf/{index}")
    for word in ("items", "additionalProperties"):
        if isinstance(data.get(word), dict):
            yield from sub_schemas(data[word], f"{path}/{word}")


ALL = [(file, path, data) for file in FILES for path, data in sub_schemas(schema_data(file))]
KEYS = [(file, path, data) for file, path, data in ALL if path.split("/")[-2:-1] == ["properties"]]


@pytest.mark.parametrize("file", FILES)
def test_a_schema_is_right_by_the_metaschema(file: str) -> None:
    Draft202012Validator.check_schema(schema_data(file))


@pytest.mark.parametrize("file", FILES)
def test_a_schema_is_identified_by_its_file_name(file: str) -> None:
    assert schema_data(file)["$id"] == f"{file}.schema.json"


@pytest.mark.parametrize(
    ("file", "data"), [(file, data) for file, _, data in KEYS], ids=[f"{f}{p}" for f, p, _ in KEYS]
)
def test_every_key_has_a_title_and_a_description(file: str, data: dict[str, Any]) -> None:
    schema = opened(file, data)
    assert schema.data["title"]
    assert len(schema.data["description"]) > 15


@pytest.mark.parametrize(
    ("file", "data"), [(file, data) for file, _, data in KEYS], ids=[f"{f}{p}" for f, p, _ in KEYS]
)
def test_every_key_has_a_worked_example(file: str, data: dict[str, Any]) -> None:
    schema = opened(file, data)
    assert "examples" in schema.data or "not" in schema.data


@pytest.mark.parametrize(("file", "path", "data"), ALL, ids=[f"{f}{p}" for f, p, _ in ALL])
def test_every_default_and_example_passes_its_own_schema(file: str, path: str, data: dict[str, Any]) -> None:
    validator = Draft202012Validator({"$ref": f"{file}.schema.json{path}"}, registry=REGISTRY)
    for value in [*data.get("examples", ()), *([data["default"]] if "default" in data else [])]:
        assert [error.message for error in validator.iter_errors(value)] == []


@pytest.mark.parametrize("data", [d for _, _, d in ALL], ids=[f"{f}{p}" for f, p, _ in ALL])
def test_every_mapping_says_which_keys_it_takes(data: dict[str, Any]) -> None:
    if data.get("type") == "object":
        assert "additionalProperties" in data
        assert data["additionalProperties"] is False or "propertyNames" in data


def test_every_example_can_be_written_as_yaml() -> None:
    for _, _, data in ALL:
        for value in data.get("examples", ()):
            written = parse(f"x: {as_yaml(value)}", "f").get("x")
            assert written is not None
            assert as_data(written) == as_data(node_from(value, written.place))


@pytest.mark.parametrize("kind", KINDS)
def test_every_example_of_a_whole_file_is_accepted_as_a_file(kind: Any) -> None:
    from padspec.reading.document import read

    for value in root(kind).data["examples"]:
        assert read(as_yaml(value), "f", kind).kind == kind


def test_keys_are_known_from_the_top_down() -> None:
    paths = [".".join(path) for path, _ in known_keys(root("design"))]
    assert paths.index("rows") < paths.index("rows.pitch")
    assert "ground.pattern.colour.from" in paths


def test_keywords_beside_a_reference_win() -> None:
    pitch = root("design").at(("rows", "pitch"))
    assert pitch is not None
    assert pitch.data["title"] == "Pitch"
    assert pitch.form == "length with its unit (mm, cm, in or pt)"
    assert pitch.data["format"] == "length"
