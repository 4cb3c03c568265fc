"""Open what hears: the first recogniser if all of it is there, else the second, and say which."""

from __future__ import annotations

from time import perf_counter

from assistant.resolving.knowing import Knowledge
from assistant.voice.hearing.ear import Ear
from assistant.voice.hearing.everyday import open_everyday
from assistant.voice.hearing.homophones import Homophones
from assistant.voice.hearing.prompting import terms_expected
from assistant.voice.hearing.recognising import HearingProblem, Recogniser
from assistant.voice.hearing.repairing import Repairer
from assistant.voice.hearing.rewording import Rewords
from assistant.voice.hearing.samples import HOW_TO_INSTALL
from assistant.voice.hearing.sounds import Sounding, dictionary
from assistant.voice.hearing.usage import Usage
from assistant.voice.hearing.weighing import Weigher


def open_ear(knowledge: Knowledge) -> tuple[Ear, str]:
    """Return what hears questions of a knowledge base, and a line on what it lacks, or "".

    Raises HearingProblem when nothing can be heard at all.
    """
    sounding = _sounding()
    recogniser, lacks = _recogniser(knowledge, sounding)
    repairer = Repairer(knowledge, sounding) if sounding else None
    homophones = Homophones(knowledge, sounding) if sounding else None
    usage = _usage(knowledge)
    rewords = Rewords(usage, sounding, knowledge.base.pronunciations) if sounding and usage else None
    weigher = Weigher(knowledge, repairer, homophones, usage, rewords, open_everyday(usage))
    return Ear(recogniser, weigher, knowledge, perf_counter, sounding), lacks


def _usage(knowledge: Knowledge) -> Usage | None:
    """Return how questions are put, or None where it was not counted."""
    try:
        return Usage(knowledge.base.word_list("word_order").splitlines())
    except OSError:
        return None


def _sounding() -> Sounding | None:
    try:
        return Sounding(dictionary())
    except (HearingProblem, OSError):
        return None


def _recogniser(knowledge: Knowledge, sounding: Sounding | None) -> tuple[Recogniser, str]:
    from assistant.voice.hearing.whisper import Whisper

    try:
        return Whisper(terms_expected(knowledge)), ""
    except HearingProblem as problem:
        reason = str(problem)
    if sounding is None:
        raise HearingProblem(f"nothing here can hear speech ({reason}): {HOW_TO_INSTALL}")
    from assistant.voice.hearing.sphinx import Sphinx

    return Sphinx(knowledge, sounding), f"hearing falls back to pocketsphinx, which hears less: {reason}"
