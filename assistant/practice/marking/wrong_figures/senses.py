"""In which sense a number is given: added or divided, more or less than a count, outside a band, of each or in all."""

from __future__ import annotations

import re
from collections.abc import Iterable
from itertools import pairwise

from assistant.practice.marking.finding.elements import concepts_in
from assistant.practice.marking.points import Figure, Need
from assistant.practice.marking.reading.said import Claim, Said
from assistant.practice.marking.reading.wording import word_set
from assistant.resolving.knowing import Knowledge

_LESSENING = word_set("deduct deducted divide divided dividing minus reduce reduced subtract subtracted")
_LESS_AFTER = word_set("fewer less lower shorter slower smaller")
_TAKEN = re.compile(r"(?<!for )(?<!at )(?<!before )(?<!of )(?<!during )\b(?:takes?|taking|took|taken) (?:away|off)\b")
_BOUNDED = re.compile(r"\bor (?:less|lower|fewer|slower|smaller|shorter)\b|\bless than\b")
_NEAR = 4
_COUNTED = ("count", "")
_INCLUDED = re.compile(r"\b(?:up to and including|inclusive|or equal|at or (?:below|above))\b")
_OUTSIDE = frozenset(("outside", "beyond", "except"))
_EACH = frozenset(("each", "every", "per"))
_JOINING = frozenset(("at", "for", "in", "main", "of", "on", "the", "to"))


def turned(claim: Claim, figures: Iterable[Figure], need: Need, said: Said) -> list[str]:
    """Return a number that is right but for what is done with it: divided by, taken away, more than a count."""
    wanted = list(figures)
    if need.within is None and _is_taken_away(claim, need, said):
        return [f"{claim.amount.raw} taken away"]
    if _is_outside(claim, wanted, need, said):
        return [f"outside {claim.amount.raw}"]
    if need.within is None and _inside_out(claim, wanted, need):
        return [f"{claim.amount.raw} on the other side"]
    if claim.sense == "lower" and _not_within(claim, said):
        return []
    if claim.sense == "higher" and said.reading.words[claim.amount.start - 1 : claim.amount.start] == ("from",):
        return []  # what begins at a figure
    if _ends_band(claim, wanted, need, said):
        return []
    counted = wanted and all(_is_count(f) for f in wanted) and claim.sense
    strict = wanted and all(_is_exact(f) for f in wanted) and claim.sense in ("lower", "higher")
    if (counted or (strict and need.within is None)) and not _is_bounded(need):
        return [f"{claim.amount.raw} as a bound"]
    open_ended = any(f.sense in ("lower", "higher") for f in wanted)
    if open_ended and _INCLUDED.search(_around(claim, said)):
        return [f"{claim.amount.raw} included"]
    return []


def _not_within(claim: Claim, said: Said) -> bool:
    """Return whether a thing is said not to have come about within a time: "hasn't reached it within 15 s"."""
    before = said.reading.words[max(0, claim.amount.start - _CLAUSE) : claim.amount.start]
    return before[-1:] == ("within",) and "not" in before


_CLAUSE = 12


def _inside_out(claim: Claim, wanted: list[Figure], need: Need) -> bool:
    """Return whether an end of a band is said from outside: "less than 90 or more than 160 mm"."""
    if len(wanted) != 1 or not claim.sense or (claim.sense == "min" and claim.amount.unit == "min"):
        return False
    for point in need.points:
        bands = [f for f in point.figures if not f.sense]
        if len(bands) == 2 and len(point.figures) == 2 and bands[0].unit == bands[1].unit and wanted[0] in bands:
            least = min(bands, key=lambda f: f.value)
            if claim.sense in ("min", "max"):
                return (claim.sense == "max") is (wanted[0] == least)
            return (claim.sense == "lower") is (wanted[0] == least)
    return False


def _ends_band(claim: Claim, wanted: list[Figure], need: Need, said: Said) -> bool:
    """Return whether a number is an end of a band of which the other end is said too: "from 60 up to 110"."""
    told = {c.amount.value for c in said.claims}
    bands = [p.figures for p in need.points if len(p.figures) == _ENDS and not any(f.sense for f in p.figures)]
    return bool(claim.sense) and any(
        figure in band and all(f.value in told for f in band) for figure in wanted for band in bands
    )


_ENDS = 2


def _is_count(figure: Figure) -> bool:
    return _is_exact(figure) and figure.unit in _COUNTED


def _is_exact(figure: Figure) -> bool:
    return not figure.sense and not figure.tolerance


def _is_bounded(need: Need) -> bool:
    """Return whether the full answer, or the question, itself bounds a number."""
    text = f"{need.expected} {' '.join(need.question.words)}".lower()
    return _BOUND.search(text) is not None


_BOUND = re.compile(
    r"\b(?:at most|at least|up to|or more|or less|maximum|minimum|max|min|limit|above|below|until|within|under|over)\b"
)


def _around(claim: Claim, said: Said) -> str:
    return " ".join(said.reading.words[max(0, claim.amount.start - _NEAR) : claim.amount.end + 3])


def _is_taken_away(claim: Claim, need: Need, said: Said) -> bool:
    """Return whether a number is divided by or taken away, where the full answer does neither."""
    words = said.reading.words
    known = {
        *_BOUNDED.sub(" ", need.expected.lower()).replace(",", " ").replace(".", " ").split(),
        *need.question.words,
    }
    since = max((c.amount.end for c in said.claims if c.amount.end <= claim.amount.start), default=0)
    before = words[max(since, claim.amount.start - _NEAR - 1) : claim.amount.start]
    after = words[claim.amount.end : claim.amount.end + 1]
    if known & (_LESSENING | _LESS_AFTER) or "or" in after or any(p.side for p in need.points):
        return False
    lessened = any(w in _LESSENING and after_it != "to" for w, after_it in pairwise((*before, "")))
    lessened = lessened and before[-1:] != ("to",)  # "reduce speed to 205" takes nothing away from it
    by_words = lessened or (bool(_TAKEN.search(" ".join(before))) and not {"off", "take-off"} & known)
    compared = words[claim.amount.end + 1 : claim.amount.end + 2] == ("than",)
    return by_words or (not compared and not _LESS_AFTER.isdisjoint(after))


def _is_outside(claim: Claim, wanted: list[Figure], need: Need, said: Said) -> bool:
    """Return whether a band is turned inside out: "outside 60 to 110 mm"."""
    before = said.reading.words[max(0, claim.amount.start - 2) : claim.amount.start]
    exact = bool(wanted) and not any(f.sense for f in wanted)
    return exact and need.within is None and not _OUTSIDE.isdisjoint(before) and "utside" not in need.expected


def false_counts(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return small numbers of things of which the full answer tells another: "two legs" of all three."""
    known = _counted(tuple(re.findall(r"[\w-]+", _LISTED.sub(" ", need.expected.lower()))))
    asked = _counted(need.question.words)
    found = []
    small = (c.amount for c in said.claims if c.amount.unit in (None, "count"))
    counts = {a.start for a in small if a.end == a.start + 1}
    told = enumerate(said.reading.words)
    words = [w if i in counts or w == "both" or i not in said.numbered else "" for i, w in told]
    numbers = {_SMALL[w] for w in need.question.words if w in _SMALL and w not in ("one", "both")}
    for (of, each), values in _counted(words).items():
        right = known.get((of, each), set()) | asked.get((of, each), set())
        if known.get((of, each)) and values.isdisjoint(right):
            found.append(f"{min(values)} {of}")
        elif len(numbers) == 1 and not any(of == noun for noun, _ in known) and values.isdisjoint(numbers | {1}):
            named = concepts_in(of, know)
            if not any(know.lexicon.kinds.get(c, "thing") == "thing" and c[0] not in "@~!" for c in named):
                continue
            found.append(f"{min(values)} {of}")
    return found


_LISTED = re.compile(r"(?:^|\s)\d{1,2}[.)] ")
_SMALL = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "both": 2, "six": 6, "eight": 8}
_FIGURES = {str(n): n for n in _SMALL.values()}


def _counted(words: Iterable[str]) -> dict[tuple[str, bool], set[int]]:
    """Return how many of each thing some words count, in all or for each: ("leg", True) of "two on each leg"."""
    listed = list(words)
    found: dict[tuple[str, bool], set[int]] = {}
    for i, word in enumerate(listed):
        value = _SMALL.get(word) or _FIGURES.get(word, 0)
        if not value or listed[i - 1 : i] in (["number"], ["system"]) or listed[i + 1 : i + 2] in (["and"], ["or"]):
            continue
        k = i + 1
        while k < len(listed) and listed[k] in _JOINING:
            k += 1
        each = k < len(listed) and listed[k] in _EACH
        k += each
        while each and k < len(listed) and (listed[k] in _JOINING or listed[k] in _SMALL):
            k += 1
        direct = each or k == i + 1
        if direct and k < len(listed) and listed[k].isalpha() and len(listed[k]) > 2:
            found.setdefault((listed[k].rstrip("s"), each), set()).add(value)
    return found
