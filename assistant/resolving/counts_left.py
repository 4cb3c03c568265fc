"""What is left of a stated number after some of it has been used: "three applications made, how many left?"."""

from __future__ import annotations

from assistant.knowledge.records import Model
from assistant.quantities.amounts import Amount
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.model_inputs import bind
from assistant.resolving.models import resolve_model
from assistant.resolving.record_words import is_known, named_outright
from assistant.resolving.results import ModelResult
from assistant.understanding.mentions import PLAIN, STATE

_FUNCTION = "remaining"
_LEFT = frozenset(("left", "remain", "remains", "remaining", "more", "still", "now"))
_OPEN = frozenset(("how", "what", "whats"))
_ONE = frozenset(("one", "single"))
_TIMES = {"once": 1.0, "twice": 2.0, "thrice": 3.0}
_BESIDE = 2
_NO_SUBJECT = frozenset((PLAIN, STATE))
"""How a concept begins that says what is asked of the things counted, and names none: "left", "used"."""


def count_left(question: Question, know: Knowledge) -> ModelResult | None:
    """Return what is left, where a question tells how many have been used and asks for the rest."""
    words = question.reading.words
    if _LEFT.isdisjoint(words) or _OPEN.isdisjoint(words) or any(m.is_outside for m in question.reading.mentions):
        return None
    for name in know.base.ids("models"):
        if know.base.records[name].function == _FUNCTION:
            model = know.record(name, question.variant)
            result = _rest(model, question, know)
            if result is not None:
                return result
    return None


def _rest(model: Model, question: Question, know: Knowledge) -> ModelResult | None:
    subject = frozenset(c for m in know.phrase(model.of).mentions for c in m.concepts if c[0] not in _NO_SUBJECT)
    if _done_with_it(model, question, know):
        question = _with_times(question)
    elif any(not subject.isdisjoint(m.concepts) for m in question.reading.mentions):
        question = _with_ones(subject, question)
        if not _counts_subject(subject, question):
            return None
    else:
        return None
    binding = bind(model, question, know)
    if not question.reading.amounts or binding.missing or binding.left:
        return None
    result = resolve_model(model, binding, question, know)
    return result if isinstance(result, ModelResult) and result.values else None


def _done_with_it(model: Model, question: Question, know: Knowledge) -> bool:
    """Return whether it is told how many times something was done with what a record knows of, and nothing else is
    named: "braked twice on the accumulator".
    """
    words = question.reading.words
    if _TIMES.keys().isdisjoint(words) and "times" not in words:
        return False
    done = {cue for item in model.inputs if not item.default for cue in item.cues.split()}
    things = list(named_outright(question.reading.mentions, know))
    return not done.isdisjoint(words) and len(things) > 1 and all(is_known(m, model.id, know) for m in things)


def _with_times(question: Question) -> Question:
    """Return a question with "once", "twice" and "four times" as the numbers that they are, and no factors."""
    words, reading = question.reading.words, question.reading
    amounts = (a._replace(unit="count") if words[a.end - 1] == "times" else a for a in reading.amounts)
    said = [Amount(k, k + 1, _TIMES[w], "count", w, True, False) for k, w in enumerate(words) if w in _TIMES]
    return question._replace(reading=reading._replace(amounts=(*amounts, *said)))


def _with_ones(subject: frozenset[str], question: Question) -> Question:
    """Return a question with a lone "one" that counts its subject as the number that it is: "one full press"."""
    words, reading = question.reading.words, question.reading
    read = {k for a in reading.amounts for k in range(a.start, a.end)}
    ones = [
        Amount(k, k + 1, 1.0, "count", words[k], True, False)
        for m in reading.mentions
        if not subject.isdisjoint(m.concepts)
        for k in range(max(0, m.start - _BESIDE), m.start)
        if words[k] in _ONE and k not in read
    ]
    return question._replace(reading=reading._replace(amounts=(*reading.amounts, *ones))) if ones else question


def _counts_subject(subject: frozenset[str], question: Question) -> bool:
    """Return whether each number given counts what the rest is asked of."""
    starts = [m.start for m in question.reading.mentions if not subject.isdisjoint(m.concepts)]
    return all(any(a.end <= at <= a.end + _BESIDE for at in starts) for a in question.reading.amounts)
