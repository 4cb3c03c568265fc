"""What is judged of each of several things at once: on two variants, in two clauses, at two readings of two things.

One yes or no would stand for all of them: each is held by what is said of its own thing.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Any

from assistant.practice.marking.of_statements.steps_asked import measured
from assistant.practice.marking.points import Element, Point, State
from assistant.practice.marking.questions.asked import Asked, as_asked, ask, record_of
from assistant.practice.marking.questions.parts import LEADS, POLAR, head_of, parts_of
from assistant.practice.marking.reading.said import plain
from assistant.resolving import results as r
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge
from assistant.understanding.mentions import VARIANT

_TWO = 2
_JUDGED = (r.CheckResult, r.BandResult)
_BY_WHICH = r"(?:,\s*|\s+)(?:and|or)\s+"
_OWN_CLAUSE = r"(?:(?:may|can|would|could|will|is|does|do|must) )?(?:on |for |with |in |of )?(?:the |an? )?"
_BEHIND = r"(?: (?:be|too|then|depart|go|do so))?"


def each_judged(found: tuple[Asked, ...], parts: Sequence[str], text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return what judges each of several things that a question asks about; nothing where they are judged already."""
    if not POLAR.search(text) and not _WHICH_ONE.search(text):
        return ()
    return _on_each_variant(parts, text, know) or _at_each_reading(text, know) or _by_clauses(found, parts, text, know)


_WHICH_ONE = re.compile(r"\bwhich (?:one |of (?:them|the two) )?is\b", re.IGNORECASE)


def _on_each_variant(parts: Sequence[str], text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return what judges a reading on each variant, of which a last clause names another: "and on the other one?"."""
    shows = _shows(know)
    either = "|".join(sorted(map(re.escape, shows), key=len, reverse=True))
    last = re.search(rf"{_BY_WHICH}{_OWN_CLAUSE}({either}){_BEHIND}\s*\?", text, re.IGNORECASE)
    own = re.findall(rf"(?<![\w,.])(?:{either})(?![\w,.]\w)", text[: last.start()]) if last else []
    if last is None or len(set(own)) != 1 or own[0] == last[1]:
        return ()
    before = text[: last.start()]
    made = []
    for show in (own[0], last[1]):
        asking = re.sub(rf"(?<![\w,.]){re.escape(own[0])}(?![\w,.]\w)", show, before)
        one = ask(f"{asking}?", know)
        result: Any = one[1].result if one else None
        result = result.first if isinstance(result, r.BothResult) else result
        if one is None or not isinstance(result, r.CheckResult):
            return ()
        told = show in know.reader.read(asking).variants
        made.append(as_asked(asking if told else f"{asking}, on the {show}", one[1].question, result, know))
    same = record_of(made[0].result).id == record_of(made[1].result).id
    return tuple(made) if same else ()


def _shows(know: Knowledge) -> dict[str, str]:
    """Return the variants by how each is shown."""
    return {variant.show: name for name, variant in know.base.variants.items()}


def _at_each_reading(text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return what judges each of two readings that stand beside their things: "the main 112 mm and the nose 90 mm"."""
    for sentence in re.split(r"(?<=[.:?])\s+", text):
        pieces = re.split(r",?\s+(?:and|but)\s+|,\s+", sentence.rstrip(". "))
        amounts = [know.phrase(piece).amounts for piece in pieces]
        if len(pieces) != _TWO or any(len(each) != 1 for each in amounts) or amounts[0][0].unit != amounts[1][0].unit:
            continue
        own = [[m for m in know.phrase(p).mentions if not m.weak and not know.matcher.is_soft(m)] for p in pieces]
        if not all(own):
            continue
        put = re.sub(rf"\b{re.escape(own[0][0].text)}\b", own[1][0].text, pieces[0], count=1, flags=re.IGNORECASE)
        filled = put.replace(amounts[0][0].raw, amounts[1][0].raw)
        first = _judged(pieces[0], know)
        for other in (filled, pieces[1]):
            second = _judged(other, know)
            if first and second and record_of(first.result).id != record_of(second.result).id:
                return first, second
    return ()


def _judged(text: str, know: Knowledge) -> Asked | None:
    found = ask(text, know)
    return found[1] if found and isinstance(found[1].result, r.BandResult) else None


def _by_clauses(found: tuple[Asked, ...], parts: Sequence[str], text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return what judges each clause that asks for a yes or no, by all that the words before them give."""
    clauses = [part for part in parts if POLAR.match(LEADS.sub("", part))]
    if len(clauses) < _TWO or not found or not any(isinstance(one.result, _JUDGED) for one in found):
        return ()
    head = head_of(text, parts)
    made = []
    for part in clauses:
        whole = _filled(LEADS.sub("", part), parts[0], know) if part is not parts[0] else part
        one = _at_all(head, whole, know) or ask(f"{head}. {whole}" if head else whole, know)
        if one is None or not isinstance(one[1].result, _JUDGED):
            return ()
        made.append(as_asked(part, one[1].question, one[1].result, know))
    if len({one.answer.text for one in made}) < len(made):
        return ()
    return (*made, *(one for one in found if one.answer.question in parts and one.answer.question not in clauses))


def _filled(clause: str, first: str, know: Knowledge) -> str:
    """Return a clause made whole, which leaves out what the first asks of another quantity: "and is the height"."""
    short = re.fullmatch(r"(?:is|are|was|were) (?:the |its )?(\w+)", clause, re.IGNORECASE)
    own = know.phrase(short[1]).concepts & QUANTITIES if short else frozenset()
    like = next((m for m in know.phrase(first).mentions if m.concepts & QUANTITIES), None) if own else None
    if short and like:
        return re.sub(rf"\b{re.escape(like.text)}\b", short[1], first, count=1, flags=re.IGNORECASE)
    return clause


def _at_all(head: str, clause: str, know: Knowledge) -> tuple[float, Asked] | None:
    """Return what judges all the readings of several kinds that stand before a clause: a speed and a height."""
    given = know.phrase(head).amounts
    if len({a.unit for a in given}) < len(given) or len(given) < _TWO:
        return None
    named = know.phrase(clause).concepts & QUANTITIES
    found: list[tuple[float, Asked]] = []
    for own in (a for a in given if not named or (a.unit and measured(a.unit, know) in named)):
        left = head
        for other in given:
            with_it = rf"(?:\s+(?:and|at))*\s+{re.escape(other.raw)}(?:,?\s+and(?=\s))?"
            left = re.sub(with_it, "", left) if other is not own else left
        one = ask(f"{left}. {clause}", know)
        found += [one] if one and isinstance(one[1].result, r.CheckResult) else []
    if not found:
        return None
    results: list[Any] = [one.result for _, one in found]
    checks = {check.limit.id: check for result in results for check in result.checks}
    score, first = found[0]
    return score, first._replace(result=r.CheckResult(tuple(checks.values())))


def held_by_each(groups: list[list[Point]], found: Sequence[Asked], text: str, know: Knowledge) -> list[list[Point]]:
    """Return points of which each yes or no is held by what its own clause names, where several ask for one."""
    if _asks_which(found, text):
        return list(_by_name(groups, found, know))
    groups = [_asked_only(group, one, text) for group, one in zip(groups, found, strict=True)]
    polar = [n for n, group in enumerate(groups) if any(p.verdict in ("yes", "no") for p in group)]
    if not any(isinstance(found[n].result, _JUDGED) for n in polar):
        return groups
    subjects = list(_apart([_named(found[n], know) for n in polar]))
    if len(polar) < _TWO or not all(subjects) or any(isinstance(found[n].result, r.BothResult) for n in polar):
        return groups
    made = list(groups)
    for n, subject in zip(polar, subjects, strict=True):
        name = LEADS.sub("", found[n].answer.question)
        made[n] = [_of(p, subject, name) if p.verdict in ("yes", "no") else p for p in groups[n]]
    return made


def _asked_only(group: list[Point], one: Asked, text: str) -> list[Point]:
    """Return points without a yes or no of a part that asks for none: "and above what temperature is that so"."""
    part = one.answer.question
    asks = part not in parts_of(text) or POLAR.match(LEADS.sub("", part)) or len(group) < _TWO
    return group if asks else [p for p in group if not p.verdict]


def _of(point: Point, subject: frozenset[str], name: str) -> Point:
    return Point(f"{name}: {point.verdict}", state=State(subject, point.verdict == "yes", judged=True))


def _named(one: Asked, know: Knowledge) -> frozenset[str]:
    """Return the concepts of what a clause names: its variant, its things, and what its last word may mean."""
    asking = one.answer.question
    shows = _shows(know)
    reading = know.reader.read(asking)
    kinds = know.lexicon.kinds
    told = [m for m in reading.mentions if not m.weak and not know.matcher.is_soft(m)]
    told += [m for m in reading.mentions if any(kinds.get(c) == "quantity" for c in m.concepts)]
    last = know.phrase(re.sub(r"\W+$", "", asking).split()[-1]).concepts
    variants = {f"{VARIANT}{shows[show]}" for show in reading.variants if show in shows}
    return frozenset(c for m in told for c in m.concepts) | variants | frozenset(last)


def _apart(named: Sequence[frozenset[str]]) -> Iterator[frozenset[str]]:
    """Yield of each clause what no other one names."""
    for n, one in enumerate(named):
        others = frozenset(c for k, each in enumerate(named) if k != n for c in each)
        yield frozenset(c for c in one - others if c[0] not in "@~=")


def _asks_which(found: Sequence[Asked], text: str) -> bool:
    """Return whether it is asked which of two things is not as it should be."""
    ruled = [one.result for one in found if isinstance(one.result, r.BandResult)]
    return len(ruled) == len(found) == _TWO and _WHICH_ONE.search(text) is not None


def _by_name(groups: list[list[Point]], found: Sequence[Asked], know: Knowledge) -> Iterator[list[Point]]:
    """Yield for each reading the name of its thing and what is done about it, where it is outside its band."""
    for group, one, subject in zip(groups, found, _apart([_named(one, know) for one in found]), strict=True):
        result: Any = one.result
        words = [m.text for m in know.phrase(one.answer.question).mentions if m.concepts & subject]
        if result.rule.verdict == "within" or not words:
            yield []
            continue
        name = Element(subject, tuple(map(plain, words[0].split())), _NAME)
        yield [Point(words[0], (), (name,), kept=True), *(p for p in group if not (p.verdict or p.figures))]


_NAME = 3.0
