"""Which question may follow in a scenario: one of its states and what they lead to, or of the paragraphs just cited.

What merely shares a word with the scene wanders off: chocks are requested for hot brakes too, and pedals taxi.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from assistant.conversation.reading_turns.readings import question_of
from assistant.knowledge.records import StateTable
from assistant.practice.making.question import MEANING, MEMORY, REASON, STEPS, Question
from assistant.practice.making.states import State
from assistant.resolving import tables
from assistant.resolving.knowing import Knowledge
from assistant.understanding.states import Condition

_LIST = 2
"""Failures that a scene does not know, from which on a reason is a list of causes."""
_BARE = ("what do you know of it", "How does this go on")


def stays(question: Question, state: State, asked: Iterable[Question], share: float, know: Knowledge) -> bool:
    """Return whether a question stays with a scene: the state that it names is the scene's, or its paragraph was cited.

    asked: questions of this step. share: how much of what the question names the scene has brought up, 0 to 1.
    """
    given = question_of(question.text, know, question.variant).conditions
    if not all(_holds(each, state, know) for each in given) or _of_another_value(question, state, know):
        return False
    if question.form == REASON and not _is_of_it(question, state, know):
        return False
    cited = {(source.document, source.paragraph) for each in asked for source in each.sources}
    if any((source.document, source.paragraph) in cited for source in question.sources):
        return True
    return bool(given) and (share >= 1 or question.form in (STEPS, MEMORY))


def _is_of_it(reason: Question, state: State, know: Knowledge) -> bool:
    """Whether a reason holds in a scene: not one that lists what else could have led there."""
    told = question_of(reason.key.says, know, reason.variant).conditions
    return sum(not each.is_result and not _holds(each, state, know) for each in told) < _LIST


def _of_another_value(question: Question, state: State, know: Knowledge) -> bool:
    """Whether a question speaks of a result as it is not now: amber bars, where they are blank."""
    words = _words(question.text)
    for table in tables.tables(know.base):
        now = tables.outputs(table, dict(state), know.base)
        for output in table.outputs:
            known = {value: _words(says) for value, says, _ in output.values}
            here = known.get(now[output.id], frozenset())
            others = [each for value, each in known.items() if value != now[output.id]]
            if any(words & here & each and words & (each - here) for each in others):
                return True
    return False


def _words(text: str) -> frozenset[str]:
    return frozenset(re.findall(r"[a-z-]{4,}", text.lower()))


def follows_well(question: Question) -> bool:
    """Whether a question reads well after another: a reason asks why, and no subject stands bare."""
    if any(each in question.text for each in _BARE):
        return False
    if question.form == MEANING and "“" in question.text:  # what a word means leads nowhere in a scene
        return False
    return question.form != REASON or "why" in question.text.lower()


def other_tables(table: StateTable, among: Iterable[str], know: Knowledge) -> Iterator[StateTable]:
    """Yield the other tables on which a scene may go on."""
    allowed = frozenset(among)
    return (each for each in tables.tables(know.base) if each.id != table.id and each.id in allowed)


def _holds(given: Condition, state: State, know: Knowledge) -> bool:
    if not given.is_result:
        return (given.input, given.value) in state
    table = know.base.records[given.table]
    return isinstance(table, StateTable) and tables.outputs(table, dict(state), know.base)[given.output] == given.value
