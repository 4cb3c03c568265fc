"""Reply to what steers a conversation: why, where it says so, disregard, a dispute, a figure that is believed."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from assistant.answering.answer import ANSWER, CLARIFY, Answer, Citation
from assistant.answering.heard import published_heard
from assistant.conversation.all_well import plain_words
from assistant.conversation.beliefs import believed, changes_of_figures, colours
from assistant.conversation.beside_questions import beside_questions
from assistant.conversation.composing import composed, replied
from assistant.conversation.context import LATELY, Context
from assistant.conversation.controls import asks_place, asks_when, control
from assistant.conversation.controls_of_changes import asks_former, asks_since
from assistant.conversation.disputing import cleared, listed, set_aside
from assistant.conversation.disputing import with_disputes as with_disputes
from assistant.conversation.earlier_told import figure_named, limit_again, named_before
from assistant.conversation.library import library_reply, with_books
from assistant.conversation.readings import question_of, things_named
from assistant.conversation.state_reasons import asks_what_brings_it, state_reason, tells_states
from assistant.knowledge.records import Fact, Limit, Model, Source
from assistant.resolving.changes import changes_of
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import (
    ChangeResult,
    CheckResult,
    FactResult,
    LimitResult,
    ModelResult,
    Result,
)  # fmt: skip

_NOT_CHANGED = "Nothing loaded says that it was ever another."
_SURE = 0.9
_TIMES = frozenset({"when", "before", "after", "until", "as", "while", "during", "once", "at"})
_LEFT = 0.35
"""Share of a question that a reason may leave unexplained."""
_NO_REASON = "The reason is not stated in what is loaded."


def controlled(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    """Return the reply to a turn that steers, or None when it is a question."""
    name = control(text, _words_told(context, knowledge) if "where" in text.lower() else frozenset())
    if not name and context.answer and control(with_books(text, knowledge)) == "source":
        name = "source"
    if not name:
        return _reason_told(text, context, knowledge) or _on_what_was_told(text, context, knowledge)
    if name in ("why", "source", "again") and context.answer is None:
        return None
    beside = beside_questions(name, context, knowledge)
    if beside:
        return replied(text, ANSWER, beside, knowledge), context
    last = context.answer
    if name == "again" and last:
        from assistant.conversation.cases_of_steps import comes_again  # few turns need it

        if comes_again(plain_words(text)):
            return None  # "it's back again" tells of what was reset
        return (context.said or last)._replace(question=text), context
    if name == "why" and last:
        return _at_the_limit(text, context, knowledge) or _why(text, context, knowledge)
    if name == "source" and last and not asks_since(text):
        found = _whereabouts(text, context, knowledge) if asks_place(text) else _bare_place(text, context, knowledge)
        if found:
            return found
        return _source(text, last, knowledge), context
    reply = _REPLIES.get(name)
    return reply(text, context, knowledge) if reply else None


def _disregarded(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context]:
    fresh = Context(variant=context.variant, disputed=context.disputed, forgets=context.forgets, kept=context.kept)
    return replied(text, CLARIFY, "Disregarded. What would you like to know?", knowledge), fresh


def _doubted(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    from assistant.conversation.doubted import doubted  # few turns need it

    return doubted(text, context, knowledge)


def _steps_counted(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    from assistant.conversation.doubted import steps_counted  # few turns need it

    return steps_counted(text, context, knowledge)


_Reply = Callable[[str, Context, Knowledge], "tuple[Answer, Context] | None"]
_REPLIES: dict[str, _Reply] = {
    "dispute": set_aside, "undispute": cleared, "disputes": listed, "disregard": _disregarded, "doubt": _doubted,
    "steps": _steps_counted,
}  # fmt: skip


def _reason_told(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    """Return the reason of what was told last, where a turn asks for it without saying "why", and one is stated."""
    if context.answer is None:
        return None
    from assistant.conversation.what_for import asks_purpose  # a first question starts without it

    found = _at_the_limit(text, context, knowledge)
    if found is None and asks_purpose(text):
        found = _why(text, context, knowledge)
        found = None if found and found[0].text.startswith(_NO_REASON) else found
    return found


def _at_the_limit(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    from assistant.conversation.what_for import why_within

    found = why_within(text, context, knowledge)
    if found is None:
        return None
    answer = composed(text, *found, knowledge)
    return answer, context._replace(answer=answer)


def _on_what_was_told(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    """Return the reply to a turn on a document, on what was told before, on a change or a belief of it."""
    meant = named_before(text, context, knowledge.base) or figure_named(text, context, knowledge)
    if meant:
        return _source(text, meant, knowledge), context
    if isinstance(context.result, ChangeResult):
        from assistant.conversation.changes_again import changed_there  # few turns need it

        there = changed_there(text, context, knowledge)
        if there:
            return there
    asked = library_reply(text, context, knowledge)
    if asked:
        return asked, context
    if tells_states(context) and asks_what_brings_it(text):
        told = state_reason(text, context, knowledge)
        if told:
            return told, context._replace(answer=told)
    told = _since(text, context, knowledge) or _when(text, context)
    told = told or limit_again(text, context) or believed(text, context, knowledge)
    if told is None and context.answer:
        from assistant.conversation.exceeding import exceeded_asked  # a first question starts without it
        from assistant.conversation.figures_apart import apart_told

        told = exceeded_asked(text, context, knowledge) or apart_told(text, context, knowledge)
    return (told, context._replace(said=told)) if told else None


def _words_told(context: Context, knowledge: Knowledge) -> frozenset[str]:
    """Return the words for what was told last: what the record is about or says, and what it is calculated from."""
    record = knowledge.base.records.get(context.answer.entry) if context.answer else None
    about = " ".join(str(getattr(record, field, "")) for field in ("of", "title", "says"))
    if isinstance(record, Model):
        about += " ".join(f" {part.id} {part.quantity}" for part in record.inputs)
    return frozenset(word.strip(".,:;()").lower() for word in about.split())


def _since(text: str, context: Context, knowledge: Knowledge) -> Answer | None:
    """Return since when the figure told last holds, where a revision changed it."""
    last = context.answer
    if last is None or not (asks_since(text) or asks_former(text) or _of_a_changed_figure(text, context, knowledge)):
        return None
    told = (*(last.values[:1] and (last.entry,)), *_limits_told(context))
    changes = tuple(c for name in dict.fromkeys(told) for c in changes_of(name, knowledge))
    changes = changes or changes_of_figures(last, knowledge)
    if context.said and context.said.entry in knowledge.base.changes:
        changes = (knowledge.base.changes[context.said.entry],)
    if not changes and not last.values:  # a reason was told, or a statement without a figure: the one before is meant
        lately = (turn.answer for turn in context.earlier[:LATELY])
        changes = next((found for each in lately if (found := changes_of(each.entry, knowledge))), ())
    if not changes:
        return _unchanged(text, last, context)
    asked = context.asked or question_of(text, knowledge, "")
    told = composed(text, asked, ChangeResult(changes), knowledge)
    if asks_former(text):
        return told
    from assistant.conversation.changes_again import with_dates  # few turns need it

    return with_dates(told, changes, knowledge)


def _of_a_changed_figure(text: str, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn asks since when a figure holds, or what it was, and names that figure or the former one:
    "when did the 280 change", "how long has it been 250".
    """
    last = context.answer
    if last is None or len(text) > 80:
        return False
    changes = [c for name in _limits_told(context) for c in changes_of(name, knowledge)]
    changes += changes_of_figures(last, knowledge)
    reading = knowledge.reader.read(text)
    figures = {a.value for c in changes for words in (c.formerly, c.now) for a in knowledge.phrase(words).amounts}
    figures |= {value.value for value in last.values} if isinstance(context.result, LimitResult) else set()
    if not reading.amounts or any(amount.value not in figures for amount in reading.amounts):
        return False
    places = {k for amount in reading.amounts for k in range(amount.start, amount.end)}
    bare = " ".join("it" if k in places else word for k, word in enumerate(reading.words))
    return asks_since(bare) or asks_former(bare)


def _unchanged(text: str, last: Answer, context: Context) -> Answer | None:
    """Return the figure told last where nothing says that it ever changed."""
    if not isinstance(context.result, (LimitResult, CheckResult)) or not last.values:
        return None
    return last._replace(question=text, text=f"{_NOT_CHANGED} {last.text}")


def _when(text: str, context: Context) -> Answer | None:
    """Return the statement told last again, where it says when and no more is asked."""
    last = context.answer
    if last is None or not asks_when(text) or not isinstance(context.result, FactResult):
        return None
    fact = context.result.fact
    return last._replace(question=text) if not _TIMES.isdisjoint(fact.says.lower().split()) else None


def _limits_told(context: Context) -> tuple[str, ...]:
    """Return the ids of the limits that the last result told of, or took."""
    result = context.result
    if isinstance(result, LimitResult):
        return tuple(limit.id for limit in result.limits)
    if isinstance(result, CheckResult):
        return tuple(check.limit.id for check in result.checks)
    if isinstance(result, ChangeResult):
        return tuple(change.record for change in result.changes)
    if isinstance(result, ModelResult):
        return tuple(item.default for item in result.model.inputs if item.default)  # the figures that it takes as usual
    return ()


def _why(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    """Return the reason: the record's own, else what the knowledge says to the last question with a why."""
    last, asked = context.answer, context.asked
    if last is None or asked is None:
        return None
    of_states = state_reason(text, context, knowledge) if tells_states(context) else None
    if of_states:
        return of_states, context._replace(answer=of_states)
    record = knowledge.base.records.get(last.entry)
    reason = getattr(record, "why", "")
    result: Result | None = None
    if reason and isinstance(knowledge.base.records.get(reason), Fact):
        result = FactResult(knowledge.base.records[reason])
    for words in () if last.working else _whys(record, asked, knowledge):
        if result is None:
            scored = resolve_scored(question_of(f"why {words}", knowledge, asked.variant), knowledge)
            if isinstance(scored.result, FactResult) and _is_reason(scored.result.fact, last, asked, knowledge):
                result = scored.result
    of_states = None if result or last.working else state_reason(text, context, knowledge)
    if of_states:
        return of_states, context._replace(answer=of_states)
    if result is None:
        words = f"{_NO_REASON} {last.working or last.text}"
        return last._replace(question=text, text=words), context
    answer = composed(text, asked.with_text(text), result, knowledge)
    return answer, context._replace(answer=answer)


def _bare_place(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    """Return the place of what was told, for a turn that asks no more than where, and else where that thing is."""
    from assistant.conversation.where_then import asks_bare_place, place_told  # a first question starts without it

    if not asks_bare_place(text):
        return None
    return place_told(text, context, knowledge) or _whereabouts(text, context, knowledge)


def _whereabouts(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    """Return where the thing spoken of is, if that is known: "where is it?" asks for a place before a paragraph."""
    asked = context.asked
    if asked is None:
        return None
    things = [m.text for m in asked.reading.mentions if not colours(m, knowledge)]
    told = context.answer.entry if context.answer else ""
    named = [" ".join(things), *reversed(things), *_subjects(told, knowledge)]
    for thing in dict.fromkeys(filter(None, named)):
        question = question_of(f"where is the {thing}", knowledge, asked.variant)
        scored = resolve_scored(question, knowledge)
        told = scored.result.fact.id if isinstance(scored.result, FactResult) else ""
        if scored.score < _SURE or not told or "where" not in knowledge.matcher.vocabulary(told):
            continue
        answer = composed(text, question.with_text(text), scored.result, knowledge)
        return answer, context._replace(answer=answer)
    return None


def _subjects(name: str, knowledge: Knowledge) -> list[str]:
    """Return the things that the first way of asking for a record names."""
    asks = getattr(knowledge.base.records.get(name), "asks", ())[:1]
    phrases = [knowledge.phrase(ask.replace("[", "").replace("]", "")) for ask in asks]
    return [m.text for phrase in phrases for m in phrase.mentions if not colours(m, knowledge)]


def _is_reason(fact: Fact, last: Answer, asked: Question, knowledge: Knowledge) -> bool:
    """Return whether a statement gives the reason of an answer: it answers a why of what was asked about, from
    the same section.
    """
    shared = _sections(last.sources) & _sections(fact.sources)
    said = knowledge.matcher.vocabulary(fact.id)
    matcher = knowledge.matcher
    weights = {m: matcher.mention_weight(m) for m in asked.reading.mentions if not matcher.is_soft(m)}
    left = sum(w for m, w in weights.items() if said.isdisjoint(m.concepts | m.implied))
    fits = "why" in said and bool(shared) and left <= _LEFT * sum(weights.values())
    return fits and not _of_another_limit(fact, last, asked, knowledge)


def _of_another_limit(fact: Fact, last: Answer, asked: Question, knowledge: Knowledge) -> bool:
    """Return whether a reason is that of another limit than the one told: each of its ways of asking names a thing that
    neither the question nor the answer names.
    """
    told = knowledge.base.records.get(last.entry)
    if not isinstance(told, Limit):
        return False
    known = asked.reading.concepts | knowledge.phrase(told.of).concepts | knowledge.phrase(last.text).concepts
    whys = [ask for ask in fact.asks if "why" in ask.split()] or fact.asks
    asks = (things_named(knowledge.phrase(ask.replace("[", "").replace("]", "")), knowledge) for ask in whys)
    return all(any(known.isdisjoint(m.concepts | m.implied) for m in named) for named in asks)


def _sections(sources: Iterable[Source | Citation]) -> set[tuple[str, str]]:
    """Return the paragraphs, and the sections that they stand in."""
    paragraphs = {(s.document, s.paragraph) for s in sources}
    return paragraphs | {(document, paragraph.rsplit(".", 1)[0]) for document, paragraph in paragraphs}


def _whys(record: object, asked: Question, knowledge: Knowledge) -> list[str]:
    """Return what a bare "why" may be about: the last question, its things alone, what answered it."""
    things = [m.text for m in things_named(asked.reading, knowledge)]
    asks = getattr(record, "asks", ())
    return [
        " ".join(asked.reading.words),
        " ".join(things),
        *(a.replace("[", "").replace("]", "") for a in asks[:4]),
    ]


def _source(text: str, last: Answer, knowledge: Knowledge) -> Answer:
    if not last.sources and last.outcome != ANSWER:
        words = "Nothing was answered yet that could have a source. What would you like to know?"
        return replied(text, CLARIFY, words, knowledge)
    if not last.sources:
        return last._replace(question=text, text="It rests on no paragraph: it is a computation or a definition.")
    listed: dict[str, str] = {}
    for source in last.sources:
        document = knowledge.base.documents.get(source.document)
        revision = f", revision {source.revision}" if source.revision else ""
        told = f"{source.document} {source.paragraph}{revision} ({document.title if document else ''})"
        listed[told] = published_heard(document.title, source.paragraph) if document and document.published else told
    return last._replace(question=text, text="; ".join(listed) + ".", working="", aloud=tuple(listed.items()))
