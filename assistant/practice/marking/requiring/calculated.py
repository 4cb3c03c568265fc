"""Several results that one question asks of the same givens: "how long with fans, and how long without?".

The givens stand before the parts, and hold for each of them. A part is asked as the first with the contrary in its
place, by itself behind the givens, or as the next turn of a talk; nothing unless every part has a result of its own.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from assistant.practice.marking.questions.asked import Asked, ask
from assistant.practice.marking.questions.parts import head_of
from assistant.practice.marking.requiring.carried_on import called, in_turn
from assistant.resolving import results as r
from assistant.resolving.asked_quantity import QUANTITIES, quantity_of
from assistant.resolving.knowing import Knowledge

_LEADS = re.compile(r"^(?:(?:and|then|also|but) )+", re.IGNORECASE)
_WITH = re.compile(
    r"\b(with|without) (?:the |any )?([a-z-]+(?: [a-z-]+)?)(?=\s*$|\s+(?:on|off|running)\b)", re.IGNORECASE
)
_CONTRARY = re.compile(r"\b(with|without)(?: (?:the |any )?([a-z-]+))?$", re.IGNORECASE)
_FIGURED = (r.ModelResult, r.LimitResult, r.ScheduleResult)
_TWO = 2


def of_each_calculation(
    whole: Asked | None, parts: Sequence[str], text: str, know: Knowledge
) -> tuple[Asked, ...]:
    """Return what answers each part of a question that a calculation answers; nothing where a part has no result."""
    if len(parts) < _TWO or (whole is not None and not isinstance(whole.result, r.ModelResult)):
        return ()
    if whole is None and not know.reader.read(text).amounts:
        return ()
    told = in_turn(parts, text, know)
    made: list[Asked] = []
    for n, part in enumerate(parts):
        near = _readings(n, parts, text, told[n], know)
        one = next((one for asking, one in near if _answers(one, asking, know) and not _is_told(one, made)), None)
        if one is None or (whole is None and not n and not isinstance(one.result, r.ModelResult)):
            return ()
        made.append(called(one, part))
    return tuple(made)


def _readings(
    place: int, parts: Sequence[str], text: str, told: Asked | None, know: Knowledge
) -> Iterator[tuple[str, Asked]]:
    """Yield each wording of a part with what answers it: turned round, behind the givens, as a turn of a talk."""
    head, part = head_of(text, parts), _LEADS.sub("", parts[place])
    texts = [each for each in (*((_turned(part, parts[0]), _measured(part, parts[0])) if place else ()), part) if each]
    for each in texts:
        one = ask(f"{head}. {each}?" if head else f"{each}?", know)
        if one and isinstance(one[1].result, r.ModelResult):
            yield each, one[1]
    if told:
        yield part, told
    for each in texts:
        one = ask(f"{head}. {each}?", know) if head else None
        if one and isinstance(one[1].result, r.LimitResult):
            yield each, one[1]


def _turned(part: str, first: str) -> str:
    """Return the first part with the contrary that a part names: "without fans" for "with fans"."""
    own, other = _CONTRARY.search(part), _WITH.search(first)
    if not own or not other or own.group(1).lower() == other.group(1).lower():
        return ""
    named = own.group(2)
    if named and named.lower() not in other.group(2).lower() and named.lower() not in ("it", "them", "one", "any"):
        return ""
    return first[: other.start()] + f"{own.group(1)} {other.group(2)}" + first[other.end() :]


def _measured(part: str, first: str) -> str:
    """Return a part with what the first counts: "how many megajoules into each" for "how many into each"."""
    counted = _COUNTED.search(first)
    return _UNCOUNTED.sub(rf"\1 {counted.group(1)} ", part) if counted and _UNCOUNTED.match(part) else ""


_COUNTED = re.compile(
    r"\bhow (?:many|much) (?!(?:does|do|is|are|goes?|into|will|can|must|of)\b)([a-z]+)\b", re.IGNORECASE
)
_UNCOUNTED = re.compile(
    r"^(how (?:many|much)) (?=(?:does|do|is|are|goes?|into|in|for|per|to|by|each|will|can)\b)", re.IGNORECASE
)


def _answers(one: Asked, part: str, know: Knowledge) -> bool:
    """Return whether a result is a figure of a quantity that a part asks for."""
    if not isinstance(one.result, _FIGURED):
        return False
    wanted = know.phrase(part).concepts & QUANTITIES
    mine = quantity_of(one.result, know)
    if _SHARE_OF.search(part):  # of the same kind as the whole that was asked for first
        return isinstance(one.result, r.ModelResult)
    return not wanted or not mine or mine in wanted


_SHARE_OF = re.compile(r"\bhow much of (?:that|it|this|these|those|them)\b", re.IGNORECASE)


def _is_told(one: Asked, made: Sequence[Asked]) -> bool:
    return any(one.answer.text == other.answer.text for other in made)
