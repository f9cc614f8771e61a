"""Write what is generated: the blocks in the schema of layouts, schemas/README.md, the tables in README.md.

Run it after a change of schemas, checks or commands; with --check it only says whether they are up to date.
"""

import inspect
import sys
from pathlib import Path

from layout_schema import layout_schema

from padspec.checks.check import limits_for
from padspec.checks.table import CHECKS
from padspec.cli.main import COMMANDS
from padspec.reading.describe import describe, headwords
from padspec.reading.describe_layout import layout_summaries

ROOT = Path(__file__).resolve().parent.parent


def checks_table() -> str:
    """One line a check: its first sentence and its limits."""
    rows = ["| check | asks | default limit |", "|---|---|---|"]
    for check in CHECKS:
        first = inspect.cleandoc(check.run.__doc__ or "").split("\n\n")[0].replace("\n", " ").split("?")[0] + "?"
        limits = ", ".join(f"{level.severity.word} {level.text}" for level in limits_for(check, ()).levels)
        rows.append(f"| `{check.name}` | {first} | {limits or 'see `padspec explain`'} |")
    return "\n".join(rows)


def commands_table() -> str:
    """One line a command."""
    rows = ["| command | what it does |", "|---|---|"]
    rows += [f"| `padspec {name}` | {line} |" for name, (_, line) in COMMANDS.items()]
    return "\n".join(rows)


def layouts_table() -> str:
    """One line a built-in layout."""
    rows = ["| layout | what it is | made for |", "|---|---|---|"]
    for layout in layout_summaries():
        trims = ", ".join(f"{width} × {height}" for width, height in layout.trims)
        rows.append(f"| `{layout.name}` | {layout.about} | {trims} |")
    return "\n".join(rows)


def schema_reference() -> str:
    """Every key that can be explained, as `padspec explain` explains it."""
    parts = [
        "# Every key of the files a maker writes",
        "",
        "Generated from the JSON Schemas in this folder; `padspec explain KEY` prints the same.",
    ]
    for word in headwords():
        parts += ["", f"## {word}", "", "```", (describe(word) or "").rstrip(), "```"]
    return "\n".join(parts) + "\n"


def between(text: str, name: str, content: str) -> str:
    """The text with what stands between two markers replaced."""
    start, end = f"<!-- generated: {name} -->", f"<!-- end of generated: {name} -->"
    head, _, rest = text.partition(start)
    _, _, tail = rest.partition(end)
    return f"{head}{start}\n{content}\n{end}{tail}"


def _renewed(readme: str) -> str:
    tables = {"layouts": layouts_table(), "checks": checks_table(), "commands": commands_table()}
    for name, content in tables.items():
        readme = between(readme, name, content)
    return readme


def main() -> int:
    """Write or check; the exit status is 1 where something is out of date."""
    readme, layouts = ROOT / "README.md", ROOT / "schemas" / "layout.schema.json"
    wanted = {
        layouts: layout_schema(layouts),
        readme: _renewed(readme.read_text("utf-8")),
        ROOT / "schemas" / "README.md": schema_reference(),
    }
    stale = [path for path, text in wanted.items() if not path.exists() or path.read_text("utf-8") != text]
    if "--check" in sys.argv:
        for path in stale:
            print(f"{path.relative_to(ROOT)} is out of date: run python .ci/reference.py")
        return int(bool(stale))
    for path in stale:
        path.write_text(wanted[path], "utf-8")
        print(f"renewed {path.relative_to(ROOT)}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
