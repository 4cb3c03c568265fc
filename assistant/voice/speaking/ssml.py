"""Phrases as SSML 1.1 (W3C Speech Synthesis Markup Language), for any synthesiser that reads it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping

from assistant.voice.speaking.phrases import Phrase
from assistant.voice.speaking.settings import VoiceSettings

NAMESPACE = "http://www.w3.org/2001/10/synthesis"
_LANGUAGE = "en-GB"
_USUAL_RATE = VoiceSettings().rate


def ssml(phrases: Iterable[Phrase], settings: VoiceSettings, phonemes: Mapping[str, str]) -> str:
    """Return an SSML document: a sentence for each phrase, a break for each pause.

    phonemes: words with their pronunciation in the International Phonetic Alphabet. The rate is a share of the usual
    one, since the markup knows no words a minute.
    """
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<speak version="1.1" xmlns="{NAMESPACE}" xml:lang="{_LANGUAGE}">',
    ]
    if settings.voice:
        lines.append(f'<voice name="{_escaped(settings.voice)}">')
    lines.append(f'<prosody rate="{round(100 * settings.rate / _USUAL_RATE)}%">')
    for phrase in phrases:
        lines.append(f"<s>{_with_phonemes(phrase.text, phonemes)}</s>")
        if phrase.pause_s > 0:
            lines.append(f'<break time="{round(1000 * phrase.pause_s)}ms"/>')
    lines += ["</prosody>", *(["</voice>"] if settings.voice else []), "</speak>"]
    return "\n".join(lines)


def _with_phonemes(text: str, phonemes: Mapping[str, str]) -> str:
    words = {word.lower(): sounds for word, sounds in phonemes.items()}

    def said(match: re.Match[str]) -> str:
        sounds = words.get(match[0].lower())
        word = _escaped(match[0])
        return f'<phoneme alphabet="ipa" ph="{_escaped(sounds)}">{word}</phoneme>' if sounds else word

    return re.sub(r"[\w’'-]+|[^\w’'-]+", said, text)


def _escaped(text: str) -> str:
    """The text without what markup would take for itself, and without signs that XML cannot hold."""
    text = "".join(sign for sign in text if sign >= " " or sign in "\t\n")
    for sign, entity in (("&", "&amp;"), ("<", "&lt;"), (">", "&gt;"), ('"', "&quot;")):
        text = text.replace(sign, entity)
    return text
