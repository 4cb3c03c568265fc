"""Two cases that one clause of a question names, each put as a question: "the time constant without and with them".

And the things that one question lists, each of which is asked for: "its wheelbase, the mass of a brake, and the limit".
"""

from __future__ import annotations

import re

from assistant.practice.marking.questions.asked import Asked, ask, measures, record_of
from assistant.practice.marking.questions.parts import LEADS, head_of, parts_of
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge

_BOTH_WAYS = re.compile(
    r"(?P<stem>[^,;.:?]*?\b(?:what|which|how)\b[^,;.:?]*?),? (?P<one>without|with) (?P<thing>[\w-]+(?: [\w-]+)?),? "
    r"and (?P<other>without|with)(?: (?:it|them|(?P=thing)))?(?=\s*(?:[,;.?]|$))",
    re.IGNORECASE,
)
_PRONOUN = re.compile(r"\b(?:it|them)$", re.IGNORECASE)
_LIST = re.compile(
    r"(?:what (?:is|are)|give|state|name) (?P<first>(?:the|its|an?) [^,;?]+), (?P<rest>(?:the|its|an?) [^;?]+?),? "
    r"and (?P<last>(?:the|its|an?) [^,;?]+?)\s*[?.]?\s*$",
    re.IGNORECASE,
)
_SURE = 0.6


def apart(text: str, know: Knowledge) -> str:
    """Return a question with each of two ways that a clause of it joins put by itself."""
    found = _BOTH_WAYS.search(text)
    if found is None or found["one"].lower() == found["other"].lower():
        return text
    thing = _PRONOUN.sub(_first_thing(head_of(text, parts_of(text)), know), found["thing"])
    stem = found["stem"].strip()
    again = LEADS.sub("", stem)
    put = f"{stem} {found['one']} {thing}, and {again} {found['other']} {thing}"
    lead = " " if found.group().startswith(" ") else ""
    return text[: found.start()] + lead + put + text[found.end() :] if thing else text


def _first_thing(text: str, know: Knowledge) -> str:
    """Return the name of the first thing that a text names."""
    told = know.phrase(text).mentions
    return next((m.text for m in told if not know.matcher.is_soft(m) and not measures(m.concepts, know)), "")


def of_list(text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return the figure of each thing that a question lists; nothing unless each has one of its own."""
    found = _LIST.search(text)
    if found is None:
        return ()
    head = text[: found.start()].strip(" ,:;.")
    items = [found["first"], *re.split(r", (?=(?:the|its|an?) )", found["rest"]), found["last"]]
    items = [re.sub(r"^its\b", "the", item, flags=re.IGNORECASE) for item in items]
    made = [one for item in items if (one := _figure(head, item, know))]
    records = {id(record_of(one.result)) for one in made}
    return tuple(made) if len(made) == len(items) == len(records) else ()


def _figure(head: str, item: str, know: Knowledge) -> Asked | None:
    found = ask(f"{head}: what is {item}?" if head else f"what is {item}?", know)
    if not found or found[0] < _SURE or not isinstance(found[1].result, (r.LimitResult, r.ScheduleResult)):
        return None
    return found[1]._replace(answer=found[1].answer._replace(question=item))
