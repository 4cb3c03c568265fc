"""What is written of a class: the page and the table without names, the instructor's own copy, and xAPI statements."""

from __future__ import annotations

import json
import os
from collections.abc import Mapping

from assistant.conversation.opening import Knowledge
from assistant.practice.asking.pool import Pool
from assistant.practice.keeping.record import Record
from assistant.practice.keeping.rows import Sitting
from assistant.practice.leading import page, table
from assistant.practice.leading.holding import standing_of
from assistant.practice.leading.report import ClassReport, report_of
from assistant.practice.leading.shown import count
from assistant.practice.leading.standing import Standing
from assistant.practice.leading.statements import PLACE, count_persons, statements
from assistant.practice.leading.summary import report_lines
from assistant.practice.leading.telling import telling_apart
from assistant.practice.papers.sets import NoSet
from assistant.rendering.text import clean
from assistant.terminal.options import Parsed, UsageProblem
from assistant.terminal.places import data_folder
from assistant.terminal.records import BROKEN, DONE, NOT_WRITTEN, write_own
from assistant.terminal.screen import Screen, complain
from assistant.terminal.sitting_screen import say, show

FILES = ("--page", "--csv", "--own-copy", "--xapi")
"""Options that name a file to write."""
_FOLDER = "classes"


def files_of(parsed: Parsed) -> dict[str, str]:
    """Return the files that were named, from wherever the class may be ended. Raises UsageProblem for what is none."""
    named = {
        option: os.path.abspath(os.path.expanduser(parsed.values[option])) for option in FILES if parsed.has(option)
    }
    for option, endings in (("--page", (".html",)), ("--csv", (".csv",)), ("--own-copy", (".html", ".csv")),
                            ("--xapi", (".json",))):  # fmt: skip
        if option in named and os.path.splitext(named[option])[1].lower() not in endings:
            raise UsageProblem(f"{option} takes a file that ends in {' or '.join(endings)}, not {clean(named[option])}")
    if len(set(named.values())) < len(named):
        raise UsageProblem("name a file of its own for each of --page, --csv, --own-copy and --xapi")
    for path in named.values():
        if not os.path.isdir(os.path.dirname(path)):
            raise UsageProblem(f"there is no folder {clean(os.path.dirname(path))}")
    return named


def kept_files(sitting: Sitting) -> dict[str, str]:
    """Return the files that were named when a class began."""
    files = sitting.options.get("files", {}) if isinstance(sitting.options, dict) else {}
    return {str(option): str(path) for option, path in files.items()} if isinstance(files, dict) else {}


def report_on(
    sitting: Sitting, record: Record, know: Knowledge, pool: Pool, screen: Screen, files: Mapping[str, str],
    names: bool = False,
) -> int:  # fmt: skip
    """Show the report of a class and write its files; return the exit code. names: also in the xAPI statements."""
    try:
        standing = standing_of(record.sittings, sitting.id)
    except NoSet as problem:
        complain(f"class {sitting.id} cannot be reported on: {problem}")
        return BROKEN
    report = report_of(standing, pool, telling_apart(know))
    show(report_lines(report), screen)
    if not report.asked:
        return DONE
    wanted = dict(files) or _usual_files(sitting)
    codes = [_write(option, path, standing, report, know, screen, names) for option, path in wanted.items()]
    if "--own-copy" not in wanted:
        say(f"With names: downlock class report {sitting.id} --own-copy FILE.html", screen)
    return max(codes, default=DONE)


def _usual_files(sitting: Sitting) -> dict[str, str]:
    """Return the page and the table in the folder of the user's files: neither holds a name."""
    folder = os.path.join(data_folder(), _FOLDER)
    try:
        os.makedirs(folder, mode=0o700, exist_ok=True)
    except OSError:
        complain(f"cannot write in {folder}; name files with --page and --csv")
        return {}
    stem = os.path.join(folder, f"{sitting.began.astimezone():%Y-%m-%d}-class-{sitting.id}")
    return {"--page": f"{stem}.html", "--csv": f"{stem}.csv"}


def _write(
    option: str, path: str, standing: Standing, report: ClassReport, know: Knowledge, screen: Screen, names: bool
) -> int:
    if option == "--xapi":
        made = statements(standing, names)
        code = write_own(
            path, json.dumps(made, ensure_ascii=False, indent=1) + "\n", PLACE, "statements of a class", screen
        )
        if code == DONE:
            size = f"{count(len(made), 'statement')} on {count(count_persons(made), 'person', 'people')}"
            say(f"It holds {size}, {'with their names' if names else 'by pseudonyms'}.", screen)
        return code
    named = option == "--own-copy"
    if path.lower().endswith(".csv"):
        return _written(path, "\ufeff" + table.turns_table(report, named), table.MARK, "a table of a class", screen)
    text = page.class_page(report, know.type_name, know.deference, named)
    return _written(path, text, page.MARK, "a page of a class", screen)


def _written(path: str, text: str, mark: str, what: str, screen: Screen) -> int:
    try:
        return write_own(path, text, mark, what, screen)
    except UsageProblem as problem:  # the class is over: what cannot be written is told, and the rest is written
        complain(clean(str(problem)))
        return NOT_WRITTEN
