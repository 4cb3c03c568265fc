"""A turn that names a thing of its own and asks in full is answered as a first question, whatever was told before."""

from __future__ import annotations

import pytest

from assistant.conversation.context import Context
from assistant.conversation.turn import answer_turn
from assistant.resolving.knowing import Knowledge


def _entry(turns: list[str], knowledge: Knowledge) -> tuple[str, str]:
    context = Context()
    for turn in turns:
        answer, context = answer_turn(turn, context, knowledge)
    return answer.entry, answer.text


@pytest.mark.parametrize("told, turn, entry", [
    ("no braking on landing", "anti-skid lost, what do i do", "anti-skid-lost-procedure"),
    ("no braking on landing", "STEER LOST", "steer-lost-meaning"),
    ("gear mismatch on retraction", "tyre speed limit", "tyre-speed"),
    ("gear mismatch on retraction", "is 198 kt of groundspeed ok for the tyres", "tyre-speed"),
    ("overspeed of the gear, 262 kt", "free-fall steps", "free-fall-procedure"),
    ("free fall extension", "max landing mass", "landing-mass"),
    ("vle at altitude", "can i extend at 21,500 feet", "extension-altitude"),
    ("where does mach take over for vle", "is it fine to drop the gear at 22,500 ft", "extension-altitude"),
])  # fmt: skip
def test_a_thing_of_its_own_is_answered_afresh(told: str, turn: str, entry: str, knowledge: Knowledge) -> None:
    assert _entry([told, turn], knowledge)[0] == entry


@pytest.mark.parametrize("told, turn, entry", [
    ("hydroplaning speed for the main tyres", "nose tyres?", "hydroplaning-speed"),
    ("no braking on landing", "park brake when", "no-braking"),
    ("gear mismatch on extension, what do i do", "200 ok?", "gear-mismatch-recycle-bands"),
])  # fmt: skip
def test_a_part_of_what_was_told_still_goes_on_from_it(
    told: str, turn: str, entry: str, knowledge: Knowledge
) -> None:
    assert _entry([told, turn], knowledge)[0] == entry


@pytest.mark.parametrize("turn", ["for four minutes", "three minutes only"])
def test_a_verdict_on_another_matter_leaves_the_procedure(turn: str, knowledge: Knowledge) -> None:
    asked = ["brake heat in flight", "can i set the parking brake at 415", turn]
    assert _entry(asked, knowledge)[0] == "parking-brake-hot-time"


@pytest.mark.parametrize("turn", ["per brake", "for each brake", "each one?"])
def test_each_ones_share_is_told_again_where_it_was_told(turn: str, knowledge: Knowledge) -> None:
    entry, text = _entry(["energy for an rto at 140 kts and 55 t", turn], knowledge)
    assert (entry, text[:4]) == ("brake-energy", "35.7")


@pytest.mark.parametrize("turn", ["lets move on", "moving on", "next topic", "ok shall we move on"])
def test_moving_on_asks_nothing(turn: str, knowledge: Knowledge) -> None:
    assert _entry(["maximum speed for retracting", turn], knowledge)[1].startswith("Ready for your next question")


@pytest.mark.parametrize("turn", ["my mate says its fine", "the fo is happy with it", "is the captain an idiot"])
def test_talk_of_somebody_is_declined(turn: str, knowledge: Knowledge) -> None:
    context = answer_turn("maximum speed for retracting", Context(), knowledge)[1]
    assert answer_turn(turn, context, knowledge)[0].outcome == "decline"


@pytest.mark.parametrize("turns, entry", [
    (["brake wear pin", "what if it's above the housing"], "wear-pin-above"),
    (["pin above its housing, must the brake come off"], "wear-pin-above"),
    (["wear pin below its housing"], "wear-pin-flush"),
    (["no brakes!!"], "no-braking"),
    (["which wheels have no brakes"], "nose-wheels-no-brakes"),
    (["lock pins"], "ground-lock-pins"),
    (["lever locking pin"], "gear-lever-solenoid-pin"),
    (["not 3 green after freefall"], "not-three-green-procedure"),
    (["turn around is forty minutes"], "turnaround-brief-time"),
    (["how wide to turn around"], "pavement-width"),
])  # fmt: skip
def test_like_words_are_told_apart(turns: list[str], entry: str, knowledge: Knowledge) -> None:
    assert _entry(turns, knowledge)[0] == entry


@pytest.mark.parametrize("told, turn, entry", [
    ("nose tyre 140 in bar", "pedals at 30", "pedal-limit"),
    ("main tyre 180 psi", "pedals at 70", "pedal-limit"),
    ("is a brake at 240 ok for take-off", "tiller at 20 kt", "tiller-limit"),
    ("anti-skid lost, 1500 m normally", "what did the factor use to be", "change-landing-distance-factor"),
    ("accumulator 1900 can i park", "what was the minimum pressure formerly", "change-accumulator-parking-minimum"),
])  # fmt: skip
def test_what_was_judged_last_judges_nothing_else(told: str, turn: str, entry: str, knowledge: Knowledge) -> None:
    assert _entry([told, turn], knowledge)[0] == entry


def test_a_number_nowhere_near_is_asked_back(knowledge: Knowledge) -> None:
    context = answer_turn("can i tow with the accumulator at 1,800", Context(), knowledge)[1]
    assert answer_turn("brakes three hundred thirty", context, knowledge)[0].outcome == "clarify"


@pytest.mark.parametrize("question, says", [
    ("nose tyre 140 in bar", "140 psi is 9.65 bar. Within"),
    ("main tyre 190 in kpa", "190 psi is 1,310 kPa. Within"),
    ("landing mass 50000 in pounds", "110,231 lb."),
    ("taxi 25 in km/h", "46 km/h."),
])  # fmt: skip
def test_a_figure_in_another_unit_is_turned_into_it(question: str, says: str, knowledge: Knowledge) -> None:
    assert _entry([question], knowledge)[1].startswith(says)
