"""Which setting a policy chooses where what it goes by is given: "wet, 1,400 m required of 2,000 m: which autobrake?".

A limit may say what is chosen by it and by what else is named: ordered rules, of which the first that fits decides. The
limit alone would tell only on which side of it the reading is.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from assistant.knowledge.records import Limit, Model
from assistant.resolving.candidates import Candidate
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import CheckResult, ChosenResult, ModelResult, Result
from assistant.understanding.clauses import asks_whether
from assistant.understanding.matching import Match
from assistant.understanding.mentions import Mention, Reading

_SCORE, _WEIGHT = 1.1, 6.0
EXCEEDED = "exceeded"
"""In a rule, in place of a term: the limit is passed."""
_WHY = "why"
_SETTING = "setting"
_WHOLE = 100.0
_TWO = 2


def settings_chosen(found: Iterable[Candidate], question: Question, know: Knowledge) -> Iterator[Candidate]:
    """Yield the setting that is chosen by a reading which a candidate holds against a limit, or calculates."""
    if not question.reading.amounts:
        return
    for candidate in found:
        if candidate.match is None or not _is_explained(candidate.match):
            continue
        limit, share = _held(candidate.result, question, know)
        chosen = chosen_by(limit, share, question) if limit and _asks_setting(limit, question, know) else None
        if chosen:
            yield Candidate(_SCORE, _WEIGHT, chosen, candidate.match._replace(barred=()))
            return


def chosen_by(limit: Limit, share: float, question: Question) -> ChosenResult | None:
    """Return the setting by the first rule that fits: what is named, or that the limit is passed."""
    reading = question.reading
    named = {c for m in reading.mentions if not _is_denied(m, reading) for c in (*m.concepts, *m.implied)}
    most = limit.maximum.value if limit.maximum else float("inf")
    for when, setting, because in limit.chooses:
        if when in named or (when == EXCEEDED and share > most):
            return ChosenResult(limit, setting, because, share, when)
    return None


def _is_denied(mention: Mention, reading: Reading) -> bool:
    """Return whether a thing is said not to be so: "wet, not contaminated", "it is wet rather than contaminated"."""
    words = reading.words
    start = mention.start
    while start > 0 and words[start - 1] in _PASSED:
        start -= 1
    denied = words[max(0, start - 1) : start]
    before = next((m for m in reading.mentions if m.end == start - 1), None) if denied in _OR else None
    if before is not None:
        return _is_denied(before, reading)  # "no slush or snow"
    return denied in _DENYING or words[max(0, start - _TWO) : start] in _PUT_OFF


_DENYING = (("not",), ("no",), ("without",), ("nor",), ("neither",), ("never",))
_OR = (("or",), ("nor",))
_PUT_OFF = (("rather", "than"), ("instead", "of"))
_PASSED = frozenset(
    ("a", "an", "any", "the", "at", "all", "really", "actually", "officially", "reported", "being", "been", "yet")
)
"""Words between a denial and what it denies."""


def _is_explained(match: Match) -> bool:
    """Return whether nothing bars a record but that a reason is asked for, which the choice gives."""
    return all(_WHY in mention.concepts for mention in match.barred)


def _held(result: Result, question: Question, know: Knowledge) -> tuple[Limit | None, float]:
    """Return the limit that chooses, and the share that is held against it."""
    given = question.reading.amounts
    if isinstance(result, CheckResult) and len(result.checks) == 1 and len(given) == 1:
        check = result.checks[0]
        return (check.limit, check.given) if check.limit.chooses else (None, 0.0)
    if isinstance(result, ModelResult) and len(result.values) == 1 and not result.solved and len(given) == _TWO:
        share = result.values[0].value * (1 if result.values[0].unit == "percent" else _WHOLE)
        return _limit_of(result.model, question, know), share
    return None, 0.0


def _limit_of(model: Model, question: Question, know: Knowledge) -> Limit | None:
    """Return the limit on the result of a planning model, if it chooses anything."""
    name = dict(model.extra).get("limit", "")
    limit = know.record(name, question.variant) if name else None
    return limit if isinstance(limit, Limit) and limit.chooses else None


def _asks_setting(limit: Limit, question: Question, know: Knowledge) -> bool:
    """Return whether it is asked what is set: "which autobrake", or "autobrake setting?" at the end of all."""
    words = question.reading.words
    if asks_whether(words):
        return False
    settings = {s.lower() for _, s, _ in limit.chooses if s}
    families = {know.lexicon.families.get(c, "") for s in settings for c in know.phrase(s).concepts}
    things = {f.partition("-")[0] for f in families if f}
    asked = [m.start for m in question.reading.mentions if m.concepts & (things | {_SETTING})]
    opens = [i for i, word in enumerate(words) if word in ("what", "which")]
    last = max((m.start for m in question.reading.mentions), default=-1)
    return settings.isdisjoint(words) and (last in asked or any(o < a for o in opens for a in asked))
