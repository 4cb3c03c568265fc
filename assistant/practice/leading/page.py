"""The report of a class as one HTML file that needs nothing else, and prints on A4 or Letter.

Without names it may be handed round; the instructor's own copy adds the persons and says on every page that it does.
"""

from __future__ import annotations

from collections.abc import Iterable
from html import escape

from assistant.practice.leading.bars import KINDS, confusion_bars, sections_bars
from assistant.practice.leading.report import FORMATIVE, ClassReport, Confusion, Missed, Person, Section
from assistant.practice.leading.shown import count, percent
from assistant.practice.page_parts import legend, whole_page

MARK = '<meta name="generator" content="downlock class">'
"""By which a page made here is known again, so that nothing else is overwritten."""
OWN_COPY = "The instructor's own copy: it names persons. Keep it to yourself, and do not hand it round."
_STYLE = """
@page { margin: 16mm 15mm 18mm; }
:root { color-scheme: light dark; --ink: #1b1e22; --paper: #fff; --soft: #555c64; --line: #c4cad1; --fill: #2a5d52; }
@media (prefers-color-scheme: dark) {
  :root { --ink: #e7e9ec; --paper: #17191c; --soft: #a9b0b8; --line: #474e56; --fill: #7cc4b2; }
}
body { font: 1rem/1.5 system-ui, sans-serif; color: var(--ink); background: var(--paper); max-width: 46rem;
  margin: 0 auto; padding: 1rem; overflow-wrap: break-word; }
h1 { font-size: 1.5rem; line-height: 1.2; } h2 { font-size: 1.15rem; margin: 2rem 0 .5rem; }
.caution, .own { border: 2px solid var(--ink); padding: .4rem .8rem; }
.own { border-style: dashed; font-weight: 700; }
.soft { color: var(--soft); font-weight: 400; }
.skip { position: absolute; left: -999rem; } .skip:focus { position: static; }
:focus-visible { outline: 3px solid var(--fill); outline-offset: 2px; }
.wide { overflow-x: auto; } table { border-collapse: collapse; width: 100%; }
caption { text-align: left; color: var(--soft); }
th, td { padding: .25rem .5rem; border-bottom: 1px solid var(--line); vertical-align: top; }
th { text-align: left; } td { text-align: right; font-variant-numeric: tabular-nums; }
thead th + th { text-align: right; } tfoot th, tfoot td { font-weight: 700; } td.words, th.words { text-align: left; }
.chart { width: 100%; height: auto; } .chart text { font-size: 13px; fill: var(--ink); }
.patterns { position: absolute; }
.full { fill: var(--fill); stroke: var(--fill); } .striped { fill: url(#stripes); stroke: var(--fill); }
.dotted { fill: url(#dots); stroke: var(--soft); } .open { fill: none; stroke: var(--soft); }
.ground { fill: var(--paper); } .stripe { fill: var(--fill); } .dot { fill: var(--soft); }
.legend { list-style: none; padding: 0; display: flex; flex-wrap: wrap; gap: 1rem; }
li { margin: .3rem 0; } dt { font-weight: 700; margin-top: .8rem; } dd { margin: .1rem 0 .1rem 1rem; }
footer { border-top: 1px solid var(--line); margin-top: 2rem; font-size: .9rem; }
@media print {
  :root { --ink: #000; --paper: #fff; --soft: #333; --line: #999; --fill: #333; }
  body { max-width: none; padding: 0; font-size: 10pt; } .skip { display: none; }
  tr, li, dl > div, .chart, .caution { break-inside: avoid; } h2 { break-after: avoid; }
  .wide { overflow: visible; } * { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
}
"""


def class_page(report: ClassReport, type_name: str, deference: str, named: bool = False) -> str:
    """Return the page of a class; with the persons in it only where `named`."""
    title = f"Class: {report.title}" if report.title else "Report of a class"
    when = f"{report.began.astimezone():%Y-%m-%d %H:%M}"
    size = f"{count(report.seats, 'person', 'people')}, {report.size}"
    parts = [
        f"<h1>{escape(title)}</h1>",
        f"<p>{escape(type_name)}, {when}. {size}.</p>",
        f'<p class="own">{escape(OWN_COPY)}</p>' if named else "",
        f'<p class="caution"><strong>{escape(FORMATIVE)}</strong> {escape(deference)}</p>',
        _sections(report),
        _confusions(report.confusions),
        _missed(report.missed),
        _list("To teach again", report.remedial, "Nothing stands out."),
        _teams(report),
        _persons(report) if named else "",
        f"<footer><p><strong>{escape(FORMATIVE)}</strong> {escape(deference)}</p></footer>",
    ]
    return whole_page(title, MARK, _STYLE, "\n".join(part for part in parts if part))


def _sections(report: ClassReport) -> str:
    head = ("Section", "Turns", "Right", "Partly", "Wrong", "Missed", "With a hint", "Points")
    rows = "".join(_row(_section_cells(each)) for each in report.sections)
    foot = f"<tfoot>{_row(_section_cells(report.total))}</tfoot>"
    drawn = sections_bars(report.sections, 1) + legend(KINDS) if report.sections else ""
    note = '<p class="soft">Points: the share of what the answers had to hold. The figure beside a bar is the same.</p>'
    return (
        f'<section aria-labelledby="sections"><h2 id="sections">By section</h2>{drawn}{note}'
        f"{_table('Turns by section', head, rows, foot)}</section>"
    )


def _section_cells(section: Section) -> tuple[str, ...]:
    name = section.full_name
    return (name, *map(str, (section.asked, *section[2:7])), percent(section.share))


def _confusions(confusions: Iterable[Confusion]) -> str:
    listed = tuple(confusions)
    if not listed:
        return _list("Taken for each other", (), "Nothing was seen to be taken for something else.")
    told = "".join(
        f"<div><dt>{escape(each.line)}</dt><dd>To tell the two apart, ask: {escape(each.question)}</dd>"
        f"<dd>Key: {escape(each.key)}</dd></div>"
        for each in listed
    )
    return (
        '<section aria-labelledby="confused"><h2 id="confused">Taken for each other</h2>'
        f"{confusion_bars(listed, 2)}<dl>{told}</dl></section>"
    )


def _missed(missed: Iterable[Missed]) -> str:
    rows = "".join(
        f'<tr><th scope="row">{escape(each.question)}<br><span class="soft">{escape(each.expected)}</span></th>'
        f"<td>{each.of}</td>"
        f'<td class="words">{escape(_unbroken(each.paragraphs))}</td>'
        f'<td class="words">{escape("; ".join(each.answers))}</td></tr>'
        for each in missed
    )
    if not rows:
        return _list("Missed most", (), "No question was missed.")
    head = ("Question and key", "Not known", "Paragraphs", "Said instead")
    return (
        '<section aria-labelledby="missed"><h2 id="missed">Missed most</h2>'
        f"{_table('Questions that were not known', head, rows, words=2)}</section>"
    )


def _unbroken(paragraphs: str) -> str:
    """Return paragraphs that stand in a narrow column, none of them parted from its document."""
    return ", ".join(each.replace(" ", "\u00a0") for each in paragraphs.split(", "))


def _teams(report: ClassReport) -> str:
    rows = "".join(_row((each.name, str(each.turns), percent(each.share))) for each in report.teams)
    if not rows:
        return ""
    return f"<section><h2>Teams</h2>{_table('Points by team', ('Team', 'Turns', 'Points'), rows)}</section>"


def _persons(report: ClassReport) -> str:
    head = ("Name", "Turns", "Right", "Partly", "Wrong", "Missed", "Passed on", "With a hint", "Points")
    rows = "".join(_row(_person_cells(each)) for each in report.persons)
    learn = "".join(
        f"<div><dt>{escape(each.name)}</dt>{''.join(f'<dd>{escape(line)}</dd>' for line in each.to_learn)}</div>"
        for each in report.persons
        if each.to_learn
    )
    return (
        f'<section aria-labelledby="persons"><h2 id="persons">Persons</h2><p class="own">{escape(OWN_COPY)}</p>'
        f"{_table('Turns by person', head, rows)}<h2>To learn, by person</h2><dl>{learn}</dl></section>"
    )


def _person_cells(person: Person) -> tuple[str, ...]:
    told = f" ({person.team})" if person.team else ""
    name = person.name if person.name.endswith(told) else f"{person.name}{told}"
    counts = (person.turns, person.right, person.partly, person.wrong, person.missed, person.passed, person.hinted)
    return (name, *map(str, counts), percent(person.share) if person.turns else "")


def _table(caption: str, head: Iterable[str], rows: str, foot: str = "", words: int = 99) -> str:
    cells = "".join(
        f'<th scope="col"{" class=" + chr(34) + "words" + chr(34) if place >= words else ""}>{escape(name)}</th>'
        for place, name in enumerate(head)
    )
    return (
        f'<div class="wide" tabindex="0" role="region" aria-label="{escape(caption)}"><table>'
        f"<caption>{escape(caption)}</caption><thead><tr>{cells}</tr></thead><tbody>{rows}</tbody>{foot}</table></div>"
    )


def _row(cells: tuple[str, ...]) -> str:
    rest = "".join(f"<td>{escape(each)}</td>" for each in cells[1:])
    return f'<tr><th scope="row">{escape(cells[0])}</th>{rest}</tr>'


def _list(heading: str, lines: Iterable[str], otherwise: str) -> str:
    listed = "".join(f"<li>{escape(line)}</li>" for line in lines)
    content = f"<ul>{listed}</ul>" if listed else f"<p>{escape(otherwise)}</p>"
    return f"<section><h2>{escape(heading)}</h2>{content}</section>"
