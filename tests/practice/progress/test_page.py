"""The page: whole by itself, escaped, readable without sight, without a mouse and on paper."""

from __future__ import annotations

import re
from html.parser import HTMLParser
from xml.etree import ElementTree

import pytest

from assistant.practice.progress.overview import Overview
from assistant.practice.progress.page import MARK, people_page, progress_page
from tests.practice.progress.conftest import DEFERENCE, NAME

VOID = {"meta", "br", "link", "img", "input"}


class Reader(HTMLParser):
    """Every element with its attributes, and whether each was closed in order."""

    def __init__(self) -> None:
        super().__init__()
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.open: list[str] = []
        self.texts: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        self.texts.append(data)


def read(page: str) -> Reader:
    reader = Reader()
    reader.feed(page)
    reader.close()
    assert reader.open == []
    return reader


@pytest.fixture(params=["one", "nothing", "everybody"])
def page(request: pytest.FixtureRequest, seen: Overview, nothing_seen: Overview) -> str:
    made = {
        "one": lambda: progress_page(seen, "Sample <type>", DEFERENCE),
        "nothing": lambda: progress_page(nothing_seen, "Sample <type>", DEFERENCE),
        "everybody": lambda: people_page([seen, nothing_seen], "Sample <type>", DEFERENCE),
    }
    return made[request.param]()


def test_it_is_well_formed_and_needs_nothing_else(page: str) -> None:
    reader = read(page)

    tags = {tag for tag, _ in reader.elements}
    assert not tags & {"script", "link", "img", "iframe", "object", "form"}
    assert not re.search(r"https?:|//[a-z]|@import|javascript", page)
    assert all(not name.startswith("on") for _, attributes in reader.elements for name in attributes)
    assert ("html", {"lang": "en"}) in reader.elements
    assert any(a.get("http-equiv") == "Content-Security-Policy" for _, a in reader.elements)
    assert MARK in page


def test_every_drawing_has_a_title_a_description_and_its_numbers_in_a_table(page: str) -> None:
    drawings = re.findall(r"<svg viewBox.*?</svg>", page, re.DOTALL)
    ids = re.findall(r' id="([^"]+)"', page)

    assert drawings
    assert len(ids) == len(set(ids))
    for drawing in drawings:
        root = ElementTree.fromstring(drawing)
        assert root.get("role") == "img"
        named = {child.get("id"): child.text for child in root if child.tag in ("title", "desc")}
        assert root.get("aria-labelledby", "").split() == list(named)
        assert all(named.values())
        boxes = list(root.iter("rect"))
        wide = float(root.get("viewBox", "").split()[2])
        assert all(float(r.get("x", 0)) + float(r.get("width", 0)) <= wide for r in boxes)
    assert page.count("<caption>") == page.count("<table>") >= 1
    assert re.search(r'<th scope="row">', page)


def test_it_is_found_by_keyboard(page: str) -> None:
    reader = read(page)

    first_link = next(attributes for tag, attributes in reader.elements if tag == "a")
    assert first_link["href"] == "#main"
    assert ("main", {"id": "main"}) in reader.elements
    scrolled = [a for _, a in reader.elements if a.get("class") == "wide"]
    assert all(a["tabindex"] == "0" and a["role"] == "region" and a["aria-label"] for a in scrolled)
    headings = [tag for tag, _ in reader.elements if re.fullmatch("h[1-6]", tag)]
    assert headings[0] == "h1"
    assert set(headings[1:]) == {"h2"}


def test_it_defers_to_the_approved_documents_at_its_top_and_its_end(page: str) -> None:
    text = " ".join(read(page).texts)

    assert text.count(DEFERENCE) == 2
    assert text.count("Formative: not a record of qualification.") == 2


def test_names_and_titles_are_escaped(seen: Overview) -> None:
    page = progress_page(seen, "Sample <type>", DEFERENCE)

    assert "<b>" not in page
    assert NAME in " ".join(read(page).texts)
    assert "Title of <1>" in " ".join(read(page).texts)


def test_what_is_known_is_not_told_by_colour_alone(seen: Overview) -> None:
    page = progress_page(seen, "Sample", DEFERENCE)

    for kind in ("full", "striped", "dotted"):
        assert f'class="{kind}"' in page
    assert 'id="stripes"' in page
    assert "@media print" in page


def test_the_drawing_says_what_it_shows(seen: Overview) -> None:
    page = progress_page(seen, "Sample", DEFERENCE)

    assert "32-40 Wheels and brakes: " in page
    assert re.search(r"<desc[^>]*>12 November: 1 recalled, 0 prompted, 0 missed;", page)
