"""The setting of a policy is chosen by what is named and by the share of the landing distance, the first rule first."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Ask = Callable[[str], Answer]


@pytest.mark.parametrize(
    ("question", "begins"),
    [
        ("Wet runway, distance required 1,300 m, available 2,100 m. Which autobrake setting, and why?", "FIRM: "),
        ("Which autobrake does the company want if it's wet and we need 1,100 m of 2,000 m available?", "FIRM: "),
        ("wet, landing distance required 1500 m, available 2500 m, autobrake setting?", "FIRM: "),
        ("it's wet and landing distance required is 70 percent of that available, which autobrake", "FIRM: "),
        ("wet, required 1,600 m, available 2,000 m, which autobrake", "FIRM: "),
        ("Wet runway, required 1,900 m, available 2,200 m: which autobrake does the policy ask for?", "FULL: 86% "),
        ("landing distance required is 90 percent of that available, which autobrake setting", "FULL: 90% "),
        ("Dry runway. We need 1,450 m of the 1,700 m available. What autobrake setting?", "FULL: 85% "),
        ("Contaminated runway, 900 m required, 2,400 m available, which autobrake, and why?", "FULL: the runway"),
        ("slush on it: landing distance required 900 m, available 2,400 m, what autobrake setting", "FULL: the runway"),
        ("Dry runway, landing distance required 1,000 m, available 2,500 m. Which autobrake setting?", "No setting "),
        ("Wet, not contaminated, required 1,200 m, available 2,300 m. Which autobrake setting?", "FIRM: "),
        ("it isn't contaminated, only wet, 1,200 m needed of 2,300 m available: which autobrake setting", "FIRM: "),
        ("wet, no contamination, 1,200 m required, 2,300 m available, autobrake setting?", "FIRM: "),
        ("wet but no slush or snow, 1,200 m required, 2,300 m available, autobrake setting?", "FIRM: "),
        ("wet rather than contaminated, 1,200 m required, 2,300 m available, which autobrake", "FIRM: "),
        ("not wet but contaminated, 1,200 m required, 2,300 m available, which autobrake", "FULL: the runway"),
        ("wet, not contaminated, 2,100 m required, 2,300 m available, which autobrake", "FULL: 91% "),
    ],
)
def test_the_first_rule_that_fits_decides(ask: Ask, question: str, begins: str) -> None:
    answer = ask(question)
    assert answer.text.startswith(begins), answer.text
    assert [(s.document, s.paragraph) for s in answer.sources] == [("SOP", "B.4")]


@pytest.mark.parametrize(
    ("question", "entry"),
    [
        ("Which autobrake setting for a wet runway?", "autobrake-wet"),
        ("what share of the landing distance available is 1,400 m of 2,000 m?", "landing-distance-share"),
        ("distance required 1,500 m, available 1,800 m, dry. Does the company want FULL?", "landing-distance-share"),
    ],
)
def test_what_asks_no_setting_of_a_share_is_answered_as_before(ask: Ask, question: str, entry: str) -> None:
    assert ask(question).entry == entry
