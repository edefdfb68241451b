"""Files with names of before: a journal, a stored routine, family.toml and year.toml are read by today's."""

import datetime as dt
import json
from collections.abc import Callable
from pathlib import Path
from types import MappingProxyType

import pytest

from tests.household import TODAY, context_at, fixed_routine, start_fixed
from tests.journal.journals import step
from tests.pictures.examples import EXAMPLES
from warmup import renames
from warmup.config.family import load
from warmup.config.places import Places
from warmup.config.plan import load_plan, load_shape
from warmup.config.plan_check import check_plan
from warmup.config.toml_file import FileProblem
from warmup.journal.journal import MarkRow
from warmup.journal.routine_json import routine_from, routine_text
from warmup.model import Mark, SlotKind
from warmup.pictures import from_data, kinds, to_data
from warmup.session.session import resume
from warmup.skills import item_names, levels

Clock = Callable[[], dt.datetime]
# What such a table would say: names nobody uses today, one of them changed twice.
ITEMS = {
    "make-ten/friend-of-seven": "make-ten/bond-of-seven",
    "make-ten/bond-of-seven": "make-ten/seven-three",
    "tens-friends/all": "make-ten/all",
}
LEVELS = {"make-ten:friends": ("make-ten:all",), "tens-friends:easy": ("make-ten:easy-pairs",)}


@pytest.fixture
def renamed(monkeypatch: pytest.MonkeyPatch) -> None:
    """Names that changed, as a later version would list them."""
    monkeypatch.setattr(renames, "ITEMS", MappingProxyType(ITEMS))
    monkeypatch.setattr(renames, "LEVELS", MappingProxyType(LEVELS))


def test_every_name_leads_to_one_there_is_and_none_that_went_is_used_again() -> None:
    for table, there in (
        (renames.ITEMS, set(item_names())),
        (renames.KINDS, set(kinds())),
    ):
        assert not set(table) & there
        assert {renames._newest(old, table) for old in table} <= there
    assert not set(renames.LEVELS) & set(levels())
    assert {name for old in renames.LEVELS for name in renames.levels(old)} <= set(levels())
    gone = renames.DROPPED | renames.DROPPED_LEVELS
    assert not gone & {*levels(), *item_names(), *renames.LEVELS, *renames.ITEMS}


def test_a_circle_of_names_ends(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(renames, "ITEMS", {"a/b": "c/d", "c/d": "a/b"})
    assert renames.item("a/b") in ("a/b", "c/d")
    monkeypatch.setattr(renames, "LEVELS", {"a:b": ("c:d", "a:b"), "c:d": ("a:b",)})
    assert set(renames.levels("a:b")) <= {"a:b", "c:d"}


def test_a_picture_of_before_is_read_by_its_kind_today() -> None:
    """The toys in line were called a queue."""
    line = EXAMPLES["toy-line"][2]
    assert from_data(to_data(line) | {"kind": "queue"}) == line


@pytest.mark.usefixtures("renamed")
def test_a_journal_of_before_tells_todays_items(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    start_fixed(context)
    journal = context.journal
    assert journal is not None
    db = journal._store._disk
    assert db is not None
    step(journal, "Bean", TODAY, 1, 1, shown=2, at=0, mark=MarkRow(Mark.FLUENT, 0, "", False, ""))
    for position, old in enumerate(("make-ten/friend-of-seven", "tens-friends/all")):
        db.execute("UPDATE prompts SET item = ? WHERE position = ?", (old, position))
    told = [asked.item for asked in journal.history("Bean")]
    assert told[:2] == ["make-ten/seven-three", "make-ten/all"]


@pytest.mark.usefixtures("renamed")
def test_a_stored_routine_of_before_is_read_and_comes_out_with_todays_names() -> None:
    data = json.loads(routine_text(fixed_routine()))
    data["prompts"][0] |= {"item": "tens-friends/all", "skill": "tens-friends", "level": "easy"}
    prompt = routine_from(json.dumps(data)).prompts[0]
    assert (prompt.item, prompt.skill, prompt.level) == ("make-ten/all", "make-ten", "all")


@pytest.mark.usefixtures("renamed")
def test_a_family_of_before_keeps_what_it_held_opened_and_taught(tmp_path: Path) -> None:
    file = tmp_path / "family.toml"
    file.write_text(
        "format = 1\n[school]\nfirst_day = 2026-08-31\n[[child]]\nnickname = 'Pip'\n"
        "held = ['make-ten:friends', 'make-ten:all']\nopened = ['tens-friends:easy']\n"
        "[child.taught]\n'make-ten/friend-of-seven' = 2026-11-02\n'make-ten/seven-three' = 2026-10-01\n",
        "utf-8",
    )
    child = load(file).children[0]
    assert child.held == ("make-ten:all",) and child.opened == ("make-ten:easy-pairs",)
    assert child.taught == (("make-ten/seven-three", dt.date(2026, 11, 2)),)


@pytest.mark.usefixtures("renamed")
def test_a_year_of_before_keeps_its_weeks_and_a_slip_is_named_where_it_stands(tmp_path: Path) -> None:
    year = tmp_path / "year.toml"
    year.write_text(
        "weeks = 36\n[skills.make-ten]\nsee-places = 3\nfriends = 22\n[skills.tens-friends]\neasy = 8\n"
    )
    places = Places(tmp_path, tmp_path)
    weeks = load_plan(places).weeks
    assert weeks == {"make-ten:see-places": 3, "make-ten:all": 22, "make-ten:easy-pairs": 8}
    before = [str(problem) for problem in check_plan(places)]
    assert not any("friends" in problem for problem in before)
    year.write_text(year.read_text().replace("friends = 22", "friends = 27"))
    (problem,) = (each for each in check_plan(places) if str(each) not in before)
    assert problem.line == 4 and "review week" in str(problem)
    year.write_text("[skills.nobody]\nfriends = 19\n")
    with pytest.raises(FileProblem, match="nobody"):
        load_plan(places)


@pytest.mark.usefixtures("renamed")
def test_a_slot_of_before_asks_what_it_asked(tmp_path: Path) -> None:
    (tmp_path / "short.toml").write_text(
        'prompts = 1\n[[slot]]\nkind = "named"\nmost = 1\nonly = ["make-ten:friends"]\n', "utf-8"
    )
    (slot,) = load_shape(Places(tmp_path, tmp_path), "short").slots
    assert slot.kind is SlotKind.NAMED and slot.only == ("make-ten:all",)


@pytest.mark.usefixtures("renamed")
def test_a_morning_begun_under_the_names_of_before_is_gone_on_with(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    journal = context.journal
    assert journal is not None
    data = json.loads(routine_text(fixed_routine()))
    data["prompts"][0]["item"] = "make-ten/friend-of-seven"
    rows = [(prompt["item"], prompt["wording"]) for prompt in data["prompts"]]
    journal.start("Bean", TODAY, "daily", json.dumps(data), rows)
    session = resume(context, journal, clock)
    assert session is not None and session.prompts[0].item == "make-ten/seven-three"
    session.mark(Mark.HESITATED)
    asked = journal.history("Bean")[0]
    assert (asked.item, asked.mark) == ("make-ten/seven-three", Mark.HESITATED)
