"""From what answers a question to what must be said: the points of each kind of result."""

from __future__ import annotations

import re
from typing import Any

from assistant.knowledge.records import Fact
from assistant.practice.marking.finding.also_said import also_said_of
from assistant.practice.marking.finding.cases import in_its_case
from assistant.practice.marking.finding.causes import asks_one
from assistant.practice.marking.finding.whichever import asks_choice, choice_point, without_choice
from assistant.practice.marking.of_results.band_follows import follows_of
from assistant.practice.marking.of_results.besides import (
    denials,
    extras,
    formers,
    judged_otherwise,
    of_variants,
    others_of,
    standing_of,
    true_besides,
)
from assistant.practice.marking.of_results.item_points import ItemResult
from assistant.practice.marking.of_results.judged import edges_of, other_acts
from assistant.practice.marking.of_results.label_parts import labels_shown, labels_told, unshown
from assistant.practice.marking.of_results.outcomes import cause_of, causes_behind, figures_of, states_beside
from assistant.practice.marking.of_results.rows import row_of
from assistant.practice.marking.of_results.things_kept import kept_or_lost
from assistant.practice.marking.of_statements.alternatives import alternatives, told_beside
from assistant.practice.marking.of_statements.by_law import law_extras
from assistant.practice.marking.of_statements.either import chosen, ways_named
from assistant.practice.marking.of_statements.narrowing import (
    distinct,
    labelled,
    named_only,
    persons_only,
    spared,
    weighed,
    without_checks,
    without_given,
)
from assistant.practice.marking.of_statements.of_part import of_part
from assistant.practice.marking.points import Element, Figure, Need, Point
from assistant.practice.marking.questions.asked import Asked, as_asked, ask, the_one_asked
from assistant.practice.marking.questions.parts import POLAR, parts_of
from assistant.practice.marking.questions.phrased import asks_label, without_aside
from assistant.practice.marking.questions.siblings import BOTH
from assistant.practice.marking.questions.turned import turned
from assistant.practice.marking.reading.amounts import amounts_of
from assistant.practice.marking.reading.said import plain
from assistant.practice.marking.requiring.carried_on import has_open
from assistant.practice.marking.requiring.each_verdict import held_by_each
from assistant.practice.marking.requiring.kinds import MAKERS
from assistant.practice.marking.requiring.requests import asked
from assistant.practice.marking.requiring.too_few import too_few
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge
from assistant.resolving.ranking import candidates

_NEAR_BY = 4
_SEVERAL = 3
_IN_TURN = re.compile(r"\bfirst\b.*\b(?:next|then|after that|second)\b|\bin (?:what |which )?order\b", re.IGNORECASE)
_ONE_ASPECT = re.compile(r"\b(?:where|whom?|whose|why|colou?r|how many|how much|which)\b", re.IGNORECASE)
"""Words that ask for one aspect of a thing, which a statement of another one does not answer."""
_WHOLE = 0.99
_AS_NEAR = 0.02
"""By how much less a statement may fit a question that answers it as well."""


def required(text: str, know: Knowledge) -> Need | None:
    """Return what an answer to a question must hold, or None where nothing loaded answers it."""
    text = with_its_limit(without_aside(text), know)
    first = tuple(one for one in asked(text, know) if type(one.result) in MAKERS)
    if not first:  # what is lacking, or one of several to choose, is no answer to mark against
        return None
    need = _need(text, first, know)
    alike = [_need(text, (one,), know) for one in _as_near(first, text, know)]
    alike += [_need(text, (other,), know) for other in told_beside(first, text)]
    alike += [made for one in first for made in _otherwise_put(one, text, know)]
    alike += alternatives(need, first[0], text, know) if len(first) == 1 else []
    judged = next((each for each in alike if any(p.verdict for p in each.points)), None)
    if judged and need.polar and not any(p.verdict or p.state for p in need.points):
        return judged
    return need._replace(alike=tuple(alike))


def with_its_limit(text: str, know: Knowledge) -> str:
    """Return a question that asks why a reading is or is not within a limit as one that asks for the limit."""
    put = _AND_WHY.sub(r"\1 give the limit", text)
    found = ask(put, know) if put != text else None
    return put if found and isinstance(found[1].result, r.CheckResult) else text


_AND_WHY = re.compile(r"\b(yes or no,? and) (?:say |tell |give )?(?:me )?(?:why|the reason)\b", re.IGNORECASE)


def _as_near(first: tuple[Asked, ...], text: str, know: Knowledge) -> list[Asked]:
    """Return the statements that answer a question as nearly as the one that was taken."""
    if len(first) != 1 or not isinstance(first[0].result, r.FactResult) or _ONE_ASPECT.search(text):
        return []
    found = [c for c in candidates(first[0].question, know)[:_NEAR_BY] if c.match]
    best = max((c.score for c in found), default=0.0)
    taken = first[0].result.fact
    return [
        as_asked(text, first[0].question, c.result, know) for c in found
        if isinstance(c.result, r.FactResult) and c.score >= best - _AS_NEAR and c.match and c.match.covered >= _WHOLE
        and c.result.fact.id != taken.id and c.result.fact.topic == taken.topic
        and (not taken.answers or set(taken.answers) & set(c.result.fact.answers))
    ]  # fmt: skip


def _otherwise_put(one: Asked, text: str, know: Knowledge) -> list[Need]:
    """Return the statement itself, and what leads to the result that it tells of, where the other one is asked for."""
    fact = getattr(one.result, "fact", None)
    if fact is None:
        return []
    taken = cause_of(one, know)
    if taken is not one:
        return [_need(text, (one,), know, as_it_is=True)] if _tells_more(fact, taken, know) else []
    causes = causes_behind(one, text, know)
    return [_need(text, (one._replace(result=causes),), know)] if causes else []


def _tells_more(fact: Fact, taken: Asked, know: Knowledge) -> bool:
    """Return whether a statement has several points that none of the inputs of a table tells."""
    result: Any = taken.result
    terms = {know.base.inputs[name].term for chosen in result.sets for name, _ in chosen}
    return sum(terms.isdisjoint(know.phrase(p).concepts) for p in fact.points) >= _SEVERAL


def _need(text: str, first: tuple[Asked, ...], know: Knowledge, as_it_is: bool = False) -> Need:
    first = tuple(the_one_asked(one, text, know) for one in first)
    given = len(first) > 1 and isinstance(first[0].result, (r.TableResult, r.TablesResult))  # the state is told
    as_it_is = as_it_is or given or _LISTS.search(text) is not None
    as_it_is = as_it_is or (_WHEN.search(text) is not None and any(asks_label(part) for part in parts_of(text)))
    found = first if as_it_is else tuple(cause_of(one, know) for one in first)
    reading = know.reader.read(text)
    groups = [
        named_only(MAKERS[type(one.result)](one, _of_part(one, found, text), know), reading, know) for one in found
    ]
    groups = [labelled(group, one, found, text, know) for group, one in zip(groups, found, strict=True)]
    groups = [of_part(group, one, len(found) == 1, text, know) for group, one in zip(groups, found, strict=True)]
    if given and not isinstance(found[0].result, ItemResult):
        groups[0] = [*groups[0], *states_beside(found[0], groups[0], know)]
    if len(found) > 1:
        groups = [kept_or_lost(group, one, know) for group, one in zip(groups, found, strict=True)]
        groups = held_by_each(groups, found, text, know)
    groups = [in_its_case(group, one, found) for group, one in zip(groups, found, strict=True)]
    points = distinct(p for group in groups for p in without_given(group, reading, len(found) > 1))
    points = weighed(_told_apart(groups, points))
    points = _named_apart(groups, points) if len(groups) > 1 else points
    if len(found) == 1 and len(parts_of(text)) < 2:
        ordered = isinstance(found[0].result, r.ProcedureResult) and len(points) > 1
        points = spared(persons_only(points, reading, know), reading, ordered or _in_order(found[0], text))
    elif not any(isinstance(one.result, r.ProcedureResult) for one in found):
        points = without_checks(points, reading)
    points += [p for was, now in zip(first, found, strict=True) if was is not now for p in figures_of(was, know)]
    points += labels_shown(found, text, know) + labels_told(found, text, know)
    answers = [one.answer for one in found]
    if asks_choice(text) and len(found) == 1:
        points = [p._replace(figures_suffice=p.figures_suffice or bool(p.figures)) for p in points]
    if not any("whichever" in p.text for p in points):
        points += choice_point(text, " ".join(a.text for a in answers))
    if len(parts_of(text)) > 1:
        facts = (getattr(one.result, "fact", None) for one in found)
        points += ways_named(text, [fact.says for fact in facts if fact], know)
    choice = chosen(text, " ".join(a.text for a in answers), know)
    points = [*(p._replace(optional=p.optional or _is_faint(p)) for p in points), choice[0]] if choice else points
    each = any(p.state and p.state.judged for p in points)  # what is done in another band is what another clause asks
    across = len({one.result.table.id for one in found if isinstance(one.result, ItemResult)}) > 1
    others = [p for one in found if not each and not across for p in others_of(one, text, know)]
    return Need(
        question=reading,
        points=turned(points, reading, text),
        ordered=any(_is_procedure(one, found) or _in_order(one, text) for one in found),
        sequence=len(parts_of(text)) < _SEVERAL or bool(_IN_TURN.search(text)),
        allowed=amounts_of(reading, know),
        extra=(*(f for one in found for f in extras(one, know)), *_of_laws(found, text, know), *_nought(text)),
        elsewhere=tuple(f for one in found for f in of_variants(one, know)),
        follows=follows_of(found[0], text, know) if len(found) == 1 else None,
        differing=frozenset(v for one in found for v in judged_otherwise(one, know)),
        former=tuple(f for one in found for f in formers(one, know)),
        others=(
            *(choice or ())[1:], *(p for one in found for p in other_acts(one, text)),
            *(p for p in others if not _asked(p, points)),
        ),
        denials=tuple(p for one in found for p in denials(one, know)),
        row=tuple(p for one in found for p in row_of(one, text, know)),
        said=frozenset(c for a in answers for c in know.phrase(a.text).concepts),
        besides=frozenset(c for one in found for c in true_besides(one, text, know)),
        unshown=frozenset(unshown(found, know)),
        expected=" ".join(dict.fromkeys(a.text for a in answers)),
        sources=tuple(dict.fromkeys(s for a in answers for s in a.sources)),
        change=any(isinstance(one.result, r.ChangeResult) for one in found),
        unanswered=_has_open_part(without_choice(text), found, len(points))
        or has_open(found, parts_of(text), text, know)
        or too_few(points, found, text),
        within=_is_within(found[0].result),
        standing=standing_of(found[0].result),
        edges=edges_of(found[0].result),
        loss=any(isinstance(one.result, r.LossResult) for one in found) or reading.asks_loss,
        polar=bool(POLAR.search(text)),
        cause=next((one.result for one in found if isinstance(one.result, r.CauseResult)), None),
        one_way=asks_one(text),
        asked=frozenset(map(plain, reading.words)),
        also_said=also_said_of(found),
    )


def _of_laws(found: tuple[Asked, ...], text: str, know: Knowledge) -> list[Figure]:
    """Return the figures of the working of the laws that statements tell."""
    facts = (getattr(one.result, "fact", None) for one in found)
    return [figure for fact in facts if fact for figure in law_extras(fact, text, know)]


def _nought(text: str) -> tuple[Figure, ...]:
    """Return the zero that a question speaks of itself: "at what speed does it reach zero"."""
    return (Figure(0.0, ""),) if re.search(r"\b(?:zero|nothing|nought)\b", text, re.IGNORECASE) else ()


def _is_faint(point: Point) -> bool:
    """Return whether a point only tells when: "at all times"."""
    return not (point.figures or point.verdict or point.state) and all(e.weight <= _FAINT for e in point.elements)


def _told_apart(groups: list[list[Point]], points: list[Point]) -> list[Point]:
    """Return points, none of them for a figure alone that an earlier part asks for: "85°, and what marks it?"."""
    if len(groups) < _TWO:
        return points
    first = {f[:2] for p in groups[0] if not p.optional for f in p.figures}
    own = {p.text for p in groups[0]}
    return [
        p._replace(figures=(), figures_suffice=False) if p.text not in own and p.figures and _only(p, first) else p
        for p in points
    ]


def _named_apart(groups: list[list[Point]], points: list[Point]) -> list[Point]:
    """Return points, none of another part held by what an earlier part's is: a cam that centres is not centred."""
    told = {c for p in groups[0] for e in p.elements if e.weight >= _TELLING for c in e.concepts}
    own = {p.text for p in groups[0]}
    return [p if p.text in own else p._replace(elements=tuple(_less(e, told) for e in p.elements)) for p in points]


def _less(element: Element, told: set[str]) -> Element:
    left = element.concepts - told
    return element._replace(concepts=left) if left else element


_LISTS = re.compile(
    r"\b(?:name|list|give|state) (?:all )?(?:the )?(?:\w+ )?(?:things|events|actions|ways|causes)\b", re.IGNORECASE
)
"""What asks for all that a statement lists, and not for what the tables know to lead to it."""
_WHEN = re.compile(r"(?:^|[.:;]\s)when ", re.IGNORECASE)
"""How a question tells first when it is that something shows."""
_TWO = 2
_FAINT = 0.6
"""Weight up to which the words of a point only tell when, where it is asked which of two it is."""
_TELLING = 2.5


def _only(point: Point, figures: set[tuple[float, str]]) -> bool:
    """Return whether the figures of a point are all among some, and its words tell more."""
    told = any(e.weight >= _TELLING and not e.given for e in point.elements)
    return told and all(f[:2] in figures for f in point.figures)


def _asked(other: Point, points: list[Point]) -> bool:
    """Return whether what is right of another case is asked for too."""
    return bool(other.elements) and any(p.text == other.text for p in points)


def _of_part(one: Asked, found: tuple[Asked, ...], text: str) -> str:
    """Return the part of a question that a statement answers, where other statements answer the rest."""
    part = one.answer.question
    if len(found) > 1 and isinstance(one.result, (r.TableResult, r.TablesResult)):
        return part if part not in parts_of(text) else text
    own = isinstance(one.result, r.FactResult) and [o.answer.question for o in found].count(part) == 1
    return part if len(found) > 1 and own and POLAR.search(part) else text


def _is_within(result: r.Result) -> bool | None:
    """Return whether a judged reading is within its limit."""
    if isinstance(result, r.CheckResult):
        return all(c.within for c in result.checks)
    if isinstance(result, r.BandResult) and result.given == result.given:
        return result.rule.verdict == "within"
    return None


def _has_open_part(text: str, found: tuple[Asked, ...], told: int) -> bool:
    """Return whether a question asks for two figures or statements, or two cases of one, and one alone was found."""
    parts = parts_of(text)
    single = len(found) == 1 and isinstance(found[0].result, (r.LimitResult, r.ScheduleResult))
    if len(found) == 1 and isinstance(found[0].result, r.TableResult) and len(parts) - told > 1:
        return True
    ends = single and any(p.minimum and p.maximum for p in getattr(found[0].result, "limits", ()))
    return single and (len(parts) > (_TWO if ends else 1) or bool(BOTH.search(text)))


def _is_procedure(one: Asked, found: tuple[Asked, ...]) -> bool:
    """Return whether steps in their order answer a question, and not single ones each a part of it."""
    return isinstance(one.result, r.ProcedureResult) and (one.result.step is None or len(found) == 1)


def _in_order(one: Asked, text: str) -> bool:
    steps = isinstance(one.result, r.FactResult) and "steps" in one.result.fact.answers
    return steps and bool(re.search(r"\b(?:order|sequence|steps|first|in turn)\b", text, re.IGNORECASE))
