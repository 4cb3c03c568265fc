"""Slips of the keys in the names that a question and its full answer hold: "ani-skid", "revers trust", "free-fal".

The reader mends single words that nothing knows. Of a name of two words one is enough to know it by, so that the other
may be a short word, or another one that is spelled nearly alike, as long as it names nothing.
"""

from __future__ import annotations

import re
from itertools import pairwise

from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.contraries import OTHER
from assistant.practice.marking.reading.said import plain
from assistant.practice.marking.reading.wording import NEGATORS
from assistant.resolving.knowing import Knowledge
from assistant.understanding.spelling import apart

_SHORTEST = 3


def without_slips(answer: str, need: Need, know: Knowledge) -> str:
    """Return an answer with the names of a question and its full answer spelled as they are."""
    words = [(m.group().lower(), m.span()) for m in _WORD.finditer(answer)]
    named = _names(need.question.text, need.expected, know) if len(words) > 1 else ()
    made = answer
    for (one, here), (two, there) in reversed(list(pairwise(words))) if named else ():
        if answer[here[1] : there[0]] not in _BETWEEN or (one, two) in named:
            continue
        for first, second in named:
            if two == second and _is_slip(one, first, know):
                made = made[: here[0]] + first + made[here[1] :]
                break
            if one == first and _is_slip(two, second, know):
                made = made[: there[0]] + second + made[there[1] :]
                break
    return made


def without_shortenings(answer: str, need: Need, know: Knowledge) -> str:
    """Return an answer with the capitals that shorten one name of a question alone as that name: "EMER", "A-BRK"."""
    found = _CAPITALS.findall(answer)
    if not found or not any(c.islower() for c in need.question.text):
        return answer
    told = f"{need.question.text} {need.expected}"
    names = {w.lower(): w for w in sorted(_NAME.findall(told), reverse=True) if len(w) >= _LONG}  # capitals win
    for short in dict.fromkeys(found):
        letters = short.lower().replace("-", "").replace("/", "")
        meant = [as_is for name, as_is in names.items() if _shortens(letters, name.replace("-", ""))]
        if len(meant) == 1 and not _is_named(short, meant[0], need, know):
            answer = re.sub(rf"(?<![\w/-]){re.escape(short)}(?![\w/-])", meant[0], answer)
    return answer


_CAPITALS = re.compile(r"(?<![\w/-])(?:[A-Z]{3,}|[A-Z][-/][A-Z]{3,})(?![\w/-])")
_NAME = re.compile(r"[A-Za-z]+(?:-[a-z]+)?")
_LONG = 6


def _shortens(letters: str, name: str) -> bool:
    """Return whether letters are the beginning of a name, or its first letter and consonants of it in their order."""
    if len(letters) >= len(name) or letters[0] != name[0]:
        return False
    rest = iter(name[1:])
    skeleton = _VOWELS.isdisjoint(letters[1:]) and all(letter in rest for letter in letters[1:])
    return skeleton or name.startswith(letters)


_VOWELS = frozenset("aeiou")


def _is_named(short: str, name: str, need: Need, know: Knowledge) -> bool:
    """Return whether capitals are the name of another thing of what is asked for: all of them, and of no such sense."""
    reading = know.phrase(short)
    own = (need.question.concepts | need.said) - know.phrase(name).concepts
    here = [m for m in reading.mentions if len(m.taken) == len(reading.words)]
    return any(m.concepts <= own for m in here if m.concepts)


_WORD = re.compile(r"[A-Za-z]+")
_BETWEEN = (" ", "-")


def _is_slip(word: str, meant: str, know: Knowledge) -> bool:
    """Return whether a word is one letter off what is meant, and names nothing itself."""
    if len(word) < _SHORTEST or word in NEGATORS or plain(word) in OTHER or plain(word) == plain(meant):
        return False
    if apart(word, meant) != 1:
        return False
    return not any(c[0] != "~" for m in know.phrase(word).mentions for c in m.concepts)


def _names(question: str, expected: str, know: Knowledge) -> tuple[tuple[str, str], ...]:
    """Return the pairs of words that stand together in the names of two texts."""
    readings = (know.phrase(question), know.phrase(expected))
    named = (each.words[m.start : m.end] for each in readings for m in each.mentions if m.end - m.start > 1)
    return tuple(dict.fromkeys(pair for words in named for pair in pairwise(words) if _is_spelled(pair)))


def _is_spelled(pair: tuple[str, str]) -> bool:
    return all(len(word) > _SHORTEST - 1 and word.isalpha() for word in pair)
