"""What an answer says in other words for a listener: the fact first, and nothing that only a list or a mark tells."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.answering.parts import condition_words, inside, stop, upper
from assistant.quantities.show import number_words
from assistant.resolving.knowing import Knowledge
from assistant.understanding.states import Condition

_BY_EAR = 2
"""Choices that a listener keeps in mind; the eye may have more."""
_ONE_MORE = "There is a third"
"""What a listener is told of a choice more, whose name he would not keep in mind."""
_BAND = r"((?:less|more|not more|no more|below|above|at|under|over|flush)\b[^:;]*|\d[^:;]* or (?:less|more)): ([^;]+)"
"""What a band says: where it lies, and what follows."""
_LEANS = (" at", " to", " by", " from", " of", " is", " are")
_PROCEDURES = "procedures"
_PAIR = 2
_MOST_HEARD = 4
"""Sets of failures that a listener is told one by one."""


def band_heard(named: str, says: str) -> str:
    """Return what a reading comes to with what follows first: "Call maintenance. Chrome visible, 80 mm, less than …".

    named: the quantity with its reading. says: the rule that it falls under.
    """
    band = re.fullmatch(_BAND, says.rstrip("."))
    if band is None or (" the " in f" {band[1]}" and "below it" not in band[1]):
        return f"{stop(upper(says))} {upper(stop(named))}"
    return f"{stop(upper(band[2]))} {upper(named)}, {stop(band[1])}"


def change_heard(subject: str, now: str, formerly: str) -> str:
    """Return what a revision changed with what holds now first, unless its subject leans on that: "… lights at"."""
    if subject.endswith(_LEANS):
        return f"{upper(subject)}: now {now}, formerly {formerly}."
    return f"Now {now}, formerly {formerly}: {inside(subject)}."


def numbered_heard(sets: Sequence[str], count: int) -> str:
    """Return sets of failures, each apart with its number; of many the first, and how many more there are.

    count: how many there are in all.
    """
    told = sets if count <= _MOST_HEARD + 1 else sets[:_MOST_HEARD]
    more = f" There are {number_words(count - len(told))} more." if len(told) < count else ""
    return f". {'; '.join(f'{i}. {each}' for i, each in enumerate(told, 1))}.{more}"


def ways_heard(sets: Sequence[str], count: int) -> str:
    """Return in how many ways a result comes about, and each of them: "…, in one of three ways. One, …"."""
    return f", in one of {number_words(count)} ways{numbered_heard(sets, count)}"


def any_heard(count: int, given: str) -> str:
    """Return how what leads to a result is announced: "Given System 1 lost, any one of these three leads to it"."""
    lead = "either of these" if count == _PAIR else f"any one of these {number_words(count)}"
    return f"Given {given}, {lead} leads to it" if given else f"{upper(lead)} leads to it"


def either(words: Sequence[str]) -> str:
    """Return alternatives in one sentence, with a pause before each."""
    return f"{', '.join(words[:-1])}, or {words[-1]}" if len(words) > 1 else "".join(words)


def asked_heard(missing: str, name: str, know: Knowledge) -> str:
    """Return the question for one thing that is missing: "What is the outside temperature?".

    name: the input that it is the state of, if it is one.
    """
    states = know.base.inputs[name].values if name in know.base.inputs else ()
    if len(states) > 1:
        return f"Which is it: {either([condition_words(Condition(name, value), know) for value, *_ in states])}?"
    if missing.startswith("the "):
        return f"What is {missing.split(', or ')[0] if ':' not in missing else missing}?"
    if missing.startswith("how "):
        return f"{upper(missing)}?"
    return f"Say {missing}."


def choices_heard(options: Sequence[tuple[str, str]], know: Knowledge) -> str:
    """Return choices as they are said: the first ones, and that there is another to be had."""
    listed = [f"{i}. {_offer(name, text, know)}" for i, (name, text) in enumerate(options, 1)]
    said = "; ".join(listed[:_BY_EAR])
    return said if len(listed) <= _BY_EAR else f"{said}. {_ONE_MORE}"


def _offer(name: str, text: str, know: Knowledge) -> str:
    """The title of a procedure, said alone, would be taken for a statement."""
    is_procedure = name in know.base.records and know.base.kind(name) == _PROCEDURES
    return f"the procedure {inside(text)}" if is_procedure else text


def near_heard(near: Sequence[str], know: Knowledge) -> str:
    """Return what is known nearby as it is said: the first of it, a procedure as such."""
    titles = {know.base.records[name].title: name for name in know.base.ids(_PROCEDURES)}
    return ", or ".join(_offer(titles.get(text, ""), text, know) for text in near[:_BY_EAR])


def unexplained_heard(words: Sequence[str]) -> str:
    """Return the words of a question that nothing explains: a listener hears no quotation marks."""
    several = len(words) > 1 or any(" " in word for word in words)
    quoted = [f"“{word}”" for word in words]
    told = f"{', '.join(quoted[:-1])}, and {quoted[-1]}" if len(quoted) > 1 else quoted[0]
    return f"the word{'s' if several else ''} {told}"


def published_heard(title: str, paragraph: str) -> str:
    """Return where a published source says something: its title tells more by ear than its letters and edition."""
    return f"{re.sub(r' ?[(][^)]*[)]', '', title)}, {paragraph}"
