"""A picture rebuilt from its exact words alone: what an adult could lay out who never saw the screen.

Written from the words, not from the classes: a reader a kind. What no eye can tell from the picture
(how a scatter falls, which of two easy forms a group takes) is not rebuilt; ``seen`` leaves it out.
"""

import re
from collections.abc import Callable, Mapping

from tests.pictures.rebuilt_shapes import (
    EMPTY,
    Fields,
    flat_shape,
    fold,
    half,
    joined,
    match,
    numbers,
    pattern_row,
    places,
    shape_row,
    shares,
    solid_shape,
    sorted_rows,
    whole,
)
from warmup.pictures import Picture, from_data


def rebuilt(kind: str, words: str) -> Picture | None:
    """The picture of this kind that the words tell of; None where they do not tell enough."""
    fields = READERS[kind](words)
    return None if fields is None else from_data({"kind": kind, **fields})


def seen(picture: Picture) -> Picture:
    """The picture less what cannot be seen on it, so that two that look alike are equal."""
    data = picture._asdict()
    match picture.kind:
        case "counters":
            data |= {"seed": 0}
        case "dots":
            data |= {"seed": 0, "left": 0 if data["pattern"] != "two-groups" else data["left"]}
            if data["pattern"] == "two-groups" and not data["left"]:
                data["left"] = data["number"] // 2
        case "pairs" if not data["paired"]:
            things = 2 * data["pairs"] + data["left_over"]
            data |= {"pairs": things // 2, "left_over": things % 2}
        case "clock" if not data["hands"]:
            data |= {"hour": 12, "minute": 0}
        case "solid-shape" if data["name"] in ("sphere", "cube"):
            data |= {"upright": True}
        case "half":
            data |= {"filled": tuple(sorted(data["filled"]))}
        case "lengths" if not data["starts"]:
            data |= {"starts": (0,) * len(data["lengths"])}
        case "month-calendar":
            data |= {"upto": min(data["upto"], 31)}
    found = from_data(data)
    assert found is not None
    return found


def _base_ten(words: str) -> Fields | None:
    m = match(r"base-ten blocks, left to right: (?:none|(.*))", words)
    if m is None:
        return None
    parts = {name: int(n) for n, name in re.findall(r"(\d+) (flat|rod|cube)s?", m[1] or "")}
    return {"hundreds": parts.get("flat", 0), "tens": parts.get("rod", 0), "ones": parts.get("cube", 0)}


def _bundles(words: str) -> Fields | None:
    m = match(r"(.+): (\d+) banded bundles? of ten, (\d+) loose", words)
    return m and {"what": m[1], "tens": int(m[2]), "ones": int(m[3])}


def _clock(words: str) -> Fields | None:
    if words == "a clock face with its numerals and no hands":
        return {"hour": 12, "minute": 0, "hands": False}
    m = match(r"a clock face with its hands set to (\d+):(\d\d)", words)
    return m and {"hour": int(m[1]), "minute": int(m[2])}


def _coins(words: str) -> Fields | None:
    m = match(
        r"coins, left to right: ([a-z, ]+)(; under each its worth in dots.*?)?(?:; a finger at coin (\d+))?",
        words,
    )
    if m is None:
        return None
    pointed = int(m[3]) - 1 if m[3] else None
    return {"names": places(m[1]), "worth": bool(m[2]), "pointed": pointed}


def _counters(words: str) -> Fields | None:
    m = match(
        r"(.+) (in a line|in rows of five|in a ring|scattered): (\d+)(?:, then (\d+) of another kind)?", words
    )
    lie = {"in a line": "line", "in rows of five": "rows", "in a ring": "ring", "scattered": "scatter"}
    return m and {"what": m[1], "layout": lie[m[2]], "number": int(m[3]), "second": whole(m[4])}


def _strip(lead: str, names: str) -> Callable[[str], Fields | None]:
    order = tuple(names.split())

    def read(words: str) -> Fields | None:
        m = match(rf"{lead}: ([^;]+)(?:; a finger on (.+))?", words)
        if m is None:
            return None
        told = places(m[1])
        at = next(place for place, name in enumerate(told) if name != "?")
        first = (order.index(told[at]) - at) % len(order)
        whole = order[first:] + order[:first]
        hidden = tuple(name for name, shown in zip(whole, told, strict=True) if shown == "?")
        return {"first": whole[0], "hidden": hidden, "pointed": places(m[2]) if m[2] else ()}

    return read


def _dots(words: str) -> Fields | None:
    m = match(r"dots (.+?): (\d+)(?: (?:and|over|left,) (\d+)(?: right)?)?", words)
    if m is None:
        return None
    number = int(m[2]) + whole(m[3])
    pattern = {
        "as on dice": "dice",
        "in two even rows": "array",
        "in two rows": "five-and-some",
        "in a ring": "ring",
        "either side of a line": "two-groups",
        "scattered": "scatter",
    }[m[1]]
    return {"number": number, "pattern": pattern, "left": int(m[2]) if pattern == "two-groups" else 0}


def _hands(words: str) -> Fields | None:
    m = match(r"handprints: (\d+)", words)
    return m and {"number": int(m[1])}


_MARKED = r"(?:; blank: ([\d, ]+))?(?:; a finger on ([\d, ]+))?"


def _hundred_chart(words: str) -> Fields | None:
    m = match(rf"a number chart in rows of ten from (\d+) to (\d+){_MARKED}", words)
    ends = m and {"first": int(m[1]), "last": int(m[2])}
    return m and {**(ends or {}), "hidden": numbers(m[3]), "pointed": numbers(m[4])}


def _jars(words: str) -> Fields | None:
    m = match(r"jars, left to right, filled in (\d+) parts?(, a line at every part)?: (.+)", words)
    if m is None:
        return None
    jars = [numbers(jar) for jar in m[3].split("; ")]
    return {
        "parts": int(m[1]),
        "lined": bool(m[2]),
        "sizes": tuple((wide, high) for wide, high, _ in jars),
        "fills": tuple(fill for _, _, fill in jars),
    }


def _lengths(words: str) -> Fields | None:
    clips = match(
        r"a (\w+) ribbon, (\d+) clips long, clips end to end below it(?:; fallen off: clip ([\d, ]+))?", words
    )
    if clips:
        gone = tuple(n - 1 for n in numbers(clips[3]))
        long = int(clips[2])
        return {"forms": (clips[1],), "lengths": (long,), "starts": (0,), "clips": True, "missing": gone}
    m = match(r"ribbons, from the top, in steps from one line: (.+)", words)
    if m is None:
        return None
    ribbons = [(each.split(" ")[0], numbers(each)) for each in m[1].split("; ")]
    return {
        "forms": tuple(form for form, _ in ribbons),
        "starts": tuple(start for _, (start, _) in ribbons),
        "lengths": tuple(end - start for _, (start, end) in ribbons),
    }


_MONTHS = "January February March April May June July August September October November December"


def _month_calendar(words: str) -> Fields | None:
    m = match(rf"a wall calendar of (\w+) (\d+)(?:; numbers only to (\d+))?{_MARKED}", words)
    if m is None:
        return None
    month = _MONTHS.split().index(m[1]) + 1
    fields = {"year": int(m[2]), "month": month, "hidden": numbers(m[4]), "pointed": numbers(m[5])}
    return {**fields, "upto": int(m[3]) if m[3] else 31}


def _number_line(words: str) -> Fields | None:
    m = match(
        r"a number line from (\d+) to (\d+)(?:; a dot on (\d+))?"
        r"(?:; hops drawn: ([^;]+))?(?:; blank: ([\d, ]+))?",
        words,
    )
    if m is None:
        return None
    hops = tuple(int(n) * (1 if way == "on" else -1) for n, way in re.findall(r"(\d+) (on|back)", m[4] or ""))
    start = int(m[3]) if m[3] else None
    return {"first": int(m[1]), "last": int(m[2]), "start": start, "hops": hops, "hidden": numbers(m[5])}


def _number_row(words: str) -> Fields | None:
    m = match(r"cards, left to right: (.+)", words)
    return m and {"texts": places(m[1])}


def _numeral(words: str) -> Fields | None:
    m = match(r"in big print: (.+)", words)
    return m and {"text": m[1]}


def _pairs(words: str) -> Fields | None:
    m = match(r"(.+): (\d+) pairs?, then (\d+) single, a gap after each pair", words)
    if m:
        return {"what": m[1], "pairs": int(m[2]), "left_over": int(m[3])}
    m = match(r"(.+) evenly apart: (\d+)", words)
    return m and {"what": m[1], "pairs": int(m[2]) // 2, "left_over": int(m[2]) % 2, "paired": False}


def _part_whole(words: str) -> Fields | None:
    m = match(r"three circles joined by lines: (\S+) on top; below, (\S+) and (\S+)", words)
    return m and dict(zip(("whole", "left", "right"), places(", ".join(m.groups())), strict=True))


def _toy_line(words: str) -> Fields | None:
    m = match(
        r"toys in line: (\d+), the door at the (left|right)(?:; a hat on toy ([\d, ]+) from the door)?", words
    )
    return m and {"number": int(m[1]), "front": m[2], "hats": numbers(m[3])}


def _scale(words: str) -> Fields | None:
    m = match(
        r"a seesaw: (\w+) on the left, (\w+) on the right; (left|right) end down(?:; the (\w+) the bigger)?",
        words,
    )
    return m and {"left": m[1], "right": m[2], "down": m[3], "big": m[4] or ""}


def _toys(text: str) -> tuple[str, ...]:
    return tuple("" if each == EMPTY else each for each in text.split(", "))


def _scene(words: str) -> Fields | None:
    behind = r"(?:; behind the last, looking out: ([a-z ]+))?"
    two = match(rf"toys, left to right, on the shelf: ([^;]+); below it: ([^;]+){behind}", words)
    if two:
        return {"rows": (_toys(two[1]), _toys(two[2])), "behind": two[3] or ""}
    m = match(rf"toys, left to right: ([^;]+){behind}", words)
    return m and {"rows": (_toys(m[1]),), "behind": m[2] or ""}


def _ten_frame(words: str) -> Fields | None:
    m = match(r"a ten frame, filled from its upper row on: (\d+)(?:, then (\d+) of another kind)?", words)
    return m and {"filled": int(m[1]), "beside": whole(m[2])}


def _two_frames(words: str) -> Fields | None:
    m = match(r"two ten frames, filled from their upper rows on: (\d+), (\d+)", words)
    return m and {"first": int(m[1]), "second": int(m[2])}


def _two_sets(words: str) -> Fields | None:
    m = match(
        r"rings in two rows: (\d+) on top, (\d+) below(?:; the (top|bottom) one spread far apart)?", words
    )
    return m and {"top": int(m[1]), "bottom": int(m[2]), "spread": m[3] or ""}


def _word_and_cards(words: str) -> Fields | None:
    m = match(r"the word “(.+)”; under it cards, left to right: (.+)", words)
    return m and {"word": m[1], "texts": places(m[2])}


_DAYS = "Sunday Monday Tuesday Wednesday Thursday Friday Saturday"

READERS: Mapping[str, Callable[[str], Fields | None]] = {
    "base-ten": _base_ten,
    "bundles": _bundles,
    "clock": _clock,
    "coins": _coins,
    "counters": _counters,
    "day-strip": _strip("the days in a strip, left to right", _DAYS),
    "dots": _dots,
    "flat-shape": flat_shape,
    "fold": fold,
    "half": half,
    "hands": _hands,
    "hundred-chart": _hundred_chart,
    "jars": _jars,
    "joined-shapes": joined,
    "lengths": _lengths,
    "month-calendar": _month_calendar,
    "month-strip": _strip("the months in order", _MONTHS),
    "number-line": _number_line,
    "number-row": _number_row,
    "numeral": _numeral,
    "pairs": _pairs,
    "part-whole": _part_whole,
    "pattern-row": pattern_row,
    "toy-line": _toy_line,
    "scale": _scale,
    "scene": _scene,
    "shape-row": shape_row,
    "shares": shares,
    "solid-shape": solid_shape,
    "sorted-rows": sorted_rows,
    "ten-frame": _ten_frame,
    "two-frames": _two_frames,
    "two-sets": _two_sets,
    "word-and-cards": _word_and_cards,
}
