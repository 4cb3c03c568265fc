"""`audio`: a file to listen to, made from questions on a topic; and which such files a revision has outdated."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from typing import TYPE_CHECKING

from assistant.conversation.opening import Knowledge
from assistant.practice.asking.pool import section_name
from assistant.practice.making import UnknownTopic
from assistant.rendering.text import clean, wrap
from assistant.terminal.audio_facts import facts, in_order_due
from assistant.terminal.options import Parsed, UsageProblem
from assistant.terminal.progress_bar import ProgressBar
from assistant.terminal.screen import Screen, complain, prepare, screen_for
from assistant.terminal.session import Session, open_session
from assistant.terminal.speaking import chosen_voice
from assistant.voice.recording.formats import FORMATS, format_of
from assistant.voice.recording.script import Fact, Script, make_script, script_text
from assistant.voice.speaking.phrases import caution_said, said_aloud
from assistant.voice.speaking.settings import VoiceSettings

if TYPE_CHECKING:
    from assistant.voice.recording.making import Made
    from assistant.voice.recording.tags import Origin

DONE, FAILED, INTERRUPTED = 0, 1, 130
_USUAL_MINUTES, _MOST_MINUTES = 20, 180
_NEEDS = "this needs the extra voice: python3 scripts/start.py --with-voice"
_SHORT = 0.9
"""Share of the length asked for, below which it is said that there was not enough to ask."""
_SETTING_UP = "Set this up before you move off. Stop when traffic needs you. Not for use in flight or at the controls."
_HOW = "After each question there is a pause. Answer aloud, then hear the answer. What is asked may come again later."
_END = "That is the end."


def audio(parsed: Parsed) -> int:
    """Make what was asked for; return the exit code. Raises UsageProblem, BrokenKnowledge and OSError."""
    _check(parsed)
    prepare(sys.stdout, json=False)
    screen = screen_for(parsed, sys.stdout)
    session = open_session(parsed)
    if parsed.has("--stale"):
        return _tell_stale(parsed.values["--stale"], session.knowledge, screen)
    settings = chosen_voice(parsed, kept=False)  # a file is what its command says, whatever was said to the voice
    script = _script(parsed, session, settings)
    if parsed.has("--script"):
        screen.say("\n".join(line for each in script_text(script).split("\n") for line in wrap(each, screen.width)))
        if "-o" not in parsed.values:
            return DONE
    return _made(parsed, session, settings, script, screen)


def _check(parsed: Parsed) -> None:
    if parsed.has("--briefing"):
        raise UsageProblem("a briefing cannot be made into a file yet; choose what to ask about with --topic")
    if parsed.has("--stale"):
        if not os.path.isdir(parsed.values["--stale"]):
            raise UsageProblem(f"there is no folder {parsed.values['--stale']}")
        return
    if "-o" not in parsed.values and not parsed.has("--script"):
        raise UsageProblem("name the file to make with -o, such as -o steering.mp3, or see its text with --script")
    if "-o" in parsed.values:
        _check_output(parsed.values["-o"])


def _check_output(path: str) -> None:
    if format_of(path) is None:
        raise UsageProblem(f"{path} has no ending that tells the kind of file: one of {', '.join(FORMATS)}")
    folder = os.path.dirname(os.path.abspath(path))
    if not os.path.isdir(folder):
        raise UsageProblem(f"there is no folder {folder}")
    if os.path.isdir(path):
        raise UsageProblem(f"{path} is a folder; name a file in it")


def _number(parsed: Parsed, name: str, usual: int, least: int, most: int) -> int:
    text = parsed.values.get(name, str(usual))
    if not (text.isascii() and text.isdigit() and len(text) < 6 and least <= int(text) <= most):
        raise UsageProblem(f"{name} takes a number from {least} to {most}, not {clean(text)}")
    return int(text)


def _topics(parsed: Parsed) -> list[str]:
    return [topic.strip() for topic in parsed.values.get("--topic", "").split(",") if topic.strip()]


def _called(topic: str) -> str:
    """What a topic is called by ear: a section by its name."""
    return section_name(topic) or topic


def _script(parsed: Parsed, session: Session, settings: VoiceSettings) -> Script:
    minutes = _number(parsed, "--minutes", _USUAL_MINUTES, 1, _MOST_MINUTES)
    know, topics, seed = session.knowledge, _topics(parsed), parsed.values.get("--seed", "1")
    try:
        found = facts(know, topics, seed, session.variant, settings)
    except UnknownTopic as problem:
        raise UsageProblem(str(problem)) from None
    if "--learner" in parsed.values:
        found = in_order_due(found, parsed.values["--learner"], know, seed, session.variant)
    opening = _opening(topics, found, know, settings, session.variant)
    caution = said_aloud(caution_said(know), know, settings)
    script = make_script(opening, [f"{_END} {caution}"], found, 60.0 * minutes, settings.rate)
    if script.seconds < _SHORT * 60 * minutes and script.entries and not script.left:
        complain(f"there is enough to ask for about {script.seconds / 60:.0f} minutes; the file will be that long")
    if not script.entries:
        raise UsageProblem("that is too short for a single question; give it more --minutes, or another --topic")
    return script


def titled(know: Knowledge, variant: str) -> str:
    """Return what a file is of: the type, or its variant where the file is about another one than the base."""
    if not variant or variant == know.variants[0]:
        return know.type_name
    show = know.base.variants[variant].show
    family, _, base = know.type_name.rpartition(" ")
    return f"{family} {show}" if family and show.startswith(base) else f"{know.type_name}, {show}"


def _opening(
    topics: list[str], found: list[Fact], know: Knowledge, settings: VoiceSettings, variant: str
) -> list[str]:
    """What is said first: the type, the subject, what it was made from, the caution, and how it goes."""
    revisions = _revisions([fact.entry for fact in found], know)
    made = ", ".join(f"{document} revision {revision}" for document, revision in revisions.items())
    subject = f": {' and '.join(map(_called, topics))}" if topics else ""
    first = said_aloud(f"{titled(know, variant)}{subject}.", know, settings)
    source = said_aloud(f"Made from {made}." if made else "Made from published sources.", know, settings)
    caution = said_aloud(f"{caution_said(know)} {_SETTING_UP}", know, settings)
    return [f"{first} {source}", caution, _HOW]


def _revisions(entries: list[str], know: Knowledge) -> dict[str, str]:
    """The revisions loaded of the type's own documents that some records rest on."""
    cited = {source.document for entry in entries for source in know.base.records[entry].sources}
    return {name: revision for name, revision in _loaded(know).items() if name in cited}


def _loaded(know: Knowledge) -> dict[str, str]:
    return {
        name: " with ".join((document.revision, *document.temporary_revisions))
        for name, document in know.base.documents.items()
        if not document.published
    }


def _made(parsed: Parsed, session: Session, settings: VoiceSettings, script: Script, screen: Screen) -> int:
    path = parsed.values["-o"]
    try:
        import mutagen  # noqa: F401
        import numpy  # noqa: F401  ruff: the command needs it, nothing before it does
        import soundfile  # noqa: F401
    except ImportError:
        complain(_NEEDS)
        return FAILED
    from assistant.voice.recording.tags import read_origin
    from assistant.voice.speaking.problem import VoiceProblem

    if os.path.exists(path) and read_origin(path) is None:
        raise UsageProblem(f"{path} is there already and was not made by this; name another file")
    bar = ProgressBar(os.path.basename(path), sys.stderr)
    try:
        made = _make(path, parsed, session, settings, script, bar)
    except VoiceProblem as problem:
        bar.clear()
        complain(str(problem))
        return FAILED
    except KeyboardInterrupt:
        bar.clear()
        complain("stopped; the same command goes on from here")
        return INTERRUPTED
    bar.clear()
    length = f"{int(made.seconds // 60)} min {int(made.seconds % 60):02} s"
    level = f"{made.loudness:.1f} LUFS, true peak {made.peak_db:.1f} dBTP".replace("-", "−")
    written = f"written: {clean(path)} ({length}, {len(made.chapters)} chapters, {level})"
    screen.say("\n".join(wrap(written, screen.width)))
    return DONE


def _make(
    path: str, parsed: Parsed, session: Session, settings: VoiceSettings, script: Script, bar: ProgressBar
) -> Made:
    from assistant.voice.recording.making import make_file
    from assistant.voice.recording.tags import Labels
    from assistant.voice.speaking.synthesis import ChosenSynthesiser

    know = session.knowledge
    origin, title = _origin(parsed, know, script), titled(know, session.variant)
    subject = ", ".join(map(_called, _topics(parsed))) or "all sections"
    made_from = ", ".join(f"{document} {revision}" for document, revision in origin.revisions.items())
    comment = f"Made from {made_from}. {caution_said(know)} {_SETTING_UP}"
    labels = Labels(f"{title}: {subject}", f"{title}, questions to answer aloud", comment)
    synthesiser = ChosenSynthesiser(know.base.respelt)
    try:
        return make_file(script, path, synthesiser, settings, labels, origin, bar.show)
    finally:
        synthesiser.close()


def _origin(parsed: Parsed, know: Knowledge, script: Script) -> Origin:
    from assistant.voice.recording.tags import Origin

    revisions = _revisions(list(script.entries), know)
    type_id, seed = know.base.type_info.id, parsed.values.get("--seed", "1")
    return Origin(type_id, revisions, script.entries, tuple(_topics(parsed)), seed)


def _tell_stale(folder: str, know: Knowledge, screen: Screen) -> int:
    try:
        import mutagen  # noqa: F401
    except ImportError:
        complain(_NEEDS)
        return FAILED
    from assistant.voice.recording.stale import stale_files

    found = list(_origins(folder))
    outdated = stale_files(found, know.base.type_info.id, _loaded(know), know.base.records)
    for file in outdated:
        screen.say("\n".join(wrap(f"{clean(file.path)}: {file.reason}", screen.width, "  ")))
    of = sum(origin.type_id == know.base.type_info.id for _, origin in found)
    count = f"{of} audio file{'s' * (of != 1)} of {know.type_name}"
    screen.say(f"{count}: {len(outdated) or 'none'} outdated.")
    return FAILED if outdated else DONE


def _origins(folder: str) -> Iterator[tuple[str, Origin]]:
    from assistant.voice.recording.tags import read_origin

    for place, folders, names in os.walk(folder):
        folders.sort()
        for name in sorted(names):
            path = os.path.join(place, name)
            origin = read_origin(path) if format_of(name) is not None else None
            if origin is not None:
                yield path, origin
