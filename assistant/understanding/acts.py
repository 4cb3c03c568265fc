"""What a question asks to do: the verb after "how do I", "how to", "can I", "what happens if I".

It says what is asked as much as any thing does: how lamps are tested is not what they mean. Most verbs are ordinary
words, which would narrow nothing elsewhere in a question.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from assistant.understanding.words import stem

_SUBJECTS = frozenset({
    "i", "we", "you", "they", "he", "she", "pilot", "pilots", "crew", "captain", "somebody", "someone",
})  # fmt: skip
_ARTICLES = frozenset(("the", "a", "my", "our", "both"))
_HELPING = frozenset({
    "do", "does", "did", "can", "could", "should", "would", "shall", "must", "may", "will", "might",
})  # fmt: skip
_THEN = frozenset(("what", "will", "would"))
_SUPPOSING = frozenset(("if", "when"))
_BETWEEN = frozenset({
    "just", "still", "ever", "even", "actually", "also", "safely", "then", "now", "not", "only", "really", "simply",
    "first", "best", "properly", "both", "always", "accidentally", "all", "already", "please", "quickly", "manually",
    "normally",
})  # fmt: skip
_DONE_IN_LY = frozenset({
    "fly", "apply", "multiply", "supply", "rely", "reply", "comply", "imply", "tally", "rally", "ally",
})  # fmt: skip
"""Verbs that end as adverbs do."""
_BEFORE_TO = frozenset(("have", "need", "want", "going", "got", "able", "supposed", "allowed", "like", "try", "ought"))
"""Words between who does something and what is done: "what do I | have to | say"."""
_NO_ACTS = frozenset({
    "do", "does", "did", "done", "have", "has", "had", "be", "am", "is", "are", "was", "were", "been", "being", "can",
    "could", "should", "would", "shall", "must", "may", "will", "might", "not",
})  # fmt: skip
_ANY_ACT = frozenset({
    "get", "got", "go", "use", "know", "tell", "find", "see", "make", "take", "need", "want", "expect", "look", "work",
    "give", "handle", "deal", "tackle", "treat", "fix", "cure", "clear", "react", "respond", "cope", "proceed", "come",
    "end", "figure", "remember", "calculate", "compute", "estimate", "check", "read", "understand", "ensure", "avoid",
    "prevent", "decide", "choose", "pick", "put", "set", "keep", "let", "lose", "happen", "call", "think", "consider",
    "plan", "notice", "spot", "recognise", "recognize", "confirm", "verify", "mean", "count", "distinguish", "identify",
    "allow", "carry", "perform", "follow", "manage", "obtain", "reach", "achieve", "describe", "explain", "run",
    "leave", "start", "begin", "finish", "continue", "try", "turn", "accept", "agree", "worry", "intend", "believe",
    "bring", "add", "return", "stay", "reset", "respect", "apply", "move", "act", "sort", "stop", "help", "learn",
    "hear", "watch", "remove", "trust", "rely", "ask", "say", "show", "mention", "brief", "ring", "reduce", "double",
    "share", "recover", "flick", "cycle", "recycle", "halve", "triple", "quadruple", "increase", "raise", "lower",
})  # fmt: skip
"""Verbs that say nothing of what is done, or nothing that a record would not tell in another word."""
_SAID_TO = ("say", "to")
"""A verb of which it is asked what: "what do I | say to | the ground crew"."""


def acts_asked(words: Sequence[str]) -> Iterator[int]:
    """Yield where the verbs stand of what a question asks to do."""
    for i in range(len(words)):
        at = _past_between(words, _after_who(words, i))
        if 0 < at < len(words) and words[at].isalpha() and words[at] not in _NO_ACTS:
            yield at


def says_an_act(words: Sequence[str], at: int) -> bool:
    """Return whether a verb says what is done, so that what answers must know of it."""
    any_act = words[at] in _ANY_ACT or stem(words[at]) in _ANY_ACT
    return not any_act or tuple(words[at : at + 2]) == _SAID_TO


def supposes_an_act(words: Sequence[str]) -> bool:
    """Return whether it is asked what comes of something that somebody might do: "what happens if I …"."""
    supposing = (i for i in range(len(words) - 1) if words[i] in _SUPPOSING and words[i + 1] in _SUBJECTS)
    first = next(supposing, 0)
    return words[first - 2 : first - 1] == ("what",) and words[first - 1].startswith("happen")


def supposed_from(words: Sequence[str]) -> int:
    """Return where that begins of which it is asked what happens then: "what happens | if the lever snaps"; else 0."""
    return next(
        (
            i
            for i in range(2, len(words) - 1)
            if words[i] in _SUPPOSING and words[i - 1].startswith("happen") and words[i - 2] in _THEN
        ),
        0,
    )


def _past_between(words: Sequence[str], at: int) -> int:
    """Return the place past the words that may stand between who does something and what is done."""
    while 0 < at < len(words):
        if words[at] in _BETWEEN or (words[at].endswith("ly") and words[at] not in _DONE_IN_LY):
            at += 1  # "would you | kindly | tell me"
        elif words[at] in _BEFORE_TO and words[at + 1 : at + 2] == ("to",):
            at += 2
        else:
            break
    return at


def _after_who(words: Sequence[str], at: int) -> int:
    """Return the place after who is asked to do something, where that begins at a place; else 0."""
    if words[at] == "how" and words[at + 1 : at + 2] == ("to",):
        return at + 2
    supposed = words[at] in _SUPPOSING and any(w.startswith("happen") for w in words)
    if words[at] not in _HELPING and not supposed:
        return 0
    who = at + 1
    while who < len(words) and words[who] in _ARTICLES:
        who += 1
    end = who
    while end < len(words) and words[end] in _SUBJECTS:
        end += 1
    return end if end > who else 0
