"""subitize: see how many without counting.

Toward K.OA.A.3: what is seen at a glance is seen in parts, five and some or two groups (Common Core State
Standards for Mathematics, 2010). Five at a glance by 60 months: Head Start Early Learning Outcomes
Framework (2015). The picture is shown for about two seconds and covered (common practice, no source).
"""

from warmup import pictures
from warmup.english import number_word
from warmup.model import Cue, Morning, Strand
from warmup.pictures import Picture
from warmup.randomness import Phrasing, SeededRandom
from warmup.skills._rising import risen
from warmup.skills.base import Draft, Level, Skill

_TOWARD = ("K.OA.A.3",)
_COVER = "a card to cover the dots"
_FLASH = "Show it, count to two, cover it."
_WATCH = {
    "to-3": "Pointing and counting. Cover it sooner: the picture stays in the mind.",
    "dice": "Mixing up patterns that look alike. Is there a dot in the middle?",
    "scattered-four": "One too many: dots that lie apart look like more. Show it again, no longer.",
    "scattered-five": "One too few or too many after a quick look. Ask which dots go together.",
    "five-and-some": "Counting the full row too. It is the same every time: start from there.",
    "nine": "Counting all of them. One more would make it full.",
    "two-groups": "Saying how many are on one side only. Ask about the other side too.",
}


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """How many dots flashed by; the answer is the sum of the groups they are seen in."""
    groups, pattern, seed = _drawn(item, morning, rng)
    count = sum(groups)
    left = groups[0] if pattern == "two-groups" else 0
    frame = pattern == "ten-frame"
    picture: Picture = pictures.TenFrame(count) if frame else pictures.Dots(count, pattern, seed, left)
    return Draft(
        say=_say(item, rng),
        answer=number_word(count),
        working=" + ".join(map(str, groups)) + (f" = {count}" if len(groups) > 1 else ": seen at a glance"),
        cues=_cues(item, groups),
        watch_for=_WATCH[item],
        given={"groups": list(groups), "pattern": pattern, "seed": seed},
        picture=picture,
        do=_FLASH,
    )


def _drawn(item: str, morning: Morning, rng: SeededRandom) -> tuple[tuple[int, ...], str, int]:
    """The groups, how they lie, and the seed of the pattern."""
    seed = rng.below(1000)
    match item:
        case "to-3":
            return (rng.between(1, 3),), rng.pick(("dice", "ring", "scatter")), seed
        case "dice":
            # Two and three come in as well, so that the answer is not one of two.
            return (rng.pick((2, 3, 4, 4, 5, 5)),), "dice", seed
        case "scattered-four":
            return (4,), "scatter", seed
        case "scattered-five":
            return (5,), "scatter", seed
        case "five-and-some":
            some, frame = rng.between(1, 5 if risen(morning, 8) else 3), rng.coin()
            # A full ten frame would tell its number by its name.
            return (5, some), "ten-frame" if frame and some < 5 else "five-and-some", seed
        case "nine":
            return (5, 4), rng.pick(("five-and-some", "ten-frame")), seed
        case _:
            most = 5 if risen(morning, 17) else 3
            left, right = rng.between(1, most), rng.between(2, most)
            return (left, right) if rng.coin() else (right, left), "two-groups", seed


def _say(item: str, rng: SeededRandom) -> Phrasing:
    if item == "two-groups":
        return rng.phrasing(
            "Look at both sides. How many dots did you see?",
            "There were dots on both sides. How many in all?",
            "How many dots were there, on both sides together?",
            "Put both sides together. How many dots did you see?",
        )
    return rng.phrasing(
        "How many dots did you see?",
        "All gone! How many dots were there?",
        "The dots are hiding now. How many are there?",
        "How many dots are under the card?",
        "Say what you saw. How many dots?",
    )


def _cues(item: str, groups: tuple[int, ...]) -> tuple[Cue, Cue, Cue]:
    count, most = sum(groups), max(groups)
    again = Cue("Show it once more, a little longer, and cover it.")
    match item:
        case "five-and-some" | "nine":
            return (
                again,
                Cue("Leave it open. Cover the lower row. How many are in the top row? Uncover it again."),
                Cue("Say “five” together for the top row, touch the next dot, and let the child go on."),
            )
        case "two-groups":
            side = "the left side" if len(set(groups)) == 1 else "the fuller side"
            return (
                again,
                Cue("Cover the right side with a hand, then the left. Ask about each side alone."),
                Cue(f"Say “{number_word(most)}” together for {side}. The child goes on from there."),
            )
        case _:
            begin = {1: "", 2: ", “one…”,"}.get(count, ", “one, two…”,")
            third = (
                f"Leave it open and touch dots together{begin} until the child goes on alone."
                if begin
                else "Leave it open and touch the dot together. The child says the number."
            )
            return again, Cue("Ask the child to show as many fingers as there were dots."), Cue(third)


SKILL = Skill(
    id="subitize",
    title="See how many",
    asks="see how many without counting",
    strand=Strand.NUMBER,
    ladder=("to-3", "four-and-five", "five-and-some", "two-groups"),
    levels=(
        Level(
            "to-3",
            "one to three",
            ("to-3",),
            toward=_TOWARD,
            seconds=20,
            guess=0.33,
            table=_COVER,
            ends=("to-3",),
        ),
        Level(
            "four-and-five",
            "four and five, on dice and scattered",
            ("dice", "scattered-four"),
            ("scattered-five",),
            toward=_TOWARD,
            stands_on=("subitize:to-3",),
            seconds=20,
            guess=0.33,
            table=_COVER,
            ends=("dice", "scattered-four", "scattered-five"),
        ),
        Level(
            "five-and-some",
            "five and some more, to ten",
            ("five-and-some", "nine"),
            toward=_TOWARD,
            stands_on=("subitize:four-and-five",),
            waits_on=("subitize/scattered-five",),
            seconds=20,
            table=_COVER,
            ends=("five-and-some", "nine"),
        ),
        Level(
            "two-groups",
            "two groups, to ten",
            ("two-groups",),
            toward=_TOWARD,
            stands_on=("subitize:five-and-some", "parts:of-6-and-7"),
            seconds=20,
            table=_COVER,
            ends=("two-groups",),
        ),
    ),
    ask=ask,
)
