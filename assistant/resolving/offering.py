"""When nothing is sure: offer what fits in part, or decline and say what is known nearby."""

from __future__ import annotations

from assistant.resolving.asked_quantity import NOT_TOLD, is_told_in
from assistant.resolving.candidates import Candidate
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Choices, Declined, ProcedureResult, Result
from assistant.understanding.matching import strange
from assistant.understanding.mentions import Mention

OFFERING = 0.34
ALONE = 0.5
"""Least score at which the only record that fits is told; below it is asked whether it is meant."""
_BESIDE = 0.6
"""Share of the best score from which a choice stands beside others; where two do, what is further off is no choice."""
COVER = 0.6
"""Share of a way of asking that a question must hold for its record to be taken without more."""


def unsure(found: list[Candidate], question: Question, know: Knowledge) -> Result:
    """Offer what fits in part, when every word of the question is understood; decline otherwise."""
    unknown = strange(question.reading, know.matcher)
    good = [c for c in found if c.match and c.match.open and c.score >= OFFERING]
    if unknown or not good or _fits_badly(found, good, question, know):
        return Declined(_words(found, unknown), _near(found, know))
    drill = _only_procedure(good, question)
    if drill:
        return drill
    options: dict[str, str] = {}
    for candidate in good[:8]:
        name = offered(know, candidate.match.record) if candidate.match else ""
        if candidate.match and candidate.match.record not in options and name not in options.values():
            options[candidate.match.record] = name
    score = {c.match.record: c.score for c in reversed(good) if c.match}
    close = [name for name in options if score[name] >= _BESIDE * good[0].score]
    chosen = [(name, options[name]) for name in (close if len(close) > 1 else list(options))[:3]]
    alone = good[0].match if len(chosen) == 1 else None
    if alone and (alone.whole or (alone.covered >= COVER and good[0].score >= ALONE)):
        return good[0].result
    return Choices(tuple(chosen), "") if chosen else Declined((), _near(found, know))


def _fits_badly(found: list[Candidate], good: list[Candidate], question: Question, know: Knowledge) -> bool:
    """Return whether what fits in part is not fit to be offered."""
    off = _far_off(good, question, know) or _is_talk(good, question, know)
    return off or lacks_unit(found, good[0], question, know)


def _far_off(good: list[Candidate], question: Question, know: Knowledge) -> bool:
    """Return whether nothing that fits in part is fit to be asked back: a question that names a thing and no reading
    holds too little of every one of them ("what if both packs fail", "the tractor's speed").
    """
    named = any(not (know.matcher.is_soft(m) or know.matcher.is_strict(m)) for m in question.reading.mentions)
    return named and not question.reading.amounts and all(c.match.covered < COVER for c in good if c.match)


def _is_talk(good: list[Candidate], question: Question, know: Knowledge) -> bool:
    """Return whether a question names nothing of the trade, but something that what fits best does not know of: of "who
    is playing tonight", "who" alone is no reason to ask back who taxies.
    """
    mentions = question.reading.mentions
    if question.reading.amounts or question.conditions or not good[0].match or question.context:
        return False
    known = know.matcher.vocabulary(good[0].match.record)
    of_the_trade = (m for m in mentions if not m.is_plain and not m.weak and not _is_aspect(m, know))
    strange_to_it = (m for m in mentions if m.is_plain and m.concepts.isdisjoint(known))
    return next(of_the_trade, None) is None and next(strange_to_it, None) is not None


def _is_aspect(mention: Mention, know: Knowledge) -> bool:
    return all(know.lexicon.kinds.get(concept, "").startswith("ask") for concept in mention.concepts)


def lacks_unit(found: list[Candidate], best: Candidate, question: Question, know: Knowledge) -> bool:
    """Return whether what would fit best cannot be told in the unit wanted: "pedal travel in mm" is an angle."""
    unit = question.reading.unit
    if not unit or not unit.outright:
        return False
    left = (c.score / NOT_TOLD for c in found if not is_told_in(c.result, question.reading, know))
    return max(left, default=0.0) > best.score


def _only_procedure(good: list[Candidate], question: Question) -> ProcedureResult | None:
    """Return the one procedure among what fits in part, where steps are asked for: "what's the drill?"."""
    if not question.reading.has("steps"):
        return None
    whole = (c for c in reversed(good) if c.match and c.match.whole)
    found = {c.match.record: c.result for c in whole if c.match and isinstance(c.result, ProcedureResult)}
    return next(iter(found.values())) if len(found) == 1 else None


def offered(know: Knowledge, record: str) -> str:
    """Return how a record is offered as a choice: as a question that it answers."""
    found = know.base.records[record]
    for field in ("of", "title"):
        text = getattr(found, field, "")
        if text:
            return str(text)
    asks = getattr(found, "asks", ())
    return str(asks[0]).replace("[", "").replace("]", "") if asks else record


def _words(found: list[Candidate], unknown: list[Mention]) -> tuple[str, ...]:
    if unknown:
        return tuple(dict.fromkeys(m.text for m in unknown))
    best = next((c.match for c in found if c.match), None)
    return tuple(dict.fromkeys(m.text for m in best.barred)) if best else ()


def _near(found: list[Candidate], know: Knowledge) -> tuple[str, ...]:
    near = [c.match.record for c in found if c.match and c.match.covered > 0.5 and c.match.share > 0.2]
    return tuple(dict.fromkeys(offered(know, name) for name in near))[:3]
