"""What the sitting of one learner works with: the marker, and the assistant's answers to questions of their own."""

from __future__ import annotations

from assistant.answering.answer import Answer
from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge
from assistant.conversation.turn import answer_turn
from assistant.practice.making import Question
from assistant.practice.marking.mark import Marker
from assistant.practice.sitting_marks import Taken, take
from assistant.practice.sitting_state import Desk
from assistant.terminal.disputes import keep_disputes, kept_disputes
from assistant.terminal.session import Session


def desk_for(session: Session) -> Desk:
    """Return what a sitting works with: the marker, and the assistant's answers to questions of the learner's own."""
    know = session.knowledge
    marker = Marker(know)

    def marked(question: Question, text: str) -> Taken:
        return take(question, text, marker, know)

    def reply(question: Question, text: str) -> Answer:
        return _reply(question, text, session.variant, know)

    return Desk(marked, reply)


def _reply(question: Question, text: str, variant: str, know: Knowledge) -> Answer:
    """Return what is answered to a text that follows a question; a record set aside there stays so."""
    type_id = know.base.type_info.id
    before = kept_disputes(type_id)
    try:
        _, context = answer_turn(question.text, Context(variant=question.variant or variant, disputed=before), know)
        answer, context = answer_turn(text, context, know)
    except Exception as fault:  # a fault at one question must not end the sitting
        return Session(know).unanswered(text, f"This met a fault in the program ({type(fault).__name__}).")
    if context.disputed != before:
        keep_disputes(type_id, context.disputed)
    return answer
