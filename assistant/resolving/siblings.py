"""What holds for one of a family is no answer for another: a ceiling for extending is none for retracting."""

from __future__ import annotations

from assistant.resolving.knowing import Knowledge, Question
from assistant.understanding.matching import Match
from assistant.understanding.mentions import Mention

_BEFORE, _THING = "before", "thing"


def sibling_named(match: Match, question: Question, know: Knowledge) -> Mention | None:
    """Return what a question names that a record knows nothing of, where it was found by another of its family, which
    the question does not name: an altitude for extending is none for retracting.
    """
    if match.whole or question.reading.amounts:
        return None
    unnamed = (match.concepts & know.lexicon.of_family) - question.reading.concepts
    if not unnamed:
        return None
    families = know.lexicon.families
    missed = {families[c] for c in unnamed}
    for mention in question.reading.mentions:
        own = {families.get(c, "") for c in mention.concepts}
        if not mention.weak and own <= missed and _knows_nothing_of(mention, match.record, know):
            return mention
    return None


def _knows_nothing_of(mention: Mention, record: str, know: Knowledge) -> bool:
    return know.matcher.vocabulary(record).isdisjoint(mention.concepts)


def case_named(match: Match, question: Question, know: Knowledge) -> Mention | None:
    """Return the case that a question names first of two of a family, where a record was found by the other alone, of
    which is said only that it comes after: "a mismatch as it comes down, what speed before I put it back up".
    """
    if _BEFORE not in question.reading.words:
        return None
    if _BEFORE in str(getattr(know.base.records[match.record], "title", "")).lower():
        return None
    families, kinds = know.lexicon.families, know.lexicon.kinds
    found = {families[c]: c for c in match.concepts if c in families and kinds.get(c, _THING) == _THING}
    for mention in question.reading.mentions:
        for name in mention.concepts:
            later = found.get(families.get(name, ""), name)
            if later != name and _comes_after(later, mention, question):
                return mention
    return None


def _comes_after(concept: str, first: Mention, question: Question) -> bool:
    """Return whether a concept is named only behind a "before" that stands after another mention."""
    words = question.reading.words
    named = [m for m in question.reading.mentions if concept in m.concepts]
    return bool(named) and all(_BEFORE in words[first.end : m.start] for m in named)
