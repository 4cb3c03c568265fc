"""Which results of the state tables a question says are gone, and which are there, where it asks what leads to that.

"What takes the tillers but not the brakes", "why would I have brakes but no steering": in whatever order, and with
whatever words of emphasis, each thing that is named is either lost or kept. Every word must say so, name a thing, or
add nothing: a question of which any word is left over asks for something else.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence

from assistant.frozen import NamedTuple
from assistant.resolving.asks_whence import FAILING, asks_what_leads
from assistant.understanding.mentions import RESULT, Reading
from assistant.understanding.words import stem

LOST, KEPT = "lost", "kept"
_HAVING, _OPEN = "having", "open"
_NONE = frozenset(("no", "without", "zero", "neither", "none"))
_UNDER = _NONE | {"with"}
_CUES = {
    LOST: _NONE | {
        "nor", "minus", "lose", "loses", "losing", "loss", "lost", "costs", "cost", "kills", "kill", "takes", "take",
        "taking", "robs", "rob", "deprives", "deprive", "knocks", "knock", "wipes", "wipe", "disables", "disable",
        "defeats", "defeat", "removes", "remove", "denies", "deny", "stops", "stop", "prevents", "prevent", "destroys",
        "destroy", "cuts", "cut", "away",
    },
    KEPT: {
        "keep", "keeps", "keeping", "leaves", "leave", "leaving", "spares", "spare", "sparing", "retain", "retains",
        "retaining", "preserves", "still",
    },
    _HAVING: {"have", "has", "had", "having", "got", "get", "with", "gives", "give"},
}  # fmt: skip
"""Words before a thing; what one has is there, unless "no" follows: "have brakes", "have no brakes"."""
_AFTER = {
    LOST: {
        "out", "gone", "dead", "lost", "useless", "away", "fails", "fail", "nothing", "unavailable", "inoperative",
        "inop", "go", "goes", "dies", "loss",
    },
    KEPT: {
        "fine", "ok", "okay", "working", "works", "work", "intact", "untouched", "unaffected", "available",
        "good", "usable", "alive", "healthy", "there", "stay", "stays",
    },
}  # fmt: skip
"""Words after a thing that say what has become of it: "puts the tillers | out |", "has the tillers | working |"."""
_RESETS = frozenset({
    "before", "until", "for", "so", "that", "when", "?", ".", ";", ":", "-", "because", "though",
})  # fmt: skip
_OPENS = frozenset(("what", "whats", "which", "why", "how"))
_JOINED = frozenset(("but", "and", "or", ",", "while", "yet", "from", "with", "without", "no", "nor"))
"""Words at which ends what is told of a thing after it."""
_JOINING = _RESETS | {"but", "and", "or", ",", "while", "yet", "nor", "without", "with"}
_ADDING = frozenset({
    "i", "we", "you", "me", "us", "my", "our", "your", "the", "a", "an", "any", "at", "all", "of", "in", "to",
    "both", "together", "also", "as", "well", "too", "either", "every", "each", "one", "go", "once", "same", "time",
    "real", "really", "proper", "properly", "decent", "useful", "usable", "whatsoever", "actually", "absolutely",
    "completely", "entirely", "totally", "altogether", "possibly", "ever", "even", "just", "exactly", "worth", "it",
    "is", "are", "am", "being", "be", "been", "would", "could", "might", "can", "will", "may", "must", "should", "do",
    "does", "did", "needs", "need", "down", "s", "failure", "failures", "fault", "faults", "thing", "things",
    "combination", "combinations", "combo", "set", "sets", "single", "two", "three", "cause", "causes", "reason",
    "reasons", "smallest", "fewest", "least", "way", "ways", "else", "please", "now", "then", "name", "list", "this",
    "these", "those", "something", "anything", "sort", "kind", "sequence", "needed", "possible",
    "full", "whole", "some", "such", "left", "under", "alone", "caused", "er", "um", "uh", "erm",
    "somehow", "suddenly", "meaningful", "effective", "functional", "functioning", "serviceable", "genuine", "powered",
    "workable", "total", "complete", "doing", "puts", "put", "end", "ends", "finish", "wind", "land", "up", "come",
    "makes", "make", "not", "longer", "by", "itself", "own", "right", "gear", "means", "lead", "leads", "giving",
    "leading", "about",
})  # fmt: skip
"""Words that add nothing to what is lost or kept."""
_KNOWN = frozenset().union(*_CUES.values(), *_AFTER.values(), _RESETS, _OPENS, _JOINED, _ADDING, FAILING)
_DENYING = _NONE | {"or", "nor"}
_ANEW = frozenset((",", "but", "while", "yet"))
_SHORTLY = 2
_OF = frozenset(("for", "from", "by", "through", "via"))
_BARE = frozenset(("the", "my", "our", "any"))
_PURPOSE = "for"
_PREDICATE = frozenset({"do", "does", "is", "are", "at", "all", "of", "to", "use", _PURPOSE}).union(*_AFTER.values())
"""Words between a thing and what it is for: "the pedals | do nothing at all for | braking"."""


class Said(NamedTuple):
    """A thing that is said to be lost or kept; value: the one that is named outright ("NORMAL braking")."""

    table: str
    output: str
    polarity: str
    value: str = ""


class Called(NamedTuple):
    """What the state tables call their results: the (table, output) of each term, and the values of each output."""

    terms: Mapping[str, tuple[str, str]]
    normal: Mapping[tuple[str, str], str]
    lost: Mapping[tuple[str, str], str]
    names: frozenset[str]
    """The stems of the first words by which the terms are called."""
    first: frozenset[tuple[str, str]]
    """The first output of each table: "pedal braking" is of the brakes."""


class _Thing(NamedTuple):
    start: int
    end: int
    of: tuple[str, str]
    value: str
    places: frozenset[int]
    """Where its words stand: "the | pedals | do nothing for | braking |"."""


def things_said(
    reading: Reading, called: Called, given: frozenset[int], read: Callable[[str], Reading]
) -> list[Said]:
    """Return what a question says is lost and kept, where it asks what leads there, and nothing else.

    given: the places of words by which states are told. read: reads a word by itself.
    """
    words = reading.words
    things = _things(reading, called, given, read)
    named = frozenset().union(*(thing.places for thing in things))
    if not things or not asks_what_leads(words, frozenset(k for k in named if not _kind_of(words[k]))):
        return []
    if any(k not in named and k not in given and word not in _KNOWN for k, word in enumerate(words)):
        return []
    if any(t.value and t.value not in (called.normal[t.of], called.lost[t.of]) for t in things):
        return []
    found = list(_polarities(words, things, called, given))
    if not {LOST, KEPT}.issuperset(found):
        return []
    said = [
        Said(*t.of, polarity, t.value if t.value == called.normal[t.of] else "")
        for t, polarity in zip(things, found, strict=True)
    ]
    return [] if _contrary(said) else list(dict.fromkeys(said))


def _things(
    reading: Reading, called: Called, given: frozenset[int], read: Callable[[str], Reading]
) -> list[_Thing]:
    """Return the results that are named, in their order; "pedals for braking" and "pedal braking" are one thing."""
    found: list[_Thing] = []
    for thing in _named(reading, called, given, read):
        between = reading.words[found[-1].end : thing.start] if found else ()
        joins = [w for w in between if w not in _BARE]
        if thing.value or (found and found[-1].value):
            found.append(thing)
        elif found and (not joins or (len(joins) == 1 and joins[0] in _OF)):
            found[-1] = _as_one(found[-1], thing, called, thing.end)
        elif found and joins[-1] == _PURPOSE and _PREDICATE.issuperset(joins):
            found[-1] = _as_one(found[-1], thing, called, found[-1].end)
        else:
            found.append(thing)
    return found


def _named(
    reading: Reading, called: Called, given: frozenset[int], read: Callable[[str], Reading]
) -> Iterator[_Thing]:
    """Yield the results that mentions name, or that the words of a longer name do: "loses me the | autobrake |"."""
    for mention in reading.mentions:
        if mention.weak or not given.isdisjoint(mention.taken) or FAILING.issuperset(mention.text.split()):
            continue  # "what must break", which is also heard for "brake"
        thing = _thing(mention.start, mention.end, mention.concepts, called)
        if thing:
            yield thing
        elif mention.end - mention.start > 1:
            for k in (k for k in range(mention.start, mention.end) if stem(reading.words[k]) in called.names):
                inside = (_thing(k, k + 1, m.concepts, called) for m in read(reading.words[k]).mentions if not m.weak)
                yield from (one for one in inside if one)


def _thing(start: int, end: int, concepts: frozenset[str], called: Called) -> _Thing | None:
    places = frozenset(range(start, end))
    for concept in concepts:
        if concept.startswith(RESULT):
            place, value = concept[1:].rsplit(".", 1)
            table, output = place.split(".", 1)
            return _Thing(start, end, (table, output), value, places)
    named = {called.terms[c] for c in concepts if c in called.terms}
    return _Thing(start, end, named.pop(), "", places) if len(named) == 1 else None


def _as_one(first: _Thing, other: _Thing, called: Called, end: int) -> _Thing:
    """Return two things that are said as one: of two tables the one that is its table's first, of one the narrower."""
    main, part = (first, other) if first.of in called.first else (other, first)
    chosen = part if first.of[0] == other.of[0] else main
    return _Thing(first.start, end, chosen.of, chosen.value or first.value, first.places | other.places)


def _polarities(
    words: Sequence[str], things: Sequence[_Thing], called: Called, given: frozenset[int]
) -> Iterator[str]:
    """Yield for each thing whether it is lost or kept, or nothing where that is open."""
    before, last = 0, ""
    for i, thing in enumerate(things):
        end = things[i + 1].start if i + 1 < len(things) else len(words)
        begins = thing.start + (words[thing.start] in _NONE)
        told = _told_before([words[k] for k in range(before, begins) if k not in given], last)
        after = _told_after([words[k] for k in range(thing.end, end) if k not in given])
        between = words[before:begins]
        if after == KEPT and told == LOST and not _DENYING.isdisjoint(between):
            after = ""  # "no autobrake or anti-skid | available |"
        last = _agreed("" if after and _begins_anew(between, told) else told, after)
        if told != _OPEN and thing.value and thing.value == called.lost[thing.of]:
            last = LOST  # "no brakes", named as a whole
        yield last
        before = thing.end


def _begins_anew(between: Sequence[str], told: str) -> bool:
    """Return whether a thing has only words after it of its own: "steering dead, | brakes | fine"."""
    return not _ANEW.isdisjoint(between) and told != _OPEN and not _told_before(between, "")


def _agreed(told: str, after: str) -> str:
    """Return what the words before and after a thing say together: "leaves the brakes alone"."""
    if told == _OPEN or (after == KEPT and told == LOST):
        return _OPEN
    return after or (KEPT if told == _HAVING else told)


def _told_before(between: Sequence[str], last: str) -> str:
    """Return what the words since the thing before say of the next one: as of that one, if they only join."""
    told, denied, turned, asking, cued = last, False, False, False, False
    for k, word in enumerate(between):
        if word in _RESETS or word in _OPENS:
            told, denied, cued, asking = "", False, False, word in _OPENS
        elif word == "but":
            turned, denied, cued = True, False, False
        elif word == "not":
            denied = True
        elif not (asking and word in FAILING and _leads(between, k)) and (kind := _kind_of(word)):
            if word in _UNDER and told == LOST and (cued or _only_with(word, between[k + 1 :])):
                return _OPEN  # "stops me with no brakes", "why no autobrake without anti-skid"
            if kind == LOST and word not in _NONE and last == LOST == told and _JOINING.isdisjoint(between[: k + 1]):
                return _OPEN  # "why does losing anti-skid take | autobrake": what is lost takes another with it
            told = _turned(kind, told, denied or _is_without(between, k))
            cued, denied = True, False
    if denied or (turned and not cued):
        return {LOST: KEPT, KEPT: LOST, _HAVING: LOST}.get(told, "")  # "takes autobrake but not | anti-skid |"
    return told


def _only_with(word: str, rest: Sequence[str]) -> bool:
    """Return whether "without" says of what is lost under what it is, and does not say that something is kept."""
    return word == "without" and not any(w in _CUES[LOST] for w in rest[:_SHORTLY])


def _kind_of(word: str) -> str:
    return next((kind for kind in (LOST, KEPT, _HAVING) if word in _CUES[kind]), "")


def _turned(kind: str, told: str, denied: bool) -> str:
    """Return what one more word makes of what is told: "still | have |", "do not | have |", "without | losing |"."""
    if denied:
        return KEPT if kind == LOST else LOST
    return told if kind == _HAVING and told == KEPT else kind


def _is_without(between: Sequence[str], at: int) -> bool:
    """Return whether "without" stands shortly before a word for losing: "without losing", "without any loss of"."""
    return "without" in between[max(0, at - _SHORTLY) : at] and between[at] in _CUES[LOST] - _NONE


def _leads(between: Sequence[str], at: int) -> bool:
    """Return whether a word for failing is of what leads there, and not of the thing: "has to | fail | before …"."""
    rest = between[at + 1 :]
    taking = between[at] in _CUES[LOST] and not any(w in _RESETS or w in FAILING or w in _NONE for w in rest)
    return not taking


def _told_after(following: Sequence[str]) -> str:
    """Return what the words after a thing say has become of it, up to the next clause."""
    denied = False
    for word in following:
        if word in _RESETS or word in _OPENS or word in _JOINED:
            return ""
        denied = denied or word == "not"
        for kind, other in ((LOST, KEPT), (KEPT, LOST)):
            if word in _AFTER[kind]:
                return other if denied else kind
    return LOST if denied else ""


def _contrary(said: Sequence[Said]) -> bool:
    """Return whether one thing is said to be both lost and kept."""
    lost = {(s.table, s.output) for s in said if s.polarity == LOST}
    return any((s.table, s.output) in lost for s in said if s.polarity == KEPT)
