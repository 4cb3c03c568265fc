"""Progress as one HTML file that needs nothing else: no script, no font, no picture from elsewhere.

It prints on paper, is read by keyboard and by screen reader, and carries the deference to the approved documents at
its top and its end. Every text that enters it is escaped.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from html import escape

from assistant.practice.page_parts import legend, whole_page
from assistant.practice.progress import charts
from assistant.practice.progress.overview import Overview, Section
from assistant.practice.progress.sayings import (
    FORMATIVE,
    confusion_line,
    due_line,
    left_out_lines,
    missed_line,
    percent,
    ready_heading,
    records_line,
)

MARK = '<meta name="generator" content="downlock progress">'
"""By which a page made here is known again, so that nothing else is overwritten."""
_LEVELS = (("full", "known"), ("striped", "shaky"), ("dotted", "unknown"))
_STYLE = """
:root { color-scheme: light dark; --ink: #1c1f23; --paper: #ffffff; --soft: #5a6068; --line: #c9ced4; --fill: #1d5b8f; }
@media (prefers-color-scheme: dark) {
  :root { --ink: #e8eaed; --paper: #16181b; --soft: #aab1b9; --line: #444b53; --fill: #74b3e6; }
}
body { font: 1rem/1.5 system-ui, sans-serif; color: var(--ink); background: var(--paper); max-width: 46rem;
  margin: 0 auto; padding: 1rem; }
h1 { font-size: 1.5rem; line-height: 1.2; } h2 { font-size: 1.15rem; margin-top: 2rem; }
.deference { border-left: 4px solid var(--fill); padding: .3rem .8rem; }
.soft { color: var(--soft); }
.skip { position: absolute; left: -999rem; } .skip:focus { position: static; }
:focus-visible { outline: 3px solid var(--fill); outline-offset: 2px; }
.wide { overflow-x: auto; } table { border-collapse: collapse; width: 100%; }
caption { text-align: left; color: var(--soft); }
th, td { padding: .25rem .5rem; border-bottom: 1px solid var(--line); }
th { text-align: left; } thead th + th { text-align: right; white-space: nowrap; }
td { text-align: right; font-variant-numeric: tabular-nums; }
tfoot th, tfoot td { font-weight: 700; }
.chart { width: 100%; height: auto; } .chart text { font-size: 13px; fill: var(--ink); }
.patterns { position: absolute; }
.full { fill: var(--fill); } .striped { fill: url(#stripes); stroke: var(--fill); }
.dotted { fill: url(#dots); stroke: var(--soft); stroke-width: .7; }
.ground { fill: var(--paper); } .stripe { fill: var(--fill); } .dot { fill: var(--soft); }
.axis { stroke: var(--ink); } .grid { stroke: var(--line); stroke-dasharray: 2 3; }
.legend { list-style: none; padding: 0; display: flex; flex-wrap: wrap; gap: 1rem; }
@media print {
  :root { --ink: #000; --paper: #fff; --soft: #333; --line: #999; --fill: #333; }
  body { max-width: none; padding: 0; font-size: 10pt; } .skip { display: none; }
  section, table, .chart { break-inside: avoid; } * { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
}
"""


def progress_page(overview: Overview, type_name: str, deference: str) -> str:
    """Return the page of one learner."""
    title = f"Progress of {overview.learner}"
    parts = [
        f"<h1>{escape(title)}</h1>",
        f"<p>{escape(type_name)}, {overview.now:%Y-%m-%d %H:%M}. {escape(_answers(overview))}</p>",
        _deference(deference),
        _standing(overview),
        _sections(overview),
        _recall(overview),
        _days(overview),
        _list("Confused", map(confusion_line, overview.confusions), "Nothing was taken for something else so far."),
        _list("Missed most", map(missed_line, overview.missed), "Nothing is missed again and again."),
        _list("Changed by a revision", (f"{each.title}. {each.line}" for each in overview.changed), ""),
        _list("Not asked", left_out_lines(overview.left_out), ""),
        _deference(deference, footer=True),
    ]
    return whole_page(title, MARK, _STYLE, "\n".join(part for part in parts if part))


def people_page(overviews: Sequence[Overview], type_name: str, deference: str) -> str:
    """Return the page of everybody in the record, each with a bar."""
    named = [each.total._replace(section="", name=each.learner) for each in overviews]
    title = "Progress of everybody in the record"
    parts = [
        f"<h1>{escape(title)}</h1>",
        f"<p>{escape(type_name)}, {overviews[0].now:%Y-%m-%d %H:%M}. It names persons: keep it to yourself.</p>",
        _deference(deference),
        f'<section><h2 id="people">Records by person</h2>{charts.levels_chart(named, 1)}{legend(_LEVELS)}',
        _table("Records by person", "Person", named, None, ""),
        "</section>",
        _deference(deference, footer=True),
    ]
    return whole_page(title, MARK, _STYLE, "\n".join(parts))


def _deference(deference: str, footer: bool = False) -> str:
    text = f"{escape(deference)} <strong>{escape(FORMATIVE)}</strong>"
    return f"<footer><p>{text}</p></footer>" if footer else f'<p class="deference">{text}</p>'


def _answers(overview: Overview) -> str:
    overruled = f", {overview.overruled} with the mark overruled" if overview.overruled else ""
    return f"{overview.answers} {'answer' if overview.answers == 1 else 'answers'} in the record{overruled}."


def _standing(overview: Overview) -> str:
    lines = (records_line(overview.total) + ".", ready_heading(overview), due_line(overview))
    return "<ul>" + "".join(f"<li>{escape(line)}</li>" for line in lines) + "</ul>"


def _sections(overview: Overview) -> str:
    drawn = charts.levels_chart(overview.sections, 1) + legend(_LEVELS)
    ready = str(overview.ready_by) if overview.ready_by else ""
    table = _table("Records by section, and expected recall", "Section", overview.sections, overview.total, ready)
    explained = (
        '<p class="soft">Known: recalled when last asked, and not fading. Shaky: asked, and prompted, missed or '
        "fading since. Unknown: never asked, or missed every time.</p>"
    )
    return f'<section aria-labelledby="sections"><h2 id="sections">By section</h2>{drawn}{explained}{table}</section>'


def _recall(overview: Overview) -> str:
    ready = str(overview.ready_by) if overview.ready_by else ""
    names = [("full", "today"), *([("striped", f"on {ready}, if nothing more is done")] if ready else [])]
    drawn = charts.recall_chart(overview.sections, ready, 2) + legend(names)
    return f'<section aria-labelledby="recall"><h2 id="recall">Expected recall</h2>{drawn}</section>'


def _days(overview: Overview) -> str:
    drawn = charts.days_chart(overview.days, 3)
    names = legend((("full", "recalled"), ("striped", "prompted"), ("dotted", "missed")))
    rows = "".join(
        f'<tr><th scope="row">{each.day}</th>' + "".join(f"<td>{count}</td>" for count in each[1:]) + "</tr>"
        for each in overview.days
        if sum(each[1:])
    )
    head = "".join(f'<th scope="col">{name}</th>' for name in ("Day", "Recalled", "Prompted", "Missed"))
    table = f"<table><caption>Answers by day</caption><thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table>"
    heading = f'<h2 id="days">The last {len(overview.days)} days</h2>'
    return f'<section aria-labelledby="days">{heading}{drawn}{names}{table if rows else ""}</section>'


def _table(caption: str, first: str, rows: Sequence[Section], total: Section | None, ready: str) -> str:
    names = [first, "Known", "Shaky", "Unknown", "Recall today", *([f"On {ready}"] if ready else [])]
    head = "".join(f'<th scope="col">{escape(name)}</th>' for name in names)
    body = "".join(_row(each, f"{each.section} {each.name}".strip(), ready) for each in rows)
    foot = f"<tfoot>{_row(total, 'All', ready)}</tfoot>" if total is not None else ""
    return (
        f'<div class="wide" tabindex="0" role="region" aria-label="{escape(caption)}"><table>'
        f"<caption>{escape(caption)}</caption><thead><tr>{head}</tr></thead><tbody>{body}</tbody>{foot}</table></div>"
    )


def _row(section: Section, name: str, ready: str) -> str:
    name = section.name if section.section and not section.section[0].isdigit() else name
    figures = [str(section.known), str(section.shaky), str(section.unknown), percent(section.today)]
    if ready:
        figures.append(percent(section.ready or 0))
    return f'<tr><th scope="row">{escape(name)}</th>' + "".join(f"<td>{each}</td>" for each in figures) + "</tr>"


def _list(heading: str, lines: Iterable[str], otherwise: str) -> str:
    listed = "".join(f"<li>{escape(line)}</li>" for line in lines)
    if not listed and not otherwise:
        return ""
    content = f"<ul>{listed}</ul>" if listed else f"<p>{escape(otherwise)}</p>"
    return f"<section><h2>{escape(heading)}</h2>{content}</section>"
