"""Words of a turn that only carry what it changes: "change that to 3 m/s2", "run it at 110", "would 140 change much".

They would be read for things that they name elsewhere (the changes of a revision, a total, a change of control). After
a calculation, a schedule or a limit they are left out, and what they carry is the turn.
"""

from __future__ import annotations

import re

from assistant.conversation.context import Context
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import (
    BandResult,
    BothResult,
    CheckResult,
    LimitResult,
    ModelResult,
    Needed,
    ScheduleResult,
)

_FLAGS = re.IGNORECASE
_MOST_CHARACTERS = 90
_LETTERS = 3
_LEAD = r"^\s*(?:(?:ok(?:ay)?|right|so|and|now|well|hm+|er|um|no|sorry|oops|ah|oh|but|then|please)[\s,.]+)*"
_IT = r"(?:it|that|this|them|the \w+(?: \w+)?)"
_CARRYING = (
    rf"(?:change|swap|switch|alter|set|amend|adjust|bump|raise|lower|drop|bring|put|turn|shift|move|take)"
    rf" {_IT} (?:to|for|with|at|up to|down to|over to|back to|round to|out for)",
    rf"(?:run|redo|rerun|do|work out|recalculate|recompute|repeat|rework|try|make|call|say|go) {_IT}(?: again)?"
    r"(?: at| for| with| on| from)",
    r"(?:turns?|turned|comes?|came|works?|worked) out (?:it.?s|it is|it was|to be|as|at|that it.?s|we.?re|i.?m)",
    r"(?:same|that|this) (?:sum|calculation|calc|question|working|thing|exercise|case|one|numbers|figures)"
    r"(?:,| again,?| but,?| only,?| now,?| with| at| for| on| in)+",
    r"(?:if|say|suppose|what if) (?:we|i|you) (?:(?:swap|switch|change)(?:p?ed|d)?|move|go|went) (?:over )?to",
    r"(?:what|how) (?:does|would|will|do) (?=.*\b(?:do|make|change)\b)",
    r"(?:would|does|will|do) (?=.*\b(?:change|difference|matter|alter)\b)",
    r"(?:let.?s )?say|now(?: it.?s)?|(?:turns|turned) out",
    r"(?:plug|put|key|type|feed|stick|pop) in",
    r"(?:swap|switch|change) (?:over )?to",
)
_CORRECTING = (
    r"sorry|oops|whoops|ah|oh|er+|um+|hang on|hold on|(?:no )?wait|actually|apologies|my (?:mistake|bad|fault|error)",
    r"(?:no,? )?i (?:said|got|had|read|gave|wrote|typed|put) (?:it|that|this|you that) wrong",
    r"(?:i )?(?:misread|misheard|mistyped|misspoke)(?: it| that)?",
    r"wrong (?:one|number|figure)|typo|slip of the tongue|strike that|belay that|cancel that",
)
"""Openings of a turn that puts a figure right, which say nothing of it."""
_AFTER = (
    r"(?:make|change|matter|alter)s?(?: to| of)?(?: it| that| things| the answer)?(?: much| a lot| anything| any)?"
    r"(?: of)?(?: a| any| much| the)?(?: difference| odds)?(?: to it| to that| then| at all)?",
    r"do to (?:it|that|this|the \w+)",
    r"(?:for|as) (?:the )?(?:numbers?|figures?|values?)",
    r"(?:numbers?|figures?|values?|version|case|edition)",
    r"(?:turns?|grows?|stretches) (?:in)?to(?: what| how much)?|on (?:the|my) card(?:,? so)?",
    r"that should (?:be|have been|read)",
    r"(?:-|–|—|,)? ?what then",
)
_TAIL = r"[\s?.!]*$"
_PIECES = (
    "change", "swap", "switch", "alter", "set ", "amend", "adjust", "bump", "raise", "lower", "drop", "bring", "put",
    "turn", "shift", "move", "take", "run", "redo", "do ", "work", "recal", "recom", "repeat", "try", "make", "call",
    "say", "go ", "out", "same", "sum", "plug", "key", "type", "feed", "stick", "pop", "differ", "matter", "number",
    "figure", "value", "now ", "sorry", "oops", "whoops", "ah", "oh", "er", "um", "hang", "hold", "wait", "actually",
    "apolog", "my ", "wrong", "misread", "misheard", "mistyped", "misspoke", "typo", "slip", "strike", "belay",
    "cancel", "version", "case", "should", "what then", "went", "edition", "card",
)  # fmt: skip
_SPOKEN_OF = (ModelResult, ScheduleResult, CheckResult, LimitResult, Needed, BandResult, BothResult)


def carried_by(text: str, context: Context, knowledge: Knowledge) -> str | None:
    """Return what a turn's carrying words carry, where that is an amount or a variant; None without such words."""
    lower = text.lower()
    if not isinstance(context.result, _SPOKEN_OF) or len(text) > _MOST_CHARACTERS:
        return None
    if len(text) <= _LETTERS and knowledge.reader.read(f"the {text}").variants:
        return f"the {text}"  # "L?"
    if not any(piece in lower for piece in _PIECES):
        return None
    led = re.match(f"{_LEAD}(?:{'|'.join(_CARRYING)})[\\s,:]*", text, _FLAGS)
    led = led or re.match(rf"{_LEAD}(?:(?:{'|'.join(_CORRECTING)})[\s,:.;-]+)+", text, _FLAGS)
    rest = text[led.end() :] if led else text
    behind = re.search(rf"\s+(?:{'|'.join(_AFTER)}){_TAIL}", rest, _FLAGS)
    rest = rest[: behind.start()] if behind else rest
    if not (led or behind) or not rest.strip():
        return None
    for each in (rest.strip(), f"the {rest.strip()}"):  # "L figures?"
        reading = knowledge.reader.read(each)
        if reading.amounts or reading.variants:
            return each
    return None
