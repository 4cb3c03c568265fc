"""The controls that a question names, and what stands for one: tillers, pedals, "the other", a pilot's own side."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import takewhile

from assistant.frozen import NamedTuple
from assistant.resolving.knowing import Question
from assistant.understanding.mentions import Mention

CONTROLS = {"tiller": "tiller", "tillers": "tiller", "pedal": "pedals", "pedals": "pedals"}
_CENTRED = frozenset(("centred", "centered", "neutral", "released", "untouched", "free", "straight", "alone"))
_LET_GO = frozenset({
    ("hands", "off"), ("feet", "off"), ("nobody", "touching"), ("not", "touching"), ("nobody", "on"),
    ("no", "one", "touching"), ("nobody", "is", "touching"),
})  # fmt: skip
"""Words by which a control is said to be left alone: "hands off the tillers"."""
_LETTING_GO = frozenset(first for first, *_ in _LET_GO)
_SEATS = frozenset(("left", "right", "seat", "tiller", "side", "hand"))
ARTICLES = frozenset(("the", "a", "my", "your", "his", "her", "either", "any"))
PARTING = frozenset((",", ";", ".", "and", "plus", "with", "then", "while", "+", "&"))
_ADDING = frozenset(("plus", "and", "with", "add", "adding", "added", "minus"))
_ANOTHER = frozenset(("other", "his", "hers", "mine", "yours", "theirs"))
NOUNS = frozenset(
    ("tiller", "tillers", "seat", "pedal", "pedals", "hand", "pilot", "wheel", "side", "one", "handwheel")
)
NOT_OF_EACH = frozenset(("way", "direction", "pedal", "time", "other", "turn"))
EACH_SEAT = frozenset(("side", "seat", "hand"))
_NOT_ALONE = (NOUNS - {"one"}) | NOT_OF_EACH | EACH_SEAT | {"pedals", "tillers"}
"""Words that say themselves what the other one is, or that another side is meant."""


class Named(NamedTuple):
    """Where a control is named."""

    start: int
    end: int
    text: str


def leaves_centred(words: tuple[str, ...]) -> bool:
    """Return whether a control is said to be left alone, so that what the others order together is asked."""
    if not _CENTRED.isdisjoint(words):
        return True
    if _LETTING_GO.isdisjoint(words):
        return False
    return not _LET_GO.isdisjoint(words[i : i + n] for n in (2, 3) for i in range(len(words)))


def is_left_as_it_is(at: int, words: tuple[str, ...]) -> bool:
    """Return whether a "left" is no side, but says that a control is let be: "tillers | left alone |"."""
    return words[at] == "left" and not _CENTRED.isdisjoint(words[at + 1 : at + 2])


def controls_in(question: Question) -> list[tuple[Named, str]]:
    """Return the controls that are named, and what stands for one; those left centred take no order."""
    words = question.reading.words
    named = [one for m in question.reading.mentions for one in _named_in(m, words)]
    named = sorted([*named, *_within_sums(question)], key=lambda pair: pair[0].start)
    turned = [pair for pair in named if not _is_left_alone(pair[0], words)] or named
    return [*turned, *_others(turned, words)]


def _named_in(mention: Mention, words: tuple[str, ...]) -> Iterator[tuple[Named, str]]:
    """Yield the controls that a mention names: "tillers and pedals" is one name of two."""
    inside = {CONTROLS[words[k]]: k for k in reversed(mention.taken) if words[k] in CONTROLS}
    if len(inside) > 1:
        yield from ((Named(k, k + 1, words[k]), control) for control, k in inside.items())
    elif (control := _control(mention)) and not _only_says_whose(mention, words):
        yield Named(mention.start, mention.end, mention.text), control


def _only_says_whose(mention: Mention, words: tuple[str, ...]) -> bool:
    """Return whether a pilot is named who moves the control that is named behind it: "FO full left | pedal |"."""
    if not (mention.holds("captain") or mention.holds("first_officer")) or not _SEATS.isdisjoint(mention.text.split()):
        return False
    after = range(mention.end, min(mention.end + 5, len(words)))
    clause = takewhile(lambda k: words[k] not in PARTING - {"with"}, after)
    return any(words[k] in CONTROLS for k in clause)


def _is_left_alone(named: Named, words: tuple[str, ...]) -> bool:
    """Return whether a control is said to be left centred: "tiller centred", "nobody touching the | tillers |"."""
    if not _CENTRED.isdisjoint(words[named.end : named.end + 3]):
        return True
    before = [word for word in words[max(0, named.start - 4) : named.start] if word not in ARTICLES]
    return any(tuple(before[-n:]) in _LET_GO for n in (2, 3))


def _others(turned: list[tuple[Named, str]], words: tuple[str, ...]) -> Iterator[tuple[Named, str]]:
    """Yield the other one of the controls that are named: "one tiller 40 right, the other 25 left".

    Beside pedals it is the other tiller only where a tiller was named last, and nothing else is called "other".
    """
    kinds = {c for _, c in turned}
    for k, word in enumerate(words):
        before = [c for m, c in turned if m.end < k] if word in _ANOTHER else []
        if before and len(kinds) == 1:
            yield Named(k, k + 1, word), before[0]
        elif before and before[-1] == "tiller" and not _NOT_ALONE.intersection(words[k + 1 : k + 2]):
            yield Named(k, k + 1, word), "tiller"


def _within_sums(question: Question) -> list[tuple[Named, str]]:
    """Return the controls that the name of a sum holds, where it tells what is added: "plus | pedal 12 left"."""
    words = question.reading.words
    sums = (m for m in question.reading.mentions if m.holds("total_order") and not _control(m))
    places = (k for m in sums if not _ADDING.isdisjoint(m.text.split()) for k in m.taken)
    return [(Named(k, k + 1, words[k]), CONTROLS[words[k]]) for k in places if words[k] in CONTROLS]


def _control(mention: Mention) -> str:
    if mention.holds("tiller") or mention.holds("captain") or mention.holds("first_officer"):
        return "tiller"
    return "pedals" if mention.holds("pedal") or mention.holds("pedal_steering") else ""
