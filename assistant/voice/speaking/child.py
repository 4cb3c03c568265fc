"""A process of ours that is spoken to in lines: engines and sound cards hang, end or print as they like.

Each message is a JSON object on a line, each way. A process that does not answer in time is ended, and the next
message starts another. It is never waited for by whoever types: only the thread that speaks does that.
"""

from __future__ import annotations

import json
import os
import queue
import subprocess
import sys
import threading
from collections.abc import Callable
from typing import Any

from assistant.voice.speaking.problem import VoiceProblem

Message = dict[str, Any]
_ROOT = os.path.dirname(os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__)))))
_START = "import sys; sys.path.insert(0, {root!r}); from {module} import main; main({arguments!r})"

_MOMENT_S = 0.3
"""Seconds after which a message that cannot be written means that nobody reads it."""


class Child:
    """A worker module's `main`, run in a process of its own, started when the first message is sent."""

    def __init__(
        self,
        module: str,
        *arguments: str,
        called: str = "the voice",
        on_message: Callable[[Message], None] | None = None,
    ) -> None:
        self._called = called
        program = _START.format(root=_ROOT, module=module, arguments=arguments)
        self._command = [sys.executable, "-P", "-c", program]
        self._on_message = on_message
        self._process: subprocess.Popen[bytes] | None = None
        self._answers: queue.SimpleQueue[Message | None] = queue.SimpleQueue()
        self._asking = threading.Lock()
        """Held while an answer is waited for."""
        self._writing = threading.Lock()
        """Held while a message is written, which takes a moment alone."""

    @property
    def running(self) -> bool:
        """Whether the process is there."""
        return self._process is not None and self._process.poll() is None

    def ask(self, message: Message, timeout_s: float) -> Message:
        """Send a message and return its answer. Raises VoiceProblem when none comes, or a problem does."""
        with self._asking:
            answers = self._sent(message)
            try:
                answer = answers.get(timeout=timeout_s)
            except queue.Empty:
                self.end()
                raise VoiceProblem(f"{self._called} did not answer within {timeout_s:g} s and was ended") from None
        if answer is None:
            self.end()
            raise VoiceProblem(f"{self._called} ended by itself")
        if "problem" in answer:
            raise VoiceProblem(str(answer["problem"]))
        return answer

    def send(self, message: Message) -> None:
        """Send a message that has no answer of its own, never waiting long. Raises VoiceProblem."""
        self._sent(message)

    def end(self) -> None:
        """End the process, whatever it is doing."""
        process, self._process = self._process, None
        if process is None:
            return
        process.kill()
        process.wait()
        for pipe in (process.stdin, process.stdout):
            if pipe is not None:
                try:
                    pipe.close()
                except OSError:
                    continue

    def _sent(self, message: Message) -> queue.SimpleQueue[Message | None]:
        if not self._writing.acquire(timeout=_MOMENT_S):
            self.end()  # it does not even take what is written to it
            raise VoiceProblem(f"{self._called} hung and was ended")
        try:
            if not self.running:
                self.end()
                self._start()
            process = self._process
            if process is None or process.stdin is None:
                raise BrokenPipeError
            process.stdin.write(json.dumps(message).encode("ascii") + b"\n")
            process.stdin.flush()
        except (OSError, ValueError):
            self.end()
            raise VoiceProblem(f"{self._called} ended by itself") from None
        finally:
            self._writing.release()
        return self._answers

    def _start(self) -> None:
        try:
            self._process = subprocess.Popen(
                self._command,
                stdin=subprocess.PIPE,
                stdout=subprocess.PIPE,
                stderr=subprocess.DEVNULL,
                start_new_session=True,  # Ctrl-C at the prompt is not for it
            )
        except OSError as error:
            raise VoiceProblem(f"{self._called} cannot be started: {error.strerror or error}") from None
        self._answers = queue.SimpleQueue()
        reader = threading.Thread(target=self._read, args=(self._process, self._answers), daemon=True)
        reader.start()

    def _read(self, process: subprocess.Popen[bytes], answers: queue.SimpleQueue[Message | None]) -> None:
        assert process.stdout is not None
        try:
            for line in process.stdout:
                message = _read_message(line)
                if message is None:
                    continue
                if self._on_message is not None and "event" in message:
                    self._on_message(message)
                else:
                    answers.put(message)
        except (OSError, ValueError):
            pass
        answers.put(None)
        if self._on_message is not None:
            self._on_message({"event": "ended"})


def _read_message(line: bytes) -> Message | None:
    try:
        message = json.loads(line)
    except (ValueError, RecursionError):
        return None
    return message if isinstance(message, dict) else None
