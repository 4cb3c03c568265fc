"""What is told of a thing where something else is asked of it: how it is, what it is for, where it is, what it does.

"The caution is amber" gives no step, "it makes the wheels castor" no place, and "it's the white light" no reason.
"""

from __future__ import annotations

import re

from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said, plain
from assistant.resolving.knowing import Knowledge


def tells_aside(need: Need, said: Said) -> bool:
    """Return whether an answer only tells how something is, where steps are asked for, or what a thing is for and where
    it is, where nobody asks that: "the caution is amber", "that's for the rudder check", "it's on the left console".
    """
    text = " ".join(said.reading.words)
    if need.ordered:
        declared = not said.claims and _DECLARING.match(_without_names(need, said)) is not None
        return bool(declared or _WHEN_SO.match(text)) and not _DOING.search(text)
    asks = need.question
    if asks.has("why"):
        return False
    placed = _EFFECT.match(_SET.sub("", text)) if _asks_place_alone(need) else _PLACED.match(text)
    state = _asks_state(need)
    use = None if _ASKS_USE.search(asks.text) and not state else _FOR.match(text)
    aside = use or placed or (_SO_THAT.match(text) and state)
    return bool(aside) and not said.claims and not names_a_point(need, said)


def _asks_state(need: Need) -> bool:
    """Return whether results of a state are asked for, of which no purpose tells."""
    return any(p.state or any(c[0] == "=" for e in p.elements for c in e.concepts) for p in need.points)


def _asks_place_alone(need: Need) -> bool:
    return need.question.has("where") and len(need.points) == 1 and not any(p.figures for p in need.points)


def only_names_it(need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether an answer to a why only says which thing it is: "it's the white light that goes with it"."""
    found = _WHICH_THING.match(" ".join(said.reading.words)) if need.question.has("why") else None
    own = found is not None and any(plain(word) in need.asked for word in found[1].split())
    if not own or said.claims or names_a_point(need, said):
        return False
    colours = {c for here in said.concepts for c in here if know.lexicon.families.get(c) == "colour"}
    things = frozenset(c for m in need.question.mentions if m.end - m.start > 1 for c in m.concepts)
    told = (know.phrase(know.base.records[name].says).concepts for name in know.base.ids("facts") if colours)
    return not colours or any(colours <= here and here & things for here in told)


def _without_names(need: Need, said: Said) -> str:
    """Return the words of an answer with the thing of the question that leads them as "it"."""
    first = next((m for m in said.content if m.start == 0 and m.concepts & need.question.concepts), None)
    return " ".join(("it", *said.reading.words[first.end :]) if first else said.reading.words)


def names_a_point(need: Need, said: Said) -> bool:
    """Return whether an answer names what any point, or what would be right of another case, is told by."""
    points = (*need.points, *need.others, *need.row)
    own = frozenset(c for p in points for e in p.elements if not e.given for c in e.concepts)
    own |= frozenset(c for p in points if p.state for c in p.state.subject)
    words = frozenset(w for p in points for e in p.elements if not e.given for w in e.words)
    return any(m.concepts & own or words.intersection(said.words[i] for i in m.taken) for m in said.content)


_FOR = re.compile(
    r"(?:it|that|this|they)(?: is| are)(?: just| only| really| there| meant)* (?:for|used for) (?:the|a|an|when)\b"
)
_PLACED = re.compile(
    r"(?:it|that|this|they|(?:the|that|this) (?:\w+ ){1,3}?) ?(?:is|are|sits?) (?:down |up |just |right )?"
    r"(?:on|behind|under|beside|next to|in|at|above|below|to the (?:left|right) of|(?:left|right) of) "
    r"(?:the|your|each|either|my|our|a)\b"
)
_ASKS_USE = re.compile(
    r"\bfor\W*$|\bpurpose\b|\bfunction\b|\bwhat (?:do|does) (?:[\w-]+ ){1,5}do\b", re.IGNORECASE
)
"""What asks what a thing is for."""
_SO_THAT = re.compile(
    r"(?:(?:it|that|this)(?: is)? (?:just |only |there )?)?so (?:that )?"
    r"(?:the (?:\w+ )?|you|we|they|it|he|nobody|people|crews?)"
    r" ?\w* ?(?:can|could|may|might|will|would|do not|does not|cannot)\b|"
    r"(?:it|that|this)(?: is)? (?:just |only |there )*for \w+(?: \w+)?$"
)
"""What tells what something is for: "it's so the tug can push you back", "it's for pushback"."""
_SIDED = (
    r"above|behind|below|beneath|beside|left|right|next|under|near|front|back|forward|aft|overhead|top|bottom|centre"
)
_EFFECT = re.compile(
    r"(?:it|that|this|they|you|we|(?:pulling|pressing|pushing|moving|setting|using) (?:it|that|them)|off|on|up|down)"
    rf"(?! (?:is|are|s|sits?|lives?|lies|hides?|goes|find|look|see|reach|get)\b)(?!.*\b(?:{_SIDED})\b) \w+\b"
)
"""What a thing does or is used for, where nothing tells of a place: "it makes the wheels castor"."""
_SET = re.compile(
    r"(?:(?<=put )|(?<=leave )|(?<=keep )|(?<=turn )|(?<=switch ))(?:it |that |them |the switch )?(?:on|off)\b"
)
"""Words of moving a switch, which tell of no place."""
_WHICH_THING = re.compile(
    r"(?:it|that|this)(?: is)? (?:just |only )?(?:the|a|an|one of the) "
    r"((?:\w+ ){0,3}?\w+)(?: (?:that|which|you|on|beside|by)\b|$)"
)
_WHEN_SO = re.compile(r"(?:it|that|this)(?: is| means| shows| comes on| comes)? (?:when|if)\b")
_DECLARING = re.compile(
    r"(?:it|that|this|they|(?:the|a|an) (?:\w+ ){1,3}?)(?: ?is| ?are| ?has| ?have| ?was| ?means| ?comes| ?shows)\b"
)
_DOING = re.compile(
    r"\b(?:apply|call|check|close|cycle|hold|keep|land|leave|lower|move|open|press|pull|push|put|raise|release|remove|"
    r"retract|return|select|set|slow|stay|steer|stop|switch|taxi|try|turn|use|wait)\b"
)
