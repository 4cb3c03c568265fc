"""What was understood, laid out."""

from assistant.answering.answer import Answer
from assistant.rendering.explain import explain_text


def test_what_was_read_and_decided(answered: Answer) -> None:
    assert explain_text(answered).splitlines() == [
        "question: pedal limit 90kt",
        "outcome: answer",
        "entry: pedal-limit",
        "variant: 120",
        "understood:",
        "  words: pedal limit 90 kt",
        "  amounts:",
        "    - value 90, unit kt",
    ]


def test_every_shape_of_plain_value_is_shown(answered: Answer) -> None:
    odd = {"none": None, "yes": True, "sets": {"b", "a"}, "deep": {"er": [{"x": [1, 2], "y": {"z": []}}]}}

    assert explain_text(answered._replace(understood=odd)).splitlines()[4:] == [
        "understood:",
        "  none: none",
        "  yes: yes",
        "  sets: a, b",
        "  deep:",
        "    er:",
        "      -",
        "        x: 1, 2",
        "        y:",
        "          z: none",
    ]


def test_nothing_understood_is_said() -> None:
    assert explain_text(Answer("", "decline", "")).splitlines()[-1] == "understood: nothing"


def test_no_sign_of_the_question_reaches_the_screen(answered: Answer) -> None:
    shown = explain_text(answered._replace(question="a\x1b[2Jb\nc", understood={"k\x1b[1m": ["\x9b1m"]}))

    assert all(line.isprintable() for line in shown.splitlines())
    assert shown.startswith("question: ab c\n")
