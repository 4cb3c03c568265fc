"""Two programs work with the same record, and with whatever one of them does to the file."""

from pathlib import Path
from threading import Barrier, Event, Thread

from assistant.practice.keeping.opening import FILE
from assistant.practice.keeping.record import Record, open_record
from assistant.practice.keeping.rows import Learner
from tests.practice.keeping.conftest import TYPE, Clock, Opener, note


def test_what_one_notes_the_other_reads(record: Record, ana: Learner, opener: Opener) -> None:
    other = opener()

    kept = [record.note_answer(ana, TYPE, note()), other.note_answer(ana, TYPE, note())]

    assert list(record.history(ana, TYPE)) == kept == list(other.history(ana, TYPE))


def test_many_writing_at_once_lose_nothing(home: Path, clock: Clock) -> None:
    programs, each = 4, 15
    ready = Barrier(programs)

    def work(name: str) -> None:
        ready.wait()
        with open_record(str(home), clock) as record:
            learner = record.enrol(name)
            for _ in range(each):
                record.note_answer(learner, TYPE, note())

    threads = [Thread(target=work, args=(f"Learner {number}",)) for number in range(programs)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()

    with open_record(str(home), clock) as record:
        assert [len(record.history(learner, TYPE)) for learner in record.learners()] == [each] * programs
        assert record.news() == ()


def test_a_program_that_writes_without_a_pause_does_not_keep_another_from_writing(home: Path, clock: Clock) -> None:
    """As a loop that holds the file nine tenths of the time and more would."""
    done = Event()

    def work_on() -> None:
        with open_record(str(home), clock) as record:
            learner = record.enrol("Ben")
            while not done.is_set():
                record.note_answer(learner, TYPE, note(f"record-{learner.id}"))

    thread = Thread(target=work_on)
    thread.start()
    with open_record(str(home), clock) as record:
        ana = record.enrol("Ana")
        for _ in range(20):
            record.note_answer(ana, TYPE, note())
        done.set()
        thread.join()

        assert record.news() == ()
        assert len(record.history(ana, TYPE)) == 20


def test_a_file_deleted_under_a_sitting_comes_back_from_the_backup(opener: Opener, home: Path) -> None:
    first = opener()
    ana = first.enrol("Ana")
    first.note_answer(ana, TYPE, note())
    first.close()
    record = opener()
    for name in (FILE, f"{FILE}-wal", f"{FILE}-shm"):
        (home / name).unlink(missing_ok=True)

    record.note_answer(ana, TYPE, note())

    assert len(record.history(ana, TYPE)) == 2
    assert record.saved
    assert "was missing; the backup of 2026-11-25 07:00 UTC was opened" in record.news()[0]
