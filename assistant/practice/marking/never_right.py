"""What makes an answer wrong though every word asked for stands in it: each rule in a module of its own."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.practice.marking.finding.duties import other_pilot
from assistant.practice.marking.finding.found import Held
from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said
from assistant.practice.marking.wrong_figures.each_one import of_each
from assistant.practice.marking.wrong_figures.thresholds import below_it
from assistant.practice.marking.wrong_statements.denial_dropped import denial_dropped
from assistant.practice.marking.wrong_statements.hedges import both_said
from assistant.practice.marking.wrong_statements.too_many import too_many
from assistant.practice.marking.wrong_things.of_its_part import of_another_part
from assistant.practice.marking.wrong_things.other_heads import other_heads
from assistant.practice.marking.wrong_things.other_rows import of_other_rows
from assistant.practice.marking.wrong_things.shades import other_shade
from assistant.practice.marking.wrong_things.told_of_another import of_another_case, told_of_another
from assistant.resolving.knowing import Knowledge


def never_right(held: Sequence[Held], need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return what an answer says that leaves nothing right."""
    single = not any(p.labels for p in need.points)
    return [
        *(other_heads(held, need, said, know) if single else ()),
        *(other_pilot(need, said, know) if single else ()),
        *(too_many(held, need, said, know) if single else ()),
        *(of_each(need, said) if single else ()),
        *(told_of_another(held, need, said, know) if single else ()),
        *of_another_case(held, need, said, know),
        *(_other_gear(need, said) if single else ()),
        *_as_normal(need, said),
        *denial_dropped(held, said),
        *both_said(need, said),
        *below_it(need, said, know),
        *other_shade(need, said, know),
        *of_other_rows(need, said),
        *of_another_part(held, said, know),
    ]


def _other_gear(need: Need, said: Said) -> list[str]:
    """Return the main gear named where the full answer speaks of the nose gear alone, or the other way."""
    if any(p.figures for p in need.points):
        return []
    full = need.expected.lower()
    words = set(said.reading.words)
    for one, other in (("nose", "main"), ("main", "nose")):
        if one in full and other not in full and other in words and one not in words and other not in need.asked:
            return [] if {"not", "no", "than"} & words else [other]
    return []


def _as_normal(need: Need, said: Said) -> list[str]:
    """Return what is said to be as always, where a state has it otherwise: "yes, normally"."""
    results = {c for p in need.points for e in p.elements for c in e.concepts if c[0] == "="}
    usual = _USUALLY.search(" ".join(said.reading.words))
    held = any(c.endswith(".normal") for c in results) or "normal" in need.expected.lower().split(" that is with ")[0]
    return [usual.group()] if usual and results and not held else []


_USUALLY = re.compile(r"(?<!not )(?<!no )\b(?:normally|as usual|as normal|as always|like normal)\b")
