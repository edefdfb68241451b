"""``warmup practice``: which level it means, and what it refuses; its page has tests of its own."""

import datetime as dt
import io
import sys
import tomllib
from pathlib import Path

import pytest

from tests.cli.test_brief import AT_EIGHT, run
from tests.household import FAMILY, TODAY, StandingClock, context_at
from warmup.cli.main import DONE, UNUSABLE, USAGE
from warmup.cli.plain import SMALL_THINGS
from warmup.cli.practicing import level_named
from warmup.cli.printing import Refused
from warmup.config import family as families
from warmup.journal.journal import Journal
from warmup.model import LevelId, Mark
from warmup.session import practice
from warmup.session.context import Context
from warmup.session.practice import PracticeRound

F, N = Mark.FLUENT, Mark.NOT_YET


def practiced(home: Path) -> Context:
    """A family with a practice round of two marks, and nothing else."""
    context = context_at(home, StandingClock(AT_EIGHT))
    assert context.journal is not None
    round_ = PracticeRound(context, context.journal, LevelId("make-ten:all"))
    round_.mark(Mark.FLUENT)
    round_.mark(Mark.NOT_YET)
    context.journal.shut()
    return context


def marks(home: Path) -> list[Mark | None]:
    journal = Journal.open(home, lambda: AT_EIGHT, read_only=True)
    return [row.mark for row in journal.practiced("Bean")]


def test_a_skill_means_its_last_open_level(home: Path) -> None:
    context = context_at(home, StandingClock(AT_EIGHT))
    assert level_named(context, "make-ten") == "make-ten:in-the-head"
    assert level_named(context, "make-ten:all") == "make-ten:all"


@pytest.mark.parametrize(
    ("what", "said"),
    [
        ("make-tem", "did you mean .?make-ten"),
        ("make-ten:some", "no level 'some' in make-ten; there is see-places, easy-pairs, all"),
        ("make-ten:take-from-ten", "Make ten, ten take away some: It isn’t taught yet. It opens in week 28"),
        ("by-twos", "It opens in week 28"),
    ],
)
def test_what_there_is_not_or_not_yet_is_said(home: Path, what: str, said: str) -> None:
    with pytest.raises(Refused, match=said):
        level_named(context_at(home, StandingClock(AT_EIGHT)), what)


def test_without_a_terminal_it_says_that_it_needs_one(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    context_at(home, StandingClock(AT_EIGHT))
    assert run("practice", "make-ten") == USAGE
    assert "needs a terminal" in capsys.readouterr().err and not marks(home)


def test_a_round_in_lines_is_kept_line_by_line(
    home: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    context_at(home, StandingClock(AT_EIGHT))
    typed = io.StringIO("e\nw\n?\n.\ns\nu\nx\nc\np\nnonsense\n\nw\nt\na\nn\nw\n")
    monkeypatch.setattr(sys, "stdin", typed)
    assert run("practice", "make-ten:all", "--plain") == DONE
    said = capsys.readouterr().out
    for each in ("Practice: Make ten, all pairs. Prompts: 5.", "Prompt 1 of 5.", "Cue 1:", "Came easily.",
                 "Undone: the last mark.", "Answer: covered", '"nonsense" is none of these', practice.DONE,
                 practice.APART, "What was marked is kept."):  # fmt: skip
        assert each in said, each
    assert marks(home) == [F, N, N, F]
    monkeypatch.setattr(sys, "stdin", io.StringIO("w\n8\n"))
    assert run("practice", "make-ten:all", "--plain") == DONE
    assert "Prompt 2 of 5." in capsys.readouterr().out and marks(home)[-1] is Mark.FLUENT


def test_a_round_in_lines_warns_of_what_is_small(
    home: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    context_at(home, StandingClock(AT_EIGHT))
    for level, small in (("count-on:within-10", True), ("weekday:today", False)):
        monkeypatch.setattr(sys, "stdin", io.StringIO("8\n"))
        assert run("practice", level, "--plain") == DONE
        assert (SMALL_THINGS in capsys.readouterr().out) == small


def test_why_tells_of_practice_and_past_mornings_do_not(
    home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    practiced(home)
    assert run("why", "make-ten/all") == DONE
    assert "Wednesday, March 3, 2027, practice: ● ○." in capsys.readouterr().out
    assert run("past") == DONE and capsys.readouterr().out.strip() == "No warm-up is kept from before today."


def test_an_export_takes_it_along_and_one_from_before_has_none(
    home: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    practiced(home)
    out = tmp_path / "out"
    assert run("export", "--all", str(out)) == DONE and "practice.csv: 2 rows." in capsys.readouterr().out
    (home / "journal.db").unlink()
    assert run("import", str(out)) == DONE and marks(home) == [Mark.FLUENT, Mark.NOT_YET]
    assert run("import", str(out)) == DONE and marks(home) == [Mark.FLUENT, Mark.NOT_YET], (
        "once more, the same"
    )
    # As version 3 wrote it.
    (home / "journal.db").unlink()
    head = (out / "export.toml").read_text()
    assert tomllib.loads(head)["journal"] == 4
    (out / "export.toml").write_text(head.replace("journal = 4", "journal = 3"))
    (out / "practice.csv").unlink()
    assert run("import", str(out)) == DONE and marks(home) == []
    (out / "export.toml").write_text(head)
    assert run("import", str(out)) == UNUSABLE


def test_what_the_other_laptop_practiced_is_taken_in(home: Path, tmp_path: Path) -> None:
    practiced(home)
    other = tmp_path / "other"
    context = context_at(other, StandingClock(dt.datetime.combine(TODAY, dt.time(9))))
    assert context.journal is not None
    PracticeRound(context, context.journal, LevelId("make-ten:all")).mark(Mark.HESITATED)
    context.journal.shut()
    for _ in range(3):
        assert run("merge", str(other)) == DONE
        assert marks(home) == [Mark.FLUENT, Mark.NOT_YET, Mark.HESITATED]
    families.save(home / "family.toml", FAMILY)
    assert run("check") == DONE
