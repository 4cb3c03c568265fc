"""Reply to what steers a conversation: again, disregard, a dispute, what is asked of that which was told."""

from __future__ import annotations

import re
from collections.abc import Callable

from assistant.answering.answer import ANSWER, CLARIFY, Answer
from assistant.conversation.composing import replied
from assistant.conversation.context import Context
from assistant.conversation.control_words.all_well import plain_words
from assistant.conversation.control_words.controls import asks_place, control
from assistant.conversation.control_words.controls_of_changes import asks_since
from assistant.conversation.replying.beliefs import believed
from assistant.conversation.replying.beside_questions import beside_questions
from assistant.conversation.replying.disputing import cleared, listed, set_aside
from assistant.conversation.replying.earlier_told import figure_named, limit_again, named_before
from assistant.conversation.replying.library import library_reply, with_books
from assistant.conversation.replying.state_reasons import asks_what_brings_it, state_reason, tells_states
from assistant.knowledge.records import Model
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import ChangeResult, ModelResult


def controlled(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    """Return the reply to a turn that steers, or None when it is a question."""
    name = control(text, _words_told(context, knowledge) if "where" in text.lower() else frozenset())
    if not name and context.answer and control(with_books(text, knowledge)) == "source":
        name = "source"
    if not name:
        figures = _as_figures(text, context)
        name = "source" if figures != text and control(figures) == "source" else ""
    if not name:
        told = _on_the_last(text, context, knowledge) if context.answer else None
        return told or _on_what_was_told(text, context, knowledge)
    if name in ("why", "source", "again") and context.answer is None:
        return None
    beside = beside_questions(name, context, knowledge)
    if beside:
        return replied(text, ANSWER, beside, knowledge), context
    last = context.answer
    if name == "again" and last:
        from assistant.conversation.on_procedures.cases_of_steps import comes_again  # few turns need it

        if comes_again(plain_words(text)):
            return None  # "it's back again" tells of what was reset
        return (context.said or last)._replace(question=text), context
    if name == "why" and last:
        from assistant.conversation.replying.reasons_told import at_the_limit, why_told

        return at_the_limit(text, context, knowledge) or why_told(text, context, knowledge)
    if name == "source" and last and not asks_since(text):
        return _where(text, last, context, knowledge)
    reply = _REPLIES.get(name)
    return reply(text, context, knowledge) if reply else None


def _on_the_last(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    from assistant.conversation.replying.reasons_told import reason_told  # a first question starts without it

    return reason_told(text, context, knowledge)


def _where(text: str, last: Answer, context: Context, knowledge: Knowledge) -> tuple[Answer, Context]:
    """Return where a thing is, if a turn asks for that and it is known; else where what was told last stands."""
    from assistant.conversation.replying.whereabouts import bare_place, source_told, whereabouts

    found = whereabouts(text, context, knowledge) if asks_place(text) else bare_place(text, context, knowledge)
    return found or (source_told(text, last, knowledge), context)


def _disregarded(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context]:
    fresh = Context(variant=context.variant, disputed=context.disputed, forgets=context.forgets, kept=context.kept)
    return replied(text, CLARIFY, "Disregarded. What would you like to know?", knowledge), fresh


def _doubted(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    from assistant.conversation.replying.doubted import doubted  # few turns need it

    return doubted(text, context, knowledge)


def _steps_counted(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    from assistant.conversation.replying.doubted import steps_counted  # few turns need it

    return steps_counted(text, context, knowledge)


_Reply = Callable[[str, Context, Knowledge], "tuple[Answer, Context] | None"]
_REPLIES: dict[str, _Reply] = {
    "dispute": set_aside, "undispute": cleared, "disputes": listed, "disregard": _disregarded, "doubt": _doubted,
    "steps": _steps_counted,
}  # fmt: skip


def _on_what_was_told(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    """Return the reply to a turn on a document, on what was told before, on a change or a belief of it."""
    meant = named_before(text, context, knowledge.base) or figure_named(text, context, knowledge)
    if meant:
        from assistant.conversation.replying.whereabouts import source_told

        return source_told(text, meant, knowledge), context
    if isinstance(context.result, ChangeResult):
        from assistant.conversation.replying.changes_again import changed_there  # few turns need it

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
    told = _since(text, context, knowledge) if context.answer else None
    told = told or limit_again(text, context) or believed(text, context, knowledge)
    if told is None and context.answer:
        from assistant.conversation.replying.exceeding import exceeded_asked  # a first question starts without it
        from assistant.conversation.replying.figures_apart import apart_told

        told = exceeded_asked(text, context, knowledge) or apart_told(text, context, knowledge)
    return (told, context._replace(said=told)) if told else None


def _since(text: str, context: Context, knowledge: Knowledge) -> Answer | None:
    from assistant.conversation.replying.since_when import since_told, when_told  # a first question starts without it

    return since_told(text, context, knowledge) or when_told(text, context)


_FED = frozenset({"pressure", "energy", "heat", "mass", "speed"})
"""What comes from somewhere itself, and not only from a document."""


def _as_figures(text: str, context: Context) -> str:
    """Return a turn with what went into a calculation called figures: "where are those delays from", after a distance.
    Of anything else "where does that pressure come from" asks what feeds it, and it stays as it is.
    """
    lower = text.lower()
    if not isinstance(context.result, ModelResult) or "from" not in lower or "where" not in lower:
        return text
    given = (f"{part.id} {part.quantity}" for part in context.result.model.inputs)
    words = {word for part in given for word in re.split(r"[\s_]+", part) if len(word) > 3}
    told = "|".join(sorted(re.escape(word) for word in words - _FED))
    return re.sub(rf"\b(that|those|this|these|the) (?:{told})s?\b", r"\1 figures", text, flags=re.IGNORECASE)


def _words_told(context: Context, knowledge: Knowledge) -> frozenset[str]:
    """Return the words for what was told last: what the record is about or says, and what it is calculated from."""
    record = knowledge.base.records.get(context.answer.entry) if context.answer else None
    about = " ".join(str(getattr(record, field, "")) for field in ("of", "title", "says"))
    if isinstance(record, Model):
        about += " ".join(f" {part.id} {part.quantity}" for part in record.inputs)
    return frozenset(word.strip(".,:;()").lower() for word in about.split())
