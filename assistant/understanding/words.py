"""Bring the forms of a word together, so that one name in the language files serves all its inflections.

The stem is no linguist's: it only has to be the same for a name and for the word in a question, cheap, and
never the same for two words that the trade keeps apart.
"""

from __future__ import annotations

from functools import lru_cache

_VOWELS = frozenset("aeiouy")

# Contractions say a negation or an auxiliary that conditions depend on; the rest is left as it is.
_CONTRACTED = {
    "can't": ("can", "not"), "cannot": ("can", "not"), "won't": ("will", "not"), "shan't": ("shall", "not"),
    "dont": ("do", "not"), "doesnt": ("does", "not"), "isnt": ("is", "not"), "arent": ("are", "not"),
    "cant": ("can", "not"), "wont": ("will", "not"), "didnt": ("did", "not"), "wouldnt": ("would", "not"),
    "couldnt": ("could", "not"), "hasnt": ("has", "not"), "wasnt": ("was", "not"), "havent": ("have", "not"),
    "whats": ("what", "is"), "wheres": ("where", "is"), "whos": ("who", "is"), "hows": ("how", "is"),
    "whens": ("when", "is"), "thats": ("that", "is"), "im": ("i", "am"), "ive": ("i", "have"),
    "weve": ("we", "have"), "youre": ("you", "are"), "theres": ("there", "is"), "gonna": ("going", "to"),
    "wanna": ("want", "to"), "gotta": ("have", "to"), "wat": ("what",), "wats": ("what", "is"),
    "w": ("with",), "gnd": ("ground",), "wot": ("what",), "wots": ("what", "is"), "whatis": ("what", "is"),
    "shouldnt": ("should", "not"), "werent": ("were", "not"), "hadnt": ("had", "not"), "mustnt": ("must", "not"),
    "dosent": ("does", "not"), "dosnt": ("does", "not"), "doesent": ("does", "not"), "dident": ("did", "not"),
    "wasent": ("was", "not"), "isent": ("is", "not"),
    "n't": ("not",), "ain't": ("is", "not"), "its": ("it", "is"),
}  # fmt: skip
_TAILS = {"s": "is", "re": "are", "ve": "have", "m": "am", "d": "would", "ll": "will"}

_IRREGULAR = {
    "lost": "lose", "loss": "lose", "losses": "lose", "held": "hold", "gone": "go", "goes": "go", "went": "go",
    "kept": "keep", "worn": "wear", "shown": "show", "flown": "fly", "flies": "fly", "fallen": "fall",
    "fell": "fall", "stuck": "stick", "dying": "die", "feet": "foot", "broken": "break", "broke": "break",
    "blown": "blow", "blew": "blow", "given": "give", "gave": "give", "taken": "take", "took": "take",
    "came": "come", "said": "say", "lit": "light", "sent": "send", "driven": "drive", "drove": "drive",
    "bled": "bleed", "ran": "run", "spun": "spin", "does": "do", "did": "do", "done": "do", "using": "use",
    "uses": "use", "used": "use", "has": "have", "had": "have", "tires": "tyre", "tire": "tyre", "centre": "center",
    "centred": "center", "centring": "center", "centres": "center",
}  # fmt: skip

# Words whose ending is no inflection, or whose inflection is a thing of its own.
_WHOLE = frozenset({
    "speed", "need", "red", "bleed", "exceed", "during", "setting", "reading", "housing", "heading", "is", "was",
    "this", "gas", "its", "us", "bus", "less", "loss", "across", "always", "pass", "press", "axis", "indeed", "thing",
    "mine", "anything", "nothing", "something", "everything", "string", "spring",
})  # fmt: skip


def expand(text: str) -> tuple[str, ...]:
    """Return the words that a contraction stands for, or the word itself."""
    known = _CONTRACTED.get(text)
    if known:
        return known
    if "'" not in text:
        return (text,)
    head, _, tail = text.partition("'")
    if tail == "t" and head.endswith("n"):
        return (head[:-1], "not")
    if tail in _TAILS and head:
        # "captain's tiller" and "what's" are written alike; the verb is filler, so nothing is lost by it.
        return (head, _TAILS[tail])
    return (head + tail,)


@lru_cache(maxsize=8192)
def stem(word: str) -> str:
    """Return the form under which all inflections of a word are compared."""
    return word if word in _WHOLE else _cut(_IRREGULAR.get(word, word))


def _cut(word: str) -> str:
    if len(word) < 4 or not word.isascii() or word in _WHOLE:
        return word
    if len(word) > 4 and word.endswith(("ies", "ied")):
        return word[:-3] + "y"
    for ending in ("ing", "ed", "es", "s"):
        if word.endswith(ending) and _may_cut(word[: -len(ending)], ending):
            word = _undoubled(word[: -len(ending)], ending)
            break
    if word in _WHOLE:
        return word
    if len(word) > 3 and word[-1] in "iy":
        return word[:-1] + "y"
    return word[:-1] if len(word) > 3 and word.endswith("e") else word


def _may_cut(rest: str, ending: str) -> bool:
    if len(rest) < 3 or not _VOWELS.intersection(rest):
        return False
    if ending == "es":
        return rest.endswith(("ss", "x", "z", "ch", "sh"))
    if ending == "s":
        return rest[-1] not in "su" and not rest.endswith("i")
    return not (ending == "ed" and rest.endswith("e"))


def _undoubled(word: str, ending: str) -> str:
    doubled = ending in ("ing", "ed") and len(word) > 3 and word[-1] == word[-2]
    return word[:-1] if doubled and word[-1] not in "lsz" else word
