"""The delivered knowledge, opened once, and all questions that some seeds make of it, for both variants."""

from __future__ import annotations

import pytest

from assistant.conversation.opening import Knowledge
from assistant.practice.making import Question, make_questions


@pytest.fixture(scope="session")
def everything(knowledge: Knowledge) -> list[Question]:
    """Every question that a seed makes for each variant."""
    return [
        question
        for seed, variant in enumerate(knowledge.variants)
        for question in make_questions(knowledge, seed, variant=variant)
    ]


@pytest.fixture(scope="session")
def general(knowledge: Knowledge) -> tuple[Question, ...]:
    """Every question that a seed makes on what is true of all aeroplanes."""
    return make_questions(knowledge, 1, topics=["general"])


@pytest.fixture(scope="session")
def sittings(knowledge: Knowledge) -> list[tuple[Question, ...]]:
    """Eight papers of twenty questions, four of each variant."""
    return [make_questions(knowledge, seed, 20, variant=variant) for variant in knowledge.variants for seed in range(4)]
