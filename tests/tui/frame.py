"""What a Textual app shows, as plain text: a row a line."""

import html
import re
from pathlib import Path

from textual.app import App

FRAMES = Path(__file__).parent.parent / "frames"
_TEXT = re.compile(r'<text class="[\w-]+-r\d+" x="([\d.]+)" y="([\d.]+)" [^>]*>(.*?)</text>', re.S)
# The size of a cell in Rich's SVG export.
_CELL_WIDTH, _CELL_HEIGHT = 12.2, 24.4


def frame(app: App[int]) -> str:
    """The screen as it is now."""
    columns, rows = app.size
    grid = [[" "] * columns for _ in range(rows)]
    for x, y, body in _TEXT.findall(app.export_screenshot()):
        row, column = round((float(y) - 20) / _CELL_HEIGHT), round(float(x) / _CELL_WIDTH)
        for at, glyph in enumerate(html.unescape(body).replace("\xa0", " ")):
            if row < rows and column + at < columns:
                grid[row][column + at] = glyph
    return "\n".join("".join(row).rstrip() for row in grid) + "\n"


def golden(name: str, shown: str) -> None:
    """Compare with the kept frame; to accept a change, delete the file and run the test twice.

    A frame that is missing is written, and the test fails once, so that nothing passes unseen.
    """
    path = FRAMES / f"{name}.txt"
    if not path.exists():
        path.parent.mkdir(exist_ok=True)
        path.write_text(shown, "utf-8")
        raise AssertionError(f"{path.name} was written: look at it, and run again")
    kept = path.read_text("utf-8")
    assert shown == kept, f"{path.name} has changed:\n{shown}"
