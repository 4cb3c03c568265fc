"""Whether a text asks what has gone or what is left, and names nothing of it: "what isn't working?"."""

from __future__ import annotations

from collections.abc import Sequence, Set

from assistant.understanding.clauses import asking
from assistant.understanding.grouping import LINKS
from assistant.understanding.mentions import Reading

_WHOLE = frozenset(("everything", "all", "anything"))
_STAYING = frozenset({
    "left", "remains", "remaining", "remain", "works", "working", "work", "keeps", "keep", "use", "usable", "survives",
    "survive", "stays", "stay", "available", "unaffected", "untouched",
})  # fmt: skip
_ASKING_LEFT = _STAYING | {
    "what", "whats", "which", "do", "does", "can", "could", "will", "would", "may", "have", "has", "i", "we", "you",
    "s", "still", "got", "is", "are", "all", "there", "to", "me", "us", "my", "now", "then", "so", "and", "else",
    "functions", "things", "stuff", "that", "it", "with", "by", "if", "when", "after",
    "for", "on", "of", "systems", "bits", "yet",
}  # fmt: skip
"""Words of which alone a text consists that asks what is left."""
_THINGS = frozenset(("functions", "function", "features", "services", "things", "stuff", "bits", "functionality"))
_OUT = frozenset(("@lost", "@off"))
_BETWEEN = LINKS | {
    "else", "all", "now", "then", "exactly", "actually", "not", "no", "longer", "any", "s", "it", "that",
}  # fmt: skip
"""Words that may stand between "what" and the word for having failed: "what | is now | out of action"."""


def asks_what_is_left(reading: Reading, told: Set[int] = frozenset()) -> bool:
    """Return whether a text asks what is left, and names nothing of it: "what keeps working", "what remains".

    told: the words by which the states are told that it asks under.
    """
    asks = asking(reading.words, marks=False) - told
    words = [reading.words[k] for k in sorted(asks) if reading.words[k][0].isalpha()]
    staying = _STAYING if "still" in words else _STAYING - {"use"}
    return not staying.isdisjoint(words) and _ASKING_LEFT.issuperset(words)


def asks_what_is_out(reading: Reading, told: Set[int] = frozenset()) -> bool:
    """Return whether a text asks what has failed or does not work, and names nothing of it: "what isn't working?",
    "everything that's gone with System 1 out".

    told: the words by which the states are told that it asks under.
    """
    words = reading.words
    for at in (_past_things(words, k) for k, word in enumerate(words) if _begins_asking(words, k)):
        out = (m for m in reading.mentions if m.start > at and not _OUT.isdisjoint(m.concepts))
        first = next(out, None)
        if first and _BETWEEN.issuperset(words[at + 1 : first.start]):
            after = (m for m in reading.mentions if m.start >= first.end)
            return all(m.weak or m.passing or not told.isdisjoint(m.taken) for m in after)
    return False


def _begins_asking(words: Sequence[str], at: int) -> bool:
    """Return whether what is asked for begins here: "what …", "all that …"."""
    return words[at] in ("what", "whats", "which") or (words[at] in _WHOLE and words[at + 1 : at + 2] == ("that",))


def _past_things(words: Sequence[str], at: int) -> int:
    """Return the last place of "what" or of "which functions"; the place of "which" alone asks for one of some."""
    if words[at + 1 : at + 2] and words[at + 1] in _THINGS:
        return at + 1
    return at if words[at] != "which" else len(words)
