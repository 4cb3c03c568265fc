"""Make the answer to a turn of what was resolved: composed, with what was understood, and as it is spoken."""

from __future__ import annotations

from assistant.answering.answer import ANSWER, Answer, Saying
from assistant.answering.compose import compose, deference
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Result
from assistant.understanding.mentions import plain_reading


def _said(text: str, knowledge: Knowledge) -> str:
    from assistant.rendering.speech import spoken

    base = knowledge.base
    return spoken(text, knowledge.units, base.pronunciations, labels=base.labels)


def composed(text: str, question: Question, result: Result, knowledge: Knowledge) -> Answer:
    """Return the answer to a text, with the reading and the conditions that it rests on."""
    answer = compose(result, question, knowledge)
    if question.held and answer.outcome == ANSWER:
        answer = answer._replace(text=f"{answer.text} {question.held}")
    understood = plain_reading(question.reading)
    understood["conditions"] = [{"input": c.input, "value": c.value} for c in question.conditions]
    understood["variant"] = question.variant
    understood["result"] = type(result).__name__
    return answer._replace(question=text, understood=understood)


def replied(text: str, outcome: str, words: str, knowledge: Knowledge) -> Answer:
    """Return words about the conversation itself as the answer to a turn."""
    return Answer(text, outcome, words, cautions=(deference(knowledge),))


def finished(answer: Answer, knowledge: Knowledge) -> Answer:
    """Return an answer with its spoken form."""
    return answer._replace(said=Saying(answer.by_ear, knowledge, _said))
