"""The knowledge base of this project itself: each type of it is fit to answer."""

from __future__ import annotations

import pytest

from assistant.knowledge.load import load, types
from assistant.knowledge.location import knowledge_root

ROOT = knowledge_root()


@pytest.mark.parametrize("type_id", types(ROOT))
def test_each_type_has_no_problems(type_id: str) -> None:
    base, problems = load(ROOT, type_id, cache_dir="")

    assert [str(problem) for problem in problems] == []
    assert base is not None
    assert len(list(base.records.values())) == len(base.order)
