"""Names that nothing explains and that would pass for less: a number behind a name, and a name mended into a word.

"The Northwind 200" is another aeroplane, and no 200 of anything; a name that is one letter off an ordinary word is not
that word. Each is read as one name of another subject, so that what is asked of it is not answered from here.
"""

from __future__ import annotations

from collections.abc import Callable, Collection

from assistant.quantities.amounts import Amount
from assistant.quantities.tokens import Token

_BEFORE = frozenset((
    "on", "of", "for", "in", "like", "than", "with", "does", "do", "has", "versus", "vs", "from", "an", "a", "fly",
    "flying",
))  # fmt: skip
_ARTICLES = frozenset(("the", "a", "an", "old", "new", "older", "newer", "my", "our", "your"))
_AFTER = frozenset(("", ".", "?", "!", ",", ";", "have", "has", "does", "do", "too", "as", "s"))
_PLACING = frozenset((
    "and", "or", "to", "on", "in", "at", "for", "is", "left", "right", "outer", "inner", "versus", "vs", "then",
    "with", "by", "from", "but", "of", "if", "ok", "was", "now", "not", "when",
))  # fmt: skip
"""Words after a number that is a reading, and no name."""
_MODEL_NUMBERS = range(100, 1000)
_PREPOSITIONS = frozenset(("on", "of", "for", "by", "from", "in", "with"))

_LEAST_SPOKEN = 100
"""The least number that names an aeroplane after the type's name when it is spoken: the name, "one fifty"."""


def numbered_names(
    tokens: list[Token], amounts: list[Amount], known: Collection[str], of_type: Collection[int],
    is_strange: Callable[[int], bool],
) -> list[tuple[int, int]]:  # fmt: skip
    """Return the places (start, end) of names that end in a number that would be read as an amount.

    known: numbers that are names here. of_type: places of the type's own names. is_strange: whether the word at a
    place is none that is known.
    """
    found = []
    for amount in amounts:
        said = amount.spoken and not (amount.start - 1 in of_type and amount.value >= _LEAST_SPOKEN)
        if said or amount.value % 1 or f"{amount.value:g}" in known:
            continue
        start = _beginning(tokens, amount, of_type, is_strange)
        if start is not None:
            found.append((start, amount.end))
    return found


def _beginning(
    tokens: list[Token], amount: Amount, of_type: Collection[int], is_strange: Callable[[int], bool]
) -> int | None:
    """Return where the name begins that an amount is the number of."""
    if amount.unit == "factor" and amount.value >= 10 and amount.raw[0].isalpha() and amount.raw[1:].isdecimal():
        return amount.start  # "an X330"
    before = amount.start - 1
    if amount.unit is not None or before < 0:
        return None
    glued = tokens[before].end == tokens[amount.start].start and len(tokens[before].raw) == 1
    if glued and tokens[before].raw.isalpha() and amount.value >= 10:
        return before
    if before in of_type or (tokens[before].raw[0].isupper() and is_strange(before)):
        return before
    return amount.start if _is_model(tokens, amount) else None


def _is_model(tokens: list[Token], amount: Amount) -> bool:
    """Return whether a number is named as an aeroplane is: "on the 333", "does the old 110 have …"."""
    words = [t.text for t in tokens]
    k = amount.start - 1
    if int(amount.value) not in _MODEL_NUMBERS or words[k] not in _ARTICLES:
        return False
    while k >= 0 and words[k] in _ARTICLES:
        k -= 1
    after = words[amount.end] if amount.end < len(words) else ""
    return k >= 0 and words[k] in _BEFORE and after in _AFTER


def is_number_of(amount: Amount, known: Collection[str]) -> bool:
    """Return whether a number counts nothing, and is one of those that are names here."""
    return amount.unit is None and f"{amount.value:g}" in known


def opens_clause(amount: Amount, words: list[str]) -> bool:
    """Return whether a number opens a clause before a thing, as the name of an aeroplane does: "120 brakes at 300"."""
    opens = amount.start == 0 or not words[amount.start - 1][0].isalnum()
    after = words[amount.end] if amount.end < len(words) else ""
    return opens and after.isalpha() and after not in _PLACING


def misread_names(tokens: list[Token], mended: Collection[tuple[str, str]], passes: Callable[[int], bool]) -> list[int]:
    """Return the places of words that are names, though they were mended into ordinary words.

    passes: whether the word at a place, as it was mended, would explain itself.
    """
    pairs = {new: old for old, new in mended if " " not in new}
    titled = sum(t.raw[0].isupper() for t in tokens) > len(tokens) / 2
    return [
        k
        for k, token in enumerate(tokens)
        if token.text in pairs and token.raw.lower() == pairs[token.text] and passes(k)
        and _is_named(tokens, k, token.raw[0].isupper() and not titled)
    ]  # fmt: skip


def _is_named(tokens: list[Token], k: int, capital: bool) -> bool:
    """Return whether a word stands where a thing is named: "on a WORD", "of the WORD"; "over the Alps" is a place."""
    words = [t.text for t in tokens]
    last = k + 1 == len(words) or not words[k + 1][0].isalnum()
    start = k - 1 if k and words[k - 1] in _ARTICLES else k
    return (last or capital) and 0 < start < k + capital and words[start - 1] in _PREPOSITIONS
