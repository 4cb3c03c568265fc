"""What the user disputes: set aside with a note, said to be so wherever it is used, listed, and cleared again."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from assistant.answering.answer import ANSWER, CLARIFY, Answer, Citation
from assistant.answering.compose import citations
from assistant.conversation.composing import finished, replied
from assistant.conversation.context import Context
from assistant.conversation.control_words.controls import dispute_note
from assistant.knowledge.base import stated
from assistant.knowledge.records import Source
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import Result

_UNTIL, _HERE = "until its curator has looked", "in this conversation alone"
_HOW_TO_CLEAR = 'Say "clear dispute" with its number, or "clear all disputes".'


def set_aside(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context]:
    """Set the record of the last answer aside, with what is said of it; nothing without such a record."""
    last = context.answer
    if last is None or not last.entry:
        return replied(text, CLARIFY, "There is no answer yet whose record could be set aside.", knowledge), context
    note = dispute_note(text)
    change = knowledge.base.changes.get(last.entry)
    record = change.record if change else last.entry
    kept = tuple(pair for pair in context.disputed if pair[0] != record)
    noted = f" Your note: {note.rstrip('.')}." if note else ""
    words = f"Set aside as disputed: {record_name(record, knowledge)}.{noted}"
    until = _HERE if context.forgets else f"{_UNTIL} and it is cleared"
    words += f" It is said so wherever it is used, {until}."
    answer = replied(text, ANSWER, words, knowledge)._replace(entry=last.entry, sources=last.sources)
    return answer, context._replace(disputed=(*kept, (record, note)))


def cleared(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context]:
    """Clear the dispute that a turn means: all, the one of that number, that of the last answer, or the only one."""
    disputed = context.disputed
    if not disputed:
        return replied(text, ANSWER, "No record is set aside as disputed.", knowledge), context
    if re.search(r"\b(?:all|every|disputes|records)\b", text, re.IGNORECASE):
        words = f"No record is set aside any more{_for_now(disputed, context)}."
        return replied(text, ANSWER, words, knowledge), context._replace(disputed=())
    number = re.search(r"\d+", text)
    meant = disputed[int(number[0]) - 1 : int(number[0])] if number else _of_last(context, knowledge) or disputed
    if len(meant) != 1:
        return listed(text, context, knowledge)[0]._replace(outcome=CLARIFY), context
    rest = tuple(pair for pair in disputed if pair != meant[0])
    words = f"No longer disputed{_for_now(meant, context)}: {record_name(meant[0][0], knowledge)}."
    words += f" Still set aside: {len(rest)}." if rest else ""
    return replied(text, ANSWER, words, knowledge), context._replace(disputed=rest)


def _for_now(pairs: tuple[tuple[str, str], ...], context: Context) -> str:
    """Say that what is kept in a file is cleared for this conversation alone, where that is so."""
    return f" {_HERE}" if context.forgets and any(pair in context.kept for pair in pairs) else ""


def listed(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context]:
    """Tell which records are set aside, and with what notes."""
    lines = [
        f"{number}. {record_name(name, knowledge)}{f': {note}' if note else ''}"
        for number, (name, note) in enumerate(context.disputed, 1)
    ]
    if not lines:
        return replied(text, ANSWER, "No record is set aside as disputed.", knowledge), context
    until = {_until(pair, context) for pair in context.disputed}
    heading = f"Set aside as disputed, {until.pop()}:" if len(until) == 1 else "Set aside as disputed:"
    words = "\n".join([heading, *lines, _HOW_TO_CLEAR])
    found = [knowledge.base.records[name] for name, _ in context.disputed if name in knowledge.base.records]
    sources = citations((source for record in found for source in record.sources), knowledge)
    return replied(text, ANSWER, words, knowledge)._replace(sources=sources), context


def with_disputes(answer: Answer, context: Context, knowledge: Knowledge) -> Answer:
    """Say of every record that is set aside that it is, wherever an answer uses it; the fact still comes first."""
    if not context.disputed or answer.outcome != ANSWER or "isputed" in answer.text:
        return answer
    used = _used(answer, context, knowledge)
    told = [_told(name, note, _until((name, note), context), answer, knowledge) for name, note in used]
    if not told:
        return answer
    text = answer.text if answer.text.endswith((".", "?", "!")) else f"{answer.text}."
    said = answer._replace(text=" ".join([text, *told]), cautions=(*answer.cautions, *told))
    return finished(said, knowledge)


def record_name(name: str, knowledge: Knowledge) -> str:
    """Return what a record is called in plain words, with its paragraphs; its id when it is no longer there."""
    base = knowledge.base
    record = base.records.get(name) or base.inputs.get(name)
    if record is None:
        return f"{name}, which is no longer loaded"
    called = getattr(record, "of", "") or getattr(record, "title", "") or getattr(record, "says", "").rstrip(".")
    if not called:
        term = base.terms.get(record.term)
        called = f"what becomes of {(term.show or term.names[0]) if term else name}"
    cited = "; ".join(dict.fromkeys(f"{source.document} {source.paragraph}" for source in record.sources))
    return f"{called} ({cited})" if cited else str(called)


def _until(pair: tuple[str, str], context: Context) -> str:
    """Return how long a record stays set aside: what an earlier conversation left does until the curator looked."""
    return _HERE if context.forgets and pair not in context.kept else _UNTIL


def _told(name: str, note: str, until: str, answer: Answer, knowledge: Knowledge) -> str:
    which = "This record" if name == answer.entry else f"What it rests on, {record_name(name, knowledge)},"
    said = f" The note says: {note.rstrip('.')}." if note else ""
    return f"{which} is disputed and set aside {until}.{said}"


def _of_last(context: Context, knowledge: Knowledge) -> tuple[tuple[str, str], ...]:
    """Return what is disputed of what the last answer used."""
    return tuple(_used(context.answer, context, knowledge)) if context.answer else ()


def _used(answer: Answer, context: Context, knowledge: Knowledge) -> list[tuple[str, str]]:
    """Return what is disputed of what an answer was made from."""
    own = context.answer is not None and context.answer.question == answer.question
    parts = {answer.entry, *(_ids(context.result) if own else ())}
    return [
        (name, note)
        for name, note in context.disputed
        if name in parts or _stands_in(name, answer, knowledge)
    ]


def _ids(part: Result | Any) -> Iterator[str]:
    """Yield the ids of the records that a result holds, and of those that they are read with."""
    if not isinstance(part, tuple):
        return
    for field in ("id", "record", "reference", "top"):
        name = getattr(part, field, "")
        if isinstance(name, str) and hasattr(part, "sources"):
            yield name
    for _, name in getattr(part, "extra", ()) if hasattr(part, "function") else ():
        yield name
    for each in part:
        yield from _ids(each)


def _stands_in(name: str, answer: Answer, knowledge: Knowledge) -> bool:
    """Return whether an answer cites a record's paragraph and tells its figure, or what it says."""
    if name not in knowledge.base.records:
        return False
    record = knowledge.record(name, answer.variant)
    if not _paragraphs(record.sources) & _paragraphs(answer.sources):
        return False
    figure, says = stated(record), getattr(record, "says", "")
    if figure is None:
        return bool(says) and says in answer.text
    told = [(number.value, number.unit) for number in answer.values]
    for text in (answer.text, answer.working):
        told += [(amount.value, amount.unit or "") for amount in knowledge.reader.read(text, mending=False).amounts]
    return (figure.value, figure.unit) in told


def _paragraphs(sources: tuple[Source | Citation, ...]) -> set[tuple[str, str]]:
    return {(source.document, source.paragraph) for source in sources}
