"""Short phrases where they are expected: what a grammar hears, and whether that fits the sound and what else was heard.

A grammar hears one of its phrases in anything, and an open recogniser writes a single word as anything. So a phrase
is held against the sound by the open recogniser, part by part, as long texts are; and it must have about the length
of what was made out, and no number may be lost.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import TYPE_CHECKING

from assistant.answering.parts import upper
from assistant.voice.hearing.numbers import number_places
from assistant.voice.hearing.recognising import Hypothesis
from assistant.voice.hearing.samples import from_pcm
from assistant.voice.hearing.sounds import Sounding, all_apart, apart, dictionary
from assistant.voice.hearing.wording import goes_round, once, said_words

if TYPE_CHECKING:
    from assistant.voice.hearing.recognising import Floats, Recogniser

_NEAR, _MOST_NEAR = 0.5, 5
"""Mean cost a sound up to which a phrase is looked at, and how many are."""
_HYPOTHESES = 4
_SAME = 0.3
"""Mean cost a sound up to which a phrase was said, where no text can be held against the sound."""
_SHORTER, _LONGER = 0.6, 1.7
"""Shares of the sounds made out that a phrase may have."""
_NOTHING = -9.0
"""Mean logarithm of probability of what was not made out."""
_BEHIND = 6.0
"""How much worse than the likeliest text a phrase may fit."""
_FIGURES = {"one": "1", "two": "2", "three": "3"}

Least = Callable[[str, bool], float]
"""From a phrase and whether a grammar heard it too to how well it must fit: a natural logarithm of probability."""


def hears_phrases() -> Callable[[bytes, Sequence[str]], str]:
    """Return what hears which of some phrases an utterance is. Raises HearingProblem."""
    from assistant.voice.hearing.sphinx import Phrases

    heard = Phrases(Sounding(dictionary()))
    return lambda pcm, wanted: heard.hear(from_pcm(pcm), wanted)


class Expected:
    """Tells which of the phrases that are expected was said, if any."""

    def __init__(self, recogniser: Recogniser, sounding: Sounding | None) -> None:
        self._recogniser = recogniser
        self._sounding = sounding

    def said(
        self, samples: Floats, made_out: Sequence[str], phrases: Sequence[str], grammar: str, least: Least,
        surprise: Callable[[str], float], besides: Sequence[str],
    ) -> str:  # fmt: skip
        """Return the phrase that was said, or "".

        made_out: what an open recogniser made of the sound, the likeliest first. grammar: the phrase that a grammar
        heard, or "". besides: phrases that are looked at however they sound.
        """
        texts = [text for text in made_out if text and not goes_round(text)][:_HYPOTHESES]
        near = self._near(texts, phrases, grammar, besides)
        near = [phrase for phrase in near if not texts or self._may_be(phrase, texts[0])]
        if not near:
            return ""
        fits = self._fits(samples, [*near, *texts[:1]])
        if not fits:
            return grammar if grammar in near and texts and self.apart(grammar, texts[0]) <= _SAME else ""
        best = max(fits.values())
        taken = {p: fits[p] - surprise(p) for p in near if fits[p] >= max(least(p, p == grammar), best - _BEHIND)}
        return max(taken, key=lambda phrase: taken[phrase]) if taken else ""

    def told(self, samples: Floats, phrases: Sequence[str]) -> Hypothesis:
        """Return the likeliest that the open recogniser makes of a sound when it is told which phrases may come.

        Short words that it would write as others are those; what is none of them stays what it is.
        """
        expecting = " ".join(f"{upper(phrase)}." for phrase in phrases)
        found = self._recogniser.recognise(samples, expecting).hypotheses
        return found[0]._replace(text=once(found[0].text)) if found else Hypothesis("", _NOTHING)

    def apart(self, one: str, two: str) -> float:
        """Return how far two texts sound apart; 0 the same, about 1 nothing alike."""
        if self._sounding is None:
            return float(one.lower() != two.lower())
        return apart(self._sounding.of_text(one), self._sounding.of_text(two))

    def _near(self, texts: Sequence[str], phrases: Sequence[str], grammar: str, besides: Sequence[str]) -> list[str]:
        cost = self._costs(texts, phrases)
        near = sorted((phrase for phrase in phrases if cost[phrase] <= _NEAR), key=lambda phrase: cost[phrase])
        heard = (grammar,) if grammar in cost else ()
        return list(dict.fromkeys([*heard, *near[:_MOST_NEAR], *besides]))

    def _costs(self, texts: Sequence[str], phrases: Sequence[str]) -> dict[str, float]:
        """Return for each phrase how far apart from it the nearest of some texts sounds."""
        if self._sounding is None or not texts:
            return {phrase: min((self.apart(phrase, text) for text in texts), default=1.0) for phrase in phrases}
        sounds = [self._sounding.of_text(phrase) for phrase in phrases]
        costs = (all_apart(self._sounding.of_text(text), sounds) for text in texts)
        return dict(zip(phrases, map(min, zip(*costs, strict=True)), strict=True))

    def _may_be(self, phrase: str, text: str) -> bool:
        """Return whether a phrase has about the length of a text, and every number of it."""
        said, made_out = said_words(phrase), said_words(text)
        numbers = {word for start, end in number_places(text) for word in said_words(text[start:end])}
        if not numbers.issubset(said):
            return False
        if self._sounding is None:
            return len(said) == len(made_out)
        share = len(self._sounding.of(said)) / max(1, len(self._sounding.of(made_out)))
        return _SHORTER <= share <= _LONGER

    def _fits(self, samples: Floats, texts: Sequence[str]) -> Mapping[str, float]:
        """Return how well each text fits the sound in the best way of writing it; none where that cannot be told."""
        written = [(text, way) for text in texts for way in _writings(text)]
        judged = self._recogniser.judge(samples, [way for _, way in written])
        fits: dict[str, float] = {}
        for (text, _), each in zip(written, judged, strict=False):
            fits[text] = max(each.total, fits.get(text, each.total))
        return fits


def _writings(text: str) -> tuple[str, ...]:
    """Return the ways in which a recogniser may write a phrase."""
    sentence = f"{text[:1].upper()}{text[1:].rstrip('.')}."
    return (text, sentence, f"{_FIGURES[text]}.") if text in _FIGURES else (text, sentence)
