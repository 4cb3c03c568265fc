"""What has failed, where several indications are told: the smallest sets that give all of them.

"White bars and autobrake, but the nose wheels castor: which system has failed?" What is told may be of several
tables; a label that shows tells of its own cause.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator

from assistant.knowledge.records import StateTable
from assistant.resolving import tables as state_tables
from assistant.resolving.failure_kind import is_of_kind
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import CauseResult
from assistant.resolving.state_asked import (
    KINDS,
    Scored,
    asks_what_failed,
    barring,
    content_of,
    is_normal,
    unused_amounts,
)
from assistant.resolving.state_causes import KEEPING, KEPT, TAKEN, TAKING, done_to, lost_value
from assistant.understanding.clauses import asking
from assistant.understanding.mentions import Mention
from assistant.understanding.states import Condition

Wanted = tuple[StateTable, str, str]
"""A table with an output and the value that it is told to have; "!value" for any other."""
_SCORE = 1.05
_WELL, _GONE = frozenset(("@working", "@on")), frozenset(("@lost", "@off"))
_SINGLE = "single"
_BESIDE = 2
"""Words that may stand between a result and what is said of it: "the steering is still fine"."""


def indication_candidates(question: Question, know: Knowledge, excused: Collection[int]) -> Iterator[Scored]:
    """Yield what gives all the indications that a question tells, where it asks what has failed."""
    reading = question.reading
    named = asks_what_failed(question, know)
    named = _which_failure(reading.words) if named is None else named
    takes = named is None and _asks_what_takes(reading.words)
    if named is None and not takes and not reading.has("cause", "single"):
        return
    wanted = tuple(_told(question, know))
    named = () if takes and len(wanted) > 1 else named
    shown = tuple(c for c in question.conditions if c.implied and _is_label(c, question, know))
    tables = tuple(dict.fromkeys(t.id for t, _, _ in wanted))
    if not wanted or (named is None and len(tables) < 2):
        return
    if all(is_normal(t, o, v, know) for t, o, v in wanted) and not shown:
        return
    given = tuple(c for c in question.conditions if not c.is_result)
    told = tuple(pair for c in shown if (pair := (c.input, c.value))[1] != know.states.normal(c.input))
    found = state_tables.joint_sets(wanted, know.base, {c.input: c.value for c in given})
    if not found and any(c.value != know.states.normal(c.input) for c in given):
        return  # what was told held before: "on ALTERNATE, and now System 1 goes"
    sets = tuple((*told, *chosen) for chosen in found)
    fixed = tuple(c for c in given if (c.input, c.value) not in told)
    score = _SCORE * barring(_barred(tables, question, know, excused), know) * unused_amounts(question)
    yield score, 6.0, _cause(wanted, sets, fixed, named or (), question, know)


def _cause(
    wanted: tuple[Wanted, ...], sets: tuple[tuple[tuple[str, str], ...], ...], given: tuple[Condition, ...],
    kinds: Collection[str], question: Question, know: Knowledge,
) -> CauseResult:  # fmt: skip
    """Return the sets with what they lead to: those of the kind asked for before the others."""
    leading = sorted(wanted, key=lambda each: is_normal(each[0], each[1], each[2], know))
    (table, output, value), *also = leading
    inside = [s for s in sets if s and all(is_of_kind(name, kinds, know) for name, _ in s)]
    chosen = tuple(inside) if kinds and inside else sets
    others = tuple(s for s in sets if s not in chosen)
    single = question.reading.has("single") or _SINGLE in question.reading.words
    return CauseResult(table, output, value, chosen, single, given, tuple(also), others)


def _told(question: Question, know: Knowledge) -> Iterator[Wanted]:
    """Yield the results that a question tells, or whose loss it asks for."""
    switched = {c.where for c in question.conditions if not c.is_result}
    told = [c for c in question.conditions if c.is_result and not c.asked and c.where not in switched]
    for table in state_tables.tables(know.base):
        outputs = {c.output: _as_told(c, table, question, know) for c in told if c.table == table.id}
        for output in table.outputs:
            value = outputs.get(output.id) or _said_of(table, output.id, question, know)
            if value:
                yield table, output.id, value


def _as_told(condition: Condition, table: StateTable, question: Question, know: Knowledge) -> str:
    """Return the value that a result is told to have, or that it has no more ("loses the NORMAL brakes"); what costs
    "no braking" leaves it as it is.
    """
    at = min(condition.where, default=0)
    if done_to(at, question.reading.words) != TAKEN:
        return condition.value
    if question.reading.words[at] == "no":
        return state_tables.outputs(table, {}, know.base)[condition.output]
    return f"!{condition.value}"


def _said_of(table: StateTable, output: str, question: Question, know: Knowledge) -> str | None:
    """Return what is said of a result by a state word beside it ("steering fine"), or by asking what takes it."""
    words = question.reading.words
    named = [m for m in question.reading.mentions if output in m.concepts]
    if not named:  # "takes the tiller" takes the steering
        brought = (m for m in question.reading.mentions if output in m.implied)
        named = [m for m in brought if done_to(m.end - 1, words) == TAKEN]
    if not named or any(f"{table.id}.{output}" == c.input for c in question.conditions):
        return None
    normal = state_tables.outputs(table, {}, know.base)[output]
    done = next(filter(None, (done_to(m.end - 1, words) for m in named)), "")
    state = next((s for m in named for s in question.reading.mentions if 0 <= s.start - m.end <= _BESIDE), None)
    if done == KEPT or (not done and state and not _WELL.isdisjoint(state.concepts)):
        return normal
    lost = bool(state and not _GONE.isdisjoint(state.concepts))
    if question.reading.asks_loss or done == TAKEN or lost:
        return next((value for _, value in lost_value(table, output, question, know)), "!" + normal)
    return None


def _which_failure(words: tuple[str, ...]) -> tuple[str, ...] | None:
    """Return the words for the kind of failure that is asked for: "which | hydraulic | failure takes …"."""
    for k in (k for k, word in enumerate(words) if word in ("failure", "fault", "loss")):
        asks = next((i for i in range(max(0, k - 2), k) if words[i] in ("which", "what")), None)
        if asks is not None:
            return words[asks + 1 : k]
    return None


def _asks_what_takes(words: tuple[str, ...]) -> bool:
    """Return whether it is asked what takes one thing and leaves another: "what keeps anti-skid but takes …"."""
    asks = {_past_kinds(words, i + 1) for i, word in enumerate(words[:-1]) if word in ("what", "which")}
    doing = frozenset(words)
    first = bool(asks & TAKING) or bool(asks & KEEPING)
    return first and (not doing.isdisjoint(TAKING) or "no" in doing) and not doing.isdisjoint(KEEPING)


def _past_kinds(words: tuple[str, ...], at: int) -> str:
    """Return the word after those for the kind of thing that is asked for: "which | switch | takes"."""
    return next((word for word in words[at:] if word not in KINDS), "")


def _is_label(condition: Condition, question: Question, know: Knowledge) -> bool:
    """Return whether a state is told by a label that shows, or is out."""
    shows = know.states.shows.keys()
    named = (m for m in question.reading.mentions if set(m.taken) & set(condition.where))
    return not condition.is_result and any(not shows.isdisjoint(m.concepts) for m in named)


def _barred(
    tables: Collection[str], question: Question, know: Knowledge, excused: Collection[int]
) -> list[Mention]:
    """Return what none of the tables explains; what only asks is explained."""
    known = frozenset().union(*(know.matcher.vocabulary(name) for name in tables))
    asks = asking(question.reading.words)
    shows = know.states.shows.keys()
    return [
        m
        for m in content_of(question, know, excused)
        if known.isdisjoint(m.concepts) and shows.isdisjoint(m.concepts) and m.start not in asks
    ]
