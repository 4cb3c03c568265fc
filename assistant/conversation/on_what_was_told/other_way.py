"""The same asked of the counterpart of what was asked or told: "the other way?", "and down", "versus the normal way".

A turn that says no more is the question before, or what the record told is of, with the counterpart in the place of
the word for it: extending for retracting, normal for free fall, landing for take-off.
"""

from __future__ import annotations

from collections.abc import Iterator

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.paragraphs_told import title_told
from assistant.conversation.reading_turns.readings import question_of
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import CheckResult, FactResult, LimitResult, ProcedureResult, Result

_TURNED = {
    "retraction": "extension", "extension": "retraction", "retracting": "extending", "extending": "retracting",
    "retract": "extend", "extend": "retract", "retracted": "extended", "extended": "retracted", "raise": "lower",
    "lower": "raise", "raising": "lowering", "lowering": "raising", "raised": "lowered", "lowered": "raised",
    "up": "down", "down": "up", "take-off": "landing", "takeoff": "landing", "landing": "take-off",
    "opening": "closing", "closing": "opening",
}  # fmt: skip
_NORMAL = {"free-fall": "normal", "gravity": "normal", "emergency": "normal"}
_FREE_FALL = {"normal": "free-fall"}
_ROUND = frozenset({"way", "round", "around", "versa", "reverse", "direction", "opposite", "backwards"})
_BESIDES = frozenset({
    "and", "so", "ok", "okay", "then", "now", "what", "about", "how", "the", "a", "for", "of", "on", "well",
    "right", "it", "other", "vice", "in", "that", "is", "s", "one", "with", "to", "go", "going", "case",
    "same", "by", "versus", "vs", "against", "compared", "than", "this", "if", "at", "during", "um", "er",
    "hm", "but", "put", "putting", "get", "getting", "bring", "bringing", "come", "coming", "goes", "comes",
})  # fmt: skip
_NORMALLY = frozenset({"normal", "normally", "normaly", "ordinary", "usual", "usually", "standard"})
_FALLING = frozenset({"gravity", "fall", "free", "free-fall", "drop", "falling"})
_SURE, _LONG = 0.75, 8
_TELLING = (FactResult, LimitResult, ProcedureResult)


def other_way(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return what the question before gives of the counterpart of what it was asked of, or None."""
    before = context.asked
    if before is None or not isinstance(context.result, (*_TELLING, CheckResult)) or len(alone.reading.words) > _LONG:
        return None
    if alone.reading.amounts or alone.named_variant:
        return None
    said = {w for w in alone.reading.words if w[0].isalpha()}
    rest = said - _BESIDES
    if not rest and said:
        return None
    for pairs in _meant(rest, said):
        for words in _turned(pairs, before, context, knowledge):
            question = question_of(words, knowledge, before.variant)
            found = resolve_scored(question, knowledge)
            like = type(found.result) is type(context.result) or not isinstance(context.result, LimitResult)
            told = isinstance(found.result, (*_TELLING, CheckResult)) and found.result != context.result
            if found.score >= _SURE and told and like:
                return question.with_text(alone.reading.text)._replace(context=True), found.result
    return None


def _meant(rest: set[str], said: set[str]) -> Iterator[dict[str, str]]:
    """Yield the pairs of which a turn wants the counterpart."""
    if rest <= _ROUND and ("other" in said or rest & {"versa", "reverse", "opposite"}):
        yield _TURNED
    elif rest - _ROUND <= _NORMALLY and rest & _NORMALLY:
        yield _NORMAL
    elif rest <= _FALLING | _ROUND:
        yield _FREE_FALL
    elif len(rest) == 1 and rest <= _TURNED.keys():
        word = next(iter(rest))
        yield {old: new for old, new in _TURNED.items() if _alike(new, word)}


def _alike(one: str, other: str) -> bool:
    """Return whether two words stand for the same way: down, lowering, extension."""
    groups = (
        {"down", "lower", "lowering", "extend", "extending", "extension", "lowered", "extended"},
        {"up", "raise", "raising", "retract", "retracting", "retraction", "raised", "retracted"},
        {"landing"}, {"take-off", "takeoff"},
    )  # fmt: skip
    return any(one in group and other in group for group in groups)


def _turned(
    pairs: dict[str, str], before: Question, context: Context, knowledge: Knowledge
) -> Iterator[str]:
    """Yield the question before, and what the record told is of, with the counterpart in place."""
    texts = [" ".join(before.reading.words), title_told(context, knowledge).lower()]
    if isinstance(context.result, ProcedureResult):
        texts.reverse()
    if pairs is not _NORMAL and any("free" in text and "fall" in text for text in texts):
        return
    for text in texts:
        words = text.replace("free fall", "free-fall").replace("take off", "take-off").split()
        turned = [pairs.get(word.strip(",."), word) for word in words]
        if turned != words and not (pairs is _FREE_FALL and "retraction" in words):
            yield " ".join(turned)
