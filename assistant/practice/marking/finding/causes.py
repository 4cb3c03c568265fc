"""Which ways to a result an answer names: "System 1 lost and the accumulator empty" is one, and takes both.

A way is a smallest set of failures. It is said when all its members are said together; members said as choices
("one or the other"), what does not lead there, and a member said to be normal contradict. What two words join is
heard as "and", "or" or a mere comma, and shared members are given to each choice: "System 1 lost, and either ...".
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

from assistant.frozen import NamedTuple
from assistant.practice.marking.finding.told import Member, Told, Way, told_of
from assistant.practice.marking.reading.said import Said
from assistant.practice.marking.reading.wording import word_set
from assistant.resolving import tables
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import CauseResult

AND, OR, COMMA = "and", "or", ","
_HARD = (".", ";", "?", "!")
_OR = frozenset(("or", "alternatively", "otherwise"))
_LISTING = re.compile(r"\b(?:either|(?:one|any)(?: one)? of)\b")
_AND = re.compile(r"\b(?:and|with|plus|together|while|when|as well|also|along|both|&|\+)(?: |$)")
_ALONE = re.compile(r"\b(?:alone|by itself|on its own|any single|is enough|suffices|at least one)\b")
_ASKS_ONE = re.compile(
    r"\b(?:(?:name|give|tell me|say|mention) (?:just |only )?(?:one|a|an)\b|"
    r"(?:one|a|any) (?:way|cause|reason|example)\b|"
    r"(?:which|what) single (?:failure|fault|thing|event)\b|for example|for instance|how could (?:you|we|i)\b|"
    r"how can (?:you|we|i)\b)"
)
"""What asks for one way of several."""


class Judged(NamedTuple):
    """How the ways to a result stand in an answer: the share of each that was said, and what contradicts."""

    shares: tuple[float, ...]
    places: tuple[tuple[int, ...], ...]
    wrong: tuple[str, ...]


class _Segment(NamedTuple):
    told: tuple[Told, ...]
    joints: tuple[str, ...]
    """How each member is joined to the next one."""
    alone: bool

    @property
    def chosen(self) -> bool:
        return OR in self.joints


def asks_one(text: str) -> bool:
    """Return whether a question asks for one way, where there may be several."""
    return _ASKS_ONE.search(text.lower()) is not None


def judge_ways(result: CauseResult, ways: Sequence[Way], said: Said, know: Knowledge) -> Judged:
    """Return which ways to a result an answer says."""
    if _said_back(result, said, know):
        return Judged((0.0,) * len(ways), ((),) * len(ways), ())
    segments = [_segment(words, result, ways, know) for words in _segments(said)]
    found: set[Way] = set()
    wrong: list[str] = []
    for segment in segments:
        complete = {way for way in ways if way in _said_together(segment)}
        complete |= {way for way in ways if way in _by_result(segment, result, ways, know)}
        found |= complete
        wrong += _contradictions(segment, ways, bool(complete), result, know)
    members = frozenset(each.member for segment in segments for each in segment.told if not each.normal)
    shares = tuple(1.0 if way in found else 0.5 * len(way & members) / len(way) for way in ways)
    places = tuple(tuple(range(len(said.words)))[:1] if share else () for share in shares)
    return Judged(shares, places, tuple(dict.fromkeys(wrong)))


def _said_back(result: CauseResult, said: Said, know: Knowledge) -> bool:
    """Return whether an answer is only the lack of which the cause is asked for: "anti-skid is lost"."""
    output = next(each for each in result.table.outputs if each.id == result.output)
    says = know.phrase(next((says for value, says, _ in output.values if value == result.value), ""))
    if says.words[:1] != ("no",):
        return False
    told = [(i, m) for m in said.content for i in m.taken]
    named = {i for i, m in told if m.concepts & says.concepts and m.text not in _BACK}
    rest = [w for i, w in enumerate(said.reading.words) if i not in named and w[0].isalnum()]
    return bool(named) and _BACK.issuperset(rest)


_BACK = word_set(
    "a all any are be been by failed gone got has have is it lose loses losing lost no not s the there working"
)
"""Words that with the name of a thing say no more than that it is not there."""


def _segments(said: Said) -> Iterator[list[str]]:
    """Yield the words of an answer, each sentence by itself."""
    words: list[str] = []
    for word in said.reading.words:
        if word in _HARD:
            yield words
            words = []
        else:
            words.append(word)
    yield words


def _segment(words: list[str], result: CauseResult, ways: Sequence[Way], know: Knowledge) -> _Segment:
    told: list[Told] = []
    offset = 0
    for piece in _pieces(words):
        told += (each._replace(place=each.place + offset) for each in told_of(piece, result, ways, know))
        offset += len(piece)
    told.sort(key=lambda each: each.place)
    listing = False
    joints = []
    for one, other in pairwise(told):
        joint, listing = _joint(words[one.place : other.place], listing)
        joints.append(joint)
    listed = _LISTING.search(" ".join(words[: told[0].place])) if told else None
    if listed and OR not in joints:
        joints = [OR if joint == COMMA else joint for joint in joints]
    return _Segment(tuple(told), tuple(joints), _ALONE.search(" ".join(words)) is not None)


def _pieces(words: list[str]) -> Iterator[list[str]]:
    """Yield the words cut before each "or", so that one thing may be said in each of its choices."""
    start = 0
    for i, word in enumerate(words):
        if word in _OR and i > start:
            yield words[start:i]
            start = i
    yield words[start:]


def _joint(between: Sequence[str], listing: bool) -> tuple[str, bool]:
    """Return how words join two members, and whether a list of choices has begun."""
    text = " ".join(between)
    if _LISTING.search(text):
        return AND, True
    if _OR.intersection(between):
        return OR, listing
    if listing:
        return OR, True
    return (AND if _AND.search(text) or "," not in between else COMMA), False


def _said_together(segment: _Segment) -> set[Way]:
    """Return the sets that a sentence says together: in a row, or one choice with what all choices share."""
    told, joints = [each.member for each in segment.told], segment.joints
    inner = (AND,) if segment.chosen else (AND, COMMA)
    found = {frozenset((each.member,)) for each in segment.told if not each.normal}
    for start in range(len(told)):
        for end in range(start + 1, len(told)):
            if any(joint not in inner for joint in joints[start:end]):
                break
            found.add(frozenset(told[start : end + 1]))
    return found | set(_shared(told, joints))


def _shared(told: Sequence[Member], joints: Sequence[str]) -> Iterator[Way]:
    """Yield each of some choices with the members that stand before or after them: "A, and either B or C"."""
    i = 0
    while i < len(joints):
        if joints[i] == AND:
            i += 1
            continue
        end = i
        while end < len(joints) and joints[end] != AND:
            end += 1
        if OR in joints[i:end]:
            before, after = _row(told, joints, i, -1), _row(told, joints, end, 1)
            for choice in told[i : end + 1]:
                yield frozenset((*before, choice))
                yield frozenset((choice, *after))
                yield frozenset((*before, choice, *after))
        i = end


def _row(told: Sequence[Member], joints: Sequence[str], place: int, step: int) -> list[Member]:
    """Return the members that "and" joins to one, on one side of it."""
    found = []
    allowed: tuple[str, ...] = (AND,)
    while 0 <= (joint := place - 1 if step < 0 else place) < len(joints) and joints[joint] in allowed:
        place += step
        allowed = (AND, COMMA)
        found.append(told[place])
    return found


def _by_result(segment: _Segment, result: CauseResult, ways: Iterable[Way], know: Knowledge) -> set[Way]:
    """Return the ways that another result stands for: "in EMERGENCY" is both systems lost."""
    found: set[Way] = set()
    for each in segment.told:
        if "." in each.member[0] and _leads(each.member, result, know):
            table, output = each.member[0].split(".", 1)
            sets = tables.minimal_sets(know.base.records[table], output, each.member[1], know.base)
            named = {frozenset(chosen) for chosen in sets}
            found |= named if named != set(ways) else set()  # what follows, said back
    return found.intersection(ways)


def _leads(named: Member, result: CauseResult, know: Knowledge) -> bool:
    """Return whether a result comes with another one of the same table, whatever else holds."""
    table, output = named[0].split(".", 1)
    if table != result.table.id:
        return False
    values = tables.results_with(result.table, {}, {output: named[1]}, result.output, know.base)
    wanted = result.value
    return bool(values) and all(v != wanted[1:] if wanted.startswith("!") else v == wanted for v in values)


def _contradictions(
    segment: _Segment, ways: Sequence[Way], complete: bool, result: CauseResult, know: Knowledge
) -> Iterator[str]:
    members = frozenset(member for way in ways for member in way)
    inputs = {name for name, _ in members}
    given = {c.input for c in result.given}
    for each in segment.told:
        name = each.member[0]
        if "." in name:
            if not each.normal and not _leads(each.member, result, know) and not complete:
                yield _words(each.member, know)
        elif each.normal:
            if name in inputs and not complete:
                yield _words(each.member, know)
        elif each.member not in members and name not in given:
            yield _words(each.member, know)
    told = [each.member for each in segment.told if each.member in members]
    if told and not complete and (segment.chosen or segment.alone):
        yield " or ".join(_words(member, know) for member in told) + ": not enough alone"


def _words(member: Member, know: Knowledge) -> str:
    name, value = member
    if "." in name:
        table, output = name.split(".", 1)
        item = next(each for each in know.base.records[table].outputs if each.id == output)
        return next((says for v, says, _ in item.values if v == value), value)
    return next((says for v, says, _ in know.base.inputs[name].values if v == value), value)
