"""The knowledge base of this project itself: each type of it is fit to answer."""

from __future__ import annotations

import re

import pytest

from assistant.knowledge.load import load, types
from assistant.knowledge.location import knowledge_root
from assistant.knowledge.records import Fact

ROOT = knowledge_root()
FIGURE = r"\d[.,°%]?\d* ?(?:[°%]|(?:kt|psi|bar|s|min|h|m|ft|mm|kg)\b)"


@pytest.mark.parametrize("type_id", types(ROOT))
def test_each_type_has_no_problems(type_id: str) -> None:
    base, problems = load(ROOT, type_id, cache_dir="")

    assert [str(problem) for problem in problems] == []
    assert base is not None
    assert len(list(base.records.values())) == len(base.order)


@pytest.mark.parametrize("type_id", types(ROOT))
def test_each_fact_is_offered_in_words_of_its_own(type_id: str) -> None:
    """A choice of two that read the same is none, and a figure in it would give the answer away."""
    base, _ = load(ROOT, type_id, cache_dir="")
    assert base is not None
    facts = {name: record for name, record in base.records.items() if isinstance(record, Fact)}

    assert [name for name, fact in facts.items() if not 3 <= len(fact.title.split()) <= 9] == []
    assert [name for name, fact in facts.items() if re.search(FIGURE, fact.title)] == []
    assert len({fact.title.lower() for fact in facts.values()}) == len(facts)
