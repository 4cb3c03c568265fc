"""Complete a turn from the question before it: what the turn names replaces its like, the rest stays.

The merged question is words again, read anew: so that everything that holds for a whole question holds for it.
"""

from __future__ import annotations

from assistant.quantities.amounts import Amount
from assistant.resolving.amounts_for import fits
from assistant.resolving.knowing import Knowledge, Question
from assistant.understanding.reading import Mention, Reading

_LEAD = frozenset({
    "and", "what", "about", "how", "ok", "okay", "so", "then", "now", "but", "right", "well", "if", "or", "also",
    "plus", "instead", "same", "again", "that", "it", "the", "in", "fine", "um", "er",
})  # fmt: skip


def merged_words(
    before: Question,
    reading: Reading,
    conditions_of_turn: tuple[tuple[str, tuple[int, ...]], ...],
    know: Knowledge,
    corrects: bool = False,
) -> str:
    """Return the words of the question before, with the turn's own parts in the place of their like."""
    old = list(before.reading.words)
    put: dict[int, list[str]] = {}
    drop: set[int] = set()
    used: set[int] = set()
    _replace_amounts(before, reading, know, put, drop, used)
    _replace_families(before, reading, know, put, drop, used, corrects or "instead" in reading.words)
    _drop_conditions(before, conditions_of_turn, drop)
    if reading.variants:
        drop.update(before.reading.variant_places)
    words: list[str] = []
    for i, word in enumerate(old):
        words += put.get(i, [])
        if i not in drop:
            words.append(word)
    rest = [w for i, w in enumerate(reading.words) if i not in used]
    while rest and rest[0] in _LEAD:
        rest.pop(0)
    return " ".join(words).rstrip("?!. ") + (" , " + " ".join(rest) if rest else "")


def _replace_amounts(
    before: Question,
    reading: Reading,
    know: Knowledge,
    put: dict[int, list[str]],
    drop: set[int],
    used: set[int],
) -> None:
    taken: set[int] = set()
    for amount in reading.amounts:
        like = _like(amount, before, reading, know, taken)
        if like is None:
            continue
        taken.add(like.start)
        words = list(reading.words[amount.start : amount.end])
        if amount.unit is None and like.unit:
            words.append(_unit_word(like.unit))
        put[like.start] = words
        drop.update(range(like.start, like.end))
        used.update(range(amount.start, amount.end))
        if amount.start and reading.words[amount.start - 1] in ("at", "from", "to", "with", "by", "of"):
            used.add(amount.start - 1)


def _unit_word(unit: str) -> str:
    return {"deg": "degrees", "degC": "degrees celsius", "m/s2": "m/s2"}.get(unit, unit)


def _like(amount: Amount, before: Question, reading: Reading, know: Knowledge, taken: set[int]) -> Amount | None:
    """Return the amount of the question before that a new one stands for."""
    same = [a for a in before.reading.amounts if a.start not in taken and _alike(amount, a, know)]
    if len(same) < 2:
        return same[0] if same else None
    cue = reading.words[amount.start - 1] if amount.start else ""
    after = reading.words[amount.end] if amount.end < len(reading.words) else ""
    words = before.reading.words
    for old in same:
        if cue and old.start and words[old.start - 1] == cue and cue not in ("the", "is", "of"):
            return old
        if after and old.end < len(words) and words[old.end] == after:
            return old
    if amount.unit is None:
        speeds = [a for a in same if a.unit in ("kt", "m/s", "mph")]
        return (speeds or same)[0]
    return same[0]


def _alike(new: Amount, old: Amount, know: Knowledge) -> bool:
    if "count" in (new.unit, old.unit):
        return new.unit == old.unit
    if new.unit is None or old.unit is None:
        return True
    return fits(new, old.unit, know.units) is not None


def _replace_families(
    before: Question,
    reading: Reading,
    know: Knowledge,
    put: dict[int, list[str]],
    drop: set[int],
    used: set[int],
    takes_place: bool,
) -> None:
    families = know.lexicon.families
    for mention in reading.mentions:
        mine = {families[c] for c in mention.concepts if c in families}
        if not mine or (_is_input(mention, know) and not takes_place):
            continue  # another thing that fails is added to the first, unless it is said to take its place
        for old in before.reading.mentions:
            theirs = {families[c] for c in old.concepts if c in families}
            if mine & theirs and old.concepts != mention.concepts and not drop.intersection(old.taken):
                put.setdefault(old.taken[0], []).extend(reading.words[k] for k in mention.taken)
                drop.update(old.taken)
                used.update(mention.taken)
                mine = set()
                break


def _is_input(mention: Mention, know: Knowledge) -> bool:
    return any(c in know.states.by_term for c in (*mention.concepts, *mention.implied))


def _drop_conditions(
    before: Question, conditions_of_turn: tuple[tuple[str, tuple[int, ...]], ...], drop: set[int]
) -> None:
    named = {name for name, _ in conditions_of_turn}
    for condition in before.conditions:
        if condition.input in named:
            others = {k for c in before.conditions if c.input not in named for k in c.where}
            drop.update(set(condition.where) - others)
