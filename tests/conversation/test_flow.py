"""Conversations: a turn changes just what it names, and a few words steer."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, CLARIFY, DECLINE, Answer
from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn

Talk = Callable[..., list[Answer]]


def first(answer: Answer) -> float:
    assert answer.outcome == ANSWER, answer.text
    return answer.values[0].value


class TestFollowUps:
    @pytest.mark.parametrize("turn", ["and at 70?", "what about 70 kt", "at 70 knots", "now at seventy knots"])
    def test_another_speed(self, talk: Talk, turn: str) -> None:
        before, after = talk("pedal steering limit at 50 kt please", turn)

        assert [first(before), first(after)] == pytest.approx([6, 4])
        assert after.entry == before.entry

    @pytest.mark.parametrize("turn", ["and on the 120L?", "same for the long body", "what about the 120L"])
    def test_another_variant(self, talk: Talk, turn: str) -> None:
        before, after = talk("highest brake temperature to begin the take-off?", turn)

        assert (first(before), first(after)) == (250, 230)
        assert (before.variant, after.variant) == ("120", "120L")

    def test_another_direction(self, talk: Talk) -> None:
        before, after = talk("what is the limiting speed to retract the gear", "and extending it?")

        assert (first(before), first(after)) == (205, 230)

    def test_several_in_a_row(self, talk: Talk) -> None:
        answers = talk("tiller limit at 20 kt", "and at 40?", "on the 120L?", "and at 15?")

        assert [first(a) for a in answers] == pytest.approx(
            [68 - 48 * 5 / 35, 68 - 48 * 25 / 35, 72 - 52 * 25 / 35, 72]
        )

    def test_an_added_failure(self, talk: Talk) -> None:
        before, after = talk("System 2 lost, which braking mode do I have?", "and with System 1 lost too?")

        assert "ALTERNATE" in before.text
        assert "EMERGENCY" in after.text

    def test_a_missing_number_is_taken_from_the_next_turn(self, talk: Talk) -> None:
        asked, answered = talk("how far to stop with autobrake FIRM?", "from 120 kt")

        assert (asked.outcome, asked.needs) == (CLARIFY, ("speed",))
        speed = 120 * 1852 / 3600
        assert first(answered) == pytest.approx(2 * speed + speed**2 / (2 * 2.3))

    def test_a_question_of_its_own_leans_on_nothing(self, talk: Talk) -> None:
        answers = talk("pedal limit at 50 kt", "where is the brake dial?", "maximum landing mass on the 120L")

        assert "left of the gear lever" in answers[1].text
        assert first(answers[2]) == 54_000

    @pytest.mark.parametrize(
        ("turn", "entry"),
        [("vle", "vle"), ("wheelbase", "wheelbase"), ("maximum towing angle", "towing-angle")],
    )
    @pytest.mark.parametrize("before", ["pedal limit at 90 kt", "maximum landing mass"])
    def test_a_short_question_of_its_own_is_no_fragment(self, talk: Talk, before: str, turn: str, entry: str) -> None:
        """The answer to the question before, given again, would be taken for this one's."""
        assert talk(before, turn)[1].entry == entry

    def test_nonsense_does_not_lean_on_the_question_before(self, talk: Talk) -> None:
        answers = talk("pedal limit at 50 kt", "and the price of tea?", "and at 70?")

        assert answers[1].outcome == DECLINE
        assert first(answers[2]) == pytest.approx(4)

    def test_a_fresh_conversation_knows_nothing(self, talk: Talk) -> None:
        talk("pedal limit at 50 kt")

        assert talk("and at 70?")[0].outcome != ANSWER


class TestCorrections:
    @pytest.mark.parametrize(
        "turn",
        [
            "correction, 70 kt",
            "CORRECTION 70",
            "sorry, I meant 70 kt",
            "no, make that 70 knots",
            "70 kt, rather",
        ],
    )
    def test_a_correction_replaces(self, talk: Talk, turn: str) -> None:
        before, after = talk("pedal steering limit at 50 kt", turn)

        assert [first(before), first(after)] == pytest.approx([6, 4])

    def test_a_failure_is_replaced_by_its_like(self, talk: Talk) -> None:
        _, after = talk("System 1 lost: which braking mode?", "correction, System 2 lost")

        assert "ALTERNATE" in after.text


class TestControls:
    @pytest.mark.parametrize("turn", ["say again", "SAY AGAIN please", "once more", "pardon?", "come again?"])
    def test_say_again(self, talk: Talk, turn: str) -> None:
        before, again = talk("how fast may the tyres run?", turn)

        assert again.text == before.text
        assert again.values == before.values
        assert again.question == turn

    @pytest.mark.parametrize("turn", ["why?", "how come?", "what's the reason for that"])
    def test_why(self, talk: Talk, turn: str) -> None:
        answer = talk("what does the PEDAL button do?", turn)[1]

        assert answer.outcome == ANSWER
        assert "rudder" in answer.text

    def test_why_says_so_when_no_reason_is_stated(self, talk: Talk) -> None:
        answer = talk("maximum towing angle", "why")[1]

        assert "not stated" in answer.text

    @pytest.mark.parametrize(
        "turn",
        ["where does it say that?", "says who?", "which paragraph?", "source?", "give me the reference"],
    )
    def test_where_it_says_so(self, talk: Talk, turn: str) -> None:
        answer = talk("pedal steering limit at 50 kt", turn)[1]

        assert answer.outcome == ANSWER
        assert answer.text.startswith("AOM 32.50.3, revision 7")

    @pytest.mark.parametrize("turn", ["disregard", "forget it", "never mind"])
    def test_disregard_drops_the_question(self, talk: Talk, turn: str) -> None:
        answers = talk("pedal limit at 50 kt", turn, "and at 70?")

        assert answers[1].outcome == CLARIFY
        assert answers[2].outcome != ANSWER

    @pytest.mark.parametrize("turn", ["why", "where does it say that"])
    def test_a_control_without_an_answer_before_it_is_no_answer(self, talk: Talk, turn: str) -> None:
        assert talk(turn)[0].outcome != ANSWER


class TestDisputes:
    def test_a_disputed_record_says_so_wherever_it_is_used(self, talk: Talk) -> None:
        answers = talk(
            "can I take off with brakes at 260 °C?",
            "dispute: my copy says 270",
            "highest brake temperature to begin the take-off",
        )

        assert "disputed" in answers[1].text
        assert "disputed" in answers[2].text
        assert "my copy says 270" in answers[2].text
        assert any("disputed" in caution for caution in answers[2].cautions)

        assert answers[2].text.startswith(talk("highest brake temperature to begin the take-off")[0].text)
        assert "disputed" in answers[2].spoken

    @pytest.mark.parametrize(
        ("asked", "using"),
        [
            ("highest brake temperature to begin the take-off", "how long to cool from 300 to take-off, 15 outside"),
            ("highest brake temperature to begin the take-off", "what are the brake temperature limits"),
            ("vle", "gear speeds"),
            ("vlo retraction", "what changed about retracting"),
            ("tiller limit at 30 kt", "captain tiller 20 left, first officer tiller 10 left at 20 kt: total order"),
            ("main tyre pressure", "main tyre at 170 psi"),
        ],
    )
    def test_what_uses_a_disputed_record_says_so(self, talk: Talk, asked: str, using: str) -> None:
        plain = talk(using)[0]
        told = talk(asked, "dispute", using)[2]

        assert plain.outcome == told.outcome == ANSWER
        assert told.text.startswith(plain.text.rstrip("."))
        assert "disputed" in told.text
        assert told.values == plain.values

    @pytest.mark.parametrize(
        ("turn", "note"),
        [
            ("dispute", ""),
            ("Dispute that, please.", ""),
            ("I want to dispute this figure", ""),
            ("dispute our library says 260", "our library says 260"),
            ("dispute that, our copy has 260", "our copy has 260"),
            ("I dispute the last answer: the placard: 260", "the placard: 260"),
            ("disputed - see page 3", "see page 3"),
            ("dispute it says 230 in my book", "it says 230 in my book"),
            ("dispute that: this is 260 on the placard", "this is 260 on the placard"),
            ("dispute it should be 260", "it should be 260"),
        ],
    )
    def test_what_is_said_of_it_is_its_note(self, knowledge: Knowledge, turn: str, note: str) -> None:
        _, context = answer_turn("vle", Context(), knowledge)

        answer, context = answer_turn(turn, context, knowledge)

        assert context.disputed == (("vle", note),)
        assert note in answer.text
        assert "maximum speed with the gear down, VLE (LIM 3.1)" in answer.text

    @pytest.mark.parametrize(
        "turn", ["disputes", "which records are disputed", "what is disputed?", "list my disputes", "all set aside"]
    )
    def test_disputes_are_listed(self, talk: Talk, turn: str) -> None:
        listed = talk("vle", "dispute: 260", "maximum tyre ground speed", "dispute", turn)[4]

        assert listed.outcome == ANSWER
        assert "1. maximum speed with the gear down, VLE (LIM 3.1): 260" in listed.text
        assert "2. maximum tyre ground speed (LIM 3.1)" in listed.text
        assert talk(turn)[0].text == "No record is set aside as disputed."

    def test_clearing_one_dispute_leaves_the_others(self, knowledge: Knowledge) -> None:
        def disputed_after(*turns: str) -> list[str]:
            context = Context(disputed=(("vle", ""), ("tyre-speed-limit", ""), ("gone", "")))
            for turn in turns:
                _, context = answer_turn(turn, context, knowledge)
            return [name for name, _ in context.disputed]

        assert disputed_after("clear dispute") == ["vle", "tyre-speed-limit", "gone"]
        assert disputed_after("vle", "clear dispute") == ["tyre-speed-limit", "gone"]
        assert disputed_after("clear dispute 3") == ["vle", "tyre-speed-limit"]
        assert disputed_after("clear dispute 4") == ["vle", "tyre-speed-limit", "gone"]
        assert disputed_after("clear all disputes") == []

    @pytest.mark.parametrize(
        ("asked", "named"),
        [
            ("system 1 lost, what do I lose", "what becomes of System 1 (AOM 32.00.4)"),
            ("what changed about retracting", "maximum speed for retracting the gear, VLO (retraction) (LIM 3.1)"),
            ("braking mode with system 2 lost", "braking state ("),
            ("no braking procedure", "No braking on landing (ABN 32.1)"),
            ("tiller limit at 30 kt", "tiller limit (AOM 32.50.2)"),
            ("how long to cool from 300 to 250, 15 outside", "time for a brake to cool (AOM 32.47.3"),
        ],
    )
    def test_whatever_answered_is_named_and_disputed(self, talk: Talk, asked: str, named: str) -> None:
        answers = talk(asked, "dispute", asked, "disputes")

        assert f"Set aside as disputed: {named}" in answers[1].text
        assert "disputed" in answers[2].text
        assert f"1. {named}" in answers[3].text

    def test_what_is_answered_beside_it_is_not_disputed(self, talk: Talk) -> None:
        answers = talk("vle", "dispute", "what is loaded", "how many inches in a metre")

        assert ["disputed" in answer.text for answer in answers[2:]] == [False, False]

    def test_a_long_note_is_kept_whole(self, knowledge: Knowledge) -> None:
        note = "the placard says 260, " * 20 + "says the shift leader"
        _, context = answer_turn("vle", Context(), knowledge)

        assert answer_turn(f"dispute: {note}", context, knowledge)[1].disputed == (("vle", note),)

    def test_nothing_to_dispute_is_said(self, talk: Talk) -> None:
        assert talk("dispute")[0].outcome == CLARIFY
        assert talk("clear dispute")[0].text == "No record is set aside as disputed."

    def test_other_records_are_as_before(self, talk: Talk) -> None:
        answer = talk("maximum tyre ground speed", "dispute", "pedal limit at 50 kt")[2]

        assert "disputed" not in answer.text

    def test_a_dispute_may_be_withdrawn(self, talk: Talk) -> None:
        answers = talk("maximum tyre ground speed", "dispute", "withdraw the dispute", "maximum tyre ground speed")

        assert answers[3].text == answers[0].text

    def test_it_is_kept_in_the_context_alone(self, talk: Talk) -> None:
        talk("maximum tyre ground speed", "dispute")

        assert "disputed" not in talk("maximum tyre ground speed")[0].text


class TestChoices:
    @pytest.fixture
    def offered(self, knowledge: Knowledge) -> tuple[Answer, Context]:
        """A question that fits several records, as the knowledge stands."""
        for text in ("controller", "steering", "delay", "tyres", "brake pressure", "accumulator pressure", "brakes"):
            answer, context = answer_turn(text, Context(), knowledge)
            if answer.outcome == CLARIFY and len(answer.choices) > 1:
                return answer, context
        pytest.fail("no question is offered choices")

    def test_choices_are_numbered_in_the_text(self, offered: tuple[Answer, Context]) -> None:
        answer, _ = offered

        for number, choice in enumerate(answer.choices, 1):
            assert f"{number}. {choice}" in answer.text

    @pytest.mark.parametrize(("turn", "index"), [("1", 0), ("the first one", 0), ("2", 1), ("second", 1)])
    def test_a_choice_by_its_number(
        self, offered: tuple[Answer, Context], knowledge: Knowledge, turn: str, index: int
    ) -> None:
        _, context = offered

        answer, _ = answer_turn(turn, context, knowledge)

        assert answer.outcome in (ANSWER, CLARIFY)
        assert answer.entry == context.offered[index]

    def test_a_new_question_instead_of_a_choice(self, offered: tuple[Answer, Context], knowledge: Knowledge) -> None:
        _, context = offered

        answer, after = answer_turn("pedal limit at 50 kt", context, knowledge)

        assert first(answer) == pytest.approx(6)
        assert after.offered == ()


def test_the_context_before_a_turn_is_left_as_it_was(knowledge: Knowledge) -> None:
    _, before = answer_turn("pedal limit at 50 kt", Context(), knowledge)
    kept = before._replace()

    answer_turn("and at 70?", before, knowledge)
    answer_turn("disregard", before, knowledge)

    assert before == kept


class TestScenario:
    """A failure more adds to those given before, and what it changes is told."""

    def test_a_second_system_adds_to_the_first_after_another_question(self, talk: Talk) -> None:
        *_, answer = talk("system 1 lost, steering?", "how do I get the gear down then", "and system 2 goes as well")

        assert "free fall" in answer.text
        assert "EMERGENCY" in answer.text

    def test_what_is_asked_back_for_replaces_nothing(self, talk: Talk) -> None:
        *_, answer = talk("how long for the brakes to cool to 250", "they read 400, 20 outside, fans on")

        assert answer.values[0].value == pytest.approx(6.03, abs=0.01)  # 12 min × ln(380 / 230)

    def test_an_amount_takes_the_part_that_the_words_beside_it_name(self, talk: Talk) -> None:
        *_, answer = talk("cool from 400 to 250 with fans at 20", "what if it's 35 outside")

        assert answer.values[0].value == pytest.approx(6.35, abs=0.01)  # 12 min × ln(365 / 215)

    def test_a_label_takes_the_place_of_its_like(self, talk: Talk) -> None:
        *_, firm, full = talk("stop from 130 knots on steady", "firm", "and full")

        assert (firm.entry, full.entry) == ("stopping-distance", "stopping-distance")
        assert full.values[0].value < firm.values[0].value

    def test_what_lacks_an_amount_takes_the_one_before(self, talk: Talk) -> None:
        *_, answer = talk("pedal limit at 50", "and the tiller at the same speed")

        assert answer.values[0].value == pytest.approx(20.0)

    def test_a_step_of_the_procedure_just_told(self, talk: Talk) -> None:
        *_, answer = talk("STEER LOST, what do I do", "below what speed")

        assert "30 kt" in answer.text.split(".")[0]


def test_a_question_that_two_figures_fit_alike_asks_back_and_goes_on_from_what_is_picked(
    talk: Callable[..., list[Answer]],
) -> None:
    first, second, third = talk("what's the maximum mass?", "landing", "for the 120L")
    assert (first.outcome, len(first.choices)) == ("clarify", 2)
    assert second.values[0].value == 50000
    assert third.values[0].value == 54000


def test_what_is_lost_is_told_whole_after_a_statement_on_a_failure(talk: Callable[..., list[Answer]]) -> None:
    _, lost = talk("system 1 down", "what do I lose")
    assert "free fall" in lost.text and "no steering" in lost.text


def test_what_to_do_after_a_burst_tyre_is_said_of_the_burst(talk: Callable[..., list[Answer]]) -> None:
    assert "Do not retract" in talk("a tyre bursts at 110 kt on the roll", "do I raise the gear then")[-1].text


def test_a_mode_named_alone_asks_what_it_is_and_then_how_hard(talk: Callable[..., list[Answer]]) -> None:
    mode, hard = talk("emergency brakes", "how hard")
    assert mode.entry == "emergency-mode"
    assert "800 psi" in hard.text
