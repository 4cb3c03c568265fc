"""One turn of a conversation: read, complete from the context, resolve, compose, remember.

`answer_turn` is the place to begin reading: everything else serves one of its lines.
"""

from __future__ import annotations

from assistant.answering.answer import ANSWER, Answer
from assistant.conversation.choosing.completing import understood
from assistant.conversation.choosing.remembering import remembered
from assistant.conversation.choosing.returning import returned
from assistant.conversation.choosing.switching import only_switches, variant_named
from assistant.conversation.composing import composed, finished, replied
from assistant.conversation.context import Context
from assistant.conversation.control_words.controls import control
from assistant.conversation.left_out.plainly_said import plainly_said
from assistant.conversation.reading_turns.readings import question_of as question_of
from assistant.conversation.replying.disputing import with_disputes
from assistant.conversation.replying.replies import controlled
from assistant.conversation.several.two_questions import Parts, part_told, with_both
from assistant.resolving.controls_in_use import in_vain_under
from assistant.resolving.knowing import Knowledge
from assistant.resolving.means_told import with_means

_OPENING = 16
_KEPT = "From here on: the {}."


def answer_turn(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context]:
    """Return the answer to a turn and the context after it; never raises for any text."""
    said = _without_small_talk(plainly_said(text, context), context, knowledge)
    if said != text and not control(text):
        answer, after = answer_turn(said, context, knowledge)
        return answer._replace(question=text), after
    kept = variant_named(text, context, knowledge)
    done = controlled(text, context, knowledge)
    if kept and (context.asked is None or only_switches(text) or text.strip(" .!").isdigit()):
        done = _kept(text, kept, context, knowledge)
    answer, after = done or _answered(text, context, knowledge)
    if kept and after.variant != kept:
        answer, after = answer._replace(text=f"{answer.text} {_KEPT.format(kept)}"), after._replace(variant=kept)
    return with_disputes(finished(answer, knowledge), after, knowledge), after


def _without_small_talk(text: str, context: Context, knowledge: Knowledge) -> str:
    """Return a turn without the small talk around it; a first one only where it opens with what goes on meanwhile."""
    if context.answer is None and "while" not in text[:_OPENING].lower():
        return text
    from assistant.conversation.left_out.small_talk import without_small_talk  # a first question starts without it

    return without_small_talk(text, knowledge)


def _answered(text: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context]:
    """Return the answer to a question, on the topic that it comes back to where it does."""
    back = returned(text, context, knowledge)
    if back and back.context.answer and not back.text:
        return back.context.answer._replace(question=text), back.context
    before, said = (back.context, back.text) if back else (context, text)
    question, result = understood(said, before, knowledge)
    question, result = in_vain_under(question, result, before.scenario, knowledge)
    result = with_means(question, result, knowledge)
    answer = composed(text, question, result, knowledge)
    parts = Parts(knowledge)
    answer = with_both(said, before, question, result, answer, knowledge, parts)._replace(question=text)
    question, result = part_told(said, before, question, result, answer, parts)
    return answer, remembered(before, question, result, answer, knowledge)


def _kept(text: str, variant: str, context: Context, knowledge: Knowledge) -> tuple[Answer, Context]:
    """Say that a variant is kept to from here on."""
    return replied(text, ANSWER, _KEPT.format(variant), knowledge), context._replace(variant=variant)
