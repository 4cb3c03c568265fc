"""The prompt and the plain form, driven as a person or a pipe would."""

import io
import json
import stat
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from prompt_toolkit.completion import CompleteEvent
from prompt_toolkit.document import Document
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output import DummyOutput

from assistant.rendering.text import columns
from assistant.terminal import disputes, screens
from assistant.terminal.arguments import parse
from assistant.terminal.conversation import Names, PrivateHistory, history_path, talk, turns_in
from assistant.terminal.long_paste import LONGEST_TYPED
from assistant.terminal.screen import Screen
from assistant.terminal.screens import FAREWELL, HOW_TO_LEAVE, help_screen, opening, reply
from assistant.terminal.session import Session, open_session
from tests.terminal.conftest import Runner

CTRL_C, CTRL_D, TAB = "\x03", "\x04", "\t"
Typed = Callable[..., str]


@pytest.fixture
def typed(session: Session) -> Typed:
    """Types keys at the prompt and returns what is said."""

    def typing(keys: str, path: str = "", width: int = 80, color: bool = False) -> str:
        out = io.StringIO()
        with create_pipe_input() as source:
            source.send_text(keys)
            talk(session, Screen(out, width, color), path, source, DummyOutput())
        return out.getvalue()

    return typing


def test_questions_follow_one_another(typed: Typed) -> None:
    said = typed("pedal limit at 90 kt\rand at 30 kt?\rstop\r")

    assert said.startswith("2.0°")
    assert "8.0°" in said or "8°" in said
    assert said.endswith(f"{FAREWELL}\n")


def test_lines_that_are_pasted_at_once_are_a_turn_each(typed: Typed) -> None:
    said = typed("\x1b[200~vle\nvlo for retraction\n\x1b[201~\rstop\r")

    assert said.index("255 kt") < said.index("205 kt")


def test_a_question_that_was_broken_into_lines_is_one() -> None:
    first = "What is the maximum temperature of a brake that may be"

    assert turns_in(f"{first}\nshown before take-off?\nand on the 120L\n\n") == [
        f"{first} shown before take-off?",
        "and on the 120L",
    ]


@pytest.mark.parametrize("word", ["stop", "exit", "quit", "goodbye", " Stop. ", "BYE!"])
def test_words_that_end(typed: Typed, word: str) -> None:
    assert typed(f"{word}\r") == f"{FAREWELL}\n"


def test_ctrl_d_leaves_with_one_line(typed: Typed) -> None:
    assert typed(CTRL_D) == f"{FAREWELL}\n"


def test_ctrl_c_clears_the_line_and_then_says_how_to_leave(typed: Typed) -> None:
    assert typed(f"nonsense{CTRL_C}{CTRL_D}") == f"{FAREWELL}\n"
    assert typed(f"nonsense{CTRL_C}{CTRL_C}{CTRL_D}") == f"{HOW_TO_LEAVE}\n{FAREWELL}\n"
    assert typed(f"{CTRL_C}{CTRL_D}") == f"{HOW_TO_LEAVE}\n{FAREWELL}\n"


def test_an_empty_line_is_passed_over(typed: Typed) -> None:
    assert typed(f"\r  \r{CTRL_D}") == f"{FAREWELL}\n"


def test_a_conversation_says_the_deference_at_its_opening_alone(typed: Typed) -> None:
    assert "Training only" not in typed(f"vle\r{CTRL_D}")


def test_an_escape_in_a_question_does_not_come_back(typed: Typed) -> None:
    pasted = "\x1b[200~frobnicate \x1b[31m \x07 crosswind\x1b[201~"

    assert "\x1b" not in typed(f"{pasted}\r{CTRL_D}")


@pytest.mark.parametrize(("before", "after"), [("\x1b[200~", "\x1b[201~"), ("", "")])
def test_a_long_paste_is_taken_in_part_and_told_to_be_too_long(
    typed: Typed, monkeypatch: pytest.MonkeyPatch, before: str, after: str
) -> None:
    lines = []
    monkeypatch.setattr(screens, "answer_text", lambda answer, *_: lines.append(answer.question) or answer.text)

    said = typed(f"{before}{'vle and so on ' * 4_000}{after}\rvle\r{CTRL_D}")

    assert [len(line) <= LONGEST_TYPED for line in lines] == [True, True]
    assert said.startswith("That is longer than I read.")
    assert "255 kt" in said


@pytest.mark.parametrize("colour", ["\x1b[31m", "\x1b[0m", "\x1b[1;31m", "\x1b[38;5;196m", "\x1b[<31m", "\x1b[M"])
def test_a_paste_with_colours_does_not_disturb_the_prompt(typed: Typed, colour: str) -> None:
    said = typed(f"vlo {colour}   now\rvle\rstop\r")

    assert "VLE" in said
    assert said.endswith(f"{FAREWELL}\n")


def test_ctrl_c_clears_a_long_paste(typed: Typed) -> None:
    assert typed(f"{'nonsense ' * 2_000}{CTRL_C}{CTRL_D}") == f"{FAREWELL}\n"
    assert "255 kt" in typed(f"{'nonsense ' * 2_000}{CTRL_C}vle\r{CTRL_D}")


def test_lines_fit_forty_columns(typed: Typed, session: Session) -> None:
    said = typed(f"system 1 lost, what do I lose?\rhelp\rvlo\r{CTRL_D}", width=40)

    shown = [opening(session.knowledge, "", 40), help_screen(session.knowledge, 40), said]
    assert max(columns(line) for text in shown for line in text.splitlines()) <= 40


def test_tab_completes_a_name(typed: Typed, session: Session) -> None:
    name = max(session.knowledge.completions(), key=len)
    others = [each for each in session.knowledge.completions() if each.startswith(name[:-1])]
    assert others == [name]

    out = typed(f"what is the {name[:-1]}{TAB}\r{CTRL_D}")
    session.start_afresh()
    assert out == typed(f"what is the {name}\r{CTRL_D}")


@pytest.mark.parametrize(
    ("begun", "name"),
    [
        ("pedal lim", "pedal limit"), ("acc", "accumulator"), ("steer", "steering"), ("steer l", "STEER LOST"),
        ("vl", "VLE"), ("system", "System 1"), ("braking m", "braking mode"), ("free-fall l", "free-fall lever"),
    ],
)  # fmt: skip
def test_what_the_knowledge_writes_is_completed(session: Session, begun: str, name: str) -> None:
    completions = Names(session.knowledge.completions).get_completions(Document(begun), CompleteEvent())

    assert name in [completion.text for completion in completions]


def test_ways_of_asking_are_no_names(session: Session) -> None:
    names = [name.lower().split() for name in session.knowledge.completions()]

    assert not [name for name in names if {"what", "which", "with", "know", "i"} & set(name[1:])]


@pytest.mark.parametrize(
    ("before", "completed"),
    [("where is the gear le", ["gear lever"]), ("GEAR L", ["gear lever"]), ("where is ", []), ("", [])],
)
def test_the_longest_beginning_is_completed(before: str, completed: list[str]) -> None:
    names = Names(lambda: ["gear lever", "lever", "tiller"])

    found = names.get_completions(Document(before), CompleteEvent())

    assert [completion.text for completion in found] == completed


# --- what is kept


def test_questions_are_kept_for_their_owner_alone(typed: Typed, own_places: Path) -> None:
    typed(f"vle\r{CTRL_D}", path=history_path())

    kept = own_places / "questions"
    assert "+vle" in kept.read_text("utf-8")
    assert sys.platform == "win32" or stat.S_IMODE(kept.stat().st_mode) == 0o600


def test_no_history_keeps_none(typed: Typed, own_places: Path) -> None:
    typed(f"vle\r{CTRL_D}", path="")

    assert not own_places.exists()


def test_what_a_terminal_obeys_is_not_kept(tmp_path: Path) -> None:
    PrivateHistory(str(tmp_path / "new" / "questions")).store_string("a\x1b[31mb\ud800")

    assert "+ab\ufffd" in (tmp_path / "new" / "questions").read_text("utf-8")


def test_a_place_that_cannot_be_written_does_no_harm(typed: Typed, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("", "utf-8")

    assert FAREWELL in typed(f"vle\r{CTRL_D}", path=str(tmp_path / "file" / "questions"))


def test_a_record_set_aside_stays_so_for_later_conversations(run: Runner) -> None:
    first = open_session(parse([]), disputes=True, keeps=True)
    first.answer("vle")
    first.answer("dispute: the old book says 250")

    kept = disputes.kept_disputes("aldermere_120")
    assert [note for _, note in kept] == ["the old book says 250"]
    assert "disputed" in run("ask", "vle").out
    assert "disputed" not in run("ask", "--batch", "-", typed=b"vle\n").out

    later = open_session(parse([]), disputes=True, keeps=True)
    later.answer("clear dispute")
    assert disputes.kept_disputes("aldermere_120") == ()


_LINES = b"vle\nwhat is disputed\nvlo\ndispute\nclear all disputes\n\nvle\n"


@pytest.mark.parametrize("words", [(), ("ask", "--batch", "-", "--conversation")])
def test_what_is_disputed_is_told_in_a_pipe_too(run: Runner, own_places: Path, words: tuple[str, ...]) -> None:
    disputes.keep_disputes("aldermere_120", (("vle", "it says 250"),))

    said = " ".join(run(*words, typed=_LINES).out.split())

    assert "disputed and set aside until its curator has looked. The note says: it says 250." in said
    assert "Set aside as disputed, until its curator has looked: 1. maximum speed with the gear down" in said
    assert "used, in this conversation alone" in said
    assert "No record is set aside any more in this conversation alone." in said
    assert disputes.kept_disputes("aldermere_120") == (("vle", "it says 250"),)


def test_a_single_question_tells_how_long_a_dispute_holds(run: Runner, own_places: Path) -> None:
    disputes.keep_disputes("aldermere_120", (("vle", ""),))

    said = " ".join(run("ask", "vle").out.split())

    assert "until its curator has looked" in said
    assert "in this conversation alone" not in said


def test_a_piped_conversation_keeps_nothing(run: Runner, own_places: Path) -> None:
    run(typed=b"vle\ndispute\n")

    assert not own_places.exists()


@pytest.mark.parametrize(
    "content", ["", "[]", "{", '{"aldermere_120": 1}', '{"aldermere_120": [[1, 2], "x"]}']
)
def test_a_damaged_file_counts_as_nothing_kept(own_places: Path, content: str) -> None:
    own_places.mkdir()
    (own_places / disputes.FILE).write_text(content, "utf-8")

    assert disputes.kept_disputes("aldermere_120") == ()
    assert disputes.disputes_told("aldermere_120")[1].startswith(str(own_places / disputes.FILE))
    assert disputes.keep_disputes("aldermere_120", (("vle", "note"),))
    assert (own_places / f"{disputes.FILE}.damaged").read_text("utf-8") == content
    assert disputes.disputes_told("aldermere_120")[1] == ""
    assert json.loads((own_places / disputes.FILE).read_text("utf-8")) == {"aldermere_120": [["vle", "note"]]}


def test_a_damaged_file_is_told_before_the_answer(run: Runner, own_places: Path) -> None:
    own_places.mkdir()
    (own_places / disputes.FILE).write_text('{"aldermere_120": [["vle", ""]', "utf-8")

    done = run("ask", "vle")

    assert done.code == 0
    assert done.err.startswith(f"downlock: {own_places / disputes.FILE} is not well-formed: ")


# --- the plain form


def test_a_pipe_gets_plain_answers(run: Runner) -> None:
    done = run(typed=b"pedal limit 90kt\n\n\xff\nand at 30 kt?\nstop\nvle\n")

    assert done.code == 0
    assert done.out.startswith("2.0°")
    assert "Question:" not in done.out
    assert "not text in UTF-8" in done.out
    assert "255 kt" not in done.out
    assert done.out.splitlines()[-1].startswith("Training only.")


# --- screens


def test_the_first_screen_tells_what_is_loaded_and_the_caution(session: Session) -> None:
    shown = " ".join(opening(session.knowledge, "120L", 80).split())

    for told in (
        "Aldermere 120; variants 120, 120L; in use: 120L", "Loaded: AOM 7, LIM 7, ABN 5, SOP 12.",
        "Training only", "Not for use in flight", "licensed instructors prevail", "while driving",
        *session.knowledge.examples[:3],
    ):  # fmt: skip
        assert told in shown


def test_the_questions_of_the_first_screen_work(session: Session) -> None:
    for example in session.knowledge.examples:
        session.start_afresh()
        assert session.answer(example).outcome == "answer", example


def test_help_tells_what_can_be_said(session: Session) -> None:
    shown = reply("Help", session, Screen(io.StringIO(), 80))

    assert shown is not None
    for word in ("why", "where does it say that", "say again", "120L", "dispute", "stop"):
        assert word in " ".join(shown.split())


def test_what_a_pipe_sets_aside_is_said_to_end_with_it(run: Runner) -> None:
    done = run(typed=b"vle\ndispute it is 250 kt\n")

    said = " ".join(done.out.split())
    assert "It is said so wherever it is used, in this conversation alone." in said
    assert "curator" not in said
