"""Where scattered counters lie: by chance from a seed, and never in a pattern a child may know."""

from functools import cache
from itertools import combinations
from math import dist, hypot
from random import Random

try:
    from _blake2 import blake2b  # see warmup.randomness
except ImportError:
    from hashlib import blake2b

from warmup.pictures.shapes import Point

WIDTH, HEIGHT = 1.5, 1.0
"""The field the points lie in. It keeps its proportions, so a scatter looks the same at every size."""


@cache
def scattered(count: int, seed: int) -> tuple[Point, ...]:
    """``count`` points in the field, none close to another; the same for the same count and seed.

    Up to five points never have four in a square or an oblong, up to six never three in a line, more
    never four. They do not lie on one circle about their middle either.
    """
    digest = blake2b(f"scatter {count} {seed}".encode(), digest_size=8).digest()
    chance = Random(int.from_bytes(digest, "big")).random
    apart = 1.2 / max(2.0, count**0.5)
    while True:
        points: list[Point] = []
        for _ in range(30 * count):
            point = (chance() * WIDTH, chance() * HEIGHT)
            if all(dist(point, other) >= apart for other in points):
                points.append(point)
            if len(points) == count:
                break
        if len(points) == count and not patterned(points):
            return tuple(points)
        apart *= 0.995


def laid(points: tuple[Point, ...], width: int, height: int) -> tuple[list[Point], float]:
    """The points spread over a pane, proportions kept, and the radius counters may have there.

    In a pane higher than it is wide the field stands upright.
    """
    if height > 1.2 * width:
        points = tuple((y, x) for x, y in points)
    xs, ys = [x for x, _ in points] or [0.0], [y for _, y in points] or [0.0]
    near = min((dist(one, two) for one, two in combinations(points, 2)), default=HEIGHT)
    broad = min(0.72 * near, 0.34)
    # A cell is left free all round.
    across, down = max(xs) - min(xs) + broad, max(ys) - min(ys) + broad
    scale = min((width - 1) / across, (height - 1) / down, height * 1.2)
    radius = max(1.0, min(scale * broad, scale * near - 1) / 2)
    left = (width - (max(xs) + min(xs)) * scale) / 2
    top = (height - (max(ys) + min(ys)) * scale) / 2
    return [(left + x * scale, top + y * scale) for x, y in points], radius


def patterned(points: list[Point]) -> bool:
    """Whether the points fall into a line, an oblong or a ring."""
    if any(_in_line(some) for some in combinations(points, 3 if len(points) <= 6 else 4)):
        return True
    if len(points) <= 5 and any(_oblong(some) for some in combinations(points, 4)):
        return True
    return len(points) > 4 and _on_ring(points)


def _in_line(points: tuple[Point, ...]) -> bool:
    """Whether all lie within 0.07 (the field is 1 high) of the line through the two farthest apart."""
    (ax, ay), (bx, by) = max(combinations(points, 2), key=lambda pair: dist(*pair))
    long = hypot(bx - ax, by - ay) or 1.0
    return all(abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / long < 0.07 for x, y in points)


def _oblong(points: tuple[Point, ...]) -> bool:
    """Whether four points are nearly the corners of a parallelogram: its diagonals share their middle."""
    a, *others = points
    for opposite in others:
        b, c = (point for point in others if point is not opposite)
        if hypot(a[0] + opposite[0] - b[0] - c[0], a[1] + opposite[1] - b[1] - c[1]) < 0.24:
            return True
    return False


def _on_ring(points: list[Point]) -> bool:
    """Whether all are about as far from the middle of them all."""
    middle = (sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points))
    away = [dist(point, middle) for point in points]
    return max(away) - min(away) < 0.25 * max(away)
