"""What an answer has in the place of a point's own measure, time, way or thing.

The whole of a part, another next time, the other of two ways that the question offers, what a drill for another state
does, what comes at once and not after its time, what stays where it turns into something else.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from assistant.knowledge.records import Source
from assistant.practice.marking.finding.found import Held, element_said
from assistant.practice.marking.finding.polarity import denied
from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.contraries import OTHER
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.wording import NEGATORS, STOPS, word_set
from assistant.resolving.knowing import Knowledge

_TELLING = 0.7


def of_another_kind(held: Sequence[Held], need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return what an answer says in the place of a part, a time, a way or an end that it is asked for."""
    off = denied(said.reading.words, said.reading, need.polar)
    return [
        *_whole_of_part(need, said, off),
        *_other_next(held, said),
        *_other_way(need, said, off),
        *_of_other_drill(need, said, off, know),
        *_at_once(held, said, off),
        *_other_object(need, said, off),
        *_stays(need, said, off),
        *_comes_about(need, said, off, know),
        *_foreign_item(need, said, off, know),
        *_running(need, said, off),
    ]


def _whole_of_part(need: Need, said: Said, off: frozenset[int]) -> Iterator[str]:
    """Yield a word for the whole said of what a point has only a part of: "pull it completely", of a first quarter."""
    for point in (p for p in need.points if _PART.search(p.text)):
        things = [e for e in point.elements if e.weight > _TELLING and not e.given]
        if not {plain(part) for part in _PART.findall(point.text)}.isdisjoint(said.words):
            continue
        near = {said.clauses[i] for e in things for i in element_said(e, said)[1]}
        for i, word in enumerate(said.reading.words):
            if word in _WHOLLY and i not in off and said.clauses[i] in near:
                yield word


_PART = re.compile(r"\bfirst (quarter|half|third)\b")
_WHOLLY = frozenset(("completely", "fully", "entirely"))


def _other_next(held: Sequence[Held], said: Said) -> Iterator[str]:
    """Yield another next time than the one before which something is done: "at the next check", of a next flight."""
    words = said.reading.words
    for h in (each for each in held if each.share and not each.point.figures):
        own = _NEXT.search(h.point.text)
        fellows = _OF_FLIGHT if own and own[1] in _OF_FLIGHT else {own[1]} if own else set()
        clauses = {said.clauses[i] for i in h.places}
        for i, word in enumerate(words):
            after = words[i + 1 : i + 4]
            if own and word == "next" and said.clauses[i] in clauses and after and fellows.isdisjoint(after):
                yield " ".join(words[i : i + 3])


_NEXT = re.compile(r"\bbefore (?:its|the|their) next (\w+)")
_OF_FLIGHT = word_set("flight flights sector leg departure departs takeoff take-off flies fly flown trip time")


def _other_way(need: Need, said: Said, off: frozenset[int]) -> Iterator[str]:
    """Yield the one of two ways which a question offers, where a point is the other one: "reject", of continue."""
    found = _OFFERED.search(need.question.text)
    if not found:
        return
    ways = plain(found[1].lower()), plain(found[2].lower())
    told = {plain(w) for p in need.points for w in re.findall(r"[\w-]+", p.text.lower())}
    for one, other in (ways, ways[::-1]):
        spots = [i for i, word in enumerate(said.words) if word == other and i not in off]
        if one in told and other not in told and spots and one not in said.words:
            yield said.reading.words[spots[0]]


_OFFERED = re.compile(r"(?:^|[.?!:;,]\s+)(?:do you |you )?(\w+) or (\w+)\b", re.IGNORECASE)


def _of_other_drill(need: Need, said: Said, off: frozenset[int], know: Knowledge) -> Iterator[str]:
    """Yield what an answer does that a drill of the same paragraph does in another state: "fans on", in flight."""
    if not need.ordered:
        return
    cited = {(c.document, c.paragraph) for c in need.sources}
    drills = [know.base.records[name] for name in know.base.ids("procedures")]
    near = [d for d in drills if cited.intersection((s.document, s.paragraph) for s in d.sources)]
    steps = {p.text for p in need.points}
    if not any(steps.intersection(s.do for s in d.steps) for d in near):
        return
    for drill in (d for d in near if steps.isdisjoint(s.do for s in d.steps)):
        for step in drill.steps:
            things = [m for m in know.phrase(step.do).mentions if not m.weak and m.concepts.isdisjoint(need.known)]
            named = [m for m in said.content if any(m.concepts & t.concepts for t in things)]
            if things and named and off.isdisjoint(i for m in named for i in m.taken):
                yield named[0].text


def _at_once(held: Sequence[Held], said: Said, off: frozenset[int]) -> Iterator[str]:
    """Yield "at once" of what comes after a time: "the plug peaks at once and the probe 15 minutes later"."""
    soon = [i for i, word in enumerate(said.words) if word == plain("immediately") and i not in off]
    for h in (each for each in held if each.share and any(f.unit in _TIMES for f in each.point.figures)):
        things = [e for e in h.point.elements if e.weight > _HEAVY and not e.given]
        at = {i for e in things for i in element_said(e, said)[1]}
        if any(0 < s - i <= _NEAR for s in soon for i in at):
            yield f"at once: {h.point.text}"


_TIMES = ("s", "min", "h")
_HEAVY = 2.9
_NEAR = 3


def _other_object(need: Need, said: Said, off: frozenset[int]) -> Iterator[str]:
    """Yield another thing than the one that is taken out, shut off or left on: "it takes the tiller out"."""
    told = [m.groups() for p in need.points for m in _OBJECT.finditer(p.text.lower())]
    for verb, thing, way in (m.groups() for m in _OBJECT.finditer(" ".join(said.reading.words))):
        alike = [own for own in told if (plain(own[0]), own[2]) == (plain(verb), way)]
        others = OTHER.get(plain(thing), frozenset())
        if alike and any(plain(own[1]) in others for own in alike):
            yield f"{verb} {thing} {way}"


_OBJECT = re.compile(
    r"\b(takes?|cuts?|shuts?|switche?s?|turns?|leaves?|lets?|keeps?) (?:the |a |your )?([a-z]+) "
    r"(out|off|on|away|free)\b"
)


def _stays(need: Need, said: Said, off: frozenset[int]) -> Iterator[str]:
    """Yield that something stays as it is, where it is asked into what it turns: "it stays in the gas"."""
    if not _TURNS.search(need.question.text) or _STAYS.search(need.expected.lower()):
        return
    for i, word in enumerate(said.reading.words):
        if word in _STAYING and i not in off and NEGATORS.isdisjoint(said.reading.words[max(0, i - 3) : i]):
            yield word


_TURNS = re.compile(
    r"\binto what\b|\bwhat (?:becomes of|happens to|does .* become)\b(?=.*\b(?:energy|heat|motion|pressure)\b)|"
    r"\bwhere does (?:the|all the) .*\b(?:energy|heat)\b.* go\b|\bturn(?:s|ed)? into\b",
    re.IGNORECASE,
)
_STAYING = word_set("stays stay remains remain stored kept")
_STAYS = re.compile(r"\b(?:stay|remain|stor|kept)")


def _comes_about(need: Need, said: Said, off: frozenset[int], know: Knowledge) -> Iterator[str]:
    """Yield what comes about in an answer, though the statements cited tell that it does not: "the tyre bursts"."""
    for word in (each for each in _kept_off(need, know) if plain(each) not in need.asked):
        for i in (i for i, own in enumerate(said.words) if own == plain(word) and i not in off):
            near = {said.reading.words[k] for k in range(len(said.words)) if said.clauses[k] == said.clauses[i]}
            if i and said.reading.words[i].endswith("s") and near.isdisjoint(_HINDERING):
                yield said.reading.words[i]


def _kept_off(need: Need, know: Knowledge) -> Iterator[str]:
    """Yield the words for what does not come about, as the full answer and the statements of its paragraphs say."""
    yield from _NOT_SO.findall(need.expected.lower())
    for cited in need.sources:
        for name in know.base.standing_on.get(Source(cited.document, cited.paragraph), ()):
            yield from _NOT_SO.findall(getattr(know.base.records[name], "says", "").lower())


_NOT_SO = re.compile(r"\b(?:prevents? (?:a |an |the )|it does not )(\w+)(?=[.,;]|$)")
_HINDERING = NEGATORS | word_set("""
    prevent prevents avoid avoids stop stops otherwise else instead before if would could
""")


def _foreign_item(need: Need, said: Said, off: frozenset[int], know: Knowledge) -> Iterator[str]:
    """Yield what an answer lists with what is asked for and does not belong there: "… and the flaps at landing"."""
    plain_ones = [p for p in need.points if not (p.figures or p.verdict or p.state or p.way or p.which)]
    if need.ordered or need.polar or need.loss or not _ASKS_LIST.search(need.question.text):
        return
    if len(plain_ones) < _LIST or len(plain_ones) < len(need.points):
        return
    pieces = [piece for part in said.pieces(STOPS) for piece in _joined(part, said.reading.words)]
    if len(pieces) < _LIST:
        return
    known = need.known | need.besides
    for piece in pieces:
        named = [m for m in said.content if m.start in piece]
        foreign = all(m.concepts.isdisjoint(known) and need.words.isdisjoint(map(plain, m.text.split())) for m in named)
        verbs = _VERBS.intersection(said.reading.words[i] for i in piece)
        short = len(piece) <= _SHORT and not verbs and off.isdisjoint(piece)
        if foreign and short and any(_is_thing(c, know) for m in named for c in m.concepts):
            yield named[0].text


def _is_thing(concept: str, know: Knowledge) -> bool:
    return concept[0] not in "~@=#!" and know.lexicon.kinds.get(concept, "thing") == "thing"


def _joined(part: range, words: Sequence[str]) -> Iterator[range]:
    """Yield the stretches of a piece between its "and"s."""
    start = part.start
    for i in part:
        if words[i] == "and":
            if i > start:
                yield range(start, i)
            start = i + 1
    if part.stop > start:
        yield range(start, part.stop)


_ASKS_LIST = re.compile(
    r"\b(?:name|list) (?:the|all|what|everything|each)\b|\bwhat (?:\w+ )?(?:must|has to|have to|needs to|things)\b|"
    r"\bwhich (?:\w+ )?(?:things|conditions|items|parts)\b|\balways (?:state|say|contain|name|include)s?\b",
    re.IGNORECASE,
)
_LIST = 3
_SHORT = 6
_VERBS = word_set("""
    am are can check could do does get gets give gives go goes had has have hope i is it know mean means must need
    needs say says see should that think this too was we were will with would you
""")


def _running(need: Need, said: Said, off: frozenset[int]) -> Iterator[str]:
    """Yield that something runs for the time for which it has to be off: "they have to run for two minutes"."""
    if not any(p.figures and _IS_OFF.search(p.text) for p in need.points):
        return
    words = said.reading.words
    claimed = {said.clauses[c.amount.start] for c in said.claims}
    for i, word in enumerate(words):
        beside = {words[k] for k in range(len(words)) if said.clauses[k] == said.clauses[i]}
        if word in _RUN and i not in off and said.clauses[i] in claimed and beside.isdisjoint(_STOPPED):
            yield word


_IS_OFF = re.compile(r"\b(?:must be|are|is|with the \w+) off\b|\boff for\b")
_RUN = word_set("run runs running")
_STOPPED = NEGATORS | word_set("off stop stopped after before until when once stops")
