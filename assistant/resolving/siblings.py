"""What holds for one of a family is no answer for another: a ceiling for extending is none for retracting."""

from __future__ import annotations

from assistant.resolving.knowing import Knowledge, Question
from assistant.understanding.matching import Match
from assistant.understanding.mentions import BOUNDS, Mention


def sibling_named(match: Match, question: Question, know: Knowledge) -> Mention | None:
    """Return what a question names that a record knows nothing of, where it was found by another of its family, which
    the question does not name: an altitude for extending is none for retracting.
    """
    if match.whole or question.reading.amounts:
        return None
    families, named = know.lexicon.families, question.reading.concepts
    missed = {families[c] for c in match.concepts if c in families and c not in named and c not in BOUNDS}
    if not missed:
        return None
    for mention in question.reading.mentions:
        own = {families.get(c, "") for c in mention.concepts}
        if not mention.weak and own <= missed and _knows_nothing_of(mention, match.record, know):
            return mention
    return None


def _knows_nothing_of(mention: Mention, record: str, know: Knowledge) -> bool:
    return know.matcher.vocabulary(record).isdisjoint(mention.concepts)
