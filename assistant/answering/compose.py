"""Make the one answer record from what resolving found: a composer for each kind of result."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from math import isnan
from typing import Any

from assistant.answering import calculations, figures, judged, statements, states, unanswered
from assistant.answering.answer import ANSWER, CLARIFY, DECLINE, Answer, Citation, Number
from assistant.answering.asked_unit import in_asked_unit
from assistant.answering.parts import Parts
from assistant.knowledge.records import Source
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge, Question


def _both(result: r.BothResult, question: Question, know: Knowledge) -> Parts:
    return statements.both(*(_COMPOSERS[type(one)](one, question, know) for one in result))


_COMPOSERS: dict[type, Callable[[Any, Question, Knowledge], Parts]] = {
    r.FactResult: statements.fact,
    r.LimitResult: figures.limit,
    r.BothResult: _both,
    r.CheckResult: judged.check,
    r.ChosenResult: judged.chosen,
    r.NotApplicable: judged.not_applicable,
    r.BandResult: judged.bands,
    r.ProcedureResult: statements.procedure,
    r.ChangeResult: statements.changes,
    r.VariantResult: statements.variant,
    r.CompareResult: statements.compare,
    r.Elsewhere: statements.elsewhere,
    r.TableResult: states.table,
    r.TablesResult: states.tables,
    r.LossResult: states.loss,
    r.CauseResult: states.cause,
    r.ScheduleResult: calculations.schedule,
    r.ModelResult: calculations.model,
    r.Conversion: calculations.conversion,
    r.Needed: unanswered.needed,
    r.Choices: unanswered.choices,
    r.Declined: unanswered.declined,
}
_STATEMENTS = (r.FactResult, r.ProcedureResult, r.BothResult)
"""Results that are told as they stand, with every figure in them."""
_PARAGRAPH = r"\b([A-Z]{3,}) ((?:[A-Z]\.)?\d+(?:\.\d+)+|[A-Z]\.\d+)"
_OUTCOMES = {r.Needed: CLARIFY, r.Choices: CLARIFY, r.Declined: DECLINE}


def compose(result: r.Result, question: Question, know: Knowledge) -> Answer:
    """Return the answer record of a result; `said` and `understood` are filled by those who know them."""
    parts = _COMPOSERS[type(result)](result, question, know)
    parts = in_asked_unit(parts, result, question, know)
    if isinstance(result, _STATEMENTS) or (isinstance(result, r.BandResult) and isnan(result.given)):
        parts = parts._replace(values=(*parts.values, *_told(parts, know)))
    outcome = parts.outcome or _OUTCOMES.get(type(result), ANSWER)
    return Answer(
        question=question.reading.text,
        outcome=outcome,
        text=_minus(parts.text),
        values=tuple(Number(*value) for value in parts.values),
        working=_minus(parts.working),
        sources=citations((*parts.sources, *_named(parts.text, know)), know),
        cautions=(deference(know), *parts.cautions),
        entry=parts.entry,
        needs=parts.needs,
        choices=parts.choices,
        variant=question.variant,
        aloud=tuple((_minus(written), _minus(heard)) for written, heard in parts.aloud),
    )


def _told(parts: Parts, know: Knowledge) -> Iterator[tuple[str, float, str]]:
    """Yield the figures that a statement tells and does not list: what the text says, the record says too."""
    listed = {(value, unit) for _, value, unit in parts.values}
    for amount in know.amounts(re.sub(_PARAGRAPH, "", parts.text)):
        if amount.unit and (amount.value, amount.unit) not in listed:
            listed.add((amount.value, amount.unit))
            yield "", amount.value, amount.unit


def _minus(text: str) -> str:
    """Return a text whose negative numbers have the sign that documents write them with."""
    return re.sub(r"(?<![\w°%)-])-(?=\d)", "\u2212", text) if "-" in text else text


def _named(text: str, know: Knowledge) -> Iterator[Source]:
    """Yield the paragraphs that a text names: it rests on them too."""
    for document, paragraph in re.findall(_PARAGRAPH, text):
        if document in know.base.documents and paragraph not in know.base.documents[document].revision:
            yield Source(document, paragraph)


def citations(sources: Iterable[Source], know: Knowledge) -> tuple[Citation, ...]:
    """Return the paragraphs with the revision loaded, each once."""
    found = []
    for source in dict.fromkeys(sources):
        document = know.base.documents.get(source.document)
        revision, effective = (document.revision, document.effective) if document else ("", "")
        found.append(Citation(source.document, source.paragraph, revision, effective))
    return tuple(found)


def deference(know: Knowledge) -> str:
    """Return the deference to the approved documents, with what is loaded."""
    return f"Training only. Loaded: {know.loaded_line}. Check your library."
