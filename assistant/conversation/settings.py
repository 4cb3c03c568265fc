"""Another setting of what a calculation chooses by words: "half?", after what the first quarter of a lever gives."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from assistant.conversation.context import Context
from assistant.frozen import NamedTuple
from assistant.knowledge.records import Model
from assistant.resolving.knowing import Knowledge, Question

_NEUTRAL = "neutral_control"
_PARTING = frozenset({",", "and", "?", ".", "at", "total", "what", "with", "plus"})
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
    for model in _models(context, knowledge):
        for item in model.inputs:
            phrases = {p.strip(): value for words, value, _ in item.choices for p in words.split(";")}
            old = _said({p: p for p in phrases}, before.reading.words)
            others = [p for p in phrases if old and phrases[p] != phrases[old[0]]]
            new = _said({p: p for p in others}, alone.reading.words) if old else None
            if old and new is None:  # "idle", after full reverse
                short = {p: " ".join(w for w in p.split() if w not in old[0].split()) for p in others}
                new = _said({s: p for p, s in short.items() if s not in ("", p)}, alone.reading.words)
            if old and new:
                return Setting(old[1], tuple(new[0].split()), new[1])
    return None


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
