"""Statements that a question asks for beside the results of a state: "what do they do, and what makes them do it?".

A state table tells what follows in a state. A part that names none of its results, and that a statement surely
answers, asks for that statement, and not for one more of the results.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

from assistant.conversation.reading_turns.readings import question_of
from assistant.practice.marking.of_results.outcomes import names_output, table_results
from assistant.practice.marking.of_results.remarks import ACTION, COUNTED
from assistant.practice.marking.questions.asked import Asked, as_asked, record_of, said_whole
from assistant.practice.marking.questions.parts import LEADS, POLAR, head_of
from assistant.practice.marking.questions.phrased import asks_label, label_in
from assistant.practice.marking.requiring.carried_on import called, in_turn
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge
from assistant.resolving.ranking import candidates

_TWO = 2
_SURE = 0.6
_ASPECT = re.compile(
    r"(?:and )?(?:why|what (?:makes|brings|causes|drives|holds|centres|moves|stops|puts)|by what|"
    r"what (?:is|are) (?:it|that|they) (?:there |good |used |meant )?for|in what colou?r|what colou?r)\b",
    re.IGNORECASE,
)
"""What asks for something that is no result of a state: its cause, its purpose, a colour."""


def with_statements(found: tuple[Asked, ...], parts: Sequence[str], text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return the results of a state that the parts of a question ask for, and the statements that answer the others."""
    result: Any = found[0].result if len(found) == 1 else None
    if not isinstance(result, (r.TableResult, r.TablesResult)) or len(parts) < _TWO:
        return found
    beside = [n for n, part in enumerate(parts) if n and _ASPECT.match(part) and not _names_result(result, part, know)]
    if not beside:
        return found
    told = in_turn(parts, text, know)
    made: list[Asked] = []
    for n in beside:
        one = _statement(n, parts, told[n - 1 : n + 1], text, know)
        if one and not any(record_of(one.result) is record_of(each.result) for each in made):
            made.append(one)
    if not made:
        return found
    kept = [part for n, part in enumerate(parts) if n not in beside]
    head = head_of(text, parts)
    asking = f"{head}. {', '.join(kept)}?" if head else f"{', '.join(kept)}?"
    return (called(found[0], asking), *made)


def without_states(found: tuple[Asked, ...], parts: Sequence[str], text: str) -> tuple[Asked, ...]:
    """Return the one statement of two things that answers a question, where a why of it was taken for a state."""
    facts = [one for one in found if isinstance(one.result, r.FactResult) and len(one.result.fact.points) >= _TWO]
    states = [one for one in found if isinstance(one.result, (r.TableResult, r.TablesResult)) and one not in facts]
    whys = [one for one in states if one.answer.question in parts and _WHY.match(one.answer.question)]
    if len(facts) != 1 or not whys or len(whys) < len(states) or len(found) > len(facts) + len(whys):
        return found
    return (called(facts[0], text),)


_WHY = re.compile(r"(?:and )?why\b", re.IGNORECASE)


def _names_result(result: Any, part: str, know: Knowledge) -> bool:
    """Return whether a part names a result of a state: the mode, the bars."""
    asking = know.phrase(part).concepts
    named = any(names_output(o, asking, know) for each in table_results(result) for o in each.table.outputs)
    return named or bool(COUNTED.search(part) or ACTION.search(part) or POLAR.match(LEADS.sub("", part)))


def names_nothing(part: str) -> bool:
    """Return whether a part speaks of what was told before it alone: "is it to be relied on"."""
    return re.search(r"\b(?:it|that|they|them|this)\b", part, re.IGNORECASE) is not None


def _statement(
    place: int, parts: Sequence[str], told: Sequence[Asked | None], text: str, know: Knowledge
) -> Asked | None:
    """Return the statement that surely answers a part: of the result, the label or the things told before it."""
    part = LEADS.sub("", parts[place])
    last, own = told
    before = f"{head_of(text, parts)}. {parts[0]}"
    label = label_in(last.answer.text) if last and asks_label(parts[place - 1]) else ""
    result = re.split(r" and |[.:]", last.answer.text)[0] if last else ""
    texts = [f"{label} {part}"] if label else [f"{result}: {part}", said_whole(part, before, know)]
    found = [one for each in texts for one in _facts(each, parts[place], know)]
    if found:
        return max(found, key=lambda one: one[0])[1]
    return called(own, parts[place]) if own and isinstance(own.result, r.FactResult) else None


def _facts(text: str, part: str, know: Knowledge) -> list[tuple[float, Asked]]:
    """Return the statement that answers a text best, with its score; what leads to a state is no statement."""
    question = question_of(text, know, "")
    near = [c for c in candidates(question, know)[:_NEAR] if c.match and not c.match.barred and c.score >= _SURE]
    facts = [c for c in near if isinstance(c.result, r.FactResult) and not _IS_LEAD.search(c.result.fact.says)]
    return [(facts[0].score, as_asked(part, question, facts[0].result, know))] if facts else []


_NEAR = 6
_IS_LEAD = re.compile(r"\b(?:castor|lost|works?|steer)\b[^.;]* (?:with|if|when) ", re.IGNORECASE)
"""A statement of what leads to a result, as the tables tell it."""
