"""A short turn that steers by its words alone, in whatever order: "is that the manual or the airline?"."""

from __future__ import annotations

import re

from assistant.conversation.control_words.all_well import plain_words, situation_new, well_again
from assistant.conversation.control_words.bare_words import words_said

_POLITE = frozenset({
    "please", "sorry", "ok", "okay", "right", "and", "so", "now", "then", "just", "well", "um", "er", "uh",
    "mate", "captain", "thanks", "lovely", "good", "hm", "but", "exactly", "actually", "fine", "never",
    "mind", "oh", "ah", "great", "wait", "again",
})  # fmt: skip
_POINTING = frozenset({
    "it", "that", "this", "these", "those", "the", "a", "an", "one", "is", "was", "are", "be", "s", "i", "me",
    "my", "you", "your", "we",
})  # fmt: skip
_DOCUMENTS = frozenset({
    "document", "doc", "manual", "book", "paragraph", "para", "page", "section", "chapter", "source",
    "reference", "ref", "publication",
})  # fmt: skip
_RULES = frozenset({
    "rule", "limit", "figure", "number", "value", "policy", "fact", "answer", "bit", "item", "procedure",
    "requirement", "instruction", "restriction", "word", "idea", "guidance", "last",
})  # fmt: skip
_TELLING = frozenset({
    "say", "says", "said", "saying", "tell", "tells", "give", "gives", "show", "quote", "cite", "name",
    "read", "find", "found", "look",
})  # fmt: skip
_LISTS = frozenset({"checklist", "list", "sop", "drill"})
_OUT_OF = frozenset({"out", "from", "in", "on", "says"})
_WHICH = frozenset({"which", "what", "where", "whose", "who", "name", "quote", "cite", "show", "says", "say"})
_WHOSE = frozenset({"who", "whose"})
_MADE = frozenset({"made", "makes", "make", "wrote", "set", "sets", "says", "said", "invented", "decided", "is"})
_PARTIES = frozenset({
    "airline", "company", "operator", "maker", "makers", "manufacturer", "manufacturers", "factory", "book",
    "manual", "ours", "us", "checklist", "sop", "limitation", "regulator", "law",
})  # fmt: skip
_DECIDED = frozenset({"decided", "decides", "wrote", "invented", "laid", "came", "comes", "reckons"})  # fmt: skip
_SPEAKING = frozenset({"talking", "speaking", "telling", "or", "only", "own", "really", "just", "not", "t", "isn"})
_BESIDES = frozenset({
    "from", "in", "of", "do", "does", "did", "come", "comes", "written", "stated", "get", "got", "can",
    "could", "would", "should", "for", "to", "up", "at", "under", "called", "have", "has", "there", "using",
    "based", "on", "down", "printed", "published", "out", "taken", "anywhere", "somewhere", "exactly",
    "stand", "stands", "they", "about", "all", "like", "people", "writing", "might", "may", "where", "will",
    "am", "supposed", "whereabouts", "black", "white", "set", "put", "laid", "documented", "recorded",
})  # fmt: skip
_THIS = frozenset({"it", "that", "this"})
_ITEMS = frozenset({"item", "number", "rule", "page", "paragraph", "reference", "section", "entry"})
_STANDING = frozenset({
    "limitation", "policy", "recommendation", "requirement", "regulation", "guidance", "law", "rule",
})  # fmt: skip
_STATED_AS = frozenset({
    "policy", "limitation", "regulation", "guidance", "law", "rule", "requirement", "instruction", "restriction",
    "item",
})  # fmt: skip
"""What a statement may be by its standing: "which policy says that"."""
_COVERING = frozenset({
    "under", "covers", "cover", "requires", "require", "demands", "governs", "wants", "lays", "applies", "sets",
    "makes",
})  # fmt: skip
_CHANGED_ONES = frozenset({"new", "old", "current", "latest", "former", "other"})
_OF_WHAT_SORT = frozenset({"a", "an", "hard", "actual", "real", "legal", "official", "published"})
_COMES = frozenset({"from", "come", "comes"})
_GOT = frozenset({"get", "got", "find", "found", "take", "took", "read", "have"})
_WRITTEN = frozenset({"stated", "written", "printed", "published", "laid", "taken"})
_ANY = frozenset({"which", "what", "list", "show", "any", "anything", "all", "name", "how", "many"})
_UNHEARD = frozenset({
    "last", "time", "part", "back", "can", "could", "would", "will", "did", "not", "t", "what", "catch",
    "get", "hear", "heard", "missed", "all", "didn", "couldn", "wasn", "sorry", "garbled", "broke", "broken",
    "up", "out", "stepped", "on", "blocked", "talking", "radio", "unreadable", "too", "quick", "fast", "for",
    "slow", "slower", "slowly", "go", "let", "have", "from", "top", "bit", "they", "he", "she", "someone",
    "somebody", "speaking",
})  # fmt: skip
_HEARD_AGAIN = _UNHEARD - {"up", "on", "out", "not", "for"}
_AS_SAID = frozenset({"say", "go", "repeat", "slower", "slowly", "run", "past", "read", "give", "tell"})  # fmt: skip
_SET_DOWN = frozenset({
    "read", "laid", "lay", "written", "write", "wrote", "writes", "documented", "recorded", "stated", "noted",
    "listed", "printed", "published", "specified", "stand", "stands",
})  # fmt: skip
_WANTING = frozenset(
    {"want", "wants", "wanted", "demands", "demand", "insists", "requires", "saying", "asks", "asking"}
)
_SO_DONE = frozenset({"like", "so", "this", "way", "for", "on", "done", "it", "them"})
_UP_OR_THAT = frozenset({"up", "down", "about", "on", "that", "this", "all", "it", "they"})
_SHOWN = frozenset({"show", "point", "written", "printed", "says", "say"})
_DISPUTED = frozenset({"disputed", "disputes", "dispute", "aside"})
_BY_WORDS: tuple[tuple[str, tuple[frozenset[str], ...], frozenset[str]], ...] = (
    (
        "disputes",
        (_DISPUTED, _ANY),
        frozenset({
            "record", "records", "answers", "limits", "facts", "set", "in", "as", "far", "there", "do",
            "have", "been", "has", "being", "of",
        }),
    ),
    ("source", (_DOCUMENTS, _WHICH), _RULES | _BESIDES),
    ("source", (_DOCUMENTS, frozenset({"out", "from"})), _RULES | _BESIDES),
    (
        "source",
        (frozenset({"which"}), frozenset({"of"}), frozenset({"books", "manuals", "documents"})),
        _BESIDES | {"our"},
    ),
    ("source", (_LISTS, _WHICH, _OUT_OF), _RULES | _BESIDES),
    ("source", (frozenset({"sop"}), _THIS), _OUT_OF | {"of", "an"}),
    ("source", (frozenset({"out"}), frozenset({"of"}), frozenset({"what", "which"}), _THIS), frozenset()),
    ("source", (frozenset({"who"}), _DECIDED, _THIS), frozenset({"down", "up", "with"})),
    ("source", (frozenset({"quote", "cite"}), frozenset({"what", "which"})), _BESIDES),
    ("source", (frozenset({"where"}), frozenset({"look", "check"}), frozenset({"up"})), _BESIDES),
    ("source", (_WRITTEN, _THIS, frozenset({"anywhere", "somewhere"})), _BESIDES),
    ("source", (_WHOSE, _MADE, _RULES), frozenset({"up", "for"})),
    ("source", (frozenset({"whose"}), _RULES), frozenset()),
    ("source", (frozenset({"reference", "ref", "source", "paragraph", "para"}),), frozenset({"for", "to"})),
    ("source", (_PARTIES, _THIS), _SPEAKING | _RULES | {"from", "in", "by", "of"}),
    ("source", (_PARTIES, frozenset({"or"}), _PARTIES), _SPEAKING | _RULES),
    ("source", (frozenset({"where"}), _RULES), _BESIDES),
    ("source", (frozenset({"which"}), _STATED_AS), _RULES | _BESIDES | _COVERING),
    ("source", (frozenset({"what"}), _STATED_AS, _COVERING | _TELLING), _RULES | _BESIDES),
    ("source", (frozenset({"where"}), _SET_DOWN, _UP_OR_THAT), _RULES | _BESIDES | _CHANGED_ONES),
    ("source", (frozenset({"where"}), frozenset({"set", "put"}), frozenset({"down", "out", "writing"})), _BESIDES),
    ("source", (frozenset({"where"}), frozenset({"black"}), frozenset({"white"})), _BESIDES),
    ("source", (frozenset({"where"}), _DOCUMENTS | {"writing", "books", "manuals"}), _BESIDES | _RULES),
    ("source", (frozenset({"who"}), _WANTING, _THIS), _SO_DONE),
    (
        "source",
        (frozenset({"who"}), _DECIDED | {"up"}, _THIS, _MADE | _DECIDED | {"behind"}),
        frozenset({"up", "with", "down"}),
    ),
    ("source", (frozenset({"who"}), frozenset({"set", "sets", "behind", "decides", "decided"}), _RULES), _THIS),
    ("source", (frozenset({"chapter"}), frozenset({"verse"})), _BESIDES),
    ("source", (frozenset({"who"}), frozenset({"behind"}), _THIS), frozenset()),
    ("source", (frozenset({"where"}), _SHOWN | _COMES | _WRITTEN), _RULES | _BESIDES | _CHANGED_ONES),
    ("source", (frozenset({"where"}), frozenset({"you"}), _GOT), _RULES | _BESIDES),
    ("source", (_PARTIES | _DOCUMENTS, _ITEMS), frozenset()),
    ("source", (_DOCUMENTS, frozenset({"or"})), _PARTIES),
    ("source", (_DOCUMENTS, _THIS), frozenset({"in", "from", "under", "of", "out", "thing", "s", "even"})),
    (
        "source",
        (_STANDING, _THIS, frozenset({"is", "was", "s"})),
        _PARTIES
        | {
            "or",
            "only",
            "hard",
            "official",
            "legal",
            "really",
            "limit",
            "sort",
            "kind",
            "of",
            "from",
            "by",
            "even",
        },
    ),
    (
        "source",
        (frozenset({"limit", "limitation"}), _THIS, frozenset({"is", "was", "s"}), _OF_WHAT_SORT),
        _PARTIES | frozenset({"or", "only", "in", "of", "kind", "sort", "recommendation", "technique", "advice"}),
    ),
    ("again", (frozenset({"you"}), frozenset({"broke", "garbled"}), frozenset({"up", "garbled"})), _UNHEARD),
    ("again", (frozenset({"again"}), _AS_SAID), _UNHEARD | {"me"}),
    ("again", (frozenset({"again", "repeat", "once"}), frozenset({"again", "repeat", "more"})), _HEARD_AGAIN),
)
"""(control, sets of words of each of which the turn holds one, words that it may hold besides)."""
_ONE_OF_SEVERAL = _RULES | _LISTS | (_PARTIES - _DOCUMENTS)
"""What is named in the plural as well: "whose figures are these"."""
_MOST_WORDS, _FAR = 10, 100
_WELL = frozenset({"all", "well"})


def control_by_words(text: str, told: frozenset[str] = frozenset()) -> str:
    """Return the control that a short turn is by its words alone, or "": it says nothing else.

    told: words for what was told last, of which a source may be asked: "where's the factor written".
    """
    if len(text) >= _FAR or re.search(r"\d", text):
        return ""
    words = {_singular(w) for w in words_said(text)}
    if not words or len(words) > _MOST_WORDS:
        return ""
    if _WELL.issubset(words):
        return ""  # "now all is well again" tells how it is
    if well_again(plain := plain_words(text)):
        return ""
    if situation_new(plain):
        return "disregard"
    if _asks_from_where(text):
        return ""
    written = _WRITTEN & words or ("you" in words and _GOT & words)
    told = told if written and "where" in words else frozenset()
    rest = words.difference(_POLITE, _POINTING, _TELLING, told)
    for name, needed, besides in _BY_WORDS:
        if words.isdisjoint(needed[0]):
            continue  # most are ruled out by this alone
        if not any(words.isdisjoint(part) for part in needed) and not rest.difference(besides, *needed):
            return name
    return ""


def _asks_from_where(text: str) -> bool:
    """Return whether it is asked from where to where something goes, between which ends, or what feeds it."""
    if "wh" not in text.lower():
        return False
    if re.search(r"\bto where\b|\bto what\b", text, re.IGNORECASE):
        return True
    return re.search(r"\bwhere\b.{0,7} it gets?\b", text, re.IGNORECASE) is not None


def _singular(word: str) -> str:
    """Return the one of several rules or figures."""
    if word == "whereabouts":
        return "where"
    return word[:-1] if word[:-1] in _ONE_OF_SEVERAL else word
