"""Text from people and files: nothing a terminal would obey, short where it is quoted."""

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from warmup.text import clean, did_you_mean, quoted, shown, visible


@given(st.text())
def test_what_is_cleaned_is_one_harmless_line_and_stays_as_it_is(text: str) -> None:
    line = clean(text)
    assert len(line.splitlines()) <= 1 and line == line.strip() == clean(line)
    assert not [c for c in line if unicodedata.category(c) in ("Cc", "Cs")]


@pytest.mark.parametrize(
    ("text", "line"),
    [
        ("  two\n\twords ", "two words"),
        ("\x1b[31mred\x1b[0m", "[31mred[0m"),
        ("\u202eneB", "neB"),
        ("\ufeffBean", "Bean"),
        ("a \u200f b", "a b"),
        ("José 🦕", "José 🦕"),
    ],
)
def test_cleaned_by_example(text: str, line: str) -> None:
    assert clean(text) == line


@pytest.mark.parametrize("text", ["", " ", "\u200b", "\u0301", "\x07"])
def test_what_leaves_no_mark_is_not_visible(text: str) -> None:
    assert not visible(text) and visible(text + "a")


@pytest.mark.parametrize(
    ("value", "said"),
    [
        ('say "hi"', r'"say \"hi\""'),
        (True, "true"),
        ({"a": 1}, "a table"),
        ([], "an empty list"),
        ([1], "a list"),
        (10**30, "a very long number"),
        (10**30 - 1, "9" * 30),
        (1.5, "1.5"),
    ],
)
def test_a_value_as_it_stands_in_a_sentence(value: object, said: str) -> None:
    assert shown(value) == said


@given(st.text(min_size=60))
def test_a_long_value_is_cut(text: str) -> None:
    assert len(shown(text)) <= 80


def test_the_nearest_word_is_offered_and_no_far_one() -> None:
    assert did_you_mean("dmie", ["dime", "penny"]) == '; did you mean "dime"?'
    assert did_you_mean("zebra", ["dime", "penny"]) == ""


def test_quotation_marks_within_what_is_said_are_single_ones() -> None:
    assert quoted("Finish it: “Now we are in…”") == "“Finish it: ‘Now we are in…’”"


def test_what_nobody_sees_is_named_in_a_sentence() -> None:
    assert shown("\u200bThursday") == '"\\u200bThursday"' and shown("Jo") == '"Jo"'
