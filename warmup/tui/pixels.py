"""True pixels: the picture that paper gets, laid over the cells of the stage by kitty's graphics protocol.

(https://sw.kovidgoyal.net/kitty/graphics-protocol/.) The cells are always drawn underneath, so whatever is
not certain means taking the pixels away. Nothing is asked of the terminal: an answer would come as keys.
"""

import asyncio
import threading
from base64 import b64encode
from collections.abc import Callable, Iterator
from contextlib import suppress
from typing import TYPE_CHECKING, NamedTuple

from warmup.tui.paint import look_of
from warmup.tui.panes import Stage, placed
from warmup.tui.rasterizer import Job, Rasterizer
from warmup.tui.terminal import Cell, cell_pixels

if TYPE_CHECKING:
    from warmup.tui.quiet_app import QuietApp

_IMAGE = "i=2027"
"""The number of the one image there is: in a terminal's window it is the program's own to choose."""
_CHUNK = 4096
"""The most of a picture in one escape, in letters of base64 (the protocol's "Remote client")."""
GONE = f"\x1b_Ga=d,d=I,{_IMAGE},q=2\x1b\\"
"""Takes the image and its placement away; ``q=2`` here and below: the terminal answers nothing."""
_TOGETHER, _SHOWN = "\x1b[?2026h", "\x1b[?2026l"
"""Synchronized output: what stands between them shows at once."""

_KEPT = 12
"""The rasters kept: those about the prompt at hand, in one size and look."""


class Place(NamedTuple):
    """A rectangle of cells on the screen, from 0."""

    column: int
    row: int
    columns: int
    rows: int


def shown(png: bytes, place: Place) -> str:
    """The escapes that put a PNG in its place, in that of the one before; the cursor stays where it is."""
    text = b64encode(png).decode()
    chunks = [text[at : at + _CHUNK] for at in range(0, len(text), _CHUNK)]
    column, row, columns, rows = place
    keys = f"a=T,f=100,t=d,{_IMAGE},p=1,c={columns},r={rows},C=1,"
    parts = []
    for number, chunk in enumerate(chunks, start=1):
        parts.append(f"\x1b_G{keys}q=2,m={int(number < len(chunks))};{chunk}\x1b\\")
        keys = ""
    return f"{_TOGETHER}{GONE}\x1b7\x1b[{row + 1};{column + 1}H{''.join(parts)}\x1b8{_SHOWN}"


class Pixels:
    """The one picture over the stage: laid there, moved, and taken away, after each time the cells are drawn.

    ``cell`` tells the pixels of a cell, and ``raster`` makes PNG of a job, in a thread of its own.
    """

    def __init__(
        self,
        app: "QuietApp",
        cell: Callable[[], Cell | None] = cell_pixels,
        raster: Callable[[Job], bytes | None] | None = None,
    ) -> None:
        self._app, self._cell = app, cell
        own = Rasterizer()
        self._raster, self._end = raster or own, own.end
        self._made: dict[Job, bytes | None] = {}
        self._busy = self._away = False
        self._left = 0
        """How often the terminal was given back: what was begun before counts no more."""
        self._standing: tuple[Job, Place] | None = None
        _wrap_driver(app, self._leave, self._return)

    def settle(self) -> None:
        """Lay the picture over the cells that show it, once it is made; take away what no longer belongs."""
        found = None if self._away else self._found()
        self._stand(found if found and self._made.get(found[0]) else None)
        if not self._away and not self._busy:
            self._make_next(found)

    def _stand(self, wanted: tuple[Job, Place] | None) -> None:
        if wanted == self._standing or self._app._driver is None:
            return
        self._standing = wanted
        png = self._made[wanted[0]] if wanted else None
        self._app._driver.write(shown(png, wanted[1]) if wanted and png else GONE)
        self._app._driver.flush()

    # -- what belongs over the stage

    def _found(self) -> tuple[Job, Place] | None:
        """What the stage's cells show, and where, if all of it shows."""
        stage, cell = self._app.stage_on_screen(), self._cell()
        if stage is None or stage.painted is None or cell is None or not _uncovered(stage):
            return None
        at, region = stage.painted, stage.region
        if region.size != (at.columns + 2 * at.side, at.rows + 2 * at.top):
            return None
        return Job(at, cell), Place(region.x + at.side, region.y + at.top, at.columns, at.rows)

    def _coming(self) -> Iterator[Job]:
        stage, cell = self._app.stage_on_screen(), self._cell()
        if stage is not None and cell is not None and all(stage.size):
            for picture in stage.coming():
                at = placed(picture, *stage.size, look_of(self._app.theme))
                if picture.fits(at.columns, at.rows):
                    yield Job(at, cell)

    # -- making them

    def _make_next(self, found: tuple[Job, Place] | None) -> None:
        """Make the picture on screen, or else one that the next keys may bring."""
        jobs = [found[0]] if found else []
        job = next((job for job in (*jobs, *self._coming()) if job not in self._made), None)
        if job is not None:
            self._busy = True
            given = job, self._left, asyncio.get_running_loop()
            threading.Thread(target=self._make, args=given, name="pixels", daemon=True).start()

    def _make(self, job: Job, left: int, loop: asyncio.AbstractEventLoop) -> None:
        """In the thread: make one, and tell the program, unless that has ended meanwhile."""
        png = self._raster(job)
        with suppress(RuntimeError):
            loop.call_soon_threadsafe(self._take, job, left, png)

    def _take(self, job: Job, left: int, png: bytes | None) -> None:
        self._busy = False
        if left == self._left:
            self._made[job] = png
            while len(self._made) > _KEPT:
                standing = self._standing[0] if self._standing else None
                self._made.pop(next(each for each in self._made if each != standing))
        self.settle()

    # -- leaving, for good or for a while

    def _leave(self) -> None:
        self._away, self._left = True, self._left + 1
        self._stand(None)
        self._end()

    def _return(self) -> None:
        self._away = False


def _uncovered(stage: Stage) -> bool:
    """Whether the whole stage is on the screen, and nothing of that lies over it, as a tooltip would."""
    screen = stage.screen
    others = (each for each in screen.children if each is not stage and each.display)
    return screen.region.contains_region(stage.region) and not any(
        stage.region.overlaps(each.region) for each in others
    )


def _wrap_driver(app: "QuietApp", leave: Callable[[], None], back: Callable[[], None]) -> None:
    """Have something done before the terminal is given back, however that comes, and after it is taken."""
    driver = app._driver
    if driver is None:
        return
    stop, start = driver.stop_application_mode, driver.start_application_mode

    def stopped() -> None:
        leave()
        stop()

    def started() -> None:
        start()
        back()

    vars(driver).update(stop_application_mode=stopped, start_application_mode=started)
