"""A turn that names a variant to keep to: its name alone, "switch to the …", "I fly the …"."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.traits import OPEN
from assistant.quantities.amounts import Amount
from assistant.resolving.choosing import resolve_scored
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.limits import check
from assistant.resolving.results import CheckResult, Choices, Needed, Result

_FILLING = frozenset({
    "on", "for", "in", "to", "the", "now", "i", "we", "am", "are", "is", "it", "s", "please", "from", "here", "back",
    "with", "a", "ok", "okay", "so", "then", "again", "this", "my", "our", "that", ".", ",", "!",
})  # fmt: skip
_VERBS = frozenset({
    "switch", "fly", "flying", "use", "change", "set", "select", "keep", "go", "stay", "variant", "model", "type",
    "aircraft", "aeroplane", "airplane", "mine", "ours", "make", "talk", "about", "assume",
})  # fmt: skip
_MOST_WORDS = 8


def variant_named(text: str, context: Context, knowledge: Knowledge) -> str:
    """Return the variant that a turn names and says nothing else with, or ""."""
    if len(text) > 60 or len(text.split()) > _MOST_WORDS:
        return ""
    bare = text.strip(" .!").upper()
    if bare.isdigit() and bare in knowledge.variants:
        # A figure is a number rather than a name, unless another variant is kept to and nothing is asked back.
        elsewhere = context.variant not in ("", bare) and not isinstance(context.result, (Needed, Choices))
        return bare if elsewhere else ""
    reading = knowledge.reader.read(text)
    named = {v for v in reading.variants if v in knowledge.variants}
    rest = [w for k, w in enumerate(reading.words) if k not in reading.variant_places]
    if len(named) != 1 or reading.amounts or not _FILLING.union(_VERBS).issuperset(rest):
        return ""
    # "On the …" after a question asks it of the other variant once.
    once = context.asked is not None and bool(rest) and _VERBS.isdisjoint(rest)
    return "" if once else named.pop()


def only_switches(text: str) -> bool:
    """Return whether a turn that names a variant asks nothing anew: it says that it is to be kept to."""
    return not _VERBS.isdisjoint(text.lower().replace(",", " ").split())


def on_another_variant(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the question that was answered last for the variant that a turn names, where it says nothing else."""
    before, reading = context.asked, alone.reading
    judged = _judged(alone, context, knowledge)
    if judged:
        return judged
    if before is None or not before.background or before.reading.variants or isinstance(context.result, OPEN):
        return None
    if len(set(reading.variants)) != 1 or reading.mentions or reading.amounts:
        return None
    question = before.with_text(reading.text)._replace(variant=alone.variant, named_variant=True)
    return question, resolve_scored(question, knowledge).result


def _judged(alone: Question, context: Context, knowledge: Knowledge) -> tuple[Question, Result] | None:
    """Return the verdict given last on a reading of an earlier turn for the variant that a turn names, where it says
    nothing else: "and on the long one?".
    """
    told, before = context.result, context.asked
    if not isinstance(told, CheckResult) or before is None or not told.checks or not alone.named_variant:
        return None
    things = [m for m in knowledge.matcher.telling(alone.reading) if not _FILLING.issuperset(m.text.split())]
    if len(set(alone.reading.variants)) != 1 or alone.reading.amounts or things or before.reading.amounts:
        return None
    found = []
    for last in told.checks:
        given = Amount(0, 0, last.given, last.unit, "", False, False)
        again = check(knowledge.record(last.limit.id, alone.variant), given, alone, knowledge)
        found += [again] if again else []
    question = before.with_text(alone.reading.text)._replace(variant=alone.variant, named_variant=True, context=True)
    return (question, CheckResult(tuple(found))) if len(found) == len(told.checks) else None
