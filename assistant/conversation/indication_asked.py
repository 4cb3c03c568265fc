"""What shows with the states that a scenario has given: "what would tell me that on the flight deck?"."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.in_scenario import row_told, states_given, told_table
from assistant.conversation.readings import carried
from assistant.resolving import tables as state_tables
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.labels_told import labels_of
from assistant.resolving.results import FactResult, LossResult, Result

_LONG = 12
_SHOWING = frozenset({
    "tell", "tells", "know", "show", "shows", "shown", "showing", "light", "lights", "lamp", "message", "messages",
    "memo", "caution", "warning", "caption", "indication", "indications", "indicated", "annunciated", "see", "seen",
    "sign", "signs", "clue", "displayed", "comes", "annunciation",
})  # fmt: skip
"""Words of which one stands in a turn that asks what shows."""
_BESIDE = _SHOWING | frozenset({
    "what", "whats", "which", "how", "would", "will", "do", "does", "i", "we", "you", "me", "us", "that", "it", "this",
    "on", "the", "flight", "deck", "cockpit", "come", "up", "display", "screen", "front", "any", "is", "there", "for",
    "get", "a", "an", "and", "so", "ok", "okay", "then", "in", "from", "panel", "be", "s", "about", "d", "ll", "can",
    "?", ",", ".", "had", "to", "your",
})  # fmt: skip


def indication_asked(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what is known of the labels that show in the states given, where a turn asks no more than what shows."""
    words, given = alone.reading.words, states_given(context)
    if not given or len(words) > _LONG or alone.conditions or _SHOWING.isdisjoint(words):
        return None
    if not _BESIDE.issuperset(words) or (told_table(context) is None and not isinstance(context.result, LossResult)):
        return None
    facts = tuple(labels_of(given, knowledge))
    if not facts:
        return None
    question = carried(alone, context, given, knowledge)
    table = told_table(context) or next(t for t in state_tables.tables(knowledge.base) if given[0].input in t.inputs)
    if len(facts) == 1 and FactResult(facts[0]) != context.result:
        return question, FactResult(facts[0])
    return question, row_told(table, given, (), knowledge)._replace(labels=facts)
