"""What else may have been said: questions as they are put, near in sound to what was heard, with its numbers kept."""

from __future__ import annotations

import pytest

from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.voice.hearing.recognising import Judged
from assistant.voice.hearing.repairing import Repairer
from assistant.voice.hearing.rewording import Rewords
from assistant.voice.hearing.sounds import Sounding
from assistant.voice.hearing.usage import Usage, counted_words
from assistant.voice.hearing.weighing import Weigher
from scripts.count_words import HEADING, counted
from tests.voice.hearing.test_weighing import SOUND, Fake

ASKED = (
    "how many sensors has each leg got", "how many sensors has each leg", "what has each leg got",
    "does that take steering away", "can i steer at 40 knots", "what is the limit at 40 knots",
    "the lever wont go up", "rto autobrake above what speed", "what is rto autobrake",
) * 3  # fmt: skip


@pytest.fixture(scope="module")
def usage() -> Usage:
    return Usage(counted(ASKED).splitlines())


@pytest.fixture(scope="module")
def rewords(usage: Usage, sounding: Sounding) -> Rewords:
    return Rewords(usage, sounding, {"RTO": "R T O"})


@pytest.mark.parametrize(("text", "words"), [
    ("What's the 1,200 psi limit?", ["whats", "the", "0", "psi", "limit"]),
    ("system one hundred and ten", ["system", "0", "and", "0"]),
    ("the tire color at V L E", ["the", "tyre", "colour", "at", "vle"]),
    ("a half of it", ["a", "half", "of", "it"]), ("", []),
])  # fmt: skip
def test_numbers_are_one_word_and_letters_stand_together(text: str, words: list[str]) -> None:
    assert counted_words(text) == words


def test_what_is_asked_is_likelier_than_what_is_not(usage: Usage) -> None:
    assert usage.total("how many sensors has each leg got") > usage.total("how many sensors has each like god")


def test_no_number_is_likelier_than_another(usage: Usage) -> None:
    assert usage.total("can i steer at 40 knots") == usage.total("Can I steer at fourteen knots?")


def test_all_that_may_follow_makes_one(usage: Usage) -> None:
    from math import exp

    words = [*usage.words, *(f"unknown{n}" for n in range(20_000 - len(usage.words)))]

    assert sum(map(exp, usage.steps("each", "leg", words))) == pytest.approx(1, abs=0.02)


def test_remarks_and_empty_lines_count_nothing() -> None:
    assert Usage([*HEADING.splitlines(), "", ": leg 2"]).words == {"leg": 2}


@pytest.mark.parametrize(("heard", "meant"), [
    ("How many sensors has each like God?", "how many sensors has each leg got"),
    ("Does that take stirring away?", "does that take steering away"),
    ("Arty go autobrake above what speed", "rto autobrake above what speed"),
])  # fmt: skip
def test_what_is_asked_is_found_by_its_sounds(rewords: Rewords, heard: str, meant: str) -> None:
    assert meant in [each.text for each in rewords.of_text(heard, 6)]


def test_what_was_heard_may_stay_and_costs_nothing(rewords: Rewords) -> None:
    first = rewords.of_text("what has each leg got", 4)[0]

    assert (first.text, first.cost) == ("what has each leg got", 0.0)


def test_numbers_stay_as_they_were_heard(rewords: Rewords) -> None:
    found = rewords.of_text("Can I stare at 14 knots?", 6)

    assert found[0].text == "can i steer at 14 knots"
    assert all("14" in each.text.split() for each in found)


def test_nothing_is_reworded_into_nothing(rewords: Rewords) -> None:
    assert rewords.of_text("", 4) == []


def test_the_delivered_counts_know_the_trade(knowledge: Knowledge) -> None:
    usage = Usage(knowledge.base.word_list("word_order").splitlines())

    assert usage.total("which brakes do I have left") > usage.total("witch breaks dew I have lift") + 10


class FarOff(Fake):
    """A recogniser to which only what it heard fits the sound at all."""

    def _judged(self, text: str) -> Judged:
        found = super()._judged(text)
        return found if found.total > -6 else found._replace(total=-40.0)


@pytest.mark.parametrize(("recogniser", "meant"), [(Fake, "each leg"), (FarOff, "each like God")])
def test_a_wording_counts_only_if_it_fits_the_sound(
    knowledge: Knowledge, sounding: Sounding, recogniser: type[Fake], meant: str
) -> None:
    usage = Usage(knowledge.base.word_list("word_order").splitlines())
    rewords = Rewords(usage, sounding, knowledge.base.pronunciations)
    weigher = Weigher(knowledge, Repairer(knowledge, sounding), None, usage, rewords)
    heard = recogniser("How many proximity sensors has each like God?")

    weighed = weigher.weigh(heard.recognise(SOUND), heard, SOUND, Context())

    assert weighed is not None
    assert meant in weighed.reading.text
