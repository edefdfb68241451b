"""Draws every example of every picture to PNG files, to be looked at.

    python -m tests.benchmarks.contact_sheet FOLDER [--all] [KIND ...]

For each kind one sheet a size of the terminal, at the inner size the stage has there, and a look: dark,
light, dark in 256 colors, and the grays that NO_COLOR leaves. A pane that is too small stays empty.
With ``--all`` the whole sets of ``tests/pictures/full_sets.py`` take the place of the examples, on as
many sheets as they need; without a kind named, only the kinds that have such a set are drawn.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from html import escape
from pathlib import Path

from textual.color import Color

from tests.benchmarks import _arguments
from tests.pictures.blobs import filled
from tests.pictures.examples import EXAMPLES
from tests.pictures.full_sets import FULL
from warmup.pictures import Drawing, Ink, Picture, kinds
from warmup.pictures.ink import Mix
from warmup.tui import few_colors
from warmup.tui.paint import Look, color_of

PANES = {"80x24": (38, 22), "60x20": (60, 9), "120x36": (80, 34), "160x45": (120, 43)}
CELL_WIDTH, CELL_HEIGHT = 10, 20
SHEET_WIDTH = 2100
SHEET_HEIGHT = 2000


Colors = Callable[[Mix], str]


def looks() -> dict[str, Colors]:
    """The color of a mix in each look; grays by luminance, as Textual's monochrome filter makes them."""
    return {
        "dark": lambda mix: color_of(mix, Look.DARK),
        "light": lambda mix: color_of(mix, Look.LIGHT),
        "few": lambda mix: few_colors.hexadecimal(few_colors.color_at(few_colors.number_of(mix, Look.DARK))),
        "gray": lambda mix: Color.parse(color_of(mix, Look.DARK)).monochrome.hex,
    }


def _rect(x: float, y: float, width: float, height: float, fill: str) -> str:
    return f'<rect x="{x}" y="{y}" width="{width}" height="{height}" fill="{fill}"/>'


def _text(x: float, y: float, text: str, fill: str, bold: bool = False) -> str:
    weight = ' font-weight="bold"' if bold else ""
    return f'<text x="{x}" y="{y}" fill="{fill}"{weight} xml:space="preserve">{escape(text)}</text>'


def drawn(drawing: Drawing, look: Colors, left: float, top: float) -> list[str]:
    """The SVG parts of a drawing, its upper left corner at (left, top)."""
    parts = []
    for row, cells in enumerate(drawing.cells):
        for column, cell in enumerate(cells):
            x, y = left + column * CELL_WIDTH, top + row * CELL_HEIGHT
            if cell.paper is not Ink.GROUND:
                parts.append(_rect(x, y, CELL_WIDTH, CELL_HEIGHT, look(cell.paper)))
            blocks = filled(cell.glyph)
            if blocks is None:
                parts.append(_text(x, y + 0.78 * CELL_HEIGHT, cell.glyph, look(cell.ink), cell.bold))
            for across, down, wide, high in blocks or ():
                parts.append(
                    _rect(
                        x + across * CELL_WIDTH,
                        y + down * CELL_HEIGHT,
                        wide * CELL_WIDTH,
                        high * CELL_HEIGHT,
                        look(cell.ink),
                    )
                )
    return parts


def _place(pane: tuple[int, int]) -> tuple[int, int]:
    """Width and height of the place of one picture: its pane, a rim, and a line for its words."""
    columns, rows = pane
    return (columns + 2) * CELL_WIDTH, (rows + 3) * CELL_HEIGHT


def pages(pictures: tuple[Picture, ...], pane: tuple[int, int]) -> list[tuple[Picture, ...]]:
    """The pictures, as many to a sheet as it holds."""
    wide, high = _place(pane)
    room = (SHEET_WIDTH // wide) * (SHEET_HEIGHT // high)
    return [pictures[at : at + room] for at in range(0, len(pictures), room)]


def sheet(pictures: tuple[Picture, ...], pane: tuple[int, int], look: Colors, smooth: bool) -> str:
    """All pictures of a kind at one size and look, each over its words, as one SVG."""
    columns, rows = pane
    wide, high = _place(pane)
    across = min(SHEET_WIDTH // wide, len(pictures))
    width, height = across * wide, -(-len(pictures) // across) * high
    parts = [_rect(0, 0, width, height, "#808080")]
    for number, picture in enumerate(pictures):
        left, top = number % across * wide + CELL_WIDTH, number // across * high + CELL_HEIGHT
        parts.append(_rect(left, top, columns * CELL_WIDTH, rows * CELL_HEIGHT, look(Ink.GROUND)))
        least = picture.least()
        if picture.fits(columns, rows):
            parts += drawn(picture.draw(columns, rows, smooth=smooth), look, left, top)
        words = f"{picture.words()} (from {least[0]}x{least[1]})"[:columns]
        parts.append(_text(left, top + (rows + 0.8) * CELL_HEIGHT, words, "#ffffff"))
    family = 'font-family="DejaVu Sans Mono, monospace" font-size="16.6" shape-rendering="crispEdges"'
    size = f'width="{width}" height="{height}"'
    return f'<svg xmlns="http://www.w3.org/2000/svg" {size} {family}>{"".join(parts)}</svg>'


def sheets(names: Sequence[str], sets: Mapping[str, tuple[Picture, ...]]) -> Iterator[tuple[str, str]]:
    """The sheets of ``sets`` by name, of every kind unless some are named, as SVG."""
    for kind in names or sets:
        for pane_name, pane in PANES.items():
            for number, page in enumerate(pages(sets[kind], pane)):
                many = f"-{number + 1}" if number else ""
                for name, look in looks().items():
                    svg = sheet(page, pane, look, smooth=name != "gray")
                    yield f"{kind}-{pane_name}-{name}{many}", svg


def main(folder: Path, names: list[str], sets: Mapping[str, tuple[Picture, ...]]) -> None:
    """Write the sheets to PNG files."""
    import resvg_py

    folder.mkdir(parents=True, exist_ok=True)
    for kind in sorted(set(kinds()) - set(EXAMPLES)):
        print(f"no example of {kind}: see tests/pictures/examples.py")
    for name, svg in sheets(names, sets):
        (folder / f"{name}.png").write_bytes(bytes(resvg_py.svg_to_bytes(svg_string=svg)))


if __name__ == "__main__":
    asked = _arguments.parser("contact_sheet", __doc__)
    asked.add_argument("folder", type=Path, metavar="FOLDER", help="where the sheets go")
    asked.add_argument("kinds", nargs="*", choices=[[], *EXAMPLES], metavar="KIND", help="a kind of picture")
    asked.add_argument("--all", action="store_true", help="whole sets in the place of the examples")
    wanted = asked.parse_intermixed_args()
    sets = ({**EXAMPLES, **FULL} if wanted.kinds else FULL) if wanted.all else EXAMPLES
    main(wanted.folder, wanted.kinds, sets)
