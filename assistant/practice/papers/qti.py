"""A set of questions as a QTI 3.0 package (1EdTech, Question and Test Interoperability, 2022), for other systems.

A number is marked by the system that takes the package, within the tolerance of the key; so is a verdict on a limit.
Everything else is answered in free text and marked by a person, for whom the key stands in a block that only a
scorer sees.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from html import escape

from assistant.practice.making.question import CHECK, OUTSIDE, WITHIN, Expected, Question
from assistant.practice.papers.paper import Paper, cited, lines_to_write, points_told
from assistant.quantities.units import Units

_ITEM_SPACE = "http://www.imsglobal.org/xsd/imsqtiasi_v3p0"
_ITEM_SCHEMA = "https://purl.imsglobal.org/spec/qti/v3p0/schema/xsd/imsqti_asiv3p0_v1p0.xsd"
_PACKAGE_SPACE = "http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1"
_PACKAGE_SCHEMA = "https://purl.imsglobal.org/spec/qti/v3p0/schema/xsd/imsqtiv3p0_imscpv1p2_v1p0.xsd"
_MATCH = "https://purl.imsglobal.org/spec/qti/v3p0/rptemplates/match_correct.xml"
_XSI = "http://www.w3.org/2001/XMLSchema-instance"
_WHEN = (1980, 1, 1, 0, 0, 0)
"""The earliest date that the archive's format holds: the same paper is the same file, whenever it is written."""
_REFUSED = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
"""What XML 1.0 does not hold."""
_FIRST = '<?xml version="1.0" encoding="UTF-8"?>\n'


def package(paper: Paper, units: Units) -> bytes:
    """Return the package: a manifest, the test and an item for each question, in a ZIP archive."""
    import io
    import zipfile

    held = io.BytesIO()
    with zipfile.ZipFile(held, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, text in files(paper, units):
            entry = zipfile.ZipInfo(name, _WHEN)
            entry.compress_type = zipfile.ZIP_DEFLATED
            archive.writestr(entry, text.encode("utf-8"))
    return held.getvalue()


def files(paper: Paper, units: Units) -> Iterator[tuple[str, str]]:
    """Yield the files of a package by name, the manifest first."""
    yield "imsmanifest.xml", manifest(paper)
    yield "test.xml", test(paper)
    for number, question in enumerate(paper.questions, 1):
        yield f"items/{_name(number)}.xml", item(number, question, units)


def manifest(paper: Paper) -> str:
    """Return the list of what the package holds (IMS Content Packaging 1.2 as QTI 3.0 profiles it)."""
    numbers = range(1, len(paper.questions) + 1)
    needed = "".join(f'<dependency identifierref="{_name(n)}"/>' for n in numbers)
    items = "".join(
        f'<resource identifier="{_name(n)}" type="imsqti_item_xmlv3p0" href="items/{_name(n)}.xml">'
        f'<file href="items/{_name(n)}.xml"/></resource>\n'
        for n in numbers
    )
    return (
        f'{_FIRST}<manifest xmlns="{_PACKAGE_SPACE}" xmlns:xsi="{_XSI}" '
        f'xsi:schemaLocation="{_PACKAGE_SPACE} {_PACKAGE_SCHEMA}" identifier="package">\n'
        "<metadata><schema>QTI Package</schema><schemaversion>3.0.0</schemaversion></metadata>\n<organizations/>\n"
        '<resources>\n<resource identifier="test" type="imsqti_test_xmlv3p0" href="test.xml">'
        f'<file href="test.xml"/>{needed}</resource>\n{items}</resources>\n</manifest>\n'
    )


def test(paper: Paper) -> str:
    """Return the test: one part, one section, the questions in their order, the caution before them."""
    references = "".join(
        f'<qti-assessment-item-ref identifier="{_name(n)}" href="items/{_name(n)}.xml"/>\n'
        for n in range(1, len(paper.questions) + 1)
    )
    return (
        f'{_root("assessment-test")} identifier="test" title="{_text(paper.title)}">\n'
        '<qti-outcome-declaration identifier="SCORE" cardinality="single" base-type="float"/>\n'
        '<qti-test-part identifier="part" navigation-mode="nonlinear" submission-mode="simultaneous">\n'
        f'<qti-assessment-section identifier="section" title="{_text(paper.title)}" visible="true">\n'
        f'<qti-rubric-block use="instructions" view="candidate"><qti-content-body><p>{_text(paper.caution)}</p>'
        f"</qti-content-body></qti-rubric-block>\n{references}</qti-assessment-section>\n</qti-test-part>\n"
        "</qti-assessment-test>\n"
    )


def item(number: int, question: Question, units: Units) -> str:
    """Return one question with how it is marked."""
    if question.form == CHECK:
        parts = _choice(question)
    elif question.key.values and not question.key.points and not question.key.states:
        parts = _number(question.key.values[0], question, units)
    else:
        parts = _free(question)
    declared, body, processing = parts
    title = f"Question {number}" + (f", {question.section}" if question.section else "")
    head = f'{_root("assessment-item")} identifier="{_name(number)}" title="{_text(title)}"'
    return (
        f'{head} adaptive="false" time-dependent="false" xml:lang="en">\n{declared}\n<qti-item-body>\n{body}\n'
        f"{_for_scorer(question)}</qti-item-body>\n{processing}</qti-assessment-item>\n"
    )


def _choice(question: Question) -> tuple[str, str, str]:
    declared = (
        '<qti-response-declaration identifier="RESPONSE" cardinality="single" base-type="identifier">'
        f"<qti-correct-response><qti-value>{question.key.verdict}</qti-value></qti-correct-response>"
        f"</qti-response-declaration>\n{_score()}"
    )
    choices = "".join(
        f'<qti-simple-choice identifier="{verdict}">{verdict.capitalize()} the limit</qti-simple-choice>'
        for verdict in (WITHIN, OUTSIDE)
    )
    body = (
        '<qti-choice-interaction response-identifier="RESPONSE" max-choices="1">'
        f"<qti-prompt>{_text(question.text)}</qti-prompt>{choices}</qti-choice-interaction>"
    )
    return declared, body, f'<qti-response-processing template="{_MATCH}"/>\n'


def _number(value: Expected, question: Question, units: Units) -> tuple[str, str, str]:
    declared = (
        '<qti-response-declaration identifier="RESPONSE" cardinality="single" base-type="float">'
        f"<qti-correct-response><qti-value>{value.value:.10g}</qti-value></qti-correct-response>"
        f"</qti-response-declaration>\n{_score()}"
    )
    unit = _text(units.get(value.unit).show.strip())
    entry = '<qti-text-entry-interaction response-identifier="RESPONSE" expected-length="10"/>'
    body = f"<p>{_text(question.text)}</p>\n<p>{entry} {unit}</p>"
    relative = value.tolerance > 0 and value.value != 0
    percent = f"{100 * value.tolerance:g}"
    mode = f'tolerance-mode="relative" tolerance="{percent} {percent}"' if relative else 'tolerance-mode="exact"'
    processing = (
        f"<qti-response-processing><qti-response-condition><qti-response-if><qti-equal {mode}>"
        '<qti-variable identifier="RESPONSE"/><qti-correct identifier="RESPONSE"/></qti-equal>'
        f"{_set_score(1)}</qti-response-if><qti-response-else>{_set_score(0)}</qti-response-else>"
        "</qti-response-condition></qti-response-processing>\n"
    )
    return declared, body, processing


def _free(question: Question) -> tuple[str, str, str]:
    declared = (
        '<qti-response-declaration identifier="RESPONSE" cardinality="single" base-type="string"/>\n'
        '<qti-outcome-declaration identifier="SCORE" cardinality="single" base-type="float" '
        'normal-minimum="0" normal-maximum="1" external-scored="human"/>'
    )
    body = (
        f'<qti-extended-text-interaction response-identifier="RESPONSE" expected-lines="{lines_to_write(question)}">'
        f"<qti-prompt>{_text(question.text)}</qti-prompt></qti-extended-text-interaction>"
    )
    return declared, body, ""


def _for_scorer(question: Question) -> str:
    points = "".join(f"<li>{_text(point)}</li>" for point in points_told(question))
    listed = f"<ul>{points}</ul>" if points else ""
    return (
        '<qti-rubric-block use="scoring" view="scorer"><qti-content-body>'
        f"<p>{_text(question.key.says)}</p>{listed}<p>{_text(cited(question))}</p>"
        "</qti-content-body></qti-rubric-block>\n"
    )


def _score() -> str:
    return (
        '<qti-outcome-declaration identifier="SCORE" cardinality="single" base-type="float">'
        "<qti-default-value><qti-value>0</qti-value></qti-default-value></qti-outcome-declaration>"
    )


def _set_score(score: int) -> str:
    return (
        f'<qti-set-outcome-value identifier="SCORE"><qti-base-value base-type="float">{score}</qti-base-value>'
        "</qti-set-outcome-value>"
    )


def _root(name: str) -> str:
    return (
        f'{_FIRST}<qti-{name} xmlns="{_ITEM_SPACE}" xmlns:xsi="{_XSI}" '
        f'xsi:schemaLocation="{_ITEM_SPACE} {_ITEM_SCHEMA}"'
    )


def _name(number: int) -> str:
    return f"question-{number:03d}"


def _text(text: str) -> str:
    return escape(_REFUSED.sub("", text))
