"""A press PDF as qpdf's JSON and content streams tell it: a reader that shares no code with this repository.

The library that writes the files stands on the same qpdf, but here the program parses the finished bytes.
"""

import json
import re
import subprocess
from collections.abc import Iterator
from pathlib import Path
from typing import Any

Value = Any


class PressFile:
    """One file read back: trailer, catalogue, pages and streams as plain JSON values, references followed."""

    def __init__(self, path: Path) -> None:
        said = subprocess.run(
            ["qpdf", "--json=2", "--json-key=qpdf", path], capture_output=True, text=True, check=True
        ).stdout
        self.path = path
        self._objects: dict[str, Value] = json.loads(said)["qpdf"][1]
        self.trailer: Value = self._objects["trailer"]["value"]

    def follow(self, value: Value) -> Value:
        """The value itself, or the dictionary or value that a reference names."""
        if not (isinstance(value, str) and re.fullmatch(r"\d+ \d+ R", value)):
            return value
        held = self._objects[f"obj:{value}"]
        return held["stream"]["dict"] if "stream" in held else held["value"]

    @property
    def catalogue(self) -> Value:
        return self.follow(self.trailer["/Root"])

    @property
    def info(self) -> Value:
        return self.follow(self.trailer["/Info"])

    @property
    def pages(self) -> list[Value]:
        return [self.follow(kid) for kid in self.follow(self.catalogue["/Pages"])["/Kids"]]

    def dictionaries(self) -> Iterator[tuple[str, Value]]:
        """Every object that is a dictionary or has one, with its number."""
        for name, held in self._objects.items():
            value = held["stream"]["dict"] if "stream" in held else held.get("value")
            if isinstance(value, dict) and name != "trailer":
                yield name.removeprefix("obj:"), value

    def values(self) -> Iterator[Value]:
        """Every value in the file, however deep."""

        def opened(value: Value) -> Iterator[Value]:
            yield value
            for inner in value.values() if isinstance(value, dict) else value if isinstance(value, list) else ():
                yield from opened(inner)

        for _, value in self.dictionaries():
            yield from opened(value)

    def all_keys(self) -> set[str]:
        """Every key of every dictionary."""
        return {key for value in self.values() if isinstance(value, dict) for key in value}

    def data(self, reference: str) -> bytes:
        """The content of a stream, its filters undone."""
        number = reference.split()[0]
        return subprocess.run(
            ["qpdf", f"--show-object={number}", "--filtered-stream-data", self.path],
            capture_output=True,
            check=True,
        ).stdout

    def contents(self) -> Iterator[list[str]]:
        """The words of each content stream: of pages and of forms."""
        for number, value in self.dictionaries():
            if value.get("/Subtype") == "/Form":
                yield self.data(number).decode("ascii").split()
            if value.get("/Type") == "/Page":
                yield self.data(value["/Contents"]).decode("ascii").split()

    def operators(self) -> set[str]:
        """Every operator that any content stream uses; a word that is no number and no name."""
        words = {word for content in self.contents() for word in content}
        return {word for word in words if not re.fullmatch(r"[-+]?[\d.]+|/.*", word)}

    def resources(self) -> Iterator[Value]:
        """The resources of every page and form."""
        for _, value in self.dictionaries():
            if "/Resources" in value:
                yield self.follow(value["/Resources"])

    @property
    def packet(self) -> str:
        return self.data(self.catalogue["/Metadata"]).decode("utf-8")
