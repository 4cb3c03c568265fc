"""Several figures or statements in one list: "Taxi speeds: straight, in turns, ...", "what are its wheelbase, its ...".

Each item of a list is asked with the subject that stands before it.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

from assistant.practice.marking.of_statements.compound import best_of, of_all, tells
from assistant.practice.marking.questions.asked import Asked, as_asked, record_of
from assistant.practice.marking.questions.parts import FORM
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge
from assistant.resolving.ranking import candidates

_ITEM = 0.6
"""Score from which one of several things asked about is answered."""
_STATED = (r.FactResult, r.LimitResult)
_ITEMS = re.compile(r"\s*[,;]\s*(?:and\s+)?|\s+and\s+")


def listed(whole: Asked | None, text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return the figure of each case that stands in a list behind a subject: "Taxi speeds: straight, in turns, …"."""
    head, items = _list_of(text)
    if len(items) < 2 or any(_is_form(item) for item in items) or (whole and tells(whole) >= len(items)):
        return ()
    together = of_all(items, head, know) if _WHAT_ABOUT.match(text) else None
    if together:
        return (together,)
    found = [best_of(f"{head} {item}", f"{head} {item}", _ITEM, know) for item in items]
    if any(one and isinstance(one.result, r.LimitResult) for one in found):
        told = [record_of(one.result) for one in found if one]
        found = [_figure(one, told, know) if one else one for one in found]
    made = [one for one in found if one is not None and isinstance(one.result, _STATED)]
    if len(made) < len(items) or len({id(record_of(one.result)) for one in made}) < len(items):
        return ()
    return tuple(made)


def _figure(one: Asked, told: Sequence[Any], know: Knowledge) -> Asked:
    """Return the figure that answers an item as well as a statement of it does, beside the figures of other items."""
    if isinstance(one.result, r.LimitResult):
        return one
    near = [c for c in candidates(one.question, know)[:_NEAR_BY] if c.match and not c.match.barred]
    figures = [
        c for c in near if isinstance(c.result, r.LimitResult) and c.score >= _ITEM and record_of(c.result) not in told
    ]
    return as_asked(one.answer.question, one.question, figures[0].result, know) if figures else one


_NEAR_BY = 5


def _list_of(text: str) -> tuple[str, list[str]]:
    """Return a subject and the list of what is asked of it: behind a colon, or "X's A, its B and its C"."""
    owned = _OWNED.match(text)
    if owned:
        return owned.group(1), [owned.group(2), *_ITS.split(owned.group(3))]
    its = _HEAD_ITS.match(text)
    if its:
        return its.group(1), [its.group(2), *_ITS.split(its.group(3))]
    about = _WHAT_ABOUT.match(text)
    if about:
        return about.group(1), [item for item in _ITEMS.split(about.group(2)) if item]
    has = _HAS.match(text)
    if has:
        return has.group(3), [item for item in _ITEMS.split(has.group(2)) if item]
    head, _, rest = text.partition(":")
    return head, [item for item in _ITEMS.split(rest.strip(" ?.")) if item]


_OWNED = re.compile(r"\s*what (?:is|are) (.+?)['’]s? (.+?),? (?:and )?its (.+?)\s*\?\s*$", re.IGNORECASE)
_HEAD_ITS = re.compile(
    r"\s*([^:,?]+)[:,] (?:what|which) (?:is|are) its ([^,?]+?),? (?:and )?its (.+?)\s*\?\s*$", re.IGNORECASE
)
"""Several figures of what stands before: "the long one: what are its wheelbase, its tyre pressure and its tiller?"."""
_WHAT_ABOUT = re.compile(r"\s*([^:?]+): (?:and )?what about ([^?]+,[^?]+ and [^?]+?)\s*\?\s*$", re.IGNORECASE)
_HAS = re.compile(
    r"\s*(what|which) ([\w -]+, [\w ,-]+ and [\w -]+?) (?:has|have|does|do) ([\w ]+?)(?: have)?\s*\?\s*$", re.I
)
"""Several figures of one thing: "what wheelbase, tyre pressure and tiller maximum has the long one?"."""
_ITS = re.compile(r",? (?:and )?its ")


def _is_form(item: str) -> bool:
    return bool(FORM.match(item) or _QUESTION.match(item))


_QUESTION = re.compile(r"(?:what|which|who|when|where|why|how|does|do|is|are|may|can)\b")
