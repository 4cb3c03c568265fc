"""What a listener need not hear twice, and what must be heard beside what it belongs to."""

from __future__ import annotations

import re

_CASE = "With "
"""How the sentence begins that opens another case, of which what was said of the one before may be so as well."""
_OTHERS = r"On the [^:]*?(?::| the limit is| it is| that is) \S"
"""How a sentence begins that tells a figure of another variant."""
_FORMER = "Formerly "
_NAMED_TWICE = r"(?<=[\w°%²³]) ([a-z]+(?: [a-z]+)+): (?=\1\b)"
"""A kind of amount that is told with the amount, and again in the name that follows."""
_ABOUT_BEHIND = r"(?:(?<=^)|(?<=\. ))(\d[^:.]*: (?:[^.;]|\.\d)*?), about(?=[,.;(]| \()"
"""A figure that is told to be rough only behind what it is of."""


def sentences_of(text: str) -> list[str]:
    """Return the sentences of a text, each with its stop."""
    return re.split(r"(?<=[.?!]) +", text)


def each_once(text: str) -> str:
    """A sentence that was said of a case is not said of it again, nor is what to use that was told to be all."""
    found: list[str] = []
    said: set[str] = set()
    for sentence in sentences_of(text):
        if sentence.startswith(_CASE) and sentence not in found:
            said = set()
        if sentence not in said and not _all_there_is(sentence, found):
            found.append(sentence)
            said.add(sentence)
    return " ".join(found)


def _all_there_is(sentence: str, found: list[str]) -> bool:
    use = sentence[4:].rstrip(".") if sentence.startswith("Use ") else ""
    return use.endswith(" only") and any(use in earlier for earlier in found)


def former_beside(text: str) -> str:
    """The former figure is told beside the one that took its place, not behind that of another variant."""
    if _FORMER not in text:
        return text
    found: list[str] = []
    for sentence in sentences_of(text):
        behind = sentence.startswith(_FORMER) and found and re.match(_OTHERS, found[-1])
        found.insert(len(found) - 1 if behind else len(found), sentence)
    return " ".join(found)


def kind_once(text: str) -> str:
    """What kind an amount is of is told once: "80 kt ground speed: ground speed at which …"."""
    return re.sub(_NAMED_TWICE, ": ", text) if ": " in text else text


def about_first(text: str) -> str:
    """That a figure is rough is told with it: "50 kt: speed above which …, about"."""
    return re.sub(_ABOUT_BEHIND, r"About \1", text) if ", about" in text else text
