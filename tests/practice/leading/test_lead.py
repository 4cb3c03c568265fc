"""A class led by what an instructor types, kept in the record as it goes."""

import pytest

from assistant.conversation.opening import Knowledge
from assistant.practice.keeping.rows import CLASS
from assistant.practice.leading.holding import standing_of
from assistant.practice.leading.keying import key_lines
from assistant.practice.leading.lead import prompt
from assistant.practice.leading.standing import ANSWERING, BETWEEN, BREAK, OVER, THINKING
from assistant.practice.leading.steps import LISTENING, opening_lines
from assistant.practice.making import make_questions
from assistant.practice.making.question import Key, Question
from assistant.rendering.text import wrap
from tests.practice.leading.conftest import NAMES, Begin

Questions = tuple[Question, ...]


@pytest.fixture(scope="session")
def several(know: Knowledge) -> Questions:
    return make_questions(know, "5", 14, hardest=2)


def test_a_turn_from_question_to_mark(begin: Begin, speeds: Questions) -> None:
    room = begin(speeds)
    assert room.standing.phase == BETWEEN

    standing = room.type("")
    assert standing.phase == THINKING
    assert speeds[0].text in room.told
    assert "230" not in room.told
    assert room.steps[-1].aloud == speeds[0].text
    standing = room.type("")
    assert standing.phase == ANSWERING
    name = standing.name_of(standing.turns[0].seat)
    assert name in NAMES
    assert room.told == f"{name}, please."
    standing = room.type("r")

    assert (standing.phase, standing.turns[0].mark, room.told) == (BETWEEN, "right", f"{name}: right.")
    learner = room.record.find(name)
    assert learner is not None
    (kept,) = room.record.history(learner, "aldermere_120")
    assert (kept.note.record, kept.note.mark, kept.note.how) == ("vlo-extension", "right", CLASS)


@pytest.mark.parametrize(
    "key, mark, share", [("r", "right", 1), ("p", "partly", 0.5), ("w", "wrong", 0), ("m", "missed", 0)]
)
def test_one_key_marks(begin: Begin, speeds: Questions, key: str, mark: str, share: float) -> None:
    turn = begin(speeds).type("", "", key).turns[0]

    assert (turn.mark, turn.share, turn.overruled) == (mark, share, False)


def test_a_typed_answer_is_marked_and_the_mark_kept_with_enter(begin: Begin, speeds: Questions) -> None:
    room = begin(speeds)
    standing = room.type("", "", "230 kt")

    assert standing.phase == ANSWERING
    assert "The program's mark: right." in room.told
    assert "Enter: keep “right”" in prompt(standing)
    turn = room.type("").turns[0]
    assert (turn.mark, turn.answer, turn.marked, turn.overruled) == ("right", "230 kt", "right", False)


def test_the_instructor_overrules_and_that_is_kept(begin: Begin, speeds: Questions) -> None:
    room = begin(speeds)
    turn = room.type("", "", "a", "205 kt", "p").turns[0]

    assert (turn.mark, turn.marked, turn.overruled) == ("partly", "wrong", True)
    assert "The program marked it wrong." in room.told


def test_what_was_said_can_go_with_the_key_or_come_after_it(begin: Begin, speeds: Questions) -> None:
    room = begin((*speeds, speeds[0]))
    first = room.type("", "", "w 205 kt").turns[0]
    second = room.type("", "", "w", "205 kt").turns[1]

    for turn in (first, second):
        assert (turn.mark, turn.answer, turn.confused_with) == ("wrong", "205 kt", "vlo-retraction")


def test_an_answer_is_corrected_as_on_the_radio(begin: Begin, speeds: Questions) -> None:
    room = begin(speeds)

    assert room.type("", "", "205 kt, correction 230 kt").plan.suggested[1].mark == "right"
    assert room.type("CORRECTION 205 kt").plan.suggested[1].mark == "wrong"
    assert room.type("disregard").plan.suggested == {}
    assert room.type("w", "CORRECTION right").turns[0].mark == "right"


def test_yes_and_right_within_an_answer_are_no_marks(begin: Begin, speeds: Questions) -> None:
    room = begin(speeds)

    assert room.type("", "", "yes").phase == ANSWERING
    assert room.type("right of the engine display").phase == ANSWERING
    assert room.type("wrong").turns[0].mark == "wrong"


def test_the_key_appears_only_when_it_is_asked_for(begin: Begin, speeds: Questions) -> None:
    room = begin(speeds)
    room.type("", "h", "", "205 kt", "w", "s")
    shown = "\n".join(line.text for step in room.steps for line in step.lines)
    assert "230" not in shown
    assert "Hint: The answer is in knots; think of the LIM, Extension and retraction." in shown
    assert "3.1" not in shown

    room.type("k")
    assert "230 kt" in room.told
    assert "LIM 3.1, revision 7" in room.told


def test_the_second_view_has_the_key_once_it_is_revealed(begin: Begin, speeds: Questions) -> None:
    room = begin(speeds)
    assert "Fewest turns (0): Ana, Ben" in "\n".join(line.text for line in key_lines(room.standing))
    room.type("")
    view = "\n".join(line.text for line in key_lines(room.standing))
    assert "230 kt" not in view
    assert "3.1" not in view
    assert "Nobody is named yet." in view
    room.type("k", "", "205 kt")

    view = "\n".join(line.text for line in key_lines(room.standing))
    assert "The program's mark: wrong." in view
    assert "205 kt is the maximum speed for retracting the gear, VLO (retraction) (LIM 3.1)." in view


def test_the_second_view_has_the_key_with_the_mark(begin: Begin, speeds: Questions) -> None:
    room = begin(speeds)
    room.type("", "", "205 kt")
    assert "LIM 3.1" not in "\n".join(line.text for line in key_lines(room.standing))
    room.type("w")

    assert "LIM 3.1, revision 7" in "\n".join(line.text for line in key_lines(room.standing))


def test_where_another_terminal_shows_the_key_the_class_does_not_see_it(begin: Begin, speeds: Questions) -> None:
    room = begin(speeds, key_elsewhere=True)
    room.type("", "k")

    assert room.told == "The key is shown in the other terminal; c shows it to the class here."
    assert "LIM 3.1, revision 7" in "\n".join(line.text for line in key_lines(room.standing))


def test_the_class_sees_a_revealed_key_by_a_key_of_its_own(begin: Begin, speeds: Questions) -> None:
    room = begin(speeds, key_elsewhere=True)
    room.type("", "c")
    assert room.told == "The key is not revealed yet: k reveals it, then c shows it to the class."

    room.type("k", "c")
    assert "230 kt" in room.told
    assert "LIM 3.1, revision 7" in room.told


@pytest.mark.parametrize("key", ["k", "c"])
def test_a_marked_question_has_nothing_left_to_keep_from_the_class(begin: Begin, speeds: Questions, key: str) -> None:
    room = begin(speeds, key_elsewhere=True)
    room.type("", "", "w", key)

    assert "230 kt" in room.told
    assert "LIM 3.1, revision 7" in room.told


def test_passing_on_reaches_everybody_once(begin: Begin, speeds: Questions) -> None:
    room = begin(speeds)
    standing = room.type("", "", "UNABLE", *["n"] * 10)
    assert len({*standing.turns[0].passed, standing.turns[0].seat}) == 12

    standing = room.type("pass")
    assert "Everybody here has had this question" in room.told
    assert len(standing.turns[0].passed) == 11


def test_a_pass_by_a_slip_of_the_finger_is_taken_back(begin: Begin, speeds: Questions) -> None:
    room = begin(speeds)
    first = room.type("", "").turns[0].seat
    second = room.type("n").turns[0].seat
    standing = room.type("205 kt", "n", "u")
    assert (standing.turns[0].seat, standing.turns[0].passed) == (second, (first,))

    standing = room.type("205 kt", "u")
    assert (standing.turns[0].seat, standing.turns[0].passed, standing.plan.suggested) == (first, (), {})
    assert room.told == f"The pass is taken back.\n{standing.name_of(first)}, please."
    turn = room.type("230 kt", "").turns[0]
    assert (turn.seat, turn.passed, turn.mark) == (first, (), "right")


def test_a_sound_of_thinking_is_no_answer(begin: Begin, speeds: Questions) -> None:
    room = begin(speeds)
    standing = room.type("", "", "uh")

    assert standing.plan.suggested == {}
    assert room.told == "No answer yet; the question stands."


@pytest.mark.parametrize("line", ["n", "dunno", "pass"])
def test_a_pass_is_said_to_be_one(begin: Begin, speeds: Questions, line: str) -> None:
    room = begin(speeds)
    first = room.type("", "").turns[0].seat
    name = room.standing.name_of(first)
    standing = room.type(line)

    assert room.told.splitlines() == [
        f"{name} passes it on: missed.", f"{standing.name_of(standing.turns[0].seat)}, please."
    ]  # fmt: skip


def test_the_same_question_goes_to_somebody_else_as_a_turn_of_its_own(begin: Begin, speeds: Questions) -> None:
    room = begin(speeds)
    standing = room.type("", "", "w", "n", "", "r")

    assert [turn.mark for turn in standing.turns] == ["wrong", "right"]
    assert len({turn.seat for turn in standing.turns}) == 2


def test_the_last_mark_is_taken_back_even_when_the_next_question_stands(begin: Begin, several: Questions) -> None:
    room = begin(several)
    first = room.type("", "", "w").turns[0]
    standing = room.type("", "u")

    assert standing.current is not None
    assert (standing.current.id, standing.current.seat, standing.phase) == (first.id, first.seat, ANSWERING)
    assert several[0].text in room.told
    standing = room.type("r")
    assert standing.turns[0].mark == "right"
    assert standing.phase == THINKING
    assert several[1].text in room.told


@pytest.mark.parametrize("after", [("n",), ("n", "")])
def test_what_was_put_because_of_a_mark_goes_with_it(begin: Begin, several: Questions, after: tuple[str, ...]) -> None:
    room = begin(several)
    first = room.type("", "", "w").turns[0]
    standing = room.type(*after, "u")

    assert [turn.id for turn in standing.turns] == [first.id]
    assert standing.phase == ANSWERING
    standing = room.type("r", "")
    assert [turn.number for turn in standing.turns] == [1, 2]
    assert several[1].text in room.told
    assert standing.left == len(several) - 2


def test_a_mark_that_is_in_is_told_when_a_class_goes_on(begin: Begin, several: Questions) -> None:
    room = begin(several)
    standing = room.type("", "", "w")
    told = [line.text for line in opening_lines(standing)]

    assert told == [f"Last: {standing.name_of(standing.turns[0].seat)}, question 1: wrong.", several[0].text]


def test_a_withdrawn_question_counts_for_nobody_and_is_not_put_again(begin: Begin, several: Questions) -> None:
    room = begin(several)
    standing = room.type("", "", "d", "")

    assert [turn.asking.question for turn in standing.turns] == [several[1].text]


def test_standby_pauses_and_the_time_stands_still(begin: Begin, several: Questions) -> None:
    room = begin(several, minutes=2)
    room.type("", "")
    room.seconds += 30
    assert room.type("STANDBY").phase == BREAK
    room.seconds += 3600
    standing = room.type("")
    assert standing.phase == ANSWERING
    assert several[0].text in room.told
    assert 29 <= standing.plan.spent <= 31
    room.seconds += 100
    standing = room.type("r")

    assert standing.time_is_over
    assert prompt(standing).startswith("Enter: end the class, more: ask on")
    assert room.type("more", "").phase == THINKING


def test_say_again_repeats_at_any_moment(begin: Begin, speeds: Questions) -> None:
    room = begin(speeds)
    for lines in (("",), ("",), ("r",)):
        room.type(*lines)
        room.type("SAY AGAIN")
        assert speeds[0].text in room.told


def test_the_end_is_asked_for_twice_while_a_question_stands(begin: Begin, speeds: Questions) -> None:
    room = begin(speeds)
    assert room.type("", "e").phase == THINKING
    assert room.type("").phase == THINKING
    assert room.told == "The class goes on."
    assert room.type("stop", "y").phase == OVER
    assert room.standing.turns == ()


def test_all_asked_and_enter_ends(begin: Begin, speeds: Questions) -> None:
    room = begin(speeds)
    standing = room.type("", "", "r")

    assert prompt(standing).startswith("Enter: end the class")
    assert room.type("").phase == OVER


def test_people_come_late_and_leave(begin: Begin, several: Questions) -> None:
    room = begin(several, names=("Ana", "Ben"))
    room.type("add Cleo Dax", "away ana", "away ben")
    standing = room.type("", "")
    assert standing.name_of(standing.turns[0].seat) == "Cleo Dax"
    assert room.type("r", "away cleo", "", "").phase == THINKING
    assert "Nobody is here" in room.told
    room.type("back an")
    standing = room.type("")
    assert standing.name_of(standing.turns[1].seat) == "Ana"


def test_twelve_questions_reach_all_of_twelve_people(begin: Begin, several: Questions) -> None:
    room = begin(several)
    standing = room.type(*["", "", "r"] * 12)

    assert len({turn.seat for turn in standing.turns}) == 12


def test_a_case_goes_on_until_nothing_more_changes_and_is_looked_back_on(begin: Begin, know: Knowledge) -> None:
    start = make_questions(know, "3", entries=("braking",), forms=("loss",))
    single = tuple(each for each in start if each.text.startswith("ANTI-SKID switch OFF") and each.difficulty == 2)
    room = begin(single[:1] or start[:1])
    room.type("", "", "r")
    asked = 1
    while room.type("g").phase == THINKING:
        asked += 1
        assert room.told.splitlines()[-1].startswith("And now ")
        assert "ANTI-SKID switch OFF" in room.told.splitlines()[-1]
        assert room.standing.turns[-1].asking.expected
        room.type("", "r")
        assert asked < 6

    assert asked > 1
    assert room.told.startswith("Nothing further can fail that would change this.\nThe case, looked back on:")
    assert room.told.count("(AOM 32.40") == asked


@pytest.mark.parametrize(
    ("entry", "text"),
    [
        ("system-1-lost-extension", "System 1 lost: what happens?"),
        ("system-2-lost-brakes", "System 2 lost: what do you lose?"),
        ("accumulator-low", "What does the book say of the accumulator empty?"),
        ("steering", "System 2 lost and the ANTI-SKID switch OFF: do the pedals steer?"),
        ("parking_brake", "System 2 lost and the PEDAL button held: does the parking brake hold?"),
    ],
)
def test_a_case_goes_on_from_whatever_names_a_failure(
    begin: Begin, speeds: Questions, entry: str, text: str
) -> None:
    room = begin((speeds[0]._replace(text=text, entry=entry, form="fact"),))

    assert room.type("", "", "r", "g").phase == THINKING
    assert room.told.splitlines()[-1].startswith("And now ")


def test_asking_what_something_means_is_no_case_to_go_on_from(begin: Begin, know: Knowledge) -> None:
    (meaning,) = make_questions(know, "1", entries=("system-lost-meaning",), forms=("meaning",))[:1]
    room = begin((meaning,))

    assert room.type("", "", "r", "g").phase == BETWEEN
    assert "names nothing that has failed" in room.told


@pytest.mark.parametrize("phase", ["answering", "between"])
def test_a_letter_that_is_no_key_changes_nothing(begin: Begin, speeds: Questions, phase: str) -> None:
    room = begin(speeds)
    room.type("", "", "230 kt", *([""] if phase == "between" else []))

    room.type("o")

    assert "“o” is no key here" in room.told
    turn = room.type("" if phase == "answering" else "k").turns[0]
    assert (turn.mark, turn.answer, turn.overruled) == ("right", "230 kt", False)


def test_a_question_that_names_no_failure_says_why_no_case_goes_on(begin: Begin, speeds: Questions) -> None:
    room = begin(speeds)

    assert room.type("", "", "r", "g").phase == BETWEEN
    assert "names nothing that has failed" in room.told


def test_why_is_asked_after_a_figure_too_where_its_paragraph_states_it(begin: Begin, know: Knowledge) -> None:
    (figure,) = make_questions(know, "1", entries=("accumulator-tow-minimum",), forms=("figure",))[:1]
    room = begin((figure,))

    assert room.type("", "", "r", "y").phase == THINKING
    assert room.told.endswith("And why?") and "no reserve brake" in room.standing.turns[-1].asking.expected


def test_why_is_asked_where_a_reason_is_stated(begin: Begin, know: Knowledge, speeds: Questions) -> None:
    states = make_questions(know, "4", entries=("braking",), forms=("state",))
    accumulator = tuple(each for each in states if each.text.startswith("Accumulator empty: which braking mode"))
    room = begin((*accumulator[:1], *speeds))
    standing = room.type("", "", "r", "y")

    assert standing.phase == (THINKING if accumulator else BETWEEN)
    if accumulator:
        assert standing.turns[1].asking.question == "And why?"


def test_what_the_program_cannot_mark_the_instructor_marks(begin: Begin, speeds: Questions) -> None:
    own = speeds[0]._replace(
        text="Where is the spare torch kept?", form="own", entry="own:torch", key=Key(says="in the left cupboard")
    )
    room = begin((own,))
    room.type("", "", "under the seat")
    assert "mark it yourself" in room.told
    room.type("")
    assert "Mark it with r, p, w or m" in room.told
    turn = room.type("w").turns[0]
    assert (turn.mark, turn.marked, turn.answer, turn.overruled) == ("wrong", "wrong", "under the seat", False)


def test_whoever_opens_the_record_finds_the_class_as_it_stands(begin: Begin, several: Questions) -> None:
    room = begin(several)
    standing = room.type("", "", "p", "", "", "some answer")

    found = standing_of(room.record.sittings, standing.sitting.id)

    assert found == standing
    assert several[1].text in "\n".join(line.text for line in opening_lines(found))


def test_every_prompt_fits_forty_columns(begin: Begin, several: Questions) -> None:
    room = begin(several, minutes=1)
    prompts = [prompt(room.standing)]
    for line in ("", "", "a", "", "some answer", "r", "e", "", "b", "", "k"):
        room.type(line)
        prompts.append(prompt(room.standing, room.mode))
    room.seconds += 100
    prompts.append(prompt(room.type("k")))

    assert [part for each in prompts for part in each.split("\n") if len(part) > 40] == []
    assert all(each.rstrip().endswith((":", ">")) for each in prompts)


@pytest.mark.parametrize(
    "line", ["r", "c", "hands 99", "xyzzy", "back nobody", "n", "g", "y", "u", "d", "\x1b[A", "a" * 5000]
)
def test_anything_typed_at_any_moment_is_answered_and_nothing_is_lost(
    begin: Begin, several: Questions, line: str
) -> None:
    room = begin(several)
    for before in ([], [""], [""], ["m"], ["b"]):
        room.type(*before)
        if room.standing.phase != OVER:
            room.type(line)
            assert room.steps[-1].lines or room.steps[-1].acts or room.steps[-1].mode


def test_words_steer_even_where_an_answer_is_typed(begin: Begin, speeds: Questions) -> None:
    room = begin(speeds)
    assert room.type("", "", "a", "SAY AGAIN").phase == ANSWERING
    assert speeds[0].text in room.told
    assert room.type("a", "230 kt, disregard").plan.suggested == {}
    assert room.type("a", "r").plan.suggested[1].answer == "r"
    assert room.type("a", "unable").plan.suggested[1].mark == "missed"
    assert room.type("a", "STANDBY").phase == BREAK


def test_somebody_forgotten_in_the_middle_takes_only_their_own_turns_along(begin: Begin, several: Questions) -> None:
    room = begin(several)
    standing = room.type("", "", "r", "", "")
    first, second = (standing.name_of(turn.seat) for turn in standing.turns)
    learner = room.record.find(second)
    assert learner is not None
    room.record.forget(learner)

    standing = room.type("r")
    assert standing.phase == BETWEEN
    assert [standing.name_of(turn.seat) for turn in standing.turns] == [first]
    assert len(room.type("", "", "r").turns) == 2


def test_an_answer_by_ear_is_marked_and_a_silence_is_none(begin: Begin, speeds: Questions) -> None:
    room = begin(speeds)
    room.type("", "", "l")
    assert "No microphone is in use" in room.told
    room.desk = room.desk._replace(hears=True)

    room.type("l")
    assert room.mode == LISTENING
    assert room.type("").plan.suggested == {}
    assert room.told == "There was no answer; the question stands."
    assert room.type("l", "two hundred and thirty knots").plan.suggested[1].mark == "right"
    assert room.type("l", "say again").plan.suggested[1].mark == "right"
    assert speeds[0].text in room.told


def test_what_was_said_stands_with_the_turn_alone(begin: Begin, speeds: Questions) -> None:
    room = begin(speeds)
    standing = room.type("", "", "205 kt", "")

    assert standing.turns[0].answer == "205 kt"
    assert "205 kt" not in str(standing.sitting.plan)
    standing = room.type("correction partly")
    assert (standing.turns[0].answer, standing.turns[0].mark, standing.turns[0].marked) == ("205 kt", "partly", "wrong")
    view = "\n".join(line.text for line in key_lines(standing))
    assert "Answer: 205 kt" in view


@pytest.mark.parametrize(
    ("typed", "name", "team"),
    [("Cleo Dax (Green)", "Cleo Dax", "Green"), ("Örn [Blue team]", "Örn", "Blue team"), ("Dee", "Dee", "")],
)
def test_somebody_is_added_with_a_team(begin: Begin, speeds: Questions, typed: str, name: str, team: str) -> None:
    room = begin(speeds)
    standing = room.type(f"add {typed}")

    assert [(each.name, each.team) for each in standing.seats if each.name == name] == [(name, team)]
    assert room.told.startswith(f"{name} is in the class now")


def test_a_show_of_hands_counts_who_is_there(begin: Begin, speeds: Questions) -> None:
    room = begin(speeds)
    there = len(room.standing.seats)
    room.type("", f"away {room.standing.seats[0].name}")

    room.type(f"hands {there}")
    assert room.told == f"hands takes a number from 1 to {there - 1}."
    room.type(f"hands {there - 1}")
    assert room.told == f"Kept: {there - 1} of {there - 1} thought the same."


@pytest.mark.parametrize(
    ("typed", "told", "not_told"),
    [
        (("",), "Enter names who answers", "r right"),
        (("", ""), "r right, p partly", "Enter names who answers"),
        (("", "", "r"), "Enter: the next question", "r right, p partly"),
    ],
)
def test_help_tells_what_may_be_typed_now(
    begin: Begin, speeds: Questions, typed: tuple[str, ...], told: str, not_told: str
) -> None:
    room = begin(speeds)
    room.type(*typed)
    room.type("?")

    assert told in room.told and not_told not in room.told
    assert len([part for line in room.told.splitlines() for part in wrap(line, 40)]) <= 22


@pytest.mark.parametrize("word", ["pass", "unable", "n"])
def test_nobody_passes_before_anybody_is_named(begin: Begin, speeds: Questions, word: str) -> None:
    room = begin(speeds)
    standing = room.type("", word)

    assert "Nobody has been named yet" in room.told
    assert standing.current is not None and standing.current.seat is None
