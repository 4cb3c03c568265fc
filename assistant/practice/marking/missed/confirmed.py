"""Answers of which every clause is true and none is an answer: "it's the white one, and it comes on at 85 percent".

Clause by clause an answer may say the question back, tell what people do, or say what a statement of the knowledge
says, with its things, its numbers and its states. Whoever says no more than that has missed the question; a reason that
is claimed and that no statement knows is wrong.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.conversation.reading_turns.readings import question_of
from assistant.knowledge.records import Fact, Limit, Procedure, Source
from assistant.practice.marking.finding.equal import equals, same_kind
from assistant.practice.marking.missed.evasive import is_remark
from assistant.practice.marking.missed.other_matter import answers_in_kind, says_so
from assistant.practice.marking.missed.told_aside import names_a_point
from assistant.practice.marking.missed.true_remarks import is_bare
from assistant.practice.marking.points import Figure, Need
from assistant.practice.marking.reading.contraries import OTHER
from assistant.practice.marking.reading.said import NO_FELLOWS, Said, plain, plain_words, read_said
from assistant.practice.marking.reading.wording import CONTRASTS, STOPS, word_set
from assistant.resolving.knowing import Knowledge
from assistant.resolving.ranking import candidates

_NEAR_BY = 4
_CUTS = CONTRASTS | STOPS
_SMALL = frozenset(map(plain, word_set("""
    a about again ago all allready already also always an and any anyway are around as at be been being both but
    by can come comes course do does done erm ever for from get gets give gives go goes gone got had has have he
    happen happens her here his honest honestly i if in into is it its itself just keep kept know let like look
    make makes maybe me more most my need next no not now of off ok on once one only or other our out over pick
    put really right run see set she show shown sit sits so some stand stands still stuck take takes than that
    the their them then there these they thing things this those to too um up us use used usual usually very
    want was we well were what when where which while who will with work works would yeah yes you your
""")))  # fmt: skip
"""Words that tell too little for a remark to be doubted for them."""
_REASON = re.compile(
    r"\b(?:because|becuase|cause|cos|since|due to|so that|so it|so they|otherwise|or else|"
    r"to (?:stop|keep|prevent|avoid|let|save|protect|make))\b|^(?:well )?(?:to|for) |"
    r"^(?:that|this|it) (?:is|s) (?:why|because)\b"
)
"""What claims to give a reason."""


def is_confirmed(need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether an answer that holds no point only says the question back, or what is true beside it."""
    if need.polar or need.cause or need.ordered or any(p.verdict or p.state for p in need.points):
        return False
    if need.loss and not need.question.has("why"):
        return False
    words = said.reading.words
    if _REASON.search(" ".join(words)) or any(p.figures for p in need.points):
        return False
    if names_a_point(need, said) or answers_in_kind(need, said, know) or _says_the_contrary(need, said):
        return False
    if not need.question.has("why") and not _tells_of_another(need, said):
        return False
    clauses = [" ".join(words[i] for i in piece) for piece in said.pieces(_CUTS)]
    whole = bool(words) and _is_true(said, need, know)
    return whole or (bool(clauses) and all(_claims_nothing(text, need, know) for text in clauses))


def _says_the_contrary(need: Need, said: Said) -> bool:
    """Return whether an answer has the contrary of a word that a point tells: "closed" of doors that stay open."""
    telling = {w for p in need.points for e in p.elements if not e.given for w in e.words}
    return any(not OTHER.get(word, frozenset()).isdisjoint(telling) for word in said.words)


def _tells_of_another(need: Need, said: Said) -> bool:
    """Return whether an answer is a sentence of its own, on nothing that the full answer names."""
    answer = need.said - need.question.concepts
    first = said.reading.words[0] if said.reading.words else ""
    return first not in _GOING_ON and not is_bare(said) and all(m.concepts.isdisjoint(answer) for m in said.content)


_GOING_ON = word_set("""
    after any as before either everything if it its neither never no none nothing only since so that
    they this to until when whenever whichever with without yes
""")
"""First words with which an answer goes on from the question."""


def _claims_nothing(text: str, need: Need, know: Knowledge) -> bool:
    """Return whether a clause claims nothing that is to the point, by itself or part by part where "and" joins some."""
    if is_remark(text.split(), know):
        return True
    clause = read_said(text, know)
    if _is_said_back(clause, need, know) or _is_true(clause, need, know):
        return True
    parts = [part for part in _JOINING.split(text) if part]
    return len(parts) > 1 and all(_claims_nothing(part, need, know) for part in parts)


_JOINING = re.compile(r"^and | and | so (?=(?:you|we|i|they)\b)")


def _is_said_back(clause: Said, need: Need, know: Knowledge) -> bool:
    """Return whether a clause has only words of the question and such as tell nothing."""
    telling = [
        i for i, word in enumerate(clause.words)
        if word not in _SMALL | _OF_CHANGE and word not in need.asked and i not in clause.numbered
    ]  # fmt: skip
    own = [Figure(a.value, a.unit or "") for a in need.allowed]
    told = all(any(equals(c.amount, f, know.units) for f in (need.former if c.former else own)) for c in clause.claims)
    return told and all(
        any(i in m.taken and m.concepts & need.question.concepts for m in clause.content) for i in telling
    )


_OF_CHANGE = frozenset(map(plain, word_set("before change changed earlier formerly last new old previously revision")))
"""Words by which a former value is told."""


def _is_true(clause: Said, need: Need, know: Knowledge) -> bool:
    """Return whether a statement of the knowledge says all that a clause does."""
    return any(_bears_out(text, clause, need, know) for text in _statements(clause, need, know))


def _bears_out(text: str, clause: Said, need: Need, know: Knowledge) -> bool:
    """Return whether a statement has all the words of a clause that tell something, and does not say otherwise."""
    words = frozenset(plain_words(know.phrase(text).words))
    concepts = know.phrase(text).concepts
    for i, word in enumerate(clause.words):
        if i in clause.numbered or word in _SMALL or word in words or word in need.asked or not word[0].isalnum():
            continue
        fellows, named = clause.fellows.get(i, NO_FELLOWS)
        here = clause.concepts[i] | clause.inner[i] | named
        if here.isdisjoint(concepts | need.question.concepts) and words.isdisjoint(fellows):
            return False
    passed = _SMALL | need.asked | {w for f, _ in clause.fellows.values() if f & words for w in f}
    return says_so(text, clause, know, passed)


def _statements(clause: Said, need: Need, know: Knowledge) -> Iterator[str]:
    """Yield what is stated of the matter of a question, and what is told of the words of a clause."""
    for cited in need.sources:
        for name in know.base.standing_on.get(Source(cited.document, cited.paragraph), ()):
            yield from _told(know.base.records[name])
    for found in candidates(question_of(clause.text, know, ""), know)[:_NEAR_BY]:
        for name in ("fact", "procedure"):
            yield from _told(getattr(found.result, name, None))
    for limit in (know.base.records[name] for name in know.base.ids("limits") if clause.claims):
        yield from _told(limit)


def _told(record: object) -> Iterator[str]:
    """Yield the statements of a record: what a fact says, a figure with what it is of, each step."""
    if isinstance(record, Fact) and not _FORMER.search(record.says):
        yield f"{record.says} {record.says_more}".strip()
    if isinstance(record, Limit):
        value = record.value or record.maximum or record.minimum
        if value:
            yield f"{value.value:g} {value.unit}: {record.of}"
    if isinstance(record, Procedure):
        yield from (step.do for step in record.steps)


_FORMER = re.compile(r"\b(?:former|formerly|previous|previously|until|changed|revised|revision)\b", re.IGNORECASE)
"""What tells of a value that no longer holds."""


def without_true(wrong: tuple[str, ...], need: Need, said: Said, know: Knowledge) -> tuple[str, ...]:
    """Return what is wrong in an answer that holds all that is asked for, without what is only true besides.

    A number or colour is, in a clause that a statement on the matter bears out: "its amber, ten seconds after".
    """
    if need.polar or need.change or need.question.has("why") or any(p.verdict for p in need.points):
        return wrong
    figures = [f for p in need.points for f in p.figures]
    others = (c.amount for c in said.claims if not any(same_kind(c.amount, f, know.units) for f in figures))
    own = {amount.raw: amount.start for amount in others}
    asked = {know.lexicon.families.get(c) for p in need.points for e in p.elements for c in e.concepts}
    for i, here in enumerate(said.concepts if "colour" not in asked else ()):
        if any(know.lexicon.families.get(c) == "colour" for c in here):
            own[said.reading.words[i]] = i
    return tuple(each for each in wrong if each not in own or not _is_true_at(own[each], need, said, know))


def _is_true_at(place: int, need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether the clause about a place is what a statement on a thing of it, or of the question, says."""
    words = said.reading.words
    piece = next((piece for piece in said.pieces(_CUTS | {"and"}) if place in piece), range(0))
    clause = read_said(" ".join(words[i] for i in piece), know)
    named = frozenset(c for m in clause.content for c in m.concepts) | need.question.concepts
    things = {c for c in named if c[0] not in "~@=#!" and _is_thing(c, know)}
    texts = (text for text in _statements(clause, need, know) if things & know.phrase(text).concepts)
    return bool(piece) and any(_bears_out(text, clause, need, know) for text in texts)


def _is_thing(concept: str, know: Knowledge) -> bool:
    colour = know.lexicon.families.get(concept) == "colour"
    return know.lexicon.kinds.get(concept, "thing") == "thing" and not colour
