"""The program in a terminal that shows true pixels: what it writes is kept, and nothing is rasterized."""

from textual.pilot import Pilot

from tests.tui.kitty import Graphics
from warmup.tui.panes import Stage
from warmup.tui.pixels import Pixels
from warmup.tui.quiet_app import QuietApp
from warmup.tui.rasterizer import Job
from warmup.tui.terminal import Cell


def told(job: Job) -> bytes:
    """What stands for a raster: all that it would be made of."""
    return repr((job.painted, job.cell)).encode()


class Shown:
    """An app's pixels, and what the terminal holds of them."""

    def __init__(self, app: QuietApp, cell: Cell = (9, 18)) -> None:
        self.app, self.cell, self.graphics = app, cell, Graphics()
        assert app._driver is not None
        vars(app._driver)["write"] = self.graphics.feed
        self.pixels = app.pixels = Pixels(app, lambda: self.cell, told)

    async def settles(self, pilot: Pilot[int]) -> None:
        """Wait until the cells are drawn, what there is to make is made, and the terminal has it.

        What is never right is left to the check after this.
        """
        await pilot.pause()
        for _ in range(50):
            if not self.pixels._busy and self.is_right() and not self.app.screen._dirty_widgets:
                return
            await pilot.pause(0.01)

    def is_right(self) -> bool:
        """Whether the terminal holds the picture that the stage's cells show, or none where they show none.

        It must be all of them: a page, a toast or a tooltip over some leaves no room for pixels.
        """
        stage = next(iter(self.app.screen.query(Stage)), None)
        if stage is None or stage.painted is None or not self._all_seen(stage):
            return not self.graphics.placements
        at, region = stage.painted, stage.region
        wanted = told(Job(at, self.cell)), region.x + at.side, region.y + at.top, at.columns, at.rows
        return [*self.graphics.placements.values()] == [wanted]

    def _all_seen(self, stage: Stage) -> bool:
        """Whether each corner, and every other cell between, is the stage's own on the screen."""
        region, (columns, rows) = stage.region, self.app.size
        inside = region.x >= 0 and region.y >= 0 and region.right <= columns and region.bottom <= rows
        across = {*range(region.x, region.right, 2), region.right - 1}
        down = {*range(region.y, region.bottom, 2), region.bottom - 1}
        cells = ((x, y) for y in down for x in across)
        return bool(region.area) and inside and all(self.app.get_widget_at(*at)[0] is stage for at in cells)
