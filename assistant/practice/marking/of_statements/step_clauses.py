"""The steps of a procedure in their clauses, and which of them a part of a question asks for.

A step tells several things in one breath: a lever, how much of it, below what speed, for how long. A part that asks for
one of these needs no other: of the clauses, the one is meant that is of the kind asked for and shares most words with
the part, in the order in which the parts are put.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.frozen import NamedTuple
from assistant.practice.marking.finding.elements import point
from assistant.practice.marking.of_statements.of_part import asks_figure
from assistant.practice.marking.of_statements.steps_asked import HOW_OFTEN, measured
from assistant.practice.marking.points import Point
from assistant.practice.marking.reading.said import plain
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge

_EXPLAINED = re.compile(r"\s*\([^)]*\)|, which .*$")
_BETWEEN = re.compile(
    r",? (?:and|then) (?!(?:down|up|on|off|locked|release)\b)(?=\S+ \S|\S+$)|[,:] (?:then )?| (?=if )|"
    r" (?=no (?:further|more|later|longer|faster) than)|(?= at (?:less|more) than)",
    re.IGNORECASE,
)
"""What stands between the clauses of a step."""
_CASE = re.compile(r"(?:[Ii]f|[Oo]nce|[Ww]hen|[Aa]fter|On|In) \S")
_ORDERED = re.compile(
    r"\bwhat (?:(?:do|should|must|would) (?:you|we|i|they) (?:do|try)|next|then|after that|with)\b", re.IGNORECASE
)
_FIRST = re.compile(r"\bfirst\b", re.IGNORECASE)
_WHOLE = re.compile(
    r"\bin (?:what |which )?order\b|\bsteps?\b|\bdrill\b|\bmemory items\b|\ball of\b|"
    r"^(?:and )?what (?:are|is) the actions?\b|^(?:and )?what (?:do|should|must|would) (?:you|we|i|they) do$|"
    r"\b(?:what|do) if\b|\b(?:what|which) (?:speeds|pressures|times|temperatures)\b|\bwhat (?:happens|follows)\b",
    re.IGNORECASE,
)
"""What asks for all that is to be done."""
_PLACED = re.compile(
    r"\b(?:where|to what|to which|in(?:to)? (?:what|which)|at (?:what|which)) (?:\w+ )?(?:position|setting|way)?|"
    r"\bhow (?:is|are|do you leave|the)\b",
    re.IGNORECASE,
)
_POSITIONS = re.compile(r"\b(?:UP|DN|DOWN|ON|OFF|pulled|pushed|set|released|inserted)\b")
_LIMITED = re.compile(r"\bhow far\b", re.IGNORECASE)
_TWICE = re.compile(r"\b(?:two|both|in turn|one after the other)\b", re.IGNORECASE)
_SMALL_WORDS = "the it its then and of at to is are be do you what which how for by with a an on in"
_SMALL = frozenset(map(plain, _SMALL_WORDS.split()))


class Clause(NamedTuple):
    """One thing that a step tells. step: of which step. case: whether it only tells when the others are done."""

    step: int
    text: str
    case: bool
    words: frozenset[str]
    figures: frozenset[str]
    """The quantities of which it gives a figure."""


class Chosen(NamedTuple):
    """What a part asks for. kind: the quantities of its figure, "how often", or nothing where it is told in words."""

    part: str
    clauses: tuple[Clause, ...]
    kind: frozenset[str]


_UNITLESS = frozenset(("ratio", "count", "number"))
OFTEN = frozenset(("how often",))


def clauses_of(steps: Sequence[str], know: Knowledge) -> list[Clause]:
    """Return the clauses of steps, in their order."""
    made = []
    for n, step in enumerate(steps):
        for piece in _pieces(_EXPLAINED.sub("", step)):
            told = point(piece, know)
            units = {f.unit for f in told.figures if f.unit}
            words = content_words(piece)
            made.append(Clause(n, piece, bool(_CASE.match(piece)), words, frozenset(measured(u, know) for u in units)))
    return made


def _pieces(step: str) -> list[str]:
    """Return the pieces of a step; a verb that shares its thing with the next one is none by itself."""
    made: list[str] = []
    for piece in (each.strip(" ,") for each in _BETWEEN.split(step)):
        if not piece:
            continue
        if made and len(made[-1].split()) == 1 and not _POSITIONS.match(piece) and made[-1][0].isupper():
            made[-1] = step[step.find(made[-1]) : step.find(piece) + len(piece)]
        else:
            made.append(piece)
    return made


def kind_of(part: str, know: Knowledge) -> frozenset[str]:
    """Return of what quantity a part asks a figure, or how often; nothing where it asks for words."""
    if HOW_OFTEN.search(part):
        return OFTEN
    if not asks_figure(part) or _LIMITED.search(part):
        return frozenset()
    named = know.phrase(part).concepts & QUANTITIES
    return (named or QUANTITIES.intersection(re.findall("[a-z]+", part.lower()))) - _UNITLESS


def chosen_clauses(
    parts: Sequence[str], steps: Sequence[str], before: str, title: str, know: Knowledge
) -> list[Chosen]:
    """Return the clauses that each part of a question asks for, in order; none for a part that none of them answers.

    before: what the question tells before its parts. title: of the procedure, whose words tell no step from another.
    """
    clauses = _left(clauses_of(steps, know), before, title)
    common = content_words(title)
    grid = [[_fit(part, clause, clauses, common, know) for clause in clauses] for part in parts]
    places = _aligned(grid, parts, clauses, know)
    found = []
    for part, place in zip(parts, places, strict=True):
        kind = kind_of(part, know)
        own: tuple[Clause, ...] = () if place is None else (clauses[place],)
        if own and _TWICE.search(part):
            placed = [c for c in clauses if c.step == own[0].step and _POSITIONS.search(c.text)]
            own = _together([c._replace(text=_POSITIONS.findall(c.text)[-1]) for c in placed] or own)
        if own and _ORDERED.search(part):
            taken = {p for p in places if p is not None and p != place}
            own = _together([c for n, c in enumerate(clauses) if c.step == own[0].step and n not in taken])
        found.append(Chosen(part, own, kind))
    return found


def _together(clauses: Sequence[Clause]) -> tuple[Clause, ...]:
    """Return the clauses of an action as one: what is done with a thing is said of it as a whole."""
    first, text = clauses[0], ", then ".join(c.text for c in clauses)
    return (first._replace(text=text, case=False, words=frozenset(w for c in clauses for w in c.words)),)


_STEP = re.compile(r"\b(?:M|step |item )([1-9])\b")


def _left(clauses: list[Clause], before: str, title: str) -> list[Clause]:
    """Return the clauses that a question may still ask for: of the step named, or from the case on that it tells."""
    named = _STEP.search(before)
    if named:
        return [c for c in clauses if c.step == int(named[1]) - 1]
    told = content_words(before)
    known = content_words(title)
    for c in clauses:
        own = c.words - known - {plain("if"), plain("once"), plain("when"), plain("switch")}
        if c.case and own and own <= told:
            return [other for other in clauses if other.step >= c.step and other is not c]
    return clauses


def _fit(part: str, clause: Clause, clauses: Sequence[Clause], common: frozenset[str], know: Knowledge) -> float:
    """Return how well a clause answers a part; 0 where it cannot."""
    named = _STEP.search(part)
    if named and clause.step != int(named[1]) - 1:
        return 0.0
    asked, aside = (content_words(each) for each in (CONTEXT.sub("", part), part))
    counts = {w: sum(w in c.words for c in clauses) for w in aside & clause.words}
    shared = sum((1.0 if w in asked else _ASIDE) * (_COMMON if w in common else 1.0) / n for w, n in counts.items())
    kind = kind_of(part, know)
    if kind == OFTEN:
        return 1.0 + shared if not clause.words.isdisjoint(_TIMES) else 0.0
    if kind:
        return 1.0 + shared if kind & clause.figures else 0.0
    if _LIMITED.search(part):
        return 1.0 + shared if re.match(r"no (?:further|more) than", clause.text) else 0.0
    if named:
        shared += _NAMED
    if _ORDERED.search(part) and _FIRST.search(part) and clause.step == clauses[0].step:
        shared += _NAMED
    if _PLACED.search(part) and _POSITIONS.search(clause.text):
        shared += _NAMED
    last = plain(re.findall(r"[a-z-]+", CONTEXT.sub("", part).lower())[-1])
    if last in clause.words and last not in common:
        shared += _LAST
    return shared


def content_words(text: str) -> frozenset[str]:
    """Return the words of a text that tell something, in their plainest form."""
    return frozenset(map(plain, re.findall(r"[a-z-]+", text.lower()))) - _SMALL


CONTEXT = re.compile(r"(?<=\w) (?:before|after|when|once|while|until|if|against) .*$", re.IGNORECASE)
"""What of a part only tells when or against what: "before the override button is pressed"."""
_COMMON = _ASIDE = 0.3
_TIMES = frozenset(map(plain, ("once", "twice")))
_OFTEN_TOLD = re.compile(r"\b(?:once|twice)\b(?: only)?", re.IGNORECASE)
_NAMED, _LAST = 0.4, 0.6
_LEAST = 0.25


def _aligned(
    grid: Sequence[Sequence[float]], parts: Sequence[str], clauses: Sequence[Clause], know: Knowledge
) -> list[int | None]:
    """Return the clause of each part: those of the best sum, in the order in which the parts are put."""
    kinds = [kind_of(part, know) for part in parts]
    best: dict[tuple[int, int], tuple[float, list[int | None]]] = {}

    def of(n: int, least: int) -> tuple[float, list[int | None]]:
        if n == len(parts):
            return 0.0, []
        if (n, least) not in best:
            rest, tail = of(n + 1, least)
            found: tuple[float, list[int | None]] = (rest, [None, *tail])
            for place in range(least, len(clauses)):
                if grid[n][place] < _LEAST:
                    continue
                after = place if n + 1 < len(parts) and kinds[n + 1] != kinds[n] else place + 1
                rest, tail = of(n + 1, after)
                if grid[n][place] + rest > found[0] + _SAME:
                    found = grid[n][place] + rest, [place, *tail]
            best[n, least] = found
        return best[n, least]

    return _followed(of(0, 0)[1], parts, clauses, kinds)


_SAME = 1e-9


def _followed(
    places: list[int | None], parts: Sequence[str], clauses: Sequence[Clause], kinds: Sequence[frozenset[str]]
) -> list[int | None]:
    """Return places, with that of a part which shares no word with its clause: the one clause that is left there."""
    made = list(places)
    for n, place in enumerate(places):
        if place is not None or kinds[n] or n == 0 or made[n - 1] is None:
            continue
        low = made[n - 1]
        high = next((p for p in made[n + 1 :] if p is not None), len(clauses))
        between = [k for k in range((low or 0) + 1, high) if not clauses[k].case]
        if len(between) == 1:
            made[n] = between[0]
    return made


def clause_points(chosen: Chosen, know: Knowledge) -> list[Point]:
    """Return the points of what a part asks for: the figures of its kind, how often, or what its clauses say."""
    if chosen.kind == OFTEN:
        said = _OFTEN_TOLD.search(chosen.clauses[0].text)
        made = point(said[0] if said else chosen.clauses[0].text, know)
        kept = tuple(e._replace(weight=_TELLING, given=e.words[0] not in _TIMES) for e in made.elements)
        return [made._replace(figures=(), elements=kept, kept=True)]
    if chosen.kind:
        made = point(chosen.clauses[0].text, know)
        figures = tuple(f for f in made.figures if f.unit and measured(f.unit, know) in chosen.kind)
        return [made._replace(figures=figures, figures_suffice=True)]
    told = [c for c in chosen.clauses if not c.case or len(chosen.clauses) == 1]
    points = [point(_without_positions(c.text, chosen.part), know) for c in told]
    return [p._replace(figures=()) if p.elements and p.figures else p for p in points]


def _without_positions(text: str, part: str) -> str:
    """Return a clause without the position that a part gives itself, where it asks what is put there."""
    given = [word for word in re.findall(r"\b(?:ON|OFF|UP|DN)\b", text) if re.search(rf"\b{word}\b", part)]
    left = re.sub(rf"\b(?:{'|'.join(given)})\b", "", text).strip(" ,") if given else text
    return re.sub(r"^(?:then|and)\b ?", "", left, flags=re.IGNORECASE) or text


_TELLING = 1.5


def asks_all(part: str) -> bool:
    """Return whether a part asks for all that is to be done, and not for one thing of it."""
    return _WHOLE.search(part) is not None
