"""One spelling and one way to write a date, everywhere: those of a kitchen in the United States.

The words are common practice, no source.
"""

import ast
import datetime as dt
import re
from functools import cache
from pathlib import Path

import pytest

from warmup.english import MONTHS, date_words

ROOT = Path(__file__).parent.parent
_LISTS = {Path(__file__), ROOT / "tests/bank/kitchen.py"}
"""The two files that list such words."""
_PARTS = (".ci", "DEVELOPERS.md", "LICENSE", "README.md", "pyproject.toml", "routines", "tests", "warmup")
_READ = {".py", ".md", ".toml", ".tcss", ".txt", ""}

_BRITISH = re.compile(
    r"""
    maths | grey | whilst | amongst | learnt | spelt | towards | backwards | afterwards | programmes? |
    practis(?:e[ds]?|ing) | licences? | defence | offence | judgement | ageing | artefact |
    pyjamas | aeroplane |
    (?:arm|behavi|col|endeav|fav|flav|harb|hon|hum|lab|neighb|od|parl|rum|sav|vap)our\w* |
    (?:cent|fib|lit|met|millimet|centimet|theat)re(?:s|d)? | centring |
    (?:apolog|categor|character|critic|emphas|familiar|final|general|item|maxim|memor|minim|normal|optim|
       organ|popular|priorit|random|real|recogn|serial|special|standard|summar|symbol|synchron|token|util|
       visual)is(?:e[drs]?|ing|ations?) |
    (?:analy|cataly|paraly)se[ds]? |
    (?:cancel|label|level|marvel|model|signal|total|travel)l(?:ed|er|ing|ous) |
    fulfil | skilful | mould\w* | plough\w* | storeys? | tyres? | kerb\w* | cheques? |
    sceptic\w* | jewellery | mum | nought | nappy | nappies
    """,
    re.X | re.I,
)
_OF_A_STANDARD = "CANCELLED"
"""A status of an event as RFC 5545, section 3.8.1.11, spells it."""
_DAY_FIRST = re.compile(rf"\b[0-9]{{1,2}} (?:{'|'.join(MONTHS)})\b")


def words_of(text: str) -> str:
    """The text with names taken apart: ``_GREY_INK`` and ``greyInk`` hold the word as well."""
    apart = re.sub(r"(?<=[a-z])(?=[A-Z])", " ", text)
    return re.sub(r"[\W_]+", " ", apart)


def british(text: str) -> list[str]:
    """The words in a text that are not spelled as in the United States."""
    own = words_of(text.replace(_OF_A_STANDARD, ""))
    return [found[0] for found in re.finditer(rf"\b(?:{_BRITISH.pattern})\b", own, re.X | re.I)]


def texts() -> dict[str, str]:
    """Every text file of the project, by its path; the lists of such words left out."""
    read: dict[str, str] = {}
    for name in _PARTS:
        top = ROOT / name
        for path in sorted(top.rglob("*")) if top.is_dir() else [top]:
            if path.is_file() and path.suffix in _READ and path not in _LISTS:
                read[path.relative_to(ROOT).as_posix()] = path.read_text("utf-8")
    return read


@pytest.mark.slow
def test_the_whole_tree_is_spelled_the_american_way() -> None:
    read = texts()
    assert {
        "README.md",
        "warmup/cli/commands.py",
        "routines/year.toml",
        "tests/frames/help-80x24.txt",
    } <= set(read)
    assert {name: found for name, text in read.items() if (found := british(text))} == {}


@pytest.mark.parametrize(
    "text",
    ["the maths lesson", "COLOUR = 1", "greyInk", "to practise", "Centre it", "neighbours", "realising"],
)
def test_a_british_word_is_found_in_prose_and_in_names(text: str) -> None:
    assert british(text)


def said(source: str) -> str:
    """The strings of a module that are no docstrings: what the program may say."""
    tree = ast.parse(source)
    # A string that stands alone is a docstring.
    docs = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    strings = (node for node in ast.walk(tree) if isinstance(node, ast.Constant) and id(node) not in docs)
    return "\n".join(node.value for node in strings if isinstance(node.value, str))


@cache
def said_or_shown() -> dict[str, str]:
    """What the program may say: the strings of its modules, its guide, the README and the golden frames."""
    read = texts()
    words = {name: said(text) for name, text in read.items() if re.match(r"warmup/.*\.py", name)}
    others = ("README.md", *(name for name in read if "/frames/" in name or "/guide/" in name))
    words |= {name: read[name] for name in others if not name.endswith(".py")}
    assert len(words) > 80 and "keep small things" in words["warmup/session/words.py"]
    return words


# What people in the United States put in other words, and what stands for them here.
_ELSEWHERE = re.compile(
    r"(?:\bnot yet\b\W*|\btwice|\btimes|\bmornings) running\b"
    r"|\bfor who\b|\bmouthers\b|\bticked\b|\bspace tick\b",
    re.I,
)


@pytest.mark.slow
def test_the_program_says_today_since_some_families_do_it_at_four_o_clock() -> None:
    words = said_or_shown()
    assert [name for name, text in words.items() if re.search(r"this\s+morning\b", text, re.I)] == []


@pytest.mark.slow
def test_the_program_says_in_a_row_and_what_else_is_said_at_an_american_table() -> None:
    words = said_or_shown()
    found = {name: _ELSEWHERE.findall(" ".join(text.split())) for name, text in words.items()}
    assert {name: each for name, each in found.items() if each} == {}
    assert _ELSEWHERE.search("What is ticked goes")
    assert _ELSEWHERE.search("Three times *not yet* running") and _ELSEWHERE.search("came twice running")


def test_months_come_before_days_everywhere() -> None:
    assert {name: found for name, text in texts().items() if (found := _DAY_FIRST.findall(text))} == {}
    assert _DAY_FIRST.search("on 31 August")


def test_a_date_is_written_as_people_say_it() -> None:
    day = dt.date(2026, 8, 31)
    assert date_words(day, year=True) == "Monday, August 31, 2026"
    assert date_words(day) == "Monday, August 31"
    assert date_words(day, weekday=False, year=True) == "August 31, 2026"
    assert date_words(day, weekday=False) == "August 31"
    assert date_words(day, short=True) == "Mon Aug 31"
