"""Hold a question against the assistant's own answer: only what it answers rightly may be asked of a person."""

from __future__ import annotations

import re

from assistant.answering.answer import Answer
from assistant.answering.states import output_words
from assistant.conversation.context import Context
from assistant.conversation.turn import answer_turn
from assistant.knowledge.records import READING
from assistant.practice.making.question import CALCULATION, FACT, OUTSIDE, WITHIN, Draft, Expected, Key
from assistant.practice.making.wording import content
from assistant.quantities.show import number_words
from assistant.resolving import tables
from assistant.resolving.knowing import Knowledge
from assistant.understanding.words import stem

_DUST = 1e-6
_GOES_ON = "…"
"""What a statement that is only begun ends in."""
_CLOSED = frozenset({"do", "does", "is", "are", "can", "may", "must", "will"})
"""First words of a question that yes or no answers."""
_AMOUNT = re.compile(
    r"(?:(?:at|above|below) )?(?:how (?:many|much|long|fast|far|high|hot)"
    r"|(?:what|which)\b.*\b(?:speed|temperature|pressure|time|angle))\b",
    re.IGNORECASE,
)
"""What asks for the number of a statement, whatever else of it stands in the question."""
_COUNTED = re.compile(
    r"(?:say |state )?how many ((?:[a-z-]+ )*?[a-z-]+)"
    r"(?= (?:are|is|has|have|do|does|may|must|can|will|the|there|in|on|of|with)\b|\?|\.)",
    re.IGNORECASE,
)
"""What is counted where a question asks how many there are."""
_NONE = frozenset(("no", "none", "not"))
_NEAR = 5
"""Words after a number within which what it counts is named."""
_CLOSE = 0.002
"""Share by which the assistant's computed number may differ from ours: the same physics, other roundings."""


def answer_to(text: str, variant: str, know: Knowledge) -> Answer:
    """Return what the assistant answers to a question asked by itself."""
    answer, _ = answer_turn(text, Context(variant=variant), know)
    return answer


def differences(key: Key, entry: str, answer: Answer, know: Knowledge) -> tuple[str, ...]:
    """Return in what an answer is not what a key holds; nothing when it bears it out."""
    found = []
    if answer.outcome != key.outcome:
        return (f"outcome {answer.outcome}",)
    if answer.entry != entry:
        found.append(f"entry {answer.entry}")
    opens = {WITHIN: "Within ", OUTSIDE: "Outside "}.get(key.verdict, "")
    if not answer.text.startswith(opens) and getattr(know.base.records[entry], "opens", "") != READING:
        found.append(f"not {key.verdict}")
    found += [f"no {each.value:g} {each.unit}" for each in key.values if not _holds(each, answer, know)]
    if key.values and not key.verdict and not _leads(key.values[0], answer, know):
        found.append(f"not first: {key.values[0].value:g} {key.values[0].unit}")
    found += [f"not {output} {value}" for output, value in key.states if not _states(output, value, answer, know)]
    if key.states and _tells_of_others(key, answer, know):
        found.append("results of other tables too")
    if key.sets and answer.values[:1] and answer.values[0].value != len(key.sets):
        found.append(f"{answer.values[0].value:g} sets")
    found += [f"not said: {point}" for point in _stated(key) if point.lower().rstrip(".") not in answer.text.lower()]
    if key.formerly and key.formerly.lower() not in answer.text.lower():
        found.append("not the former value")
    return tuple(found)


def counts_otherwise(text: str, key: Key) -> bool:
    """Return whether a wording asks how many there are of something of which a statement gives no number.

    A statement that has a number may be asked for another one by it: how many codes there are, of one code for each
    third. The number must stand before what is counted.
    """
    asked = _COUNTED.match(text)
    if not asked or not key.says:
        return False
    counted = stem(asked[1].split()[-1].lower())
    told = [stem(word) for word in re.findall(r"[a-z0-9/-]+", key.says.lower())]
    counts = _NONE | {form for each in key.values if each.unit == "count" for form in _written(each.value)}
    return not any(told[i] in counts and counted in told[i + 1 : i + _NEAR] for i in range(len(told)))


def _written(number: float) -> tuple[str, str]:
    """Return a number in figures and in a word, as stems."""
    return f"{number:g}", stem(number_words(number))


def gives_away(text: str, draft: Draft) -> bool:
    """Return whether a wording holds its own answer: the number, or most of what must be said."""
    key, asked = draft.key, content(text)
    if key.verdict or key.states or key.sets:
        return False
    if key.values and f"{key.values[0].value:{'.0f' if draft.form == CALCULATION else 'g'}}" in _numbers(asked):
        return key.values[0].tolerance == 0 or draft.form == CALCULATION  # a sum that changes nothing is none
    if text.split()[0].lower() in _CLOSED or (key.values and _AMOUNT.match(text)):
        return False
    points = key.points or ((key.says,) if not key.values else ())
    given = [point for point in points if (said := content(point)) and said <= asked]
    if _GOES_ON in text:
        return len(given) == len(points)  # what is begun holds some of it, and is to be ended
    return bool(points) and 2 * len(given) >= len(points) and (draft.form != FACT or len(given) > 0)


def _numbers(stems: frozenset[str]) -> frozenset[str]:
    return frozenset(stem.replace(",", "") for stem in stems if stem[0].isdigit())


def _stated(key: Key) -> tuple[str, ...]:
    """Return what must stand in the text word for word: the steps, the ways, the sentences of results."""
    return key.points if key.ordered or key.sets or key.states or key.verdict else ()


def _same(one: Expected, value: float, unit: str, know: Knowledge) -> bool:
    if unit != one.unit and not {unit, one.unit} <= {"count", "factor"}:
        if know.units.get(unit).dimension != know.units.get(one.unit).dimension:
            return False
        value = know.units.convert(value, unit, one.unit)
    return abs(value - one.value) <= max(_DUST, abs(one.value) * (_CLOSE if one.tolerance else 0.0))


def _holds(one: Expected, answer: Answer, know: Knowledge) -> bool:
    return any(_same(one, each.value, each.unit, know) for each in answer.values)


def _leads(one: Expected, answer: Answer, know: Knowledge) -> bool:
    first = answer.values[:1]
    return bool(first) and _same(one, first[0].value, first[0].unit, know)


def _tells_of_others(key: Key, answer: Answer, know: Knowledge) -> bool:
    """Whether an answer says a result of a table that was not asked for: then no short answer to it would be whole."""
    asked = {output.split(".", 1)[0] for output, _ in key.states}
    return any(
        output_words(table, output.id, value) in answer.text
        for table in tables.tables(know.base) if table.id not in asked
        for output in table.outputs for value, _, _ in output.values
    )  # fmt: skip


def _states(output: str, value: str, answer: Answer, know: Knowledge) -> bool:
    """Whether an answer says a table's result, and none of the others that it could be."""
    table, name = output.split(".", 1)
    record = know.base.records[table]
    said = answer.text
    for each in record.outputs:
        if each.id == name:
            others = [says for other, says, _ in each.values if other != value]
            mine = output_words(record, name, value)
            return mine in said and not any(says in said.replace(mine, "") for says in others)
    return False
