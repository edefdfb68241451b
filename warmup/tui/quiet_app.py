"""An app that ends without a word of Textual's own, and draws in UTF-8."""

import gc
import io
import sys

from textual.app import App


class QuietApp(App[int]):
    """Ends at once at an error, which :meth:`ended` raises again for the command line to say."""

    def _handle_exception(self, error: Exception) -> None:
        """End at once and without a word: Textual's own report shows what every variable holds."""
        self._return_code = 1
        if self._exception is None:
            self._exception = error
            self._exception_event.set()
        self._close_messages_no_wait()

    def ended(self) -> int:
        """The exit code, once the program has run. Raises what ended it, if an error did."""
        if self._exception is not None:
            raise self._exception
        return self.return_code or 0


def draw_in_utf8() -> None:
    """Let the screen be drawn in UTF-8 whatever the locale says: its shapes are in no narrower coding."""
    for stream in (sys.__stdout__, sys.__stderr__):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(encoding="utf-8")


def collect_again() -> None:
    """Look for garbage again, but not among what the start has loaded."""
    gc.freeze()
    gc.enable()
