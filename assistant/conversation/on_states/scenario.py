"""One failure more: "and system 2 goes as well" adds to the states given before, whatever was asked last."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.control_words.all_well import says_all_normal
from assistant.conversation.on_states.states_changed import (
    ADDING,
    FURTHER,
    POINTING,
    changed_back,
    changed_over,
    kind_back,
    of_the_last,
    only_states_told,
    replaces,
    results_changed,
    together,
)
from assistant.conversation.reading_turns.readings import carried, merged, question_of
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Result, TableResult, TablesResult
from assistant.understanding.condition import alike
from assistant.understanding.states import Condition, conditions

_IF = frozenset({"if", "with", "when", "once"})
_BOTH = ADDING | frozenset({
    "both", "of", "them", "out", "lost", "gone", "failed", "fail", "together", "at", "once", "the", "two", "systems",
    "what", "if", "with", "so", "are", "about", "go", "ok", "how", "inop", "off", "down", "make", "it", "that", "were",
    "was", "had", "have", "we", "say", "suppose", "instead", "hyd", "hydraulic", "hydraulics", "is", "been", "be",
})  # fmt: skip
_TWO = 2


def other_scenario(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what holds with the states given before and those of a turn that only changes them."""
    ways = (
        all_else_normal, added, supposed_beside, both_of_them, kind_back, changed_back, changed_over, only_states_told,
    )  # fmt: skip
    return next((found for way in ways if (found := way(alone, context, knowledge))), None)


def added(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what holds with a further failure: the table asked last, then every other whose results it changes.

    None where the turn gives no state that the scenario lacks, or asks something of its own.
    """
    words = set(alone.reading.words)
    words |= {"plus"} if _on_top(alone.reading.words) else set()
    known = {(c.input, c.value) for c in context.scenario}
    adds = ADDING & words or "with" in alone.reading.words[:2]
    if not known or not adds or replaces(alone.reading):
        return None
    alone = _with_failures(alone, context, knowledge)
    new = [c for c in alone.conditions if not c.is_result and not c.implied]
    if not new or {(c.input, c.value) for c in new} <= known:
        return None
    if _asks_more(alone, knowledge):
        return _asked_with(alone, context, knowledge) if FURTHER & words else None
    given = carried(alone, context, context.scenario, knowledge).conditions
    question = merged(alone, context, knowledge, False)[0]._replace(conditions=given)
    results = results_changed(context, question.conditions, knowledge)
    return (question, together(results)) if results else None


def supposed_beside(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what holds with a failure that was told, where a turn asks what if something else fails too.

    "We have lost System 1" is the situation; "does the parking brake hold if the accumulator is empty" is asked in it.
    """
    failed = [c for c in context.scenario if not c.is_result and c.value != knowledge.states.normal(c.input)]
    new = {c.input for c in alone.conditions if c.where and not c.is_result and not c.implied}
    if context.supposed or not failed or not new or not new.isdisjoint(c.input for c in context.scenario):
        return None
    if _IF.isdisjoint(alone.reading.words) or replaces(alone.reading) or not _asks_more(alone, knowledge):
        return None
    return _asked_with(alone, context, knowledge)


def _on_top(words: tuple[str, ...]) -> range:
    """Return where "on top of that" stands, by which something is added."""
    at = words.index("top") if "top" in words else 0
    return range(at - 1, at + 2) if at and (words[at - 1], *words[at + 1 : at + 2]) == ("on", "of") else range(0)


def _asked_with(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the result that a turn itself asks for with its failure added: "next the switch is put OFF. Mode?"."""
    question = carried(alone, context, context.scenario, knowledge)
    result = resolve_scored(question, knowledge).result
    return (question, result) if isinstance(result, TableResult) and result.asked else None


def without_states(alone: Question, context: Context, knowledge: Knowledge) -> Context:
    """Return the conversation with no state given any more, after a turn by which all is normal again."""
    before = context.asked
    if before is None or not says_all_normal(alone.reading) or not (before.conditions or context.scenario):
        return context
    places = {k for c in before.conditions for k in c.where}
    rest = " ".join(w for k, w in enumerate(before.reading.words) if k not in places)
    asked = question_of(rest, knowledge, before.variant)._replace(background=before.background, conditions=())
    return context._replace(asked=asked, scenario=())


def both_of_them(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what holds with two failures together that were told of one after the other: "and both?"."""
    words = {w for w in alone.reading.words if w[0].isalpha()}
    if "both" not in words or not _BOTH.issuperset(words) or context.asked is None or alone.reading.amounts:
        return None
    asked = (*(past.asked for past in context.earlier[:1]), context.asked)
    own = (question_of(each.reading.text, knowledge, each.variant).conditions for each in asked)
    told = [c for each, said in zip(asked, own, strict=True) for c in (each.conditions or said)]
    failures = knowledge.states.failures
    failed = {c.input: c for c in told if c.input in failures and c.value == knowledge.states.failed(c.input)}
    if len(failed) == 1:
        failed |= _its_like(next(iter(failed.values())), knowledge)
    if len(failed) != _TWO:
        return None
    now = tuple(c._replace(where=()) for c in failed.values())
    tables = (result for result in context.told_lately[:_TWO] if isinstance(result, TableResult))
    results = results_changed(context._replace(result=next(tables, context.result)), now, knowledge)
    question = carried(alone, context, now, knowledge)._replace(conditions=now)
    return (question, together(results)) if results else None


def _its_like(condition: Condition, knowledge: Knowledge) -> dict[str, Condition]:
    """Return the one other thing of the kind of one that has failed, as failed too: "make it both"."""
    known = knowledge.states
    like = [name for name in known.failures if alike(name, condition.input, known)]
    return {like[0]: Condition(like[0], known.failed(like[0]))} if len(like) == 1 else {}


def all_else_normal(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return a turn under the states given before, where it says that everything else is normal."""
    before = context.asked
    given = (before.conditions if before else ()) or context.scenario
    if not given or alone.conditions or says_all_normal(alone.reading) or not alone.reading.has("all_normal"):
        return None
    question = carried(alone, context, given, knowledge)
    result = resolve_scored(question, knowledge).result
    return (question, result) if isinstance(result, (TableResult, TablesResult)) else None


def _with_failures(alone: Question, context: Context, knowledge: Knowledge) -> Question:
    """Return a turn with the things that it only names as failed, after a failure: "and system 1 too"; or with the
    state that it gives the thing spoken of last: "and if it's empty?".
    """
    words = alone.reading.words
    if not alone.conditions and POINTING.intersection(words) and "add" not in words and not _on_top(words):
        return alone._replace(conditions=of_the_last(alone, context, knowledge))
    failures = knowledge.states.failures
    after_failure = any(c.input in failures and c.value == knowledge.states.failed(c.input) for c in context.scenario)
    if alone.conditions or not after_failure or alone.reading.amounts:
        return alone
    return alone._replace(conditions=tuple(conditions(alone.reading, knowledge.states, knowledge.units, True)))


def _asks_more(alone: Question, knowledge: Knowledge) -> bool:
    """Return whether a turn names more than its states, and the words in between: "down to 1,300"."""
    said = {k for c in alone.conditions for k in c.where}
    said |= {k for c in alone.conditions if c.where for k in range(min(c.where), max(c.where))}
    said |= {*_on_top(alone.reading.words), *(k for k, w in enumerate(alone.reading.words) if w in ("add", "adding"))}
    return any(not knowledge.matcher.is_soft(m) and not said.issuperset(m.taken) for m in alone.reading.mentions)
