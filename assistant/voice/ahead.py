"""Understanding begun while somebody may still go on: the silence that ends a question is long enough to hear it in.

A pause shorter than that silence already shows what was said so far. If nothing follows, the work is done when the
question ends; if something does, it is forgotten.
"""

from __future__ import annotations

import threading
from collections.abc import Callable
from typing import Generic, TypeVar

T = TypeVar("T")


class Ahead(Generic[T]):
    """Does some work on sound before it is known to be wanted: one at a time, the latest instead of those before."""

    def __init__(self, work: Callable[[bytes], T]) -> None:
        self._work = work
        self._busy = threading.Lock()
        self._begun: _Begun[T] | None = None

    def begin(self, pcm: bytes) -> None:
        """Begin with what was said so far, and return at once; with nothing, only leave what was begun before."""
        if self._begun is not None:
            self._begun.forgotten = True
        self._begun = _Begun(pcm) if pcm else None
        if self._begun is None:
            return
        threading.Thread(target=self._do, args=(self._begun,), name="hearing", daemon=True).start()

    def done(self, pcm: bytes) -> T:
        """Return what comes of a whole utterance: what was begun with, if that is all that was said in it."""
        begun, self._begun = self._begun, None
        if begun is not None and pcm.startswith(begun.pcm):
            begun.over.wait()
            if begun.found is not None:
                return begun.found[0]
        with self._busy:
            return self._work(pcm)

    def _do(self, begun: _Begun[T]) -> None:
        try:
            with self._busy:
                if not begun.forgotten:
                    begun.found = (self._work(begun.pcm),)
        except Exception:
            return  # it is done again where it is waited for, and fails there
        finally:
            begun.over.set()


class _Begun(Generic[T]):
    """One piece of work: what it is done on, and what was found, where it came to an end."""

    def __init__(self, pcm: bytes) -> None:
        self.pcm = pcm
        self.forgotten = False
        self.found: tuple[T] | None = None
        self.over = threading.Event()
