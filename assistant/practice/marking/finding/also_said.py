"""Answers with what the knowledge says is also said of a point put in the point's own words.

A curator writes beside a point how people say it ("stop the wheel twisting", for "keep the wheel aligned"). The words
of such a wording that tell something must stand in one sentence, in their order and close together; they are replaced
by the point, so that whatever denies or turns it round stays beside it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from assistant.practice.marking.points import Need
from assistant.practice.marking.questions.asked import Asked
from assistant.practice.marking.reading.said import plain
from assistant.practice.marking.reading.wording import NEGATORS, word_set
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge
from assistant.understanding.mentions import Reading

_APART = 3
"""Words that may stand between two of a wording."""
_STOPS = frozenset(".;?!")
_SMALL = word_set("""
    a an and are as at be been being by can do does for from has have i in is it its of on or our so that the their
    them then there these they this those to up was we were will with would you your
""")


def also_said_of(found: Iterable[Asked]) -> tuple[tuple[str, str], ...]:
    """Return the points of what answers a question, each with another way of saying it."""
    return tuple(dict.fromkeys(pair for one in found for pair in _of_result(one.result)))


def _of_result(result: object) -> Iterator[tuple[str, str]]:
    if isinstance(result, r.FactResult):
        yield from ((point, way) for point, ways in result.fact.also_said for way in ways)
    if isinstance(result, r.ProcedureResult):
        yield from ((step.do, way) for step in result.procedure.steps for way in step.also_said)


def put_plainly(answer: str, missing: Iterable[str], least: int, need: Need, know: Knowledge) -> str:
    """Return an answer in the words of the points that it is missing; itself where it says none of them otherwise.

    least: how many telling words a wording has to have, so that it is sure enough.
    """
    lacking = tuple(missing)
    wanted = [pair for pair in need.also_said if any(text in pair[0] or pair[0] in text for text in lacking)]
    words = _in_figures(know.reader.read(answer)) if wanted else []
    own = [plain(word) for word in words]
    changed = False
    for point, way in sorted(wanted, key=lambda pair: -len(pair[1])):
        telling = _telling(_in_figures(know.phrase(way)))
        span = _found(telling, own, words) if len(telling) >= least else None
        if span:
            words[span.start : span.stop] = [point]
            own[span.start : span.stop] = [plain(point)]
            changed = True
    return " ".join(words) if changed else answer


def _in_figures(reading: Reading) -> list[str]:
    """Return the words of a reading with its numbers in figures: "twenty seconds" and "20 s" are the same."""
    starts = {amount.start: amount for amount in reading.amounts}
    words: list[str] = []
    at = 0
    while at < len(reading.words):
        amount = starts.get(at)
        words += [f"{amount.value:.10g}", *([amount.unit] if amount.unit else [])] if amount else [reading.words[at]]
        at = amount.end if amount else at + 1
    return words


def _telling(words: Sequence[str]) -> list[str]:
    """Return the words of a wording that tell something; the last one does, though it is small: "pin in"."""
    own = [word for word in words if word[0].isalnum()]
    return [plain(word) for i, word in enumerate(own) if word not in _SMALL or (i and i == len(own) - 1)]


def _found(telling: list[str], own: list[str], words: list[str]) -> range | None:
    """Return where words stand in their order, close together, with no stop, number or denial between them.

    own: the plain forms of the words among which they are looked for.
    """
    for start in (i for i, word in enumerate(own) if word == telling[0]):
        at = start
        for wanted in telling[1:]:
            near = range(at + 1, min(len(words), at + _APART + 2))
            at = next((i for i in near if own[i] == wanted), -1)
            if at < 0 or any(_parts(word) for word in words[near.start : at]):
                break
        else:
            return range(start, at + 1)
    return None


def _parts(word: str) -> bool:
    return word in _STOPS or word in NEGATORS or word[0].isdigit()
