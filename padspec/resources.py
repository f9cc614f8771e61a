"""The one place that knows where the schemas and the built-in layouts are installed."""

from importlib.resources import files


def schema_text(name: str) -> str:
    """The text of one schema, by its stem: studio, design, layout, collection or common."""
    return files("padspec.schemas").joinpath(f"{name}.schema.json").read_text("utf-8")


def schema_folder() -> str:
    """Where the schemas are installed, for an editor to be pointed at."""
    return str(files("padspec.schemas"))


def layout_text(name: str) -> str:
    """The text of a built-in layout; raises FileNotFoundError where there is none of that name."""
    return files("padspec.layouts").joinpath(f"{name}.yaml").read_text("utf-8")


def layout_names() -> tuple[str, ...]:
    """The names of the built-in layouts, sorted."""
    return tuple(
        sorted(
            entry.name.removesuffix(".yaml")
            for entry in files("padspec.layouts").iterdir()
            if entry.name.endswith(".yaml")
        )
    )
