"""Chapters and tags of a file, and reading back from them what it was made from.

MP3 and WAV carry ID3 with chapter frames (ID3v2 Chapter Frame Addendum), FLAC and Opus Vorbis comments with the
CHAPTER fields that players read. What a file was made from is one field of its own, in JSON.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import Any, BinaryIO

from assistant.frozen import NamedTuple
from assistant.voice.recording.formats import format_of

MADE_FROM = "DOWNLOCK"
_TYPE = "type"


class Chapter(NamedTuple):
    """Where a chapter begins and ends, in s, and what it is called."""

    start_s: float
    end_s: float
    title: str


class Origin(NamedTuple):
    """What a file was made from: the type's id, revisions by document, records, and what chose them."""

    type_id: str
    revisions: dict[str, str]
    entries: tuple[str, ...] = ()
    topics: tuple[str, ...] = ()
    seed: str = ""


class Labels(NamedTuple):
    """What a player shows of a file."""

    title: str
    album: str
    comment: str


def write_tags(path: str, labels: Labels, origin: Origin, chapters: Sequence[Chapter], name: str = "") -> None:
    """Write the tags of a file that has none yet. name: what the file will be called, if its path ends otherwise."""
    chosen = format_of(name or path)
    assert chosen is not None
    if chosen.tags in ("id3", "wave"):
        _write_id3(path, chosen.tags, labels, origin, chapters)
    else:
        _write_comments(path, chosen.tags, labels, origin, chapters)


def read_origin(path: str) -> Origin | None:
    """Return what a file was made from, or None when it does not tell."""
    text = _made_from(path)
    try:
        found = json.loads(text) if text else None
    except (ValueError, RecursionError):
        return None
    if not isinstance(found, dict) or not isinstance(found.get("revisions"), dict):
        return None
    revisions = {str(document): str(revision) for document, revision in found["revisions"].items()}
    listed = (found.get(name) for name in ("entries", "topics"))
    entries, topics = (tuple(map(str, each)) if isinstance(each, list) else () for each in listed)
    return Origin(str(found.get(_TYPE, "")), revisions, entries, topics, str(found.get("seed", "")))


def _made_from(path: str) -> str:
    import mutagen

    try:
        file = mutagen.File(path)
    except (mutagen.MutagenError, OSError, ValueError):
        return ""
    tags: Any = file.tags if file is not None else None
    if tags is None:
        return ""
    if hasattr(tags, "getall"):
        frames = tags.getall(f"TXXX:{MADE_FROM}")
        return str(frames[0].text[0]) if frames and frames[0].text else ""
    values = tags.get(MADE_FROM.lower(), [])
    return str(values[0]) if values else ""


def _origin_text(origin: Origin) -> str:
    fields = origin._asdict()
    fields[_TYPE] = fields.pop("type_id")
    return json.dumps(fields, ensure_ascii=False, sort_keys=True)


def _write_id3(path: str, kind: str, labels: Labels, origin: Origin, chapters: Sequence[Chapter]) -> None:
    from mutagen import id3
    from mutagen.wave import WAVE

    frames: list[Any] = [
        id3.TIT2(encoding=1, text=[labels.title]),
        id3.TALB(encoding=1, text=[labels.album]),
        id3.TPE1(encoding=1, text=["Downlock"]),
        id3.TCON(encoding=1, text=["Speech"]),
        id3.COMM(encoding=1, lang="eng", desc="", text=[labels.comment]),
        id3.TXXX(encoding=1, desc=MADE_FROM, text=[_origin_text(origin)]),
    ]
    names = [f"chapter{number}" for number in range(1, len(chapters) + 1)]
    if names:  # both flags: it is the top list, and its entries are in order
        frames.append(id3.CTOC(element_id="contents", flags=3, child_element_ids=names, sub_frames=[]))
    for name, chapter in zip(names, chapters, strict=True):
        title = id3.TIT2(encoding=1, text=[chapter.title])
        start, end = round(1000 * chapter.start_s), round(1000 * chapter.end_s)
        times = {"start_time": start, "end_time": end, "start_offset": _NONE, "end_offset": _NONE}
        frames.append(id3.CHAP(element_id=name, **times, sub_frames=[title]))
    if kind == "wave":
        file: Any = WAVE(path)
        file.add_tags()
        for frame in frames:
            file.tags.add(frame)
        file.save(v2_version=3)
        _put_in_order(path, names, _in_wave(path))
        return
    tags = id3.ID3()
    for frame in frames:
        tags.add(frame)
    tags.save(path, v2_version=3)
    _put_in_order(path, names)


def _in_wave(path: str) -> int:
    """Return where the tag of a WAV file begins: behind the eight bytes that head the chunk which holds it."""
    with open(path, "rb") as file:
        at = 12
        while len(head := _read_at(file, at, 8)) == 8 and head[:4].lower() != b"id3 ":
            size = int.from_bytes(head[4:], "little")
            at += 8 + size + size % 2
    return at + 8


def _read_at(file: BinaryIO, at: int, count: int) -> bytes:
    file.seek(at)
    return file.read(count)


def _put_in_order(path: str, names: Sequence[str], begin: int = 0) -> None:
    """Put the chapter frames of a tag in the order of their times: the library sorts frames by their size.

    Tag and frame headers are ten bytes each (ID3v2.3); the tag's own size holds seven bits a byte. begin: where in the
    file the tag stands.
    """
    with open(path, "r+b") as file:
        head = _read_at(file, begin, 10)
        if head[:3] != b"ID3":
            return
        body = file.read(sum(byte << shift for byte, shift in zip(head[6:], (21, 14, 7, 0), strict=True)))
        frames, chapters, at = [], {}, 0
        while body[at : at + 4].strip(b"\0"):
            end = at + 10 + int.from_bytes(body[at + 4 : at + 8], "big")
            if body[at : at + 4] == b"CHAP":
                chapters[body[at + 10 : end].partition(b"\0")[0].decode("latin-1")] = body[at:end]
            else:
                frames.append(body[at:end])
            at = end
        file.seek(begin + 10)
        file.write(b"".join([*frames, *(chapters[name] for name in names)]))


_NONE = 0xFFFFFFFF
"""A chapter's place in bytes, where the time alone counts."""


def _write_comments(path: str, kind: str, labels: Labels, origin: Origin, chapters: Sequence[Chapter]) -> None:
    from mutagen.flac import FLAC
    from mutagen.oggopus import OggOpus

    file = FLAC(path) if kind == "flac" else OggOpus(path)
    file["TITLE"], file["ALBUM"], file["ARTIST"] = labels.title, labels.album, "Downlock"
    file["GENRE"], file["COMMENT"], file[MADE_FROM] = "Speech", labels.comment, _origin_text(origin)
    for number, chapter in enumerate(chapters, 1):
        file[f"CHAPTER{number:03}"] = _clock(chapter.start_s)
        file[f"CHAPTER{number:03}NAME"] = chapter.title
    file.save()


def _clock(seconds: float) -> str:
    thousandths = round(1000 * seconds)
    minutes, rest = divmod(thousandths, 60_000)
    return f"{minutes // 60:02}:{minutes % 60:02}:{rest // 1000:02}.{rest % 1000:03}"
