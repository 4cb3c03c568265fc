"""Progress at a terminal: at any width, in signs that every terminal shows."""

import pytest

from assistant.practice.progress.lines import bar, overview_lines, people_lines
from assistant.practice.progress.overview import Overview, Section
from assistant.practice.progress.sayings import percent
from assistant.rendering.text import columns
from tests.practice.progress.conftest import DEFERENCE


@pytest.mark.parametrize("width", [40, 55, 71, 72, 80, 100])
def test_no_line_is_wider_than_asked(seen: Overview, nothing_seen: Overview, width: int) -> None:
    for each in (seen, nothing_seen):
        lines = overview_lines(each, "A type with quite a long name", DEFERENCE, width)
        assert max(map(columns, lines)) <= width
    assert max(map(columns, people_lines([seen, nothing_seen], "A type", DEFERENCE, width))) <= width


def test_all_is_said_in_words(seen: Overview) -> None:
    text = "\n".join(overview_lines(seen, "Sample", DEFERENCE, 100))

    assert "Expected recall: " in text
    assert "on 2026-12-10 if nothing more is done." in text
    assert "Today: 5 to ask again, " in text
    assert "16 days until 2026-12-10, today counted." in text
    assert "- Title of <1>, answered with: Title of <0> (3 times, last 2026-11-24)" in text
    assert "- Title of <1> (AOM 1.1): missed 3 of 3 times" in text
    assert "now 205 kt, formerly 200 kt." in text
    assert "- 2 records: OLD 1 is historic" in text
    assert "Marks overruled: 1 of 10 answers." in text
    assert text.endswith(f"Formative: not a record of qualification.\n{DEFERENCE}")


def test_the_figures_stand_under_their_headings(seen: Overview) -> None:
    lines = overview_lines(seen, "Sample", DEFERENCE, 80)
    heading = next(line for line in lines if line.endswith("then"))
    row = next(line for line in lines if line.startswith("All"))

    assert len(heading) == len(row)
    for name, figure in (("known", "3"), ("shaky", "3"), ("unknown", "14")):
        end = heading.index(name) + len(name)
        assert row[:end].endswith(figure)


@pytest.mark.parametrize(
    ("counts", "shown"),
    [
        ((0, 0, 0), "          "),
        ((10, 0, 0), "##########"),
        ((5, 3, 2), "#####===.."),
        ((1, 0, 999), "#........."),
        ((998, 1, 1), "########=."),
        ((1, 1, 1), "####===..."),
        ((0, 500, 1), "=========."),
    ],
)
def test_a_bar_shows_whatever_is_there(counts: tuple[int, int, int], shown: str) -> None:
    drawn = bar(Section("", "", *counts, 0.0, None), 10)

    assert len(drawn) == 10
    assert sorted(drawn) == sorted(shown)


@pytest.mark.parametrize(("share", "shown"), [(0.0, "0%"), (1.0, "100%"), (0.999, "99%"), (0.001, "1%"), (0.5, "50%")])
def test_only_what_is_whole_is_a_hundred_percent(share: float, shown: str) -> None:
    assert percent(share) == shown


def test_a_name_cannot_command_the_terminal(seen: Overview) -> None:
    lines = overview_lines(seen._replace(learner="x\x1b[31mred"), "Sample", DEFERENCE, 80)

    assert "\x1b" not in "".join(lines)
