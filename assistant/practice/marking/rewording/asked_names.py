"""An answer with the things that a question asks about called by their names: "gear up" for the lever, "number two".

Each way of speaking is only read so where the question or one of its points is of that thing.
"""

from __future__ import annotations

import re

from assistant.practice.marking.points import Need


def as_asked(answer: str, need: Need) -> str:
    """Return an answer with "number two" as the system, and "gear up" as the lever, where these are asked about."""
    answer = _in_full(answer, need)
    answer = _sided(_worded(_moved(answer, need), need), need)
    if not any(f.unit in _LENGTHS for p in need.points for f in p.figures):
        answer = _INWARD.sub(r"\1 up", answer)
    if _NIL.fullmatch(answer) and any(f.value == 0 for p in need.points for f in p.figures):
        answer = "0"
    if any(p.state and not p.state.there for p in need.points):
        answer = _SKID_LOST.sub("no anti-skid", answer)  # the state of it here, and no label
    return _numbered(answer, need)


def _moved(answer: str, need: Need) -> str:
    """Return an answer with what is moved called the lever, and a brake that is let off released."""
    if need.ordered and any(p.text.lower().startswith("gear down ") for p in need.points):
        answer = _LOWER_IT.sub("gear down ", answer)
    if need.ordered and any(p.text.lower().startswith("lever ") for p in need.points):
        answer = _BARE.sub(r" lever \1", answer)
        answer = _LOWERED.sub("lever down", _RAISED.sub("lever up", _GEAR.sub(r"lever \1", answer)))
    answer = _LET_OFF.sub(r"release \1", answer if need.polar else _OPENER.sub("", answer))
    if any(_SETTING.search(p.text.lower()) for p in need.points):
        answer = _BRAKE_OFF.sub("parking brake released", answer)
    return answer


def _worded(answer: str, need: Need) -> str:
    """Return an answer with what is done in the words of the points that tell of it."""
    if any("extend and retract" in p.text for p in need.points):
        answer = _CYCLED.sub("extend and retract", answer)
    if any("inflate" in p.text for p in (*need.points, *need.others)):
        answer = _TOPPED.sub("re-inflate", answer)
    if any(p.text.lower().startswith("replace") for p in need.points):
        answer = _FITTED.sub("replace it", answer)
        answer = _GOES.sub("replace it", answer)
    if any("leave the gear down" in p.text for p in need.points):
        answer = _NOT_RAISED.sub("leave the gear down", answer)
    return _THE_ONE.sub(r"\1 seat", answer) if "seat" in answer else answer


def _in_full(answer: str, need: Need) -> str:
    """Return an answer with the labels of the question in full, where their last letters are spelled: "l o" for VLO."""
    for word in need.question.words:
        if len(word) == _LABEL and word.isalpha() and not re.search(r"[aiu]", word) and word not in answer.lower():
            answer = re.sub(rf"(?<!{word[0]} )\b{word[1]} {word[2]}\b", word, answer, flags=re.IGNORECASE)
    return answer


_LABEL = 3


def _sided(answer: str, need: Need) -> str:
    """Return an answer with a way and an inflation that are told in everyday words as the question has them."""
    if not _WAY_ASKED.isdisjoint(need.question.words) and "inboard" in (p.text for p in need.points):
        answer = _IN.sub("inboard", answer)
    if any("inflation" in p.text for p in need.points):
        answer = _HARD.sub("over-inflated", _SOFT.sub("under-inflated", answer))
    return answer


def _numbered(answer: str, need: Need) -> str:
    """Return an answer with a system that is called by its number named."""
    if not {"system", "systems"}.intersection(need.question.words):
        return answer
    answer = _NUMBER.sub(r"system \1", answer)
    systems = [p for p in need.points if _SYSTEM.match(p.text)]
    if len(systems) > 1 and len(systems) == len(need.points):
        if _ONES.fullmatch(answer):
            answer = _ONE.sub(r"system \1", answer)
        answer = _FOR_IT.sub(r"system \1", answer)
        answer = _BEHIND_IT.sub(r"\1 system \2", answer)
        return _ON_ONE.sub(r"on system \1", answer)
    return _ON_ONE.sub(r"on system \1", answer) if systems and "system" in answer.lower() else answer


_TOPPED = re.compile(
    r"\b(?:top(?:s|ped|ping)?|blow|blown|air) (?:it |them |the tyres? |that )?(?:back )?up(?: again)?\b", re.IGNORECASE
)
_GOES = re.compile(
    r"\b(?:it|that tyre|the tyre) (?:goes|must go|has to go|is (?:scrap|scrapped|binned|finished))(?=\s*(?:[.,;!]|$))",
    re.IGNORECASE,
)
"""A tyre that is done with: "so it goes"."""
_FITTED = re.compile(
    r"\b(?:fit|put on|get|needs?) (?:a |an )?(?:new|another|fresh|different) (?:one|tyre|tire)\b", re.IGNORECASE
)
_NOT_RAISED = re.compile(
    r"\b(?:do not|don['’]?t|not|never|without) (?:retract(?:ing)?|rais(?:e|ing)|(?:pull|bring|tak)(?:e|ing)? up)"
    r"(?: (?:it|the (?:gear|wheels|legs)|gear))?(?: up)?\b",
    re.IGNORECASE,
)
_THE_ONE = re.compile(r"\b((?:left|right)(?:[- ]hand)?) (?:one|side)\b", re.IGNORECASE)
_LOWER_IT = re.compile(
    r"(?:^\W*|(?<=[,;.] ))(?:then |you |we |i )*"
    r"(?:lower (?:the )?(?:gear|wheels|legs)|(?:the )?(?:gear |wheels |legs )?(?:dn|down))\b"
    r"(?=\s*(?:\(|[<≤]|at\b|below|under|\d))\s*", re.IGNORECASE
)  # fmt: skip
"""The gear put down with a speed behind it: "DN <= 230"."""
_BARE = re.compile(r"(?<=[,;.])\s*(?:then |and |back )*(up|down|dn)(?: again)?(?=\s*(?:[,;.]|$))", re.IGNORECASE)
"""A step that is only the way of the lever: "up, wait 15 s, down"."""
_RAISED = re.compile(r"\braise (?:the (?:lever|gear|handle)|it)\b", re.IGNORECASE)
_LOWERED = re.compile(r"\blower (?:the (?:lever|gear|handle)|it)\b", re.IGNORECASE)
_OPENER = re.compile(r"^\s*(?:ok|okay|alright|well)[,:;]\s+", re.IGNORECASE)
_NIL = re.compile(r"\s*(?:nil|none|nothing|nought|naught|zilch)(?: at all)?\s*[.!]?\s*", re.IGNORECASE)
_LENGTHS = ("mm", "cm", "m", "in", "ft")
_INWARD = re.compile(r"(?<=\d)( kt| knots)? in(?=\s*(?:[,.;]|$))", re.IGNORECASE)
"""The gear drawn in, and no inches: "230 out, 205 in"."""
_LET_OFF = re.compile(r"\b(?:let|take|took) ((?:the )?(?:park(?:ing)? )?brakes?) off\b", re.IGNORECASE)
_BRAKE_OFF = re.compile(
    r"\bpark(?:ing)?(?: brakes?)?(?: lever)? (?:is |goes |comes |taken |then )*(?:off|not set)\b", re.IGNORECASE
)
_SETTING = re.compile(r"parking brake (?:released|set)|release the parking brake|^lever set$")
_IT = r"(?: (?:it|them|the (?:gear|legs|wheels)))?"
_CYCLED = re.compile(
    rf"\b(?:put |run |cycle )?(?:it |them |the (?:gear|legs|wheels) )?(?:back )?(?:down|lower{_IT}|drop{_IT})"
    rf"(?: again)?,? (?:and|then)(?: then)? (?:back )?(?:up|raise{_IT})\b|"
    r"\bcycle (?:it|them|the (?:gear|legs|wheels))\b",
    re.IGNORECASE,
)
"""The gear cycled in everyday words: "down and up"."""
_SKID_LOST = re.compile(r"\banti-? ?skid (?:is )?lost\b", re.IGNORECASE)
_GEAR = re.compile(r"\b(?:gear|handle|wheels|legs|gear lever|gear handle) (?:back )?(up|down|dn)\b", re.IGNORECASE)
_SYSTEM = re.compile(r"system \d$", re.IGNORECASE)
_ON_ONE = re.compile(r"\bon (one|two|1|2)\b(?=\s*(?:[,;.]|and\b|$))", re.IGNORECASE)
"""A system by its number alone: "the gear on 1"."""
_ONE = re.compile(r"\b(one|two|1|2)\b", re.IGNORECASE)
_ONES = re.compile(r"\W*(?:(?:one|two|1|2|and|then)[\s,;/.]*)+", re.IGNORECASE)
"""Systems by nothing but their numbers: "one, two"."""
_FOR_IT = re.compile(r"(?<!system )\b(one|two|1|2)(?= (?:for|runs|does|drives|powers|supplies|feeds)\b)", re.IGNORECASE)
"""A system by its number, before what it is for: "one for the gear"."""
_BEHIND_IT = re.compile(
    r"\b((?!(?:system|systems|number|and|or|the|on|by|from|to)\b)[a-z-]+)[:=]? (one|two|1|2)"
    r"(?=\s*(?:[,;.]|$|and\b))", re.IGNORECASE,
)  # fmt: skip
"""A system by its number, behind what is on it: "brakes 2, steering 1"."""
_WAY_ASKED = frozenset(("way", "direction"))
_IN = re.compile(r"\bin(?=\s*(?:[,;.]|$|and\b))", re.IGNORECASE)
_SOFT = re.compile(
    r"\b(?:(?:when |if )?(?:it is |it's |they are )?"
    r"too (?:soft|low|flat|little (?:air|pressure)|less (?:air|pressure))|soft ones?|"
    r"(?:with )?(?:low|little) (?:air|pressure)|under(?= )|underinflated)\b", re.IGNORECASE
)  # fmt: skip
_HARD = re.compile(
    r"\b(?:(?:when |if )?(?:it is |it's |they are )?too (?:hard|high|full|much (?:air|pressure))|hard ones?|"
    r"(?:with )?(?:high) (?:air|pressure)|over(?= )|overinflated)\b", re.IGNORECASE
)  # fmt: skip
"""A tyre with too little in it, and one with too much, in everyday words."""
_NUMBER = re.compile(r"\b(?:number|no\.|no|nr\.?|num\.?) ?(one|two|1|2)\b", re.IGNORECASE)
