"""JSON Schemas of knowledge files, for editors that complete and check YAML while it is written.

They follow from the tables that the reader itself uses. What concerns the whole base (that a reference
exists, that a state table is complete) is beyond them and left to the checks.
"""

from __future__ import annotations

import json
import os
from typing import Any

from assistant.knowledge.fields import Shape, object_schema
from assistant.knowledge.shapes import SHAPES, TYPE, WORD_GROUPS

DIALECT = "https://json-schema.org/draft/2020-12/schema"

_UNITS = {"type": "array", "items": {"type": "object", "required": ["symbol"]}}
_FREE = {"type": "object"}


def record_schema(shape: Shape) -> dict[str, Any]:
    """The schema of one record of a kind."""
    return {"$schema": DIALECT, "title": shape.one, **object_schema(shape.fields)}


def file_schema() -> dict[str, Any]:
    """The schema of a whole file, which may hold a list of each kind."""
    lists = {key: {"type": "array", "items": object_schema(shape.fields)} for key, shape in SHAPES.items()}
    others = {
        "type": object_schema(TYPE.fields),
        "words": WORD_GROUPS.schema,
        "units": _UNITS,
        "settings": _FREE,
    }
    return {
        "$schema": DIALECT,
        "title": "knowledge file",
        "type": "object",
        "properties": {**lists, **others},
        "additionalProperties": False,
    }


def schemas() -> dict[str, dict[str, Any]]:
    """Every schema by file name: one a kind, and one of a whole file."""
    found = {f"{shape.key}.schema.json": record_schema(shape) for shape in (*SHAPES.values(), TYPE)}
    return {**found, "file.schema.json": file_schema()}


def write_schemas(folder: str) -> list[str]:
    """Write the schemas into a folder, made if need be; the paths written. Raises OSError."""
    os.makedirs(folder, exist_ok=True)
    paths = []
    for name, schema in schemas().items():
        path = os.path.join(folder, name)
        with open(path, "w", encoding="utf-8") as file:
            json.dump(schema, file, indent=2, ensure_ascii=False)
            file.write("\n")
        paths.append(path)
    return paths
