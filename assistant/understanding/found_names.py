"""The names in a question, and the words between them that no term names."""

from __future__ import annotations

from collections.abc import Collection

from assistant.quantities.numbers import STARTERS, is_typed
from assistant.quantities.units import Units
from assistant.understanding.asides import (
    acknowledges,
    gives_reading,
    gives_speed,
    left_out,
    meanwhile,
    quoted,
    role,
    scolds,
    set_aside,
    speaker,
    supposed,
)
from assistant.understanding.clauses import STOPS
from assistant.understanding.lexicon import Found, Lexicon
from assistant.understanding.meant import hearsay
from assistant.understanding.mentions import OUTSIDE, PLAIN, STATE, VARIANT, Mention
from assistant.understanding.word_lists import WordLists

_TELLING = ("ask", "ask!", "quantity")
"""Kinds whose names tell what is asked, however common their words."""
_WHETHER = (["is"], ["are"], ["be"], ["get"], ["gets"])
_GETTING = (["i"], ["we"], ["you"], ["they"])
_HOW_LOST = (["with"], ["when"], ["if"], ["by"], ["after"], ["without"])
_BEFORE_VERB = frozenset({"i", "we", "you", "they", "to", "not", "cannot", "must", "should", "would", "will", "shall"})
_INTO = frozenset({"in", "into", "on", "to"})
_DOING = frozenset({"do", "does", "did"})
_ARTICLES = frozenset({"the", "a", "an", "my", "our", "your"})
_GOES_ON = STARTERS - {"a", "an", "half", "quarter", "plus", "minus", "negative"}
"""Words that go on with a number begun before them: "two | thirty"."""
_BEFORE_NOUN = frozenset({"the", "a", "an", "this", "that", "these", "those", "of", "my", "our", "your", "its", "no"})
_NO_DOER = _BEFORE_NOUN | {"who", "what", "which", "where", "how", ""}
"""Words behind which a noun stands, or a verb that is asked about itself: "who | moulds | the grip"."""
_WHICH = frozenset(("what", "which"))
_HELPING = frozenset({"do", "does", "did", "have", "has", "are", "am", "would", "will"})
_CAN = frozenset({"can", "may", "could", "should", "do", "will"})
_STATE_OR_OTHER = (STATE, OUTSIDE)
_CLAUSE = 8
"""Words of a clause, at most, between its helping verb and its verb."""


_WHOLE = 3
"""Words of a name, at least, that may be a whole question: "what is the long body"."""
_HOW, _MANY = "how", "many"
_NOTHING_COUNTED = frozenset({
    "kinds", "sorts", "types", "ways", "things", "ones", "times", "goes", "bits", "pieces", "cases", "parts", "places",
    "others", "has", "does", "is", "was", "tries", "attempts", "stages", "steps", "levels", "positions", "units",
})  # fmt: skip
"""Words after "how many" that say nothing of what is counted, or only once more that it is."""


def counted_noun(words: list[str], at: int) -> bool:
    """Return whether a word that no term names is what is counted, however ordinary: "how many | flights"."""
    word = words[at]
    return _behind_how_many(words, at) and word[-1] == "s" and word not in _NOTHING_COUNTED


def _behind_how_many(words: list[str], at: int) -> bool:
    return at > 1 and words[at - 1] == _MANY and words[at - 2] == _HOW


def _asked_how_many(words: list[str], name: Found) -> bool:
    """Return whether a name begins with what is counted and goes on with how that is asked: "how many | brakes have
    we".
    """
    return _behind_how_many(words, name.start) and not _HELPING.isdisjoint(words[k] for k in name.taken[1:])


class Names:
    """Finds names with one lexicon."""

    def __init__(self, lexicon: Lexicon, units: Units, lists: WordLists) -> None:
        self._lexicon = lexicon
        self._units = units
        self._lists = lists

    def numbered(
        self, words: list[str], stems: tuple[str, ...], free: list[bool], spans: list[tuple[int, int]]
    ) -> list[Mention]:
        """Return the names with a number in them, which come before amounts: the 2 of System 2 counts nothing.

        Their words are marked in `free` as taken.
        """
        found: list[Mention] = []
        last = max((k for k, word in enumerate(words) if may_count(word)), default=-1)
        for i in range(last + 1):
            name = self._lexicon.at(stems, i, free) if free[i] else None
            if name is None or not any(may_count(words[k]) for k in name.taken):
                continue
            if self._counts(words, name.taken, name.end) or self._owns(words, stems, free, name):
                continue
            if any(s <= name.start < e and (s < name.start or name.end < e) for s, e in spans):
                continue  # a longer amount begins there: "quarter of an hour", "two oh one knots"
            for k in name.taken:
                free[k] = False
            found.append(self._mention(words, name.start, name.end, name.taken, name.concepts, {}))
        return found

    def _counts(self, words: list[str], taken: tuple[int, ...], end: int) -> bool:
        """Return whether the last number of a name is rather an amount: "the 120 kt" is no aeroplane, and "the two
        thousand" no pair.
        """
        if not may_count(words[taken[-1]]):
            return False
        if words[end : end + 1] and words[end] in _GOES_ON and all(
            may_count(words[k]) or words[k] in _ARTICLES for k in taken
        ):
            return True
        if end >= len(words) or words[end] in ("s", "l", "m", "a", "in", "is", "i"):
            return False
        return self._units.match(words, end) is not None

    def named(self, words: list[str], stems: tuple[str, ...], free: list[bool], typed: dict[str, str]) -> list[Mention]:
        """Return the names in what is free, and the words that no term names."""
        found: list[Mention] = []
        free = list(free)
        told, own, out = hearsay(words), speaker(words), left_out(words)
        who = {*role(words), *quoted(words), *supposed(words)}
        for i, word in enumerate(words):
            if not free[i]:
                continue
            name = self._name_at(words, stems, i, free)
            if name is not None:
                for k in name.taken:
                    free[k] = False
                mention = self._mention(words, name.start, name.end, name.taken, name.concepts, typed)
                aside = i == own or i in who or acknowledges(words, i) or set_aside(words, i)
                aside = aside or gives_reading(words, i, free)
                aside = aside or (mention.is_outside and gives_speed(words, name.end, free))
                aside = aside or (mention.is_outside and (i in out or scolds(words, i) or meanwhile(words, i, True)))
                found.append(mention._replace(weak=True) if aside else mention)
            elif counted_noun(words, i):
                concepts = frozenset((PLAIN + stems[i],))
                found.append(Mention(i, i + 1, (i,), concepts, frozenset(), False, word, word in typed, False, False))
            elif word[0].isalpha() and stems[i] not in self._lexicon.neutral and word not in self._lexicon.neutral:
                known = stems[i] in self._lexicon.words
                weak = i in who or i in out or gives_reading(words, i, free) or self._is_weak(word, known)
                weak = weak or meanwhile(words, i, False)
                concepts = frozenset((PLAIN + stems[i],))
                found.append(
                    Mention(i, i + 1, (i,), concepts, frozenset(), weak, word, word in typed,
                            known, i < told or self._lists.holds(word, "passing_words") or self._as_verb(words, i))
                )  # fmt: skip
        return found

    def _name_at(self, words: list[str], stems: tuple[str, ...], i: int, free: list[bool]) -> Found | None:
        """Return the name that begins at a word, without what does not belong to it there."""
        name = self._lexicon.before_thing(stems, i, free)
        if name is None or self._asks_measure_of(words, stems, free, name) or self._owns(words, stems, free, name):
            return None
        if self._asks_whether_lost(words, name) or _may_go(words, name):
            return self._lexicon.at(stems, i, [k < name.end - 1 and is_free for k, is_free in enumerate(free)])
        if words[name.end - 1] in _INTO:
            return self._without_last(name, stems, free)
        if _asked_how_many(words, name):
            return self._lexicon.at(stems, i, [k == i for k in range(len(free))]) or name
        return name

    def _asks_measure_of(self, words: list[str], stems: tuple[str, ...], free: list[bool], name: Found) -> bool:
        """Return whether a name ends in the thing whose measure is asked for: "at | what brake | temperature"."""
        if words[name.start] not in _WHICH or len(name.taken) != 2 or name.end >= len(words):
            return False
        behind = self._lexicon.at(stems, name.end, free) if free[name.end] else None
        kinds = {self._lexicon.kinds.get(concept) for concept in behind.concepts} if behind else set()
        return kinds == {"quantity"}

    def _owns(self, words: list[str], stems: tuple[str, ...], free: list[bool], name: Found) -> bool:
        """Return whether a question that a name asks whole goes on: "what is the 50X | tiller limit" asks for no
        variant.
        """
        if words[name.start] not in _WHICH or len(name.taken) < _WHOLE:
            return False
        last = (self._lexicon.at(stems, k, free) for k in name.taken[1:])
        if not any(each and each.end == name.end and _is_variant(each.concepts) for each in last):
            return False
        at = name.end + (words[name.end : name.end + 1] == ["is"])
        behind = self._lexicon.at(stems, at, free) if at < len(words) and free[at] else None
        return behind is not None and not self._lexicon.fills(behind.concepts) and words[at] not in self._lexicon.weak

    def _as_verb(self, words: list[str], i: int) -> bool:
        """Return whether a word that may be a noun stands where a verb does: "when does it act", "if i kick"."""
        word, before = words[i], words[i - 1] if i else ""
        if words[i + 1 : i + 2] and words[i + 1] in _ARTICLES and self._is_done(word) and before not in _NO_DOER:
            return True
        if not any(self._lists.holds(word + ending, "passing_words") for ending in ("s", "es")):
            return False
        following = words[i + 1] if i + 1 < len(words) else "."
        if before in _BEFORE_VERB or (following in _ARTICLES and before not in _BEFORE_NOUN):
            return True
        clause = words[:i]
        return following in STOPS and not _DOING.isdisjoint(clause[-_CLAUSE:]) and before not in _BEFORE_NOUN

    def _is_done(self, word: str) -> bool:
        """Return whether a word is the third person of a verb that narrows nothing: "somebody | nudges | a tiller"."""
        stems = (word.removesuffix(ending) for ending in ("s", "es") if word.endswith(ending))
        return any(self._lists.holds(each, "passing_words") for each in stems)

    def _asks_whether_lost(self, words: list[str], name: Found) -> bool:
        """Return whether a label's name is a thing and its state: "is anti-skid lost with System 1?"."""
        if words[name.end - 1] != "lost" or self._lexicon.shows.keys().isdisjoint(name.concepts):
            return False
        before = [word for word in words[max(0, name.start - 2) : name.start] if word != "the"]
        if before[:1] in _GETTING and "get" in before:
            return False  # "do | we get | STEER LOST when …"
        return before[-1:] in _WHETHER and words[name.end : name.end + 1] in _HOW_LOST

    def _without_last(self, name: Found, stems: tuple[str, ...], free: list[bool]) -> Found | None:
        """Return a name without the "in" or "on" that begins a result's or a label's name after it: "puts me | in
        EMERGENCY", "you read | ON TARGET".
        """
        last = name.end - 1
        result = self._lexicon.at(stems, last, free)
        if result is None or result.end - last < 2 or any(c[0] in _STATE_OR_OTHER for c in result.concepts):
            return name
        less = self._lexicon.at(stems, name.start, [k < last and is_free for k, is_free in enumerate(free)])
        is_state = all(c.startswith(STATE) for c in name.concepts)
        return less if less or is_state else name  # "how do I get to | EMERGENCY" asks for what leads there

    def _is_weak(self, word: str, known: bool) -> bool:
        return word in self._lexicon.weak or len(word) < 2 or (len(word) < 3 and not known)

    def _mention(
        self, words: list[str], start: int, end: int, taken: tuple[int, ...], concepts: tuple[str, ...],
        typed: dict[str, str],
    ) -> Mention:  # fmt: skip
        implied = frozenset(c for name in concepts for c in self._lexicon.implied.get(name, ()))
        inner = [words[k] for k in taken]
        weak = len(inner) == 1 and (inner[0] in self._lexicon.weak or inner[0] in self._lexicon.neutral)
        weak = weak and not any(self._lexicon.kinds.get(c) in _TELLING for c in concepts)
        weak = weak or self._lexicon.fills(concepts)
        weak = weak and not any(c.startswith(OUTSIDE) for c in concepts)
        return Mention(
            start, end, taken, frozenset(concepts), implied, weak, " ".join(inner),
            any(word in typed for word in inner),
        )  # fmt: skip


def _is_variant(concepts: Collection[str]) -> bool:
    """Return whether a name is a variant's."""
    return any(c.startswith(VARIANT) for c in concepts)


def _may_go(words: list[str], name: Found) -> bool:
    """Return whether what a thing can do is asked, and not what has become of it: "how fast can the | tyres go |"."""
    if len(name.taken) == 1 or words[name.end - 1] != "go":
        return False
    return not _CAN.isdisjoint(words[max(0, name.start - 2) : name.start]) and "how" in words[: name.start]


def may_count(word: str) -> bool:
    """Return whether a word may be, or begin, a number."""
    return word in STARTERS or is_typed(word) or word[0].isdigit() or word in ("an", "a")
