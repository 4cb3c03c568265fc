"""Of several readings, the one that the knowledge explains wins; numbers are never made up, and doubt is asked."""

from __future__ import annotations

import re
from collections.abc import Sequence

import numpy as np
import pytest

from assistant.answering.answer import ANSWER, CLARIFY, DECLINE
from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.voice.hearing.ear import Ear, Heard
from assistant.voice.hearing.numbers import number_places, numbered, other_numbers
from assistant.voice.hearing.prompting import terms_expected
from assistant.voice.hearing.recognising import Hypothesis, Judged, Part, Recognised
from assistant.voice.hearing.repairing import Repairer
from assistant.voice.hearing.sounds import Sounding, apart
from assistant.voice.hearing.sphinx import Phrases, Sphinx
from assistant.voice.hearing.usage import Usage
from assistant.voice.hearing.weighing import Weigher
from tests.voice.synthesis import neural, padded

SOUND = np.zeros(16000, dtype=np.float32)


class Fake:
    """A recogniser that heard these texts, the likeliest first. sure: of every figure. doubt: words it doubts."""

    name = "fake"

    def __init__(
        self, *texts: str, sure: float = 0.99, no_speech: float = 0.0, score: float = -0.2, doubt: str = ""
    ) -> None:
        self.texts, self.sure, self.no_speech, self.score, self.doubt = texts, sure, no_speech, score, doubt

    def recognise(self, samples: object, expecting: str = "") -> Recognised:
        if expecting:
            return Recognised(())
        found = tuple(Hypothesis(text, self.score - 0.05 * n) for n, text in enumerate(self.texts))
        return Recognised(found, self.no_speech)

    def judge(self, samples: object, texts: Sequence[str]) -> list[Judged]:
        return [self._judged(text) for text in texts]

    def _judged(self, text: str) -> Judged:
        texts = [_bare(each) for each in self.texts]
        total = -1.0 - 0.5 * texts.index(_bare(text)) if _bare(text) in texts else -6.0
        parts = [Part(start, end, self.sure) for start, end in number_places(text)]
        parts += [Part(m.start(), m.end(), 0.1) for word in self.doubt.split() for m in re.finditer(word, text)]
        return Judged(total, tuple(parts))


def _bare(text: str) -> str:
    return text.lower().replace("-", " ").rstrip(".?")


@pytest.fixture(scope="session")
def repairer(knowledge: Knowledge, sounding: Sounding) -> Repairer:
    return Repairer(knowledge, sounding)


@pytest.fixture(scope="session")
def usage(knowledge: Knowledge) -> Usage:
    return Usage(knowledge.base.word_list("word_order").splitlines())


@pytest.fixture
def hear(knowledge: Knowledge, repairer: Repairer, usage: Usage) -> object:
    def heard(recogniser: Fake) -> Heard:
        ear = Ear(recogniser, Weigher(knowledge, repairer, usage=usage), knowledge, lambda: 0.0)
        return ear.hear(SOUND, Context())

    return heard


def test_the_reading_that_is_explained_wins(hear: object) -> None:
    heard = hear(Fake("What does the free ball lever do?", "What does the free fall lever do?"))  # type: ignore[operator]

    assert "fall" in heard.text


def test_what_is_misheard_is_mended_by_sound(hear: object) -> None:
    heard = hear(Fake("What should the flag on the talk lings be doing?", doubt="talk lings"))  # type: ignore[operator]

    assert "torque" in heard.text
    assert heard.answer.outcome in (ANSWER, CLARIFY)


@pytest.mark.parametrize(("heard_as", "meant"), [
    ("the anti skit is off", "anti skid"), ("torque length", "torque links"), ("the free ball lever", "free fall"),
    ("untargeted light", "on target"), ("mainstrat shows", "main strut"), ("no strat shows", "nose strut"),
])  # fmt: skip
def test_names_that_sound_alike_are_offered(repairer: Repairer, heard_as: str, meant: str) -> None:
    assert any(meant in repair.text for repair in repairer.repairs(heard_as, [(0, len(heard_as))]))


@pytest.mark.parametrize("text", ["nineteen degree turn", "at 19 knots", "one eight zero knots", "at niner knots"])
def test_no_number_is_ever_mended(repairer: Repairer, text: str) -> None:
    for repair in repairer.repairs(text, [(0, len(text))]):
        assert number_places(repair.text) == [] or all(
            text[a:b] in repair.text for a, b in number_places(text)
        )


def test_a_doubtful_number_is_confirmed_first(hear: object) -> None:
    heard = hear(Fake("Can I extend the gear at 240 knots?", sure=0.4))  # type: ignore[operator]

    assert heard.answer.outcome == CLARIFY
    assert heard.answer.text.startswith("CONFIRM two four zero knots?")
    assert heard.answer.values[0].value == 240
    assert heard.answer.values[0].unit == "kt"
    assert heard.answer.needs == ("confirmation of 240 kt",)
    assert heard.pending == "Can I extend the gear at 240 knots?"


def test_a_number_that_may_as_well_be_its_like_is_put_up_with_it(hear: object) -> None:
    texts = ("Can I make a turn of 40 degrees at 15 knots?", "Can I make a turn of 40 degrees at 50 knots?")
    heard = hear(Fake(*texts))  # type: ignore[operator]

    assert heard.answer.outcome == CLARIFY
    assert heard.answer.text.startswith("CONFIRM four zero degrees, one five knots? Or five zero knots? I heard ")
    assert heard.answer.spoken == "Confirm which, one five knots, or five zero knots, with four zero degrees?"
    assert [value.value for value in heard.answer.values] == [40, 15, 50]
    assert heard.pending == texts[0]
    assert heard.answer.choices == texts


def test_a_sure_number_is_answered_and_read_back(hear: object) -> None:
    heard = hear(Fake("Can I extend the gear at 240 knots?"))  # type: ignore[operator]

    assert heard.answer.outcome == ANSWER
    assert "240" in heard.answer.text
    assert heard.confidence > 0.9


def test_what_too_little_speaks_for_is_asked_back(hear: object) -> None:
    heard = hear(Fake("What is the maximum landing weight?", "What is the maximum take-off weight?"))  # type: ignore[operator]

    assert heard.answer.outcome == CLARIFY
    assert heard.answer.text.startswith("CONFIRM: what is the maximum ")
    assert len(heard.answer.choices) == 2
    assert heard.pending == heard.answer.choices[0]


def test_a_doubtful_question_with_a_number_is_read_back_whole(hear: object) -> None:
    heard = hear(Fake("Can I land at 54 tonnes?", "Can I take off at 54 tonnes?"))  # type: ignore[operator]

    assert heard.answer.outcome == CLARIFY
    assert heard.answer.values[0].value == 54
    assert "land" in heard.answer.spoken


def test_what_may_be_of_another_subject_is_not_answered(hear: object) -> None:
    heard = hear(Fake("If the gear is stuck up at a pro speed do we fly?", "If the gear is stuck up what approach speed do we fly?"))  # type: ignore[operator]  # noqa: E501

    assert heard.answer.outcome != ANSWER


def test_a_guess_that_the_rest_is_left_out_of_is_not_answered(hear: object) -> None:
    class Short(Fake):
        def recognise(self, samples: object, expecting: str = "") -> Recognised:
            texts = (Hypothesis("brave temper a tour rye slanting", -0.8), Hypothesis("What is VLE?", -1.9))
            return Recognised(() if expecting else texts)

    assert hear(Short("brave temper a tour rye slanting")).answer.outcome != ANSWER  # type: ignore[operator]


def test_readings_that_differ_in_little_words_count_once(hear: object) -> None:
    alike = ("What is the maximum landing weight?", "What's the maximum landing weight?", "maximum landing weight")
    heard = hear(Fake(*alike, "What is the maximum take-off weight?"))  # type: ignore[operator]

    assert "landing" in heard.text


@pytest.mark.parametrize("recogniser", [
    Fake(), Fake("Thank you for watching.", no_speech=0.9), Fake("What is VLE?", score=-2.0), Fake("...", "?"),
])  # fmt: skip
def test_nothing_said_is_nothing(hear: object, recogniser: Fake) -> None:
    heard = hear(recogniser)  # type: ignore[operator]

    assert heard.nothing
    assert heard.answer.outcome == DECLINE
    assert heard.confidence == 0


@pytest.mark.parametrize("text", [
    "Who won the football game last night?", "Please pass me the salt.",
    "The weather in Lisbon will be sunny tomorrow.",
    "I'll pick up the children from school at five.",
])  # fmt: skip
def test_other_subjects_are_not_mended_into_questions(hear: object, text: str) -> None:
    assert hear(Fake(text)).answer.outcome == DECLINE  # type: ignore[operator]


@pytest.mark.parametrize(("text", "others"), [
    ("at 90 knots", ["at 19 knots"]), ("at 150", ["at 115"]), ("at 17 and 30", ["at 70 and 30", "at 17 and 13"]),
    ("at 200 knots", []), ("at 12 knots", []), ("at 1,450 psi", []),
])  # fmt: skip
def test_numbers_that_end_alike(text: str, others: list[str]) -> None:
    assert other_numbers(text) == others


@pytest.mark.parametrize(("text", "plain"), [
    ("system to is lost", "system 2 is lost"), ("it shows 1,400 side", "it shows 1,400 psi"),
    ("landing at 40, 8 tonnes", "landing at 48 tonnes"), ("at 50 five tonnes", "at 55 tonnes"),
    ("at 40, 80 tonnes", "at 40, 80 tonnes"), ("1-85 knots now", "185 knots now"), ("it reads 3.20", "it reads 320"),
    ("three 90 with fans", "390 with fans"), ("down to 16 double 0", "down to 1600"), ("Mach 0.60", "Mach 0.60"),
    ("1.5 metres", "1.5 metres"), ("at 5.25 bar", "at 525 bar"), ("30 at 40, 8.5 degrees", "30 at 40, 8.5 degrees"),
    ("the 1 side of it", "the 1 side of it"), ("how many side do they hold", "how many psi do they hold"),
])  # fmt: skip
def test_words_that_sound_like_figures_and_units(text: str, plain: str) -> None:
    assert numbered(text) == plain


def test_a_question_that_is_hardly_explained_needs_more_to_be_answered(hear: object) -> None:
    sure = hear(Fake("What is the maximum landing weight?", "What is the maximum landing wait?"))  # type: ignore[operator]
    guess = hear(Fake("Whatever one go up after taking a foot now.", score=-0.4))  # type: ignore[operator]

    assert sure.answer.outcome == ANSWER
    assert guess.answer.outcome != ANSWER


def test_sounds_that_are_alike_are_near(sounding: Sounding) -> None:
    def far(one: str, two: str) -> float:
        return apart(sounding.of(one.split()), sounding.of(two.split()))

    assert far("steer", "steer") == 0
    assert far("free fall", "free ball") < far("free fall", "main gear")
    assert far("tiller", "until her") < 0.4


def test_the_terms_expected_are_of_the_trade(knowledge: Knowledge) -> None:
    terms = terms_expected(knowledge)

    assert "anti-skid" in terms
    assert not any(figure in terms for figure in "0123456789")
    assert len(terms.split(",")) <= 40


# --- the second recogniser


def test_a_grammar_hears_control_words(sounding: Sounding) -> None:
    phrases = Phrases(sounding)
    wanted = ("say again", "standby", "affirm", "negative", "words twice", "disregard")

    assert [phrases.hear(padded(neural(each)), wanted) for each in wanted] == list(wanted)


def test_without_the_model_a_question_is_still_heard(knowledge: Knowledge, sounding: Sounding) -> None:
    recogniser = Sphinx(knowledge, sounding)
    ear = Ear(recogniser, Weigher(knowledge, Repairer(knowledge, sounding)), knowledge, lambda: 0.0)

    heard = ear.hear(padded(neural("what is the maximum landing weight")), Context())

    assert heard.recogniser == "pocketsphinx"
    assert "landing" in heard.text
