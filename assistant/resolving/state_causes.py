"""What leads to a result of a state table, or takes it away: the smallest sets of failures."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence
from itertools import pairwise

from assistant.knowledge.records import StateTable
from assistant.resolving import tables as state_tables
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import CauseResult
from assistant.resolving.state_asked import (
    Scored,
    barring,
    content_of,
    is_normal,
    is_well,
    unused_amounts,
)
from assistant.understanding.clauses import STOPS, asking, asks_whether
from assistant.understanding.matching import Match
from assistant.understanding.states import Condition

_OPEN = frozenset({
    "any", "anything", "something", "failure", "failures", "fault", "what", "which", "else", "how", "why",
})  # fmt: skip
KEEPING = frozenset(("keep", "keeps", "keeping", "leaves", "leaving", "spares", "retains", "retaining", "still"))
TAKING = frozenset({
    "takes", "take", "taking", "loses", "lose", "losing", "costs", "cost", "kills", "kill", "robs", "removes", "ends",
    "disables", "disable", "steals", "stops", "stop", "defeats",
})  # fmt: skip
KEPT, TAKEN = "kept", "taken"
_ANOTHER_THING = 0.75
"""What a thing that the table does not know costs: "the centre of the | tread" is no result of the steering."""
_SHORTLY, _DENIED_WITHIN = 8, 2
CHANGING = frozenset(("mode",))
"""Results that change into another, and are not lost."""
_CAPTION = ("red", "amber", "warning")
_LOST = "@lost"
_DOING = frozenset(("i", "we", "you", "one", "a"))
"""After "how can": what somebody does is asked for, and not what leads to a state."""
_MAY = frozenset(("can", "could", "might", "may"))
_COMING_TO = frozenset({
    "be", "end", "find", "have", "get", "come", "wind", "finish", "land", "still", "possibly", "ever",
})  # fmt: skip
"""After that: somebody comes to be in a state, and does nothing: "how could I be on …"."""


def cause_candidates(
    table: StateTable, inputs: tuple[Condition, ...], matches: list[Match], question: Question, know: Knowledge,
    excused: Collection[int],
) -> Iterator[Scored]:  # fmt: skip
    """Yield what leads to the result that a question names, or takes away what it names."""
    reading = question.reading
    if not (inputs or reading.has("single", "cause", "when") or _asks_when(question)):
        return
    # "How much pressure can the EMERGENCY brakes get": the state is told, and a figure in it is asked for.
    figure = bool(reading.asked & QUANTITIES) or ("how", "much") in pairwise(reading.words)
    possible = not figure and _asks_possible(table, inputs, question, know)
    odd = not figure and _is_odd(table, inputs, matches, question, know)
    whence = possible or odd or _asks_why(table, inputs, question, know)
    if figure and not (whence or reading.has("cause")):
        return  # "below what speed does anti-skid stop by itself"
    single = reading.has("single") and not _said_of_a_state(table, inputs, question, know)
    if not (whence or single or reading.has("cause", "when") or _asks_when(question)):
        return
    if not (possible or single) and _asks_what_follows(inputs, question):
        return
    named, everything = _named(table, matches, question, know)
    if not named:
        return
    vocabulary = know.matcher.vocabulary(table.id)
    barred = [m for m in content_of(question, know, excused) if vocabulary.isdisjoint(m.concepts)]
    barred = [m for m in barred if not (whence and "why" in m.concepts)]
    output, value = _principal(table, named)
    clear = whence or single or reading.has("cause") or (_asks_when(question) and bool(everything))
    plain = any({"cause", "single"} <= m.concepts for m in reading.mentions)  # "single failures giving …"
    score = (1.04 if plain or possible else 0.98 if clear else 0.9) * barring(barred, know, _ANOTHER_THING)
    score *= unused_amounts(question)
    found = state_tables.causes(table, output, value, know, single, inputs)
    extra = tuple(Condition(f"{table.id}.{o}", v) for o, v in everything if o != output)
    narrowed = _narrowed(found, extra, know)
    if narrowed is not None:
        yield score, 3.0, narrowed


def _said_of_a_state(
    table: StateTable, inputs: Sequence[Condition], question: Question, know: Knowledge
) -> bool:
    """Return whether it is a state given that stands alone: "after losing System 2 | on its own |, does …"; where a
    result is named beside it, it is asked whether that alone leads there.
    """
    if any(not is_normal(table, o, v, know) for o, v in question.results_named.get(table.id, [])):
        return False
    ends = {max(c.where) + 1 for c in inputs if c.where}
    return any(m.holds("single") and m.start in ends for m in question.reading.mentions)


def _asks_what_follows(inputs: tuple[Condition, ...], question: Question) -> bool:
    """Return whether it is asked what states lead to, and not what leads there: "does the free fall rob me of …"."""
    if any(c.asked for c in question.conditions) and any(not c.implied for c in inputs):
        return True  # "losing System 1 puts us in ALTERNATE, right?"
    words = question.reading.words
    return bool(inputs) and asks_whether(words) and _OPEN.isdisjoint(words)


def _named(
    table: StateTable, matches: list[Match], question: Question, know: Knowledge
) -> tuple[list[tuple[str, str]], list[tuple[str, str]]]:
    """Return the results (output, value) whose causes are sought, and all that are to hold with them."""
    reading = question.reading
    everything = question.results_named.get(table.id, [])
    named = [(o, v) for o, v in everything if not is_normal(table, o, v, know)]
    if not named and everything and not (reading.asks_loss or reading.has("cause", "single")) and _asks_when(question):
        return [], everything  # "when are the bars white": what is normal is asked for itself
    if not named and everything:
        # "What costs me NORMAL braking": the normal value is named as the one that goes.
        named = [(o, "!" + v) for o, v in everything]
    if not named and reading.has(*_CAPTION):
        return [], everything  # "what two things cause the red one": a caption is asked about, and no state is named
    if not named and (reading.asks_loss or reading.has("cause", "single")):
        outputs = [o.id for o in table.outputs if reading.has(o.id)]
        kept = [output for output in outputs if len(outputs) > 1 and _keeps(output, question)]
        everything = _normal_of(table, kept, know)
        named = [p for output in outputs if output not in kept for p in lost_value(table, output, question, know)]
    elif named:
        told = {output for output, _ in everything}
        also = [o.id for o in table.outputs if o.id not in told and reading.has(o.id) and _keeps(o.id, question)]
        everything = [*everything, *_normal_of(table, also, know)]
    if not named and matches and matches[0].whole and (reading.asks_loss or reading.has("cause")):
        named = lost_value(table, matches[0].output, question, know)
    return named, everything


def _normal_of(table: StateTable, outputs: Iterable[str], know: Knowledge) -> list[tuple[str, str]]:
    normal = state_tables.outputs(table, {}, know.base)
    return [(output, normal[output]) for output in outputs]


def _asks_why(
    table: StateTable, inputs: tuple[Condition, ...], question: Question, know: Knowledge
) -> bool:
    """Return whether it is asked why a result is so though a thing that it rests on is well."""
    well = [c for c in inputs if c.input in table.inputs]
    return bool(well) and question.reading.has("why") and all(is_well(c, know) for c in well)


def _is_odd(
    table: StateTable, inputs: tuple[Condition, ...], matches: list[Match], question: Question, know: Knowledge
) -> bool:
    """Return whether a result is told beside things that are all well, and nothing but what it may be is asked."""
    told = [c for c in question.conditions if c.is_result and not c.asked and c.table == table.id]
    well = [c for c in inputs if c.input in table.inputs and not c.implied]
    if not told or not well or not all(is_well(c, know) for c in inputs):
        return False
    if _asks_another(told, matches) or _names_another(table, told, question):
        return False
    abnormal = any(not is_normal(table, c.output, c.value, know) for c in told) or _is_gone(told, inputs, question)
    return abnormal and not _OPEN.isdisjoint(question.reading.words)


def _is_gone(told: list[Condition], inputs: tuple[Condition, ...], question: Question) -> bool:
    """Return whether a result that is told is said to be lost: "NORMAL braking has gone", "no autobrake"."""
    bound = {k for c in inputs for k in c.where}
    lost = [m for m in question.reading.mentions if _LOST in m.concepts and bound.isdisjoint(m.taken)]
    places = [(min(c.where), max(c.where) + 1) for c in told if c.where]
    return any(0 <= m.start - end <= 1 or m.end == start for m in lost for start, end in places)


def _asks_another(told: list[Condition], matches: list[Match]) -> bool:
    """Return whether another result is asked for than those that are told."""
    names = {c.output for c in told}
    return any(m.whole and m.output not in names for m in matches)


def _names_another(table: StateTable, told: list[Condition], question: Question) -> bool:
    """Return whether what asks names another result than those that are told: "how should I use the pedals"."""
    names = {o.id for o in table.outputs} - {c.output for c in told}
    asks = asking(question.reading.words, marks=False)
    return any(m.start in asks and not names.isdisjoint(m.concepts) for m in question.reading.mentions)


def _asks_possible(
    table: StateTable, inputs: tuple[Condition, ...], question: Question, know: Knowledge
) -> bool:
    """Return whether it is asked if a result can come about beside things that are well: "can I be on ALTERNATE …"."""
    well = [c for c in inputs if c.input in table.inputs]
    if not well or len(well) < len(inputs) or not all(is_well(c, know) for c in well):
        return False
    words = question.reading.words
    coming = any(
        word in _MAY
        and (
            words[i + 1 : i + 2] == ("the",)
            or not (_DOING.isdisjoint(words[i + 1 : i + 2]) or _COMING_TO.isdisjoint(words[i + 2 : i + 4]))
        )
        for i, word in enumerate(words)
    )
    named = any(not is_normal(table, o, v, know) for o, v in question.results_named.get(table.id, []))
    return named and (coming or "possible" in words)


def _keeps(output: str, question: Question) -> bool:
    """Return whether a result is to stay: "takes the autobrake but keeps anti-skid"."""
    words = question.reading.words
    return any(done_to(m.start, words) == KEPT for m in question.reading.mentions if output in m.concepts)


def done_to(at: int, words: Sequence[str]) -> str:
    """Return whether the last word before a place says that a result is taken or kept: "takes … but leaves …".

    What is denied is the other way about: "takes autobrake but not | anti-skid |", "does not cost me | autobrake |".
    """
    denied = "not" in words[max(0, at - _DENIED_WITHIN) : at]
    for k in range(at - 1, max(0, at - _SHORTLY) - 1, -1):
        word = words[k]
        if word in STOPS:
            break
        kept = word in KEEPING and word != "still"  # "anti-skid is still working. Which mode" keeps no mode
        if kept or word in TAKING:
            denied = denied or (k > 0 and words[k - 1] == "not")
            return KEPT if kept != denied else TAKEN
    return ""


def _asks_when(question: Question) -> bool:
    words = question.reading.words
    return "when" in words[:3] or any(
        word == "how"
        and words[i + 1 : i + 2] in (("can",), ("could",), ("might",), ("would",))
        and (words[i + 2] not in _DOING or not _COMING_TO.isdisjoint(words[i + 3 : i + 4]))
        for i, word in enumerate(words[:-2])
    )


def _loses(output: str, question: Question) -> bool:
    """Return whether a question asks for a failure that takes a result."""
    reading = question.reading
    taken = any(done_to(m.start, reading.words) == TAKEN for m in reading.mentions if output in m.concepts)
    return reading.has("single") and (reading.asks_loss or taken)


def lost_value(table: StateTable, output: str, question: Question, know: Knowledge) -> list[tuple[str, str]]:
    """Return the one value (output, value) that a result has when it is lost, or none where it is not clear."""
    normal = state_tables.outputs(table, {}, know.base).get(output)
    found = next(o for o in table.outputs if o.id == output)
    others = {v for v, _, _ in found.values if v != normal}
    if len(others) > 1 and output not in CHANGING and _loses(output, question):
        # What is left of the steering with any one failure: it castors.
        failures = (name for name in table.inputs if name in know.states.failures)
        ways = ({name: know.states.failed(name)} for name in failures)
        others = {state_tables.outputs(table, way, know.base)[output] for way in ways} - {normal}
    return [(output, value) for value in others] if len(others) == 1 else []


def _principal(table: StateTable, named: list[tuple[str, str]]) -> tuple[str, str]:
    order = [o.id for o in table.outputs]
    return min(named, key=lambda pair: order.index(pair[0]) if pair[0] in order else 99)


def _narrowed(found: CauseResult, extra: tuple[Condition, ...], know: Knowledge) -> CauseResult | None:
    """Keep the sets in which the other results that the question names hold as well; None where they never do."""
    kept = []
    given = {c.input: c.value for c in found.given}
    for chosen in found.sets:
        results = state_tables.outputs(found.table, {**given, **dict(chosen)}, know.base)
        if all(results.get(c.output) == c.value for c in extra):
            kept.append(chosen)
    if extra and found.sets and not kept:
        return None
    return found._replace(sets=tuple(kept)) if extra else found
