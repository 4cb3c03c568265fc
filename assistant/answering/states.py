"""Composers for state tables: what holds, what is lost, what leads there."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from assistant.answering.heard import any_heard, either, numbered_heard, ways_heard
from assistant.answering.parts import Parts, condition_words, conditions_words, inside, joined, stop, under, upper
from assistant.knowledge.records import Source, StateTable
from assistant.resolving import results as r
from assistant.resolving import tables as state_tables
from assistant.resolving.knowing import Knowledge, Question
from assistant.understanding.clauses import asks_whether
from assistant.understanding.states import Condition
from assistant.understanding.words import stem

_NEGATIONS = {"no": "not", "not": "not", "neither": "not", "none": "not", "cannot": "not", "without": "not"}
_MOST_SETS = 8
_ANY_ONE = frozenset(("single", "one", "any"))
_OTHER_KIND = " It may also be another kind of thing: "
_EMPTY = frozenset(("the", "a", "an", "do", "does", "is", "are", "and", "or", "from", "to", "of"))


def table(result: r.TableResult, question: Question, know: Knowledge, alone: bool = True) -> Parts:
    """The results asked for first, then the others, then the conditions they hold under.

    alone: not beside the results of another table, on which the conditions that this one does not know may bear.
    """
    sentences: list[str] = []
    if result.label:
        name, shows = result.label
        sentences.append(f"Yes: {name} shows." if shows else f"No: {name} does not show.")
    aloud: list[tuple[str, str]] = []
    sources: list[Source] = []
    for row in result.rows:
        if len(result.rows) > 1:
            sentence, heard = under(conditions_words(row.conditions, know), _row_words(result, row, know))
            sentences.append(sentence)
            aloud.append(heard)
        elif row.conditions or not result.unaffected:
            sentences.append(_row_words(result, row, know))
        else:
            lead = _all_within(result.unaffected, know)
            sentences.append(f"Still so, not affected by {lead}: {_row_words(result, row, know, only_asked=True)}")
        sources.extend(row.sources)
    if len(result.rows) == 1 and not result.rows[0].conditions and not result.unaffected:
        sentences.append("That is with everything normal.")
    if len(result.rows) == 1 and all(c.is_result for c in result.rows[0].conditions) and result.rows[0].conditions:
        sentences.append(f"That always goes with this: {_all_within(result.rows[0].conditions, know)}.")
    elif len(result.rows) == 1 and result.rows[0].conditions:
        words = _all_within(result.rows[0].conditions, know)
        besides = conditions_words(result.unaffected, know) if result.unaffected and alone else ""
        besides = f"; not affected by {besides}" if besides else ""
        sentences.append(f"That is with {words}, and everything not named normal{besides}.")
    sentences += [stop(fact.says) for fact in result.labels]
    sources += [source for fact in result.labels for source in fact.sources]
    remarks = [c.remark for row in result.rows for c in row.conditions if c.remark]
    remarks += _remarks(result.table, [c for row in result.rows for c in row.conditions], know)
    sentences += [stop(upper(x)) for x in dict.fromkeys(remarks)]
    return Parts(" ".join(sentences), tuple(sources), result.table.id, _values(result, know), aloud=tuple(aloud))


def _all_within(conditions: Iterable[Condition], know: Knowledge) -> str:
    """Return conditions in words inside a sentence; a result is a sentence of its own, and begins small here."""
    words = ((c, condition_words(c, know)) for c in conditions)
    return joined([inside(said) if c.is_result else said for c, said in words])


def tables(result: r.TablesResult, question: Question, know: Knowledge) -> Parts:
    """The results asked for of each table, in the order of the tables."""
    parts = [table(one, question, know, alone=False) for one in result.results]
    sources = tuple(s for p in parts for s in p.sources)
    values = tuple(v for p in parts for v in p.values)
    aloud = tuple(pair for p in parts for pair in p.aloud)
    return Parts(" ".join(p.text for p in parts), sources, parts[0].entry, values, aloud=aloud)


def _remarks(record: StateTable, conditions: Sequence[Condition], know: Knowledge) -> list[str]:
    """Return what is remarked of the states given; nothing of one that another one of them has settled: a pressure at
    which it would still hold, once that is known to be gone.
    """
    said = {(c.input, c.value) for c in conditions}
    told = [(name, remark) for name, value, remark in record.remarks if (name, value) in said]
    return [remark for name, remark in told if not any(_settles(c, name, remark, know) for c in conditions)]


def _settles(condition: Condition, name: str, remark: str, know: Knowledge) -> bool:
    """Return whether a failed state is of another thing that a remark speaks of."""
    item = know.base.inputs.get(condition.input)
    if item is None or condition.input == name or condition.value == item.values[0][0]:
        return False
    return item.term in know.phrase(remark).concepts


def _row_words(result: r.TableResult, row: r.Row, know: Knowledge, only_asked: bool = False) -> str:
    order = [
        *result.asked,
        *(o.id for o in result.table.outputs if o.id not in result.asked and not only_asked),
    ]
    if only_asked and not result.asked:
        order = [o.id for o in result.table.outputs]
    said = dict(row.outputs)
    return " ".join(_unsaid(stop(output_words(result.table, name, said[name])) for name in order if name in said))


def _unsaid(sentences: Iterable[str]) -> list[str]:
    """Return the sentences without those that an earlier one holds: "The tillers steer, the pedals do not"."""
    found: list[tuple[str, frozenset[str]]] = []
    for sentence in sentences:
        stems = _stems(sentence)
        if not any(stems <= earlier for _, earlier in found):
            found.append((sentence, stems))
    return [sentence for sentence, _ in found]


def _told_fully(sentence: str, facts: Iterable[str]) -> bool:
    """Return whether a fact says all of a sentence and more: a listener is told it once."""
    return any(_stems(sentence) - {"only"} < _stems(fact) for fact in facts)


def _stems(sentence: str) -> frozenset[str]:
    """Return what a sentence says, whatever its order: its words without endings, each negation as one."""
    words = sentence.lower().replace(",", " ").replace(":", " ").rstrip(".").split()
    return frozenset(_NEGATIONS.get(word, stem(word)) for word in words if word not in _EMPTY)


def output_words(record: StateTable, output: str, value: str) -> str:
    """Return the sentence that states a result of a table."""
    for item in record.outputs:
        if item.id == output:
            for known, says, _ in item.values:
                if known == value:
                    return says
    return f"{output}: {value}"


def _values(result: r.TableResult, know: Knowledge) -> tuple[tuple[str, float, str], ...]:
    found = []
    for row in result.rows:
        for name, value in row.outputs:
            text = output_words(result.table, name, value)
            for amount in know.amounts(text):
                found.append((name, amount.value, amount.unit or "count"))
    return tuple(dict.fromkeys(found))


def loss(result: r.LossResult, question: Question, know: Knowledge) -> Parts:
    """What differs from normal, then what stays, then the facts that follow."""
    lost = _unsaid(stop(output_words(t, o, v)) for t, o, v in result.lost)
    inputs = {c.input for c in result.conditions}
    kept = [stop(output_words(t, o, v)) for t, o, v in result.kept if not inputs.isdisjoint(t.inputs)]
    others = _unsaid(stop(output_words(t, o, v)) for t, o, v in result.kept if inputs.isdisjoint(t.inputs))
    facts = [stop(f.says) for f in result.facts]
    name = conditions_words(result.conditions, know)
    text, heard = under(name, " ".join(lost) if lost else "nothing in the tables changes.")
    first = [sentence for sentence in lost if not _told_fully(sentence, facts)]
    if first and len(first) < len(lost):
        heard = (text, f"With {name}, {inside(' '.join(first))}")
    if others:
        text = f"Not affected: {' '.join(others)} {text}"
    if facts:
        text += " " + " ".join(dict.fromkeys(facts))
    if kept:
        text += " Unchanged: " + " ".join(dict.fromkeys(kept))
    remarks = [c.remark for c in result.conditions if c.remark]
    text += "".join(" " + stop(upper(x)) for x in remarks)
    return Parts(text, result.sources, result.conditions[0].input, aloud=(heard,))


def cause(result: r.CauseResult, question: Question, know: Knowledge) -> Parts:
    """What leads to a result, or leaves it as it is where that is asked."""
    return _spared(result, know) if result.spared else _leading(result, question, know)


def _leading(result: r.CauseResult, question: Question, know: Knowledge) -> Parts:
    """The minimal sets that lead to a result, the smallest first."""
    says = _all_said(result)
    given = f" (given {conditions_words(result.given, know)})" if result.given else ""
    sets = sorted(result.sets, key=len)
    if not sets:
        return Parts(f"Nothing leads to it{given}: {says}.", result.table.sources, result.table.id)
    if sets == [()] and result.given:
        lead = f"That follows with {conditions_words(result.given, know)} alone: {says}."
        return Parts(lead, result.table.sources, result.table.id)
    if sets == [()]:
        return Parts(f"That is so with everything normal: {says}.", result.table.sources, result.table.id)
    words = _listed([_set_words(s, know) for s in sets])
    told = conditions_words(result.given, know)
    words_asked = question.reading.words
    whether = result.single and asks_whether(words_asked) and not _ANY_ONE.isdisjoint(words_asked)
    aloud: tuple[tuple[str, str], ...] = ()
    singles = [w for w, s in zip(words, sets, strict=False) if len(s) == 1]
    if result.single and not singles:
        listed = f": {'; or '.join(words)}."
        kind = " of that kind" if result.others else ""
        lead = f"No single failure{kind}{given}. It takes at least {_count(len(sets[0]))}{listed} Then {inside(says)}."
        aloud = ((listed, ways_heard(words, len(sets))),) if len(words) > 1 else ()
    elif result.single and len(singles) > 1:
        listed = f"{given}, with any one of these alone: {'; '.join(singles)}."
        lead = (f"Yes: {inside(says)}" if whether else says) + listed
        aloud = ((listed, f". {any_heard(len(singles), told)}: {either(singles)}."),)
    elif len(words) == 1:
        lead, heard = under(f"{words[0]}{given}", f"{inside(says)}.")
        lead = f"Yes. {lead}" if whether else lead
        aloud = (heard,)
    else:
        listed = f"{given}, with any of these: {'; '.join(words)}."
        lead = says + listed
        told_apart = f": {either(words)}." if len(singles) == len(sets) else numbered_heard(words, len(sets))
        aloud = ((listed, f". {any_heard(len(sets), told)}{told_apart}"),)
    others = _of_other_kinds(result, know)
    lead += _common(sets, know) + others
    aloud += ((others, _OTHER_KIND + either(_other_sets(result, know)) + "."),) if others else ()
    if (len(words) == 1 and not result.also) or result.single:
        lead += _rest_of_row(result, sets[0], says, know, named=len(words) > 1 or bool(result.others))
    sources = [*result.table.sources]
    for chosen in sets:
        for name, _ in chosen:
            sources.extend(know.base.inputs[name].sources)
    values = (("sets", float(len(sets)), "count"),)
    return Parts(upper(lead), tuple(sources), result.table.id, values, aloud=aloud)


def _spared(result: r.CauseResult, know: Knowledge) -> Parts:
    """The failures that leave a result as it is, each alone, then the result."""
    words = [_set_words(s, know) for s in result.sets]
    listed = f"{'; '.join(words)}." if words else "none of them."
    heard = f"{either(words)}." if words else listed
    says = stop(_says(result.table, result.output, result.value))
    text = f"These failures, each alone, leave it as it is: {listed} {says}"
    values = (("sets", float(len(words)), "count"),)
    return Parts(text, tuple(result.table.sources), result.table.id, values, aloud=((listed, heard),))


def _listed(words: list[str]) -> list[str]:
    """Return the first of many sets, with how many more there are."""
    if len(words) <= _MOST_SETS:
        return words
    return [*words[:_MOST_SETS], f"{len(words) - _MOST_SETS} more sets"]


def _common(sets: list[tuple[tuple[str, str], ...]], know: Knowledge) -> str:
    """Return what several sets have in common: that has failed in any case."""
    shared = tuple(pair for pair in sets[0] if all(pair in each for each in sets))
    return f" In each of them: {_set_words(shared, know)}." if shared and len(sets) > 1 else ""


def _of_other_kinds(result: r.CauseResult, know: Knowledge) -> str:
    words = _other_sets(result, know)
    return f"{_OTHER_KIND}{'; '.join(words)}." if words else ""


def _other_sets(result: r.CauseResult, know: Knowledge) -> list[str]:
    return _listed([_set_words(s, know) for s in sorted(result.others, key=len)])


def _all_said(result: r.CauseResult) -> str:
    """Return the sentences of all results that the sets lead to, as one."""
    first = _says(result.table, result.output, result.value).rstrip(".")
    return "; ".join([first, *(inside(_says(*each)).rstrip(".") for each in result.also)])


def _says(table: StateTable, output: str, value: str) -> str:
    """Return the sentence of a result; of one that is lost, the sentence of what is then so."""
    if not value.startswith("!"):
        return output_words(table, output, value)
    lost = value.lstrip("!")
    values = next(o.values for o in table.outputs if o.id == output)
    others = [says for known, says, _ in values if known != lost]
    if len(others) == 1:
        return others[0]
    says = output_words(table, output, lost)
    return f"It is no longer so that {inside(says)}" if says.startswith(("The ", "A ")) else f"{says} is lost"


def _rest_of_row(
    result: r.CauseResult, chosen: tuple[tuple[str, str], ...], said: str, know: Knowledge, named: bool
) -> str:
    """Return what else the table gives with one of the sets; named: which, as there are others."""
    state = {**{c.input: c.value for c in result.given}, **dict(chosen)}
    now = state_tables.outputs(result.table, state, know.base)
    row = (stop(output_words(result.table, o.id, now[o.id])) for o in result.table.outputs)
    sentences = _unsaid([stop(said), *row])
    if len(sentences) < 2:
        return ""
    return f" With {_set_words(chosen, know)}: {' '.join(sentences[1:])}" if named else " " + " ".join(sentences[1:])


def _set_words(chosen: tuple[tuple[str, str], ...], know: Knowledge) -> str:
    return joined([condition_words(Condition(name, value), know) for name, value in chosen])


def _count(number: int) -> str:
    return {1: "one", 2: "two", 3: "three", 4: "four", 5: "five"}.get(number, str(number)) + (
        " together" if number > 1 else ""
    )
