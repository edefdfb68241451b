"""``warmup stage`` beside the program, each in a terminal of its own."""

import datetime as dt
import subprocess
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from tests.household import fixed_prompts
from tests.terminal import WARMUP, Terminal, environment
from warmup.cli.main import USAGE
from warmup.config.family import Child, default, save
from warmup.config.places import Places
from warmup.journal.journal import Journal
from warmup.journal.routine_json import routine_text
from warmup.model import Mark, Routine
from warmup.session.context import open_context
from warmup.tui.guards import LANDING

STAGE = (*WARMUP, "stage")


def with_family(home: Path) -> None:
    """A family for whom today is a school day, and the fixed prompts as today's, the first on screen."""
    today = dt.date.today()
    family = default(today)
    extra = () if today.weekday() in family.weekdays else (today,)
    family = family._replace(extra=extra, children=(Child("Bean", reads=False),))
    home.mkdir(parents=True, exist_ok=True)
    save(home / "family.toml", family)
    journal = Journal.open(home, dt.datetime.now)
    context = open_context(Places(home, home), family, today, journal)
    routine = Routine("Bean", context.morning(), "daily", fixed_prompts())
    rows = [(prompt.item, prompt.wording) for prompt in routine.prompts]
    journal.start("Bean", today, "daily", routine_text(routine), rows)
    journal.shut()


@contextmanager
def stage(home: Path, columns: int = 80, rows: int = 24) -> Iterator[Terminal]:
    """The child's window once it has painted something."""
    with Terminal(STAGE, environment(home), columns, rows) as terminal:
        terminal.wait(painted)
        yield terminal


def painted(text: str) -> bool:
    return "█" in text or "▀" in text or "▄" in text


def other_than(before: str) -> Callable[[str], bool]:
    return lambda text: text != before and painted(text)


def settled(terminal: Terminal, seconds: float = 0.3) -> str:
    """The screen once nothing more has come for a while."""
    end = time.perf_counter() + seconds
    while time.perf_counter() < end:
        terminal.read()
    return terminal.text()


@pytest.mark.slow
def test_two_stages_follow_a_morning_one_is_killed_and_the_other_ends_with_it(home: Path) -> None:
    with stage(home) as first, stage(home, 120, 36) as second:
        quiet = settled(first)
        with_family(home)
        ten = first.wait(other_than(quiet))
        with Terminal(WARMUP, environment(home)) as adult:
            adult.wait("1 of 5")
            second.wait(lambda text: text.count("█") > 100)
            first.kill()
            adult.press("up")
            adult.wait("2 of 5")
            # The second prompt has no picture; its second cue brings in a chart.
            adult.press("space")
            adult.wait("Cue 1")
            hills = settled(second)
            adult.press("space")
            adult.wait("Cue 2")
            second.wait(other_than(hills))
            for number in (3, 4, 5):
                adult.press("right")
                adult.wait(f"{number} of 5")
            adult.press("right")
            adult.wait("That was today’s warm-up.")
            # Both keys mean "go on", and a second one at once would be taken for a bounce.
            time.sleep(LANDING.total_seconds() + 0.1)
            adult.press("enter")
            assert adult.finish() == 0
        assert second.finish() == 0
        assert b"Bean" not in second.written and b"seven" not in second.written
        assert not any(letters in "".join(ten.split()) for letters in ("three", "Bean", "ten"))
    journal = Journal.open(home, dt.datetime.now)
    assert [line.mark for line in journal.history("Bean")] == [Mark.FLUENT, None, None, None, None]
    journal.shut()
    assert Journal.examine(home) == []


def test_q_ends_it_and_a_key_hides_the_picture(home: Path) -> None:
    with_family(home)
    with stage(home) as terminal:
        shown = settled(terminal)
        terminal.press("space")
        hidden = terminal.wait(other_than(shown))
        terminal.press("space")
        terminal.wait(lambda text: text == shown)
        assert hidden != shown
        terminal.press("q")
        assert terminal.finish() == 0


@pytest.mark.parametrize("size", [(20, 5), (3, 2), (200, 60)])
def test_a_terminal_of_an_odd_size_shows_a_picture_or_a_quiet_one(size: tuple[int, int], home: Path) -> None:
    with_family(home)
    with stage(home, *size) as terminal:
        assert "Traceback" not in settled(terminal)
        terminal.press("q")
        assert terminal.finish() == 0


def test_without_a_terminal_it_says_what_it_needs(home: Path) -> None:
    done = subprocess.run([*STAGE], env=environment(home), capture_output=True, text=True, check=False)
    assert done.returncode == USAGE and done.stderr.count("\n") == 1 and "terminal" in done.stderr
    assert not home.exists() and done.stdout == ""


def test_a_family_file_that_cannot_be_read_is_no_trouble_unless_a_child_is_named(home: Path) -> None:
    home.mkdir()
    (home / "family.toml").write_text("[school]\nfirst_day = 'soon'\n")
    with stage(home) as terminal:
        terminal.press("q")
        assert terminal.finish() == 0
    with Terminal([*STAGE, "--child", "Bean"], environment(home), columns=100) as terminal:
        assert terminal.finish() == 3 and "family.toml" in terminal.text()
