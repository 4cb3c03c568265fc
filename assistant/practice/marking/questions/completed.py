"""A part of a question that leaves out what the part before it says, made whole: "and in which the nose leg?".

Where two parts differ by a name of the same sort ("main legs", "nose leg"), by a thing that is there and one that is
not ("without fans", "with fans") or by a number alone, the part before it tells the rest.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.practice.marking.questions.asked import Asked, as_asked, ask, is_same, record_of
from assistant.practice.marking.questions.parts import LEADS, head_of
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge
from assistant.understanding.mentions import Mention

_VERB = re.compile(
    r"\b(?:is|are|was|were|does|do|did|has|have|may|can|must|will|should|shows?|mean|means|tells?|stops?|runs?)\b",
    re.IGNORECASE,
)
_OPPOSITE = {"with": "without", "without": "with", "before": "after", "after": "before"}
_IT_IS = re.compile(r"\b(?:is|are|does|do) (?:it|they|that)\b", re.IGNORECASE)
_SHORT = 7
_TWO = 2


def completed(part: str, before: str, know: Knowledge) -> str:
    """Return a part as the one before it with its own name in the place of the like; nothing where it says all."""
    asking = LEADS.sub("", part)
    return _of_the_contrary(asking, before) or _of_the_like(asking, before, know)


def with_the_like(found: tuple[Asked, ...], parts: Sequence[str], know: Knowledge) -> tuple[Asked, ...]:
    """Return what answers the parts of a question, those that only name the like of another by what answers that."""
    if not found or not all(isinstance(one.result, _STATED) for one in found):
        return found
    made = list(found)
    for n in range(1, len(parts)):
        own = [one for one in made if one.answer.question == parts[n]]
        filled = in_full(parts[n], parts[n - 1], know) if len(own) < _TWO else None
        if filled is None or any(is_same(filled, one) for one in made):
            continue
        if own:
            made[made.index(own[0])] = filled
        elif len(made) == n and made[n - 1].answer.question == parts[n - 1]:
            made.append(filled)
    return tuple(made)


def in_full(part: str, before: str, know: Knowledge) -> Asked | None:
    """Return the figure or statement that surely answers a part which the one before it makes whole."""
    whole = completed(part, before, know)
    found = ask(whole, know) if whole else None
    if found is None or found[0] < _SURE or not isinstance(found[1].result, _STATED):
        return None
    return as_asked(part, found[1].question, found[1].result, know)


_STATED = (r.FactResult, r.LimitResult, r.ScheduleResult)
_SURE = 0.6


def _of_the_contrary(asking: str, before: str) -> str:
    """Return the part before with a thing there where it is not there, or the other way: "and what is it with fans"."""
    led = re.search(rf"\b({'|'.join(_OPPOSITE)}) ((?:the )?[\w-]+)$", asking, re.IGNORECASE)
    if led is None or (_VERB.search(asking) and not _IT_IS.search(asking)):
        return ""
    other = rf"\b{_OPPOSITE[led[1].lower()]} (?:the )?{re.escape(led[2].removeprefix('the '))}\b"
    return re.sub(other, led[0], before, flags=re.IGNORECASE) if re.search(other, before, re.IGNORECASE) else ""


def _of_the_like(asking: str, before: str, know: Knowledge) -> str:
    """Return the part before with the one name of a part that has no verb in the place of a like one."""
    if _VERB.search(asking) or len(asking.split()) > _SHORT:
        return ""
    own, other = (_named(text, know) for text in (asking, before))
    alike = [(m, o) for m in own for o in other if _is_like(m, o)]
    if len(own) != 1 or len(alike) != 1:
        return ""
    return re.sub(rf"\b{re.escape(alike[0][1].text)}\b", alike[0][0].text, before, flags=re.IGNORECASE)


def _named(text: str, know: Knowledge) -> list[Mention]:
    return [m for m in know.phrase(text).mentions if not know.matcher.is_soft(m)]


def _is_like(one: Mention, other: Mention) -> bool:
    """Return whether two names differ, and end alike: "nose leg" and "main legs"."""
    mine, theirs = (m.text.lower().split() for m in (one, other))
    same = mine[-1].rstrip("s") == theirs[-1].rstrip("s")
    return same and mine[:-1] != theirs[:-1] and bool(mine[:-1] and theirs[:-1])


def at_each_number(parts: Sequence[str], text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return what answers parts that differ by a number alone, each by its own: "at 90 kt, and what at 110 kt?"."""
    supposed = _supposed(parts, text, know)
    if supposed:
        return supposed
    amounts = [know.phrase(part).amounts for part in parts]
    if len(parts) < _TWO or any(len(each) != 1 for each in amounts) or len({each[0].unit for each in amounts}) > 1:
        return ()
    bare = {LEADS.sub("", p.replace(each[0].raw, "#")).lower() for p, each in zip(parts, amounts, strict=True)}
    head = head_of(text, parts)
    if len({each[0].value for each in amounts}) < len(parts):
        return ()
    if len(bare) > 1 and len(parts) == _TWO and _AT_ANOTHER.fullmatch(parts[1].replace(amounts[1][0].raw, "#")):
        return _ruled(parts, (parts[0], parts[0].replace(amounts[0][0].raw, amounts[1][0].raw)), head, know)
    if len(bare) > 1:
        return ()
    return _ruled(parts, [LEADS.sub("", part) for part in parts], head, know)


_AT_ANOTHER = re.compile(r"(?:and |but |then )*(?:what |how )?(?:about )?(?:at |with |for |by )?#", re.IGNORECASE)
"""A part that only gives another number: "and what at 110 kt"."""


def _ruled(parts: Sequence[str], texts: Sequence[str], head: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return what one rule has for each part as it is said in full; nothing where another one answers any."""
    made = _asked_each(parts, [f"{head}. {text}" if head else text for text in texts], know)
    ruled = all(isinstance(one.result, (r.BandResult, r.CheckResult)) for one in made)
    same = len({id(record_of(one.result)) for one in made}) == 1
    return tuple(made) if len(made) == len(parts) and ruled and same else ()


def _asked_each(parts: Sequence[str], texts: Sequence[str], know: Knowledge) -> list[Asked]:
    """Return what answers each part of a question as it is said in full; none for one that nothing answers."""
    found = [ask(each, know) for each in texts]
    return [as_asked(part, one[1].question, one[1].result, know) for part, one in zip(parts, found, strict=True) if one]


def _supposed(parts: Sequence[str], text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return what answers a question at its number, and at another that its last part supposes: "if it is 110?"."""
    before = text[: text.lower().rfind(parts[-1].lower())].rstrip(" ,;.?") if len(parts) == _TWO else ""
    if not before:
        return ()
    own, other = know.phrase(before).amounts, know.phrase(parts[-1]).amounts
    if len(own) != 1 or len(other) != 1 or own[0].unit != other[0].unit:
        return ()
    if not _SUPPOSES.fullmatch(parts[-1].replace(other[0].raw, "#")):
        return ()
    texts = (before, before.replace(own[0].raw, other[0].raw))
    made = _asked_each(parts, texts, know)
    ruled = len(made) == _TWO and all(isinstance(one.result, r.BandResult) for one in made)
    return tuple(made) if ruled and record_of(made[0].result) is record_of(made[1].result) else ()


_SUPPOSES = re.compile(
    r"(?:and |but |then )*(?:what|how) (?:if|about)(?: it| that| this| you| we)?(?: is| are| was| were|'s)?(?: only)?"
    r"(?: at| by)? #(?: below| above| under| over)?",
    re.IGNORECASE,
)
