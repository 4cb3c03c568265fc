"""An instructor's own questions: read from YAML, or refused with the file and line of each problem."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.conversation.opening import Knowledge
from assistant.practice.making.own import read_own
from assistant.practice.making.question import OWN, Expected
from assistant.practice.marking.mark import Marker
from assistant.practice.recall import MISSED, PARTLY, RIGHT, WRONG
from assistant.practice.sitting_marks import take

GOOD = """\
questions:
  - ask: Where is the spare torch kept?
    points: [in the left cupboard, by the door]
    cites: AOM 32.05.4
    section: 32-10
    hint: Behind you.
  - ask: How many torches are there?
    value: 2 count
    cites: SOP B.2
    difficulty: 2
  - {ask: What comes first, points: [look, then touch], ordered: yes, cites: AOM 32.05}
"""
BROKEN = """\
questions:
  - ask: Where is it?
    points: [here]
    cites: AOX 32.05.4
  - ask: Where is it?
    cites: AOM 32.05.4
  - points: [here]
    cites: AOM
    difficulty: hard
    pionts: [there]
  - just a text
  - {ask: How many?, value: many, section: brakes, ordered: perhaps, cites: LIM 3.2}
"""


def _read(tmp_path: Path, knowledge: Knowledge, text: str) -> tuple[tuple, list[str]]:  # type: ignore[type-arg]
    file = tmp_path / "own.yaml"
    file.write_text(text, encoding="utf-8")
    questions, problems = read_own(str(file), knowledge, "own.yaml")
    return questions, [str(problem) for problem in problems]


def test_questions_are_read_with_their_keys(tmp_path: Path, knowledge: Knowledge) -> None:
    questions, problems = _read(tmp_path, knowledge, GOOD)

    assert problems == []
    torch, count, order = questions
    assert torch.form == OWN and torch.section == "32-10" and torch.hint == "Behind you."
    assert torch.key.points == ("in the left cupboard", "by the door") and not torch.key.ordered
    assert [(s.document, s.paragraph, s.revision) for s in torch.sources] == [("AOM", "32.05.4", "7")]
    assert count.key.values == (Expected("answer", 2.0, "count"),) and count.difficulty == 2
    assert order.key.ordered


def test_every_problem_is_named_by_its_line(tmp_path: Path, knowledge: Knowledge) -> None:
    questions, problems = _read(tmp_path, knowledge, BROKEN)

    assert questions == ()
    assert [problem.split(": ")[0] for problem in problems] == [
        "own.yaml:4", "own.yaml:5", "own.yaml:10", "own.yaml:8", "own.yaml:7", "own.yaml:9", "own.yaml:11",
        "own.yaml:12", "own.yaml:12", "own.yaml:12",
    ]  # fmt: skip
    assert "AOX is no listed document" in problems[0]
    assert "did you mean 'points'?" in problems[2]
    assert all("; " in problem for problem in problems)


def test_a_file_that_holds_no_questions_says_what_to_write(tmp_path: Path, knowledge: Knowledge) -> None:
    for text in ("", "facts: []\n", "questions: none\n", "- ask: x\n", "questions: [\n"):
        questions, problems = _read(tmp_path, knowledge, text)
        assert questions == ()
        assert problems and problems[0].startswith("own.yaml")
    assert read_own(str(tmp_path / "absent.yaml"), knowledge)[1]


def test_a_question_is_of_the_section_and_the_figure_of_its_paragraph(tmp_path: Path, knowledge: Knowledge) -> None:
    limits = [knowledge.base.records[name] for name in knowledge.base.ids("limits")]
    record = next(each for each in limits if each.maximum and each.topic and " retracting" in each.of)
    source, figure = record.sources[0], record.maximum
    text = (
        f"questions:\n  - {{ask: 'What is the {record.of.replace(',', '')}?', value: {figure.value:g} {figure.unit}, "
        f"cites: {source.document} {source.paragraph}}}\n"
        f"  - {{ask: What colour is the book?, points: [blue], cites: {source.document} {source.paragraph}}}\n"
    )
    (asked, other), problems = _read(tmp_path, knowledge, text)

    assert problems == []
    assert (asked.entry, asked.form) == (record.id, OWN)
    assert asked.section == other.section != ""
    assert other.entry == "own:What colour is the book?"


def test_a_paragraph_that_its_document_does_not_list_is_refused(tmp_path: Path, knowledge: Knowledge) -> None:
    questions, problems = _read(tmp_path, knowledge, "questions:\n  - {ask: x, points: [y], cites: LIM 9.9}\n")

    assert questions == ()
    assert problems == ["own.yaml:2: LIM does not list the paragraph 9.9; its paragraphs are 3.1, 3.2"]


@pytest.mark.parametrize(
    ("place", "answer", "mark"),
    [
        (0, "leave it at DN", RIGHT),
        (0, "leave it down, stay below 255 and press override", RIGHT),
        (0, "move it UP", WRONG),
        (0, "don't know", MISSED),
        (1, "in the left cupboard by the door", RIGHT),
        (1, "by the door", PARTLY),
        (1, "in the right cupboard by the door", WRONG),
        (2, "two torches", RIGHT),
        (2, "3", WRONG),
        (3, "look, then touch", RIGHT),
        (3, "touch, then look", WRONG),
        (4, "no, maintenance does", RIGHT),
        (4, "yes, maintenance does", WRONG),
    ],
)
def test_an_answer_is_marked_by_the_points_of_the_instructor(
    tmp_path: Path, knowledge: Knowledge, place: int, answer: str, mark: str
) -> None:
    stuck = "  - {ask: What do you do with the stuck lever?, points: [leave it at DN], cites: ABN 32.3}\n"
    barred = '  - {ask: May the crew open the panel?, points: ["no, maintenance does"], cites: AOM 32.05}\n'
    questions, problems = _read(tmp_path, knowledge, GOOD.replace("questions:\n", f"questions:\n{stuck}") + barred)
    assert problems == []

    assert take(questions[place], answer, Marker(knowledge), knowledge).mark == mark


@pytest.mark.parametrize(
    ("entry", "message", "advice"),
    [
        ("ask: What is the pressure?, value: 800", "“800” has no unit", "800 psi"),
        ("ask: How hot may it be?, value: 250", "“250” has no unit", "with its unit"),
        ("question: Where is it?, points: [here]", "`question` is not known", "write `ask:`"),
        ("ask: Where is it?, answer: [here]", "`answer` is not known", "write `points:`"),
    ],
)
def test_what_is_left_out_or_called_otherwise_is_named(
    tmp_path: Path, knowledge: Knowledge, entry: str, message: str, advice: str
) -> None:
    _, problems = _read(tmp_path, knowledge, f"questions:\n  - {{{entry}, cites: AOM 32.05.4}}\n")

    assert any(message in problem and advice in problem for problem in problems)


def test_a_count_needs_no_unit_and_its_key_shows_none(tmp_path: Path, knowledge: Knowledge) -> None:
    text = "questions:\n  - {ask: How many jacks are there?, value: 4, cites: AOM 32.05.4}\n" + (
        "  - {ask: How many torches are there?, value: 3 count, cites: AOM 32.05.4}\n"
    )
    questions, problems = _read(tmp_path, knowledge, text)

    assert problems == []
    assert [question.key.says for question in questions] == ["4", "3"]
