"""What the instructor sees beside the class: the key once it is revealed or marked, the hint, what an answer lacked."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.practice.keeping.rows import REVEALED, Turn
from assistant.practice.leading.naming import turns_of
from assistant.practice.leading.plan import Suggested
from assistant.practice.leading.standing import BREAK, OVER, THINKING, Standing
from assistant.practice.leading.steps import head, key_of, suggested_lines
from assistant.practice.marking.mark import UNMARKED
from assistant.practice.sitting_marks import ASKED, HEAD, MARK, MARK_SHOWN, NOTE, Line

_NOT_YET = "The key appears here on k, and with the mark."


def key_lines(standing: Standing) -> tuple[Line, ...]:
    """Return the view of the key, whatever the class is at."""
    return tuple(_lines(standing))


def _lines(standing: Standing) -> Iterator[Line]:
    if standing.phase == OVER:
        yield Line("The class has ended.", HEAD)
        return
    if standing.phase == BREAK:
        yield Line("The class pauses.", HEAD)
    turn = standing.current
    if turn is not None:
        yield from _standing_turn(standing, turn)
    elif standing.phase != BREAK:
        yield Line("Between two questions." if standing.turns else "The class begins.", HEAD)
        if standing.last is not None:
            yield from _last_turn(standing, standing.last)
    yield from _fewest(standing)


def _standing_turn(standing: Standing, turn: Turn) -> Iterator[Line]:
    yield head(standing, turn.number, standing.question(turn))
    yield Line(turn.asking.question, ASKED)
    question = standing.question(turn)
    if question is not None and question.text != turn.asking.question:
        yield Line(question.text, NOTE)
    revealed = turn.phase == REVEALED
    yield from key_of(standing, turn) if revealed else (Line(_NOT_YET, NOTE),)
    if question is not None and question.hint and (revealed or turn.hinted):
        yield Line(f"Hint{' (given)' if turn.hinted else ''}: {question.hint}", NOTE)
    name = standing.name_of(turn.seat)
    passed = ", ".join(standing.name_of(seat) for seat in turn.passed)
    yield Line(f"Named: {name}." if name else "Nobody is named yet.", MARK)
    if passed:
        yield Line(f"Passed on by: {passed}.", NOTE)
    suggested = standing.suggested(turn)
    if suggested is not None:
        yield from _suggested(suggested) if revealed else suggested_lines(suggested)


def _last_turn(standing: Standing, turn: Turn) -> Iterator[Line]:
    name = standing.name_of(turn.seat) or "The class"
    yield Line(turn.asking.question, ASKED)
    yield Line(f"{name}: {MARK_SHOWN[turn.mark].lower()}", MARK)
    yield from key_of(standing, turn)
    suggested = standing.suggested(turn)
    if suggested is not None:
        yield from _suggested(suggested._replace(answer=turn.answer))


def _suggested(found: Suggested) -> Iterator[Line]:
    yield Line(f"Answer: {found.answer}", NOTE)
    if found.mark == UNMARKED:
        yield Line("The program cannot mark it.", NOTE)
        return
    yield Line(f"The program's mark: {MARK_SHOWN[found.mark].lower()}", NOTE)
    if found.wrong:
        yield Line(f"Wrong: {'; '.join(found.wrong)}", NOTE)
    if found.confused:
        yield Line(f"{found.confused}.", NOTE)
    if found.missing:
        yield Line(f"Missing: {'; '.join(found.missing)}", NOTE)


def _fewest(standing: Standing) -> Iterator[Line]:
    """Yield who has had the fewest turns, which the class is not told."""
    count = turns_of(standing.seats, standing.turns)
    here = [seat for seat in standing.seats if seat.id not in standing.plan.away]
    if not here or standing.phase not in (THINKING, "between"):
        return
    fewest = min(count[seat.id] for seat in here)
    names = [seat.name for seat in here if count[seat.id] == fewest]
    told = ", ".join(names[:6]) + (f" and {len(names) - 6} more" if len(names) > 6 else "")
    yield Line(f"Fewest turns ({fewest}): {told}.", NOTE)
