"""A rehearsal as its learner types it, without a screen, a clock or a record: lines in, lines and acts out."""

from datetime import UTC, datetime

import pytest

from assistant.practice.asking.standing import Was
from assistant.practice.sitting import missed_once, prompt, put, said
from assistant.practice.sitting_marked import answers_next
from assistant.practice.sitting_marks import ASKED, HEAD, Line, Taken
from assistant.practice.sitting_state import (
    ANSWERING,
    END,
    KEEP,
    MARKED,
    NEXT,
    OVER,
    OVERRULING,
    REMARK,
    STANDING_BY,
    After,
    Desk,
    Put,
    State,
)
from tests.practice.sitting.conftest import Putter

NOW = datetime(2026, 11, 25, 7, 0, tzinfo=UTC)


class Sitter:
    """Somebody at the prompt: types lines one after another, and sees what came of the last."""

    def __init__(self, asked: Put, desk: Desk) -> None:
        self.desk = desk
        self.acts: list[str] = []
        self.after = put(State(), asked, "1/3", 0.0)

    def types(self, *lines: str, seconds: float | None = None) -> After:
        for line in lines:
            self.after = said(self.after.state, line, seconds, self.desk)
            self.acts += [self.after.act] if self.after.act else []
        return self.after

    @property
    def state(self) -> State:
        return self.after.state

    @property
    def told(self) -> str:
        return "\n".join(line.text for line in self.after.lines)


@pytest.fixture
def sitter(asked: Putter, desk: Desk) -> Sitter:
    return Sitter(asked("vlo-extension", "figure"), desk)


def test_a_question_is_put_under_its_section_and_how_far_it_is(sitter: Sitter) -> None:
    head, question = sitter.after.lines

    assert head == Line("1/3 [........] 32-30 Extension and retraction", HEAD)
    assert question.kind == ASKED
    assert sitter.state.phase == ANSWERING


def test_an_answer_is_kept_and_then_the_next_is_wanted(sitter: Sitter) -> None:
    sitter.types("230 kt", seconds=3.0)

    assert (sitter.state.phase, sitter.acts) == (MARKED, [KEEP])
    assert sitter.told.startswith("Right.\n230 kt IAS: maximum speed for extending the gear")
    assert sitter.told.endswith("LIM 3.1, revision 7")
    (given,) = sitter.state.given
    assert (given.taken.mark, given.hesitation, given.word, given.was_overruled) == ("right", 3.0, "recalled", False)
    assert sitter.types("").act == NEXT


@pytest.mark.parametrize("typed", ["pass", "UNABLE", "don't know", "no idea", "?"])
def test_not_knowing_is_missed_and_shows_the_answer(sitter: Sitter, typed: str) -> None:
    sitter.types(typed)

    assert sitter.acts == [KEEP]
    assert sitter.told.startswith("Missed.\n230 kt IAS")
    assert sitter.state.given[-1].word == "missed"


def test_nothing_typed_is_no_answer(sitter: Sitter) -> None:
    sitter.types("", "   ")

    assert (sitter.state.phase, sitter.acts, sitter.state.given) == (ANSWERING, [], ())
    assert sitter.told.startswith("Nothing was typed.")


def test_a_question_typed_in_place_of_an_answer_is_not_marked(sitter: Sitter) -> None:
    sitter.types("what is VLE?", "and how fast may I fly then?")

    assert (sitter.state.phase, sitter.acts) == (ANSWERING, [])
    assert sitter.types("230 kt?").act == KEEP


@pytest.mark.parametrize("typed", ["uh", "err...", "hmm, let me see", "I think it's", "um, er, the answer is"])
def test_who_is_still_thinking_has_answered_nothing(sitter: Sitter, typed: str) -> None:
    sitter.types(typed)
    assert (sitter.state.phase, sitter.acts, sitter.told) == (ANSWERING, [], "Take your time; the question stands.")

    sitter.types("230 kt", typed)
    assert (sitter.state.phase, sitter.acts) == (MARKED, [KEEP])
    assert sitter.told == "The answer is marked; Enter goes on."


@pytest.mark.parametrize("typed", ["I think so", "it is", "er, 205", "that's right", "mm"])
def test_words_that_say_something_are_an_answer(sitter: Sitter, typed: str) -> None:
    assert sitter.types(typed).act == KEEP


@pytest.mark.parametrize("typed", ["why", "why not?", "and then?", "source", "correction", "go on", "CORRECTION."])
def test_a_control_word_is_never_marked_as_an_answer(sitter: Sitter, typed: str) -> None:
    sitter.types(typed)

    assert (sitter.state.phase, sitter.acts, sitter.state.given) == (ANSWERING, [], ())
    assert sitter.told
    assert sitter.types("230 kt").act == KEEP


def test_a_correction_after_the_mark_is_no_question(sitter: Sitter) -> None:
    sitter.types("5 kt", "I think it is 5 kt, correction 10 kt")

    assert "“overrule” puts your own mark in its place." in sitter.told
    assert len(sitter.state.given) == 1


def test_the_steps_of_a_procedure_stand_on_lines_of_their_own(asked: Putter, desk: Desk) -> None:
    sitter = Sitter(asked("steer-lost-procedure", "steps"), desk)

    lines = [line.text for line in sitter.types("pass").lines]
    assert lines[1].endswith(":")
    assert [line[:3] for line in lines[2:-1]] == [f"{n}. " for n in range(1, len(lines) - 2)]


def test_a_hint_helps_once_and_counts_as_prompted(sitter: Sitter) -> None:
    hint = sitter.types("hint").lines[0].text
    again = sitter.types("hint").lines[0].text
    sitter.types("230 kt")

    assert "230" not in hint
    assert again == f"There is no other hint. {hint}"
    assert sitter.state.given[-1].hinted
    assert sitter.state.given[-1].word == "prompted"


def test_say_again_repeats_and_standby_pauses_until_enter(sitter: Sitter) -> None:
    question = sitter.after.lines[-1]

    assert sitter.types("SAY AGAIN").lines == (question,)
    assert sitter.types("STANDBY").state.phase == STANDING_BY
    assert sitter.types("").lines == (question,)
    sitter.types("230 kt", seconds=500.0)
    assert sitter.state.given[-1].hesitation is None  # time in a pause says nothing
    assert sitter.state.given[-1].word == "recalled"


@pytest.mark.parametrize(
    ("line", "mark"),
    [("230 kt", "right"), ("it is 230 knots indicated", "right"), ("255 kt", "wrong"), ("pass", "missed")],
)
def test_an_answer_typed_after_standby_is_one(sitter: Sitter, line: str, mark: str) -> None:
    sitter.types("standby", line, seconds=500.0)

    (given,) = sitter.state.given
    assert (sitter.state.phase, given.taken.mark, given.hesitation) == (MARKED, mark, None)
    assert sitter.acts == [KEEP]


@pytest.mark.parametrize("line", ["I am here", "coffee is in", "okay", "ready", "next"])
def test_what_is_no_answer_only_ends_the_pause(sitter: Sitter, line: str) -> None:
    question = sitter.after.lines[-1]
    sitter.types("standby", line)

    assert (sitter.state.phase, sitter.state.given) == (ANSWERING, ())
    assert sitter.after.lines[0] == question


def test_a_hint_or_a_question_after_standby_is_taken_for_that(sitter: Sitter) -> None:
    assert sitter.types("standby", "hint").state.hinted
    assert "That is a question" in sitter.types("standby", "what is VLE?").lines[0].text
    assert sitter.types("standby", "standby").state.phase == STANDING_BY
    assert sitter.types("stop").state.phase == OVER


def test_after_the_mark_a_pause_ends_in_what_was_typed_too(sitter: Sitter) -> None:
    sitter.types("230 kt", "standby", "why")
    assert sitter.after.lines
    assert sitter.state.phase == MARKED
    assert sitter.types("standby", "so far so good").state.phase == MARKED
    assert sitter.types("standby", "overrule wrong").act == REMARK


@pytest.mark.parametrize(
    ("line", "answers"),
    [("205 kt", True), ("pass", True), ("red", True), ("no", True), ("hint", True), ("", False), ("next", False),
     ("why", False), ("overrule right", False), ("stop", False), ("what is VLE?", False), ("standby", False)],
)  # fmt: skip
def test_which_lines_of_a_pipe_are_for_the_next_question(sitter: Sitter, line: str, answers: bool) -> None:
    assert not answers_next(sitter.state, line)
    assert answers_next(sitter.types("230 kt").state, line) is answers


def test_long_thought_before_typing_counts_as_prompted(sitter: Sitter) -> None:
    sitter.types("230 kt", seconds=60.0)

    assert sitter.state.given[-1].word == "prompted"


def test_disregard_drops_what_was_typed(sitter: Sitter) -> None:
    sitter.types("205 kt, DISREGARD", "disregard")

    assert (sitter.state.given, sitter.acts) == ((), [])
    assert sitter.types("280 CORRECTION 230 kt").state.given[-1].taken.mark == "right"


def test_after_the_mark_it_is_too_late_for_a_hint_or_to_disregard(sitter: Sitter) -> None:
    sitter.types("205 kt")

    for typed in ("hint", "disregard", "never mind"):
        assert sitter.types(typed).lines[0].text.startswith("The answer is marked already")
    assert sitter.state.phase == MARKED
    assert sitter.types("say again").lines[1].text.startswith("Wrong")


def test_a_mark_is_overruled_at_once_or_when_asked_which(sitter: Sitter) -> None:
    sitter.types("205 kt", "overrule right")

    assert sitter.acts == [KEEP, REMARK]
    assert sitter.told == "Right: your mark, recorded as overruled."
    assert sitter.state.given[-1].was_overruled
    assert sitter.state.given[-1].marked == "wrong"

    sitter.types("overrule")
    assert sitter.state.phase == OVERRULING
    sitter.types("perfect")
    assert sitter.told == "That is no mark: right, partly, wrong or missed."
    sitter.types("wrong")
    assert sitter.told == "Wrong: the program's own mark again."
    assert not sitter.state.given[-1].was_overruled
    assert sitter.types("overrule", "").lines[0].text == "The mark stands."
    assert sitter.types("overrule wrong").act == ""  # it is so already


def test_overrule_before_there_is_a_mark(sitter: Sitter) -> None:
    assert sitter.types("overrule").lines[0].text == "There is no mark yet to overrule."


def test_why_and_questions_of_ones_own_are_answered_after_the_mark(asked: Putter, desk: Desk) -> None:
    sitter = Sitter(asked("vlo-extension", "figure"), desk)
    sitter.types("230 kt", "and for retraction?")

    assert sitter.told.startswith("205 kt IAS")
    assert sitter.told.endswith("LIM 3.1, revision 7")
    assert sitter.types("why").state.phase == MARKED
    assert sitter.types("what is the weather").state.phase == MARKED
    assert sitter.types("next").act == NEXT


def test_why_gives_the_reason(asked: Putter, desk: Desk) -> None:
    sitter = Sitter(asked("why-not-pump", "reason"), desk)

    assert "accumulator fluid" in sitter.types("pass", "why").lines[0].text


@pytest.mark.parametrize("before", [(), ("205 kt",), ("205 kt", "overrule"), ("standby",)])
def test_stop_ends_it_anywhere(sitter: Sitter, before: tuple[str, ...]) -> None:
    after = sitter.types(*before, "STOP")

    assert (after.act, after.state.phase) == (END, OVER)


def test_what_cannot_be_marked_here_is_marked_by_the_learner(asked: Putter) -> None:
    def take(question, text):  # type: ignore[no-untyped-def]
        return Taken(text, "unmarked", 0.0, (), (), question.key.says, question.sources)

    sitter = Sitter(asked("vle", "figure"), Desk(take, lambda *_: pytest.fail("nothing was asked")))
    sitter.types("255")

    assert (sitter.state.phase, sitter.acts) == (OVERRULING, [])
    assert sitter.types("right").act == KEEP
    assert (sitter.state.given[-1].taken.mark, sitter.state.given[-1].was_overruled) == ("right", False)

    stopped = Sitter(asked("vle", "figure"), Desk(take, lambda *_: pytest.fail("nothing was asked")))
    assert stopped.types("255", "stop").state.given == ()


def test_what_a_revision_changed_is_said_and_does_not_give_the_answer_away(asked: Putter, desk: Desk) -> None:
    was = Was("280 kt", "230 kt", "LIM 7")
    sitter = Sitter(asked("vlo-extension", "figure", why="changed", was=was), desk)

    assert sitter.after.lines[1].text == "A revision has changed this since you were last asked (LIM 7)."
    sitter.types("280 kt")
    assert sitter.state.given[-1].taken.mark == "wrong"
    assert sitter.told.endswith("New since you were last asked (LIM 7): was 280 kt, now 230 kt.")


def test_one_who_is_asked_for_the_first_time_is_told_the_former_value_after_the_answer(
    asked: Putter, desk: Desk
) -> None:
    sitter = Sitter(asked("landing-distance-factor", "figure", why="new"), desk)

    assert len(sitter.after.lines) == 2
    sitter.types("1.6")
    assert "Formerly 1.5; changed with ABN 5." in sitter.told
    assert sitter.told.count("1.5") == 1


def test_every_prompt_says_what_it_expects_in_forty_columns() -> None:
    for phase in (ANSWERING, MARKED, OVERRULING, STANDING_BY):
        for shown in (prompt(State(phase=phase)), prompt(State(phase=phase), last=True)):
            assert len(shown) <= 40
            assert shown.endswith(": ")
    assert prompt(State(phase=MARKED), last=True).startswith("Enter to end")


def test_what_was_missed_and_not_asked_again_is_known(asked: Putter, desk: Desk) -> None:
    sitter = Sitter(asked("vle", "figure"), desk)
    sitter.types("pass", "")
    assert missed_once(sitter.state) == ("vle",)

    sitter.after = put(sitter.state, asked("vlo-extension", "figure"), "2/3", 0.4)
    sitter.types("230 kt", "")
    sitter.after = put(sitter.state, asked("vle", "figure", again=True), "3/3", 0.7)
    assert sitter.after.lines[1].text == "Once more, since it was missed:"
    sitter.types("255 kt or Mach 0.60")
    assert missed_once(sitter.state) == ()


def test_help_tells_every_control(sitter: Sitter) -> None:
    told = sitter.types("help") and sitter.told

    words = ["hint", "pass", "unable", "standby", "disregard", "correction", "why", "overrule", "stop"]
    assert all(f"“{word}”" in told for word in (*words, "say again", "don't know"))


@pytest.mark.parametrize("typed", ["what is vle", "dispute", "how many left", "230 kt, correction", "and who taxis?"])
def test_what_is_no_answer_costs_none(asked: Putter, desk: Desk, typed: str) -> None:
    sitter = Sitter(asked("vle", "figure"), desk)
    after = sitter.types(typed)

    assert (after.state.phase, after.state.given, after.act) == (ANSWERING, (), "")
    assert after.lines
