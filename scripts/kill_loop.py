"""Kills programs that write the record, at random moments, and reads the file after each: is anything lost?

    python3 scripts/kill_loop.py [--rounds 200] [--seed 1] [--keep FOLDER]

Two programs note answers and class turns in the same record at once, each saying what it has kept only after the
record said so. Both are killed (SIGKILL, or its like on Windows) in the midst of it: mostly while they write, at times
while they still open, and every tenth round while they migrate an older file. Then the file is read with nothing but
SQLite: it must be whole, hold everything that was said to be kept, and at most one answer more of each program.
"""

from __future__ import annotations

import argparse
import json
import shutil
import sqlite3
import subprocess
import sys
import tempfile
import time
from datetime import UTC, datetime
from pathlib import Path
from random import Random
from typing import NamedTuple

ROOT = Path(__file__).resolve().parents[1]
sys.path.insert(0, str(ROOT))

from assistant.practice.keeping import answers, schema  # noqa: E402
from assistant.practice.keeping.opening import FILE, set_aside_files  # noqa: E402
from assistant.practice.keeping.record import Record, open_record  # noqa: E402
from assistant.practice.keeping.rows import Asking, Learner, Note, Seated  # noqa: E402
from assistant.practice.recall import card_after  # noqa: E402

TYPE, RECORDS = "kill_loop", 7
WRITERS = ("Ana", "Ben")
OLD_ANSWERS = 60
READY, KEPT, MARKED, UNSAVED = "ready", "kept", "marked", "unsaved"


class Round(NamedTuple):
    """What a round came to: answers said to be kept, found beyond these, turns, whether it was killed while opening."""

    kept: int
    more: int
    turns: int
    early: bool


class Lost(Exception):
    """The record lost something, or is not whole; the message says what."""


def main(arguments: list[str] | None = None) -> int:
    """Run the rounds, and say what was found; return 0 only if nothing was lost."""
    options = _options(arguments)
    if options.write:
        _write_forever(*options.write)
    folder = Path(options.keep or tempfile.mkdtemp(prefix="downlock-kill-"))
    code = run(folder, options.rounds, options.seed)
    if code == 0 and not options.keep:
        shutil.rmtree(folder)
    return code


def run(folder: Path, rounds: int, seed: int) -> int:
    """Kill programs in a folder so many times; return 0 only if nothing was lost."""
    chance = Random(seed)
    total: list[Round] = []
    home = folder / "record"
    for number in range(1, rounds + 1):
        older = number % 10 == 0
        place = folder / f"older-{number}" if older else home
        try:
            total.append(_round(place, chance, older))
        except Lost as lost:
            print(f"round {number} (seed {seed}): {lost}; the files are in {place}", flush=True)
            return 1
        if number % 20 == 0 or number == rounds:
            print(f"{number} of {rounds} rounds: {_told(total)}", flush=True)
    print(f"nothing lost but the answer in hand, in {rounds} kills of {len(WRITERS)} programs each")
    return 0


def _round(folder: Path, chance: Random, older: bool) -> Round:
    folder.mkdir(parents=True, exist_ok=True)
    if older:
        _older_file(folder)
    before = _uids(folder)
    early = older or chance.random() < 0.2
    said = _killed(folder, chance, early)
    if troubles := [line for line in said if line[0] == UNSAVED]:
        raise Lost(f"a program had to say: {troubles}")
    kept = [line[1] for line in said if line[0] == KEPT]
    turns = [line[1] for line in said if line[0] == MARKED]
    _check_whole(folder)
    found = _uids(folder) - before
    if lost := [uid for uid in (*before, *kept) if uid not in found | before]:
        raise Lost(f"{len(lost)} answers that were said to be kept are gone")
    more = len(found) - len(kept) - len(turns)  # a marked turn counts as an answer too
    if more > len(WRITERS):
        raise Lost(f"{more} answers more than were said to be kept")
    _check_opening(folder, turns, older)
    return Round(len(kept), more, len(turns), early)


def _killed(folder: Path, chance: Random, early: bool) -> list[list[str]]:
    """Start the programs, kill them at a random moment; return the whole lines that they had written by then."""
    command = [sys.executable, str(Path(__file__).resolve()), "--write", str(folder)]
    running = [subprocess.Popen([*command, name], stdout=subprocess.PIPE) for name in WRITERS]
    outputs = []
    for process in running:
        assert process.stdout is not None
        outputs.append(process.stdout)
    first = b""
    if not early:
        first = outputs[0].readline()
    time.sleep(chance.uniform(0.02, 0.5) if early else chance.uniform(0, 0.2))
    for process in running:
        process.kill()
    lines = [line for output in outputs for line in output.read().splitlines(keepends=True)]
    for process in running:
        process.wait()
        assert process.stdout is not None
        process.stdout.close()
    return [json.loads(line) for line in (first, *lines) if line.endswith(b"\n")]


def _check_whole(folder: Path) -> None:
    """Read the file as SQLite alone sees it."""
    path = folder / FILE
    if not path.exists():
        return
    connection = sqlite3.connect(path)
    try:
        whole = connection.execute("PRAGMA integrity_check").fetchall()
        if whole != [("ok",)]:
            raise Lost(f"integrity_check says {whole[:3]}")
        if connection.execute("PRAGMA foreign_key_check").fetchall():
            raise Lost("a row refers to one that is gone")
    finally:
        connection.close()


def _uids(folder: Path) -> set[str]:
    path = folder / FILE
    if not path.exists():
        return set()
    connection = sqlite3.connect(path)
    try:
        if not connection.execute("SELECT 1 FROM sqlite_master WHERE name = 'answer'").fetchone():
            return set()
        return {uid for (uid,) in connection.execute("SELECT uid FROM answer")}
    finally:
        connection.close()


def _check_opening(folder: Path, turns: list[str], older: bool) -> None:
    """Open the record as the program does: nothing to tell, cards that follow from the answers, turns as marked."""
    with open_record(str(folder), _now) as record:
        if news := record.news():
            raise Lost(f"the record opens with: {news}")
        for learner in record.learners():
            _check_cards(record, learner)
        marked = {str(t.id) for s in record.sittings.all(TYPE) for t in record.sittings.turns(s.id) if t.mark}
    if set(turns) - marked:
        raise Lost(f"class turns {sorted(set(turns) - marked)} lost their marks")
    if set_aside_files(str(folder)):
        raise Lost("a file was set aside as damaged")
    if older and len(_uids(folder)) < OLD_ANSWERS:
        raise Lost("the migration lost answers")


def _check_cards(record: Record, learner: Learner) -> None:
    cards = record.cards(learner, TYPE)
    asked = {each.note.record for each in record.history(learner, TYPE)}
    if set(cards) != asked:
        raise Lost(f"{learner.name} has cards of {sorted(cards)} and answers on {sorted(asked)}")
    for name in asked:
        expected = card_after(answers.reviews(record.history(learner, TYPE, name)))
        if cards[name] != expected:
            raise Lost(f"the card of {name} does not follow from its answers")


def _write_forever(folder: str, name: str) -> None:
    """Note answers and class turns, and say so after each, until the process is killed."""
    record = open_record(folder, _now)
    learner = record.enrol(name)
    sitting = record.sittings.begin(TYPE, [Seated(each) for each in WRITERS])
    seats = record.sittings.seats(sitting.id)
    _say(READY, name)
    if told := record.news():
        _say(UNSAVED, *told)
    number = 0
    while True:
        number += 1
        note = Note(f"record-{number % RECORDS}", "Question?", f"answer {number}", "right", 1.0)
        _say(KEPT, record.note_answer(learner, TYPE, note).uid)
        if not record.saved:
            _say(UNSAVED, *record.news())
        if number % 5 == 0:
            turn = record.sittings.ask(sitting.id, Asking("record-0", "Question?", "Key"), plan=[number])
            record.sittings.name(turn.id, seats[number % len(seats)].id)
            _say(MARKED, str(record.sittings.mark(turn.id, "partly", 0.5).id))


def _older_file(folder: Path) -> None:
    """A record as the first version of the tables had it."""
    connection = sqlite3.connect(folder / FILE)
    for statement in schema.STEPS[0]:
        connection.execute(statement)
    connection.execute("INSERT INTO learner (name, name_key, since) VALUES ('Ana', 'ana', ?)", (_now().isoformat(),))
    for number in range(OLD_ANSWERS):
        note = Note(f"record-{number % RECORDS}", "Question?", "answer", "right", 1.0)
        answers.insert(connection, f"old-{number}", 1, TYPE, _now(), note)
    connection.execute("UPDATE meta SET value = 1")
    connection.execute(f"PRAGMA application_id = {schema.MARK_OF_FILE}")
    connection.execute("PRAGMA user_version = 1")
    connection.commit()
    connection.close()


def _say(*words: str) -> None:
    sys.stdout.write(json.dumps(words) + "\n")
    sys.stdout.flush()


def _now() -> datetime:
    return datetime.now(UTC)


def _told(total: list[Round]) -> str:
    kept, more, turns = (sum(each[i] for each in total) for i in range(3))
    early = sum(each.early for each in total)
    return f"{kept} answers and {turns} class turns kept, {more} in hand at a kill, {early} killed while opening"


def _options(arguments: list[str] | None) -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--rounds", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--keep", help="a folder to work in, which stays")
    parser.add_argument("--write", nargs=2, help=argparse.SUPPRESS)
    return parser.parse_args(arguments)


if __name__ == "__main__":
    sys.exit(main())
