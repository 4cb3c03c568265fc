"""What a thing does after an event that the words before tell: "where do they melt, and what does the tyre then do?".

A figure, or why the thing is there, is near to such a part, for it names the event; neither says what the thing does.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

from assistant.practice.marking.of_statements.of_part import asks_figure
from assistant.practice.marking.questions.asked import Asked, as_asked, ask, is_same
from assistant.practice.marking.questions.parts import LEADS, head_of
from assistant.practice.marking.requiring.carried_on import called
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge

_DOES = re.compile(
    r"what (?:does|do|will|would) (?!it\b|they\b|that\b|this\b)(?:the |an? |your |its )?[\w-]+(?: [\w-]+)? "
    r"(?:then |now )?do\b|"
    r"what (?:then )?happens to\b|what becomes of\b",
    re.IGNORECASE,
)
_ASKED_OF = re.compile(
    r"^.*?\b(?:do|does|did|is|are|will|may|can|must|should) (?=(?:the|an?|your|its|all|both) )", re.IGNORECASE
)
_SURE = 0.6


def what_is_done(found: tuple[Asked, ...], parts: Sequence[str], text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return what answers the parts of a question, of which one that asks what a thing does is answered by that."""
    head = head_of(text, parts)
    made = list(found)
    for one in found:
        part = one.answer.question
        if part not in parts or not _DOES.match(LEADS.sub("", part)) or asks_figure(part) or _tells_it(one):
            continue
        place = parts.index(part)
        before = head if place == 0 else _ASKED_OF.sub("", parts[place - 1])
        told = _doing(f"{before}. {LEADS.sub('', part)}", part, know) if before else None
        if told and any(is_same(told, each) for each in found):
            if not isinstance(one.result, r.LimitResult):
                continue  # what it is there for answers another part
            made = [called(each, text) if is_same(told, each) else each for each in made if each is not one]
        elif told:
            made = [told if each is one else each for each in made]
    return tuple(made)


def _tells_it(one: Asked) -> bool:
    """Return whether a statement tells something, and not why a thing is there."""
    fact = getattr(one.result, "fact", None)
    return fact is not None and "why" not in fact.answers


def _doing(text: str, part: str, know: Knowledge) -> Asked | None:
    found = ask(text, know)
    result: Any = found[1].result if found and found[0] >= _SURE else None
    both = (result.first, result.second) if isinstance(result, r.BothResult) else (result,)
    facts = [each for each in both if isinstance(each, r.FactResult)]
    return as_asked(part, found[1].question, facts[0], know) if found and facts else None
