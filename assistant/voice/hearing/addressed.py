"""Whether what was heard was said to this listener at all: a car is full of talk, and some of it sounds like the trade.

Who types has meant to ask. By ear, more must speak for it: the form of a question, names that only the trade uses,
its units. The less of these there is, the less may be left unexplained. Nothing is decided here about what is asked.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from assistant.answering.answer import ANSWER, CLARIFY, DECLINE, Answer
from assistant.frozen import NamedTuple
from assistant.resolving.knowing import Knowledge
from assistant.resolving.offering import offered
from assistant.understanding.mentions import OUTSIDE, PLAIN, Mention, Reading

if TYPE_CHECKING:
    from collections.abc import Iterable

_WHAT = r"what(?:'?s)?|which|who(?:'?s|se|m)?|how(?:'?s)?|why(?:'?s)?"
_BE = r"does|do|is|are|can|may|must|should|could|would|will|did|am|was|were|has|have|need"
_LEAD = r"uh|um|er|so|and|okay|ok|well|right|now|please|sorry|but|or|then|also|hey"
_TELL = r"tell|give|show|list|name|explain|define|describe|compare|remind me|run me|talk me"
_ASKING = re.compile(
    rf"\b(?:{_WHAT})\b|^\W*(?:(?:{_LEAD})\W+)*(?:(?:{_BE})(?! not)|{_TELL}|where(?:'?s)?|when)\b"
    rf"|\b(?:where|when) (?:{_BE})\b"
    rf"|\b(?:{_BE}) (?:i|we|it|the)\b|\b(?:is|are|was|does|do|did)(?:n'?t| not) (?:it|they|i|we|that)\b"
    r"|\b(?:is|was) (?:that|this)\b|\b(?:since when|stop or go|tell me|give me|good to go|run me)\b",
    re.IGNORECASE,
)
"""What a question is known by; "are" in the middle of a sentence tells nothing."""
_ASKS_WHAT = re.compile(rf"\b(?:{_WHAT})\b", re.IGNORECASE)
_OTHERS = frozenset({"he", "she", "his", "her", "him", "hers", "your", "yours"})
"""Who is spoken of between people, and hardly to a machine."""
_ON_THE_ROAD = re.compile(
    r"\b(?:you(?:'re| are| were)|(?:are|were|did) you|over t?here|what speed (?:are|were) we)\b"
    r"|\b(?:limit|turn|left|right|park|stop) here\b|^\W*(\w+)(?:\W+\1){2,}\W*$"
    r"|\b(?:cars?|vans?|lorr(?:y|ies)|bus(?:es)?|tractors?|caravans?|motorways?|roundabouts?|junctions?|lanes?|kerbs?"
    r"|petrol|gearbox|clutch|handbrake|second gear|third gear|top gear|give way|cyclists?|indicators?)\b",
    re.IGNORECASE,
)
"""What is said to who sits beside one, what is of the road alone, and a call: a word said three times."""
_DIRECTIONS = re.compile(
    r"\b(?:turn|keep|bear|stay|go) (?:slightly |sharp |to the |in the )?(?:left|right)\b"
    r"|\b(?:yards|metres|meters|miles|kilometres)\b.*\b(?:turn|keep|bear|take|exit)\b",
    re.IGNORECASE,
)
"""Which way to go, as it is told to who drives."""
_TELLS = re.compile(
    r"\W*(?:the|my|our|his|this|that|these|those) .*\b(?:is|are|was|were|feels?|needs?|came|looks?|sounds?)\b",
    re.IGNORECASE,
)
"""A sentence that tells how something is; nobody asks so, though a question may begin with it."""
_TELLING_NOTHING = frozenset({"ask", "ask!", "filler"})
SURELY, PERHAPS, NOT = 1.0, 0.5, 0.0
"""Whether a turn was said to this listener; where it is only perhaps, that is for the speaker to confirm."""
UNKNOWN_LEAN = 99.0
"""That it was not told how likely a text is as a question: nothing is said against it then."""
_MUST_BE_ASKED, _SURELY_ASKED, _ASKED, _NAMED, _GOES_ON = 15.0, 8.0, 5.0, 4.0, 3.0
"""How much likelier than as other talk a turn must be as a question: one whose names were mended, one in few words, one
that stands alone, a name by itself, one that goes on. Measured on fresh questions and on talk of many kinds."""
_IDLE, _MUCH_IDLE, _SURELY_IDLE = -6.0, -8.0, -13.0
_ORDER_IDLE = -7.0
"""How much less likely it is where it is other talk."""
_FEW_WORDS = 4
_GOING_ON = re.compile(r"\W*(?:and|what about|how about|but|with|without|what if)\b", re.IGNORECASE)
_NARROWING = re.compile(r"\W*(?:on|in|at|for|from|to|by|under|over|after|before) ", re.IGNORECASE)
_SAYS_MUCH = 8.0
"""Weight of all that is named from which on a question is hardly one between people."""
_TELLS_ENOUGH = 4.5
"""Weight of one name of the trade that is a question by itself, with nothing left over."""
_MOST_WORDS = 9
"""Words of a turn that only goes on: what is longer is looked at as if it stood alone."""
_STATES = ("@", "=", "#", PLAIN)


class _Evidence(NamedTuple):
    """What speaks for a text.

    trade: names and units that only the trade uses. things: different ones named at all. weight: of all that is named.
    loose: content words that neither a name nor the answer explains. numbers: those without a unit; measured: those
    with one. besides: all words that are in no name and no number. asks_back: whether it could not be answered.
    """

    asks: bool
    trade: int
    things: int
    weight: float
    loose: int
    others: bool
    numbers: int
    measured: int
    besides: int
    asks_back: bool


def is_addressed(
    text: str, answer: Answer, knowledge: Knowledge, lent: bool = False, lean: float = UNKNOWN_LEAN
) -> float:
    """Return how sure it is that a turn that stands alone is one of the trade: SURELY, PERHAPS or NOT.

    What its answer explains counts for it. lent: one of its names was put there by mending, and speaks for nothing.
    lean: how much likelier it is as a question here than as anything said in English, a natural logarithm.
    """
    found = _evidence(text, answer, knowledge)
    if answer.outcome == DECLINE:
        if lean >= _ASKED or found.trade > 1 or _names_another(text, knowledge):
            return SURELY
        return NOT if lean < _IDLE else PERHAPS
    if _is_of_the_road(text, found):
        return NOT
    if lent:
        return _lent(text, found, answer, lean)
    if _only_tells(text, found) and lean < UNKNOWN_LEAN:
        return PERHAPS if lean >= _SURELY_ASKED else NOT
    least = _SURELY_ASKED if found.besides or found.things > 1 else _NAMED
    told = answer.outcome == ANSWER or lean >= _MUST_BE_ASKED
    if told and not found.loose and found.things and least <= lean < UNKNOWN_LEAN:
        return SURELY  # in few words, none of which asks
    if not _speaks_for_itself(found):
        return NOT
    return _as_likely(found, lean)


def _lent(text: str, found: _Evidence, answer: Answer, lean: float) -> float:
    """Return how sure it is of a turn with a name in it that was put there by mending, which speaks for nothing."""
    bare = found._replace(trade=found.trade - 1, things=found.things - 1)
    if (bare.things < 1 and (bare.besides > _FEW_WORDS or not _ASKS_WHAT.search(text))) or not _speaks_for_itself(bare):
        only = answer.outcome == ANSWER and not (found.loose or found.besides)  # a name alone, as a label is asked for
        return SURELY if only and _MUST_BE_ASKED <= lean < UNKNOWN_LEAN else NOT
    return _as_likely(bare, lean)


def _as_likely(found: _Evidence, lean: float) -> float:
    """Return how sure it is of a turn that speaks for itself, by how likely its words are as a question."""
    if lean >= _ASKED:
        return SURELY if found.trade > 0 or lean >= _SURELY_ASKED else PERHAPS
    if found.loose or lean <= _MUCH_IDLE:
        return NOT
    if found.asks and found.trade > 0 and found.things > 2 and found.weight >= _SAYS_MUCH:
        return SURELY
    return PERHAPS if found.trade > 1 else NOT


def goes_on(
    text: str, answer: Answer, before: Answer | None, knowledge: Knowledge, lean: float = UNKNOWN_LEAN
) -> float:
    """Return how sure it is that a turn which leans on the one before was said to this listener.

    before: the answer before, which a turn that adds something does not come to again. lean: as in is_addressed.
    """
    size = len(text.split())
    if lean < (_SURELY_IDLE if size <= _FEW_WORDS else _IDLE):
        return NOT
    found = _evidence(text, answer, knowledge)
    if _is_of_the_road(text, found) or (_is_order(text, found) and lean < _ORDER_IDLE):
        return NOT
    if _only_tells(text, found) and not found.numbers and lean < UNKNOWN_LEAN:
        return PERHAPS if lean >= _SURELY_ASKED else NOT
    if not _may_go_on(text, answer, before, knowledge):
        return PERHAPS if _GOES_ON <= lean < UNKNOWN_LEAN and size <= _FEW_WORDS else NOT
    again = before is not None and answer.text == before.text and size > 2 and lean < _SURELY_ASKED
    return SURELY if lean >= (_GOES_ON if size > 2 else _IDLE) and not again else PERHAPS


def _is_of_the_road(text: str, found: _Evidence) -> bool:
    """Return whether a turn speaks of the road or to a person, and too little of the trade to be a question."""
    if found.trade > 1 or found.weight >= _SAYS_MUCH:
        return False
    directed = not found.asks and _DIRECTIONS.search(text) is not None
    return directed or _ON_THE_ROAD.search(text) is not None


def _only_tells(text: str, found: _Evidence) -> bool:
    """Return whether a turn tells how something is, and nothing of the trade: people say so to one another."""
    return not (found.asks or found.trade or found.measured) and _TELLS.match(text) is not None


def _is_order(text: str, found: _Evidence) -> bool:
    """Return whether a turn neither asks nor goes on from anything, as orders do ("turn left here")."""
    return not (found.asks or found.trade or found.measured or _GOING_ON.match(text) or _NARROWING.match(text))


def _may_go_on(text: str, answer: Answer, before: Answer | None, knowledge: Knowledge) -> bool:
    """Return whether a turn may lean on the one before: short, and with nothing in it left over."""
    found = _evidence(text, answer, knowledge)
    size, leads_on = len(text.split()), bool(_GOING_ON.match(text))
    narrows = leads_on or bool(_NARROWING.match(text))
    again = before is not None and (answer.text == before.text or _asks_back_for(before, answer, knowledge))
    if again and size >= _FEW_WORDS and not narrows:
        return found.trade > 1 or (found.asks and not found.loose)
    if found.loose:
        return _speaks_for_itself(found) or (size <= _FEW_WORDS and leads_on)
    if not (found.weight or found.trade or found.numbers or found.asks or leads_on):
        return False
    return (size <= _MOST_WORDS and not found.others) or _speaks_for_itself(found)


def _names_another(text: str, knowledge: Knowledge) -> bool:
    """Return whether a text asks for something that is known to be of another subject."""
    named = any(mention.is_outside for mention in knowledge.reader.read(text).mentions)
    return named and _ASKING.search(text) is not None


def _asks_back_for(before: Answer, answer: Answer, knowledge: Knowledge) -> bool:
    """Return whether an answer only asks if what was told before is meant."""
    told = knowledge.base.records.get(before.entry)
    return len(answer.choices) == 1 and told is not None and answer.choices[0] == offered(knowledge, before.entry)


def _speaks_for_itself(found: _Evidence) -> bool:
    if found.asks:
        if not found.loose:
            return (found.weight >= 1 or found.trade > 0) and (not found.others or found.trade > 0 or found.things > 1)
        return found.trade >= (1 if found.loose < 3 else 2) or (found.things > 1 and found.weight >= 3)
    if found.loose:
        return found.trade >= (2 if found.loose < 2 else 3) or (found.trade > 0 and found.things > 1)
    if found.things + min(1, found.measured) > 1 and found.besides < 2:
        return True  # names and amounts alone, with hardly a word of a sentence between them
    if found.asks_back:
        return found.trade + found.things > 3
    counted = found.things > 1 and found.numbers > 0 and found.besides <= _FEW_WORDS
    if found.trade > 1 or found.trade + found.things > 2 or counted:
        return True
    return found.trade > 0 and found.weight >= _TELLS_ENOUGH


def _evidence(text: str, answer: Answer, knowledge: Knowledge) -> _Evidence:
    reading = knowledge.reader.read(text)
    explains = knowledge.matcher.vocabulary(answer.entry)
    named = [mention for mention in reading.mentions if not mention.is_plain]
    units = [amount for amount in reading.amounts if amount.unit not in ("", "count", None)]
    things = {concepts for mention in named if (concepts := _things(mention, knowledge))}
    own = sum(_is_of_the_trade(mention, knowledge) for mention in named)
    return _Evidence(
        bool(_ASKING.search(text)), own + len(units) + len(reading.variants), len(things),
        sum(knowledge.matcher.mention_weight(mention) for mention in named),
        sum(_is_loose(mention, explains) for mention in reading.mentions),
        not _OTHERS.isdisjoint(reading.words), len(reading.amounts) - len(units), len(units),
        len(set(range(len(reading.words))).difference(*_places(reading, named))), answer.outcome == CLARIFY,
    )  # fmt: skip


def _places(reading: Reading, named: list[Mention]) -> list[Iterable[int]]:
    numbers: list[Iterable[int]] = [range(amount.start, amount.end) for amount in reading.amounts]
    return [*numbers, *(mention.taken for mention in named)]


def _things(mention: Mention, knowledge: Knowledge) -> frozenset[str]:
    """Return what a mention names: things, quantities and bounds; not how they are asked for, nor in what state."""
    kinds = knowledge.lexicon.kinds
    told = (c for c in mention.concepts if not c.startswith((*_STATES, OUTSIDE)))
    found = frozenset(c for c in told if kinds.get(c, "thing") not in _TELLING_NOTHING)
    return frozenset() if mention.weak and not any(kinds.get(c) == "quantity" for c in found) else found


def _is_of_the_trade(mention: Mention, knowledge: Knowledge) -> bool:
    """Return whether a thing is named in several words, or in one that is no ordinary English."""
    kinds = knowledge.lexicon.kinds
    if mention.weak or not any(kinds.get(c, "thing") == "thing" for c in _things(mention, knowledge)):
        return False
    words = mention.text.split()
    return len(words) > 1 or not knowledge.reader.is_ordinary(words[0])


def _is_loose(mention: Mention, explains: Iterable[str]) -> bool:
    """Return whether a word is left over: what another subject owns always is."""
    if mention.is_outside:
        return True
    return mention.is_plain and not mention.weak and mention.concepts.isdisjoint(explains)
