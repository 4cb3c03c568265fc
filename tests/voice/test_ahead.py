"""What was begun in a pause is used when the pause was the end, and forgotten when it was not."""

from __future__ import annotations

import threading

import pytest

from assistant.voice.ahead import Ahead

SAID, SILENCE = b"\x01\x02" * 512, bytes(1024)


class Work:
    """Notes what it is done on; waits where it is told to."""

    def __init__(self) -> None:
        self.done_on: list[bytes] = []
        self.begun, self.may_go_on = threading.Event(), threading.Event()
        self.may_go_on.set()

    def __call__(self, pcm: bytes) -> int:
        self.begun.set()
        assert self.may_go_on.wait(5)
        self.done_on.append(pcm)
        return len(pcm)


@pytest.fixture
def work() -> Work:
    return Work()


def test_what_was_begun_in_a_pause_is_what_comes_of_it(work: Work) -> None:
    ahead = Ahead(work)
    ahead.begin(SAID)

    assert ahead.done(SAID + SILENCE) == len(SAID)
    assert work.done_on == [SAID]


def test_it_returns_at_once_and_works_meanwhile(work: Work) -> None:
    work.may_go_on.clear()
    ahead = Ahead(work)
    ahead.begin(SAID)

    assert work.begun.wait(5)
    assert work.done_on == []
    work.may_go_on.set()
    assert ahead.done(SAID + SILENCE) == len(SAID)


def test_what_goes_on_after_a_pause_is_heard_whole(work: Work) -> None:
    ahead = Ahead(work)
    ahead.begin(SAID)
    ahead.begin(b"")

    assert ahead.done(SAID + SAID) == 2 * len(SAID)


def test_the_last_pause_counts(work: Work) -> None:
    ahead = Ahead(work)
    ahead.begin(SAID)
    ahead.begin(b"")
    ahead.begin(SAID + SAID)

    assert ahead.done(SAID + SAID + SILENCE) == 2 * len(SAID)


def test_without_a_pause_it_is_done_when_it_is_wanted(work: Work) -> None:
    assert Ahead(work).done(SAID) == len(SAID)


def test_work_that_fails_is_done_again_where_it_is_waited_for() -> None:
    calls: list[bytes] = []

    def fails_once(pcm: bytes) -> int:
        calls.append(pcm)
        if len(calls) == 1:
            raise MemoryError
        return len(pcm)

    ahead = Ahead(fails_once)
    ahead.begin(SAID)

    assert ahead.done(SAID + SILENCE) == len(SAID + SILENCE)
