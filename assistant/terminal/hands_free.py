"""`--hands-free`: a conversation by ear with this machine's microphone and sound card."""

from __future__ import annotations

import sys

from assistant.answering.answer import Answer
from assistant.rendering.text import clean, wrap
from assistant.terminal.by_ear import ByEar, opened_by_ear
from assistant.terminal.options import Parsed
from assistant.terminal.screen import Screen, prepare, screen_for
from assistant.terminal.session import Session, open_session
from assistant.voice.hands_free import HandsFree
from assistant.voice.hands_free_said import start_line
from assistant.voice.manner import Manner
from assistant.voice.speaking.phrases import answer_phrases, said_aloud

HOW_TO_TALK = 'Speak when you hear two rising tones; a key silences me; "stop" ends.'
HOW_TO_PRESS = 'Press any key and speak; press it again when you are done, or just pause; "stop" ends.'


def talk_hands_free(parsed: Parsed) -> int:
    """Hold a conversation by ear until it is ended; return 0. Raises UsageProblem and BrokenKnowledge."""
    session = open_session(parsed, disputes=True)
    prepare(sys.stdout, json=False)
    screen = screen_for(parsed, sys.stdout)
    with opened_by_ear(session, parsed) as by_ear:
        manner = _manner(session, screen, by_ear, parsed)
        talk = HandsFree(
            by_ear.listener, by_ear.aloud, by_ear.sounds, by_ear.ear, session.knowledge, manner, session.context
        )
        knowledge = session.knowledge
        first = said_aloud(start_line(knowledge.type_name, knowledge.loaded_line), knowledge, by_ear.aloud.settings)
        for text in (first, HOW_TO_PRESS if by_ear.by_key else HOW_TO_TALK):
            screen.say("\n".join(wrap(text, screen.width)))
        talk.run(first)
    return 0


def _manner(session: Session, screen: Screen, by_ear: ByEar, parsed: Parsed) -> Manner:
    knowledge, aloud = session.knowledge, by_ear.aloud

    def words_for(answer: Answer) -> str:
        return " ".join(phrase.text for phrase in answer_phrases(answer, knowledge, aloud.settings))

    def show(text: str) -> None:
        screen.say("\n".join(wrap(clean(text), screen.width)))

    def rehearse() -> str | None:
        from assistant.terminal.rehearsing_by_ear import rehearse_meanwhile

        return rehearse_meanwhile(parsed, session, screen, by_ear)

    examples = [said_aloud(example, knowledge, aloud.settings) for example in knowledge.examples]
    return Manner(words_for, show, by_ear.pace, examples, by_ear.phrase, rehearse)
