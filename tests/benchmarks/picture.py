"""Makes the README's picture of a morning from the real app: ``python -m tests.benchmarks.picture``.

With ``--times`` it prints instead how long each example of a picture takes to be drawn and turned into
strips, at the sizes of the stage: the first time, when its mixes are yet to be worked out, and again.
"""

import asyncio
import datetime as dt
import gc
import re
import statistics
import tempfile
import time
from pathlib import Path

from tests.benchmarks import _arguments
from tests.benchmarks.contact_sheet import PANES
from tests.household import context_at, start_fixed
from tests.pictures.examples import EXAMPLES
from warmup.pictures import Picture
from warmup.tui.app import WarmupApp
from warmup.tui.paint import Look, stage_strips

TARGET = Path(__file__).parents[2] / ".pictures" / "morning.svg"


async def morning() -> str:
    """The fixed morning at its first prompt with two cues shown, 100 columns by 28 rows."""
    with tempfile.TemporaryDirectory() as folder:
        context = context_at(Path(folder), lambda: dt.datetime(2027, 3, 3, 8))
        start_fixed(context)
        assert context.journal is not None
        app = WarmupApp(context, context.journal, lambda: dt.datetime(2027, 3, 3, 8))
        async with app.run_test(size=(100, 28)) as pilot:
            await pilot.press("space", "space")
            await pilot.pause()
            picture = app.export_screenshot(title="warmup")
        context.journal.shut()
    # The fonts the export would fetch from elsewhere are left out: any fixed-width font does.
    return re.sub(r"@font-face \{.*?\}", "", picture, flags=re.S).replace("Fira Code", "monospace")


def drawing_time(picture: Picture, pane: tuple[int, int]) -> float:
    """Milliseconds of this process, so that what else runs on the machine does not count."""
    began = time.process_time()
    stage_strips(picture.draw(*pane, smooth=True), Look.DARK)
    return 1000 * (time.process_time() - began)


def print_times() -> None:
    """A line an example with its times at each size, and the slowest five of each size."""
    gc.collect()
    gc.freeze()  # As after the first frame of the program: what is loaded is not looked through again.
    slowest: dict[str, list[tuple[float, str]]] = {size: [] for size in PANES}
    print(f"{'ms, first and again':<22}", *(f"{size:>14}" for size in PANES))
    for kind, pictures in EXAMPLES.items():
        for number, picture in enumerate(pictures):
            name, shown = f"{kind} {number + 1}", []
            for size, pane in PANES.items():
                if picture.fits(*pane):
                    first, again = drawing_time(picture, pane), drawing_time(picture, pane)
                    slowest[size].append((first, name))
                    shown.append(f"{first:7.1f}{again:7.1f}")
                else:
                    shown.append(f"{'words':>14}")
            print(f"{name:<22}", *shown)
    for size, times in slowest.items():
        worst = ", ".join(f"{name} {first:.1f}" for first, name in sorted(times, reverse=True)[:5])
        print(f"{size}: median {statistics.median(first for first, _ in times):.1f}; slowest {worst}")


if __name__ == "__main__":
    asked = _arguments.parser("picture", __doc__)
    asked.add_argument("--times", action="store_true", help="print drawing times")
    if asked.parse_args().times:
        print_times()
        raise SystemExit
    _arguments.all_colors()
    TARGET.parent.mkdir(exist_ok=True)
    TARGET.write_text(asyncio.run(morning()), "utf-8")
    print(TARGET.name, "made")
