"""Say of a label in capitals what kind of thing it names: a listener hears no capitals.

Only where the sentence does not tell the kind itself, as it does in "NORMAL braking" and "the FIRM setting".
"""

from __future__ import annotations

import re
from collections.abc import Mapping

_BEFORE_LABEL = "[Ii]n|[Tt]o|[Oo]f|[Ff]rom|[Ww]ith|[Ww]ithout|[Uu]ntil|[Ff]or"
_VERBS = "has|runs|is|comes|goes|keeps|works|does|gives|needs|means"
_KINDS = ("mode", "setting", "settings", "memo", "caption", "message", "button", "switch", "shows", "lights")
_KINDS_OF_MODES = (*_KINDS, "modes", "braking", "brakes", "pressure")
"""Words that tell what kind of thing a label before them names."""


def labels_named(text: str, labels: Mapping[str, str]) -> str:
    """Name the kind of a label where nothing but its capitals tells it: "in NORMAL", "With STEER LOST the …"."""
    for label, name in labels.items():
        if label not in text:
            continue
        kinds = "|".join(_KINDS_OF_MODES if name.endswith(" mode") else _KINDS)
        alone = rf"{re.escape(label)}(?!\w|[ -](?:{kinds}|[A-Z]{{2,}})\b)"
        text = re.sub(rf"(?:^|(?<=[.:;] ))With {alone} (?=[a-z])", f"With {name}, ", text)
        text = re.sub(rf"(?<!\w)({_BEFORE_LABEL}) {alone}", rf"\1 {name}", text)
        doing = rf"{re.escape(label)} (?=(?:{_VERBS})\b)"
        text = re.sub(rf"(?:^|(?<=[.:;] )){doing}", f"{name[:1].upper()}{name[1:]} ", text)
        text = re.sub(rf"(?<=[a-z] ){doing}", f"{name} ", text)
    return text
