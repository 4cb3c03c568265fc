"""What is said beside questions: help, thanks, STANDBY, and going on after it. None of it loses what was spoken of."""

from __future__ import annotations

from assistant.conversation.context import Context
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import Needed, ProcedureResult

READY, STANDING_BY = "Ready for your next question.", 'Standing by. "Go on" when you are ready.'


def beside_questions(name: str, context: Context, knowledge: Knowledge) -> str:
    """Return what is said to a control that asks nothing; nothing where it is none, or goes to the next step."""
    if name == "help":
        return help_told(knowledge)
    if name == "go on":
        return "" if _goes_through(context) else READY
    if name == "move on":
        return READY
    if name == "thanks":
        open_still = context.answer is None or context.offered or isinstance(context.result, Needed)
        return "" if open_still else READY
    return STANDING_BY if name == "standby" else ""


def help_told(knowledge: Knowledge) -> str:
    """Return what can be asked and said, in a few sentences."""
    examples = "; ".join(f"“{each}”" for each in knowledge.base.type_info.examples[:3])
    return (
        f"Ask in any words about the landing gear, brakes and nose-wheel steering, for example: {examples}. "
        "“And at 60 kt?” changes just that in the last question. “Why” and “where does it say that” tell the reason "
        "and the paragraph, “say again” repeats, “correction” and what you meant replaces, and “disregard” drops the "
        "last question."
    )


def _goes_through(context: Context) -> bool:
    """Return whether a procedure was told lately, through which "go on" goes, or something is still to be given."""
    return bool(context.offered) or any(isinstance(each, (ProcedureResult, Needed)) for each in context.told_lately)
