"""Rows read straight from the pages of a damaged file, where SQLite no longer finds the way to them.

By https://www.sqlite.org/fileformat2.html: 1.3 the header, 1.5 the freelist, 1.6 pages, 2.1 records. Only
tables without a rowid are read, and only rows that lie on one page: our prompts, marks and most notes.
"""

from collections.abc import Iterator
from contextlib import suppress

_KINDS = {0x0A: (8, 0), 0x02: (12, 4)}
"""By the first byte of a page: how long its head is, and what stands before a row. A leaf, and a branch."""
_LARGEST = 64_000_000
"""The largest file that is taken apart, in bytes: some thousand years of mornings."""
Value = int | str


def rows(raw: bytes) -> Iterator[tuple[Value, ...]]:
    """Every row of numbers and texts in the pages of a file; what makes no sense is passed over."""
    size = int.from_bytes(raw[16:18], "big")
    if size not in (512, 1024, 2048, 4096, 8192, 16384, 32768):
        size = 4096
    free = set(_free(raw, size))
    for number in range(2, min(len(raw), _LARGEST) // size + 1):
        page = raw[(number - 1) * size : number * size]
        head, before = _KINDS.get(page[0], (0, 0))
        if head and number not in free:
            for at in range(head, head + 2 * min(int.from_bytes(page[3:5], "big"), size // 4), 2):
                with suppress(IndexError, ValueError):
                    yield _row(page, int.from_bytes(page[at : at + 2], "big") + before)


def _free(raw: bytes, size: int) -> Iterator[int]:
    """The pages that hold nothing any more; what is written on them was deleted."""
    seen: set[int] = set()
    trunk = int.from_bytes(raw[32:36], "big")
    while trunk and trunk not in seen and trunk * size <= len(raw):
        seen.add(trunk)
        yield trunk
        page = raw[(trunk - 1) * size : trunk * size]
        number = min(int.from_bytes(page[4:8], "big"), size // 4 - 2)
        yield from (int.from_bytes(page[8 + 4 * n : 12 + 4 * n], "big") for n in range(number))
        trunk = int.from_bytes(page[:4], "big")


def _row(page: bytes, at: int) -> tuple[Value, ...]:
    """The row of a cell. ValueError where it is not whole, or holds something else than numbers and texts."""
    length, start = _varint(page, at)
    header, at = _varint(page, start)
    body, values = start + header, list[Value]()
    while at < start + header:
        kind, at = _varint(page, at)
        if kind in (8, 9):  # the numbers 0 and 1
            values.append(kind - 8)
            continue
        bytes_long = {1: 1, 2: 2, 3: 3, 4: 4, 5: 6, 6: 8}.get(kind, (kind - 13) // 2 if kind % 2 else -1)
        if bytes_long < 0 or body + bytes_long > len(page):
            raise ValueError("no number and no text, or one that goes on elsewhere")
        part = page[body : body + bytes_long]
        values.append(
            int.from_bytes(part, "big", signed=True) if kind < 7 else part.decode("utf-8", "replace")
        )
        body += bytes_long
    if at != start + header or body != start + length:
        raise ValueError("a row of another length")
    return tuple(values)


def _varint(page: bytes, at: int) -> tuple[int, int]:
    """The number at this place, in one to four bytes, and where it ends. Larger ones are none of ours."""
    value = 0
    for _ in range(4):
        byte = page[at]
        value, at = value << 7 | byte & 0x7F, at + 1
        if byte < 0x80:
            return value, at
    raise ValueError("too long a number")
