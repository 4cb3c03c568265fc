"""What is loaded is told from what the documents say of themselves."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import ANSWER, Answer

Talk = Callable[..., list[Answer]]


@pytest.mark.parametrize(
    ("question", "told"),
    [
        ("what is loaded", ["AOM, Aldermere 120 Aircraft Operating Manual", "SOP, ", "published sources besides"]),
        ("which manuals do you have", ["Loaded: AOM", "LIM", "ABN", "SOP"]),
        ("list the documents", ["Loaded: AOM"]),
        ("is the AOM loaded?", ["Loaded: AOM"]),
        ("who validated the knowledge", ["Validated by Saltmarsh Air training, 15 September 2026: AOM 7, LIM 7"]),
        ("when was the AOM validated", ["15 September 2026: AOM 7."]),
        ("when is SOP effective", ["SOP, revision 12, effective 10 September 2026."]),
        ("when did the limitations take effect", ["LIM, revision 7, effective 1 August 2026."]),
        ("which edition of the checklist", ["ABN is loaded at revision 5"]),
        ("is this the current revision", ["AOM is loaded at revision 7", "check your library"]),
        ("are you up to date", ["effective 1 August 2026", "cannot be known here"]),
        ("how old are your manuals", ["ABN is loaded at revision 5, effective 15 June 2026"]),
        ("any temporary revisions", ["No temporary revisions are entered"]),
        ("when is the LIM due for review", ["It is not stated when to review LIM 7."]),
    ],
)
def test_documents_tell_of_themselves(talk: Talk, question: str, told: list[str]) -> None:
    answer = talk(question)[0]

    assert answer.outcome == ANSWER
    assert [each for each in told if each not in answer.text] == []


def test_one_document_is_told_alone(talk: Talk) -> None:
    answer = talk("when is SOP effective")[0]

    assert [(source.document, source.revision) for source in answer.sources] == [("SOP", "12")]
    assert "AOM" not in answer.text


@pytest.mark.parametrize(
    ("turn", "told"),
    [
        ("when was it effective", "LIM, revision 7, effective 1 August 2026."),
        ("who validated that", "15 September 2026: LIM 7."),
        ("is that the latest revision", "LIM is loaded at revision 7"),
    ],
)
def test_after_an_answer_its_documents_are_meant(talk: Talk, turn: str, told: str) -> None:
    assert told in talk("vle", turn)[1].text


@pytest.mark.parametrize(
    "question",
    ["what changed in the last revision", "which policies are in force", "what does the manual say about tillers",
     "where is the accumulator gauge", "what is the effect of a burst",
     "is the accumulator valid", "what is in effect"],
)  # fmt: skip
def test_other_questions_are_left_to_the_records(talk: Talk, question: str) -> None:
    assert "effective" not in talk(question)[0].text


def test_the_statement_on_revisions_is_what_the_documents_say(talk: Talk) -> None:
    told = talk("which issue of manual")[0].text

    for said in ("revision 7", "1 August 2026", "revision 5", "15 June 2026", "revision 12", "10 September 2026"):
        assert said in told
