"""The real program in a terminal that says it is kitty: a picture over its cells, none once it is left."""

import time
from pathlib import Path

import pytest

from tests.journeys.test_stage import with_family
from tests.terminal import WARMUP, Terminal, environment
from tests.tui.kitty import Graphics
from warmup.pictures import TenFrame
from warmup.tui.paint import Look
from warmup.tui.panes import placed
from warmup.tui.raster import png
from warmup.tui.rasterizer import Job


def graphics(terminal: Terminal) -> Graphics:
    held = Graphics()
    held.feed(terminal.written.decode(errors="replace"))
    return held


@pytest.mark.slow
def test_the_picture_of_the_first_prompt_is_laid_over_its_cells(home: Path) -> None:
    with_family(home)
    with Terminal(WARMUP, environment(home, TERM="xterm-kitty"), cell=(3, 6)) as terminal:
        end = time.perf_counter() + 20
        while not (held := graphics(terminal)).came:
            assert terminal.read() and time.perf_counter() < end
        assert (held.only.column, held.only.row, held.only.columns, held.only.rows) == (1, 1, 38, 22)
        assert held.only.png == png(Job(placed(TenFrame(7), 40, 24, Look.DARK), (3, 6)).svg())
        terminal.press("8")
        assert terminal.finish() == 0
    held = graphics(terminal)
    assert (held.came, held.on_leaving, len(held.placements)) == (1, [0], 0)
