"""The kinds of file that can be written, by the ending of their names."""

from __future__ import annotations

from assistant.frozen import NamedTuple


class FileFormat(NamedTuple):
    """A kind of file: what the library calls it, samples a second, and how its tags are written."""

    container: str
    subtype: str
    rate: int
    tags: str


FORMATS = {
    ".mp3": FileFormat("MP3", "MPEG_LAYER_III", 44_100, "id3"),
    ".opus": FileFormat("OGG", "OPUS", 48_000, "opus"),
    ".ogg": FileFormat("OGG", "OPUS", 48_000, "opus"),
    ".flac": FileFormat("FLAC", "PCM_16", 44_100, "flac"),
    ".wav": FileFormat("WAV", "PCM_16", 44_100, "wave"),
}


def format_of(path: str) -> FileFormat | None:
    """Return the format that a file's name asks for, or None for an ending that is not written."""
    return FORMATS.get("." + path.rpartition(".")[2].lower()) if "." in path else None
