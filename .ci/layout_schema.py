"""The schema of layouts, as far as it follows from the schemas of the blocks: each block's settings by reference.

A layout may set all that a design may set of a block, and says besides what the block is called, how it grows
and, where it holds others, what it holds.
"""

import json
from pathlib import Path
from typing import Any

from padspec.reading.checking.schemas import BLOCKS, schema_data

_STRUCTURE: dict[str, Any] = {
    "id": {
        "$ref": "common.schema.json#/$defs/id",
        "title": "Id",
        "description": "The name of this block, its own within the layout; a design sets this block by it under "
        "blocks.",
        "examples": ["rows"],
    },
    "grow": {
        "$ref": "common.schema.json#/$defs/grow",
        "title": "Grow",
        "description": "How much of the spare height this block takes, as a part beside the other blocks' "
        "numbers: 0 takes none, 2 takes twice as much as 1.",
    },
}


def layout_schema(file: Path) -> str:
    """The text of the layout schema with the blocks renewed; all else in it is kept."""
    data = json.loads(file.read_text("utf-8"))
    data["$defs"] = {kind: _laid(kind) for kind in BLOCKS} | {"block": _any_block()}
    return json.dumps(data, indent=2, ensure_ascii=False) + "\n"


def _laid(kind: str) -> dict[str, Any]:
    block = schema_data(f"block-{kind}")
    where = f"block-{kind}.schema.json#"
    holds = {"holds": {"$ref": f"{where}/$defs/holds"}} if "holds" in block.get("$defs", {}) else {}
    settings = {key: {"$ref": f"{where}/properties/{key}"} for key in block["properties"]}
    return {
        "title": block["title"],
        "description": block["description"],
        "type": "object",
        "properties": {**_STRUCTURE, **settings, **holds},
        "required": ["id"],
        "additionalProperties": False,
        "examples": [block["x-laid"]],
    }


def _any_block() -> dict[str, Any]:
    return {
        "title": f"block: one of {', '.join(BLOCKS[:-1])} or {BLOCKS[-1]}",
        "description": "One block: its kind as the only key, its settings under that.",
        "type": "object",
        "properties": {kind: {"$ref": f"#/$defs/{kind}"} for kind in BLOCKS},
        "additionalProperties": False,
        "minProperties": 1,
        "maxProperties": 1,
        "examples": [{"rows": {"id": "rows", "grow": 1}}],
    }
