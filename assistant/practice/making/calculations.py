"""Questions that work a planning model with fresh numbers, computed here from the type's figures."""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.frozen import NamedTuple
from assistant.knowledge.records import Limit, Model, ModelInput
from assistant.physics.errors import OutOfRange
from assistant.practice.making.drafting import COMPUTED, Desk, asked_wordings, bare
from assistant.practice.making.limits import with_article
from assistant.practice.making.orders import FUNCTION, order_drafts
from assistant.practice.making.question import CALCULATION, Draft, Expected, Key
from assistant.resolving.functions import function

_VAGUE = re.compile(
    r" (?:at|after) an? (?:temperature|altitude|time of cooling|lever setting|stop)\b| to a temperature(?= in )"
    r"| of an? \w+ from the \w+ it \w+$"
)
_THEN = " then"
_AT = ("at ", "with ", "for ")
"""How what is given begins where it is a part of the sentence that asks."""
_LINES = 2
"""Sets of numbers that a model yields at a time."""
_SHARES = (0.78, 0.98)
"""Share of the smallest maximum mass, between which a mass is drawn."""
_TRIES = 8
_OFTEN = 0.6
"""How often an amount is given that the type's own figure would stand in for."""


class Given(NamedTuple):
    """One input of a model as a question gives it: its value in the input's unit, and the words, if any."""

    value: float
    words: str


def model_drafts(name: str, desk: Desk) -> Iterator[Draft]:
    """Yield calculations with numbers drawn afresh."""
    record: Model = desk.record(name)
    if record.quiz:
        return
    if record.function == FUNCTION:
        yield from order_drafts(record, desk)
        return
    runs = function(record.function)
    if runs is None:
        return
    for line in range(_LINES if any(_is_asked(item, desk) for item in record.inputs) else 1):
        inputs = _telling(record, line > 0, desk)
        if inputs is None:
            return
        si = {item.id: desk.know.units.to_si(inputs[item.id].value, item.unit) for item in record.inputs}
        try:
            result = runs.call(si)
        except (OutOfRange, ValueError, ZeroDivisionError, OverflowError):
            continue
        if not _lone(inputs):
            yield _draft(record, inputs, desk.know.units.from_si(result, record.output_unit), desk)


def _lone(inputs: dict[str, Given]) -> bool:
    """Whether all that would be given is one word, which tells nobody of what it is: "nose"."""
    said = [each.words for each in inputs.values() if each.words]
    return len(said) == 1 and " " not in said[0] and not said[0].isupper()


def _telling(record: Model, freely: bool, desk: Desk) -> dict[str, Given] | None:
    """Return inputs of which something is given, where what is given changes the result: what the assistant would
    assume instead, nobody can know. None where they cannot be drawn."""
    changes = any(item.choices or _is_asked(item, desk) for item in record.inputs)
    for attempt in range(_TRIES):
        inputs = _inputs(record, freely or attempt > 0, desk)
        if inputs is None or not changes or any(each.words for each in inputs.values()):
            return inputs
    return None


def _inputs(record: Model, freely: bool, desk: Desk) -> dict[str, Given] | None:
    """Return every input of a model, or None when one cannot be drawn. One choice of words serves all that know it.

    freely: also give some of the inputs for which the type's own figure would stand in.
    """
    found: dict[str, Given] = {}
    chosen: set[str] = set()
    for item in record.inputs:
        ruled_out = any(found[name].words for name in desk.wording.instead_of(item.id) if name in found)
        may_vary = freely and (item.cues or item.choices) and not _is_its_limit(item, desk) and not ruled_out
        own = item.default not in ("", "both") and not (may_vary and desk.chance.random() < _OFTEN)
        given = _own(item.default, item, "", desk) if own and not _known(item, chosen) else None
        given = given or _given(item, record.function, chosen, desk)
        if given is None:
            return None
        found[item.id] = given
    return found


def _is_its_limit(item: ModelInput, desk: Desk) -> bool:
    """Whether an input is a limit of the type itself, and no case of it ("at full lock") that another may replace: a
    question that gave another one would claim that the limit is that."""
    figure = desk.know.base.records.get(item.default)
    return isinstance(figure, Limit) and bool(figure.maximum or figure.minimum) and not item.assumed


def _draft(record: Model, inputs: dict[str, Given], result: float, desk: Desk) -> Draft:
    said = sorted((each.words for each in inputs.values() if each.words), key=lambda words: words.startswith("for "))
    given = _introduced(", ".join(said))
    shape = "calculation_bare" if not given else "calculation_at" if given.startswith(_AT) else "calculation"
    key = Key(values=(Expected(record.output, result, record.output_unit, COMPUTED),))
    of = bare(record.of)
    wordings = [desk.wording.sentences(shape, of=each, given=given) for each in _called(of, given)]
    if of.isupper():  # a name in letters takes no article
        wordings = [tuple(text.replace(f"the {of}", of) for text in each) for each in wordings]
    if not given:
        wordings += asked_wordings(record.asks, desk)
    hint = desk.hint("unit", record.sources, unit=desk.unit_name(record.output_unit))
    return Draft(CALCULATION, record.id, record.topic, key, tuple(wordings), hint, 3)


def _introduced(given: str) -> str:
    """Return what is given as a sentence begins with it, where it is one choice alone: "with FULL set"."""
    if not given or re.search(r"\d|, | of ", given) or given.startswith(_AT):
        return given
    return f"with {given} set" if given.isupper() else f"for {with_article(given)}"


def _called(of: str, given: str) -> list[str]:
    """Return what is sought as a question calls it, the best first: what is given says at or after which one, and where
    that is of the same name, it is the one then.
    """
    if not given:
        return [of]
    plainly = _of_what_is_given(_VAGUE.sub("", of), given)
    if plainly.lower() in given.lower():
        plainly += _THEN
    return [plainly] if plainly != of or plainly.lower() not in given.lower() else []


def _of_what_is_given(of: str, given: str) -> str:
    """Return what is sought without of what it is, where the question gives that with its amount already."""
    found = re.fullmatch(r"(.+?) of an? (.+?)(?: in .+)?", of)
    return found[1] if found and f"{found[2]} ".lower() in given.lower() else of


def _is_asked(item: ModelInput, desk: Desk) -> bool:
    """Whether an input is one that a question may give."""
    return not item.default or item.default == "both" or bool(item.cues and not _is_its_limit(item, desk))


def _given(item: ModelInput, function_name: str, chosen: set[str], desk: Desk) -> Given | None:
    """Return a value for an input: one of its choices, a fresh amount, or the type's own figure unsaid."""
    known = _known(item, chosen)
    if known is not None:
        return _own(known[1], item, "", desk)
    if item.choices:
        choice = desk.chance.choice(item.choices)
        chosen.add(_words(choice))
        return _own(choice[1], item, _named(choice, item), desk)
    fresh = _fresh(item, function_name, desk)
    if fresh is None:
        return _own(item.default, item, "", desk) if item.default else None
    amount, name = desk.shown(fresh, item.unit), _name(item, desk)
    return Given(fresh, f"{amount} {item.cues or name}" if item.unit == "count" else f"{name} {amount}")


def _known(item: ModelInput, chosen: set[str]) -> tuple[str, str, str] | None:
    """Return the choice of an input whose words another input has already said."""
    return next((choice for choice in item.choices if _words(choice) in chosen), None)


def _counted(item: ModelInput) -> tuple[str, str]:
    """Return what an input counts, one of it, and of what: "quarter" and " of the lever"."""
    found = re.fullmatch(r"how many (\w+?)s?( of .+)", item.ask)
    return (found[1], found[2]) if found else ("", "")


def _words(choice: tuple[str, str, str]) -> str:
    return choice[0].split(";")[0].strip()


def _full_words(choice: tuple[str, str, str]) -> str:
    """Return what a choice is called in a question: "nose tyre", where its first name is "nose" alone."""
    first, *others = (each.strip() for each in choice[0].split(";"))
    alone = " " not in first and first.islower()
    return next((each for each in reversed(others) if alone and " " in each and first in each.split()), first)


def _named(choice: tuple[str, str, str], item: ModelInput) -> str:
    """Return a choice as a question gives it: a temperature is one at which, or what it must come down to for."""
    words = _full_words(choice)
    one, of = _counted(item)
    if of:
        names = [each.strip() for each in choice[0].split(";")]
        return next((f"{name}{of}" for name in names if one in name), words)
    if item.quantity != "temperature":
        return words
    return choice[2] if choice[2].startswith("at ") else f"for {words}"


def _name(item: ModelInput, desk: Desk) -> str:
    name = item.ask.split(", ")[0].removeprefix("the ") or item.id.replace("_", " ")
    return desk.wording.called(name.removesuffix(" now"))


def _own(value: str, item: ModelInput, words: str, desk: Desk) -> Given | None:
    """Return a stated figure by its id, or a number, in the input's unit."""
    try:
        return Given(float(value), words)
    except ValueError:
        pass
    figure = desk.know.figure(value, desk.variant)
    if figure is None:
        return None
    same = figure.unit == item.unit
    return Given(figure.value if same else desk.know.units.convert(figure.value, figure.unit, item.unit), words)


def _fresh(item: ModelInput, function_name: str, desk: Desk) -> float | None:
    """Return an amount drawn from what is ordinary for such an input."""
    if item.unit == "kg":
        most = _smallest_mass(desk)
        return round(most * desk.chance.uniform(*_SHARES) / 500) * 500.0 if most else None
    names = (f"{function_name} {item.id}", item.id, f"{item.quantity} {item.unit}")
    ordinary = next((found for name in names if (found := desk.wording.ordinary(name))), None)
    if ordinary is None:
        return None
    low, high, step = ordinary
    return low + step * desk.chance.randint(0, round((high - low) / step))


def _smallest_mass(desk: Desk) -> float:
    """Return the smallest maximum mass that the type states: at that, every event is possible."""
    limits = (desk.record(name) for name in desk.know.base.ids("limits"))
    masses = [each.maximum.value for each in limits if each.maximum and each.maximum.unit == "kg"]
    return min(masses, default=0.0)
