"""Which state word belongs to which thing: the one it stands next to, before or after, or around it.

"Loss of System 1", "Systems 1 and 2 both out", "nobody took the bypass pin out".
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from itertools import pairwise

from assistant.frozen import NamedTuple
from assistant.understanding.condition import Condition, StateWords, is_result
from assistant.understanding.denying import ACTING, BESIDE, denied_before, is_hedged
from assistant.understanding.grouping import BEFORE, LINKS, Group
from assistant.understanding.mentions import Mention, Reading

_STOPS = frozenset({".", ";", "?"})
_ANDS = frozenset({"and", "but", ",", "with", "plus"})
_JOINING = frozenset({"with", "if", "when", "and", "but"})
_PLACES = frozenset({"in", "on", "off", "out", "up", "down", "at"})
"""State words that are oftener prepositions: where they say nothing of a thing, the word beyond them may."""
_DOES = frozenset(("does", "did", "will", "would", "can", "could"))
_ARE, _ASKERS = frozenset(("are", "am")), frozenset(("you", "we", "i", "they"))
_WHAT_WAS_TOLD = frozenset(("that", "it", "this", "which"))
_MEANWHILE = frozenset(("then", "now", "also", "still"))
_SUBJECTS = frozenset({"we", "i", "they", "you", "he", "she", "somebody", "someone", "nobody", "who"})
_POINTED = frozenset({"this", "that", "these", "those", "it", "them"})
_BUT = frozenset(("but", "then"))
_SINCE = _BUT | {
    "is", "it", "has", "now", "been", "since", "again", "came", "come", "was", ",", "and", "later", "got", "had", "i",
    "we", "he", "she", "they", "put", "set", "switched", "turned", "moved", "selected", "back", "have",
}  # fmt: skip
"""Words of which alone what stands between a thing's former state and its present one may consist."""
_DIRECT = frozenset(("the", "my", "our", "both", "of", "all"))
"""Words of which alone what stands between a state word and the next thing may consist, for it to be that thing's."""
_NEAR = 2
_FAR = 6
_NONE = frozenset(("no", "without"))
_VERBS = frozenset({"is", "are", "was", "were", "has", "have", "had", "be", "been", "stays", "remains", "does", "did"})
_DENIED_NOUNS = frozenset({"failure", "failures", "loss", "losses", "fault", "faults", "leak", "leaks", "failure of",
                           "loss of", "fault in", "fault on", "loss of pressure", "leak in"})  # fmt: skip


class Bound(NamedTuple):
    """What a group was found to be in: its conditions, with the word that said it and whether that was denied."""

    group: Group
    found: tuple[Condition, ...]
    state: Mention | None = None
    denied: bool = False

    @property
    def end(self) -> int:
        """Return where the group and its state word both end."""
        return max(self.group.end, self.state.end if self.state else 0)


class Binder:
    """Binds the state words of one reading; each is used once."""

    def __init__(
        self, reading: Reading, states: Sequence[Mention], known: StateWords, asking: Collection[int]
    ) -> None:
        self.reading = reading
        self.words = reading.words
        self.states = states
        self.known = known
        self.asking = asking
        self.used: set[int] = set()

    def bind(self, group: Group, earlier: int, following: int) -> Bound | None:
        """Return the states that are said of a group, between the things named before and after it."""
        for bound in (self._around(group), self._before(group, earlier, following), self._after(group, following)):
            if bound:
                self.used.add(bound.state.start if bound.state else -1)
                return self._since(bound, following) or bound
        return None

    def _since(self, bound: Bound, following: int) -> Bound | None:
        """Return what a thing has become since: "System 1 was lost but is back"."""
        for state in self.states:
            if bound.end < state.start < following and state.start not in self.used:
                between = self.words[bound.end : state.start]
                if not _SINCE.issuperset(between) or _BUT.isdisjoint(between) or state.start in self.asking:
                    return None
                if following < len(self.words) and _DIRECT.issuperset(self.words[state.end : following]):
                    return None  # "we lost System 1 but still have | System 2"
                now = self.conditions(bound.group, state)
                if now:
                    self.used.add(state.start)
                return now
        return None

    # --- a word around the thing: "took the pin out"

    def _around(self, group: Group) -> Bound | None:
        for state in self.states:
            if state.start < group.start and group.end <= state.taken[-1] and state.start not in self.used:
                between = self.words[state.start : state.end]
                if not _STOPS.intersection(between) and "," not in between:
                    found = self.conditions(group, state)
                    if found:
                        return found
        return None

    # --- before it: "loss of System 1"

    def _before(self, group: Group, earlier: int, following: int) -> Bound | None:
        lead = self._lead(group, earlier)
        if lead is None or lead.state is None or self._asks_whether_it_does(lead.state):
            return None
        state = lead.state
        between = self.words[state.end : group.start]
        after = self._following(group, following)
        works = lead.found[0].value == self.known.normal(lead.found[0].input)
        if "with" in between and works and not state.text.startswith(("no", "nothing")):
            return None  # "does it still work with System 1 …": what works is not System 1
        other = bool(after) and after[0].start - group.end <= 1 and not self._leads(after[0], following)
        if other and after[0].holds("can") and not _JOINING.intersection(between) and self._ends(after[0]):
            other = False  # "without anti-skid ok?": the last word asks, and says no state
        said = self.conditions(group, after[0]) if other else None
        denied = state.text == "no" and state.end == group.start
        if denied and said and said.found[0].value == lead.found[0].value:  # "no controller failure": it is well
            return lead._replace(found=contrary(lead.found, self.known))
        if other and (not said or (denied and said.found[0].value != lead.found[0].value)):
            other = False  # "no fans available": none
        if other and (state.weak or self._asks_what_goes(state) or _JOINING.intersection(between)):
            return None
        return lead

    def _lead(self, group: Group, earlier: int) -> Bound | None:
        """Return what the nearest state word before a group means for it."""
        end = group.start
        for state in reversed(self.states):
            if state.end > group.start or state.start < earlier or state.start in self.used:
                continue
            if not all(w in BEFORE for w in self.words[state.end : end]):
                return None
            found = self.conditions(group, state)
            if found:
                return found
            if state.text not in _PLACES:
                return None
            end = state.start
        return None

    def _ends(self, state: Mention) -> bool:
        return state.end >= len(self.words) - 1 or self.words[state.end] in (",", ".", "right", "isn't")

    def _asks_whether_it_does(self, state: Mention) -> bool:
        """Return whether it is asked if what was told brings a state about, or leaves somebody without a thing:
        "System 2 lost: does that disable …", "are you without …".
        """
        before = [*self.words[max(0, state.start - 3) : state.start]]
        while before and before[-1] in _MEANWHILE:
            before.pop()
        if len(before) < 2:
            return False
        helps, subject = before[-2:]
        if state.text == "without":
            return helps in _ARE and subject in _ASKERS
        return state.start in self.asking and helps in _DOES and subject in _WHAT_WAS_TOLD

    def _asks_what_goes(self, state: Mention) -> bool:
        """Return whether a word asks what is lost, and says no state: "what is lost with the switch OFF"."""
        if not state.holds("lose"):
            return False
        before = self.words[max(0, state.start - 3) : state.start]
        return state.text == "lose" or (state.text == "lost" and bool({"what", "whats"}.intersection(before)))

    # --- after it: "Systems 1 and 2 both out"

    def _following(self, group: Group, following: int) -> list[Mention]:
        return [s for s in self.states if group.end <= s.start < following and s.start not in self.used]

    def _after(self, group: Group, following: int) -> Bound | None:
        after = self._following(group, following)
        if after and self._only_asks(group, after[0]):
            return None
        for state in after:
            between = self.words[group.end : state.start]
            if self._belongs_elsewhere(group, state, following):
                continue
            loose = len(between) > _NEAR and not all(w in LINKS for w in between)
            if _STOPS.intersection(between) or len(between) > _FAR or (state.weak and loose):
                continue
            found = self.conditions(group, state)
            if found:
                return found
        return None

    def _only_asks(self, group: Group, state: Mention) -> bool:
        """Return whether a last "ok?" asks about a thing that has its state already: "without anti-skid ok?"."""
        if not (state.holds("can") and self._ends(state)):
            return False
        return any(
            s.end <= group.start
            and s.start not in self.used
            and all(w in BEFORE and w not in _JOINING for w in self.words[s.end : group.start])
            and self.conditions(group, s)
            for s in self.states
        )

    def _belongs_elsewhere(self, group: Group, state: Mention, following: int) -> bool:
        between = self.words[group.end : state.start]
        if self._leads(state, following) and (len(between) > _NEAR or _ANDS.intersection(between)):
            return True  # it belongs to the thing after it: "and no System 2", "following the failure of System 2"
        if self._leads(state, following) and any(
            a.unit and group.end <= a.start < state.start for a in self.reading.amounts
        ):
            return True  # "the accumulator needle is at 2,400 psi, loss of System 1": the reading says its state
        if self._leads(state, following) and _SUBJECTS.intersection(between):
            return True  # "the accumulator is charged we no longer have System 1"
        if state.text == "no" and "," in between:
            return True  # "it is on System 1, no?": it asks to be confirmed
        if state.start in self.asking and group.start not in self.asking:
            return True  # "System 1 has …, is steering available": the word asks
        and_amount = any(a.end == state.start and group.end < a.start for a in self.reading.amounts)
        return and_amount and bool(_ANDS.intersection(between))  # "fans, 25 out": the word goes with the number

    def _leads(self, state: Mention, following: int) -> bool:
        """Return whether a state stands right before the next thing."""
        return following < len(self.words) and all(w in BEFORE for w in self.words[state.end : following])

    # --- what a word means for things

    def conditions(self, group: Group, state: Mention) -> Bound | None:
        """Return what a state word says of a group, or None where it says nothing of it."""
        if ("not", "both") in pairwise(self.words[group.end : state.end]):
            return None  # "they are not both lost" leaves open which
        if is_hedged(self.words[group.end : state.start]) or self._is_preposition(state):
            return None
        denied = self._denied(group, state)
        where = (*group.places, *state.taken)
        found = conditions_of(group.inputs, state, denied, where, self.known)
        return Bound(group, tuple(found), state, denied) if found else None

    def _is_preposition(self, state: Mention) -> bool:
        """Return whether "on" only leads to what is pointed at: "do I get anti-skid | on this". What is told of that
        at once begins anew: "fans on, it is 25 outside".
        """
        pointed, *verb = (*self.words[state.end : state.end + 2], "")[:2]
        return state.text == "on" and pointed in _POINTED and _VERBS.isdisjoint(verb)

    def _denied(self, group: Group, state: Mention) -> bool:
        if denied_before(self.words, state.start, BESIDE):
            return True
        if state.text in _DENIED_NOUNS and self.words[max(0, state.start - 1) : state.start] == ("no",):
            return True
        if self.says_neither(group):
            return True
        if state.end <= group.start:
            return False
        if self._is_none(group):
            return True
        between = self.words[group.end : state.taken[-1]]
        return not _VERBS.intersection(between) and denied_before(self.words, group.start, ACTING)

    def _is_none(self, group: Group) -> bool:
        """Return whether what is said of a thing is said of none of them: "| no pin | is in". Of what can fail, "no" is
        a number as well: "no 1 lost".
        """
        if not self.known.failures.isdisjoint(group.inputs) or any(map(is_result, group.inputs)):
            return False
        if self.words[group.start] in _NONE:
            return True
        none = next((s for s in self.states if s.end == group.start and s.text == "no"), None)
        said = none is not None and conditions_of(group.inputs, none, False, (), self.known)
        return none is not None and not said  # "no fans on": the "no" says by itself that they are off

    def says_neither(self, group: Group) -> bool:
        """Return whether "neither" stands before things: "neither the accumulator nor System 1"."""
        before = self.words[max(0, group.start - 3) : group.start + 1]
        return "neither" in before and not _STOPS.intersection(before)

    def has_neither(self, group: Group) -> bool:
        """Return whether things are said to be gone by "neither" alone: "we have neither the controller nor …"."""
        first = max(0, group.start - 3)
        before = self.words[first : group.start + 1]
        at = first + before.index("neither") if "neither" in before else 0
        had = at > 0 and self.words[at - 1] in ("have", "has", "got", "with", "having")
        return had and self.known.failures.issuperset(group.inputs) and group.start not in self.asking


def conditions_of(
    names: Sequence[str], state: Mention, denied: bool, where: tuple[int, ...], known: StateWords
) -> list[Condition]:
    """Return the states that a word means for some things; denied, the other of two."""
    found: list[Condition] = []
    for name in names:
        value = value_meant(name, state, known)
        if value is not None and denied:
            value = other_value(name, value, known)
        if value is not None:
            found.append(Condition(name, value, where=where))
    return found


def other_value(name: str, value: str, known: StateWords) -> str | None:
    """Return the one other value of a thing, or None where it has several."""
    others = [v for v, _, _ in known.values[name] if v != value]
    return others[0] if len(others) == 1 else None


def contrary(found: Sequence[Condition], known: StateWords) -> tuple[Condition, ...]:
    """Return things in the other of their two states; one that has several keeps its own."""
    return tuple(c._replace(value=other_value(c.input, c.value, known) or c.value) for c in found)


def value_meant(name: str, state: Mention, known: StateWords) -> str | None:
    """Return the value of an input that state words stand for, or None where they mean nothing for it."""
    for value, groups, _ in known.values[name]:
        if any(group in state.concepts and "." in group for group in groups):
            return value
    # The state that is not normal is what people mention: it goes first where a word fits both.
    for value, groups, _ in reversed(known.values[name]) if "." not in name else known.values[name]:
        if any(group in state.concepts for group in groups):
            return value
    return None
