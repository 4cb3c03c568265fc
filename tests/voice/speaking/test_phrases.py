"""What is said to a question, as phrases, and as SSML."""

from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge, open_knowledge
from assistant.conversation.turn import answer_turn
from assistant.voice.speaking.phrases import (
    CAUTION_S,
    ITEM_S,
    SENTENCE_S,
    Phrase,
    answer_phrases,
    for_engine,
    phrases,
    said_aloud,
)
from assistant.voice.speaking.settings import FASTEST, SLOWEST, VoiceSettings, read_settings, settings_text
from assistant.voice.speaking.ssml import NAMESPACE, ssml

USUAL = VoiceSettings()


@pytest.fixture(scope="module")
def knowledge() -> Knowledge:
    found, problems = open_knowledge()
    assert found is not None, problems
    return found


def said(question: str, knowledge: Knowledge, settings: VoiceSettings = USUAL) -> list[Phrase]:
    return answer_phrases(answer_turn(question, Context(), knowledge)[0], knowledge, settings)


def test_a_fact_is_said_alone(knowledge: Knowledge) -> None:
    assert said("pedal limit at 90 kt", knowledge) == [
        Phrase("two degrees either way at ninety knots: pedal limit.", SENTENCE_S)
    ]


@pytest.mark.parametrize("question", ["vle", "before pushback"])
def test_a_limit_and_a_procedure_end_with_the_caution_after_a_pause(knowledge: Knowledge, question: str) -> None:
    *_, before, last = said(question, knowledge)

    assert before.pause_s == CAUTION_S
    assert last.text == "Training only. Check your library."


def test_the_steps_of_a_procedure_are_heard_apart(knowledge: Knowledge) -> None:
    found = said("before pushback", knowledge)

    begins = [phrase.text.split(",")[0] for phrase in found[:4]]
    assert begins == ["Before pushback: three steps.", "one", "two", "three"]
    assert [phrase.pause_s for phrase in found[:3]] == [ITEM_S] * 3


def test_numbers_digit_by_digit(knowledge: Knowledge) -> None:
    assert said("vle", knowledge, VoiceSettings(digits=True))[0].text.startswith(
        "two fife fife knots indicated airspeed or Mach zero decimal six zero"
    )
    assert said_aloud("13,500 ft", knowledge, VoiceSettings(digits=True)) == "one tree tousand fife hundred feet."


def test_where_it_is_written_is_said_when_asked(knowledge: Knowledge) -> None:
    answer, context = answer_turn("vle", Context(), knowledge)
    where, _ = answer_turn("where does it say that", context, knowledge)

    assert answer_phrases(where, knowledge, USUAL)[0].text.startswith("limitations three point one, revision seven")
    assert "three point one" not in answer.spoken


@pytest.mark.parametrize(
    ("text", "given"),
    [
        ("doors close.", "Doors cloze."),
        ("the A O M, A T C and F A A", "The eh O M, eh T C and F eh eh"),
        ("A brake", "A brake"),
        ("System A", "System A"),
        ("Use chocks: use both.", "Yooz chocks: yooz both."),
        ("the mode in use, after use", "The mode in yoose, after yoose"),
        ("it goes to alternate mode", "It goes to awlternet mode"),
    ],
)
def test_what_an_engine_gets_wrong_is_written_for_it(knowledge: Knowledge, text: str, given: str) -> None:
    assert for_engine(text, knowledge.base.respelt) == given


def test_phrases_keep_every_word() -> None:
    text = "one, Fans on. two, Wait. Is it so? Yes."

    assert " ".join(phrase.text for phrase in phrases(text)) == text


ALLOWED = {f"{{{NAMESPACE}}}{name}" for name in ("speak", "voice", "prosody", "s", "break", "phoneme")}


def test_ssml_has_sentences_breaks_and_pronunciations(knowledge: Knowledge) -> None:
    document = ssml(said("steer switch off, do the pedals steer?", knowledge), USUAL, knowledge.base.phonemes)
    root = ElementTree.fromstring(document.encode())

    assert root.tag == f"{{{NAMESPACE}}}speak"
    assert root.attrib["version"] == "1.1"
    assert {each.tag for each in root.iter()} <= ALLOWED
    sounds = {each.text: each.attrib["ph"] for each in root.iter(f"{{{NAMESPACE}}}phoneme")}
    assert sounds["castor"] == "ˈkɑːstə"
    assert root.find(f".//{{{NAMESPACE}}}break") is not None


@given(text=st.text(max_size=60), voice=st.text(max_size=10), pause=st.floats(0, 5))
def test_ssml_of_anything_is_well_formed_and_keeps_the_words(text: str, voice: str, pause: float) -> None:
    document = ssml([Phrase(text, pause)], VoiceSettings(voice=voice, rate=200), {"castor": "ˈkɑːstə"})
    root = ElementTree.fromstring(document.encode("utf-8", "replace"))

    assert "125%" in document
    if text.isascii() and text.isprintable():
        assert "".join(root.find(f".//{{{NAMESPACE}}}s").itertext()) == text  # type: ignore[union-attr]


@given(st.builds(VoiceSettings, rate=st.integers(SLOWEST, FASTEST), voice=st.text(), digits=st.booleans()))
def test_settings_are_kept(settings: VoiceSettings) -> None:
    assert read_settings(settings_text(settings)) == settings


@pytest.mark.parametrize("text", ["", "[]", "{", '{"rate": "fast", "voice": 3, "human": 1}', "[" * 5000])
def test_settings_that_make_no_sense_are_the_first_ones(text: str) -> None:
    assert read_settings(text) == VoiceSettings()


def test_the_pace_stays_within_what_can_be_followed() -> None:
    assert VoiceSettings().faster(-99).rate == SLOWEST
    assert VoiceSettings().faster(99).rate == FASTEST
    assert read_settings('{"rate": 100000}').rate == FASTEST
