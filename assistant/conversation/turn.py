"""One turn of a conversation: read, complete from the context, resolve, compose, remember.

`answer_turn` is the place to begin reading: everything else serves one of its lines.
"""

from __future__ import annotations

import re

from assistant.answering.answer import ANSWER, CLARIFY, DECLINE, Answer
from assistant.answering.compose import citations, compose, deference
from assistant.conversation.context import Context
from assistant.conversation.controls import BELIEF, CORRECTION, choice, control, follows
from assistant.conversation.following import merged_words
from assistant.knowledge.records import Fact
from assistant.rendering.speech import spoken
from assistant.resolving.choosing import QUANTITIES, Scored, chosen_record, quantity_of, resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Choices, Declined, FactResult, Needed, Result, TableResult
from assistant.understanding.matching import strange
from assistant.understanding.reading import Mention, Reading, plain_reading
from assistant.understanding.states import conditions

_GOOD = 0.8
_LEANING = 0.66
_ASKING = frozenset(("what", "who", "where", "why", "when", "which", "does", "do", "is", "are", "can", "may"))
_PRONOUNS = frozenset(("it", "that", "one", "they", "them", "same"))
_ABOUT = re.compile(r"^\W*(?:\w+\W+)?(?:what|how) about\b", re.IGNORECASE)
_HALVES = re.compile(
    r"\s*(?:[,;.?]\s*(?:and|but)?|\band)\s+(?=(?:and\s+)?(?:where|how|what|which|who|why|when|to whom|below|above|does|do|is|are|can|may|at|in)\b)",
    re.IGNORECASE,
)
"""Where a second question may begin."""


def answer_turn(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context]:
    """Return the answer to a turn and the context after it; never raises for any text."""
    done = _controlled(text, context, knowledge)
    if done is None:
        question, result = _understood(text, context, knowledge)
        answer = _composed(text, question, result, knowledge)
        if answer.outcome != ANSWER:
            answer = _in_parts(text, context, knowledge) or answer
        done = answer, _remembered(context, question, result, answer, knowledge)
    answer, after = done
    return _with_disputes(_finished(answer, knowledge), after, knowledge), after


def _in_parts(text: str, context: Context, knowledge: Knowledge) -> Answer | None:
    """Return the answers to both halves of a double question ("how many, and where are they kept")."""
    for found in _HALVES.finditer(text[:400]):
        first, second = text[: found.start()], text[found.end() :]
        answers = []
        before = context
        for half in (first, second):
            question, result = _understood(half, before, knowledge)
            answer = _composed(half, question, result, knowledge)
            if answer.outcome != ANSWER:
                break
            answers.append(answer)
            before = _remembered(before, question, result, answer, knowledge)
        if len(answers) == 2:
            return _joined(text, answers[0], answers[1])
    return None


def _joined(text: str, one: Answer, two: Answer) -> Answer:
    if one.text == two.text:
        return one._replace(question=text)
    return one._replace(
        question=text, text=f"{one.text} {two.text}", values=(*one.values, *two.values),
        working=" / ".join(w for w in (one.working, two.working) if w),
        sources=tuple(dict.fromkeys((*one.sources, *two.sources))), cautions=tuple(dict.fromkeys((*one.cautions, *two.cautions))),
    )  # fmt: skip


# --- understanding a turn


def question_of(text: str, knowledge: Knowledge, variant: str) -> Question:
    """Return a text as a question of its own."""
    reading = knowledge.reader.read(text)
    losing = reading.asks_loss or reading.has("happens", "steps", "mode")
    found = tuple(conditions(reading, knowledge.states, knowledge.units, losing))
    named = [v for v in reading.variants if v in knowledge.variants]
    return Question(reading, found, named[-1] if named else variant or knowledge.variants[0], bool(named))


def _understood(text: str, context: Context, knowledge: Knowledge) -> tuple[Question, Result]:
    picked = _picked(text, context, knowledge)
    if picked:
        return picked
    # A turn is completed from the last; what it names itself always counts.
    correction = CORRECTION.match(text)
    bare = text[correction.end() :] if correction else text
    alone = question_of(bare, knowledge, context.variant)
    result = resolve_scored(alone, knowledge)
    if context.asked is None or strange(alone.reading, knowledge.matcher) or alone.reading.too_long:
        return alone, result.result
    if not (correction or follows(bare) or _incomplete(alone, result, knowledge)):
        return alone, result.result
    merged = _merged(alone, context, knowledge)
    second = resolve_scored(merged, knowledge)
    if context.asked.conditions or (_things(alone.reading, knowledge, _places(alone)) and not _leans(bare, alone)):
        carried = _carried(alone, context.asked)
        third = resolve_scored(carried, knowledge)
        margin = -0.03 if _things(alone.reading, knowledge, _places(alone)) else 0.03
        asked = alone.reading.asked & QUANTITIES
        if (
            quantity_of(third.result, knowledge) in asked
            and quantity_of(second.result, knowledge) not in asked
            and third.score >= _LEANING
        ):
            return carried, third.result
        if alone.reading.mentions and third.score >= max(second.score, result.score) + margin:
            return carried, third.result
    leans = bool(correction) or _leans(bare, alone)
    if _prefers_merged(alone, result, second, leans, context, knowledge):
        return merged, second.result
    return alone, result.result


def _carried(alone: Question, before: Question) -> Question:
    """Return a turn that asks something else under the conditions of the question before."""
    named = {c.input for c in alone.conditions}
    kept = tuple(c._replace(where=()) for c in before.conditions if c.input not in named)
    variant = alone.variant if alone.named_variant else before.variant
    return alone._replace(
        conditions=(*kept, *alone.conditions),
        variant=variant,
        context=True,
        background=before.reading.concepts,
    )


def _merged(alone: Question, context: Context, knowledge: Knowledge) -> Question:
    assert context.asked is not None
    said = tuple((c.input, c.where) for c in alone.conditions)
    words = merged_words(context.asked, alone.reading, said, knowledge)
    merged = question_of(words, knowledge, alone.variant if alone.named_variant else context.asked.variant)
    if alone.named_variant:
        merged = merged._replace(variant=alone.variant, named_variant=True)
    elif not merged.named_variant:
        merged = merged._replace(variant=context.asked.variant, named_variant=context.asked.named_variant)
    return merged._replace(reading=merged.reading._replace(text=alone.reading.text), context=True)


def _incomplete(question: Question, scored: Scored, knowledge: Knowledge) -> bool:
    """Return whether a turn may lean on the one before: it names no thing, or does not answer by itself."""
    if isinstance(scored.result, (Declined, Choices, Needed)):
        return True
    if len(question.reading.words) <= 8 and _PRONOUNS.intersection(question.reading.words):
        return True
    few = len(question.reading.words) <= 4
    return few or scored.score < _GOOD or not _things(question.reading, knowledge, _places(question))


def _things(reading: Reading, knowledge: Knowledge, said: frozenset[int] = frozenset()) -> bool:
    """Return whether a turn names a thing other than those whose state it gives."""
    return any(
        not knowledge.matcher.is_soft(m) and not _is_quantity(m.concepts, knowledge) and m.start not in said
        for m in reading.mentions
    )


def _places(question: Question) -> frozenset[int]:
    return frozenset(k for c in question.conditions for k in c.where)


def _leans(text: str, question: Question) -> bool:
    """Return whether a turn is plainly a fragment of the question before: "and with STEADY", "the retraction one"."""
    words = question.reading.words
    if len(words) > 8:
        return False
    asks = any(w in _ASKING for w in words[1:]) and not _ABOUT.match(text)
    return (follows(text) and not asks) or bool(_PRONOUNS.intersection(words)) or len(words) <= 4


def _is_quantity(concepts: frozenset[str], knowledge: Knowledge) -> bool:
    return all(knowledge.lexicon.kinds.get(c) in ("quantity", "ask", "ask!") or c.startswith("@") for c in concepts)


def _prefers_merged(
    alone: Question, first: Scored, second: Scored, continues: bool, context: Context, knowledge: Knowledge
) -> bool:
    if isinstance(second.result, Declined):
        return False
    if isinstance(first.result, Declined):
        return True
    if isinstance(second.result, (Choices, Needed)) and not isinstance(first.result, (Choices, Needed)):
        return False
    if isinstance(first.result, (Choices, Needed)):
        return True
    if not _things(alone.reading, knowledge, _places(alone)):
        return True
    return second.score >= (_LEANING if continues else first.score + 0.02)


def _picked(text: str, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the record chosen among those offered, by its number."""
    if not context.offered or context.asked is None:
        return None
    index = choice(text, len(context.offered))
    if index is None:
        index = _named_choice(text, context, knowledge)
    if index is None:
        return None
    if isinstance(context.result, TableResult):
        row = context.result.rows[index]
        return context.asked._replace(conditions=row.conditions), context.result._replace(rows=(row,))
    result = chosen_record(context.offered[index], context.asked, knowledge)
    return (context.asked, result) if result else None


def _named_choice(text: str, context: Context, knowledge: Knowledge) -> int | None:
    """Return the offered record that a short turn names and the others do not: "the retraction one"."""
    reading = knowledge.reader.read(text)
    content = [m for m in reading.mentions if not knowledge.matcher.is_soft(m)]
    if not content or len(reading.words) > 6 or reading.amounts or not all(context.offered):
        return None
    fits = [
        index
        for index, name in enumerate(context.offered)
        if all(not m.concepts.isdisjoint(_offer_concepts(name, knowledge)) for m in content)
    ]
    return fits[0] if len(fits) == 1 else None


def _offer_concepts(name: str, knowledge: Knowledge) -> frozenset[str]:
    record = knowledge.base.records[name]
    text = getattr(record, "of", "") or getattr(record, "title", "") or record.asks[0]
    return knowledge.phrase(text).concepts


# --- controls


def _controlled(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    name = control(text)
    if not name:
        believed = _believed(text, context, knowledge)
        return (believed, context) if believed else None
    if name in ("why", "source", "again") and context.answer is None:
        return None
    last = context.answer
    if name == "again" and last:
        return last._replace(question=text), context
    if name == "why" and last:
        return _why(text, context, knowledge)
    if name == "source" and last:
        return _source(text, last, knowledge), context
    if name == "disregard":
        return _said(text, CLARIFY, "Disregarded. What would you like to know?", knowledge), Context(
            variant=context.variant, disputed=context.disputed
        )
    if name == "dispute" and last and last.entry:
        return _dispute(text, last, context, knowledge)
    if name == "undispute" and context.disputed:
        return _said(text, ANSWER, "No record is set aside any more.", knowledge), context._replace(disputed=())
    return None


def _believed(text: str, context: Context, knowledge: Knowledge) -> Answer | None:
    """Return the last answer again, held against what the turn believes: never agreed to, unless it is so."""
    last = context.answer
    if last is None or not last.values or not BELIEF.search(text[:200]):
        return None
    reading = knowledge.reader.read(text)
    if not reading.amounts or any(
        not m.weak and not m.passing and m.known for m in reading.mentions if not _colours(m, knowledge)
    ):
        return None
    value, first = reading.amounts[-1].value, last.values[0]
    if abs(value - first.value) < 1e-9:
        return last._replace(question=text, text=f"That is the figure loaded. {last.text}")
    was = [c for c in knowledge.base.changes.values() if c.record == last.entry]
    former = any(a.value == value for c in was for a in knowledge.phrase(c.formerly).amounts)
    lead = "That was the former figure, and it no longer holds." if former else "The figure loaded is another."
    return last._replace(question=text, text=f"{last.text} {lead}")


def _colours(mention: Mention, knowledge: Knowledge) -> bool:
    return knowledge.matcher.is_soft(mention) or _is_quantity(mention.concepts, knowledge)


def _said(text: str, outcome: str, words: str, knowledge: Knowledge) -> Answer:
    return Answer(text, outcome, words, cautions=(deference(knowledge),))


def _why(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    """Return the reason: the record's own, else what the knowledge says to the last question with a why."""
    last, asked = context.answer, context.asked
    if last is None or asked is None:
        return None
    record = knowledge.base.records[last.entry] if last.entry in knowledge.base.records else None
    reason = getattr(record, "why", "")
    result: Result | None = None
    if reason and isinstance(knowledge.base.records.get(reason), Fact):
        result = FactResult(knowledge.base.records[reason])
    for words in _whys(record, asked, knowledge):
        if result is None:
            scored = resolve_scored(question_of(f"why {words}", knowledge, asked.variant), knowledge)
            if isinstance(scored.result, FactResult) and _is_reason(scored.result.fact, last, knowledge):
                result = scored.result
    if result is None:
        words = f"The reason is not stated in what is loaded. {last.working or last.text}"
        return last._replace(question=text, text=words), context
    answer = _composed(text, asked._replace(reading=asked.reading._replace(text=text)), result, knowledge)
    return answer, context._replace(answer=answer)


def _is_reason(fact: Fact, last: Answer, knowledge: Knowledge) -> bool:
    """Return whether a statement gives the reason of an answer: it answers a why, from the same section."""
    sections = {(s.document, s.paragraph.rsplit(".", 1)[0]) for s in last.sources} | {
        (s.document, s.paragraph) for s in last.sources
    }
    own = {(s.document, s.paragraph.rsplit(".", 1)[0]) for s in fact.sources} | {
        (s.document, s.paragraph) for s in fact.sources
    }
    return "why" in knowledge.matcher.vocabulary(fact.id) and bool(sections & own)


def _whys(record: object, asked: Question, knowledge: Knowledge) -> list[str]:
    """Return what a bare "why" may be about: the last question, its things alone, what answered it."""
    things = [
        m.text
        for m in asked.reading.mentions
        if not knowledge.matcher.is_soft(m) and not _is_quantity(m.concepts, knowledge)
    ]
    asks = getattr(record, "asks", ())
    return [
        " ".join(asked.reading.words),
        " ".join(things),
        *(a.replace("[", "").replace("]", "") for a in asks[:4]),
    ]


def _source(text: str, last: Answer, knowledge: Knowledge) -> Answer:
    if not last.sources:
        return last._replace(question=text, text="It rests on no paragraph: it is a computation or a definition.")
    listed = []
    for source in last.sources:
        title = knowledge.base.documents[source.document].title if source.document in knowledge.base.documents else ""
        revision = f", revision {source.revision}" if source.revision else ""
        listed.append(f"{source.document} {source.paragraph}{revision} ({title})")
    return last._replace(question=text, text="; ".join(dict.fromkeys(listed)) + ".", working="")


def _dispute(text: str, last: Answer, context: Context, knowledge: Knowledge) -> tuple[Answer, Context]:
    note = text.split(":", 1)[1].strip() if ":" in text else ""
    kept = tuple(pair for pair in context.disputed if pair[0] != last.entry)
    words = f"Set aside as disputed: {last.entry}. It is said so whenever it would be used, until its curator has looked and it is cleared."
    answer = _said(text, ANSWER, words, knowledge)._replace(entry=last.entry, sources=last.sources)
    return answer, context._replace(disputed=(*kept, (last.entry, note)))


def _with_disputes(answer: Answer, context: Context, knowledge: Knowledge) -> Answer:
    """Say of a record that is set aside that it is, wherever it would be used."""
    note = next((n for name, n in context.disputed if name == answer.entry), None)
    if note is None or answer.outcome != ANSWER or "disputed" in answer.text:
        return answer
    said = f" The note says: {note}." if note else ""
    caution = f"This record is disputed and set aside until its curator has looked.{said}"
    text = f"{caution} It said: {answer.text}"
    return answer._replace(text=text, cautions=(*answer.cautions, caution))


# --- composing and remembering


def _composed(text: str, question: Question, result: Result, knowledge: Knowledge) -> Answer:
    answer = compose(result, question, knowledge)
    understood = plain_reading(question.reading)
    understood["conditions"] = [{"input": c.input, "value": c.value} for c in question.conditions]
    understood["variant"] = question.variant
    understood["result"] = type(result).__name__
    return answer._replace(question=text, understood=understood)


def _finished(answer: Answer, knowledge: Knowledge) -> Answer:
    lexicon = knowledge.base.pronunciations if isinstance(knowledge.base.pronunciations, dict) else {}
    return answer._replace(spoken=spoken(answer.text, knowledge.units, lexicon))


def _remembered(context: Context, question: Question, result: Result, answer: Answer, knowledge: Knowledge) -> Context:
    if answer.outcome == DECLINE:
        return context
    offered = tuple(name for name, _ in result.options) if isinstance(result, Choices) else ()
    if isinstance(result, TableResult) and len(result.rows) > 1:
        offered = tuple("" for _ in result.rows)
    variant = context.variant
    if question.named_variant and not question.reading.mentions and not question.reading.amounts:
        variant = question.variant
    return context._replace(variant=variant, asked=question, result=result, answer=answer, offered=offered)


__all__ = ["answer_turn", "citations", "question_of"]
