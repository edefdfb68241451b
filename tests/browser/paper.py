"""Prints the reports of an invented family with a real browser, Debian's Chromium, and looks at the paper.

    python -m tests.browser.paper FOLDER

writes a PDF of each report on Letter and on A4, and a PNG of each on a light and on a dark screen. It says
what is wrong and gives 1: a page of another size, too many pages, a word that is not on the paper or stands
outside its margins, paper that is not light on a dark screen, a window that must be scrolled sideways.
Without the browser nothing is checked, and it gives 2. It needs pypdf beside what the tests need.
"""

import datetime as dt
import re
import shutil
import subprocess
import tempfile
import unicodedata
from collections.abc import Iterator
from pathlib import Path

from tests.browser.run import run
from tests.year_of_history import write_year
from warmup.config.places import Places
from warmup.journal.journal import Journal
from warmup.report import text_form
from warmup.report.asking import Form, Made, Wanted, make
from warmup.report.letter import Span
from warmup.session.context import load_family, open_context

TODAY = dt.date(2027, 5, 12)
PAPERS = {"Letter": (612.0, 792.0), "A4": (595.28, 841.89)}
"""Sheets in points: 8.5 by 11 inches (ANSI/ASME Y14.1, size A), and 210 by 297 millimeters (ISO 216)."""
MARGIN = 16 / 25.4 * 72
"""The margin that the page asks for, in points."""
MOST_PAGES = {"report": 12, "quarter": 1, "year": 1, "summer": 5}
WIDTHS = (500, 900)
DARK, LIGHT = (f"--blink-settings=preferredColorScheme={number}" for number in (0, 1))
KINDS = {
    "report": Wanted(),
    "quarter": Wanted(span=Span.QUARTER),
    "year": Wanted(span=Span.YEAR, signed="Grandma"),
    "summer": Wanted(summer=True),
}


def browser(*argv: str) -> str:
    """Run the browser without a window, and give what it prints."""
    program = shutil.which("chromium") or shutil.which("chromium-browser") or ""
    with tempfile.TemporaryDirectory() as profile:
        fixed = ("--headless", "--no-sandbox", "--disable-gpu", f"--user-data-dir={profile}")
        done = subprocess.run(
            [program, *fixed, *argv], capture_output=True, text=True, check=True, timeout=120
        )
    return done.stdout


def reports(home: Path) -> Iterator[tuple[str, Made]]:
    """Every kind of report of a family with a year behind it."""
    write_year(home, TODAY)
    places = Places(home, home)
    journal = Journal.open(home, lambda: dt.datetime.combine(TODAY, dt.time(9)), read_only=True)
    context = open_context(places, load_family(places, TODAY)[0], TODAY, journal, saved=False)
    for kind, wanted in KINDS.items():
        yield kind, make(context, wanted)
    journal.shut()


def printed(page: str, pdf: Path, paper: str, look: str) -> None:
    """Print a page on one kind of paper."""
    copy = pdf.with_suffix(".html")
    copy.write_text(page.replace("@page {", f"@page {{ size: {paper};"), "utf-8")
    browser(look, "--no-pdf-header-footer", f"--print-to-pdf={pdf}", copy.as_uri())
    copy.unlink()


def faults_of_paper(kind: str, made: Made, pdf: Path, paper: str) -> Iterator[str]:
    """What is wrong with a PDF."""
    from pypdf import PdfReader

    reader, (wide, high) = PdfReader(pdf), PAPERS[paper]
    if len(reader.pages) > MOST_PAGES[kind]:
        yield f"{pdf.name}: {len(reader.pages)} pages, more than {MOST_PAGES[kind]}"
    found: list[str] = []
    for number, page in enumerate(reader.pages, start=1):
        size = float(page.mediabox.width), float(page.mediabox.height)
        if max(abs(size[0] - wide), abs(size[1] - high)) > 1:
            yield f"{pdf.name}: page {number} is {size[0]} by {size[1]} points"
        outside: list[str] = []

        def look(text: str, cm: list[float], tm: list[float], *_: object, out: list[str] = outside) -> None:
            x, y = (tm[4] * cm[0] + tm[5] * cm[2] + cm[4], tm[4] * cm[1] + tm[5] * cm[3] + cm[5])
            inside = MARGIN - 2 <= x <= wide - MARGIN and MARGIN - 2 <= y <= high - MARGIN
            if text.strip() and not inside:
                out.append(text)

        found.append(page.extract_text(visitor_text=look))
        if outside:
            yield f"{pdf.name}: outside the margins of page {number}: {outside[:3]}"
    on_paper = _letters("".join(found))
    told = " ".join(text_form.lines(made.document, 10_000))
    missing = [word for word in told.split() if _letters(word) not in on_paper]
    if missing:
        yield f"{pdf.name}: not on the paper: {missing[:5]}"


def _letters(text: str) -> str:
    """The letters and digits alone: fonts join some, and the text form has more colons."""
    return re.sub(r"[\W_]+", "", unicodedata.normalize("NFKC", text))


def drawing_of(pdf: Path) -> list[bytes]:
    """What is drawn on each page."""
    from pypdf import PdfReader

    return [contents.get_data() for page in PdfReader(pdf).pages if (contents := page.get_contents())]


def width_fault(page: str, folder: Path, width: int) -> str:
    """What is wrong in a window so many pixels wide; nothing where it need not be scrolled sideways."""
    # The page itself allows no script: the copy that is measured does.
    script = "<script>document.title = document.documentElement.scrollWidth - innerWidth</script></body>"
    copy = folder / "measured.html"
    bare = re.sub(r"<meta http-equiv[^>]*>", "", page)
    copy.write_text(bare.replace("</body>", script), "utf-8")
    dom = browser("--dump-dom", f"--window-size={width},900", copy.as_uri())
    copy.unlink()
    over = re.search(r"<title>(-?\d+)</title>", dom)
    if over is None:
        return f"at {width} pixels nothing could be measured"
    return f"at {width} pixels it is {over[1]} too wide" if int(over[1]) > 0 else ""


def faults(folder: Path) -> Iterator[str]:
    """Print and look at everything."""
    with tempfile.TemporaryDirectory() as home:
        found = list(reports(Path(home)))
    for kind, made in found:
        page = made.text(Form.HTML)
        for paper in PAPERS:
            pdf, dark = folder / f"{kind}-{paper}.pdf", folder / f"{kind}-{paper}-dark.pdf"
            printed(page, pdf, paper, LIGHT)
            printed(page, dark, paper, DARK)
            yield from faults_of_paper(kind, made, pdf, paper)
            if drawing_of(pdf) != drawing_of(dark):
                yield f"{dark.name}: another paper than where the screen is light"
        shown = folder / f"{kind}.html"
        shown.write_text(page, "utf-8")
        for name, look in (("light", LIGHT), ("dark", DARK)):
            picture = folder / f"{kind}-{name}.png"
            browser(look, f"--screenshot={picture}", "--window-size=900,1400", shown.as_uri())
        if (folder / f"{kind}-light.png").read_bytes() == (folder / f"{kind}-dark.png").read_bytes():
            yield f"{kind}: a dark screen looks like a light one"
        for width in WIDTHS:
            if fault := width_fault(page, folder, width):
                yield f"{kind}: {fault}"


if __name__ == "__main__":
    raise SystemExit(run("paper", __doc__, faults))
