"""What a recogniser writes, as people type it and as it is said: letters and figures, hyphens, and sounds of doubt.

Only the writing is changed here, never what was heard: which word was meant is for the knowledge.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from assistant.quantities.show import number_words
from assistant.quantities.tokens import words_of

_FIGURES = re.compile(r"(?<![\w.-])\d(?:(?:[-–]|, | )\d){1,3}(?![\w-]|\.\d)")
_LETTERS = re.compile(r"(?<![\w-])(?:[A-Za-z][-–.]){1,3}[A-Za-z](?![\w-])\.?")
_DOUBT = re.compile(r"(?<![\w-])(?:u+[hm]+|e+r+m*|h+m+)(?![\w-])[,.]*\s*", re.IGNORECASE)
_HYPHEN = re.compile(r"(?<=[^\W\d_])[-–](?=[^\W\d_])|(?<=\d)[-–](?=[^\W\d_])|(?<=[^\W\d_])[-–](?=\d)")
_STOPS = re.compile(r"(?<!\d)[,.;:!?]+(?=\s)|(?<=\d)[.;:!?]+(?=\s)|(?<=\d),(?=\s+[^\d\s])")
"""Stops inside what was said, which a recogniser sets as it likes; a comma between two numbers keeps them apart."""
_SPELT = {"tons": "tonnes", "ton": "tonne", "meter": "metre", "meters": "metres", "ok": "okay"}
"""Words as a recogniser spells them, and as they are meant here."""
_SPELT_WORD = re.compile(rf"\b(?:{'|'.join(_SPELT)})\b", re.IGNORECASE)
_MISHEARD = re.compile(r"\bhow on\b(?! earth)", re.IGNORECASE)
_WITHOUT = re.compile(r"\b(?:in|on|am) without(?=[.?! ]*$)", re.IGNORECASE)
"""How "I'm without" is written at an end."""
_HUNDREDS = re.compile(r"(?<![\d.,])(?<!between )([1-9]00) and ([1-9]\d?)(?![\d.,]*\d)")
_WHOLE_HUNDREDS = re.compile(r"(?<![\d.,])([1-9]\d?) hundred(?: and ([1-9]\d?))?\b(?![\d.,]*\d)")
_TEENS = re.compile(r"(?<![\d.,])([3-9])0 (?=hundred\b)")
_ORDINAL = re.compile(r"(?<![\d.,])(\d+)th(?= (?:degrees?|knots?)\b)")
"""A number whose parts are written one after the other; a teen written as a ten, of which there are no hundreds; and an
ordinal where one is counted in units."""
_SIGNS = str.maketrans({"…": " ", "*": " ", "[": " ", "]": " ", "(": " ", ")": " ", "“": " ", "”": " ", '"': " "})


def plainly(text: str) -> str:
    """Return what was heard in plain writing: "1-8-0" as one number, "V-L-E" as letters, without stops inside."""
    said = _DOUBT.sub("", once(text).translate(_SIGNS))
    said = _LETTERS.sub(lambda match: " ".join(letter for letter in match[0] if letter.isalpha()), said)
    said = _FIGURES.sub(lambda match: "".join(figure for figure in match[0] if figure.isdigit()), said)
    said = _WITHOUT.sub("I'm without", _MISHEARD.sub("how long", _whole_numbers(said)))
    said = _SPELT_WORD.sub(lambda match: _SPELT[match[0].lower()], _STOPS.sub("", _HYPHEN.sub(" ", said)))
    return " ".join(said.split()).rstrip(",;: ")


def _whole_numbers(text: str) -> str:
    """Return a text with "400 and 20" as one number, and "30 hundred" as the thirteen hundred that sound so."""
    whole = _HUNDREDS.sub(lambda match: str(int(match[1]) + int(match[2])), text)
    whole = _TEENS.sub(lambda match: f"1{match[1]} ", whole)
    whole = _WHOLE_HUNDREDS.sub(lambda match: str(100 * int(match[1]) + int(match[2] or 0)), whole)
    return _ORDINAL.sub(r"\1", whole)


def once(text: str) -> str:
    """Return a text without its repetition: a recogniser that has sound left at the end says it all again."""
    words = text.split()
    plain = bare_words(words)
    for size in range(1, len(words) // 2 + 1):
        rest = plain[size:]
        again = all(word == plain[i % size] for i, word in enumerate(rest[:-1]))
        if again and plain[(len(rest) - 1) % size].startswith(rest[-1]):  # the last word may be cut short
            return " ".join(words[:size])
    return text


def goes_round(text: str) -> bool:
    """Return whether a recogniser has lost its way in a text: it says several words three times in a row."""
    words = bare_words(text.split())
    for size in range(2, len(words) // 3 + 1):
        for start in range(len(words) - 3 * size + 1):
            piece = words[start : start + size]
            if all(words[start + n * size : start + (n + 1) * size] == piece for n in (1, 2)):
                return True
    return False


def said_words(text: str) -> list[str]:
    """Return the words of a text in lower case as they are said, its figures in words."""
    found: list[str] = []
    for word in words_of(text):
        figures = word.replace(",", "")
        if word.replace("'", "").isalpha():
            found.append(word)
        elif figures.replace(".", "", 1).isdigit():
            found += number_words(float(figures)).replace("-", " ").split()
    return found


def bare_words(words: Iterable[str]) -> list[str]:
    """Return words in lower case without the stops around them."""
    return [word.strip(".,?!").lower() for word in words]
