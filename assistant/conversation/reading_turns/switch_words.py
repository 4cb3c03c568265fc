"""The "on" of "fans on", and the "on" of "on the long one": only the first chooses anything."""

from __future__ import annotations

from collections.abc import Sequence

_SWITCHES = frozenset({"on", "off"})
_AFTER = frozenset({
    "then", "now", "again", "instead", "please", "too", "as", "though", "?", ".", ",", "this", "time", "all", "and",
    "with", "for", "throughout",
})  # fmt: skip
"""Words behind a switch that is on, and no place that something is on."""
_BEFORE = frozenset({"take", "lift", "taking", "lifting"})


def idle_switches(words: Sequence[str]) -> set[int]:
    """Return the places of an "on" or "off" that switches nothing: it leads to what follows, or ends "take-off"."""
    leading = {k for k, word in enumerate(words[:-1]) if word in _SWITCHES and words[k + 1] not in _AFTER}
    ending = {k for k, word in enumerate(words) if word == "off" and k and words[k - 1] in _BEFORE}  # "take-off"
    return leading | ending
