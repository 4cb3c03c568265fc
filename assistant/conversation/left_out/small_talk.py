"""Small talk around a turn: "right, while I'm stuck in traffic, where do I read that up", "just curious".

A clause of it tells of who asks or takes note of what was said, and names nothing of the trade, no figure and no
state. The turn is then read without it, so that it may lean on what was told before as it would alone.
"""

from __future__ import annotations

import re

from assistant.conversation.left_out.told_of_oneself import OF_ONESELF
from assistant.resolving.knowing import Knowledge
from assistant.understanding.words import expand

_FLAGS = re.IGNORECASE
_LONGEST = 200
_CLAUSES = r"(?<=[.,;:!?])\s+|\s+[-\u2013\u2014]+\s+"
_ASKING = (
    r"what|where|who|how|when|why|which|whose|is|are|can|could|do|does|did|may|must|should|will|would|say again"
    r"|once more|repeat|and|what'?s|where'?s|who'?s|how'?s|tell me|give me|come again"
)
_MEANWHILE = (
    r"^(?:\W*(?:ok(?:ay)?|right|so|and|well|now|oh|hm+|um+)\b)*\W*(?:while|whilst) "
    rf".+?(?=[,.;]|\b(?:{_ASKING})\b)"
)
_SO = rf"^.{{8,}}?[\s,]+so[\s,]+(?=(?:{_ASKING}|back)\b)"
_IDIOMS = (
    r"(?:(?:let me|i.?ll|i|gotta|ok|just|and|got|have|having|i.?ve|i.?m)\s+)+(?:just\s+)?"
    r"(?:(?:write|writ|wrote|not|jott?|scribbl|tak|took)\w*\s+(?:that|it|this|all that|notes)(?:\s+down)?"
    r"|(?:that|it)\s+(?:all\s+)?(?:written|noted)(?:\s+down)?|(?:that|it)\s+down)",
    r"(?:and )?(?:while|whilst) (?:you.?re|we.?re|i.?m|you are|we are|i am) (?:at it|about it|on it|there|here)",
    r"fair (?:enough|point|do.?s)|(?:that )?makes sense|good to know|never knew that|no way|you don.?t say"
    r"|bear with me",
    r"(?:that.?s |just )?what i thought(?: too| so)?|thought so|i (?:knew|always forget|keep forgetting)"
    r" (?:that|this)(?: one)?(?: actually)?",
    r"(?:that |it )?helps(?: a lot)?|before i forget|if you don.?t mind(?: me)?(?: asking)?"
    r"|(?:i.?m )?just (?:curious|wondering|asking)",
    r"asking for a (?:friend|mate)|(?:sorry )?(?:i.?m|i am) (?:a bit )?slow today"
    r"|(?:that.?s |it.?s )?my last (?:one|question)(?: then)?",
    r"(?:my|the) (?:mate|wife|husband|friend|kid|son|daughter|student|buddy|colleague|instructor|captain|fo)"
    r" (?:wants|needs|would like|keeps?) (?:to know|asking(?: me)?(?: that| this)?)",
    r"(?:ok )?(?:back to|next (?:one )?on|last (?:one )?on) (?:my|the) (?:notes|list|book|cards|questions?)(?: then)?",
    r"one more(?: thing)? for (?:the|my) (?:exam|notes|sim|list|road)|for the exam",
    r"(?:my |the )?pen.?s ready|thanks(?: a lot| mate| that helps)?|cheers(?: mate| that helps)?|ta very much"
    r"|much obliged",
    r"(?:ha)+|lol|wow(?: ok)?|phew|blimey|gosh|crikey|brilliant|lovely|interesting|nice(?: one)?|well well"
    r"|never mind that",
)
_TRAILING, _LEADING = slice(4, 7), (1, 2, 3, 7)
_LEAD = r"(?:(?:ok(?:ay)?|right|so|and|well|now|oh|hm+|um+|yeah|yes|yep|ah|sorry|good|hang on)[\s,]+)*"
_ALONE = (
    rf"^\W*{_LEAD}(?:(?:{'|'.join(_IDIOMS)})[\s,]*)+"
    r"(?:[\s,]+(?:then|though|now|ok|right|mate|actually))*\W*$"
)
_BEHIND = rf"[\s,.?!-]+(?:{'|'.join(_IDIOMS[_TRAILING])})\W*$"
_BEFORE = (
    rf"^\W*{_LEAD}(?:{'|'.join(_IDIOMS[k] for k in _LEADING)})[\s,.:]+(?:so\s+)?"
    rf"(?=(?:{_ASKING}|back)\b)"
)
_SAID_OF_ONESELF = r"\b(?:stuck (?:in|at|on|behind)|(?:hang|hold|hanging|holding) on|sat (?:in|at|on)|in the air)\b"
_TALKING = frozenset({
    "i", "we", "my", "me", "our", "us", "kids", "kid", "phone", "someone", "somebody", "he", "she", "wife",
    "mate", "captain", "instructor", "examiner", "exam", "sim", "radio", "loud", "coffee", "tea", "bus",
    "train", "traffic",
})  # fmt: skip
_MORE_OF_ONESELF = frozenset({
    "traffic", "train", "kettle", "screaming", "ringing", "loud", "noisy", "noise", "raining", "coffee",
    "taxi", "dog", "doorbell", "shower", "sandwich", "pen", "notes", "zoned", "distracted", "lost",
    "listening", "slow",
})  # fmt: skip
_ASKS = frozenset({
    "what", "where", "who", "how", "when", "why", "which", "whose", "if", "no", "not", "meant", "mean",
    "make", "or", "correction", "disregard", "instead", "rather", "say", "says", "said", "reckons", "reckon",
    "told", "read", "heard", "thinks", "claims", "than", "?", "else", "swears", "insists",
})  # fmt: skip


def without_small_talk(text: str, knowledge: Knowledge) -> str:
    """Return a turn after another without the small talk around it; the whole where nothing else would be left."""
    if not 12 < len(text) < _LONGEST:
        return text
    rest = _cut(text, knowledge)
    clauses = [c for c in re.split(_CLAUSES, rest) if c.strip()]
    if len(clauses) > 1:
        kept = [c for c in clauses if not _is_small_talk(c, knowledge)]
        rest = " ".join(kept) if kept else rest
    return rest if re.search(r"\w{2}|\d", rest) else text


def _cut(text: str, knowledge: Knowledge) -> str:
    """Return a turn without the small talk that no mark parts from it."""
    rest = re.sub(_BEHIND, "", text, flags=_FLAGS)
    rest = re.sub(_BEFORE, "", rest, flags=_FLAGS) or rest
    if not re.search(r"\w{2}", rest):
        return text
    for pattern in (_MEANWHILE, _SO):
        led = re.match(pattern, rest, _FLAGS)
        if led and led.end() < len(rest) and _tells_of_oneself(led.group(), knowledge):
            rest = rest[led.end() :].lstrip(" ,.;")
    return rest


def _is_small_talk(clause: str, knowledge: Knowledge) -> bool:
    return bool(re.match(_ALONE, clause, _FLAGS)) or ("?" not in clause and _tells_of_oneself(clause, knowledge))


def _tells_of_oneself(clause: str, knowledge: Knowledge) -> bool:
    """Return whether a clause tells of who asks, and names nothing of the trade, no figure and no state."""
    words = {part for word in re.findall(r"[\w']+", clause.lower()) for part in expand(word)}
    own = OF_ONESELF | _MORE_OF_ONESELF
    if words.isdisjoint(own) or words.isdisjoint(_TALKING) or not words.isdisjoint(_ASKS) or len(words) < 3:
        return False
    reading = knowledge.reader.read(re.sub(_SAID_OF_ONESELF, " ", clause, flags=_FLAGS))
    if reading.amounts or reading.variants:
        return False
    named = (m for m in reading.mentions if not (m.weak or m.passing or m.is_plain or m.is_outside))
    return all(_is_scene(m.concepts, knowledge) or not own.isdisjoint(m.text.split()) for m in named)


def _is_scene(concepts: frozenset[str], knowledge: Knowledge) -> bool:
    return any(knowledge.lexicon.kinds.get(c, "thing") in ("ask", "ask!", "filler") for c in concepts) or all(
        c in ("captain", "first_officer", "stand", "airfield") for c in concepts
    )
