"""How far out somebody is: "ANTI-SKID LOST has come on | ten miles out |". It is no distance to calculate with."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from assistant.quantities.amounts import Amount

_FAR, _LASTING = frozenset(("NM", "mile", "km")), frozenset(("min", "h"))
_OUT = (
    ("out",), ("away",), ("from",), ("final",), ("finals",), ("short", "of"), ("to", "go"), ("to", "run"),
    ("to", "touchdown"), ("to", "the", "field"), ("inbound",), ("outbound",), ("off", "the"),
)  # fmt: skip


def still_to_go(amounts: Sequence[Amount], words: Sequence[str]) -> frozenset[int]:
    """Return where amounts begin that only tell how far out somebody is."""
    return frozenset(_places(amounts, words))


def _places(amounts: Sequence[Amount], words: Sequence[str]) -> Iterator[int]:
    for amount in amounts:
        after = tuple(words[amount.end : amount.end + 3])
        far = amount.unit in _FAR and any(after[: len(out)] == out for out in _OUT)
        if far or (amount.unit in _LASTING and after[:1] == ("out",)):
            yield amount.start
