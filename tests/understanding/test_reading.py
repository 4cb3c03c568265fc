"""What a question is read as: words meant, states, amounts, a variant named by its number."""

from __future__ import annotations

import pytest

from assistant.conversation.opening import Knowledge
from assistant.conversation.reading_turns.readings import question_of
from assistant.understanding.mentions import Reading


def read(text: str, knowledge: Knowledge) -> Reading:
    return knowledge.reader.read(text)


def states(text: str, knowledge: Knowledge) -> dict[str, str]:
    return {c.input: c.value for c in question_of(text, knowledge, "").conditions if not c.implied}


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("free fall leaver", "free fall lever"),
        ("anti skid of, both systems normal", "anti skid off"),
        ("a brake to drop form 340 to 150", "from 340"),
        ("what is it made of", "made of"),
        ("no. of wheels", "number"),
    ],
)
def test_words_are_read_as_meant(knowledge: Knowledge, text: str, words: str) -> None:
    assert words in " ".join(read(text, knowledge).words)


def test_a_label_in_capitals_is_the_label(knowledge: Knowledge) -> None:
    label, word = (read(text, knowledge) for text in ("stop from 120 kt with FULL", "full tiller at 20 kt"))

    assert label.has("full_setting")
    assert not word.has("full_setting")


def test_a_bare_number_apart_names_the_variant(knowledge: Knowledge) -> None:
    reading = read("tiller limit 44 kt, 120", knowledge)

    assert reading.variants == ("120",)
    assert [a.value for a in reading.amounts] == [44]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("loss of System 1 and hyd 2 is working", {"system_1": "lost", "system_2": "normal"}),
        ("what do I lose with the ANTI-SKID switch OFF", {"anti_skid_switch": "off"}),
        ("500 to 300, fans, 25 out", {}),
        ("without anti-skid ok?", {"braking.anti_skid": "no"}),
        ("system 2 at 1,200 psi", {"system_2": "lost"}),
    ],
)
def test_states_belong_to_the_thing_they_stand_by(knowledge: Knowledge, text: str, found: dict[str, str]) -> None:
    given = states(text, knowledge)

    assert {name: given.get(name) for name in found} == found
    assert "fans" not in given


def test_who_is_quoted_needs_no_explaining(knowledge: Knowledge) -> None:
    reading = read("a bloke in the crewroom says the retraction speed is 200", knowledge)

    assert [m.text for m in reading.mentions if not m.known and not m.passing] == []


def passing(text: str, word: str, knowledge: Knowledge) -> bool:
    return next(m.passing for m in read(text, knowledge).mentions if m.text == word)


def test_a_word_where_a_verb_stands_narrows_nothing(knowledge: Knowledge) -> None:
    assert passing("above what speed does the locked wheel protection act", "act", knowledge)
    assert passing("the wheels obey the tiller", "obey", knowledge)


def test_the_same_word_where_a_noun_stands_is_missed(knowledge: Knowledge) -> None:
    assert not passing("which act governs the brakes", "act", knowledge)


@pytest.mark.parametrize(
    ("text", "value"),
    [("lower the gear at two three zero?", 230), ("pedal limit at nine zero", 90), ("gear up at two oh five", 205)],
)
def test_digits_said_one_by_one_keep_their_zero(text: str, value: float, knowledge: Knowledge) -> None:
    assert [a.value for a in read(text, knowledge).amounts] == [value]


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("tyre burst, what too do", "to"),
        ("is the brake too hot", "too"),
        ("do we loose autobrake with that", "lose"),
        ("is a loose pipe on the list", "loose"),
    ],
)
def test_slips_that_are_words_themselves_are_read_as_meant(knowledge: Knowledge, text: str, word: str) -> None:
    assert word in read(text, knowledge).words


@pytest.mark.parametrize(
    ("text", "variant"),
    [
        ("a 120L's brakes at 240, take-off?", "120L"),
        ("What's the 120L's tiller limit at 30 knots?", "120L"),
        ("what is the long body wheelbase", "120L"),
        ("my 120 l brakes at 240", "120L"),
        ("tiller limit at 56 (120)", "120"),
    ],
)
def test_a_variant_is_named_whatever_it_owns(knowledge: Knowledge, text: str, variant: str) -> None:
    assert read(text, knowledge).variants == (variant,)


def test_what_a_variant_is_is_asked_whole(knowledge: Knowledge) -> None:
    assert read("what is the 120L", knowledge).has("variant_list")
