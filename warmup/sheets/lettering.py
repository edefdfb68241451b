"""How wide letters are, so that a text can be broken into lines without a font at hand.

Widths are in thousandths of the size, measured from Liberation Sans, which has the metrics of Helvetica.
"""

from collections.abc import Iterator

from warmup.sheets.lines import Drawn, Words
from warmup.sheets.paper import ROOM

_WIDTHS = {
    191: "'", 222: "ijl’", 260: "|", 278: " !,./:;I[\\]ft", 333: "-()`r“”", 334: "{}", 355: '"', 389: "*",
    400: "°", 469: "^", 500: "Jcksvxyz", 556: "#$0123456789?L_abdeghnopqu–¢", 584: "+<=>~×", 611: "FTZ",
    667: "&ABEKPSVXY", 722: "CDHNRUw", 778: "GOQ", 833: "Mm", 889: "%", 944: "W", 1000: "…", 1015: "@",
}  # fmt: skip
_WIDTH = {letter: width for width, letters in _WIDTHS.items() for letter in letters}
_LEADING = 1.25
"""From one line to the next, in sizes of the letters."""
_OTHER = 1015
"""What any other letter is taken for."""
_SLACK = 1.06
"""Another font of the list is a little wider (common practice, no source)."""


def width(text: str, size: float) -> float:
    """How wide a text is at most, in the unit of its size."""
    return sum(_WIDTH.get(letter, _OTHER) for letter in text) / 1000 * size * _SLACK


def broken(text: str, size: float, wide: float) -> Iterator[str]:
    """The text in lines no wider than that, broken between words; a word that is too wide breaks anywhere."""
    line = ""
    for word in text.split():
        if line and width(f"{line} {word}", size) > wide:
            yield line
            line = ""
        line = f"{line} {word}".strip()
        while width(line, size) > wide and len(line) > 1:
            most = next(at for at in range(len(line), 0, -1) if at == 1 or width(line[:at], size) <= wide)
            yield line[:most]
            line = line[most:]
    if line:
        yield line


def written(drawn: list[Drawn], text: str, left: float, top: float, size: float) -> float:
    """Put a text onto a page in lines, from its left edge to the right one; where the next one begins."""
    for line in broken(text, size, ROOM.wide - left):
        drawn.append(Words((left, top + _LEADING * size / 2), line, size, anchor=0.0))
        top += _LEADING * size
    return top
