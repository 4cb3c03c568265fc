"""Everything beside asking and marking: hints, the key, a show of hands, who is here, pauses and the end."""

from __future__ import annotations

from assistant.practice.keeping.rows import REVEALED
from assistant.practice.leading import keys
from assistant.practice.leading.keys import Said
from assistant.practice.leading.plan import without_turn
from assistant.practice.leading.roster import named_in_team
from assistant.practice.leading.standing import (
    ANSWERING,
    BETWEEN,
    BREAK,
    THINKING,
    Act,
    End,
    Hint,
    Join,
    Keep,
    Pause,
    Show,
    Standing,
    Withdraw,
)
from assistant.practice.leading.steps import ENDING, Desk, Step, hint_of, key_of, note, opening_lines
from assistant.practice.sitting_marks import ASKED, NOTE, Line

NOT_NOW = {
    THINKING: "Nobody has been named yet: Enter names; ? tells what else may be typed.",
    ANSWERING: "That has no meaning while an answer is awaited; ? tells what may be typed.",
    BETWEEN: "That has no meaning between two questions; ? tells what may be typed.",
    BREAK: "The class pauses: Enter goes on, e ends.",
}


def hint(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return the hint of the question that stands, kept as given."""
    turn = standing.current
    question = standing.question(turn) if turn is not None else None
    if turn is None or question is None or not question.hint:
        return Step(lines=note("There is no hint on this one."))
    acts: tuple[Act, ...] = (Hint(turn.id),)
    if not turn.hinted:
        plan = standing.plan._replace(unhinted={**standing.plan.unhinted, turn.number: len(turn.passed)})
        acts = (*acts, Keep(plan))
    return Step(acts, (Line(f"Hint: {hint_of(question)}"),), hint_of(question))


def again(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return the question once more; one that carries a case on also whole."""
    turn = standing.current or standing.last
    if turn is None:
        return Step(lines=note("No question was asked yet."))
    question = standing.question(turn)
    lines: tuple[Line, ...] = (Line(turn.asking.question, ASKED),)
    if question is not None and question.text != turn.asking.question:
        lines = (*lines, Line(question.text, NOTE))
    return Step((), lines, " ".join(line.text for line in lines))


def show_key(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return the key, which is kept as revealed while its question stands.

    Another terminal keeps the key of a question that stands from the class; a marked one has nothing left to keep.
    """
    turn = standing.current or standing.last
    if turn is None:
        return Step(lines=note("No question was asked yet."))
    if turn is not standing.current:
        return Step(lines=key_of(standing, turn))
    if desk.key_elsewhere():
        return Step((Show(turn.id),), note("The key is shown in the other terminal; c shows it to the class here."))
    return Step((Show(turn.id),), key_of(standing, turn))


def show_class(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return the key before the class, wherever else it is shown; only once it is revealed, lest a slip tell it."""
    turn = standing.current
    if turn is not None and turn.phase != REVEALED:
        after = ", then c shows it to the class" if desk.key_elsewhere() else ""
        return Step(lines=note(f"The key is not revealed yet: k reveals it{after}."))
    shown = turn or standing.last
    return Step(lines=key_of(standing, shown) if shown is not None else note("No question was asked yet."))


def hands(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return that so many of the class thought the same."""
    turn = standing.last if standing.current is None else standing.current
    count = int(asked.rest[:6])
    there = len(standing.seats) - len(standing.plan.away)
    if turn is None or not 0 < count <= there:
        return Step(lines=note(f"hands takes a number from 1 to {there}."))
    plan = standing.plan._replace(hands={**standing.plan.hands, turn.number: count})
    return Step((Keep(plan),), note(f"Kept: {count} of {there} thought the same."))


def more(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return that the class goes on though its time is over."""
    if not standing.left:
        return Step(lines=note("All questions are asked. Enter ends."))
    return Step((Keep(standing.plan._replace(more=True)),), note("The class goes on without a limit of time."))


def drop(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return that a question is withdrawn, as if it had never been put."""
    turn = standing.current
    assert turn is not None
    kept = without_turn(standing.plan, turn.number)
    return Step((Withdraw(turn.id), Keep(kept)), note("The question is withdrawn, and counts for nobody."))


def forget(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return that the answer typed last does not count."""
    turn = standing.current
    if turn is None or standing.suggested(turn) is None:
        return Step(lines=note("Disregarded."))
    kept = {number: each for number, each in standing.plan.suggested.items() if number != turn.number}
    return Step((Keep(standing.plan._replace(suggested=kept)),), note("Disregarded; the question stands."))


def add(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return that one more person is in the class, in a team where one stands in brackets after the name."""
    person = named_in_team(asked.rest)
    if any(each.name.casefold() == person.name.casefold() for each in standing.seats):
        told = f"{person.name} is in the class already; add somebody of the same name with what tells them apart."
        return Step(lines=note(told))
    team = f", in {person.team}" if person.team else ""
    return Step((Join(person.name, person.team),), note(f"{person.name} is in the class now{team}."))


def away(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return that somebody has left, or is back."""
    wanted = asked.rest.casefold()
    found = [seat for seat in standing.seats if seat.name.casefold().startswith(wanted)]
    if len(found) != 1:
        told = "nobody" if not found else f"more than one ({', '.join(seat.name for seat in found)})"
        return Step(lines=note(f"{asked.rest} names {told} of the class."))
    there = tuple(each for each in standing.plan.away if each != found[0].id)
    gone = asked.what == keys.AWAY
    plan = standing.plan._replace(away=(*there, found[0].id) if gone else there)
    return Step((Keep(plan),), note(f"{found[0].name} is {'not named from now on' if gone else 'named again'}."))


def pause(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return that the class pauses."""
    told = "nothing is lost" if desk.keeps() else "the record cannot be written, so that all is lost"
    return Step((Pause(True),), note(f"The class pauses; {told} if you close this window."))


def resume(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return that the class goes on, with the question that stands."""
    after = standing._replace(sitting=standing.sitting._replace(state="open"))
    return Step((Pause(False),), opening_lines(after))


def ask_end(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return the end, once it is certain that it is meant."""
    if standing.phase == BETWEEN and standing.all_asked and asked.what == keys.ENTER:
        return Step((End(),))
    lines = note("A question stands; it will not count.") if standing.current is not None else ()
    return Step(lines=lines, mode=ENDING)


def on_ending(text: str) -> Step:
    """Return the end, or that the class goes on after all."""
    if text.strip().lower() in ("y", "yes", "e", "end", "stop", "affirm", "affirmative"):
        return Step((End(),))
    return Step(lines=note("The class goes on."))


def tell_help(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return what may be typed now."""
    return Step(lines=tuple(Line(each, NOTE) for each in keys.HELP_LINES.get(standing.phase, ())))


def not_now(standing: Standing, asked: Said, desk: Desk) -> Step:
    """Return that what was typed has no meaning at this moment."""
    return Step(lines=note(NOT_NOW.get(standing.phase, "That has no meaning now.")))
