"""The clauses of the steps of a procedure that the parts of a question ask for: "which lever, how much of it first?".

A question on one step, or on some, requires what its parts ask of them, each one thing, and none of the other steps.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

from assistant.conversation.reading_turns.readings import question_of
from assistant.knowledge.records import Procedure
from assistant.practice.marking.of_statements.step_clauses import (
    Chosen,
    asks_all,
    chosen_clauses,
    clause_points,
    content_words,
)
from assistant.practice.marking.points import Point
from assistant.practice.marking.questions.asked import Asked, as_asked, ask
from assistant.practice.marking.questions.parts import FORM, LEADS, POLAR, head_of, parts_of, pieces
from assistant.practice.marking.requiring.every_part import is_of_kind
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge
from assistant.resolving.ranking import candidates

_TWO = 2
_SURE = 0.6
_NEAR_BY = 4
_OF_STEP = re.compile(
    r"(?:and |then )*(?:at|in|for|with) (?:M|step |item )\d,? (?=what|which|who|whose|how|where)|"
    r"(?:and |then )*(?:with or without|on or off|up or down)\b",
    re.IGNORECASE,
)
"""What else begins a part of a question on steps: "and at M3 whose pedals", "with or without autobrake"."""


def step_parts(text: str) -> list[str]:
    """Return the parts of a question on a procedure, those that name a step or offer both ways of one among them."""
    known = parts_of(text)
    return [each for each in pieces(text) if each in known or (_OF_STEP.match(each) and not FORM.match(each))]


def by_clause(text: str, whole: Asked | None, know: Knowledge) -> tuple[Asked, ...]:
    """Return what each part of a question asks of the steps of a procedure; nothing where any asks for all of them."""
    parts = step_parts(text)
    if len(parts) < _TWO or any(asks_all(part) or _is_polar(part) for part in parts):
        return ()
    head = head_of(text, parts)
    found = _procedure(whole, head, know)
    if found is None:
        return ()
    procedure: Procedure = found.result.procedure  # type: ignore[union-attr]
    chosen = _chosen(parts, procedure, head, know)
    told = sum(bool(each.clauses) for each in chosen)
    if told < _TWO or not _is_each_its_own(chosen):
        return ()
    made = [_as_step(each, found, know) if each.clauses else _beside(each.part, head, know) for each in chosen]
    return tuple(one for one in made if one is not None) if all(made) else ()


def _is_polar(part: str) -> bool:
    return POLAR.match(LEADS.sub("", part)) is not None


def _is_each_its_own(chosen: Sequence[Chosen]) -> bool:
    """Return whether no two parts ask for the same of one clause."""
    told = [(c, each.kind) for each in chosen for c in each.clauses]
    return len(set(told)) == len(told)


def _chosen(parts: Sequence[str], procedure: Procedure, head: str, know: Knowledge) -> list[Chosen]:
    return chosen_clauses(parts, [step.do for step in procedure.steps], head, procedure.title, know)


def _procedure(whole: Asked | None, head: str, know: Knowledge) -> Asked | None:
    """Return the procedure that a question is on: the one that was found, or what is to be done in the case told."""
    result: Any = whole.result if whole else None
    if isinstance(result, r.ProcedureResult):
        return whole
    if not head or (result is not None and not isinstance(result, (r.FactResult, r.LimitResult, r.BothResult))):
        return None
    found = ask(f"{head}. What do you do?", know)
    if not found or found[0] < _SURE or not isinstance(found[1].result, r.ProcedureResult):
        return None
    title, told = (content_words(each) for each in (found[1].result.procedure.title, head))
    return found[1] if len(title & told) >= _MOST * len(title) else None


_MOST = 0.6
"""Share of the words of a procedure's title that a case told must hold."""


def _as_step(chosen: Chosen, found: Asked, know: Knowledge) -> Asked:
    result: Any = found.result
    return as_asked(chosen.part, found.question, result._replace(step=chosen.clauses[0].step), know)


def _beside(part: str, head: str, know: Knowledge) -> Asked | None:
    """Return the figure or statement that surely answers a part which no step does."""
    asking = LEADS.sub("", part)
    question = question_of(f"{head}: {asking}" if head else asking, know, "")
    near = [c for c in candidates(question, know)[:_NEAR_BY] if c.score >= _SURE and c.match and not c.match.barred]
    found = next((c for c in near if is_of_kind(c.result, asking, know)), None)
    return as_asked(part, question, found.result, know) if found else None


def points_by_clause(one: Asked, text: str, know: Knowledge) -> list[Point]:
    """Return the points of the clauses that one part of a question asks for; none where it asks for a whole step."""
    result: Any = one.result
    parts = step_parts(text)
    part = one.answer.question
    if part not in parts or len(parts) < _TWO or any(asks_all(each) or _is_polar(each) for each in parts):
        return []
    head = head_of(text, parts)
    chosen = _chosen(parts, result.procedure, head, know)
    own = chosen[parts.index(part)]
    if sum(bool(each.clauses) for each in chosen) < _TWO or not own.clauses or not _is_each_its_own(chosen):
        return []
    return clause_points(own, know) if own.clauses[0].step == result.step else []
