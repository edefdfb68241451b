"""The year was made anew: a journal and a family that hold every id of the year before lose nothing."""

import datetime as dt
import json
import tomllib
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.household import FAMILY, context_at
from warmup import renames, skills
from warmup.config import family as families
from warmup.config.family import Child
from warmup.config.places import Places
from warmup.config.plan import load_plan, load_shape
from warmup.config.plan_check import check_plan
from warmup.engine.eligibility import eligible
from warmup.journal.journal import Journal, MarkRow
from warmup.model import LevelId, Mark
from warmup.session.context import Context

Clock = Callable[[], dt.datetime]
REFERENCES = Path(__file__).parents[1] / "references"
BEFORE: dict[str, str] = {
    item: f"{skill['id']}:{level['key']}"
    for skill in json.loads((REFERENCES / "items-before.json").read_text("utf-8"))["skills"]
    for level in skill["levels"]
    for item in level["items"]
}
"""Every item of the year before, with its level."""
OLD_LEVELS = tuple(dict.fromkeys(BEFORE.values()))
YEAR = (REFERENCES / "year-before.toml").read_text("utf-8")
OLD_WEEKS: dict[str, int] = {
    f"{skill}:{level}": week
    for skill, weeks in tomllib.loads(YEAR)["skills"].items()
    for level, week in weeks.items()
}


def today(level: str) -> set[str]:
    """A level's names today; none where it is asked no more."""
    return set() if renames.dropped(level) else set(renames.levels(level))


def test_every_item_and_level_of_the_year_before_is_there_or_dropped() -> None:
    assert (len(BEFORE), len(OLD_LEVELS)) == (322, 147) and set(OLD_WEEKS) == set(OLD_LEVELS)
    for item in BEFORE:
        assert skills.known(renames.item(item)) is not renames.dropped(item), item
    for level in OLD_LEVELS:
        assert today(level) <= set(skills.levels()) and bool(today(level)) is not renames.dropped(level), (
            level
        )
    assert renames.DROPPED | set(renames.ITEMS) <= set(BEFORE)
    assert renames.DROPPED_LEVELS | set(renames.LEVELS) <= set(OLD_LEVELS)


def test_a_level_leads_to_where_its_items_went() -> None:
    """A level whose plain item was dropped is dropped; else each of its names today has an item of it."""
    for level in OLD_LEVELS:
        plain, *more = [item for item, at in BEFORE.items() if at == level]
        if renames.dropped(plain):
            assert not today(level), level
        else:
            places = [
                skills.locate(renames.item(item)) for item in (plain, *more) if not renames.dropped(item)
            ]
            assert today(level) <= {f"{at.skill.id}:{at.level.key}" for at in places}, level


@pytest.fixture
def context(home: Path, clock: Clock) -> Context:
    """A family in week 26 whose journal has a mark for each item of the year before, eight a morning."""
    there = context_at(home, clock)
    journal = there.journal
    assert journal is not None
    items, days = list(BEFORE), there.year.mornings
    for n in range(0, len(items), 8):
        day, rows = days[n // 8], items[n : n + 8]
        kept = [MarkRow(Mark.FLUENT, 0, "", False, f"{day}T08:00:00") for _ in rows]
        journal.start("Bean", day, "daily", "{}", [(item, "") for item in rows], kept)
    return there


def test_marks_of_dropped_items_stay_in_the_journal_and_count_for_nothing(context: Context) -> None:
    assert context.journal is not None
    kept = {line.item for line in context.journal.history("Bean")}
    assert len(kept) == len({renames.item(item) for item in BEFORE}) and kept >= renames.DROPPED
    counted = {line.item for line in context.history()}
    assert counted == kept - renames.DROPPED and set(context.knowledge().items) == counted
    assert context.routine().prompts


def test_no_fault_is_found_in_a_journal_of_the_year_before(context: Context, home: Path) -> None:
    assert context.journal is not None
    context.journal.shut()
    known = frozenset(skills.item_names())
    assert Journal.examine(home, known) == []
    assert any("count/to-20" in said for said in Journal.examine(home, known - {"count/to-20"}))


def test_what_had_begun_is_open_whatever_its_week_is_today(context: Context) -> None:
    """On the last morning with a mark: each level of which something was asked, and all of it."""
    morning, plan = context.morning(context.year.mornings[(len(BEFORE) - 1) // 8]), context.curriculum()
    begun = {item.level_id for item in plan.items if context.knowledge().of(item.id).marks}
    later = {item.level_id for item in plan.items if item.week > morning.week} & begun
    assert {"position:same-view", "number-line:to-30", "coin-totals:three-kinds"} <= later
    there = {
        item.level_id for item in eligible(plan, morning, context.knowledge(), context.adjustments).items
    }
    # A level that only the day itself can ask of is not there on other days.
    able = {
        item.level_id for item in plan.items if skills.askable(item.id, morning) and item.level_id in begun
    }
    assert able <= there


def family_text() -> str:
    """A family file that names every level and item of the year before."""
    rows = ", ".join(f'"{level}"' for level in OLD_LEVELS)
    taught = "".join(f'"{item}" = 2026-10-01\n' for item in BEFORE)
    return (
        "format = 1\n[school]\nfirst_day = 2026-08-31\n"
        f'[[child]]\nnickname = "Pip"\nheld = [{rows}]\n[child.taught]\n{taught}'
        f'[[child]]\nnickname = "Bean"\nopened = [{rows}]\n'
    )


def test_a_family_of_the_year_before_means_the_same_levels_and_no_word_is_said_of_it(tmp_path: Path) -> None:
    file = tmp_path / "family.toml"
    file.write_text(family_text(), "utf-8")
    family = families.load(file)
    pip, bean = family.children
    names = {name for level in OLD_LEVELS for name in renames.levels(level)}
    assert set(pip.held) == set(bean.opened) == names
    assert {level for level in names if level not in skills.levels()} == renames.DROPPED_LEVELS
    assert {item for item, _ in pip.taught} == {renames.item(item) for item in BEFORE}
    assert families.warnings(family) == ()


def test_a_save_keeps_what_is_asked_no_more(tmp_path: Path) -> None:
    file = tmp_path / "family.toml"
    file.write_text(family_text(), "utf-8")
    before = families.load(file)
    pip, bean = before.children
    held = tuple(level for level in pip.held if level != "count:to-20")
    changed = Child("Pip", held, taught=pip.taught)
    families.save(file, before._replace(children=(changed, bean), theme="light"), before)
    after = families.load(file)
    assert set(after.children[0].held) == set(held) and set(held) >= renames.DROPPED_LEVELS
    assert dict(after.children[0].taught) == dict(pip.taught) and after.children[1].opened == bean.opened


@pytest.mark.parametrize(
    ("rows", "held"),
    [
        (
            "'coins:dime', 'coins:penny-and-nickel', 'count:to-20', 'clock:mixed'",
            ("coins:worth", "clock:half-past"),
        ),
        ("'parts:of-3-to-5', 'count:to-20', 'weekday:two-days'", ("parts:split-to-5", "weekday:two-days")),
        ("'count:to-20', 'count:to-20', 'weekday:two-days'", ("weekday:two-days",)),
        ("'weekday:two-days', 'parts:of-3-to-5'", ("parts:hidden-to-5", "weekday:today")),
    ],
)
def test_a_list_with_older_names_can_be_changed(tmp_path: Path, rows: str, held: tuple[LevelId, ...]) -> None:
    file = tmp_path / "family.toml"
    head = "format = 1\n[school]\nfirst_day = 2026-08-31\n[[child]]\nnickname = 'Pip'\n"
    file.write_text(f"{head}held = [{rows}] # not taught\n", "utf-8")
    before = families.load(file)
    families.save(file, before._replace(children=(Child("Pip", held),)), before)
    assert families.load(file).children[0].held == held and "# not taught" in file.read_text("utf-8")


def test_what_was_taught_by_a_name_of_before_can_be_taken_back(tmp_path: Path) -> None:
    file = tmp_path / "family.toml"
    old = "[child.taught]\n'compare/thirteen-thirty-one' = 2026-10-01\n'count/to-20' = 2026-10-02\n"
    file.write_text(
        f"format = 1\n[school]\nfirst_day = 2026-08-31\n[[child]]\nnickname = 'Pip'\n{old}", "utf-8"
    )
    before = families.load(file)
    ((item, day), other) = before.children[0].taught
    assert (item, day) == ("place-value/which-is-more", dt.date(2026, 10, 1))
    later = ((item, dt.date(2026, 11, 1)), other)
    families.save(file, before._replace(children=(Child("Pip", taught=later),)), before)
    now = families.load(file)
    assert now.children[0].taught == later
    families.save(file, now._replace(children=(Child("Pip", taught=(other,)),)), now)
    assert families.load(file).children[0].taught == (other,)


def test_a_split_level_is_held_whole_and_one_of_a_merged_pair_holds_the_pair(tmp_path: Path) -> None:
    """Nothing that the adult held back is asked."""
    file = tmp_path / "family.toml"
    file.write_text(
        "format = 1\n[school]\nfirst_day = 2026-08-31\n[[child]]\nnickname = 'Pip'\n"
        "held = ['parts:of-3-to-5', 'coins:dime']\n",
        "utf-8",
    )
    held = families.load(file).children[0].held
    assert held == ("parts:split-to-5", "parts:hidden-to-5", "coins:worth")


def test_a_year_of_the_year_before_keeps_its_weeks_and_has_one_warning(tmp_path: Path) -> None:
    (tmp_path / "year.toml").write_text(YEAR, "utf-8")
    places = Places(tmp_path, tmp_path)
    plan = load_plan(places)
    weeks: dict[str, int] = {str(level): week for level, week in plan.weeks.items()}
    kept = set(OLD_WEEKS) & set(skills.levels())
    assert {level: weeks[level] for level in kept} == {level: OLD_WEEKS[level] for level in kept}
    assert set(weeks) == {name for level in OLD_LEVELS for name in today(level)}
    assert weeks["coins:worth"] == OLD_WEEKS["coins:dime"] == 21, "no part of it before its week"
    assert weeks["clock:half-past"] == 31, "its own line counts before that of clock:mixed"
    assert {weeks[f"add-subtract:{key}"] for key in ("add-to-5", "take-to-5", "mixed-to-5")} == {18}
    assert plan.reviews == load_plan(Places(tmp_path / "none", tmp_path)).reviews
    (said,) = map(str, check_plan(places))
    assert said.startswith(
        "year.toml, line 22, skills.weekday.two-days: expected levels that are still asked"
    )
    assert '"two-days" and 14 more' in said and "copy it anew" in said


def test_a_dropped_level_is_warned_of_once_in_a_year_of_today_too(tmp_path: Path) -> None:
    year = tmp_path / "year.toml"
    year.write_text("weeks = 36\n[skills.weekday]\ntoday = 1\ntwo-days = 29\n", "utf-8")
    places = Places(tmp_path, tmp_path)
    assert load_plan(places).weeks == {"weekday:today": 1}
    (said,) = map(str, check_plan(places))
    assert "line 4, skills.weekday.two-days" in said and said.endswith("delete it when you like.")


def test_a_slot_asks_what_is_left_of_its_levels_and_goes_with_the_last(tmp_path: Path) -> None:
    head = 'prompts = 2\n[[slot]]\nkind = "sure"\nmost = 1\n[[slot]]\nkind = "named"\nmost = 1\nonly = '
    short, places = tmp_path / "short.toml", Places(tmp_path, tmp_path)
    short.write_text(f'{head}["weekday:two-days", "parts:of-3-to-5", "parts:split-to-5"]\n', "utf-8")
    assert load_shape(places, "short").slots[1].only == ("parts:split-to-5", "parts:hidden-to-5")
    short.write_text(f'{head}["weekday:two-days"]\n', "utf-8")
    assert [slot.kind.value for slot in load_shape(places, "short").slots] == ["sure"]
    assert check_plan(places) == []


def test_a_family_in_the_middle_of_its_year_is_asked_on(context: Context) -> None:
    """A month of mornings after the change, all of them with prompts there are, none of a held level."""
    assert context.family.children == FAMILY.children
    for day in context.year.mornings[110:126:5]:
        context.today = day
        routine = context.routine(context.morning(day))
        assert len(routine.prompts) >= 4 and all(skills.known(prompt.item) for prompt in routine.prompts)
