"""What hears and speaks on this machine, opened together: whatever goes on by ear is held with it."""

from __future__ import annotations

import threading
from collections.abc import Iterator
from contextlib import contextmanager

from assistant.frozen import NamedTuple
from assistant.terminal.microphone import CardMicrophone, Hushing, Key
from assistant.terminal.options import Parsed, UsageProblem
from assistant.terminal.screen import complain
from assistant.terminal.session import Session
from assistant.terminal.speaking import chosen_voice, make_aloud
from assistant.voice.hearing.ear import Ear
from assistant.voice.hearing.endpoint import Endpointer, voice_judge
from assistant.voice.hearing.opening import open_ear
from assistant.voice.hearing.phrases import hears_phrases
from assistant.voice.hearing.recognising import HearingProblem
from assistant.voice.listening import Listener
from assistant.voice.sound import Microphone
from assistant.voice.speaking.aloud import Aloud
from assistant.voice.speaking.player import CardPlayer, Player
from assistant.voice.speaking.problem import VoiceProblem
from assistant.voice.speaking.sounds import Sound
from assistant.voice.steering import Phrase
from assistant.voice.tones import LISTENING, TONE_RATE, tone

_PATIENCE_S = 20.0


class CardTones:
    """Tones through the sound card, beside what is said."""

    def __init__(self, player: Player) -> None:
        self._player = player

    def sound(self, name: str) -> None:
        """Give a tone; a card that has gone missing is told of by the voice."""
        try:
            self._player.play(Sound(tone(name), TONE_RATE))
        except VoiceProblem:
            return


class ByEar(NamedTuple):
    """What is heard and said with. phrase: hears a short phrase by a grammar. by_key: whether a key lets talk."""

    listener: Listener
    aloud: Aloud
    sounds: CardTones
    ear: Ear
    phrase: Phrase
    by_key: bool

    def pace(self, steps: int) -> None:
        """Make the voice faster by some steps, or slower."""
        self.aloud.settings = self.aloud.settings.faster(steps)


@contextmanager
def opened_by_ear(session: Session, parsed: Parsed) -> Iterator[ByEar]:
    """Open the microphone, the voice and the ear for as long as they are wanted. Raises UsageProblem without them."""
    problems: list[str] = []
    aloud, _ = make_aloud(session, chosen_voice(parsed), problems.append)
    player = CardPlayer()
    try:
        microphone = CardMicrophone()
        try:
            _check_voice(aloud, problems)
            with Key() as key:
                yield _ready(session, parsed, microphone, aloud, CardTones(player), key)
        finally:
            microphone.close()
    except HearingProblem as problem:
        raise UsageProblem(str(problem)) from None
    finally:
        aloud.close()
        player.close()


def grammar() -> Phrase:
    """Return what hears a short phrase by a grammar; where it is not there, told, nothing is heard so."""
    try:
        hear = hears_phrases()
    except HearingProblem as problem:
        complain(str(problem))
        return lambda utterance, wanted: ""
    return lambda utterance, wanted: hear(utterance.pcm, wanted)


def _check_voice(aloud: Aloud, problems: list[str]) -> None:
    """Raise UsageProblem when nothing can be said aloud: a conversation by ear would be silence."""
    aloud.say("One moment.")
    aloud.wait(_PATIENCE_S)
    if problems:
        raise UsageProblem(problems[0])


def _ready(
    session: Session, parsed: Parsed, microphone: Microphone, aloud: Aloud, sounds: CardTones, key: Key
) -> ByEar:
    ear, lacks = open_ear(session.knowledge)
    if lacks:
        complain(lacks)
    threading.Thread(target=ear.warm, daemon=True).start()
    by_key = parsed.has("--talk-key")
    if by_key and not key.works:
        raise UsageProblem("--talk-key needs a keyboard at this terminal; leave it out to talk freely")
    hushing = microphone if by_key else Hushing(microphone, key.pressed, aloud.stop)
    listener = Listener(
        hushing, aloud, Endpointer(voice_judge()), key.pressed if by_key else None, lambda: sounds.sound(LISTENING)
    )
    return ByEar(listener, aloud, sounds, ear, grammar(), by_key)
