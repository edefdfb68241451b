"""make-ten: the partner that makes ten, and ten take away some.

K.OA.A.4: for each number from 1 to 9, find the number that makes 10; K.OA.A.2: differences from no more than
ten (Common Core State Standards for Mathematics, 2010).
"""

from warmup import pictures
from warmup.english import number_word, plural
from warmup.model import Cue, Morning, Strand
from warmup.randomness import Phrasing, SeededRandom
from warmup.skills._home import CUP, PEG, upper
from warmup.skills._rising import risen
from warmup.skills.base import Draft, Level, Skill

# What each item starts from. Eight and two are no easy pair, and three in the head has an item of its own.
_PARTNERS = {
    "see-places": (2, 3, 4, 5, 6, 7, 8, 9),
    "easy-pairs": (9, 5, 1),
    "eight-two": (8, 2),
    "all": (1, 2, 3, 4, 5, 6, 7, 8, 9),
    "seven-three": (7, 3),
    "six-four": (6, 4),
    "in-the-head": (1, 2, 4, 5, 6, 7, 8, 9),
    "three-and-what": (3,),
}
_SPOKEN_ONLY = ("in-the-head", "three-and-what")
# What is taken from ten: the easy pairs first.
_TAKEN = (1, 2, 5, 8, 9, 3, 4, 6, 7)
_WATCH = {
    "see-places": "Counting all the places again. The empty ones can be counted alone.",
    "eight-two": "Saying one: an empty place is missed. Touch the empty places.",
    "easy-pairs": "Saying the number next in the count.",
    "seven-three": "A partner that is near, but off by one. Let fingers settle it.",
    "six-four": "A partner that is off by one. Let fingers settle it.",
    "all": "A pair just practiced, said by habit. Let fingers prove it.",
    "in-the-head": "Looking round for the frame. Ten fingers do as well.",
    "three-and-what": "Thirteen: adding ten on. Say again that ten is all there is.",
    "take-from-ten": "Counting back and losing the way. Ask for the partner that makes ten.",
}


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """How many more make ten, from a number this item covers; or what is left of ten."""
    if item == "take-from-ten":
        return _take(rng.pick(_TAKEN[: None if risen(morning, 28) else 5]), rng)
    # At first no more than five places are empty.
    few = item == "see-places" and not risen(morning, 10)
    have = rng.pick([n for n in _PARTNERS[item] if n >= 5] if few else _PARTNERS[item])
    more = 10 - have
    frame = pictures.TenFrame(have)
    return Draft(
        say=_say(have, rng),
        answer=number_word(more),
        working=f"{have} + {more} = 10",
        cues=_cues(have, frame),
        watch_for=_WATCH[item],
        given={"have": have, "make": 10},
        picture=None if item in _SPOKEN_ONLY else frame,
    )


def _say(have: int, rng: SeededRandom) -> Phrasing:
    some = number_word(have)
    return rng.phrasing(
        f"You have {some}. How many more make ten?",
        f"The ten frame has {some} in it. How many more fill it?",
        f"I say {some}. You say its partner that makes ten.",
        f"{upper(some)} and what make ten?",
        f"We need ten {PEG.many}. We have {some}. How many more?",
        f"Ten kids want juice. I have {CUP.of(have)}. How many more?",
        f"Hold up {some} {plural(have, 'finger')}. How many more make ten?",
    )


def _take(away: int, rng: SeededRandom) -> Draft:
    """Ten take away some: what is left is the partner of what went."""
    some, left = number_word(away), 10 - away
    full = pictures.TenFrame(10)
    return Draft(
        say=rng.phrasing(
            f"What is ten take away {some}?",
            f"You have ten. You give away {some}. How many are left?",
            f"The ten frame is full. Take {some} out. How many stay in?",
            f"Hold up ten fingers. Fold {some} down. How many stay up?",
            f"We have ten {PEG.many}. We use {some}. How many are left?",
            f"Ten minus {some}. What is it?",
        ),
        answer=number_word(left),
        working=f"10 − {away} = {left}, because {left} + {away} = 10",
        cues=(
            Cue(f"Say it again. Show me ten fingers. Which {some} will go?"),
            Cue(f"Cover {some} of these with a hand. What can you still see?", full),
            Cue("Fold the first finger together. The child folds the rest and says how many stay up.")
            if away > 1
            else Cue("Fold the thumb down together. The child says how many stay up."),
        ),
        watch_for=_WATCH["take-from-ten"],
        given={"from": 10, "away": away},
    )


def _cues(have: int, frame: "pictures.TenFrame") -> tuple[Cue, Cue, Cue]:
    first = Cue(f"Show me {number_word(have)} on your fingers.")
    if have == 9:
        return (
            first,
            Cue("Which places are empty here?", frame),
            Cue("Count the fingers that are up together. The child goes on until all are up."),
        )
    return (
        first,
        Cue("Look at the fingers still folded, or at the empty places here.", frame),
        Cue("Touch the first folded finger together: “one…” and let the child go on."),
    )


SKILL = Skill(
    id="make-ten",
    title="Make ten",
    asks="the partner that makes ten; ten take away some",
    strand=Strand.ADDING,
    levels=(
        Level(
            "see-places",
            "see the empty places",
            ("see-places",),
            codes=("K.OA.A.4",),
            stands_on=("subitize:five-and-some", "how-many:count-out-to-10"),
            seconds=20,
            table="ten frame",
            ends=("see-places",),
        ),
        Level(
            "easy-pairs",
            "nine and one, eight and two, five and five",
            ("easy-pairs",),
            ("eight-two",),
            codes=("K.OA.A.4",),
            stands_on=("make-ten:see-places", "parts:hidden-to-5"),
        ),
        Level(
            "all",
            "all pairs",
            ("all",),
            ("seven-three", "six-four"),
            codes=("K.OA.A.4",),
            stands_on=("make-ten:easy-pairs", "parts:of-6-and-7"),
            waits_on=("make-ten/eight-two",),
            table="ten frame",
        ),
        Level(
            "in-the-head",
            "no picture",
            ("in-the-head",),
            ("three-and-what",),
            codes=("K.OA.A.4",),
            stands_on=("make-ten:all",),
            waits_on=("make-ten/seven-three", "make-ten/six-four"),
        ),
        Level(
            "take-from-ten",
            "ten take away some",
            ("take-from-ten",),
            codes=("K.OA.A.2",),
            stands_on=("make-ten:in-the-head", "add-subtract:take-to-5", "add-subtract:things-to-10"),
            waits_on=("make-ten/three-and-what", "add-subtract/five-minus-four"),
        ),
    ),
    ask=ask,
)
