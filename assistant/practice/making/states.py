"""Questions on state tables: which result holds, what is lost, and what leads to it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from itertools import combinations

from assistant.answering.parts import conditions_words, joined
from assistant.answering.states import output_words
from assistant.knowledge.records import StateTable, TableOutput
from assistant.practice.making.drafting import Desk, sentence
from assistant.practice.making.question import CAUSE, LOSS, STATE, Draft, Key
from assistant.practice.making.told_state import tells_result
from assistant.practice.making.wording import GOOD
from assistant.resolving import tables
from assistant.understanding.states import Condition

_MOST_TOGETHER = 3
_FEW = 2
_EACH, _EACH_OF_FIRST = 4, 6
"""Scenarios that are drawn for each value of a result, and for each of the table's first, which it is about."""
_TWO = 0.5
"""How often a second result is asked for with the first, where a table has several."""
_COUNTED = r"\b\d+ [a-z]{5,}"
"""A number of things in a result, and not an amount in a unit: "6 applications"."""
_COMBINED = 24
"""Sets of several failures of which it may be asked what is lost."""

State = tuple[tuple[str, str], ...]


def table_drafts(name: str, desk: Desk) -> Iterator[Draft]:
    """Yield scenarios of one, two and three things out of the ordinary, what is lost, and what leads there."""
    record: StateTable = desk.record(name)
    for output in record.outputs:
        for state in _evenly(record, output, desk):
            yield _asked(record, output, state, desk)
    for state in _failures(record, desk):
        yield from _lost(record, state, desk)
    for output in record.outputs:
        for value, says, words in output.values:
            yield from _causes(record, output, value, _called(says, words), desk)


def _evenly(record: StateTable, output: TableOutput, desk: Desk) -> list[State]:
    """Return states in which a result is each of its values equally often, so that no answer can be guessed.

    A state with several things out of the ordinary is one for which they must be weighed: not one in which any of them
    decides alone. Where the result is as normal, it is what has failed elsewhere that does not touch it.
    """
    by_value: dict[str, list[State]] = {}
    for state in _states(record, desk):
        if _tells(record, output, state, desk) and not tells_result(state, record, output, desk.know):
            value = tables.outputs(record, dict(state), desk.know.base)[output.id]
            by_value.setdefault(value, []).append(state)
    each = _EACH_OF_FIRST if output is record.outputs[0] else _EACH
    found: list[State] = []
    for value in sorted(by_value):
        touches = any(name in record.inputs for state in by_value[value] for name, _ in state)
        more = 0 if touches else each // 2  # some of what touches nothing is a statement of its own, asked there
        found += _of_each_size(by_value[value], each + more, desk)
    return found


def _of_each_size(states: list[State], number: int, desk: Desk) -> list[State]:
    """Return some states by chance, in turn of one, of two and of three things."""
    mixed = desk.chance.sample(states, len(states))
    place: dict[int, int] = {}
    ranked = []
    for state in mixed:
        place[len(state)] = place.get(len(state), -1) + 1
        ranked.append((place[len(state)], len(state), state))
    return [state for _, _, state in sorted(ranked)[:number]]


def _states(record: StateTable, desk: Desk) -> list[State]:
    """Return states of a table's own inputs, with at most one of another table among them, or of two such alone."""
    base = desk.know.base
    own = _out_of_the_ordinary(record.inputs, desk)
    mine = {*record.inputs, *record.apart}
    others = dict.fromkeys(name for table in tables.tables(base) for name in table.inputs if name not in mine)
    foreign = _out_of_the_ordinary(others, desk)
    alone = [*_sets(own, 1), *_sets(own, _FEW), *_sets(own, _MOST_TOGETHER)]
    mixed = [(*state, other) for state in alone if len(state) < _MOST_TOGETHER for other in foreign]
    return [*alone, *(tuple(desk.chance.sample(state, len(state))) for state in mixed), *_sets(foreign, _FEW)]


def _out_of_the_ordinary(inputs: Iterable[str], desk: Desk) -> list[tuple[str, str]]:
    return [(name, value) for name in inputs for value, _, _ in desk.know.base.inputs[name].values[1:]]


def _sets(conditions: list[tuple[str, str]], size: int) -> list[State]:
    """Return each set of some conditions, no input twice."""
    return [chosen for chosen in combinations(conditions, size) if len({name for name, _ in chosen}) == size]


def _tells(record: StateTable, output: TableOutput, state: State, desk: Desk) -> bool:
    """Whether a result in a state must be known: not where several things each lead to it alone."""
    base = desk.know.base
    now, normal = (tables.outputs(record, given, base)[output.id] for given in (dict(state), {}))
    alone = [tables.outputs(record, dict([each]), base)[output.id] for each in state]
    return now == normal or alone.count(now) < _FEW


def _failures(record: StateTable, desk: Desk) -> list[State]:
    """Return states of which it may be asked what is lost: each thing alone, and sets that take more than any of it."""
    own = _out_of_the_ordinary(record.inputs, desk)
    several = [*_sets(own, _FEW), *_sets(own, _MOST_TOGETHER)]
    several = [
        state for state in several
        if all(_losses(state, desk) != _losses((each,), desk) for each in state)
    ]  # fmt: skip
    return [*_sets(own, 1), *desk.chance.sample(several, min(len(several), _COMBINED))]


def _asked(record: StateTable, output: TableOutput, state: State, desk: Desk) -> Draft:
    """Return the scenario with a result asked for, at times with another one where the table has several."""
    now = tables.outputs(record, dict(state), desk.know.base)
    others = [each for each in record.outputs if each is not output]
    untold = [each for each in others if not tells_result(state, record, each, desk.know)]
    if len(others) < _FEW or not untold or desk.chance.random() >= _TWO:
        return _draft(record, [output], now, state, list(_one(output, now[output.id], state, desk)), desk)
    chosen = [output, desk.chance.choice(untold)]
    chosen.sort(key=record.outputs.index)
    return _draft(record, chosen, now, state, list(_two(chosen, now, state, desk)), desk)


def single_drafts(record: StateTable, state: State, output: TableOutput, desk: Desk) -> Iterator[tuple[str, Draft]]:
    """Yield each way of asking for one output in a state, as it follows a colon, with its draft; none where the state
    tells it."""
    if tells_result(state, record, output, desk.know):
        return
    now = tables.outputs(record, dict(state), desk.know.base)
    within = conditions_of(state, desk)[1]
    asks = _asks(output, now[output.id], desk)
    wide = [ask for ask in asks if ask.split()[0] not in ("do", "does", "is", "are", "can")]
    label = _labelled(output, desk)
    if not _is_plain(output):  # what it is tells more than whether there is any
        several = len(output.values) > _FEW and " " in output.label
        asks = wide or (label if several and label else asks or label)
    for ask in asks:
        wordings = desk.wording.sentences("state", conditions=within, ask=ask)
        plain = tuple(sentence(text.removeprefix("The ")) for text in wordings)
        yield ask, _draft(record, [output], now, state, [plain], desk)


def _draft(
    record: StateTable, outputs: list[TableOutput], now: dict[str, str], state: State,
    wordings: list[tuple[str, ...]], desk: Desk,
) -> Draft:  # fmt: skip
    key = Key(
        states=tuple((f"{record.id}.{output.id}", now[output.id]) for output in outputs),
        points=tuple(output_words(record, output.id, now[output.id]) for output in outputs),
    )
    hint = _state_hint(record, outputs, now, state, desk)
    return Draft(STATE, record.id, record.topic, key, tuple(wordings), hint, min(3, 1 + len(state)))


def _state_hint(
    record: StateTable, outputs: list[TableOutput], now: dict[str, str], state: State, desk: Desk
) -> str:  # fmt: skip
    """Return a help that leaves aside what of a state does not bear on what is asked, where the rest of it does."""
    beside = [
        each for each in state
        if all(_without(record, state, each, desk)[output.id] == now[output.id] for output in outputs)
    ]  # fmt: skip
    if not 0 < len(beside) < len(state) or any(
        _with(record, tuple(beside), desk)[output.id] != _with(record, (), desk)[output.id] for output in outputs
    ):
        return desk.hint("state", record.sources)
    return desk.hint("state_beside", record.sources, beside=conditions_of(tuple(beside), desk)[1])


def _without(record: StateTable, state: State, left_out: tuple[str, str], desk: Desk) -> dict[str, str]:
    return _with(record, tuple(each for each in state if each != left_out), desk)


def _with(record: StateTable, state: State, desk: Desk) -> dict[str, str]:
    return tables.outputs(record, dict(state), desk.know.base)


def conditions_of(state: State, desk: Desk) -> tuple[str, str]:
    """Return some states as they open a sentence, and as they stand within one."""
    words = [conditions_words((Condition(*each),), desk.know) for each in state]
    bare = [word.removeprefix("the ") for word in words]
    return sentence(", ".join(bare)), joined(words)


def _asks(output: TableOutput, value: str, desk: Desk) -> list[str]:
    """Return what asks for an output, as it stands within a sentence: "how do you use the pedals".

    "How many" is asked only where the result has a number of them: else it would claim that there is one.
    """
    if output.quiz:
        return list(output.quiz)
    opening = ("what", "which", "do", "does", "can", "how", "are", "is")
    counted = any(re.search(_COUNTED, says) for known, says, _ in output.values if known == value)
    asks = [ask for ask in output.asks if counted or not ask.startswith("how many")]
    found = [desk.wording.asked(ask) for ask in asks if ask.split()[0] in opening]
    said = [
        text.rstrip("?") for asked in found if asked and asked.rank == GOOD and asked.natural
        for text in asked.sentences
    ]  # fmt: skip
    whole = [desk.wording.plain(ask) for ask in output.asks if ask.split()[0] == "which" and len(ask.split()) == 2]
    return [text[:1].lower() + text[1:] for text in (*said, *whole) if ":" not in text]


def _one(output: TableOutput, value: str, state: State, desk: Desk) -> Iterator[tuple[str, ...]]:
    opening, within = conditions_of(state, desk)
    asks = _asks(output, value, desk)
    found: list[str] = []
    for ask in asks:
        found += desk.wording.sentences("state", conditions=within, ask=ask)
    found = [text if not text.startswith("The ") else sentence(text.removeprefix("The ")) for text in found]
    yield tuple(found)
    if _labelled(output, desk):
        yield desk.wording.sentences("state_label", conditions=opening, label=output.label)


def _labelled(output: TableOutput, desk: Desk) -> list[str]:
    """Return "which braking mode", where an output's label is the name of such a kind of thing."""
    return [f"which {output.label}"] if output.label.split()[-1:] and desk.wording.is_kind(output.label) else []


def _is_plain(output: TableOutput) -> bool:
    """Whether an output is yes or no, so that "which" does not ask for it."""
    return {value for value, _, _ in output.values} <= {"yes", "no"}


def _two(outputs: list[TableOutput], now: dict[str, str], state: State, desk: Desk) -> Iterator[tuple[str, ...]]:
    opening, _ = conditions_of(state, desk)
    one, two = ([*_asks(output, now[output.id], desk), *_labelled(output, desk)] for output in outputs)
    pairs = [(first, second) for first in one for second in two]
    yield tuple(
        text
        for first, second in pairs
        for text in desk.wording.sentences("state_two", conditions=opening, ask=first, ask2=second)
    )


def _losses(state: State, desk: Desk) -> list[tuple[str, str, str]]:
    """Return what is lost in a state: every result, in whichever table, that is not as normal."""
    lost: list[tuple[str, str, str]] = []
    for table in tables.tables(desk.know.base):
        if any(name in table.inputs for name, _ in state):
            normal, now = (tables.outputs(table, given, desk.know.base) for given in ({}, dict(state)))
            lost += [
                (table.id, output.id, now[output.id]) for output in table.outputs if now[output.id] != normal[output.id]
            ]
    return lost


def _lost(record: StateTable, state: State, desk: Desk) -> Iterator[Draft]:
    """Yield the question what is lost in a state."""
    lost = _losses(state, desk)
    if not lost or lost[0][0] != record.id:
        return
    wordings = desk.wording.sentences("loss", conditions=conditions_of(state, desk)[1])
    wordings = tuple(sentence(text.removeprefix("The ")) for text in wordings)
    key = Key(
        states=tuple((f"{table}.{output}", value) for table, output, value in lost),
        points=tuple(output_words(desk.know.base.records[table], output, value) for table, output, value in lost),
    )
    yield Draft(
        LOSS, record.id, record.topic, key, (wordings,), desk.hint("state", record.sources), min(3, 1 + len(state)),
        state[0][0],
    )  # fmt: skip


def _called(says: str, words: str) -> list[str]:
    """Return what a result is called: its name, if it is one ("No anti-skid"), else its sentence in quotation marks.

    The words for it are for reading questions, and many are no names: "parking brake fails".
    """
    short = says.split(":")[0]
    if short[:2].isupper():
        return [short]
    if short.startswith("No "):
        return [short[:1].lower() + short[1:], *(name for name in words.split("; ") if name.startswith("no "))]
    return [f"“{short}”", f"“{says}”"]


def _causes(
    record: StateTable, output: TableOutput, value: str, names: list[str], desk: Desk
) -> Iterator[Draft]:  # fmt: skip
    if tables.outputs(record, {}, desk.know.base)[output.id] == value:
        return
    sets = tables.minimal_sets(record, output.id, value, desk.know.base)
    if not sets:
        return
    key = Key(sets=tuple(sets), points=tuple(_set_words(each, desk) for each in sets))
    hint = desk.hint("sets" if len(sets) > 1 else "paragraph", record.sources, n=len(sets))
    wordings = [desk.wording.sentences("cause_told" if "“" in name else "cause", result=name) for name in names]
    yield Draft(CAUSE, record.id, record.topic, key, tuple(wordings), hint, 3 if len(sets) > 1 else 2)


def _set_words(chosen: State, desk: Desk) -> str:
    return joined([conditions_words((Condition(*each),), desk.know) for each in chosen])
