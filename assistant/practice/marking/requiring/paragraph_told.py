"""Parts of a question that no record of their own answers, told by a clause of the paragraph that it is about.

What was found for a part in another paragraph, though the part names nothing that this one does not speak of, answers
another question: the clause takes its place. A part that nothing tells stays open.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

from assistant.conversation.reading_turns.readings import question_of
from assistant.frozen import NamedTuple
from assistant.knowledge.records import Fact, Limit, Source
from assistant.practice.marking.finding.elements import point
from assistant.practice.marking.of_statements.of_part import SMALL, asks_figure, things_in
from assistant.practice.marking.of_statements.step_clauses import content_words, kind_of
from assistant.practice.marking.of_statements.told_clauses import (
    ASKS_PURPOSE,
    Told,
    asks_since,
    best_told,
    lack_told,
    purpose_told,
    run_of,
    since_told,
    told_in,
)
from assistant.practice.marking.questions.asked import Asked, as_asked, listed_in, record_of
from assistant.practice.marking.questions.parts import LEADS, POLAR, head_of
from assistant.practice.marking.requiring.too_few import TELLS_WHEN
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge
from assistant.resolving.ranking import candidates

_TWO = 2
_STATED = (r.FactResult, r.LimitResult, r.ScheduleResult, r.ModelResult)
_NEAR_BY = 12
_HALF = 0.5


def with_told(found: tuple[Asked, ...], parts: Sequence[str], text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return what answers the parts of a question, those that nothing at home answers by a clause that tells them."""
    if len(parts) < _TWO or not found or not all(isinstance(one.result, _STATED) or _is_open(one) for one in found):
        return found
    head = head_of(text, parts)
    home = _home(found, head or parts[0], know)
    if not home:
        return found
    variant = found[0].question.variant
    told = told_in(home, know, variant)
    found = counted(found, parts, know)
    best = {part: _best(part, head, parts[0], text, told, variant, know) for part in parts}
    taken = [each for each in best.values() if each]
    best = {part: each if each and taken.count(each) == 1 else None for part, each in best.items()}
    if _is_open(found[0]):
        each = [_as_told(clause, part, found[0], know) for part, clause in best.items() if clause]
        return tuple(each) if len(each) == len(parts) else found
    made = _by_clauses(found, best, _Home(home, told, head or parts[0], text), know)
    order = {part: n for n, part in enumerate(parts)}
    return tuple(sorted(made, key=lambda one: order.get(one.answer.question, -1))) if made != list(found) else found


class _Home(NamedTuple):
    """What a question is about: its paragraphs, the clauses of all that they state, its subject, and all of it."""

    sources: frozenset[Source]
    told: Sequence[Told]
    subject: str
    text: str


def _by_clauses(found: tuple[Asked, ...], best: dict[str, Told | None], home: _Home, know: Knowledge) -> list[Asked]:
    """Return what was found, with the clause of each part that has no answer at home."""
    made = list(found)
    spare = sum(one.answer.question not in (*best, home.text) for one in found)
    for part, clause in best.items():
        own = [one for one in made if one.answer.question == part]
        if not own and spare:  # a part is answered in other words than its own
            spare -= 1
        elif clause is None:
            made = [one for one in made if not _only_repeats(one, part, made, know)]
        else:
            others = [each for name, each in best.items() if each and name != part]
            made = _with_clause(made, part, clause, others, home, know)
    return made


def _with_clause(
    made: list[Asked], part: str, clause: Told, others: Sequence[Told], home: _Home, know: Knowledge
) -> list[Asked]:
    """Return what was found with the clause that tells a part, where nothing at home does it already."""
    own = [one for one in made if one.answer.question == part]
    elsewhere = [one for one in own if _strays(one, part, home, know)]
    strays = [*elsewhere, *(one for one in own if _is_idle(one, made, home.text) or _asks_aside(part))]
    if len(own) == 1 and not strays and _misses(own[0], clause, others, home.text):
        strays = own
    left = [one for one in made if one not in strays]
    told = _as_told(clause, part, made[0], know)
    if kind_of(part, know) and any(_tells(each, told, part, home.text, know) for each in own):
        return made
    if any(_tells(each, told, part, home.text, know) for each in left):
        return left if elsewhere else made
    return [*left, told] if not own or strays else made


def _is_open(one: Asked) -> bool:
    """Return whether bands answer a question which gives no reading."""
    return isinstance(one.result, r.BandResult) and one.result.given != one.result.given


def _best(
    part: str, head: str, first: str, text: str, told: Sequence[Told], variant: str, know: Knowledge
) -> Told | None:
    """Return the clause that surely tells what a part asks for; none where it asks for a yes or no, or any figure."""
    asking = LEADS.sub("", part)
    any_figure = asks_figure(part) and not kind_of(part, know) and not asks_since(part)
    if any_figure or TELLS_WHEN.match(part) or POLAR.match(asking) or _WHY.match(asking):
        return None
    return best_told(asking, told, _scores(part, head, first, variant, know), text, know)


def counted(found: tuple[Asked, ...], parts: Sequence[str], know: Knowledge) -> tuple[Asked, ...]:
    """Return what was found, with so many points of a statement as a part says that it asks for: "which three"."""
    made = list(found)
    for part in parts:
        several = _SEVERAL.search(part)
        own = [one for one in made if one.answer.question == part]
        facts = [one.result.fact for one in own or made if isinstance(one.result, r.FactResult)]
        if several is None or len(own) > 1 or len(facts) != 1:
            continue
        number, others = SMALL[several[1].lower()], " ".join(p for p in parts if p != part)
        fresh = [p for p in facts[0].points if content_words(p).isdisjoint(content_words(others))]
        if len(facts[0].points) <= number or len(fresh) < number:
            continue
        lacking = _ABSENT.search(part) is not None
        told = [re.sub(r"^no ", "", p) if lacking else p for p in fresh[:number]]
        only = facts[0]._replace(points=tuple(told), values=())
        one = as_asked(part, found[0].question, r.FactResult(only), know)
        made = [*(each for each in made if each not in own), one]
        rest = tuple(p for p in facts[0].points if p not in fresh)
        left = r.FactResult(facts[0]._replace(points=rest)) if rest else None
        shared = [each for each in made if each is not one and getattr(each.result, "fact", None) is facts[0]]
        made = [each._replace(result=left) if left and each in shared else each for each in made]
    return tuple(made)


_SIDE = re.compile(r"^(?:at|below|above) (?:it|that|this)(?: or (?:above|below|more|less))? ", re.IGNORECASE)
"""What a clause only says of which side it holds on: "at it or above"."""
_ABSENT = re.compile(r"\b(?:absent|defects?|faults?)\b", re.IGNORECASE)
"""What asks for things that must not be there, by their names."""
_SEVERAL = re.compile(r"\b(?:which|what) (two|three|four)\b", re.IGNORECASE)
_WHY = re.compile(r"why\b|how does\b", re.IGNORECASE)


def _home(found: Sequence[Asked], subject: str, know: Knowledge) -> frozenset[Source]:
    """Return the paragraphs that a question is about: those of what stands before its parts, or of its first answer."""
    near = [c for c in candidates(question_of(subject, know, ""), know)[:_TWO] if c.match and not c.match.barred]
    records = [record_of(c.result) for c in near if c.score >= _SURE]
    own = [each for each in records if each is not None and hasattr(each, "id") and not know.is_general(each)]
    sources = {s for each in own or records for s in getattr(each, "sources", ())}
    first = getattr(record_of(found[0].result), "sources", ())
    return frozenset(sources) or frozenset(first)


_SURE = 0.5


def _scores(part: str, head: str, first: str, variant: str, know: Knowledge) -> dict[str, float]:
    """Return how well records answer a part, by their ids."""
    asking = LEADS.sub("", part)
    subject = head if head or _things(part, know) else first
    near = candidates(question_of(f"{subject}: {asking}" if subject else asking, know, variant), know)[:_NEAR_BY]
    made: dict[str, float] = {}
    for c in near:
        record = record_of(c.result)
        if record is not None and hasattr(record, "id"):
            made[record.id] = max(made.get(record.id, 0.0), c.score)
    return made


def _strays(one: Asked, part: str, home: _Home, know: Knowledge) -> bool:
    """Return whether what was found for a part is of another paragraph, and the part names nothing that is not told."""
    record = record_of(one.result)
    if record is None or not hasattr(record, "sources") or set(record.sources) & home.sources:
        return False
    if _things(home.subject, know) & _things(_says(record), know):
        return False
    known = frozenset(c for each in home.told for e in each.point.elements for c in e.concepts)
    own = know.phrase(_says(record)).concepts
    return not any(thing & own for thing in things_in(part, know) if not thing & known)


def _says(record: Any) -> str:
    return getattr(record, "says", "") or getattr(record, "of", "")


def _things(text: str, know: Knowledge) -> frozenset[str]:
    """Return the things that a text names."""
    return frozenset(c for concepts in things_in(text, know) for c in concepts if c[0] not in "@~")


def _is_idle(one: Asked, found: Sequence[Asked], text: str) -> bool:
    """Return whether what was found for a part tells nothing but what the question or another part's answer says."""
    result: Any = one.result
    earlier = found[: found.index(one)]
    if isinstance(result, r.ModelResult):
        return any(record_of(each.result) is record_of(result) for each in earlier)
    if not isinstance(result, r.FactResult) or not result.fact.points:
        return False
    stated = (each.answer.text for each in earlier if isinstance(each.result, r.LimitResult))
    said = _tokens(" ".join((text, *stated)))
    return all(_tokens(p) <= said for p in result.fact.points)


def _tokens(text: str) -> frozenset[str]:
    """Return the words and numbers of a text that tell something."""
    return content_words(text) | frozenset(re.findall(r"\d[\d.,]*", text))


def _asks_aside(part: str) -> bool:
    """Return whether a part asks for what a statement tells besides: from when on, what for."""
    return asks_since(part) or ASKS_PURPOSE.fullmatch(part) is not None


def _tells(one: Asked, other: Asked, part: str, text: str, know: Knowledge) -> bool:
    """Return whether what was found tells what a clause would: its figure, or all that is new of it."""
    result: Any = other.result
    if isinstance(result, r.LimitResult):
        return record_of(one.result) is result.limits[0] or bool(_figures(one) & _figures(other))
    record = record_of(one.result)
    known = _tokens(" ".join(record.points) or record.says) if isinstance(record, Fact) else frozenset()
    news = _tokens(" ".join(result.fact.points)) - content_words(text)
    figures = _figures(other) if kind_of(part, know) else set()
    return (bool(news) and news <= known) or bool(figures and figures <= _figures(one))


def _figures(one: Asked) -> set[tuple[float, str]]:
    """Return the figures that an answer states."""
    amounts = one.question.reading.amounts
    given = {(round(a.value, 6), a.unit or "") for a in amounts}
    return {(round(v.value, 6), v.unit) for v in one.answer.values} - given


def _only_repeats(one: Asked, part: str, found: Sequence[Asked], know: Knowledge) -> bool:
    """Return whether what was taken for a part that names nothing only tells what answers the others: "what is it"."""
    result: Any = one.result
    if one.answer.question != part or not isinstance(result, r.FactResult) or _things(part, know):
        return False
    others = (record_of(each.result) for each in found if each is not one)
    told = " ".join(p for each in others for p in listed_in(each))
    return bool(result.fact.points) and _tokens(" ".join(result.fact.points)) <= _tokens(told)


def _misses(one: Asked, best: Told, others: Sequence[Told], text: str) -> bool:
    """Return whether what was taken for a part has the points of another part's clause, and not those of its own."""
    result: Any = one.result
    if not isinstance(result, r.FactResult) or best.record.id != result.fact.id or not result.fact.points:
        return False
    news = best.words - content_words(text)
    points = content_words(" ".join(result.fact.points))
    return bool(news) and news.isdisjoint(points) and any(points <= each.words for each in others)


def _as_told(best: Told, part: str, first: Asked, know: Knowledge) -> Asked:
    """Return a clause, or the figure of a record, as what answers a part."""
    if isinstance(best.record, Limit) and kind_of(part, know):
        return as_asked(part, first.question, r.LimitResult((best.record,)), know)
    says = since_told(best.text) if asks_since(part) else best.text
    says = purpose_told(best.text) if ASKS_PURPOSE.fullmatch(part) else says
    says = lack_told(best.text) if kind_of(part, know) and not best.point.figures else says
    fact = best.record if isinstance(best.record, Fact) else None
    whole, says = says == best.text, _SIDE.sub("", says)
    listed = fact.points if fact and whole and not asks_since(part) else ()
    several = _SEVERAL.search(part)
    if several and fact and whole:
        listed, says = (), "; ".join(run_of(best, SMALL[several[1].lower()]))
    curated = [p for p in listed if len(content_words(p) & best.words) > _HALF * len(content_words(p))]
    points = tuple(curated) or tuple(says.split("; "))
    answers = ("how",) if not point(says, know).figures else ()
    made = Fact(best.record.id, (), f"{says[0].upper()}{says[1:]}.", best.record.sources, answers, points=points,
                topic=best.record.topic, also_said=fact.also_said if fact else ())  # fmt: skip
    return as_asked(part, first.question, r.FactResult(made), know)
