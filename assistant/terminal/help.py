"""The help of each command: how it is written, every option that it takes, and what its end tells."""

from __future__ import annotations

from assistant.terminal.options import ASK, AUDIO, CHECK, CLASS, COMMANDS, PROGRESS, REHEARSE, SHEET, written

ENDINGS = {
    "": (
        "From the environment: DOWNLOCK_KNOWLEDGE and DOWNLOCK_TYPE name the folder and the type where no\n"
        "option does, DOWNLOCK_HOME the folder for your own files, DOWNLOCK_CACHE one for what may be\n"
        "thrown away, DOWNLOCK_TODAY a day to take for today; NO_COLOR turns colour off."
    ),
    ASK.name: (
        "After -- every word belongs to the question. A single question ends with 0 answered, 3 something\n"
        "is missing, 4 not known, 2 wrongly written, 1 broken knowledge, 5 the answer could not be written;\n"
        "a batch ends with 0 whatever its answers."
    ),
    CHECK.name: "Ends with 0 when nothing is wrong, with 1 when there is a problem.",
    REHEARSE.name: (
        "The record lies in the folder for your own files. DOWNLOCK_TODAY=2026-12-01 in the environment\n"
        "lets it be that day, to try weeks ahead. From a pipe each line is an answer to the next question;\n"
        "why, source, overrule, correction and stop after a mark are still of that mark.\n"
        'With --mark a line is {"question": ..., "answer": ...}; its mark is right, partly, wrong or missed,\n'
        "or unmarked where nothing loaded answers the question or the line cannot be read.\n"
        "Ends with 0 whatever the marks, 2 wrongly written, 1 broken knowledge."
    ),
    CLASS.name: (
        "Every step is kept at once: after a crash the same command goes on from where it stood. Where no\n"
        "file is named the report goes into the folder for your own files. Ends with 0 done, 2 wrongly\n"
        "written, 1 own questions or a set that cannot be used, or broken knowledge, 5 what could not be\n"
        "written."
    ),
    PROGRESS.name: (
        "The record lies in the folder for your own files. Ends with 0 done, 2 wrongly written, 1 a file that\n"
        "cannot be taken in or broken knowledge, 5 what could not be written."
    ),
    SHEET.name: (
        "The key goes into a file beside the questions, FILE-key. Ends with 0 done, 2 wrongly written, 1 own\n"
        "questions or a set that cannot be used, or broken knowledge, 5 what could not be written."
    ),
    AUDIO.name: (
        "Stopped in the middle, the same command goes on where it was. Ends with 0 done, 2 wrongly\n"
        "written, 1 no voice, broken knowledge or, with --stale, a file that is outdated, 5 what could not\n"
        "be written, 130 stopped."
    ),
}
"""What the help of each command ends with."""


def help_text(command: str) -> str:
    """Return how a command is written, with every option that it takes."""
    chosen = next(each for each in COMMANDS if each.name == command)
    lines = [f"{chosen.usage}", f"  {chosen.about}", ""]
    if not command:
        lines += [line for other in COMMANDS[1:] for line in (other.usage, f"  {other.about}")]
        lines.append("")
    size = max(len(written(option)) for option in chosen.options)
    lines += [f"  {written(option):<{size}}  {option.about}" for option in chosen.options]
    return "\n".join([*lines, "", ENDINGS[command]])
