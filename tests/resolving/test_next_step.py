"""What comes next in a procedure is told by what a question says has been done."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.answering.answer import Answer

Ask = Callable[[str], Answer]


@pytest.mark.parametrize(
    ("question", "entry", "begins"),
    [
        ("no brakes on landing, full reverse is in, next?", "no-braking", "ANTI-SKID OFF"),
        ("we've got full reverse and anti-skid off, still no brakes, now what", "no-braking", "Both pilots' pedals"),
        ("mismatch on retraction, slowed to 230 and lever down, next step?", "gear-mismatch-retraction", "Land at"),
        ("gear mismatch extending: slowed, lever up, next?", "gear-mismatch-extension", "Wait 15 s"),
        ("mismatch on extension, lever up, waited 15 seconds, now what", "gear-mismatch-extension", "Lever DN"),
        ("steer lost: reset the steer switch, it came back. what now", "steer-lost-procedure", "If STEER LOST"),
        ("residual braking, pressed and released pedals, what next", "residual-braking-procedure", "Then ANTI-SKID"),
        ("pulled the free-fall lever, waited 20 seconds, what now", "free-fall-procedure", "Check three green"),
        ("brake heat in flight, gear down for ten minutes, next step", "brake-heat-flight", "Then up at 205 kt"),
        ("bypass pin is in, what's next before pushback", "before-pushback", "TOW PIN memo shown"),
        ("exceeded VLE, back within the limit, what now", "limit-exceeded-procedure", "Write it"),
    ],
)
def test_the_step_after_the_last_one_done_leads(ask: Ask, question: str, entry: str, begins: str) -> None:
    answer = ask(question)

    assert answer.entry == entry
    assert answer.text.startswith(begins)


@pytest.mark.parametrize("question", ["I selected gear up and got GEAR MISMATCH. What now?", "system 2 gone, what now"])
def test_what_calls_for_a_procedure_is_no_step_done(ask: Ask, question: str) -> None:
    assert "That is step" not in ask(question).text
