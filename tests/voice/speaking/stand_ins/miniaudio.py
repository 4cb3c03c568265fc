"""A sound card for the process that plays: it takes the sound as fast as it comes, or has none."""

import os
import threading

KEPT = os.environ.get("STAND_IN_CARD", "")


class MiniaudioError(Exception):
    pass


class SampleFormat:
    SIGNED16 = 2


class PlaybackDevice:
    backend = os.environ.get("STAND_IN_BACKEND", "card")

    def __init__(self, **_):
        if not KEPT:
            raise MiniaudioError("failed to init device", -401)
        self._over = threading.Event()

    def start(self, stream):
        threading.Thread(target=self._run, args=(stream,), daemon=True).start()

    def _run(self, stream):
        with open(KEPT, "ab", buffering=0) as file:
            while not self._over.wait(0.002):
                file.write(stream.send(441))

    def close(self):
        self._over.set()
