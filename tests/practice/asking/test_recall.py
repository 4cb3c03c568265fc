"""The words follow from the mark; the cards from the words, as the published algorithm has them."""

from datetime import UTC, datetime, timedelta, timezone
from math import exp

import pytest

from assistant.practice.recall import (
    MISSED,
    PROMPTED,
    RECALLED,
    Card,
    Review,
    card_after,
    expected_recall,
    word_for,
)

AT = datetime(2026, 11, 25, 7, 0, tzinfo=UTC)
# FSRS-6, the open algorithm's published default parameters w0 … w20.
W = (
    0.212, 1.2931, 2.3065, 8.2956, 6.4133, 0.8334, 3.0194, 0.001, 1.8722, 0.1666, 0.796, 1.4835, 0.0614, 0.2629,
    1.6483, 0.6014, 1.8729, 0.5425, 0.0912, 0.0658, 0.1542,
)  # fmt: skip


def reviewed(*given: tuple[float, str]) -> Card:
    card = card_after(Review(AT + timedelta(days=day), word) for day, word in given)
    assert card is not None
    return card


def forgetting(days: float, stability: float) -> float:
    """R(t, S) = (1 + f·t/S)^-w20, where f makes R(S, S) nine tenths."""
    factor = 0.9 ** (-1 / W[20]) - 1
    return float((1 + factor * days / stability) ** -W[20])


@pytest.mark.parametrize(
    ("mark", "share", "hinted", "hesitation", "word"),
    [
        ("right", 1.0, False, None, RECALLED),
        ("right", 1.0, True, None, PROMPTED),
        ("right", 1.0, False, 3.0, RECALLED),
        ("right", 1.0, False, 13.0, RECALLED),
        ("right", 1.0, False, 14.0, PROMPTED),
        ("partly", 0.5, False, None, PROMPTED),
        ("partly", 0.49, False, None, MISSED),
        ("partly", 0.9, True, 60.0, PROMPTED),
        ("wrong", 0.0, False, None, MISSED),
        ("wrong", 0.9, False, None, MISSED),
        ("missed", 0.0, False, 1.0, MISSED),
    ],
)
def test_the_word_follows_from_the_mark(
    mark: str, share: float, hinted: bool, hesitation: float | None, word: str
) -> None:
    assert word_for(mark, share, hinted, hesitation, "What is VLE?") == word


def test_a_long_question_leaves_time_to_read_it() -> None:
    assert word_for("right", 1.0, hesitation=25.0, question="Why?") == PROMPTED
    assert word_for("right", 1.0, hesitation=25.0, question="word " * 60) == RECALLED


@pytest.mark.parametrize(("word", "stability"), [(MISSED, W[0]), (PROMPTED, W[1]), (RECALLED, W[2])])
def test_the_first_answer_gives_the_published_stability(word: str, stability: float) -> None:
    assert reviewed((0, word)).stability == stability


def test_recall_is_nine_tenths_when_the_days_equal_the_stability() -> None:
    card = reviewed((0, RECALLED))._replace(stability=10.0)

    assert expected_recall(card, card.last + timedelta(days=10)) == pytest.approx(0.9)
    assert expected_recall(card, card.last) == 1.0


@pytest.mark.parametrize("days", [1, 5, 30, 365])
def test_recall_fades_as_published(days: int) -> None:
    card = reviewed((0, RECALLED))

    assert expected_recall(card, AT + timedelta(days=days)) == pytest.approx(forgetting(days, card.stability))


@pytest.mark.parametrize("days", [2, 6])
def test_what_is_recalled_grows_as_published(days: int) -> None:
    before, after = reviewed((0, RECALLED)), reviewed((0, RECALLED), (days, RECALLED))

    s, d, r = before.stability, before.difficulty, forgetting(days, before.stability)
    grown = s * (1 + exp(W[8]) * (11 - d) * s ** -W[9] * (exp(W[10] * (1 - r)) - 1))
    assert after.stability == pytest.approx(grown)


def test_what_is_missed_falls_as_published() -> None:
    before, after = reviewed((0, RECALLED)), reviewed((0, RECALLED), (4, MISSED))

    s, d, r = before.stability, before.difficulty, forgetting(4, before.stability)
    fallen = W[11] * d ** -W[12] * ((s + 1) ** W[13] - 1) * exp(W[14] * (1 - r))
    assert after.stability == pytest.approx(min(fallen, s / exp(W[17] * W[18])))


def test_what_was_missed_comes_again_in_the_same_sitting_and_what_was_recalled_days_later() -> None:
    missed, recalled = reviewed((0, MISSED)), reviewed((0, RECALLED))

    assert missed.due - missed.last == timedelta(minutes=10)
    assert timedelta(days=1) < recalled.due - recalled.last < timedelta(days=4)


def test_reviews_count_in_the_order_of_their_times_whatever_their_zone() -> None:
    there = timezone(timedelta(hours=9))
    given = [Review(AT + timedelta(days=day), word) for day, word in ((0, MISSED), (1, RECALLED), (5, PROMPTED))]
    moved = [Review(each.at.astimezone(there), each.word) for each in reversed(given)]

    assert card_after(moved) == card_after(given)


def test_without_an_answer_there_is_no_card_and_nothing_is_expected() -> None:
    assert card_after([]) is None
    assert expected_recall(None, AT) == 0.0
