"""Faults such as editors, mails, disks and people make in a file, drawn by a seed: in text, in SQLite's, in
the place where a file should be.
"""

import os
import sqlite3
from collections.abc import Callable
from contextlib import closing, suppress
from enum import Enum
from pathlib import Path
from random import Random

HUGE = 3_000_000_000
"""The size of a file that is all holes, in bytes."""
_DEEP, _LONG = 5000, 30_000
PIECES = (
    *("=", "[", "]", "{", "}", '"', '"""', "'", "#", ",", "\n", "\n\n", "\t", ":", ";", "\\", "[[", "]]"),
    *("-1", "0", "37", "1e999", "nan", "inf", "-inf", "true", "null", "2027-01-01", "9999-12-31"),
    *("0001-01-01", "2027-02-30", "12:00:00", "0x", "1_0", "9" * 400, "9" * 6000, "skills", "skills.x.y = 1"),
    *("format = 2", "[child]", "[[child]]", "[school]", "day = {a = {b = 1}}"),
    *("P999999999D", "FREQ=SECONDLY", "FREQ=DAILY;BYMONTHDAY=32", "END:VEVENT", "BEGIN:VCALENDAR"),
    *("[b]", "[/]", "[/b]", "[red]x[/red]", "[@click=app.quit]go[/]", "[link=file:///]", "$x", "{0}", "%s"),
    *("\x1b[31m", "\x1b]0;title\x07", "\x07", "\x08", "\x7f", "\x85", "\x9b", "\r", "\v", "\f", "\x00"),
    *("\u202e", "\u2066", "\u200f", "\ufeff", "\u200b", "\u2028", "\u0301" * 40, "\U0001f9e6", "\u3000"),
)
"""What is put where it does not belong."""
VALUES = (
    *('""', '" "', "''", "0", "-1", "1", "37", "1.5", "true", "nan", "[]", "{}", "[[]]", "[1, 'a']", '["x"]'),
    *("2026-11-25", "2026-11-25T08:00:00", "08:00:00", "9999-12-31", "1899-12-31", "9223372036854775808"),
    *('"\\u001b[31m"', '"\\u202eabc"', '"[b]bold[/b]"', '"[/]"', '"\\u0000"', '"\\ufeff"', '"a\\nb"'),
    *('"../../x"', '"~nobody/x"', '"/dev/zero"', '"/"', f'"{"x" * 5000}"', "9" * 5000, "0b1", "+7"),
)
"""Values of other types and sizes, as TOML has them."""


def text(raw: bytes, luck: Random) -> bytes:
    """The text with one to three faults in it."""
    for _ in range(luck.choice((1, 1, 1, 2, 3))):
        raw = luck.choice(_IN_TEXT)(raw, luck)
    return raw


def _flipped(raw: bytes, luck: Random) -> bytes:
    data = bytearray(raw or b"\n")
    data[luck.randrange(len(data))] ^= 1 << luck.randrange(8)
    return bytes(data)


def _cut(raw: bytes, luck: Random) -> bytes:
    at = luck.randrange(len(raw) + 1)
    return raw[:at] if luck.random() < 0.5 else raw[:at] + raw[at + luck.randrange(1, 40) :]


def _doubled(raw: bytes, luck: Random) -> bytes:
    at = luck.randrange(len(raw) + 1)
    return raw[:at] + raw[at : at + luck.randrange(1, 60)] + raw[at:]


def _lines(raw: bytes, luck: Random) -> bytes:
    """A line twice, not at all, or in the place of another."""
    lines = raw.split(b"\n")
    row, other = luck.randrange(len(lines)), luck.randrange(len(lines))
    match luck.randrange(3):
        case 0:
            lines.insert(other, lines[row])
        case 1:
            del lines[row]
        case _:
            lines[row], lines[other] = lines[other], lines[row]
    return b"\n".join(lines)


def _piece(raw: bytes, luck: Random) -> bytes:
    """A piece that does not belong there: anywhere, or within a pair of quotation marks."""
    piece = luck.choice(PIECES).encode()
    quotes = [at for at, byte in enumerate(raw) if byte == ord('"')]
    at = luck.choice(quotes) + 1 if quotes and luck.random() < 0.5 else luck.randrange(len(raw) + 1)
    return raw[:at] + piece + raw[at + luck.randrange(3) :]


def _value(raw: bytes, luck: Random) -> bytes:
    """Another value behind the sign of a line that has one, or in a cell of a table."""
    lines, value = raw.split(b"\n"), luck.choice(VALUES).encode()
    with_sign = [row for row, line in enumerate(lines) if any(sign in line for sign in (b"=", b":", b","))]
    if not with_sign:
        return value
    row = luck.choice(with_sign)
    sign = next(sign for sign in (b"=", b":", b",") if sign in lines[row])
    cells = lines[row].split(sign)
    cells[luck.randrange(1, len(cells))] = value
    lines[row] = sign.join(cells)
    return b"\n".join(lines)


def _digit(raw: bytes, luck: Random) -> bytes:
    digits = [at for at, byte in enumerate(raw) if chr(byte).isdigit()]
    data = bytearray(raw)
    if digits:
        data[luck.choice(digits)] = ord(luck.choice("0123456789-"))
    return bytes(data)


def _coding(raw: bytes, luck: Random) -> bytes:
    """As other editors save it."""
    text = raw.decode("utf-8", "replace")
    return luck.choice((
        lambda: b"\xef\xbb\xbf" + raw,
        lambda: b"\xef\xbb\xbf" * 2 + raw,
        lambda: raw.replace(b"\n", b"\r\n"),
        lambda: raw.replace(b"\n", b"\r"),
        lambda: text.encode("utf-16"),
        lambda: text.encode("utf-16-be"),
        lambda: text.encode("utf-32"),
        lambda: text.encode("latin-1", "replace") + b"\xe9",
        lambda: raw + b"\xff",
        lambda: text.encode("cp037", "replace"),
    ))()  # fmt: skip


def _filled(raw: bytes, luck: Random) -> bytes:
    """As a disk or a mail leaves it: nothing, zeros, other contents, far too much."""
    opening = luck.choice((b"[", b"{", b"a.", b"[[", b"x = [", b"x = {a = "))
    return luck.choice((
        lambda: b"",
        lambda: b"\n" * 9,
        lambda: bytes(len(raw)),
        lambda: raw[: len(raw) // 2] + bytes(512),
        lambda: b"SQLite format 3\0" + raw,
        lambda: b"<!DOCTYPE html><html><body>404</body></html>\n",
        lambda: b"<<<<<<< mine\n" + raw + b"=======\n" + raw + b">>>>>>> theirs\n",
        lambda: raw + b"\n" + opening * _DEEP,
        lambda: raw + b"\nx = " + b"[" * _DEEP + b"]" * _DEEP,
        lambda: raw + b"\n" + b"z" * _LONG,
        lambda: raw + b"\n# " + b"many words " * 120_000,
        lambda: raw + b"\n" + b"# a line\n" * 20_000,
        lambda: luck.randbytes(luck.randrange(1, 4000)),
    ))()  # fmt: skip


_IN_TEXT: tuple[Callable[[bytes, Random], bytes], ...] = (
    *(_flipped, _cut, _doubled, _lines, _lines, _piece, _piece, _value, _value, _value, _digit, _coding),
    _filled,
)

# -- in the place of a file


class Place(Enum):
    """What may lie where a file should be."""

    NOTHING = "nothing"
    FOLDER = "a folder"
    FULL_FOLDER = "a folder with files"
    PIPE = "a pipe"
    CIRCLE = "a link to itself"
    NOWHERE = "a link to nowhere"
    DEVICE = "a link to a device without end"
    HIDDEN = "a file that may not be read"
    HOLES = "a file of holes"


def place(path: Path, luck: Random) -> Place:
    """Put something else where the file or the folder is; gives what."""
    what = luck.choice(list(Place))
    if what is Place.HIDDEN:
        path.chmod(0)
        return what
    aside = path.with_name(f"{path.name}.aside")
    path.rename(aside)
    match what:
        case Place.FOLDER:
            path.mkdir()
        case Place.FULL_FOLDER:
            path.mkdir()
            (path / path.name).write_bytes(b"x = 1\n")
        case Place.PIPE:
            os.mkfifo(path)
        case Place.CIRCLE:
            path.symlink_to(path.name)
        case Place.NOWHERE:
            path.symlink_to("nowhere")
        case Place.DEVICE:
            path.symlink_to("/dev/zero")
        case Place.HOLES:
            path.write_bytes(aside.read_bytes() if aside.is_file() else b"")
            os.truncate(path, HUGE)
    return what


# -- in a journal

TABLES = ("sittings", "prompts", "marks", "actions")
_ODD = (
    None,
    -1,
    2**62,
    1.5,
    b"\xff\x00",
    "",
    "\x1b[31m",
    "[/b]",
    "\u202e",
    "9999-99-99",
    "x" * 9000,
    "[" * 9000,
)


def flipped(raw: bytes, seed: int) -> bytes:
    """The file with a few bits flipped: half of them anywhere, half in the pages that hold rows and keys."""
    chance, damaged = Random(seed), bytearray(raw)
    size = int.from_bytes(raw[16:18], "big")
    pages = [at for at in range(size, len(raw), size) if raw[at] in (2, 5, 10, 13)]
    for number in range(chance.randrange(4, 24)):
        at = chance.choice(pages) + chance.randrange(size) if number % 2 else chance.randrange(len(raw))
        damaged[at] ^= 1 << chance.randrange(8)
    return bytes(damaged)


def journal(path: Path, luck: Random) -> None:
    """Flip bits of a journal, cut it short, put odd values into its rows, or make it another kind of file."""
    raw = path.read_bytes()
    match luck.randrange(8):
        case 0 | 1:
            path.write_bytes(flipped(raw, luck.randrange(10**9)))
        case 2:
            path.write_bytes(raw[: luck.randrange(len(raw))])
        case 3 | 4 | 5:
            odd_values(path, luck)
        case 6:
            path.write_bytes(_filled(raw, luck))
        case _:
            _other_tables(path, luck)


def odd_values(path: Path, luck: Random) -> None:
    """Odd values in a few rows of a journal."""
    with closing(sqlite3.connect(path, isolation_level=None)) as db:
        db.execute("PRAGMA ignore_check_constraints = ON")
        for _ in range(luck.randrange(1, 6)):
            table = luck.choice(TABLES)
            column = luck.choice([row[1] for row in db.execute(f"PRAGMA table_info({table})")])
            keys = "child, date, sitting" if table != "actions" else "id"
            row = db.execute(f"SELECT {keys} FROM {table} ORDER BY {keys}").fetchall()
            where = " AND ".join(f"{key} IS ?" for key in keys.split(", "))
            with suppress(sqlite3.Error):
                values = (luck.choice(_ODD), *luck.choice(row or [keys.split(", ")]))
                db.execute(f"UPDATE {table} SET {column} = ? WHERE {where}", values)


def _other_tables(path: Path, luck: Random) -> None:
    """A journal whose tables are not those it should have, or whose version makes no sense."""
    table = luck.choice(TABLES)
    with closing(sqlite3.connect(path, isolation_level=None)) as db, suppress(sqlite3.Error):
        db.execute(
            luck.choice((
                f"DROP TABLE {table}",
                f"ALTER TABLE {table} RENAME TO other",
                f"DELETE FROM {table}",
                f"CREATE TRIGGER odd AFTER INSERT ON {table} BEGIN DELETE FROM {table}; END",
                f"CREATE VIEW odd AS SELECT * FROM {table}",
                "PRAGMA user_version = 99",
                "PRAGMA user_version = -5",
                "PRAGMA user_version = 0",
                "PRAGMA journal_mode = WAL",
                "PRAGMA encoding = 'UTF-16'",
            ))
        )  # fmt: skip
