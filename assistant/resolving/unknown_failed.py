"""A failure told of something that no state table knows, where a result of one is asked: it is not answered.

"The yellow pump has packed in, any autobrake?" must not be answered as if nothing had failed, nor from elsewhere.
"""

from __future__ import annotations

from collections.abc import Collection

from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Declined
from assistant.resolving.state_asked import NAMELESS, output_matches
from assistant.understanding.clauses import asking
from assistant.understanding.grouping import LINKS
from assistant.understanding.mentions import PLAIN, Mention

_ARTICLES = frozenset(("the", "our", "a", "an"))
_BETWEEN = LINKS | {"simply", "suddenly", "completely", "also", "only", "s"}
_GONE = frozenset(("@lost", "@empty"))
_NO_FAILURE = frozenset(("without", "no", "out", "down"))
"""Words for being without a thing, or out of it, which tell of no failure by themselves."""
_ENDS = frozenset(("stop", "stops"))
_TOWARDS = frozenset(("to", "against", "at", "on", "onto", "hit", "hits"))
_WORDS = 3


def unknown_failed(question: Question, record: str, know: Knowledge, excused: Collection[int]) -> Declined | None:
    """Return the words for what has failed, where nothing else has, a result of the tables is asked for, and the record
    that would answer does not speak of it.
    """
    reading = question.reading
    failed = [m for m in reading.mentions if not _GONE.isdisjoint(m.concepts)]
    failed = [m for m in failed if _NO_FAILURE.isdisjoint(m.text.split()) and not _is_an_end(m, reading.words)]
    if not failed or any(not c.is_result for c in question.conditions) or question.unsaid:
        return None
    asks = asking(reading.words)
    places = next((found for m in failed if asks and m.start not in asks and (found := _thing(m, question))), range(0))
    if not places or not any(m.whole for m in output_matches(question, know, excused)):
        return None
    words = [reading.words[k] for k in places]
    named = [m for m in reading.mentions if not set(m.taken).isdisjoint(places) and _GONE.isdisjoint(m.concepts)]
    concepts = {c for m in named for c in m.concepts if not c.startswith(PLAIN)}
    spoken_of = (record, *know.tables) if record else know.tables
    if any(not know.matcher.vocabulary(name).isdisjoint(concepts) for name in spoken_of):
        return None
    return Declined((" ".join(words),))


def _is_an_end(mention: Mention, words: tuple[str, ...]) -> bool:
    """Return whether a "stop" is how far something can be moved: "against the right stop", "to its stop"."""
    before = words[max(0, mention.start - 3) : mention.start]
    return mention.text in _ENDS and not _TOWARDS.isdisjoint(before)


def _thing(failed: Mention, question: Question) -> range:
    """Return where a thing stands before or after a word for having failed: "the | gizmo | has packed in"."""
    words = question.reading.words
    end = failed.start
    while end > 0 and words[end - 1] in _BETWEEN:
        end -= 1
    start = end
    while start > 0 and end - start < _WORDS and words[start - 1].isalpha() and words[start - 1] not in _ARTICLES:
        start -= 1
    if start < end and words[start - 1 : start] and words[start - 1] in _ARTICLES:
        return _naming(range(start, end), words)
    after = failed.end
    if words[after : after + 1] and words[after] in _ARTICLES:
        last = after + 1
        while last < len(words) and last - after <= _WORDS and words[last].isalpha():
            last += 1
        return _naming(range(after + 1, last), words)
    return range(0)


def _naming(places: range, words: tuple[str, ...]) -> range:
    """Return some places if the words there may name a thing."""
    return places if places and NAMELESS.isdisjoint(words[k] for k in places) else range(0)
