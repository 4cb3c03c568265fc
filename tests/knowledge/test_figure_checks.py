"""Figures that stand in two records and do not agree are told to whoever keeps them, and answers go on."""

from __future__ import annotations

from pathlib import Path

from assistant.knowledge.figure_checks import contradictions
from assistant.knowledge.load import load
from assistant.knowledge.location import knowledge_root

SOUND = Path(__file__).parent / "sound"
RECORDS = """
limits:
  - {id: winch-speed, of: winch speed, asks: [winch speed], maximum: 70 kt, source: MAN 3}
  - {id: crew, of: crew, asks: [crew], value: 2 count, source: MAN 3}
facts:
  - {id: winch-said, asks: [winch told], says: Winch at 65 kt., source: MAN 3, values: [{is: 65 kt, quantity: speed}]}
  - {id: winch-kept, asks: [winch kept], says: Winch at 70 kt., source: MAN 3, values: [{is: 70 kt, quantity: speed}]}
changes:
  - {id: first, subject: winch, formerly: 60 kt, now: 65 kt, since: MAN 1, record: winch-speed, source: MAN 3}
  - {id: second, subject: winch, formerly: 65 kt, now: 68 kt, since: MAN 2, record: winch-speed, source: MAN 3}
  - {id: stale, subject: crew, formerly: "3", now: "2", since: MAN 2, record: winch-kept, source: MAN 3}
"""


def test_each_is_told_by_its_line(tmp_path: Path) -> None:
    (tmp_path / "case.yaml").write_text(RECORDS, "utf-8")

    base, problems = load(str(SOUND), cache_dir="", extra=[str(tmp_path)])

    assert problems == []
    assert base is not None
    assert [str(each).replace(f"{tmp_path}/", "") for each in contradictions(base)] == [
        "case.yaml:6: fact 'winch-said' states 65 kt, and the limits of MAN 3 state 70 kt; mend the one that is not "
        "in force",
        "case.yaml:10: change 'second' says that 'winch-speed' is now 68 kt, and that states 70 kt; mend the one that "
        "is not in force, or add the change that came after",
        "case.yaml:11: change 'stale' says that 'winch-kept' is now 2, which that does not state; mend the one that is "
        "not in force, or add the change that came after",
    ]


def test_the_knowledge_delivered_agrees_with_itself() -> None:
    base, _ = load(knowledge_root())

    assert base is not None
    assert contradictions(base) == []


def test_nothing_is_said_of_figures_while_a_limit_may_be_missing(tmp_path: Path) -> None:
    (tmp_path / "case.yaml").write_text(RECORDS, "utf-8")
    (tmp_path / "torn.yaml").write_text("limits: [\n", "utf-8")

    base, _ = load(str(SOUND), cache_dir="", extra=[str(tmp_path)], partial=True)

    assert base is not None
    assert not [each for each in contradictions(base) if "fact" in each.message]
