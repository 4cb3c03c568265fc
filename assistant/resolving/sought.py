"""The input of a calculation that a question asks for, so that the calculation is solved the other way about.

Which one it is depends on what is asked and what is given, whatever the story is: "the heaviest I can be and see no
more than 400", "what was it when I parked?", "above which required distance do I need FULL?".
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from assistant.knowledge.records import Model, ModelInput
from assistant.resolving.knowing import Question
from assistant.understanding.clauses import STOPS
from assistant.understanding.mentions import BOUNDS, Reading
from assistant.understanding.words import stem

_SEEKING = frozenset({
    "what", "which", "longest", "greatest", "highest", "most", "maximum", "max", "largest", "biggest", "furthest",
    "farthest",
})  # fmt: skip
_BOUNDING = frozenset({"exceed", "exceeds"})
_OPEN = frozenset({"what", "which", "how", "whats", "where"})
_MOST = frozenset({"most", "highest", "fastest", "maximum", "max", "greatest"})
_SUPERLATIVE = {
    "fastest": "speed", "slowest": "speed", "heaviest": "mass", "lightest": "mass", "hottest": "temperature",
    "longest": "length", "shortest": "length", "weigh": "mass",
}  # fmt: skip
"""Words that ask for the most or the least of a quantity, which they need not name."""
_NEAR = 2
"""Words between a bound and the quantity that it is of: "the highest indicated speed"."""
_ENDING = 3
"""Words and marks in which a question may end."""


def is_own(item: ModelInput) -> bool:
    """Whether the type's own figure settles an input: no words in a question could mean it."""
    return bool(item.default) and item.default != "both" and not item.cues


def sought_input(model: Model, question: Question) -> str:
    """Return the input that a question asks for, so that no amount of it may be that input: "at what temperature …".

    Only where nothing but the input is of the quantity asked for: else the result may be meant.
    """
    asked = question.reading.asked - {model.output}
    found = [i.id for i in model.inputs if i.quantity in asked and i.id in model.inverse]
    alike = [i for i in model.inputs if i.quantity in asked and not is_own(i)]
    if len(found) == 1 == len(alike):
        return found[0]
    for item in model.inputs:
        by_name = _said(item, question) if item.sought else _asked_by_name(model, item, question)
        if by_name and item.id in model.inverse:
            return item.id
    if not question.reading.amounts:
        return ""
    return _by_how_much(model, question.reading) or _by_bound(model, question.reading)


def may_be_given(model: Model, sought: str, setting: ModelInput | None) -> bool:
    """Return whether a question may give the result: an input is asked for, or may be without being named."""
    if sought or setting:
        return True
    return any(bool(i.choices) if i.sought else i.id in model.inverse for i in model.inputs)


def setting_sought(model: Model, question: Question) -> ModelInput | None:
    """Return the input that a question asks to choose: "which setting stops us in 1,000 m?"."""
    stems = {stem(word) for word in question.reading.words}
    found = (i for i in model.inputs if i.choices and i.sought and i.id not in model.inverse)
    return next((i for i in found if _asked_in(i, stems)), None)


def _asked_in(item: ModelInput, stems: set[str], only: str = "") -> bool:
    """Return whether the stems of words hold all of a way of asking for an input, and none that it bars ("!share").

    only: a stem that the way of asking must hold, if any.
    """
    for group in item.sought.split(";"):
        words = group.split()
        if only and only not in {stem(word) for word in words}:
            continue
        if any(word[0] == "!" and stem(word[1:]) in stems for word in words):
            continue
        if all(word[0] == "!" or stem(word) in stems for word in words):
            return bool(words)
    return False


def _said(item: ModelInput, question: Question) -> bool:
    """Return whether what is asked holds all words of a way of asking for an input: "what was it 12 min ago".

    What is given is not asked for: "what ground speed at 160 kt IAS".
    """
    words = question.reading.words
    opens = [k for k, word in enumerate(words) if word in _OPEN or word in _MOST] if item.sought else []
    given = {k for amount in question.reading.amounts for k in range(amount.start, amount.end)} if opens else set()
    for at in opens[-2:]:
        end = next((k for k in range(at + 1, len(words)) if words[k] in STOPS), len(words))
        only = stem(words[at]) if words[at] in _MOST else ""
        if _asked_in(item, {stem(words[k]) for k in range(at, end) if k not in given}, only):
            return True
    return False


def _by_how_much(model: Model, reading: Reading) -> str:
    """Return the input of whose own control it is asked how much it takes: "36 m across, how much steering?"."""
    taken = {stem(other) for one, other in pairwise(reading.words) if one == "much"}
    found = (i for i in model.inputs if i.id in model.inverse and i.quantity != model.output)
    return next((i.id for i in found if taken & {stem(word) for word in i.cues.lower().split()}), "")


def _by_bound(model: Model, reading: Reading) -> str:
    """Return the only input of a quantity that a bound is asked of beside amounts: "heaviest", "least angle"."""
    asked = {_SUPERLATIVE[word] for word in reading.words if word in _SUPERLATIVE} | set(_bounded(reading))
    asked.discard(model.output)
    alike = [i for i in model.inputs if i.quantity in asked and not is_own(i)]
    return alike[0].id if len(alike) == 1 and alike[0].id in model.inverse else ""


def _bounded(reading: Reading) -> Iterator[str]:
    for one, other in pairwise(reading.mentions):
        if one.concepts & BOUNDS and one.end <= other.start <= one.end + _NEAR:
            yield from other.concepts | other.implied


def _asked_by_name(model: Model, item: ModelInput, question: Question) -> bool:
    """Return whether a word that sets an input apart from the result follows what asks: "what normal distance"."""
    if item.unit != model.output_unit:
        return False
    own = {stem(w) for w in item.cues.lower().split()} - {stem(w) for w in model.of.lower().split()}
    words = question.reading.words
    amounts = {a.start for a in question.reading.amounts if words[a.start] != "one"}  # "what was the normal one?"
    for k in (k for k, word in enumerate(words) if stem(word) in own):
        before = words[max(0, k - 4) : k]
        sought = _SEEKING.intersection(before) or _BOUNDING.intersection(words[k + 1 : k + 5]) or _ends_asking(words, k)
        if sought and _led(words, k + 1, model) not in amounts:
            return True
    return False


def _led(words: tuple[str, ...], at: int, model: Model) -> int:
    """Return where the name of an amount ends that begins before a place: "normal landing distance of | 1,600 m"."""
    name = {"of", "is"}.union(model.of.lower().split())
    while at < len(words) and words[at] in name:
        at += 1
    return at


def _ends_asking(words: tuple[str, ...], at: int) -> bool:
    """Return whether a question ends, after a mark, in what stands at a place: "2,400 m: normal distance?"."""
    return len(words) - at <= _ENDING and at > 1 and words[at - 1] in STOPS
