"""A paper of questions, and its key, as HTML files that need nothing else and print on A4 or Letter.

No script, no font, no picture from elsewhere; every text that enters is escaped. A question is never cut by a page's
end, and the key is a file of its own, so that it is not handed out by mistake.
"""

from __future__ import annotations

from html import escape

from assistant.practice.making.question import Question
from assistant.practice.papers.paper import FORMATIVE, Paper, cited, lines_to_write, points_told

SIZES = {"a4": "A4", "letter": "letter"}
"""Sizes of paper by the names that an option takes, as CSS calls them."""
_STYLE = """
@page {{ size: {size} portrait; margin: 18mm 16mm 20mm; }}
html {{ color-scheme: light; }}
body {{ font: 11pt/1.4 "Liberation Sans", Arial, Helvetica, sans-serif; color: #111; background: #fff;
  max-width: 178mm; margin: 0 auto; padding: 1rem; }}
h1 {{ font-size: 16pt; line-height: 1.2; margin: 0 0 4mm; }}
.who {{ display: flex; flex-wrap: wrap; gap: 4mm 10mm; margin: 0 0 7mm; }}
.who span {{ flex: 1 1 60mm; border-bottom: .3mm solid #333; padding-bottom: 1mm; }}
ol {{ list-style: none; margin: 0; padding: 0; }}
li.q {{ break-inside: avoid; display: grid; grid-template-columns: 9mm 1fr; margin: 0 0 5mm; }}
.n {{ font-weight: 700; }}
.q p {{ margin: 0; }}
.s {{ color: #444; font-size: 9pt; white-space: nowrap; }}
.line {{ border-bottom: .25mm solid #888; height: 8.5mm; }}
.asked {{ font-weight: 700; }}
.q ul {{ margin: 1mm 0 0; padding-left: 5mm; }}
.src {{ color: #444; font-size: 9pt; margin-top: 1mm !important; }}
footer {{ break-inside: avoid; border-top: .3mm solid #333; margin-top: 6mm; padding-top: 2mm; font-size: 9pt;
  color: #333; }}
@media print {{ body {{ max-width: none; margin: 0; padding: 0; }} }}
"""


def questions_page(paper: Paper, size: str = "a4") -> str:
    """Return the page for those who answer."""
    items = "\n".join(_asked(number, question) for number, question in enumerate(paper.questions, 1))
    who = '<p class="who"><span>Name</span><span>Date</span></p>\n'
    return _page(paper.title, f"{who}<ol>\n{items}\n</ol>", paper, size)


def key_page(paper: Paper, size: str = "a4") -> str:
    """Return the page for whoever marks."""
    items = "\n".join(_answered(number, question) for number, question in enumerate(paper.questions, 1))
    return _page(f"Key to: {paper.title}", f"<ol>\n{items}\n</ol>", paper, size)


def _asked(number: int, question: Question) -> str:
    section = f' <span class="s">{escape(question.section)}</span>' if question.section else ""
    lines = '<div class="line"></div>' * lines_to_write(question)
    return (
        f'<li class="q"><span class="n">{number}</span><div><p>{escape(question.text)}{section}</p>{lines}</div></li>'
    )


def _answered(number: int, question: Question) -> str:
    points = "".join(f"<li>{escape(point)}</li>" for point in points_told(question))
    return (
        f'<li class="q"><span class="n">{number}</span><div><p class="asked">{escape(question.text)}</p>'
        f"<p>{escape(question.key.says)}</p>{f'<ul>{points}</ul>' if points else ''}"
        f'<p class="src">{escape(cited(question))}</p></div></li>'
    )


def _page(title: str, body: str, paper: Paper, size: str) -> str:
    style = _STYLE.format(size=SIZES[size])
    foot = f"{escape(FORMATIVE)} Paper {escape(paper.number)}. {escape(paper.caution)}"
    return (
        '<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{escape(title)}</title>\n<style>{style}</style>\n</head>\n<body>\n<main>\n<h1>{escape(title)}</h1>\n"
        f"{body}\n</main>\n<footer>{foot}</footer>\n</body>\n</html>\n"
    )
