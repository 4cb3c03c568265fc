"""What turns ask of a change, a verdict or a figure told: another document, a wheel, the same quantity elsewhere."""

import pytest

from assistant.conversation.context import Context
from assistant.conversation.turn import answer_turn
from assistant.resolving.knowing import Knowledge


def ask(turns: tuple[str, ...], knowledge: Knowledge):
    context = Context()
    for turn in turns:
        answer, context = answer_turn(turn, context, knowledge)
    return answer


@pytest.mark.parametrize(
    ("turns", "holds"),
    [
        (("what did revision 7 of the LIM alter", "and the policies?"), "12 kt"),
        (("what changed in the abnormals", "and in the limitations"), "205 kt"),
        (("what changed with ABN revision 5", "how about the SOP revision", "when is that effective"), "10 September"),
        (("maximum retraction speed", "since when is it otherwise"), "1 August 2026"),
        (("maximum retraction speed", "who changed that"), "LIM 7"),
        (("taxi speed in sharp turns", "changed by what", "from which date"), "10 September 2026"),
        (("what's new in SOP 12", "and the abnormal checklist", "since when is that one valid"), "15 June 2026"),
    ],
)
def test_another_document_is_asked_for_what_it_changed(turns, holds, knowledge):
    assert holds in ask(turns, knowledge).text


@pytest.mark.parametrize(
    ("turns", "paragraph"),
    [
        (("at what brake temperature do we want chocks", "which policy covers that"), "B.5"),
        (("autobrake setting on a wet runway", "under which policy"), "B.4"),
        (("top speed with the gear down", "what limitation says so"), "3.1"),
    ],
)
def test_a_policy_asked_for_is_the_paragraph_of_what_was_told(turns, paragraph, knowledge):
    answer = ask(turns, knowledge)
    assert paragraph in answer.text and answer.text[:3] in ("SOP", "LIM")


@pytest.mark.parametrize(
    ("question", "holds"),
    [
        ("we flew at 271 kt with the gear out", "Outside LIM 3.1: 271 kt"),
        ("crew flew mach .63 with gear down", "Outside LIM 3.1: Mach 0.63"),
        ("gear was left out at 248 knots, any problem?", "Within LIM 3.1: 248 kt"),
    ],
)
def test_a_reading_told_of_is_judged_before_the_drill_for_any_limit(question, holds, knowledge):
    assert ask((question,), knowledge).text.startswith(holds)


def test_what_to_do_is_still_told_where_that_is_asked(knowledge):
    assert "technical log" in ask(("we flew too fast with the gear down, what do we do",), knowledge).text


@pytest.mark.parametrize(
    ("turns", "holds"),
    [
        (("VLO for extension", "how many seconds does that take", "and going up"), "11 s"),
        (("time to lower the gear", "free fall?"), "18 s"),
        (("how high may the wheels be lowered", "by gravity as well?"), "20,000 ft"),
    ],
)
def test_the_quantity_told_is_kept_for_another_thing(turns, holds, knowledge):
    assert ask(turns, knowledge).text.startswith(holds)


@pytest.mark.parametrize(
    ("turns", "holds"),
    [
        (("is a tyre at 172 psi ok", "it's a nose one"), "nose tyre pressure, cold, 172 psi"),
        (("tyre reads 178 cold, all right?", "a main"), "main tyre pressure, cold, 178 psi"),
        (("main strut 112 mm", "same reading on the nose?"), "Within"),
    ],
)
def test_a_reading_is_kept_for_the_wheel_or_leg_that_is_named_then(turns, holds, knowledge):
    assert holds in ask(turns, knowledge).text


def test_another_leg_without_its_reading_is_not_judged_on_the_first(knowledge):
    assert ask(("main strut at 58 mm ok?", "and the nose one"), knowledge).text.startswith("90 mm to 160 mm")


@pytest.mark.parametrize(
    ("turns", "holds"),
    [
        (("18 kt in a 50 degree turn ok", "what would it be for eighty"), "10 kt"),
        (("18 kt in a 50 degree turn ok", "and 14?"), "Within"),
        (("gear mismatch extending", "how long between UP and DN"), "Wait 15 s"),
        (("steering controller failed: do we steer?", "what would warn us"), "STEER LOST"),
        (("bypass pin is in, tiller?", "how could they have known"), "TOW PIN"),
        (("wet runway, which autobrake", "if it's contaminated", "what rate is that"), "3.2 m/s²"),
        (("gear lever jammed down airborne", "what is it that blocks it"), "solenoid pin"),
        (("when does the gear horn go",), "700 ft"),
        (("what makes the horn sound",), "flaps at landing"),
    ],
)
def test_what_was_told_last_decides_what_a_few_words_mean(turns, holds, knowledge):
    assert holds in ask(turns, knowledge).text


@pytest.mark.parametrize(
    ("turns", "holds"),
    [
        (("how long before GEAR MISMATCH lights", "I get it lowering the gear. what speed do I slow to"), "205 kt"),
        (("what colour is BRAKE HEAT", "we get it after landing, what do we do"), "ans on"),
        (("we landed at 51 tonnes", "what must be done now"), "technical log"),
        (("free fall at 197 kt", "consequences?"), "technical log"),
        (("minimum accumulator to rely on the parking brake", "1900?", "what do i use instead"), "chocks"),
        (("talk me through the free-fall drill", "before or after the lever goes DN?"), "step 2"),
        (("sys one gone brake controller failed", "what memo do i see"), "RESERVE BRAKE"),
        (("accumulator precharge?", "at what temperature", "and fully charged"), "3,000 psi"),
        (("will autobrake arm in alternate", "why not"), "NORMAL mode"),
    ],
)
def test_it_is_what_was_told_of(turns, holds, knowledge):
    assert holds in ask(turns, knowledge).text


@pytest.mark.parametrize(
    ("question", "holds"),
    [
        ("who knows the max speed for free fall", "190 kt"),
        ("who can tell me how long the gear takes to come up", "11 s"),
        ("right while im stuck in traffic what speed for the free fall lever", "190 kt"),
        ("while taxiing at 20 kt what does the tiller give", "61.1°"),
    ],
)
def test_what_only_leads_to_a_question_is_no_part_of_it(question, holds, knowledge):
    assert ask((question,), knowledge).text.startswith(holds)
