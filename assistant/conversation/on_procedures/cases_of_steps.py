"""The step of a procedure that is for a case: "and if it comes back?", "what if that doesn't help?"."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.conversation.context import Context
from assistant.conversation.on_procedures.going_through import gone_through, stems
from assistant.resolving.knowing import Question
from assistant.resolving.results import Result
from assistant.understanding.words import stem

_LONG = 14
_OPENING = frozenset({"if", "when", "unless", "suppose", "say", "should", "whenever"})
_AS_BEFORE = frozenset({
    "still", "stays", "stay", "stayed", "remains", "remain", "remained", "persists", "persist", "keeps", "again",
    "back", "returns", "return", "returned", "reappears", "recurs", "relights", "not", "t", "doesn", "don", "didn",
    "won", "isn", "aren", "no", "nothing", "fails", "unchanged", "same", "never", "without", "neither",
})  # fmt: skip
"""Words that say that what a step was to mend is as it was, or has come again."""
_DONE = frozenset({"did", "done", "tried", "reset", "cycled"})
_SMALL = frozenset({
    "and", "but", "so", "ok", "okay", "then", "what", "now", "well", "or", "right", "it", "that", "this", "they", "he",
    "she", "we", "i", "them", "one", "the", "a", "light", "caption", "message", "warning", "comes", "come", "came",
    "on", "up", "out", "off", "goes", "go", "going", "does", "do", "did", "is", "are", "was", "be", "will", "work",
    "works", "worked", "help", "helps", "helped", "clear", "clears", "cleared", "fix", "cure", "any", "good", "luck",
    "joy", "happens", "happen", "changes", "change", "there", "lit", "shows", "showing", "show", "coming", "next",
    "second", "time", "after", "all", "first", "just", "straight", "later", "afterwards", "trick", "way", "s", "to",
    "about", "me", "once", "more", "another", "working", "put", "puts", "tried", "my",
    "our", "done", "ve", "have", "has", "been", "moment", "immediately", "minute",
    "better", "difference", "effect", "reset", "cycled", "twice", "already",
})  # fmt: skip
_KNOWN = _OPENING | _AS_BEFORE | _SMALL
_COME = frozenset({"back", "again", "returned", "reappeared", "relit", "recurred"})
_SHOWN = frozenset({"it", "that", "light", "caption", "message", "warning", "shows", "comes", "came", "lit"})
_OF_ITSELF = _COME | _SHOWN | frozenset({
    "and", "but", "oh", "no", "so", "ok", "okay", "now", "then", "well", "the", "s", "is", "has", "have", "just",
    "come", "on", "up", "been", "gone", "went", "there", "here", "amber", "already", "straight", "once", "more",
})  # fmt: skip
"""Words by which a turn tells that what was reset shows once more: "it's back again"."""


def comes_again(words: Sequence[str]) -> bool:
    """Return whether a turn tells that something shows once more, and says no more than that."""
    said = [w for w in words if w[0].isalpha()]
    whole = _OF_ITSELF.issuperset(said) and not _COME.isdisjoint(said) and not _SHOWN.isdisjoint(said)
    return whole and said[0] not in ("is", "has", "have", "once", "on", "come")


def case_asked(alone: Question, context: Context) -> tuple[Question, Result] | None:
    """Return the one step, after the one told last, that a procedure has for a case, where a turn only says that
    things are as they were or come again: it names nothing that the steps do not.
    """
    gone = gone_through(context)
    words = [w for w in alone.reading.words if w[0].isalpha()]
    if gone is None or not 1 < len(words) <= _LONG or _AS_BEFORE.isdisjoint(words) or alone.reading.amounts:
        return None
    onward = {"what", "next"} <= set(words) or {"what", "now"} <= set(words)
    in_vain = not _DONE.isdisjoint(words[:3])
    again = "?" not in alone.reading.words and comes_again(words)
    onward = onward or again
    if _OPENING.isdisjoint(words[:4]) and "still" not in words[:3] and not (onward or in_vain):
        return None
    steps = gone.told.procedure.steps
    cases = [i for i, step in enumerate(steps) if step.do[:3] == "If " or " if not " in step.do]
    cases = [i for i in cases if i > gone.step] or cases[-1:]
    said = {stem(w) for w in words if w not in _KNOWN}
    if said and not said <= frozenset().union(*map(stems, steps)):
        return None
    if (in_vain or again) and not cases and gone.at_once:
        return gone.asked_by(alone), gone.told  # nothing is for that case: what was told is all there is
    if len(cases) != 1:
        return None
    return gone.asked_by(alone), gone.told._replace(step=cases[0])
