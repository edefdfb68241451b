"""How tests and campaigns wait for a screen: by the loop itself, and by no clock."""

import asyncio
from collections.abc import Callable
from typing import Any

from textual.pilot import Pilot

_ROUNDS = 10
"""So often at most what a paint leads to is painted as well."""


async def settled(at_least: float = 0, at_most: float = 1) -> None:
    """Wait until the loop has nothing left to do.

    Textual's own wait looks at the processor's time every 20 ms: with many keys it is most of the suite's
    time, and on a busy machine it ends too early or too late. The loop itself knows. No timer is waited for:
    :func:`settle_by_the_loop` paints, and the program's own timers are turned by hand.
    """
    ready, quiet = vars(asyncio.get_running_loop())["_ready"], 0
    while quiet < 3:
        await asyncio.sleep(0)
        quiet = 0 if ready else quiet + 1


def settle_by_the_loop(put: Callable[[object, str, Any], None]) -> None:
    """Let Textual's pilot wait by the loop, and paint what waited for a paint. ``put`` sets an attribute."""
    import textual.app
    import textual.pilot

    pause, resize = Pilot.pause, Pilot.resize_terminal

    async def pause_and_paint(pilot: Pilot[int], delay: float | None = None) -> None:
        await pause(pilot, delay)
        for _ in range(_ROUNDS):
            await settled()
            screen = pilot.app.screen
            waits = screen._layout_required or screen._scroll_required or screen._dirty_widgets
            if not (waits or screen._callbacks):
                break
            screen._on_timer_update()

    async def resize_at_once(pilot: Pilot[int], width: int, height: int) -> None:
        await resize(pilot, width, height)
        if pilot.app._resize_event is not None:
            pilot.app._check_resize()
        await pilot.pause()

    put(Pilot, "pause", pause_and_paint)
    put(Pilot, "resize_terminal", resize_at_once)
    for place in (textual.pilot, textual.app):
        put(place, "wait_for_idle", settled)
