"""coin-totals: how many cents a handful of coins comes to.

2.MD.C.8 (Common Core State Standards for Mathematics, 2010): stories of quarters, dimes, nickels and
pennies; its own example is two dimes and three pennies. Totals stay within 50 cents. Every picture shows
the worth of each coin in dots, since loose nickels and dimes are too abstract at this age and the count
changes its step from kind to kind (National Research Council 2009, Mathematics Learning in Early
Childhood, p. 147). But for pennies alone, the number of coins is never the number of cents.
"""

from collections.abc import Mapping
from functools import cache

from warmup import pictures
from warmup.english import listed, number_word
from warmup.model import Cue, Morning, Strand
from warmup.pictures.facts import CENTS
from warmup.randomness import SeededRandom
from warmup.skills._conditions import with_pennies
from warmup.skills._money import BY_WORTH, cents, counted, fewest, handfuls, kinds, laid, parts, running, said
from warmup.skills._rising import risen
from warmup.skills.base import Draft, Level, Skill

_TABLE = "real coins (kept from under-threes)"
_MOST = 50

_HANDFULS: Mapping[str, list[dict[str, int]]] = {
    "pennies": handfuls(penny=range(2, 10)),
    "nickel-and-pennies": handfuls(nickel=range(1, 2), penny=range(1, 6)),
    "dimes": handfuls(dime=range(2, 6)),
    "nickels-to-25": handfuls(nickel=range(2, 6)),
    "dimes-and-pennies": handfuls(dime=range(1, 5), penny=range(1, 10)),
    "dimes-and-nickel": handfuls(dime=range(1, 5), nickel=range(1, 2)),
    "tens-fives-ones": [
        h
        for h in handfuls(dime=range(1, 5), nickel=range(1, 4), penny=range(1, 5))
        + handfuls(dime=range(1, 5), nickel=range(2, 4), penny=range(1))
        if cents(h) <= _MOST
    ],
    "with-quarter": [
        h
        for h in [
            *handfuls(quarter=range(1, 2), dime=range(3), nickel=range(3), penny=range(5)),
            {"quarter": 2},
        ]
        if cents(h) <= _MOST and sum(h.values()) > 1
    ],
}
# The week of each level in routines/year.toml, and what its handfuls come to at most until two weeks later.
OPENS: Mapping[str, int] = {
    "nickels-to-25": 26,
    "dimes": 26,
    "dimes-and-pennies": 29,
    "dimes-and-nickel": 29,
    "tens-fives-ones": 31,
    "with-quarter": 31,
}
_AT_FIRST: Mapping[str, int] = {
    "nickels-to-25": 15,
    "dimes": 30,
    "dimes-and-pennies": 29,
    "dimes-and-nickel": 25,
    "tens-fives-ones": 30,
    "with-quarter": 40,
}
FEWEST_OPENS, _FEWEST_AT_FIRST = 31, 30
_NEEDS_PENNIES = ("pennies", "nickel-and-pennies", "dimes-and-pennies")

_WATCH = {
    "pennies": "A penny touched twice, or missed. Slide each aside as it is said.",
    "nickel-and-pennies": "The nickel said as one cent: counting coins, not cents.",
    "dimes": "Saying how many coins there are. Ask: and how many cents?",
    "nickels-to-25": "Slipping from fives into tens, or counting the nickels one by one.",
    "dimes-and-pennies": "Going on in tens when the pennies come. Stop and breathe at the switch.",
    "dimes-and-nickel": "The nickel counted as one more ten, since it is the bigger coin.",
    "tens-fives-ones": "Keeping the old step after a switch: tens where fives or ones are due.",
    "with-quarter": "Silence after the quarter: the count starts inside the twenties.",
}


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """Count a handful; or make an amount with the fewest coins."""
    if item == "fewest-coins":
        return _fewest(morning, rng)
    handful = rng.pick(_open(item, morning))
    total, held, coins = cents(handful), said(handful), laid(handful)
    first = coins[0]
    return Draft(
        say=rng.phrasing(
            f"Take {held}. How many cents is that?",
            f"{held.capitalize()}. How many cents?",
            f"Count {held}. How many cents do you have?",
            f"Pay {held}. How many cents is that?",
        ),
        answer=number_word(total),
        accept=(f"{number_word(total)} cents",),
        working=f"{running(handful)}¢",
        cues=(
            Cue(_way_in(parts(handful), first)),
            Cue("Line them up. Look at the dots below each.", pictures.Coins(coins, worth=True)),
            Cue(_start(handful, first)),
        ),
        watch_for=_WATCH[item],
        given={"coins": {coin: count for coin, count in handful.items() if count}},
        picture=pictures.Coins(coins, worth=True),
    )


def _open(item: str, morning: Morning) -> list[dict[str, int]]:
    """The handfuls that may be asked: small ones while the level is new, none of pennies without them."""
    most = _MOST if item not in OPENS or risen(morning, OPENS[item]) else _AT_FIRST[item]
    return [h for h in _HANDFULS[item] if cents(h) <= most and (morning.pennies or not h.get("penny"))]


def _way_in(held: list[str], first: str) -> str:
    if len(held) == 1:
        return f"What is one {first} worth? Count in that step."
    return "Which coin is worth the most? Begin there."


def _start(handful: Mapping[str, int], first: str) -> str:
    """Say the first coin, and let the child go on; after the last of a kind the step changes."""
    begun = number_word(CENTS[first]).capitalize()
    if handful[first] > 1:
        return f"Touch the first {first} together: “{begun}…” The child touches the next."
    following = next(coin for coin in reversed(BY_WORTH) if coin != first and handful.get(coin))
    return f"Say the {first} together: “{begun}…” Touch a {following} and let the child go on."


def _fewest(morning: Morning, rng: SeededRandom) -> Draft:
    """Make an amount with the fewest coins, where just one handful does it."""
    use = kinds(morning.pennies)
    most = _MOST if risen(morning, FEWEST_OPENS) else _FEWEST_AT_FIRST
    amount = rng.pick([n for n in _asked(use) if n <= most])
    handful = fewest(amount, use)[0]
    word, first = number_word(amount), laid(handful)[0]
    return Draft(
        say=rng.phrasing(
            f"Make {word} cents. Use as few coins as you can.",
            f"Pay {word} cents with the fewest coins you can.",
            f"What are the fewest coins that make {word} cents?",
        ),
        answer=said(handful),
        accept=tuple({listed(parts(handful)[::-1])} - {said(handful)}),
        working=f"{running(handful)}¢",
        cues=(
            Cue(f"What is the biggest coin that fits into {word} cents?"),
            Cue(
                "Look at the dots below each coin. Which one fits first?",
                pictures.Coins(use[::-1], worth=True),
            ),
            Cue(f"Lay {counted(1, first)} down together. How much is left to make?"),
        ),
        watch_for="The right amount in small coins: good. Could one coin take the place of some?",
        given={"cents": amount, "kinds": list(use)},
        picture=pictures.Coins(use[::-1]),
    )


@cache
def _asked(use: tuple[str, ...]) -> tuple[int, ...]:
    """The amounts that two to four coins make, in one way only; worked out once, as it takes a while."""
    best = {amount: fewest(amount, use) for amount in range(6, _MOST + 1)}
    return tuple(n for n, ways in best.items() if len(ways) == 1 and 2 <= sum(ways[0].values()) <= 4)


SKILL = Skill(
    id="coin-totals",
    title="Coin totals",
    asks="how many cents in all",
    strand=Strand.TIME_MONEY,
    levels=(
        Level(
            "nickel-and-pennies",
            "pennies, and a nickel is five",
            ("nickel-and-pennies", "pennies"),
            codes=("2.MD.C.8",),
            stands_on=("coins:worth", "count-on:within-10"),
            table=_TABLE,
        ),
        Level(
            "one-kind",
            "all dimes, or nickels to 25 cents",
            ("dimes", "nickels-to-25"),
            codes=("2.MD.C.8",),
            stands_on=("coin-totals:nickel-and-pennies", "coins:worth", "by-fives:to-25", "by-tens:to-50"),
            waits_on=("by-fives/15-to-20", "coins/dime-or-many"),
            table=_TABLE,
        ),
        Level(
            "dimes-and-pennies",
            "dimes with pennies or a nickel, to 49 cents",
            ("dimes-and-pennies", "dimes-and-nickel"),
            codes=("2.MD.C.8",),
            stands_on=("coin-totals:one-kind", "count-on:to-50"),
            waits_on=("count-on/across-30", "coins/dime-or-nickel"),
            table=_TABLE,
        ),
        Level(
            "three-kinds",
            "three kinds and the quarter, to 50 cents",
            ("with-quarter", "tens-fives-ones", "fewest-coins"),
            codes=("2.MD.C.8",),
            stands_on=("coin-totals:dimes-and-pennies", "coins:quarter", "by-fives:to-25"),
            seconds=60,
            table=_TABLE,
        ),
    ),
    ask=ask,
    askable=dict.fromkeys(_NEEDS_PENNIES, with_pennies),
)
