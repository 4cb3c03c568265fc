"""What a question is after, of which every record that might answer it must have a word: worked out once a question.

It follows from the words of the question alone; `beside_acts` and `beside_things` hold the records against it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from assistant.frozen import NamedTuple
from assistant.resolving.asked_quantity import asked_of
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.record_words import named_outright, word_at
from assistant.understanding.acts import acts_asked, says_an_act, supposed_from, supposes_an_act
from assistant.understanding.clauses import asking
from assistant.understanding.mentions import PLAIN, STATE, Mention

_FRONTED = 5
_HOW = frozenset({"do", "does", "can", "could", "should", "would", "to", "shall", "must", "may"})
_MAY, _ASKER = frozenset(("can", "may", "could")), frozenset(("i", "we", "you"))
_OPEN = frozenset({"what", "which", "how", "when", "where", "why", "who", "whats"})
_POINTING = frozenset(("that", "it", "we"))
_TO_DO = (("what", "now"), ("now", "what"), ("what", "next"))
_DO = frozenset(("do", "should", "must", "shall"))
_FEW, _TERSE, _PAIR = 9, 7, 2
"""Words of a question, at most, of which each thing named counts; in a longer one it may be a circumstance."""
_BEGINNING = frozenset(("is", "are", "be", "gets", "get", "slow", "come", "lets", "in", "at"))
_ENDING = frozenset(("to", "on", "by", "with", "from", "of", "system", "systems"))
_ARTICLES = frozenset(("the", "a", "an", "my", "our"))
_FAILING = frozenset(("@lost", "@empty"))
_NO = (("no",), ("without",))
_WHICH = frozenset(("which", "what", "whose"))
KINDS = frozenset(("kind", "sort", "type", "make", "brand", "grade", "model"))
"""Words by which it is asked of which kind a thing is."""
_STOPPING = frozenset(("stop_aeroplane", "rto"))
_WILL = frozenset(("will", "does", "do", "would"))
_ASKED_WHY = frozenset(("why", "i", "we", "you", "they"))
_LINKS = frozenset({
    "is", "are", "was", "feels", "feel", "seems", "looks", "keeps", "keep", "got", "gone", "a", "bit", "very", "really",
    "so", "has", "been", "all", "too",
})  # fmt: skip
_FEELING = frozenset({
    "stiff", "soft", "spongy", "loose", "heavy", "noisy", "sticky", "weak", "wobbly", "jerky", "rough", "tight",
    "slack", "bent", "torn", "crooked", "squeaky",
})  # fmt: skip


class Act(NamedTuple):
    """A verb of which it is asked how, or whether, it is done."""

    word: Mention
    name: Mention | None
    """The name that it stands in, if it says more than how something is asked."""


class Asked(NamedTuple):
    """What a question is after: mentions of its text, or words of it that no term names."""

    acts: tuple[Act, ...]
    """What it asks to be done: "how do I | test | the lamps"."""
    how: Mention | None
    """Its "how do I …", where it gives no amount."""
    if_done: Mention | None
    """Its "what happens", where somebody does something then."""
    if_so: Mention | None
    """Its "what happens", whatever is supposed."""
    supposed: tuple[Mention, ...]
    """What is supposed to be so then: "what happens if the lever | snaps |"."""
    may: Mention | None
    """Its "can I …", where it asks nothing more open than that."""
    to_do: Mention | None
    """Its "what now"."""
    things: tuple[Mention, ...]
    """The things that it names itself, where it leans on no other question."""
    owner: Mention | None
    """The first of the only two things that a short question names, as one: "| brake | lights"."""
    each: tuple[Mention, ...]
    """The things of a short question, each of which counts."""
    failed: tuple[Mention, ...]
    """The words by which it tells, asking what to do, that something has failed."""
    matters: tuple[Mention, ...]
    """What a short question that asks nothing tells to be the matter with a thing: "brake pedal | stiff |"."""
    refused: Mention | None
    """What a thing is said not to do: "it | will not | release"."""
    lacked: tuple[Mention, ...]
    """What is said to be lacking: "charge it with no | electrics |"."""
    amounts: bool
    """Whether amounts are given."""
    member: Mention | None
    """The "system" of "which hydraulic system …", where there are several, told apart by numbers."""
    gone: tuple[Mention, ...]
    """The things that it says to have failed: "the time of a retraction with | System 2 | out"."""
    choice: Mention | None
    """Its "stop" of "stop or go", where it asks which of the two."""
    purpose: tuple[Mention, ...]
    """The things that it tells of, where it asks then what that is for: "the | wheels | …, what is that saving"."""
    kind: tuple[str, Mention] | None
    """The word by which it asks of which kind a thing is, and the thing: "what | sort | of | pump |"."""


def what_is_asked(question: Question, know: Knowledge) -> Asked:
    """Return what a question is after."""
    reading = question.reading
    outright = tuple(named_outright(reading.mentions, know))
    leans = question.context or bool(question.background)
    given = frozenset(k for c in question.conditions for k in c.where)
    at = supposed_from(reading.words)
    happens = next((m for m in reading.mentions if m.holds("happens")), None)
    counting = () if leans or len(reading.words) > _FEW else tuple(m for m in outright if given.isdisjoint(m.taken))
    paired = len(counting) == _PAIR and counting[0].end == counting[1].start
    return Asked(
        acts=tuple(_acts(question, know)),
        how=_how(question),
        if_done=happens if supposes_an_act(reading.words) else None,
        if_so=happens if at else None,
        supposed=tuple(_supposed(at, given, question, know)) if at else (),
        may=_may(question),
        to_do=_to_do(question),
        things=() if leans else outright,
        owner=counting[0] if paired else None,
        each=tuple(m for m in counting if not _is_verb(m, question)),
        failed=tuple(_failed(given, question)),
        matters=tuple(_matters(outright, question)),
        refused=_refused(question),
        lacked=tuple(m for m in reading.mentions if m.passing and reading.words[m.start - 1 : m.start] in _NO),
        amounts=bool(reading.amounts),
        member=_member(question, know),
        gone=tuple(_gone(question, know)),
        choice=_choice(question),
        purpose=tuple(_purpose(outright, question)),
        kind=_kind(outright, question),
    )


def _kind(things: Sequence[Mention], question: Question) -> tuple[str, Mention] | None:
    words = question.reading.words
    for i in range(len(words) - _PAIR):
        if words[i] in _WHICH and words[i + 1] in KINDS:
            start = i + _PAIR + (words[i + _PAIR] == "of")
            thing = next((m for m in things if m.start <= start < m.end), None)
            if thing:
                return words[i + 1], thing
    return None


def _purpose(things: Sequence[Mention], question: Question) -> Iterator[Mention]:
    """Yield the things told before the reason of that is asked for by a word that points at it."""
    why = next((m for m in question.reading.mentions if m.holds("why")), None)
    if why and not _POINTING.isdisjoint(why.text.split()):
        yield from (m for m in things if m.end <= why.start)


def _member(question: Question, know: Knowledge) -> Mention | None:
    words = question.reading.words
    for i in range(len(words) - 1):
        if words[i] not in _WHICH:
            continue
        end = i + 1
        while end < len(words) and words[end] in know.numbered:
            end += 1
        goes_on = any(m.start == end and _only(("quantity",), m, know) for m in question.reading.mentions)
        return word_at(words, end - 1) if end > i + 1 and not goes_on else None
    return None


def _gone(question: Question, know: Knowledge) -> Iterator[Mention]:
    known = know.states
    for c in question.conditions:
        if c.implied or c.input not in known.failures or c.value == known.normal(c.input):
            continue
        for m in question.reading.mentions:
            if m.start in c.where and any(c.input in known.by_term.get(concept, ()) for concept in m.concepts):
                yield m


def _choice(question: Question) -> Mention | None:
    words = question.reading.words
    sides = {side for i, w in enumerate(words) if w == "or" for side in (i, i + 1)}
    stops = (m for m in question.reading.mentions if not _STOPPING.isdisjoint(m.concepts))
    return next((m for m in stops if m.end in sides or m.start in sides), None)


def _acts(question: Question, know: Knowledge) -> Iterator[Act]:
    words = question.reading.words
    for at in acts_asked(words):
        if not says_an_act(words, at) or _is_fronted(at, question):
            continue
        name = next((m for m in question.reading.mentions if at in m.taken and not m.passing), None)
        if name is None or not _only(("ask",), name, know):
            yield Act(word_at(words, at), name)


def _is_fronted(at: int, question: Question) -> bool:
    """Return whether it is asked to what a known act is done: "which switch do I | move |"."""
    if not any(at in m.taken and not m.is_plain for m in question.reading.mentions):
        return False
    return not {"what", "which"}.isdisjoint(question.reading.words[max(0, at - _FRONTED) : at])


def _only(kinds: tuple[str, ...], mention: Mention, know: Knowledge) -> bool:
    """Return whether a mention holds concepts of some kinds alone; kinds: how each may begin."""
    return all(know.lexicon.kinds.get(c, "").startswith(kinds) for c in mention.concepts)


def _how(question: Question) -> Mention | None:
    words = question.reading.words
    at = next((i for i, w in enumerate(words[:-1]) if w == "how" and words[i + 1] in _HOW), None)
    if at is None or question.reading.amounts or any(m.start == at for m in question.reading.mentions):
        return None
    return word_at(words, at)


def _supposed(at: int, given: frozenset[int], question: Question, know: Knowledge) -> Iterator[Mention]:
    """Yield what is supposed from a place on, but for the states given; given: the places of their words."""
    reading = question.reading
    for m in reading.mentions:
        if m.start <= at or m.weak or not given.isdisjoint(m.taken) or _only(("ask", "quantity"), m, know):
            continue
        if not m.passing or says_an_act(reading.words, m.start):
            yield m


def _may(question: Question) -> Mention | None:
    words = question.reading.words
    at = next((i for i in range(len(words) - 1) if words[i] in _MAY and words[i + 1] in _ASKER), None)
    if at is None or not _OPEN.isdisjoint(words):
        return None
    return next((m for m in question.reading.mentions if m.start == at), None) or word_at(words, at)


def _to_do(question: Question) -> Mention | None:
    at = _asks_what_to_do(question.reading.words)
    if at is None:
        return None
    return next((m for m in question.reading.mentions if at in m.taken), None) or word_at(question.reading.words, at)


def _asks_what_to_do(words: Sequence[str]) -> int | None:
    """Return where it is asked what to do: "what now", "what do I do"."""
    for i in range(len(words) - 1):
        do = words[i] == "what" and words[i + 1] in _DO and words[i + 2 : i + 3] in (("i",), ("we",))
        if words[i : i + 2] in _TO_DO or (do and words[i + 3 : i + 4] == ("do",)):
            return i
    return None


def _is_verb(mention: Mention, question: Question) -> bool:
    """Return whether a name is rather what something does, or how it is meant: "is showing", "| holds | the tiller"."""
    words = mention.text.split()
    if words[0] in _BEGINNING or words[-1] in _ENDING:
        return True
    return len(words) == 1 and not _ARTICLES.isdisjoint(question.reading.words[mention.end : mention.end + 1])


def _failed(given: frozenset[int], question: Question) -> Iterator[Mention]:
    if question.reading.has("can", "steps"):
        yield from (m for m in question.reading.mentions if _says_failed(m) and given.isdisjoint(m.taken))


def _says_failed(mention: Mention) -> bool:
    """Return whether a mention is words for having failed, and nothing else."""
    only = all(c.startswith(STATE) for c in mention.concepts)
    return only and not mention.weak and not _FAILING.isdisjoint(mention.concepts)


def _matters(things: Sequence[Mention], question: Question) -> Iterator[Mention]:
    reading = question.reading
    if question.context or reading.amounts or len(reading.words) > _TERSE or asking(reading.words):
        return
    ends = {_past_links(m.end, reading.words) for m in things}
    yield from (m for m in reading.mentions if m.passing and m.start in ends and _is_a_fault(m.text))


def _past_links(at: int, words: Sequence[str]) -> int:
    """Return the place past the words that lead from a thing to what is the matter with it: "brakes | feel a bit |"."""
    while at < len(words) and words[at] in _LINKS:
        at += 1
    return at


def _is_a_fault(word: str) -> bool:
    return word.endswith(("ing", "ed")) or word in _FEELING


def _refused(question: Question) -> Mention | None:
    words = question.reading.words
    at = next((i for i in range(2, len(words)) if _says_it_refuses(words, i)), None)
    if at is None or asked_of(question.reading):
        return None
    text = " ".join(words[at - 1 : at + 2])
    return Mention(at - 1, at + 1, (at - 1, at), frozenset((PLAIN + "not",)), frozenset(), False, text)


def _says_it_refuses(words: Sequence[str], at: int) -> bool:
    """Return whether a thing is said not to do something: "the brake | does | not |"."""
    return words[at] == "not" and words[at - 1] in _WILL and words[at - 2] not in _ASKED_WHY
