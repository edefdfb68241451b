"""Files that people edit: TOML, read with care and complained of by line."""

import contextlib
import datetime as dt
import errno
import re
import stat
import tomllib
from collections.abc import Callable, Iterable, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple, Never, TypeVar

from warmup.text import FIRST_YEAR, LAST_YEAR, clean, did_you_mean, shown, visible

if TYPE_CHECKING:
    from warmup.config.toml_lines import Keys

LIMIT = 1_000_000
"""The largest file that is read, in bytes."""
LONGEST_LINE = 20_000
"""The longest line that is read, in characters: reading a key of many thousand parts would take minutes."""
LONGEST_NAME = 40
"""The longest name of a person or an animal, in characters."""
FIX = "Fix that line."
T = TypeVar("T")


class FileProblem(Exception):
    """What is wrong with a file, where, and what to do: ``str`` gives it in one or two sentences.

    ``line`` counts from 1 and is None where the trouble has no line; ``key`` reads like
    ``school.first_day``, or ``child 2.nickname`` for the second in a list, and may be empty.
    """

    def __init__(
        self, path: Path, line: int | None, key: str, expected: str, found: str, advice: str = FIX
    ) -> None:
        super().__init__(path, line, key, expected, found, advice)
        self.path, self.line, self.key = path, line, key
        self.expected, self.found, self.advice = expected, found, advice

    def __str__(self) -> str:
        """Say where, what was expected, what was found, and what to do about it."""
        where = [clean(self.path.name), f"line {self.line}" if self.line else "", self.key]
        place = ", ".join(part for part in where if part)
        stop = "" if self.found.endswith("?") else "."
        return f"{place}: expected {self.expected}, found {self.found}{stop} {self.advice}".rstrip()


class Missing(FileProblem):
    """The file is not there."""


class Document(NamedTuple):
    """A file that was read: its values, its text, and the advice its complaints end with.

    The getters take the way to a value, ``("child", 0, "nickname")``, and raise ``FileProblem`` with the
    line when it is not what it should be. A missing value is the ``default``, or a problem without one.
    """

    path: Path
    data: Mapping[str, Any]
    text: str
    advice: str = FIX

    def line_of(self, *keys: str | int) -> int | None:
        """The line, from 1, on which this key, table or list element is written."""
        from warmup.config.toml_lines import lines

        return lines(self.text).get(keys)

    def problem(self, keys: "Keys", expected: str, found: str) -> FileProblem:
        """A problem with the value at ``keys``, on its line or that of the nearest table around it."""
        line = next((at for n in range(len(keys), 0, -1) if (at := self.line_of(*keys[:n]))), None)
        key = ""
        for part in keys:
            key += f" {part + 1}" if isinstance(part, int) else f".{clean(part)}" if key else clean(part)
        return FileProblem(
            self.path, line, key if len(key) <= 80 else f"{key[:77]}...", expected, found, self.advice
        )

    def refuse(self, keys: "Keys", expected: str) -> Never:
        """Raise the problem that the value at ``keys`` is not as ``expected``."""
        raise self.problem(keys, expected, shown(self._look(keys)) if self.has(*keys) else "nothing")

    def has(self, *keys: str | int) -> bool:
        """Whether there is a value at ``keys``. FileProblem when a value on the way there is no table."""
        return self._look(keys) is not None

    def value(self, *keys: str | int) -> Any:
        """The value at ``keys`` as it is written, of whatever kind; None where there is none."""
        return self._look(keys)

    def date(self, *keys: str | int, default: dt.date | None = None) -> dt.date:
        """A date without a time, between the years 1900 and 2999; in quotation marks it will do too."""
        expected = "a date like 2026-08-31"
        value = self._value(keys, default, expected)
        if isinstance(value, str) and re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", value):
            with contextlib.suppress(ValueError):
                value = dt.date.fromisoformat(value)
        if type(value) is not dt.date:
            self.refuse(keys, expected)
        if not FIRST_YEAR <= value.year <= LAST_YEAR:
            self.refuse(keys, f"a date between the years {FIRST_YEAR} and {LAST_YEAR}")
        return value

    def name(self, *keys: str | int, default: str | None = None, most: int = LONGEST_NAME) -> str:
        """Words for people on one line, cleaned: at least one visible character, at most ``most``."""
        value = self._value(keys, default, "some words in quotation marks")
        if not isinstance(value, str):
            self.refuse(keys, "some words in quotation marks")
        if len(cleaned := clean(value)) > most:
            self.refuse(keys, f"at most {most} characters")
        if not visible(cleaned) and cleaned != default:
            self.refuse(keys, "at least one letter")
        return cleaned

    def whole(self, *keys: str | int, least: int, most: int, default: int | None = None) -> int:
        """A whole number from ``least`` to ``most``."""
        expected = f"a whole number from {least} to {most}"
        value = self._value(keys, default, expected)
        if type(value) is not int or not least <= value <= most:
            self.refuse(keys, expected)
        return value

    def flag(self, *keys: str | int, default: bool | None = None) -> bool:
        """True or false."""
        value = self._value(keys, default, "true or false")
        if not isinstance(value, bool):
            self.refuse(keys, "true or false")
        return value

    def choice(self, *keys: str | int, among: Iterable[str], default: str | None = None) -> str:
        """One of a few words, capitals or not; given back as ``among`` writes it."""
        words = {word.lower(): word for word in among}
        expected = " or ".join(f'"{word}"' for word in words.values())
        value = self._value(keys, default, expected)
        if not isinstance(value, str) or value.strip().lower() not in words:
            self.refuse(keys, expected)
        return words[value.strip().lower()]

    def length(self, *keys: str | int, most: int = 1000) -> int:
        """How many elements the list at ``keys`` has, 0 where there is none."""
        value = self._look(keys)
        if value is None:
            return 0
        if not isinstance(value, list):
            self.refuse(keys, "a list in square brackets")
        if len(value) > most:
            raise self.problem(keys, f"a list of at most {most}", f"{len(value)}")
        return len(value)

    def names(self, *keys: str | int, most: int = 80) -> tuple[str, ...]:
        """A list of words, each as ``name`` reads it; empty where there is none."""
        return tuple(self.name(*keys, n, most=most) for n in range(self.length(*keys)))

    def keys_of(self, *keys: str | int) -> tuple[str, ...]:
        """The keys of the table at ``keys`` in their order; empty where there is none."""
        value = self._look(keys)
        if value is not None and not isinstance(value, dict):
            self.refuse(keys, "a table")
        return tuple(value or ())

    def only(self, known: Sequence[str], *keys: str | int) -> None:
        """Raise the problem that the table at ``keys`` has a key that is none of the ``known`` ones."""
        for key in self.keys_of(*keys):
            if key not in known:
                found = shown(key) + did_you_mean(key, known)
                raise self.problem((*keys, key), f"one of {', '.join(known)}", found)

    def check_format(self, known: int) -> None:
        """``FileProblem`` when the file is of another form than this version reads."""
        if self.has("format") and self.data["format"] != known:
            self.refuse(("format",), f"format = {known} (this file may be from a newer version)")

    def maybe(self, read: Callable[..., T], *keys: str | int, **bounds: int) -> T | None:
        """What one of the getters gives; None where there is no such value."""
        return read(*keys, **bounds) if self.has(*keys) else None

    def _value(self, keys: "Keys", default: Any, expected: str) -> Any:
        value = self._look(keys)
        if value is None and default is None:
            raise self.problem(keys, expected, "nothing")
        return default if value is None else value

    def _look(self, keys: "Keys") -> Any:
        value: Any = self.data
        for depth, key in enumerate(keys):
            if isinstance(key, int):
                value = value[key]
            elif not isinstance(value, Mapping):
                raise self.problem(keys[:depth], f'a table with "{key}" in it', shown(value))
            elif (value := value.get(key)) is None:
                return None
        return value


def read(path: Path, advice: str = FIX) -> Document:
    """The TOML file at ``path``: a regular file of at most 1 MB, UTF-8, without NUL.

    Raises ``Missing`` when there is none, and ``FileProblem`` for anything else that is not as it should be.
    """
    raw = file_bytes(path, LIMIT)
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw.count(b"\n", 0, error.start) + 1
        raise FileProblem(path, line, "", "text in UTF-8", "other bytes", advice) from None
    if "\0" in text:
        line = text.count("\n", 0, text.index("\0")) + 1
        raise FileProblem(path, line, "", "text", "a NUL byte", advice)
    for number, line_text in enumerate(text.split("\n"), start=1):
        if len(line_text) > LONGEST_LINE:
            found = f"{len(line_text)} characters"
            raise FileProblem(path, number, "", f"at most {LONGEST_LINE} characters in a line", found, advice)
    return Document(path, _parsed(path, text, advice), text, advice)


def file_bytes(path: Path, limit: int, advice: str = "Move it away.") -> bytes:
    """What is in a file of at most ``limit`` bytes: ``Missing`` where there is none, else ``FileProblem``."""
    try:
        about = path.stat()
        if not stat.S_ISREG(about.st_mode):
            found = "a folder" if stat.S_ISDIR(about.st_mode) else "something else"
            raise FileProblem(path, None, "", "a file", found, advice)
        if about.st_size > limit:
            found = f"{about.st_size} bytes"
            raise FileProblem(path, None, "", f"a file of at most {limit} bytes", found, advice)
        with path.open("rb") as file:
            return file.read(limit + 1)
    except FileNotFoundError:
        raise Missing(path, None, "", "a file", "none", "") from None
    except (OSError, ValueError) as error:
        advice = "Move it away, or let it be read."
        raise FileProblem(path, None, "", "a file that can be read", reason(error), advice) from None


def _parsed(path: Path, text: str, advice: str) -> dict[str, Any]:
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        message = str(error)
        at = re.search(r" \(at line ([0-9]+), column ([0-9]+)\)$", message)
        line = int(at[1]) if at else text.count("\n") + 1
        column = f"column {at[2]}" if at else "at its end"
        found = clean(message.removesuffix(at[0]) if at else message.removesuffix(" (at end of document)"))
        raise FileProblem(path, line, column, "TOML", f"an error in it ({found})", advice) from None
    except (ValueError, RecursionError):
        # A number of thousands of digits, or brackets nested by the thousand.
        raise FileProblem(
            path, None, "", "a plain TOML file", "one too deep or too long to read", advice
        ) from None


def reason(error: Exception) -> str:
    """Why a file can't be read or written, in the system's words."""
    if isinstance(error, OSError) and error.errno == errno.ELOOP:
        return "links that lead in a circle"
    return clean(getattr(error, "strerror", None) or str(error))
