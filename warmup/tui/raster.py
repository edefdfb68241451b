"""Rasterizes SVG in a process of its own: the library that does it holds Python's lock, and keys would wait.

Run as a file, it needs nothing of this program. On its standard input come documents, on its output go their
PNG, each after its length in four bytes; a length of 0 says that there is none.
"""

import struct
import sys
from functools import cache
from typing import BinaryIO

LENGTH = struct.Struct(">I")
LETTERS = (
    '<svg xmlns="http://www.w3.org/2000/svg" width="40" height="20">'
    '<text x="2" y="16" font-family="{}" font-size="16" fill="#000">{}</text></svg>'
)


def png(document: str) -> bytes:
    """The document as PNG, at its own size in pixels; empty where its letters would be left out.

    Raises:
        ValueError: it is no SVG.
    """
    written = "<text" in document
    if written and not _letters_come_out():
        return b""
    return _rasterized(document, written=written)


@cache
def _letters_come_out() -> bool:
    """Whether this machine has a font for letters: without one they are left out in silence."""
    family = "DejaVu Sans Mono, Liberation Mono, Menlo, Consolas, monospace"
    seen, blank = (_rasterized(LETTERS.format(family, text), written=True) for text in ("0a", " "))
    return seen != blank


def _rasterized(document: str, *, written: bool) -> bytes:
    import resvg_py

    # To look for the system's fonts takes longer than most pictures do.
    found = resvg_py.svg_to_bytes(svg_string=document, dpi=96, skip_system_fonts=not written)
    return bytes(found)


def serve(jobs: BinaryIO, done: BinaryIO) -> None:
    """Answer until there are no more jobs."""
    while head := jobs.read(LENGTH.size):
        document = jobs.read(LENGTH.unpack(head)[0]).decode()
        try:
            answer = png(document)
        except ValueError:
            answer = b""
        done.write(LENGTH.pack(len(answer)) + answer)
        done.flush()


if __name__ == "__main__":
    serve(sys.stdin.buffer, sys.stdout.buffer)
