"""Things that take their state from the thing before them: "System 1 has failed, and so has the controller"."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from itertools import pairwise

from assistant.understanding.binding import Bound, conditions_of, contrary, other_value
from assistant.understanding.condition import Condition, StateWords, is_result
from assistant.understanding.grouping import Group, failing
from assistant.understanding.mentions import ALL_WELL, Reading

_BETWEEN = frozenset({
    "and", "or", "nor", "plus", "as", "well", "also", "along", "together", "with", ",", "/", "&", "+", "the", "my",
    "our", "so", "has", "have", "had", "is", "are", "did", "does", "do", "too", "then", "now", "after", "that", "later",
    "followed", "by", "took", "takes", "taking", "same", "for", "ditto", "likewise", "similarly", "finally", "next",
    "even", "it", "goes", "go", "both", "again", "of", "course", "a", "an", "but", "not", "moment", "minute",
    "like", "way", "thing", "shortly", "soon", "afterwards", "in", "addition", "besides", ".", "-", "(",
})  # fmt: skip
"""Words of which alone what stands between two things may consist, where the second shares the first one's state."""
_CARRYING = frozenset({
    "so", "same", "ditto", "likewise", "similarly", "nor", "also", "then", "now", "followed", "took", "takes", "taking",
    "even", "and", "or", "plus", "&", "+", "/", "well", "besides", "addition", "along", "together", "as",
})  # fmt: skip
"""At least one of these must be there: a comma alone joins nothing."""
_EXCEPTING = frozenset({
    "but", "except", "excepting", "for", "apart", "from", "other", "than", "bar", "barring", "save", "the", "my", "our",
    "a", ",", "besides", "only", "just", "not",
})  # fmt: skip
"""Words of which alone what stands between "everything works" and the one thing that does not may consist."""
_NEW_SENTENCE = frozenset(("so", "same", "ditto", "likewise", "similarly", "nor", "also"))
_AFTER = frozenset(("too", "also", "likewise", "ditto", "either", "similarly"))
_AIDS = frozenset({"has", "have", "is", "are", "was", "did", "does", "do", "had", "as", "well", "been", "gone", "will"})
_ENDS = frozenset((".", ",", ";", "?", "!", ":", "-", ")"))


def shared(
    reading: Reading, group: Group, last: Bound | None, asking: Collection[int], known: StateWords
) -> list[Condition]:
    """Return the states that a thing without one of its own has in common with the one before it."""
    if last is None or is_result(group.inputs[0]):
        return []
    if group.start in asking and last.group.start not in asking:
        return []
    if any(name in {c.input for c in last.found} for name in group.inputs):
        return []
    between = reading.words[last.end : group.start]
    if _contrasts(reading.words, group, between, last):
        opposite = last._replace(denied=not last.denied, found=contrary(last.found, known))
        return _same(group, opposite, known)
    denied = _denied(reading.words, group, between)
    if denied is None and not _follows(between) and not _says_too(reading.words, group):
        return []
    same = _same(group, last, known)
    if denied:
        return [c._replace(value=v) for c in same if (v := other_value(c.input, c.value, known)) is not None]
    return same


def against_name(reading: Reading, group: Group, asking: Collection[int], known: StateWords) -> list[Condition]:
    """Return the states of a thing that is said to be otherwise than a name before it tells of others.

    "Neither system is lost but the controller is".
    """
    if group.start in asking:
        return []
    if _excepted(reading, group):
        return failing([group], known, set())
    named = [m for m in reading.mentions if m.end <= group.start and not known.sets.keys().isdisjoint(m.concepts)]
    if not named:
        return []
    mention = named[-1]
    pairs = [pair for c in sorted(mention.concepts) for pair in known.sets.get(c, ())]
    found = tuple(Condition(name, value, where=mention.taken) for name, value in pairs)
    well = all(c.value == known.normal(c.input) for c in found)
    told = Bound(Group(mention.start, mention.end, tuple(c.input for c in found)), found, denied=well)
    if not _contrasts(reading.words, group, reading.words[mention.end : group.start], told):
        return []
    return _same(group, told._replace(found=contrary(found, known)), known)


def _excepted(reading: Reading, group: Group) -> bool:
    """Return whether a thing is the one that is not well: "everything works but the steering controller"."""
    well = [m.end for m in reading.mentions if ALL_WELL in m.concepts and m.end <= group.start]
    between = reading.words[max(well) : group.start] if well else ()
    return bool(between) and not _EXCEPTING.isdisjoint(between) and _EXCEPTING.issuperset(between)


def _contrasts(words: Sequence[str], group: Group, between: Sequence[str], last: Bound) -> bool:
    """Return whether a thing is in the other state: "System 1 has not failed, but System 2 has", "but both …"."""
    if not all(w in _BETWEEN or w in ("we", "i", "still", ";") for w in between):
        return False
    if not {"but", "it", ";"}.intersection(between):
        return False
    if "also" in between or "so" in between or "not" in between or "took" in between:
        return False
    after = list(words[group.end : group.end + 2])
    ends = not after or after[0] in _ENDS
    ellipsis = bool(after) and after[0] in _AIDS and (len(after) == 1 or after[1] in _ENDS)
    denied = last.denied or bool(last.state and {"not", "never"}.intersection(last.state.text.split()))
    return (denied and (ends or ellipsis)) or ("but" in between and ends)


def _follows(between: Sequence[str]) -> bool:
    """Return whether what stands between two things says that they go together."""
    if not all(w in _BETWEEN for w in between) or not _CARRYING.intersection(between):
        return False
    if "." in between and not _NEW_SENTENCE.intersection(between):
        return False
    if "with" not in between or ("with", "it") in pairwise(between):
        return True
    return bool({"along", "together", "well", "took", "takes", "taking"}.intersection(between))


def _says_too(words: Sequence[str], group: Group) -> bool:
    """Return whether a thing is said to be in the same state: "the accumulator as well", "System 2 did too"."""
    for i, word in enumerate(words[group.end : group.end + 4], group.end):
        if word in _AFTER or (word == "as" and words[i + 1 : i + 2] == ("well",)):
            return True
        if word not in _AIDS:
            return False
    return False


def _denied(words: Sequence[str], group: Group, between: Sequence[str]) -> bool | None:
    """Return whether a thing is said not to share the state: "but not System 2", "System 2 has not"."""
    if between[-1:] in (("not",), ("except",)) or tuple(between[-2:]) == ("not", "the"):
        return "but" in between or between[-1] == "except" or None
    after = list(words[group.end : group.end + 4])
    while after and after[0] in _AIDS:
        after.pop(0)
    denies = after[:1] == ["not"] and len(after) < 4 and (len(after) == 1 or after[1] in _ENDS)
    return True if denies and words[group.end] in _AIDS else None


def _same(group: Group, last: Bound, known: StateWords) -> list[Condition]:
    """Return a group's states by the word that said the last one's, else failed or normal as that is."""
    by_word = conditions_of(group.inputs, last.state, last.denied, group.places, known) if last.state else []
    said = {c.input for c in by_word}
    before = last.found[0]
    if by_word == [] and last.state and before.input not in known.failures:
        return []  # "the bypass pin is in, and System 1 …": a pin's word says nothing of what can fail
    normal = before.value == known.normal(before.input)
    rest = [
        Condition(name, known.normal(name) if normal else known.failed(name), where=group.places)
        for name in group.inputs
        if name not in said and name in known.failures
    ]
    return [*by_word, *rest]
