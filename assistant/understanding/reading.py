"""Read a question: its words as concepts, its numbers as amounts, and what nothing explains.

Nothing is decided here about what is asked. A reading says which concepts stand where, in all their senses;
matching it against the records decides which sense was meant.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from assistant.frozen import NamedTuple
from assistant.quantities.amounts import Amount, read_amounts
from assistant.quantities.numbers import STARTERS, is_typed
from assistant.quantities.tokens import Token, tokenize
from assistant.quantities.units import Units
from assistant.understanding.asked_units import AskedUnit, narrowing_nothing, unit_asked
from assistant.understanding.clauses import STOPS
from assistant.understanding.lexicon import Found, Lexicon
from assistant.understanding.meant import (
    counted_at,
    designators,
    expanded,
    hearsay,
    set_aside,
    speaker,
    speeds_moved_at,
    tells_how_many,
    words_meant,
)  # fmt: skip
from assistant.understanding.spelling import mend
from assistant.understanding.strange_names import is_called, misread_names, numbered_names
from assistant.understanding.words import stem

MOST_CHARACTERS = 2000
MOST_TOKENS = 160
"""A question is shorter; what is longer is cut here, so that no text can keep the reader busy."""
_MOST_KEPT = 5000
"""Words of which it is remembered what they are, before all are forgotten."""

OUTSIDE = "!"
"""Begins the concept of a name that belongs to other subjects: each stands for itself alone."""
ELSEWHERE = "elsewhere:"
"""Begins the concept of a label of another fleet, before the record that answers it."""
PLAIN = "~"
"""Begins the concept of a word that no term names: the word itself."""
_TELLING = ("ask", "ask!", "quantity")
"""Kinds whose names tell what is asked, however common their words."""
_BOUNDS = frozenset(("maximum", "minimum"))
_HENCE = (("to",), ("until",), ("till",), ("before",))
_COUNTED = frozenset(("minutes", "minute", "mins", "min", "seconds", "secs", "hours", "metres", "meters", "knots"))
_MEASURED = {
    "deg": ("angle", "temperature"), "kt": ("speed",), "degC": ("temperature",), "degF": ("temperature",),
    "psi": ("pressure",), "bar": ("pressure",), "t": ("mass",), "kg": ("mass",),
}  # fmt: skip
"""What an amount with a unit measures, as questions name it."""
_WHICH = frozenset(("what", "which", "whats", "many"))
_WHETHER = (["is"], ["are"], ["be"], ["get"], ["gets"])
_HOW_LOST = (["with"], ["when"], ["if"], ["by"], ["after"], ["without"])
_LOSING = frozenset({"lose", "loses", "losing", "cost", "costs", "rob", "robs", "take", "takes"})
"""Words that ask what goes, inside the names of results: "lose the tiller"."""
_BEFORE_VERB = frozenset({"i", "we", "you", "they", "to", "not", "cannot", "must", "should", "would", "will", "shall"})
_DOING = frozenset({"do", "does", "did"})
_ARTICLES = frozenset({"the", "a", "an", "my", "our", "your"})
_BEFORE_NOUN = frozenset({"the", "a", "an", "this", "that", "these", "those", "of", "my", "our", "your", "its", "no"})
_CLAUSE = 8
"""Words of a clause, at most, between its helping verb and its verb."""
_EITHER = frozenset({"and", "or", "vs", "versus", "/", ",", "&"})
STATE = "@"
"""Begins the concept of a group of state words ("@lost")."""


class Mention(NamedTuple):
    """A name or a content word in the question, with every concept it may stand for."""

    start: int
    end: int
    taken: tuple[int, ...]
    concepts: frozenset[str]
    implied: frozenset[str]
    weak: bool
    text: str
    mended: bool = False
    known: bool = True
    passing: bool = False
    """An ordinary word that narrows nothing: it may help a match, and is not missed."""

    def holds(self, concept: str) -> bool:
        """Return whether the mention may stand for a concept, or brings it along."""
        return concept in self.concepts or concept in self.implied

    @property
    def is_plain(self) -> bool:
        """Whether it is a word that no term names."""
        return all(concept.startswith(PLAIN) for concept in self.concepts)


class Reading(NamedTuple):
    """A question as read. `words` are the tokens' texts after mending; `mended` pairs (as typed, as read)."""

    text: str
    words: tuple[str, ...]
    mentions: tuple[Mention, ...]
    amounts: tuple[Amount, ...]
    mended: tuple[tuple[str, str], ...]
    variants: tuple[str, ...]
    too_long: bool = False
    variant_places: tuple[int, ...] = ()
    unit: AskedUnit | None = None
    """The unit that the answer is wanted in, where the question names one."""

    @property
    def concepts(self) -> frozenset[str]:
        """All concepts that any mention may stand for or brings along."""
        return frozenset().union(*(m.concepts | m.implied for m in self.mentions))

    def has(self, *concepts: str) -> bool:
        """Return whether any of the concepts is mentioned."""
        for mention in self.mentions:  # loops are quicker: this is asked dozens of times of a question
            for concept in concepts:
                if concept in mention.concepts or concept in mention.implied:
                    return True
        return False

    def says(self, *concepts: str) -> bool:
        """Return whether any of the concepts is named outright, and not only brought along by another name."""
        return any(c in m.concepts for m in self.mentions for c in concepts)

    @property
    def asked(self) -> frozenset[str]:
        """Return the quantities that are asked for outright: "how long", "what speed"."""
        found: set[str] = set()
        first = self.mentions[0] if self.mentions else None
        if first and first.start == 0 and self.words[first.end : first.end + 1] in _HENCE and first.text in _COUNTED:
            return first.concepts  # "minutes to cool the brakes"
        bounded = any(m.concepts & _BOUNDS for m in self.mentions) and not self.amounts
        for mention in self.mentions:
            before = self.words[max(0, mention.start - 2) : mention.start]
            if (
                mention.text.startswith("how ")
                or (before and before[-1] in _WHICH)
                or (before[:1] and before[0] == "how")
            ) or bounded or (mention.concepts & _BOUNDS and not self.amounts):
                # "Min accumulator pressure" asks for a bound, and for no minutes.
                found |= mention.concepts & _BOUNDS or mention.concepts
        if self.mentions and self.mentions[-1].end >= len(self.words) - 1:
            last = self.mentions[-1]
            beside = [a for a in self.amounts if last.start - 1 <= a.end <= last.start and self.words[a.end].isalpha()]
            named = {q for a in beside for q in _MEASURED.get(a.unit or "", ())}
            # "At 67° steering angle": what only names the amount beside it is not asked for.
            found |= last.concepts if named.isdisjoint(last.concepts) else frozenset()
        return frozenset(found)

    @property
    def asks_loss(self) -> bool:
        """Return whether a question asks what goes with something, and does not only say that it is lost."""
        return any(
            m.holds("lose")
            and m.text not in ("lost", "loss", "loss of")
            and ("lose" in m.concepts or not _LOSING.isdisjoint(m.text.split()))
            for m in self.mentions
        )

    @property
    def empty(self) -> bool:
        """Return whether nothing at all was said that could be asked about."""
        return not self.mentions and not self.amounts and not self.variants


class Reader:
    """Turns text into readings with one lexicon, the units and the list of ordinary words."""

    def __init__(self, lexicon: Lexicon, units: Units, lists: Callable[[str], str] | None = None) -> None:
        self.lexicon = lexicon
        self.units = units
        self._lists = lists
        self._read_lists: dict[str, str] = {}
        self._known_units = frozenset(w for unit in units for name in unit.names for w in name)
        self._spellings: tuple[list[str], list[str]] | None = None
        self._mended: dict[str, str | None] = {}
        self._on_list: dict[tuple[str, str], bool] = {}
        self._latest: tuple[str, bool, Reading] | None = None

    def read(self, text: str, mending: bool = True) -> Reading:
        """Return the reading of any text; never raises. What was read last is kept: a turn is looked at twice."""
        if self._latest is None or self._latest[:2] != (text, mending):
            self._latest = text, mending, self._read(text, mending)
        return self._latest[2]

    def _read(self, text: str, mending: bool) -> Reading:
        tokens = expanded(tokenize(text[:MOST_CHARACTERS], self.lexicon.whole))
        too_long = len(text) > MOST_CHARACTERS or len(tokens) > MOST_TOKENS
        tokens = words_meant(tokens[:MOST_TOKENS])
        mended: list[tuple[str, str]] = []
        if mending:
            tokens = self._mend_all(tokens, mended)
        tokens = self._as_shown(tokens)
        words = [token.text for token in tokens]
        stems = [stem(word) for word in words]
        free = [True] * len(words)
        counts = any(map(_may_count, words))
        whole = read_amounts(tokens, self.units) if counts else []
        spans = [(a.start, a.end) for a in whole if a.unit]
        numbered = self._numbered_names(words, stems, free, spans) if counts else []
        for mention in numbered:
            for i in mention.taken:
                free[i] = False
        skip = frozenset(i for i, is_free in enumerate(free) if not is_free)
        amounts = read_amounts(tokens, self.units, skip) if skip else whole
        for amount in amounts:
            free[amount.start : amount.end] = [False] * (amount.end - amount.start)
        unit = unit_asked(words, amounts, self.units)
        if unit and unit.outright and words[unit.start - 1] == "in":
            free[unit.start - 1] = False  # "the gear in metres" is not the gear in
        typed = {new: old for old, new in mended}
        mentions = [*numbered, *self._names(words, stems, free, typed)]
        mentions.sort(key=lambda m: m.start)
        if unit and not unit.outright and any(unit.start in m.taken and self._is_thing(m) for m in mentions):
            unit = None
        if unit:
            mentions = narrowing_nothing(mentions, unit, self.lexicon.kinds)
        mentions = self._without_counts(mentions, unit.start if unit else -1)
        mentions, amounts = self._strange(tokens, mentions, amounts, mended)
        variants = tuple(c[8:] for m in mentions for c in m.concepts if c.startswith("variant:"))
        places = tuple(k for m in mentions for k in m.taken if any(c.startswith("variant:") for c in m.concepts))
        mentions = [m for m in mentions if not any(c.startswith(("variant:", "type:")) for c in m.concepts)]
        amounts, variants = self._named_by_number(amounts, variants, words)
        amounts = _moved(_counted(amounts, mentions, words), words)
        return Reading(
            text, tuple(words), tuple(mentions), tuple(amounts), tuple(mended), variants, too_long, places, unit
        )  # fmt: skip

    def _strange(
        self, tokens: list[Token], mentions: list[Mention], amounts: list[Amount], mended: list[tuple[str, str]]
    ) -> tuple[list[Mention], list[Amount]]:
        """Read names that would pass for amounts or for ordinary words as names of other subjects."""
        at = {k: m for m in mentions for k in m.taken}
        own = {k for k, m in at.items() if any(c.startswith("type:") for c in m.concepts)}

        typed = {old for old, _ in mended}

        def is_strange(k: int) -> bool:
            plain = k in at and all(c.startswith(PLAIN) for c in at[k].concepts)
            return (plain and not at[k].known) or (k > 0 and tokens[k].raw.lower() in typed)

        def passes(k: int) -> bool:
            return k not in at or (at[k].passing and all(c.startswith(PLAIN) for c in at[k].concepts))

        names = numbered_names(tokens, amounts, self.lexicon.variant_numbers, own, is_strange) if amounts else []
        names += [(k, k + 1) for k in (misread_names(tokens, mended, passes) if mended else ())]
        if not names:
            return mentions, amounts
        taken = {k for start, end in names for k in range(start, end)}
        mentions = [m for m in mentions if taken.isdisjoint(m.taken)]
        for start, end in names:
            text = " ".join(t.raw for t in tokens[start:end]).lower()
            mentions.append(
                Mention(start, end, tuple(range(start, end)), frozenset((OUTSIDE + text,)), frozenset(), False, text)
            )
        return sorted(mentions, key=lambda m: m.start), [a for a in amounts if a.start not in taken]

    def _named_by_number(
        self, amounts: list[Amount], variants: tuple[str, ...], words: list[str]
    ) -> tuple[list[Amount], tuple[str, ...]]:
        """Read a bare number apart from the rest as the variant of that name: "tiller limit 44 kt, 120"."""
        if variants:
            beside = [a for a in amounts if self._is_beside(a, variants, words)]
            return [a for a in amounts if a not in beside], (*variants, *(f"{a.value:g}" for a in beside))
        for amount in amounts:
            apart = amount.end == len(words) or words[amount.end] in (",", ":", "?", ".", "again", "then", "instead")
            named = amount.start > 0 and words[amount.start - 1] == "the"
            if len(amounts) == 2 and is_called(amount, words, self.lexicon.variant_numbers):
                return [a for a in amounts if a is not amount], (f"{amount.value:g}",)
            if not (named or any(a.unit for a in amounts)):
                continue
            name = f"{amount.value:g}" if amount.end - amount.start == 1 else ""
            if amount.unit is None and apart and name in self.lexicon.variant_numbers:
                return [a for a in amounts if a is not amount], (name,)
        return amounts, variants

    def _is_beside(self, amount: Amount, variants: tuple[str, ...], words: list[str]) -> bool:
        """Return whether a bare number is a variant that is named beside another: a name, "and", the number."""
        if amount.unit is not None or f"{amount.value:g}" not in self.lexicon.variant_numbers:
            return False
        names = {v.lower() for v in variants}
        around = words[max(0, amount.start - 2) : amount.start], words[amount.end : amount.end + 2]
        return any(names.intersection(pair) and _EITHER.intersection(pair) for pair in around)

    def _as_shown(self, tokens: list[Token]) -> list[Token]:
        """Read a label written in capitals, as it is shown, by its full name: "with FULL" is the setting."""
        shown = self.lexicon.shown
        if not any(t.text in shown and t.raw.isupper() for t in tokens):
            return tokens
        if all(t.raw.isupper() for t in tokens if t.raw.isalpha()) and len(tokens) > 2:
            return tokens  # somebody shouts
        result: list[Token] = []
        for i, token in enumerate(tokens):
            name = shown.get(token.text, "").split() if token.raw.isupper() else []
            around = {t.text for t in tokens[max(0, i - 1) : i + 2]}
            if not name or around & (set(name) - {token.text}) or self._goes_on(tokens, i):
                result.append(token)
            else:
                result.extend(Token(word, token.raw, token.start, token.end) for word in name)
        return result

    def _goes_on(self, tokens: list[Token], at: int) -> bool:
        """Return whether a label and the word after it are the name of a result already: "EMERGENCY braking"."""
        pair = [stem(token.text) for token in tokens[at : at + 2]]
        found = self.lexicon.at(pair, 0, (True, True)) if len(pair) == 2 else None
        return found is not None and len(found.taken) == 2 and any(c[0] == "=" for c in found.concepts)

    def _without_counts(self, mentions: list[Mention], unit: int) -> list[Mention]:
        """Drop the "how many" of "how many minutes", which asks for the quantity and counts nothing."""
        kept = []
        for i, mention in enumerate(mentions):
            following = mentions[i + 1] if i + 1 < len(mentions) else None
            counts = following and following.start == mention.end and self._is_quantity(following)
            if "count" not in mention.concepts or not (counts or mention.end == unit):
                kept.append(mention)
        return kept

    def _is_thing(self, mention: Mention) -> bool:
        return not mention.is_plain and not self._is_quantity(mention)

    def _is_quantity(self, mention: Mention) -> bool:
        return any(self.lexicon.kinds.get(c) == "quantity" and c not in _BOUNDS for c in mention.concepts)

    # --- names

    def _numbered_names(
        self, words: list[str], stems: list[str], free: list[bool], spans: list[tuple[int, int]]
    ) -> list[Mention]:
        """Names with a number in them come before amounts: the 2 of System 2 counts nothing."""
        found: list[Mention] = []
        for i in range(len(words)):
            name = self.lexicon.at(stems, i, free) if free[i] else None
            if name is None or not any(_may_count(words[k]) for k in name.taken):
                continue
            if self._counts(words, name.taken, name.end):
                continue
            if any(s <= name.start < e and (s < name.start or name.end < e) for s, e in spans):
                continue  # a longer amount begins there: "quarter of an hour", "two oh one knots"
            for k in name.taken:
                free[k] = False
            found.append(self._mention(words, name.start, name.end, name.taken, name.concepts, {}))
        return found

    def _counts(self, words: list[str], taken: tuple[int, ...], end: int) -> bool:
        """Return whether the last number of a name is rather an amount: "the 120 kt" is no aeroplane."""
        if not _may_count(words[taken[-1]]):
            return False
        if end >= len(words) or words[end] in ("s", "l", "m", "a", "in", "is", "i"):
            return False
        return self.units.match(words, end) is not None

    def _names(self, words: list[str], stems: list[str], free: list[bool], typed: dict[str, str]) -> list[Mention]:
        found: list[Mention] = []
        free = list(free)
        told, own = hearsay(words), speaker(words)
        for i, word in enumerate(words):
            if not free[i]:
                continue
            name = self.lexicon.before_thing(stems, i, free)
            if name is not None and self._asks_whether_lost(words, name):
                name = self.lexicon.at(stems, i, [k < name.end - 1 and is_free for k, is_free in enumerate(free)])
            if name is not None:
                for k in name.taken:
                    free[k] = False
                mention = self._mention(words, name.start, name.end, name.taken, name.concepts, typed)
                found.append(mention._replace(weak=mention.weak or i == own or set_aside(words, i)))
            elif word[0].isalpha() and stems[i] not in self.lexicon.neutral and word not in self.lexicon.neutral:
                known = stems[i] in self.lexicon.words
                concepts = frozenset((PLAIN + stems[i],))
                found.append(
                    Mention(i, i + 1, (i,), concepts, frozenset(), self._is_weak(word, known), word, word in typed,
                            known, i < told or self._listed(word, "passing_words") or self._as_verb(words, i))
                )  # fmt: skip
        return found

    def _as_verb(self, words: list[str], i: int) -> bool:
        """Return whether a word that may be a noun stands where a verb does: "when does it act", "if i kick"."""
        word, before = words[i], words[i - 1] if i else ""
        if not any(self._listed(word + ending, "passing_words") for ending in ("s", "es")):
            return False
        following = words[i + 1] if i + 1 < len(words) else "."
        if before in _BEFORE_VERB or (following in _ARTICLES and before not in _BEFORE_NOUN):
            return True
        clause = words[:i]
        return following in STOPS and not _DOING.isdisjoint(clause[-_CLAUSE:]) and before not in _BEFORE_NOUN

    def _asks_whether_lost(self, words: list[str], name: Found) -> bool:
        """Return whether a label's name is a thing and its state: "is anti-skid lost with System 1?"."""
        if words[name.end - 1] != "lost" or self.lexicon.shows.keys().isdisjoint(name.concepts):
            return False
        before = [word for word in words[max(0, name.start - 2) : name.start] if word != "the"]
        return before[-1:] in _WHETHER and words[name.end : name.end + 1] in _HOW_LOST

    def _is_weak(self, word: str, known: bool) -> bool:
        return word in self.lexicon.weak or len(word) < 2 or (len(word) < 3 and not known)

    def _mention(
        self, words: list[str], start: int, end: int, taken: tuple[int, ...], concepts: tuple[str, ...],
        typed: dict[str, str],
    ) -> Mention:  # fmt: skip
        implied = frozenset(c for name in concepts for c in self.lexicon.implied.get(name, ()))
        inner = [words[k] for k in taken]
        weak = len(inner) == 1 and (inner[0] in self.lexicon.weak or inner[0] in self.lexicon.neutral)
        weak = weak and not any(self.lexicon.kinds.get(c) in _TELLING for c in concepts)
        weak = weak or all(self.lexicon.kinds.get(c) == "filler" for c in concepts)
        weak = weak and not any(c.startswith(OUTSIDE) for c in concepts)
        return Mention(
            start, end, taken, frozenset(concepts), implied, weak, " ".join(inner),
            any(word in typed for word in inner),
        )  # fmt: skip

    # --- spelling

    def _mend_all(self, tokens: list[Token], mended: list[tuple[str, str]]) -> list[Token]:
        result: list[Token] = []
        for token in tokens:
            better = self.lexicon.correction(token.text) or (
                None if self._is_known(token.text) else self._mend(token.text)
            )
            if better is None:
                result.append(token)
                continue
            mended.append((token.text, better))
            result.extend(Token(word, token.raw, token.start, token.end) for word in better.split())
        return result

    def _is_known(self, word: str) -> bool:
        lexicon = self.lexicon
        return (
            not word[0].isalpha()
            or len(word) < 3
            or word in lexicon.neutral
            or word in lexicon.weak
            or stem(word) in lexicon.words
            or word in STARTERS
            or word in self._known_units
        )

    def _mend(self, word: str) -> str | None:
        if word not in self._mended:
            if len(self._mended) > _MOST_KEPT:
                self._mended.clear()
            self._mended[word] = None if self.is_ordinary(word) else self.nearest(word)
        return self._mended[word]

    def is_ordinary(self, word: str) -> bool:
        """Return whether a word is ordinary English, which is not to be mended into the trade's."""
        return self._listed(word, "common_words")

    def _listed(self, word: str, name: str) -> bool:
        """Return whether a word is in one of the long lists, which are read when a word first asks for them."""
        found = self._on_list.get((name, word))
        if found is None:
            if len(self._on_list) > _MOST_KEPT:
                self._on_list.clear()
            found = self._on_list[name, word] = f"\n{word}\n" in self._list(name)
        return found

    def _list(self, name: str) -> str:
        if name not in self._read_lists:
            self._read_lists[name] = f"\n{self._lists(name)}\n" if self._lists else ""
        return self._read_lists[name]

    def nearest(self, word: str, most: int | None = None) -> str | None:
        """Return the known word or two words that a misspelling is nearest to."""
        if self._spellings is None:
            ours = sorted({w for w in self.lexicon.surface if len(w) > 2})
            plain = sorted(
                {*(w for w in self.lexicon.neutral if len(w) > 2), *STARTERS, *self._known_units} - set(ours)
            )
            self._spellings = ours, plain
        found = mend(word, self._spellings[0], self._spellings[1] if most is None else (), most)
        if found and found[0].distance <= 1:
            return found[0].word
        two = self._split(word)
        if two:
            return two
        return self._ordinary_meant(word) or (found[0].word if found else None)

    def _ordinary_meant(self, word: str) -> str | None:
        """Return the ordinary word that a long one is one letter off: not the trade's, it blocks nothing."""
        if len(word) < 5:
            return None
        found = mend(word, self._list("passing_words").split(), (), 1)
        return found[0].word if found else None

    def _split(self, word: str) -> str | None:
        """Return two known words written as one."""
        if len(word) < 6:
            return None
        known = self.lexicon.surface
        for i in range(3, len(word) - 2):
            if word[:i] in known and word[i:] in known:
                return f"{word[:i]} {word[i:]}"
        return None


def _counted(amounts: list[Amount], mentions: list[Mention], words: list[str]) -> list[Amount]:
    """Read a small bare number before a thing as a count: "three brakes"."""
    starts = {m.start for m in mentions if not m.weak and m.text.endswith("s")}
    return [
        a._replace(unit="count")
        if a.unit is None
        and a.value in (1, 2, 3, 4, 5, 6, 8)
        and (starts & counted_at(a, words) or tells_how_many(a, words))
        else a
        for a in amounts
    ]


def _moved(amounts: list[Amount], words: list[str]) -> list[Amount]:
    """Drop the numbers that are names of places, and read those that say how fast something moves as speeds."""
    names, speeds = designators(amounts, words), speeds_moved_at(amounts, words)
    return [a._replace(unit="kt") if a.start in speeds else a for a in amounts if a.start not in names]


def _may_count(word: str) -> bool:
    return word in STARTERS or is_typed(word) or word[0].isdigit() or word in ("an", "a")


def plain_reading(reading: Reading) -> dict[str, Any]:
    """Return a reading as plain values, for `understood` and --explain."""
    return {
        "words": " ".join(reading.words),
        "concepts": [{"text": m.text, "concepts": sorted(m.concepts)} for m in reading.mentions if not m.weak],
        "amounts": [{"value": a.value, "unit": a.unit, "text": a.raw} for a in reading.amounts],
        "mended": [{"typed": old, "read": new} for old, new in reading.mended],
    }
