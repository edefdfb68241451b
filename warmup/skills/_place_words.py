"""Above, below, beside, behind, in front of, between: with toys on the table, or on two shelves.

Behind and in front are told from a thing's own face where it has one (a doll, a chair), and from where
the child sits where it has none (a box): common practice, no source.
"""

from warmup import pictures
from warmup.model import Cue
from warmup.pictures.facts import THINGS
from warmup.randomness import SeededRandom
from warmup.skills._home import a
from warmup.skills.base import Draft

MOVED = ("cup", "spoon", "sock", "block", "hat", "napkin")
"""Toys that are put somewhere."""

FACED = ("chair", "doll", "toy dog")
"""Things with a face or a back of their own."""

PLAIN = ("box", "basket", "tub")
"""Things that look the same from all sides."""

SHOWN = tuple(name for name in THINGS if name != "bear")
"""Toys in a picture to ask about: a bear would be mixed up with the family's stuffed animal."""

_HIGH = ("chair", "table", "shelf")
_WHERE = ("above", "below", "behind", "in front of", "beside")


def _landmark(where: str, rng: SeededRandom) -> str:
    if where == "below":
        return rng.pick(_HIGH)
    return rng.pick(FACED + PLAIN)


def _right_place(thing: str, where: str, landmark: str) -> tuple[str, tuple[str, ...]]:
    """What a right doing looks like, and what else counts."""
    faced = landmark in FACED
    other_side = f"the far side of the {landmark} from the child"
    match where:
        case "above":
            return f"the {thing} is higher than the {landmark}, over it", ("on top counts too",)
        case "below":
            return f"the {thing} is lower than the {landmark}, under it", ()
        case "beside":
            return f"the {thing} is close to one side of the {landmark}; either side", ()
        case "behind" if faced:
            return f"the {thing} is at the back of the {landmark}", (other_side,)
        case "behind":
            return f"the {thing} is on {other_side}", ("hidden by it",)
        case _ if landmark == "chair":
            return f"the {thing} is on the side of the {landmark} where your feet go", (
                "on the child’s side of it",
            )
        case _ if faced:
            return f"the {thing} is where the face of the {landmark} looks", ("on the child’s side of it",)
        case _:
            return f"the {thing} is on the child’s side of the {landmark}", ()


_WAY_IN = {
    "above": "Which way is up? Show me with a finger.",
    "below": "Which way is down? Show me with a finger.",
    "beside": "Pat its two sides.",
    "behind": "Which side of it can’t you see?",
    "in front of": "Which side of it do you see?",
}
_FACE_IN = {"behind": "Where is its back?", "in front of": "Which way does it look?"}
_ON_THE_CHILD = {
    "above": "Hold your hand over the child’s head: “My hand is above you.”",
    "below": "Hold your hand by the child’s shoes: “My hand is below you.”",
    "beside": "Sit close by the child’s arm: “I am beside you.”",
    "behind": "Go to the child’s back: “I am behind you.”",
    "in front of": "Kneel where the child looks: “I am in front of you.”",
}
_MIXED = {
    "above": "Setting it next to the thing: above is heard as “near”.",
    "below": "Setting it on top: above and below swapped.",
    "beside": "Any place near by. Beside is at the side, not at the front or back.",
    "behind": "Putting it next to the thing, or on it.",
    "in front of": "Putting it at the back: front and back swapped.",
}


def ask_place(rng: SeededRandom) -> Draft:
    """Put a thing where a place word says."""
    where, thing = rng.pick(_WHERE), rng.pick(MOVED)
    landmark = _landmark(where, rng)
    answer, accept = _right_place(thing, where, landmark)
    put = "Hold" if where == "above" else "Put"
    way_in = (_FACE_IN if landmark in FACED else {}).get(where, _WAY_IN[where])
    if (where, landmark) == ("in front of", "chair"):
        way_in = "Sit down on it. Which way do you look?"
    return Draft(
        say=rng.phrasing(
            f"{put} the {thing} {where} the {landmark}.",
            f"Take the {thing}. {put} it {where} the {landmark}.",
            f"Show me: the {thing} {where} the {landmark}.",
            f"Listen, then do it. {put} the {thing} {where} the {landmark}.",
        ),
        answer=answer,
        accept=accept,
        working=f"{where}: {_MEANING[where]}",
        cues=(
            Cue(f"Touch the {landmark}. {way_in}"),
            Cue(f"{_ON_THE_CHILD[where]} Now look at the {landmark}."),
            Cue(f"Carry the {thing} to the {landmark} together, slowly. The child sets it down."),
        ),
        watch_for=_MIXED[where],
        given={"thing": thing, "where": where, "landmark": landmark, "has_a_face": landmark in FACED},
        table=f"{thing}, {landmark}",
        do=f"Have {a(thing)} ready, near {a(landmark)}.",
    )


_MEANING = {
    "above": "higher up",
    "below": "lower down",
    "beside": "at one side",
    "behind": "at the back, or past it from where you sit",
    "in front of": "where it looks, or nearer to you",
    "between": "one on each side",
}


def ask_between(rng: SeededRandom) -> Draft:
    """Put a thing between two others."""
    thing = rng.pick(MOVED)
    first, second = rng.sample(FACED[1:] + PLAIN, 2)
    return Draft(
        say=rng.phrasing(
            f"Put the {thing} between the {first} and the {second}.",
            f"The {thing} goes between the {first} and the {second}.",
            f"Take the {thing}. Set it between the {first} and the {second}.",
        ),
        answer=f"the {thing} in the middle: the {first} on one side, the {second} on the other",
        working=f"{first} · {thing} · {second}: {_MEANING['between']}",
        cues=(
            Cue(f"Touch the {first}. Touch the {second}. Look at the room they leave."),
            Cue("Hold up both hands, apart. Let the child’s nose come in. That is between."),
            Cue(f"Walk a finger from the {first} toward the {second} together. The child says stop."),
        ),
        watch_for=f"Next to the {first} only. Between needs one on each side.",
        given={"thing": thing, "where": "between", "first": first, "second": second},
        table=f"{thing}, {first}, {second}",
        do=f"Set {a(first)} and {a(second)} apart. Hand over {a(thing)}.",
    )


_SAME_AS = {
    "above": ("over", "higher than", "on top of"),
    "below": ("under", "lower than", "beneath"),
    "beside": ("next to", "by"),
    "behind": ("in back of",),
    "in front of": (),
    "between": (),
}


def ask_tell_where(rng: SeededRandom) -> Draft:
    """Say in words where a toy in the scene is."""
    where = rng.pick((*_WHERE, "between"))
    front = rng.pick(("box", "cup"))
    thing, other, third = rng.sample([name for name in SHOWN if name != front], 3)
    match where:
        case "above":
            scene, place = pictures.Scene(((thing,), (other,))), f"the {other}"
        case "below":
            scene, place = pictures.Scene(((other,), (thing,))), f"the {other}"
        case "behind":
            scene, place = pictures.Scene(((front,),), behind=thing), f"the {front}"
        case "in front of":
            scene, place = pictures.Scene(((front,),), behind=other), f"the {other}"
            thing = front
        case "beside":
            scene, place = pictures.Scene((rng.shuffled((thing, other)),)), f"the {other}"
        case _:
            scene, place = pictures.Scene(((other, thing, third),)), f"the {other} and the {third}"
    return Draft(
        say=rng.phrasing(
            f"I spy a {thing}. Where is it?",
            f"Where is the {thing}? Tell me without pointing.",
            f"My eyes are closed. Tell me where the {thing} is.",
        ),
        answer=f"{where} {place}",
        accept=(*(f"{word} {place}" for word in _SAME_AS[where]), *_true_too(scene, thing, place)),
        working=f"{thing} {where} {place}: {_MEANING[where]}",
        cues=(
            Cue(f"Put a finger on the {thing}. What else do you see near it?"),
            Cue(f"Build it with two or three toys. Touch {place}, then the {thing}."),
            Cue(f"Begin: “The {thing} is…” and let the child end it."),
        ),
        watch_for="“There!” and a point. Ask for the place in words.",
        given={"thing": thing, "rows": [list(row) for row in scene.rows], "behind": scene.behind},
        picture=scene,
        table="",
    )


def _true_too(scene: "pictures.Scene", thing: str, place: str) -> tuple[str, ...]:
    """What else is true: the shelf, left or right of two, next to either of three."""
    row = scene.rows[0]
    if scene.behind:
        return ()
    match len(scene.rows), len(row):
        case 2, _:
            return (f"on the {'top' if thing in row else 'bottom'} shelf",)
        case _, 2:
            return (f"{'left' if row[0] == thing else 'right'} of {place}",)
        case _:
            return ("in the middle", *(f"next to the {toy}" for toy in row if toy != thing))
