"""Why a result of a state table is as it is: what the states that bring it about do, as the documents say it."""

from __future__ import annotations

from itertools import combinations
from re import IGNORECASE, fullmatch

from assistant.answering.answer import Answer
from assistant.conversation.composing import composed
from assistant.conversation.context import Context
from assistant.conversation.on_states.in_scenario import last_told
from assistant.knowledge.records import StateTable
from assistant.resolving import tables as state_tables
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import FactResult, TableResult, TablesResult
from assistant.understanding.states import Condition

_BRINGS = (
    r"\W*(?:(?:and|so|but|ok|okay)\W+)*what(?:.?s| is| has)? ?(?:takes?|took|taken|taking|causes?|caused|causing"
    r"|brings?|brought|makes?|made|does|did|done|behind|knocks?|knocked) (?:it|that|this|them)"
    r"(?: away| out| on| about| off)?\W*"
)
_MOST = 3
"""States of which one result may come about."""


def state_reason(text: str, context: Context, knowledge: Knowledge) -> Answer | None:
    """Return the statements that say why the result told last comes with the states given, or None without any."""
    result = last_told(context, knowledge)
    if result is None or len(result.rows) != 1 or context.asked is None:
        return None
    table, states = result.table, [c for c in result.rows[0].conditions if not c.is_result]
    output = next(iter(result.asked), table.outputs[0].id)
    deciding = _deciding(table, output, states, knowledge)
    names = _reasons(table, output, deciding)
    if not names:
        return None
    asked, records = context.asked.with_text(text), knowledge.base.records
    told = [composed(text, asked, FactResult(records[name]), knowledge) for name in names]
    sources = tuple(dict.fromkeys(s for answer in told for s in answer.sources))
    return told[0]._replace(text=" ".join(answer.text for answer in told), sources=sources)


def tells_states(context: Context) -> bool:
    """Return whether results of the states given were told last, and no statement of what they rest on."""
    return isinstance(context.result, (TableResult, TablesResult))


def asks_what_brings_it(text: str) -> bool:
    """Return whether a turn asks what brings about what was told: "what takes it away?"."""
    return "what" in text.lower() and fullmatch(_BRINGS, text, IGNORECASE) is not None


def _deciding(
    table: StateTable, output: str, states: list[Condition], knowledge: Knowledge
) -> tuple[Condition, ...]:
    """Return the fewest of some states that bring a result about by themselves."""
    value = state_tables.outputs(table, {c.input: c.value for c in states}, knowledge.base)[output]
    for size in range(min(len(states), _MOST) + 1):
        for some in combinations(states, size):
            if state_tables.outputs(table, {c.input: c.value for c in some}, knowledge.base)[output] == value:
                return some
    return tuple(states)


def _reasons(table: StateTable, output: str, states: tuple[Condition, ...]) -> list[str]:
    """Return the statements that are the reason of a result with some states; else of what it is at all."""
    given = {(c.input, c.value) for c in states}
    own = [r for r in table.reasons if not r.of or output in r.of]
    found = [r.why for r in own if r.when and given.issuperset(r.when)]
    return list(dict.fromkeys(found)) or [r.why for r in own if not r.when][:1]
