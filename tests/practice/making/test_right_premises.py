"""No question claims what is not so, and the key of each answers what it asks."""

from __future__ import annotations

import re
from random import Random

import pytest

from assistant.conversation.opening import Knowledge
from assistant.knowledge.records import NOT_ASKED, Fact
from assistant.practice.making import Question, make_questions
from assistant.practice.making.drafting import Desk
from assistant.practice.making.facts import fact_drafts, form_of
from assistant.practice.making.limits import limit_drafts
from assistant.practice.making.proving import answer_to, differences, gives_away
from assistant.practice.making.question import CALCULATION, FIGURE, MEANING, PLACE, REASON, STATE, STEP, WHO
from assistant.practice.making.wording import Wording


def _with_questions(knowledge: Knowledge) -> list[Fact]:
    records = (knowledge.base.records[name] for name in knowledge.base.ids("facts"))
    return [record for record in records if record.quiz]


@pytest.fixture(scope="module")
def desk(knowledge: Knowledge) -> Desk:
    return Desk(knowledge, Wording(knowledge.base), Random(1), knowledge.variants[0])


def test_a_record_s_own_questions_are_all_answered_by_it(knowledge: Knowledge, desk: Desk) -> None:
    wrong = []
    for record in _with_questions(knowledge):
        for draft in fact_drafts(record.id, desk):
            for text in (text for group in draft.wordings for text in group):
                found = differences(draft.key, record.id, answer_to(text, desk.variant, knowledge), knowledge)
                if found or gives_away(text, draft):
                    wrong.append((text, found))
    assert wrong == []


def test_a_figure_s_own_questions_are_all_answered_by_it(knowledge: Knowledge, desk: Desk) -> None:
    wrong, tried = [], 0
    for name in knowledge.base.ids("limits"):
        own = knowledge.base.records[name].quiz
        for draft in limit_drafts(name, desk) if own else ():
            for text in own if draft.form == FIGURE else ():
                tried += 1
                found = differences(draft.key, name, answer_to(text, desk.variant, knowledge), knowledge)
                if found or gives_away(text, draft):
                    wrong.append((text, found))
    assert tried > 40
    assert wrong == []


def test_a_record_with_questions_of_its_own_is_asked_by_them_alone(
    everything: list[Question], knowledge: Knowledge
) -> None:
    own = {record.id: record.quiz for record in _with_questions(knowledge)}
    assert [q.text for q in everything if q.entry in own and q.text not in own[q.entry]] == []
    assert {q.entry for q in everything}.isdisjoint(name for name, quiz in own.items() if quiz == (NOT_ASKED,))


@pytest.mark.parametrize(
    ("question", "form"),
    [
        ("Where is the jack kept?", PLACE),
        ("The jack: where is it?", PLACE),
        ("Say where the jack is.", PLACE),
        ("Say what the jack's lamp means.", MEANING),
        ("Why is the jack kept dry?", REASON),
        ("Who fetches the jack?", WHO),
        ("What is meant by a jack?", MEANING),
    ],
)
def test_a_whole_question_tells_its_form(question: str, form: str) -> None:
    assert form_of(question) == form


@pytest.mark.parametrize("seed", range(8))
def test_a_limit_that_a_sum_rests_on_is_given_no_other_value(knowledge: Knowledge, seed: int) -> None:
    limits = {
        name for name in knowledge.base.ids("limits")
        if knowledge.base.records[name].maximum or knowledge.base.records[name].minimum
    }  # fmt: skip
    resting = [
        name for name in knowledge.base.ids("models")
        if any(item.default in limits and not item.assumed for item in knowledge.base.records[name].inputs)
    ]  # fmt: skip
    for question in make_questions(knowledge, seed, entries=resting, forms=[CALCULATION]):
        record = knowledge.base.records[question.entry]
        given = question.text.lower().replace(record.of.lower(), "")
        for item in record.inputs:
            if item.default in limits and not item.assumed:
                assert not re.search(rf"\b{re.escape(item.id)} (?:Mach )?\d", given, re.IGNORECASE), given


def test_how_many_is_asked_of_a_result_that_holds_a_number(everything: list[Question], knowledge: Knowledge) -> None:
    for question in [q for q in everything if q.form == STATE and "how many" in q.text.lower()]:
        said = [
            says for name, value in question.key.states
            for output in knowledge.base.records[name.split(".")[0]].outputs if output.id == name.split(".")[1]
            for known, says, _ in output.values if known == value
        ]  # fmt: skip
        assert any(re.search(r"\d", each) for each in said), question.text


def test_what_one_does_is_no_answer_to_when_or_by_whom(everything: list[Question]) -> None:
    steps = [question.text for question in everything if question.form == STEP]
    assert [text for text in steps if text.split()[0] in ("When", "Who", "Where", "Why")] == []


def test_a_temperature_by_its_name_stands_where_a_number_would(knowledge: Knowledge) -> None:
    asked = [
        question.text for seed in range(6) for question in make_questions(knowledge, seed, forms=[CALCULATION],
        entries=[n for n in knowledge.base.ids("models") if any(
            choice[2].startswith("at ") for item in knowledge.base.records[n].inputs for choice in item.choices)])
    ]  # fmt: skip
    assert asked
    assert not [text for text in asked if re.search(r"\bfor freezing", text, re.IGNORECASE)]
