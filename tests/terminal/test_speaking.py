"""The voice at the terminal: words that turn it on and change it, and questions that are not meant for it."""

import io
import json
from collections.abc import Callable
from pathlib import Path
from xml.etree import ElementTree

import pytest
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output import DummyOutput

from assistant.terminal import ask, keys
from assistant.terminal.arguments import parse
from assistant.terminal.conversation import talk
from assistant.terminal.screen import Screen
from assistant.terminal.screens import reply
from assistant.terminal.session import Session
from assistant.terminal.speaking import TerminalVoice, chosen_voice, kept_voice
from assistant.voice.speaking.aloud import Aloud
from assistant.voice.speaking.problem import VoiceProblem
from assistant.voice.speaking.settings import VoiceSettings
from assistant.voice.speaking.sounds import Sound
from assistant.voice.speaking.synthesis import VoiceName
from tests.terminal.conftest import Runner
from tests.voice.speaking.fakes import FakePlayer, FakeSynthesiser

CAUTION = ["Training only.", "Loaded: A O M seven, limitations seven, abnormal checklist five, S O P twelve.",
           "Check your library."]  # fmt: skip


class Voices(FakeSynthesiser):
    """Two voices, and no more human one."""

    @property
    def engine(self) -> "Voices":
        return self

    def synthesise(self, text: str, settings: VoiceSettings) -> Sound:
        if settings.human:
            raise VoiceProblem("the more human voice is not installed")
        if settings.voice not in ("", "ann", "bob"):
            raise VoiceProblem(f'there is no voice "{settings.voice}"')
        return super().synthesise(text, settings)

    def voices(self) -> list[VoiceName]:
        return [VoiceName("ann", "Ann", ("en-gb",)), VoiceName("bob", "Bob", ("en-us",)), VoiceName("x", "X", ("fr",))]


class Desk:
    """A conversation with a voice whose sound is kept."""

    def __init__(self, session: Session) -> None:
        self.voices = Voices()
        self.player = FakePlayer()
        self.aloud: Aloud | None = None
        self.voice = TerminalVoice(session, self._make)
        self._session = session

    def _make(self, session: Session, settings: VoiceSettings, tell: Callable[[str], None]) -> tuple[Aloud, Voices]:
        self.aloud = Aloud(self.voices, self.player, tell, settings)
        return self.aloud, self.voices

    def type(self, text: str) -> str:
        said = reply(text, self._session, Screen(io.StringIO(), 400), self.voice)
        if self.aloud is not None:
            assert self.aloud.wait(10)
        return said or ""

    @property
    def heard(self) -> list[str]:
        found, self.voices.said = self.voices.said, []
        return found


@pytest.fixture
def desk(session: Session) -> Desk:
    return Desk(session)


def test_nothing_is_said_until_the_voice_is_on(desk: Desk) -> None:
    assert desk.type("pedal limit at 90 kt").startswith("2.0°")
    assert desk.aloud is None


def test_turned_on_it_says_what_is_loaded_and_then_the_answers(desk: Desk) -> None:
    assert desk.type("voice on").startswith("The voice is on.")
    assert desk.heard == CAUTION

    assert desk.type("pedal limit at 90 kt").startswith("2.0°")
    assert desk.heard == ["two degrees either way at ninety knots: pedal limit."]

    assert desk.type("voice off") == 'The voice is off; "voice on" turns it on.'
    desk.type("pedal limit at 90 kt")
    assert desk.heard == []


def test_slower_says_the_answer_again_and_is_kept(desk: Desk) -> None:
    desk.type("voice on")
    desk.type("pedal limit at 90 kt")
    usual = kept_voice().rate

    assert desk.type("Speak slower.") == f"{usual - 20} words a minute."
    assert desk.heard[-1] == "two degrees either way at ninety knots: pedal limit."
    assert desk.voices.settings[-1].rate == usual - 20
    assert desk.type("faster") == f"{usual} words a minute."
    assert desk.type("slower") == f"{usual - 20} words a minute."
    assert kept_voice().rate == usual - 20


@pytest.mark.parametrize("line", ["slower", "speak faster", "voice slower"])
def test_the_pace_of_a_voice_that_is_off_is_not_changed(desk: Desk, line: str) -> None:
    assert desk.type(line) == 'The voice is off; "voice on" turns it on.'


def test_the_rate_is_set_by_its_number_and_kept(desk: Desk) -> None:
    desk.type("voice on")

    assert desk.type("voice rate 120") == "120 words a minute."
    assert kept_voice().rate == 120
    assert desk.type("voice faster") == "140 words a minute."


@pytest.mark.parametrize("line", ["rate 120", "Rate 120."])
def test_the_rate_is_set_without_another_word(desk: Desk, line: str) -> None:
    desk.type("voice on")

    assert desk.type(line) == "120 words a minute."


@pytest.mark.parametrize("line", ["digits", "digits on", "voice digits", "digit by digit"])
def test_numbers_are_said_digit_by_digit_once_that_is_asked(desk: Desk, line: str) -> None:
    desk.type("voice on")

    assert desk.type(line) == "Now: the usual voice, numbers digit by digit."
    desk.type("pedal limit at 90 kt")
    assert "niner zero knots" in desk.heard[-1]
    assert desk.type("digits off") == "Now: the usual voice, whole numbers."


@pytest.mark.parametrize("line", ["human voice", "human voice on", "voice human"])
def test_the_more_human_voice_is_asked_for_in_plain_words(desk: Desk, line: str) -> None:
    assert desk.type(line) == "The more human voice is not installed."


@pytest.mark.parametrize(
    ("options", "settings"),
    [
        (("--digits",), VoiceSettings(digits=True)),
        (("--human",), VoiceSettings(human=True)),
        (("--pace", "120", "--voice", "bob"), VoiceSettings(120, "bob")),
        ((), VoiceSettings()),
    ],
)
def test_options_say_how_it_is_said(options: tuple[str, ...], settings: VoiceSettings) -> None:
    assert chosen_voice(parse(["ask", "--speak", *options, "vle"])) == settings
    assert chosen_voice(parse(["--speak", *options])) == settings


def test_digits_are_in_what_would_be_said(run: Runner) -> None:
    assert "zero knots" in run("ask", "--ssml", "--digits", "pedal limit at 90 kt").out
    assert "ninety knots" in run("ask", "--ssml", "pedal limit at 90 kt").out


@pytest.mark.parametrize("options", [("--digits",), ("--pace", "5", "--speak"), ("--human",)])
def test_options_of_the_voice_that_have_no_effect_are_refused(run: Runner, options: tuple[str, ...]) -> None:
    done = run("ask", *options, "vle")

    assert done.code == 2
    assert options[0] in done.err


@pytest.mark.parametrize("rate", ["7", "5000", "fast", "-120"])
def test_a_rate_that_nobody_could_follow_is_told(desk: Desk, rate: str) -> None:
    assert desk.type(f"voice rate {rate}").startswith("The rate is in words a minute, from 80 to 320")


@pytest.mark.parametrize("question", ["voice alert when the gear is not down", "voice of the captain"])
def test_a_question_that_begins_with_voice_is_asked(desk: Desk, question: str) -> None:
    assert desk.type(question).startswith("I don't have that")


def test_a_voice_is_chosen_by_its_name(desk: Desk) -> None:
    desk.type("voice on")

    assert desk.type("voice Bob") == "Now: bob, whole numbers."
    desk.type("pedal limit at 90 kt")
    assert desk.voices.settings[-1].voice == "bob"
    assert kept_voice().voice == "bob"
    assert desk.type("voice usual") == "Now: the usual voice, whole numbers."


def test_an_unknown_voice_changes_nothing(desk: Desk) -> None:
    assert desk.type("voice carl") == 'There is no voice "carl".'
    assert desk.type("voice human") == "The more human voice is not installed."
    assert kept_voice() == VoiceSettings()


def test_the_voices_of_this_language_are_listed(desk: Desk) -> None:
    assert desk.type("voices").split("\n") == ['"voice ann": Ann', '"voice bob": Bob']


def test_numbers_are_said_as_on_the_radio_when_asked(desk: Desk) -> None:
    desk.type("voice on")
    assert desk.type("voice digits") == "Now: the usual voice, numbers digit by digit."
    desk.type("pedal limit at 95 kt")
    assert "niner fife knots" in desk.heard[-1]
    assert desk.type("voice whole numbers") == "Now: the usual voice, whole numbers."


def test_a_new_question_stops_what_is_being_said(desk: Desk) -> None:
    desk.type("voice on")
    before = desk.player.stops
    desk.type("vle")

    assert desk.player.stops > before


def test_no_sound_card_is_told_and_the_text_goes_on(session: Session) -> None:
    desk = Desk(session)
    desk.player.problem = "there is no sound card"

    assert desk.type("voice on") == "There is no sound card."
    assert desk.type("pedal limit at 90 kt").startswith("2.0°")
    assert desk.type("voice").startswith("The voice is off.")


def test_a_voice_that_fails_later_is_told_below_an_answer_and_turned_off(desk: Desk) -> None:
    desk.type("voice on")
    desk.voices.problem = "the voice ended by itself"
    said = [desk.type(text) for text in ("vle", "pedal limit at 90 kt")]

    assert sum(text.endswith("\nThe voice ended by itself.") for text in said) == 1
    assert desk.type("voice").startswith("The voice is off.")


def test_a_key_at_the_prompt_stops_the_voice(session: Session) -> None:
    desk = Desk(session)
    desk.voice.turn_on()
    before = desk.player.stops
    with create_pipe_input() as source:
        source.send_text("stop\r")
        talk(session, Screen(io.StringIO(), 80), "", source, DummyOutput(), desk.voice)

    assert desk.player.stops >= before + len("stop")


def test_ssml_of_an_answer(run: Runner) -> None:
    done = run("ask", "vle", "--ssml")

    root = ElementTree.fromstring(done.out.encode())
    assert done.code == 0
    assert "two hundred and fifty-five knots" in "".join(root.itertext())


@pytest.mark.parametrize(
    "arguments",
    [("--speak", "--batch", "-"), ("--ssml", "--batch", "-"), ("vle", "--ssml", "--json")],
)
def test_what_does_not_go_together(run: Runner, arguments: tuple[str, ...]) -> None:
    done = run("ask", *arguments)

    assert done.code == 2
    assert "does not go with" in done.err


def test_speaking_a_single_answer(run: Runner, monkeypatch: pytest.MonkeyPatch) -> None:
    voices, player = Voices(), FakePlayer()
    monkeypatch.setattr(
        "assistant.terminal.speaking.make_aloud",
        lambda session, settings, tell: (Aloud(voices, player, tell, settings), voices),
    )

    done = run("ask", "pedal limit at 90 kt", "--speak")

    assert done.out.startswith("2.0°")
    assert voices.said == ["two degrees either way at ninety knots: pedal limit."]
    assert voices.closed
    assert done.code == ask.EXIT_CODES["answer"]


def test_without_a_keyboard_the_end_is_waited_for(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO())
    looks: list[float] = []

    assert keys.until_key(lambda seconds: bool(looks.append(seconds)) or len(looks) == 3) is False
    assert len(looks) == 3


def test_settings_that_cannot_be_read_are_the_first_ones(own_places: Path) -> None:
    own_places.mkdir(parents=True)
    (own_places / "voice.json").write_bytes(b"\xff\xfe")
    assert kept_voice() == VoiceSettings()
    (own_places / "voice.json").write_text(json.dumps({"rate": 120}))
    assert kept_voice().rate == 120


@pytest.mark.parametrize(
    ("typed", "wanted", "ends"),
    [("\n", "", True), ("\n", "q", False), ("k", "q", False), ("Q", "q", True), ("xq", "q", True)],
)
def test_only_a_wanted_key_ends(typed: str, wanted: str, ends: bool) -> None:
    assert keys._counts(typed, wanted) is ends
