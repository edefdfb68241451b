"""Lines in and out, for a braille line, a dumb terminal or a pipe: no cursor is moved, no color needed."""

import sys
from collections.abc import Iterable

from warmup.cli.printing import show
from warmup.text import clean

_LONGEST = 1000
"""What is read of a line, in characters; the rest of it is dropped."""


class Ended(Exception):
    """Nothing more comes: the end of the input, or the adult left."""


def say(*lines: str) -> None:
    """Print lines at once, whatever they hold; empty sentences are left out."""
    show(line for line in lines if line)


def part(lines: Iterable[str]) -> None:
    """Print lines behind an empty one."""
    show(["", *lines])


def ask(question: str) -> str:
    """Print a question and read the line that answers it, made harmless. Raises Ended.

    No ``input``: with a library for editing lines loaded it writes what a dumb terminal can't read.
    """
    show([question])
    try:
        line = sys.stdin.readline(_LONGEST) if sys.stdin else ""
        rest = line
        while rest and not rest.endswith("\n"):
            rest = sys.stdin.readline(_LONGEST)
    except (OSError, ValueError):
        # The terminal is gone, or the stream was closed.
        raise Ended from None
    if not line:
        raise Ended
    return clean(line)


def take_any_bytes() -> None:
    """Read bytes that are no text in this terminal's coding as such, with no error."""
    if sys.stdin and hasattr(sys.stdin, "reconfigure"):
        sys.stdin.reconfigure(errors="replace")
