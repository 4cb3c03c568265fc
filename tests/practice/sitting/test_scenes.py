"""Scenarios of an oral examination: failure upon failure, every turn a question that the assistant answers itself."""

from itertools import pairwise

import pytest

from assistant.answering.answer import Citation
from assistant.conversation.opening import Knowledge
from assistant.knowledge.records import StateTable
from assistant.practice.making import make_questions
from assistant.practice.making.proving import answer_to, differences
from assistant.practice.making.question import LONG_SUMS, LOSS
from assistant.practice.making.selecting import is_general
from assistant.practice.sitting_following import stays
from assistant.practice.sitting_scenes import Examiner, Turn


@pytest.fixture(scope="module")
def own(know: Knowledge) -> list[str]:
    return [name for name in know.base.order if not is_general(name, know)]


@pytest.fixture(scope="module")
def scenes(know: Knowledge, own: list[str]) -> list[tuple[Turn, ...]]:
    return [scene for seed in "12" for examiner in [Examiner(know, seed, own)] for _ in range(4)
            if (scene := examiner.scene())]  # fmt: skip


def test_a_scene_goes_on_from_one_failure_to_several(scenes: list[tuple[Turn, ...]]) -> None:
    openings = [[turn.said for turn in scene if turn.said.startswith("And now ")] for scene in scenes]

    assert max(map(len, openings)) >= 2
    assert sum(map(bool, openings)) > len(scenes) / 2
    assert all(not scene[0].said.startswith("And ") for scene in scenes)


def test_a_scene_asks_what_then_and_why(scenes: list[tuple[Turn, ...]]) -> None:
    said = [turn.said for scene in scenes for turn in scene]

    assert any(each.startswith("And then: ") for each in said)
    assert any(each.startswith("And then? ") for each in said)
    assert any(each.lower().startswith("why ") for each in said)


def test_the_assistant_answers_every_turn_by_itself_as_its_key_says(
    know: Knowledge, scenes: list[tuple[Turn, ...]]
) -> None:
    for turn in (turn for scene in scenes for turn in scene):
        question = turn.question
        assert question.form not in LONG_SUMS
        entry = answer_to(question.text, question.variant, know).entry if question.form == LOSS else question.entry
        assert not differences(question.key, entry, answer_to(question.text, question.variant, know), know), turn


def test_each_failure_adds_to_the_state_before(know: Knowledge, scenes: list[tuple[Turn, ...]]) -> None:
    """Along the results of one table, each is asked in the state of the last one, or in one more failure."""
    for scene in scenes:
        own = [turn for turn in scene if isinstance(know.base.records[turn.question.entry], StateTable)]
        table = own[0].question.entry if own else ""
        numbers = [turn.question.difficulty for turn in own if turn.question.entry == table]
        assert all(before <= after for before, after in pairwise(numbers))


def test_nothing_is_asked_twice_by_one_examiner(know: Knowledge, own: list[str]) -> None:
    examiner = Examiner(know, "3", own)
    texts = [turn.question.text for _ in range(12) for turn in examiner.scene()]

    assert len(texts) == len(set(texts))
    assert len(texts) > 40


def test_a_topic_without_a_table_has_scenes_of_its_procedures_until_there_are_none(know: Knowledge) -> None:
    among = [name for name in know.base.order if getattr(know.base.records[name], "topic", "") == "32-60"]
    examiner = Examiner(know, "5", among)
    scenes = [examiner.scene() for _ in range(12)]

    assert all(turn.question.entry in among for scene in scenes for turn in scene)
    assert scenes[0] and not scenes[-1]


def test_a_reason_is_of_what_became_of_it_and_not_of_what_failed(know: Knowledge, own: list[str]) -> None:
    for seed in ("4", "6"):
        for turn in Examiner(know, seed, own).scene():
            assert not turn.said.endswith(": why is it there?"), turn.said


def test_a_scene_goes_on_until_nothing_more_can_fail(know: Knowledge, own: list[str]) -> None:
    ended = [scene for seed in "123" for examiner in [Examiner(know, seed, own)] for _ in range(2)
             if (scene := examiner.scene())]  # fmt: skip

    for scene in ended:
        assert any(turn.said.startswith("And now ") for turn in scene), scene[0].said


def test_what_follows_stays_with_the_states_and_the_paragraphs_of_the_scene(know: Knowledge, own: list[str]) -> None:
    for seed in "1234":
        for turn in Examiner(know, seed, own).scene():
            said = turn.said.lower()
            assert not any(word in said for word in ("chocks requested", "while taxiing", "towing", "go on"))


def test_a_question_of_another_state_or_matter_does_not_follow(know: Knowledge) -> None:
    both_lost = (("system_1", "lost"), ("system_2", "lost"))
    lost = next(iter(make_questions(know, "1", entries=("braking",), forms=("state",))))
    asked = lost._replace(text="", sources=(Citation("AOM", "32.40", "7", ""), Citation("AOM", "32.40.3", "7", "")))

    def stays_on(text: str, paragraph: str, share: float = 1.0) -> bool:
        question = lost._replace(text=text, sources=(Citation("AOM", paragraph, "7", ""),))
        return stays(question, both_lost, [asked], share, know)

    assert stays_on("What does “emergency mode” mean?", "32.40.3")
    assert stays_on("Why is there no anti-skid?", "32.44.1")
    assert not stays_on("What does “alternate mode” mean?", "32.40.2")
    assert not stays_on("Why is there no brake pressure after touchdown?", "32.44.2", 0.6)
    assert not stays_on("Why do you hold PEDAL while taxiing?", "32.50.6")
    assert not stays_on("Why are the brake pressure bars blank?", "32.40")
    assert stays_on("Why are the brake pressure bars amber?", "32.40")


def test_the_same_seed_gives_the_same_scene(know: Knowledge, own: list[str]) -> None:
    assert Examiner(know, "9", own).scene() == Examiner(know, "9", own).scene()


def test_another_variant_is_examined_as_itself(know: Knowledge, own: list[str]) -> None:
    variant = know.variants[-1]

    assert all(turn.question.variant == variant for turn in Examiner(know, "9", own, variant).scene())
