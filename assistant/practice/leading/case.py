"""A case that goes on: failure upon failure, and "why?", until the knowledge has nothing more to say.

Every step is a question that the assistant itself answers, made as all others are.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from random import Random
from typing import Any

from assistant.answering.answer import ANSWER, Answer
from assistant.answering.parts import conditions_words, joined
from assistant.conversation.context import Context
from assistant.conversation.reading_turns.readings import question_of
from assistant.conversation.turn import answer_turn
from assistant.frozen import NamedTuple
from assistant.knowledge.records import StateTable
from assistant.practice.making.drafting import Desk
from assistant.practice.making.make import prove
from assistant.practice.making.proving import answer_to
from assistant.practice.making.question import LOSS, MEANING, STATE, WHY_OF, Key, Question
from assistant.practice.making.states import State, single_drafts
from assistant.practice.making.wording import Wording
from assistant.resolving import tables
from assistant.resolving.knowing import Knowledge
from assistant.understanding.states import Condition

MOST_TOGETHER = 4
"""Failures of one case: beyond these nobody keeps them in mind."""
_FIRST = 3
"""Ways of asking among which one by "why" tells that the record is a reason."""
_NOT_STATED = "The reason is not stated"


class Further(NamedTuple):
    """A question that carries a case on, and the words in which it is put to the class."""

    question: Question
    shown: str


def can_go_on(question: Question) -> bool:
    """Whether a question is of a kind that a case always goes on from."""
    return question.form in (STATE, LOSS)


def gone_on(question: Question, know: Knowledge, seed: str) -> Further | None:
    """Return the question after one more failure that changes something, there or in another table, or None.

    A case goes on from whatever names a failure: a statement of what one leads to as well as a scenario. The class is
    told every state that the question rests on: who is asked may not have heard, or not kept in mind, what came before.
    """
    state = told_in(question, know)
    if not state or len(state) >= MOST_TOGETHER:
        return None
    desk = Desk(know, Wording(know.base), Random(f"{seed} {question.text}"), question.variant)
    for table, own in _tables_of(state, question.entry, know):
        for failure in _failures(table, state, desk):
            made = _with(failure, own, table, desk, seed)
            if made is not None:
                return made
    return None


def _tables_of(state: State, entry: str, know: Knowledge) -> Iterator[tuple[StateTable, State]]:
    """Yield the table of a case; while it is of one failure, or of none of that table's, those it bears on too."""
    found = [(each, tuple(one for one in state if one[0] in each.inputs)) for each in tables.tables(know.base)]
    home = [(table, own) for table, own in found if table.id == entry and own]
    others = [(table, own) for table, own in found if table.id != entry and own]
    yield from home
    yield from others if len(state) == 1 or not home else ()


def _with(failure: tuple[str, str], state: State, record: StateTable, desk: Desk, seed: str) -> Further | None:
    """Return a question on a state with one more failure: on a result that it changes, in the first wording that is
    understood."""
    after: State = (*state, failure)
    before, now = (tables.outputs(record, dict(each), desk.know.base) for each in (state, after))
    for output in (each for each in record.outputs if before[each.id] != now[each.id]):
        drafts = list(single_drafts(record, after, output, desk))
        for ask, draft in desk.chance.sample(drafts, len(drafts)):
            made = prove(draft, desk, seed)
            if made is not None and set(state_of(made, desk.know)) == set(after):
                told = joined([_words(each, desk.know) for each in state])
                return Further(made, f"And now {_words(failure, desk.know)} as well, with {told} as before: {ask}?")
    return None


def why(question: Question, know: Knowledge) -> Further | None:
    """Return "why?" after a question, with the reason that is stated, or None where none is."""
    context = Context(variant=question.variant)
    first, after = answer_turn(question.text, context, know)
    if first.outcome != ANSWER:
        return None
    reason, _ = answer_turn("why", after, know)
    if reason.outcome != ANSWER or reason.text.startswith(_NOT_STATED) or reason.text == first.text:
        return None
    stated = bool(getattr(know.base.records.get(question.entry), "why", None))
    if not can_go_on(question) and not stated and not _is_a_reason(reason, question, know):
        return None
    key = Key(says=reason.text)
    asked = question._replace(
        text=f"{WHY_OF}{question.text})", spoken="Why?", form="reason", entry=reason.entry or question.entry, key=key,
        sources=reason.sources, hint="", difficulty=2,
    )  # fmt: skip
    return Further(asked, "And why?")


def _is_a_reason(reason: Answer, question: Question, know: Knowledge) -> bool:
    """Whether what is told is a reason, and of the paragraph that the question is about."""
    asks = getattr(know.base.records.get(reason.entry), "asks", ())[:_FIRST]
    cited = {(each.document, each.paragraph) for each in question.sources}
    of_it = any((each.document, each.paragraph) in cited for each in reason.sources)
    return of_it and any(ask.startswith("why ") for ask in asks)


def told_in(question: Question, know: Knowledge) -> State:
    """Return the state that a question tells of, of whatever table's inputs, as it is read.

    One that asks what something means tells of none: there nothing has failed.
    """
    if question.form == MEANING:
        return ()
    given = question_of(question.text, know, question.variant).conditions
    return tuple((each.input, each.value) for each in given if not each.is_result)


def state_of(question: Question, know: Knowledge) -> State:
    """Return the state that a question is about, as the assistant reads it: of its table's own inputs."""
    answer = answer_to(question.text, question.variant, know)
    inputs = getattr(know.base.records.get(question.entry), "inputs", ())
    return tuple(each for each in _conditions(answer) if each[0] in inputs)


def debrief(questions: Sequence[Question], know: Knowledge) -> tuple[str, ...]:
    """Return a case looked back on, step by step: what was so, what followed, and the paragraphs."""
    found = []
    for question in questions:
        cited = ", ".join(dict.fromkeys(f"{each.document} {each.paragraph}" for each in question.sources))
        found.append(f"{question.text} {_first_sentences(question.key.says)} ({cited})")
    return tuple(found)


def _failures(record: StateTable, state: State, desk: Desk) -> Iterator[tuple[str, str]]:
    """Yield what may fail next, in an order of chance: what changes most of the results first."""
    base = desk.know.base
    now = tables.outputs(record, dict(state), base)
    named = {name for name, _ in state}
    found = [
        (name, value) for name in record.inputs if name not in named for value, _, _ in base.inputs[name].values[1:]
    ]
    desk.chance.shuffle(found)

    def changes(failure: tuple[str, str]) -> int:
        after = tables.outputs(record, dict((*state, failure)), base)
        return sum(now[name] != after[name] for name in now)

    yield from sorted((each for each in found if changes(each)), key=changes, reverse=True)


def _conditions(answer: Answer) -> State:
    understood: Any = answer.understood or {}
    listed: Collection[dict[str, str]] = understood.get("conditions", ())
    return tuple((each["input"], each["value"]) for each in listed)


def _words(failure: tuple[str, str], know: Knowledge) -> str:
    words = conditions_words((Condition(*failure),), know)
    return words[:1].lower() + words[1:] if words.startswith("The ") else words


def _first_sentences(text: str) -> str:
    """Return the beginning of a full answer: a case's debrief is read out, not its every remark."""
    kept = [each for each in text.split(". ") if not each.startswith("That is with")]
    return ". ".join(kept[:3]).rstrip(".") + "."
