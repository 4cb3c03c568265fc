"""Questions that ask by its loss whether a thing is there: "does that stop autobrake?", where yes says it is gone."""

from __future__ import annotations

import re
from collections.abc import Iterable

from assistant.knowledge.records import Fact
from assistant.practice.marking.points import Point, State
from assistant.practice.marking.questions.parts import POLAR, parts_of, pieces
from assistant.practice.marking.reading import wording
from assistant.understanding.mentions import Reading

_AUXILIARY = r"(?:so |then |and |but |now )*(?:do|does|did|will|would|can|could)\b"
_ASKING = re.compile(
    rf"{_AUXILIARY}.*?\b(?:affects?|disarms?|disables?|kills?|costs?|deprives?|prevents?|inhibits?|impairs?|degrades?)\b|"
    rf"{_AUXILIARY} (?:\w+ ){{1,4}}?stops? (?:the |my |your )?(?!(?:you|me|us|it|in|at|on|by|with|before|after|when|if|"
    r"short|straight|aeroplane|there|from|and|or)\b)\w|"
    rf"{_AUXILIARY} (?:i|you|we|it|that|this|they) (?:also |still |then |now )*(?:lose|lost)\b|"
    r".*\b(?:takes?|knocks?|shuts?) (?:(?:\w+ )+(?:away|out|off)|away|out)\b|"
    rf"{_AUXILIARY} (?:that|it|this) (?:also |then |now )*(?:switch|turn|shut|cut) (?:off|out)\b|"
    r"(?:so |then |and |but |now )*(?:am|are|is) (?:i|you|we|it) (?:then |now )*without\b|"
    r".*\bleaves? (?:\w+ )?without\b|"
    r"(?:so |then |and |but |now )*(?:is|are|was|were|will|would|has|have)\b(?! (?:i|you|we) ).*?"
    r"(?<!not )\b(?:affected|lost|gone|unavailable|inoperative|inop|disarmed|disabled|dead|degraded|impaired|inhibited|"
    r"missing)\b"
)
"""What asks for a loss, in small letters: a caption that speaks of one is written in capitals."""
_CASE = re.compile(r"\b(?:with|when|while|if|once|after|in|by|at|below|above|on) .*")
"""Under what something is asked, which may speak of another loss."""
_UNAFFECTED = re.compile(r"\b(?:not|never|neither)\b[^.;]{0,24}\baffect(?:s|ed)?\b|\bunaffected\b", re.IGNORECASE)
_GONE = re.compile(r"\b(?:no|not|cannot|never|lost|gone|without)\b", re.IGNORECASE)
_STAYS = re.compile(r"\b(?:works?|keeps?|holds?|still|stays?|remains?)\b", re.IGNORECASE)
_THERE = re.compile(r"\b(?:works?|have|has|got|keeps?|left|available|functions?|holds?|normal|normally)\b")


def asks_loss(text: str) -> bool:
    """Return whether a question of one part asks whether something is lost: "is autobrake affected?"."""
    asking = [piece.strip() for piece in pieces(text) if POLAR.match(piece)]
    last = _CASE.sub("", asking[-1]) if asking and len(parts_of(text)) <= 1 else ""
    return _ASKING.match(last[:1].lower() + last[1:]) is not None


def loss_verdict(fact: Fact, text: str) -> str:
    """Return the yes or no of a statement to a question that asks for a loss, or on what is not affected; else ""."""
    asking = [piece for piece in pieces(text) if POLAR.match(piece)]
    if not asking or len(parts_of(text)) > 1:
        return ""
    first = re.split(r"[.;]\s", fact.says)[0]
    spared = _UNAFFECTED.search(first) is not None or _spares(fact.says, asking[-1])
    if not asks_loss(text):
        return "yes" if spared and _THERE.search(asking[-1]) else ""
    if spared:
        return "no"
    if _GONE.search(first):
        return "yes"
    return "no" if _STAYS.search(first) else ""


def _spares(says: str, asking: str) -> bool:
    """Return whether one clause of a statement says of a thing that a question names that it is not affected."""
    named = {word for word in re.findall(r"\w+", asking.lower()) if len(word) > _SHORT}
    clauses = [clause for clause in re.split(r"[.;,]\s", says) if _UNAFFECTED.search(clause)]
    return any(named.intersection(_UNAFFECTED.sub("", clause).lower().split()) for clause in clauses)


_SHORT = 3
"""Letters of a word up to which it is no name."""


def turned(points: Iterable[Point], question: Reading, text: str) -> tuple[Point, ...]:
    """Return points, those marked of which a question asks whether they are lost."""
    made = tuple(points)
    things = {i for p in made if p.state for i in _places(p.state, question)}
    whole = asks_loss(text)
    return tuple(
        p._replace(state=p.state._replace(turned=True))
        if p.state and (whole or _lost_at(p.state, things, question)) else p
        for p in made
    )  # fmt: skip


_BEFORE = wording.word_set(
    "affect affects affecting stop stops stopping disarm disarms disable disables disabling kill kills lose loses "
    "losing cost costs deprive deprives prevent prevents inhibit inhibits without"
)
"""Words before a thing by which its loss is asked for."""
_TAKEN = wording.word_set("take takes taking taken knock knocks knocked shut shuts")
_AWAY = wording.word_set("away out off")
"""What makes a loss of a word of movement, beside it or behind the thing: "take it away", "knock out"."""
_BEHIND = wording.word_set(
    "affected lost gone unavailable inoperative inop disarmed disabled dead degraded impaired inhibited missing "
    "drop drops disarm disarms"
)
"""Words behind a thing by which its loss is asked for."""
_LED = wording.word_set("the my your our me you us of any all both either and or , from down")
_THEN = wording.word_set("be been is are now then still also too automatically and")


def _places(state: State, question: Reading) -> set[int]:
    """Return where a question names a thing."""
    return {i for m in question.mentions if m.concepts & state.subject and not m.weak for i in range(m.start, m.end)}


def _lost_at(state: State, things: set[int], question: Reading) -> bool:
    """Return whether what stands beside a thing, where a question names it last, asks for its loss."""
    own = _places(state, question)
    if not own:
        return False
    words, last = question.words, max(own)
    before = next((i for i in range(last, -1, -1) if i not in things and words[i] not in _LED), -1)
    behind = next((i for i in range(last, len(words)) if i not in things and words[i] not in _THEN), len(words))
    led = words[before] if before >= 0 else ""
    follows = words[behind] if behind < len(words) else ""
    if led in _BEFORE or (led in _AWAY and before and words[before - 1] in _TAKEN):
        return True
    return follows in _AWAY if led in _TAKEN else follows in _BEHIND
