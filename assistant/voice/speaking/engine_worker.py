"""The process that pyttsx3 lives in: it writes what is to be said into files, one at a time.

Whatever the engine does (ends the process, hangs, plays through a program that is not there) happens here. Queued
files lose all but the last, an unknown voice is ignored in silence, and missing data end the process at once: hence
one run for each file, voices looked up first, and data looked for before the library is asked.
"""

from __future__ import annotations

import ctypes
import ctypes.util
import glob
import os
import sys
from typing import Any

from assistant.voice.speaking.worker import Message, Pipes

_SYSTEM_DATA = (
    "/usr/share/espeak-ng-data",
    "/usr/lib/*/espeak-ng-data",
    "/usr/lib/espeak-ng-data",
    "/usr/local/share/espeak-ng-data",
)
_NO_VOICE = "this machine has no voice: install the extra speech (python3 scripts/start.py does)"
_FIRST_VOICE = "gmw/en"
"""British English of the engine for Linux, whose own first choice may be another language."""

_TRIES = 3
"""Runs for one phrase: of some thousand, one ends without a file, for reasons of the library's own."""
_HEADER = 44
"""Bytes of a file without any sound."""


class _Unusable(Exception):
    """The engine cannot be used; the message says why and what to do."""


def main(arguments: tuple[str, ...] = ()) -> None:
    """Answer messages until whoever started this process is gone."""
    pipes = Pipes()
    engine: Any = None
    for message in pipes.messages():
        try:
            engine = engine or _engine()
            pipes.answer(**_done(engine, message))
        except _Unusable as problem:
            pipes.answer(problem=str(problem))
        except Exception as fault:  # an engine raises what it likes, and the next phrase may well be said
            pipes.answer(problem=f"the voice failed ({type(fault).__name__}: {' '.join(str(fault).split())[:120]})")


def _engine() -> Any:
    if sys.platform.startswith("linux"):
        _prepare_espeak()
    try:
        import pyttsx3

        if not sys.platform.startswith("linux"):
            return pyttsx3.init()
        engine = pyttsx3.init("espeak")
        engine.runAndWait()  # until a first run has ended, what is set only waits in a queue
        return engine
    except ImportError:
        raise _Unusable("the voice needs pyttsx3: install Downlock anew") from None
    except (OSError, RuntimeError):
        raise _Unusable(_NO_VOICE) from None


def _prepare_espeak() -> None:
    """Load the library and name its data, from the package that carries both, else from the system."""
    try:
        import espeakng_loader

        library, data = espeakng_loader.get_library_path() + ".1", espeakng_loader.get_data_path()
    except (ImportError, RuntimeError, OSError):
        library, data = ctypes.util.find_library("espeak-ng") or "", _system_data()
    if not library or not os.path.isfile(os.path.join(data, "phontab")):
        raise _Unusable(_NO_VOICE)
    os.environ["ESPEAK_DATA_PATH"] = data
    try:
        ctypes.CDLL(library)
    except OSError:
        raise _Unusable(_NO_VOICE) from None


def _system_data() -> str:
    named = os.environ.get("ESPEAK_DATA_PATH")
    places = [named] if named else [place for pattern in _SYSTEM_DATA for place in sorted(glob.glob(pattern))]
    return next((place for place in places if os.path.isfile(os.path.join(place, "phontab"))), "")


def _done(engine: Any, message: Message) -> Message:
    if "voices" in message:
        return {"voices": [[voice.id, voice.name, _languages(voice)] for voice in engine.getProperty("voices")]}
    voice = _voice(engine, str(message.get("voice", "")))
    if voice:
        engine.setProperty("voice", voice)
    _set_rate(engine, int(message.get("rate", 160)))
    path = str(message["file"])
    for _ in range(_TRIES):
        engine.save_to_file(str(message["say"]), path)
        engine.runAndWait()
        if os.path.isfile(path) and os.path.getsize(path) > _HEADER:
            return {"file": path}
    raise _Unusable("the voice wrote nothing")


def _set_rate(engine: Any, rate: int) -> None:
    """Set the pace, and wait until it is taken: the library for Linux takes it later, at times after the phrase."""
    engine.setProperty("rate", rate)
    if sys.platform.startswith("linux"):
        from pyttsx3.drivers import _espeak

        _espeak.Synchronize()


def _voice(engine: Any, wanted: str) -> str:
    """The id of the voice that a name stands for: its id, its name or its language, with a variant after a plus."""
    if not wanted:
        return _FIRST_VOICE if sys.platform.startswith("linux") else ""
    name, plus, variant = wanted.casefold().partition("+")
    voices = engine.getProperty("voices")
    for matches in (_is_called, _begins_with):
        for voice in voices:
            if matches(voice, name):
                return str(voice.id) + plus + variant
    raise _Unusable(f'there is no voice "{wanted}"; "voices" tells which there are')


def _is_called(voice: Any, name: str) -> bool:
    own = (str(voice.id).casefold(), str(voice.id).casefold().rpartition("/")[2], str(voice.name).casefold())
    return name in own or name in _languages(voice)


def _begins_with(voice: Any, name: str) -> bool:
    return str(voice.name).casefold().startswith(name)


def _languages(voice: Any) -> list[str]:
    found = []
    for language in voice.languages or ():
        text = language.decode("utf-8", "ignore") if isinstance(language, bytes) else str(language)
        found.append("".join(sign for sign in text if sign.isprintable()).casefold())
    return found
