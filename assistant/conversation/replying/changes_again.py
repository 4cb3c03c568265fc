"""What another document changed, for a turn that only names it, and since when: "and the abnormal checklist?"."""

from __future__ import annotations

from assistant.answering.answer import Answer
from assistant.conversation.choosing.remembering import remembered
from assistant.conversation.composing import composed
from assistant.conversation.context import Context
from assistant.conversation.reading_turns.readings import question_of
from assistant.conversation.replying.library import effective_from
from assistant.knowledge.library_records import Change
from assistant.resolving.changes import change_result
from assistant.resolving.documents_named import documents_named
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import ChangeResult

_LONG = 8
_BESIDE = frozenset({
    "and", "what", "about", "how", "the", "in", "of", "for", "so", "ok", "okay", "then", "also", "one", "revision",
    "rev", "issue", "edition", "number", "s", "did", "whats", "change", "changed", "changes", "alter", "new",
    "does", "has", "with", "same", "now", "on", "a", "or", "by",
    "ones",
})  # fmt: skip


def changed_there(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context] | None:
    """Return what the document changed that a short turn only names, after what a revision changed."""
    told = context.result
    if not isinstance(told, ChangeResult) or context.asked is None or len(text.split()) > _LONG:
        return None
    question = question_of(f"what changed in {text}", knowledge, context.asked.variant)
    named = documents_named(question, knowledge)
    taken = {k for document in named for k in document.places} | {0, 1, 2}
    rest = {w for k, w in enumerate(question.reading.words) if k not in taken and w[0].isalpha()}
    if not named or not _BESIDE.issuperset(rest):
        return None
    found = change_result(question, knowledge)
    if found is None or found[2].changes == told.changes:
        return None
    question = question.with_text(text)
    answer = composed(text, question, found[2], knowledge)
    return answer, remembered(context, question, found[2], answer, knowledge)


def with_dates(answer: Answer, changes: tuple[Change, ...], knowledge: Knowledge) -> Answer:
    """Return what was changed with the day from which it holds, for a turn that asks since when."""
    names = dict.fromkeys(change.since.split()[0] for change in changes)
    dated = [d for name in names if (d := knowledge.base.documents.get(name)) and d.effective]
    return answer._replace(text=f"{answer.text} {effective_from(dated)}") if dated else answer
