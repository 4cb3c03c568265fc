"""What may stand in files that could not be read: what only points there is no problem of its own.

A file with one slip in its midst still shows which names it holds, so that all else is checked at once. Of a file that
is empty, cut off or no text nothing can be said, and whatever is missing may stand in it.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable

from assistant.knowledge.problems import Problem

_SHARED = "language/"
"""The folder whose files list units."""
_UNITS = "units:"


def held_by(raw: bytes, problems: Iterable[Problem]) -> str:
    """Return the text of a file with problems in its midst; nothing where not all of it may be there."""
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        return ""
    last = text.rstrip().count("\n") + 1
    return text if any(0 < problem.line < last for problem in problems) else ""


def may_stand(name: str, unread: Collection[str]) -> bool:
    """Return whether a name may stand in one of the files that were not read, given what each is known to hold."""
    return any(not text or name in text for text in unread)


def may_list_units(file: str, text: str) -> bool:
    """Return whether a file that was not read may list units: those of the language do, elsewhere it would show."""
    return file.startswith(_SHARED) or _UNITS in text
