"""Putting up for confirmation what was heard and is not sure: a number, one of two that sound alike, or the question.

Numbers are said figure by figure as on the radio; nothing is answered with them until they are affirmed.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answering.answer import CLARIFY, Answer, Number
from assistant.quantities.amounts import Amount
from assistant.quantities.show import exact_shown, number_words, spoken
from assistant.rendering.speech import spoken as said_aloud
from assistant.resolving.knowing import Knowledge
from assistant.voice.hearing.shares import Reading, Weighed
from assistant.voice.hearing.wording import said_words

_WHICH = "Confirm which, "
"""How it begins that two numbers are put up by ear: neither is affirmed by a word."""
_ORDINALS = {"1st": "first", "2nd": "second", "3rd": "third"}


def confirming(weighed: Weighed, knowledge: Knowledge, whole: bool = False) -> Answer:
    """Return the question whether the numbers were heard rightly.

    Where there is another number that sounds alike, it is put up too; by ear, both at once where nothing else is asked
    for. whole: whether more than the numbers is in doubt, so that all that was heard is said back.
    """
    reading = weighed.reading
    others = _others(reading, weighed.other, knowledge)
    said, shown = _radio(reading.amounts, knowledge), [_shown(amount, knowledge) for amount in reading.amounts]
    heard = f"{said}: {as_asked(reading.text, knowledge)}" if whole else said
    asked, told = f"CONFIRM {said}?", ", ".join(shown)
    if others:
        asked += f" Or {_radio(others, knowledge)}?"
        told += f", or {', '.join(_shown(amount, knowledge) for amount in others)}"
    which = "" if whole or len(others) != 1 else _which(reading, others[0], weighed.other, knowledge)
    return reading.answer._replace(
        outcome=CLARIFY, text=f"{asked} I heard {told}: {reading.text}",
        said=which or f"Confirm, {heard}?",
        values=tuple(Number("heard", each.value, each.unit or "count") for each in (*reading.amounts, *others)),
        working="", sources=(), needs=tuple(f"confirmation of {each}" for each in shown),
        choices=tuple(filter(None, (reading.text, weighed.other))), entry="",
    )  # fmt: skip


def _which(reading: Reading, other: Amount, text: str, knowledge: Knowledge) -> str:
    """Return the question which of two numbers was said, with those that are not in doubt after them."""
    theirs = [amount.value for amount in knowledge.reader.read(text).amounts]
    rest = [mine for mine, its in zip(reading.amounts, theirs, strict=True) if mine.value == its]
    mine = [amount for amount in reading.amounts if amount not in rest]
    sure = f", with {_radio(rest, knowledge)}" if rest else ""
    return f"{_WHICH}{_radio(mine, knowledge)}, or {_radio([other], knowledge)}{sure}?"


def asks_which(answer: Answer) -> bool:
    """Return whether an answer puts up two numbers by ear at once."""
    return answer.outcome == CLARIFY and answer.spoken.startswith(_WHICH)


def _others(reading: Reading, text: str, knowledge: Knowledge) -> list[Amount]:
    """Return the numbers of a text that stand where those of the reading are others."""
    amounts = knowledge.reader.read(text).amounts if text else ()
    if len(amounts) != len(reading.amounts):
        return []
    return [its for mine, its in zip(reading.amounts, amounts, strict=True) if mine.value != its.value]


def asking_back(weighed: Weighed, knowledge: Knowledge) -> Answer:
    """Return the question which of the likeliest readings was meant; by ear one is asked after the other."""
    readings = [weighed.reading]
    readings += [each for each in weighed.rivals[:1] if said_words(each.text) != said_words(weighed.reading.text)]
    choices = tuple(reading.text for reading in readings)
    text = f"CONFIRM: {shown_as_asked(choices[0], knowledge)}?"
    if len(choices) > 1:
        text += f" Or was it: {shown_as_asked(choices[1], knowledge)}?"
    answer = weighed.reading.answer
    return answer._replace(
        outcome=CLARIFY, text=text, said=f"Confirm: {as_asked(choices[0], knowledge)}?", values=(), working="",
        sources=(), needs=("what was asked",), choices=choices, entry="",
    )  # fmt: skip


def as_asked(text: str, knowledge: Knowledge) -> str:
    """Return what was heard as it is said back: figures in words, abbreviations letter by letter."""
    shown = shown_as_asked(text, knowledge)
    return said_aloud(shown, knowledge.units, knowledge.base.pronunciations).rstrip(".?! ")


def shown_as_asked(text: str, knowledge: Knowledge) -> str:
    """Return what was heard as it is written: abbreviations in capitals, and no capital at the beginning else."""
    words = text.rstrip(".?! ").split()
    known = knowledge.base.pronunciations
    words = [_ORDINALS.get(word.lower(), word) for word in words]
    written = [word.upper() if word.upper() in known and word.islower() else word for word in words]
    if written and written[0][1:].islower():
        written[0] = written[0].lower()
    return " ".join(written)


def _radio(amounts: Sequence[Amount], knowledge: Knowledge) -> str:
    return ", ".join(_on_the_radio(amount, knowledge) for amount in amounts)


def _on_the_radio(amount: Amount, knowledge: Knowledge) -> str:
    if amount.unit and amount.unit != "count":
        return spoken(amount.value, amount.unit, knowledge.units, digits=True)
    whole = amount.value == int(amount.value) and 0 <= amount.value < 100_000
    return spoken(amount.value, "kt", knowledge.units, digits=True).rsplit(" ", 1)[0] if whole else number_words(
        amount.value
    )  # fmt: skip


def _shown(amount: Amount, knowledge: Knowledge) -> str:
    return exact_shown(amount.value, amount.unit or "count", knowledge.units)
