"""Turns on what a figure was before, since when it holds, and what somebody believes it to be.

What a turn says by its words alone, in whatever order, is heard so ("what was it before", "since when is it the new
one"); where nothing told was ever changed, such a turn is a question like any other.
"""

from __future__ import annotations

import re

from assistant.conversation.control_words.bare_words import as_steering

_BELIEF = (
    r"\b(?:"
    r"(?!we read\b)(?:i|we) (?:was|were|had|have|'ve|ve)? ?(?:always |once )?"
    r"(?:learn(?:ed|t)|taught|thought|told|remember(?:ed)?|believed?|heard"
    r"|read(?!\W[\w ,.]{1,30}\bon (?:it|them|this|the|that|one|ours?|mine)\b)"
    r"|been told|been taught|assumed"
    r"|understood|recall(?:ed)?|say|said|know)"
    r"|my (?:notes?|book|instructor|captain|card|old notes?) (?:says?|said|has|have|use[sd]?|taught|quotes?|reckons)"
    r"|(?:i|we) (?:always |have always |'ve always )?used(?! to\b)"
    r"|(?:i|we) (?:had|have|'ve got) .{1,30} (?:in my head|in mind|written down|noted|on my card)"
    r"|used to be|it was .{1,14} (?:once|before|previously|at one time)"
    r"|isn.?t (?:it|that)|wasn.?t (?:it|that)|surely|someone (?:said|told)"
    r"|the old (?:book|manual) (?:says|said)"
    r"|(?:i|we)(?: had|'d|.?ve)(?: got)? (?:it|that|this|them) (?:down |noted |written )?(?:as|at)"
    r"|(?:i|we)(?:'d| would)(?: have)? (?:said|thought)"
    r"|(?:they|he|she|\w+body|someone|mate|captain|skipper|instructor|trainer|examiner|school|course)(?:.?s)?"
    r" (?:always )?(?:told|taught|reckons?|said|says|thinks?|swears?|insists?|claims?|quotes?|tells)"
    r"|(?:in|on|from|to) my (?:\w+ )?(?:notes?|head|mind|book|cards?|sheet|memory|course|training|flashcards?)"
    r"|my (?:\w+ )?(?:card|sheet|flashcards?|notes?)(?:.?s)? (?:got|says?|has)"
    r"|when i (?:trained|learn(?:ed|t)|did|was taught|started)|from the course|always been"
    r")\b"
)
_BELIEVED_FIRST = (
    r"^\W*(?:(?:oh|really|hm+|um+|er|ok|okay|but|and|so|no|funny|odd|strange|always|only)\W+)*"
    r"(?:thought|learn(?:ed|t)|(?:was|been|were|got) (?:taught|told)|remember(?:ed)?|assumed|believed|heard|reckoned"
    r"|had (?:it|that|this) (?:down )?(?:as|at)|could(?:'?ve| have)? ?sworn|pretty sure|quite sure|fairly sure|sure)\b"
    r"(?: (?:that|it|this|they) (?:was|were|is|wasn.?t|used to be))?"
)
"""Somebody who believes something and does not say who: "thought that was twelve"."""
_CONNECTING = frozenset({"so", "and", "but", "ok", "okay", "well", "then", "right"})
_OPEN = frozenset({"what", "how"})
_BELIEVING = frozenset({
    "had", "was", "were", "been", "remember", "remembered", "recall", "told", "notes", "note", "card", "cards", "sheet",
    "flashcard", "book", "taught", "trained", "training", "course", "school", "reckons", "reckon", "said", "says",
    "down", "written", "always", "used", "thought", "sure", "not", "isn", "wasn", "isn't", "wasn't", "head", "memory",
    "learned", "learnt", "believed", "assumed", "old", "surely", "got", "have", "sworn", "d", "knew", "know", "say",
    "don", "don't", "doesn", "doesn't", "insists", "insist", "insisted", "swears", "claims", "claimed", "thinks",
    "think", "tells", "tell", "still", "mine", "isnt", "dont", "doesnt", "wasnt", "quotes", "has", "would",
})  # fmt: skip
"""Words of which a turn holds one that gives a figure as what somebody believes it to be."""
_FORMER = (
    r"^\W*(?:(?:and|so|what was it|what about) )?(?:formerly|previously|before(?: that| the change)?"
    r"|prior|(?:up|down|changed|instead|raised|lowered) (?:from|of) what|in the old (?:book|days|manual))\W*$|"
    r"^\W*(?:and |so |but |hang on |wait |um |er |i think |surely )*"
    r"(?:(?:it|that|this|they) )?(?:didn'?t (?:it|that|this) )?"
    r"(?:used? to be|was(?:n'?t| not)?(?: (?:it|that|this))?|has been|had been)"
    r"(?: (?:a (?:bit|little)|rather|something))?"
    r" (?:ever )?(?:(?:lower|higher) or (?:lower|higher)|lower|higher|less|more|different"
    r"|else|otherwise|another(?: figure| value| number)?|smaller|bigger|greater)"
    r"(?: (?:once|before|at one time|in the past|formerly|previously|earlier|in the old (?:book|days|manual)))*"
    r"(?:\W+(?:was(?:n'?t| not)|did(?:n'?t| not)|right|isn'?t|no)(?: it| that)?)?\W*$"
)
_POLITE = frozenset({
    "and", "so", "ok", "okay", "then", "now", "but", "oh", "well", "um", "er", "right", "please", "really", "exactly",
})  # fmt: skip
_POINTING = frozenset({"it", "that", "this", "they", "the", "a", "one", "s", "those", "these"})
_FIGURES = frozenset({"figure", "limit", "value", "number", "rule", "maximum", "minimum", "book", "manual", "revision"})
_PAST = frozenset({"was", "were", "did", "used", "had"})
_EARLIER = frozenset({"before", "formerly", "previously", "earlier", "originally", "once", "old", "until", "prior"})
_OLD = frozenset({"old", "former", "previous", "original", "earlier", "superseded"})
_ASKED = frozenset({"what", "which", "how", "tell", "me", "give", "say", "is", "much", "high", "low", "fast"})
_BEING = frozenset({"was", "were", "did", "used", "use", "to", "be", "have", "had", "say", "in", "for", "until", "the"})
_CHANGED = frozenset({
    "lower", "raise", "bring",
    "change", "changed", "raised", "lowered", "altered", "amended", "brought", "introduced", "new", "come", "came",
    "become", "became", "reduced", "increased", "cut", "went", "go", "revised", "dropped", "replace", "replaced",
    "scrap", "scrapped", "drop", "withdrawn", "abandoned", "ditched", "ditch", "superseded",
})  # fmt: skip
_WHEN = frozenset({"when", "which", "what"})
_WHO = frozenset({"who", "whom", "what", "which"})
_ISSUE = frozenset({"revision", "issue", "edition", "date", "day"})
_OF_TIME = frozenset({
    "is", "was", "were", "did", "has", "have", "been", "had", "they", "in", "into", "up", "down", "to", "from", "with",
    "at", "be", "so", "like", "case", "there", "long", "how", "by", "force", "effect", "of", "different", "otherwise",
    "true", "valid", "current", "correct",
})  # fmt: skip
_IN_FORCE = frozenset({"effective", "effect", "force", "as"})
_ALTERED = frozenset({"new", "recent", "recently", "changed", "change", "always", "lately"})
_HAS = frozenset({"has", "did", "is", "was", "been", "have"})
_OF_STATES = frozenset({"up", "down", "to", "when", "how", "what", "like"})
_MOST_WORDS = 9
_WHETHER = frozenset({
    "can", "may", "could", "would", "do", "does", "if", "should", "ok", "okay", "fine", "alright", "allowed", "legal",
    "enough", "within", "above", "below",
})  # fmt: skip


def believes(text: str) -> bool:
    """Return whether a turn says what somebody believes a figure to be: "I learned 280"."""
    return _belief(text) is not None


def may_believe(text: str) -> bool:
    """Return whether a turn may say what somebody believes, if the figure in it is a former one: "I had 12"."""
    words = text[:100].lower().replace("\u2019", "'").replace("'", " ").split()
    if next((w for w in words if w not in _CONNECTING), "") in _OPEN:
        return False  # "so what have I got at a hundred"
    return len(words) <= _MOST_WORDS + 1 and not _BELIEVING.isdisjoint(words) and _WHETHER.isdisjoint(words)


def believed_words(text: str) -> frozenset[str]:
    """Return the words by which a turn says that somebody believes a figure, which name nothing."""
    found = _belief(text)
    return frozenset(found.group().lower().split()) if found else frozenset()


def _belief(text: str) -> re.Match[str] | None:
    said = text[:200]
    return re.search(_BELIEF, said, re.IGNORECASE) or re.match(_BELIEVED_FIRST, said, re.IGNORECASE)


def asks_since(text: str) -> bool:
    """Return whether a turn asks since when the figure told holds: "since when?", "when did they change that?"."""
    return any(map(_asks_since, as_steering(text)))


def _asks_since(text: str) -> bool:
    words = _words(text)
    rest = words - _POLITE - _POINTING - _FIGURES
    since = "since" in words and not words.isdisjoint(_WHEN)
    as_long = {"how", "long", "been"} <= words and words.isdisjoint(("up", "down"))
    changed = bool(words & _CHANGED) and not words.isdisjoint(("when", *_ISSUE))
    changed = changed or (bool(words & _ALTERED) and bool(words & _WHO) and not words.isdisjoint(("by", "who")))
    issue = not (_WHEN & words).isdisjoint(("which", "what")) and bool(words & _ISSUE)
    issue = issue and not words.isdisjoint(("with", "from", "as"))
    in_force = not words.isdisjoint(_IN_FORCE) and not words.isdisjoint(_WHEN | _ISSUE)
    whether = bool(words & _ALTERED) and bool(words & _HAS) and not words.isdisjoint(_POINTING - {"a", "the", "s"})
    asks = since or as_long or changed or issue or in_force or (whether and not words & _OF_STATES)
    known = _OF_TIME | _CHANGED | _WHEN | _ISSUE | _IN_FORCE | _ALTERED | _WHO
    return asks and rest <= known | {"since", "d", "take", "took"}


def asks_former(text: str) -> bool:
    """Return whether a turn asks what the figure told was before: "didn't that use to be lower?", "the old figure?"."""
    return any(map(_asks_former, as_steering(text)))


def _asks_former(text: str) -> bool:
    if re.match(_FORMER, text[:100].replace("\u2019", "'"), re.IGNORECASE):
        return True
    words = _words(text) - {"again"}
    rest = words - _POLITE - _POINTING - _FIGURES
    was = bool(words & _PAST) and bool(words & _EARLIER or {"used", "be"} <= words or {"use", "be"} <= words)
    old = bool(words & _OLD) and bool(words & (_FIGURES | {"one", "was", "what"}))
    whence = "from" in words and bool(words & _CHANGED) and bool(words & {"what", "which"})
    replaced = bool(words & {"replace", "replaced"}) and "what" in words
    known = _EARLIER | _OLD | _ASKED | _BEING | ({"from", *_CHANGED} if whence or replaced else set())
    return (was or old or whence or replaced) and rest <= known


def _words(text: str) -> frozenset[str]:
    """Return the words of a short turn without figures, none of any other."""
    if len(text) > 100 or any(c.isdigit() for c in text):
        return frozenset()
    words = re.findall(r"[a-z]+", text.lower())
    return frozenset(words) if len(words) <= _MOST_WORDS else frozenset()
