"""number-line: find a number on a line, and hop on or back along it.

1.OA.C.5: counting tied to adding and taking away (as in counting on two to add two); 2.MD.B.6: whole
numbers as lengths from zero on a number line, up to a hundred (Common Core State Standards for
Mathematics, 2010).
"""

from typing import NamedTuple

from warmup import pictures
from warmup.english import number_word
from warmup.model import Cue, Morning, Strand
from warmup.randomness import Phrasing, SeededRandom
from warmup.skills._rising import risen
from warmup.skills.base import Draft, Level, Skill

# Numbers whose tick stays named when a place is to be found.
_NAMED = (0, 5, 10)
_WATCH = {
    "which-hides": "Starting the count at the wrong end, or with the wrong number.",
    "where-it-lives": "Counting ticks, not steps, so that it lands a tick short.",
    "on-to-10": "Counting the start as the first hop, so that it lands a tick short.",
    "back-to-10": "Hopping ahead: back means toward the start of the line.",
    "on-to-20": "Counting the start as the first hop, so that it lands a tick short.",
    "back-to-20": "Hopping ahead, or saying the start as the first hop back.",
    "on-to-30": "Counting the start as the first hop, so that it lands a tick short.",
    "back-to-30": "Hopping ahead, or saying the start as the first hop back.",
    "across-10": "A stumble where the tens change: leaving a number out, or saying it twice.",
    "on-across-20": "Losing the way where the tens change. Say the tens first.",
    "back-across-20": "Losing the way where the tens change, or leaving one out.",
}
_HOPS = ("no hop", "one hop", "two hops", "three hops", "four hops", "five hops")


class _Stretch(NamedTuple):
    """Where a level hops, crossings aside, and how many hops: at first (from week ``opens``) and later."""

    low: int
    high: int
    few: int
    most: int
    opens: int


_STRETCHES = {
    "to-10": _Stretch(0, 10, 2, 3, 17),
    "to-20": _Stretch(10, 20, 2, 3, 24),
    "to-30": _Stretch(20, 30, 3, 5, 30),
}


class _Trip(NamedTuple):
    """A place to start from and a signed number of hops."""

    start: int
    hops: int

    @property
    def end(self) -> int:
        return self.start + self.hops


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """Find a number, or land on one."""
    match item:
        case "which-hides":
            return _which_hides(rng.between(0, 10), rng)
        case "where-it-lives":
            return _where(rng.pick([n for n in range(11) if n not in _NAMED]), rng)
        case _:
            return _land(item, _trip(item, morning, rng), morning.animal, rng)


def _which_hides(number: int, rng: SeededRandom) -> Draft:
    near = [str(n) for n in (number - 1, number + 1) if 0 <= n <= 10]
    return Draft(
        say=rng.phrasing(
            "Look at the line. Which number is hiding?",
            "A number fell off the line. Which one is it?",
            "Count along the line with your finger. Which number is missing?",
            "Point to the blank on the line. What number goes there?",
        ),
        answer=number_word(number),
        working=f"{number} lies beside {' and '.join(near)}",
        cues=(
            Cue("Start at the very left and say each number."),
            Cue("Put a finger on the blank. Which numbers stand beside it?"),
            Cue("Walk from the left together and whisper. Fall silent at the blank."),
        ),
        watch_for=_WATCH["which-hides"],
        given={"first": 0, "last": 10, "hidden": number},
        picture=pictures.NumberLine(0, 10, hidden=(number,)),
    )


def _place(number: int, named: int) -> str:
    """Where a number lives, told from one that can be read: "two steps before ten"."""
    far = abs(number - named)
    steps = "a step" if far == 1 else f"{number_word(far)} steps"
    return f"{steps} {'after' if number > named else 'before'} {number_word(named)}"


def _where(number: int, rng: SeededRandom) -> Draft:
    word = number_word(number)
    near, *others = sorted(_NAMED, key=lambda named: abs(number - named))
    sign = "+" if number > near else "−"
    return Draft(
        say=rng.phrasing(
            f"Put your finger where {word} goes.",
            f"Where on the line is {word}? Point to it.",
            f"Show me where {word} goes on the line.",
            f"Hop your finger from zero to {word}. Show me where it stops.",
        ),
        answer=_place(number, near),
        accept=tuple(_place(number, named) for named in others),
        working=f"{near} {sign} {abs(number - near)} = {number}",
        cues=(
            Cue(f"Does {word} come before five, or after it?"),
            Cue("Put a finger on the nearest number that you can read."),
            Cue("Start at that number together and step from tick to tick. The child says when to stop."),
        ),
        watch_for=_WATCH["where-it-lives"],
        given={"first": 0, "last": 10, "named": list(_NAMED), "find": number},
        picture=pictures.NumberLine(0, 10, hidden=tuple(n for n in range(11) if n not in _NAMED)),
    )


def _trip(item: str, morning: Morning, rng: SeededRandom) -> _Trip:
    """Hops within the level's stretch of the line; few of them while the level is new."""
    across = 10 if item == "across-10" else 20 if item.endswith("across-20") else 0
    stretch = _STRETCHES[f"to-{across + 10}" if across else item.partition("-")[2]]
    low, high = stretch.low, stretch.high
    most = stretch.most if risen(morning, stretch.opens) else stretch.few
    if across:
        return _across(across, most, rng.coin() if across == 10 else item.startswith("on"), rng)
    hops = rng.between(1, most)
    if item.startswith("on"):
        return _Trip(rng.between(low, high - hops), hops)
    return _Trip(rng.between(low + hops, high), -hops)


def _across(ten: int, most: int, on: bool, rng: SeededRandom) -> _Trip:
    """Two hops or more that pass the ten and go on by one at least."""
    # How far past the ten it lands is drawn first, so that no landing is likelier than another.
    past = rng.between(1, most - 1)
    hops = past + rng.between(1, most - past)
    return _Trip(ten + past - hops, hops) if on else _Trip(ten - past + hops, -hops)


def _land(item: str, trip: _Trip, animal: str, rng: SeededRandom) -> Draft:
    start, steps = number_word(trip.start), abs(trip.hops)
    low, high = _window(item, trip, rng)
    ahead = range(trip.start + 1, high + 1) if trip.hops > 0 else range(low, trip.start)
    passed = range(trip.start, trip.end, 1 if trip.hops > 0 else -1)
    path = [*passed[1:], trip.end]
    sign = "+" if trip.hops > 0 else "−"
    return Draft(
        say=_say_hops(trip, animal, rng),
        answer=number_word(trip.end),
        working=f"{trip.start} {sign} {steps} = {trip.end}"
        + (f": {', '.join(map(str, path))}" if steps > 1 else ""),
        cues=(
            Cue(f"A finger on {start}. The first hop lands on the next tick."),
            Cue(
                f"Here is the whole line, with a dot on {start}. Hop along it.",
                pictures.NumberLine(low, high, start=trip.start),
            ),
            _begin(trip),
        ),
        watch_for=_WATCH[item],
        given={"start": trip.start, "hops": trip.hops},
        picture=pictures.NumberLine(low, high, start=trip.start, hidden=tuple(ahead)),
    )


def _say_hops(trip: _Trip, animal: str, rng: SeededRandom) -> Phrasing:
    start, hops = number_word(trip.start), _HOPS[abs(trip.hops)]
    way = "forward" if trip.hops > 0 else "back"
    return rng.phrasing(
        f"Start at {start}. Make {hops} {way}. Where do you land?",
        f"{animal} sits on {start}. {animal} makes {hops} {way}. Where now?",
        f"Stand on {start}. Make {hops} {way}. Where are you?",
        f"Put your finger on {start}. Make {hops} {way}. Where are you?",
        f"Make {hops} {way} from {start}. Where do you land?",
    )


def _begin(trip: _Trip) -> Cue:
    start, way = number_word(trip.start), "forward" if trip.hops > 0 else "back"
    if abs(trip.hops) == 1:
        return Cue(f"Say “{start}” together, lift a finger, and let the child set it down.")
    return Cue(f"Say “{start}” together and make the first hop {way}. The child makes the rest.")


def _window(item: str, trip: _Trip, rng: SeededRandom) -> tuple[int, int]:
    """The stretch of line to show: whole to ten, else eleven numbers about the trip, here or there."""
    if item in ("on-to-10", "back-to-10"):
        return 0, 10
    end = 20 if item.endswith("-to-20") or item == "across-10" else 30
    low, high = sorted((trip.start, trip.end))
    first = max(0, min(end - 10, low - rng.between(1, 10 - (high - low) - 1)))
    return first, first + 10


SKILL = Skill(
    id="number-line",
    title="Number line",
    asks="start here, hop on or back: where do you land?",
    strand=Strand.ADDING,
    levels=(
        Level(
            "find-to-10",
            "find zero to ten",
            ("which-hides", "where-it-lives"),
            codes=("2.MD.B.6",),
            stands_on=("numerals:to-10",),
            seconds=20,
            table="tape on the floor",
            ends=("which-hides", "where-it-lives"),
        ),
        Level(
            "hops-to-10",
            "hops of one to three, to ten",
            ("on-to-10",),
            ("back-to-10",),
            codes=("1.OA.C.5", "2.MD.B.6"),
            stands_on=("number-line:find-to-10", "count-on:within-10", "count-back:from-10"),
            table="tape on the floor",
        ),
        Level(
            "to-20",
            "hops of one to three, to twenty",
            ("on-to-20", "back-to-20", "across-10"),
            codes=("1.OA.C.5", "2.MD.B.6"),
            stands_on=("number-line:hops-to-10", "numerals:to-20", "neighbors:both-to-20"),
            waits_on=("neighbors/before-20", "number-line/back-to-10"),
            table="tape on the floor",
        ),
        Level(
            "to-30",
            "hops to five, to thirty",
            ("on-to-30", "back-to-30", "on-across-20", "back-across-20"),
            codes=("1.OA.C.5", "2.MD.B.6"),
            stands_on=("number-line:to-20", "numerals:to-100", "count-on:to-50", "count-back:from-20"),
            waits_on=("count-back/13-to-12",),
            table="tape on the floor",
        ),
    ),
    ask=ask,
)
