"""What a question says besides what it asks: who asks, from where a reading comes, what is not to be counted.

Such words narrow nothing. A name of another subject or a word that is not known bars no answer where it only says
that an old hand asks, that a display gave the reading, or what is left out of account.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.understanding.clauses import STOPS
from assistant.understanding.meant import SAYING

_ARTICLES = frozenset(("the", "my", "our", "your", "a", "an", "any", "this", "that"))
PERSONS = frozenset({
    "pilot", "pilots", "captain", "skipper", "officer", "engineer", "mechanic", "wrench", "cadet", "trainee", "student",
    "instructor", "examiner", "manager", "passenger", "driver", "dispatcher", "controller", "candidate", "fitter",
    "technician", "newcomer", "beginner", "novice", "veteran", "learner", "man", "woman", "guy", "expert", "inspector",
    "auditor", "lawyer", "journalist", "director", "hand", "fan", "member", "boss", "chief", "head", "trainer",
    "teacher", "professor", "marshaller", "loader", "attendant", "operator", "owner", "regulator", "starter", "rookie",
    "retiree", "spotter", "joiner", "commander", "assistant", "designer", "fireman", "firefighter", "person", "friend",
    "colleague", "mate", "buddy", "uncle", "neighbour", "wife", "husband", "flatmate", "brother", "sister", "cousin",
})  # fmt: skip
"""What somebody may be who asks, or is told to answer as one."""
_QUOTING = SAYING - {"keeps", "heard", "maintains"} | {
    "texted", "mailed", "emailed", "announced", "promised", "assured", "assures", "confirmed", "taught",
}  # fmt: skip
"""What somebody does who is quoted."""
_SUPPOSING = frozenset(("pretend", "imagine", "suppose", "supposing", "assume", "assuming", "say", "let"))
_BOOKS = frozenset({
    "revision", "rev", "manual", "book", "issue", "edition", "amendment", "bulletin", "document", "limitations", "page",
    "chapter", "handbook", "checklist",
})  # fmt: skip
_STATING = frozenset({
    "says", "said", "puts", "lets", "has", "allows", "sets", "gives", "raises", "raised", "makes", "reads", "states",
    "permits", "lowers", "changes", "changed", "moves", "moved",
})  # fmt: skip
_OPENINGS = (("as",), ("i", "am"), ("you", "are"), ("you", "act", "as"), ("act", "as"))
_OPENING = frozenset(first for first, *_ in _OPENINGS)
_NOT_A_ROLE = frozenset(("now", "just", "both", "still", "only", "also"))
_FURTHEST, _LONGEST = 9, 6
"""Words before a role is named, and words of one."""

_DISPLAYS = frozenset(("fms", "mcdu", "hud", "gps", "ecam", "eicas", "pfd", "efis", "papi", "simulator", "tablet"))
_SHOWING = frozenset({
    "has", "shows", "says", "reads", "gives", "puts", "showing", "saying", "reading", "indicates", "tells", "me", "us",
    "you", "at", "is", "now", "currently", "indicating", "got", "about", "exactly",
})  # fmt: skip
_BEFORE_SOURCE = frozenset(("on", "by", "per", "from", "to"))
_LEAVING_OUT = frozenset(("ignore", "ignoring", "excluding", "neglecting", "neglect", "discounting"))
_MEANWHILE = frozenset(("while", "whilst"))
_CONSUMING = frozenset({
    "fetch", "get", "grab", "have", "drink", "eat", "buy", "sip", "finish", "enjoy", "make", "order", "pour", "go",
    "pop", "nip", "fetching", "getting", "grabbing", "having", "drinking", "eating", "buying", "sipping", "finishing",
    "brew", "brewing", "going", "popping", "queue", "has",
})  # fmt: skip
"""What somebody does besides, while what is asked about goes on."""
_SWALLOWING = frozenset({
    "fetch", "grab", "drink", "eat", "sip", "fetching", "grabbing", "drinking", "eating", "sipping", "drinks", "eats",
})  # fmt: skip
"""Verbs of these that nothing of an aeroplane goes with: what they take need be no name."""
_WITHIN = 7
_NOTED = frozenset(("ok", "okay", "fine", "alright", "right", "good", "great", "sure"))
_GOING_ON = frozenset({
    ",", ".", "!", ";", "-", "then", "so", "now", "and", "but", "well", "what", "which", "how", "where", "who", "whats",
    "tell", "give", "next", "let", "also", "one",
})  # fmt: skip
"""Words after one that takes note, with which something else begins; "ok to go" and "fine at 240" ask."""
_BESIDES = frozenset(("besides", "beside", "except", "excepting", "beyond", "barring"))
_APART_FROM = frozenset((("apart", "from"), ("aside", "from"), ("other", "than"), ("addition", "to"), ("top", "of")))
_CLAUSES = frozenset(("when", "if", "with", "what", "which", "how", "after", "once", "do", "does", "is", "are", "have"))
"""Words with which something else begins than what is named besides."""
_COURTESY = frozenset(("please", "and", "but", "so", "just", "also"))


def acknowledges(words: list[str], at: int) -> bool:
    """Return whether a first word only takes note of what was said: "| ok |, wheelbase", "| fine | then, what …"."""
    return at == 0 and words[0] in _NOTED and words[1:2] != [] and words[1] in _GOING_ON


def speaker(words: list[str]) -> int:
    """Return where what a speaker is begins, who says it before asking: "I am the | fleet manager and …"; else -1."""
    for i in range(min(5, len(words) - 3)):
        if words[i] == "i" and words[i + 1] == "am" and words[i + 2] in _ARTICLES:
            return i + 3
    return -1


def role(words: list[str]) -> range:
    """Return the words of what somebody is who asks or shall answer: "as | an old hand |, …"."""
    for i in (k for k, word in enumerate(words[:_FURTHEST]) if word in _OPENING):
        opening = next((o for o in _OPENINGS if tuple(words[i : i + len(o)]) == o), ())
        start = i + len(opening)
        while opening and start < len(words) and words[start] in _NOT_A_ROLE:
            start += 1
        named = words[start : start + 1] and (words[start] in _ARTICLES or (opening == ("as",) and i == 0))
        if not opening or not named:
            continue
        last = start
        for k in range(start + 1, min(len(words), start + _LONGEST)):
            if words[k] in STOPS or words[k] in ("i", "we", "you"):
                break
            last = k if words[k] in PERSONS else last
        if last > start:
            return range(start, last + 1)
    return range(0)


def quoted(words: list[str]) -> range:
    """Return the words of who is quoted: "| the chief pilot | wrote to me that …"."""
    for verb in range(2, min(_FURTHEST, len(words))):
        if words[verb] not in _QUOTING:
            continue
        last = verb - 1 - (words[verb - 1] in _NOT_A_ROLE or words[verb - 1] == "has")
        first = next((k for k in range(last, max(-1, last - _LONGEST), -1) if words[k] in _ARTICLES), last)
        opens = first == 0 or words[first - 1] in STOPS or words[first - 1] in _COURTESY
        return range(first, last + 1) if opens and first < last and words[last] in PERSONS else range(0)
    return range(0)


def supposed(words: list[str]) -> range:
    """Return the words of a document that is only supposed to say something: "pretend | the new revision says |"."""
    if not words or words[0] not in _SUPPOSING:
        return range(0)
    for verb in range(2, min(_FURTHEST, len(words))):
        before = [w for w in words[1:verb] if w not in _ARTICLES and w not in ("that", "the")]
        if words[verb] in _STATING and before and before[-1] in _BOOKS:
            return range(verb + 1)
    return range(0)


def left_out(words: list[str]) -> frozenset[int]:
    """Return the words of what a question leaves out of account: "ignore | the two minute pause |"."""
    found: list[int] = []
    for i, word in enumerate(words):
        start = i - 1 if word == "counting" and words[i - 1 : i] == ["not"] else i
        if word not in _LEAVING_OUT and start == i:
            continue
        before = next((w for w in reversed(words[:start]) if w not in _COURTESY), "")
        if before[:1].isalnum():
            continue  # "may we ignore the caution" asks for just that
        for k in range(i + 1, len(words)):
            if words[k] in STOPS or words[k] in ("and", "but"):
                break
            found.append(k)
    return frozenset(found)


def scolds(words: list[str], at: int) -> bool:
    """Return whether a clause of its own speaks to who answers: "…, or | you are useless |"."""
    ends = at > 0 and (words[at - 1] in STOPS or words[at - 1] in ("or", "and", "else", "so"))
    return ends and words[at : at + 2] == ["you", "are"]


def meanwhile(words: list[str], at: int, named: bool) -> bool:
    """Return whether what stands at a place is only had besides: "may it stay set | while I fetch a coffee |".

    named: whether it is the name of another subject.
    """
    first = max(0, at - _WITHIN)
    start = next((k for k in range(at - 1, first - 1, -1) if words[k] in _MEANWHILE), 0)
    verbs = _CONSUMING if named else _SWALLOWING
    return start > 0 and not verbs.isdisjoint(words[start + 1 : at + 1])


def set_aside(words: list[str], at: int) -> bool:
    """Return whether what stands at a place is named as not asked for: "what does it cost me besides | time"."""
    before = [word for word in words[max(0, at - 3) : at] if word not in _ARTICLES]
    return before[-1:] == ["besides"] or before[-2:] in (["apart", "from"], ["aside", "from"], ["other", "than"])


_SPEEDS = frozenset(("speed", "speeds"))


def besides(words: Sequence[str]) -> frozenset[int]:
    """Return the words of what is only named as known: "what else do I lose, apart from | the powered gear |"."""
    found: set[int] = set()
    for i, word in enumerate(words):
        opens = word in _BESIDES or tuple(words[i - 1 : i + 1]) in _APART_FROM
        if opens and i:
            end = next((k for k in range(i + 1, len(words)) if words[k] in STOPS or words[k] in _CLAUSES), len(words))
            found.update(range(i + 1, end))
    return frozenset(found)


def gives_reading(words: list[str], at: int, free: Sequence[bool]) -> bool:
    """Return whether the word at a place is a display that a reading comes from: "the | FMS | has me at Mach 0.61".

    free: which words belong to no amount.
    """
    if words[at] not in _DISPLAYS:
        return False
    before = [w for w in words[max(0, at - 2) : at] if w not in _ARTICLES]
    if before[-1:] and before[-1] in _BEFORE_SOURCE and not all(free[:at]):
        return True
    k = at + 1
    while k < len(words) and words[k] in _SHOWING and free[k]:
        k += 1
    return at + 1 < k < len(words) and not free[k]


def gives_speed(words: Sequence[str], end: int, free: Sequence[bool]) -> bool:
    """Return whether a name that ends before a place only says of which kind a speed is that is given behind it: "the
    | rotate speed | is 155 knots CAS".

    free: which words belong to no amount.
    """
    at = end + (words[end : end + 1] in (["is"], ["of"], ["="], [":"]))
    return words[end - 1] in _SPEEDS and at < len(words) and not free[at]
