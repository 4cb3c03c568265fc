"""Parts of a question asked one after another, as the turns of a talk: each with the subject of those before it.

A part that leaves its subject out ("and what brings it up?") is nearest to many records when it is asked by itself.
What answers it must speak of the subject of the parts before; a part for which nothing does stays open, so that no
answer to the question is seen to be whole, and none is held against a record on something else.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import chain
from typing import Any

from assistant.answering.answer import ANSWER
from assistant.conversation.context import Context
from assistant.conversation.turn import answer_turn
from assistant.knowledge.records import Fact
from assistant.practice.marking.of_results.judged import RULE
from assistant.practice.marking.of_results.remarks import ACTION
from assistant.practice.marking.questions.asked import Asked, ask, is_same, listed_in, measures, record_of, said_whole
from assistant.practice.marking.questions.parts import LEADS, head_of
from assistant.practice.marking.questions.phrased import purpose_told
from assistant.practice.marking.requiring.too_few import TELLS_WHEN
from assistant.resolving import results as r
from assistant.resolving.asked_quantity import quantity_of
from assistant.resolving.knowing import Knowledge

_STATED = (r.LimitResult, r.ScheduleResult, r.FactResult, r.BandResult, r.TableResult, r.TablesResult)
_CARRIES = re.compile(r"\b(?:it|its|they|them|their|that|this|then|there|those|these|so)\b", re.IGNORECASE)
_OF_EACH = re.compile(r"\b(?:each|every one|all of them)\b", re.IGNORECASE)
_TOLD_OF, _TWO = (": ", "; "), 2
"""What stands between a thing and what a statement tells of it, and how many it must tell of to be a list."""


def on_the_subject(found: tuple[Asked, ...], parts: Sequence[str], text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return what answers the parts of a question, each on their common subject; what speaks of something else is left.

    What was found for a part off the subject gives way to what a talk has for it, or to nothing.
    """
    found = _without_each_told(_without_told_actions(found, parts, know), parts, know)
    own = {part: [one for one in found if one.answer.question == part] for part in parts}
    doubtful = [n for n, part in enumerate(parts) if n and _is_doubtful(own[part], part, know)]
    strays = [n for n, part in enumerate(parts) if n and _strays(own[part], n, parts, found, text, know)]
    if not strays and not doubtful:
        return found
    told = in_turn(parts, text, know)
    instead: dict[int, list[Asked]] = {}
    for n in sorted({*strays, *doubtful}):
        before = own[parts[n]]
        left = [one for one in found if not any(one is each for each in before)] + [*chain(*instead.values())]
        near = (_whole(parts[n], parts, text, know), told[n]) if n in strays else (told[n],)
        fitting = (one for one in near if one and _fits(one) and not _strays([one], n, parts, left, text, know))
        one = next((one for one in fitting if not any(is_same(one, each) for each in left)), None)
        instead[id(before[0])] = [one] if one else [] if n in strays else before
    return tuple(each for one in found for each in instead.get(id(one), [one]))


def _fits(one: Asked) -> bool:
    """Return whether a result may answer a part: a statement, a figure, a step; no procedure as a whole."""
    return not isinstance(one.result, r.ProcedureResult) or one.result.step is not None


def _without_told_actions(found: tuple[Asked, ...], parts: Sequence[str], know: Knowledge) -> tuple[Asked, ...]:
    """Return what was found without what is told for a part that asks what follows: what a limit passed calls for."""
    result: Any = found[0].result if found else None
    if not isinstance(result, r.CheckResult) or not any(not c.within and c.limit.exceeded for c in result.checks):
        return found
    return (found[0], *(one for one in found[1:] if not _only_acts(one.answer.question, parts, know)))


def _without_each_told(found: tuple[Asked, ...], parts: Sequence[str], know: Knowledge) -> tuple[Asked, ...]:
    """Return what was found without what was found for a part that asks of each thing that the part before lists."""
    told = _each_told(found, parts, know)
    return tuple(one for n, one in enumerate(found) if not n or one.answer.question not in told)


def _each_told(found: Sequence[Asked], parts: Sequence[str], know: Knowledge) -> list[str]:
    """Return the parts that ask of each thing that the part before lists, where its statement tells of each: "what are
    the four states, and what does each mean".
    """
    record = record_of(found[0].result) if found else None
    if not isinstance(record, Fact) or max(map(record.says.count, _TOLD_OF)) < _TWO:
        return []
    return [part for part in parts[1:] if _OF_EACH.search(part) and not _things(part, know)]


def _only_acts(part: str, parts: Sequence[str], know: Knowledge) -> bool:
    """Return whether a part after the first asks what is to be done, and names nothing."""
    return part in parts[1:] and ACTION.search(part) is not None and not _things(part, know)


def _is_doubtful(own: Sequence[Asked], part: str, know: Knowledge) -> bool:
    """Return whether a part names nothing, so that what answers it depends on what was told before."""
    return len(own) == 1 and isinstance(own[0].result, _STATED) and not _things(part, know)


def in_turn(parts: Sequence[str], text: str, know: Knowledge) -> list[Asked | None]:
    """Return what answers each part where they are asked one after another; None for one that nothing answers."""
    context, head = Context(), head_of(text, parts)
    found: list[Asked | None] = []
    for n, part in enumerate(parts):
        asking = LEADS.sub("", part)
        answer, context = answer_turn(f"{head}: {asking}" if head and not n else asking, context, know)
        known = answer.outcome == ANSWER and context.asked is not None and context.result is not None
        one = Asked(context.asked, context.result, answer) if known else None  # type: ignore[arg-type]
        found.append(called(one, part) if one else None)
    return found


def called(one: Asked, part: str) -> Asked:
    """Return what answers a part, known by that part."""
    return one._replace(answer=one.answer._replace(question=part))


def _whole(part: str, parts: Sequence[str], text: str, know: Knowledge) -> Asked | None:
    """Return what answers a part with the name of its subject in the place of "it", asked by itself."""
    asking = LEADS.sub("", part)
    subject = head_of(text, parts) or parts[0]
    whole = said_whole(asking, subject, know)
    one = ask(whole, know) if whole != asking else None
    return called(one[1], part) if one and isinstance(one[1].result, _STATED) else None


def _strays(
    own: Sequence[Asked], place: int, parts: Sequence[str], found: Sequence[Asked], text: str, know: Knowledge
) -> bool:
    """Return whether what was found for a part speaks of something else than the parts before it."""
    if len(own) != 1:
        return False
    record, part = record_of(own[0].result), parts[place]
    if record is None or not hasattr(record, "id"):
        return False
    others = [record_of(one.result) for one in found if one.answer.question in parts and one is not own[0]]
    stated = [each for each in others if each is not None and hasattr(each, "sources")]
    if know.is_general(record) and any(not know.is_general(each) for each in stated):
        return True
    if any(set(record.sources) & set(each.sources) for each in stated):
        return False
    if _is_another_measure(own[0], place, parts, found, know):
        return True
    known = know.matcher.vocabulary(record.id)
    named = _things(part, know)
    if named and not _CARRIES.search(part) and all(thing & known for thing in named):
        return False
    before = [thing for each in (head_of(text, parts), *parts[:place]) for thing in _things(each, know)]
    told = _told(record, know)
    return bool(before) and not any(thing & told for thing in before)


def _is_another_measure(
    one: Asked, place: int, parts: Sequence[str], found: Sequence[Asked], know: Knowledge
) -> bool:
    """Return whether a part asks how much "it" is, and what was found is no figure of the kind told before it."""
    before = [each for each in found if each.answer.question == parts[place - 1] and each is not one]
    if len(before) != 1 or not _HOW_MUCH.search(parts[place]):
        return False
    mine, theirs = quantity_of(one.result, know), quantity_of(before[0].result, know)
    return bool(mine and theirs) and mine != theirs


_HOW_MUCH = re.compile(r"\bhow much (?:is|are|does|do) (?:it|that|this|they|those)\b", re.IGNORECASE)


def _told(record: Any, know: Knowledge) -> frozenset[str]:
    """Return what a record itself speaks of, without the words that may only stand in a question for it."""
    fields = (getattr(record, name, "") for name in ("says", "of", "title"))
    return know.reader.read(". ".join((*fields, *listed_in(record)))).concepts




def _things(text: str, know: Knowledge) -> list[frozenset[str]]:
    """Return the things that a text names, each with all that it may stand for."""
    told = know.reader.read(text).mentions if text else ()
    return [m.concepts for m in told if not know.matcher.is_soft(m) and not measures(m.concepts, know)]


def has_open(found: Sequence[Asked], parts: Sequence[str], text: str, know: Knowledge) -> bool:
    """Return whether a part is answered by nothing that was found, where the others have answers of their own."""
    answered = {LEADS.sub("", one.answer.question) for one in found}
    own = [part for part in parts if LEADS.sub("", part) in answered]
    if not own and len(found) == 1 and isinstance(found[0].result, (r.CheckResult, r.BandResult)):
        return _asks_on(found[0], parts, text, know)
    if not own or len(own) == len(parts) or len(found) >= len(parts):
        return False
    known = [record_of(one.result) for one in found]
    judged = isinstance(found[0].result, r.CheckResult)
    ruled = judged or isinstance(found[0].result, r.BandResult)
    left = [n for n, p in enumerate(parts) if p not in own and not (judged and _only_acts(p, parts, know))]
    left = [n for n in left if not (ruled and RULE.search(parts[n]))]
    each_told = _each_told(found, parts, know)
    left = [n for n in left if parts[n] not in each_told and not TELLS_WHEN.match(parts[n])]
    left = [n for n in left if not (_TELLS_ON.match(LEADS.sub("", parts[n])) and _tells_several(known))]
    left = [n for n in left if not any(_tells_it(each, parts[n], know) for each in known)]
    told = in_turn(parts, text, know) if left else []
    return any(told[n] is None or not any(record_of(told[n].result) is each for each in known) for n in left)  # type: ignore[union-attr]


_TELLS_ON = re.compile(r"what does (?:it|that|this) (?:tell|mean|say|show)\b", re.IGNORECASE)
"""What asks what the thing told before says, which its statement tells too."""


def _tells_several(records: Sequence[Any]) -> bool:
    return any(len(getattr(each, "points", ())) >= _TWO for each in records)


def _asks_on(one: Asked, parts: Sequence[str], text: str, know: Knowledge) -> bool:
    """Return whether a part behind what is judged asks for something else, of which the whole answer says nothing."""
    left = [n for n, part in enumerate(parts) if n and _ASKS_ON.match(part) and not RULE.search(part)]
    left = [n for n in left if not ACTION.search(parts[n])]
    known = frozenset(re.findall(r"[a-z]+", one.answer.text.lower()))
    told = in_turn(parts, text, know) if left else []
    return any(each is None or not _told_words(each) <= known for each in (told[n] for n in left))


def _told_words(one: Asked) -> frozenset[str]:
    """Return the words of what a statement tells: of its points, or of itself."""
    record: Any = record_of(one.result)
    points = listed_in(record) or (one.answer.text,)
    return frozenset(re.findall(r"[a-z]+", " ".join(points).lower()))


_ASKS_ON = re.compile(r"(?:and |then )*(?:what|who|whom|where|which|how)\b", re.IGNORECASE)


def _tells_it(record: Any, part: str, know: Knowledge) -> bool:
    """Return whether a record that answers another part tells in its points what a part names, or what it is for."""
    points = listed_in(record)
    named = _things(part, know)
    told = know.reader.read(". ".join(points)).concepts if points else frozenset()
    return purpose_told(part, points) or (bool(named) and all(thing & told for thing in named))
