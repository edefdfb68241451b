"""The real program in a pseudo-terminal: started, typed at, and read as a screen of text."""

import fcntl
import os
import pty
import select
import signal
import struct
import sys
import termios
import time
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

import pyte

_PIECES = 0.05
"""Two pieces of one frame are never so many seconds apart."""
# What would make this terminal another than a user's: colors, size, and no compiled files kept.
_NOT_KEPT = ("NO_COLOR", "COLORTERM", "COLUMNS", "LINES", "PYTHONDONTWRITEBYTECODE")
KEYS = {"up": "\x1b[A", "down": "\x1b[B", "right": "\x1b[C", "left": "\x1b[D", "enter": "\r", "space": " "}


class Terminal:
    """A child process on a pseudo-terminal of ``columns`` by ``rows``; use as a context manager.

    ``cell`` are the pixels of a cell across and down that it tells, as some terminals do.
    """

    def __init__(
        self,
        command: Sequence[str],
        environ: Mapping[str, str],
        columns: int = 80,
        rows: int = 24,
        cell: tuple[int, int] = (0, 0),
    ) -> None:
        self.screen = pyte.Screen(columns, rows)
        self._stream = pyte.ByteStream(self.screen)
        self.written = b""
        """All that the program wrote, byte by byte."""
        self.cpu = 0.0
        """The processor's seconds that the program took until it was killed."""
        self.began = time.perf_counter()
        size = struct.pack("HHHH", rows, columns, columns * cell[0], rows * cell[1])
        self.pid, self._fd = pty.fork()
        if self.pid == 0:
            fcntl.ioctl(0, termios.TIOCSWINSZ, size)
            # A run started in the background ignores the interrupt, and would hand that on.
            signal.signal(signal.SIGINT, signal.SIG_DFL)
            os.execvpe(command[0], list(command), dict(environ))
        fcntl.ioctl(self._fd, termios.TIOCSWINSZ, size)

    def __enter__(self) -> "Terminal":
        return self

    def __exit__(self, *_: object) -> None:
        self.kill()

    def read(self, seconds: float = 0.05) -> bool:
        """Take in what the program writes within ``seconds``; False once it has gone."""
        ready, _, _ = select.select([self._fd], [], [], seconds)
        if not ready:
            return True
        try:
            data = os.read(self._fd, 65536)
        except OSError:
            return False
        self.written += data
        if data:
            self._stream.feed(data)
        return bool(data)

    def until(self, mark: bytes, seconds: float = 15.0) -> float:
        """Seconds from the start until the program has written ``mark``, unparsed: for measuring.

        Reading a frame into the screen of text takes as long as some programs take to paint it.
        """
        seen, end = b"", time.perf_counter() + seconds
        while mark not in seen:
            ready, _, _ = select.select([self._fd], [], [], 0.5)
            seen += os.read(self._fd, 1 << 20) if ready else b""
            assert time.perf_counter() < end, f"never came: {mark!r}"
        return time.perf_counter() - self.began

    def text(self) -> str:
        """What is on the screen, a line a row."""
        return "\n".join(line.rstrip() for line in self.screen.display)

    def wait(self, until: Callable[[str], bool] | str, seconds: float = 15.0) -> str:
        """Read until the screen holds a text or satisfies a test; AssertionError if it never does."""
        test = (lambda text: until in text) if isinstance(until, str) else until
        end = time.perf_counter() + seconds
        while not test(self.text()):
            alive = self.read()
            if test(self.text()):
                break
            assert alive, f"the program ended:\n{self.text()}"
            assert time.perf_counter() < end, f"never came: {until!r}\n{self.text()}"
        # A frame larger than the terminal's buffer comes in pieces: the rest of it belongs to what came.
        while select.select([self._fd], [], [], _PIECES)[0] and self.read() and time.perf_counter() < end:
            pass
        return self.text()

    def press(self, *keys: str) -> None:
        """Type keys: names from KEYS, or single characters."""
        os.write(self._fd, "".join(KEYS.get(key, key) for key in keys).encode())

    def finish(self, seconds: float = 10.0) -> int:
        """Read until the program ends by itself; its exit code."""
        end = time.perf_counter() + seconds
        while self.read():
            assert time.perf_counter() < end, f"it goes on and on:\n{self.text()}"
        _, status = os.waitpid(self.pid, 0)
        self.pid = 0
        os.close(self._fd)
        return os.waitstatus_to_exitcode(status)

    def kill(self) -> None:
        """End the program at once, as a power cut would."""
        if self.pid:
            os.kill(self.pid, signal.SIGKILL)
            _, _, used = os.wait4(self.pid, 0)
            self.cpu = used.ru_utime + used.ru_stime
            os.close(self._fd)
            self.pid = 0


def environment(home: Path, **more: str) -> dict[str, str]:
    """The environment of a color terminal whose warmup keeps its files in ``home``."""
    kept = {key: value for key, value in os.environ.items() if key not in _NOT_KEPT}
    return {**kept, "TERM": "xterm-256color", "COLORTERM": "truecolor", "WARMUP_HOME": str(home), **more}


WARMUP = (sys.executable, "-m", "warmup")
