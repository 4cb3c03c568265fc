"""Which things a question says are in which state: "system two gone", "bypass pin in", "no anti-skid".

Things and state words stand in a row with little between them; a state word belongs to the thing it stands
next to, before ("loss of System 1") or after ("Systems 1 and 2 both out"), and is used once.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise

from assistant.frozen import NamedTuple
from assistant.quantities.units import Units
from assistant.understanding.asides import left_out
from assistant.understanding.binding import Binder, Bound
from assistant.understanding.clauses import asking, believed, doubted, said_by_somebody
from assistant.understanding.condition import Condition as Condition
from assistant.understanding.condition import StateWords as StateWords
from assistant.understanding.condition import is_result
from assistant.understanding.condition import state_words as state_words
from assistant.understanding.denying import is_hedged
from assistant.understanding.excepting import excepted
from assistant.understanding.grouping import DETERMINERS, LINKS, Group, input_groups
from assistant.understanding.grouping import failing as failing
from assistant.understanding.implied import alone, implied
from assistant.understanding.instead import contrasted, set_against
from assistant.understanding.labels import labels_shown
from assistant.understanding.mentions import RESULT, Mention, Reading
from assistant.understanding.not_yet import is_not_yet
from assistant.understanding.only_left import only_left
from assistant.understanding.sharing import against_name, shared
from assistant.understanding.state_numbers import by_number as by_number
from assistant.understanding.state_numbers import numbered, reads
from assistant.understanding.state_numbers import passes as passes

_WITH = frozenset(("with", "using", "plus", "use"))
_USED = frozenset(("@on", "@in", "@pulled", "@held"))
_OPENINGS = frozenset(("ok", "okay", "alright", "all right"))
_DOES = frozenset(("do", "does", "did"))
_WHAT = frozenset(("what", "which", "whats", "else"))
_DOING = frozenset(("run", "runs", "work", "operate", "power", "drive"))
_CLAUSE = 7
_OPENED = frozenset((",", "and", "so", "now", "then", "but"))
_FORGOT = frozenset(("forgot", "forgotten", "forget", "forgets"))
_KNOWING = frozenset({"tell", "know", "sure", "idea", "say", "clear", "certain", "unsure", "unclear", "uncertain"})
_SAYS = frozenset({"does", "do", "did", "is", "has", "will"})
_PAUSES = frozenset({"wait", "pause", "period", "interval", "delay"})
_HAVING = frozenset({
    "have", "has", "got", "get", "any", "the", "my", "our", "with", "longer", "still", "keep", "kept", "retain",
    "retained",
})  # fmt: skip


class Stated(NamedTuple):
    """The states that a question gives, and the things that it tells of without a state that is understood."""

    conditions: tuple[Condition, ...]
    bare: tuple[Group, ...] = ()


def conditions(
    reading: Reading, known: StateWords, units: Units, losing: bool = False, asks_mode: bool = False
) -> list[Condition]:
    """Return the states that a question gives, in the order in which they are said.

    losing: the question asks what goes with a thing ("what do I lose with System 1"), so that a thing that
    can fail, and has no state of its own, is taken as failed. asks_mode: it asks what mode is left, for which
    the same holds where no state is said at all.
    """
    return list(stated(reading, known, units, losing, asks_mode).conditions)


def stated(
    reading: Reading, known: StateWords, units: Units, losing: bool = False, asks_mode: bool = False
) -> Stated:
    """Return the states that a question gives, and the things in what it tells that are given none."""
    states = [m for m in reading.mentions if m.says_state]
    states = [m for m in states if not _opens(m, reading, known)]
    groups = input_groups(reading, known, states)
    groups, against = set_against(reading.words, groups, known)
    named = any(m.names_result for m in reading.mentions)
    named = named or any(c in known.shows for m in reading.mentions for c in m.concepts)
    asks = asking(reading.words) if groups or named else frozenset()
    binder = Binder(reading, states, known, asks)
    found = only_left(reading, states, known)
    if not found and "both" in reading.words:
        from assistant.understanding.both import both_lost  # few questions start with it

        found, said_of_both = both_lost(reading.words, states, groups, known)
        if said_of_both:
            binder.used.add(said_of_both.start)
    said = {c.input for c in found}
    groups = [g for g in groups if said.isdisjoint(g.inputs)] if said else groups
    bare: list[Group] = []
    last: Bound | None = None
    for index, group in enumerate(groups):
        only = excepted(binder, group)
        if only:
            found.extend(only)
            last = None
            continue
        following = groups[index + 1].start if index + 1 < len(groups) else len(reading.words)
        bound = _bound(binder, group, groups[index - 1].end if index else 0, following, units, last)
        if bound is None or in_doubt(reading.words, group):
            bare.extend(() if group.aside else (group,))
            continue
        last = None if is_result(group.inputs[0]) else bound
        found.extend(bound.found)
        left = tuple(n for n in group.inputs if n not in {c.input for c in bound.found} and not is_result(n))
        if left and not group.aside:
            bare.append(group._replace(inputs=left))
    if losing or (asks_mode and not found and not implied(reading, known, found)):
        failed = [g for g in bare if not (_worked_with(reading, g) or in_doubt(reading.words, g))]
        found.extend(failing(failed, known, {c.input for c in found}))
    found.extend(alone(states, binder.used, known, found))
    found.extend(implied(reading, known, found))
    found = [] if all(_only_says_as_usual(c, known) for c in found) else found
    found.extend(labels_shown(reading, known, asks, found))
    found.extend(_results_named(reading, found))
    found.extend(contrasted(against, found, binder))
    if len({c.input for c in found}) < len(found):
        found = [c for c in found if not _named_apart(c, found, reading.words)]
    found = [c for c in found if not is_not_yet(c, reading.words, known.failures)]
    settled = _settled([_if_asked(c, reading, asks) for c in found])
    return Stated(tuple(settled), tuple(_left_bare(bare, settled, asks, known, reading.words)))


def _only_says_as_usual(condition: Condition, known: StateWords) -> bool:
    """Return whether a name only brings along that something that is chosen is as it normally is: "without the pin"."""
    name = condition.input
    chosen = not (is_result(name) or name in known.failures)
    return condition.implied and chosen and condition.value == known.normal(name)


def _named_apart(one: Condition, found: Sequence[Condition], words: Sequence[str]) -> bool:
    """Return whether a state only names a pause, or is left out of account, beside another of the same thing: "with
    fans, not counting the | fans-off | wait".
    """
    if not one.where or all(c.input != one.input or c.value == one.value for c in found):
        return False
    names = words[max(one.where) + 1 : max(one.where) + 2]
    return not _PAUSES.isdisjoint(names) or not left_out(list(words)).isdisjoint(one.where)


def _follows_verb(state: Mention, reading: Reading, known: StateWords) -> bool:
    """Return whether right before a word stands another that is neither a thing nor a state."""
    before = [m for m in reading.mentions if m.end == state.start]
    return bool(before) and not any(c in known.by_term or c[0] in "@=" for m in before for c in m.concepts | m.implied)


def _opens(state: Mention, reading: Reading, known: StateWords) -> bool:
    """Return whether a word only opens what is said, and says no state: "okay, both systems have failed", "how low
    can it get", "before I stop trusting it", "what | goes | in System 1".
    """
    if state.start and reading.words[state.start - 1] == "how":
        return True
    if state.text == "stop" and reading.words[state.end : state.end + 1] and reading.words[state.end].endswith("ing"):
        return True
    before = reading.words[max(0, state.start - 1) : state.start]
    if state.text == "out" and any(a.end == state.start for a in reading.amounts):
        return True  # "400 to 250, 20 out, fans": it is 20 outside
    if state.text == "up" and before and before[0] not in LINKS and _follows_verb(state, reading, known):
        return True  # "System 2 is playing up", "has seized up"
    if state.text in ("go", "goes") and reading.words[state.end : state.end + 1] in (("in",), ("into",)):
        return any(m.start == state.end + 1 and m.concepts & known.by_term.keys() for m in reading.mentions)
    return opens_turn(state, reading) or _does_what(state, reading.words)


def _does_what(state: Mention, words: Sequence[str]) -> bool:
    """Return whether a word for working is what a thing does to something else: "what does System 1 | run |"."""
    before = words[max(0, state.start - _CLAUSE) : state.start]
    helping = next((k for k in range(len(before) - 1, -1, -1) if before[k] in _DOES), -1)
    return state.text in _DOING and helping > 0 and not _WHAT.isdisjoint(before[:helping])


def opens_turn(state: Mention, reading: Reading) -> bool:
    """Return whether a word for being well only opens what is said: "ok, is the anti-skid alive", ", ok and now …"."""
    if state.text not in _OPENINGS or len(reading.words) <= state.end + 1:
        return False
    before = reading.words[max(0, state.start - 1) : state.start]
    after = reading.words[state.end]
    return before in ((), (".",), ("?",), ("!",)) or (before == (",",) and after in _OPENED)


def _if_asked(condition: Condition, reading: Reading, asks: frozenset[int]) -> Condition:
    """Mark a table's result that is asked about and not given."""
    if not is_result(condition.input) or not condition.where:
        return condition
    named = {c for m in reading.mentions for c in m.concepts if c.startswith(f"={condition.input}.")}
    at = min(condition.where)
    last = max(condition.where) + 1
    either = "or" in (*reading.words[max(0, at - 1) : at], *reading.words[last : last + 1])
    asked = len(named) > 1 or either or believed(reading.words) or doubted(reading.words, at, asks)
    asked = asked or said_by_somebody(reading.words, at)
    return condition._replace(asked=asked)


def _bound(
    binder: Binder, group: Group, earlier: int, following: int, units: Units, last: Bound | None
) -> Bound | None:
    """Return what is said of a group: by a word, by a number, by "with" alone, by the thing before it."""
    reading, known = binder.reading, binder.known
    if binder.has_neither(group):
        return Bound(group, tuple(failing([group], known, set())))
    bound = binder.bind(group, earlier, following)
    read = numbered(reading, group, following, known, units, binder.asking)
    if bound and not (read and (reads(reading, bound.end, min(read[0].where[:1])) or _apart(binder, bound, read))):
        return bound
    said = bound.state.taken if bound and bound.state else ()
    found = (
        [c._replace(where=(*c.where, *said)) for c in read]
        or _had(binder, group)
        or _elliptical(binder, group)
        or _goes_with(binder, group)
        or _in_use(reading, group, known)
        or shared(reading, group, last, binder.asking, known)
        or against_name(reading, group, binder.asking, known)
    )
    return Bound(group, tuple(found)) if found else None


def _goes_with(binder: Binder, group: Group) -> list[Condition]:
    """A thing that something else is asked to be lost with: "is anti-skid lost | with System 1?"."""
    before = group.start - 1
    while before > 0 and binder.words[before] in DETERMINERS:
        before -= 1
    said = (m for m in binder.states if m.end in (before, before - 1) and m.start in binder.asking)
    lost = any("@lost" in m.concepts for m in said)
    if not lost or binder.words[before] != "with" or not binder.known.failures.issuperset(group.inputs):
        return []
    return failing([group], binder.known, set())


def _apart(binder: Binder, bound: Bound, read: list[Condition]) -> bool:
    """Return whether a reading stands between a thing and a state word beyond a comma: "hyd 2 2,990, … dead"."""
    state, at = bound.state, read[0].where[0]
    if state is None or not bound.group.end <= at < state.start:
        return False
    apart = not {",", ";", "and"}.isdisjoint(binder.words[at : state.start])
    if apart:
        binder.used.discard(state.start)
    return apart


def _elliptical(binder: Binder, group: Group) -> list[Condition]:
    """A result that is said not to be there by "not" alone: "anti-skid works but autobrake does not"."""
    after = binder.words[group.end : group.end + 3]
    ends = len(after) == 2 or (len(after) == 3 and not after[2][0].isalnum())
    if group.start in binder.asking or not ends or after[1] != "not" or after[0] not in _SAYS:
        return []
    where = group.places
    return [Condition(name, "no", where=where) for name in group.inputs if is_result(name)]


def _had(binder: Binder, group: Group) -> list[Condition]:
    """Things said to be there or not: "we have neither the controller nor System 1", "we still have System 1"."""
    words = binder.words
    if group.start in binder.asking:
        return []
    before = group.start - 1
    while before >= 0 and words[before] in _HAVING:
        before -= 1
    had = {"have", "got", "keep", "kept", "retain", "retained"}.intersection(words[before + 1 : group.start])
    if binder.says_neither(group) or (had and before >= 0 and words[before] in ("not", "never", "no")):
        return failing([group], binder.known, set())
    ends = words[group.end : group.end + 1] in ((), (",",), (".",), (";",), ("and",), ("but",), ("?",), ("-",), (":",))
    ends = ends or group.end in binder.asking  # "… but I have both systems | what colour are the bars"
    likewise = before >= 0 and words[before] in ("so", "nor")
    if not had or likewise or not ends or not binder.known.failures.issuperset(group.inputs):
        return []
    where = group.places
    return [Condition(name, binder.known.normal(name), where=where) for name in group.inputs]


def _worked_with(reading: Reading, group: Group) -> bool:
    """Return whether a thing is what something is done on: "two applications made on the accumulator, how many …"."""
    before = [w for w in reading.words[max(0, group.start - 3) : group.start] if w not in DETERMINERS]
    return before[-1:] == ["on"]


def _left_bare(
    groups: Iterable[Group], found: Iterable[Condition], asks: frozenset[int], known: StateWords, words: Sequence[str]
) -> Iterable[Group]:
    """Yield the groups that can fail or were forgotten, that the telling part names, and of which nothing is known."""
    named = {c.input for c in found}
    for group in groups:
        told = group.start not in asks and not named.intersection(group.inputs)
        if told and (known.failures.intersection(group.inputs) or is_forgotten(words, group)):
            yield group


def in_doubt(words: Sequence[str], group: Group) -> bool:
    """Return whether somebody says not to know how it is with a thing: "I can't tell whether System 2 is alive"."""
    if ("not", "both") in pairwise(words[group.end : group.end + 4]):
        return True  # "they are not both lost" leaves open which
    if is_hedged(words[group.end : group.end + 4]):
        return True
    before = words[max(0, group.start - 4) : group.start]
    doubts = {word for word, following in pairwise(before) if following in ("whether", "if")}
    return not _KNOWING.isdisjoint(doubts)


def is_forgotten(words: Sequence[str], group: Group) -> bool:
    """Return whether a thing was forgotten, and it is not told to do what with it: "they forgot the bypass pin"."""
    return not _FORGOT.isdisjoint(words[max(0, group.start - 2) : group.start])


def _results_named(reading: Reading, found: list[Condition]) -> list[Condition]:
    """Results of tables that are named outright: "ALTERNATE braking"."""
    taken = {c.input for c in found}
    result = []
    for mention in reading.mentions:
        for concept in sorted(mention.concepts) if mention.names_result else ():
            if concept.startswith(RESULT):
                name, value = concept[1:].rsplit(".", 1)
                if name not in taken:
                    result.append(Condition(name, value, where=mention.taken))
    return result


def _in_use(reading: Reading, group: Group, known: StateWords) -> list[Condition]:
    """ "With the fans": a thing that is chosen, named without a state after "with", is in use."""
    before = [
        w
        for w in reading.words[max(0, group.start - 3) : group.start]
        if w not in DETERMINERS and w not in ("brake", "all", "a")
    ]
    if not before or before[-1] not in _WITH:
        return []
    results = [name for name in group.inputs if is_result(name)]
    where = group.places
    if results:
        return [Condition(name, "yes", where=where) for name in results]
    return [
        Condition(name, value, where=where)
        for name in group.inputs
        if name not in known.failures
        for value, groups, _ in known.values[name]
        if _USED.intersection(groups)
    ]


def _settled(found: list[Condition]) -> list[Condition]:
    """Return one condition for each thing: the one said last, as people correct themselves."""
    last = {c.input: c for c in found}
    return list(last.values())
