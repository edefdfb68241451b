"""SVG as pixels: rendered by a library, its PNG decoded here (PNG Specification, ISO/IEC 15948)."""

import struct
import zlib
from collections.abc import Iterator

import resvg_py

Pixels = list[list[tuple[int, int, int]]]


def rendered(svg: str, dots_per_inch: int) -> Pixels:
    """The red, green and blue of each pixel, row by row."""
    return decoded(bytes(resvg_py.svg_to_bytes(svg_string=svg, dpi=dots_per_inch, skip_system_fonts=True)))


def decoded(data: bytes) -> Pixels:
    """The same of a PNG."""
    header, body = b"", b""
    for kind, content in _chunks(data):
        if kind == b"IHDR":
            header = content
        elif kind == b"IDAT":
            body += content
    wide, high, depth, color = struct.unpack(">IIBB", header[:10])
    assert (depth, color) == (8, 6), "red, green, blue and cover, eight bits each"
    return _unfiltered(zlib.decompress(body), wide, high)


def _chunks(data: bytes) -> Iterator[tuple[bytes, bytes]]:
    at = 8
    while at < len(data):
        (length,) = struct.unpack(">I", data[at : at + 4])
        yield data[at + 4 : at + 8], data[at + 8 : at + 8 + length]
        at += 12 + length


def _unfiltered(data: bytes, wide: int, high: int) -> Pixels:
    """Rows whose bytes are told by what lies to the left and above (the five filters of section 9)."""
    step, long = 4, 4 * wide
    above = bytearray(long)
    rows: Pixels = []
    for row in range(high):
        begin = row * (long + 1)
        kind, line = data[begin], bytearray(data[begin + 1 : begin + 1 + long])
        for at in range(long):
            left = line[at - step] if at >= step else 0
            corner = above[at - step] if at >= step else 0
            match kind:
                case 0:
                    break
                case 1:
                    guess = left
                case 2:
                    guess = above[at]
                case 3:
                    guess = (left + above[at]) // 2
                case _:
                    guess = _nearest(left, above[at], corner)
            line[at] = (line[at] + guess) & 255
        above = line
        rows.append([(line[at], line[at + 1], line[at + 2]) for at in range(0, long, step)])
    return rows


def _nearest(left: int, above: int, corner: int) -> int:
    guess = left + above - corner
    return min((left, above, corner), key=lambda one: abs(guess - one))
