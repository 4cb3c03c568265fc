"""Another setting of what a calculation chooses by words: "half?", after what the first quarter of a lever gives."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.switch_words import idle_switches
from assistant.frozen import NamedTuple
from assistant.knowledge.records import Model, ModelInput
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import ModelResult, Needed
from assistant.understanding.mentions import PLAIN, Reading

_NEUTRAL = "neutral_control"
_PARTING = frozenset({",", "and", "?", ".", "at", "total", "what", "with", "plus"})
_LEADING = frozenset({"and", "so", "ok", "then", "now", "what", "about", "with", "at", "the", "if"})
_EACH = frozenset({"each", "every", "per", "a"})
_SPELT = {"1": "one", "2": "two", "3": "three", "4": "four"}
_SMALL = frozenset({"the", "a", "with", "and", "in", "on", "of"})


class Setting(NamedTuple):
    """The places in the question before of what it chose, the words to put there, the places of the turn's own."""

    old: tuple[int, ...]
    words: tuple[str, ...]
    used: tuple[int, ...]


def other_setting(alone: Question, context: Context, knowledge: Knowledge) -> Setting | None:
    """Return where a turn and the question before choose differently for one input of the calculation spoken of."""
    before = context.asked
    if before is None:
        return None
    if alone.reading.has(_NEUTRAL):
        return _neutral(alone, before)
    said_before = tuple(_SPELT.get(w, w) for w in before.reading.words)  # "2 quarters"
    said_now = tuple(_SPELT.get(w, w) for w in alone.reading.words)
    one = tuple("one" if w in _EACH else w for w in said_before)  # "each quarter"
    for model in _models(context, knowledge):
        for item in model.inputs:
            phrases = {p.strip(): value for words, value, _ in item.choices for p in words.split(";")}
            old = _said({p: p for p in phrases}, said_before) or _said({p: p for p in phrases}, one)
            others = [p for p in phrases if old and phrases[p] != phrases[old[0]]]
            new = _said({p: p for p in others}, said_now) if old else None
            if old and new is None:  # "idle", after full reverse
                short = {p: " ".join(w for w in p.split() if w not in old[0].split()) for p in others}
                said = alone.reading.words
                said = ("", *said[1:]) if said[:1] == ("no",) and len(said) > 1 else said  # "no, 52" is a correction
                idle = idle_switches(said)
                said = tuple("" if k in idle else w for k, w in enumerate(said))
                new = _said({s: p for p, s in short.items() if s not in ("", p)}, said)
            if not old and phrases and not isinstance(context.result, (ModelResult, Needed)):
                new = _said({p: p for p in phrases}, alone.reading.words)
                new = new if new and _says_no_more(new[1], alone) else None
            if new:
                return Setting(old[1] if old else (), tuple(_put(new[0], item, knowledge).split()), new[1])
    return None


def _says_no_more(places: tuple[int, ...], alone: Question) -> bool:
    """Return whether a turn is no more than what it chooses: "and the lot"."""
    rest = {w for k, w in enumerate(alone.reading.words) if k not in places and w[0].isalpha()}
    return _LEADING.issuperset(rest)


def _put(phrase: str, item: ModelInput, knowledge: Knowledge) -> str:
    """Return the words for a choice: as it is told where what was said would be read as a number ("half"), or names
    nothing by itself ("the lot").
    """
    reading = knowledge.phrase(phrase)
    told = (says for words, _, says in item.choices if phrase in (p.strip() for p in words.split(";")))
    return next(told, phrase) if reading.amounts or not _names_a_thing(reading) else phrase


def _neutral(alone: Question, before: Question) -> Setting | None:
    """Return the order of a control in the question before that a turn takes back: "and with the pedals neutral"."""
    said = next(m for m in alone.reading.mentions if m.holds(_NEUTRAL))
    words = before.reading.words
    for old in before.reading.mentions:
        if old.text.split()[-1].rstrip("s") in {w.rstrip("s") for w in alone.reading.words} - _SMALL:
            end = old.end
            while end < len(words) and words[end] not in _PARTING:
                end += 1
            return Setting(tuple(range(old.start, end)), tuple(said.text.split()), said.taken)
    return None


def _models(context: Context, knowledge: Knowledge) -> Iterator[Model]:
    """Yield the calculation that answered last, or those of the paragraph that the answer rests on."""
    last: Any = getattr(context.result, "model", None)
    if isinstance(last, Model):
        yield last
        return
    told = knowledge.base.records.get(context.answer.entry) if context.answer else None
    sources = set(getattr(told, "sources", ()))
    for name in knowledge.base.ids("models") if sources else ():
        record = knowledge.base.records[name]
        if not sources.isdisjoint(record.sources):
            yield record


def _said(phrases: dict[str, str], words: Sequence[str]) -> tuple[str, tuple[int, ...]] | None:
    """Return what the longest of some phrases that a text holds stands for, with the phrase's places."""
    for phrase in sorted(phrases, key=len, reverse=True):
        parts = tuple(phrase.split())
        for k in range(len(words) - len(parts) + 1):
            if parts and tuple(words[k : k + len(parts)]) == parts:
                return phrases[phrase], tuple(range(k, k + len(parts)))
    return None


def _names_a_thing(reading: Reading) -> bool:
    return any(not c.startswith(PLAIN) for m in reading.mentions for c in m.concepts)
