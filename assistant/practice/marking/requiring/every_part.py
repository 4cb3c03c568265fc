"""Several things that one question asks for, each made a question of its own: nothing unless each is surely answered.

A part leaves out what the parts before it name: "how many degrees up to 15 kt, and how many at 50 kt". It is asked with
the subject that stands before the parts, with the things that the first names, or as the part before it with its own
name or number in the place of the like. Of what answers it, only what is of the kind asked for counts: a figure, a
reason, a place.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Any

from assistant.conversation.reading_turns.readings import question_of
from assistant.practice.marking.finding.elements import told_concepts
from assistant.practice.marking.of_results.outcomes import names_output, table_results
from assistant.practice.marking.of_statements.compound import joined, members, of_each
from assistant.practice.marking.of_statements.of_part import asks_figure
from assistant.practice.marking.questions.asked import Asked, as_asked, is_same, measures, record_of, said_whole
from assistant.practice.marking.questions.parts import aspects_of, head_of
from assistant.practice.marking.questions.siblings import with_siblings
from assistant.resolving import results as r
from assistant.resolving.asked_quantity import QUANTITIES, quantity_of
from assistant.resolving.candidates import Candidate
from assistant.resolving.knowing import Knowledge
from assistant.resolving.ranking import candidates

_ASPECTS = (
    ("why", re.compile(r"\bwhy\b", re.IGNORECASE)),
    ("where", re.compile(r"\bwhere\b(?! from)", re.IGNORECASE)),
    ("who", re.compile(r"\b(?:who|whom|whose(?! (?:pressure|speed|mass)))\b", re.IGNORECASE)),
    ("colour", re.compile(r"\bcolou?rs?\b", re.IGNORECASE)),
)
_SURE = 0.6
_FIGURE_SURE = 0.4
"""Score from which a statement answers a part; where only figures of the kind asked for count."""
_AS_NEAR = 0.04
_NEAR_BY = 6
_TWO = 2
_STATED = (r.LimitResult, r.ScheduleResult, r.FactResult)


def with_every_part(found: tuple[Asked, ...], parts: Sequence[str], text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return what answers a question, with a surer answer of each part that has none, or one of another kind."""
    by_part = {part: [one for one in found if one.answer.question == part] for part in parts}
    if len(found) == 1 and isinstance(found[0].result, (r.LimitResult, r.ScheduleResult)):
        by_part[parts[0]] = list(found)
    elif not any(by_part.values()):
        return found
    found = tuple(one for one in found if not _is_idle(one, know))
    by_part = {part: [one for one in own if one in found] for part, own in by_part.items()}
    if not all(isinstance(one.result, _STATED) for one in found):
        return found
    head = head_of(text, parts)
    variant = question_of(text, know, "").variant
    others = [one for one in found if not any(one in each for each in by_part.values())]
    if others and len(others) >= sum(not own for own in by_part.values()):
        return found  # each part has its answer, in other words
    made: list[Asked] = []
    for n, part in enumerate(parts):
        own = by_part[part]
        if not own or any(_lacks_figure(one.result, part, know) for one in own):
            one = _answer(part, _texts(n, parts, head, know), variant, know)
            own = [one] if one and not any(is_same(one, other) for other in made) else own
        elif len(own) == 1 and (head or not n):
            one = _surer(own[0], part, head, variant, know)
            own = [one] if one and not any(is_same(one, other) for other in (*found, *made)) else own
        told = _of_the_told(part, made, variant, know) if n else None
        own = [told] if told else own
        if len(own) == 1:
            own = [_not_far_off(own[0], part, list(_texts(n, parts, head, know)), made, know)]
        made += [each for one in own for each in _each_of(one, part, know)]
    return (*made, *others)


def _not_far_off(
    own: Asked, part: str, texts: Sequence[tuple[str, str]], made: Sequence[Asked], know: Knowledge
) -> Asked:
    """Return what surely answers a part in full, where what was taken for it is far from answering it."""
    taken, score = record_of(own.result), 0.0
    best: tuple[float, Asked] | None = None
    for _, text in texts:
        question = question_of(text, know, own.question.variant)
        near = candidates(question, know)[:_NEAR_BY]
        score = max([score, *(c.score for c in near if record_of(c.result) is taken)])
        sure = [c for c in near if c.score >= _CERTAIN and c.match and not c.match.barred]
        if (
            score < _FAR_OFF
            and sure
            and is_of_kind(sure[0].result, part, know)
            and (best is None or sure[0].score > best[0])
        ):
            best = sure[0].score, as_asked(part, question, sure[0].result, know)
    subject = {c for m in know.phrase(texts[-1][0]).mentions if not know.matcher.is_soft(m) for c in m.concepts}
    if best is None or score >= _FAR_OFF or any(is_same(best[1], other) for other in made):
        return own
    known = know.matcher.vocabulary(record_of(best[1].result).id)
    return best[1] if subject <= known else own


_CERTAIN = 0.85
_FAR_OFF = 0.36
"""Score from which a statement is sure to answer a part; below which it does not."""


def _is_idle(one: Asked, know: Knowledge) -> bool:
    """Return whether bands are taken for a part that gives no number to be judged: "what if they are further apart"."""
    if not re.match(r"(?:and |but )?what if\b", one.answer.question, re.IGNORECASE):
        return False
    return isinstance(one.result, r.BandResult) and not know.phrase(one.answer.question).amounts


def _surer(own: Asked, part: str, head: str, variant: str, know: Knowledge) -> Asked | None:
    """Return the statement that answers a part in full much better than the one that was taken for it, if any does."""
    taken = record_of(own.result)
    asking = re.sub(r"^(?:and|then) ", "", part)
    question = question_of(f"{head}: {asking}" if head else asking, know, variant)
    near = [c for c in candidates(question, know)[:_NEAR_BY] if c.match and not c.match.barred]
    score = max((c.score for c in near if record_of(c.result) is taken), default=0.0)
    least = max(_STANDS, score)
    if _of_aspect(asking) and not is_of_kind(own.result, asking, know):  # another aspect of it: who, where
        least, score = max(_SURE, score - _BETTER), 0.0
    near = [c for c in near if c.score >= least and is_of_kind(c.result, asking, know)]
    figures = [c for c in near if _is_plain_figure(c.result, own, asking, know)]
    better = figures or [c for c in near if c.score >= score + _BETTER]
    return as_asked(part, question, better[0].result, know) if better else None


def _is_plain_figure(result: Any, own: Asked, part: str, know: Knowledge) -> bool:
    """Return whether a figure answers "what is the pre-charge", where a statement without one was taken."""
    fact = getattr(own.result, "fact", None)
    plain = isinstance(result, r.LimitResult) and re.match(r"what (?:is|are) the \S+$", part) is not None
    return plain and fact is not None and not know.phrase(fact.says).amounts


def _of_the_told(part: str, made: Sequence[Asked], variant: str, know: Knowledge) -> Asked | None:
    """Return the figure of what the part before is answered by: "which setting, and what does it aim at?"."""
    fact = getattr(made[-1].result, "fact", None) if made else None
    if fact is None or not _IT.search(part) or not asks_figure(part):
        return None
    named = members(" ".join(fact.points), know)
    if len(named) != 1 or members(made[-1].answer.question, know):
        return None
    asking = re.sub(r"^(?:and|then) ", "", _IT.sub(named[0], part))
    question = question_of(asking, know, variant)
    near = [c for c in candidates(question, know)[:_TWO] if c.match and not c.match.barred and c.score >= _SURE]
    found = next((c for c in near if isinstance(c.result, r.LimitResult) and is_of_kind(c.result, part, know)), None)
    return as_asked(part, question, found.result, know) if found else None


_IT = re.compile(r"\b(?:it|that one|that)\b", re.IGNORECASE)
_BETTER = 0.1
"""By how much better another statement must answer a part for the one that was taken to be left."""


def instead_of_state(whole: Asked | None, parts: Sequence[str], text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return the statements that answer a question whose words only sound like a state, and ask for no result of it."""
    result: Any = whole.result if whole else None
    if not isinstance(result, (r.TableResult, r.TablesResult)) or _names_result(result, text, know):
        return ()
    variant = question_of(text, know, "").variant
    if len(parts) < _TWO:
        one = _answer(text, iter(((text, text),)), variant, know)
        return (one,) if one and isinstance(one.result, r.FactResult) and _told_surely(one, know) else ()
    head = head_of(text, parts)
    found = [_answer(part, _texts(n, parts, head, know), variant, know) for n, part in enumerate(parts)]
    made = tuple(one for one in found if one is not None)
    return made if len(made) == len(parts) and len({one.answer.text for one in made}) == len(made) else ()


def _told_surely(one: Asked, know: Knowledge) -> bool:
    best = candidates(one.question, know)[0].score
    return any(
        c.score >= max(_STANDS, best - _AS_NEAR) and record_of(c.result) is record_of(one.result)
        for c in candidates(one.question, know)[:_NEAR_BY]
    )


_STANDS = 0.75


def _names_result(result: Any, text: str, know: Knowledge) -> bool:
    """Return whether a question names what a state table gives: "which mode", "do the pedals steer"."""
    asking = know.phrase(re.split(r"(?<=[.:;])\s+", text.strip())[-1]).concepts
    outputs = [o for each in table_results(result) for o in each.table.outputs]
    inputs = {know.base.inputs[name].term for name in know.base.inputs}
    given = inputs | {c for each in inputs for c in know.lexicon.implied.get(each, ())}
    told = frozenset(c for o in outputs for _, says, _ in o.values for c in told_concepts(know.phrase(says))) - given
    return any(names_output(o, asking, know) for o in outputs) or any(c[0] not in "@~=" for c in told & asking)


def _texts(place: int, parts: Sequence[str], head: str, know: Knowledge) -> Iterator[tuple[str, str]]:
    """Yield a part in full, and as a question that stands alone, the fullest first."""
    part = re.sub(r"^(?:and|then) ", "", parts[place])
    for filled in _filled(part, parts[place - 1], know) if place else ():
        yield filled, f"{head}: {filled}" if head else filled
    whole = said_whole(part, head or parts[0], know) if place or head else part
    if whole != part:
        yield part, whole
    if head:
        yield part, f"{head}: {part}"
    elif place:
        yield part, f"{_subject(parts[0], know)} {part}"
    yield part, part


def _subject(part: str, know: Knowledge) -> str:
    """Return the names of the things that a part is about."""
    return " ".join(
        m.text for m in know.phrase(part).mentions if not know.matcher.is_soft(m) and not measures(m.concepts, know)
    )


def _filled(part: str, before: str, know: Knowledge) -> Iterator[str]:
    """Yield the part before with what a short part names in the place of its like: "how many at 50 kt"."""
    own, other = know.phrase(part), know.phrase(before)
    units = [(a, b) for a in own.amounts for b in other.amounts if a.unit == b.unit]
    if len(units) == 1 and len(own.words) <= _SHORT:
        yield before.replace(units[0][1].raw, units[0][0].raw)
    families = know.lexicon.families
    pairs = [
        (m, o) for m in own.mentions for o in other.mentions
        if m.text.lower() != o.text.lower() and {families.get(c) for c in m.concepts} - {None}
        & {families.get(c) for c in o.concepts}
    ]  # fmt: skip
    if len(pairs) == 1 and len(own.words) <= _SHORT:
        yield before.replace(pairs[0][1].text, pairs[0][0].text)


_SHORT = 6


def _answer(shown: str, texts: Iterator[tuple[str, str]], variant: str, know: Knowledge) -> Asked | None:
    """Return what surely answers a part in one of its wordings: the kind of thing that it asks for."""
    for part, text in texts:
        question = question_of(text, know, variant)
        near = [c for c in candidates(question, know)[:_NEAR_BY] if c.match and not c.match.barred]
        least = _FIGURE_SURE if asks_figure(part) else _SURE
        near = [c for c in near if c.score >= least and is_of_kind(c.result, part, know)]
        if near:
            best = [c for c in near if c.score >= near[0].score - _AS_NEAR]
            chosen = max(best, key=lambda c: _fits(c, part, know))
            return as_asked(shown, question, chosen.result, know)
    return None


def _fits(candidate: Candidate, part: str, know: Knowledge) -> tuple[int, int, int]:
    """Return how well one of several equal answers fits a part: its quantity, a figure, no more than is asked."""
    plainly = isinstance(candidate.result, r.LimitResult) and re.match(r"(?:and )?what (?:is|are)\b", part) is not None
    wanted = know.phrase(part).concepts & QUANTITIES
    measured = quantity_of(candidate.result, know) in wanted
    return measured, plainly, -len(getattr(record_of(candidate.result), "points", ()))


def _lacks_figure(result: Any, part: str, know: Knowledge) -> bool:
    """Return whether a part asks for a figure, and a statement that answers it gives none."""
    fact = getattr(result, "fact", None)
    if fact is None or not asks_figure(part) or know.phrase(fact.says).amounts:
        return False
    wanted = know.phrase(part).concepts & QUANTITIES  # "the highest available pressure" is one
    return not wanted or wanted.isdisjoint(know.phrase(" ".join(fact.points)).concepts)


def _of_aspect(part: str) -> str:
    """Return what a part asks of its subject: "who", "where", "why", "colour", or ""."""
    return next((name for name, pattern in _ASPECTS if pattern.search(part)), "")


def is_of_kind(result: Any, part: str, know: Knowledge) -> bool:
    """Return whether a result is of the kind that a part asks for."""
    if not isinstance(result, _STATED):
        return False
    fact = getattr(result, "fact", None)
    aspect = _of_aspect(part)
    if aspect:
        return fact is not None and (aspect in aspects_of(fact, know) or aspect == "colour")
    if asks_figure(part):
        told = any(know.phrase(p).amounts for p in fact.points) if fact else True
        wanted = know.phrase(part).concepts & QUANTITIES
        mine = quantity_of(result, know)
        return told and not (wanted and mine and mine not in wanted)
    return fact is not None or re.match(r"(?:and )?what (?:is|are)\b", part) is not None


def _each_of(one: Asked, part: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return what answers a part that asks for several itself: with and without, in NORMAL and in ALTERNATE."""
    if not isinstance(one.result, _STATED) or not _JOINED.search(part):
        return (one,)
    text = " ".join(one.question.reading.words)
    found = of_each([text], text, know) or joined(one, text, know) or with_siblings(one, text, know)
    own = any(is_same(one, each) for each in found)
    return found if own and len(found) > 1 else (one,)


_JOINED = re.compile(r",|(?<!^)\band\b")
