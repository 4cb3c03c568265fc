"""What is said, as phrases with the pause after each: a listener has no line breaks to tell items apart."""

from __future__ import annotations

import re
from collections.abc import Mapping

from assistant.answering.answer import ANSWER, Answer
from assistant.answering.parts import upper
from assistant.conversation.opening import Knowledge
from assistant.frozen import NamedTuple
from assistant.rendering.speech import spoken
from assistant.voice.speaking.settings import VoiceSettings

SENTENCE_S, ITEM_S, CAUTION_S = 0.3, 0.55, 0.8
"""Seconds of pause after a sentence, after an item of a list, and before the caution."""
_CAUTIONED = ("limits", "procedures")
"""Kinds of record whose answers are followed by the caution again."""
_ITEM = re.compile(
    r"(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen)[,:] "
)
_SENTENCE_END = re.compile(r"(?<=[.?!]) +")
_LETTER_A = re.compile(r"(?<=\b[A-Z] )A\b|\bA(?= [A-Z]\b)")
"""The letter in an abbreviation, which an engine takes for the article."""


class Phrase(NamedTuple):
    """Something said in one breath, and the seconds of silence after it."""

    text: str
    pause_s: float = SENTENCE_S


def answer_phrases(answer: Answer, knowledge: Knowledge, settings: VoiceSettings) -> list[Phrase]:
    """Return what is said to a question: the answer, and after a limit or a procedure the caution again."""
    said = answer.spoken
    if settings.digits or not said:
        said = said_aloud(answer.by_ear, knowledge, settings)
    found = phrases(said)
    if answer.outcome != ANSWER or not _wants_caution(answer, knowledge) or not found:
        return found
    return [*found[:-1], found[-1]._replace(pause_s=CAUTION_S), Phrase(caution_said(knowledge), 0.0)]


def caution_said(knowledge: Knowledge) -> str:
    """Return the deference to the approved documents in its shortest form, without what is loaded."""
    parts = _SENTENCE_END.split(knowledge.deference)
    return parts[0] if len(parts) < 2 else f"{parts[0]} {parts[-1]}"


def said_aloud(text: str, knowledge: Knowledge, settings: VoiceSettings) -> str:
    """Return a written text as it is said with these settings."""
    base = knowledge.base
    return spoken(text, knowledge.units, base.pronunciations, settings.digits, base.radio_words, base.labels)


def phrases(said: str) -> list[Phrase]:
    """Return a spoken text as phrases: a sentence each, and the items of a list further apart."""
    texts = sentences(said)
    items = [bool(_ITEM.match(each)) for each in texts]
    following = [*items[1:], False][: len(items)]
    return [
        Phrase(text, ITEM_S if item or following_item else SENTENCE_S)
        for text, item, following_item in zip(texts, items, following, strict=True)
    ]


def sentences(said: str) -> list[str]:
    """Return the sentences of a spoken text, each with its stop."""
    return [each for each in _SENTENCE_END.split(said.strip()) if each]


def for_engine(text: str, respelt: Mapping[str, str]) -> str:
    """Return a phrase as an engine that reads plain text is given it, so that it is said rightly."""
    for written, said in sorted(respelt.items(), key=lambda entry: -len(entry[0])):
        if written in text:
            text = re.sub(rf"\b{re.escape(written)}\b", said.replace("\\", r"\\"), text)
    text = _LETTER_A.sub("eh", text)
    return upper(text)


def _wants_caution(answer: Answer, knowledge: Knowledge) -> bool:
    if answer.entry not in knowledge.base.records:
        return False
    return knowledge.base.kind(answer.entry) in _CAUTIONED
