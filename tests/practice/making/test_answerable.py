"""Every question can be answered whole: in a word where yes or no answers it, and in words that a person would use."""

from __future__ import annotations

import re

import pytest

from assistant.conversation.opening import Knowledge
from assistant.practice.making import Question, make_questions
from assistant.practice.making.question import BAND, CALCULATION, CHANGE, CHECK, INVERSE, LOSS, READING, STATE
from assistant.practice.marking.mark import RIGHT, WRONG, Marker
from assistant.resolving.tables import tables

_CLOSED = re.compile(r"(?:with .+, )?(?:do|does|is|are|may|can|must|will)\b", re.IGNORECASE)
_SEVERAL = re.compile(r", and | or ")


def _is_closed(question: Question) -> bool:
    """Whether yes or no answers a question: what it ends in begins with a verb that helps, and asks one thing."""
    last = re.split(r": |\. ", question.text.rstrip("?"))[-1]
    return bool(_CLOSED.match(last)) and not _SEVERAL.search(last)


def test_yes_or_no_alone_answers_what_it_can_answer(everything: list[Question], knowledge: Knowledge) -> None:
    closed = {q.text: q for q in everything if not q.variant.endswith("L") and _is_closed(q)}
    states = [text for text, q in closed.items() if q.form == STATE]
    skipped = set(states) - set(states[::12])
    marker, unfair = Marker(knowledge), []
    for text in closed.keys() - skipped:
        marks = {marker.mark(text, answer).mark for answer in ("yes", "no")}
        if marks != {RIGHT, WRONG}:
            unfair.append((text, marks))
    assert len(closed) > 150
    assert unfair == []


@pytest.mark.parametrize(
    ("entry", "answer"),
    [
        ("scrubbing", "asymmetric thrust, not brakes on one side"),
        ("uplocks-function", "they hold the legs up"),
        ("downlocks-function", "hold the legs down"),
        ("free-fall-force", "weight and airflow"),
        ("vle-which-applies", "the lower one"),
        ("which-wheels-brake", "the main wheels"),
        ("torque-link-flag", "retracted"),
        ("locked-wheel-release", "it is released fully"),
        ("wear-pin-function", "how far the brake has worn"),
        ("deceleration-counts", "drag, spoilers and reverse thrust too"),
        ("hot-brake-approach", "from ahead or behind"),
        ("fans-faster", "nearly four times as fast"),
        ("free-fall-doors", "they stay open"),
        ("energy-rest", "drag, spoilers and reverse thrust"),
        ("ground-lock-pins-stowed", "behind the right-hand seat"),
        ("tyre-low-rule", "past 5 percent re-inflate, past 10 replace, run at more than 20 with its axle mate"),
    ],
)
def test_what_answers_all_that_is_asked_is_right(knowledge: Knowledge, entry: str, answer: str) -> None:
    questions = [q for seed in range(2) for q in make_questions(knowledge, seed, entries=[entry])]
    assert questions
    assert {q.text: Marker(knowledge).mark(q.text, answer).mark for q in questions} == {
        q.text: RIGHT for q in questions
    }


def test_a_reading_is_asked_of_in_the_record_s_own_words(everything: list[Question], knowledge: Knowledge) -> None:
    bands = [q for q in everything if q.form == BAND]
    assert bands
    for question in bands:
        record = knowledge.base.records[question.entry]
        shapes = [re.escape(text).replace(r"\{amount\}", ".+") for text in record.quiz]
        assert not record.quiz or any(re.fullmatch(shape, question.text) for shape in shapes), question.text


def test_no_reading_is_asked_of_on_which_nothing_is_stated(everything: list[Question], knowledge: Knowledge) -> None:
    silent = {
        rule.says for name in knowledge.base.ids("bands") for rule in knowledge.base.records[name].rules
        if not rule.rehearsed
    }  # fmt: skip
    assert silent
    assert not [q.text for q in everything if silent.intersection(q.key.points)]


@pytest.mark.parametrize("seed", range(2))
def test_what_a_sum_gives_goes_together(knowledge: Knowledge, seed: int) -> None:
    for question in make_questions(knowledge, seed, forms=[CALCULATION]):
        text = question.text.lower()
        assert not ("headwind" in text and "tailwind" in text), text
        lengths = re.search(r"required ([\d,]+) m, .+ available ([\d,]+) m", text)
        if lengths:
            required, available = (float(each.replace(",", "")) for each in lengths.groups())
            assert required < available
        assert not re.match(r"angle|at most|(?:first|three) quarters?[,.:]", text), text
        assert not re.search(r"before the stop (?:2[5-9]|[3-9]\d)\d ", text), text


def test_no_scenario_adds_what_does_not_go_with_its_table(everything: list[Question], knowledge: Knowledge) -> None:
    apart = {table.id: table.apart for table in tables(knowledge.base) if table.apart}
    assert apart
    for question in everything:
        for name in apart.get(question.entry, ()) if question.form in (STATE, LOSS) else ():
            says = [says for _, says, _ in knowledge.base.inputs[name].values[1:]]
            assert not any(each.lower().removeprefix("the ") in question.text.lower() for each in says), question.text


def test_a_key_follows_on_nothing(everything: list[Question]) -> None:
    assert not [q.text for q in everything if q.key.says.startswith("Still so")]
    assert not [q.key.says for q in everything if re.search(r"\bsystem \d lost", q.key.says)]
    assert not [q.key.says for q in everything if re.search(r": above [\d,]+ \S+ is above the limit", q.key.says)]


_TELEGRAM = re.compile(
    r": (?:what is the figure|how many|how much|where (?:is it|are they)|what (?:is it|are they) for|what is new"
    r"|what is the rule|within the limit|is that allowed|memory items|list the items)\b|^Give the figure|^Tell ",
    re.IGNORECASE,
)


def test_no_question_is_a_heading_with_a_stub_after_it(everything: list[Question]) -> None:
    assert [q.text for q in everything if _TELEGRAM.search(q.text)] == []


def test_a_reading_held_against_a_limit_is_a_whole_sentence(knowledge: Knowledge) -> None:
    for question in make_questions(knowledge, 2, forms=[CHECK]):
        assert re.match(r"May you |Are you allowed |Is (?:an? |Mach |\d)|At .+, may you ", question.text), question.text


@pytest.mark.parametrize("seed", range(2))
def test_what_a_revision_changed_is_asked_in_whole_sentences(knowledge: Knowledge, seed: int) -> None:
    for question in make_questions(knowledge, seed, forms=[CHANGE]):
        assert re.search(r"\bnow\b|\bsince\b|^How did the last revision change ", question.text), question.text
        assert " at?" not in question.text


def test_a_hint_gives_no_figure_and_no_yes_or_no(everything: list[Question]) -> None:
    for question in everything:
        begins = re.search(r"“(.+?) …”", question.hint)
        if begins and question.form not in (STATE, LOSS, BAND):
            assert not begins[1][0].isdigit(), question.text
            assert begins[1].lower() not in ("no", "not", "none", "cannot"), question.text
            assert begins[1].lower() not in re.findall(r"\w+", question.text.lower()) or len(begins[1]) == 1


def test_a_key_tells_no_more_than_its_own_statement(knowledge: Knowledge) -> None:
    for question in make_questions(knowledge, 1, entries=["accumulator-function", "vlo-meaning", "inverse-video"]):
        record = knowledge.base.records[question.entry]
        more = question.key.says.removeprefix(getattr(record, "says", ""))
        assert more == "" or more.startswith(" On the "), question.key.says
        assert question.sources


def test_a_hint_on_a_change_says_which_way_it_went(knowledge: Knowledge) -> None:
    hints = {question.entry: question.hint for question in make_questions(knowledge, 1, forms=[CHANGE])}
    assert hints["vlo-retraction"] == "It went up with LIM 7; think of LIM 3.1."
    assert hints["brake-temperature-takeoff"] == "It went down with LIM 7; think of LIM 3.2."


def test_amounts_to_read_at_are_such_as_are_said(knowledge: Knowledge) -> None:
    for question in make_questions(knowledge, 1, forms=[READING, INVERSE], entries=["towing-load"]):
        (amount,) = re.findall(r"\d[\d,]*", question.text)
        assert len(amount.replace(",", "").rstrip("0")) <= 3, question.text
        assert "come down" not in question.text, question.text


def test_no_amount_is_asked_whether_it_is_allowed_to_act(knowledge: Knowledge) -> None:
    for question in make_questions(knowledge, 3, forms=[CHECK]):
        assert " allowed to " not in question.text or question.text.startswith("Are you allowed to "), question.text
