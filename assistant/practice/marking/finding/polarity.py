"""Which words are said to be so and which are denied: "not amber", "anything but amber", "down but not locked".

A negation reaches from its word to the end of its clause. The same is read in the points of the knowledge, so that an
answer contradicts where a thing is denied that holds, and where a thing is affirmed that does not: "can be silenced".
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from assistant.practice.marking.finding.found import Held, element_said
from assistant.practice.marking.points import Element, Need, Point
from assistant.practice.marking.reading.contraries import OTHER
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.wording import CONTRASTS, LOST, STOPS, word_set
from assistant.understanding.mentions import Reading

_DENYING = word_set("""
    cannot isnt never neither no nobody none nor not nothing nowhere without
    disregards disregarding excludes excluding exclude ignore ignores ignoring omits omitting
""")
_ALONE = frozenset(("nobody", "none", "nothing"))
"""What stands for a thing itself, and denies only what is said of it next: "nothing steers"."""
_PHRASES = (
    ("leave", "out"), ("leaves", "out"), ("leaving", "out"), ("anything", "but"), ("everything", "but"),
    ("far", "from"), ("fails", "to"), ("other", "than"),
)  # fmt: skip
_DETERMINING = frozenset(("no", "without"))
"""What denies the one thing that follows."""
_HARD = STOPS - {"-", "–", "—"}
_ENDS = CONTRASTS | word_set(
    "above after and as because before below but by else except for i if it once only otherwise since so then there "
    "they till unless until we when where which who with within you"
)  # fmt: skip
"""Words at which a negation ends, but for one that stands directly behind it: "not behind the lever"."""
_BOUNDING = word_set(
    "above before below beyond exceed exceeding fewer further higher later less longer lower more only over past "
    "sooner such to under until"
)
"""Words with which a negation only bounds, or strengthens: "not above", "no later than", "not only"."""
HINDERING = word_set("avoid avoids just keep keeps only prevent prevents protect protects stop stopping stops")
"""Words that say in another way that a thing does not come about."""
_VERBS = word_set("am are can could did do does had has have is may must should was were will would")
"""Words before a "not" that belongs to no name; in a name it denies no more than the rest of that."""
_MUST_NOT = re.compile(r"\b(?:must|may|should|can|do|does|will)(?: \w+)? not\b|\b(?:cannot|never)\b")
_TELLING = 0.7
_FAINT = 0.3
_MOST = 0.6
"""Share of what a statement denies that an answer must say for it to be meant."""


def denied(words: Sequence[str], reading: Reading, answers: bool = False) -> frozenset[int]:
    """Return the places of words that a negation reaches. answers: whether a "no" that leads is a verdict."""
    names = {
        i: m.end for m in reading.mentions for i in m.taken
        if i > m.start and words[i] == "not" and words[i - 1] not in _VERBS
    }  # fmt: skip
    found: set[int] = set()
    for start, first in _negations(words, answers):
        end = names.get(start, len(words))
        cased = "if" in words[max(0, start - _CASE) : start]
        if cased and words[start] in _PRONOUNS:
            continue  # "if there's still nothing parking brake lever", said without the stop
        if words[start] in _DETERMINING or cased:
            end = min(
                (m.end for m in reading.mentions if m.start >= start and m.end > first and not m.weak), default=end
            )
        for i in range(first, end):
            if (
                words[i] in _HARD
                or (words[i] in _ENDS and (i > first or words[i] in _PERSONS))
                or (words[start] in _ALONE and words[i] in _ITSELF)
                or (i > first and words[i] in (_ACTING if cased else _CALLING))
                or (i == first + 1 and words[i] in _MENDING and words[first] in _JUDGED)
            ):
                break
            found ^= {i}
        found -= _of_next(start, first, end, words, reading)
    return frozenset(found)


def _of_next(start: int, first: int, end: int, words: Sequence[str], reading: Reading) -> set[int]:
    """Return the places of another clause, said without the stop: "pedals do not steer the nose wheels are centred"."""
    if words[start] != "not" or words[start - 1 : start] == () or words[start - 1] not in _VERBS:
        return set()
    verb = next((i for i in range(first + 2, end) if words[i] in ("is", "are")), end)
    if verb == end or any(words[i] in _HARD or words[i] in _ENDS or words[i] in _LINKS for i in range(first, verb)):
        return set()
    subject = max((m.start for m in reading.mentions if m.end == verb and m.start > first), default=end)
    begin = subject - 1 if words[subject - 1 : subject] == ("the",) else subject
    return set(range(begin, end)) if begin > first else set()


_LINKS = frozenset(("or", "that", "which", "who", "what", "how", "whether", "because"))
"""Words behind which a verb belongs to what is denied."""


_ACTING = word_set("call continue keep land leave pull put retract return select slow stop switch taxi use")
"""Verbs with which what is done in a case begins, said without the stop: "if it won't go leave the gear down"."""
_CASE = 4  # words before a negation among which an "if" makes a case of it: "if it still won't"
_PRONOUNS = frozenset(("nothing", "none"))
_CALLING = frozenset(("use", "leave"))
"""Verbs with which what is done begins, said without the stop: "not to be relied on use chocks"."""
_JUDGED = word_set("acceptable airworthy allowed enough fine good legal ok okay permitted safe serviceable within")
_MENDING = word_set("call change fill fit inflate inspect pump re-inflate reinflate replace return swap top write")
"""Verbs with which what is to be done begins, said without the stop behind a verdict: "not acceptable change it"."""
_ITSELF = frozenset(("it", "the", "they"))
"""Words with which another clause begins behind a "nothing", said without the stop."""
_PERSONS = frozenset(("i", "they", "we", "you"))
"""Words with which a new clause begins: "it isn't, you need full", said without the stop."""


def _bounds(place: int, words: Sequence[str]) -> bool:
    """Return whether a negation only bounds: "not above", but not "not to be relied on"."""
    return words[place + 1 : place + 2] != () and words[place + 1] in _BOUNDING and (
        words[place + 1 : place + 3] != ("to", "be")
    )  # fmt: skip


def _negations(words: Sequence[str], answers: bool) -> Iterator[tuple[int, int]]:
    """Yield where each negation stands and where it begins to deny."""
    for i, word in enumerate(words):
        following = words[i + 1] if i + 1 < len(words) else "."
        if (word, following) in _PHRASES:
            yield i, i + 2
        elif word not in _DENYING or (word == "no" and following in STOPS) or _bounds(i, words):
            continue
        elif following in ("and", "but"):
            continue  # it denies what stands before it: "no you can't and it is replaced", "autobrake no and amber"
        elif not (word == "no" and i == 0 and answers):
            yield i, i + 1


def subjects_denied(words: Sequence[str], reading: Reading) -> frozenset[int]:
    """Return the places of the things of which a predicate is denied: "drag and spoilers do not count"."""
    starts = {m.end: m for m in reading.mentions if not m.weak}
    found: set[int] = set()
    for i in range(1, len(words)):
        if words[i] != "not" or words[i - 1] not in _VERBS:
            continue
        end, joined = i - 1, True
        while joined and end in starts:
            if end < i - 1 and any(c[0] == "=" for c in starts[end].concepts):
                break  # a result that is told before: "they castor and the pedals do not"
            found.update(starts[end].taken)
            end = starts[end].start
            listed = end < i - 1 and "and" in words[end:i]
            joined = False
            while end > 0 and (words[end - 1] in _JOINING or (listed and words[end - 1] == ",")):
                joined = joined or words[end - 1] != "the"
                end -= 1
    return frozenset(found)


_JOINING = frozenset(("and", "or", "the"))


def contradicted(held: Sequence[Held], need: Need, said: Said, put_off: frozenset[int]) -> list[str]:
    """Return the points whose telling words are denied where they hold, or affirmed where they do not."""
    subjects = subjects_denied(said.reading.words, said.reading)
    asked_so = _MUST_NOT.search(" ".join(need.question.words)) is not None
    found = []
    for one in held:
        point = one.point
        if point.state or point.verdict or point.way or point.figures_suffice:
            continue
        if point.elements and _overcome(point, said):
            found.append(f"the other way round: {point.text}")
        heaviest = max((e.weight for e in point.elements if not e.given), default=0.0)
        lacking = () if asked_so else tuple(e for e in point.elements if e.denied)
        found += [f"not so: {point.text}" for e in lacking if _there_is(e, said) or _can_be(e, point, said)]
        if need.question.has("why") and both_lacking(point, said, put_off):
            continue
        for element in point.elements:
            least = _FAINT if element.off else _TELLING if point.negated else min(_TELLING, heaviest)
            asked = element.given and not (element.off and point.optional)
            if asked or element.denied or element.weight < least:
                continue
            spots = element_said(element, said)[1]
            if point.figures or element.weight < heaviest:
                spots = [i for i in spots if _is_it(element, i, said)]
            if element.off:
                affirmed = _affirmed(spots, point, said, asked_so)
                turned_round = affirmed or _contrary_denied(element, said, put_off)
            else:
                turned_round = bool(spots) and (put_off.issuperset(spots) or _word_denied(element, said, put_off))
                alone = not point.negated and sum(not e.given for e in point.elements) == 1
                turned_round = turned_round or (bool(spots) and alone and subjects.issuperset(spots))
                turned_round = turned_round and not (_denies_as_well(point, spots, said) or _hindered(element, point))
            if turned_round:
                found.append(f"{'not so' if element.off else 'denied'}: {point.text}")
    return found


def both_lacking(point: Point, said: Said, put_off: frozenset[int]) -> bool:
    """Return whether a cause and what comes of it are both denied, which says it too: "no oxygen, no explosion"."""
    own = [e for e in point.elements if e.weight >= _FAINT and not (e.given or e.off or e.denied)]
    told = [at for e in own if (at := element_said(e, said)[1])]
    twice = len(told) > 1 and len(list(_negations(said.reading.words, False))) > 1
    return twice and sum(put_off.issuperset(at) for at in told) > 1


def _denies_as_well(point: Point, spots: Sequence[int], said: Said) -> bool:
    """Return whether a denial is the point's own, said without what it denies: "not with flaps at landing"."""
    lacking = [i for e in point.elements if e.denied for i in element_said(e, said)[1]]
    if {said.clauses[i] for i in lacking}.intersection(said.clauses[i] for i in spots):
        return True  # what is lacking is denied there, and the rest of its clause with it
    off = [e for e in point.elements if e.off and e.weight > _FAINT]
    here = {said.clauses[i] for i in spots}
    told = {said.clauses[i] for e in off for i in element_said(e, said)[1]}
    return point.negated and bool(off) and here.isdisjoint(told)


def _hindered(element: Element, point: Point) -> bool:
    """Return whether a point says that something is prevented, so that it is denied rightly: "it does not burst"."""
    return _prevents(point) and not element.off and plain(point.text.split()[0].lower()) not in element.words


def _prevents(point: Point) -> bool:
    return point.text.split()[:1] != [] and point.text.split()[0].lower() in _PREVENTING


_PREVENTING = frozenset(("prevents", "prevent", "avoids", "avoid", "stops"))


def prevented(point: Point, said: Said) -> tuple[int, ...]:
    """Return where what a point says to be prevented is said not to come about: "it does not burst"."""
    if not _prevents(point):
        return ()
    told = [e for e in point.elements if not e.given and plain(point.text.split()[0].lower()) not in e.words]
    put_off = denied(said.reading.words, said.reading)
    spots = [element_said(e, said)[1] for e in told]
    return tuple(i for each in spots for i in each) if spots and all(s and put_off.issuperset(s) for s in spots) else ()


def _overcome(point: Point, said: Said) -> bool:
    """Return whether a thing that prevails is said to be prevailed over: "the other one wins over it"."""
    words = said.reading.words
    if not {"prevail", "prevails"} & set(words) or "over" in point.text.split() or "over" not in words:
        return False
    own = {w for e in point.elements for w in e.words if not w.startswith("prevail")}
    at = [i for i, word in enumerate(said.words) if word in own]
    return bool(at) and all("over" in words[max(0, i - 2) : i] for i in at)


def _word_denied(element: Element, said: Said, places: frozenset[int]) -> bool:
    """Return whether one word of a state is denied though another is not: "down but not locked"."""
    spots = {w: [i for i, s in enumerate(said.words) if s == w] for w in element.words if w in OTHER}
    return any(at and places.issuperset(at) for at in spots.values())


def _contrary_denied(element: Element, said: Said, places: frozenset[int]) -> bool:
    """Return whether the contrary is denied of what is itself denied: "not open" of what is not closed."""
    contraries = {o for w in element.words for o in OTHER.get(w, ())}
    at = [i for i, word in enumerate(said.words) if word in contraries]
    return bool(at) and places.issuperset(at) and not set(element.words) & contraries & set(said.words)


def _is_it(element: Element, place: int, said: Said) -> bool:
    """Return whether a place holds the thing itself, and not only a word for a like state of another."""
    shared = element.concepts & (said.concepts[place] | said.inner[place])
    return said.words[place] in element.words or any(c[0] != "@" for c in shared)


def affirmed_falsely(need: Need, said: Said) -> list[str]:
    """Return what another statement on the subject denies and an answer says: "so the brakes are working"."""
    found = []
    named = need.question.concepts
    asked = {c for c in named if c[0] != "~"}
    for point in need.denials:
        subject = [e for e in point.elements if not e.off and e.weight > _TELLING]
        if not all(e.concepts & named or element_said(e, said)[0] for e in subject):
            continue
        off = [e for e in point.elements if e.off and e.weight > _FAINT and not e.concepts & asked]
        told = [e for e in off if _stands(e, point, said)]
        if len(told) > 1 and sum(e.weight for e in told) >= _MOST * sum(e.weight for e in off):
            found.append(f"not so: {point.text}")
    return found


def _stands(element: Element, point: Point, said: Said) -> bool:
    spots = [i for i in element_said(element, said)[1] if _is_it(element, i, said)]
    return _affirmed(spots, point, said, False)


def _there_is(element: Element, said: Said) -> bool:
    """Return whether what is lacking is said to be there, word for word: "if all green" for "if not all green"."""
    own = [w for w in element.words if w not in _DENYING]
    if len(own) < 2:
        return False
    kept = [i for i, word in enumerate(said.reading.words) if word not in _VERBS and word != "be"]
    rows = [kept[k : k + len(own)] for k in range(len(kept) - len(own) + 1)]
    at = [row[0] for row in rows if [said.words[i] for i in row] == own]
    return bool(at) and said.beside(at).isdisjoint(_DENYING | LOST | {"unless", "until", "otherwise"})


def _can_be(element: Element, point: Point, said: Said) -> bool:
    """Return whether what is lacking is said to be possible where it is not: "you can retract it in flight"."""
    spots = [i for i, w in enumerate(said.words) if any(_alike(w, own) for own in element.words if own not in _DENYING)]
    others = [e for e in point.elements if e is not element and e.weight > _TELLING]
    here = {said.clauses[i] for i in spots}
    told = others and all(here.intersection(said.clauses[i] for i in element_said(e, said)[1]) for e in others)
    words = said.beside(spots)
    return bool(told) and not _POSSIBLE.isdisjoint(words) and words.isdisjoint(_DENYING | HINDERING | LOST)


_POSSIBLE = frozenset(("can", "may", "possible", "could"))
_LONG = 5


def _alike(one: str, other: str) -> bool:
    return one == other or (min(len(one), len(other)) > _LONG and one[:_LONG] == other[:_LONG])


def _affirmed(spots: Sequence[int], point: Point, said: Said, asked_so: bool) -> bool:
    """Return whether what does not hold is said to hold: in clauses that neither deny nor hinder anything."""
    others = {i for e in point.elements if not e.off for i in element_said(e, said)[1]}
    words = said.beside(spots)
    return bool(spots) and not asked_so and others.isdisjoint(spots) and words.isdisjoint(_DENYING | HINDERING | LOST)
