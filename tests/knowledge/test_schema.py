"""The schemas describe the files as they are: they accept what the reader accepts."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from assistant.knowledge.location import knowledge_root
from assistant.knowledge.schema import file_schema, record_schema, schemas, write_schemas
from assistant.knowledge.shapes import FACTS, SHAPES
from assistant.knowledge.yaml_lines import plain, read_yaml

HERE = Path(__file__).parent
FILES = sorted([*Path(knowledge_root()).glob("*/*.yaml"), *(HERE / "sound").glob("*/*.yaml")])
BROKEN = ("amounts", "fields", "keys", "no_source", "list_at_top")
"""Cases broken in shape; what is broken in meaning is beyond a schema."""


def validator(schema: dict[str, Any]) -> Any:
    jsonschema = pytest.importorskip("jsonschema")
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


def content(path: Path) -> Any:
    tree, problems = read_yaml(str(path))
    assert problems == []
    assert tree is not None
    return plain(tree)


@pytest.mark.parametrize("path", FILES, ids=lambda path: f"{path.parent.name}/{path.name}")
def test_files_fit_the_schema(path: Path) -> None:
    assert [error.message for error in validator(file_schema()).iter_errors(content(path))] == []


@pytest.mark.parametrize("case", BROKEN)
def test_broken_files_do_not(case: str) -> None:
    assert not validator(file_schema()).is_valid(content(HERE / "broken" / case / "case.yaml"))


def test_an_editor_may_take_yes_for_true_and_digits_for_a_number() -> None:
    steps = [{"do": "x", "memory": True}]
    procedure = {"id": "x", "title": "X", "asks": ["x"], "steps": steps, "source": "MAN 1"}

    assert validator(record_schema(SHAPES["procedures"])).is_valid(procedure)
    assert validator(record_schema(SHAPES["variants"])).is_valid({"id": 12, "show": 12, "names": ["x"]})


def test_required_fields_are_required() -> None:
    assert record_schema(FACTS)["required"] == ["id", "asks", "says", "source"]


def test_one_file_a_kind_is_written(tmp_path: Path) -> None:
    paths = write_schemas(str(tmp_path / "schemas"))

    assert {Path(path).name for path in paths} == set(schemas())
    assert {f"{kind}.schema.json" for kind in SHAPES} < set(schemas())
    assert all(
        json.loads(Path(path).read_text(encoding="utf-8"))["$schema"].endswith("schema") for path in paths
    )
