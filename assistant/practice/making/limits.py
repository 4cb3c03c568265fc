"""Questions on figures: recall one, and hold a fresh amount against it, on both sides and exactly at it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from math import floor, log10

from assistant.knowledge.records import NOT_ASKED, Limit, Value
from assistant.practice.making.drafting import Desk, asked_wordings, bare, expected
from assistant.practice.making.question import CHECK, FIGURE, OUTSIDE, WITHIN, Draft, Expected, Key
from assistant.practice.making.wording import content
from assistant.resolving.limits import bound_value

_BOUND = r"(?:maximum|minimum|longest|shortest|highest|lowest)"
_AFTER = r"(?: (?:for|to|in|with|without|before|on|of|at|either|set)\b.*|,.*|$)"
_TIMES, SPEEDS = ("s", "min", "h"), ("kt", "Mach")
_READ = ("degC", "psi")
"""Units of readings: one does nothing "at 2,000 psi", but reads it."""
_FINEST = {"Mach": 0.01, "m": 0.1, "h": 0.5, "factor": 0.1, "m/s2": 0.1}
_PLACES = 6
_PLAIN = frozenset(("time",))
"""Nouns that an amount says by its unit: nobody says "a time of 7 min"."""
_OTHERWISE = re.compile(r",? or what(?:ever)? .+ if .+$")
_VOWELS = frozenset("aeio")
_ALL_OF_IT = 1.0
"""A share that nobody gives as a number."""


def limit_drafts(name: str, desk: Desk) -> Iterator[Draft]:
    """Yield drafts that recall a figure, and some that check an amount against it."""
    record: Limit = desk.record(name)
    figure = bound_value(record)
    whole = record.value and record.value.unit == "factor" and record.value.value == _ALL_OF_IT
    if not whole and record.quiz != (NOT_ASKED,):
        yield _recall(record, desk)
    if figure is not None and record.check and (record.maximum or record.minimum):
        beyond = 1 if record.maximum else -1
        for side, steps in ((-beyond, 0), (0, 0), (beyond, 0), (beyond, 1)):  # as often outside as within
            draft = _check(record, figure, side, steps, desk)
            if draft.wordings:
                yield draft


def smooth(of: str) -> str:
    """Return what a figure is of with its bound in front: "maximum tiller deflection either way".

    What holds in its place in some case is a part of the answer, and is left out.
    """
    of = _OTHERWISE.sub("", of)
    found = re.fullmatch(rf"([^,]+), ({_BOUND}) (.+)", of)
    return f"{found[2]} {found[1]} {found[3]}" if found else of.removesuffix(", about")


def _recall(record: Limit, desk: Desk) -> Draft:
    figures = [figure for figure in (record.value, record.minimum, record.maximum, record.second) if figure]
    unit = figures[0].unit
    shape = "figure_count" if unit == "count" else "figure"
    of = bare(record.of).split(",")[0] if unit == "count" else smooth(bare(record.of))
    of, rest = _parted(of) if unit == "count" else (of, "")
    wordings = [desk.wording.sentences(shape, of=of, rest=rest), *asked_wordings(record.asks, desk)]
    wordings = [record.quiz] if record.quiz else wordings
    key = Key(values=tuple(expected(figure, record.of) for figure in figures))
    hint = desk.hint("unit" if unit != "count" else "paragraph", record.sources, unit=desk.unit_name(unit))
    return Draft(FIGURE, record.id, record.topic, key, tuple(wordings), hint, 1)


def _parted(of: str) -> tuple[str, str]:
    """Return what is counted and where: "wheels" and " on each main leg"."""
    found = re.fullmatch(r"(.+?)( (?:on|in|from)\b.*)", of)
    return (found[1], found[2]) if found else (of, "")


def _check(record: Limit, figure: Value, side: int, steps: int, desk: Desk) -> Draft:
    given = _near(figure, side, steps, desk)
    maximum, minimum = record.maximum, record.minimum
    within = (not maximum or given <= maximum.value) and (not minimum or given >= minimum.value)
    key = Key(
        values=(expected(figure, record.of), Expected("given", given, figure.unit)),
        verdict=WITHIN if within else OUTSIDE,
    )
    amount, context = desk.shown(given, figure.unit), _context(record, desk)
    hint = desk.hint("check", record.sources)
    wordings = tuple(_check_wordings(record, amount, context, desk))
    return Draft(CHECK, record.id, record.topic, key, wordings, hint, 2 + (side == 0))


def _near(figure: Value, side: int, steps: int, desk: Desk) -> float:
    """Return an amount to one side of a figure, in round numbers: so many steps, or with 0 a few by chance."""
    if side == 0:
        return figure.value
    step = step_of(figure.value, figure.unit)
    most = max(1, min(6, floor(0.9 * figure.value / step)))
    return round(figure.value + side * step * (steps or desk.chance.randint(min(2, most), most)), _PLACES)


def step_of(value: float, unit: str) -> float:
    """Return a round step for amounts near a value: 5 at 230, 500 at 20,000."""
    coarse = 10.0 ** floor(log10(abs(value))) / 20 if value else 1.0
    return max(coarse, _FINEST.get(unit, 1.0))


def _check_wordings(record: Limit, amount: str, context: str, desk: Desk) -> Iterator[tuple[str, ...]]:
    said = content(context)
    acts = [act for act in record.check if desk.wording.does(act) and not content(act) & said]
    acts.sort(key=lambda act: _fitness(act, record.of))
    unit = (record.maximum or record.minimum or Value(0, "")).unit
    shape = "check_for" if unit in _TIMES else "check_verb"
    for act in acts[:2] if unit not in _READ else ():
        yield desk.wording.sentences(shape, act=desk.wording.plain(act), a=amount, context=context)
    if re.search(rf"\b{_BOUND}\b", record.of):
        known = all(desk.shown(value, unit) in record.of for _, _, value, unit in record.applies)
        held, rest = _held(bare(record.of), amount)
        verdict = "check_least" if record.minimum and not record.maximum else "check_held"
        if verdict == "check_held" and rest.startswith(" to "):
            verdict = "check_to"  # it is the act that is allowed, and no amount
        yield desk.wording.sentences(verdict, held=held, rest=rest, context="" if known else context)
    else:
        return
    for act in record.check:
        if act.split()[0] not in desk.wording.verbs and not any(character.isdigit() for character in act):
            plain = with_article(desk.wording.plain(act).removeprefix("the "))
            yield desk.wording.sentences("check_noun", act=plain, a=amount, context=context)


def _fitness(act: str, of: str) -> tuple[int, int]:
    """Return what ranks an act: first one that says how or on what, as its limit does ("taxi straight"), then short."""
    words, named = act.lower().split(), set(re.findall(r"\w+", of.lower()))
    return -len(named.intersection(words[1:])), len(words)


def _held(of: str, amount: str) -> tuple[str, str]:
    """Return what a limit is of with an amount in place of its bound, "a taxi speed of 27 kt", and what follows it."""
    plain = re.sub(rf"\b{_BOUND} ", "", smooth(of), count=1)
    found = re.fullmatch(rf"(.+?)({_AFTER})", plain)
    noun, rest = (found[1], found[2].split(",")[0]) if found else (plain, "")
    named = amount.startswith(noun.split()[0]) or noun in _PLAIN  # "Mach number", "Mach 0.62"; "7 min"
    return amount if named else f"{with_article(noun)} of {amount}", rest


def with_article(noun: str) -> str:
    """Return one of a thing: "an accumulator pressure"."""
    return f"{'an' if noun[:1].lower() in _VOWELS else 'a'} {noun}"


def _context(record: Limit, desk: Desk) -> str:
    """Return under what else a limit holds, as a question says it."""
    words = ""
    for quantity, test, value, unit in record.applies:
        step = step_of(value, unit) * desk.chance.randint(1, 4)
        other = {"from": value, "up to": value - step, "below": value - step}.get(test, value + step)
        words += desk.wording.context(quantity, desk.shown(round(other, _PLACES), unit))
    for name, state in record.when:
        words += ", " + _state_words(name, state, desk)
    return words


def _state_words(name: str, value: str, desk: Desk) -> str:
    if "." in name:
        table, output = name.split(".", 1)
        found = next(each for each in desk.know.base.records[table].outputs if each.id == output).values
    else:
        found = desk.know.base.inputs[name].values
    says: str = next(says for known, says, _ in found if known == value)
    return says if says[:2].isupper() else says[:1].lower() + says[1:]
