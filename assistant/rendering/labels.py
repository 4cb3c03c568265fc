"""Say of a label in capitals what kind of thing it names: a listener hears no capitals.

Only where the sentence does not tell the kind itself, as it does in "NORMAL braking" and "the FIRM setting".
"""

from __future__ import annotations

import re
from collections.abc import Mapping

_BEFORE_LABEL = (
    "[Ii]n|[Tt]o|[Oo]f|[Ff]rom|[Ww]ith|[Ww]ithout|[Uu]ntil|[Ff]or|[Hh]ow|takes|loses|forces|needs"
)
_VERBS = "has|runs|is|comes|goes|keeps|works|does|gives|needs|means|not|warns|proves|takes away"
_SEEN = "shows|lights"
"""What a caption does: behind other words it sounds like theirs, as in "at which ON TARGET lights"."""
_KINDS = ("mode", "setting", "settings", "memo", "caption", "message", "button", "switch", "shows", "lights")
_KINDS_OF_MODES = (*_KINDS, "modes", "braking", "brakes", "pressure")
"""Words that tell what kind of thing a label before them names."""


def labels_named(text: str, labels: Mapping[str, str]) -> str:
    """Name the kind of a label where nothing but its capitals tells it: "in NORMAL", "With STEER LOST the …"."""
    for label, name in labels.items():
        if label not in text:
            continue
        is_mode = name.endswith(" mode")
        kinds = "|".join(_KINDS_OF_MODES if is_mode else _KINDS)
        alone = rf"{re.escape(label)}(?!\w|[ -](?:{kinds}|[A-Z]{{2,}})\b)"
        text = re.sub(rf"(?:^|(?<=[.:;] ))With {alone} (?=[a-z])", f"With {name}, ", text)
        text = re.sub(rf"(?<!\w)({_BEFORE_LABEL}) {alone}", rf"\1 {name}", text)
        text = _beside(label, name, text) if not is_mode else re.sub(rf"(?<=: ){alone}(?=[.,;]| or )", name, text)
        doing = rf"{re.escape(label)} (?=(?:{_VERBS})\b)"
        text = re.sub(rf"(?:^|(?<=[.:;] )){doing}", f"{name[:1].upper()}{name[1:]} ", text)
        text = re.sub(rf"(?<=[a-z] ){doing}", f"{name} ", text)
    return text


def _beside(label: str, name: str, text: str) -> str:
    """Name the kind of a caption that shows behind other words, and of one that is told of a state in brackets."""
    text = re.sub(rf"(?<=[a-z] ){re.escape(label)} (?=(?:{_SEEN})\b)", f"{name} ", text)
    text = re.sub(rf"(?:^|(?<=[.:;] )){re.escape(label)} (?=lights at)", f"{name[:1].upper()}{name[1:]} ", text)
    return text.replace(f"({label})", f"(with {name})") if name.startswith("the ") else text
