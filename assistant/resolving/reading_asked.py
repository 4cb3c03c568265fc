"""A question whether what is so here is well, without saying what it is: the reading is asked back for.

"Is our nose tyre pressure ok?" is no question for the figure: it wants a verdict, and lacks what is to be judged.
"""

from __future__ import annotations

from itertools import pairwise

from assistant.knowledge.records import Bands, Limit
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Needed, Result

PRESENT = frozenset({"now", "currently", "presently"})
_HERE = PRESENT | {"this", "these"}
"""Words by which a question means an amount that it does not give."""
_IS = frozenset({"is", "are", "am"})
_OURS = frozenset({"i", "we", "my", "our", "it", "this", "that", "these", "they", "the"})
"""Words by which a question asks for a verdict on what is so here: "am I slow enough to …", "is my brake too hot"."""
_WELL = frozenset({"ok", "okay", "alright", "fine", "good", "legal", "acceptable", "permissible", "healthy"})
_MINE = frozenset({"my", "our", "ours", "mine", "this", "that", "these", "those"})
_OPEN = frozenset({
    "what", "how", "which", "when", "where", "why", "who", "if", "with", "without", "at", "after", "before",
    "not", "than", "by",
})  # fmt: skip
_WITHIN = (("within", "limits"), ("in", "limits"), ("within", "limit"), ("inside", "limits"), ("within", "the"))
_AT_ENDS = 3
_SURE = 0.8


def whether_well(question: Question) -> bool:
    """Return whether a question asks if a reading of one's own, which it does not give, is well: "is our nose tyre
    pressure ok", "are we good on landing mass".
    """
    if question.reading.amounts or question.conditions or not _OPEN.isdisjoint(question.reading.words):
        return False
    words = tuple(w for w in question.reading.words if w[0].isalpha())
    if len(words) < _AT_ENDS:
        return False
    if any(one in _WELL and other == "to" for one, other in pairwise(words)):
        return False  # "is it ok to tow": an act is judged, and no reading
    ends = words[-_AT_ENDS:]
    well = not _WELL.isdisjoint(ends[-2:]) or any(pair in _WITHIN for pair in pairwise(ends))
    well = well or any(one in _WELL and other == "for" for one, other in pairwise(words))
    on = words[:2] in (("are", "we"), ("am", "i")) and not _WELL.isdisjoint(words[2:3])
    owned = not _MINE.isdisjoint(words[:3]) and "have" not in words
    return on or (well and owned and (words[0] in _IS or words[0] in _MINE or "is" in words[1:3]))


def lacks_its_reading(question: Question, result: Result, score: float) -> bool:
    """Return whether a question asks if a reading is well and is understood but for that, whatever was said before."""
    return isinstance(result, Needed) and score >= _SURE and whether_well(question)


def to_judge(record: Limit | Bands, question: Question, know: Knowledge) -> str:
    """Return the kind of reading, in a word, that is to be held against a limit or judged by bands for a question that
    only asks if it is well; nothing for any other question or record.
    """
    bound = (record.maximum or record.minimum) if isinstance(record, Limit) else None
    if not whether_well(question):
        return ""
    judging = record if isinstance(record, Bands) else judging_bands(record, know)
    unit = bound.unit if bound else judging.unit if judging else ""
    if not unit:
        return ""
    return know.units.get(unit).dimension.replace("_", " ")


def judging_bands(limit: Limit, know: Knowledge) -> Bands | None:
    """Return the bands that judge a reading by shares of a stated figure, as of a tyre pressure, where there are."""
    if limit.maximum or limit.minimum:
        return None
    for name in know.base.ids("bands"):
        bands = know.base.records[name]
        if isinstance(bands, Bands) and bands.reference == limit.id:
            return bands
    return None


def for_verdict(limit: Limit, question: Question) -> bool:
    """Return whether a question wants a verdict on a reading that it does not give: "can I extend at this speed?"."""
    reading = question.reading
    pressing = _HERE.intersection(reading.words) and not reading.asked & QUANTITIES
    return bool((limit.maximum or limit.minimum) and reading.has("can") and not reading.amounts and pressing)


def whether_enough(limit: Limit, question: Question, know: Knowledge) -> str:
    """Return what is to be read for a question if what is so here is enough, or too much, of what a limit bounds:
    "am I slow enough to drop the gear", "are we too heavy to land"; nothing for any other.
    """
    words = question.reading.words
    bound = limit.maximum or limit.minimum
    if words[0] not in _IS or _OURS.isdisjoint(words) or question.reading.amounts or bound is None:
        return ""
    manner = next((words[i + 1] for i, w in enumerate(words[:-1]) if w == "too"), "")
    manner = manner or next((words[i - 1] for i, w in enumerate(words) if w == "enough"), "")
    if not manner:
        return ""
    measured = know.phrase(f"how {manner}").concepts & QUANTITIES
    bounded = measured & know.matcher.vocabulary(limit.id)
    if measured:
        return min(bounded, default="")
    return know.units.get(bound.unit).dimension.replace("_", " ")
