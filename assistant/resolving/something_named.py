"""Whether a question names anything at all: words that ask, and ordinary ones, fit a record by chance.

"When do we leave tomorrow" has one word that a way of asking for parking has too; nothing in it says that it is meant.
"""

from __future__ import annotations

from assistant.resolving.knowing import Knowledge, Question
from assistant.understanding.mentions import Mention

_ASKING_KINDS = frozenset({"ask", "ask!", "filler"})
_ASKING = frozenset(("what", "which", "how", "why", "where", "who", "whose", "whats", "when"))
_RARE = 4.0
"""Weight from which on a word is of so few records that it tells what is meant, whatever it is: "stratosphere"."""
_TELL = 2
"""Ordinary words that together tell what is meant: "design group"."""


def names_something(question: Question, know: Knowledge) -> bool:
    """Return whether a question names a thing, a quantity, a state or an amount, or goes on from what named one."""
    reading = question.reading
    if reading.amounts or question.conditions or question.background or question.context:
        return True
    plain = sum(mention.is_plain and not mention.weak for mention in reading.mentions)
    return plain >= _TELL or any(_is_a_name(mention, know) for mention in reading.mentions)


def is_of_another_thing(question: Question, record: str, know: Knowledge) -> bool:
    """Return whether a question names no more than a quantity, and a word beside it that what answers it does not know:
    "the temperature tomorrow", "the speed of a swallow".
    """
    reading = question.reading
    if reading.amounts or question.conditions or question.background or question.context or reading.variants:
        return False
    said = [m for m in reading.mentions if not m.weak]
    named = [m for m in said if not m.is_plain and not all(_kind(c, know) in _ASKING_KINDS for c in m.concepts)]
    known = know.matcher.vocabulary(record)
    beside = [m for m in said if m.is_plain and known.isdisjoint(m.concepts)]
    return len(named) == 1 and bool(beside) and all(_kind(c, know) == "quantity" for c in named[0].concepts)


def _kind(concept: str, know: Knowledge) -> str:
    return know.lexicon.kinds.get(concept, "thing")


def _is_a_name(mention: Mention, know: Knowledge) -> bool:
    if know.matcher.mention_weight(mention) >= _RARE:
        return True
    if mention.is_plain or mention.weak:
        return not all(know.reader.is_ordinary(word) for word in mention.text.split())
    said = {know.lexicon.kinds.get(concept, "thing") for concept in mention.concepts}
    if "ask!" in said and _ASKING.isdisjoint(mention.text.split()) and len(mention.taken) > _TELL:
        return True  # "unable to lower the gear" tells what has happened, and to what
    kinds = said - _ASKING_KINDS
    if "quantity" in kinds:
        return mention.text.split()[0] not in _ASKING or bool(kinds - {"quantity"})
    return bool(kinds)
