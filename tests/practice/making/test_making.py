"""What questions are made, how they differ, and what they keep to themselves."""

from __future__ import annotations

import re
from collections import Counter
from pathlib import Path

import pytest

from assistant.conversation.opening import Knowledge, open_knowledge
from assistant.knowledge.records import NOT_ASKED
from assistant.practice.making import Question, UnknownTopic, make_questions
from assistant.practice.making.question import CALCULATION, CHECK, FACT, FIGURE, FORMS, LOSS, OWN, STATE
from assistant.practice.making.selecting import is_general

ROOT = Path(__file__).resolve().parents[3]


def test_every_form_is_asked(everything: list[Question]) -> None:
    assert {question.form for question in everything} == set(FORMS) - {OWN}


def test_nearly_every_record_of_the_type_is_asked_for(everything: list[Question], knowledge: Knowledge) -> None:
    records = knowledge.base.records
    own = {name for name in knowledge.base.order if not is_general(name, knowledge)}
    without = {name for name in own if getattr(records[name], "quiz", ()) == (NOT_ASKED,)}
    assert len(without) <= 0.1 * len(own)  # told better by others, which are asked
    own -= without
    asked = {question.entry for question in everything}
    assert len(own & asked) >= 0.96 * len(own), sorted(own - asked)  # the rest could only be asked awkwardly


def test_the_same_seed_asks_the_same_and_another_one_something_else(knowledge: Knowledge) -> None:
    first = make_questions(knowledge, 5, 20)
    assert make_questions(knowledge, 5, 20) == first
    other = {question.text for question in make_questions(knowledge, 6, 20)}
    assert len(other & {question.text for question in first}) < 8


def test_a_question_stays_the_same_when_fewer_records_are_wanted(knowledge: Knowledge) -> None:
    entry = "vlo-extension"
    alone = make_questions(knowledge, 5, entries=[entry])
    among = [q for q in make_questions(knowledge, 5, topics=["32-30"]) if q.entry == entry]
    assert alone and set(alone) == set(among)


def test_a_sitting_has_many_forms_and_sections(sittings: list[tuple[Question, ...]]) -> None:
    for sitting in sittings:
        assert len(sitting) == 20
        assert len({question.form for question in sitting}) >= 8
        assert len({question.section for question in sitting}) >= 3


def test_no_two_questions_of_a_sitting_are_alike(sittings: list[tuple[Question, ...]]) -> None:
    for sitting in sittings:
        assert len({question.text for question in sitting}) == len(sitting)
        once = [question.entry for question in sitting if question.form not in (STATE, LOSS)]
        assert len(set(once)) == len(once)
        facts = [(value.value, value.unit, source) for q in sitting if q.form == FIGURE
                 for value in q.key.values[:1] for source in q.sources]  # fmt: skip
        assert len(set(facts)) == len(facts)


def test_no_question_tells_the_figure_of_another(sittings: list[tuple[Question, ...]]) -> None:
    for sitting in sittings:
        for one in sitting:
            for other in sitting:
                if one.form == FIGURE and one.key.values[0].unit != "count" and one.section == other.section:
                    numbers = re.findall(r"\d+(?:\.\d+)?", other.text.replace(",", ""))
                    assert f"{one.key.values[0].value:g}" not in numbers, (one.text, other.text)


def test_no_figure_stands_in_its_own_question(everything: list[Question]) -> None:
    for question in everything:
        if question.form == FIGURE:
            numbers = {float(n) for n in re.findall(r"\d+(?:\.\d+)?", question.text.replace(",", ""))}
            assert question.key.values[0].value not in numbers, question.text


def test_no_question_holds_all_that_must_be_said(everything: list[Question]) -> None:
    for question in everything:
        key = question.key
        closed = question.text.split()[0] in ("Do", "Does", "Is", "Are", "Can", "May", "Must")
        if key.points and not (key.states or key.sets or key.verdict or key.values or closed):
            said = question.text.lower()
            assert not all(point.lower() in said for point in key.points), question.text


def test_questions_read_as_sentences(everything: list[Question]) -> None:
    for question in everything:
        assert question.text[0].isupper() or not question.text[0].isalpha(), question.text
        assert question.text[-1] in ".?", question.text
        assert not re.search(r"  |\{|\}|\[|\]| ,|:\.|the the|\?\?|:\?", question.text), question.text
        assert re.search(r"\d", question.spoken) is None and question.spoken, question.spoken
        assert question.hint


def test_a_limit_is_asked_on_both_sides_and_at_it(knowledge: Knowledge) -> None:
    found = make_questions(knowledge, 1, entries=["vlo-extension"], forms=[CHECK])
    assert sorted((q.key.values[1].value > 230) - (q.key.values[1].value < 230) for q in found) == [-1, 0, 1, 1]
    assert {q.key.verdict for q in found if q.key.values[1].value <= 230} == {"within"}


def test_no_verdict_can_be_guessed(everything: list[Question]) -> None:
    for outcomes in (
        [q.key.verdict for q in everything if q.form == CHECK],
        *([value for q in everything if q.form == STATE for name, value in q.key.states if name == output]
          for output in {name for q in everything for name, _ in q.key.states if q.form == STATE}),
    ):  # fmt: skip
        counted = Counter(outcomes)
        if len(counted) > 1:
            assert max(counted.values()) <= 0.75 * len(outcomes), counted


def test_no_scenario_piles_up_what_one_of_it_decides(everything: list[Question], knowledge: Knowledge) -> None:
    from assistant.practice.leading.case import state_of
    from assistant.resolving import tables

    for question in [q for q in everything if q.form == STATE and len(q.key.states) == 1]:
        table, output = question.key.states[0][0].split(".", 1)
        record, value = knowledge.base.records[table], question.key.states[0][1]
        alone = [tables.outputs(record, dict([each]), knowledge.base)[output] for each in state_of(question, knowledge)]
        normal = tables.outputs(record, {}, knowledge.base)[output]
        assert value == normal or alone.count(value) < 2, question.text


def test_a_variant_is_asked_for_its_own_figures(knowledge: Knowledge) -> None:
    for variant, degrees in (("120", 68), ("120L", 72)):
        found = make_questions(knowledge, 1, entries=["tiller-maximum"], forms=[FIGURE], variant=variant)
        assert [q.key.values[0].value for q in found] == [degrees]


@pytest.mark.parametrize(
    ("topic", "sections"),
    [
        ("32-50", {"32-50"}),
        ("steering", {"32-50"}),
        ("brakes", {"32-40"}),
        ("gear", {"32-10", "32-20", "32-30", "32-60"}),
    ],
)
def test_topics_are_sections_and_plain_words(knowledge: Knowledge, topic: str, sections: set[str]) -> None:
    assert {q.section for q in make_questions(knowledge, 1, 30, topics=[topic])} <= sections


def test_a_topic_may_be_a_thing_and_what_is_true_of_all(knowledge: Knowledge) -> None:
    asked = [knowledge.base.records[q.entry] for q in make_questions(knowledge, 1, 8, topics=["tiller"])]
    words = [" ".join((*getattr(each, "asks", ()), getattr(each, "of", ""))) for each in asked]
    assert sum("tiller" in each for each in words) == 8
    assert all(is_general(q.entry, knowledge) for q in make_questions(knowledge, 1, 10, topics=["general"]))
    with pytest.raises(UnknownTopic, match="32-40"):
        make_questions(knowledge, 1, 5, topics=["catering"])


def test_difficulty_can_be_held_down(knowledge: Knowledge) -> None:
    assert {q.difficulty for q in make_questions(knowledge, 1, 25, hardest=1)} == {1}


def test_plain_recall_can_be_left_out_and_a_list_is_none(knowledge: Knowledge) -> None:
    asked = make_questions(knowledge, 1, 12, easiest=2)

    assert {q.difficulty for q in asked} == {2, 3}
    assert not [q.text for q in make_questions(knowledge, 1, hardest=1, forms=[FACT]) if len(q.key.points) > 2]


def test_another_type_needs_no_line_of_python(tmp_path: Path) -> None:
    second, problems = open_knowledge(root=_second_root(tmp_path), cache_dir="")
    assert second is not None, problems
    found = make_questions(second, 1, 12)
    assert len(found) >= 5
    assert all("ldermere" not in question.text for question in found)


def _second_root(tmp_path: Path) -> str:
    import shutil

    root = tmp_path / "knowledge"
    shutil.copytree(ROOT / "knowledge_base" / "language", root / "language")
    shutil.copytree(ROOT / "tests" / "types" / "second", root / "second")
    return str(root)


def test_the_makers_hold_no_name_of_the_type(knowledge: Knowledge) -> None:
    base = knowledge.base
    said = [getattr(base.records[name], "says", "") for name in base.order]
    captions = {caption for text in said for caption in re.findall(r"\b[A-Z]{4,}(?: [A-Z]{2,})+\b", text)}
    names = {base.type_info.name, base.type_info.operator, *captions}
    names |= {name for name in base.documents if not base.documents[name].published}
    for file in (ROOT / "assistant" / "practice").glob("*/*.*"):
        if file.parent.name in ("making", "papers") and file.suffix in (".py", ".toml"):
            text = file.read_text(encoding="utf-8")
            assert [name for name in names if re.search(rf"\b{re.escape(name)}\b", text)] == [], file


def test_no_question_is_open_and_hardly_one_a_torn_sentence(
    everything: list[Question], general: tuple[Question, ...]
) -> None:
    """What the book says of something has no end, and nobody can tell what of it is wanted."""
    everything = [*everything, *general]
    assert [q.text for q in everything if re.search(r"does the book say (?:about|of)|What do you know ", q.text)] == []
    torn = [question.text for question in everything if "go on: " in question.text]
    assert len(torn) <= 0.02 * len(everything), torn
    begun = [found[1] for text in torn if (found := re.search(r"“(.*) …”", text))]
    assert all(len(each.split()) >= 5 for each in begun), begun


def test_what_is_still_to_be_checked_is_asked_of_nobody(general: tuple[Question, ...]) -> None:
    assert [q.text for q in general if "check the source" in q.key.says] == []


def test_a_sum_says_what_it_depends_on(everything: list[Question], knowledge: Knowledge) -> None:
    for question in everything:
        record = knowledge.base.records[question.entry]
        if question.form == CALCULATION and any(item.choices for item in getattr(record, "inputs", ())):
            assert not re.match(r"(?:What|How) ", question.text), question.text


def test_a_scenario_s_full_answer_tells_of_no_other_table(everything: list[Question], knowledge: Knowledge) -> None:
    from assistant.answering.states import output_words
    from assistant.resolving import tables

    for question in [q for q in everything if q.form == STATE]:
        asked = {name.split(".")[0] for name, _ in question.key.states}
        for table in [each for each in tables.tables(knowledge.base) if each.id not in asked]:
            said = {output_words(table, output.id, value) for output in table.outputs for value, _, _ in output.values}
            assert not any(words in question.key.says for words in said), question.text


def test_a_paper_asks_no_state_twice_and_tells_no_limit_that_it_asks_for(sittings: list[tuple[Question, ...]]) -> None:
    for paper in sittings:
        states = [
            (q.entry, frozenset(re.split(r", | and ", found[1]))) for q in paper
            if q.form in (STATE, LOSS) and (found := re.search(r"That is with (.+?), and everything", q.key.says))
        ]  # fmt: skip
        assert len(states) == len(set(states)), states
        for check in [q for q in paper if q.form == CHECK]:
            figure = f"{check.key.values[0].value:g}"
            told = [q.text for q in paper if q is not check and q.section == check.section]
            assert not [text for text in told if figure in re.findall(r"[\d.]+", text.replace(",", ""))], check.text
