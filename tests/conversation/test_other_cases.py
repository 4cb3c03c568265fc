"""What was asked, of another case, another thing of its kind, or the other way round; and talk in between."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    "turns",
    [
        ("can i silence the gear horn with flaps up", "and with flaps at landing?", "gear-horn-flaps"),
        ("horn blaring with the flaps not at landing, can we kill it", "and with full flap", "gear-horn-flaps"),
        (
            "can i cancel the gear horn with the flaps at landing",
            "and if the flaps are up, levers closed and 400 ft",
            "gear-horn-silence",
        ),
        ("does the horn button work with landing flap", "but with approach flap at 300 feet", "gear-horn-silence"),
        ("can the horn be silenced at landing flap", "and with less flap, idle thrust, 600 ft?", "gear-horn-silence"),
    ],
    ids=lambda turns: turns[1],
)
def test_another_case_is_asked_of_the_same(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, entry = turns
    assert talk(*said)[-1].entry == entry


def test_the_horn_itself_is_still_asked_for(talk: Talk) -> None:
    said = ("when does the horn sound", "and with landing flap")
    assert talk(*said)[-1].entry == "gear-not-locked-flaps-height"


@pytest.mark.parametrize(
    "turns",
    [
        ("at what speed do the pedals give 5 degrees", "and when is the tiller down to 30", "At 43 kt"),
        ("at what speed do the pedals give 5 degrees", "when has the tiller dropped to 12", "At 62 kt"),
        ("pedal steering at 60 kt", "and when is it down to 2", "and the tiller to 30", "At 43 kt"),
        ("tiller at 60", "where has the pedal limit fallen to 1", "At 100 kt"),
        ("what does the tiller give at 20", "where do the pedals drop to 4", "and to 2", "At 90 kt"),
        ("pedals at 90", "and the tiller down at 30", "47.4°"),
        ("what does the tiller give at 55", "and the pedals when i am down to 70", "4.0°"),
    ],
    ids=lambda turns: turns[-2],
)
def test_the_other_schedule_the_other_way_round(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, begins = turns
    assert talk(*said)[-1].text.startswith(begins)


@pytest.mark.parametrize(
    "turns",
    [
        ("hydraulics pressure?", "what do we get from two", "system-2-users"),
        ("hydraulics pressure?", "and what lives off one", "system-1-users"),
        ("what pressure counts as a system lost", "and what depends on number two", "system-2-users"),
        ("what pressure counts as a system lost", "what depends on number two", "and one?", "system-1-users"),
        ("what hydraulics are there", "whats on one", "system-1-users"),
        ("when is a system lost", "and what does number one run", "system-1-users"),
    ],
    ids=lambda turns: turns[-2],
)
def test_a_number_names_one_of_the_kind_spoken_of(talk: Talk, turns: tuple[str, ...]) -> None:
    *said, entry = turns
    assert talk(*said)[-1].entry == entry


@pytest.mark.parametrize(
    ("turns", "entry"),
    [
        (("what do fuse plugs melt at", "and when after a stop are they hottest"), "fuse-plug-peak-time"),
        (("fuse plugs melt at?", "when are they at their hottest after landing"), "fuse-plug-peak-time"),
    ],
)
def test_when_something_is_hottest(talk: Talk, turns: tuple[str, ...], entry: str) -> None:
    assert talk(*turns)[-1].entry == entry


@pytest.mark.parametrize(
    "talked", ["who is playing tonight", "whos playing in the final tonight", "who is cooking tonight then"]
)
def test_talk_is_declined_and_come_back_from(talk: Talk, talked: str) -> None:
    told, declined, after = talk("what does the tiller give at 40", talked, "ok and at 20")
    assert (told.outcome, declined.outcome) == ("answer", "decline")
    assert after.text.startswith("61.1°")


@pytest.mark.parametrize(
    "turns",
    [
        ("how long does the parking brake hold", "and for a short stop with a brake at 360"),
        ("when must we release the parking brake", "brakes read 325 and it's a quick stop"),
        ("for a brief stop with the brakes at 335",),
    ],
    ids=lambda turns: turns[-1],
)
def test_a_short_stop_is_a_stay_at_the_stand(talk: Talk, turns: tuple[str, ...]) -> None:
    assert talk(*turns)[-1].entry == "stand-temperature-bands"


@pytest.mark.parametrize("said", ["our turnaround is thirty five", "turnaround 40", "a turnround of 30"])
def test_a_turnaround_takes_time_and_no_room(talk: Talk, said: str) -> None:
    assert talk("is the cooling plan always in the brief", said)[-1].entry == "turnaround-brief-time"
    assert talk(said)[-1].entry == "turnaround-brief-time"


@pytest.mark.parametrize(
    ("said", "begins"),
    [
        ("tiller when we slow down to 40", "33.7°"),
        ("when is the tiller down to 30", "At 43 kt"),
        ("and when has the pedal limit dropped to 4", "At 70 kt"),
    ],
)
def test_a_figure_comes_down_and_so_does_a_speed(talk: Talk, said: str, begins: str) -> None:
    assert talk(said)[-1].text.startswith(begins)
