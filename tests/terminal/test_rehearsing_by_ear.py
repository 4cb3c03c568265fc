"""A rehearsal by ear and aloud: what is said, what is taken for an answer, what a silence does."""

from __future__ import annotations

import io
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path

import pytest
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output import DummyOutput

from assistant.practice.keeping.record import open_record
from assistant.practice.keeping.rows import HEARD, Answered
from assistant.practice.sitting_marks import ASKED, CITED, HEAD, NOTE, Line
from assistant.terminal.arguments import parse
from assistant.terminal.class_ear import answer_text
from assistant.terminal.class_voice import ClassVoice
from assistant.terminal.options import UsageProblem
from assistant.terminal.rehearsal import Rehearsal
from assistant.terminal.rehearsing import sit
from assistant.terminal.screen import Screen
from assistant.terminal.session import Session, open_session
from assistant.terminal.simulated import clock
from assistant.terminal.sitting_ear import SpokenLines, ends_with
from assistant.terminal.sitting_prompt import EditedLines, PlainLines
from assistant.terminal.sitting_room import Room, Wanted
from assistant.terminal.sitting_voice import TypedVoice, lines_said, written
from assistant.voice import control_words as words
from assistant.voice import hands_free_said as told
from assistant.voice.asking import SpokenAnswer
from assistant.voice.speaking.settings import VoiceSettings
from tests.voice.hearing.fakes import FakeSpeaker

TYPE = "aldermere_120"
SILENCE = SpokenAnswer()
ON_THE_MARK = SpokenAnswer()
"""A silence after the mark: it goes on."""


def heard(*readings: str) -> SpokenAnswer:
    return SpokenAnswer(readings)


class Answering:
    """Stands in for what asks aloud and hears: gives answers in their order and notes what was said."""

    def __init__(self, answers: Iterable[SpokenAnswer]) -> None:
        self.said: list[str] = []
        self._answers = list(answers)

    def ask(
        self, question: str, patience_s: float | None = None, first: str = "", choices: Sequence[str] = ()
    ) -> SpokenAnswer:
        self.said.append(f"{first} {question}".strip())
        return self._answers.pop(0) if self._answers else SpokenAnswer((), words.STOP)

    def tell(self, text: str) -> None:
        self.said.append(text)


class Held:
    """What a rehearsal by ear left: what was said, what was shown, what the record holds."""

    def __init__(self, said: list[str], shown: str, kept: tuple[Answered, ...], busy: bool) -> None:
        self.said = said
        self.shown = shown
        self.kept = kept
        self.busy = busy


@pytest.fixture(scope="module")
def session() -> Session:
    return open_session(parse(["rehearse"]))


@pytest.fixture
def held(session: Session, own_places: Path, monkeypatch: pytest.MonkeyPatch) -> Callable[..., Held]:
    monkeypatch.setenv("DOWNLOCK_TODAY", "2026-11-25")

    def holding(*answers: SpokenAnswer, topic: str = "32-60", number: int = 2) -> Held:
        out, asker = io.StringIO(), Answering(answers)
        busy: list[bool] = []

        def by_ear(room: Room) -> bool:
            def speech(lines: Iterable[Line]) -> str:
                return lines_said(lines, session.knowledge, VoiceSettings())

            lines = SpokenLines(asker, room.desk, session.knowledge, speech, room.screen.say)  # type: ignore[arg-type]
            Rehearsal(room._replace(asking=lines, voice=lines, by_ear=True)).hold()
            ends_with(lines)
            busy.append(lines.busy)
            return lines.busy

        parsed = parse(["rehearse", "--learner", "Ana", "--topic", topic])
        wanted = Wanted(number, None, (topic,), "1")
        assert sit(parsed, session, wanted, PlainLines(False), Screen(out, 80), True, clock(), by_ear) == 0
        with open_record(str(own_places), clock) as record:
            ana = record.find("Ana")
            kept = record.history(ana, TYPE) if ana else ()
        return Held(asker.said, out.getvalue(), kept, busy[0])

    return holding


def test_it_asks_aloud_marks_and_goes_on(held: Callable[..., Held]) -> None:
    done = held(SpokenAnswer((), words.PASS), ON_THE_MARK, SpokenAnswer((), words.PASS), ON_THE_MARK)

    assert done.said[0].startswith("Answer in your own words.")
    assert done.said[0].endswith("?") or done.said[0].endswith(".")
    assert done.said[1].startswith("Missed.")
    assert len(done.kept) == 2
    assert {each.note.how for each in done.kept} == {HEARD}
    assert done.said[-1].startswith("Two answered:")


def test_what_is_said_holds_no_figure_no_paragraph_and_no_option(held: Callable[..., Held]) -> None:
    done = held(SpokenAnswer((), words.PASS), ON_THE_MARK)

    for said in done.said:
        assert not any(sign.isdigit() or sign in "()[]<>#" for sign in said), said
        assert "--" not in said
        assert "typed" not in said


def test_three_silences_mark_nothing_and_end_it(held: Callable[..., Held]) -> None:
    done = held(SILENCE, SILENCE, SILENCE)

    assert done.kept == ()
    assert done.busy
    assert done.said[-1].endswith(told.BUSY)


def test_a_silence_says_the_question_again_and_marks_nothing(held: Callable[..., Held]) -> None:
    done = held(SILENCE, SpokenAnswer((), words.STOP))

    assert done.kept == ()
    assert done.said[0].endswith(done.said[1])


@pytest.mark.parametrize("nothing", ["what a lovely morning", "we need milk and bread", "the dog is hungry"])
def test_what_says_nothing_to_the_point_is_said_back_before_it_is_marked(
    held: Callable[..., Held], nothing: str
) -> None:
    done = held(heard(nothing), SpokenAnswer((), words.STOP))

    assert done.kept == ()
    assert done.said[1].startswith(f"I heard: {nothing}. Say it once more")


def test_said_twice_it_is_marked(held: Callable[..., Held]) -> None:
    done = held(heard("what a lovely morning"), heard("what a lovely morning"), ON_THE_MARK, number=1)

    assert [each.note.mark for each in done.kept] == ["missed"]


def test_other_talk_after_the_mark_goes_on(held: Callable[..., Held]) -> None:
    done = held(SpokenAnswer((), words.PASS), heard("turn left here"), SpokenAnswer((), words.STOP))

    assert len(done.kept) == 1
    assert "turn left" not in done.said[2]


def test_a_hint_may_be_asked_for(held: Callable[..., Held]) -> None:
    done = held(SpokenAnswer((), "", "hint"), SpokenAnswer((), words.PASS), ON_THE_MARK, number=1)

    assert len(done.kept) == 1
    assert done.said[0] != done.said[1]


def test_a_mark_may_be_overruled(held: Callable[..., Held]) -> None:
    done = held(
        SpokenAnswer((), words.PASS), SpokenAnswer((), "", "overrule"), SpokenAnswer((), "", "right"), ON_THE_MARK,
        number=1,
    )  # fmt: skip

    assert [each.note.mark for each in done.kept] == ["right"]


def test_a_silence_leaves_the_mark_as_it_is(held: Callable[..., Held]) -> None:
    done = held(SpokenAnswer((), words.PASS), SpokenAnswer((), "", "overrule"), SILENCE, ON_THE_MARK, number=1)

    assert [each.note.mark for each in done.kept] == ["missed"]


@pytest.mark.parametrize(("spoken", "text"), [
    (SpokenAnswer(("I have no idea",), words.PASS), "pass"), (SpokenAnswer((), words.AGAIN), "say again"),
    (SpokenAnswer(("star",), words.STOP), ""), (SpokenAnswer(("this a guard",), words.DISREGARD), ""),
    (SpokenAnswer(("two zero five",)), "two zero five"), (SpokenAnswer(), ""),
])  # fmt: skip
def test_a_class_marks_no_word_that_steers(spoken: SpokenAnswer, text: str) -> None:
    assert answer_text(spoken) == text


# --- aloud, while answers are typed


def test_lines_are_said_without_what_only_the_eye_needs() -> None:
    lines = (
        Line("1/3 [###.....] 32-60 Position", HEAD), Line("How fast?", ASKED), Line("LIM 3.1 (revision 7)", CITED),
        Line("Nothing was typed. Type your answer.", NOTE),
        Line("Today: 5 to ask, about 5 min; --minutes 30 takes the most urgent."),
    )  # fmt: skip

    assert written(lines) == "How fast? Nothing was said. Say your answer. Today: 5 to ask, about 5 min."


def test_question_and_mark_are_said_and_a_key_silences_them(session: Session, own_places: Path) -> None:
    speaker = FakeSpeaker(10_000)
    screen = Screen(io.StringIO(), 80)
    voice = TypedVoice(ClassVoice(session, screen, speaker, VoiceSettings()))
    with create_pipe_input() as source:
        source.send_text("pass\r\rstop\r")
        asking = EditedLines(screen, source, DummyOutput())
        asking.on_key = voice.stop

        def aloud(room: Room) -> bool:
            Rehearsal(room._replace(asking=asking, voice=voice)).hold()
            return False

        parsed = parse(["rehearse", "--learner", "Ana", "--topic", "32-60"])
        sit(parsed, session, Wanted(2, None, (), "1"), asking, screen, True, clock(), aloud)

    assert any("Missed." in said for said in speaker.said)
    assert speaker.stopped


@pytest.mark.parametrize("options", [
    ("rehearse", "--speak", "--oral"), ("rehearse", "--hands-free", "--mark", "x"), ("rehearse", "--pace", "100"),
    ("--learner", "Ana"), ("rehearse", "--talk-key"),
])  # fmt: skip
def test_what_does_not_go_together_is_told(options: tuple[str, ...]) -> None:
    with pytest.raises(UsageProblem, match="go"):
        parse(list(options))
