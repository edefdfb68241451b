"""make-ten: the partner that makes ten.

K.OA.A.4: for each number from 1 to 9, find the number that makes 10 (Common Core State Standards for
Mathematics, 2010). The two items with a nought in them go past that bound on purpose: they come in
only with the whole set.
"""

from warmup.draw import Draw
from warmup.morning import Cue, Morning, Strand
from warmup.pictures.ten_frame import TenFrame
from warmup.skills.base import Draft, Level, Skill
from warmup.words import number_word, plural

_PARTNERS = {
    "see-places": (5, 6, 7, 8, 9),
    "easy-pairs": (9, 8, 5, 1, 2),
    "seven-three": (7, 3),
    "six-four": (6, 4),
    "all": (1, 2, 3, 4, 5, 6, 7, 8, 9),
    "in-the-head": (1, 2, 4, 5, 6, 8, 9),
    "three-and-what": (3,),
    "ten-and-none": (10, 0),
}
_SPOKEN_ONLY = ("in-the-head", "three-and-what")
_WATCH = {
    "see-places": "Counting all ten places again. Wait; the empty ones can be counted alone.",
    "easy-pairs": "Saying the number next in the count: nine, so ten.",
    "seven-three": "Answering two or four: one off. Fingers settle it.",
    "six-four": "Mixing it up with seven and three. Ask for both pairs side by side.",
    "all": "Guessing a pair just practised. Let fingers prove it.",
    "in-the-head": "Looking for the frame. Offer ten fingers in its place.",
    "three-and-what": "Saying thirteen: adding ten on. Say again that ten is all there is.",
    "ten-and-none": "Silence: nothing to count feels like no answer. Zero is an answer.",
}


def ask(item: str, _morning: Morning, draw: Draw) -> Draft:
    """How many more make ten, from a number this item covers."""
    have = draw.pick(_PARTNERS[item])
    more = 10 - have
    word, eggs = number_word(have), plural(have, "egg")
    seen = item not in _SPOKEN_ONLY
    frame = TenFrame(have)
    return Draft(
        say=draw.way(
            f"You have {word}. How many more make ten?",
            f"The tray holds ten. It has {word} {eggs}. How many more fit in?",
            f"I say {word}. You say its friend that makes ten.",
            f"{word.capitalize()} and what make ten?",
        ),
        answer=number_word(more),
        accept=("none", "nothing") if more == 0 else (),
        working=f"{have} + {more} = 10",
        cues=(
            Cue(
                f"Wait. Then: show me {word} on your fingers." if have else "Wait. Then: show me no fingers."
            ),
            Cue("Look at the fingers still folded." if have < 10 else "Are any fingers still folded?", frame),
            _begin(have),
        ),
        watch_for=_WATCH[item],
        given={"have": have, "make": 10},
        picture=frame if seen else None,
    )


def _begin(have: int) -> Cue:
    match have:
        case 10:
            return Cue("Touch each finger, all ten, together. Then look for one left over.")
        case 0:
            return Cue("Put one finger up together, then go on until all are up.")
        case _:
            return Cue("Touch the first folded finger together: “one…” and let the child go on.")


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
            stands_on=(),
            seconds=20,
            table="ten-hole tray",
        ),
        Level(
            "easy-pairs", "nine and one, eight and two, five and five", ("easy-pairs",), codes=("K.OA.A.4",)
        ),
        Level(
            "all", "all pairs", ("all", "seven-three", "six-four"), codes=("K.OA.A.4",), table="ten-hole tray"
        ),
        Level(
            "in-the-head",
            "no picture",
            ("in-the-head", "three-and-what", "ten-and-none"),
            codes=("K.OA.A.4",),
        ),
    ),
    ask=ask,
)
