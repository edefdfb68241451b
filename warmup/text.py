"""Text and dates from people and files: made safe to print, quoted in a sentence, kept within bounds."""

import json
import unicodedata
from collections.abc import Iterable

FIRST_YEAR, LAST_YEAR = 1900, 2999
"""The years a date in a file may lie in, so that adding weeks to it never leaves the calendar."""
CLOCK_YEARS = range(1900, 2201)
"""The years that a clock, a command line or a form may say; another one is a clock set wrong, or a slip."""
# Marks that turn the direction of the text after them, and the byte order mark.
_TURNING = frozenset("\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069\ufeff")


def quoted(words: str) -> str:
    """Words that are said, in quotation marks; quotation marks within them are single ones then."""
    inner = words.replace("“", "‘").replace("”", "’")
    return f"“{inner}”"


def clean(text: str) -> str:
    """The text as one line without anything a terminal would obey: control and text-turning characters go."""
    kept = (
        c for c in " ".join(text.split()) if unicodedata.category(c) not in ("Cc", "Cs") and c not in _TURNING
    )
    return " ".join("".join(kept).split())


def visible(text: str) -> bool:
    """Whether any character of the text leaves a mark of its own on the screen."""
    return any(unicodedata.category(c)[0] not in "CZM" or unicodedata.category(c) == "Co" for c in text)


def shown(value: object) -> str:
    """A value as it may stand in a sentence: short, on one line, harmless in a terminal."""
    match value:
        case str():
            quoted = json.dumps(clean(value), ensure_ascii=False)
            # What leaves no mark of its own, as between two letters, is named: nobody would find it.
            text = "".join(c if c.isprintable() else f"\\u{ord(c):04x}" for c in quoted)
        case bool():
            text = "true" if value else "false"
        case dict():
            text = "a table"
        case list():
            text = "a list" if value else "an empty list"
        case int() if abs(value) >= 10**30:
            text = "a very long number"
        case _:
            text = clean(str(value))
    return text if len(text) <= 60 else f"{text[:50]}... ({len(text)} characters)"


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """``; did you mean "dime"?`` for the nearest known word, or nothing when none is near."""
    import difflib

    near = difflib.get_close_matches(word[:100], list(known), n=1, cutoff=0.7)
    return f'; did you mean "{near[0]}"?' if near else ""
