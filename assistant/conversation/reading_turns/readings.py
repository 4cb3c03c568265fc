"""The questions that a turn may be: a question of its own, the last one with its parts changed, or one that the last
one's subject and states carry on to.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from assistant.conversation.context import Context
from assistant.knowledge.records import Model
from assistant.resolving.asked_quantity import quantity_of
from assistant.resolving.deflections import deflections
from assistant.resolving.given_states import given_states
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.model_inputs import bind, cued_parts
from assistant.resolving.orders_shared import Deflection
from assistant.resolving.results import (
    BandResult,
    CheckResult,
    Choices,
    Elsewhere,
    FactResult,
    LimitResult,
    Needed,
    ProcedureResult,
    TableResult,
)
from assistant.understanding.mentions import ELSEWHERE, Mention, Reading
from assistant.understanding.states import Condition

_POINTING = frozenset({"that", "it", "this", "those", "its"})
_POINTING_AT = frozenset({"it", "its", "them", "they", "their"})
_WHETHER = frozenset({"is", "are", "do", "does", "can", "will", "may", "must", "should"})
OPEN_WORDS = frozenset({"what", "which", "who", "how", "when", "where", "why"})
_BRIEF = 5
_TIMES = 10
"""How many times larger an amount may be than the one that it takes the place of."""
_WEIGHT = 3
"""How many things a quantity that was asked for counts as."""
_LIKENING = frozenset({"as", "like", "than", "unlike"})
"""Words before a variant that another one is likened to."""
_DENYING = frozenset({"not", "no", "never"})
_BEFORE_A_NAME = frozenset({
    "on", "in", "for", "of", "with", "the", "a", "an", "our", "one", "actually", "flying", "even",
})  # fmt: skip
"""Words between what denies a variant and its name."""
_TELLING = (TableResult, FactResult, LimitResult)


def question_of(text: str, knowledge: Knowledge, variant: str) -> Question:
    """Return a text as a question of its own."""
    reading = knowledge.reader.read(text)
    found = given_states(reading, knowledge)
    named = variants_meant(reading, knowledge)
    chosen = named[-1] if named else variant or knowledge.variants[0]
    return Question(reading, found.conditions, chosen, bool(named), unsaid=found.unsaid)


def variants_meant(reading: Reading, knowledge: Knowledge) -> list[str]:
    """Return the variants that a question is about; what one is only likened to is not: "the same as the short one".

    Where one is denied, the other one of two is meant: "it is not the long one".
    """
    named = [v for v in reading.variants if v in knowledge.variants]
    starts = [i for i in reading.variant_places if i - 1 not in reading.variant_places]
    if not starts or len(named) != len(reading.variants) or len(starts) != len(named):
        return named
    denied = {v for v, i in zip(named, starts, strict=True) if _is_denied(i, reading.words)}
    if denied:
        kept = [v for v in named if v not in denied]
        others = [v for v in knowledge.variants if v not in denied]
        return kept or (others if len(others) == 1 else [])
    if len(set(named)) < 2:
        return named
    likened = [_LIKENING.isdisjoint(reading.words[max(0, i - 2) : i + 1]) for i in starts]
    return [v for v, own in zip(named, likened, strict=True) if own] or named


def _is_denied(at: int, words: Sequence[str]) -> bool:
    """Return whether the word that says something of a variant denies it: "not the long one", not "is that not …"."""
    while at > 0 and words[at - 1] in _BEFORE_A_NAME:
        at -= 1
    if at == 0 or words[at - 1] not in _DENYING:
        return False
    return not (at > 2 and words[at - 2] in _POINTING and words[at - 3] in _WHETHER)


def is_quantity(concepts: frozenset[str], knowledge: Knowledge) -> bool:
    """Return whether concepts only say what is asked for: a quantity, an aspect, a state."""
    return all(knowledge.lexicon.kinds.get(c) in ("quantity", "ask", "ask!") or c.startswith("@") for c in concepts)


def things_named(reading: Reading, knowledge: Knowledge) -> list[Mention]:
    """Return the things that a reading names, and not only what is asked of one."""
    return [m for m in knowledge.matcher.telling(reading) if not is_quantity(m.concepts, knowledge)]


def carried(alone: Question, context: Context, given: tuple[Condition, ...], knowledge: Knowledge) -> Question:
    """Return a turn that asks something else under the conditions given before, of what was spoken of."""
    before, answer = context.asked, context.answer
    assert before is not None
    record = knowledge.base.records.get(answer.entry) if answer else None
    near = tuple(getattr(record, "sources", ()))
    named = {c.input for c in alone.conditions}
    states = [c for c in given if not c.is_result] or given  # what follows from a state is worked out anew
    kept = tuple(c._replace(where=()) for c in states if c.input not in named)
    variant = alone.variant if alone.named_variant else before.variant
    background = before.reading.concepts
    pointed = not _POINTING_AT.isdisjoint(before.reading.words) or len(before.reading.words) <= _BRIEF
    if before.background and (pointed or not things_named(before.reading, knowledge)):
        # It leant on what was spoken of before, which is still spoken of.
        background |= _still_meant(before, context, knowledge)
    if not _asks(alone, knowledge):
        background |= _of_states((*kept, *context.scenario), knowledge)
    if answer and isinstance(context.result, _TELLING) and _POINTING.intersection(alone.reading.words):
        # "What deceleration is that?": what was answered is spoken of as well as what was asked.
        background |= knowledge.phrase(answer.text.partition(". ")[0]).concepts
    if isinstance(context.result, ProcedureResult) and context.result.step is not None:
        background |= _of_the_step(context.result, knowledge)
    return alone._replace(
        conditions=(*kept, *alone.conditions),
        variant=variant,
        context=True,
        background=background,
        near=near,
        spoken=pointed_at(alone, context, knowledge),
        wanted=_wanted(alone, context, knowledge),
        after=_named_before(alone, before, knowledge),
    )


def _still_meant(before: Question, context: Context, knowledge: Knowledge) -> frozenset[str]:
    """Return what the question before leant on, without that in whose place its like was named or told since: of a wet
    runway and its setting nothing is meant any more, once the setting for a contaminated one was told.
    """
    newer = before.reading.concepts
    if context.answer and isinstance(context.result, FactResult):
        newer |= knowledge.phrase(context.answer.text.partition(". ")[0]).concepts
    families = knowledge.lexicon.families_of
    placed = families(newer)
    return frozenset(c for c in before.background if c in newer or not families({c}) & placed)


def _of_the_step(told: ProcedureResult, knowledge: Knowledge) -> frozenset[str]:
    """Return the concepts of the step told last: "how long do I pull it", after free-fall extension."""
    steps = told.procedure.steps
    return (
        knowledge.phrase(steps[told.step].do).concepts
        if told.step is not None and told.step < len(steps)
        else frozenset()
    )


def _named_before(alone: Question, before: Question, knowledge: Knowledge) -> tuple[frozenset[str], ...]:
    """Return the senses of each thing that the question before named, and of what it asked where a turn asks nothing
    itself. What takes the place of its like is not meant any more.
    """
    asks = _asks(alone, knowledge)
    families = knowledge.lexicon.families_of
    mine = families(alone.reading.concepts)
    named = [m for m in knowledge.matcher.telling(before.reading) if not mine & families(m.concepts)]
    asked = [m for m in named if is_quantity(m.concepts, knowledge)]
    things = [m for m in named if m not in asked]
    return tuple(m.concepts | m.implied for m in (*things, *(() if asks else _WEIGHT * asked)))


def _wanted(alone: Question, context: Context, knowledge: Knowledge) -> str:
    """Return the quantity that was given last, for a turn that asks none itself."""
    told = context.result
    if told is None or isinstance(told, (Needed, Choices)) or _asks(alone, knowledge):
        return ""
    return quantity_of(told, knowledge)


def _of_states(given: Iterable[Condition], knowledge: Knowledge) -> frozenset[str]:
    """Return the concepts of the things whose states were given."""
    terms = (knowledge.base.inputs[c.input].term for c in given if not c.is_result)
    names = (knowledge.base.terms[term].names[0] for term in terms if term in knowledge.base.terms)
    return frozenset().union(*(knowledge.phrase(name).concepts for name in names))


def pointed_at(alone: Question, context: Context, knowledge: Knowledge) -> frozenset[str]:
    """Return the things spoken of before that a turn points at ("it", "them"), none where it points at nothing."""
    before = context.asked
    if before is None or _POINTING_AT.isdisjoint(alone.reading.words):
        return frozenset()
    things = frozenset(concept for m in things_named(before.reading, knowledge) for concept in m.concepts)
    left = (c for c in before.background if c not in knowledge.lexicon.kinds and c[0].isalpha())
    return things or frozenset(left)


def _asks(question: Question, knowledge: Knowledge) -> bool:
    """Return whether a turn asks something itself: an aspect, a quantity, whether something is so."""
    words = question.reading.words
    if not _WHETHER.isdisjoint(words[:2]) or (not OPEN_WORDS.isdisjoint(words[:3]) and "about" not in words[:3]):
        return True
    kinds = (knowledge.lexicon.kinds.get(c, "") for m in question.reading.mentions for c in m.concepts)
    return any(kind in ("ask", "ask!", "quantity") for kind in kinds)


def merged(alone: Question, context: Context, knowledge: Knowledge, corrects: bool) -> tuple[Question, bool]:
    """Return the question before with the turn in it, and whether the turn only takes the place of its parts."""
    from assistant.conversation.reading_turns.following import (  # a first question follows none
        Merged,
        merged_words,
        put_aside,
    )
    from assistant.conversation.reading_turns.settings import other_setting

    before = context.asked
    assert before is not None
    asked_back = isinstance(context.result, Needed) or (
        isinstance(context.result, Choices) and not _of_one_size(alone, before)
    )
    if isinstance(context.result, Elsewhere):
        before = _without_label(before)
    first = _asked_first(alone, context, knowledge)
    if not corrects and (first or _adds_order(alone, context, knowledge)):
        turn = " ".join((*first, *_without_plus(alone)))
        found = Merged(" , ".join((" ".join(before.reading.words).rstrip("?. "), turn)), True)
    else:
        setting = other_setting(alone, context, knowledge)
        parts = _parts(alone, context, knowledge)
        judged = isinstance(context.result, (CheckResult, BandResult))
        found = merged_words(before, alone, knowledge, corrects, parts, asked_back, setting, judged)
    whole = question_of(found.words, knowledge, alone.variant if alone.named_variant else before.variant)
    if alone.named_variant:
        whole = whole._replace(variant=alone.variant, named_variant=True)
    elif not whole.named_variant:
        whole = whole._replace(variant=before.variant, named_variant=before.named_variant)
    # States that the question before had taken over itself are in none of its words.
    named = {c.input for c in whole.conditions} | put_aside(before, alone, knowledge)
    kept = tuple(c for c in before.conditions if not c.where and c.input not in named)
    text = alone.reading.text
    whole = whole._replace(conditions=(*kept, *whole.conditions))
    reading = whole.reading._replace(text=text)
    return whole._replace(reading=reading, context=True, background=before.background), found.whole


def _of_one_size(alone: Question, before: Question) -> bool:
    """Return whether a turn's one amount may stand for the one before: "at plus 40", after "at minus 20"."""
    sizes = [abs(a.value) for a in (*alone.reading.amounts, *before.reading.amounts)]
    return len(alone.reading.amounts) == 1 == len(sizes) - 1 and max(sizes) < _TIMES * min(sizes)


def _asked_first(alone: Question, context: Context, knowledge: Knowledge) -> tuple[str, ...]:
    """Return the word that marks what was asked back first, for a turn of an amount that may be other things too."""
    asked, (amount, *more) = context.result, (*alone.reading.amounts, None)
    if not isinstance(asked, Needed) or not isinstance(asked.record, Model) or amount is None or more != [None]:
        return ()
    if amount.start > 0 or amount.end < len(alone.reading.words):
        return ()
    missing = [i for i in asked.record.inputs if i.id in asked.names]
    kind = {knowledge.units.get(i.unit).dimension for i in missing[:1]}
    alike = [i for i in missing if knowledge.units.get(i.unit).dimension in kind]
    of_kind = amount.unit in (None, "deg") or knowledge.units.get(amount.unit).dimension in kind
    return tuple(missing[0].cues.split(" ")[:1]) if of_kind and len(alike) > 1 else ()


def _without_label(before: Question) -> Question:
    """Return a question without the label of another fleet that it named: it is not spoken of any more."""
    label = {m for m in before.reading.mentions if any(c.startswith(ELSEWHERE) for c in m.concepts)}
    taken = {k for m in label for k in m.taken[1:]}
    words = tuple("" if k in taken else w for k, w in enumerate(before.reading.words))
    mentions = tuple(m for m in before.reading.mentions if m not in label)
    return before._replace(reading=before.reading._replace(words=words, mentions=mentions))


def _adds_order(alone: Question, context: Context, knowledge: Knowledge) -> bool:
    """Return whether a turn orders a control more, after a sum of orders: "and pedals 5 right"."""
    model = getattr(context.result, "model", None)
    if not isinstance(model, Model) or model.function != "total_order" or context.asked is None:
        return False
    ordered = question_of(" ".join(_without_plus(alone)), knowledge, "") if "plus" in alone.reading.words else alone
    before, more = (deflections(question, knowledge) for question in (context.asked, ordered))
    adds = bool({"and", "plus", "with"}.intersection(alone.reading.words))
    adds = adds or (len(before) > 1 and {d.control for d in more}.isdisjoint(d.control for d in before))
    return adds and bool(more) and not {_control(d) for d in more} & {_control(d) for d in before}


def _without_plus(alone: Question) -> list[str]:
    """Return the words of a turn with "and" for "plus", which with a control after it names a sum."""
    return ["and" if word == "plus" else word for word in alone.reading.words]


def _control(order: Deflection) -> tuple[str, int]:
    return order.control, order.side if order.control == "tiller" else 0


def _parts(alone: Question, context: Context, knowledge: Knowledge) -> dict[int, int]:
    """Return which amounts of the last calculation the turn's amounts stand for, as the words beside them say."""
    from assistant.conversation.reading_turns.following import NEW

    model = getattr(context.result, "model", None)
    if not isinstance(model, Model) or context.asked is None:
        return {}
    old = bind(model, context.asked, knowledge).places
    counts = {item.id for item in model.inputs if item.unit == "count"}
    cues = cued_parts(model, alone, knowledge).items()
    return {start: old.get(name, NEW) for name, start in cues if name in old or name in counts}
