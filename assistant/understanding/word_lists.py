"""The long lists of words, each read when a word first asks for it, with what was looked up kept."""

from __future__ import annotations

from collections.abc import Callable

MOST_KEPT = 5000
"""Words of which it is remembered what they are, before all are forgotten."""


class WordLists:
    """Looks words up in lists that a function returns by name, one word a line."""

    def __init__(self, lists: Callable[[str], str] | None = None) -> None:
        self._lists = lists
        self._read_lists: dict[str, str] = {}
        self._on_list: dict[str, dict[str, bool]] = {}

    def holds(self, word: str, name: str) -> bool:
        """Return whether a word is in one of the lists."""
        known = self._on_list.get(name)
        if known is None:
            known = self._on_list[name] = {}
        found = known.get(word)
        if found is None:
            if len(known) > MOST_KEPT:
                known.clear()
            found = known[word] = f"\n{word}\n" in self.text(name)
        return found

    def text(self, name: str) -> str:
        """Return a list, between two ends of lines."""
        if name not in self._read_lists:
            self._read_lists[name] = f"\n{self._lists(name)}\n" if self._lists else ""
        return self._read_lists[name]
