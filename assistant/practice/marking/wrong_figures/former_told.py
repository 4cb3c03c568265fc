"""Former values told in free words beside the present one: "205 kt, I still had 200 in my head".

A number is taken for a former one where it is one, what holds now is said as well, and the words about it tell of the
past, of learning or of what somebody keeps in mind. Whoever goes over to it ("so 280") has claimed it all the same.
"""

from __future__ import annotations

import re

from assistant.practice.marking.finding.equal import equals, says
from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Claim, Said
from assistant.practice.marking.reading.wording import STOPS
from assistant.resolving.knowing import Knowledge

_LED_BY = (
    r"\b(?:used to|(?:they|we|it|i|you) (?:had|said|put|gave|learn\w*|knew)|"
    r"(?:still|always) (?:had|have|think|say|see)|keep \w+ing|kept \w+ing|remember\w*|learn(?:ed|t)|"
    r"(?:was|were) taught|thought|would have (?:said|told|put|answered)|before|old|older|previous|former|"
    r"last (?:year|course|time)|(?:years?|months?) ago|notes?)\b"
)
_FOLLOWED_BY = (
    r"^(?:\w+ ){0,2}?(?:in my (?:\w+ )?(?:head|mind|memory|notes?|book)|(?:is|was)? ?(?:still )?stuck|until|till|"
    r"from before|last (?:year|course|time)|(?:on|from|in) (?:my|the|an) (?:old|former|previous|last)|"
    r"(?:is|was) what (?:i|we|they)|(?:years?|months?) ago|up to (?:the )?(?:last|this) (?:rev|revision|change)|"
    r"came to mind|before (?:the|that|this|it)|"
    r"(?:as|like|from) (?:the |my |our |all )*(?:\w+ )?(?:old|older|former|previous|last|outdated))\b"
)
_CONCLUDING = r"\b(?:so|now|today|therefore|hence|must be|should be|it is|that is|or|either|maybe)(?: \w+)?$"
"""Words right before a number by which it is claimed, whatever stands before them."""
_NEAR = 8
_BEFORE_IT = r"\bbefore(?: (?:it|that|this|then|the change))?$"
_THEN = r"then\b"
_PRESENT = frozenset(("now", "today", "currently", "present", "since"))
_PAST = frozenset(("before", "was", "were", "former", "formerly", "previous", "previously", "old"))


def with_formers(said: Said, need: Need, know: Knowledge) -> Said:
    """Return an answer whose numbers that were so once, and are told as such, count as former ones."""
    if not need.former:
        return said
    if need.change:
        return _of_a_change(said, need, know)
    wanted = [f for p in need.points for f in p.figures]
    if not any(says(c, f, know) and not c.former for c in said.claims for f in wanted):
        return said
    claims = tuple(c._replace(former=True) if _is_told(c, need, said, know) else c for c in said.claims)
    return said._replace(claims=claims)


def _of_a_change(said: Said, need: Need, know: Knowledge) -> Said:
    """Return an answer to what changed in which the former number is told by a word beside it, or by its place: the
    question asks for two figures, and two are given in its order.
    """
    olds = [any(equals(c.amount, f, know.units) for f in need.former) for c in said.claims]
    if sum(olds) != 1 or any(c.former for c in said.claims):
        return said
    at = olds.index(True)
    claim = said.claims[at]
    before, after = _words(claim, said, back=True), _words(claim, said, back=False)
    by_word = re.search(_BEFORE_IT, before) or re.match(_THEN, after)
    by_place = len(olds) == 2 and not any(c.now for c in said.claims) and at == (0 if _asks_former_first(need) else 1)
    if claim.now or not (by_word or by_place):
        return said
    return said._replace(claims=(*said.claims[:at], claim._replace(former=True), *said.claims[at + 1 :]))


def _asks_former_first(need: Need) -> bool:
    """Return whether a question asks what was before it asks what is: "what was it, and what is it now"."""
    words = need.question.words
    now = next((i for i, word in enumerate(words) if word in _PRESENT), len(words))
    past = next((i for i, word in enumerate(words) if word in _PAST), len(words))
    return past < now


def _is_told(claim: Claim, need: Need, said: Said, know: Knowledge) -> bool:
    if claim.former or claim.now or not any(equals(claim.amount, f, know.units) for f in need.former):
        return False
    if any(says(claim, f, know) for p in need.points for f in p.figures):
        return False
    before, after = _words(claim, said, back=True), _words(claim, said, back=False)
    if re.search(_CONCLUDING, before) and not re.search(_FOLLOWED_BY, after):
        return False
    return bool(re.search(_LED_BY, before) or re.search(_FOLLOWED_BY, after))


def _words(claim: Claim, said: Said, back: bool) -> str:
    """Return the words on one side of a number, to the end of its clause or the next number."""
    words = said.reading.words
    start, end = claim.amount.start, claim.amount.end
    found: list[str] = []
    for i in range(start - 1, max(-1, start - 1 - _NEAR), -1) if back else range(end, min(len(words), end + _NEAR)):
        if i in said.numbered or words[i] in STOPS:
            break
        found.append(words[i])
    return " ".join(reversed(found) if back else found)
