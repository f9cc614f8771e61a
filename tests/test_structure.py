"""The shape of the code itself: small, told, frozen, and with imports that run one way."""

import ast
import importlib
import pkgutil
import subprocess
import sys
from dataclasses import is_dataclass
from pathlib import Path
from types import ModuleType

import pytest
import yaml

import padspec
from padspec import resources

ROOT = Path(padspec.__file__).parent
FILES = sorted(ROOT.rglob("*.py"))
MOST_LINES_OF_A_FUNCTION, MOST_LINES_OF_A_MODULE = 55, 350


def modules() -> list[ModuleType]:
    names = [found.name for found in pkgutil.walk_packages([str(ROOT)], "padspec.")]
    return [importlib.import_module(name) for name in names if not name.endswith("__main__")]


def in_repository(file: Path) -> str:
    return file.relative_to(ROOT.parent).as_posix()


def functions(file: Path) -> list[ast.FunctionDef | ast.AsyncFunctionDef]:
    tree = ast.parse(file.read_text("utf-8"))
    return [node for node in ast.walk(tree) if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)]


def test_the_walk_finds_the_package() -> None:
    assert len(FILES) > 80
    assert len(modules()) > 80


def test_every_dataclass_is_frozen_and_slotted() -> None:
    loose = []
    for module in modules():
        for value in vars(module).values():
            if isinstance(value, type) and is_dataclass(value) and value.__module__ == module.__name__:
                frozen, slotted = value.__dataclass_params__.frozen, "__slots__" in vars(value)
                loose += [] if frozen and slotted else [f"{module.__name__}.{value.__name__}"]
    assert not loose


@pytest.mark.parametrize("file", FILES, ids=in_repository)
def test_a_module_says_what_it_is_for_and_needs_no_table_of_contents(file: Path) -> None:
    text = file.read_text("utf-8")
    assert ast.get_docstring(ast.parse(text)), "no docstring"
    assert len(text.splitlines()) <= MOST_LINES_OF_A_MODULE


@pytest.mark.parametrize("file", FILES, ids=in_repository)
def test_no_function_needs_scrolling(file: Path) -> None:
    long = {
        node.name: node.end_lineno - node.lineno + 1
        for node in functions(file)
        if node.end_lineno - node.lineno + 1 > MOST_LINES_OF_A_FUNCTION
    }
    assert not long


def test_every_built_in_layout_reads_and_is_called_what_its_file_is() -> None:
    from padspec.reading.document import read
    from padspec.reading.tree import as_data

    assert set(resources.layout_names()) >= {"checklist", "ruled"}
    for name in resources.layout_names():
        text = resources.layout_text(name)
        assert yaml.safe_load(text)["layout"] == name
        assert as_data(read(text, f"layouts/{name}.yaml", "layout").root)["layout"] == name


def test_imports_run_one_way() -> None:
    linter = Path(sys.executable).with_name("lint-imports")
    ran = subprocess.run([linter, "--no-cache"], cwd=ROOT.parent, capture_output=True, text=True, check=False)
    assert ran.returncode == 0, ran.stdout


def test_importing_the_pipeline_leaves_the_heavy_libraries_alone() -> None:
    # Each costs 50 to 360 ms; they are imported where they are used.
    heavy = ("cairosvg", "colormath", "fontTools", "jsonschema", "pypdfium2", "scipy", "uharfbuzz")
    code = f"import sys, padspec.pipeline; print([name for name in {heavy} if name in sys.modules])"
    ran = subprocess.run([sys.executable, "-c", code], cwd=ROOT.parent, capture_output=True, text=True, check=True)
    assert ran.stdout.strip() == "[]"
