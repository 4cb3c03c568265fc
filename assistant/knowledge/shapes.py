"""Every kind of record by its key in files, with one table of fields for reading, checks and schema alike.

`knowledge_base/FORMAT.md` explains the same to curators, with examples.
"""

from __future__ import annotations

from assistant.knowledge.answer_shapes import (
    BANDS,
    FACTS,
    INPUTS,
    LIMITS,
    MODELS,
    PROCEDURES,
    SCHEDULES,
    TABLES,
)
from assistant.knowledge.fields import Shape
from assistant.knowledge.library_shapes import CHANGES, DOCUMENTS, OUTLINES, OVERRIDES, TERMS, TYPE, VARIANTS
from assistant.knowledge.readers import TEXTS, mapping

__all__ = ["FACTS", "SHAPES", "TYPE", "WORD_GROUPS"]

SHAPES: dict[str, Shape] = {
    shape.key: shape
    for shape in (
        DOCUMENTS,
        TERMS,
        INPUTS,
        FACTS,
        LIMITS,
        BANDS,
        SCHEDULES,
        TABLES,
        PROCEDURES,
        MODELS,
        CHANGES,
        VARIANTS,
        OVERRIDES,
        OUTLINES,
    )
}
"""Kinds of record by the key of their list in files; `type` stands alone, once, in type.yaml."""

WORD_GROUPS = mapping(TEXTS)
"""Words by the name of their group, which `@name` stands for in the values of inputs and outputs."""
