"""Amounts that are said to be a figure themselves, and are no reading to hold against it.

"Is the retraction speed still 200?", "max brake temperature is 280, isn't it": what is wanted is the figure, and
whether it is the one said. "Within limits" would be an answer to another question.
"""

from __future__ import annotations

from assistant.quantities.amounts import Amount
from assistant.resolving.asserting import is_put_forward, statement_start
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Check
from assistant.understanding.clauses import STOPS, TAGS
from assistant.understanding.matching import Match
from assistant.understanding.mentions import BOUNDS

_BEING = frozenset(("is", "are", "still", "now", "was", "at", "of", "as", "being", "remains", "stays", "just", "only"))
_COPULA = frozenset(("is", "are", "remains", "stays"))
_BEFORE = frozenset(("still", "now", "only", "just", "really"))
_HOLDING = frozenset({
    "right", "correct", "true", "valid", "current", "hold", "holds", "apply", "applies", "stand", "stands",
})  # fmt: skip
_EQUALS = frozenset(("is", "are", "was", "were", "be"))
_BEING_SO = _EQUALS | {"being", "been", "equals"}
_BELIEVING = frozenset({
    "thought", "think", "thinks", "believe", "believed", "believes", "says", "said", "reckon", "reckons", "heard",
    "told", "learned", "learnt", "remember", "remembered", "taught", "claims", "insists", "swears", "sure", "guess",
    "assume", "assumed", "understood",
})  # fmt: skip
_OPENING = 6
"""Words at the beginning among which stands that somebody believes something."""
_OURS = frozenset({"my", "our", "it", "this", "now", "currently"})
_IN_FULL = 0.95
"""Share from which on a way of asking and a question hold the same."""
_OWN = frozenset({"my", "our", "your", "we", "i", "it", "that", "this", "with", "at"})
_JUDGED = frozenset({
    "ok", "okay", "alright", "fine", "legal", "allowed", "enough", "good", "safe", "acceptable", "too", "problem",
})  # fmt: skip


def names_it(check: Check, question: Question, know: Knowledge) -> bool:
    """Return whether an amount only names a limit by its figure, which is wanted in another unit: "the 195 kt tyre
    limit in miles per hour".
    """
    unit = question.reading.unit
    same = unit is not None and know.units.get(unit.symbol).dimension == know.units.get(check.unit).dimension
    return same and check.given == check.bound


def is_claimed(check: Check, amount: Amount, question: Question, match: Match) -> bool:
    """Return whether an amount is said or asked to be a limit itself: "the retraction limit is still 200, right?"."""
    if any(a is not amount and f"#{a.value:g}" not in match.concepts for a in question.reading.amounts):
        return False
    if _asks_whether_it_is(amount, question) or is_said_of_the_whole(amount, question, match):
        return True
    if check.given == check.bound:
        return False
    if believed(question) and not (check.limit.maximum or check.limit.minimum):
        return True  # a stated figure is held against nothing: "the wheelbase is 14 m, right?"
    if not check.within:
        return False
    words, k = question.reading.words, amount.start
    while k and words[k - 1] in _BEING:
        k -= 1
    bounds = [m for m in question.reading.mentions if m.concepts & BOUNDS and m.end <= k]
    if k == amount.start or not bounds:
        return False
    named = words[bounds[-1].end : k]
    tagged = believed(question) and not _COPULA.isdisjoint(words[k : amount.start]) and STOPS.isdisjoint(named)
    return not named or tagged


def _asks_whether_it_is(amount: Amount, question: Question) -> bool:
    """Return whether a question asks if an amount is the figure: "is VLE 260?", "is 280 still the brake limit?",
    "retraction speed 200, still right?".
    """
    words = question.reading.words
    before = [w for w in words[: amount.start] if w not in _BEFORE]
    after = [w for w in words[amount.end :] if w[0].isalnum() and w not in _BEFORE]
    if not _JUDGED.isdisjoint(words):
        return False
    if before in (["is"], ["are"]):
        return after[:1] == ["the"] or _is_one_name(amount.end, question)
    if question.reading.has("can"):
        return False
    if "still" in words and not _HOLDING.isdisjoint(after):
        return True
    return before[:1] in (["is"], ["are"], ["was"]) and not after and _OWN.isdisjoint(before) and len(before) > 1


def is_said_of_the_whole(amount: Amount, question: Question, match: Match) -> bool:
    """Return whether an amount is believed or asked to be what the whole question names in full: "I always thought the
    time for a retraction was 10 s", "the speed below which it is inactive is 15 kt, isn't it?", "isn't VLE 260?".
    """
    words = question.reading.words
    in_full = not match.tag and match.covered >= _IN_FULL and match.share >= _IN_FULL and not match.barred
    start = statement_start(words)
    if not in_full or not _JUDGED.isdisjoint(words) or not _OURS.isdisjoint(words[start : amount.start]):
        return False
    if not any(word[0].isalnum() for word in words[amount.end :]) and words[0] in _EQUALS and not start:
        return True
    being = amount.start and words[amount.start - 1] in _BEING_SO
    return bool(being) and (believed(question) or believes(question) or is_put_forward(words))


def _is_one_name(start: int, question: Question) -> bool:
    """Return whether one name is all that follows: "is 255 VLE"."""
    words = [i for i in range(start, len(question.reading.words)) if question.reading.words[i][0].isalnum()]
    return any(not m.weak and list(m.taken) == words for m in question.reading.mentions)


def believes(question: Question) -> bool:
    """Return whether a question tells what somebody believes: "I always thought …", "a colleague says …"."""
    return not _BELIEVING.isdisjoint(question.reading.words[:_OPENING])


def believed(question: Question) -> bool:
    """Return whether a question ends in a tag that wants to be agreed with."""
    words = [w for w in question.reading.words if w[0].isalnum()]
    tag = bool(words) and words[-1] in TAGS and words[-2:] != ["all", "right"]
    return tag or words[-2:] == ["not", "it"] or "surely" in words
