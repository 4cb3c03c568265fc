"""The turns of a class as CSV (RFC 4180), in which no cell can start a formula of the spreadsheet that opens it."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.practice.leading.report import FORMATIVE, Asked, ClassReport

MARK = "turn,section,record"
"""What a table made here begins with."""
_COLUMNS = (
    "turn", "section", "record", "question", "paragraphs", "mark", "share", "hint", "passed on", "hands",
    "overruled", "answer", "taken for",
)  # fmt: skip
_NAMED = ("name", "team")
_STARTS = "=+-@|%＝＋－＠"
"""Signs with which a spreadsheet begins a formula or a command; those of full width as well."""


def turns_table(report: ClassReport, named: bool = False) -> str:
    """Return the turns, a line each, with a line that says what they are not; names only where asked for."""
    columns = (*_COLUMNS, *(_NAMED if named else ()))
    rows = [columns, *(_row(each, named) for each in report.asked), (FORMATIVE,)]
    return "".join(f"{','.join(map(cell, row))}\r\n" for row in rows)


def cell(value: object) -> str:
    """Return a value as a cell: text that a spreadsheet would take for a formula is led by an apostrophe."""
    text = str(value)
    begins = text.lstrip(" \t\r\n\v\f\u00a0\u200b\ufeff")[:1]
    if not isinstance(value, (int, float)) and (text[:1] in "\t\r\n" or (begins and begins in _STARTS)) and text:
        text = f"'{text}"
    if any(sign in text for sign in ',"\r\n;\t'):
        text = '"' + text.replace('"', '""') + '"'
    return text


def _row(asked: Asked, named: bool) -> Iterable[object]:
    plain = (
        asked.number, asked.section, asked.record, asked.question, asked.paragraphs, asked.mark, round(asked.share, 2),
        "yes" if asked.hinted else "no", asked.passed, asked.hands, "yes" if asked.overruled else "no", asked.answer,
        asked.confused_with,
    )  # fmt: skip
    return (*plain, *((asked.name, asked.team) if named else ()))
