"""Two questions in one turn, or one about two things: each is answered, and both answers are told in their order."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from functools import reduce
from itertools import islice

from assistant.answering.answer import ANSWER, Answer
from assistant.conversation.choosing.completing import understood
from assistant.conversation.choosing.remembering import remembered
from assistant.conversation.composing import composed
from assistant.conversation.context import Context
from assistant.conversation.several.comparing import compared_things, compares, difference
from assistant.conversation.several.comparing_likes import compared_likes
from assistant.conversation.several.each_variant import at_each_variant
from assistant.conversation.several.in_a_list import each_listed
from assistant.conversation.several.in_clauses import each_clause
from assistant.conversation.several.parting import all_parts, asks_outright, halves, mended_text
from assistant.conversation.several.several_amounts import AtAmount, at_each_amount
from assistant.conversation.several.surely import Sure
from assistant.conversation.several.two_cases import two_cases
from assistant.conversation.several.two_things import Half, two_things
from assistant.quantities.show import given_shown
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import (
    BandResult,
    BothResult,
    CheckResult,
    Choices,
    Declined,
    FactResult,
    LimitResult,
    ModelResult,
    Needed,
    ProcedureResult,
    Result,
    ScheduleResult,
)  # fmt: skip
from assistant.resolving.state_asked import fails_unknown

_FEW = 3
"""Words of a second question that no "and" joins, at the least: "when does it light, what percent" is one."""
_MOST_PARTS = 4
_FOLLOWS_UNASKED = frozenset({
    "CheckResult", "BandResult", "TableResult", "TablesResult", "ProcedureResult", "BothResult",
})  # fmt: skip
"""What a part that only tells something may be answered with: a verdict, or what follows from a state."""
_NEARLY_ALL = 0.7
_SMALL = frozenset(("is", "are", "the", "of", "a", "an", "and", "in", "at", "it", "on", "to", "for", "there"))
_OF_ONE_RECORD = (BandResult, CheckResult, FactResult, LimitResult, ModelResult, ProcedureResult, ScheduleResult)
_POINTING = frozenset(("that", "it", "this"))
_PURPOSE = frozenset({
    "prevent", "prevents", "preventing", "point", "purpose", "reason", "avoid", "avoiding", "protect", "protecting",
    "guard", "guarding", "saving", "good",
})  # fmt: skip
_SHORT = 9
_MAY_TELL_ONE = (BothResult, Choices, Declined, FactResult, LimitResult, Needed, ScheduleResult)
_WELL, _NEARLY = 0.75, 0.1
"""How well half a question must be answered to be told as well, and how much worse the other half's record may be."""


_Part = tuple[tuple[Answer, Question], Context, Result]
"""The answer to a part of a turn with how the part was read, the context after it, and its result."""


class Parts:
    """The parts of one turn as they are understood one after another, each once: a turn is parted in several ways that
    begin alike, and which part was told is asked when all is answered.
    """

    def __init__(self, knowledge: Knowledge) -> None:
        self._knowledge = knowledge
        self._understood: dict[tuple[str, int], tuple[Context, _Part]] = {}
        """By the text and the identity of the context, which is kept with it."""

    def understood(self, text: str, context: Context) -> _Part:
        """Return what a part gives after what a context holds."""
        key = text, id(context)
        if key not in self._understood:
            question, result = understood(text, context, self._knowledge)
            answer = composed(text, question, result, self._knowledge)
            part = (answer, question), remembered(context, question, result, answer, self._knowledge), result
            self._understood[key] = context, part
        return self._understood[key][1]

    def names(self, question: Question) -> bool:
        """Return whether a part names more than what is asked and what somebody does."""
        return any(not m.is_plain for m in self._knowledge.matcher.telling(question.reading))

    def failed(self, question: Question) -> frozenset[str]:
        """Return the things that a part tells to be in another state than the normal one."""
        told = (c for c in question.conditions if not c.is_result and not c.asked)
        return frozenset(c.input for c in told if c.value != self._knowledge.states.normal(c.input))


def with_both(
    text: str, context: Context, question: Question, result: Result, answer: Answer, knowledge: Knowledge, known: Parts
) -> Answer:
    """Return the answer to a turn, or to each of what it asks where the answer tells no more than one of them."""
    listed = _each_asked(each_listed, text, question, result, answer, knowledge)
    if listed:
        return listed
    each = at_each_amount(question, result, knowledge)
    if each:
        return _all_joined(text, [_at_amount(text, at, knowledge) for at in each])
    variants = at_each_variant(question, knowledge)
    if variants:
        return _all_joined(text, [_on_variant(text, half, knowledge) for half in variants])
    both = of_two_things(text, question, result, answer.entry, knowledge)
    if both:
        return both
    clauses = _each_asked(each_clause, text, question, result, answer, knowledge)
    return clauses or _in_halves(text, context, question, result, answer, knowledge, known)


def _in_halves(
    text: str, context: Context, question: Question, result: Result, answer: Answer, knowledge: Knowledge, known: Parts
) -> Answer:
    """Return the answers to the parts of a turn, each asked after the last, or the answer to it as a whole."""
    mended = "" if any(halves(text)) else mended_text(text, question.reading.words)
    if mended:
        both = _in_halves(mended, context, question, result, answer, knowledge, known)
        return both if both is answer else both._replace(question=text)
    if answer.outcome != ANSWER and not (question.unsaid or fails_unknown(question)):
        return in_parts(text, context, known, _lacks_in_one(text, result)) or answer
    if answer.outcome == ANSWER and isinstance(result, _OF_ONE_RECORD):
        return both_halves(text, context, answer, question, knowledge, known)
    return answer


def _each_asked(
    parts: Callable[[str, Knowledge, str], list[Sure]],
    text: str,
    question: Question,
    result: Result,
    answer: Answer,
    knowledge: Knowledge,
) -> Answer | None:
    """Return the answer to each thing that a question lists, or to each of its clauses, where all are surely answered
    and its answer as a whole does not tell them all.
    """
    if not isinstance(result, _MAY_TELL_ONE):
        return None
    asked = parts(text, knowledge, question.variant)
    found = [composed(one.text, one.question, one.result, knowledge) for one in asked]
    return _all_joined(text, found) if any(not _tells_as_much(answer, one) for one in found) else None


def _tells_as_much(answer: Answer, one: Answer) -> bool:
    """Return whether an answer tells the figures of another one, or nearly all its words."""
    if not one.values:
        return _tells(answer.text, one.text)
    return {(v.value, v.unit) for v in one.values} <= {(v.value, v.unit) for v in answer.values}


def _lacks_in_one(text: str, result: Result) -> bool:
    """Return whether one calculation is asked for that lacks something: what only tells of it before it asks, "a
    rejected take-off from 130 knots, how much energy", is no question beside it.
    """
    first = next(halves(text), (text, ""))[0]
    return isinstance(result, Needed) and not asks_outright(first)


def of_two_things(
    text: str, question: Question, result: Result, record: str, knowledge: Knowledge
) -> Answer | None:
    """Return the answer about two things that a question names together, or holds against each other."""
    compared = compared_things(question, knowledge)
    likes = None if compared else compared_likes(question, knowledge)
    both = compared or likes or two_things(question, result, record, knowledge)
    both = both or two_cases(question, result, record, knowledge)
    if both is None:
        return None
    one, two = (composed(text, half.question, half.result, knowledge) for half in both)
    how = difference(one, two, knowledge) if likes or compares(question) else ""
    if compared and not how:
        return None
    answer = joined_answers(text, one, two)
    return answer._replace(text=f"{answer.text} {how}") if how else answer


def in_parts(text: str, context: Context, known: Parts, calculates: bool = False) -> Answer | None:
    """Return the answers to all parts of a turn that asks more than one thing: "how many, and where are they kept".

    calculates: it asks for a calculation, and so does its last part then, or that is all that it asks.
    """
    for parts in (*halves(text), *all_parts(text, _MOST_PARTS)):
        found = _answers(parts, context, known)
        if found and not (calculates and not _calculated(found)):
            return _all_joined(text, found)
    return None


def _calculated(found: Sequence[Answer]) -> bool:
    """Return whether the last part of a turn was calculated, or alone answered with a figure."""
    kind = found[-1].understood.get("result")
    return kind == "ModelResult" or (len(found) == 1 and kind == "LimitResult")


def part_told(
    text: str, context: Context, question: Question, result: Result, answer: Answer, known: Parts
) -> tuple[Question, Result]:
    """Return the part of a turn that its answer begins with, where only its parts were answered: what follows asks of
    that; else the turn as a whole.
    """
    if answer.outcome != ANSWER or not isinstance(result, (Choices, Declined, Needed)):
        return question, result
    for parts in (*halves(text), *all_parts(text, _MOST_PARTS)):
        before = context
        for part in parts:
            (one, its), after, told = known.understood(part, before)
            if one.entry == answer.entry:
                return its, told
            before = after
    return question, result


def _at_amount(text: str, at: AtAmount, knowledge: Knowledge) -> Answer:
    """Return the answer at one of several amounts, which a calculation does not name itself."""
    answer = composed(text, at.question, at.result, knowledge)
    if not isinstance(at.result, ModelResult):
        return answer
    unit = at.amount.unit
    shown = given_shown(at.amount.value, unit, knowledge.units) if unit else f"{at.amount.value:g}"
    return answer._replace(text=f"At {shown}: {answer.text}")


def _on_variant(text: str, half: Half, knowledge: Knowledge) -> Answer:
    """Return the answer on one of the variants that a question names, which is said first."""
    answer = composed(text, half.question, half.result, knowledge)
    return answer._replace(text=f"On the {knowledge.base.variants[half.question.variant].show}: {answer.text}")


def _all_joined(text: str, answers: Sequence[Answer]) -> Answer:
    return reduce(lambda one, other: joined_answers(text, one, other), answers)


def _answers(parts: Sequence[str], context: Context, known: Parts) -> list[Answer]:
    """Return the answers to the parts of a turn, each after the last; none where one is not answered."""
    found = []
    failed: frozenset[str] = frozenset()
    unused = False
    for part in parts:
        (answer, question), context, _ = known.understood(part, context)
        if answer.outcome != ANSWER or not failed <= {c.input for c in question.conditions}:
            return []  # not answered, or as if what an earlier part tells to have failed were well
        if unused and not known.names(question):
            return []  # "tiller stiff, what do I do" is asked of what was told, which nothing took in
        if part is parts[-1] or asks_outright(part) or answer.understood.get("result") in _FOLLOWS_UNASKED:
            found.append(answer)
        else:
            failed |= known.failed(question)
            unused = not (question.conditions or question.reading.amounts)
    return found


def both_halves(
    text: str, context: Context, whole: Answer, asked: Question, knowledge: Knowledge, known: Parts
) -> Answer:
    """Return the answers to two questions in one turn, where the whole answers one of them alone, or neither."""
    for first, second in islice(halves(text), _MOST_PARTS):
        joins = text[len(first) :].lstrip(" ,;").startswith("and ")
        if not asks_outright(first) or not asks_outright(second) or (len(second.split()) < _FEW and not joins):
            continue
        (one, its), after, _ = known.understood(first, context)
        two, other = known.understood(second, after)[0] if one.outcome == ANSWER else (one, its)
        if two.outcome != ANSWER:
            continue
        if _asks_what_for(second):
            return joined_answers(text, one, two) if _tells_what_for(whole, one, two) else whole
        if one.entry == two.entry:
            if whole.entry != one.entry and not _is_told(whole, one, its, knowledge):
                return joined_answers(text, one, whole)
            continue
        if whole.entry not in (one.entry, two.entry):
            if _leaves_unsaid(whole.entry, asked, knowledge) and not _leaves_unsaid(one.entry, its, knowledge):
                return joined_answers(text, one, two)
            continue
        missing, half = (two, other) if one.entry == whole.entry else (one, its)
        if not _is_told(whole, missing, half, knowledge):
            return joined_answers(text, *((whole, two) if missing is two else (one, whole)))
    return whole


def _asks_what_for(text: str) -> bool:
    """Return whether a second question asks the purpose of what the first told, and names nothing: "what is that for",
    "what is it meant to prevent", "what's the point of that".
    """
    words = re.findall(r"[a-z]+", text.lower())
    points = len(words) <= _SHORT and (words == ["why"] or not _POINTING.isdisjoint(words))
    return points and ("why" in words or words[-1:] == ["for"] or not _PURPOSE.isdisjoint(words))


def _tells_what_for(whole: Answer, one: Answer, two: Answer) -> bool:
    """Return whether a second answer stands beside the first, and says what the whole does not."""
    same = two.entry != one.entry and not set(one.sources).isdisjoint(two.sources)
    return same and not _tells(whole.text, two.text)


def _is_told(whole: Answer, part: Answer, half: Question, knowledge: Knowledge) -> bool:
    """Return whether the answer to a whole turn tells what one to half of it does."""
    return _tells(whole.text, part.text) or _says_as_well(whole.entry, part.entry, half, knowledge)


def _leaves_unsaid(entry: str, question: Question, knowledge: Knowledge) -> bool:
    """Return whether a record says nothing of a thing that a question names and gives no state of."""
    known = knowledge.matcher.vocabulary(entry)
    told = {k for c in question.conditions if not c.is_result for k in c.where}
    things = (m for m in knowledge.matcher.telling(question.reading) if not m.is_plain)
    return any(m.start not in told and known.isdisjoint(m.concepts | m.implied) for m in things)


def _tells(text: str, other: str) -> bool:
    """Return whether nearly all words of one text stand in another: it has been told."""
    said, words = (set(re.findall(r"[\w.,]*\w", each.lower())) - _SMALL for each in (text, other))
    return len(words & said) >= _NEARLY_ALL * len(words)


def _sentences(text: str) -> set[str]:
    """Return the sentences of an answer, in whatever order they stand."""
    return set(text.rstrip(".").split(". "))


def _says_as_well(entry: str, other: str, half: Question, knowledge: Knowledge) -> bool:
    """Return whether a record answers half a question as well as the other, or the other answers it poorly itself."""
    found = knowledge.matcher.rank_among(frozenset((entry, other)), half.reading, half.background)
    scores = {match.record: match.score for match in reversed(found)}
    if other not in scores:
        return False  # no record that is matched: a table, a calculation
    return scores[other] < _WELL or scores.get(entry, 0.0) >= scores[other] - _NEARLY


def joined_answers(text: str, one: Answer, two: Answer) -> Answer:
    """Return two answers as one, in their order; what one has told already is not told again."""
    if _sentences(two.text) <= _sentences(one.text):
        return one._replace(question=text)
    return one._replace(
        question=text, text=f"{one.text} {two.text}", values=(*one.values, *two.values),
        working=" / ".join(w for w in (one.working, two.working) if w), aloud=(*one.aloud, *two.aloud),
        sources=tuple(dict.fromkeys((*one.sources, *two.sources))),
        cautions=tuple(dict.fromkeys((*one.cautions, *two.cautions))),
    )  # fmt: skip
