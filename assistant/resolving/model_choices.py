"""What words choose of a planning model's inputs: "wet" a drag factor, "FIRM" a deceleration."""

from __future__ import annotations

from assistant.frozen import NamedTuple
from assistant.knowledge.records import ModelInput, Source
from assistant.quantities.amounts import Amount
from assistant.resolving.knowing import Knowledge, Question

_EITHER = frozenset(("and", "or", "against", "versus", "vs", "compared", "/"))
_NEAR_BY = 4
_SAVING = frozenset(("save", "saves", "saved", "saving", "difference", "quicker", "sooner"))
_OTHER_CASE = frozenset(("without", "than"))

_AFTER_LABEL = frozenset({
    "?", ".", ",", "how", "what", "where", "when", "from", "at", "touching", "landing", "with", "set", "begins",
    "starts", "bites", "brakes", "and", "armed", "selected", "on", "to",
})  # fmt: skip
"""Words that may follow a label; a thing that it may be said of may not: "full reverse", "full stop"."""
_NOT_A_LABEL = frozenset({"a", "the", "is", "are", "was", "were", "accumulator", "not", "fully", "its", "their"})


class Bound(NamedTuple):
    """One way of setting an input: its value in the input's unit, what is said of it, whether it was assumed."""

    value: float
    says: str
    assumed: str
    source: tuple[Source, ...] = ()


def chosen(item: ModelInput, question: Question, know: Knowledge) -> list[Bound]:
    """Return what the words of a question choose of an input: nothing where they name it both ways."""
    found: list[Bound] = []
    if item.default == "both" and (_names_both(question.reading.words) or asks_difference(question.reading.words)):
        return found
    for words, value, says in item.choices:
        if any(said(phrase.strip(), question, know) for phrase in words.split(";")) and not _tells_how(words, question):
            bound = choice_value(item, value, says, question, know)
            if bound:
                found.append(bound)
    return found or _by_bare_label(item, question, know)


def _by_bare_label(item: ModelInput, question: Question, know: Knowledge) -> list[Bound]:
    """Return what a label chooses that is written like an ordinary word and belongs to nothing: "130 in full"."""
    words = question.reading.words
    for names, value, says in item.choices:
        label = names.partition(";")[0]
        if label.isupper() and label.lower() in words and _stands_alone(words.index(label.lower()), question):
            bound = choice_value(item, value, says, question, know)
            return [bound] if bound else []
    return []


def _tells_how(names: str, question: Question) -> bool:
    """Return whether a label is an ordinary word before an amount here: "at a steady 2.5 m/s2"."""
    words = question.reading.words
    label = names.partition(";")[0].lower()
    at = words.index(label) if label in words else 0
    return at > 0 and words[at - 1] == "a" and any(a.start == at + 1 for a in question.reading.amounts)


def _stands_alone(at: int, question: Question) -> bool:
    words = question.reading.words
    mine = next((m for m in question.reading.mentions if at in m.taken), None)
    before, after = words[at - 1 : at], words[at + 1 : at + 2]
    named = mine is not None and (len(mine.taken) > 1 or not (mine.is_plain or mine.says_state))
    ends = not after or after[0] in _AFTER_LABEL or any(a.start == at + 1 for a in question.reading.amounts)
    return not named and ends and (not before or before[0] not in _NOT_A_LABEL)


def said(phrase: str, question: Question, know: Knowledge) -> bool:
    """Return whether a question says what a phrase of the knowledge says, in whatever words."""
    meaning = know.phrase_meaning(phrase)
    if not meaning.named and not meaning.states:
        return any(is_part(a) and a.raw == phrase for a in question.reading.amounts)
    if meaning.named and meaning.states:
        return meaning.states <= question.states
    return bool(meaning.named) and not any(senses.isdisjoint(question.reading.choosing) for senses in meaning.named)


def is_part(amount: Amount) -> bool:
    """Return whether an amount is a part of something, said in a word: "half"."""
    return amount.unit is None and amount.spoken and 0 < amount.value < 1


def choice_value(item: ModelInput, value: str, says: str, question: Question, know: Knowledge) -> Bound | None:
    """Return what a choice stands for: a number in the input's unit, or the figure of a limit of that id."""
    try:
        return Bound(float(value), says, "")
    except ValueError:
        pass
    figure = know.figure(value, question.variant)
    if figure is None:
        return None
    record = know.record(value, question.variant)
    given = figure.value
    if figure.unit != item.unit and know.units.get(figure.unit).dimension == know.units.get(item.unit).dimension:
        given = know.units.convert(figure.value, figure.unit, item.unit)
    return Bound(given, says, "", record.sources)


def asks_difference(words: tuple[str, ...]) -> bool:
    """Return whether a question asks how far two cases are apart: "how many minutes do the fans save"."""
    longer = "longer" in words and not _OTHER_CASE.isdisjoint(words)
    return longer or not _SAVING.isdisjoint(words)


def _names_both(words: tuple[str, ...]) -> bool:
    """Return whether a thing is named with and without, or on and off, so that both are asked for."""
    for one, other in (("with", "without"), ("on", "off")):
        if one in words and other in words:
            first, second = sorted((words.index(one), words.index(other)))
            if second - first <= _NEAR_BY and not _EITHER.isdisjoint(words[first + 1 : second]):
                return True
    return False
