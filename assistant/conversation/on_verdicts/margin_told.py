"""How far a reading is from where a rule parts, asked of a verdict by bands: "how much over is that?".

A verdict against a limit says so itself; one by bands tells what holds, and the nearest edge is said before it.
"""

from __future__ import annotations

import re

from assistant.answering.answer import Answer
from assistant.answering.parts import difference_unit
from assistant.conversation.context import Context
from assistant.conversation.on_verdicts.of_the_verdict import asks_the_margin
from assistant.quantities.show import given_shown
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import BandResult

_MOST_CHARACTERS = 60


def margin_told(text: str, context: Context, knowledge: Knowledge) -> Answer | None:
    """Return the verdict given last with how far the reading is from the nearest edge of its bands."""
    told, last = context.result, context.answer
    if not isinstance(told, BandResult) or last is None or len(text) > _MOST_CHARACTERS or told.reference:
        return None
    words = re.findall(r"[\w']+", text.lower().replace("\u2019", "'"))
    edges = [rule.value for rule in told.bands.rules if rule.test != "otherwise" and rule.unit == told.bands.unit]
    if not edges or not asks_the_margin(words) or told.given != told.given:
        return None
    edge = min(edges, key=lambda each: abs(each - told.given))
    apart = told.given - edge
    unit = told.bands.unit
    side = "above" if apart > 0 else "below"
    shown = given_shown(round(abs(apart), 6), difference_unit(unit), knowledge.units)
    bound = given_shown(edge, unit, knowledge.units)
    lead = f"{shown} {side} {bound}" if apart else f"Exactly at {bound}"
    return last._replace(question=text, text=f"{lead}. {last.text}", aloud=())
