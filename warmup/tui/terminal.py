"""Whether the terminal shows true pixels, told from what is known of it without a question.

Loaded once the first frame is out, so what lays them there is loaded only where it is used.
"""

import os
import sys
from collections.abc import Mapping
from typing import TYPE_CHECKING

from warmup.tui.paint import Depth, depth_of

if TYPE_CHECKING:
    from warmup.tui.pixels import Pixels
    from warmup.tui.quiet_app import QuietApp

_TERMS = frozenset({"xterm-kitty", "xterm-ghostty"})
_PROGRAMS = frozenset({"ghostty", "WezTerm"})
_BETWEEN = ("TMUX", "STY", "ZELLIJ")
"""What a program that stands between sets: it shows text in panes of its own, and no pictures."""

Cell = tuple[int, int]
"""The pixels of one cell, across and down."""


def speaks(environ: Mapping[str, str]) -> bool:
    """Whether the terminal is one that speaks the protocol, with nothing between it and the program."""
    term, program = environ.get("TERM", ""), environ.get("TERM_PROGRAM", "")
    if any(environ.get(name) for name in _BETWEEN) or term.startswith(("screen", "tmux")):
        return False
    if term in _TERMS or program in _PROGRAMS:
        return True
    # Set for whatever kitty starts, another terminal too: those that give their names give them here.
    return bool(environ.get("KITTY_WINDOW_ID")) and term.startswith("xterm") and not program


def cell_pixels() -> Cell | None:
    """The pixels of one cell across and down, as the terminal's driver knows them; None where it doesn't."""
    try:
        import fcntl
        import struct
        import termios

        # Where Textual writes to; a stream that was closed before the start is None.
        stream = sys.__stderr__
        told = fcntl.ioctl(stream.fileno(), termios.TIOCGWINSZ, bytes(8)) if stream else bytes(8)
    except (ImportError, OSError, ValueError):
        return None
    rows, columns, wide, high = struct.unpack("HHHH", told)
    cell = (wide // columns, high // rows) if rows and columns else (0, 0)
    return cell if all(cell) else None


def begun(app: "QuietApp") -> "Pixels | None":
    """The pixels of an app that runs, where its terminal shows them and the library is installed."""
    from importlib.util import find_spec

    depth = depth_of(app.no_color, app.console.color_system)
    there = not app.is_headless and speaks(os.environ) and depth is Depth.ALL and cell_pixels() is not None
    if not there or not find_spec("resvg_py"):
        return None
    from warmup.tui.pixels import Pixels

    return Pixels(app)
