"""The procedure that a conversation goes through: it stays the subject of turns that lean on it, until it is left.

"Next", after a side question, goes on from the step told last; "wait how long?" is asked of the step that waits.
"""

from __future__ import annotations

from assistant.conversation.context import LATELY, Context
from assistant.frozen import NamedTuple
from assistant.knowledge.records import Step
from assistant.resolving.asked_quantity import AS_ASKED, QUANTITIES
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import ProcedureResult, Result
from assistant.understanding.mentions import Mention
from assistant.understanding.words import stem

_LONG = 12
_CLEAR = 0.97
GOING_ON = frozenset({"then", "next", "now", "after", "afterwards"})
_SMALL = frozenset({
    "a", "an", "the", "and", "or", "so", "ok", "okay", "right", "but", "well", "um", "er", "please", "just", "again",
    "i", "me", "my", "we", "us", "you", "it", "its", "that", "this", "them", "they", "one", "ones", "each", "every",
    "is", "are", "was", "be", "do", "does", "did", "can", "could", "may", "must", "should", "shall", "will", "have",
    "how", "long", "many", "much", "fast", "hard", "often", "what", "which", "where", "when", "at", "for", "in", "on",
    "to", "of", "with", "than", "not", "no", "below", "above", "until", "while", "there", "here", "any", "anything",
    "something", "times", "time", "seconds", "minutes", "speed", "pressure", "exactly", "need", "want", "go", "goes",
    "then", "next", "now", "after", "still", "if", "s", "t", "let", "get", "got", "stay", "keep", "max", "maximum",
    "till", "rolling", "going", "moving", "doing", "travelling", "like",
})  # fmt: skip
"""Words that name nothing which a step may do."""
_STAYING = frozenset({"stay", "stays", "left", "leave", "remain", "remains", "put", "set"})
_BOUNDS = frozenset({"maximum", "minimum"})


class Gone(NamedTuple):
    """A procedure told lately with the question that it answered; at_once: nothing was told since."""

    told: ProcedureResult
    asked: Question
    at_once: bool

    @property
    def step(self) -> int:
        """The index of the step told last, or -1 where the procedure was told as a whole."""
        if self.told.step is not None:
            return self.told.step
        return 0 if "first" in self.asked.reading.words else -1

    def asked_by(self, alone: Question) -> Question:
        """Return the question that the procedure answered, with the text of a turn on one of its steps: what follows
        goes on from the procedure.
        """
        return self.asked.with_text(alone.reading.text)


def gone_through(context: Context) -> Gone | None:
    """Return the procedure told last, or lately with no more than side questions since."""
    past = [(context.result, context.asked), *((turn.result, turn.asked) for turn in context.earlier[:LATELY])]
    for turns, (result, asked) in enumerate(past):
        if isinstance(result, ProcedureResult) and asked is not None:
            return Gone(result, asked, not turns)
    return None


def step_leant_on(
    alone: Question, score: float, context: Context, knowledge: Knowledge
) -> tuple[Question, Result] | None:
    """Return the step that a short turn asks on of the procedure gone through: the one that gives a figure for what
    it does ("wait how long?"), that comes next for a thing ("then the lever?"), that is meant for a case which is
    "still" so. score: how well the turn answers by itself, where it names what the procedure knows nothing of.
    """
    gone = gone_through(context)
    words = alone.reading.words
    if gone is None or len(words) > _LONG or alone.reading.amounts or (alone.conditions and not gone.at_once):
        return None
    things = [m for m in alone.reading.mentions if _is_thing(m, knowledge)]
    known = knowledge.matcher.vocabulary(gone.told.procedure.id)
    if any(known.isdisjoint(m.concepts | m.implied) and not _done(m, gone) for m in things):
        return None
    asked = _quantities_asked(alone)
    if asked and things and score >= _CLEAR and names_whole(gone.told, things, knowledge):
        return None
    found = _giving(alone, things, asked, gone, knowledge) if asked else _meant(alone, things, score, gone, knowledge)
    return None if found is None else (gone.asked_by(alone), gone.told._replace(step=found))


def names_whole(told: ProcedureResult, things: list[Mention], knowledge: Knowledge) -> bool:
    """Whether things named are no more than what the whole procedure is called by: "how long does free fall take?" asks
    of its whole act, though one of its steps has the name too.
    """
    title = knowledge.phrase(told.procedure.title).concepts
    return all(thing.concepts & title for thing in things)


def _is_thing(mention: Mention, knowledge: Knowledge) -> bool:
    """Return whether a mention names more than what is asked."""
    if knowledge.matcher.is_soft(mention) or mention.concepts & QUANTITIES or _SMALL.issuperset(mention.text.split()):
        return False
    return not all(knowledge.lexicon.kinds.get(c, "") == "ask!" for c in mention.concepts)


def _done(mention: Mention, gone: Gone) -> bool:
    """Return whether a step's own words hold those of a mention."""
    said = {stem(w) for w in mention.text.split()}
    return any(said & stems(step) for step in gone.told.procedure.steps)


def _quantities_asked(alone: Question) -> frozenset[str]:
    """Return the quantities that a turn asks for; "how many goes?" wants a count, whatever else it names, and "how
    hard?" a pressure as well.
    """
    words = alone.reading.words
    if "how" in words and "hard" in words:
        return frozenset({"pressure", "deceleration"})
    counted = "how" in words and not {"many", "often"}.isdisjoint(words)
    named = frozenset(c for m in alone.reading.mentions for c in m.concepts & QUANTITIES if not m.weak)
    return frozenset({"count"}) if counted and "duration" not in named else named


def _giving(
    alone: Question, things: list[Mention], asked: frozenset[str], gone: Gone, knowledge: Knowledge
) -> int | None:
    """Return the one step that gives what is asked of what the turn says is done."""
    steps = gone.told.procedure.steps
    named = [frozenset(map(stem, m.text.split())) for m in things] if "count" not in asked else []
    giving = [
        i
        for i, step in enumerate(steps)
        if asked & quantities(step, knowledge) and _in_its_unit(step, alone)
        if not any(stems(step).isdisjoint(name) for name in named)
    ]
    between = _between(named, asked, steps, knowledge) if named and not giving else None
    if between is not None:
        return between
    said = _said(alone)
    shared = {i: len(said & stems(steps[i])) for i in giving}
    most = max(shared.values(), default=0)
    meant = [i for i in giving if shared[i] == most]
    if most and len(meant) == 1:
        return meant[0]
    if said and not most and not ("count" in asked and gone.at_once):
        return None
    if not gone.at_once:
        return meant[0] if len(meant) == 1 and "count" in asked else None
    onward = not GOING_ON.isdisjoint(alone.reading.words)
    near = [i for i in (gone.step + 1,) * onward + (gone.step, gone.step + 1) if i in meant]
    return near[0] if near else meant[0] if len(meant) == 1 else None


def _between(
    named: list[frozenset[str]], asked: frozenset[str], steps: tuple[Step, ...], knowledge: Knowledge
) -> int | None:
    """Return the one step that gives what is asked beside those that do what a turn names: "how long in UP, before DN",
    of the wait that stands between them.
    """
    beside = [i for i, step in enumerate(steps) if any(name <= stems(step) for name in named)]
    giving = [i for i, step in enumerate(steps) if asked & quantities(step, knowledge)]
    if len(giving) != 1 or not all(any(name <= stems(step) for step in steps) for name in named):
        return None
    return giving[0] if {giving[0] - 1, giving[0] + 1} & set(beside) else None


def _in_its_unit(step: Step, alone: Question) -> bool:
    """Return whether a step tells a time in the unit that a turn asks it in: seconds are no "how many hours?"."""
    unit = alone.reading.unit
    times = {v.unit for v in step.values if v.quantity == "duration"}
    return unit is None or "duration" not in unit.quantities or not times or unit.symbol in times


def _meant(
    alone: Question, things: list[Mention], score: float, gone: Gone, knowledge: Knowledge
) -> int | None:
    """Return the step that is for what the turn says is still so, comes next for a thing, or does what it says."""
    steps, words = gone.told.procedure.steps, alone.reading.words
    if "still" in words:
        cases = [i for i, step in enumerate(steps) if i > gone.step and step.do[:3] == "If " and "still" in step.do]
        return cases[0] if len(cases) == 1 else None
    said, asks = _said(alone), {knowledge.lexicon.kinds.get(c, "") for m in alone.reading.mentions for c in m.concepts}
    if {"before", "or", "after"} <= set(words):  # "before or after DN?": the order is told with that step
        said -= {stem("before")}
        return next((i for i, step in enumerate(steps) if said and said <= stems(step)), None)
    if not said:
        return None
    fitting = [i for i, step in enumerate(steps) if said <= stems(step)]
    if "where" in words and not _STAYING.isdisjoint(words):
        return fitting[0] if len(fitting) == 1 else None
    if (not GOING_ON.isdisjoint(words) and "then" in words[:3]) or (gone.at_once and things and "where" in words):
        after = [i for i in fitting if i > gone.step]
        return after[0] if after and gone.step >= 0 else None
    if score >= _CLEAR or "ask!" in asks or alone.reading.has("meaning", "function", "compare", "cause", "list_all"):
        return None
    return fitting[0] if len(fitting) == 1 and gone.at_once else None


def _said(alone: Question) -> frozenset[str]:
    """Return the stems of the words by which a turn says what is done, and to what."""
    asked = {k for m in alone.reading.mentions if m.concepts <= QUANTITIES | _BOUNDS for k in m.taken}
    words = ((k, w) for k, w in enumerate(alone.reading.words) if w[0].isalpha() and w not in _SMALL)
    kept = (w for k, w in words if k not in asked)
    return frozenset(stem(part) for word in kept for part in word.split("-"))


def stems(step: Step) -> frozenset[str]:
    """Return the stems of the words of a step."""
    words = step.do.replace("-", " ").replace("'", " ").lower().split()
    return frozenset(stem(w.strip(".,:;()")) for w in words)


def quantities(step: Step, knowledge: Knowledge) -> set[str]:
    """Return the quantities whose amounts a step gives."""
    found = {value.quantity for value in step.values}
    for amount in knowledge.phrase(step.do).amounts:
        dimension = knowledge.units.get(amount.unit).dimension if amount.unit else "count"
        found.add(AS_ASKED.get(dimension, dimension))
    return found
