"""One word for one thing: the words that were given up stay out of names, comments and docstrings."""

import io
import re
import tokenize
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text("utf-8")
GIVEN_UP = {
    "desk": "context",
    "desks": "contexts",
    "sitting": "session",
    "sittings": "sessions",
    "lineup": "order",
    "owed": "due",
    "unsettled": "unconfirmed",
}
"""The word that was given up, and the one that took its place."""


def names_and_prose(source: str) -> Iterator[tuple[int, str]]:
    """Every word of the names and comments, and of the docstrings but for what is in double backticks."""
    before = tokenize.NEWLINE
    for token in tokenize.generate_tokens(io.StringIO(source).readline):
        docstring = token.type == tokenize.STRING and before in (
            tokenize.NEWLINE,
            tokenize.INDENT,
            tokenize.ENCODING,
        )
        if docstring or token.type in (tokenize.NAME, tokenize.COMMENT):
            text = re.sub(r"``[^`]*``", "", token.string)
            for word in re.findall(r"[A-Z]?[a-z]+", text):
                yield token.start[0], word.lower()
        if token.type not in (tokenize.NL, tokenize.COMMENT, tokenize.DEDENT):
            before = token.type


def found(source: str) -> list[tuple[int, str]]:
    """The lines and words of a module that were given up."""
    # Few modules have the letters of one anywhere, and taking a module apart is slow.
    if not any(word in source.lower() for word in GIVEN_UP):
        return []
    return [(line, word) for line, word in names_and_prose(source) if word in GIVEN_UP]


def test_the_words_given_up_stay_away() -> None:
    files = [path for room in ("warmup", "tests") for path in sorted((ROOT / room).rglob("*.py"))]
    read = {path.relative_to(ROOT).as_posix(): path.read_text("utf-8") for path in files}
    assert len(read) > 300
    assert {name: words for name, text in read.items() if (words := found(text))} == {}


@pytest.mark.parametrize(
    "source",
    [
        "open_desk = 1",
        "class DeskTop: ...",
        "x = 1  # at the desk",
        'def f():\n    """The sittings of a day."""',
    ],
)
def test_a_word_given_up_is_found_in_names_and_prose(source: str) -> None:
    assert found(source)


@pytest.mark.parametrize("source", ['x = "SELECT sitting FROM sittings"', '"""The table ``sittings``."""'])
def test_the_tables_of_the_journal_keep_their_names(source: str) -> None:
    assert not found(source)


def test_the_glossary_is_short_and_speaks_of_what_there_is() -> None:
    glossary = DEVELOPERS.partition("## Words\n")[2].partition("\n## ")[0]
    assert 10 < len(glossary.strip().splitlines()) <= 25
    source = "\n".join(path.read_text("utf-8") for path in (ROOT / "warmup").rglob("*.py"))
    names = re.findall(r"`(\w+)`", glossary)
    assert len(names) > 5
    assert [name for name in names if not re.search(rf"\b{name}\b", source)] == []
