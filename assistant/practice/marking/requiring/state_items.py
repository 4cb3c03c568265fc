"""Results of a state that a question tells first: each thing asked for is asked of the tables by itself, in that state.

"Both systems are lost, the accumulator charged: how is the gear extended, and which brakes are left?" asks for one
result of two tables each, and for nothing else that they have; "give the braking mode, the pressure to hold and the
number of applications" for one result and the figures that go with another.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

from assistant.conversation.reading_turns.readings import question_of
from assistant.practice.marking.of_results.item_points import (
    ItemResult,
    asks_action,
    asks_label_shown,
    figure_pieces,
    item_points,
)
from assistant.practice.marking.of_results.outcomes import names_output
from assistant.practice.marking.questions.asked import Asked, as_asked, ask
from assistant.practice.marking.questions.parts import LEADS, parts_of, pieces
from assistant.practice.marking.questions.phrased import asks_label
from assistant.practice.marking.requiring.beside_a_state import names_nothing
from assistant.practice.marking.requiring.carried_on import called
from assistant.practice.marking.requiring.every_part import is_of_kind
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.ranking import candidates

_TWO = 2
_SURE = 0.6
_NEAR_BY = 8
_GIVE = re.compile(
    r"(?:please )?(?:and |then )*(?:give|state|name|tell|say)(?: me| us)? "
    r"(?=(?:the|whether|how|what|which|who|where)\b)",
    re.IGNORECASE,
)
_JOINED = re.compile(r"\s+and\s+(?=the |whether |how |what |which )", re.IGNORECASE)
_WHETHER = re.compile(r"(?:and )?whether\b", re.IGNORECASE)
_TELLS = re.compile(r"what does (?:it|that|this) (?:tell|mean|say|show)\b", re.IGNORECASE)
_THE = re.compile(r"^(?=the )", re.IGNORECASE)
_STEM = 5
_STATED = (r.FactResult, r.LimitResult, r.ScheduleResult)


def items_of(text: str) -> tuple[str, list[str]]:
    """Return what a question tells first, and the things that it asks for behind it, each in its own words."""
    known = parts_of(text)
    head: list[str] = []
    items: list[str] = []
    giving = listing = False
    for piece in pieces(text):
        given = _GIVE.match(piece)
        listing = listing or bool(given)
        giving = bool(given) or (giving and piece not in known) or (listing and bool(_WHETHER.match(piece)))
        if giving:
            own = piece[given.end() :] if given else piece
            items += [each for each in _JOINED.split(LEADS.sub("", own)) if each]
        elif piece in known:
            items.append(LEADS.sub("", piece))
        elif items:
            return "", []  # what is told between the parts is not told first
        else:
            head.append(piece)
    start = text.find(items[0]) if items else 0
    before = text[:start].strip(" ,:;.")
    return _GIVE_LAST.sub("", before).strip(" ,:;."), items


_GIVE_LAST = re.compile(r"(?:please )?\b(?:give|state|name|tell|say)(?: me| us)?$", re.IGNORECASE)


def of_its_state(text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return the result of a state that each thing asked for names, or what is stated of it; nothing unless all are."""
    head, items = items_of(text)
    if not head or len(items) < _TWO or not _tells_state(head, know):
        return ()
    made: list[Asked] = []
    for item in items:
        one = _of_item(head, item, made, know)
        if one is None:
            return ()
        if one not in made:
            made.append(one)
    if not any(isinstance(one.result, ItemResult) for one in made) or not _is_each_its_own(made):
        return ()
    made.sort(key=lambda one: not isinstance(one.result, ItemResult))  # the state stands before what is stated of it
    return tuple(made)


def _is_each_its_own(made: Sequence[Asked]) -> bool:
    """Return whether no two of the things asked for are answered alike."""
    told = [one.answer.text for one in made if not isinstance(one.result, ItemResult)]
    return len(set(told)) == len(told)


def _tells_state(head: str, know: Knowledge) -> bool:
    question = question_of(head, know, "")
    return bool(question.conditions) and not question.reading.has("why", "who", "steps")


def _of_item(head: str, item: str, before: Sequence[Asked], know: Knowledge) -> Asked | None:
    """Return what answers one of the things asked for in the state that is told."""
    last = next((one for one in reversed(before) if isinstance(one.result, ItemResult)), None)
    if last and (asks_action(item) or asks_label_shown(item) or _says_of_remark(item, last, know)):
        one = called(last, item)
        return one if item_points(one, item, know) != item_points(last, item, know) else None
    told = before[-1] if before else None
    if told and isinstance(told.result, r.FactResult) and _TELLS.match(item):
        return told
    question = question_of(f"{head}. {item}?", know, "")
    found = ask(f"{head}. {item}?", know)
    result: Any = found[1].result if found and found[0] >= _SURE else None
    tabled = result if isinstance(result, r.TableResult) else _tabled(question, item, know)
    if isinstance(tabled, r.TableResult) and not _is_stated(result, item):
        return _as_item(tabled, item, question, know)
    if _is_stated(result, item) and is_of_kind(result, _THE.sub("what is ", item), know):
        return as_asked(item, question, result, know)
    return _stated(item, know)


def _tabled(question: Question, item: str, know: Knowledge) -> r.TableResult | None:
    """Return the result of a table that a thing asked for names, where a statement is as near."""
    near = [c.result for c in candidates(question, know)[:_NEAR_BY] if c.score >= _SURE]
    asking = know.phrase(item).concepts
    fitting = [each for each in near if isinstance(each, r.TableResult) and len(each.asked) == 1]
    named = [each for each in fitting if know.phrase(_label(each)).concepts & asking]
    return max(named, key=lambda each: _shared(_label(each), item), default=None)


def _label(result: r.TableResult) -> str:
    return next(o.label for o in result.table.outputs if o.id == result.asked[0])


def _shared(one: str, other: str) -> int:
    """Return how many words two phrases share, by how they begin: "extension" and "extended"."""
    mine, theirs = ({w[:_STEM] for w in re.findall(r"[a-z-]{4,}", each.lower())} for each in (one, other))
    return len(mine & theirs)


def _as_item(result: r.TableResult, item: str, question: Question, know: Knowledge) -> Asked | None:
    """Return the one result of a table that a thing asked for names; None where it is several, or the case is open."""
    if len(result.rows) != 1 or result.labels or result.label:
        return None
    asking = know.phrase(item).concepts
    named = [o.id for o in result.table.outputs if names_output(o, asking, know)]
    given = {c.output for c in question.conditions if c.is_result} - set(named)
    own = named or _meant(result, item) or [name for name in result.asked if name not in given]
    if not own and figure_pieces(result, item, know):
        own = [result.rows[0].outputs[0][0]]
    if len(own) != 1:
        return None
    one = as_asked(item, question, result._replace(asked=tuple(own)), know)
    return one._replace(result=ItemResult(*one.result))


def _meant(result: r.TableResult, item: str) -> list[str]:
    """Return the one result of a table of which a thing asked for has more words than of the others."""
    counts = {o.id: _shared(o.label, item) for o in result.table.outputs}
    best = [name for name, count in counts.items() if count == max(counts.values())]
    return best if len(best) == 1 and len(counts) > 1 and counts[best[0]] >= _TWO else []


def _says_of_remark(item: str, last: Asked, know: Knowledge) -> bool:
    """Return whether a thing asked for names nothing but what is remarked on the state: "is it to be relied on"."""
    result: Any = last.result
    remarks = " ".join(remark for _, _, remark in result.table.remarks)
    return names_nothing(item) and _shared(remarks, item) > 0


def _is_stated(result: Any, item: str) -> bool:
    """Return whether a statement, and no result of a state, is asked for: a figure, a reason, a light."""
    if isinstance(result, r.FactResult):
        return _WHY.match(item) is not None or (asks_label(item) and not _COLOUR.search(item))
    return isinstance(result, _STATED)


_COLOUR = re.compile(r"\bcolou?rs?\b", re.IGNORECASE)
_WHY = re.compile(r"why\b", re.IGNORECASE)


def _stated(item: str, know: Knowledge) -> Asked | None:
    """Return the statement or figure that surely answers a thing asked for, whatever the state."""
    found = ask(item, know)
    if not found or found[0] < _STANDS or not _is_stated(found[1].result, item):
        return None
    return found[1] if is_of_kind(found[1].result, _THE.sub("what is ", item), know) else None


_STANDS = 0.75
