"""`progress export`, `import` and `forget`: what leaves the record and what enters it, always named and counted."""

from __future__ import annotations

import json
import os
import sys
from collections.abc import Callable
from typing import Any

from assistant.practice.keeping.exchange import KEY, TakenIn
from assistant.practice.keeping.exchange_fields import ExchangeProblem
from assistant.practice.keeping.forgetting import Forgotten
from assistant.rendering.text import clean, wrap
from assistant.terminal.options import PROGRAM, PROGRESS, Parsed, UsageProblem
from assistant.terminal.records import (
    BROKEN,
    DONE,
    NOT_WRITTEN,
    is_typed,
    need_content,
    opened_record,
    somebody,
    write_own,
)
from assistant.terminal.screen import Screen, complain, is_terminal

_LARGEST = 200_000_000


def export(parsed: Parsed, screen: Screen) -> int:
    """Write everything as JSON into a file, or to the output for "-"."""
    path = _only_word(parsed, "export FILE")
    with opened_record(parsed.width) as record:
        need_content(record)
        values = record.export()
    text = json.dumps(values, indent=1, ensure_ascii=False) + "\n"
    if path == "-":
        sys.stdout.write(text)
        sys.stdout.flush()
        return DONE
    code = write_own(path, text, f'"{KEY}"', "an export of the record", screen)
    if code == DONE:
        people, answers = len(values["learners"]), sum(len(each["answers"]) for each in values["learners"])
        _say(f"It holds {_count(people, 'person', 'people')} by name, {_count(answers, 'answer')}.", screen)
    return code


def take_in(parsed: Parsed, screen: Screen) -> int:
    """Add what a file of another record holds; nothing of it when any of it is amiss."""
    path = _only_word(parsed, "import FILE")
    try:
        exported = _read(path)
        with opened_record(parsed.width) as record:
            taken = record.take_in(exported)
            saved = record.saved
    except ExchangeProblem as problem:
        complain(clean(f"{path}: {problem}; nothing was taken in"))
        return BROKEN
    if not saved:
        return NOT_WRITTEN
    _say(_taken_line(taken), screen)
    return DONE


def forget(parsed: Parsed, screen: Screen) -> int:
    """Remove a person wholly, once a "yes" was typed or came through a pipe."""
    name = " ".join(parsed.words[1:])
    if not name:
        raise UsageProblem(f"write: {PROGRAM} {PROGRESS.name} forget NAME")
    with opened_record(parsed.width) as record:
        if record.was_read and record.find(name) is None and (files := record.set_aside_with(name)):
            return _forget_set_aside(name, files, screen)
        learner = somebody(record, name)
        if not _is_meant(learner.name, screen):
            return DONE
        if not record.saved:
            complain(f"{clean(learner.name)} is not removed, since the record cannot be written")
            return NOT_WRITTEN
        forgotten = record.forget(learner)
        saved = record.saved
    for line in (_forgotten_line(learner.name, forgotten), *_files_lines(forgotten)):
        _say(line, screen)
    for line in forgotten.left:
        complain(clean(line))
    return NOT_WRITTEN if forgotten.left or not saved else DONE


def _forget_set_aside(name: str, files: tuple[str, ...], screen: Screen) -> int:
    """Remove damaged files that hold the name of somebody who is in the record no more."""
    _say(f"{clean(name)} is not in the record, but in what was set aside as damaged.", screen)
    if not _is_meant(clean(name), screen):
        return DONE
    code = DONE
    for path in files:
        try:
            os.remove(path)
            _say(f"Removed, since it held the name: {path}", screen)
        except OSError as error:
            complain(f"{path} could not be removed: {(error.strerror or 'unknown').lower()}")
            code = NOT_WRITTEN
    return code


def _is_meant(name: str, screen: Screen) -> bool:
    """Whether somebody is to be removed. Raises UsageProblem where nobody can be asked."""
    if _confirmed(name, screen):
        return True
    if not is_typed():
        raise UsageProblem('nothing was removed; a "yes" on the input removes')
    _say("Nothing was removed.", screen)
    return False


ACTIONS: dict[str, Callable[[Parsed, Screen], int]] = {"export": export, "import": take_in, "forget": forget}


def _only_word(parsed: Parsed, usage: str) -> str:
    if len(parsed.words) != 2 or not parsed.words[1]:
        raise UsageProblem(f"write: {PROGRAM} {PROGRESS.name} {usage}")
    return parsed.words[1]


def _read(path: str) -> Any:
    """What a file holds. Raises UsageProblem where there is none, ExchangeProblem for what is no JSON."""
    try:
        if path == "-":
            raw = sys.stdin.buffer.read(_LARGEST + 1)
        else:
            with open(path, "rb") as file:
                raw = file.read(_LARGEST + 1)
    except OSError as error:
        raise UsageProblem(f"cannot read {clean(path)}: {error.strerror or 'unreadable'}") from None
    if len(raw) > _LARGEST:
        raise ExchangeProblem(f"it is longer than {_LARGEST // 1_000_000} MB")
    try:
        return json.loads(raw.decode("utf-8-sig"))
    except json.JSONDecodeError as error:
        raise ExchangeProblem(f"line {error.lineno} is not JSON: {error.msg}") from None
    except (UnicodeDecodeError, ValueError, RecursionError):
        raise ExchangeProblem("it is not JSON in UTF-8") from None


def _confirmed(name: str, screen: Screen) -> bool:
    question = f'Remove {name} wholly, from every backup too? Type "yes" to remove, anything else keeps: '
    if is_typed() or is_terminal(sys.stdin):
        screen.out.write("\n".join(wrap(question, screen.width)) + " ")
        screen.out.flush()
    return sys.stdin is not None and sys.stdin.readline().strip().casefold() == "yes"


def _taken_line(taken: TakenIn) -> str:
    people, answers = _count(taken.learners, "new person", "new people"), _count(taken.answers, "answer")
    known = f"; {_count(taken.known, 'answer was', 'answers were')} here already" if taken.known else ""
    return f"Taken in: {people}, {answers}, {_count(taken.sittings, 'class sitting')}{known}."


def _forgotten_line(name: str, forgotten: Forgotten) -> str:
    return (
        f"Removed: {name}, with {_count(forgotten.answers, 'answer')} and {_count(forgotten.turns, 'class turn')}, "
        "from the record and its backups. Pages and exports made before are yours to delete."
    )


def _files_lines(forgotten: Forgotten) -> list[str]:
    return [f"Removed as well, since it held the name: {path}" for path in forgotten.files]


def _count(number: int, one: str, many: str = "") -> str:
    return f"{number} {one if number == 1 else many or one + 's'}"


def _say(text: str, screen: Screen) -> None:
    screen.say("\n".join(wrap(text, screen.width)))
