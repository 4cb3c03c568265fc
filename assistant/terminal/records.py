"""The record of learners at the edge: opened where the user's files lie, its news told, its people found by name."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager

from assistant.practice.keeping.record import Record, open_record
from assistant.practice.keeping.rows import Learner
from assistant.rendering.text import clean
from assistant.terminal.arguments import nearest
from assistant.terminal.options import UsageProblem
from assistant.terminal.places import data_folder, why_not_written
from assistant.terminal.screen import Screen, complain, is_terminal
from assistant.terminal.simulated import clock as clock

DONE, BROKEN, NOT_WRITTEN = 0, 1, 5
KIND = "practice"
"""What the names of the record and of all that belongs to it begin with."""


@contextmanager
def opened_record(width: int | None = None) -> Iterator[Record]:
    """Open the record of the data folder; what there is to be told of it is told, however what is done in it ends.

    width: the columns that were asked for.
    """
    record = open_record(data_folder(), clock)
    try:
        with record:
            tell_news(record, width)
            yield record
    finally:
        tell_news(record, width)  # what happened last, and what closing had to say


def has_record() -> bool:
    """Whether anything of a record lies in the data folder: itself, or a backup that it would be made from."""
    try:
        return any(name.startswith(KIND) for name in os.listdir(data_folder()))
    except FileNotFoundError:
        return False
    except OSError:  # what cannot be read is told where it is opened
        return True


def need_content(record: Record) -> None:
    """Raise UsageProblem where nothing is known of what the record holds: it must not pass for empty."""
    if not record.was_read:
        raise UsageProblem("the record cannot be read here, so that it is not known who and what is in it")


def tell_news(record: Record, width: int | None = None) -> None:
    """Write what the user must know of the record, where it does not mix with what was asked for."""
    for line in record.news():
        complain(clean(line), width)


def somebody(record: Record, name: str) -> Learner:
    """Return who has a name. Raises UsageProblem, which names whoever is nearest."""
    found = record.find(name)
    if found is not None:
        return found
    need_content(record)
    known = ", ".join(each.name for each in record.learners())
    near = nearest_name(record, name)
    advice = f"did you mean {near}?" if near else f"there is {known}" if known else "it is empty"
    raise UsageProblem(f"there is no {clean(name)} in the record; {clean(advice)}")


def nearest_name(record: Record, name: str) -> str:
    """Return the name in the record that is most like a mistaken one, or nothing."""
    known = {each.name.lower(): each.name for each in record.learners()}
    return known.get(nearest(name, known), "")


def write_own(path: str, text: str, mark: str, what: str, screen: Screen) -> int:
    """Write a private file and say so. Raises UsageProblem rather than overwrite a file that is none of ours.

    mark: what the beginning of every file of this kind holds.
    """
    target = os.path.abspath(os.path.expanduser(path))
    if os.path.isdir(target):
        raise UsageProblem(f"{clean(path)} is a folder; name a file in it")
    if os.path.exists(target) and mark not in _beginning(target):
        raise UsageProblem(f"{clean(path)} is there already and is not {what}; name another file")
    if not os.path.isdir(os.path.dirname(target)):
        raise UsageProblem(f"there is no folder {clean(os.path.dirname(target))}")
    if problem := why_not_written(target, text):
        complain(f"cannot write {clean(path)}: {problem}")
        return NOT_WRITTEN
    screen.say(f"written: {clean(path)}")
    return DONE


def is_typed() -> bool:
    """Whether somebody sits at the keyboard."""
    return is_terminal(sys.stdin) and is_terminal(sys.stdout)


def _beginning(path: str) -> str:
    try:
        with open(path, encoding="utf-8", errors="replace") as file:
            return file.read(2000)
    except OSError:
        return ""
