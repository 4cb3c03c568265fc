"""What is asked next: changed, fading, new, in other sections than the last, at the pace of the days left."""

from collections import Counter
from datetime import UTC, date, datetime, timedelta, timezone
from itertools import pairwise
from random import Random

import pytest

from assistant.practice.asking.choosing import AHEAD, CHANGED, FADING, NEW, NEW_A_DAY, choose_next, pace, plan
from assistant.practice.asking.pool import GENERAL, Item
from assistant.practice.asking.standing import Standing, Was
from assistant.practice.recall import MISSED, RECALLED, Review, card_after, expected_recall

NOW = datetime(2026, 11, 25, 7, 0, tzinfo=UTC)
SECTIONS = ("32-10", "32-30", "32-40", "32-50")


def item(number: int, section: str = "32-40") -> Item:
    return Item(f"r{number}", "facts", section, f"Title {number}", "It is so.", "AOM 1", (("AOM", "7"),), "c", ())


def asked(number: int, days_ago: float, word: str = RECALLED, section: str = "32-40") -> Standing:
    at = NOW - timedelta(days=days_ago)
    return Standing(item(number, section), card_after([Review(at, word)]), at, word, word != MISSED)


def new(number: int, section: str = "32-40") -> Standing:
    return Standing(item(number, section))


def spread(count: int, start: int = 0) -> list[Standing]:
    return [new(start + number, SECTIONS[number % 4]) for number in range(count)]


def test_the_tiers_come_in_order_and_fading_ones_by_what_is_recalled_least() -> None:
    changed = asked(1, 1)._replace(was=Was("200 kt", "205 kt", "LIM 7"))
    standings = [new(0), asked(2, 4), asked(3, 30), asked(4, 12), asked(5, 1), changed]

    chosen = plan(standings, NOW, Random(1))

    assert [(each.record, each.why) for each in chosen] == [
        ("r1", CHANGED), ("r3", FADING), ("r4", FADING), ("r2", FADING), ("r0", NEW),
    ]  # fmt: skip
    assert chosen[1].recall == expected_recall(standings[2].card, NOW) < chosen[2].recall < chosen[3].recall
    assert chosen[0].recall == chosen[-1].recall == 0.0


def test_what_is_not_due_comes_only_when_more_is_wanted() -> None:
    standings = [asked(1, 1), asked(2, 0.5)]

    assert plan(standings, NOW, Random(1)) == ()
    assert choose_next(standings, NOW, Random(1)) is None
    assert [each.why for each in plan(standings, NOW, Random(1), count=5)] == [AHEAD, AHEAD]


def test_the_same_seed_gives_the_same_sitting_and_another_one_another() -> None:
    standings = spread(40)

    assert plan(standings, NOW, Random(7), count=20) == plan(standings, NOW, Random(7), count=20)
    assert plan(standings, NOW, Random(7), count=20) != plan(standings, NOW, Random(8), count=20)


@pytest.mark.parametrize("seed", range(5))
def test_sections_are_interleaved(seed: int) -> None:
    standings = [asked(number, 5 + number, section=SECTIONS[number // 10]) for number in range(40)]

    sections = [each.standing.item.section for each in plan(standings, NOW, Random(seed))]

    assert all(one != other for one, other in pairwise(sections))


def test_a_section_is_repeated_only_where_no_other_is_left() -> None:
    standings = [asked(n, 9, section="32-40") for n in range(9)] + [asked(90 + n, 9, section="32-10") for n in range(3)]

    sections = [each.standing.item.section for each in plan(standings, NOW, Random(1))]

    assert sections[:7] == ["32-40", "32-10", "32-40", "32-10", "32-40", "32-10", "32-40"]
    assert len(sections) == 12


def test_the_type_s_own_come_before_what_is_true_of_all_aeroplanes() -> None:
    standings = [new(number, GENERAL) for number in range(50)] + spread(5, 100)

    chosen = plan(standings, NOW, Random(1))

    assert Counter(each.standing.item.section == GENERAL for each in chosen) == {True: NEW_A_DAY - 5, False: 5}


def test_every_record_is_chosen_once() -> None:
    standings = [*spread(30), *(asked(100 + n, n, section=SECTIONS[n % 4]) for n in range(20))]

    chosen = [each.record for each in plan(standings, NOW, Random(3), count=100, ready_by=date(2026, 12, 1))]

    assert sorted(chosen) == sorted(each.item.record for each in standings)


@pytest.mark.parametrize(
    ("unseen", "ready_by", "days", "today"),
    [
        (0, date(2026, 12, 10), 16, 0),
        (65, date(2026, 12, 10), 16, 8),
        (65, date(2026, 11, 26), 2, 65),
        (65, date(2026, 11, 25), 1, 65),
        (65, date(2026, 11, 20), 1, 65),
        (65, None, None, NEW_A_DAY),
        (3, None, None, 3),
    ],
)
def test_the_pace_fits_the_days_left(unseen: int, ready_by: date | None, days: int | None, today: int) -> None:
    found = pace(spread(unseen), NOW, ready_by)

    assert (found.days, found.unseen, found.new) == (days, unseen, today)


def test_what_was_begun_today_counts_in_today_s_pace() -> None:
    ready_by = date(2026, 12, 10)
    standings = [*spread(62), *(asked(100 + n, 0.01) for n in range(3))]

    found = pace(standings, NOW, ready_by)

    assert (found.begun, found.new) == (3, 5)


def test_the_day_is_the_learner_s_own() -> None:
    early = NOW.astimezone(UTC) - timedelta(hours=8)  # yesterday in UTC, today far in the east
    east = NOW.astimezone(timezone(timedelta(hours=9)))
    standing = Standing(item(1), card_after([Review(early, RECALLED)]), early, RECALLED, True)

    assert pace([standing], NOW).begun == 0
    assert pace([standing], east).begun == 1


@pytest.mark.parametrize(("fading", "whys"), [(40, {FADING: 20}), (13, {FADING: 13, NEW: 7})])
def test_a_short_sitting_begins_nothing_new_while_anything_fades(fading: int, whys: dict[str, int]) -> None:
    standings = [*spread(60), *(asked(100 + n, 20, section=SECTIONS[n % 4]) for n in range(fading))]

    chosen = plan(standings, NOW, Random(1), count=20)

    found = [each.why for each in chosen]
    assert Counter(found) == whys
    assert found == sorted(found, key=[FADING, NEW].index)


@pytest.mark.parametrize(
    ("fading", "unseen", "count", "whys"),
    [
        (40, 60, 20, {FADING: 10, NEW: 10}),
        (13, 60, 20, {FADING: 10, NEW: 10}),
        (4, 60, 20, {FADING: 4, NEW: 16}),
        (40, 3, 20, {FADING: 17, NEW: 3}),
        (40, 0, 20, {FADING: 20}),
        (40, 60, 7, {FADING: 4, NEW: 3}),
        (40, 60, 1, {FADING: 1}),
    ],
)
def test_a_short_sitting_on_the_way_to_a_day_keeps_places_for_what_is_new(
    fading: int, unseen: int, count: int, whys: dict[str, int]
) -> None:
    standings = [*spread(unseen), *(asked(100 + n, 20, section=SECTIONS[n % 4]) for n in range(fading))]

    chosen = plan(standings, NOW, Random(1), count=count, ready_by=date(2026, 11, 26))

    assert Counter(each.why for each in chosen) == whys


def test_on_the_last_day_nothing_new_is_begun_while_anything_fades() -> None:
    standings = [*spread(60), *(asked(100 + n, 20, section=SECTIONS[n % 4]) for n in range(40))]

    chosen = plan(standings, NOW, Random(1), count=20, ready_by=NOW.date())

    assert Counter(each.why for each in chosen) == {FADING: 20}


def test_limits_and_memory_items_are_begun_first_whatever_their_paragraph() -> None:
    items = (item(number, SECTIONS[number % 2]) for number in range(8))
    urgent = [Standing(each._replace(urgent=True, paragraph="L 1")) for each in items]
    standings = [*spread(10, 100), *urgent]

    chosen = [each for each in plan(standings, NOW, Random(1), ready_by=date(2026, 12, 1)) if each.why == NEW]

    assert all(each.standing.item.urgent for each in chosen if each.standing.item.section in SECTIONS[:2])
    assert sum(each.standing.item.urgent for each in chosen) > 2


def test_short_sittings_reach_much_of_it_by_the_day() -> None:
    number, days, records = 12, 10, 200
    standings, chance, now = spread(records), Random(3), NOW
    for day in range(days):
        now, given = NOW + timedelta(days=day), list[str]()
        while chosen := choose_next(standings, now, chance, NOW.date() + timedelta(days=days), given, number):
            given.append(chosen.record)
            word = RECALLED if chance.random() < 0.5 else MISSED
            before = chosen.standing
            after = before._replace(
                card=card_after([Review(now, word)]), first=before.first or now, word=word, ever=True
            )
            standings = [after if each.item.record == chosen.record else each for each in standings]
        assert len(given) == number

    assert sum(each.card is not None for each in standings) >= number * days / 2


@pytest.mark.parametrize("count", [20, None])
def test_one_after_another_keeps_to_the_same_order(count: int | None) -> None:
    standings = [*spread(60), *(asked(100 + n, 20, section=SECTIONS[n % 4]) for n in range(70))]
    given: list[str] = []
    whys: list[str] = []
    chance, ready_by = Random(1), date(2026, 11, 26)
    while len(given) < 72 and (chosen := choose_next(standings, NOW, chance, ready_by, given, count)):
        given.append(chosen.record)
        whys.append(chosen.why)
        standings = [
            each._replace(card=card_after([Review(NOW, RECALLED)]), first=each.first or NOW)
            if each.item.record == chosen.record
            else each
            for each in standings
        ]

    assert whys == ([FADING] * 10 + [NEW] * 10 if count else [FADING] * 70 + [NEW] * 2)
    assert len(set(given)) == len(given)


def test_a_paragraph_s_first_is_begun_before_the_second_of_any() -> None:
    def of(number: int, paragraph: str, kind: str = "facts") -> Standing:
        return Standing(item(number)._replace(paragraph=paragraph, kind=kind))

    standings = [of(1, "A 1"), of(2, "A 1"), of(3, "A 1", "limits"), of(4, "A 2"), of(5, "A 3")]

    chosen = [each.record for each in plan(standings, NOW, Random(1), count=3)]

    assert set(chosen) == {"r3", "r4", "r5"}


def test_what_was_missed_comes_again_in_the_sitting_but_not_at_once() -> None:
    missed = asked(1, 11 / 24 / 60, MISSED)  # due since a minute

    assert choose_next([missed], NOW, Random(1), asked=["r1"]) is None
    again = choose_next([missed], NOW, Random(1), asked=["r1", "r2", "r3", "r4"])
    assert again is not None
    assert (again.record, again.why) == ("r1", FADING)


def test_ahead_of_time_comes_first_what_will_have_faded_most_on_the_day() -> None:
    standings = [asked(1, 1), asked(2, 1)._replace(card=card_after([Review(NOW - timedelta(days=1), MISSED)]))]
    standings[1] = standings[1]._replace(card=standings[1].card and standings[1].card._replace(due=NOW + timedelta(1)))

    chosen = plan(standings, NOW, Random(1), count=2, ready_by=date(2026, 12, 1))

    assert [each.record for each in chosen] == ["r2", "r1"]
