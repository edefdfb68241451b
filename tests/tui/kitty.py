"""What a terminal holds that speaks kitty's graphics protocol, told from what is written to it.

By the protocol's own page, https://sw.kovidgoyal.net/kitty/graphics-protocol/: "Control data reference",
"Remote client" (chunks) and "Deleting images"; only what this program has a use for.
"""

import re
from base64 import b64decode
from typing import NamedTuple

_PART = re.compile(r"\x1b_G([^;\x1b]*)(?:;([^\x1b]*))?\x1b\\|\x1b\[(\d+);(\d+)H|(\x1b\[\?1049l)")
CHUNK = 4096
"""No chunk is longer, and all but the last of a picture have a length that 4 divides."""


class Placement(NamedTuple):
    """A picture in its rectangle of cells, from 0."""

    png: bytes
    column: int
    row: int
    columns: int
    rows: int


class Graphics:
    """The placements there are, the most there ever were at once, and how many pictures came."""

    def __init__(self) -> None:
        self.placements: dict[tuple[str, str], Placement] = {}
        self.most = self.came = 0
        self.on_leaving: list[int] = []
        """How many there were each time the program's screen was left."""
        self._cursor = 0, 0
        self._keys: dict[str, str] = {}
        self._body = ""

    def feed(self, text: str) -> None:
        """Take in what was written."""
        for keys, body, row, column, left in _PART.findall(text):
            if left:
                self.on_leaving.append(len(self.placements))
            elif row:
                self._cursor = int(column) - 1, int(row) - 1
            else:
                self._told(dict(key.split("=") for key in keys.split(",")), body)

    @property
    def only(self) -> Placement:
        """The one there is."""
        (placement,) = self.placements.values()
        return placement

    def _told(self, keys: dict[str, str], body: str) -> None:
        assert keys["q"] == "2", "an answer of the terminal would come as keys"
        if keys.get("a") == "d":
            assert keys["d"] in "iI"
            for at in [at for at in self.placements if at[0] == keys["i"]]:
                del self.placements[at]
            return
        if "a" in keys:
            assert (keys["a"], keys["f"], keys["t"], keys["C"]) == ("T", "100", "d", "1"), keys
            assert not self._body, "a picture within another"
            self._keys = keys
        more = keys["m"] == "1"
        assert len(body) <= CHUNK and (len(body) % 4 == 0 or not more)
        self._body += body
        if not more:
            self._put(self._keys, b64decode(self._body, validate=True))
            self._body = ""

    def _put(self, keys: dict[str, str], png: bytes) -> None:
        placed = Placement(png, *self._cursor, int(keys["c"]), int(keys["r"]))
        self.placements[keys["i"], keys["p"]] = placed
        self.came += 1
        self.most = max(self.most, len(self.placements))
