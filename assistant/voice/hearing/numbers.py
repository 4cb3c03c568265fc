"""Numbers in what was heard: where they stand, and which others sound almost like them."""

from __future__ import annotations

import re

from assistant.quantities.numbers import STARTERS

_FIGURES = re.compile(r"(?<![^\W_])[-−]?\d[\d,]*(?:\.\d+)?")
_WORD = re.compile(r"[^\W\d_]+")
_TEEN = re.compile(r"(?<![\d.,])(\d*)(?:1([3-9])|([3-9])0)(?![\d.,]*\d)")
_SOUNDS_LIKE = {"to": "2", "too": "2", "tube": "2", "won": "1", "wan": "1", "for": "4", "tree": "3"}
_AFTER_NAME = re.compile(
    rf"\b(systems?|hydraulics?|hyd|number|code|brake|break)[ ,]+({'|'.join(_SOUNDS_LIKE)})\b", re.IGNORECASE
)
_LETTERED = re.compile(
    r"((?<![\d.,])(?:\d,?\d{3}|\d{3})|\bhow many) (?:side|sigh|sign|site|sight)\b", re.IGNORECASE
)
_ONES = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine")
_TENS_APART = re.compile(rf"(?<![\d.,])([2-9])0,? ([1-9]|{'|'.join(_ONES)})\b(?![.,]?\d)", re.IGNORECASE)
_HUNDREDS_APART = re.compile(rf"(?<![\d.,-])([1-9]|{'|'.join(_ONES)})[-. ]([1-9]\d)\b(?![.,-]?\d)", re.IGNORECASE)
_DOUBLED = re.compile(r"(?<![\d.,])(\d{1,2}) double (\d)\b")
"""Numbers whose parts are written apart: "40, 8 tonnes", "3.20 °C" and "one 85" for hundreds, "16 double 0"."""
_NO_NUMBERS = frozenset({"a", "an", "o", "oh", "and"})


_AS_FIGURE = {word: str(i) for i, word in enumerate(("zero", *_ONES))} | {"oh": "0"}
_ONE_FIGURE = re.compile(rf"\d|{'|'.join(_AS_FIGURE)}")
_FIGURE = f"(?:{_ONE_FIGURE.pattern})"
_ONE_BY_ONE = re.compile(
    rf"(?:[a-z']+[ ,.]+){{0,2}}?({_FIGURE}(?:[-–.,\s]+{_FIGURE})+)(?:[-,.\s]+[a-z%]+){{0,2}}[-,.\s]*"
)
"""A number said figure by figure, with a word or two before it or after it."""


def numbered(text: str) -> str:
    """Return the text with a word that sounds like a figure as that figure, where a name has one: "system to".

    So with letters that a recogniser writes as a word after a large number, or where one is asked for: "1,400 side";
    and with a number whose parts are written apart: "40, 8 tonnes".
    """
    figures = _AFTER_NAME.sub(lambda match: f"{match[1]} {_SOUNDS_LIKE[match[2].lower()]}", text)
    whole = _TENS_APART.sub(lambda match: f"{match[1]}{_figure(match[2].lower())}", figures)
    whole = _HUNDREDS_APART.sub(lambda match: f"{_figure(match[1].lower())}{match[2]}", whole)
    whole = _DOUBLED.sub(r"\1\2\2", whole)
    return _LETTERED.sub(r"\1 psi", whole)


def figures_told(text: str) -> str:
    """Return the figures of a short turn that says a number one figure after the other, "" for any other.

    Heard so, "one five" is no "fifty". A recogniser writes it in many ways: "1, 5, not", "1-5 knots", "five zero".
    """
    match = _ONE_BY_ONE.fullmatch(text.lower().strip())
    told = "".join(_AS_FIGURE.get(each, each) for each in _ONE_FIGURE.findall(match[1])) if match else ""
    half = len(told) // 2
    return told[:half] if half > 1 and told == 2 * told[:half] else told


def _figure(word: str) -> str:
    return str(_ONES.index(word) + 1) if word in _ONES else word


def number_places(text: str) -> list[tuple[int, int]]:
    """Return where the figures and the number words of a text stand."""
    places = [match.span() for match in _FIGURES.finditer(text)]
    places += [m.span() for m in _WORD.finditer(text) if m[0].lower() in STARTERS and m[0].lower() not in _NO_NUMBERS]
    return sorted(places)


def other_numbers(text: str) -> list[str]:
    """Return the text with each number that ends like "fifteen" or "fifty" as the other of the two, one at a time."""
    found = []
    for match in _TEEN.finditer(text):
        before, teen, ten = match.groups()
        other = f"{before}{teen}0" if teen else f"{before}1{ten}"
        found.append(f"{text[: match.start()]}{other}{text[match.end() :]}")
    return found[:2]
