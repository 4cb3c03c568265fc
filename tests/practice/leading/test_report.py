"""What is told of a class: counted rightly, without a name where none belongs, harmless in a spreadsheet."""

import csv
import io
import re
from html import escape
from html.parser import HTMLParser

import pytest

from assistant.conversation.opening import Knowledge
from assistant.practice.asking.pool import Pool
from assistant.practice.leading.bars import confusion_bars
from assistant.practice.leading.page import OWN_COPY, class_page
from assistant.practice.leading.report import FORMATIVE, ClassReport, Confusion, report_of
from assistant.practice.leading.shown import without_names
from assistant.practice.leading.statements import statements
from assistant.practice.leading.summary import report_lines
from assistant.practice.leading.table import cell, turns_table
from assistant.practice.leading.telling import telling_apart
from assistant.practice.making import make_questions
from assistant.practice.making.question import Question
from assistant.practice.page_parts import shortened
from tests.practice.leading.conftest import NAMES, Begin, Class
from tests.practice.leading.xapi_rules import breaches

Questions = tuple[Question, ...]


def report(room: Class, know: Knowledge, pool: Pool) -> ClassReport:
    return report_of(room.standing, pool, telling_apart(know))


@pytest.fixture
def confused(begin: Begin, speeds: Questions) -> Class:
    """Twelve were asked the same: five took one speed for the other, the last one by a hint."""
    room = begin(speeds)
    room.type("")
    for place in range(12):
        room.type("", *(["h"] if place == 11 else []), "205 kt" if place < 5 else "230 kt", "")
        room.type(*(["n"] if place < 11 else []))
    return room


@pytest.mark.parametrize(("before", "hinted"), [(0, [True, True, True]), (1, [False, True, True])])
def test_a_hint_counts_for_whoever_had_heard_it(
    begin: Begin, speeds: Questions, know: Knowledge, pool: Pool, before: int, hinted: list[bool]
) -> None:
    room = begin(speeds)
    room.type("", *([] if before else ["h"]), "", "n", *(["h"] if before else []), "n", "r")

    assert [each.hinted for each in report(room, know, pool).asked] == hinted


def test_five_of_twelve_took_one_speed_for_the_other(confused: Class, know: Knowledge, pool: Pool) -> None:
    made = report(confused, know, pool)

    (confusion,) = made.confusions
    assert confusion.line == (
        "Five of twelve took the maximum speed for retracting the gear, VLO (retraction) for the maximum speed for "
        "extending the gear, VLO (extension)."
    )
    assert "205 kt" in confusion.key
    assert "230 kt" in confusion.key
    assert confusion.paragraphs == ("LIM 3.1", "LIM 3.1")
    assert any(confusion.question in line for line in made.remedial)
    (section,) = made.sections
    assert (section.right, section.wrong, section.hinted, round(section.share, 3)) == (7, 5, 1, 0.583)
    assert (made.missed[0].failed, made.missed[0].asked, made.missed[0].answers) == (5, 12, ("205 kt (5 times)",))


def test_a_show_of_hands_counts_the_class(begin: Begin, speeds: Questions, know: Knowledge, pool: Pool) -> None:
    room = begin(speeds)
    room.type("", "", "w 205 kt", "hands 5")

    assert report(room, know, pool).confusions[0].line.startswith("Five of twelve took the ")


def test_a_show_of_hands_is_told_of_what_was_missed_too(
    begin: Begin, speeds: Questions, know: Knowledge, pool: Pool
) -> None:
    room = begin(speeds)
    room.type("", "", "m", "hands 5")
    made = report(room, know, pool)

    assert made.confusions == ()
    assert made.missed[0].of == "5 of 12, by a show of hands"
    assert "5 of 12, by a show of hands" in class_page(made, "A type", "Training only.")


def test_a_show_of_hands_for_what_was_right_is_no_fault(
    begin: Begin, speeds: Questions, know: Knowledge, pool: Pool
) -> None:
    room = begin(speeds)
    room.type("", "", "r", "hands 5")

    assert report(room, know, pool).missed == ()


def test_no_name_is_on_the_page_or_in_the_table(confused: Class, know: Knowledge, pool: Pool) -> None:
    confused.type("correction w Ana said that it is Ben's 205 kt")
    made = report(confused, know, pool)
    handed_round = (
        class_page(made, "A type", "Training only."),
        turns_table(made),
        "\n".join(line.text for line in report_lines(made)),
    )

    for text in handed_round:
        assert not [name for name in NAMES if name in text]
        assert FORMATIVE in text
    own = class_page(made, "A type", "Training only.", named=True), turns_table(made, named=True)
    for text in own:
        assert all(name in text for name in NAMES)
    assert own[0].count(escape(OWN_COPY)) == 2


def test_the_page_needs_nothing_else_and_is_well_formed(confused: Class, know: Knowledge, pool: Pool) -> None:
    made = report(confused, know, pool)._replace(title='<script>alert("x")</script> & co')
    page = class_page(made, "A type", "Training only.", named=True)

    assert "<script" not in page
    assert "http" not in page.replace("http-equiv", "")
    assert page.count("<svg") >= 3
    assert "@page" in page
    assert "size:" not in page.split("</style>")[0].split("@page")[1].split("}")[0]  # A4 and Letter alike
    stack: list[str] = []

    class Reader(HTMLParser):
        def handle_starttag(self, tag: str, attrs: object) -> None:
            if tag not in ("meta", "br"):
                stack.append(tag)

        def handle_startendtag(self, tag: str, attrs: object) -> None:
            return

        def handle_endtag(self, tag: str) -> None:
            assert stack.pop() == tag

    Reader().feed(page)
    assert stack == []


@pytest.mark.parametrize(
    "text", ["=1+1", "+1", "-1", "@A1", "\t=1", " =1", "\r=1", "＝1", "|x", "%0", "\u00a0=1", '=HYPERLINK("x","y")']
)
def test_no_cell_begins_a_formula(text: str) -> None:
    (row,) = csv.reader(io.StringIO(f"{cell(text)}\r\n", newline=""))

    assert row == [f"'{text}"]


@pytest.mark.parametrize("text", ["230 kt", "a, b", 'said "x"', "two\nlines", "", "1;2"])
def test_other_cells_come_back_as_they_were(text: str) -> None:
    (row,) = csv.reader(io.StringIO(f"{cell(text)},x\r\n", newline=""))

    assert row == [text, "x"]


def test_a_typed_formula_does_not_reach_a_spreadsheet(
    begin: Begin, speeds: Questions, know: Knowledge, pool: Pool
) -> None:
    room = begin(speeds)
    room.type("", "", "w =cmd|' /C calc'!A0")
    rows = list(csv.reader(io.StringIO(turns_table(report(room, know, pool), named=True), newline="")))

    assert "'=cmd|' /C calc'!A0" in rows[1]
    assert not [each for row in rows for each in row if each[:1] in ("=", "+", "-", "@", "\t", "\r")]


def test_remedial_training_names_the_weak_sections_and_what_to_drill(begin: Begin, know: Knowledge, pool: Pool) -> None:
    steps = make_questions(know, "1", entries=("free-fall-procedure",), forms=("steps",))[:1]
    room = begin(steps)
    room.type("", "", "speed 190 kt or less, gear lever DN", "p")
    made = report(room, know, pool)

    assert any(line.startswith("Teach again 32-30 Extension and retraction") for line in made.remedial)
    assert any(line.startswith("Drill in order, aloud: ") and "ABN 32.4" in line for line in made.remedial)


def test_persons_and_what_each_has_to_learn(begin: Begin, speeds: Questions, know: Knowledge, pool: Pool) -> None:
    room = begin(speeds, names=("Ana", "Ben"), teams=("Red", "Blue"))
    standing = room.type("", "", "n", "w")
    answered = standing.name_of(standing.turns[0].seat)
    made = report(room, know, pool)

    persons = {person.name: person for person in made.persons}
    assert persons[answered].wrong == 1
    other = next(person for name, person in persons.items() if name != answered)
    assert (other.turns, other.missed, other.passed, other.to_learn) == (1, 1, 1, (f"{speeds[0].text} (LIM 3.1)",))
    assert {team.name: team.turns for team in made.teams} == {"Red": 1, "Blue": 1}


def test_whoever_passes_has_missed_it(begin: Begin, speeds: Questions, know: Knowledge, pool: Pool) -> None:
    room = begin(speeds)
    room.type("", "", *["n"] * 11, "m")
    made = report(room, know, pool)

    assert {(each.turns, each.missed) for each in made.persons} == {(1, 1)}
    assert sum(each.passed for each in made.persons) == 11
    assert (made.missed[0].of, made.missed[0].answers) == ("12 of 12", ())
    assert report_lines(made)[1].text == "1 question, 12 turns: 12 missed; 0% of the points."
    rows = list(csv.reader(io.StringIO(turns_table(made, named=True), newline="")))
    assert len({row[-2] for row in rows[1:-1]}) == 12 and {row[5] for row in rows[1:-1]} == {"missed"}
    written = statements(room.standing)
    assert len(written) == len({each["id"] for each in written}) == 12
    assert not [breach for each in written for breach in breaches(each)]


def test_names_within_an_answer_are_blotted_out() -> None:
    assert without_names("as Ana Lima and BEN said: bend it", ("Ana Lima", "Ben")) == "as … and … said: bend it"


def test_nothing_marked_is_said(begin: Begin, speeds: Questions, know: Knowledge, pool: Pool) -> None:
    (line,) = report_lines(report(begin(speeds), know, pool))

    assert line.text.startswith("No question was marked")


IDLE = "brake temperature at which the fans have cooled the wheel long enough, in a landing with idle reverse"
FULL = "brake temperature at which the fans have cooled the wheel long enough, in a landing with full reverse"


def taken(times: int, one: str = IDLE, other: str = FULL) -> Confusion:
    line = f"{times} took the {other} for the {one}."
    return Confusion(line, one, other, times, 4, ("AOM 1", "AOM 2"), "What is each?", "10; 20")


def test_labels_that_differ_at_their_end_are_told_apart() -> None:
    drawn = confusion_bars((taken(2), taken(3, "VLE", "VLO")), 1)

    labels = re.findall(r"<text[^>]*>([^<]*)</text>", drawn)
    assert any(label.endswith("idle reverse") for label in labels)
    assert any(label.endswith("full reverse") for label in labels)
    assert max(map(len, labels)) <= 80
    assert "…" not in drawn
    tops = [float(top) for top in re.findall(r'<text x="(?:8|24).0" y="([\d.]+)"', drawn)]
    assert tops == sorted(set(tops)) and len(tops) == 6
    assert float(re.findall(r'viewBox="0 0 640 (\d+)"', drawn)[0]) > max(tops) + 20


@pytest.mark.parametrize(
    ("text", "most", "told"),
    [("short", 10, "short"), ("nose gear left", 10, "nose…left"), ("nose gear right", 10, "nose…ight")],
)
def test_a_shortened_label_keeps_its_end(text: str, most: int, told: str) -> None:
    assert shortened(text, most) == told


def test_what_one_answer_shows_is_told_as_that_and_not_drawn(
    begin: Begin, speeds: Questions, know: Knowledge, pool: Pool
) -> None:
    room = begin(speeds)
    room.type("", "", "205 kt", "")
    made = report(room, know, pool)

    (confusion,) = made.confusions
    assert confusion.line == (
        "One answer alone: the maximum speed for retracting the gear, VLO (retraction) was told for the maximum speed "
        "for extending the gear, VLO (extension)."
    )
    assert confusion_bars(made.confusions, 1) == ""
    assert "What was taken for what" not in class_page(made, "A type", "Training only.")
    assert confusion.line in class_page(made, "A type", "Training only.")
    assert not any("side by side" in line for line in made.remedial)
