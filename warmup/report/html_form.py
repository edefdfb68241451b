"""A document as one page of HTML that needs nothing else: no script, no network; it prints on any paper.

On a screen it is light or dark as the machine is set; on paper always dark on white.
"""

from collections.abc import Iterator
from html import escape

from warmup.pictures.ink import Ink, Mix, heaviest
from warmup.pictures.svg import svg
from warmup.report import plots
from warmup.report.document import Bullets, Document, Part, Plot, Section, Table

_STYLE = """
:root { color-scheme: light dark; --paper: #ffffff; --ink: #1c1c1c; --soft: #5a5a5a; --line: #b8b8b8;
  --bar: #2d5f8b; }
@media screen and (prefers-color-scheme: dark) {
  :root { --paper: #16181c; --ink: #e8e8e4; --soft: #b0b0a8; --line: #55585f; --bar: #7fb2dd; }
}
@page { margin: 16mm; }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1.5rem; max-width: 46rem; background: var(--paper); color: var(--ink);
  font: 1rem/1.45 Georgia, "DejaVu Serif", "Liberation Serif", serif; overflow-wrap: break-word; }
h1 { font-size: 1.6rem; line-height: 1.2; margin: 0 0 .3rem; }
h2 { font-size: 1.15rem; margin: 1.6rem 0 .4rem; break-after: avoid; }
.about { color: var(--soft); margin: 0 0 1rem; }
table { border-collapse: collapse; width: 100%; margin: .6rem 0; }
caption { text-align: left; color: var(--soft); padding-bottom: .2rem; break-after: avoid; }
th, td { text-align: left; vertical-align: top; padding: .22rem .6rem .22rem 0;
  border-bottom: 1px solid var(--line); }
thead { display: table-header-group; }
tr, li, figure { break-inside: avoid; }
td.short, th.short { white-space: nowrap; }
.number { text-align: right; font-variant-numeric: tabular-nums; }
figure { margin: 1rem 0; }
figcaption { color: var(--soft); }
svg { max-width: 100%; height: auto; }
@media screen and (max-width: 40rem) { td.short, th.short { white-space: normal; } }
@media print {
  :root { color-scheme: light; }
  body { padding: 0; max-width: none; font-size: 10pt; line-height: 1.3; }
  th, td { padding-top: .1rem; padding-bottom: .1rem; }
}
""".strip()
_COLORS = {Ink.GROUND: "none", Ink.FIRST: "var(--bar)"}
_SHORT = 17
"""How many letters a cell has at most that is not broken into lines."""
_CELL = 2.2
"""How wide a cell of a plot is, in millimeters."""


def page(document: Document) -> str:
    """The whole page."""
    return "\n".join(_lines(document)) + "\n"


def _lines(document: Document) -> Iterator[str]:
    yield "<!DOCTYPE html>"
    yield '<html lang="en-US">'
    yield "<head>"
    yield '<meta charset="utf-8">'
    # Nothing may be fetched, whatever a later change puts into the page.
    policy = "default-src 'none'; style-src 'unsafe-inline'"
    yield f'<meta http-equiv="Content-Security-Policy" content="{policy}">'
    yield '<meta name="viewport" content="width=device-width, initial-scale=1">'
    yield f"<title>{escape(document.title)}</title>"
    yield f"<style>\n{_STYLE}\n</style>"
    yield "</head>"
    yield "<body>"
    yield f"<h1>{escape(document.title)}</h1>"
    yield f'<p class="about">{escape(document.about)}</p>'
    for section in document.sections:
        yield from _section(section)
    yield "</body>"
    yield "</html>"


def _section(section: Section) -> Iterator[str]:
    yield "<section>"
    if section.title:
        yield f"<h2>{escape(section.title)}</h2>"
    for part in section.parts:
        yield from _part(part)
    yield "</section>"


def _part(part: Part) -> Iterator[str]:
    match part:
        case str():
            yield f"<p>{escape(part)}</p>"
        case Bullets(each):
            yield "<ul>"
            for line in each:
                yield f"<li>{escape(line)}</li>"
            yield "</ul>"
        case Table():
            yield from _table(part)
        case Plot():
            yield from _plot(part)


def _table(table: Table) -> Iterator[str]:
    classes = [_class(at in table.numbers, column) for at, column in enumerate(zip(*table.rows, strict=True))]
    yield "<table>"
    yield f"<caption>{escape(table.caption)}</caption>"
    heads = "".join(
        f'<th scope="col"{of}>{escape(head)}</th>' for of, head in zip(classes, table.heads, strict=True)
    )
    yield f"<thead><tr>{heads}</tr></thead>"
    yield "<tbody>"
    for row in table.rows:
        cells = "".join(f"<td{of}>{escape(cell)}</td>" for of, cell in zip(classes, row, strict=True))
        yield f"<tr>{cells}</tr>"
    yield "</tbody>"
    yield "</table>"


def _class(number: bool, cells: tuple[str, ...]) -> str:
    """What a column looks like: short cells, such as dates, are not broken."""
    names = ["number"] * number + ["short"] * all(len(cell) <= _SHORT for cell in cells)
    return f' class="{" ".join(names)}"' if names else ""


def _plot(plot: Plot) -> Iterator[str]:
    sketch = plots.sketch(plot)
    drawn = svg(sketch, _color, _CELL * sketch.width)
    told = "; ".join(f"{label} {count}" for label, count in plot.bars)
    yield "<figure>"
    yield f"<figcaption>{escape(plot.caption)}</figcaption>"
    yield drawn.replace("<svg ", f'<svg role="img" aria-label="{escape(f"{plot.caption}: {told}")}" ', 1)
    yield "</figure>"


def _color(mix: Mix) -> str:
    return _COLORS.get(heaviest(mix), "var(--ink)")
