"""What a curator reads after a check."""

from __future__ import annotations

import shutil
from pathlib import Path

from assistant.knowledge.load import load
from assistant.knowledge.problems import Problem
from assistant.knowledge.report import check_lines

SOUND = str(Path(__file__).parent / "sound")


def test_a_sound_base_is_counted() -> None:
    base, problems = load(SOUND, cache_dir="")

    assert check_lines(base, problems, today="2026-06-01") == [
        "loaded: MAN, Sample Glider manual, revision 1, effective 2026-01-02; temporary revisions: 1A",
        "loaded: 1 published source",
        "2 documents, 4 terms, 2 inputs, 2 facts, 3 limits, 1 bands, 1 schedules, 1 tables, 1 procedures, "
        "1 models, 1 changes, 2 variants, 2 overrides, 1 outlines; no problems",
    ]


def test_dates_are_notes() -> None:
    base, _ = load(SOUND, cache_dir="")

    assert check_lines(base, [], today="2026-01-01")[0] == (
        "note: sample_glider/type.yaml:8: document 'MAN' takes effect on 2026-01-02; "
        "until then it is ahead of its time"
    )
    assert check_lines(base, [], today="2027-01-03")[0] == (
        "note: sample_glider/type.yaml:8: document 'MAN' was to be reviewed by 2027-01-02; "
        "compare it with the library and move the date"
    )
    assert check_lines(base, [], today="2027-01-02")[0].startswith("loaded")


def test_a_document_that_lists_no_paragraphs_is_a_note(tmp_path: Path) -> None:
    listed = Path(SOUND, "sample_glider", "type.yaml").read_text("utf-8")
    shutil.copytree(SOUND, tmp_path, dirs_exist_ok=True)
    without = "".join(line for line in listed.splitlines(keepends=True) if "paragraphs:" not in line)
    (tmp_path / "sample_glider" / "type.yaml").write_text(without, "utf-8")
    base, problems = load(str(tmp_path), cache_dir="")

    assert check_lines(base, problems, today="2026-06-01")[0] == (
        "note: sample_glider/type.yaml:8: document 'MAN' does not list its paragraphs; "
        "list them under 'paragraphs:', and what is cited is compared"
    )


def test_problems_alone_when_there_is_no_base() -> None:
    problem = Problem("a.yaml", 3, "is odd\nindeed", "mend it")

    assert check_lines(None, [problem]) == ["a.yaml:3: is odd indeed; mend it", "1 problem found"]
