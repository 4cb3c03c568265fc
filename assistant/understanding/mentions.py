"""What a question was read as: names and content words with every concept that each may stand for.

A concept is a term's id, or begins with one of the letters below.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property
from itertools import pairwise
from typing import Any

from assistant.frozen import NamedTuple
from assistant.quantities.amounts import Amount
from assistant.understanding.asked_units import AskedUnit
from assistant.understanding.words import stem

OUTSIDE = "!"
"""Begins the concept of a name that belongs to other subjects: each stands for itself alone."""
ELSEWHERE = "elsewhere:"
"""Begins the concept of a label of another fleet, before the record that answers it."""
PLAIN = "~"
"""Begins the concept of a word that no term names: the word itself."""
STATE = "@"
"""Begins the concept of a group of state words ("@lost")."""
RESULT = "="
"""Begins the concept of a state table's result that is named outright ("=table.output.value")."""
VARIANT = "variant:"
"""Begins the concept of a variant's name, before its id."""
BOUNDS = frozenset(("maximum", "minimum"))
ALL_WELL = "all_normal"
"""The concept of words by which everything works."""
_HENCE = (("to",), ("until",), ("till",), ("before",))
_COUNTED = frozenset(("minutes", "minute", "mins", "min", "seconds", "secs", "hours", "metres", "meters", "knots"))
_MEASURED = {
    "deg": ("angle", "temperature"), "kt": ("speed",), "degC": ("temperature",), "degF": ("temperature",),
    "psi": ("pressure",), "bar": ("pressure",), "t": ("mass",), "kg": ("mass",),
}  # fmt: skip
"""What an amount with a unit measures, as questions name it."""
_SIZES = frozenset(("speed", "temperature", "mass", "pressure", "duration", "length", "altitude", "angle"))
"""Quantities that one word may name with a bound: "fastest", "hottest"."""
_POINTING = frozenset(("this", "that", "my", "our", "present", "current"))
_USUAL = frozenset(("normal", "usual", "standard", "rated", "nominal", "set"))
_QUANTITIES = frozenset(("speed", "pressure", "temperature", "distance", "duration", "angle", "mass"))
_COMPARING = frozenset(("faster", "quicker", "slower", "sooner", "hotter", "warmer", "cooler", "longer", "shorter"))
_WHICH = frozenset(("what", "which", "whats", "many"))
_LOSING = frozenset({"lose", "loses", "losing", "cost", "costs", "rob", "robs", "take", "takes"})
"""Words that ask what goes, inside the names of results: "lose the tiller"."""


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
    measure: bool = False
    """The measure of a thing that is asked for: what does not tell it is no answer."""

    def holds(self, concept: str) -> bool:
        """Return whether the mention may stand for a concept, or brings it along."""
        return concept in self.concepts or concept in self.implied

    @property
    def telling(self) -> frozenset[str]:
        """Return the concepts of which what answers must know one: of a bound and a quantity in one word the quantity,
        so that "the fastest" is no greatest angle.
        """
        own = self.concepts - BOUNDS
        return own if own and own <= _SIZES else self.concepts

    @property
    def is_plain(self) -> bool:
        """Whether it is a word that no term names."""
        for concept in self.concepts:  # noqa: SIM110  asked a hundred times in a question: a generator takes twice as long
            if concept[0] != PLAIN:
                return False
        return True

    @property
    def is_outside(self) -> bool:
        """Whether it may be a name of another subject."""
        for concept in self.concepts:  # noqa: SIM110
            if concept[0] == OUTSIDE:
                return True
        return False

    @property
    def says_state(self) -> bool:
        """Whether it may be words for a state."""
        for concept in self.concepts:  # noqa: SIM110
            if concept[0] == STATE:
                return True
        return False

    @property
    def names_result(self) -> bool:
        """Whether it may name a result of a state table."""
        for concept in self.concepts:  # noqa: SIM110
            if concept[0] == RESULT:
                return True
        return False


class _Read(NamedTuple):
    """The parts of a reading."""

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


class Reading(_Read):
    """A question as read. `words` are the tokens' texts after mending; `mended` pairs (as typed, as read).

    What is asked of it dozens of times in a question is worked out once.
    """

    @cached_property
    def concepts(self) -> frozenset[str]:
        """All concepts that any mention may stand for or brings along."""
        return frozenset().union(*(m.concepts | m.implied for m in self.mentions))

    @cached_property
    def named(self) -> frozenset[str]:
        """All concepts that any mention may stand for."""
        return frozenset().union(*(m.concepts for m in self.mentions))

    @cached_property
    def choosing(self) -> frozenset[str]:
        """All concepts that may choose anything: a very common word does so in its plain form alone ("to go")."""
        meant = (m.concepts for m in self.mentions if not m.weak or stem(m.text) == m.text)
        return frozenset().union(*meant)

    def has(self, *concepts: str) -> bool:
        """Return whether any of the concepts is mentioned."""
        return not self.concepts.isdisjoint(concepts)

    def says(self, *concepts: str) -> bool:
        """Return whether any of the concepts is named outright, and not only brought along by another name."""
        return not self.named.isdisjoint(concepts)

    @cached_property
    def asked(self) -> frozenset[str]:
        """Return the quantities that are asked for outright: "how long", "what speed"."""
        found: set[str] = set()
        first = self.mentions[0] if self.mentions else None
        if first and first.start == 0 and self.words[first.end : first.end + 1] in _HENCE and first.text in _COUNTED:
            return first.concepts  # "minutes to cool the brakes"
        bounded = any(m.concepts & BOUNDS for m in self.mentions) and not self.amounts
        for mention in self.mentions:
            before = self.words[max(0, mention.start - 2) : mention.start]
            if (
                mention.text.startswith("how ")
                or (before and before[-1] in _WHICH)
                or (before[:1] and before[0] == "how")
            ) or bounded or (mention.concepts & BOUNDS and not self.amounts):
                # "The fastest" asks for a bound and for a speed.
                found |= mention.concepts & (BOUNDS | _SIZES) if mention.concepts & BOUNDS else mention.concepts
        if self.mentions and self.mentions[-1].end >= len(self.words) - 1:
            last = self.mentions[-1]
            beside = [a for a in self.amounts if last.start - 1 <= a.end <= last.start and self.words[a.end].isalpha()]
            named = {q for a in beside for q in _MEASURED.get(a.unit or "", ())}
            # "At 67° steering angle", "at this speed": what only names the amount is not asked for.
            # "To get down faster" only compares, and "at their normal pressure" says where the speed is asked for.
            own = (self.words[last.start - 1] in _POINTING if last.start else False) or last.text in _COMPARING
            own = own or (self._is_as_usual(last) and not found)
            found |= last.concepts if named.isdisjoint(last.concepts) and not own else frozenset()
        return frozenset(found.union(*self._sizes_of_things()))

    def _is_as_usual(self, last: Mention) -> bool:
        """Return whether a quantity is named as what it normally is, where another one is named before it."""
        before = (m.concepts for m in self.mentions if m.end <= last.start)
        return self.words[last.start - 1] in _USUAL and any(c & _QUANTITIES and not c & last.concepts for c in before)

    def _sizes_of_things(self) -> Iterator[frozenset[str]]:
        """Yield the quantities that are asked for behind what they are of: "above which | brake | temperature"."""
        for thing, size in pairwise(self.mentions):
            if thing.end == size.start and thing.start and self.words[thing.start - 1] in _WHICH:
                yield size.concepts & _SIZES

    @cached_property
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


def plain_reading(reading: Reading) -> dict[str, Any]:
    """Return a reading as plain values, for `understood` and --explain."""
    return {
        "words": " ".join(reading.words),
        "concepts": [{"text": m.text, "concepts": sorted(m.concepts)} for m in reading.mentions if not m.weak],
        "amounts": [{"value": a.value, "unit": a.unit, "text": a.raw} for a in reading.amounts],
        "mended": [{"typed": old, "read": new} for old, new in reading.mended],
    }
