"""Each broken file beside the problems that it must give: broken/CASE/*.yaml and broken/CASE/problems.txt.

The files of a case are read on top of the small base in sound/, which has no problems itself.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.knowledge.base import Base
from assistant.knowledge.checks import CHECKS
from assistant.knowledge.load import load

HERE = Path(__file__).parent
CASES = sorted(path for path in (HERE / "broken").iterdir() if path.is_dir())
TYPE_ALONE = {"type_is_described"}
"""Checks of what only a type's own folder can break; they have tests of their own."""


def load_case(case: Path, partial: bool = False) -> tuple[Base | None, list[str]]:
    base, problems = load(str(HERE / "sound"), cache_dir="", extra=[str(case)], partial=partial)
    return base, [str(problem).replace(f"{case}/", "") for problem in problems]


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_broken_files_give_their_problems(case: Path) -> None:
    base, problems = load_case(case)

    assert problems == (case / "problems.txt").read_text(encoding="utf-8").splitlines()
    assert base is None


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_what_could_be_read_is_there_on_request(case: Path) -> None:
    base, problems = load_case(case, partial=True)

    assert base is not None
    assert problems
    assert list(base.records.values())


def test_each_check_has_a_broken_case() -> None:
    silent = {check.__name__ for check in CHECKS} - TYPE_ALONE
    for case in CASES:
        base, _ = load_case(case, partial=True)
        assert base is not None
        silent -= {check.__name__ for check in CHECKS if list(check(base))}

    assert silent == set()
