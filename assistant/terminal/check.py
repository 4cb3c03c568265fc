"""`check`: every problem of the knowledge base by file and line, or else what it holds."""

from __future__ import annotations

import sys

from assistant.knowledge.base import Base
from assistant.knowledge.figure_checks import contradictions
from assistant.knowledge.load import load, types
from assistant.knowledge.location import knowledge_root
from assistant.knowledge.problems import Problem
from assistant.knowledge.report import check_lines
from assistant.rendering.text import clean
from assistant.terminal.disputes import disputes_told
from assistant.terminal.options import Parsed, UsageProblem
from assistant.terminal.screen import Screen, prepare
from assistant.terminal.session import BrokenKnowledge, check_place


def check(parsed: Parsed) -> int:
    """Check one type, or each that the knowledge base holds; return 1 if anything is wrong."""
    prepare(sys.stdout, json=False)
    screen = Screen(sys.stdout)
    root, type_id = parsed.values.get("--knowledge"), parsed.values.get("--type")
    check_place(root, type_id)
    try:
        place = root or knowledge_root()
    except FileNotFoundError as error:
        raise BrokenKnowledge(
            [Problem("knowledge base", 0, str(error), "name it with --knowledge")]
        ) from None
    if parsed.has("--schema"):
        _write_schemas(parsed.values["--schema"], screen)
    chosen: list[str | None] = [type_id] if type_id else [*types(place)] or [None]
    return _check_types(place, chosen, screen)


def _check_types(root: str, chosen: list[str | None], screen: Screen) -> int:
    """Print what each type's base is, a line that several share only once."""
    wrong = False
    printed: set[str] = set()
    for name in chosen:
        base, problems = _checked(root, name)
        wrong = wrong or bool(problems)
        lines = [*check_lines(base, problems), *(_disputed(base) if base else ())]
        heading = [f"{name}:"] if len(chosen) > 1 else []
        for line in [*heading, *(line for line in lines if line not in printed)]:
            screen.say(clean(line))
        printed.update(map(str, problems))
    return int(wrong)


def _checked(root: str, name: str | None) -> tuple[Base | None, list[Problem]]:
    """Return a base with nothing wrong in it, or all that is wrong, figures that do not agree among it."""
    base, problems = load(root, name, cache_dir="", partial=True)
    if base is not None:
        problems = sorted({*problems, *contradictions(base)})
    return (None if problems else base), problems


def _disputed(base: Base) -> list[str]:
    """What is set aside as disputed in this type, for its curator to look at."""
    disputed, damage = disputes_told(base.type_info.id)
    lines = [f"note: {damage}"] if damage else []
    for name, note in disputed:
        kind = base.kind(name) if name in base.records else "inputs" if name in base.inputs else ""
        place = ":".join(map(str, base.place(name, kind))) if kind else base.type_info.id
        gone = "" if kind else ", which is no longer there,"
        said = f" ({note})" if note else ""
        lines.append(
            f"note: {place}: '{name}'{gone} is set aside as disputed{said}; look at it, then clear the dispute"
        )
    return lines


def _write_schemas(folder: str, screen: Screen) -> None:
    from assistant.knowledge.schema import write_schemas

    try:
        written = write_schemas(folder)
    except OSError as error:
        raise UsageProblem(f"cannot write into {folder}: {error.strerror or 'not writable'}") from None
    screen.say(f"written: {len(written)} schemas into {clean(folder)}")
