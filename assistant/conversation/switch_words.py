"""The "on" of "fans on", and the "on" of "on the long one": only the first chooses anything."""

from __future__ import annotations

from collections.abc import Sequence

_SWITCHES = frozenset({"on", "off"})
_AFTER = frozenset({
    "then", "now", "again", "instead", "please", "too", "as", "though", "?", ".", ",", "this", "time", "all", "and",
    "with", "for", "throughout",
})  # fmt: skip
"""Words behind a switch that is on, and no place that something is on."""


def idle_switches(words: Sequence[str]) -> set[int]:
    """Return the places of an "on" or "off" that leads to what stands behind it and switches nothing."""
    return {k for k, word in enumerate(words[:-1]) if word in _SWITCHES and words[k + 1] not in _AFTER}
