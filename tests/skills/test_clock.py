"""Clock: the bounds of 1.MD.B.3 (references/standards.toml) and the worked examples ex57 and ex59."""

from collections import Counter

from tests.bank import prompts, reference
from tests.mornings import morning
from warmup import skills
from warmup.model import Prompt
from warmup.pictures.clock import Clock
from warmup.randomness import SeededRandom

EXAMPLES = {e["id"]: e for e in reference("examples")["example"]}


def drawn(item: str, count: int = 200) -> list[Prompt]:
    return [skills.prompt(f"clock/{item}", morning(), SeededRandom("clock", item, n)) for n in range(count)]


def test_only_hours_and_half_hours() -> None:
    """1.MD.B.3: minutes 0 and 30."""
    bounds = reference("standards")["std"]["1.MD.B.3"]["bounds"]
    assert {p.given["minute"] for p in prompts("clock", 60)} == set(bounds["minutes"])


def test_where_the_short_hand_points_at_half_past_three() -> None:
    """examples.toml, ex57."""
    example = EXAMPLES["ex57"]
    asked = {p.given["hour"]: p.answer for p in drawn("half-past") if p.given["do"] == "where"}
    assert asked[example["given"]["hour"]] == example["answer"].replace("half-way", "halfway")
    assert asked[12] == "halfway between twelve and one"


def test_twelve_wraps_to_one() -> None:
    """examples.toml, ex59."""
    example = EXAMPLES["ex59"]
    (asked,) = {(p.answer, p.accept) for p in drawn("hour-later") if p.given["hour"] == 12}
    assert asked == (example["accept"][0].replace("'", "’"), (example["answer"],))


def test_half_past_is_said_three_ways() -> None:
    (asked,) = {(p.answer, *p.accept) for p in drawn("half-past-twelve", 9)}
    assert asked == ("half past twelve", "twelve-thirty", "12:30")


def test_the_picture_shows_the_time_that_is_read_and_no_hands_where_they_are_set() -> None:
    for p in prompts("clock", 40):
        assert isinstance(p.picture, Clock)
        assert (p.picture.hour, p.picture.minute) == (p.given["hour"], p.given["minute"])
        assert p.picture.hands == (p.given["do"] in ("read", "later", "which hand"))


def test_no_picture_brings_in_the_hands_that_are_to_be_set() -> None:
    """Neither that of the question nor one of a cue."""
    asked = [p for p in prompts("clock", 40) if p.given["do"] in ("set", "where")]
    assert {p.item for p in asked} >= {"clock/set-it", "clock/half-past", "clock/twelve-o-clock"}
    for p in asked:
        shown = [picture for picture in (p.picture, *(cue.picture for cue in p.cues)) if picture]
        assert [picture for picture in shown if getattr(picture, "hands", True)] == [], p.item


def test_trouble_has_its_own_items() -> None:
    assert {p.given["hour"] for p in drawn("half-past") if p.given["do"] == "read"}.isdisjoint({5, 12})
    assert {p.given["hour"] for p in drawn("half-past-five", 9)} == {5}
    assert {p.given["hour"] for p in drawn("twelve-o-clock", 20)} == {12}


def test_hours_and_half_hours_come_evenly_and_over_the_whole_face() -> None:
    mixed = drawn("mixed", 600)
    assert 240 <= sum(p.given["minute"] == 30 for p in mixed) <= 360
    assert len(Counter(p.answer for p in mixed)) == 24
    assert {p.given["do"] for p in drawn("twelve-o-clock", 20)} == {"read", "set"}


def test_no_time_is_told_as_the_time_it_is() -> None:
    """The clock in the picture is not the one on the wall."""
    for p in prompts("clock", 60):
        assert "It is" not in p.say and "It’s" not in p.say
        if "What time is it?" in p.say or "it’s" in p.say:
            assert p.say.startswith("Pretend")


def test_no_cue_begins_to_read_the_half_hour() -> None:
    for p in prompts("clock", 60):
        if p.given["do"] == "read" and p.given["minute"]:
            assert not any("“" in cue.text for cue in p.cues)


def test_the_hour_hand_is_told_from_the_long_one_before_any_half_hour() -> None:
    """Where both hands are on one number nothing could be told from the answer."""
    first, _, half = skills.SKILLS["clock"].levels
    assert first.misconceptions == ("where-short-hand",)
    assert half.waits_on == ("equal-shares/halves-or-not", "clock/where-short-hand")
    prompts_asked = drawn("where-short-hand")
    assert {p.given["hour"] for p in prompts_asked} == set(range(1, 12))
    for p in prompts_asked:
        assert p.given["minute"] == 0 and p.guess == 0.5
        assert "short" not in p.say and "long" not in p.say, "which hand it is, is what is asked"


def test_the_half_hour_is_read_more_often_than_told() -> None:
    told = sum(p.given["do"] == "where" for p in drawn("half-past", 600))
    assert 150 < told < 250
