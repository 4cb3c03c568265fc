"""Things said to be all that is left of their kind: "only the accumulator is feeding the brakes".

Every other source of pressure has failed then: of two systems the other one, and both where neither is named.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence

from assistant.understanding.clauses import STOPS
from assistant.understanding.condition import Condition, StateWords, alike
from assistant.understanding.mentions import ALL_WELL, Mention, Reading

_ONLY = frozenset(("only", "just", "solely", "purely", "merely"))
_ALONE = frozenset(("alone", "only"))
_ENOUGH = frozenset(("enough", "sufficient", "suffice", "suffices"))
_SOLE = frozenset(("only", "last", "sole", "lone", "single"))
_SAYING = _ONLY | _SOLE | _ENOUGH | {"alone", "all", "nothing", "down", "left", "reduced", "relying"}
"""Words without one of which nothing is said to be all that is left."""
_LEFT = frozenset({
    "left", "remains", "remaining", "remain", "remained", "working", "works", "work", "available", "alive", "good",
    "ok", "okay", "healthy", "running", "runs", "feeding", "feeds", "supplying", "supplies", "powering", "driving",
    "pressurised", "pressure", "serviceable", "holding", "standing", "usable", "survives", "survived", "survive",
    "intact", "normal", "there", "with", "giving", "delivering", "providing", "on", "up", "going", "functioning",
    "operating", "live", "still", "between", "survivor", "surviving",
})  # fmt: skip
_TELLING = _LEFT - {"with", "on", "up", "there", "between", "going"} | _ENOUGH | {"have", "got", "only", "alone"}
_HAVING = frozenset({
    "have", "has", "having", "got", "on", "with", "to", "by", "off", "from", "retain", "keep", "kept",
})  # fmt: skip
_ONES = frozenset({
    "one", "thing", "system", "source", "pressure", "hydraulics", "supply", "hydraulic", "bit", "survivor",
})  # fmt: skip
_ARTICLES = frozenset({"the", "my", "our", "a", "an", "that", "this", "good", "old"})
_BEING = frozenset(("is", "are", "was", "s", "being"))
_LEADING = (("down", "to"), ("left", "with"), ("reduced", "to"), ("relying", "on"), ("nothing", "but"), ("only", "by"))
_EXCEPT = frozenset(("but", "except", "bar", "besides", "beyond"))
_SOUGHT = frozenset(("leave", "leaves", "leaving", "before", "until", "till", "not", "never", "unless", "puts", "put"))
"""Words before: it is asked what leads there, or it is denied."""
_LOST = frozenset(("@lost", "@empty", "@off"))
_WITHIN = 7
_BEFORE = 6


def only_left(reading: Reading, states: Sequence[Mention], known: StateWords) -> list[Condition]:
    """Return the states of all sources of pressure where one, or some, are said to be all that is left of them."""
    words = reading.words
    if not known.sources or _SAYING.isdisjoint(words):
        return []
    for start, end, name in _named(words, known.sources):
        begin, lead, tail = _around(words, start, end)
        enough = not reading.amounts and not _ENOUGH.isdisjoint(tail[:4])  # "is System 1 enough for autobrake"
        if not _SOUGHT.isdisjoint(lead[-5:]) or not (enough or _says_only(lead, tail)):
            continue
        said = [k for k, word in enumerate(lead, begin) if word in _SAYING]
        first = max(said, default=start)
        if any(first <= s.start <= end + _WITHIN and _fails(s, tail, end) for s in states):
            continue
        if any(pair == (name, known.failed(name)) for pair in _said_by_names(reading, start, end, known)):
            continue
        if any(ALL_WELL in m.concepts and begin <= m.start < end for m in reading.mentions):
            continue  # "nothing has failed except System 2"
        others = [n for n in known.numbers if n in known.failures and alike(n, name, known)]
        others = others or [n for n in known.numbers if n in known.failures and n != name]
        where = tuple(range(first, end + _told_after(tail)))
        held = Condition(name, known.normal(name), where=where)
        return [held, *(Condition(n, known.failed(n), implied=True, where=where) for n in others)]
    return []


def _told_after(tail: tuple[str, ...]) -> int:
    """Return how many words after a name belong to what is said of it."""
    return next((k + 1 for k in range(min(len(tail), _WITHIN) - 1, -1, -1) if tail[k] in _TELLING), 0)


def _named(
    words: Sequence[str], names: Mapping[str, Collection[tuple[tuple[str, ...], str]]]
) -> Iterator[tuple[int, int, str]]:
    """Yield where a source of pressure is named, with its input."""
    for start, word in enumerate(words):
        fits = [(len(name), of) for name, of in names.get(word, ()) if tuple(words[start : start + len(name)]) == name]
        if fits:
            length, of = max(fits)
            yield start, start + length, of


def _around(words: Sequence[str], start: int, end: int) -> tuple[int, tuple[str, ...], tuple[str, ...]]:
    """Return the words of the same clause before a name, without an article, and after it, with where they begin."""
    first = next((k + 1 for k in range(start - 1, max(-1, start - 1 - _BEFORE), -1) if words[k] in STOPS), None)
    begin = max(0, start - _BEFORE) if first is None else first
    last = next((k for k in range(end, min(len(words), end + _WITHIN)) if words[k] in STOPS), end + _WITHIN)
    while start > begin and words[start - 1] in _ARTICLES:
        start -= 1
    return begin, tuple(words[begin:start]), tuple(words[end:last])


def _says_only(lead: tuple[str, ...], tail: tuple[str, ...]) -> bool:
    """Return whether the words about a name say that it is all that is left."""
    left = not _LEFT.isdisjoint(tail[:4])
    only = bool(lead) and lead[-1] in _ONLY
    had = not _HAVING.isdisjoint(lead[-3:]) or (lead[-2:-1] != () and lead[-2] in _BEING and tail[:1] == ("now",))
    if only and (left or had):
        return True  # "only System 1 is left", "on just the accumulator"
    if had and not _ONLY.isdisjoint(lead[-4:]) and (left or "have" in lead or "got" in lead):
        return True  # "we only have hyd 1 left"
    if lead[-2:] in _LEADING or (lead[-1:] and lead[-1] in _EXCEPT and "nothing" in lead):
        return lead[-2:] != ("down", "to") or not tail[:1] or not tail[0].isdigit()
    if tail[:1] and tail[0] in _ALONE and not {"on", "with", "by", "off", "from", "to"}.isdisjoint(lead[-1:]):
        return True  # "braking on the accumulator alone"
    return _is_all(lead, tail)


def _is_all(lead: tuple[str, ...], tail: tuple[str, ...]) -> bool:
    """Return whether a thing is called all there is: "hyd 1 is all we've got", "the only one left is System 1"."""
    if tail[:1] and tail[0] in _BEING:
        if "all" in tail[1:3] and not {"have", "got", "left", "is"}.isdisjoint(tail[2:]):
            return True
        ones = not _SOLE.isdisjoint(tail[1:4]) and not _ONES.isdisjoint(tail[2:5])
        return ones and not (_LEFT | {"have", "got"}).isdisjoint(tail[3:])
    if not lead or lead[-1] not in _BEING:
        return False
    if "all" in lead and not {"have", "got", "left"}.isdisjoint(lead):
        return True
    return not _SOLE.isdisjoint(lead) and not _ONES.isdisjoint(lead) and not (_LEFT | _HAVING).isdisjoint(lead)


def _said_by_names(reading: Reading, start: int, end: int, known: StateWords) -> Iterator[tuple[str, ...]]:
    """Yield what names that stand there bring along: "only | hyd 1 gone |"."""
    for mention in reading.mentions:
        if mention.start < end and start < mention.end:
            for concept in mention.concepts:
                yield from map(tuple, known.sets.get(concept, ()))


def _fails(state: Mention, tail: tuple[str, ...], end: int) -> bool:
    """Return whether a word says that the thing itself has failed: "only the accumulator | is empty |"."""
    near = state.start - end < min(len(tail), len(tail) if "last" in tail else 4)
    return near and not _LOST.isdisjoint(state.concepts) and _LEFT.isdisjoint(state.text.split())
