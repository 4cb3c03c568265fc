"""Numbers that were heard are said again inside the answer: only so does a listener learn of one heard wrongly.

A figure that an answer tells already, as most do that are looked up, is not said twice.
"""

from __future__ import annotations

import re

from assistant.answering.answer import ANSWER, Answer, Saying
from assistant.conversation.context import Context
from assistant.conversation.control_words.controls import control
from assistant.quantities.amounts import Amount
from assistant.quantities.show import exact_shown, number_words
from assistant.resolving.knowing import Knowledge

_NUMBER = re.compile(r"(?<![\w.])\d[\d,]*(?:\.\d+)?")
_SENTENCE = re.compile(r"(?<=[^\d\s][.?!])\s+(?=[A-Z\d])|(?<=\d[.?!])\s+(?=[A-Z])|\n")
_COUNTED = 3.0
"""The least number without a unit that may be a figure: those below it count things, or are words of a sentence."""
_LISTED = re.compile(r"\b1\. ")


def with_numbers(answer: Answer, after: Context, knowledge: Knowledge) -> Answer:
    """Return an answer that tells, for the ear, each number it was worked out with, those given before included."""
    if answer.outcome != ANSWER or after.asked is None or control(answer.question):
        return answer
    missing = _missing(answer, after.asked.reading.amounts, knowledge)
    if not missing:
        return answer
    heard = answer.by_ear
    listed = _LISTED.search(heard)
    at, mark = (0, ":") if listed else (_first_ends(heard), ".")
    text = f"{heard[:at].rstrip()} With {', '.join(missing)}{mark} {heard[at:]}".strip()
    said = answer.said._replace(text=text) if isinstance(answer.said, Saying) else answer.said
    return answer._replace(said=said, aloud=((answer.text, text),))


def _first_ends(text: str) -> int:
    found = _SENTENCE.search(text)
    return found.end() if found else len(text)


def _missing(answer: Answer, amounts: tuple[Amount, ...] | list[Amount], knowledge: Knowledge) -> list[str]:
    """Return the amounts, as they are written, that an answer does not tell."""
    told = {float(each.replace(",", "").rstrip(".")) for each in _NUMBER.findall(answer.text)}
    words = f" {answer.text.lower()} "
    return list(dict.fromkeys(
        exact_shown(amount.value, amount.unit or "count", knowledge.units)
        for amount in amounts
        if (amount.unit not in (None, "count") or amount.value >= _COUNTED)
        and abs(amount.value) not in told and f" {number_words(amount.value)} " not in words
    ))  # fmt: skip
