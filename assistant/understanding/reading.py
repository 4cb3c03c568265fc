"""Read a question: its words as concepts, its numbers as amounts, and what nothing explains.

Nothing is decided here about what is asked. A reading says which concepts stand where, in all their senses;
matching it against the records decides which sense was meant.
"""

from __future__ import annotations

from collections.abc import Callable

from assistant.quantities.amounts import Amount, read_amounts
from assistant.quantities.tokens import Token, tokenize
from assistant.quantities.units import Units
from assistant.understanding.asides import left_out
from assistant.understanding.asked_units import given_apart, narrowing_nothing, unit_asked
from assistant.understanding.clauses import STOPS
from assistant.understanding.found_names import Names, may_count
from assistant.understanding.lexicon import Lexicon
from assistant.understanding.meant import (
    counted_at,
    designators,
    expanded,
    sharing_unit,
    speeds_moved_at,
    tells_how_many,
    words_meant,
)  # fmt: skip
from assistant.understanding.measured import with_measure
from assistant.understanding.mending import Mender
from assistant.understanding.mentions import BOUNDS, OUTSIDE, VARIANT, Mention, Reading
from assistant.understanding.on_the_way import still_to_go
from assistant.understanding.overstepped import crept_past, gone_over, overstepped, was_too_much
from assistant.understanding.strange_names import is_number_of, misread_names, numbered_names, opens_clause
from assistant.understanding.weather import degrees_out
from assistant.understanding.whatever import without_what_does_not_matter
from assistant.understanding.word_lists import WordLists
from assistant.understanding.words import stem

MOST_CHARACTERS = 2000
MOST_TOKENS = 160
"""A question is shorter; what is longer is cut here, so that no text can keep the reader busy."""
_LATELY = 12
"""Readings that are kept."""
_EITHER = frozenset({"and", "or", "vs", "versus", "/", ",", "&"})
_MOST = frozenset({"max", "maximum", "highest", "biggest", "greatest", "most", "min", "minimum", "lowest"})
_LEADS_AMOUNT = frozenset({
    "at", "from", "to", "than", "above", "below", "over", "under", "starting", "start", "starts", "reads", "reading",
    "shows", "showing", "minus",
})  # fmt: skip
"""Words that lead a reading, and no name of a variant."""
_MINUTES = frozenset(("how", "many", "in", "per", "time", "long"))
_OF_TYPE = (VARIANT, "type:")
_ZEROS = frozenset(("zero", "oh", "o", "nought", "naught"))


class Reader:
    """Turns text into readings with one lexicon, the units and the list of ordinary words."""

    def __init__(self, lexicon: Lexicon, units: Units, lists: Callable[[str], str] | None = None) -> None:
        self.lexicon = lexicon
        self.units = units
        words = WordLists(lists)
        self._mender = Mender(lexicon, units, words)
        self._names = Names(lexicon, units, words)
        self._lists = words
        self._latest: dict[tuple[str, bool], Reading] = {}

    def read(self, text: str, mending: bool = True) -> Reading:
        """Return the reading of any text; never raises. What was read lately is kept: a turn, and the parts of one that
        asks several things, are looked at again and again.
        """
        found = self._latest.get((text, mending))
        if found is None:
            if len(self._latest) >= _LATELY:
                self._latest.clear()
            found = self._latest[text, mending] = self._read(text, mending)
        return found

    def _read(self, text: str, mending: bool) -> Reading:
        tokens = expanded(tokenize(text[:MOST_CHARACTERS], self.lexicon.whole))
        too_long = len(text) > MOST_CHARACTERS or len(tokens) > MOST_TOKENS
        tokens = words_meant(tokens[:MOST_TOKENS])
        mended: list[tuple[str, str]] = []
        if mending:
            tokens = self._mender.mend_all(tokens, mended)
        tokens = self._as_shown(tokens)
        words = [token.text for token in tokens]
        stems = tuple(map(stem, words))
        free = [True] * len(words)
        counts = any(map(may_count, words))
        whole = read_amounts(tokens, self.units) if counts else []
        # "Two three zero" is one number without a unit too: its zero is no name of a state.
        spans = [(a.start, a.end) for a in whole if a.unit or _ZEROS.intersection(words[a.start + 1 : a.end])]
        numbered = self._names.numbered(words, stems, free, spans) if counts else []
        skip = frozenset(i for i, is_free in enumerate(free) if not is_free)
        amounts = read_amounts(tokens, self.units, skip) if skip else whole
        for amount in amounts:
            free[amount.start : amount.end] = [False] * (amount.end - amount.start)
        unit = unit_asked(words, amounts, self.units)
        if unit and unit.outright and words[unit.start - 1] == "in":
            free[unit.start - 1] = False  # "the gear in metres" is not the gear in
        typed = {new: old for old, new in mended}
        mentions = [*numbered, *self._names.named(words, stems, free, typed)]
        mentions.sort(key=lambda m: m.start)
        if unit and not unit.outright and any(unit.start in m.taken and self._is_thing(m) for m in mentions):
            unit = None
        if unit:
            mentions = narrowing_nothing(mentions, unit, self.lexicon.kinds)
        mentions = self._bounded(self._without_counts(mentions, unit.start if unit else -1, words), words)
        mentions, amounts = self._strange(tokens, mentions, amounts, mended)
        mentions = with_measure(mentions, words, self.lexicon.kinds, self._lists.holds)
        mentions = without_what_does_not_matter(mentions, words, self.lexicon.kinds) if mending else mentions
        of_type = [m for m in mentions if any(c.startswith(_OF_TYPE) for c in m.concepts)]
        variants = tuple(c[len(VARIANT) :] for m in of_type for c in m.concepts if c.startswith(VARIANT))
        places = tuple(k for m in of_type for k in m.taken if any(c.startswith(VARIANT) for c in m.concepts))
        mentions = [m for m in mentions if m not in of_type] if of_type else mentions
        amounts, variants = self._named_by_number(amounts, variants, words)
        out = left_out(words) if amounts else ()
        amounts = _moved(_counted([a for a in amounts if a.start not in out], mentions, words), words)
        amounts = sharing_unit(amounts) if len(amounts) > 1 else amounts
        amounts, passed = overstepped(amounts, words) if amounts else (amounts, None)
        if passed is None:
            amounts, passed = gone_over(amounts, words)
        passed = passed or crept_past(words) or was_too_much(words)
        if passed and not any(set(passed.taken) < set(m.taken) for m in mentions):  # a longer name says more
            mentions = _in_place(passed, mentions)
        out_there = degrees_out(mentions, amounts, words)
        if out_there:
            mentions = _in_place(out_there, mentions)
        apart = given_apart(unit, amounts, words)
        if apart and unit:
            amounts, unit = [a._replace(unit=unit.symbol) if a is apart else a for a in amounts], None
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
            return (k in at and at[k].is_plain and not at[k].known) or (k > 0 and tokens[k].raw.lower() in typed)

        def passes(k: int) -> bool:
            return k not in at or (at[k].passing and at[k].is_plain)

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
        numbers = [a for a in amounts if is_number_of(a, self.lexicon.variant_numbers)]
        if variants:
            named = [a for a in numbers if _is_beside(a, variants, words)]
        else:
            named = [a for a in numbers if self._names_variant(a, amounts, words)][:1]
        return [a for a in amounts if a not in named], (*variants, *(f"{a.value:g}" for a in named))

    def _names_variant(self, amount: Amount, amounts: list[Amount], words: list[str]) -> bool:
        """Return whether a number that may be a variant's names it, where no other name does: the last word where the
        most of something is asked for does ("max tow angle 120").
        """
        if self._is_qualified(amount, amounts, words) or (len(amounts) == 2 and opens_clause(amount, words)):
            return True
        if len(amounts) > 1 and words[amount.start - 1 : amount.start] == ["("] and words[amount.end :][:1] == [")"]:
            return True  # "the tiller limit at 56 (50)"
        apart = amount.end == len(words) or words[amount.end] in (",", ":", "?", ".", "again", "then", "instead")
        before = words[amount.start - 1] if amount.start else ""
        if before in _LEADS_AMOUNT:
            return False  # "starting at 120"
        the = before == "the"
        most = amount.end == len(words) and len(amounts) == 1 and not _MOST.isdisjoint(words)
        return apart and amount.end - amount.start == 1 and (the or most or any(a.unit for a in amounts))

    def _is_qualified(self, amount: Amount, amounts: list[Amount], words: list[str]) -> bool:
        """Return whether a mass is said of a number: "a 48,000 kg 120 stops"."""
        after = amount.end == len(words) or words[amount.end].isalpha() or words[amount.end] in STOPS
        before = [a.unit for a in amounts if a.end == amount.start and a.unit]
        return after and any(self.units.get(unit).dimension == "mass" for unit in before)

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
        pair = tuple(stem(token.text) for token in tokens[at : at + 2])
        found = self.lexicon.at(pair, 0, (True, True)) if len(pair) == 2 else None
        return found is not None and len(found.taken) == 2 and any(c[0] == "=" for c in found.concepts)

    def _without_counts(self, mentions: list[Mention], unit: int, words: list[str]) -> list[Mention]:
        """Drop the "how many" of "how many minutes" and of "how many metres to a stop": it counts nothing."""
        kept = []
        for i, mention in enumerate(mentions):
            if "count" not in mention.concepts:
                kept.append(mention)
                continue
            following = mentions[i + 1] if i + 1 < len(mentions) else None
            at_once = following is not None and following.start == mention.end
            counts = at_once and following and (self._is_quantity(following) or self._measures(following, words))
            if not (counts or mention.end == unit):
                kept.append(mention)
        return kept

    def _measures(self, mention: Mention, words: list[str]) -> bool:
        """Return whether a name begins with a unit that what it names is measured in: "metres to a stop"."""
        found = self.units.match(words, mention.start) if len(mention.taken) > 1 else None
        return found is not None and found[0].dimension in ("length", "time", "speed")

    def _bounded(self, mentions: list[Mention], words: list[str]) -> list[Mention]:
        """Read "min" as the least of something, where nothing says that minutes are meant: "accumulator min"."""
        if "min" not in words or not _MINUTES.isdisjoint(words):
            return mentions
        return [
            m._replace(concepts=m.concepts - {"duration"}) if m.text == "min" and "minimum" in m.concepts else m
            for m in mentions
        ]

    def _is_thing(self, mention: Mention) -> bool:
        return not mention.is_plain and not self._is_quantity(mention)

    def _is_quantity(self, mention: Mention) -> bool:
        return any(self.lexicon.kinds.get(c) == "quantity" and c not in BOUNDS for c in mention.concepts)

    def is_ordinary(self, word: str) -> bool:
        """Return whether a word is ordinary English, which is not to be mended into the trade's."""
        return self._mender.is_ordinary(word)

    def nearest(self, word: str, most: int | None = None) -> str | None:
        """Return the known word or two words that a misspelling is nearest to."""
        return self._mender.nearest(word, most)


def _in_place(found: Mention, mentions: list[Mention]) -> list[Mention]:
    """Return mentions with one in the place of those that take any of its words."""
    rest = [m for m in mentions if not set(found.taken).intersection(m.taken)]
    return sorted([*rest, found], key=lambda m: m.start)


def _is_beside(amount: Amount, variants: tuple[str, ...], words: list[str]) -> bool:
    """Return whether a number stands beside the name of a variant: the name, "and", the number."""
    names = {v.lower() for v in variants}
    around = words[max(0, amount.start - 2) : amount.start], words[amount.end : amount.end + 2]
    return any(names.intersection(pair) and _EITHER.intersection(pair) for pair in around)


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
    """Drop the numbers that are names of places or tell how far out it is, and read those that say how fast something
    moves as speeds.
    """
    names, speeds = designators(amounts, words) | still_to_go(amounts, words), speeds_moved_at(amounts, words)
    return [a._replace(unit="kt") if a.start in speeds else a for a in amounts if a.start not in names]
