"""`--hands-free`: a conversation by ear with this machine's microphone and sound card."""

from __future__ import annotations

import sys
import threading

from assistant.answering.answer import Answer
from assistant.rendering.text import clean, wrap
from assistant.terminal.microphone import CardMicrophone, Hushing, Key
from assistant.terminal.options import Parsed, UsageProblem
from assistant.terminal.screen import Screen, complain, prepare, screen_for
from assistant.terminal.session import Session, open_session
from assistant.terminal.speaking import chosen_voice, make_aloud
from assistant.voice.hands_free import HandsFree
from assistant.voice.hands_free_said import start_line
from assistant.voice.hearing.endpoint import Endpointer, voice_judge
from assistant.voice.hearing.opening import open_ear
from assistant.voice.hearing.phrases import hears_phrases
from assistant.voice.hearing.recognising import HearingProblem
from assistant.voice.listening import Listener
from assistant.voice.manner import Manner
from assistant.voice.sound import Microphone
from assistant.voice.speaking.aloud import Aloud
from assistant.voice.speaking.phrases import answer_phrases, said_aloud
from assistant.voice.speaking.player import CardPlayer, Player
from assistant.voice.speaking.problem import VoiceProblem
from assistant.voice.speaking.sounds import Sound
from assistant.voice.steering import Phrase
from assistant.voice.tones import LISTENING, TONE_RATE, tone

HOW_TO_TALK = 'Speak when you hear two rising tones; a key silences me; "stop" ends.'
HOW_TO_PRESS = 'Press any key and speak; press it again when you are done, or just pause; "stop" ends.'
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


def talk_hands_free(parsed: Parsed) -> int:
    """Hold a conversation by ear until it is ended; return 0. Raises UsageProblem and BrokenKnowledge."""
    session = open_session(parsed, disputes=True)
    prepare(sys.stdout, json=False)
    screen = screen_for(parsed, sys.stdout)
    problems: list[str] = []
    aloud, _ = make_aloud(session, chosen_voice(parsed), problems.append)
    player = CardPlayer()
    try:
        microphone = CardMicrophone()
        try:
            _check_voice(aloud, problems)
            _hold(session, screen, parsed, microphone, aloud, player)
        finally:
            microphone.close()
    except HearingProblem as problem:
        raise UsageProblem(str(problem)) from None
    finally:
        aloud.close()
        player.close()
    return 0


def _check_voice(aloud: Aloud, problems: list[str]) -> None:
    """Raise UsageProblem when nothing can be said aloud: a conversation by ear would be silence."""
    aloud.say("One moment.")
    aloud.wait(_PATIENCE_S)
    if problems:
        raise UsageProblem(problems[0])


def _hold(
    session: Session, screen: Screen, parsed: Parsed, microphone: Microphone, aloud: Aloud, player: Player
) -> None:
    knowledge = session.knowledge
    ear, lacks = open_ear(knowledge)
    if lacks:
        complain(lacks)
    threading.Thread(target=ear.warm, daemon=True).start()
    sounds = CardTones(player)
    with Key() as key:
        by_key = parsed.has("--talk-key")
        if by_key and not key.works:
            raise UsageProblem("--talk-key needs a keyboard at this terminal; leave it out to talk freely")
        hushing = microphone if by_key else Hushing(microphone, key.pressed, aloud.stop)
        listener = Listener(
            hushing, aloud, Endpointer(voice_judge()), key.pressed if by_key else None, lambda: sounds.sound(LISTENING)
        )
        talk = HandsFree(listener, aloud, sounds, ear, knowledge, _manner(session, screen, aloud), session.context)
        first = said_aloud(start_line(knowledge.type_name, knowledge.loaded_line), knowledge, aloud.settings)
        for text in (first, HOW_TO_PRESS if by_key else HOW_TO_TALK):
            screen.say("\n".join(wrap(text, screen.width)))
        talk.run(first)


def _manner(session: Session, screen: Screen, aloud: Aloud) -> Manner:
    knowledge = session.knowledge

    def words_for(answer: Answer) -> str:
        return " ".join(phrase.text for phrase in answer_phrases(answer, knowledge, aloud.settings))

    def show(text: str) -> None:
        screen.say("\n".join(wrap(clean(text), screen.width)))

    def pace(steps: int) -> None:
        aloud.settings = aloud.settings.faster(steps)

    examples = [said_aloud(example, knowledge, aloud.settings) for example in knowledge.examples]
    return Manner(words_for, show, pace, examples, _phrase())


def _phrase() -> Phrase:
    try:
        hear = hears_phrases()
    except HearingProblem as problem:
        complain(str(problem))
        return lambda utterance, wanted: ""
    return lambda utterance, wanted: hear(utterance.pcm, wanted)
