"""Everything that might answer a question, best first."""

from __future__ import annotations

from assistant.resolving.asked_quantity import asked_of, given_concepts, measure_asked
from assistant.resolving.beside_the_point import without_beside
from assistant.resolving.beyond_matches import by_figure, specials
from assistant.resolving.by_what_is_asked import asks_when, by_asked, by_measure, of_all_aeroplanes, told_when
from assistant.resolving.candidates import Candidate
from assistant.resolving.former_figures import former_believed
from assistant.resolving.from_match import from_match
from assistant.resolving.going_first import in_their_order
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.leaning import ANSWERING, by_what_it_leans_on
from assistant.resolving.results import CheckResult, LimitResult
from assistant.resolving.setting_chosen import settings_chosen
from assistant.resolving.state_questions import state_candidates

_MOST, _LEAST = 24, 0.1
"""How many matches are looked at, and down to what score."""
_BEHIND = 0.2
"""Down to what share of the score of the best of them: what fits less well neither answers nor is known nearby."""
_FORMER = 1.2
"""What took the place of a former figure that somebody holds to be in force."""
_SEVERAL, _COMPARED = 3, 1.1
"""Readings that are compared with one another rather than held against a limit each, and the score of that."""
_ANOTHER = "another_type"
"""The concept of words for an aeroplane of another type."""
_COMING = frozenset({"from", "than", "unlike", "flew", "fly", "flown", "off"})
"""Words before it, by which it is only told of."""


def candidates(question: Question, know: Knowledge) -> list[Candidate]:
    """Return everything that might answer, best first."""
    found = by_what_it_leans_on(_as_asked(_gathered(question, know), question, know), question, know)
    found = without_beside(in_their_order(found, question, know), question, know)
    another = next((m for m in question.reading.mentions if _ANOTHER in m.concepts), None)
    if another and not question.named_variant and _COMING.isdisjoint(question.reading.words[: another.start][-1:]):
        found = of_all_aeroplanes(found, another, question, know)
    found.sort(key=lambda c: (-round(c.score, 3), -c.weight))
    return _with_former(found, question, know)


def _gathered(question: Question, know: Knowledge) -> list[Candidate]:
    """Return what the records that match a question answer, and what answers it besides."""
    given = given_concepts(question, know) | question.background | _states_named(question, know)
    excused = {k for c in question.conditions for k in c.where}
    ranked = know.matcher.rank(question.reading, given)
    found: list[Candidate] = []
    least = max(_LEAST, _BEHIND * ranked[0].score) if ranked else _LEAST
    for match in ranked[:_MOST]:
        if match.score < least:
            break
        found.extend(from_match(match, question, know))
    found.extend(by_figure(question, know))
    if len(question.reading.amounts) >= _SEVERAL:
        from assistant.resolving.readings_compared import readings_compared  # few questions give so many

        found.extend(Candidate(_COMPARED, _COMPARED, result) for result in readings_compared(question, know))
    found.extend(list(settings_chosen(found, question, know)))
    found.extend(Candidate(s, w, r) for s, w, r in state_candidates(question, know, excused))
    found.extend(specials(question, know, ranked))
    return found


def _as_asked(found: list[Candidate], question: Question, know: Knowledge) -> list[Candidate]:
    """Return candidates with those behind that tell something else than what is asked for."""
    if measure_asked(question.reading):
        found = [by_measure(c, question, know) for c in found]
    asked = asked_of(question.reading)
    found = [by_asked(c, asked, question, know) for c in found]
    return [told_when(c) for c in found] if asks_when(question.reading.words) else found


def _with_former(found: list[Candidate], question: Question, know: Knowledge) -> list[Candidate]:
    """Return the candidates after the change of a former figure that is held to be in force, unless the record of that
    figure answers already.
    """
    former = former_believed(question, know)
    if former is None:
        return found
    best = found[0] if found else None
    of_it = best is not None and best.match is not None and best.match.record == former.changes[0].record
    if best is not None and of_it and best.score >= ANSWERING and isinstance(best.result, (CheckResult, LimitResult)):
        return found
    return [Candidate(_FORMER, 3.0, former), *found]


def _states_named(question: Question, know: Knowledge) -> set[str]:
    """Return the names of the states given: who says that the free-fall lever is pulled speaks of a free fall."""
    named = know.states.named
    return {named[c.input, c.value] for c in question.conditions if (c.input, c.value) in named}
