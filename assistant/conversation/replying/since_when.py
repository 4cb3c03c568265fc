"""Tell since when a figure told last holds, what it was, or when a statement told last applies."""

from __future__ import annotations

from assistant.answering.answer import Answer
from assistant.conversation.composing import composed
from assistant.conversation.context import LATELY, Context
from assistant.conversation.control_words.controls import asks_when
from assistant.conversation.control_words.controls_of_changes import asks_former, asks_since
from assistant.conversation.reading_turns.readings import question_of
from assistant.conversation.replying.beliefs import changes_of_figures
from assistant.resolving.changes import changes_of
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import ChangeResult, CheckResult, FactResult, LimitResult, ModelResult

_NOT_CHANGED = "Nothing loaded says that it was ever another."
_TIMES = frozenset({"when", "before", "after", "until", "as", "while", "during", "once", "at"})


def since_told(text: str, context: Context, knowledge: Knowledge) -> Answer | None:
    """Return since when the figure told last holds, where a revision changed it."""
    last = context.answer
    if last is None or not (asks_since(text) or asks_former(text) or _of_a_changed_figure(text, context, knowledge)):
        return None
    told = (*(last.values[:1] and (last.entry,)), *_limits_told(context))
    changes = tuple(c for name in dict.fromkeys(told) for c in changes_of(name, knowledge))
    changes = changes or changes_of_figures(last, knowledge)
    if context.said and context.said.entry in knowledge.base.changes:
        changes = (knowledge.base.changes[context.said.entry],)
    if not changes and not last.values:  # a reason was told, or a statement without a figure: the one before is meant
        lately = (turn.answer for turn in context.earlier[:LATELY])
        changes = next((found for each in lately if (found := changes_of(each.entry, knowledge))), ())
    if not changes:
        return _unchanged(text, last, context)
    asked = context.asked or question_of(text, knowledge, "")
    told = composed(text, asked, ChangeResult(changes), knowledge)
    if asks_former(text):
        return told
    from assistant.conversation.replying.changes_again import with_dates  # few turns need it

    return with_dates(told, changes, knowledge)


def _of_a_changed_figure(text: str, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn asks since when a figure holds, or what it was, and names that figure or the former one:
    "when did the 280 change", "how long has it been 250".
    """
    last = context.answer
    if last is None or len(text) > 80:
        return False
    changes = [c for name in _limits_told(context) for c in changes_of(name, knowledge)]
    changes += changes_of_figures(last, knowledge)
    reading = knowledge.reader.read(text)
    figures = {a.value for c in changes for words in (c.formerly, c.now) for a in knowledge.phrase(words).amounts}
    figures |= {value.value for value in last.values} if isinstance(context.result, LimitResult) else set()
    if not reading.amounts or any(amount.value not in figures for amount in reading.amounts):
        return False
    places = {k for amount in reading.amounts for k in range(amount.start, amount.end)}
    bare = " ".join("it" if k in places else word for k, word in enumerate(reading.words))
    return asks_since(bare) or asks_former(bare)


def _unchanged(text: str, last: Answer, context: Context) -> Answer | None:
    """Return the figure told last where nothing says that it ever changed."""
    if not isinstance(context.result, (LimitResult, CheckResult)) or not last.values:
        return None
    return last._replace(question=text, text=f"{_NOT_CHANGED} {last.text}")


def when_told(text: str, context: Context) -> Answer | None:
    """Return the statement told last again, where it says when and no more is asked."""
    last = context.answer
    if last is None or not asks_when(text) or not isinstance(context.result, FactResult):
        return None
    fact = context.result.fact
    return last._replace(question=text) if not _TIMES.isdisjoint(fact.says.lower().split()) else None


def _limits_told(context: Context) -> tuple[str, ...]:
    """Return the ids of the limits that the last result told of, or took."""
    result = context.result
    if isinstance(result, LimitResult):
        return tuple(limit.id for limit in result.limits)
    if isinstance(result, CheckResult):
        return tuple(check.limit.id for check in result.checks)
    if isinstance(result, ChangeResult):
        return tuple(change.record for change in result.changes)
    if isinstance(result, ModelResult):
        return tuple(item.default for item in result.model.inputs if item.default)  # the figures that it takes as usual
    return ()
