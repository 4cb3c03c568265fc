"""A tale of another day before a question: "my first airliner had steel discs that sang, what are they made of here".

What is told first, of somebody and in the past, may be of any aeroplane and in any words. The question behind it is
asked by itself where it names what it is about. Where it points back ("would that be allowed here") it is asked with
what the tale says of the trade, and only the words that nothing explains are left out of it.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.conversation.left_out.framing import OF_STATES
from assistant.conversation.reading_turns.readings import question_of, things_named
from assistant.conversation.reading_turns.traits import OPEN
from assistant.resolving.choosing import Scored, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.understanding.asides import PERSONS
from assistant.understanding.clauses import asking
from assistant.understanding.matching import strange

_LEAST = 5
"""Words of a tale, and of the question behind it."""
_BESIDE = 1
"""Words between what has failed and its failure: "we lost | the | compressor"."""
_LACKING = frozenset(("no", "not", "without", "off", "out"))
"""Words that say no more than that there was none."""
_SENTENCE = frozenset((".", "!", ";"))
_TELLERS = PERSONS | {
    "i", "we", "my", "our", "us", "me", "somebody", "someone", "he", "she", "they", "his", "her", "chap", "fellow",
    "one", "there",
}  # fmt: skip
_PAST = frozenset({
    "asked", "began", "brought", "came", "did", "died", "fell", "flew", "found", "gave", "got", "had", "heard", "held",
    "kept", "knew", "learned", "learnt", "left", "let", "lost", "made", "once", "put", "quit", "ran", "remember",
    "said", "sat", "saw", "stood", "swore", "swung", "threw", "taught", "thought", "told", "took", "trained", "used",
    "wanted", "was", "went", "were", "worked", "wrote",
})  # fmt: skip
_THIS_ONE = ("this one", "this aeroplane", "this aircraft", "this machine", "this type", "this plane")
_HERE = (*_THIS_ONE, "ours", "here")
_NOT_PAST = frozenset(("bleed", "exceed", "indeed", "needed", "speed", "required", "allowed", "permitted"))
"""Words of the same ending that tell nothing of another day."""
_POINTING = frozenset({
    "answer", "figure", "it", "its", "like", "same", "so", "still", "that", "them", "there", "they", "those",
})  # fmt: skip
_SURE = 0.7
"""Score from which a question is taken to be answered by itself."""


def without_tale(question: Question, variant: str, knowledge: Knowledge) -> tuple[str, Question, Scored] | None:
    """Return the words of a question without the tale before it, how they read and what answers them, if anything."""
    start = _behind_a_tale(question.reading.words)
    if not start or _may_have_failed(question, start):
        return None
    return _asked_alone(question, start, variant, knowledge) or _asked_with_it(question, start, knowledge)


def asked_of_this_one(question: Question, variant: str, knowledge: Knowledge) -> tuple[str, Question, Scored] | None:
    """Return the question behind a tale of another aeroplane as it is asked of this one, if that is what it says."""
    words = question.reading.words
    start = _behind_a_tale(words) if any(name in " ".join(words) for name in _THIS_ONE) else 0
    return _asked_alone(question, start, variant, knowledge) if start else None


def _behind_a_tale(words: Sequence[str]) -> int:
    """Return where the question behind a tale begins, 0 where there is no tale."""
    start = _begins(words)
    return start if start >= _LEAST and len(words) - start >= _LEAST and _is_tale(words[:start]) else 0


def _begins(words: Sequence[str]) -> int:
    """Return where the question begins that ends a text: with its sentence, with "so" or "if", or with what asks."""
    asks = asking(words)
    last = max(asks, default=-1)
    while last - 1 in asks:
        last -= 1
    if last < 0:
        return 0
    sentence = max((i + 1 for i in range(last) if words[i] in _SENTENCE), default=0)
    if sentence:
        return sentence
    leads = max((i for i in range(_LEAST, last) if words[i] in ("so", "if")), default=last)
    return leads + (words[leads] == "so")


def _is_tale(words: Sequence[str]) -> bool:
    """Return whether words tell of somebody, in the past."""
    ended = (word for word in words if word.endswith("ed") and len(word) >= _LEAST)
    past = not _PAST.isdisjoint(words) or any(word not in _NOT_PAST for word in ended)
    return past and not _TELLERS.isdisjoint(words)


def _may_have_failed(question: Question, start: int) -> bool:
    """Return whether something unknown or of another subject has failed in the tale, which might bear on the answer."""
    told = [m for m in question.reading.mentions if m.start < start]
    lost = [m for m in told if "@lost" in m.concepts and _LACKING.isdisjoint(m.text.split())]
    strangers = [m for m in told if m.is_plain or m.is_outside]
    gaps = (gap for each in lost for m in strangers for gap in (each.start - m.end, m.start - each.end))
    return any(0 <= gap <= _BESIDE for gap in gaps)


def _tells_states(question: Question, start: int) -> bool:
    """Return whether the tale before a place tells a state of a thing."""
    return any(k < start for c in question.conditions for k in c.where)


def _asked_alone(
    question: Question, start: int, variant: str, knowledge: Knowledge
) -> tuple[str, Question, Scored] | None:
    """Return the question behind a tale, where it names its matter itself and rests on no state of the tale."""
    words = question.reading.words[start:]
    bare = " ".join(words)
    here = next((name for name in _HERE if name.split()[-1] in words and name in bare), "")
    if not _POINTING.isdisjoint(bare.replace(here, "").split()):
        return None
    alone = question_of(bare, knowledge, question.variant if question.named_variant else variant)
    if not [m for m in things_named(alone.reading, knowledge) if not (m.is_plain or m.is_outside)]:
        return None
    first = resolve_scored(alone, knowledge)
    rests = isinstance(first.result, OF_STATES) and _tells_states(question, start)
    if isinstance(first.result, OPEN) or first.score < _SURE or rests:
        return None
    return bare, alone.with_text(question.reading.text), first


def _asked_with_it(question: Question, start: int, knowledge: Knowledge) -> tuple[str, Question, Scored] | None:
    """Return a question with what its tale says of the trade, where it points back at that."""
    if _POINTING.isdisjoint(question.reading.words[start:]) and not _tells_states(question, start):
        return None
    barred = strange(question.reading, knowledge.matcher)
    rest = tuple(
        m for m in question.reading.mentions if m.start >= start or not (m.is_plain or m.is_outside or m in barred)
    )
    less = question._replace(reading=question.reading._replace(mentions=rest))
    first = resolve_scored(less, knowledge)
    return None if isinstance(first.result, OPEN) else (question.reading.text, less, first)
