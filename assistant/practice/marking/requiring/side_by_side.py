"""Several things in one list, each answered by a record of its own: "which system do A, B and C run on?".

The question is asked once with each thing of the list in the place of them all.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import product

from assistant.conversation.several.in_a_list import each_listed
from assistant.practice.marking.of_statements.compound import ITEM, best_of, tells
from assistant.practice.marking.questions.asked import Asked, as_asked, record_of
from assistant.practice.marking.questions.parts import POLAR, parts_of
from assistant.resolving import results as r
from assistant.resolving.asked_quantity import quantity_of
from assistant.resolving.knowing import Knowledge

_STATED = (r.FactResult, r.LimitResult)
_BREAK = re.compile(r",\s*(?:and\s+|or\s+)?|\s+and\s+", re.IGNORECASE)
_ASPECT = re.compile(r"(?:when|why|where|who|how|what|which)\b", re.IGNORECASE)
_LEAST = 3
_LONG = 4
"""Words that a thing of a list has at most."""


def of_each_thing(found: tuple[Asked, ...], text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return what answers a question for each of the things that it lists; nothing unless all are answered.

    found: what answers it otherwise; left where it tells as much.
    """
    if not all(isinstance(one.result, (*_STATED, r.ScheduleResult, r.BothResult)) for one in found):
        return ()
    made = tuple(as_asked(one.text, one.question, one.result, know) for one in each_listed(text, know))
    if made:
        return () if _told_already(found, made) else made
    if len(parts_of(text)) > 1 or POLAR.search(text) or not all(isinstance(one.result, _STATED) for one in found):
        return ()
    return _of_one_kind(found, text, know)


def _told_already(found: tuple[Asked, ...], made: tuple[Asked, ...]) -> bool:
    """Return whether what answers a question otherwise tells as many things as it lists."""
    if any(tells(one) >= len(made) > 1 for one in found):
        return True
    records = [id(record_of(one.result)) for one in found]
    return len(found) >= len(made) or all(id(record_of(one.result)) in records for one in made)


def _of_one_kind(found: tuple[Asked, ...], text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return figures of one quantity, or statements, that come nearest to each of three things or more in a list."""
    for before, items, after in _lists(text, know):
        told_already = len(found) >= len(items) or any(tells(one) >= len(items) - 1 > 0 for one in found)
        if told_already or any(_ASPECT.match(item) for item in items):
            continue
        texts = [f"{before} {item} {after}" for item in items]
        made = [best_of(each, each, ITEM, know) for each in texts]
        told = [one for one in made if one is not None and isinstance(one.result, _STATED)]
        kinds = {(type(one.result), quantity_of(one.result, know)) for one in told}
        if len({id(record_of(one.result)) for one in told}) == len(items) and len(kinds) == 1:
            return tuple(told)
    return ()


def _lists(text: str, know: Knowledge) -> Iterator[tuple[str, list[str], str]]:
    """Yield what stands before a list, its things, and what stands behind it, in each way that it may be meant."""
    text = text.strip(" ?.")
    pieces = _BREAK.split(text)
    if len(pieces) < _LEAST or any(len(each.split()) > _LONG for each in pieces[1:-1]):
        return
    for first, last in product(_ends(pieces[0], know, back=True), _ends(pieces[-1], know, back=False)):
        before = pieces[0][: len(pieces[0]) - len(first)]
        yield before.strip(), [first, *pieces[1:-1], last], pieces[-1][len(last) :].strip()


def _ends(piece: str, know: Knowledge, back: bool) -> Iterator[str]:
    """Yield how much of a piece may be the thing at its end, or at its beginning: its one or two names there."""
    spots = [found.span() for found in re.finditer(r"\S+", piece)]
    words = [piece[a:b] for a, b in spots]
    for n in range(1, min(len(words), _LONG) + 1):
        chosen = words[-n:] if back else words[:n]
        if any(not m.weak for m in know.phrase(" ".join(chosen)).mentions):
            yield piece[spots[-n][0] :] if back else piece[: spots[n - 1][1]]
