"""The knowledge as the resolvers use it: the base with its reader, matcher, units and state words."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping
from functools import cached_property
from typing import Any

from assistant.frozen import NamedTuple
from assistant.knowledge.base import Base, stated
from assistant.knowledge.library_records import Document
from assistant.knowledge.records import Fact, Limit, Source, Value
from assistant.quantities.amounts import Amount, amounts_in
from assistant.quantities.units import Units
from assistant.understanding.condition import numbered
from assistant.understanding.lexicon import Lexicon
from assistant.understanding.matching import Matcher
from assistant.understanding.mentions import RESULT, Reading
from assistant.understanding.reading import Reader
from assistant.understanding.states import Condition, StateWords, conditions, state_words
from assistant.understanding.then import Then, Thens

MOVING_THE_GEAR = ("retract", "extend", "move_gear")
"""Concepts of moving the gear, either way or both."""
ACTS = "gear-motion"
"""The family of what may be done with the gear, and of how it then stands."""
_MOST_KEPT = 1000
"""Texts whose amounts are kept: those of the knowledge are fewer, those that answers are composed of never end."""


class Meaning(NamedTuple):
    """What a phrase of the knowledge means: what it names, as the senses of each, and (input, value) that it gives."""

    named: tuple[frozenset[str], ...]
    states: frozenset[tuple[str, str]]


class Knowledge:
    """One type's knowledge, ready to be asked."""

    def __init__(self, base: Base, lists: Callable[[str], str] | None = None) -> None:
        self.base = base
        self.units = Units({"units": base.units_data})
        self.lexicon = Lexicon(base.derived["lexicon"])
        self.reader = Reader(self.lexicon, self.units, lists)
        self.matcher = Matcher(base.derived)
        self.states: StateWords = state_words(base, self.lexicon.sets, self.lexicon.shows)
        self.variants = list(base.variants)
        """Ids of the variants; the first is the base type."""
        self.tables = frozenset(base.ids("tables"))
        """Ids of the state tables."""
        self._published = frozenset(d.id for d in base.documents.values() if d.published)
        self._general: dict[str, dict[str, bool]] = defaultdict(dict)
        """By variant, which records are general as they stand for it."""
        self._phrases: dict[str, Reading] = {}
        self._meanings: dict[str, Meaning] = {}
        self._thens = Thens(base.derived.get("then", {}))
        self._phrase_states: dict[str, frozenset[tuple[str, str]]] = {}
        self._amounts: dict[str, tuple[Amount, ...]] = {}
        self.stems_told: dict[str, frozenset[str]] = {}
        """The words of what records say and are asked by, as far as they were wanted; kept by `record_words`."""

    @cached_property
    def numbered(self) -> frozenset[str]:
        """The words that things are named by whose numbers tell them apart: the "system" of "System 1"."""
        kinds = (numbered(n)[0] for term in self.states.counted.values() for n in self.base.terms[term].names)
        return frozenset(kind.split()[-1] for kind in kinds if kind)

    def phrase(self, text: str) -> Reading:
        """Return the reading of a phrase of the knowledge itself, kept for the next time."""
        found = self._phrases.get(text)
        if found is None:
            found = self._phrases[text] = self.reader.read(text, mending=False)
        return found

    def phrase_states(self, text: str) -> frozenset[tuple[str, str]]:
        """Return the (input, value) that a phrase of the knowledge itself gives, kept for the next time."""
        found = self._phrase_states.get(text)
        if found is None:
            given = conditions(self.phrase(text), self.states, self.units)
            found = self._phrase_states[text] = frozenset((c.input, c.value) for c in given if not c.is_result)
        return found

    def phrase_meaning(self, text: str) -> Meaning:
        """Return what a phrase of the knowledge itself means, kept for the next time."""
        found = self._meanings.get(text)
        if found is None:
            senses = (m.concepts for m in self.phrase(text).mentions if not m.weak or m.says_state)
            found = self._meanings[text] = Meaning(tuple(senses), self.phrase_states(text))
        return found

    def amounts(self, text: str) -> tuple[Amount, ...]:
        """Return the amounts of a text of the knowledge itself, kept for the next time."""
        found = self._amounts.get(text)
        if found is None:
            if len(self._amounts) >= _MOST_KEPT:
                self._amounts.clear()
            found = self._amounts[text] = tuple(amounts_in(text, self.units))
        return found

    def asked_after(self, paragraphs: Iterable[str]) -> tuple[Then, ...]:
        """Return the ways of asking that hold after some paragraphs, kept for the next time."""
        return tuple(then for paragraph in paragraphs for then in self._thens.after(paragraph))

    @cached_property
    def facts_on(self) -> Mapping[str, list[Fact]]:
        """The facts by their topic, in file order."""
        found: dict[str, list[Fact]] = defaultdict(list)
        for name in self.base.ids("facts"):
            found[self.base.records[name].topic].append(self.base.records[name])
        return found

    @cached_property
    def tables_are_of(self) -> Mapping[str, frozenset[str]]:
        """What each state table is of, by its id: the gear, the brakes."""
        return {table.id: self.phrase(table.of).concepts for table in self.base.tables}

    @cached_property
    def facts_in_states(self) -> tuple[Fact, ...]:
        """The facts that hold in a state alone, in file order."""
        return tuple(self.base.records[name] for name in self.base.having("facts", "when"))

    @cached_property
    def limits_in_states(self) -> tuple[Limit, ...]:
        """The limits that depend on a state."""
        return tuple(self.base.records[name] for name in self.base.having("limits", "when"))

    @cached_property
    def gear_speeds(self) -> tuple[float, ...]:
        """The greatest airspeeds, in knots, that limits state for moving the gear: those whose names tell of it."""
        limits = (self.base.records[name] for name in self.base.ids("limits"))
        fastest = (limit for limit in limits if limit.maximum and limit.maximum.unit == "kt")
        return tuple(limit.maximum.value for limit in fastest if self.phrase(limit.of).has(*MOVING_THE_GEAR))

    @cached_property
    def own_documents(self) -> Mapping[str, Document]:
        """The type's documents by their ids in lower case, in file order."""
        return {d.id.lower(): d for d in self.base.documents.values() if not d.published}

    @cached_property
    def loaded_line(self) -> str:
        """The type's documents with their revisions: "AOM 7, LIM 7"."""
        return ", ".join(f"{d.id} {d.revision}" for d in self.own_documents.values())

    def record(self, name: str, variant: str) -> Any:
        """Return a record as it stands for a variant."""
        return self.base.record(name, variant if variant in self.variants[1:] else None)

    def is_general(self, record: Any) -> bool:
        """Return whether a record is true of all aeroplanes: it rests on published documents alone."""
        return all(s.document in self._published for s in record.sources)

    def is_general_record(self, name: str, variant: str) -> bool:
        """Return whether a record is general as it stands for a variant, kept for the next time."""
        known = self._general[variant]
        found = known.get(name)
        if found is None:
            found = known[name] = self.is_general(self.record(name, variant))
        return found

    def figure(self, name: str, variant: str) -> Value | None:
        """Return the stated figure of a limit."""
        return stated(self.record(name, variant)) if name in self.base.records else None


class _Asked(NamedTuple):
    """The parts of a question."""

    reading: Reading
    conditions: tuple[Condition, ...]
    variant: str
    """The variant asked about: the one named, else the one in use."""
    named_variant: bool = False
    background: frozenset[str] = frozenset()
    """Concepts of the question before, which may be left unsaid."""
    context: bool = False
    """Parts of it were taken over from the question before."""
    near: tuple[Source, ...] = ()
    """Paragraphs that the answer before rests on: what stands there is more likely meant."""
    wanted: str = ""
    """The quantity that the answer before gave, where a turn names another thing and asks no quantity itself."""
    spoken: frozenset[str] = frozenset()
    """Things that were spoken of before, where a turn points at one: "how often may I press it?"."""
    after: tuple[frozenset[str], ...] = ()
    """What the question before named, which a turn that leans on it still means: the senses of each."""
    unsaid: tuple[str, ...] = ()
    """Inputs that were told of without a state that is understood."""
    held: str = ""
    """What holds from before and is said in a line after the answer: the states, and what goes with them."""


class Question(_Asked):
    """A question with everything that was settled before resolving: states, variant."""

    @cached_property
    def results_named(self) -> Mapping[str, list[tuple[str, str]]]:
        """The results of state tables that are named or given, as (output, value), by table."""
        named = {tuple(c[1:].split(".", 2)) for c in self.reading.concepts if c.startswith(RESULT)}
        given = {(c.table, c.output, c.value) for c in self.conditions if c.is_result}
        found: dict[str, list[tuple[str, str]]] = defaultdict(list)
        for table, output, value in sorted(named | given):
            found[table].append((output, value))
        return found

    @cached_property
    def states(self) -> frozenset[tuple[str, str]]:
        """What is given, as (input, value)."""
        return frozenset((c.input, c.value) for c in self.conditions)

    @cached_property
    def stated(self) -> frozenset[str]:
        """The inputs whose states are given in so many words."""
        return frozenset(c.input for c in self.conditions if not c.is_result and not c.implied)

    def with_text(self, text: str) -> Question:
        """Return the question with the text of a turn that it was completed from, or that it answers."""
        return self._replace(reading=self.reading._replace(text=text))
