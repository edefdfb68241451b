"""A guest's morning at the command line and in lines: what is kept, what is asked, and what is left alone."""

import datetime as dt
import io
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.cli.test_brief import AT_EIGHT, run
from tests.household import FAMILY, TODAY
from warmup.cli.letters import of_action
from warmup.cli.main import DONE, UNUSABLE, USAGE
from warmup.config import family as families
from warmup.config.family import Child, load, year_of
from warmup.config.places import Places
from warmup.journal.journal import Journal
from warmup.model import Mark
from warmup.session.context import open_context
from warmup.tui.actions import ACTIONS, FOR_GUESTS

DAYS = [day for day in year_of(FAMILY).mornings if day < TODAY]
Typed = Callable[..., str]


@pytest.fixture
def at_home(home: Path) -> Path:
    """A family with missed mornings and a child of whom nobody said whether it reads."""
    home.mkdir()
    families.save(
        home / "family.toml", FAMILY._replace(children=(Child("Bean"),), known_until=DAYS[-4], adult="Papa")
    )
    return home


@pytest.fixture
def typed(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Typed:
    """Types lines into a guest's morning, and gives what it says."""

    def typed(argv: str, *lines: str, now: dt.datetime = AT_EIGHT) -> str:
        monkeypatch.setattr(sys, "stdin", io.StringIO("".join(f"{line}\n" for line in lines)))
        assert run(*argv.split(), now=now) == DONE
        out, err = capsys.readouterr()
        assert err == ""
        return out

    return typed


def marks(home: Path) -> list[tuple[Mark | None, str]]:
    journal = Journal.open(home, lambda: AT_EIGHT)
    rows = journal.marks_of("Bean", TODAY, 1)
    journal.shut()
    return [(rows[at].mark, rows[at].adult) for at in sorted(rows)]


def test_a_whole_morning_in_lines(at_home: Path, typed: Typed) -> None:
    saved = (at_home / "family.toml").read_bytes()
    said = typed("--plain --guest Grandma", "", "e", "w", "s", "n", "-", "", "", "", "", "t", "")
    assert "Guest: Grandma." in said and "school, or off?" not in said and "read words" not in said
    assert "Your name" not in said and "That was today’s warm-up." in said
    assert [mark for mark, _ in marks(at_home)[:4]] == [
        Mark.FLUENT,
        Mark.HESITATED,
        Mark.NOT_YET,
        Mark.SKIPPED,
    ]
    assert {adult for _, adult in marks(at_home)} == {"Grandma"}
    assert (at_home / "family.toml").read_bytes() == saved and not list(at_home.glob("*.bak"))


@pytest.mark.parametrize(("answer", "name"), [("Grandpa  ", "Grandpa"), ("", "guest"), ("\x1b[2Jx", "[2Jx")])
def test_without_a_name_it_is_asked_once(answer: str, name: str, at_home: Path, typed: Typed) -> None:
    said = typed("--guest --plain", answer, "", "w")
    assert said.count("Your name [guest]") == 1 and "\x1b" not in said
    assert marks(at_home) == [(Mark.FLUENT, name)]


def test_missed_mornings_are_still_asked_of_the_family_s_own_adult(at_home: Path, typed: Typed) -> None:
    typed("--plain --guest Grandma", "", "w", "w")
    said = typed("--plain", "s", "s", "s", "", now=AT_EIGHT + dt.timedelta(days=1))
    assert "No warm-up on these mornings: school, or off?" in said
    asked = [line for line in said.splitlines() if line.endswith(": school, or off?")][1:]
    assert [line.partition(":")[0] for line in asked] == [
        "Thursday, February 25", "Monday, March 1", "Tuesday, March 2",
    ], "and what the guest held is no missed morning"  # fmt: skip


def test_no_letter_and_no_name_of_an_action_does_more(at_home: Path, typed: Typed) -> None:
    """At the opening, at a prompt and at the close."""
    theirs = {text for each in FOR_GUESTS for text in (of_action(each).label, *of_action(each).letters)}
    others = {text for each in ACTIONS for text in (of_action(each.id).label, *of_action(each.id).letters)}
    tried = sorted(others - theirs - {"-", "back"})
    assert {"k", "v", "y", "l", "h", "wind down", "what may be asked", "a rough day"} <= {*tried}
    said = typed("--plain --guest Grandma", *tried, "", *tried, *[""] * 8, *tried)
    assert said.count(" is none of these: ") == 3 * len(tried)
    assert marks(at_home) == []


def test_two_not_yet_offer_nothing(at_home: Path, typed: Typed) -> None:
    said = typed("--plain --guest Grandma", "", "n", "n", *[""] * 6)
    assert "Two not yet in a row" not in said and "new things" not in said and "Teach again" not in said


def test_without_a_family_it_is_an_ordinary_morning_kept_nowhere(home: Path, typed: Typed) -> None:
    said = typed("--plain --guest Grandma", "", "w", "s")
    assert said.startswith("No family yet: an ordinary year’s morning, kept nowhere.")
    assert "Prompt 3 of" in said and not home.exists()


def test_what_does_not_go_with_a_guest(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for argv in ("--guest today", "--guest Grandma check", "--guest"):
        assert run(*argv.split()) == USAGE
    err = capsys.readouterr().err
    assert err.count("--guest opens today's morning, and goes with no command") == 2
    assert "needs a terminal, or --plain" in err
    assert run("--plain", "--guest", "x" * 41) == USAGE
    assert "at most 40 letters" in capsys.readouterr().err


def test_a_bad_family_file_stops_a_guest_as_well(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    home.mkdir()
    (home / "family.toml").write_text("[school]\nfirst_day = 7\n")
    assert run("--plain", "--guest", "Grandma") == UNUSABLE
    assert "line 2" in capsys.readouterr().err


def test_the_name_given_is_that_of_the_marks_where_the_family_has_one(at_home: Path) -> None:
    family = load(at_home / "family.toml")
    assert family.adult == "Papa"
    own = open_context(_places(at_home), family, TODAY, None)
    assert own.adult == "Papa"
    own.marks_by = "Grandma"
    assert own.adult == own.of(family.children[0]).adult == "Grandma"


def _places(home: Path) -> Places:
    return Places(home, home)
