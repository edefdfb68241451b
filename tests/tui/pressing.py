"""Keys pressed in a program that runs without a terminal, and the screen they are pressed on."""

from textual.pilot import Pilot

from warmup.tui.app import WarmupApp
from warmup.tui.morning import MorningScreen


async def press(pilot: Pilot[int], *keys: str) -> None:
    """Press keys and let the screen settle after each: no hand is so fast that it comes before the paint."""
    for key in keys:
        await pilot.press(key)
        await pilot.pause()
    await pilot.pause()


def morning(app: WarmupApp) -> MorningScreen:
    """The morning screen."""
    assert isinstance(app.screen, MorningScreen)
    return app.screen
