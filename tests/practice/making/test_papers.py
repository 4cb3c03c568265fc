"""A paper as text, as pages, and as a QTI 3.0 package."""

from __future__ import annotations

import io
import re
import xml.etree.ElementTree as ET
import zipfile
from html.parser import HTMLParser

import pytest

from assistant.answering.answer import Citation
from assistant.conversation.opening import Knowledge
from assistant.practice.making import Expected, Key, Question, make_questions
from assistant.practice.making.question import CHECK, FIGURE, MEMORY, STEPS
from assistant.practice.papers.page import key_page, questions_page
from assistant.practice.papers.paper import Paper, key_text, lines_to_write, points_told, questions_text
from assistant.practice.papers.qti import package

QTI = "{http://www.imsglobal.org/xsd/imsqtiasi_v3p0}"
PACKAGE = "{http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1}"
HOSTILE = Question(
    "<script>alert(1)</script> & \x00\x1b[31m \"'?", "", FIGURE, "x", "32-<b>", "",
    Key(says="<i>&", points=("<u>", "&")), (Citation("<D>", "1&2", "7", ""),), "", 1,
)  # fmt: skip


@pytest.fixture(scope="module")
def paper(knowledge: Knowledge) -> Paper:
    return Paper("A paper", "The caution line.", "42", make_questions(knowledge, 42, 40))


@pytest.mark.parametrize("width", [40, 60, 80])
def test_text_keeps_to_its_width_and_says_the_caution_once(paper: Paper, width: int) -> None:
    for text in (questions_text(paper, width), key_text(paper, width)):
        assert max(map(len, text.splitlines())) <= width
        assert " ".join(text.split()).count("The caution line.") == 1
    assert "The caution line." not in questions_text(paper, width, closing=False)


def test_a_list_of_points_makes_no_cause_of_what_is_one_with_others(knowledge: Knowledge) -> None:
    (causes,) = make_questions(knowledge, 1, entries=["emergency-mode-causes"], forms=["fact"])
    assert len(causes.key.points) > 1 and points_told(causes) == ()
    (bay,) = make_questions(knowledge, 1, entries=["wheel-bay-inspection"])
    assert points_told(bay) == bay.key.points
    assert any("gauge" in point for point in bay.key.points)


def test_the_questions_do_not_hold_the_key(paper: Paper) -> None:
    asked, key = (" ".join(text.split()) for text in (questions_text(paper, 80), key_text(paper, 80)))
    for number, question in enumerate(paper.questions, 1):
        assert f"{number}. {question.text}" in asked and f"{number}. {question.text}" in key
        assert " ".join(question.key.says.split()) in key
        assert question.key.says not in asked
        assert f"{question.sources[0].document} {question.sources[0].paragraph}" in key


class _Tags(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.seen: list[tuple[str, dict[str, str | None]]] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.seen.append((tag, dict(attrs)))
        if tag not in ("meta", "!doctype"):
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag


@pytest.mark.parametrize("made", [questions_page, key_page])
def test_pages_need_nothing_from_elsewhere(paper: Paper, made: object) -> None:
    for size, css in (("a4", "size: A4"), ("letter", "size: letter")):
        page = made(paper, size)  # type: ignore[operator]
        tags = _Tags()
        tags.feed(page)
        assert tags.open == []
        assert not {"script", "link", "img", "iframe"} & {tag for tag, _ in tags.seen}
        assert not any(name in ("src", "href") for _, attributes in tags.seen for name in attributes)
        assert "url(" not in page and "@import" not in page
        assert page.count("The caution line.") == 1 and css in page
        assert page.count('<li class="q">') == len(paper.questions)


def test_nothing_in_a_text_becomes_a_tag() -> None:
    paper = Paper("<T>", "&", "<1>", (HOSTILE,))
    for page in (questions_page(paper), key_page(paper)):
        assert not re.search(r"<script|<b>|<i>|<u>|<D>|<T>|<1>", page)


def _files(paper: Paper, knowledge: Knowledge) -> dict[str, ET.Element]:
    with zipfile.ZipFile(io.BytesIO(package(paper, knowledge.units))) as archive:
        return {name: ET.fromstring(archive.read(name)) for name in archive.namelist()}


def test_a_package_lists_what_it_holds(paper: Paper, knowledge: Knowledge) -> None:
    files = _files(paper, knowledge)
    resources = files["imsmanifest.xml"].findall(f".//{PACKAGE}resource")
    assert {r.get("href") for r in resources} == set(files) - {"imsmanifest.xml"}
    assert all(r.find(f"{PACKAGE}file").get("href") == r.get("href") for r in resources)  # type: ignore[union-attr]
    names = [r.get("identifier") for r in resources]
    assert len(set(names)) == len(names) == len(paper.questions) + 1
    assert [d.get("identifierref") for d in resources[0].findall(f"{PACKAGE}dependency")] == names[1:]
    references = files["test.xml"].findall(f".//{QTI}qti-assessment-item-ref")
    assert [r.get("href") for r in references] == [f"items/{name}.xml" for name in names[1:]]
    for reference in references:
        assert files[str(reference.get("href"))].get("identifier") == reference.get("identifier")


# The order of an item's parts, and the attributes that the information model of QTI 3.0 requires of each.
ORDER = ("qti-response-declaration", "qti-outcome-declaration", "qti-item-body", "qti-response-processing")
REQUIRED = {
    "qti-assessment-item": {"identifier", "title", "time-dependent"},
    "qti-response-declaration": {"identifier", "cardinality", "base-type"},
    "qti-outcome-declaration": {"identifier", "cardinality", "base-type"},
    "qti-choice-interaction": {"response-identifier"},
    "qti-text-entry-interaction": {"response-identifier"},
    "qti-extended-text-interaction": {"response-identifier"},
    "qti-simple-choice": {"identifier"},
    "qti-rubric-block": {"view"},
    "qti-equal": {"tolerance-mode"},
    "qti-set-outcome-value": {"identifier"},
    "qti-base-value": {"base-type"},
    "qti-variable": {"identifier"},
    "qti-correct": {"identifier"},
}


def test_items_have_the_parts_that_qti_requires(paper: Paper, knowledge: Knowledge) -> None:
    for name, root in _files(paper, knowledge).items():
        if not name.startswith("items/"):
            continue
        parts = [child.tag.removeprefix(QTI) for child in root]
        assert parts == sorted(parts, key=ORDER.index)
        for element in root.iter():
            assert REQUIRED.get(element.tag.removeprefix(QTI), set()) <= set(element.attrib)
        scorers = [b for b in root.iter(f"{QTI}qti-rubric-block") if b.get("view") == "scorer"]
        assert len(scorers) == 1 and "".join(scorers[0].itertext()).strip()
        for paragraph in root.iter(f"{QTI}p"):
            assert not list(paragraph.iter(f"{QTI}qti-extended-text-interaction"))


def test_a_verdict_and_a_number_are_marked_by_the_system(knowledge: Knowledge) -> None:
    check = next(
        q for q in make_questions(knowledge, 1, entries=["vlo-extension"], forms=[CHECK]) if q.key.verdict == "outside"
    )
    figure = make_questions(knowledge, 1, entries=["vlo-extension"], forms=[FIGURE])[0]
    computed = figure._replace(key=figure.key._replace(values=(Expected("length", 812.5, "m", 0.03),)))
    files = _files(Paper("t", "c", "1", (check, figure, computed)), knowledge)
    values = [
        files[f"items/question-00{n}.xml"].find(f".//{QTI}qti-correct-response/{QTI}qti-value") for n in (1, 2, 3)
    ]
    assert [v.text for v in values if v is not None] == ["outside", "230", "812.5"]
    modes = [files[f"items/question-00{n}.xml"].find(f".//{QTI}qti-equal") for n in (2, 3)]
    assert [(m.get("tolerance-mode"), m.get("tolerance")) for m in modes if m is not None] == [
        ("exact", None),
        ("relative", "3 3"),
    ]


def test_the_same_paper_is_the_same_package(paper: Paper, knowledge: Knowledge) -> None:
    assert package(paper, knowledge.units) == package(paper, knowledge.units)


def test_a_package_holds_any_text(knowledge: Knowledge) -> None:
    files = _files(Paper("<T>", "&", "<1>", (HOSTILE,)), knowledge)
    assert "<script>alert(1)</script> &" in "".join(files["items/question-001.xml"].itertext())


def test_the_lines_to_write_on_do_not_count_what_is_to_be_said(everything: list[Question]) -> None:
    lines: dict[bool, dict[int, set[int]]] = {True: {}, False: {}}
    for question in everything:
        if not question.key.values:
            steps = question.form in (STEPS, MEMORY)
            lines[steps].setdefault(len(question.key.points), set()).add(lines_to_write(question))

    assert len(lines[True]) > 3 and len(lines[False]) > 3
    for by_points in lines.values():
        assert len(set.union(*by_points.values())) == 1
    assert max(lines[True]) <= max(lines[True][max(lines[True])])  # each step finds a line
