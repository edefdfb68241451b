"""coins: name a coin, say its worth, tell which buys more.

Toward 2.MD.C.8, the first place where the Common Core State Standards for Mathematics (2010) name coins.
Kindergarten bounds: Texas (19 TAC 111.2) names the four coins; Virginia (2016, K.7) adds their worth in
pennies. A dime is smaller than a nickel and buys more: size is shown true, by the United States Mint's
diameters. A family that leaves pennies out is asked about the other three coins.
"""

from warmup import pictures
from warmup.english import number_word
from warmup.model import Cue, Morning, Strand
from warmup.pictures.facts import CENTS, MILLIMETERS, REEDED
from warmup.randomness import Phrasing, SeededRandom
from warmup.skills._conditions import with_pennies
from warmup.skills._money import cents, counted, kinds, laid
from warmup.skills.base import Draft, Level, Skill

_TABLE = "real coins (kept from under-threes)"
_NEEDS_PENNIES = ("fill-a-nickel", "nickel-or-pennies")

# What stands against the one coin, where it buys more than they do and where it buys less.
_AGAINST = {
    "nickel-or-pennies": (
        "nickel",
        [{"penny": n} for n in (2, 3, 4)],
        [{"penny": n} for n in (6, 7, 8)],
    ),
    "dime-or-many": (
        "dime",
        [{"nickel": 1}, *({"penny": n} for n in (4, 6, 7, 8, 9))],
        [{"nickel": 3}, {"nickel": 4}, *({"penny": n} for n in (11, 12))],
    ),
    "quarter-or-many": (
        "quarter",
        [{"dime": 1}, {"dime": 2}, {"nickel": 3}, {"nickel": 4}],
        [{"dime": 3}, {"dime": 4}, {"nickel": 6}, {"nickel": 7}],
    ),
}


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """Names and looks, worth, the smaller coin that buys more, one coin against many."""
    match item:
        case "name-it":
            return _name_it(morning, rng)
        case "find-it":
            return _find_it(morning, rng)
        case "worth":
            return _worth(rng.pick(("penny", "nickel") if morning.pennies else ("nickel",)), "cent", rng)
        case "dime-worth":
            unit = rng.pick(("nickel", "cent", "nickel", "penny" if morning.pennies else "cent"))
            return _worth("dime", unit, rng)
        case "quarter-worth":
            return _worth("quarter", rng.pick(("nickel", "cent")), rng)
        case "fill-a-nickel":
            return _fill_a_nickel(rng)
        case "dime-or-nickel":
            return _dime_or_nickel(rng)
        case "line-up":
            return _line_up(morning, rng)
        case _:
            return _one_or_many(item, morning, rng)


def _name_it(morning: Morning, rng: SeededRandom) -> Draft:
    shown = rng.shuffled(kinds(morning.pennies))
    at = rng.below(len(shown))
    coin = shown[at]
    return Draft(
        say=rng.phrasing(
            "Look at the coin by the arrow. What is it called?",
            "What do we call the coin by the arrow?",
            "An arrow points to one coin. What is its name?",
        ),
        answer=f"a {coin}",
        accept=(coin,),
        working=f"{_look(coin, shown)}: {coin}",
        cues=(
            Cue(f"It is {_look(coin, shown)}."),
            Cue("Find one just like it on the table. Rub its edge.", pictures.Coins(shown)),
            Cue("Lay paper on a real one. Rub it with a crayon together. What comes out?"),
        ),
        watch_for="The name of a coin close in size. Put the two on top of each other.",
        given={"coins": list(shown), "pointed": at},
        picture=pictures.Coins(shown, pointed=at),
        guess=round(1 / len(shown), 2),
    )


def _find_it(morning: Morning, rng: SeededRandom) -> Draft:
    shown = rng.shuffled(kinds(morning.pennies))
    coin = rng.pick(shown)
    return Draft(
        say=rng.phrasing(
            f"Put your finger on the {coin}.",
            f"Which coin is the {coin}?",
            f"{morning.animal} needs a {coin}. Touch it.",
            f"Find the {coin}. Touch it.",
        ),
        answer=_look(coin, shown),
        working=f"{coin}: {_look(coin, shown)}",
        cues=(
            Cue(f"A {coin}. Think how it looks and how it feels."),
            Cue(f"Go along the row: is this the {coin}? Is this?", pictures.Coins(shown)),
            Cue(f"Push one that is not it away together. The child picks the {coin} from the rest."),
        ),
        watch_for="A dime and a nickel swapped, or any silver one taken. Look at size and edge.",
        given={"coins": list(shown), "named": coin},
        picture=pictures.Coins(shown),
        guess=round(1 / len(shown), 2),
    )


def _look(coin: str, shown: tuple[str, ...]) -> str:
    """How the coin looks among those shown: by size where it is at an end, color and edge."""
    sizes = [MILLIMETERS[other] for other in shown]
    size = {min(sizes): "smallest", max(sizes): "biggest"}.get(MILLIMETERS[coin])
    color = "copper" if coin == "penny" else "silver"
    edge = "ridges" if coin in REEDED else "a smooth edge"
    return f"the {size} one, {color} with {edge}" if size else f"the {color} one with {edge}"


def _worth(coin: str, unit: str, rng: SeededRandom) -> Draft:
    """How many cents, pennies or nickels the coin is worth."""
    each = CENTS.get(unit, 1)
    number = CENTS[coin] // each
    many = {"cent": "cents", "penny": "pennies", "nickel": "nickels"}[unit]
    step = "five" if unit == "nickel" else "one"
    return Draft(
        say=_worth_way(coin, many, rng),
        answer=number_word(number),
        accept=(f"{number_word(number)} {unit if number == 1 else many}",),
        working=f"a {coin} = {CENTS[coin]}¢"
        if unit != "nickel"
        else f"{', '.join(str(5 * (n + 1)) for n in range(number))}: a {coin}",
        cues=(
            Cue(
                f"Hold the {coin}. "
                + ("What can you trade it for?" if number > 1 else "Is any coin worth less?")
            ),
            Cue(
                f"Show the dots under the {coin}. Each dot is a cent."
                if number > 1 or unit == "nickel"
                else f"Show what is under the {coin}. A dot is a cent.",
                pictures.Coins((coin, "nickel") if unit == "nickel" else (coin,), worth=True),
            ),
            Cue(_worth_start(coin, unit, step)),
        ),
        watch_for=f"Saying “one”: that is how many coins, not how many {many}."
        if coin != "penny"
        else "Giving a nickel’s worth. A penny is the least of all.",
        given={"coin": coin, "unit": unit},
        picture=pictures.Coins((coin,)),
    )


def _worth_way(coin: str, many: str, rng: SeededRandom) -> Phrasing:
    if many == "cents":
        return rng.phrasing(
            f"How many cents is a {coin} worth?",
            f"A sticker costs a {coin}. How many cents is that?",
            f"You have a {coin}. How many cents can you spend?",
        )
    return rng.phrasing(
        f"How many {many} make a {coin}?",
        f"You trade a {coin} for {many}. How many do you get?",
        f"How many {many} are worth the same as a {coin}?",
    )


def _worth_start(coin: str, unit: str, step: str) -> str:
    match unit:
        case "nickel":
            return "Lay the first nickel down together. Are we there yet? The child lays the rest."
        case "penny":
            return "Lay the first penny down together, then let the child go on."
        case _ if coin == "penny":
            return "Touch the dot together and let the child count it."
        case _ if coin == "quarter":
            return "Slide along the first line of dots together: “five…” The child goes on by fives."
        case _:
            return f"Touch the first dot together: “{step}…” The child goes on."


def _fill_a_nickel(rng: SeededRandom) -> Draft:
    have = rng.between(1, 4)
    held, word = counted(have, "penny"), number_word(have)
    more = CENTS["nickel"] - have
    return Draft(
        say=rng.phrasing(
            f"You have {held}. How many more make a nickel?",
            f"You save pennies for a nickel. You have {word}. How many more?",
            f"A sticker costs a nickel. You have {held}. How many more?",
        ),
        answer=number_word(more),
        accept=(counted(more, "penny"),) if more > 1 else ("a penny", "one penny"),
        working=f"{have} + {more} = 5",
        cues=(
            Cue("What is a nickel worth in pennies?"),
            Cue(
                "Look at the dots of the nickel. Which pennies do we have?",
                pictures.Coins(("nickel", *["penny"] * have), worth=True),
            ),
            Cue(f"Lay {held} on the dots together. The child lays the rest."),
        ),
        watch_for="The nickel counted like a penny, or the pennies on hand counted again.",
        given={"have": have},
        picture=pictures.Coins(("penny",) * have),
    )


def _dime_or_nickel(rng: SeededRandom) -> Draft:
    """The trap of size: asked both ways, about worth and about size, so that neither name is the safe one."""
    asked = rng.pick(("buys more", "buys less", "is bigger", "is smaller"))
    one, two = rng.shuffled(("dime", "nickel"))
    pick = max if asked in ("buys more", "is bigger") else min
    measure = CENTS if asked.startswith("buys") else MILLIMETERS
    coin = pick((one, two), key=measure.__getitem__)
    buys = asked.startswith("buys")
    return Draft(
        say=rng.phrasing(
            f"Hold a {one} and a {two}. Which one {asked}?",
            f"Which coin {asked}, a {one} or a {two}?",
            f"Look at the {one} and the {two}. Which one {asked}?",
        ),
        answer=f"a {coin}",
        accept=(coin,),
        working="dime 10¢, nickel 5¢" if buys else "dime 17.91 mm, nickel 21.21 mm across",
        cues=(
            Cue("Size and worth are two things. Which did I ask?"),
            Cue(
                "Look at the dots below each." if buys else "Put one coin on top of the other.",
                pictures.Coins((one, two), worth=buys),
            ),
            Cue(
                f"Count the dots below the {one} together. The child counts the rest."
                if buys
                else "Trace around both together. The child says which ring is which."
            ),
        ),
        watch_for="Judging worth by size. The dime is small, yet two nickels go into it.",
        given={"coins": [one, two], "asked": asked},
        picture=pictures.Coins((one, two)),
    )


def _one_or_many(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """One coin against some of a lesser kind: the number of coins is not what they buy."""
    coin, below, above = _AGAINST[item]
    several = rng.pick([h for h in (below if rng.coin() else above) if morning.pennies or "penny" not in h])
    asked = rng.pick(("more", "less"))
    (kind, count) = next(iter(several.items()))
    wins = (CENTS[coin] > cents(several)) == (asked == "more")
    one, many = counted(1, coin), counted(count, kind)
    return Draft(
        say=rng.phrasing(
            f"I have {one}. You have {many}. Which buys {asked}?",
            f"Which buys {asked}, {many} or {one}?",
            f"Here is {one}. The cup has {many}. Which buys {asked}?"
            if count > 1
            else f"Here is {one}. Here is {many}. Which buys {asked}?",
        ),
        answer=one if wins else many,
        accept=(coin,) if wins else (),
        working=f"{coin} {CENTS[coin]}¢, {many} {cents(several)}¢",
        cues=(
            Cue(f"How many cents is {one}? Hold on to that."),
            Cue("Match dot to dot. Where are some left?", pictures.Coins((coin, *laid(several)), worth=True)),
            Cue("Cover a dot on each side together, then one more each. The child goes on."),
        ),
        watch_for="Taking the bigger heap. How many coins is not how many cents.",
        given={"one": coin, "kind": kind, "count": count, "asked": asked},
        picture=pictures.Coins((coin, *laid(several))),
    )


def _line_up(morning: Morning, rng: SeededRandom) -> Draft:
    """Three coins with the dime among them, so that the order of size is never the order of worth."""
    others = rng.sample([coin for coin in kinds(morning.pennies) if coin != "dime"], 2)
    shown = rng.shuffled((*others, "dime"))
    first = rng.pick(("least", "most"))
    order = sorted(shown, key=CENTS.__getitem__, reverse=first == "most")
    return Draft(
        say=rng.phrasing(
            f"Put these coins in order. Start with what buys the {first}.",
            f"Name these coins in order. Start with the one worth the {first}.",
            f"Line up these coins. The one worth the {first} goes first.",
        ),
        answer=", ".join(order),
        working=" ".join(f"{coin} {CENTS[coin]}¢" for coin in order),
        cues=(
            Cue(f"Of these, which buys the {first}?"),
            Cue("Count the dots below each.", pictures.Coins(shown, worth=True)),
            Cue(f"Lay the {order[0]} down first together. The child lays the next."),
        ),
        watch_for="The dime put last for its size. Dots settle it.",
        given={"coins": list(shown), "first": first},
        picture=pictures.Coins(shown),
    )


SKILL = Skill(
    id="coins",
    title="Coins",
    asks="name a coin, its worth, which buys more",
    strand=Strand.TIME_MONEY,
    levels=(
        Level(
            "names",
            "names of the coins",
            ("name-it", "find-it"),
            toward=("2.MD.C.8",),
            seconds=20,
            guess=0.25,
            table=_TABLE,
            ends=("name-it", "find-it"),
        ),
        Level(
            "worth",
            "what a penny, a nickel and a dime are worth",
            ("worth", "dime-worth", "fill-a-nickel", "nickel-or-pennies"),
            ("dime-or-nickel", "dime-or-many"),
            toward=("2.MD.C.8",),
            stands_on=("coins:names", "by-tens:to-50", "how-many:count-out-to-10"),
            table=_TABLE,
            guesses=(("nickel-or-pennies", 0.5), ("dime-or-nickel", 0.5), ("dime-or-many", 0.5)),
            ends=("worth",),
        ),
        Level(
            "quarter",
            "a quarter, and coins in order of worth",
            ("quarter-worth", "line-up", "quarter-or-many"),
            toward=("2.MD.C.8",),
            stands_on=("coins:worth",),
            table=_TABLE,
            slower=("line-up",),
            guesses=(("line-up", 0.17), ("quarter-or-many", 0.5)),
        ),
    ),
    ask=ask,
    askable=dict.fromkeys(_NEEDS_PENNIES, with_pennies),
)
