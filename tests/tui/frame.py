"""What a Textual app shows, as plain text: a row a line."""

from pathlib import Path

from rich.cells import cell_len
from textual._compositor import LayoutUpdate
from textual.app import App

FRAMES = Path(__file__).parent.parent / "frames"


def frame(app: App[int]) -> str:
    """The screen as it is now, painted whole, without the detour over Textual's SVG of it."""
    columns, rows = app.size
    painted = app.screen._compositor.render_update(full=True, screen_stack=app._background_screens)
    assert isinstance(painted, LayoutUpdate)
    grid = [[" "] * columns for _ in range(rows)]
    for row, strips in zip(grid, painted.strips, strict=False):
        column = 0
        for text, _, control in (segment for strip in strips for segment in strip):
            if not control:
                put = text.replace("\xa0", " ")[: max(0, columns - column)]
                row[column : column + len(put)] = put
                column += cell_len(text)
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
