"""The delivered knowledge, a desk that marks by it, and questions put on its records."""

from collections.abc import Callable
from datetime import date

import pytest

from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge, open_knowledge
from assistant.conversation.turn import answer_turn
from assistant.practice.asking.pool import Pool, drillable
from assistant.practice.making import Question, make_questions
from assistant.practice.marking.mark import Marker
from assistant.practice.sitting_marks import take
from assistant.practice.sitting_state import Desk, Put

Putter = Callable[..., Put]


@pytest.fixture(scope="session")
def know(tmp_path_factory: pytest.TempPathFactory) -> Knowledge:
    knowledge, problems = open_knowledge(cache_dir=str(tmp_path_factory.mktemp("cache")))
    assert knowledge is not None, problems
    return knowledge


@pytest.fixture(scope="session")
def pool(know: Knowledge) -> Pool:
    return drillable(know.base, date(2026, 11, 25))


@pytest.fixture(scope="session")
def desk(know: Knowledge) -> Desk:
    marker = Marker(know)

    def reply(question: Question, text: str):  # type: ignore[no-untyped-def]
        _, context = answer_turn(question.text, Context(), know)
        return answer_turn(text, context, know)[0]

    return Desk(lambda question, text: take(question, text, marker, know), reply)


@pytest.fixture(scope="session")
def asked(know: Knowledge, pool: Pool) -> Putter:
    """Returns a question on a record in a form as it is put."""

    def made(record: str, form: str, **more: object) -> Put:
        item = pool.get(record)
        assert item is not None
        (question, *_) = make_questions(know, "a seed", entries=(record,), forms=(form,))
        return Put(question, item, **more)  # type: ignore[arg-type]

    return made
