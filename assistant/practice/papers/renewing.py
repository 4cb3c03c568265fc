"""A saved set that a revision has overtaken: what is answered otherwise now is asked anew, or left out, and named."""

from __future__ import annotations

from assistant.practice.making import Question, make_questions
from assistant.practice.making.wording import content
from assistant.practice.papers.sets import QuestionSet, set_of, stale
from assistant.resolving.knowing import Knowledge


def renewed(chosen: QuestionSet, know: Knowledge) -> tuple[QuestionSet, tuple[str, ...]]:
    """Return a set as it may be asked today, and a line on each question that is not as it was."""
    places = stale(chosen, know)
    if not places:
        return chosen, ()
    taken = {question.text for place, question in enumerate(chosen.questions) if place not in places}
    kept: list[Question] = []
    notes: list[str] = []
    for place, question in enumerate(chosen.questions):
        fresh = _anew(question, chosen.seed, taken, know) if place in places else question
        if place in places:
            notes.append(_note(place + 1, question, fresh))
        if fresh is not None:
            taken.add(fresh.text)
            kept.append(fresh)
    return set_of(tuple(kept), chosen.seed, know)._replace(type_id=chosen.type_id), tuple(notes)


def _anew(question: Question, seed: str, taken: set[str], know: Knowledge) -> Question | None:
    """Return a question of the same record and form as the knowledge of now answers it, the most like it in words."""
    if question.entry not in know.base.records:
        return None
    made = make_questions(know, seed, entries=[question.entry], forms=[question.form], variant=question.variant)
    free = [each for each in made if each.text not in taken]
    words = content(question.text)
    return max(free, key=lambda each: (each.text == question.text, len(words & content(each.text))), default=None)


def _note(number: int, question: Question, fresh: Question | None) -> str:
    told = f"question {number} is answered otherwise now"
    if fresh is None:
        return f"{told}, and is left out: {question.text}"
    return f"{told}, and has a new key: {question.text}" if fresh.text == question.text else (
        f"{told}, and is asked anew: {fresh.text} It was: {question.text}"
    )
