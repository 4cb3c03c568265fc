"""The numbers of an answer against the figures it needs: which is which, and which belongs to nothing here."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.frozen import NamedTuple
from assistant.practice.marking.finding.equal import equals, same_kind, says
from assistant.practice.marking.finding.found import ENOUGH, words_said
from assistant.practice.marking.finding.pairing import labels_of, stretches
from assistant.practice.marking.points import Figure, Need, Point
from assistant.practice.marking.reading.said import Claim, Said, plain, side_of
from assistant.practice.marking.reading.wording import ALIKE, NEGATORS, word_set
from assistant.practice.marking.wrong_figures.bounds import (
    condition_turned,
    false_former,
    greater_of,
    hedged,
    misjudged,
    reversed_bound,
)
from assistant.practice.marking.wrong_figures.exchanges import alike_points, swapped
from assistant.practice.marking.wrong_figures.explained import is_known, of_variant
from assistant.practice.marking.wrong_figures.in_range import in_ranges
from assistant.practice.marking.wrong_figures.misquoted import misquoted
from assistant.practice.marking.wrong_figures.senses import false_counts, turned
from assistant.resolving.knowing import Knowledge

_TIMES = {"double": 2.0, "doubled": 2.0, "twice": 2.0, "triple": 3.0, "treble": 3.0, "halve": 0.5, "halved": 0.5}


_WHOLE = re.compile(r"\b(?:all of (?:it|them)|the whole (?:lot|of it)|everything)\b")
"""The whole of a share."""


class Numbers(NamedTuple):
    """For each point the place of each of its figures (None: not said), and what was wrong."""

    found: dict[int, tuple[int | None, ...]]
    wrong: tuple[str, ...]


def judge_numbers(need: Need, said: Said, know: Knowledge) -> Numbers:
    """Return which figures an answer holds, and which of its numbers contradict."""
    wanted = [(i, k, f) for i, p in enumerate(need.points) for k, f in enumerate(p.figures)]
    fits = [[(i, k) for i, k, f in wanted if _suits(claim, f, need, said, know)] for claim in said.claims]
    found: dict[tuple[int, int], int] = {}
    labels = {} if need.ordered or need.change else labels_of(need, alike_points(need), know)
    named = stretches(labels, (c.amount.start for c in said.claims if not c.former), said) if len(labels) > 1 else {}
    doubled = _by_doubling(wanted, said, know)
    wrong = [] if doubled else [*swapped(need, said, fits, labels, named)]
    again: list[Claim] = []
    for claim, spots in zip(said.claims, fits, strict=True):
        taken = _taken(spots, claim, found, need, named, said)
        again += [claim] if spots and not taken and need.ordered else []
        found.update(dict.fromkeys(taken, claim.amount.start))
    if _WHOLE.search(" ".join(said.reading.words)):
        found.update({(i, k): 0 for i, k, f in wanted if f.unit in ("factor", "", "percent") and f.value in (1, 100)})
    found.update(_on_the_other_side(wanted, found, said))
    found.update(doubled)
    roughly = in_ranges(need, said, know)
    found.update({spot: place for spot, place in roughly.items() if spot not in found})
    unsaid = [(i, f) for i, k, f in wanted if (i, k) not in found and not _covered(need.points[i], i, found)]
    missing = [f for i, f in unsaid if not _in_words(need.points[i], said)]
    wrong += [c.amount.raw for c in again if _is_for_a_missing_one(c, need, found, said, know)]
    wrong += [c.amount.raw for c in said.claims if need.standing and misjudged(c, need, said, know)]
    wrong += [c.amount.raw for c in said.claims if condition_turned(c, need, said, know)]
    for claim, spots in zip(said.claims, fits, strict=True):
        if claim.amount.start in roughly.values():
            continue
        if spots:
            figures = [need.points[i].figures[k] for i, k in spots]
            wrong += reversed_bound(claim, figures, need, said)
            wrong += [] if need.change else turned(claim, figures, need, said)
        elif _on_other_side(claim, need, said, know):
            wrong.append(f"{claim.amount.raw} on the other side")
        elif _counts_now(claim, need, know) and not is_known(claim, need, missing, said, know):
            wrong.append(f"{claim.amount.raw}")
    wrong += [claim.amount.raw for claim in said.claims if claim.former and _is_denied(claim, wanted, said, know)]
    wrong += [word for word in said.reading.words if word in _TIMES and any(f.unit in ("factor", "") for f in missing)]
    wrong += hedged(said, fits, [n for n, c in enumerate(said.claims) if of_variant(c, need, said, know)])
    wrong += greater_of(need, said)
    wrong += false_former(need, said, know)
    wrong += false_counts(need, said, know)
    wrong += misquoted(need, said, know)
    places = {
        i: tuple(found.get((i, k)) for k in range(len(p.figures))) for i, p in enumerate(need.points) if p.figures
    }
    return Numbers(places, tuple(dict.fromkeys(wrong)))


def _is_denied(claim: Claim, wanted: list[tuple[int, int, Figure]], said: Said, know: Knowledge) -> bool:
    """Return whether the very figure that is asked for is said not to be so: "it is not 230 kt"."""
    before = said.reading.words[max(0, claim.amount.start - 2) : claim.amount.start]
    return "not" in before and any(says(claim, f, know) for _, _, f in wanted)


def _on_the_other_side(
    wanted: list[tuple[int, int, Figure]], found: dict[tuple[int, int], int], said: Said
) -> dict[tuple[int, int], int]:
    """Return the figures of a case that is told as the other of one with the same number: "otherwise", "if not"."""
    other = next((i for i, word in enumerate(said.reading.words) if word in ("otherwise", "else")), -1)
    told = {f.value for i, k, f in wanted if (i, k) in found and found[i, k] < other}
    return {(i, k): other for i, k, f in wanted if (i, k) not in found and f.value in told and f.sense}


def _is_for_a_missing_one(
    claim: Claim, need: Need, found: dict[tuple[int, int], int], said: Said, know: Knowledge
) -> bool:
    """Return whether a step's number, said once more, stands with the words of another step whose number is missing."""
    before = max((c.amount.end for c in said.claims if c.amount.end <= claim.amount.start), default=0)
    near = range(max(before, claim.amount.start - _NEAR), min(len(said.words), claim.amount.end + 2))
    for i, point in enumerate(need.points):
        lacks = any((i, k) not in found and same_kind(claim.amount, f, know.units) for k, f in enumerate(point.figures))
        heavy = [e for e in point.elements if e.weight > _TELLING and not e.given]
        if lacks and heavy and words_said(point, said, near)[0] >= _MOST:
            return True
    return False


_NEAR = 9
_TELLING = 0.7
_MOST = 0.4


def _on_other_side(claim: Claim, need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether a number that the full answer gives as a bound is said from its other side: "under 15 s"."""
    stands = {"higher": "up", "lower": "down"}.get(claim.sense, "")
    judged = need.within is not None or any(p.verdict for p in need.points)
    if judged or not stands:
        return False
    if not said.beside([claim.amount.start]).isdisjoint(NEGATORS | {"unless", "until", "only"}):
        return False
    full = know.phrase(need.expected)
    sides = {side_of(a, full) for a in full.amounts if equals(claim.amount, Figure(a.value, a.unit or ""), know.units)}
    return bool(sides) and stands not in sides and "" not in sides


def _covered(point: Point, index: int, found: dict[tuple[int, int], int]) -> bool:
    return point.any_figure and any(i == index for i, _ in found)


def _in_words(point: Point, said: Said) -> bool:
    """Return whether the words of a point say it without its figure."""
    return point.either and words_said(point, said)[0] >= ENOUGH and not _bounds_others(point, said)


def _bounds_others(point: Point, said: Said) -> bool:
    """Return whether the word by which a point is a bound stands only before other numbers: "above 350", of 250."""
    ways = {w for e in point.elements for w in e.words if w in _WAYS and not e.given}
    places = [i for i, word in enumerate(said.words) if word in ways]
    return bool(places) and all(_before_number(i, said) for i in places)


def _before_number(place: int, said: Said) -> bool:
    """Return whether a word stands before a number, with no more between than what measures it roughly."""
    words = said.reading.words
    after = next((i for i in range(place + 1, len(words)) if words[i] not in _ROUGHLY), len(words))
    return after in said.numbered


_WAYS = frozenset(map(plain, ("above", "below")))
_ROUGHLY = word_set("a about around its say some than that the")


def _taken(
    spots: list[tuple[int, int]],
    claim: Claim,
    found: dict[tuple[int, int], int],
    need: Need,
    named: dict[int, set[int]],
    said: Said,
) -> list[tuple[int, int]]:
    """Return which figures a number says: of steps the next one, else all that are alike, or those it is said of."""
    free = [spot for spot in spots if spot not in found]
    if need.ordered:
        return free[:1]
    here = {p for p, places in named.items() if claim.amount.start in places}
    alike = len(spots) > 1 and all(need.points[i].figures_suffice for i, _ in spots)
    if (
        here
        and alike
        and len({need.points[i].figures for i, _ in spots}) == 1
        and not ALIKE.search(" ".join(said.reading.words))
    ):
        return [spot for spot in free if spot[0] in here]
    return [spot for spot in free if spot[0] in here or not here or spot[0] not in named]


def _suits(claim: Claim, figure: Figure, need: Need, said: Said, know: Knowledge) -> bool:
    if need.change:
        return (claim.former or _leads_on(claim, said)) is (figure.value in {f.value for f in need.former}) and says(
            claim, figure, know
        )
    if claim.former:
        return False
    return says(claim, figure, know)


def _leads_on(claim: Claim, said: Said) -> bool:
    """Return whether a number is the first of two of a change: "1,800 to 2,000", "280, now 250"."""
    after = said.reading.words[claim.amount.end : claim.amount.end + 3]
    following = [c for c in said.claims if c.amount.start >= claim.amount.end]
    return bool(following) and ("to" in after[:2] or _turns_to("now", after) or _turns_to("before", after[:1]))


def _turns_to(word: str, after: Sequence[str]) -> bool:
    """Return whether a word behind a number speaks of the next one: "280, now 250", not "250 now and 280 before"."""
    rest = after[after.index(word) + 1 :] if word in after else ("and",)
    return not rest or rest[0] not in _LEADING_OFF


_LEADING_OFF = word_set("and , . ; but it that this used formerly previously before")
"""Words behind a "now" by which it is the number before it that holds now."""


def _by_doubling(
    wanted: list[tuple[int, int, Figure]], said: Said, know: Knowledge
) -> dict[tuple[int, int], int]:
    """Return the figures that are told as another one's double: "15 seconds, and double that once it is pulled"."""
    words = said.reading.words
    found = {}
    for i, word in enumerate(words):
        before = [c for c in said.claims if c.amount.end <= i]
        if word in _TIMES and words[i + 1 : i + 2] != () and words[i + 1] in _THAT and before:
            amount = before[-1].amount
            twice = before[-1]._replace(amount=amount._replace(value=amount.value * _TIMES[word]))
            found.update({(p, k): i for p, k, f in wanted if says(twice, f, know)})
    return found


_THAT = frozenset(("that", "it", "this", "as"))

def _counts_now(claim: Claim, need: Need, know: Knowledge) -> bool:
    """Return whether a number is given as what holds, or a change is asked for, where the former one counts too."""
    return not claim.former or need.change or _is_present_former(claim, need, know)


def _is_present_former(claim: Claim, need: Need, know: Knowledge) -> bool:
    """Return whether a former value is given as the present one: "now 280"."""
    return claim.now and any(equals(claim.amount, f, know.units) for f in need.former)
