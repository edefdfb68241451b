"""patterns: what comes next, what is missing, which part repeats.

Common practice in kindergarten; the Common Core State Standards for Mathematics have no code for it.
Repeating patterns stand in the Virginia Standards of Learning. The part that repeats is one of AB, AAB,
ABB, ABC and, for a row that starts in the middle, ABA. Enough of it is given that no other part of up
to three pieces would fit.
"""

from collections.abc import Sequence
from typing import NamedTuple

from warmup import pictures
from warmup.english import number_word
from warmup.model import Cue, Morning, Strand
from warmup.pictures.facts import FORMS
from warmup.randomness import Phrasing, SeededRandom
from warmup.skills._home import upper
from warmup.skills.base import Draft, Level, Skill

_DOING = ("clap", "stamp", "snap", "hum", "tap", "nod")
_LAYING = ("fork", "spoon", "cup", "block", "sock", "hat")
# How the adult gives a row that is not in a picture.
_DO = {
    "do": "Do each one as you say it, with a steady beat.",
    "lay": "Set them in a row as you say them, from your child’s left.",
    "see": "",
}
_FAMILIES = {
    "ab-heard": ("AB",),
    "ab-seen": ("AB",),
    "aab": ("AAB",),
    "abb": ("ABB",),
    "abc": ("ABC",),
    "missing": ("AB", "AAB", "ABB", "ABC"),
    # AAB begun at its second piece. Begun at its third it would look like any ABB.
    "mid-start": ("ABA",),
    "name-the-part": ("AB", "AAB", "ABB", "ABC"),
    # Two as often as three, so that neither is the better guess.
    "how-long-a-part": ("AB", "AB", "AB", "AAB", "ABB", "ABC"),
}
_WATCH = {
    "ab-heard": "Saying the last one twice. Say the row again with a beat.",
    "ab-seen": "Taking the piece liked best. Touch the row from its start and say it.",
    "aab": "Dropping the double: one, then the other, by turns.",
    "abb": "ABB turns into AB: the second of the pair goes missing.",
    "abc": "Jumping back to the start too soon, after two of the three.",
    "missing": "Naming the piece just before the gap. Say the row from its start.",
    "mid-start": "Taking the first piece for the start of the part. Let the row run on past it.",
    "name-the-part": "Saying the whole row, or only one piece. Ask where it starts over.",
    "how-long-a-part": "Counting the kinds of piece, not the pieces. Lay a finger on each.",
}


class _Row(NamedTuple):
    """What repeats, what is given of it, and how it is given: done, laid on the table or seen."""

    part: tuple[str, ...]
    given: tuple[str, ...]
    how: str

    def at(self, place: int) -> str:
        """The piece at a place, counted from 0, also past the end."""
        return self.part[place % len(self.part)]


def ask(item: str, _morning: Morning, rng: SeededRandom) -> Draft:
    """A row that repeats, and one question about it."""
    match item:
        case "missing":
            return _missing(_row(item, rng), rng)
        case "name-the-part":
            return _name(_row(item, rng), rng)
        case "how-long-a-part":
            return _how_long(_row(item, rng), rng)
        case "ab-heard" | "ab-seen" | "abc":
            return _next(item, _row(item, rng), 1, rng)
        case _:
            return _next(item, _row(item, rng), 2, rng)


def _row(item: str, rng: SeededRandom) -> _Row:
    family = rng.pick(_FAMILIES[item])
    seen = item == "ab-seen" or (item != "ab-heard" and rng.below(3) == 0)
    how = "see" if seen else rng.pick(("do", "lay"))
    things = {"see": FORMS, "do": _DOING, "lay": _LAYING}[how]
    names = dict(zip("ABC", rng.sample(things, 3), strict=True))
    part = tuple(names[letter] for letter in family)
    long = _length(item, len(part), rng)
    return _Row(part, tuple(part[place % len(part)] for place in range(long)), how)


def _length(item: str, part: int, rng: SeededRandom) -> int:
    """At least twice the part; whole parts where it is to be named, so that it begins and ends plainly."""
    if item in ("name-the-part", "how-long-a-part"):
        return 6
    return rng.between(4, 7) if part == 2 and item != "missing" else rng.between(6, 8)


def _said(pieces: Sequence[str]) -> str:
    return ", ".join(pieces)


# ---- what comes next --------------------------------------------------------------------------------


def _next(item: str, row: _Row, want: int, rng: SeededRandom) -> Draft:
    long = len(row.given)
    answer = [row.at(place) for place in range(long, long + want)]
    return Draft(
        say=_say_next(row, "What comes next?" if want == 1 else "What are the next two?", rng),
        answer=_said(answer),
        working=f"{_said(row.part)} over and over",
        cues=_going_on(row),
        watch_for=_WATCH[item],
        given={"shown": list(row.given), "want": want},
        picture=pictures.PatternRow((*row.given, *("?",) * want)) if row.how == "see" else None,
        table=_table(row),
        do=_DO[row.how],
    )


def _say_next(row: _Row, question: str, rng: SeededRandom) -> Phrasing:
    pieces = upper(_said(row.given))
    match row.how:
        case "do":
            return rng.phrasing(
                f"Listen. {pieces}. {question}",
                f"Do it with me. {pieces}. {question}",
                f"Say it with me. {pieces}. {question}",
            )
        case "lay":
            return rng.phrasing(
                f"Look at my row. {pieces}. {question}",
                f"Say my row with me. {pieces}. {question}",
                f"{pieces}. Keep going. {question}",
            )
        case _:
            return rng.phrasing(
                f"Look at my row. {question}",
                f"Touch each shape and say it. {question}",
                f"This row keeps going. {question}",
            )


def _going_on(row: _Row) -> tuple[Cue, Cue, Cue]:
    if row.how == "see":
        return (
            Cue("Say the row from its start, and tap the table at each."),
            Cue("Cover all but the start. Slide the hand on, a shape at a time."),
            Cue("Point along the row together in a sing-song. Stop talking at the empty place."),
        )
    forms = dict(zip(dict.fromkeys(row.part), FORMS, strict=False))
    drawn = _said([f"each {piece} a {form}" for piece, form in forms.items()])
    return (
        Cue(f"Hear it again from “{row.given[0]}, {row.given[1]}”."),
        Cue(
            f"Here it is drawn: {drawn}. Touch along it.",
            pictures.PatternRow((*(forms[piece] for piece in row.given), "?")),
        ),
        Cue(f"Begin together: “{_said(row.given[: len(row.part)])}…” Stop talking where the row ends."),
    )


def _table(row: _Row) -> str:
    """What is laid on the table, and nothing where the row is done or seen."""
    return ", ".join(f"{piece}s" for piece in dict.fromkeys(row.part)) if row.how == "lay" else ""


# ---- what is missing --------------------------------------------------------------------------------


def _missing(row: _Row, rng: SeededRandom) -> Draft:
    gap = rng.between(2, len(row.given) - 2)
    shown = tuple("?" if place == gap else piece for place, piece in enumerate(row.given))
    seen = row.how == "see"
    pieces = upper(_said(tuple("blank" if piece == "?" else piece for piece in shown)))
    say = (
        rng.phrasing(
            "A shape fell out of my row. Which shape was it?",
            "Look at the row. What goes in the gap?",
            "One shape is gone from this row. Which one?",
        )
        if seen
        else rng.phrasing(
            f"{pieces}. What goes in the blank?",
            f"I left one out. {pieces}. Which one?",
            f"Listen for the blank. {pieces}. What goes there?",
        )
    )
    return Draft(
        say=say,
        answer=row.at(gap),
        working=f"{_said(row.part)} over and over",
        cues=(
            Cue("Say the row from its start, with a beat."),
            Cue("Find a stretch of the row without a gap. How does it go?"),
            Cue("Say the row together up to the gap, and fall silent there."),
        ),
        watch_for=_WATCH["missing"],
        given={"shown": list(shown)},
        picture=pictures.PatternRow(shown) if seen else None,
        guess=round(1 / len(set(row.part)), 2),
        table=_table(row),
        do=_DO[row.how] and f"{_DO[row.how]} Skip one place at “blank”.",
    )


# ---- the part that repeats --------------------------------------------------------------------------


def _turned(part: tuple[str, ...]) -> list[str]:
    """The part begun at each of its pieces: any of them repeats."""
    return [_said(part[turn:] + part[:turn]) for turn in range(len(part))]


def _naming(row: _Row) -> tuple[Cue, Cue, Cue]:
    return (
        Cue("Tell me when you hear it start over."),
        Cue("Draw a finger along, and stop at the very place where it starts over."),
        Cue("Say the row together and clap hands each time it starts over. The child says the part between."),
    )


def _name(row: _Row, rng: SeededRandom) -> Draft:
    key = _turned(row.part)
    pieces = upper(_said(row.given))
    seen = row.how == "see"
    ways = (
        (
            "Look at my row. Which part repeats?",
            "Say the part of this row that repeats.",
            "Which part comes again and again in this row?",
        )
        if seen
        else (
            f"{pieces}. Which part comes again and again?",
            f"{pieces}. Say the part that repeats.",
            f"Listen. {pieces}. Which part repeats?",
        )
    )
    return Draft(
        say=rng.phrasing(*ways),
        answer=key[0],
        accept=tuple(key[1:]),
        working=f"{key[0]} | {key[0]} …",
        cues=_naming(row),
        watch_for=_WATCH["name-the-part"],
        given={"shown": list(row.given), "ask": "part"},
        picture=pictures.PatternRow(row.given) if seen else None,
        table=_table(row),
        do=_DO[row.how],
    )


def _how_long(row: _Row, rng: SeededRandom) -> Draft:
    pieces = upper(_said(row.given))
    seen = row.how == "see"
    ways = (
        (
            "How many shapes until my row starts over?",
            "Look at the row. How many shapes come before it starts over?",
            "How many shapes are in the part that repeats?",
        )
        if seen
        else (
            f"{pieces}. How many until it starts over?",
            f"{pieces}. How many are in the part that repeats?",
            f"Listen. {pieces}. How many are in each part that repeats?",
        )
    )
    return Draft(
        say=rng.phrasing(*ways),
        answer=number_word(len(row.part)),
        working=f"{_said(row.part)}: {len(row.part)}, then again",
        cues=_naming(row),
        watch_for=_WATCH["how-long-a-part"],
        given={"shown": list(row.given), "ask": "length"},
        picture=pictures.PatternRow(row.given) if seen else None,
        table=_table(row),
        do=_DO[row.how],
    )


SKILL = Skill(
    id="patterns",
    title="Patterns",
    asks="what comes next, what is missing, what repeats",
    strand=Strand.MEASURING,
    levels=(
        Level(
            "two-part",
            "one and the other, by turns",
            ("ab-heard", "ab-seen"),
            seconds=20,
            guess=0.5,
            table="forks, spoons",
            ends=("ab-heard", "ab-seen"),
        ),
        Level(
            "three-part",
            "a part of three, a missing piece, a start in the middle",
            ("aab", "abc", "missing", "mid-start"),
            ("abb",),
            stands_on=("patterns:two-part",),
            guess=0.25,
            table="forks, spoons, cups",
            guesses=(("abc", 0.33), ("missing", 0.45)),
        ),
        Level(
            "name-the-part",
            "name the part that repeats",
            ("name-the-part", "how-long-a-part"),
            stands_on=("patterns:three-part",),
            waits_on=("patterns/abb",),
            table="forks, spoons, cups",
            guesses=(("how-long-a-part", 0.5),),
        ),
    ),
    ask=ask,
)
