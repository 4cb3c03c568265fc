"""A list of cases that one statement tells: "what do the lamps show down and locked, in transit, and up and locked?".

A comma of such a list looks like the end of a part, and each case alone is answered by a record of its own, or by none.
The statement whose points are told apart by the very names that the list holds is meant.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

from assistant.conversation.reading_turns.readings import question_of
from assistant.knowledge.records import Fact
from assistant.practice.marking.finding.elements import point
from assistant.practice.marking.of_statements.compound import ITEM, best_of, members
from assistant.practice.marking.of_statements.narrowing import MODES
from assistant.practice.marking.points import Element, Point
from assistant.practice.marking.questions.asked import Asked, as_asked, ask, measures
from assistant.practice.marking.questions.parts import POLAR
from assistant.practice.marking.reading.said import plain
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge, Question

_LIST = re.compile(r",[^?.]*\band\b", re.IGNORECASE)
_OTHERWISE = (r.ProcedureResult, r.CheckResult, r.BandResult, r.TableResult, r.TablesResult)
"""What answers a question whole already."""
_LEAST = 3
"""Cases that must be named, for a statement to be asked for by them."""


def of_its_cases(found: tuple[Asked, ...], text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return the one statement of which a question lists the cases; nothing where none or several are meant.

    found: what answers the question otherwise: figures enough, one for each case, are left.
    """
    if not _LIST.search(text) or POLAR.search(text) or any(isinstance(one.result, _OTHERWISE) for one in found):
        return ()
    figures = sum(isinstance(one.result, r.LimitResult) for one in found)
    question = question_of(text, know, "")
    asked = things_named(question, know)
    telling: list[tuple[int, int, Any]] = []
    for name in (*know.base.ids("facts"), *know.base.ids("procedures")):
        known = know.matcher.vocabulary(name)
        if len(asked) >= _LEAST and all(not known.isdisjoint(thing) for thing in asked):
            record = know.record(name, question.variant)
            told = record.points if isinstance(record, Fact) else [step.do for step in record.steps]
            named = len(cases_named(told, question, know))
            if named >= max(_LEAST, figures + 1):
                telling.append((named, -len(told), record))
    if not telling:
        return ()
    best = max(telling, key=lambda each: each[:2])
    if len([each for each in telling if each[:2] == best[:2]]) > 1:
        return ()
    made = r.FactResult(best[2]) if isinstance(best[2], Fact) else r.ProcedureResult(best[2])
    return (as_asked(text, question, made, know),)


def things_named(question: Question, know: Knowledge) -> list[frozenset[str]]:
    """Return what a question names besides what only says how it asks."""
    told = [m for m in question.reading.mentions if not know.matcher.is_soft(m)]
    return [m.concepts for m in told if not measures(m.concepts, know)]


def cases_named(told: Sequence[str], question: Question, know: Knowledge) -> list[Point]:
    """Return the points of a statement that a question lists by their names; none where they are too few for a list.

    A point is named by what no other one holds, if it tells more than that.
    """
    if len(told) < _LEAST:
        return []
    points = [point(p, know) for p in told]
    held = [[_concepts(e, know) for e in p.elements] for p in points]
    asked = [_cases_of(thing, points, held) for thing in _things_told(question, know)]
    named = []
    for n, one in enumerate(points):
        others = {c for k, each in enumerate(held) if k != n for concepts in each for c in concepts}
        own = [concepts - others for concepts in held[n] if concepts - others]
        said = [concepts for concepts in own if any(n in cases and concepts & thing for thing, cases in asked)]
        bare = any(not e.concepts for e in one.elements)
        said = said or (own[:1] if _said_otherwise(one, question) else [])
        if said and (len(said) < len(own) or bare or one.figures):
            named.append(one)
    return named if len(named) >= _LEAST else []


def _said_otherwise(point: Point, question: Question) -> bool:
    """Return whether a question holds a long word of a point in another form: "in disagreement" for "disagrees"."""
    told = {w[:_STEM] for w in question.reading.words if len(w) > _STEM}
    return any(w[:_STEM] in told for w in re.findall(r"[a-z]+", point.text.lower()) if len(w) > _STEM)


_STEM = 7


def _things_told(question: Question, know: Knowledge) -> list[tuple[frozenset[str], frozenset[str]]]:
    """Return the concepts and the plain words of each thing that a question names."""
    told = [m for m in question.reading.mentions if not know.matcher.is_soft(m) and not measures(m.concepts, know)]
    return [(m.concepts, frozenset(plain(w) for w in question.reading.words[m.start : m.end])) for m in told]


def _cases_of(
    thing: tuple[frozenset[str], frozenset[str]], points: Sequence[Point], held: Sequence[Sequence[frozenset[str]]]
) -> tuple[frozenset[str], frozenset[int]]:
    """Return the concepts of a thing named, with the points that may be meant: of several those that share most of its
    words, "down and locked" for "locked down".
    """
    concepts, words = thing
    near = [n for n, each in enumerate(held) if any(concepts & own for own in each)]
    shared = {n: len(words & {plain(w) for w in re.findall(r"[a-z]+", points[n].text.lower())}) for n in near}
    most = max(shared.values(), default=0)
    return concepts, frozenset(n for n in near if shared[n] == most)


def _concepts(element: Element, know: Knowledge) -> frozenset[str]:
    """Return what an element names, with the kind of label that one is which shows: a memo."""
    if not any(c.endswith("_showing") for c in element.concepts):
        return element.concepts
    return element.concepts | {c for w in element.words for m in know.phrase(w).mentions for c in m.concepts}


def of_each_member(text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return the figures of all settings or modes that a question calls by their kind: "the settings and their delays".

    The statement that names them goes before, where they are to be named too.
    """
    if not (_OF_EACH.search(text) and _KIND.search(text)) or members(text, know):
        return ()
    figures = _alike(know.phrase(text).concepts, know)
    head = _JOINT.split(text)[0]
    one = ask(head, know) if head != text and figures else None
    named = (one[1],) if one and isinstance(one[1].result, r.FactResult) and one[1].result.fact.points else ()
    return (*named, *figures)


_OF_EACH = re.compile(r"\b(?:each|every|their|respectively)\b|\bwith the\b", re.IGNORECASE)
_KIND = re.compile(r"\b(?:settings?|modes?)\b", re.IGNORECASE)
_JOINT = re.compile(r",?\s+(?:and|with)\s+(?:their|the|for each|what|which|how|after|the)\b|,\s+each\b", re.IGNORECASE)


def _alike(asked: frozenset[str], know: Knowledge) -> tuple[Asked, ...]:
    """Return the figures that differ by the name of a setting or mode alone, those that a question names most of."""
    families = know.lexicon.families
    groups: dict[frozenset[str], list[str]] = {}
    for name in know.base.ids("limits"):
        of = know.base.records[name].of
        concepts = know.phrase(of).concepts
        own = {c for c in concepts if families.get(c) in MODES}
        if len(own) == 1:
            groups.setdefault(concepts - own, []).append(of)
    told = {shared: len(shared & asked) for shared, each in groups.items() if len(each) > 1 and shared & asked}
    best = [shared for shared in told if told[shared] == max(told.values())]
    if len(best) != 1:
        return ()
    found = [best_of(of, of, ITEM, know) for of in groups[best[0]]]
    return tuple(one for one in found if one and isinstance(one.result, r.LimitResult))
