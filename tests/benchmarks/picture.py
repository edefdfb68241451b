"""Makes the README's picture of a morning from the real app: ``python -m tests.benchmarks.picture``."""

import asyncio
import datetime as dt
import re
import tempfile
from pathlib import Path

from tests.benchmarks import _arguments
from tests.household import context_at, start_fixed
from warmup.tui.app import WarmupApp

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


if __name__ == "__main__":
    _arguments.parser("picture", __doc__).parse_args()
    TARGET.parent.mkdir(exist_ok=True)
    TARGET.write_text(asyncio.run(morning()), "utf-8")
    print(TARGET.name, "made")
