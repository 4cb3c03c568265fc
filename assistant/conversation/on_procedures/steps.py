"""A question on the procedure just told, which names no other: "below what speed?", "how long with the lever up?"."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.conversation.context import Context
from assistant.conversation.on_procedures.cases_of_steps import comes_again
from assistant.conversation.on_procedures.going_through import Gone, gone_through, names_whole, quantities
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import FactResult, ProcedureResult, Result
from assistant.understanding.mentions import Mention

_LONG = 8
_CLEAR = 0.9
_PARTS = frozenset({"part", "bit", "step"})
_FEW = 4
_ORDER = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth")
_LAST = frozenset({"last", "final"})
_STEPS = frozenset({"step", "item", "number", "point", "one"})
_ON = frozenset({
    "next", "then", "after", "continue", "on", "go", "carry", "step", "item", "one", "comes", "keep",
    "going", "read", "more",
})  # fmt: skip
_BACK = frozenset({"previous", "before", "back", "step", "item", "one", "go"})
_FILLING = frozenset({
    "and", "ok", "okay", "so", "the", "is", "do", "i", "we", "that", "now", "please", "?", ".", ",", "right", "a", "to",
    "s", "just", "me", "give", "tell", "read", "what", "whats", "was", "of", "it", "done", "yes", "yep", "check",
    "checked", "did", "got", "fine", "good", "great", "lovely", "complete", "completed", "thanks", "been", "has",
    "its", "had",
})  # fmt: skip
_MEMORY = "m"
"""The letter by which checklists number what is done from memory."""
_DONE = frozenset({"done", "did", "complete", "completed", "checked"})
_POINTING = frozenset({"that", "it", "this"})
_IN_VAIN = frozenset({"still", "nothing", "unchanged", "joy"})
_COMMON = frozenset({
    "if", "it", "the", "a", "is", "still", "does", "do", "not", "and", "then", "no", "in", "on", ",", "?",
})  # fmt: skip


def step_by_place(alone: Question, context: Context) -> tuple[Question, Result] | None:
    """Return the step of the procedure just told that a turn names by its place: "step 3", "what next?"."""
    gone = gone_through(context)
    words = [w for w in alone.reading.words if w not in _FILLING]
    if gone is None or len(words) > _FEW:
        return None
    last = len(gone.told.procedure.steps)
    if len(words) == 2 and words[0] == _MEMORY and gone.told.procedure.steps[0].memory:
        words = ["step", *words[1:]]  # "M2"
    if not words:
        done = gone.at_once and gone.told.step is not None and not _DONE.isdisjoint(alone.reading.words)
        if done or (gone.at_once and gone.told.alone and alone.reading.has("steps")):
            return gone.asked_by(alone), gone.told._replace(step=min(gone.step + 1, last), alone=True)
        # "What now?", after a side question on one of its steps, asks for all of it.
        asks = gone.at_once and gone.told.step is not None and alone.reading.has("steps")
        return (gone.asked_by(alone), gone.told._replace(step=None)) if asks else None
    place = _numbered(words, alone, last)
    if place is None and _ON.issuperset(words):
        place = gone.step + 1
    elif place is None and _BACK.issuperset(words) and gone.told.step:
        place = gone.told.step - 1
    if place is None or place < 0:
        return None
    return gone.asked_by(alone), gone.told._replace(step=min(place, last), alone=True)


def listed_told(alone: Question, context: Context) -> tuple[Question, Result] | None:
    """Return the list told last to a turn that asks no more than for one of it by its place: "what's the third?"."""
    words = [w for w in alone.reading.words if w not in _FILLING]
    told = context.result
    if context.asked is None or not isinstance(told, FactResult) or told.fact.says.count(",") < 2:
        return None
    places = _LAST.union(_ORDER)
    asks = places.union(_STEPS).issuperset(words) and not places.isdisjoint(words)
    return (context.asked.with_text(alone.reading.text), told) if asks else None


def _numbered(words: list[str], alone: Question, last: int) -> int | None:
    """Return the index of a step said by its number: "step 3", "the third step", "the last one"."""
    amounts = alone.reading.amounts
    said = {w for a in amounts for w in alone.reading.words[a.start : a.end]}
    order = [w for w in words if w in _ORDER or w in _LAST]
    alone_said = len(words) == len(order) == 1  # "second", "so first"
    if not (_STEPS.intersection(words) or alone_said) or not _STEPS.union(said, order).issuperset(words):
        return None
    if order:
        return last - 1 if order[0] in _LAST else _ORDER.index(order[0])
    return int(amounts[0].value) - 1 if amounts and amounts[0].unit in (None, "count") else None


def step_asked(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the one step of the procedure just told that gives the quantity which a short turn asks for, or that
    begins with what the turn says has happened: "and if it is still amber?".
    """
    told = context.result
    words = [w for w in alone.reading.words if w[0].isalnum()]
    if not isinstance(told, ProcedureResult) or len(words) > _LONG or alone.reading.amounts:
        return None
    asked = alone.reading.asked & QUANTITIES or {c for m in alone.reading.mentions for c in m.concepts & QUANTITIES}
    giving = [i for i, step in enumerate(told.procedure.steps) if asked & quantities(step, knowledge)]
    things = [m for m in knowledge.matcher.telling(alone.reading) if not m.concepts & QUANTITIES]
    if not asked:
        giving = (
            _begun_by(told, things, alone.reading.words, knowledge)
            or _after(told, things, alone, knowledge)
            or _naming(told, things, alone, knowledge)
        )
    elif told.step in giving and not things:
        giving = [told.step]
    elif things and names_whole(told, things, knowledge):
        return None  # "how long does free fall take?" asks of the drill's whole act, though a step has its name too
    elif things:
        speaking = [i for i in giving if _speaks_of(told, i, things, knowledge)]
        giving = speaking if speaking or not _POINTING.intersection(alone.reading.words) else giving
    if len(giving) != 1:
        return None
    return _of_the_procedure(alone, told, context), told._replace(step=giving[0])


def step_named(
    alone: Question, score: float, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the one step of the procedure just told that speaks of all a turn names: "use autobrake for that?", unless
    the turn answers clearly by itself. score: how well it does. A thing alone ("the pedals part") asks for its step.
    """
    told, words = context.result, alone.reading.words
    if not isinstance(told, ProcedureResult) or len(words) > _LONG or alone.reading.amounts or comes_again(words):
        return None
    rest = [w for w in words if w not in _FILLING and w not in _PARTS]
    things = [m for m in knowledge.matcher.telling(alone.reading) if not m.concepts & QUANTITIES]
    only = len(things) == 1 and len(rest) <= len(things[0].taken)
    if alone.reading.asked & QUANTITIES or not (only or (len(things) > 1 and score < _CLEAR)):
        return None
    steps = _naming(told, things, alone, knowledge)
    return (_of_the_procedure(alone, told, context), told._replace(step=steps[0])) if len(steps) == 1 else None


def _of_the_procedure(alone: Question, told: ProcedureResult, context: Context) -> Question:
    return Gone(told, context.asked, True).asked_by(alone) if context.asked else alone


def _begun_by(
    told: ProcedureResult, things: list[Mention], words: tuple[str, ...], knowledge: Knowledge
) -> list[int]:
    """Return the steps for a case ("If still amber, …") whose case holds all that a turn says."""
    steps = [step.do.replace(":", ",").partition(",")[0] for step in told.procedure.steps]
    read = {i: knowledge.phrase(case) for i, case in enumerate(steps) if case[:3] == "If "}
    if things:
        return [i for i, case in read.items() if all(not m.concepts.isdisjoint(case.concepts) for m in things)]
    alike = [i for i, case in read.items() if not (set(words) & set(case.words)) <= _COMMON]
    return alike or [i for i, case in read.items() if "still" in words and "still" in case.words]


def _after(told: ProcedureResult, things: list[Mention], alone: Question, knowledge: Knowledge) -> list[int]:
    """Return the step after the one that a turn says has been done in vain: "pressed it, still stuck"."""
    if not things or _IN_VAIN.isdisjoint(alone.reading.words):
        return []
    said = [knowledge.phrase(step.do).concepts for step in told.procedure.steps]
    done = [i for i, known in enumerate(said) if not things[0].concepts.isdisjoint(known)]
    return [done[0] + 1] if len(done) == 1 and done[0] + 1 < len(said) else []


def _naming(told: ProcedureResult, things: list[Mention], alone: Question, knowledge: Knowledge) -> list[int]:
    """Return the steps that speak of all the things a turn names, where it asks nothing else of them."""
    asks = {knowledge.lexicon.kinds.get(c, "") for m in alone.reading.mentions for c in m.concepts}
    if not things or "ask!" in asks or alone.reading.has("meaning", "function", "compare", "cause", "list_all"):
        return []
    steps = told.procedure.steps
    found = [i for i, step in enumerate(steps) if _says_all((step.do,), things, knowledge)]
    found = found or [i for i, step in enumerate(steps) if _says_all(step.asks, things, knowledge)]
    return found if len(found) < len(steps) else []


def _says_all(texts: Iterable[str], things: list[Mention], knowledge: Knowledge) -> bool:
    """Return whether some texts hold all of some things between them."""
    said = frozenset().union(*(knowledge.phrase(text).concepts for text in texts))
    return all(not thing.concepts.isdisjoint(said) for thing in things)


def _speaks_of(told: ProcedureResult, index: int, things: list[Mention], knowledge: Knowledge) -> bool:
    """Return whether a step, or the one before it, speaks of all that the turn names."""
    steps = told.procedure.steps[max(0, index - 1) : index + 1]
    return _says_all((*(step.do for step in steps), *told.procedure.steps[index].asks), things, knowledge)
