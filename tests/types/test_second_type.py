"""A type of the tests' own answers from its files alone: nothing in the assistant knows one aeroplane."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from assistant.answering.answer import ANSWER, DECLINE, Answer
from assistant.knowledge.load import load

Ask = Callable[..., Answer]
FOLDER = Path(__file__).parent / "second"

NUMBERS = [
    ("what's VLE", 165, "kt", "HB 3.1"),
    ("VLE on the freighter?", 155, "kt", "HB 9.2"),
    ("tiller limit at 25 kt", 26, "deg", "HB 4.2"),
    ("tiller limit at 12 kt", 52, "deg", "HB 4.2"),
    ("tiller limit at 12 kt on the 40K", 64, "deg", "HB 9.1"),
    ("tiller limit at 25 kt on the 40K", 32, "deg", "HB 9.1"),
    ("tiller limit at 60 kt", 0, "deg", "HB 4.2"),
    ("at what speed is the tiller limit 26 degrees", 25, "kt", "HB 4.2"),
    ("stopping distance from 100 kt", (100 * 1852 / 3600) ** 2 / (2 * 2.5), "m", "HB 5.1"),
    ("what changed", 165, "kt", "HB 3.1"),
]


@pytest.mark.parametrize(("question", "value", "unit", "source"), NUMBERS, ids=[n[0] for n in NUMBERS])
def test_a_number_of_its_own(second: Ask, question: str, value: float, unit: str, source: str) -> None:
    answer = second(question)

    assert answer.outcome == ANSWER
    assert answer.values[0].value == pytest.approx(value)
    assert answer.values[0].unit == unit
    assert source in [f"{s.document} {s.paragraph}" for s in answer.sources]


@pytest.mark.parametrize(
    ("question", "verdict"),
    [
        ("brakes read 209, OK for take-off?", "Within HB 3.2"),
        ("brakes read 210, OK for take-off?", "Within HB 3.2"),
        ("brakes read 211, OK for take-off?", "Outside HB 3.2"),
    ],
)
def test_a_limit_check(second: Ask, question: str, verdict: str) -> None:
    answer = second(question)

    assert answer.text.startswith(verdict)
    assert [v.value for v in answer.values[:2]] == [210, float(question.split()[2].strip(","))]


@pytest.mark.parametrize(
    ("question", "said"),
    [
        ("where is the hand pump", "between the front seats"),
        ("engine pump failed, can the gear be extended?", "The gear extends by hand pump"),
        ("engine pump and hand pump failed, can the gear be extended?", "The gear does not extend"),
        ("what leads to no extension", "the engine pump failed and the hand pump failed"),
        ("engine pump failure procedure", "1. (memory) Slow to 120 kt or less; 2. Gear lever DN"),
        ("why the hand pump", "when the engine pump has failed"),
    ],
)
def test_a_statement_of_its_own(second: Ask, question: str, said: str) -> None:
    answer = second(question)

    assert answer.outcome == ANSWER
    assert said in answer.text


def test_a_follow_up_keeps_to_the_type(second: Ask) -> None:
    answer = second("tiller limit at 25 kt", "and on the 40K?")

    assert answer.values[0].value == pytest.approx(32)
    assert answer.variant == "40K"


@pytest.mark.parametrize(
    "question",
    ["how many cabin attendants?", "autobrake settings?", "free fall extension time", "fuel price"],
)
def test_what_it_does_not_hold_is_declined(second: Ask, question: str) -> None:
    assert second(question).outcome == DECLINE


def test_it_is_data_alone() -> None:
    assert {path.suffix for path in FOLDER.rglob("*") if path.is_file()} == {".yaml"}


@pytest.mark.parametrize("cited", ["HB 9.9", "HB banana", "QL 5"])
def test_a_paragraph_that_its_documents_do_not_list_is_refused(tmp_path: Path, cited: str) -> None:
    shutil.copytree(FOLDER, tmp_path / "second")
    records = tmp_path / "second" / "records.yaml"
    records.write_text(records.read_text("utf-8").replace("source: HB 3.1", f"source: {cited}"), "utf-8")

    _, problems = load(str(tmp_path), "second", cache_dir="")

    expected = f"limit 'gear-down-speed' cites '{cited}', which {cited[:2]} does not list"
    assert expected in [problem.message for problem in problems]


@pytest.mark.parametrize(
    ("question", "told"),
    [
        ("what is loaded", "Loaded: HB, Tarrowby 40 Handbook, revision 3, effective 1 February 2026; QL, "),
        ("when is the quick list effective", "QL, revision 2, effective 1 March 2026."),
        ("who validated the handbook", "It is not stated who validated HB 3."),
    ],
)
def test_its_documents_tell_of_themselves(second: Ask, question: str, told: str) -> None:
    assert second(question).text.startswith(told)
