"""The things of a question that can be in a state, those joined together as one group: "Systems 1 and 2"."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from assistant.frozen import NamedTuple
from assistant.understanding.condition import Condition, StateWords, alike, is_result
from assistant.understanding.mentions import Mention, Reading

JOINS = frozenset({
    "and", "or", "both", "the", "my", "our", "&", "+", ",", "plus", "as", "well", "also", "either", "together", "nor",
    "/", "then", "now", "along", "with", "any", "your", "but",
})  # fmt: skip
BEFORE = frozenset({
    "of", "the", "in", "my", "our", "a", "an", "its", "from", "to", "both", "on", "for", "all", "complete", "total",
    "with", "without", "any", "your", "got", "has", "have", ":",
})  # fmt: skip
LINKS = frozenset({
    "is", "are", "has", "have", "had", "been", "be", "being", "to", "stay", "stays", "stayed", "now", "both", "still",
    "all", "was", "were", "the", "get", "gets", "got", "go", "goes", "will", "must", "just",
})  # fmt: skip
_ENDS = frozenset((".", ",", ";", "?", ":", "-", "and", "but"))
_OPENING = frozenset({
    ".", ",", ";", "?", "!", ":", "-", "(", "and", "but", "if", "when", "while", "with", "then", "number", "no", "so",
    "on", "that", "because", "since", "after", "once", "though", "or", "now", "only", "says",
})  # fmt: skip
"""Words after which a number followed by a state is a thing's."""
_LEADING = ("lost", "lose", "losing", "on", "for", "without", "is", "has", "number", "in", "ditto")
_WHEN = frozenset(("in", "on", "at", "after", "before", "during"))
_ONLY_TOGETHER = {"with": ("along", "together", "well"), "but": ("also",)}
"""Words that join after another one alone: "along with", "but also"."""
_INSTEAD = (("instead", "of"), ("rather", "than"))
DETERMINERS = frozenset(("the", "my", "our"))
_BEFORE_NOT = frozenset((",", "and", "but", "-", "(", "was", "is", "it", ";", ":"))
_NOR = frozenset(("nor", "or"))
_HAVING = frozenset(("have", "has", "got", "keep"))
_MOST_BETWEEN = 4
_READ_WITHIN = 6
_LISTED = 8
_PARTING = frozenset((",", ".", "?", ";", ":", "-", "and", "but", "with"))


class Group(NamedTuple):
    """Things named at words[start:end] that share a state; `inputs` are inputs, or results of tables.

    aside: nobody named them, a name only brings them along ("emergency braking": the accumulator).
    """

    start: int
    end: int
    inputs: tuple[str, ...]
    aside: bool = False

    @property
    def places(self) -> tuple[int, ...]:
        """Where its words stand."""
        return tuple(range(self.start, self.end))


def input_groups(reading: Reading, known: StateWords, states: Sequence[Mention]) -> list[Group]:
    """Return the groups in the order in which they are named."""
    groups: list[Group] = []
    counted = _by_number(reading, known, states)
    for mention in sorted((*reading.mentions, *counted), key=lambda m: m.start) if counted else reading.mentions:
        # A result that is named brings no thing along that could be in a state: "EMERGENCY when both systems go".
        result = mention.names_result
        concepts = mention.concepts if result else mention.concepts | mention.implied
        names = () if known.by_term.keys().isdisjoint(concepts) else _things(concepts, mention, known)
        last = groups[-1] if groups else None
        if not names and reading.amounts and not (last and last.end == mention.start):
            names = _read_on(reading, mention, known)
        if not names:
            continue
        if last and mention.start < last.end:
            continue
        if last and _joined(reading, last, mention, names, known) and not (
            _set_apart(reading.words, last, mention)
            or _of_it_alone(reading.words, last, mention, states, names, known)
            or _have_own(reading, groups[-2:], mention, states, names, known)
        ):
            groups[-1] = Group(last.start, mention.end, (*last.inputs, *names))
        else:
            own = len(names) > 1 or any(c in known.by_term or c in known.read_on for c in mention.concepts)
            groups.append(Group(mention.start, mention.end, names, not own))
    return groups


def _things(concepts: Iterable[str], mention: Mention, known: StateWords) -> tuple[str, ...]:
    """Return the things that a name is of, by some of its concepts."""
    names = tuple(i for c in sorted(concepts) for i in known.by_term.get(c, ()))
    owned = {i for c in mention.concepts for i in known.by_term.get(c, ())}
    if all(map(is_result, owned)):
        return names
    return tuple(i for i in names if i in owned or not is_result(i))  # a switch is no result of what it switches


def names_another(words: Sequence[str], at: int) -> bool:
    """Return whether what is named at a place is what something is not: "System 2 instead of | System 1"."""
    before = at
    while before and words[before - 1] in DETERMINERS:
        before -= 1
    if tuple(words[max(0, before - 2) : before]) in _INSTEAD:
        return True
    return before > 0 and words[before - 1] == "not" and (before == 1 or words[before - 2] in _BEFORE_NOT)


def _set_apart(words: Sequence[str], last: Group, mention: Mention) -> bool:
    """Return whether one of two things is what the other is not: "instead of System 1, | System 2 has failed"."""
    between = words[last.end : mention.start]
    apart = "," in between or "but" in between
    return names_another(words, mention.start) or between == ("not",) or (apart and names_another(words, last.start))


def _by_number(reading: Reading, known: StateWords, states: Sequence[Mention]) -> list[Mention]:
    """Return the bare numbers that stand for things: "System 2 is lost but 1 is fine"."""
    found: list[Mention] = []
    siblings = any(term in m.concepts for term in known.counted.values() for m in reading.mentions)
    for amount in reversed(reading.amounts):
        term = known.counted.get(int(amount.value)) if amount.value == int(amount.value) else None
        if term is None or amount.unit or amount.end - amount.start > 1:
            continue
        words, at = reading.words, amount.start
        before = words[at - 1] if at else "."
        known_as = words[at].isdigit() or siblings or before in ("number", "no")
        known_as = known_as or words[at + 1 : at + 2] in (("is",), ("has",), ("was",))
        ends = at + 1 >= len(words) or words[at + 1] in _ENDS
        listed = bool(found) and all(w in JOINS for w in words[at + 1 : found[-1].start])
        stated = listed or (before in _OPENING and _state_follows(words, at + 1, states))
        left = before in _LEADING[:3] and words[at].isdigit() and not _WHEN.isdisjoint(words[at + 1 : at + 2])
        if known_as and (stated or left or (siblings and ends and before in _LEADING)):
            found.append(Mention(at, at + 1, (at,), frozenset((term,)), frozenset(), False, words[at]))
    return found


def _state_follows(words: Sequence[str], at: int, states: Sequence[Mention]) -> bool:
    return any(at <= s.start <= at + 3 and all(w in LINKS for w in words[at : s.start]) for s in states)


def _joined(reading: Reading, last: Group, mention: Mention, names: tuple[str, ...], known: StateWords) -> bool:
    between = reading.words[last.end : mention.start]
    if not between:
        listed = _all_said(reading.words, mention.end) and _alike_in_words(last, names, known)
        return listed or alike(last.inputs[-1], names[0], known)
    if len(between) > _MOST_BETWEEN or not all(w in JOINS for w in between):
        return False
    if between == ("as", "well"):
        return False  # "the controller as well, System 2 is fine": it shares what is told before
    if any(w in between and not set(leads).intersection(between) for w, leads in _ONLY_TOGETHER.items()):
        return False
    if "neither" in reading.words[max(0, last.start - 3) : last.start + 1] and not _NOR.intersection(between):
        return False  # "neither the accumulator nor System 1, and System 2 has gone"
    if between == (",",) and _HAVING.intersection(reading.words[max(0, last.start - 3) : last.start]):
        return False  # "we have System 1, accumulator flat"
    if not _alike_in_words(last, names, known):
        return False
    mixed = is_result(names[0]) != any(map(is_result, last.inputs))
    # "Loss of hyd 2, anti-skid?" asks for the one and gives the other.
    asked = mixed and ("," in between or reading.words[mention.end : mention.end + 1] == ("?",))
    return not asked


def _all_said(words: Sequence[str], at: int) -> bool:
    """Return whether things listed without a word between are all said to be in a state: "sys 1 accu all gone"."""
    end = next((i for i in range(at, len(words)) if words[i] in _ENDS), len(words))
    return "all" in words[at : min(end, at + _LISTED)]


def _alike_in_words(last: Group, names: tuple[str, ...], known: StateWords) -> bool:
    """Return whether any word for a state could be said of both: one of a switch says nothing of a system."""
    one, other = (
        {g for name in each for _, groups, _ in known.values[name] for g in groups} for each in (last.inputs, names)
    )
    return not one.isdisjoint(other)


def _reads(reading: Reading, mention: Mention) -> bool:
    """Return whether a reading is told of a thing: "and the System 2 gauge has sunk to 700 psi"."""
    end = next((i for i in range(mention.end, len(reading.words)) if reading.words[i] in _PARTING), len(reading.words))
    return any(a.unit and mention.end <= a.start < min(end, mention.end + _READ_WITHIN) for a in reading.amounts)


def _read_on(reading: Reading, mention: Mention, known: StateWords) -> tuple[str, ...]:
    """Return the input whose number an instrument shows, where a reading is told of it: "1,400 psi on the dial"."""
    shown = tuple(known.read_on[c] for c in sorted(mention.concepts) if c in known.read_on)
    if not shown:
        return ()
    words = reading.words
    before = mention.start
    while before and words[before - 1] in DETERMINERS:
        before -= 1
    on_it = before and words[before - 1] == "on" and any(a.end == before - 1 for a in reading.amounts)
    after = (a for a in reading.amounts if 0 <= a.start - mention.end <= _MOST_BETWEEN)
    shows = any(_PARTING.isdisjoint(words[mention.end : a.start]) for a in after)
    return shown if on_it or shows else ()


def _have_own(
    reading: Reading, before: Sequence[Group], mention: Mention, states: Sequence[Mention], names: Sequence[str],
    known: StateWords,
) -> bool:  # fmt: skip
    """Return whether two joined things have a state each: "loss of System 1 and hyd 2 is working".

    before: the groups named before, of which the last is joined to what is mentioned.
    """
    words, last = reading.words, before[-1]
    if any(last.end <= s.start and s.end <= mention.start for s in states):
        return True
    if not any(
        s.end <= last.start
        and all(w in BEFORE for w in words[s.end : last.start])
        and _says_of(s, last, known)
        and not _of_another(s, before, words)
        for s in states
    ):
        return False
    starts = [s.start for s in states] + [a.start for a in reading.amounts]
    if not known.numbers.keys().isdisjoint(names) and _reads(reading, mention):
        return True
    return any(
        mention.end <= start <= mention.end + 2 and all(w in LINKS or w == "at" for w in words[mention.end : start])
        for start in starts
    )


def _of_it_alone(
    words: Sequence[str], last: Group, mention: Mention, states: Sequence[Mention], names: tuple[str, ...],
    known: StateWords,
) -> bool:  # fmt: skip
    """Return whether the word after a thing says its state and none of the thing listed before it: "along with the
    brake controller, accumulator | charged |".
    """
    if words[last.end : mention.start] != (",",):
        return False
    after = (s for s in states if mention.end <= s.start <= mention.end + 2)
    own = next((s for s in after if all(w in LINKS for w in words[mention.end : s.start])), None)
    group = Group(mention.start, mention.end, names)
    return own is not None and _says_of(own, group, known) and not _says_of(own, last, known)


def _of_another(state: Mention, groups: Sequence[Group], words: Sequence[str]) -> bool:
    """Return whether a word says the state of the thing before it, and others come with that: "the controller | dies |
    with System 1 and System 2 healthy".
    """
    last = groups[-1]
    before = (g for g in groups[:-1] if g.end <= state.start)
    said = any(all(w in LINKS for w in words[g.end : state.start]) for g in before)
    return said and "with" in words[state.end : last.start]


def past_links(words: Sequence[str], at: int) -> int:
    """Return the first place from one on where no linking word stands."""
    while at < len(words) and words[at] in LINKS:
        at += 1
    return at


def _says_of(state: Mention, group: Group, known: StateWords) -> bool:
    """Return whether a word says a state of things: the ON of "back ON with both systems …" says none of systems."""
    return any(g in state.concepts for name in group.inputs for _, groups, _ in known.values[name] for g in groups)


def failing(groups: Iterable[Group], known: StateWords, named: set[str]) -> list[Condition]:
    """Return the things that can fail, and whose state was not said, as failed."""
    return [
        Condition(name, known.failed(name), where=group.places)
        for group in groups
        for name in group.inputs
        if name in known.failures and name not in named
    ]
