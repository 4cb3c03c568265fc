"""Which points a question really asks for: those that it names, without what it says itself."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable

from assistant.practice.marking.finding.duties import with_duty
from assistant.practice.marking.finding.elements import DIRECTIONS, named_elements
from assistant.practice.marking.of_statements.given_case import without_its_case, without_its_condition
from assistant.practice.marking.of_statements.meant import is_named_first, meant
from assistant.practice.marking.of_statements.one_colour import of_one_colour
from assistant.practice.marking.points import Element, Point
from assistant.practice.marking.questions.asked import Asked
from assistant.practice.marking.reading.said import plain
from assistant.resolving.knowing import Knowledge
from assistant.understanding.mentions import Reading

MODES = ("braking-mode", "autobrake-setting")
"""The families of what is chosen of several, each with figures of its own."""
_COMMON = frozenset(("in", "mod", "brak", "mode", "to", "into"))


def weighed(points: list[Point]) -> list[Point]:
    """Let words that several points share tell less of each: "leave the gear down" of two steps."""
    counts: dict[tuple[str, ...], int] = {}
    for p in points:
        for words in {e.words for e in p.elements}:
            counts[words] = counts.get(words, 0) + 1
    return [
        p._replace(elements=tuple(e._replace(weight=e.weight * 0.4) if counts[e.words] > 1 else e for e in p.elements))
        if any(counts[e.words] == 1 and not e.given and e.weight > 0.5 for e in p.elements) else p
        for p in points
    ]  # fmt: skip


def labelled(points: list[Point], one: Asked, found: tuple[Asked, ...], text: str, know: Knowledge) -> list[Point]:
    """Give the points of a part the words by which its question differs from the other parts'."""
    if len(found) < 2 or text in (other.answer.question for other in found):
        return points
    own = named_elements(one.answer.question, know)
    others = {
        w for other in found if other is not one for e in named_elements(other.answer.question, know) for w in e.words
    }
    labels = tuple(e for e in own if not others.issuperset(e.words) and e.words not in _PREPOSED)
    return [p._replace(labels=labels) for p in points]


_PREPOSED = ((plain("on"),), (plain("in"),))
"""Words that stand before any name: "on a contaminated one"."""


def distinct(points: Iterable[Point]) -> list[Point]:
    """Return points each once; the same name for two parts twice: "System 1" for the steering and the accumulator."""
    each: dict[tuple[object, ...], Point] = {}
    for p in points:
        name = (p.text, p.verdict, p.figures, _part_of(p))
        if name not in each or not p.optional:  # what one part asks for is asked, though another passes it over
            each[name] = p
    found = list(each.values())
    found = [_without_another(p, found) for p in found]
    plainly = [p.text for p in found if not p.figures and len(p.text.split()) > 1]
    stated = {tuple((f.value, f.unit) for f in p.figures) for p in found if p.figures_suffice}
    found = [p._replace(figures=()) if _tells_besides(p, stated) else p for p in found]
    return [p for p in found if not _again(p, plainly, stated)]


def _part_of(point: Point) -> tuple[tuple[str, ...], ...]:
    """Return the words of the part of a question that a bare name answers, by which it is told from the same one."""
    bare = not (point.figures or point.verdict or point.state) and len(point.text.split()) <= _NAME
    return tuple(e.words for e in point.labels) if bare else ()


_NAME = 2


def _tells_besides(point: Point, stated: Collection[tuple[tuple[float, str], ...]]) -> bool:
    """Return whether a point tells more than a figure that is asked for by itself: "it disagrees with the lever"."""
    told = any(e.weight >= _TELLING and not e.given for e in point.elements)
    own = tuple((f.value, f.unit) for f in point.figures)
    return told and not point.figures_suffice and own in stated


_TELLING = 2.0


def _without_another(point: Point, points: Collection[Point]) -> Point:
    """Return a point without what another one says by itself: "continue, and leave the gear down"."""
    ends = [p for p in points if not p.figures and p.elements and point.text.endswith(f" and {p.text}")]
    words = {e.words for p in ends for e in p.elements}
    if not words or words.issuperset(e.words for e in point.elements):
        return point
    return point._replace(elements=tuple(e._replace(given=e.given or e.words in words) for e in point.elements))


def _again(point: Point, plainly: Iterable[str], stated: Collection[tuple[tuple[float, str], ...]]) -> bool:
    """Return whether a point says what another one says already: a figure that is stated by itself, an action."""
    if point.figures:
        return not point.figures_suffice and tuple((f.value, f.unit) for f in point.figures) in stated
    return any(point.text.endswith(f": {text}") for text in plainly)


def named_only(points: list[Point], reading: Reading, know: Knowledge) -> list[Point]:
    """Keep the points that a question names, where it names some of those that differ by a name alone."""
    if len(points) < 3:
        return points
    labels = [_family(p, know) for p in points]
    if not any(labels):
        return points
    words = frozenset(plain(w) for w in reading.words)
    coloured = of_one_colour(points, reading, know)
    if coloured:
        return coloured
    named = [p for p, label in zip(points, labels, strict=True) if not label.isdisjoint(words)]
    return named if len(named) > 1 else points


def _family(point: Point, know: Knowledge) -> frozenset[str]:
    """Return the words that name modes and settings in a point."""
    families, results = know.lexicon.families, _result_names(know)
    names = [
        e for e in point.elements if any(families.get(c) in MODES or c in results or c[0] == "=" for c in e.concepts)
    ]
    return frozenset(w for e in names for w in e.words if w not in _COMMON)


def _result_names(know: Knowledge) -> frozenset[str]:
    """Return the results that state tables may have, by the name of their values: "emergency"."""
    tables = [know.base.records[name] for name in know.base.ids("tables")]
    values = {value for t in tables for o in t.outputs for value, _, _ in o.values}
    return frozenset(v for v in values if know.lexicon.families.get(v) != "colour")


def without_given(points: list[Point], reading: Reading, in_part: bool) -> list[Point]:
    """Mark what the question itself says, and leave out the points that say nothing else."""
    made = [without_its_case(p, points, reading) if in_part else p for p in points]
    made = [without_its_condition(p, reading) for p in made]
    made = _asked_by_name([_with_given(p, reading) for p in made], 1 if in_part else 2, _acts(reading))
    told = [p for p in made if p.figures or p.verdict or p.state or p.kept or any(not e.given for e in p.elements)]
    return told or [p._replace(elements=tuple(e._replace(given=False) for e in p.elements)) for p in made]


def _acts(reading: Reading) -> bool:
    """Return whether it is asked what to do, of which every action is part."""
    return reading.has("steps", "order_of") or _DO.search(" ".join(reading.words)) is not None


_DO = re.compile(r"\bwhat (?:do|should|must|would) (?:you|we|i|they) do\b|\bwhat must be done\b|\bsteps\b|\bdrill\b")


def _asked_by_name(points: list[Point], least: int, acts: bool) -> list[Point]:
    """Drop the points that a question passes over where it names others: "for a wet runway and a contaminated one"."""
    counts: dict[tuple[str, ...], int] = {}
    for p in points:
        for words in {e.words for e in p.elements}:
            counts[words] = counts.get(words, 0) + 1
    if acts:
        return points
    one = meant(points)
    if one is not None:
        return [p if p is one else p._replace(optional=True) for p in points]
    named = [p for p in points if any(e.given and e.weight > 0.7 and counts[e.words] == 1 for e in p.elements)]
    passed = [p for p in points if not p.way and not any(e.given for e in p.elements)]
    units = {f.unit for p in points for f in p.figures}
    if _is_list(named, passed):
        return [_as_spare(p) if p in passed else p for p in points]
    shared = any(n > 1 for n in counts.values()) or (len(units) == 1 and all(len(p.figures) == 1 for p in points))
    return [p for p in points if p not in passed] if len(named) >= least and shared else points


def _is_list(named: list[Point], passed: list[Point]) -> bool:
    """Return whether points are a list of names and what each means, of which a question names some: the lamps."""
    told = [*named, *passed]
    heads = all(p.elements and p.elements[0].given and not p.elements[-1].given for p in named)
    return len(named) > 1 and heads and bool(passed) and all(is_named_first(p) for p in told)


def _as_spare(point: Point) -> Point:
    """Return a point that is not asked for: it may be said, and what it says is of its own name alone."""
    first, *rest = point.elements
    return point._replace(optional=True, elements=(first._replace(given=True), *rest))


_MEASURED = re.compile(
    r"\bwhat (?:is|are|was) (?:the |its )?(?:\w+ ){0,2}(?:times?|constants?|pressures?|speeds?|temperatures?|"
    r"limits?|shares?|decelerations?|delays?|figures?|values?)\b"
)
"""What asks for figures alone."""
_PERSON_WORDS = frozenset(map(plain, ("pilot", "pilots", "crew", "both", "maintenance", "captain")))
_PERSONS = frozenset(("captain", "first_officer", "maintenance", "ground_crew"))
_WAY_ASKED = frozenset(("direction", "way", "side"))
_SPARED = frozenset(("after", "before", "check", "until", "when", "once", "while"))
"""Words with which a point begins that only tells when, or what to do besides."""


def persons_only(points: list[Point], reading: Reading, know: Knowledge) -> list[Point]:
    """Let a person be enough where it is asked who does something."""
    if not reading.has("who") or len(reading.words) > _SHORT:
        return points
    made = [with_duty(p._replace(elements=tuple(e for e in p.elements if _is_person(e))), know) for p in points]
    named = [p._replace(figures=()) for p in made if p.elements]
    if len(named) == 1 < len(points) and "and" not in reading.words:
        return [p._replace(optional=p.optional or not m.elements) for p, m in zip(points, made, strict=True)]
    return named if len(named) == 1 == len(points) else points


_SHORT = 12


def _is_person(element: Element) -> bool:
    return not _PERSON_WORDS.isdisjoint(element.words) or not _PERSONS.isdisjoint(element.concepts)


def spared(points: list[Point], reading: Reading, asks_more: bool) -> list[Point]:
    """Let points be left out that a short question does not ask for: a time, a check, a place beside a direction."""
    if asks_more or len(points) < 2:
        return points
    points = [p._replace(optional=p.optional or p.text.startswith("otherwise ")) for p in points]
    measured = [p for p in points if p.figures]
    if len(measured) > 1 and _MEASURED.search(" ".join(reading.words)):
        points = [p._replace(optional=p.optional or (not p.figures and p.text[:3] != "or ")) for p in points]
    listed = _OF_CASES.search(" ".join(reading.words)) or reading.has("when", "steps", "order_of", "list_all")
    if "when" in reading.words or listed:
        return points
    ways = [p for p in points if any(_is_way(e) for e in p.elements)]
    by_way = bool(_WAY_ASKED.intersection(reading.words)) and bool(ways)
    made = [
        p._replace(optional=p.optional or (by_way and p not in ways) or _is_beside(p) or _where(p, reading))
        for p in points
    ]  # fmt: skip
    return made if any(not p.optional for p in made) else points


_OF_CASES = re.compile(r"\b(?:cases|occasions|conditions|times|events)\b")


def _where(point: Point, reading: Reading) -> bool:
    """Return whether a point only tells where, which is not asked: "in the bay" of what stops the wheels."""
    asking = reading.words[:2]
    if reading.has("where"):
        return False
    return (
        _PLACED.match(point.text) is not None
        and not point.figures
        and asking[:1] == ("what",)
        and asking[1:] == ("stops",)
    )


_PLACED = re.compile(r"(?:in|on|at|under|behind|beside) the \w+$")


_MANNER = re.compile(r"\bhow (?!fast|long|many|much|far|often|high|hot)")


def without_checks(points: list[Point], reading: Reading) -> list[Point]:
    """Let a check, or how long it lasts, that a statement adds be left out, where it is not asked for."""
    if "check" in reading.words or reading.has("steps", "order_of", "list_all"):
        return points
    lasting = not {"long", "until"}.isdisjoint(reading.words)
    asks_how = _MANNER.search(" ".join(reading.words)) is not None or reading.has("where")
    manner = not asks_how and {"by", "design", "fault", "defect"}.isdisjoint(reading.words)
    spare = ("check ", *(() if lasting else ("until ",)), *(("by ",) if manner else ()))
    asked = bool(_WAY_ASKED.intersection(reading.words))
    sided = {p.labels for p in points if asked and any(_is_way(e) for e in p.elements)}
    made = [p._replace(optional=p.optional or (p.text.startswith(spare) and not p.figures)) for p in points]
    made = [p._replace(optional=True) if p.labels in sided and not any(map(_is_way, p.elements)) else p for p in made]
    return made if any(not p.optional for p in made) else points


def _is_beside(point: Point) -> bool:
    first = point.text.split()[:1]
    return bool(first) and first[0] in _SPARED and not point.figures


def _with_given(point: Point, reading: Reading) -> Point:
    if point.state is not None:
        return point
    if point.chosen:
        first, *rest = point.elements
        return point._replace(elements=(first._replace(weight=max(first.weight, _CHOSEN)), *rest))
    words = frozenset(plain(w) for w in reading.words)
    named = point.kept or reading.has("supply")  # what a mode is known to run on is not said with its name
    concepts = frozenset(c for m in reading.mentions for c in (m.concepts if named else m.concepts | m.implied))
    elements = [_given(e, words, concepts) for e in point.elements]
    if not reading.has("where") and all(e.given or _is_faint(e) for e in elements) and any(e.given for e in elements):
        elements = [e._replace(given=True) for e in elements]
    if any(not e.given and not _is_way(e) for e in elements):
        elements = [e._replace(given=_in_phrase(e, point, reading)) if _is_way(e) else e for e in elements]
    if point.kept and all(e.given for e in elements):
        return point
    return point._replace(elements=tuple(elements))


def _in_phrase(way: Element, point: Point, reading: Reading) -> bool:
    """Return whether a question has a side or way of a point with the words behind it: "up and locked"."""
    words = re.findall(r"[\w-]+", point.text.lower())
    at = next((i for i, word in enumerate(words) if plain(word) in way.words), len(words))
    behind = words[at : at + _PHRASE]
    return len(behind) == _PHRASE and f" {' '.join(behind)} " in f" {' '.join(reading.words)} "


_PHRASE = 3
_CHOSEN = 1.5


def _is_faint(element: Element) -> bool:
    """Return whether an element is only a small word: "on each"."""
    return not element.concepts and element.words in (("on",), (plain("each"),), ("in",), (plain("only"),))


def _is_way(element: Element) -> bool:
    return len(element.words) == 1 and element.words[0] in DIRECTIONS


_TWO = 2
_PREFIXES = (plain("under"), plain("over"))


def _given(element: Element, words: frozenset[str], concepts: frozenset[str]) -> Element:
    """Return an element as the question leaves it: given by it, or without the words that it holds."""
    if all(w in words for w in element.words):
        return element._replace(given=True)
    result = any(c[0] == "=" for c in element.concepts)
    shared = {c for c in element.concepts & concepts if c[0] != "@"}
    prefixed = len(element.words) == _TWO and element.words[0] in _PREFIXES  # under-inflation is one name
    if not result and shared and (prefixed or not DIRECTIONS.intersection(element.words)):
        return element._replace(given=True)
    left = tuple(w for w in element.words if w not in words)
    if DIRECTIONS.issuperset(left):
        return element  # the way alone would not tell of what
    return element._replace(words=left)
