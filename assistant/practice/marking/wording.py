"""The plain English in which people answer: not knowing, yes and no, hedging, what was once so, bounds.

These are words of the language, true of any question; what the trade names stands in the knowledge base.
"""

from __future__ import annotations

import re

NEGATORS = frozenset({"no", "not", "never", "none", "neither", "nor", "without", "cannot", "nothing", "non"})
LOST = frozenset({
    "lost", "lose", "loses", "losing", "gone", "goes", "fails", "failed", "fail", "inop", "inoperative", "unavailable",
    "dead", "out", "off", "disabled", "inactive", "useless", "unaffected", "unable", "loss", "unchanged",
})  # fmt: skip
"""Words after a thing that say that it is not there."""
KEPT = frozenset({
    "works", "work", "working", "available", "stays", "stay", "remains", "remain", "kept", "keeps", "keep", "still",
    "active", "functioning", "ok", "okay", "normal", "on", "present", "intact", "functions", "holds", "armed", "retained",
    "yes", "both", "unaffected",
})  # fmt: skip
"""Words beside a thing that say that it is there."""
ONLY = frozenset({"only", "unless", "until", "till", "except", "otherwise", "just", "if"})
STOPS = frozenset({".", ";", ":", ",", "(", ")", "?", "!", "-", "–", "—"})
CONTRASTS = frozenset({"but", "though", "although", "however", "whereas", "while", "yet", "instead", "then"})
JOINS = frozenset({"and", "or", "nor", "both", "the", "any", "either", "neither", "&", "/", "plus"})

_UNKNOWING = (
    r"(?:i )?(?:really |honestly |just |simply |still )?"
    r"(?:do not|did not|can not|cannot|could not|have not|has not|would not|never|not)"
    r" (?:even |really |quite |actually |ever |yet )?"
    r"(?:know|remember|recall|sure|tell|say|think of|got a clue|have a clue|got there|got to|learn|learned|learnt|read|"
    r"studied|study|seen|understand|certain|work|figure|do|answer|come|place|a clue|been taught|covered|revised|get)\b",
    r"\bno (?:idea|clue|answer|memory|recollection|chance|comment)\b",
    r"\b(?:pass|skip|dunno|forgot|forgotten|forget|beats me|search me|next(?: one| question| please)?|"
    r"drawing a blank|draw a blank|drawn a blank|gone blank|mind (?:is|has gone|went) blank|blank on|unable|"
    r"you tell me|come back to|look (?:it|that|this) up|remind me|give up|stumped|haven ?t a clue|lost me|escapes me|"
    r"slipped my mind|rings no bell|no bells|say again|stand ?by|help me|ask me (?:later|another)|another question|"
    r"would have to (?:look|check|guess)|need to (?:look|check)|^wait\b.{0,12}$|guessing|who knows|good question|"
    r"tip of my tongue|(?:it is|has|is) gone from)\b",
)
_ASKING_OTHERS = (
    r"\b(?:somewhere|something|somehow|someone|enough of it|whatever)\b",
    r"\b(?:ask|check with|leave (?:it|that) to|up to|(?:that|it) is for|belongs to|depends on|call)"
    r" (?:the |a |an |my |your )?(?:captain|engineers?|maintenance|ground crew|crew|instructor|other pilot|someone|somebody|"
    r"dispatch|company|first officer|skipper|boss|day|weather)\b(?! (?:if|for|when)\b)",
    r"\b(?:the )?(?:\w+ )?(?:captain|driver|engineer|crew|boss|manual|book|checklist|table) (?:knows?|says so|says|has it|briefs)\b",
    r"\b(?:get|look at|look in|read|open|use) (?:out )?(?:the |my )?(?:\w+ )?(?:checklist|book|manual|table|notes|q ?r ?h)\b",
)
UNKNOWING = re.compile("|".join((*_UNKNOWING, *_ASKING_OTHERS)))
"""Not knowing, or asking to be spared."""

_YES = (
    r"yes|yep|yeah|yup|aye|affirm|affirmative|correct|sure|certainly|of course|allowed|permitted|acceptable|okay|ok|fine|"
    r"you may|you can|it may|it can|it does|it is|it will|we can|we may|it would|they do|they may|i may|i can|we are|"
    r"good to go|no problem|within|it meets|it holds|still holds|legal|go ahead"
)
_NO = (
    r"no|nope|nah|negative|can not|cannot|may not|must not|is not|are not|does not|do not|not|never|outside|exceeds|"
    r"exceeded|forbidden|prohibited|unacceptable|fails|too (?:hot|fast|high|low|much|long|far|heavy|slow|little|wide|deep)|"
    r"will not|would not|won t"
)
YES = re.compile(rf"\b(?:{_YES})\b")
NO = re.compile(rf"\b(?:{_NO})\b")

FORMER_BEFORE = re.compile(
    r"\b(?:was|were|used to be|formerly|previously|once|old|before it was|had been|up from|down from|came down from|"
    r"went up from|raised from|lowered from|reduced from|increased from|cut from|changed from|instead of|rather than|"
    r"no longer|not|isn t|superseded|former|originally|learned|learnt|replaced|replaces)"
    r"(?: (?:a|an|the|to|be|at|as|value|figure|limit|of|only|just|about|any|it|is|was|says|said|book|one))*$"
)
FORMER_AFTER = re.compile(
    r"^(?:(?:is|was) )?(?:before|previously|formerly|in the old|under the old|until the|in the past|originally|"
    r"is the old|was the old|no longer|used to|is (?:out|superseded|history))\b"
)
NOW = re.compile(r"\b(?:now|currently|today|present|present day|new|nowadays|these days|since)\b")
HEDGES = re.compile(
    r"\b(?:maybe|perhaps|possibly|might be|could be|not sure (?:if|whether|which)|or is it|or was it|one of (?:those|them|the two)|"
    r"either|can not decide|toss up|something like that|or thereabouts|take your pick|depending)\b"
)

ALIKE = re.compile(r"\b(?:both|either (?:case|way|one)|in each|each time|always|the same|all|whichever|regardless|all of them)\b")
"""One thing said of several cases."""

NEEDS = frozenset({"must", "has", "have", "need", "needs", "needed", "until", "till", "should", "only", "be", "required", "wait", "requires"})
"""Words by which a bound is what is required, not where a reading stands."""
GREATER_OF = re.compile(r"\bwhichever (?:is |one is )?(?:the )?(?:more|higher|greater|bigger|larger)\b")
WAS = re.compile(r"\b(?:was|used to be|formerly|previously|old)\b")

AT_MOST = re.compile(
    r"(?:at most|or less|or below|or under|or lower|or slower|or fewer|maximum|max|not above|not over|not exceed|"
    r"not exceeding|not more than|not faster than|no more than|no faster than|no higher than|no greater than|"
    r"not to exceed|or smaller|at or below|not greater than|not beyond|and below|and under|not higher than|"
    r"never more than|never above|never over|tops|upper limit|top limit)"
)
AT_LEAST = re.compile(
    r"(?:at least|or more|or better|or above|or over|or higher|or greater|minimum|min|not below|not under|not less than|"
    r"no less than|not lower than|no lower than|no slower than|not slower than|or faster|at or above|and above|upward|"
    r"upwards|and up|never below|never less than|never under|lower limit)"
)
LOWER = re.compile(r"(?:below|under|less than|shorter than|cooler than|smaller than|lighter than|lower than|up to|beneath|inside|within|slower than|fewer than|short of)")
HIGHER = re.compile(
    r"(?:above|over|more than|higher than|longer than|hotter than|deeper than|heavier than|beyond|past|exceeds|exceeding|greater than|faster than|exceed|in excess of|from)"
)

MORE = frozenset({"more", "higher", "hotter", "greater", "faster", "longer", "larger", "bigger", "deeper", "warmer", "later"})
LESS = frozenset({"less", "lower", "cooler", "fewer", "slower", "shorter", "smaller", "colder"})
"""Words that with "than" say above and below."""

OPPOSITES = (
    ("left", "right"), ("up", "down"), ("on", "off"), ("open", "closed"), ("front", "behind"), ("above", "below"),
    ("inboard", "outboard"), ("forward", "rearward"), ("before", "after"), ("first", "last"), ("always", "never"),
    ("connected", "disconnected"), ("removed", "inserted"), ("ground", "flight"), ("steady", "pumping"),
    ("steady", "flashing"), ("continuous", "intermittent"), ("engage", "release"), ("release", "add"), ("release", "apply"), ("arm", "disarm"),
    ("slowly", "quickly"), ("automatic", "manual"), ("adds", "subtracts"), ("inside", "outside"), ("raise", "lower"),
    ("extend", "retract"), ("full", "idle"), ("full", "empty"), ("together", "apart"), ("hot", "cold"), ("wet", "dry"),
    ("main", "nose"), ("increase", "decrease"), ("positive", "negative"), ("all", "none"), ("every", "one"),
    ("retracted", "extended"), ("set", "released"), ("slower", "faster"), ("pull", "push"), ("visible", "hidden"),
    ("filled", "hollow"), ("both", "either"), ("tow", "taxi"), ("castor", "lock"), ("pedal", "tiller"), ("horn", "chime"), ("horn", "bell"), ("horn", "gong"),
    ("horn", "buzzer"), ("continuous", "single"), ("continuous", "short"), ("replace", "inflate"),
)  # fmt: skip
"""Words that cannot both be meant of one thing; written as their plainest form (see `PLAIN`)."""

PLAIN = {
    "dn": "down", "aft": "behind", "rear": "behind", "return": "back", "just": "only", "solely": "only", "merely": "only", "immediately": "quickly", "instantly": "quickly",
    "ahead": "front", "air": "flight",
    "airborne": "flight", "flying": "flight", "flt": "flight", "gnd": "ground", "shut": "closed", "close": "closed",
    "closes": "closed", "opened": "open", "opens": "open", "opening": "open", "lowered": "lower", "backwards": "rearward",
    "backward": "rearward", "aftwards": "rearward", "rearwards": "rearward", "rear ward": "rearward",
    "forwards": "forward", "inwards": "inboard", "inward": "inboard", "outwards": "outboard", "outward": "outboard",
    "automatically": "automatic", "manually": "manual", "continuously": "continuous", "constantly": "continuous",
    "constant": "continuous", "steadily": "steady", "slow": "slowly", "gradually": "slowly", "quick": "quickly",
    "suddenly": "quickly", "at once": "quickly", "remaining": "left", "remain": "left", "consumes": "spend", "consume": "spend", "costs": "spend", "cost": "spend",
    "uses": "spend", "wastes": "spend", "waste": "spend", "new": "replace", "exceeds": "above", "exceed": "above", "exceeding": "above", "beyond": "above", "past": "above",
    "exceeded": "above", "change": "replace", "changed": "replace", "renew": "replace", "swap": "replace", "pumped": "pumping", "pump": "pumping", "behing": "behind",
    "beside": "beside", "under": "below", "beneath": "below", "underneath": "below", "over": "above",
    "near": "near", "close to": "near", "nearby": "near", "inserted": "inserted", "fitted": "inserted", "in": "in",
    "disconnect": "disconnected", "connect": "connected", "attached": "connected", "detached": "disconnected",
    "removed": "removed", "remove": "removed", "taken": "removed", "take": "removed", "port": "left",
    "starboard": "right", "lh": "left", "rh": "right", "releases": "release", "engages": "engage", "blinking": "flashing",
    "intermittently": "intermittent", "hand": "hand", "prevents": "prevent", "stops": "stop", "halt": "stop",
    "whoever": "who", "engineer": "maintenance", "engineers": "maintenance", "mechanics": "maintenance",
    "field": "airfield", "airport": "airfield", "aerodrome": "airfield", "repeat": "again", "repeatedly": "again",
}  # fmt: skip
"""Another word for the plainest form of a direction, a side or a state."""
