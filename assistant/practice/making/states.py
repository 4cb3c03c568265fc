"""Questions on state tables: which result holds, what is lost, and what leads to it."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from assistant.answering.parts import conditions_words, joined
from assistant.answering.states import output_words
from assistant.knowledge.records import StateTable, TableOutput
from assistant.practice.making.drafting import Desk, sentence
from assistant.practice.making.question import CAUSE, LOSS, STATE, Draft, Key
from assistant.practice.making.wording import GOOD
from assistant.resolving import tables
from assistant.understanding.states import Condition

_MOST_TOGETHER = 3
_FEW = 2
_COMBINED = 24
"""Scenarios of each size above one that a table yields at a time."""

State = tuple[tuple[str, str], ...]


def table_drafts(name: str, desk: Desk) -> Iterator[Draft]:
    """Yield scenarios of one, two and three things out of the ordinary, what is lost, and what leads there."""
    record: StateTable = desk.record(name)
    for state in _scenarios(record, desk):
        yield from _asked(record, state, desk)
        if len(state) == 1 or desk.chance.random() < 0.5:
            yield from _lost(record, state, desk)
    for output in record.outputs:
        for value, says, words in output.values:
            yield from _causes(record, output, value, _called(says, words), desk)


def _scenarios(record: StateTable, desk: Desk) -> list[State]:
    abnormal = [(name, value) for name in record.inputs for value, _, _ in desk.know.base.inputs[name].values[1:]]
    found: list[State] = []
    for size in range(1, _MOST_TOGETHER + 1):
        sets = [chosen for chosen in combinations(abnormal, size) if len({name for name, _ in chosen}) == size]
        desk.chance.shuffle(sets)
        found += sets if size == 1 else sets[:_COMBINED]
    return found


def _asked(record: StateTable, state: State, desk: Desk) -> Iterator[Draft]:
    """Yield the scenario with one result asked for, and with two where the table has several."""
    now = tables.outputs(record, dict(state), desk.know.base)
    chosen = [desk.chance.choice(record.outputs)]
    if len(record.outputs) > 2:
        first = record.outputs[0]
        chosen = list(dict.fromkeys((desk.chance.choice((first, *chosen)), desk.chance.choice(record.outputs[1:]))))
    wordings = list(_one(chosen[0], state, desk)) if len(chosen) == 1 else list(_two(chosen, state, desk))
    yield _draft(record, chosen, now, state, wordings, desk)


def single_drafts(record: StateTable, state: State, output: TableOutput, desk: Desk) -> Iterator[tuple[str, Draft]]:
    """Yield each way of asking for one output in a state, as it follows a colon, with its draft."""
    now = tables.outputs(record, dict(state), desk.know.base)
    within = conditions_of(state, desk)[1]
    asks = _asks(output, desk)
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
    hint = desk.hint("state", record.sources)
    return Draft(STATE, record.id, record.topic, key, tuple(wordings), hint, min(3, 1 + len(state)))


def conditions_of(state: State, desk: Desk) -> tuple[str, str]:
    """Return some states as they open a sentence, and as they stand within one."""
    words = [conditions_words((Condition(*each),), desk.know) for each in state]
    bare = [word.removeprefix("the ") for word in words]
    return sentence(", ".join(bare)), joined(words)


def _asks(output: TableOutput, desk: Desk) -> list[str]:
    """Return what asks for an output, as it stands within a sentence: "how do you use the pedals"."""
    opening = ("what", "which", "do", "does", "can", "how", "are", "is")
    found = [desk.wording.asked(ask) for ask in output.asks if ask.split()[0] in opening]
    said = [
        text.rstrip("?") for asked in found if asked and asked.rank == GOOD and asked.natural
        for text in asked.sentences
    ]  # fmt: skip
    whole = [desk.wording.plain(ask) for ask in output.asks if ask.split()[0] == "which" and len(ask.split()) == 2]
    return [text[:1].lower() + text[1:] for text in (*said, *whole) if ":" not in text]


def _one(output: TableOutput, state: State, desk: Desk) -> Iterator[tuple[str, ...]]:
    opening, within = conditions_of(state, desk)
    asks = _asks(output, desk)
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


def _two(outputs: list[TableOutput], state: State, desk: Desk) -> Iterator[tuple[str, ...]]:
    opening, _ = conditions_of(state, desk)
    one, two = ([*_asks(output, desk), *_labelled(output, desk)] for output in outputs)
    pairs = [(first, second) for first in one for second in two]
    yield tuple(
        text
        for first, second in pairs
        for text in desk.wording.sentences("state_two", conditions=opening, ask=first, ask2=second)
    )


def _lost(record: StateTable, state: State, desk: Desk) -> Iterator[Draft]:
    """Yield what is lost in a state: every result, in whichever table, that is not as normal."""
    lost: list[tuple[str, str, str]] = []
    for table in tables.tables(desk.know.base):
        if any(name in table.inputs for name, _ in state):
            normal, now = (tables.outputs(table, given, desk.know.base) for given in ({}, dict(state)))
            lost += [
                (table.id, output.id, now[output.id]) for output in table.outputs if now[output.id] != normal[output.id]
            ]
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
