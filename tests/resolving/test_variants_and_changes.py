"""Whether the variants are the same, in what one differs, and what one document changed."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Ask = Callable[[str], Answer]


@pytest.mark.parametrize(
    ("question", "begins"),
    [
        ("Is the tyre speed limit different on the 120L?", "No: 195 kt"),
        ("does the long body have the same brake temperature limit as the 120", "No: 120: 250 °C; 120L: 230 °C"),
        ("Is the wheelbase the same on both?", "No: 120: 13.2 m; 120L: 15.4 m"),
        ("is the towing angle the same on the long body and the short one", "Yes: 85°"),
        ("do both variants have the same tiller limit", "No: 120: 68°; 120L: 72°"),
    ],
)
def test_sameness_is_answered_with_yes_or_no_first(ask: Ask, question: str, begins: str) -> None:
    assert ask(question).text.startswith(begins)


@pytest.mark.parametrize(
    ("question", "begins"),
    [
        ("Does the 120L have a lower pressure limit than the 120 without anti-skid?", "No: 800 psi on both"),
        ("has the 120L got a lower retract speed", "No: 205 kt"),
        ("does the long body have a lower take-off brake temperature", "Yes: 120L: 230 °C; 120: 250 °C"),
        ("Is the standard body's main tyre pressure higher than the 120L's?", "No: 120: 190 psi; 120L: 205 psi"),
        ("is the landing weight limit of the 120L higher", "Yes: 120L: 54,000 kg; 120: 50,000 kg"),
        ("is VLO extension lower on the 120L", "No: 230 kt"),
        ("is the 120L's wheelbase longer and by how much", "120L: 15.4 m; 120: 13.2 m"),
    ],
)
def test_the_greater_of_two_variants_is_told_with_yes_or_no(ask: Ask, question: str, begins: str) -> None:
    assert ask(question).text.startswith(begins)


def test_the_difference_of_documented_figures_is_not_rounded(ask: Ask) -> None:
    assert "The difference is 2.2 m." in ask("Is the wheelbase the same on both?").text


def test_a_variant_that_another_is_likened_to_is_not_meant(ask: Ask) -> None:
    answer = ask("I thought the 120L could depart with brakes at 240, the same as the short one, is that right")

    assert answer.text.startswith("Outside AOM 32.01.6")


def test_a_part_of_the_aeroplane_narrows_how_a_variant_differs(ask: Ask) -> None:
    answer = ask("how do the brakes of the 120L differ")

    assert "230 °C" in answer.text
    assert "wheelbase" not in answer.text
    assert "Everything else" not in answer.text


@pytest.mark.parametrize(
    ("question", "told", "untold"),
    [
        ("what did AOM revision 7 change", "110 kt", "205 kt"),
        ("any changes to the operating policies", "10 kt", "1.6"),
        ("did the abnormal checklist change at all", "1.6", "110 kt"),
        ("what's different in the limitations since the last revision", "2,000 psi", "1.6"),
    ],
)
def test_only_the_changes_of_the_document_named_are_told(ask: Ask, question: str, told: str, untold: str) -> None:
    text = ask(question).text

    assert told in text
    assert untold not in text


@pytest.mark.parametrize(
    ("question", "formerly"),
    [
        ("what was the retraction speed before LIM 7", "200 kt"),
        ("ON TARGET percent before AOM 7", "90%"),
        ("brake temp limit for take-off before the last LIM", "280 °C"),
    ],
)
def test_a_figure_before_a_revision_is_the_former_one(ask: Ask, question: str, formerly: str) -> None:
    assert f"formerly {formerly}" in ask(question).text
