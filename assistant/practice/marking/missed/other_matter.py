"""Answers that tell what is true of another matter, and nothing of what is asked: beside the point, and not wrong.

"The fans run on the ground only" says nothing of where the brake dial is. What holds a figure of the kind that is asked
for, or another colour, mode or person than the one asked for, is an answer all the same, and a wrong one.
"""

from __future__ import annotations

import re

from assistant.conversation.reading_turns.readings import question_of
from assistant.practice.marking.finding.equal import equals, same_kind
from assistant.practice.marking.finding.found import Held
from assistant.practice.marking.finding.polarity import denied
from assistant.practice.marking.finding.rivals import rivals
from assistant.practice.marking.of_results.label_parts import other_label
from assistant.practice.marking.points import Figure, Need
from assistant.practice.marking.reading.contraries import OTHER
from assistant.practice.marking.reading.said import Said, plain_words, read_said
from assistant.practice.marking.reading.wording import NEGATORS, word_set
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge
from assistant.resolving.ranking import candidates

_NEAR_BY = 3
_LEAST = 2
"""Things that a remark must name, so that it can be told from an answer."""
_OWN = 0.5
"""Share of them that the question may name too."""


def on_another_matter(held: tuple[Held, ...], need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether an answer that holds no point is what a statement on another matter says."""
    if need.cause or need.loss or not said.words or said.reading.words[0] in _ON_WHAT_IS_ASKED:
        return False
    if any(h.share and not h.point.verdict for h in held) or answers_in_kind(need, said, know):
        return False
    if _refuses(held, need, said) or _is_answer_alone(need, said):
        return False
    named = [m for m in said.content if not m.mended and said.words[m.start] not in NEGATORS]
    told = any(not need.words.isdisjoint(said.words[i] for i in m.taken) for m in named)
    if told or len(named) < _LEAST or not _is_elsewhere([m.concepts for m in named], need):
        return False
    found = candidates(question_of(said.text, know, ""), know)[:_NEAR_BY]
    facts = [c.result.fact for c in found if isinstance(c.result, r.FactResult)]
    return any(fact.says not in need.expected and says_so(fact.says, said, know) for fact in facts)


def _is_answer_alone(need: Need, said: Said) -> bool:
    """Return whether an answer names no more than a thing, where it is asked what does it: "the short brake pulse"."""
    text = " ".join(said.reading.words)
    return _WHAT_DOES.search(need.question.text) is not None and _NAMED_ALONE.match(text) is not None


_WHAT_DOES = re.compile(
    r"\b(?:what|which \w+)(?! (?:is|are|do|does|did|should|must|may|can|will|happens)\b) \w+s\b", re.IGNORECASE
)
_NAMED_ALONE = re.compile(
    r"(?:(?:well|oh|um|just) )*(?:the|a|an) (?:[a-z-]*[a-rt-z] ){0,3}[a-z-]+"
    r"(?: (?:just )?(?:before|after|when|in|on|at|of)\b|$)"
)


def _refuses(held: tuple[Held, ...], need: Need, said: Said) -> bool:
    """Return whether an answer rightly denies outright what is asked: "no towing", of whether it may be towed."""
    first = next((m for m in said.content if m.start == 1), None)
    denied_first = said.reading.words[0] == "no" and first is not None and first.concepts & need.question.concepts
    return bool(denied_first) and any(h.share and h.point.verdict for h in held)


_ON_WHAT_IS_ASKED = word_set("""
    after also at because before both by everything for from if in it its neither nothing on only same since so that
    they this those to until when whenever whichever with without yes
""")
"""Words with which an answer goes on from the question, instead of telling of something by its name."""


def answers_in_kind(need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether an answer gives a figure, a colour, a mode, a label or a person as it is asked for."""
    figures = [f for p in need.points for f in p.figures]
    return any(same_kind(c.amount, f, know.units) for c in said.claims for f in figures) or bool(
        rivals(need, said, know) or other_label(need, said, know)
    )


def _is_elsewhere(named: list[frozenset[str]], need: Need) -> bool:
    """Return whether what an answer names is not what the points name, and mostly not what the question does."""
    points = frozenset(c for p in need.points for e in p.elements if not e.given for c in e.concepts)
    points |= frozenset(c for p in need.points if p.state for c in p.state.subject)
    if need.row and all(p.verdict for p in need.points):
        points |= need.said  # a bare yes or no: what it is one of stands in the full answer
    own = sum(not each.isdisjoint(need.question.concepts) for each in named)
    return all(each.isdisjoint(points) for each in named) and own <= _OWN * len(named)


def says_so(says: str, said: Said, know: Knowledge, passed: frozenset[str] = frozenset()) -> bool:
    """Return whether a statement says all that an answer does but some words, and nothing of it the other way about."""
    true = read_said(says, know)
    concepts = frozenset(c for here in (*true.concepts, *true.inner) for c in here)
    words = frozenset(plain_words(true.reading.words))
    told = all(
        not m.concepts.isdisjoint(concepts) or (words | passed).issuperset(said.words[i] for i in m.taken)
        for m in said.content
    )
    turned = any(other in words and w not in words for w in said.words for other in OTHER.get(w, ()))
    figures = [Figure(c.amount.value, c.amount.unit or "") for c in true.claims]
    counted = all(any(equals(c.amount, f, know.units) for f in figures) for c in said.claims)
    return told and not turned and counted and _denies_alike(true, said)


def _denies_alike(true: Said, said: Said) -> bool:
    """Return whether an answer denies something just where a statement does."""
    here, there = (denied(each.reading.words, each.reading) for each in (said, true))
    off = {said.words[i] for i in here}
    if len(said.words) > len(true.words) // 2:
        return bool(here) is bool(there)
    return off <= {true.words[i] for i in there}
