"""What makes an answer wrong though every word asked for stands in it: each rule in a module of its own."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.practice.marking.duties import other_pilot
from assistant.practice.marking.each_one import of_each
from assistant.practice.marking.found import Held
from assistant.practice.marking.hedges import both_said
from assistant.practice.marking.other_heads import other_heads
from assistant.practice.marking.points import Need
from assistant.practice.marking.said import Said
from assistant.practice.marking.shades import other_shade
from assistant.practice.marking.thresholds import below_it
from assistant.practice.marking.told_of_another import of_another_case, told_of_another
from assistant.practice.marking.too_many import too_many
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
        *both_said(need, said),
        *below_it(need, said, know),
        *other_shade(need, said, know),
    ]
