"""One turn of a conversation: read, complete from the context, resolve, compose, remember.

`answer_turn` is the place to begin reading: everything else serves one of its lines.
"""

from __future__ import annotations

from assistant.answering.answer import ANSWER, DECLINE, Answer
from assistant.conversation.comparing import compared_things, compares, difference
from assistant.conversation.completing import understood
from assistant.conversation.composing import composed, finished, replied
from assistant.conversation.context import Context
from assistant.conversation.controls import halves
from assistant.conversation.readings import question_of as question_of
from assistant.conversation.replies import controlled, with_disputes
from assistant.conversation.returning import returned, with_topic
from assistant.conversation.scenario import says_all_normal
from assistant.conversation.switching import only_switches, variant_named
from assistant.conversation.two_things import two_things
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Choices, Result, TableResult, TablesResult

_KEPT = "From here on: the {}."


def answer_turn(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context]:
    """Return the answer to a turn and the context after it; never raises for any text."""
    kept = variant_named(text, context, knowledge)
    done = controlled(text, context, knowledge)
    if kept and (context.asked is None or only_switches(text) or text.strip(" .!").isdigit()):
        done = _kept(text, kept, context, knowledge)
    answer, after = done or _answered(text, context, knowledge)
    if kept and after.variant != kept:
        answer, after = answer._replace(text=f"{answer.text} {_KEPT.format(kept)}"), after._replace(variant=kept)
    return with_disputes(finished(answer, knowledge), after, knowledge), after


def _answered(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context]:
    """Return the answer to a question, on the topic that it comes back to where it does."""
    back = returned(text, context, knowledge)
    if back and back.context.answer and not back.text:
        return back.context.answer._replace(question=text), back.context
    before, said = (back.context, back.text) if back else (context, text)
    question, result = understood(said, before, knowledge)
    answer = composed(text, question, result, knowledge)
    both = _of_two(text, question, result, knowledge)
    if both:
        answer = both
    elif answer.outcome != ANSWER and not question.unsaid:
        answer = _in_parts(said, before, knowledge) or answer
    elif answer.outcome == ANSWER and said.count("?") > 1 and not isinstance(result, TablesResult):
        answer = _both_sentences(said, before, answer, knowledge)
    return answer, _remembered(before, question, result, answer)


def _of_two(text: str, question: Question, result: Result, knowledge: Knowledge) -> Answer | None:
    """Return the answer about two things that a question names together, or holds against each other."""
    compared = compared_things(question, knowledge)
    both = compared or two_things(question, result, knowledge)
    if both is None:
        return None
    one, two = (composed(text, half.question, half.result, knowledge) for half in both)
    how = difference(one, two, knowledge) if compares(question) else ""
    if compared and not how:
        return None
    answer = _joined(text, one, two)
    return answer._replace(text=f"{answer.text} {how}") if how else answer


def _kept(text: str, variant: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context]:
    """Say that a variant is kept to from here on."""
    return replied(text, ANSWER, _KEPT.format(variant), knowledge), context._replace(variant=variant)


def _in_parts(text: str, context: Context, knowledge: Knowledge) -> Answer | None:
    """Return the answers to both halves of a double question ("how many, and where are they kept")."""
    for parts in halves(text):
        answers = []
        before = context
        for half in parts:
            question, result = understood(half, before, knowledge)
            answer = composed(half, question, result, knowledge)
            if answer.outcome != ANSWER:
                break
            answers.append(answer)
            before = _remembered(before, question, result, answer)
        if len(answers) == 2:
            return _joined(text, answers[0], answers[1])
    return None


def _both_sentences(text: str, context: Context, whole: Answer, knowledge: Knowledge) -> Answer:
    """Return the answers to two sentences that ask, where the whole answers one of them alone."""
    first, _, second = text.partition("?")
    question, result = understood(f"{first}?", context, knowledge)
    one = composed(first, question, result, knowledge)
    if one.outcome != ANSWER or not any(c.isalpha() for c in second):
        return whole
    question, result = understood(second, _remembered(context, question, result, one), knowledge)
    two = composed(second, question, result, knowledge)
    missing = two if one.entry == whole.entry else one
    if two.outcome != ANSWER or one.entry == two.entry or whole.entry not in (one.entry, two.entry):
        return whole
    told = missing.text in whole.text
    return whole if told else _joined(text, *((whole, two) if missing is two else (one, whole)))


def _joined(text: str, one: Answer, two: Answer) -> Answer:
    if one.text == two.text:
        return one._replace(question=text)
    return one._replace(
        question=text, text=f"{one.text} {two.text}", values=(*one.values, *two.values),
        working=" / ".join(w for w in (one.working, two.working) if w), aloud=(*one.aloud, *two.aloud),
        sources=tuple(dict.fromkeys((*one.sources, *two.sources))),
        cautions=tuple(dict.fromkeys((*one.cautions, *two.cautions))),
    )  # fmt: skip


def _remembered(context: Context, question: Question, result: Result, answer: Answer) -> Context:
    if answer.outcome == DECLINE:
        return context
    offered = tuple(name for name, _ in result.options) if isinstance(result, Choices) else ()
    if isinstance(result, TableResult) and len(result.rows) > 1:
        offered = tuple("" for _ in result.rows)
    variant = context.variant
    if question.named_variant and not question.reading.mentions and not question.reading.amounts:
        variant = question.variant
    told = isinstance(result, (TableResult, TablesResult))  # what follows from them was told: they were meant
    given = tuple(c for c in question.conditions if not c.is_result and (told or not c.implied))
    return context._replace(
        variant=variant, asked=question, result=result, answer=answer, offered=offered,
        scenario=given or (() if says_all_normal(question.reading) else context.scenario), earlier=with_topic(context),
    )  # fmt: skip
