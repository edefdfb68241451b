"""Recomputes symmetry answers from ``given``: the points are mirrored, outlines compared, squares flipped."""

from itertools import pairwise
from math import atan2, cos, degrees, hypot, pi, sin
from typing import Any

from num2words import num2words

Outline = list[tuple[float, float]]


def _mirror(p: tuple[float, float], a: tuple[float, float], b: tuple[float, float]) -> tuple[float, float]:
    """p mirrored in the line through a and b, by the foot of the perpendicular."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    t = ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy)
    return 2 * (a[0] + t * dx) - p[0], 2 * (a[1] + t * dy) - p[1]


def _off(p: tuple[float, float], points: Outline) -> float:
    """How far p lies from the outline."""
    best = 1e9
    for (ax, ay), (bx, by) in zip(points, points[1:] + points[:1], strict=True):
        dx, dy = bx - ax, by - ay
        t = max(0.0, min(1.0, ((p[0] - ax) * dx + (p[1] - ay) * dy) / (dx * dx + dy * dy)))
        best = min(best, hypot(p[0] - ax - t * dx, p[1] - ay - t * dy))
    return best


def folds(points: Outline, a: tuple[float, float], b: tuple[float, float]) -> bool:
    """Whether every corner and every middle of a side, mirrored, lies on the outline."""
    middles = [
        ((ax + bx) / 2, (ay + by) / 2)
        for (ax, ay), (bx, by) in zip(points, points[1:] + points[:1], strict=True)
    ]
    return all(_off(_mirror((x, y), a, b), points) < 1e-3 for x, y in (*points, *middles))


def _middle(points: Outline) -> tuple[float, float]:
    """The area's middle, summed over triangles from the first corner."""
    ox, oy = points[0]
    area = mx = my = 0.0
    for (ax, ay), (bx, by) in pairwise(points[1:]):
        part = (ax - ox) * (by - oy) - (bx - ox) * (ay - oy)
        area, mx, my = area + part, mx + part * (ox + ax + bx) / 3, my + part * (oy + ay + by) / 3
    return mx / area, my / area


def lines(points: Outline) -> list[float]:
    """All fold lines, as angles up from flat, by trying each corner and each middle of a side."""
    x0, y0 = _middle(points)
    found: list[float] = []
    middles = [
        ((ax + bx) / 2, (ay + by) / 2)
        for (ax, ay), (bx, by) in zip(points, points[1:] + points[:1], strict=True)
    ]
    for x, y in (*points, *middles):
        if hypot(x - x0, y - y0) < 1e-6 or not folds(points, (x0, y0), (x, y)):
            continue
        angle = degrees(atan2(y0 - y, x - x0)) % 180
        if all(min(abs(angle - other), 180 - abs(angle - other)) > 0.01 for other in found):
            found.append(angle)
    return sorted(angle if angle < 179.99 else 0.0 for angle in found)


def _way(angle: float) -> str:
    quarter = round(angle / 90, 3)
    if quarter in (0, 2):
        return "across"
    return "up and down" if quarter == 1 else "slanting up to the " + ("right" if quarter < 1 else "left")


def _printed(given: dict[str, Any]) -> dict[str, set[tuple[int, int]]]:
    """The squares on paper, in half units with the line at 0, and where the fold prints them."""
    runs = given.get("runs")
    cells = (
        [(r, k) for r, run in enumerate(runs) for k in range(1, run + 1)]
        if runs
        else [(given["along"], given["away"])]
    )
    before = 1 if given["other"] else -1
    filled = {(r, before * (2 * k - 1)) for r, k in cells}
    return {"filled": filled, "printed": {(r, -x) for r, x in filled}}


def _side(given: dict[str, Any], x: int) -> str:
    return ("lower" if x > 0 else "upper") if given["lying"] else ("right" if x > 0 else "left")


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer is what mirroring the points or the squares gives."""
    points: Outline = given.get("points", [])
    match item:
        case "would-it-match" | "rectangle-diagonal":
            x, y = given["through"]
            way = given["line"] * pi / 180
            want = "yes" if folds(points, (x, y), (x + cos(way), y - sin(way))) else "no"
        case "make-a-fold":
            slanted = any(min(a % 90, 90 - a % 90) > 1 for a in lines(points)) if points else False
            want = ("edge to edge or corner to corner" if slanted else "edge to edge") if points else answer
            if not points and "through the middle" not in answer:
                return "a circle folds on any line through its middle"
        case "find-the-line":
            said = [_way(a) for a in lines(points)]
            return (
                None
                if {*answer.removesuffix(", through the middle").replace(" or ", ", ").split(", ")} == {*said}
                else f"{said}"
            )
        case "finish":
            printed = _printed(given)["printed"]
            counts = [sum(r == row for r, _ in printed) for row in range(len(given["runs"]))]
            start = "left" if given["lying"] else "top"
            runs = ", ".join(map(num2words, counts))
            want = (
                f"{_side(given, min(x for _, x in printed))} side, "
                f"squares out from the line, starting at the {start}: {runs}"
            )
        case _:
            ((row, x),) = _printed(given)["printed"]
            far = (abs(x) + 1) // 2
            place = f"{num2words(row + 1, to='ordinal')} from the {'left' if given['lying'] else 'top'}"
            want = (
                f"{_side(given, x)} side, {place}, {num2words(far)} square{'s' * (far > 1)} out from the line"
            )
    return None if answer == want else f"{given} wants {want!r}"
