"""The half page to take to the table: what it says, how it is cut, and that it is kept."""

import datetime as dt
import textwrap
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.benchmarks.year_aloud import answer, family
from tests.household import FAMILY, TODAY, fixed_routine
from warmup.cli.brief import COLUMNS, LINES, Way, brief_lines, fitted, wobbled
from warmup.cli.main import DONE, USAGE, main
from warmup.config import family as families
from warmup.config.family import Family, load
from warmup.config.places import Places
from warmup.engine.memory import Knowledge, fold
from warmup.journal.journal import Journal
from warmup.model import Asked, ItemId, Mark
from warmup.session.context import open_context
from warmup.session.stored import stored
from warmup.text import quoted

AT_EIGHT = dt.datetime.combine(TODAY, dt.time(8))


def run(*argv: str, now: dt.datetime = AT_EIGHT) -> int:
    """The exit code of a command, run here; argparse's own exits as codes."""
    try:
        return main(argv, lambda: now)
    except SystemExit as ended:
        return int(ended.code or 0)


def kept(home: Path, date: dt.date = TODAY) -> list[str]:
    """The routines that the journal has of a date, as their words."""
    if not (home / "journal.db").exists():
        return []
    journal = Journal.open(home, lambda: AT_EIGHT, read_only=True)
    found = [prompt.say for _, routine in stored(journal, "Bean", date) for prompt in routine.prompts]
    journal.shut()
    return found


@pytest.fixture
def at_home(home: Path) -> Family:
    """A family whose days are all known."""
    home.mkdir(exist_ok=True)
    families.save(home / "family.toml", FAMILY)
    return FAMILY


# -- what it says


@pytest.mark.slow
@pytest.mark.parametrize(
    # The children with the fewest and the most to come back, and the longest mornings there are.
    ("name", "prompts"),
    [("quick", None), ("slow", 8), ("average", 10)],
)
def test_every_morning_of_a_year_fits(name: str, prompts: int | None, tmp_path: Path) -> None:
    """All 144: 30 lines of 72 columns, with every prompt's words, answer and boxes whole."""
    given_family = family(name)._replace(prompts=prompts)
    context = open_context(
        Places(tmp_path, tmp_path), given_family, given_family.first_day, None, saved=False
    )
    known, mornings = Knowledge(), 0
    for day in context.year.mornings:
        context.turn_to(day)
        context.know(known)
        for item in context.to_teach():
            context.editor.taught(item, day)
        context.know(known)
        routine = context.routine()
        lines = brief_lines(routine, context)
        assert len(lines) <= LINES and max(map(len, lines)) <= COLUMNS, (day, len(lines))
        text = " ".join(" ".join(lines).split())
        for number, prompt in enumerate(routine.prompts, start=1):
            do = f"{prompt.do} " if prompt.do else ""
            whole = f"{number}. w[ ] s[ ] n[ ] {do}{quoted(prompt.say)} Answer: {prompt.answer}."
            assert " ".join(whole.split()) in text, (day, whole)
        assert len(wobbled(context)) <= 3
        marks = [answer(name, prompt.item, day, known) for prompt in routine.prompts]
        lived = zip(routine.prompts, marks, strict=True)
        known = fold(
            context.curriculum(), [Asked(day, p.item, mark, wording=p.wording) for p, mark in lived], known
        )
        mornings += 1
    assert mornings == 144


def test_each_prompt_has_two_cues_and_its_picture_where_there_is_room(tmp_path: Path) -> None:
    context = open_context(Places(tmp_path, tmp_path), FAMILY, TODAY, None, saved=False)
    routine = fixed_routine()
    text = " ".join(" ".join(brief_lines(routine, context)).split())
    for prompt in routine.prompts:
        for label, cue in (("Cue:", prompt.cues[0]), ("Then:", prompt.cues[1])):
            assert f"{label} {cue.text}" in text
        assert prompt.picture is None or f"Picture: {prompt.picture.exactly()}." in text
    assert text.count("Have ready: ") == 1 and "ten frame" in text.partition("Have ready: ")[2]
    assert "school day 107, week 27" in text and f"warmup catch-up {TODAY}" in text
    assert "Wobbled" not in text


def test_what_wobbled_lately_is_named_the_latest_first(tmp_path: Path) -> None:
    context = open_context(Places(tmp_path, tmp_path), FAMILY, TODAY, None, saved=False)
    days = context.year.mornings
    asked = [
        (2, "count-on/across-30", Mark.NOT_YET),
        (3, "by-tens/to-50", Mark.HESITATED),
        (4, "weekday/today", Mark.FLUENT),
        (5, "make-ten/seven-three", Mark.HESITATED),
        (1, "month/this", Mark.HESITATED),
    ]
    lines = [Asked(days[at], ItemId(item), mark) for at, item, mark in sorted(asked)]
    context.know(fold(context.curriculum(), lines))
    assert wobbled(context) == ["make-ten/seven-three", "by-tens/to-50", "count-on/across-30"]
    (line,) = (line for line in brief_lines(fixed_routine(), context) if line.startswith("Wobbled lately: "))
    assert line.index("ten") < line.index("tens") < line.index("on")


@given(
    st.lists(st.lists(st.integers(1, 60), min_size=1, max_size=4), min_size=1, max_size=8), st.integers(0, 40)
)
def test_prompts_are_cut_only_as_far_as_they_must(sizes: list[list[int]], room: int) -> None:
    """Compared with every prompt at its least, and with the whole of them."""
    prompts = [
        [Way(" ".join(["word"] * size), 60 - size) for size in sorted({*each}, reverse=True)]
        for each in sizes
    ]
    lines = len(fitted(prompts, room))
    least = sum(min(_lines(way) for way in each) for each in prompts)
    most = sum(_lines(each[0]) for each in prompts)
    assert lines <= max(room, least) and least <= lines <= most
    assert room < most or lines == most


def _lines(way: Way) -> int:
    return len(textwrap.wrap(way.text, COLUMNS, subsequent_indent="   "))


def test_without_answers_no_answer_is_on_it(at_home: Family, capsys: pytest.CaptureFixture[str]) -> None:
    assert run("today", "--brief", "--no-answers") == DONE
    assert "Answer:" not in capsys.readouterr().out


# -- kept, or not


def test_today_s_is_kept_and_printed_the_same_again(
    at_home: Family, home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run("today", "--brief") == DONE
    first, err = capsys.readouterr()
    assert err == "" and len(kept(home)) == 8 and all(say.split()[0] in first for say in kept(home))
    assert run("today", "--brief", "--date", str(TODAY)) == DONE
    assert capsys.readouterr().out == first and len(kept(home)) == 8
    assert load(home / "family.toml") == at_home, "the family is as it was"


@pytest.mark.parametrize("days", [-9, 1, 30])
def test_that_of_another_date_is_not_kept(
    days: int, at_home: Family, home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    day = TODAY + dt.timedelta(days)
    assert run("today", "--brief", "--date", str(day)) == DONE
    assert capsys.readouterr().out and not (home / "journal.db").exists()


@pytest.mark.parametrize("days", [-9, 0, 1, 40])
def test_it_has_the_prompts_that_the_long_form_of_the_date_has(
    days: int, at_home: Family, capsys: pytest.CaptureFixture[str]
) -> None:
    date = str(TODAY + dt.timedelta(days))
    run("today", "--date", date)
    said = [
        line.removeprefix("Say: ")
        for line in capsys.readouterr().out.splitlines()
        if line.startswith("Say: ")
    ]
    run("today", "--brief", "--date", date)
    text = " ".join(capsys.readouterr().out.split())
    places = [text.index(quoted(say)) for say in said]
    assert len(said) > 3 and places == sorted(places) and text.count("w[ ]") == len(said)


def test_where_days_are_not_known_it_says_that_it_is_kept_nowhere(
    home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    home.mkdir()
    families.save(home / "family.toml", FAMILY._replace(known_until=None))
    assert run("today", "--brief") == DONE
    out, err = capsys.readouterr()
    assert out.startswith("Bean, ") and "mornings without a warm-up" in err and "kept nowhere" in err
    assert kept(home) == []


def test_without_a_family_it_prints_and_writes_nothing(
    home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run("today", "--brief") == DONE
    out, err = capsys.readouterr()
    assert len(out.splitlines()) <= LINES and "no family.toml yet" in err and not home.exists()


def test_brief_and_json_do_not_go_together(capsys: pytest.CaptureFixture[str]) -> None:
    assert run("today", "--brief", "--json") == USAGE
    assert "not allowed with" in capsys.readouterr().err
