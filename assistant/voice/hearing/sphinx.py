"""The second recogniser, pocketsphinx: short phrases from a grammar, and questions where the first is not installed.

A grammar hears one of a few phrases far better than an open recogniser does, but it hears one of them in anything:
whether it was one at all is for the caller to check. For questions it has a language model of the knowledge's own
ways of asking, with numbers, so that it knows the trade's words and few others.
"""

from __future__ import annotations

import os
from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING, Any

from assistant.quantities.tokens import words_of
from assistant.resolving.knowing import Knowledge
from assistant.understanding.lexicon import GAP
from assistant.voice.hearing.recognising import HearingProblem, Hypothesis, Judged, Recognised
from assistant.voice.hearing.sounds import Sounding

if TYPE_CHECKING:
    from assistant.voice.hearing.recognising import Floats

_HYPOTHESES = 8
_SCORE, _RANK = -0.4, 0.1
_DIGITS = (
    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "niner", "tree", "fower", "fife",
)  # fmt: skip
_TENS = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
_RADIO_SOUNDS = {"niner": "N AY N ER", "tree": "T R IY", "fower": "F AO ER", "fife": "F AY F"}


class Phrases:
    """Hears which of some phrases was said."""

    name = "pocketsphinx grammar"

    def __init__(self, sounding: Sounding) -> None:
        self._sounding = sounding
        self._decoder = _decoder(lm=None)
        self._made: dict[tuple[str, ...], str] = {}

    def hear(self, samples: Floats, phrases: Sequence[str]) -> str:
        """Return the phrase that is nearest to the sound; "" where nothing is near at all."""
        wanted = tuple(phrases)
        if wanted not in self._made:
            self._made[wanted] = self._add(wanted)
        self._decoder.activate_search(self._made[wanted])
        said = _decoded(self._decoder, samples)
        return said if said in (" ".join(words_of(phrase)) for phrase in phrases) else ""

    def _add(self, phrases: tuple[str, ...]) -> str:
        name = f"phrases{len(self._made)}"
        choices = [spoken for phrase in phrases if (spoken := " ".join(words_of(phrase)))]
        _learn(self._decoder, {word for phrase in choices for word in phrase.split()}, self._sounding)
        grammar = f"#JSGF V1.0;\ngrammar {name};\npublic <said> = {' | '.join(choices)};\n"
        self._decoder.add_jsgf_string(name, grammar)
        return name


class Sphinx:
    """Recognises questions with a language model of the knowledge's own sentences."""

    name = "pocketsphinx"

    def __init__(self, knowledge: Knowledge, sounding: Sounding) -> None:
        """Build the language model. Raises HearingProblem when pocketsphinx cannot be used."""
        sentences = list(sentences_of(knowledge))
        self._decoder = _decoder(lm=None)
        _learn(self._decoder, {word for sentence in sentences for word in sentence.split()}, sounding)
        self._load(sentences)

    def _load(self, sentences: list[str]) -> None:
        from tempfile import TemporaryDirectory

        from pocketsphinx.lm import ArpaBoLM

        model = ArpaBoLM(text="\n".join(f"<s> {sentence} </s>" for sentence in sentences))
        model.compute()
        with TemporaryDirectory() as folder:
            path = os.path.join(folder, "questions.lm")
            model.write_file(path)
            self._decoder.add_lm_file("questions", path)
        self._decoder.activate_search("questions")

    def recognise(self, samples: Floats, expecting: str = "") -> Recognised:
        """Return the likeliest sentences; pocketsphinx tells no probability that can be trusted, so by rank.

        Nothing is gained by a second hearing, which the language model has been made for already.
        """
        if expecting:
            return Recognised(())
        best = _decoded(self._decoder, samples)
        if not best:
            return Recognised((), 1.0)
        texts = dict.fromkeys([best, *(each.hypstr for each in _best_of(self._decoder) if each.hypstr)])
        return Recognised(tuple(Hypothesis(text, _SCORE - _RANK * rank) for rank, text in enumerate(texts)))

    def judge(self, samples: Floats, texts: Sequence[str]) -> list[Judged]:
        """Return nothing: it cannot tell how well a given text fits."""
        return []


def sentences_of(knowledge: Knowledge) -> Iterable[str]:
    """Yield the knowledge's ways of asking and names in plain words, and numbers with their units."""
    for record in knowledge.base.records.values():
        for ask in getattr(record, "asks", ()):
            yield from _spoken(ask.replace("[", "").replace("]", ""))
    for term in knowledge.base.terms.values():
        for name in term.names if term.kind != "outside" else ():
            yield from _spoken(name)
    units = [" ".join(unit.names[0]) for unit in knowledge.units if unit.names]
    spoken_units = [name for name in units if name.replace(" ", "").isalpha() and len(name) > 2]
    for i, unit in enumerate(spoken_units * 12):
        yield f"{_DIGITS[i % 10]} {_DIGITS[(i * 7) % 10]} {_DIGITS[(i * 3) % 10]} {unit}"
        yield f"{_DIGITS[1 + i % 9]} hundred and {_TENS[i % 8]} {unit}"
        yield f"{_TENS[i % 8]} {_DIGITS[1 + i % 9]} {unit}"


def _spoken(text: str) -> Iterable[str]:
    words = words_of(text) if GAP not in text else ()
    if words and all(word.replace("'", "").isalpha() for word in words):
        yield " ".join(words)


def _decoder(lm: None) -> Any:
    try:
        from pocketsphinx import Decoder
    except (ImportError, OSError) as error:
        raise HearingProblem(f"pocketsphinx cannot be used: {error}") from None
    return Decoder(lm=lm, loglevel="FATAL")


def _learn(decoder: Any, words: Iterable[str], sounding: Sounding) -> None:
    """Add words that the dictionary lacks, as they sound."""
    missing = sorted(word for word in words if decoder.lookup_word(word) is None)
    for i, word in enumerate(missing):
        sounds = _RADIO_SOUNDS.get(word) or " ".join(sounding.word(word.replace("'", "")))
        if sounds:
            decoder.add_word(word, sounds, i == len(missing) - 1)


def _decoded(decoder: Any, samples: Floats) -> str:
    from assistant.voice.hearing.samples import to_pcm

    decoder.start_utt()
    decoder.process_raw(to_pcm(samples), full_utt=True)
    decoder.end_utt()
    found = decoder.hyp()
    return str(found.hypstr) if found is not None and found.hypstr else ""


def _best_of(decoder: Any) -> list[Any]:
    best = decoder.nbest()
    return [each for _, each in zip(range(_HYPOTHESES), best, strict=False) if each is not None] if best else []
