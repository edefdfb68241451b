"""A thousand games: their numbers, their words, what they need, and that they end."""

import re
from collections.abc import Iterator
from functools import cache
from typing import NamedTuple

import pytest

from tests.bank import careless, unreadable
from tests.bank.kitchen import unguarded, unkitchenly, unsafe
from tests.bank.numbers_said import MOST, numbers_said
from tests.bank.rules import uncapped
from tests.games.bounds import highest
from tests.mornings import many
from warmup import skills
from warmup.engine.things import NAMES, THINGS, Household, named
from warmup.english import number_word, ordinal_word
from warmup.games import Match, Play, games, matches, play
from warmup.games.base import SECONDS_A_TURN
from warmup.model import Cue, ItemId, LevelId, Morning, Prompt, skill_and_key
from warmup.randomness import SeededRandom
from warmup.session.words import has_small_things

EACH = 7
"""So many plays of each game and level: over a thousand in all."""
MOST_TURNS = 120 // SECONDS_A_TURN
"""So many turns go into two minutes."""

_WORDS = {number_word(n): n for n in range(200)} | {ordinal_word(n): n for n in range(1, 32)}


class Made(NamedTuple):
    """A play, and what it was made for."""

    match: Match
    morning: Morning
    play: Play


@cache
def made() -> tuple[Made, ...]:
    """The thousand games, over two years of dates and every school day."""
    mornings = many(288)
    pairs = [Match(game, level) for game in games().values() for level in game.levels]
    return tuple(
        Made(match, day, play(match, day, n))
        for at, match in enumerate(pairs)
        for n in range(EACH)
        for day in (mornings[(at * 31 + n * 97) % len(mornings)],)
    )


def numbers_in(text: str) -> Iterator[int]:
    """The numbers a text says, by other code than what wrote them."""
    for said in numbers_said(text):
        yield _WORDS[said] if said in _WORDS else int(re.sub(r"\D", "", said))


def as_prompt(each: Made) -> Prompt:
    """The game's words where those of a prompt stand, so that the bank's rules can read them."""
    skill, level = skill_and_key(each.match.level)
    return Prompt(
        skill=skill,
        level=level,
        item=ItemId(f"{skill}/{level}"),
        say=" ".join(each.play.rule),
        wording="a",
        answer=each.play.ends,
        accept=(),
        working="",
        cues=(Cue(each.match.game.two), Cue(f"It ends {each.play.ends}."), Cue(each.match.game.name)),
        watch_for=each.play.listen,
        table=", ".join(each.match.game.things(each.match.level)),
        seconds=120,
        guess=0.0,
        given=each.play.given,
        do=each.play.setup,
    )


# -- numbers


def test_every_number_of_a_thousand_games_is_within_its_level() -> None:
    assert len(made()) > 1000
    wrong = []
    for each in made():
        top = highest(each.match.level, each.morning)
        said = [*numbers_in(each.play.setup), *(n for line in each.play.rule for n in numbers_in(line))]
        found = [n for n in (*each.play.given.values(), *said) if not 0 <= n <= top]
        if found:
            wrong.append((each.match.game.id, each.match.level, top, found))
    assert wrong == []


def test_a_count_on_begins_past_one_and_a_count_by_steps_lands_on_its_end() -> None:
    """K.CC.A.2: start_must_not_be in standards.toml."""
    for each in made():
        given = each.play.given
        if each.match.level.startswith("count-on:") and "start" in given:
            assert given["start"] > 1
        if "step" in given and "end" in given:
            assert given["end"] % given["step"] == 0


def test_who_leaves_pennies_out_pays_in_fives() -> None:
    game, day = games()["paper-prices"], many(3)[1]._replace(pennies=False)
    for level in {*game.levels} - {"coin-totals:nickel-and-pennies"}:  # A level of pennies.
        for n in range(20):
            one = play(Match(game, level), day, n)
            assert all(price % 5 == 0 for price in one.given.values()), (level, one.given)
            assert not re.search(r"\b1¢", one.setup), (level, one.setup)


# -- words


@pytest.mark.slow
def test_the_words_of_a_game_keep_the_rules_of_the_bank() -> None:
    wrong, read = set(), set[str]()
    for each in made():
        prompt = as_prompt(each)
        if (text := f"{prompt.say} {prompt.do} {prompt.watch_for}") in read:
            continue
        read.add(text)
        faults = [*unreadable(prompt.say), *careless(prompt), *unkitchenly(prompt), *unsafe(prompt)]
        faults += uncapped(prompt)
        faults += [f"too many numbers: {prompt.say}"] if len(numbers_said(prompt.say)) > MOST else []
        wrong |= {(each.match.game.id, each.match.level, fault) for fault in faults}
    assert sorted(wrong) == []


def test_a_game_is_one_setup_one_rule_and_one_kind_end() -> None:
    unkind = re.compile(r"\b(?:win|wins|winner|won|lose|loses|loser|lost|beat|score|points|faster|race)\b")
    for each in made():
        game, made_of = each.match.game, each.play
        assert re.fullmatch(r"[^.!?]+\.", made_of.setup), made_of.setup
        assert 1 <= len(made_of.rule) <= 3
        assert all(re.fullmatch(r"[^.!?]+[.?]", line) for line in made_of.rule), made_of.rule
        assert re.match(r"(?:when|after|at) ", made_of.ends) and not made_of.ends.endswith(".")
        text = " ".join((game.name, made_of.setup, *made_of.rule, made_of.ends, made_of.listen, game.two))
        assert not unkind.search(text.lower()), text
        assert game.players == (1, 2) and game.two.endswith(".")


def test_there_are_a_dozen_games_or_more_and_each_is_its_file() -> None:
    assert len(games()) >= 12
    assert [game.id.replace("-", "_") for game in games().values()] == sorted(
        game.id.replace("-", "_") for game in games().values()
    )
    for name, game in games().items():
        assert game.id == name and game.made.__module__ == f"warmup.games.{name.replace('-', '_')}"
    names = [game.name for game in games().values()]
    assert len({*names}) == len(names)


# -- things


def test_a_game_needs_only_things_a_family_can_name() -> None:
    assert {need for game in games().values() for need in game.needs} <= {*NAMES}
    for game in games().values():
        small = [need for need in game.needs if (thing := named(need)) and thing.small]
        assert bool(small) is has_small_things(*game.needs), game.id


def of_house(house: Household, level: LevelId) -> tuple[Match, ...]:
    """What this house can play for a level."""
    return matches(level, lambda needs: house.has(", ".join(needs)), SeededRandom("house", level))


_ONLY_WORDS = {"table", "ball", "roll", "balance", "tape"}
"""Names of things that are said otherwise, too: roll a pair of socks into a ball."""
_THINGS = {name: thing.name for thing in THINGS for name in thing.every_name}
_NAMED = re.compile(rf"\b(?:{'|'.join(sorted(map(re.escape, _THINGS), key=len, reverse=True))})\b")


def test_what_a_game_needs_is_what_its_words_speak_of() -> None:
    spoken: dict[Match, set[str]] = {}
    for each in made():
        text = " ".join((each.play.setup, *each.play.rule)).lower()
        found = {_THINGS[name] for name in _NAMED.findall(text)}
        spoken.setdefault(each.match, set()).update(found)
    wrong = {}
    for match, names in spoken.items():
        needs = {*match.game.things(match.level)}
        if needs - names or names - needs - _ONLY_WORDS:
            wrong[match.game.id, match.level] = needs - names, names - needs - _ONLY_WORDS
    assert wrong == {}


def test_what_holds_water_or_stands_about_is_no_glass() -> None:
    for each in made():
        if {"cups", "bowls"} & {*each.match.game.things(each.match.level)}:
            assert "plastic" in each.play.setup, each.match.game.id


def test_no_danger_of_a_thing_goes_unsaid() -> None:
    for each in made():
        assert not unguarded([each.play.setup, *each.play.rule], []), each.match.game.id
        if "can" in each.match.game.things(each.match.level):
            assert "unopened can" in each.play.setup


def test_no_small_thing_comes_to_a_toddler_s_table() -> None:
    house = Household(toddler=True)
    played = {match.game.id for level in skills.levels() for match in of_house(house, level)}
    assert len(played) >= 12
    assert not [name for name in played if has_small_things(*games()[name].needs)]
    assert "coin-in-the-mitt" not in played and "coin-in-the-mitt" in games()


def test_every_level_has_a_game_its_own_or_one_below_it_in_its_strand() -> None:
    strands = {skill.id: skill.strand for skill in skills.SKILLS.values()}
    borrowed = set()
    for level in skills.levels():
        first, *_ = of_house(Household(), level)
        assert strands[skill_and_key(first.level)[0]] is strands[skill_and_key(level)[0]]
        if first.level != level:
            borrowed.add(level)
    assert borrowed == {
        "add-subtract:head-to-10", "date:full", "flat-shapes:put-together", "place-value:hundreds",
    }  # fmt: skip


def test_what_a_house_lacks_is_in_no_game_of_it() -> None:
    for name in sorted({need for game in games().values() for need in game.needs}):
        house = Household(without=frozenset({name}))
        found = {level: of_house(house, level) for level in skills.levels()}
        assert not [
            match for every in found.values() for match in every if name in match.game.things(match.level)
        ]
    bare = Household(without=frozenset(NAMES))
    assert [match.game.id for match in of_house(bare, LevelId("clock:half-past"))] == ["arms-of-the-clock"]
    assert of_house(bare, LevelId("sort:one-rule")) == ()


def test_strips_that_are_picked_from_a_bag_go_back_where_they_would_not_last() -> None:
    for each in made():
        if hop := each.play.given.get("hop"):
            walk = each.play.given["high"] - each.play.given["low"]
            assert sum(range(1, hop + 1)) >= walk or "goes back" in each.play.setup, each.match.level


# -- time


@pytest.mark.parametrize("name", [game.id for game in games().values() if game.simulate])
def test_a_game_of_chance_ends_and_within_two_minutes_in_95_of_100(name: str) -> None:
    game = games()[name]
    assert game.simulate is not None
    for level in game.levels:
        turns, early = list[int](), 0
        for n in range(100):
            one = play(Match(game, level), many(4)[n % 4], n)
            turns.append(game.simulate(one, SeededRandom("luck", name, level, n)))
            assert 0 < turns[-1] <= one.turns
            early += turns[-1] < one.turns
        assert sum(count <= MOST_TURNS for count in turns) >= 95, (level, max(turns))
        if level != "number-line:find-to-10":  # Where the adult says which, it always takes as many.
            assert early >= 60, "it ends by itself, not by a count of turns"


def test_a_game_without_chance_fits_into_two_minutes() -> None:
    slow = [(each.match.game.id, each.play.turns) for each in made() if not 0 < each.play.turns <= MOST_TURNS]
    assert slow == []


# -- which one


def test_the_same_seed_gives_the_same_game_and_its_own_games_come_first() -> None:
    level = LevelId("make-ten:all")
    first = matches(level, lambda _: True, SeededRandom("a"))
    assert first == matches(level, lambda _: True, SeededRandom("a"))
    assert [match.level == level for match in first] == sorted(
        (match.level == level for match in first), reverse=True
    )
    day = many(3)[1]
    assert play(first[0], day, "Bean") == play(first[0], day, "Bean")
    assert matches(LevelId("own:our-street"), lambda _: True, SeededRandom("a")) == ()
