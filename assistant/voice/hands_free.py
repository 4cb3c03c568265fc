"""A conversation by ear alone: say what is loaded, listen, answer, and listen again.

Who drives has attention for little else. So a silence means busy, not wrong; what was not caught is said twice at
most; and whoever begins to speak is let speak. Everything outside is handed in: sound, tones, the ear, the screen.
"""

from __future__ import annotations

import re

from assistant.answering.answer import ANSWER, DECLINE, Answer
from assistant.conversation.context import Context
from assistant.conversation.control_words.controls import control as turn_control
from assistant.conversation.turn import answer_turn
from assistant.resolving.knowing import Knowledge
from assistant.voice import control_words as words
from assistant.voice import hands_free_said as said
from assistant.voice import tones
from assistant.voice.ahead import Ahead
from assistant.voice.echo import Echo, rest_from
from assistant.voice.hearing.confirming import as_asked, asks_which
from assistant.voice.hearing.ear import Ear, Heard
from assistant.voice.hearing.reading_back import with_numbers
from assistant.voice.hearing.samples import from_pcm
from assistant.voice.listening import Closed, Listener, Utterance
from assistant.voice.manner import Manner
from assistant.voice.pending import Pending, asks_of_the_answer
from assistant.voice.sound import Speaker, Tones
from assistant.voice.speaking.phrases import sentences
from assistant.voice.steering import Steering, choices_of

SILENCE_S = 20.0
"""How long nobody speaks before it counts as a silence."""
_SILENCES = 3
_MISSES = 2
_WARY_TURNS = 3
"""So many turns after its own voice was heard, nothing is heard while it speaks."""

_AS_BEFORE = "normal"
"""What brings the usual pace back, where it was changed."""
_CORRECTS = re.compile(r"\W*correction\b", re.IGNORECASE)


class HandsFree:
    """One conversation by ear, from its first word to its last."""

    def __init__(
        self, listener: Listener, speaker: Speaker, sounds: Tones, ear: Ear, knowledge: Knowledge, manner: Manner,
        context: Context | None = None,
    ) -> None:  # fmt: skip
        self._listener = listener
        self._speaker = speaker
        self._tones = sounds
        self._ear = ear
        self._knowledge = knowledge
        self._manner = manner
        self._steering = Steering(ear, manner.phrase)
        self._ahead = Ahead(self._listened)
        listener.pausing = self._ahead.begin
        self._echo = Echo(knowledge.lexicon)
        self._context = context or Context(forgets=True)
        self._loaded = ""
        self._last = ""
        self._heard = ""
        self._pending: Pending | None = None
        self._wary = 0
        self._pace = 0
        self._misses = 0
        self._over = False

    def run(self, start_line: str) -> None:
        """Hold the conversation until it is ended, by a word, by three silences or with the microphone."""
        self._loaded = start_line
        self._say(start_line)
        silences = 0
        try:
            while not self._over:
                utterance = self._next()
                if utterance is None:
                    silences += 1
                    if silences == _SILENCES:
                        self._end(said.BUSY)
                elif self._turn(utterance):
                    silences = 0
        except Closed:
            self._speaker.wait()

    def _next(self) -> Utterance | None:
        if not self._speaker.speaking:
            self._tones.sound(tones.LISTENING)  # else it is given when what is being said has come to its end
        return self._listener.utterance(SILENCE_S)

    # --- one turn

    def _turn(self, utterance: Utterance) -> bool:
        """Do what an utterance asks; return whether anything was said at all."""
        self._tones.sound(tones.THINKING)
        heard, steer, phrase = self._ahead.done(utterance.pcm)
        picked = self._picked(heard, phrase)
        if heard.nothing and not phrase and not picked:
            if heard.others:  # somebody spoke, and deserves a sign
                self._tones.sound(tones.NOT_UNDERSTOOD)
            return False
        if utterance.over_speech and not phrase and self._echo.is_heard(heard.text, self._last):
            self._go_on(heard.text)
            return False
        self._listen_again()
        sure = f", {100 * heard.confidence:.0f}% sure" if not phrase or phrase == heard.text else ""
        self._manner.show(f'Heard: "{phrase or heard.text}" ({heard.recogniser}{sure}).')
        if self._pace and heard.text.strip(".! ").lower() == _AS_BEFORE:
            steer = words.USUAL_PACE
        if picked and self._pending:
            self._pick(self._pending, picked)
        elif steer:
            self._steer(steer)
        elif phrase and phrase != heard.text:
            self._answer_text(phrase)
        else:
            self._take(heard)
        return True

    def _listened(self, pcm: bytes) -> tuple[Heard, str, str]:
        """Return what was heard in an utterance, and the control or the choice that it may be."""
        pending = self._pending
        heard = self._ear.hear(from_pcm(pcm), pending.after if pending else self._context)
        choices = (*choices_of(self._context), *(pending.picks if pending else ()))
        meant = self._steering.meant(Utterance(pcm), heard, choices, pending is not None)
        return heard, *meant

    def _picked(self, heard: Heard, phrase: str) -> str:
        """Return the turn that is affirmed by its number, figure by figure, or as one of two; "" for none."""
        if self._pending is None:
            return ""
        return self._pending.picked(phrase or heard.text) or self._pending.told_in(heard, self._knowledge)

    def _go_on(self, heard: str) -> None:
        """Go on with what was being said when its own voice was heard, and listen for a while only in between."""
        if not self._listener.waits_its_turn:
            self._manner.show(said.ECHO)
        self._listener.waits_its_turn = True
        self._wary = _WARY_TURNS
        self._say(rest_from(heard, self._last), remember=False)

    def _listen_again(self) -> None:
        """Let itself be interrupted again, some turns after its own voice was heard."""
        self._wary = max(0, self._wary - 1)
        if not self._wary:
            self._listener.waits_its_turn = False

    # --- control words

    def _steer(self, control: str) -> None:
        self._misses = 0
        pending, self._pending = self._pending, None
        if control == words.STOP:
            self._end(said.FAREWELL)
        elif control == words.STANDBY:
            self._stand_by(pending)
        elif control == words.AFFIRM and pending:
            self._affirm(pending)
        elif control == words.NEGATIVE and pending:
            self._deny(pending)
        elif control == words.ONWARD:
            self._onward()
        elif control in (words.AFFIRM, words.NEGATIVE, words.PASS, words.GREETING):
            self._say(said.LISTENING if control == words.GREETING else said.GO_ON, remember=False)
        elif control == words.DISREGARD:
            self._answer_text("disregard")
        elif control == words.REHEARSE:
            self._rehearse()
        else:
            self._pending = pending
            self._tell(control)

    def _affirm(self, pending: Pending) -> None:
        """Answer what was affirmed; of two numbers, neither is by a word, but one that is said again and again."""
        if pending.either and not pending.repeated:
            self._pending = pending
            self._say(f"{self._last} {pending.how_to_affirm}", remember=False)
            return
        self._context = pending.before
        self._answer_text(pending.text)
        if pending.then:
            told = self._last
            self._answer_text(pending.then)
            self._say(f"{told} {self._last}" if asks_of_the_answer(pending.then) else self._last)

    def _pick(self, pending: Pending, text: str) -> None:
        """Answer the one that was picked of two that were put up."""
        self._affirm(pending._replace(text=text, either=False))
        self._pending = None

    def _rehearse(self) -> None:
        """Let a rehearsal be held; nothing of what is answered in it is understood as a question meanwhile."""
        self._listener.pausing = lambda said: None
        try:
            after = self._manner.rehearse()
        finally:
            self._listener.pausing = self._ahead.begin
        if after is None:
            self._over = True
        else:
            self._say(after or said.NO_REHEARSING, remember=False)

    def _onward(self) -> None:
        """Go on to the next step of what was told; where there is none, only say that it is the other's turn."""
        answer, after = answer_turn(words.SAID[words.ONWARD][0], self._context, self._knowledge)
        before = self._context.answer
        if answer.outcome != ANSWER or before is None or answer.text == before.text:
            self._say(said.GO_ON, remember=False)
            return
        self._context = after
        self._answer(answer)

    def _deny(self, pending: Pending) -> None:
        """Offer the other thing that may have been meant; else let a number alone take the place of the one denied."""
        if pending.rival and not pending.either:
            self._put_up(pending.rival, pending.before, "")
            self._say(f"Was it: {self._said_back(pending.rival)}?")
            return
        if not pending.number:
            self._say(said.IN_OTHER_WORDS)
            return
        self._context = pending.after._replace(answer=None)
        self._say(said.ASK_AGAIN)

    def _tell(self, control: str) -> None:
        """Say what is asked for of the conversation itself."""
        if control == words.READ_BACK:
            self._say(f"You said: {self._said_back(self._heard)}." if self._heard else said.NOTHING_YET, remember=False)
        elif control == words.HELP:
            self._say(f"You can say: {', '.join(words.SAID[each][0] for each in words.TOLD)}. {said.CORRECTING}")
        elif control == words.LOADED:
            self._say(self._loaded)
        elif control == words.LOUDNESS:
            self._say(said.LOUDNESS, remember=False)
        else:
            self._repeat(control)

    def _repeat(self, control: str) -> None:
        if not self._last:
            self._say(said.NOTHING_YET, remember=False)
            return
        text = self._last
        if control in (words.SLOWER, words.FASTER, words.USUAL_PACE):
            steps = {words.FASTER: 1, words.SLOWER: -1}.get(control, -self._pace)
            self._pace += steps
            self._manner.pace(steps)
        elif control == words.TWICE:
            text = " ".join(f"{each} {each}" for each in sentences(text))
        elif control == words.CONFIRM and self._heard:
            text = f"You asked: {self._said_back(self._heard)}. {text}"
        self._say(text, remember=False)

    def _said_back(self, text: str) -> str:
        return as_asked(text, self._knowledge)

    def _stand_by(self, pending: Pending | None) -> None:
        """Wait until spoken to, however long; what is said then is a turn like any other."""
        self._pending = pending
        self._say(said.STANDING_BY, remember=False)
        while not self._over:
            utterance = self._listener.utterance(None)
            if utterance is not None and self._turn(utterance):
                return

    # --- answers

    def _take(self, heard: Heard) -> None:
        """Take a turn as it was heard; what cannot be answered leaves a number that is being confirmed as it is."""
        if turn_control(heard.text) == "thanks" and heard.answer.outcome != ANSWER:
            self._say(said.GO_ON, remember=False)
            return
        if self._context.asked is None and not self._pending and _CORRECTS.match(heard.text):
            self._say(said.NOTHING_YET, remember=False)
            return
        if heard.answer.outcome == DECLINE:
            self._miss(heard.answer)
            return
        if self._pending and self._is_waited_for(self._pending, heard):
            return
        before = self._pending.after if self._pending else self._context
        self._pending = None
        if heard.pending:
            other = next((each for each in heard.answer.choices if each != heard.pending), "")
            self._put_up(heard.pending, before, other, bool(heard.answer.values), asks_which(heard.answer))
        else:
            self._heard, self._context = heard.text, heard.after
        self._answer(heard.answer)

    def _is_waited_for(self, pending: Pending, heard: Heard) -> bool:
        """Take a turn that says a doubtful number again, or asks of the answer that it will have; return if it does."""
        if pending.is_said_again_in(heard, self._knowledge):
            self._pending = pending._replace(repeated=True)
            if not heard.pending or pending.repeated:
                self._steer(words.AFFIRM)
                return True
        elif pending.is_other_in(heard, self._knowledge):
            self._pick(pending, pending.rival)
            return True
        elif not heard.pending and pending.is_doubted_in(heard):
            self._pending = pending._replace(then=heard.text)
        else:
            return False
        self._say(f"{self._last} {pending.how_to_affirm}", remember=False)
        return True

    def _put_up(self, text: str, before: Context, rival: str, number: bool = False, either: bool = False) -> None:
        """Keep a turn that is to be affirmed: what is said next may correct it, so it counts as asked."""
        after = answer_turn(text, before, self._knowledge)[1]
        self._heard = text
        self._pending = Pending(text, before, after, rival, number, either=either)

    def _answer_text(self, text: str) -> None:
        self._heard = text
        answer, self._context = answer_turn(text, self._context, self._knowledge)
        self._answer(with_numbers(answer, self._context, self._knowledge))

    def _answer(self, answer: Answer) -> None:
        if answer.outcome == DECLINE:
            self._miss(answer)
            return
        self._misses = 0
        self._manner.show(answer.text)
        self._say(self._manner.words_for(answer))

    def _miss(self, answer: Answer) -> None:
        """Say that something is not known or was not caught, twice at most; then offer what works, then keep still."""
        self._misses += 1
        self._tones.sound(tones.NOT_UNDERSTOOD)
        if self._misses <= _MISSES:
            known = answer.text and answer.understood.get("concepts")
            self._manner.show(answer.text)
            self._say(self._manner.words_for(answer) if known else said.NOT_CAUGHT[self._misses - 1])
        elif self._misses == _MISSES + 1:
            offered = ". Or: ".join(each.rstrip("?. ") for each in self._manner.examples[:3])
            self._say(f"I can answer, for example: {offered}.")

    # --- saying

    def _say(self, text: str, remember: bool = True) -> None:
        if remember:
            self._last = text
        self._speaker.say(text)

    def _end(self, text: str) -> None:
        self._over = True
        self._say(text, remember=False)
        self._manner.show(text)
        self._speaker.wait()
        self._tones.sound(tones.ENDED)
