"""Whether a state tells by itself the result that is asked for: what is switched off is not there, and needs no asking.

One thing of the state must lead to the result alone, so that nothing has to be weighed; and either it says of the very
thing asked for that it is off or lost, or its words hold all that the result says beyond the question.
"""

from __future__ import annotations

from assistant.answering.parts import conditions_words
from assistant.answering.states import output_words
from assistant.knowledge.records import StateTable, TableOutput
from assistant.practice.making.wording import content
from assistant.resolving import tables
from assistant.resolving.knowing import Knowledge
from assistant.understanding.states import Condition

_GONE = frozenset(("@off", "@lost"))
"""Groups of words for a state in which a thing does not work."""


def tells_result(state: tuple[tuple[str, str], ...], record: StateTable, output: TableOutput, know: Knowledge) -> bool:
    """Return whether a state names what an output comes to."""
    now, normal = (tables.outputs(record, given, know.base)[output.id] for given in (dict(state), {}))
    if now == normal:
        return False
    return any(
        tables.outputs(record, dict([each]), know.base)[output.id] == now and _names(each, now, record, output, know)
        for each in state
    )


def _names(condition: tuple[str, str], now: str, record: StateTable, output: TableOutput, know: Knowledge) -> bool:
    said = _words(conditions_words((Condition(*condition),), know))
    asked = _words(output.label)
    if asked and asked <= said and _is_gone(condition, know):
        return True
    result = _words(output_words(record, output.id, now))
    return bool(result - asked) and result - asked <= said | _words(" ".join(output.quiz))


def _is_gone(condition: tuple[str, str], know: Knowledge) -> bool:
    name, value = condition
    known = know.base.inputs[name].values
    return any(value == each and not _GONE.isdisjoint(words.split("; ")) for each, _, words in known)


def _words(text: str) -> frozenset[str]:
    return content(text.replace("-", " "))
