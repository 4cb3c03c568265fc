"""What steers a sitting, typed as it is spoken, and what is an answer though it holds such a word."""

import pytest

from assistant.practice.sitting_words import (
    AGAIN,
    CORRECTION,
    DISREGARD,
    GO,
    HELP,
    HINT,
    NO,
    OVERRULE,
    PASS,
    SAID,
    SOURCE,
    STANDBY,
    STOP,
    THEN,
    UNABLE,
    WHY,
    asks_back,
    breaks_off,
    control_of,
    corrected,
    dropped,
    mark_named,
)


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("SAY AGAIN", AGAIN), ("say again, please.", AGAIN), ("Pardon?", AGAIN), ("STANDBY", STANDBY),
        ("stand by", STANDBY), ("UNABLE", UNABLE), ("don't know", PASS), ("I don’t know.", PASS), ("pass", PASS),
        ("?", PASS), ("DISREGARD", DISREGARD), ("hint", HINT), ("give me a hint please", HINT), ("why?", WHY),
        ("help", HELP), ("Stop.", STOP), ("that's all", STOP), ("overrule", OVERRULE), ("", GO),
    ],
)  # fmt: skip
def test_a_word_that_is_all_that_was_typed_steers(typed: str, name: str) -> None:
    found = control_of(typed)

    assert found is not None
    assert found.name == name


@pytest.mark.parametrize(
    "typed",
    ["255 kt", "stop the aeroplane straight ahead", "wait 15 s", "why not pump", "that was on the left",
     "lever up, wait, lever down", "say the procedure again to the crew", "right", "it was 280, now 250"],
)  # fmt: skip
def test_within_a_sentence_it_belongs_to_the_answer(typed: str) -> None:
    assert control_of(typed) is None


@pytest.mark.parametrize(
    ("typed", "mark"),
    [("overrule right", "right"), ("Overrule: partly", "partly"), ("I overrule to wrong", "wrong"),
     ("overrule it as missed", "missed"), ("it was right", "right"), ("overrule", "")],
)  # fmt: skip
def test_a_mark_is_overruled_with_its_name(typed: str, mark: str) -> None:
    found = control_of(typed)

    assert found is not None
    assert (found.name, mark_named(found.rest)) == (OVERRULE, mark)


def test_what_may_be_said_now_decides_between_two_that_are_said_alike() -> None:
    assert [control_of("n", among) for among in ((GO, NO), (NO, GO))] == [(GO, ""), (NO, "")]
    assert control_of("hint", (STOP, GO)) is None


def test_every_way_of_saying_is_read_as_its_own_control() -> None:
    for name, sayings in SAID.items():
        for saying in sayings:
            assert control_of(saying, (name,)) == (name, ""), saying


@pytest.mark.parametrize(
    ("typed", "counts"),
    [("280, CORRECTION 255 kt", "255 kt"), ("correction: 255", "255"), ("1, correction 2, correction 3", "3"),
     ("255 kt", "255 kt"), ("correction", "correction"),
     ("slow to 190, lever down, hold it 10, correction 5 seconds", "slow to 190, lever down, hold it 5 seconds"),
     ("fans on, then wait 20, CORRECTION 12 min, check the bars", "fans on, then wait 12 min, check the bars"),
     ("fans on, wait 20 min. Correction: chocks in, fans on", "chocks in, fans on")],
)  # fmt: skip
def test_after_correction_only_what_follows_counts(typed: str, counts: str) -> None:
    assert corrected(typed) == counts


@pytest.mark.parametrize("typed", ["and then?", "And then", "what next?", "go on", "why not?", "correction", "source"])
def test_what_belongs_to_another_moment_steers_all_the_same(typed: str) -> None:
    assert control_of(typed) is not None


@pytest.mark.parametrize("typed", ["correction 255", "continue", "and then the doors close", "normal", "no", "on"])
def test_what_may_be_an_answer_is_none(typed: str) -> None:
    assert control_of(typed, (WHY, SOURCE, THEN, CORRECTION)) is None


def test_an_answer_that_ends_in_disregard_is_dropped() -> None:
    assert dropped("255, DISREGARD")
    assert not dropped("255 kt")
    assert not dropped("disregard")  # the control itself


@pytest.mark.parametrize(
    "typed",
    ["what is vle", "how long have I got", "what's the limit again", "ok so what is it", "which system is that",
     "can you tell me", "what happens if system 2 goes", "remind me what castoring is", "how fast can i retract",
     "is that all?", "and who taxis?"],
)  # fmt: skip
def test_a_question_back_is_no_answer(typed: str) -> None:
    assert asks_back(typed)


@pytest.mark.parametrize(
    "typed",
    ["when its wheel slows", "where the pin is", "which is 205", "may retract", "must be below 205", "is amber",
     "do not retract", "who: the captain", "when both main legs compress", "can be used", "what remains of System 1"],
)  # fmt: skip
def test_an_answer_that_opens_like_a_question_is_one(typed: str) -> None:
    assert not asks_back(typed)


@pytest.mark.parametrize(
    ("typed", "open_still"),
    [("two, correction", True), ("two, CORRECTION:", True), ("two, correction three", False), ("correction", False)],
)
def test_what_breaks_off_after_correction_waits_for_the_rest(typed: str, open_still: bool) -> None:
    assert breaks_off(typed) == open_still
