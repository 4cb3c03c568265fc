"""The frame that a question is put in: who wants to know, what is at stake, what goes on meanwhile.

"My sandwich depends on this one: what feeds the brakes in EMERGENCY?", "As my grandfather used to ask, what is VLO?":
nothing loaded explains the sandwich or the grandfather, and nothing needs to, where what stands beside the frame is a
question of the trade by itself. What may be a part of the question stays: a figure, a state, another aeroplane, a thing
that the question speaks of too, and anything that something unknown has failed in, where a state is asked about.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from assistant.conversation.left_out.told_of_oneself import OF_ONESELF
from assistant.conversation.reading_turns.readings import question_of, things_named
from assistant.conversation.reading_turns.traits import OPEN
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import CauseResult, LossResult, Result, TableResult, TablesResult
from assistant.understanding.asides import PERSONS
from assistant.understanding.clauses import asking, asks_whether, parted
from assistant.understanding.matching import strange
from assistant.understanding.mentions import OUTSIDE, STATE, Mention

_SENTENCES = frozenset((".", "!", "?", ";", ":", "-"))
_CLAUSES = _SENTENCES | {","}
_ENDS = frozenset((".", "!"))
_MINE = frozenset(("my", "i", "me", "mine", "she", "he"))
_BIDDING = (("be", "a"), ("be", "an"))
"""How it is begun what who answers shall be: "be a good sport: …"."""
_POINTING = frozenset({"it", "its", "that", "this", "they", "them", "their", "those", "these", "he", "she", "there"})
_OPENING = frozenset(("according", "as", "because", "before", "since", "so", "till", "until", "while"))
"""Words that open a clause of what goes on besides."""
_ABOUT = frozenset(("about", "at", "for", "in", "of", "on", "with"))
"""Words that lead what the question itself may be about: "for my glider, …"."""
_AEROPLANES = frozenset({
    "aeroplane", "aircraft", "airplane", "fleet", "flew", "flies", "flown", "fly", "flying", "jet", "model", "plane",
    "type", "variant", "version", "machine", "ship", "bird", "airframe", "fleets", "types",
})  # fmt: skip
"""Words of a sentence that may tell of another aeroplane."""
_LEANING = frozenset(("anyway", "left", "now", "remain", "remaining", "remains", "still", "then", "therefore"))
"""Words by which a question rests on what was told just before it."""
OF_STATES = (CauseResult, LossResult, TableResult, TablesResult)
"""Results that rest on the states told."""


def without_frame(question: Question, variant: str, knowledge: Knowledge) -> tuple[str, Question, Scored] | None:
    """Return the words of a question without its frame, how they read and what answers them, if anything."""
    unknown = strange(question.reading, knowledge.matcher)
    words = question.reading.words
    if not unknown or _CLAUSES.isdisjoint(words[:-1]):
        return None
    for ends in (_SENTENCES, _CLAUSES):
        parts = parted(words, ends)
        frame = [part for part in parts if _is_frame(part, question, unknown, knowledge)]
        found = _asked_beside(frame, parts, question, variant, knowledge) if frame else None
        if found:
            return found
    return None


def _asked_beside(
    frame: list[range], parts: list[range], question: Question, variant: str, knowledge: Knowledge
) -> tuple[str, Question, Scored] | None:
    """Return what stands beside a frame, where it is a question by itself that is answered."""
    words = question.reading.words
    rest = [words[i] for part in parts if part not in frame for i in part]
    if not any(word.isalpha() for word in rest) or not (asking(rest) or rest[-1] == "?" or "?" not in words):
        return None
    if rest[-1] == ":":  # a heading, or who is said to speak, asks nothing by itself
        return None
    bare = " ".join(rest)
    alone = question_of(bare, knowledge, question.variant if question.named_variant else variant)
    own = things_named(alone.reading, knowledge)
    things = [m for m in own if not (m.is_plain or m.is_outside)]
    points = not _POINTING.isdisjoint(rest)
    if len(things) + len(alone.reading.amounts) <= points or not things or _speaks_of(frame, own, question, knowledge):
        return None  # "how do I renew it" may be asked of what the frame names
    if rests_on_it(rest, alone):
        return None
    first = resolve_scored(alone, knowledge)
    if isinstance(first.result, OPEN) or not _bears(frame, alone, first.result, question):
        return None
    return bare, alone.with_text(question.reading.text), first


def _is_frame(part: range, question: Question, unknown: Sequence[Mention], knowledge: Knowledge) -> bool:
    """Return whether a part holds something unknown, is put as one tells of something besides, and gives no figure,
    state or variant.
    """
    reading = question.reading
    words = reading.words[part.start : part.stop]
    strangers = [m for m in unknown if m.start in part]
    asks = not asking(reading.words, marks=False).isdisjoint(part)
    if not strangers or asks or not _is_told(words) or may_be_its_subject(words):
        return False
    if any(c.startswith(OUTSIDE) and any(map(str.isdigit, c)) for m in strangers for c in m.concepts):
        return False
    if any(a.start in part for a in reading.amounts) or any(place in part for place in reading.variant_places):
        return False
    if any(k in part and not c.implied for c in question.conditions for k in c.where):
        return False
    return len(list(_known(part, question, knowledge))) <= len(strangers) + 1


def _is_told(words: Sequence[str]) -> bool:
    """Return whether the words of a part tell something: a sentence, or a clause of somebody."""
    if words[-1] == "?":
        return False
    if words[-1] in _ENDS:
        return len(words) > 2
    somebody = _is_private(words) or words[:2] in _BIDDING
    if words[-1] in _SENTENCES:
        return somebody
    return somebody and (words[0] in _OPENING or words[-1] != ",")


def may_be_its_subject(words: Sequence[str]) -> bool:
    """Return whether a part may name what the rest is asked of: "for my yacht …", "I fly a Gannet"."""
    return (words[0] in _ABOUT or not _AEROPLANES.isdisjoint(words)) and not _of_oneself(words)


def rests_on_it(rest: Sequence[str], asked: Question) -> bool:
    """Return whether a question rests on what was told just before it, and gives no state itself: "do the tillers |
    still | steer".
    """
    return not _LEANING.isdisjoint(rest) and not asked.conditions


def _is_private(words: Sequence[str]) -> bool:
    return not (_MINE | PERSONS).isdisjoint(words) or _of_oneself(words)


def _of_oneself(words: Sequence[str]) -> bool:
    """Return whether a word of private life stands among others, in the singular or the plural."""
    return any(word in OF_ONESELF or f"{word}s" in OF_ONESELF for word in words)


def _known(part: range, question: Question, knowledge: Knowledge) -> Iterator[Mention]:
    """Yield what a part names that the knowledge speaks of, besides what is only asked of such a thing."""
    kinds = knowledge.lexicon.kinds
    for m in question.reading.mentions:
        passed = m.weak or m.passing or m.is_plain or m.is_outside or knowledge.matcher.is_soft(m)
        passed = passed or all(kinds.get(c) in ("ask", "ask!") for c in m.concepts)
        if m.start in part and not passed:
            yield m


def _speaks_of(frame: list[range], own: Sequence[Mention], question: Question, knowledge: Knowledge) -> bool:
    """Return whether a frame names a thing that the question beside it names too."""
    asked = frozenset(c for m in own for c in m.concepts)
    return any(m.concepts & asked for part in frame for m in _known(part, question, knowledge))


def _bears(frame: list[range], alone: Question, result: Result, question: Question) -> bool:
    """Return whether an answer holds whatever the frame tells: nothing that has failed in it may bear on a state or on
    a yes or no, and of a state only what is private does not.
    """
    told = [m for m in question.reading.mentions if any(m.start in part for part in frame)]
    failed = any(c.startswith(STATE) for m in told if not m.weak for c in m.concepts)
    of_states = isinstance(result, OF_STATES)
    words = question.reading.words
    private = all(_is_private(words[part.start : part.stop]) for part in frame)
    if failed:
        return private and not of_states and not asks_whether(alone.reading.words)
    return private or not of_states
