"""Readings that were not heard as they stand, which the sound may be all the same.

They are put together of parts of several, mended by sound where the recogniser was in doubt, or worded as questions
are put. Only what the knowledge explains well is kept, the most promising; whether it fits the sound is for the
recogniser to judge afterwards.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from assistant.frozen import NamedTuple
from assistant.resolving.knowing import Knowledge
from assistant.voice.hearing.crossing import crossed
from assistant.voice.hearing.fitting import doubtful
from assistant.voice.hearing.repairing import Repair, Repairer
from assistant.voice.hearing.rewording import Rewording, Rewords
from assistant.voice.hearing.shares import COST_OF_MENDING, Reading
from assistant.voice.hearing.usage import Usage, counted_words

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from assistant.voice.hearing.recognising import Judged

_MENDED, _TIMES = 3, 10
"""Readings that are mended by sound, and how often each."""
_REWORDED, _WORDINGS = 3, 8
"""Readings that are worded otherwise, and how often each."""
_LOOKED_AT, _MOST, _LEAST_WORTH = 28, 12, 100.0
"""Texts of which it is looked at how well they are explained, and those that are kept."""
_FEWEST_WORDS = 3
"""Words of what is mended: a single word is like too many names."""
_LEAST_EXPLAINED = 0.6
_ASKED = 0.016
"""What a unit of logarithm of being likely as a question is worth beside being explained."""


class Made(NamedTuple):
    """A text that was made of what was heard: the score of that, and the mean cost a sound of what is otherwise."""

    text: str
    score: float
    cost: float


class Maker:
    """Makes readings for one knowledge base, with what there is to make them by."""

    def __init__(
        self, knowledge: Knowledge, repairer: Repairer | None, usage: Usage | None, rewords: Rewords | None
    ) -> None:
        self._knowledge = knowledge
        self._repairer = repairer
        self._usage = usage
        self._rewords = rewords

    def warm(self) -> None:
        """Do once what only the first sound would have to wait for."""
        self.is_usual("warm")

    def usual(self, text: str) -> float:
        """Return how likely a text is as a question: a natural logarithm, 0 where nothing was counted."""
        return self._usage.total(text) if self._usage is not None else 0.0

    def is_usual(self, text: str) -> bool:
        """Return whether what was heard is also the likeliest way to have put what sounds so."""
        if self._rewords is None:
            return True
        likeliest = self._rewords.of_text(text, _WORDINGS)[:1]
        return not likeliest or counted_words(likeliest[0].text) == counted_words(text)

    def made(
        self, readings: Sequence[Reading], judged: Mapping[str, Judged], written: Callable[[str], str],
        explains: Callable[[str], float],
    ) -> list[Made]:  # fmt: skip
        """Return the most promising texts.

        written: writes words of equal sound as the trade does. explains: how well a text is explained.
        """
        found = dict.fromkeys(crossed([reading.text for reading in readings]), (readings[0].score, 0.0))
        for reading in [r for r in readings if len(r.text.split()) >= _FEWEST_WORDS][:_MENDED]:
            for repair in self._repairs(reading.text, judged):
                found.setdefault(written(repair.text), (reading.score, repair.cost))
        worded = set()
        for reading in readings[:_REWORDED]:
            for wording in self._wordings(reading.text):
                text = written(wording.text)
                worded.add(text)
                found.setdefault(text, (reading.score, wording.cost))
        known = {reading.text for reading in readings}
        likely = [Made(text, *how) for text, how in found.items() if text not in known]
        likely.sort(key=self._likely, reverse=True)
        worth = {each: self._worth(each, explains(each.text), each.text in worded) for each in likely[:_LOOKED_AT]}
        return sorted(filter(worth.__getitem__, worth), key=worth.__getitem__, reverse=True)[:_MOST]

    def _likely(self, made: Made) -> float:
        """Return how likely a text is before it is known what it leads to."""
        return made.score - COST_OF_MENDING * made.cost + _ASKED * self.usual(made.text)

    def _worth(self, made: Made, explained: float, worded: bool) -> float:
        """Return what a text is worth, 0 if too little speaks for it."""
        if explained < _LEAST_EXPLAINED and not (worded and self._names_another(made.text)):
            return 0.0
        return _LEAST_WORTH + explained + self._likely(made)

    def _names_another(self, text: str) -> bool:
        return any(mention.is_outside for mention in self._knowledge.reader.read(text).mentions)

    def _wordings(self, text: str) -> list[Rewording]:
        return self._rewords.of_text(text, _WORDINGS) if self._rewords is not None else []

    def _repairs(self, text: str, judged: Mapping[str, Judged]) -> list[Repair]:
        """Return a text mended where the recogniser was in doubt, or where it cannot say, anywhere."""
        if self._repairer is None:
            return []
        return self._repairer.repairs(text, doubtful(text, judged[text]) if judged else None)[:_TIMES]
