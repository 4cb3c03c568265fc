"""Of two readings that sound nearly alike, the one that says more was meant: sound can hardly tell which.

A recogniser prefers the words of everyday ("which offer") where the trade's sound almost so ("switch off").
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from assistant.answering.answer import ANSWER
from assistant.quantities.tokens import words_of
from assistant.voice.hearing.shares import Reading, Weighed, by_fit
from assistant.voice.hearing.sounds import all_apart

if TYPE_CHECKING:
    from collections.abc import Sequence

    from assistant.resolving.knowing import Knowledge
    from assistant.voice.hearing.repairing import Repairer

_NEAR = 1.3
"""Cost in sounds up to which two texts are nearly alike: about two that are made in the same place."""
_LESS = 0.05
"""How much less well what says more may be explained."""
_MORE = 1.0
"""How much more it must say: about the weight of one name that most records speak of."""
_LOOKED_AT = 6


def said_more(weighed: Weighed, readings: Sequence[Reading], repairer: Repairer, knowledge: Knowledge) -> Weighed:
    """Return readings weighed anew where one that sounds nearly as the chosen one says more than it."""
    chosen = weighed.reading
    if chosen.answer.outcome != ANSWER or chosen.amounts:
        return weighed
    rivals = [r for r in weighed.rivals[:_LOOKED_AT] if r.explained >= chosen.explained - _LESS and not r.amounts]
    rivals = [r for r in rivals if _has_other_words(r.text, chosen.text, knowledge)]
    if not rivals:
        return weighed
    least = _told(chosen, knowledge) + _MORE
    for rival in _near(chosen, rivals, repairer):
        if _told(rival, knowledge) >= least:
            heard = rival._replace(fit=max(rival.fit, chosen.fit), cost=min(rival.cost, chosen.cost))
            return by_fit([heard, *(each for each in readings if each not in (chosen, rival))])
    return weighed


def _has_other_words(text: str, chosen: str, knowledge: Knowledge) -> bool:
    """Return whether a text has a word of its own: a name that is only broken apart says no more."""
    return not set(words_of(text)) - set(words_of(chosen)) <= knowledge.lexicon.neutral


def _near(chosen: Reading, rivals: Sequence[Reading], repairer: Repairer) -> list[Reading]:
    sounds = repairer.sounds(chosen.text)
    others = [repairer.sounds(rival.text) for rival in rivals]
    means = all_apart(sounds, others)
    return [
        rival
        for rival, mean, other in zip(rivals, means, others, strict=True)
        if mean * max(len(sounds), len(other)) <= _NEAR
    ]


def _told(reading: Reading, knowledge: Knowledge) -> float:
    """Return how much of the trade a reading tells: the weight of its names, the states it gives, less odd words."""
    mentions = knowledge.reader.read(reading.text, mending=False).mentions
    named = sum(knowledge.matcher.mention_weight(mention) for mention in mentions if not mention.is_plain)
    odd = sum(mention.is_plain and not mention.weak for mention in mentions)
    return named + len(reading.answer.understood.get("conditions", ())) - odd
