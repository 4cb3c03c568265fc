"""What shows with the states given: the labels that come up, and the results that an instrument displays."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from assistant.knowledge.records import StateTable
from assistant.resolving import tables as state_tables
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.labels_told import labels_ended, labels_of
from assistant.resolving.results import TableResult
from assistant.resolving.state_asked import Scored, is_well, unused_amounts
from assistant.understanding.clauses import asking
from assistant.understanding.states import Condition

SHOWING = frozenset({
    "tell", "tells", "know", "show", "shows", "shown", "showing", "light", "lights", "lamp", "lamps", "message",
    "messages", "memo", "memos", "caution", "cautions", "warning", "warnings", "caption", "captions", "indication",
    "indications", "indicated", "annunciated", "see", "seen", "sign", "signs", "clue", "clues", "displayed", "comes",
    "annunciation", "annunciations", "appears", "appear", "alert", "alerts", "indicate", "indicates", "warn", "warns",
    "told", "known", "alerted", "warned", "noticed", "notice",
})  # fmt: skip
"""Words of which one stands in a text that asks what shows."""
BESIDE = SHOWING | frozenset({
    "what", "whats", "which", "how", "would", "will", "do", "does", "i", "we", "you", "me", "us", "that", "it", "this",
    "on", "the", "flight", "deck", "cockpit", "come", "up", "display", "screen", "front", "any", "is", "are", "there",
    "for", "get", "a", "an", "and", "or", "so", "ok", "okay", "then", "in", "from", "panel", "be", "s", "about", "d",
    "ll", "can", "could", "?", ",", ".", "had", "to", "your", "should", "expect", "have", "else", "gear", "of", "my",
    "our", "they", "them", "he", "she", "him", "her", "crew", "captain", "been",
    "going", "given", "by", "must", "might", "at", "look", "actually", "with", "cabin", "pilot", "pilots",
})  # fmt: skip
_BARE = frozenset({"caption", "captions", "memo", "message", "indication", "annunciation", "caution", "warning", "?"})
_SCORE, _WEIGHT = 1.045, 6.0


def asks_what_shows(words: Sequence[str]) -> bool:
    """Return whether words ask what shows, and name nothing that might."""
    opens = {"what", "whats", "which", "how", "any"}
    if not SHOWING.isdisjoint(words) and _BARE.issuperset(words):
        return True  # "controller failed, | caption? |"
    return not SHOWING.isdisjoint(words) and not opens.isdisjoint(words) and BESIDE.issuperset(words)


def shown_candidates(
    inputs: tuple[Condition, ...], question: Question, know: Knowledge, excused: Collection[int]
) -> Iterator[Scored]:
    """Yield what shows with the failures given, where just that is asked: "hyd 2 gone, what messages come up"."""
    if all(is_well(c, know) for c in inputs) or unused_amounts(question) < 1:
        return
    words = question.reading.words
    asks = _without_use([words[k] for k in sorted(asking(words)) if k not in excused])
    if not asks or not asks_what_shows(asks):
        return
    found = shown_with(inputs, know)
    if found:
        labels = dict.fromkeys((*found.labels, *labels_ended(question, know)))
        yield _SCORE, _WEIGHT, found._replace(labels=tuple(labels))


def _without_use(words: list[str]) -> list[str]:
    """Return words without what a thing is there for: "what tells me that I have only the accumulator | to brake |"."""
    return words[:-2] if words[-2:-1] == ["to"] and words[-1] not in BESIDE else words


def shown_with(inputs: tuple[Condition, ...], know: Knowledge) -> TableResult | None:
    """Return the row of the table whose displayed results some states change, with the labels that they bring up."""
    labels = tuple(labels_of(inputs, know))
    state = {c.input: c.value for c in inputs}
    touched = [t for t in state_tables.tables(know.base) if any(c.input in t.inputs for c in inputs)]
    displayed = {t.id: _displayed(t, state, know) for t in touched}
    table = next((t for t in touched if displayed[t.id]), None)
    if table is None and labels:
        table = next((t for t in touched if _changes(t, state, know)), None)
    if table is None:
        return None
    unaffected = tuple(c for c in inputs if c.input not in table.inputs)
    return TableResult(
        table, (state_tables.row(table, inputs, know.base),), displayed[table.id], unaffected, labels=labels
    )


def _displayed(table: StateTable, state: dict[str, str], know: Knowledge) -> tuple[str, ...]:
    """Return the results of a table that are displayed, and are others in a state than with all normal."""
    now, normal = (state_tables.outputs(table, each, know.base) for each in (state, {}))
    return tuple(o.id for o in table.outputs if o.shown and now[o.id] != normal[o.id])


def _changes(table: StateTable, state: dict[str, str], know: Knowledge) -> bool:
    return state_tables.outputs(table, state, know.base) != state_tables.outputs(table, {}, know.base)
