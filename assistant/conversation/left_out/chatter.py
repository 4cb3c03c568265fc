"""What a person says beside the question: a greeting, an excuse, what the day is like, the story it is asked in.

"Sim check on Thursday, so be kind. How long does the gear need to retract?" A sentence that names nothing of the trade
only keeps the question beside it from being understood; the question is then read without it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from assistant.conversation.left_out.framing import may_be_its_subject, rests_on_it
from assistant.conversation.reading_turns.readings import question_of, things_named
from assistant.conversation.reading_turns.traits import OPEN
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.ranking import candidates
from assistant.understanding.clauses import asking, parted
from assistant.understanding.matching import strange
from assistant.understanding.mentions import OUTSIDE, Mention
from assistant.understanding.stories import told_aside

_ENDS = frozenset((".", "!", "?", ";", ":"))
_CLAUSES = _ENDS | {","}
_SCENERY = 5
"""Words and marks at most of a clause that only sets the scene."""
_SPEAKERS = frozenset({"i", "we", "my", "our", "me", "us", "im", "ive", "you", "your"})
_BEING = frozenset(("is", "are", "was", "shows", "runs", "has", "gives", "tells", "does", "drives"))
_ASKING = frozenset({
    "is", "are", "was", "does", "do", "what", "how", "why", "when", "where", "and", "so", "if", ",", ":",
})  # fmt: skip
_POINTING = frozenset({"it", "its", "that", "this", "they", "them", "their", "he", "she", "his", "her", "there"})
"""Words by which a question may speak of what the other sentence named."""


def without_story(question: Question, variant: str, knowledge: Knowledge) -> tuple[str, Question, Scored] | None:
    """Return the words of a question without what it tells besides, how they read, and what they give, if anything."""
    bare = _without_chatter(question, knowledge)
    if bare:
        alone = question_of(bare, knowledge, variant)
        first = None if rests_on_it(alone.reading.words, alone) else resolve_scored(alone, knowledge)
        if first and not isinstance(first.result, OPEN):
            return bare, alone.with_text(question.reading.text), first
    return _without_strange_story(question, knowledge)


def _without_strange_story(question: Question, knowledge: Knowledge) -> tuple[str, Question, Scored] | None:
    """Return what answers a question best, where all that keeps it from it are words in sentences that only tell: such
    as nothing explains, and names of other subjects that the record speaks of itself.
    """
    told = told_aside(question.reading)
    match = next((c.match for c in candidates(question, knowledge) if c.match), None) if told else None
    if match is None or not match.barred or not _asks_of_a_thing(question, told, knowledge):
        return None
    words = question.reading.words
    if rests_on_it([word for i, word in enumerate(words) if i not in told], question):
        return None
    ends = parted(words, _CLAUSES)
    if any(may_be_its_subject(words[part.start : part.stop]) for part in ends for m in match.barred if m.start in part):
        return None
    known = knowledge.matcher.vocabulary(match.record)
    if not all(
        told.issuperset(m.taken) and (m.is_plain or not known.isdisjoint(m.concepts) or _is_scenery(m, question))
        for m in match.barred
    ):
        return None
    rest = tuple(m for m in question.reading.mentions if m not in match.barred)
    less = question._replace(reading=question.reading._replace(mentions=rest))
    first = resolve_scored(less, knowledge)
    same = first.record == match.record and not isinstance(first.result, OPEN)
    return (question.reading.text, less, first) if same else None


def _is_scenery(mention: Mention, question: Question) -> bool:
    """Return whether a name of another subject stands in a clause of its own among others that are told, with no more
    beside it than that it is there: "tug connected, | beacon on |, but the pin is not in".
    """
    words = question.reading.words
    clause = next(part for part in parted(words, _CLAUSES) if mention.start in part)
    if len(clause) > _SCENERY or words[clause[-1]] != "," or not clause.start:
        return False
    beside = [m for m in question.reading.mentions if m.start in clause and m is not mention]
    return all(m.weak or m.passing for m in beside) and not any("@lost" in m.concepts for m in beside)


def _asks_of_a_thing(question: Question, told: frozenset[int], knowledge: Knowledge) -> bool:
    """Return whether what asks names a thing of its own: "brakes smoking, what now" asks of what is told."""
    if not question.reading.has("steps"):
        return True
    named = (m for m in knowledge.matcher.telling(question.reading) if told.isdisjoint(m.taken))
    return bool(question.reading.amounts) or any(not m.is_plain for m in named)


def _without_chatter(question: Question, knowledge: Knowledge) -> str:
    """Return the words of a question without the sentences that name nothing of the trade, or nothing to go on."""
    words = question.reading.words
    unknown = strange(question.reading, knowledge.matcher)
    if not unknown:
        return ""
    kept = [part for part in _sentences(words) if not _is_chatter(part, question, unknown, knowledge)]
    if len(kept) == len(list(_sentences(words))):
        return ""
    rest = [words[i] for part in kept for i in part]
    named = {i for m in things_named(question.reading, knowledge) if m not in unknown for i in m.taken}
    others = any(c.startswith(OUTSIDE) for m in unknown for c in m.concepts)
    if others and not any(i in named for part in kept for i in part):
        return ""  # what is asked may be asked of the other subject
    asks = any(w.isalpha() for w in rest) and (asking(rest) or rest[-1] == "?")
    return "" if not asks or _points(rest) else " ".join(rest)


def _points(words: Sequence[str]) -> bool:
    """Return whether words point back at something; "the pressure | that is | in the accumulator" does not."""
    relative = {k for k in range(1, len(words) - 1) if words[k] == "that" and words[k + 1] in _BEING}
    return any(word in _POINTING for k, word in enumerate(words) if k not in relative or words[k - 1] in _ASKING)


def _sentences(words: Sequence[str]) -> Iterator[range]:
    """Yield the places of each sentence; where nothing is punctuated, what is told before it is asked is one."""
    for part in parted(words, _ENDS):
        first = part.start + min(asking(words[part.start : part.stop]), default=0)
        if first > part.start and _SPEAKERS.intersection(words[part.start : first]):
            yield range(part.start, first)
            yield range(first, part.stop)
        else:
            yield part


def _is_chatter(part: range, question: Question, unknown: Sequence[Mention], knowledge: Knowledge) -> bool:
    """Return whether a sentence holds something unknown, and nothing that a question of the trade rests on."""
    if may_be_its_subject(question.reading.words[part.start : part.stop]):
        return False
    inside = [m for m in question.reading.mentions if m.start in part]
    rests = any(a.start in part for a in question.reading.amounts)
    rests = rests or any(k in part for c in question.conditions for k in c.where)
    known = any(m not in unknown and not knowledge.matcher.is_soft(m) for m in inside)
    return any(m in unknown for m in inside) and not rests and not known
