"""school-day: which school day it is, the next, the last, as bundles of ten, and how many to the hundredth.

1.NBT.B.2: a two-digit number as tens and ones; 1.NBT.A.1: count on from any number, here to 100 (Common
Core State Standards for Mathematics, 2010). The running count has no code: from the last quarter on it
goes past 120, where 1.NBT.A.1 ends. Past day 100 the bundles are those begun since then, so that they
too stay inside two digits.
"""

from warmup import pictures
from warmup.english import count_words, number_word, ordinal_word, plural
from warmup.model import Cue, DayKind, Morning, Strand
from warmup.randomness import Phrasing, SeededRandom
from warmup.skills._home import upper
from warmup.skills._hundredth import hundred_today, to_the_hundredth
from warmup.skills._number import chart_rows, tens_and_ones
from warmup.skills.base import Draft, Level, Skill

# How far from the hundredth the days left can be counted at breakfast.
_NEAR_THE_HUNDREDTH = 60
_WATCH = {
    "count": "The last day’s number said again, with nothing added for today.",
    "next-number": "The number before instead of the number after.",
    "last-number": "The number after instead of the number before. Last time there were fewer straws.",
    "twenty-nine-thirty": "“Twenty-ten”, or a jump to forty.",
    "tens-and-ones": "A bundle counted as one straw. Touch it and say ten.",
    "new-bundle": "Naming the loose straws, or the bundles of last time. Band the ten first, then count.",
    "to-the-hundredth": "Counting today as well, so ending one too high.",
    "hundred-today": "Counting straws where bundles are asked for.",
}


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """A question about the number of school days, true on this date."""
    match item:
        case "count":
            return _count(morning, rng)
        case "next-number" | "last-number":
            return _next_or_last(item, morning, rng)
        case "twenty-nine-thirty":
            return _past_twenty_nine(morning, rng)
        case "tens-and-ones":
            return _tens_and_ones(morning, rng)
        case "new-bundle":
            return _new_bundle(morning, rng)
        case _:
            return (
                hundred_today(rng, _WATCH["hundred-today"])
                if morning.school_day == 100
                else to_the_hundredth(morning, rng, _WATCH[item])
            )


def askable(item: str, morning: Morning) -> bool:
    """Whether there is such a day to ask about; the hundredth closes on the day itself."""
    number, school, more = morning.school_day, morning.is_school, morning.next is not None
    match item:
        case "next-number":
            return number >= 1 and more
        case "last-number":
            return number >= 2 if school else number >= 1 and more
        case "tens-and-ones":
            return number % 100 >= 10
        case "new-bundle":
            return school and number % 10 == 0 and number % 100 != 0
        case "to-the-hundredth":
            return _NEAR_THE_HUNDREDTH <= number < 100 or (school and number == 100)
        case _:
            return True


def timely(item: str, morning: Morning) -> bool:
    """The first and the last school day by their number, each tenth by its new bundle, and the hundredth."""
    if not morning.is_school:
        return False
    match item:
        case "count":
            return morning.school_day == 1 or morning.next is None
        case "new-bundle":
            return askable(item, morning)
        case _:
            return item == "to-the-hundredth" and morning.school_day == 100


# ---- the number after, the number before -----------------------------------------------------------


def _count(morning: Morning, rng: SeededRandom) -> Draft:
    """Today's number from the last one's; on other days the next one's, or at the end the last of all."""
    number = morning.school_day
    known = number - 1 if morning.is_school or (morning.kind is DayKind.AFTER and number) else number
    if morning.is_school:
        say = _today_said(known, morning.next is None, rng)
    elif morning.kind is DayKind.AFTER:
        say = _year_over_said(known, rng)
    else:
        say = _next_said(known, rng)
    return _neighbor(known, 1, say, _WATCH["count"])


def _today_said(known: int, last_of_all: bool, rng: SeededRandom) -> Phrasing:
    word = number_word(known)
    if known == 0:
        return rng.phrasing(
            "School starts today! What number is today?",
            "School starts today. Put down a straw. How many straws?",
            "Today we start counting school days. What number is today?",
        )
    if last_of_all:
        return rng.phrasing(
            f"It’s the last school day! What number comes after {word}?",
            f"School ends today! Last time was {word}. What number is today?",
            f"We have {word} {plural(known, 'straw')}. Add the last one. How many now?",
        )
    ways = [
        f"Last time was school day {word}. What school day is today?",
        f"What school day is today? Last time was number {word}.",
        f"We have {word} {plural(known, 'straw')}. Add one for today. How many now?",
        f"School day {word} is over. What school day is today?",
    ]
    if known == 99:
        ways.append(f"It’s a big day! Last time was {word}. What number is today?")
    return rng.phrasing(*ways)


def _next_said(known: int, rng: SeededRandom) -> Phrasing:
    word = number_word(known)
    if known == 0:
        return rng.phrasing(
            "School starts soon. What number will that day be?",
            "We count each school day. What number do we start with?",
            "We have no school days yet. What number comes next?",
        )
    return rng.phrasing(
        f"Last time was school day {word}. What number comes next?",
        f"What number is the school day after {word}?",
        f"We have {word} {plural(known, 'straw')}. How many will we have next time?",
    )


def _year_over_said(known: int, rng: SeededRandom) -> Phrasing:
    word = number_word(known)
    return rng.phrasing(
        f"School is over! What number came after school day {word}?",
        f"School is over! We had {word}, then one more. How many?",
        f"We had {word} {plural(known, 'straw')}. Then we added one. How many now?",
    )


def _next_or_last(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    step = 1 if item == "next-number" else -1
    number = morning.school_day
    known = number if morning.is_school or step > 0 else number + 1
    word = number_word(known)
    if step > 0 and morning.is_school:
        say = rng.phrasing(
            f"Today is school day {word}. What number comes next?",
            f"What number comes after school day {word}?",
            f"We have {word} {plural(known, 'straw')}. How many will we have next time?",
        )
    elif step > 0:
        say = rng.phrasing(
            f"School day {word} is over. What number comes next?",
            f"What number comes after school day {word}?",
            f"We have {word} {plural(known, 'straw')}. How many will we have next time?",
        )
    elif morning.is_school:
        say = rng.phrasing(
            f"Today is school day {word}. What number was last time?",
            f"What number comes before school day {word}?",
            f"We have {word} straws. Take today’s away. How many are left?",
        )
    else:
        say = rng.phrasing(
            f"Next time is school day {word}. What number was last time?",
            f"What number comes before school day {word}?",
            f"Next time we will have {word} straws. How many now?",
        )
    return _neighbor(known, step, say, _WATCH[item])


def _past_twenty_nine(morning: Morning, rng: SeededRandom) -> Draft:
    """From twenty-nine to thirty or back; make-believe, but on the very day that it is so."""
    known, step = (29, 1) if rng.coin() else (30, -1)
    word = number_word(known)
    so = morning.is_school and morning.school_day == known
    chart, straws = ("The chart shows", "We have") if so else ("Pretend the chart shows", "Pretend we have")
    if step > 0:
        say = rng.phrasing(
            f"Which number comes just after {word}?",
            f"{chart} {word}. What will it show next time?",
            f"{straws} {word} straws. Add one more. How many?",
        )
    else:
        say = rng.phrasing(
            f"Which number comes just before {word}?",
            f"{chart} {word}. What did it show last time?",
            f"{straws} {word} straws. Take one away. How many are left?",
        )
    return _neighbor(known, step, say, _WATCH["twenty-nine-thirty"])


def _neighbor(known: int, step: int, say: Phrasing, watch_for: str) -> Draft:
    """The number one on or one back from one the question says."""
    answer = known + step
    return Draft(
        say=say,
        answer=number_word(answer),
        accept=(
            ordinal_word(answer),
            f"the {ordinal_word(answer)}",
            f"school day {number_word(answer)}",
            f"{number_word(answer)} {plural(answer, 'straw')}",
        ),
        working=f"{known} {'+' if step > 0 else '−'} 1 = {answer}",
        cues=_from_nothing() if known == 0 else _from(known, step),
        watch_for=watch_for,
        given={"known": known, "steps": step},
        picture=_blank(known, answer),
        seconds=20,
    )


def _blank(known: int, answer: int) -> "pictures.HundredChart | None":
    """The chart's rows about the number, its square blank; none for the first, which begins the chart."""
    if known == 0 or answer == 1:
        return None
    # A row more where the number begins or ends one: a finger needs to see both neighbors.
    rows = chart_rows(max(1, answer - 1), answer + 1)
    return pictures.HundredChart(rows.first, rows.last, hidden=(answer,), pointed=(known,))


def _from_nothing() -> tuple[Cue, Cue, Cue]:
    return (
        Cue("We have counted no days yet. How do you start to count?"),
        Cue("Put down a straw where there was none. What number is it?"),
        Cue("Count back together: “three, two…” The child keeps going."),
    )


def _from(known: int, step: int) -> tuple[Cue, Cue, Cue]:
    word, where = number_word(known), "on" if step > 0 else "back"
    if step > 0:
        begin = count_words(range(max(1, known - 2), known + 1))
    else:
        begin = count_words(range(max(1, known - 3), known - 1))
    start = (
        f"Start a few numbers before {word} and count up to it."
        if known > 5
        else f"Count up to {word} on your fingers."
    )
    third = (
        f"Count together: “{begin}…” The child keeps going."
        if begin
        else "Count the straws, but leave out the last."
    )
    picture = _blank(known, known + step)
    return (
        Cue(f"{start} {'What comes next?' if step > 0 else 'What came just before it?'}"),
        Cue(f"Finger on {word} in the chart. Move {where} to the blank.", picture)
        if picture
        else Cue("Lay the straws in a row, then take the last away."),
        Cue(third),
    )


# ---- bundles ---------------------------------------------------------------------------------------


def _since(morning: Morning) -> tuple[int, str]:
    """How many school days since the last whole hundred, and the words for it."""
    hundreds, number = divmod(morning.school_day, 100)
    return number, f" since day {number_word(100 * hundreds)}" if hundreds else ""


def _bundled(number: int) -> str:
    """ "four bundles and seven loose ones"."""
    tens, ones = divmod(number, 10)
    loose = f"{number_word(ones) if ones else 'no'} loose {plural(ones, 'one')}"
    return f"{number_word(tens)} {plural(tens, 'bundle')} and {loose}"


def _bundles_said(number: int) -> tuple[str, ...]:
    """Other right ways to say the bundles and the loose ones; the bundles alone where none are loose."""
    tens, ones = divmod(number, 10)
    bundles, many = f"{number_word(tens)} {plural(tens, 'bundle')}", number_word(ones)
    alone = (
        (bundles,) if not ones else (f"{bundles} and {many}", f"{bundles} and {many} {plural(ones, 'one')}")
    )
    return (tens_and_ones(number), f"{number_word(tens)} and {many}", *alone)


def _tens_and_ones(morning: Morning, rng: SeededRandom) -> Draft:
    number, since = _since(morning)
    tens, ones = divmod(number, 10)
    word = number_word(number)
    had = "had" if since else "have had"
    return Draft(
        say=rng.phrasing(
            f"We {had} {word} school days{since}. How many tens and ones?",
            f"We put down {word} straws{since}. How many bundles and loose ones?",
            f"Look at our {word} straws{since}. How many tens and ones?",
        ),
        answer=_bundled(number),
        accept=_bundles_said(number),
        working=f"{number} = {10 * tens} + {ones}",
        cues=(
            Cue("How many straws does a band hold?"),
            Cue("Look at the straws. Which are banded, which are loose?", pictures.Bundles(tens, ones)),
            Cue("Touch the bundles together: “ten…” The child keeps going, then counts the loose ones."),
        ),
        watch_for=_WATCH["tens-and-ones"],
        given={"number": number},
        picture=pictures.Bundles(tens, ones),
    )


def _new_bundle(morning: Morning, rng: SeededRandom) -> Draft:
    """A day on which the loose straws become ten."""
    number, since = _since(morning)
    tens = number // 10
    before = number_word(number - 1)
    old = f"{number_word(tens - 1)} {plural(tens - 1, 'bundle')}" if tens > 1 else "no bundle"
    new = " new" if since else ""  # The ten bundles of the hundred are not meant.
    return Draft(
        say=rng.phrasing(
            f"We have {before} straws{since}. Add one for today. How many{new} bundles now?",
            f"We put down {before} straws{since}. Add today’s. How many new bundles?"
            if since
            else f"Nine loose straws and {old}. Add one. How many bundles now?",
            f"{upper(before)} straws{since}. Add today’s straw. How many{new or ' full'} bundles?",
        ),
        answer=number_word(tens),
        accept=(
            f"{number_word(tens)} {plural(tens, 'bundle')}",
            f"{number_word(tens)} {plural(tens, 'ten')}",
            _bundled(number),
        ),
        working=f"{number - 1} + 1 = {number} = {tens} × 10",
        cues=(
            Cue("Put today’s straw with the loose ones. How many are loose?"),
            Cue(
                "Point at the loose ones and add today’s. Do they fill a band?", pictures.Bundles(tens - 1, 9)
            ),
            Cue("Put the band around the loose ones together. The child counts all the bundles."),
        ),
        watch_for=_WATCH["new-bundle"],
        given={"before": number - 1},
        picture=pictures.Bundles(tens - 1, 9),
    )


SKILL = Skill(
    id="school-day",
    title="School days",
    asks="which school day it is, as bundles of ten, and how many to the hundredth",
    strand=Strand.CALENDAR,
    levels=(
        Level("count", "the count", ("count",), seconds=20, table="straws and bands"),
        Level(
            "next-and-last",
            "the next and the last",
            ("next-number", "last-number", "twenty-nine-thirty"),
            seconds=20,
            table="straws and bands",
        ),
        Level(
            "tens-and-ones",
            "bundles of ten and loose ones",
            ("tens-and-ones", "new-bundle"),
            codes=("1.NBT.B.2",),
            stands_on=("by-tens:to-50",),
            table="straws and bands",
        ),
        Level(
            "to-the-hundredth",
            "how many to the hundredth",
            ("to-the-hundredth",),
            codes=("1.NBT.A.1",),
            stands_on=("count:to-100",),
            table="straws and bands",
        ),
    ),
    ask=ask,
    askable=askable,
    timely=timely,
)
