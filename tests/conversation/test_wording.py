"""How answers read and how they are heard: whole sentences, one thing at a time, amounts as they were given."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, CLARIFY, DECLINE, Answer
from assistant.conversation.opening import Knowledge
from assistant.rendering.speech import spoken

Talk = Callable[..., list[Answer]]


class TestByEar:
    def test_what_is_missing_is_asked_for_one_by_one(self, talk: Talk) -> None:
        asked, start, target, outside = talk("how long to cool", "300", "200", "15")

        assert asked.outcome == CLARIFY
        assert asked.text.startswith("Give the brake temperature now; the temperature to reach, or what for; and ")
        assert asked.spoken == "What is the brake temperature now?"
        assert start.spoken == "What is the temperature to reach?"
        assert target.spoken == "What is the outside temperature?"
        assert outside.outcome == ANSWER
        assert "start 300 °C, target 200 °C, ambient 15 °C" in outside.working

    def test_two_choices_at_most_and_the_third_can_still_be_taken(self, talk: Talk) -> None:
        asked, taken = talk("what is the max speed?", "three")

        assert len(asked.choices) == 3
        assert asked.spoken.startswith("Which do you mean? one, ")
        assert "two, " in asked.spoken
        assert "three, " not in asked.spoken
        assert taken.outcome == ANSWER

    def test_what_is_known_nearby_is_two_things_at_most(self, talk: Talk) -> None:
        (declined,) = talk("who designed the nose gear")

        assert declined.outcome == DECLINE
        assert declined.text.count(";") == 2
        assert declined.spoken.count(", or ") == 1

    def test_what_is_no_limit_is_not_called_one(self, talk: Talk) -> None:
        (answer,) = talk("accumulator pressure 1,600 psi")

        assert answer.spoken.startswith("It still brakes")
        assert answer.spoken.endswith("Accumulator pressure, one thousand six hundred p s i.")

    def test_formulas_are_left_to_the_eye(self, talk: Talk) -> None:
        (answer,) = talk("nose tyre hydroplaning speed")

        assert "√" in answer.text
        assert "square root" not in answer.spoken

    def test_a_state_and_what_follows_are_one_sentence(self, talk: Talk) -> None:
        (answer,) = talk("Nose leg off the ground, STEER switch off. What do I lose?")

        assert answer.spoken.startswith("With the nose leg in the air and the steer switch off, the nose wheels ")

    def test_every_record_is_spoken_in_plain_letters(self, knowledge: Knowledge) -> None:
        base = knowledge.base
        texts = [getattr(record, field, "") for record in base.records.values() for field in ("says", "of", "title")]
        heard = {text: spoken(text, knowledge.units, base.pronunciations, labels=base.labels) for text in texts}

        assert [text for text, said in heard.items() if not said.isascii() or set(said) & set("0123456789/=()[]")] == []

    def test_a_division_is_spoken(self, talk: Talk) -> None:
        (answer,) = talk("pavement width formula")

        assert "wheelbase divided by the tangent of delta plus half the main track" in answer.spoken


class TestFigures:
    @pytest.mark.parametrize(
        ("question", "said"),
        [
            ("gear is down, 290 mph, within limits?", "290 mph (252 kt) is 3 kt below the limit"),
            ("brakes 500 °F, take-off ok?", "500 °F (260 °C) is 10 °C above the limit"),
            ("tiller limit at 40 mph", "at 40 mph (35 kt)"),
            ("is Mach 0.58 ok with the gear down", "Mach 0.58 is 0.02 below the limit, Mach 0.60"),
            ("230 kt in mph", "230 kt is 264.679 mph."),
            ("-25 °C in °F", "−25 °C is −13 °F."),
            ("how many feet in a nautical mile", "6,076.12 ft."),
            ("landing distance without anti-skid, normal 5,000 ft", "8,000 ft."),
        ],
    )
    def test_amounts_stand_as_they_were_given(self, talk: Talk, question: str, said: str) -> None:
        (answer,) = talk(question)

        assert said in answer.text

    def test_one_figure_is_told_once(self, talk: Talk) -> None:
        (answer,) = talk("standard pressure in psi")

        assert answer.text.count("psi") == 1
        assert (answer.values[0].value, answer.values[0].unit) == (14.7, "psi")

    @pytest.mark.parametrize(
        ("question", "said"),
        [
            ("how many tillers", "2 tillers, one at each side window."),
            ("how many wheels on the nose leg", "2 wheels on the nose leg."),
            ("parking brake pressure 1,800 psi, how many quarters", "3 quarters of the lever"),
            ("energy share landing without reverse", "0.9 (90%): share of"),
        ],
    )
    def test_a_count_is_said_with_what_is_counted(self, talk: Talk, question: str, said: str) -> None:
        (answer,) = talk(question)

        assert answer.text.startswith(said)

    def test_what_is_stated_is_not_called_a_limit(self, talk: Talk) -> None:
        (answer,) = talk("wheelbase is 13.2 m, right?")

        assert "On the 120L it is 15.4 m." in answer.text


class TestSentences:
    def test_what_is_needed_besides_begins_with_no_joint(self, talk: Talk) -> None:
        (answer,) = talk("is Mach 0.58 ok with the gear down")

        assert "Also needed: 255 kt IAS or less" in answer.text

    def test_what_one_sentence_holds_is_not_said_again(self, talk: Talk) -> None:
        (answer,) = talk("PEDAL button held, what steers?")

        assert answer.text.count("do not") == 1

    def test_what_is_lost_is_named_as_lost(self, talk: Talk) -> None:
        (answer,) = talk("which single failure loses normal braking")

        assert answer.text.startswith("NORMAL braking is lost, with any one of these alone: ")

    def test_paragraphs_named_in_the_text_are_cited(self, talk: Talk) -> None:
        (answer,) = talk("brakes 275, ok for take-off?")

        assert "(AOM 32.47.2)" in answer.text
        assert ("AOM", "32.47.2") in {(source.document, source.paragraph) for source in answer.sources}

    def test_a_conversion_cites_where_its_factors_stand(self, talk: Talk) -> None:
        (answer,) = talk("230 kt in mph")

        assert [source.document for source in answer.sources] == ["NIST811"]
