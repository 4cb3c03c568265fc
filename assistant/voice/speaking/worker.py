"""The other end of `child`: what a worker process does with its pipes.

Libraries print where answers go, so the pipe is put aside first and everything else goes nowhere. When whoever
started it is gone, the worker ends, even in the middle of something that hangs.
"""

from __future__ import annotations

import json
import os
import queue
import sys
import threading
from collections.abc import Iterator
from typing import Any, BinaryIO

Message = dict[str, Any]


class Pipes:
    """Messages in and answers out."""

    def __init__(self) -> None:
        self._out: BinaryIO = os.fdopen(os.dup(1), "wb")
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, 1)
        os.dup2(nowhere, 2)
        self._lock = threading.Lock()
        self._incoming: queue.SimpleQueue[Message] = queue.SimpleQueue()
        threading.Thread(target=self._read, daemon=True).start()

    def messages(self) -> Iterator[Message]:
        """Yield the messages as they come; the process ends after the last."""
        while True:
            yield self._incoming.get()

    def next_message(self, timeout_s: float) -> Message | None:
        """Return the next message, or None when none comes in time."""
        try:
            return self._incoming.get(timeout=timeout_s)
        except queue.Empty:
            return None

    def answer(self, **message: Any) -> None:
        """Send an answer."""
        with self._lock:
            try:
                self._out.write(json.dumps(message).encode("ascii") + b"\n")
                self._out.flush()
            except OSError:
                os._exit(0)

    def _read(self) -> None:
        for line in sys.stdin.buffer:
            try:
                message = json.loads(line)
            except (ValueError, RecursionError):
                continue
            if isinstance(message, dict):
                self._incoming.put(message)
        os._exit(0)
