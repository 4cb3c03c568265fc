"""Answers that say something true of the thing asked about, which nobody asked: "it takes 18 s", of a speed.

The answer is put to the assistant itself, with the names of the question where it only points at them ("it", "they",
an order); what it then tells, or the full answer to the question, must say all that the answer does. What could stand
in the place of a point (a figure of its kind, another colour, another mode) is an answer, and no remark.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.answering.compose import compose
from assistant.conversation.reading_turns.readings import question_of
from assistant.practice.marking.compare import Compared
from assistant.practice.marking.finding.beside_point import OF_AMOUNTS, numbered
from assistant.practice.marking.finding.equal import equals
from assistant.practice.marking.finding.polarity import denied
from assistant.practice.marking.missed.other_matter import answers_in_kind, says_so
from assistant.practice.marking.points import Figure, Need
from assistant.practice.marking.reading.said import Said, plain, read_said
from assistant.practice.marking.reading.wording import word_set
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge
from assistant.resolving.ranking import candidates

_NEAR_BY = 4
_LEAST = 2
"""Words besides its numbers that a remark has: a bare number is an answer."""
_POINTING = word_set("it its they them there this that these those he she")
_ANSWERING = word_set("""
    after also at because before both by everything for from if in neither no nothing on only same since so to until
    when whenever whichever with without yes
""")
"""First words with which an answer goes on from the question."""
_SMALL = frozenset(map(plain, word_set("""
    a an and are as at be been being both by can comes do does for from get gets give gives go goes had has have he her
    his i in is it its just me my of off on one or s sits so some stands t take takes that the their them there these
    need needs run runs show shows shown sit time comes mark marks hear then lie lies works work
    they this those to up was were will with you your
""")))
"""Words that tell too little for a remark to be doubted for them."""
_TELLING = (r.FactResult, r.LimitResult, r.TableResult, r.ProcedureResult, r.BandResult)


def is_true_remark(compared: Compared, need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether an answer that holds no point says what is true and was not asked."""
    words = said.reading.words
    if need.cause or need.loss or not words or words[0] in _ANSWERING or is_bare(said):
        return False
    if any(h.share for h in compared.held) or not _asks_one_kind(need, said):
        return False
    if not _is_beside(compared.wrong, said, know):
        return False
    if any(p.figures for p in need.points) and not OF_AMOUNTS.isdisjoint(words):
        return False
    counted = numbered(need, said, know) and any(p.figures for p in need.points)
    if counted or _names_points(need, said) or answers_in_kind(need, said, know):
        return False
    return any(_bears_out(text, said, know) for text in _texts(need, said, know))


def _is_beside(wrong: tuple[str, ...], said: Said, know: Knowledge) -> bool:
    """Return whether all that speaks against an answer are numbers and colours, which are none of those asked for."""
    own = {c.amount.raw for c in said.claims} | {
        word for word, here in zip(said.reading.words, said.concepts, strict=True)
        if any(know.lexicon.families.get(c) == "colour" for c in here)
    }  # fmt: skip
    return own.issuperset(wrong) or wrong == (said.text.strip(),)


def _asks_one_kind(need: Need, said: Said) -> bool:
    """Return whether what is asked for is of a kind that the answer is not: no account of what is done or meant."""
    if need.ordered:
        return bool(_TELLS.search(" ".join(said.reading.words[:_EARLY])))
    return not _OPEN.search(need.question.text)


_EARLY = 6
_TELLS = re.compile(
    r"\b(?:is|are|has|hasn t|have|comes?|runs?|needs?|shows?|means?|takes?|lights?|do|does|sits?|stays?|gives?|hear)\b"
)
"""Verbs that tell of a thing, where steps are asked for."""
_ORDERING = word_set("call check hold keep leave press pull put release remove request set show slow steer use wait")
_OPEN = re.compile(
    r"\bwhat (?:do|does|happens|should|technique|stops|(?:must|should|is) (?:be |to be )?done|follows)\b|"
    r"\bhow (?:do|does|should|are) (?!.*\b(?:display|draw|indicate|look|mark|show)\b)|"
    r"\bmeans?\b|\bwhy (?:does|do) (?:the aeroplane|it) have\b",
    re.IGNORECASE,
)
"""What may be answered by anything that is so or is done."""


def _names_points(need: Need, said: Said) -> bool:
    """Return whether an answer names what a point, or what would be right of another case, is told by."""
    points = (*need.points, *need.others, *need.row)
    own = frozenset(c for p in points for e in p.elements if not e.given for c in e.concepts)
    own |= frozenset(c for p in points if p.state for c in p.state.subject)
    return any(not m.concepts.isdisjoint(own) for m in said.content)


def _bears_out(text: str, said: Said, know: Knowledge) -> bool:
    """Return whether a text says all that an answer does, word by word, and denies none of it."""
    if not says_so(text, said, know, _SMALL):
        return False
    true = read_said(text, know)
    off = denied(true.reading.words, true.reading)
    put_off = denied(said.reading.words, said.reading)
    denied_there = {true.words[i] for i in off}
    denied_here = {said.words[i] for i in put_off}
    words = set(true.words)
    own = {w for i, w in enumerate(said.words) if i not in said.numbered and w not in _SMALL}
    known = {said.words[i] for m in said.content for i in m.taken}
    return own <= words | known and not (own & denied_there) ^ (own & denied_here)


def is_bare(said: Said) -> bool:
    """Return whether an answer is hardly more than a number or a name."""
    words = said.reading.words
    if sum(i not in said.numbered and w.isalnum() for i, w in enumerate(words)) < _LEAST:
        return True
    return words[0] not in _ORDERING and not _TELLS.search(" ".join(words)) and _POINTING.isdisjoint(words[:_EARLY])


def _texts(need: Need, said: Said, know: Knowledge) -> Iterator[str]:
    """Yield what may bear an answer out: the full answer, and what is told of its words."""
    yield need.expected
    yield from _stated(need, said, know)
    yield from _told(said.text, know)
    if not said.content or not _POINTING.isdisjoint(said.reading.words[:_LEAST]):
        yield from _told(f"{need.question.text.split('?')[0]}: {said.text}", know)


def _stated(need: Need, said: Said, know: Knowledge) -> Iterator[str]:
    """Yield the limits with the numbers of an answer that are of a thing which it or the question names."""
    named = need.question.concepts | frozenset(c for m in said.content for c in m.concepts)
    things = {c for c in named if c[0] not in "~@=#!" and know.lexicon.kinds.get(c, "thing") == "thing"}
    for limit in (know.base.records[name] for name in know.base.ids("limits") if said.claims):
        value = limit.value or limit.maximum or limit.minimum
        figure = Figure(value.value, value.unit) if value else None
        told = figure and all(equals(c.amount, figure, know.units) for c in said.claims)
        if told and things & know.phrase(limit.of).concepts:
            yield f"{said.claims[0].amount.raw}: {limit.of}"


def _told(text: str, know: Knowledge) -> Iterator[str]:
    question = question_of(text, know, "")
    for found in candidates(question, know)[:_NEAR_BY]:
        if isinstance(found.result, _TELLING):
            yield compose(found.result, question, know).text
