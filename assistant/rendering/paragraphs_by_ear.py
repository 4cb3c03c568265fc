"""Paragraph references for the ear: dropped where a sentence stands without them, else said as numbers."""

from __future__ import annotations

import re
from collections.abc import Iterable

_DOCUMENT = r"[A-Z][A-Z0-9]+"
_PARAGRAPH = rf"{_DOCUMENT} (?:[A-Z]\.\d+|\d+(?:\.\d+)+)"
_ABOUT = rf"{_PARAGRAPH}, revision "
_VERDICT = rf"\b(Within|Outside) {_PARAGRAPH}"
_TRAILING = rf"(?<=\w) (?:of|per|see|by) {_PARAGRAPH}(?= *(?:[.,;:(]|$))"
_HELD = rf"\b(within|outside) {_PARAGRAPH}, (?=[\d−])"
"""A figure that a result is held to, behind its paragraph: "that is outside LIM 3.1, 195 kt"."""
_UP_TO = rf"\b(for|to|of) {_PARAGRAPH}, (?=[\d−])"
_ONLY_PARAGRAPHS = rf"{_PARAGRAPH}(?: M\d+)?(?:[,;] {_PARAGRAPH})*"
_LONGEST_PART = 2
_REVISION = rf"(?:; | ?\()changed with {_DOCUMENT} \w+\)?"


def is_about_paragraphs(text: str) -> bool:
    """Return whether a text tells paragraphs themselves: "where does it say that"."""
    return re.match(_ABOUT, text) is not None


def without_revisions(text: str) -> str:
    """Leave out with which revision a figure was changed."""
    return re.sub(_REVISION, "", text) if "changed with" in text else text


def without_paragraphs(text: str, signs: Iterable[str]) -> str:
    """Drop paragraphs where the sentence stands without them; say the others, which it is about.

    signs: how units are written behind a number: what one follows is an amount, as in "HARD 2.25 m/s²".
    """
    if "." not in text:
        return text
    text = re.sub(rf" ?[(\[{{](?:{_ONLY_PARAGRAPHS})[)\]}}]", "", text)
    text = re.sub(_VERDICT, r"\1 limits", text)
    text = re.sub(_UP_TO, r"\1 ", re.sub(_HELD, r"\1 the limit, ", text))
    text = re.sub(_TRAILING, "", text)
    return paragraphs_said(text, signs)


def paragraphs_said(text: str, signs: Iterable[str]) -> str:
    """The parts of a paragraph are numbers of their own, "32.13" being "thirty-two point thirteen"."""
    units = "|".join(re.escape(sign.strip()) for sign in signs)
    text = re.sub(rf"{_PARAGRAPH}(?=\W|$)(?! ?(?:{units})(?!\w))", lambda match: _parts_said(match[0]), text)
    return re.sub(r"\b([A-LN-Z])\.(?=\d)", r"\1 point ", text)  # "M.60" is a Mach number


def _parts_said(paragraph: str) -> str:
    document, _, number = paragraph.partition(" ")
    return f"{document} {' point '.join(map(_part_said, number.split('.')))}"


def _part_said(part: str) -> str:
    """A part that begins with a nought keeps it; one of three figures, as regulations have, is said by figures."""
    if len(part) > _LONGEST_PART:
        return " ".join(part)
    return f"0 {part[1:]}" if len(part) == _LONGEST_PART and part[0] == "0" else part
