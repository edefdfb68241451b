"""Several children at one table, the real program in a pseudo-terminal: each mark with the right child."""

import datetime as dt
import subprocess
import time
from functools import partial
from pathlib import Path

import pytest

from tests.terminal import WARMUP, Terminal, environment
from warmup.config.family import Child, Family, default, load, save
from warmup.journal.journal import Journal
from warmup.model import Mark
from warmup.session.whose_turn import in_order
from warmup.tui.guards import LANDING


def with_family(home: Path, *, together: bool = False) -> list[str]:
    """Two children for whom today is a school day; their nicknames in the order of the day."""
    today = dt.date.today()
    family = default(today)
    extra = () if today.weekday() in family.weekdays else (today,)
    children = Child("Fern", reads=False), Child("Moss", reads=False)
    family = family._replace(extra=extra, children=children, prompts=4, together=together)
    home.mkdir(parents=True, exist_ok=True)
    save(home / "family.toml", family)
    return [child.nickname for child in in_order(family, today)]


def marks(home: Path) -> dict[str, list[Mark | None]]:
    """The marks on disk, in order, by child."""
    journal = Journal.open(home, dt.datetime.now)
    found = {name: [line.mark for line in journal.history(name)] for name in ("Fern", "Moss")}
    journal.shut()
    return found


def turn_of(name: str, number: int, screen: str) -> bool:
    """Whether it is this child's prompt of this number, with the name before the words."""
    return f"{number} of 4" in screen and any(line[38:].strip() == name for line in screen.splitlines()[:8])


def past_the_opening(terminal: Terminal) -> None:
    terminal.wait("take turns")
    time.sleep(LANDING.total_seconds() + 0.1)
    terminal.press("right")


def test_a_morning_together_by_keys_with_a_kill_in_the_middle(home: Path) -> None:
    first, second = with_family(home, together=True)
    with Terminal(WARMUP, environment(home)) as terminal:
        past_the_opening(terminal)
        terminal.wait(partial(turn_of, first, 1))
        terminal.press("up")
        terminal.wait(partial(turn_of, second, 1))
        terminal.press("n")
        terminal.wait(partial(turn_of, first, 2))
        terminal.press("down")
        terminal.wait(partial(turn_of, second, 2))
        terminal.kill()
    assert marks(home) == {first: [Mark.FLUENT, Mark.HESITATED], second: [Mark.NOT_YET, None]}
    with Terminal(WARMUP, environment(home)) as terminal:
        terminal.wait(partial(turn_of, second, 2))
        for name, number in ((first, 3), (second, 3), (first, 4), (second, 4)):
            terminal.press("up")
            terminal.wait(partial(turn_of, name, number))
            time.sleep(0.15)
        terminal.press("up")
        terminal.wait(lambda text: "finish" in text and f"{first}  “" in text and f"{second}  “" in text)
        time.sleep(LANDING.total_seconds() + 0.1)
        terminal.press("enter")
        assert terminal.finish() == 0
    found = marks(home)
    assert found[first] == [Mark.FLUENT, Mark.HESITATED, Mark.FLUENT, Mark.FLUENT][: len(found[first])]
    assert [len(each) for each in found.values()] == [4, 4] and found[second][0] is Mark.NOT_YET
    assert found[second][1:] == [Mark.FLUENT] * 3


@pytest.mark.slow
def test_one_after_the_other_and_the_stage_goes_along(home: Path) -> None:
    first, second = with_family(home)
    with Terminal(WARMUP, environment(home)) as terminal:
        terminal.wait("nothing is asked yet")
        time.sleep(LANDING.total_seconds() + 0.1)
        terminal.press("right")
        for number in range(1, 5):
            terminal.wait(f"{number} of 4")
            terminal.press("up")
            time.sleep(0.15)
        terminal.wait(f"{second} is next.")
        time.sleep(LANDING.total_seconds() + 0.1)
        terminal.press("right")
        terminal.wait(lambda text: "nothing is asked yet" in text and second in text)
    with Terminal(WARMUP, environment(home)) as terminal:
        assert second in terminal.wait("nothing is asked yet"), "who has not been today comes first"
    assert marks(home)[first] == [Mark.FLUENT] * 4


def in_lines(home: Path, lines: list[str], *options: str) -> str:
    done = subprocess.run(
        [*WARMUP, "--plain", *options],
        input="\n".join(lines) + "\n",
        env=environment(home),
        capture_output=True,
        text=True,
        check=True,
    )
    assert done.stderr == ""
    return done.stdout


def test_together_in_lines(home: Path) -> None:
    first, second = with_family(home)
    said = in_lines(home, ["", "w", "n", "2", "w", "u", "w", *["w"] * 5, ""], "--together")
    places = [said.index(f"{name}. Prompt {number} of 4") for number in (1, 2) for name in (first, second)]
    assert places == sorted(places)
    assert f"With {second}: prompts take turns." in said and f"{first}: Came easily." in said
    assert f"That one does not count. Another one for {first}." in said
    assert f"{first}: “" in said.partition("That was today’s warm-up.")[2]
    assert marks(home) == {first: [Mark.FLUENT] * 4, second: [Mark.NOT_YET, *[Mark.FLUENT] * 3]}


@pytest.mark.slow
def test_one_after_the_other_in_lines(home: Path) -> None:
    first, second = with_family(home)
    said = in_lines(home, ["", *["w"] * 4, "d", "", *["s"] * 4, ""])
    assert f"on with {second}" in said and said.index(f"Warm-up for {first}") < said.index(
        f"Warm-up for {second}"
    )
    assert marks(home) == {first: [Mark.FLUENT] * 4, second: [Mark.HESITATED] * 4}


def test_who_names_one_child_means_that_one(home: Path) -> None:
    first, second = with_family(home, together=True)
    said = in_lines(home, ["8"], "--child", second)
    assert f"Warm-up for {second}" in said and first not in said
    both = subprocess.run(
        [*WARMUP, "--child", first, "--together"], env=environment(home), capture_output=True, text=True
    )
    assert both.returncode == 2 and "not allowed with" in both.stderr
    family: Family = load(home / "family.toml")
    assert family.together
