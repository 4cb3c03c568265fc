"""A turn that corrects what was told to be in a state: "no sorry, System 1", after System 2 was lost.

What it names takes the place of what was told before, and the same is asked anew; without this it would be one failure
more.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from assistant.conversation.context import Context
from assistant.conversation.on_states.in_scenario import row_told, states_given, told_table
from assistant.conversation.on_states.pointed_names import FIGURES
from assistant.conversation.on_states.states_changed import POINTING, of_the_last, replaces
from assistant.conversation.reading_turns.readings import carried, question_of
from assistant.conversation.reading_turns.traits import OPEN
from assistant.resolving import tables as state_tables
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import CauseResult, Result, TableResult, TablesResult
from assistant.resolving.state_asked import is_well
from assistant.understanding.condition import alike
from assistant.understanding.grouping import names_another
from assistant.understanding.states import Condition, conditions

_MARKS = frozenset({
    "sorry", "correction", "meant", "mean", "actually", "scratch", "wait", "mistake", "oops", "apologies", "wrong",
    "misread", "misspoke", "rather", "strike", "negative", "swap", "scrap",
})  # fmt: skip
_LEAD = _MARKS | {
    "no", "nope", "oh", "ah", "ok", "okay", "i", "it", "s", "is", "its", "was", "that", "thats", "the", "hang", "on",
    "hold", "my", "our", "make", "should", "have", "be", "been", "said", "say", "to", "well", "in", "fact", "a",
    "one", "by", "did",
    "do", "not", "of", "course", "you", "know", "what", "um", "uh", "er", "me", "let", "got",
}  # fmt: skip
"""Words that a correction may open with; one of the marks is among them."""
_ONLY = frozenset({"only", "just", "instead", "rather", "alone"})
_BESIDE = _LEAD | _ONLY | {
    "if", "and", "but", "so", "then", "now", "with", "has", "had", "are", "we", "there", "were", "re", "suppose",
    "supposing", "how", "about", "after", "all", "because", "thing", "failed", "lost", "gone", "out", "which", "who",
    "same", "question", "swap", "change", "replace", "on", "am", "read", "rather", "than", "negative", "instead", "of",
    "only", "please", "time", "this", "for", "ve", "they", "their", "he", "she", "us", "itself",
}  # fmt: skip
_MORE = frozenset({"too", "also", "well", "another", "plus", "both", "still", "yet", "else"})
"""Words by which something is added, and takes no place."""
_IF = frozenset({"if", "suppose", "supposing", "say", "had"})
_LIKENING = frozenset({
    ("have", "said"), ("same", "question"), ("same", "for"), ("same", "with"), ("same", "thing"), ("same", ","),
    ("and", "for"),
    ("swap", "it"), ("swap", "that"), ("change", "it"), ("change", "that"), ("replace", "it"), ("replace", "that"),
})  # fmt: skip
"""Words by which what was asked is asked of another thing."""
_ENDING = (("the", "one"), ("on", "about"))
"""Words that a correction may end with: "System 1 is the one"."""
_LONG, _FEW, _SHORT = 16, 6, 9


def put_right(
    alone: Question, corrects: bool, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return what was asked last with the states in place that a turn puts right; corrects: it opens as a correction.

    None where it corrects no state, or where what was asked does not answer with it.
    """
    words = alone.reading.words
    if context.asked is None or len(words) > _LONG or not _MORE.isdisjoint(words):
        return None
    before, opens = states_given(context), corrects or _opens(words) or replaces(alone.reading)
    if not before or not (opens or "not" in words):
        return None
    new = _meant(alone, before, context, knowledge)
    told_of = {c.input for c in before}
    if all(c.input not in told_of and is_well(c, knowledge) for c in new):
        return None
    if not (opens or _set_against(alone, before, new, knowledge)):
        return None
    given = _in_place(before, new, replaces(alone.reading), knowledge)
    if {(c.input, c.value) for c in given} == {(c.input, c.value) for c in before}:
        return None
    question = _asked_anew(alone, before, given, new, context, knowledge)
    if _names_more(alone, before, new, knowledge):
        own = carried(alone, context, given, knowledge)._replace(conditions=given)
        result = resolve_scored(own, knowledge).result
        return (own, result) if isinstance(result, TableResult) and result.asked else None
    result = _told(question, given, context, knowledge)
    return None if isinstance(result, OPEN) else (question, result)


def _opens(words: Sequence[str]) -> bool:
    """Return whether a turn opens with words by which one corrects oneself: "no wait, …", "actually it's …"."""
    end = next((k for k, w in enumerate(words) if w not in _LEAD and w[0].isalnum()), len(words))
    if not _MARKS.isdisjoint(words[:end]) or words[:2] == ("no", ",") or _supposes(words):
        return True
    last = tuple(w for w in words if w[0].isalnum())[-2:]
    ends = len(words) <= _SHORT and (not _MARKS.isdisjoint(last) or last in _ENDING)  # "System 1, I mean"
    return ends or any(pair in _LIKENING for pair in pairwise(words[:_FEW]))


def _supposes(words: Sequence[str]) -> bool:
    """Return whether a turn supposes that "it" was another thing: "what if it were System 1"."""
    it = words.index("it") if "it" in words[:-1][:_FEW] else 0
    return it > 0 and not _IF.isdisjoint(words[:it]) and words[it + 1] in ("were", "was", "is", "s")


def _set_against(
    alone: Question, before: Sequence[Condition], new: Sequence[Condition], knowledge: Knowledge
) -> bool:
    """Return whether a turn says that something told before is what the other is not: "System 1, not System 2"."""
    if not alone.reading.mentions:
        return True  # "not 2, 1"
    told = {knowledge.base.inputs[c.input].term for c in before} - {knowledge.base.inputs[c.input].term for c in new}
    named = (m for m in alone.reading.mentions if not told.isdisjoint(m.concepts))
    return any(names_another(alone.reading.words, m.start) or _follows_not(alone, m.start) for m in named)


def _follows_not(alone: Question, at: int) -> bool:
    return alone.reading.words[at - 1 : at] == ("not",)


def _meant(
    alone: Question, before: Sequence[Condition], context: Context, knowledge: Knowledge
) -> tuple[Condition, ...]:
    """Return the states that a turn gives; a thing that can fail and is only named has failed, as the other had."""
    words = alone.reading.words
    found = [c for c in alone.conditions if not c.is_result]
    if not found and not POINTING.isdisjoint(words):
        found = list(of_the_last(alone, context, knowledge))
    if not found and any(not is_well(c, knowledge) for c in before):
        found = list(conditions(alone.reading, knowledge.states, knowledge.units, True))
        found = [c for c in found if not c.is_result]
        named = {k for c in found for k in c.where}
        if not _BESIDE.issuperset(w for k, w in enumerate(words) if k not in named and w[0].isalpha()):
            found = []  # it asks of the thing
    found = found or _by_figure(words, before, knowledge)
    denied = {c.input for c in found if c.where and _is_denied(words, min(c.where))}
    return tuple(c for c in found if c.input not in denied)


def _by_figure(words: Sequence[str], before: Sequence[Condition], knowledge: Knowledge) -> list[Condition]:
    """Return the failure of the like of a thing told of that a turn gives by its number alone: "sorry, 1"."""
    figures = [(k, FIGURES.get(w, w)) for k, w in enumerate(words) if FIGURES.get(w, w).isdigit() and w != "one"]
    if not figures or not _BESIDE.issuperset(w for w in words if w[0].isalpha() and w not in FIGURES):
        return []
    terms = [(k, knowledge.states.counted.get(int(figure))) for k, figure in figures]
    named = [(k, name) for k, term in terms if term for name in knowledge.states.by_term.get(term, ())]
    told = {c.input for c in before if not is_well(c, knowledge)}
    like = [(k, n) for k, n in named if n in told or any(alike(n, each, knowledge.states) for each in told)]
    return [Condition(n, knowledge.states.failed(n), where=(k,)) for k, n in like if len(like) == len(figures)]


def _is_denied(words: Sequence[str], at: int) -> bool:
    return names_another(words, at) or words[at - 1 : at] == ("not",)


def _in_place(
    before: Sequence[Condition], new: Sequence[Condition], only: bool, knowledge: Knowledge
) -> tuple[Condition, ...]:
    """Return the states that hold now: what was told of the like of what is named holds no more."""
    named = {c.input for c in new}
    others = [c for c in before if c.input not in named and not is_well(c, knowledge)]
    like = {c.input for c in others if any(alike(c.input, name, knowledge.states) for name in named)}
    told_of = named.intersection(c.input for c in before)
    if not like and (only or (len(others) == 1 and not told_of)):
        like = {c.input for c in others}
    if told_of and not only:
        like = set()  # it puts right how a thing is that was told of, and leaves the rest: "the accumulator is charged"
    return (*(c._replace(where=()) for c in before if c.input not in named | like), *new)


def _asked_anew(
    alone: Question, before: Sequence[Condition], given: tuple[Condition, ...], new: Sequence[Condition],
    context: Context, knowledge: Knowledge,
) -> Question:  # fmt: skip
    """Return the question before without the words of what is put aside, and with those of what takes its place."""
    asked = context.asked
    assert asked is not None
    gone = {(c.input, c.value) for c in before} - {(c.input, c.value) for c in given}
    kept = {k for c in before if (c.input, c.value) not in gone for k in c.where}
    places = {k for c in before if (c.input, c.value) in gone for k in c.where} - kept
    words = " ".join(w for k, w in enumerate(asked.reading.words) if k not in places).rstrip("?. ")
    said = (f"{_name(c, knowledge)} {c.value.replace('_', ' ')}" for c in new)
    question = question_of(" , ".join((words, *said)), knowledge, asked.variant)
    where = {c.input: c.where for c in question.conditions}
    now = tuple(c._replace(where=where.get(c.input, ())) for c in given)
    return question.with_text(alone.reading.text)._replace(
        conditions=now, context=True, background=asked.background, variant=asked.variant, unsaid=()
    )


def _name(condition: Condition, knowledge: Knowledge) -> str:
    term = knowledge.base.inputs[condition.input].term
    return knowledge.base.terms[term].names[0]


def _names_more(
    alone: Question, before: Sequence[Condition], new: Sequence[Condition], knowledge: Knowledge
) -> bool:
    """Return whether a turn says more than what it puts right."""
    said = {k for c in new for k in c.where}
    terms = {knowledge.base.inputs[c.input].term for c in (*alone.conditions, *before) if not c.is_result}
    left = [m for m in knowledge.matcher.telling(alone.reading) if not said.issuperset(m.taken)]
    left = [m for m in left if not _BESIDE.issuperset(m.text.split()) and terms.isdisjoint(m.concepts)]
    return bool(left)


def _told(question: Question, given: tuple[Condition, ...], context: Context, knowledge: Knowledge) -> Result:
    """Return what was asked last, worked out under the states that hold now."""
    table = told_table(context) if isinstance(context.result, (TableResult, TablesResult)) else None
    if table is not None and any(c.input in table.inputs for c in given):
        asked = context.result.asked if isinstance(context.result, TableResult) else ()
        return row_told(table, given, asked, knowledge)
    result = resolve_scored(question, knowledge).result
    if isinstance(result, TableResult) and not result.rows[0].conditions:
        return _with_changed(result, given, knowledge)
    if isinstance(result, (*OPEN, CauseResult)) and table is not None:
        return row_told(table, given, (), knowledge)
    return result


def _with_changed(told: TableResult, given: tuple[Condition, ...], knowledge: Knowledge) -> Result:
    """Return what was asked, which the states now given do not touch, and after it what they do change."""
    state = {c.input: c.value for c in given}
    changed = [
        row_told(table, given, (), knowledge)
        for table in state_tables.tables(knowledge.base)
        if table.id != told.table.id
        and state_tables.outputs(table, state, knowledge.base) != state_tables.outputs(table, {}, knowledge.base)
    ]
    return TablesResult((told, *changed)) if changed else told
