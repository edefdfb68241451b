"""The forms: read back by readers that are not ours, and nothing in any of them that should not leave."""

import csv
import datetime as dt
import io
import json
import re
from collections import Counter
from pathlib import Path
from xml.etree.ElementTree import Element

import html5lib
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.household import OWN
from tests.oracles import rfc4180
from tests.report.conftest import CHILD, OTHER, REASON, TODAY, Home
from warmup.report import csv_form, html_form, json_form, text_form
from warmup.report.asking import Form, Made, Wanted, ending, make
from warmup.report.document import Bullets, Document, Part, Plot, Section, Table
from warmup.report.facts import Note, Report
from warmup.report.letter import Span

KINDS = {
    "report": Wanted(),
    "quarter": Wanted(span=Span.QUARTER),
    "year": Wanted(span=Span.YEAR),
    "summer": Wanted(summer=True),
}
HOSTILE = st.text(
    st.sampled_from("ab \"',;:=+-@<>&[]\t\r\n\x1b\u202eéü日🙂") | st.characters(codec="utf-8"), max_size=40
)


def errors_of(page: str) -> list[object]:
    """What a parser by the HTML standard finds wrong (html5lib, which follows its parsing chapter)."""
    parser = html5lib.HTMLParser(strict=False)
    parser.parse(page)
    return list(parser.errors)


def parsed(page: str) -> Element:
    """The page as such a parser has it."""
    return html5lib.parse(page)


def made(home: Home, kind: str, notes: tuple[Note, ...] = ()) -> Made:
    wanted = KINDS[kind]
    return make(home.context(), wanted._replace(notes=notes) if kind == "report" else wanted)


# -- what must not leave


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("form", Form)
def test_no_path_no_other_child_no_reason_and_nothing_of_their_own(
    lived_in: Home, kind: str, form: Form
) -> None:
    notes = (
        Note(dt.date(2026, 11, 9), f"{OTHER.upper()} laughed, too."),
        Note(dt.date(2026, 11, 9), "See /home/us/own.toml for it."),
        Note(dt.date(2026, 11, 9), "Said: ten and ten is [b]twenty[/b]!"),
    )
    text = made(lived_in, kind, notes).text(form)
    secrets = (
        str(lived_in.folder), lived_in.folder.name, "journal.db", "family.toml", "own.toml", "/home", "\\\\",
        OTHER, REASON, "Aunt Juniper", OWN.name, OWN.say, "Pear Tree", "door", "\x1b",
    )  # fmt: skip
    found = [secret for secret in secrets if secret.casefold() in text.casefold()]
    # Two levels ask about the numbers on doors.
    assert [secret for secret in found if secret != "door"] == []
    assert CHILD in text
    if kind == "report":
        assert "ten and ten is" in text
    if kind == "report" and form is Form.TEXT:
        assert "2 notes are not told here: they name another child or a file." in " ".join(text.split())


@pytest.mark.parametrize("kind", KINDS)
def test_an_adult_s_name_stands_there_only_when_it_is_asked_for(lived_in: Home, kind: str) -> None:
    wanted = KINDS[kind]._replace(signed="Aunt Juniper")
    assert "Aunt Juniper" in make(lived_in.context(), wanted).text(Form.TEXT)


@pytest.mark.parametrize("form", Form)
@pytest.mark.parametrize("kind", KINDS)
def test_each_says_in_each_form_that_it_is_no_assessment(lived_in: Home, kind: str, form: Form) -> None:
    text = " ".join(made(lived_in, kind).text(form).split())
    assert "This is no test, no assessment and no grade." in text
    # A list for the summer is no record.
    assert ("differs from state to state" in text) == (kind != "summer")


# -- CSV


@pytest.mark.parametrize("kind", KINDS)
def test_the_table_is_read_back_by_three_readers(lived_in: Home, kind: str) -> None:
    """The standard library's, clevercsv (which works the dialect out by itself), and the RFC's grammar."""
    import clevercsv

    text = made(lived_in, kind).text(Form.CSV)
    rows = rfc4180.read(text)
    assert rows == list(csv.reader(io.StringIO(text, newline=""), strict=True))
    assert rows == list(clevercsv.reader(io.StringIO(text, newline=""), delimiter=",", quotechar='"'))
    assert rows[0] == list(csv_form.Record._fields) and len(rows) > 5


@given(HOSTILE, HOSTILE)
def test_no_cell_can_be_taken_for_a_formula_and_each_comes_back(title: str, line: str) -> None:
    """OWASP, "CSV Injection": a cell must not begin with = + - @, a tab or a carriage return."""
    document = Document(title, "about", (Section("s", (line, Bullets((line, title)))),))
    rows = rfc4180.read(csv_form.document_csv(document, "letter"))
    for cell in (cell for row in rows for cell in row):
        assert not cell.startswith(("=", "+", "-", "@", "\t", "\r"))
    told = [row[-1] for row in rows[1:]]
    for given_text, cell in zip((title, "about", line, line, title), told, strict=True):
        assert cell == (f"'{given_text}" if given_text[:1] in {*"=+-@\t\r"} else given_text)


@pytest.mark.parametrize("sign", ["=", "+", "-", "@", "\t", "\r"])
def test_each_sign_of_a_formula_is_kept_from_the_front(sign: str) -> None:
    assert csv_form.safe(f"{sign}1") == f"'{sign}1"
    assert csv_form.safe(f"1{sign}") == f"1{sign}"


# -- JSON


def test_the_json_has_every_field_of_the_report(lived_in: Home) -> None:
    from_it = json.loads(made(lived_in, "report").text(Form.JSON))
    assert (from_it["format"], from_it["version"], from_it["kind"]) == ("warmup-report", 1, "report")
    assert [*from_it["report"]] == [*Report.__dataclass_fields__]
    assert from_it["report"]["made"] == f"{TODAY}"
    days = from_it["report"]["attendance"]["held"]
    assert days == sorted(days) and all(dt.date.fromisoformat(day) <= TODAY for day in days)
    letter = json.loads(made(lived_in, "quarter").text(Form.JSON))
    assert letter["kind"] == "letter" and letter["document"]["sections"][0]["parts"][0] == "Dear family,"
    for named in ("format", "version", "kind", "report", "document"):
        assert f"``{named}``" in (json_form.__doc__ or "")


# -- HTML


@pytest.mark.parametrize("kind", KINDS)
def test_the_page_is_without_an_error_and_needs_nothing_else(lived_in: Home, kind: str) -> None:
    page = made(lived_in, kind).text(Form.HTML)
    assert errors_of(page) == []
    assert not re.search(r"<(script|link|img|iframe|object|embed|base)\b|\bon\w+=|@import|url\(", page)
    # The one address in it names what SVG is; nothing is fetched for it.
    assert {*re.findall(r"https?://[^\"' ]+", page)} <= {"http://www.w3.org/2000/svg"}
    assert "prefers-color-scheme: dark" in page and "@media print" in page
    assert page.count("<svg ") == (2 if kind == "report" else 0)


def test_a_broken_page_is_one_with_errors() -> None:
    assert errors_of("<!DOCTYPE html><html><head><title>x</title></head><body><p><b></p></body></html>")


MARKUP = st.lists(
    st.sampled_from(("<", ">", "&", '"', "'", "&lt;", "</p>", "<b>", "<script>", "<!--", "-->", " a", "é’ ")),
    max_size=8,
).map("".join)
PARTS = st.one_of(
    MARKUP,
    st.builds(Bullets, st.tuples(MARKUP, MARKUP)),
    st.builds(lambda a, b: Table(a, (a, b), ((b, a), (a, "")), frozenset({1})), MARKUP, MARKUP),
    st.builds(lambda a, n: Plot(a, ((a, n), ("two", 2))), MARKUP, st.integers(0, 10**6)),
)
ELEMENTS = (
    "html head meta title style body h1 h2 p section ul li table caption thead tbody tr th td figure "
    "figcaption svg rect text"
)


@given(MARKUP, st.lists(PARTS, max_size=4))
def test_no_text_gets_out_of_its_place_in_the_page(title: str, parts: list[Part]) -> None:
    page = html_form.page(Document(title, title, (Section(title, tuple(parts)),)))
    assert errors_of(page) == []
    found = list(parsed(page).iter())
    names = {str(each.tag).rpartition("}")[2] for each in found}
    assert names <= {*ELEMENTS.split()}
    for place in ("title", "h1"):
        (text,) = [each.text or "" for each in found if each.tag.rpartition("}")[2] == place]
        assert text == title


# -- text


@given(
    st.integers(24, 120),
    st.lists(
        st.tuples(st.text("abc de", max_size=60), st.text("xyz w", max_size=30)), min_size=1, max_size=5
    ),
)
def test_lines_are_no_wider_than_asked_and_no_word_is_lost(width: int, rows: list[tuple[str, str]]) -> None:
    table = Table("What", ("First", "Second"), tuple(rows))
    document = Document("T", "about it", (Section("Part", ("A sentence of its own.", table)),))
    told = list(text_form.lines(document, width))
    longest = max((len(word) for row in rows for cell in row for word in cell.split()), default=1)
    if longest < width - 12:
        assert max(map(len, told)) <= width
    letters = Counter("".join(told))
    wanted = Counter(letter for row in rows for cell in row for letter in cell if letter != " ")
    assert wanted <= letters


@pytest.mark.parametrize("width", [30, 38, 56, 72, 86])
def test_a_whole_report_fits_its_width(lived_in: Home, width: int) -> None:
    for kind in KINDS:
        told = list(text_form.lines(made(lived_in, kind).document, width))
        assert max(map(len, told)) <= width, (kind, max(told, key=len))


def test_columns_stand_below_their_heads(lived_in: Home) -> None:
    lines = made(lived_in, "report").text(Form.TEXT).splitlines()
    head = next(line for line in lines if line.startswith("Month"))
    row = next(line for line in lines if line.startswith("Sep 2026"))
    assert head.index("School days") + len("School days") == len(row[: head.index("Days with")].rstrip())


def test_the_ending_says_the_form() -> None:
    names = {
        "a.html": Form.HTML,
        "a.HTM": Form.HTML,
        "a.txt": Form.TEXT,
        "a.csv": Form.CSV,
        "a.json": Form.JSON,
    }
    assert {name: ending(Path(name)) for name in names} == names
    assert ending(Path("a")) is None and ending(Path("a.pdf")) is None
