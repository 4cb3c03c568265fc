"""What is written after the command is read as meant, or answered with what was meant."""

import pytest

from assistant.terminal.arguments import parse
from assistant.terminal.help import help_text
from assistant.terminal.options import COMMANDS, UsageProblem


def test_options_stand_anywhere_among_the_words() -> None:
    parsed = parse(["ask", "--json", "pedal", "limit", "--width=60", "90kt", "--variant", "120L"])

    assert parsed.command == "ask"
    assert parsed.words == ("pedal", "limit", "90kt")
    assert parsed.values == {"--json": "", "--width": "60", "--variant": "120L"}
    assert parsed.width == 60


def test_what_only_looks_like_an_option_is_a_word() -> None:
    assert parse(["ask", "outside", "-15", "-.5", "-"]).words == ("outside", "-15", "-.5", "-")
    assert parse(["ask", "--", "--json"]).words == ("--json",)


@pytest.mark.parametrize(
    ("arguments", "told"),
    [
        (["ask", "--jsno", "vle"], "there is no option --jsno; did you mean --json?"),
        (["rehearse", "--name", "Ann"], "there is no option --name; did you mean --learner?"),
        (["class", "--name", "Ann, Ben"], "there is no option --name; did you mean --names?"),
        (["sheet", "quiz", "--output", "x.html"], "there is no option --output; did you mean -o?"),
        (["rehearse", "--learner", ""], "--learner takes a value that is not empty: --learner NAME"),
        (["--varient", "120L"], "there is no option --varient; did you mean --variant?"),
        (["check", "--json"], "there is no option --json; there is --type, --knowledge, --schema, --help"),
        (["ask", "-x", "vle"], "there is no option -x"),
        (["aks", "vle"], "there is no command aks; did you mean ask?"),
        (["vle"], "there is no command vle; a question is asked with: downlock ask QUESTION"),
        (["--plain", "ask", "vle"], "a command comes first: downlock ask [options]"),
        (["check", "vle"], "vle has no place here; write: downlock check [options]"),
        (["ask"], "there is no question; write: downlock ask QUESTION... [options]"),
        (["ask", " ", ""], "there is no question"),
        (["ask", "--batch", "x", "vle"], "--batch takes its questions from the file"),
        (["ask", "--batch"], "--batch takes a value: --batch FILE"),
        (["ask", "--batch="], "--batch takes a value"),
        (["ask", "--variant", "--json", "vle"], "--variant takes a value"),
        (["ask", "--json=yes", "vle"], "--json takes no value"),
        (["ask", "--conversation", "vle"], "--conversation goes with --batch FILE"),
        (["ask", "vle", "--width", "39"], "--width takes a number of columns, 40 or more, not 39"),
        (["ask", "vle", "--width", "wide"], "--width takes a number of columns, 40 or more, not wide"),
        (["ask", "vle", "--width", "²"], "--width takes a number of columns"),
    ],
)
def test_a_mistake_is_answered_with_what_was_meant(arguments: list[str], told: str) -> None:
    with pytest.raises(UsageProblem) as caught:
        parse(arguments)

    assert told in str(caught.value)
    assert "\n" not in str(caught.value)


@pytest.mark.parametrize("command", COMMANDS, ids=lambda command: command.name or "conversation")
def test_every_option_is_in_the_help(command: object) -> None:
    shown = help_text(command.name)  # type: ignore[attr-defined]

    for option in command.options:  # type: ignore[attr-defined]
        assert f"  {option.name}" in shown
        assert option.about in shown


def test_the_first_help_names_every_command() -> None:
    assert all(command.usage in help_text("") for command in COMMANDS)


def test_help_fits_a_usual_terminal() -> None:
    assert max(len(line) for command in COMMANDS for line in help_text(command.name).splitlines()) <= 100
