"""make-ten: the partner that makes ten.

K.OA.A.4: for each number from 1 to 9, find the number that makes 10 (Common Core State Standards for
Mathematics, 2010). The last level brings in ten and zero, past that bound, so it carries K.OA.A.2
(totals no bigger than ten) in its place.
"""

from warmup import pictures
from warmup.english import number_word, plural
from warmup.model import Cue, Morning, Strand
from warmup.randomness import Phrasing, SeededRandom
from warmup.skills._home import CUP, PEG, Noun, upper
from warmup.skills.base import Draft, Level, Skill

# What each item starts from.
_PARTNERS = {
    "see-places": (4, 5, 6, 7, 8, 9),
    "easy-pairs": (9, 8, 5, 1, 2),
    "seven-three": (7, 3),
    "six-four": (6, 4),
    "all": (1, 2, 3, 4, 5, 6, 7, 8, 9),
    "in-the-head": (1, 2, 4, 5, 6, 8, 9),
    "three-and-what": (3,),
    "ten-and-none": (10, 0),
}
_SPOKEN_ONLY = ("in-the-head", "three-and-what", "ten-and-none")
_WATCH = {
    "see-places": "Counting all the places again. The empty ones can be counted alone.",
    "easy-pairs": "Saying the number next in the count.",
    "seven-three": "A partner that is near, but off by one. Let fingers settle it.",
    "six-four": "A partner that is off by one. Let fingers settle it.",
    "all": "A pair just practiced, said by habit. Let fingers prove it.",
    "in-the-head": "Looking round for the frame. Ten fingers do as well.",
    "three-and-what": "Thirteen: adding ten on. Say again that ten is all there is.",
    "ten-and-none": "Silence, or a shrug. Ask again, and give it time.",
}

_NOTHING_YET = "Saying the number back, or keeping quiet. Look at the frame: which places are empty?"


def ask(item: str, _morning: Morning, rng: SeededRandom) -> Draft:
    """How many more make ten, from a number this item covers."""
    have = rng.pick(_PARTNERS[item])
    more = 10 - have
    frame = pictures.TenFrame(have)
    return Draft(
        say=_say(have, rng),
        answer=number_word(more),
        accept=("none", "nothing") if more == 0 else (),
        working=f"{have} + {more} = 10",
        cues=_cues(have, frame),
        watch_for=_WATCH[item] if have else _NOTHING_YET,
        given={"have": have, "make": 10},
        picture=None if item in _SPOKEN_ONLY else frame,
    )


def _say(have: int, rng: SeededRandom) -> Phrasing:
    word = number_word(have)
    # Said as people say it: nobody has zero cups.
    some = word if have else "none"
    return rng.phrasing(
        f"You have {some}. How many more make ten?",
        f"The ten frame has {some} in it. How many more fill it?",
        f"I say {word}. You say its partner that makes ten.",
        f"{upper(word)} and what make ten?",
        f"We need ten {PEG.many}. We have {some}. How many more?",
        f"Ten kids want juice. I have {_of(have, CUP)}. How many more?",
        f"Hold up {word} {plural(have, 'finger')}. How many more make ten?"
        if have
        else "Make two fists. How many fingers make ten?",
    )


def _of(have: int, noun: Noun) -> str:
    """The count and its noun: "no eggs", "one egg", "four eggs"."""
    return noun.of(have) if have else f"no {noun.many}"


def _cues(have: int, frame: "pictures.TenFrame") -> tuple[Cue, Cue, Cue]:
    match have:
        case 10:
            return (
                Cue("Show me ten on your fingers."),
                Cue("Look for a finger that is still folded, or for an empty place here.", frame),
                Cue("Touch the ten fingers together, and let the child say what is left over."),
            )
        case 0:
            return (
                Cue("Make two fists. That is zero."),
                Cue("Look at the empty places. Which of them must fill up?", frame),
                Cue("Put the first finger up together, and let the child go on until no more fold out."),
            )
        case 9:
            return (
                Cue("Show me nine on your fingers."),
                Cue("Which places are empty here?", frame),
                Cue("Count the fingers that are up together. The child goes on until all are up."),
            )
        case _:
            return (
                Cue(f"Show me {number_word(have)} on your fingers."),
                Cue("Look at the fingers still folded, or at the empty places here.", frame),
                Cue("Touch the first folded finger together: “one…” and let the child go on."),
            )


SKILL = Skill(
    id="make-ten",
    title="Make ten",
    asks="the partner that makes ten",
    strand=Strand.ADDING,
    levels=(
        Level(
            "see-places",
            "see the empty places",
            ("see-places",),
            codes=("K.OA.A.4",),
            seconds=20,
            table="ten frame",
        ),
        Level(
            "easy-pairs", "nine and one, eight and two, five and five", ("easy-pairs",), codes=("K.OA.A.4",)
        ),
        Level(
            "all",
            "all pairs",
            ("all", "seven-three", "six-four"),
            codes=("K.OA.A.4",),
            stands_on=("parts:of-6-and-7",),
            table="ten frame",
        ),
        Level(
            "in-the-head",
            "no picture",
            ("in-the-head", "three-and-what", "ten-and-none"),
            codes=("K.OA.A.2",),
        ),
    ),
    ask=ask,
)
