"""ATA sections as questions, pages and lines name them: "32-40 Brakes"; what is general has a name alone."""

from __future__ import annotations

import re

_SECTION = re.compile(r"\d\d-\d\d")


def is_section(text: str) -> bool:
    """Return whether a text is the number of an ATA section, such as 32-40."""
    return _SECTION.fullmatch(text) is not None


def titled(section: str, name: str) -> str:
    """Return a section by its number, where it has one, and its name."""
    return f"{section} {name}" if section[:1].isdigit() else name
