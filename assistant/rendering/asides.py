"""Brackets for the ear: asides, joined to what stands before and after them."""

from __future__ import annotations

import re

from assistant.answering.parts import upper

_WHICH_LIMIT = r"\b(?:Within|Outside) limits: [^;]*\b(?:above|below|at) the limit[^;]*$"
_INNER_BRACKET = r"( *)[(\[{]([^()\[\]{}]*)[)\]}]"
_FOR_THE_EYE = r"[=+×√]|^\W*$|^\w$"
"""Brackets that say nothing by ear: a formula, a sign, the letter of a paragraph."""
_QUALIFIER = r"(?!or\b)[a-z][a-z-]*"
_OF_AN_AMOUNT = rf"{_QUALIFIER}(?: [a-z][a-z-]*)?"
"""A plain word in brackets, or two behind an amount, belong to what stands before: "VLO (extension)"."""
_LABEL = r"(?:[A-Z]{2,}[ -][A-Z-]{2,}|[A-Z]{4,})"
"""The name of a message, of capital words, or of a mode or setting, which its colour or kind is said after."""
_BETWEEN_LABELS = rf"\)(?:,| and|, and) (?={_LABEL} ?\()"
"""Between labels of a list, each with an aside in brackets: they are heard apart."""
_SHARE = r"(?<![\w.,])[01](?:\.\d+)? \((\d[\d.]*%)\)"
"""A share that is told a second time, in hundredths."""
_AMOUNT = r"(?:Mach )?[−-]?\d[\d,]*(?:\.\d+)?(?:/\d+)? ?[^\s\d(),;:]*"
_ASIDE_ENDS = (",", ".", ";", ":", "?", "!", ")")
_EXPLAINS = r"^(?!or |\d).*(?: or |,.*,)"
"""What stands in brackets for a word of a list, and itself lists what is meant by it."""
_LONG_ASIDE = 6
"""Words from which an aside that ends a sentence is a sentence of its own."""


def asides(text: str, dropped: bool) -> str:
    """Brackets become asides, from the innermost; those for the eye alone, or all of them, are dropped."""

    def said(match: re.Match[str]) -> str:
        inner = match[2].strip(" ,;.")
        if dropped or re.search(_FOR_THE_EYE, inner):
            return ""
        return _aside(inner, match.string[: match.start()], match.string[match.end() :].lstrip())

    text = re.sub(_SHARE, r"\1", re.sub(_BETWEEN_LABELS, "); ", text)) if ")" in text else text
    while any(sign in text for sign in "([{"):
        text, count = re.subn(_INNER_BRACKET, said, text)
        if not count:
            break
    return text.lstrip(" ,")


def _aside(inner: str, before: str, after: str) -> str:
    """What stood in brackets, joined to what stands before and after it."""
    if re.search(r"(?:^|\s)\d{1,2}\. *$", before):
        return f" {inner},"
    if before.count("(") == before.count(")") and re.search(_WHICH_LIMIT, before):
        return f". The limit: {inner}"
    behind_amount = re.search(rf"(?:^|\s){_AMOUNT}(?: up)?$", before) is not None
    if re.fullmatch(_OF_AN_AMOUNT if behind_amount else _QUALIFIER, inner) and not re.search(f"{_LABEL}$", before):
        return f" {inner}"
    if behind_amount and re.match(_AMOUNT, inner):
        inner = f"or {inner}"
    elif after[:1] in ("", ".", ";") and len(inner.split()) >= _LONG_ASIDE:
        return f". {upper(inner)}"
    elif after[:1] == "," and re.search(_EXPLAINS, inner):
        inner = f"that is {inner}"
    return f", {inner}" + ("" if not after or after[0] in _ASIDE_ENDS else ",")
