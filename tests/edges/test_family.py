"""family.toml: what a family may write, what is said when it can't be read, and what survives a save."""

import datetime as dt
import tomllib
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from warmup import family as families
from warmup.documents import FileProblem, Missing, clean, visible
from warmup.family import Child, CountdownRule, Family, countdowns, default, dump, load, save, warnings
from warmup.morning import Countdown

quiet = settings(database=None, derandomize=True, deadline=None, max_examples=80)
day = dt.date

EXAMPLE = """
format = 1
[school]
first_day = 2026-08-31
first_week = 1
weekdays = ["Monday", "Tuesday", "Wednesday", "Thursday"]
began = 2026-11-25
settled = 2026-11-24
days_off = [2026-11-26, {from = 2026-12-21, to = 2027-01-01}]
extra = [2026-12-05]
[[child]]
nickname = "Bean"
held = ["coins:dime"]
[[countdown]]
name = "the lake"
date = 2027-06-04
[[countdown]]
name = "the feast"
yearly = "fourth Thursday of November"
[preferences]
theme = "dark"
answers = "covered"
pennies = true
"""

FAMILY = Family(
    first_day=day(2026, 8, 31),
    began=day(2026, 11, 25),
    children=(Child("Bean", held=("coins:dime",)),),
    settled=day(2026, 11, 24),
    off=((day(2026, 11, 26), day(2026, 11, 26)), (day(2026, 12, 21), day(2027, 1, 1))),
    extra=(day(2026, 12, 5),),
    countdowns=(
        CountdownRule("the lake", date=day(2027, 6, 4)),
        CountdownRule("the feast", yearly="fourth Thursday of November"),
    ),
    answers_shown=False,
)


def written(folder: Path, content: str | bytes) -> Path:
    path = folder / "family.toml"
    path.write_bytes(content.encode() if isinstance(content, str) else content)
    return path


def complaint(folder: Path, old: str, new: str) -> str:
    assert old in EXAMPLE
    with pytest.raises(FileProblem) as caught:
        load(written(folder, EXAMPLE.replace(old, new, 1)))
    return str(caught.value)


def test_the_example_in_full(tmp_path: Path) -> None:
    assert load(written(tmp_path, EXAMPLE)) == FAMILY


def test_little_is_enough(tmp_path: Path) -> None:
    least = 'school.first_day = 2026-08-31\n[[child]]\nnickname = "Pip"\n'
    expected = Family(first_day=day(2026, 8, 31), began=day(2026, 8, 31), children=(Child("Pip"),))
    assert load(written(tmp_path, least)) == expected


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ("format = 1", "format = 2", "line 2, format: expected format = 1"),
        ("2026-08-31", '"soon"', 'line 4, school.first_day: expected a date like 2026-08-31, found "soon"'),
        ("2026-08-31", "2026-08-31T09:00:00", "line 4, school.first_day"),
        ("2026-08-31", "[]", "line 4, school.first_day"),
        (
            "first_day = 2026-08-31",
            "",
            "line 3, school.first_day: expected a date like 2026-08-31, found nothing",
        ),
        (
            "first_week = 1",
            "first_week = 37",
            "line 5, school.first_week: expected a whole number from 1 to 36, found 37",
        ),
        ("first_week = 1", "first_week = true", "found true"),
        (
            '"Tuesday"',
            '"Teusday"',
            'school.weekdays 2: expected a day of the week, found "Teusday"; did you mean "Tuesday"?',
        ),
        ('"Tuesday"', '"monday"', "line 6, school.weekdays 2: expected each day once, found monday twice"),
        (
            '["Monday", "Tuesday", "Wednesday", "Thursday"]',
            "[]",
            "at least one day of the week, found an empty list",
        ),
        (
            '["Monday", "Tuesday", "Wednesday", "Thursday"]',
            "4",
            "expected a list in square brackets, found 4",
        ),
        (
            "to = 2027-01-01",
            "to = 2026-01-01",
            "line 9, school.days_off 2.to: expected a date not before 2026-12-21",
        ),
        ("to = 2027-01-01", "to = 2028-01-01", "at most 366 days off in a row"),
        (", to = 2027-01-01", "", "school.days_off 2.to: expected a date like 2026-08-31, found nothing"),
        (
            'nickname = "Bean"',
            'nickname = ""',
            'line 12, child 1.nickname: expected at least one letter, found ""',
        ),
        ('nickname = "Bean"', 'nickname = " \\u0007\\u200d "', "expected at least one letter"),
        (
            'nickname = "Bean"',
            f'nickname = "{"x" * 10_000}"',
            "line 12, child 1.nickname: expected at most 40 characters",
        ),
        ('nickname = "Bean"', "nickname = 7", "line 12, child 1.nickname: expected some words"),
        ('nickname = "Bean"', 'nickname = "Bean"\n[[child]]\nnickname = "BEAN"', "line 14, child 2.nickname"),
        ('held = ["coins:dime"]', "held = [1]", "line 13, child 1.held 1: expected some words"),
        (
            "[[countdown]]",
            '[child.taught]\n"make-ten/seven-three" = "soon"\n[[countdown]]',
            "line 15, child 1.taught.make-ten/seven-three: expected a date like 2026-08-31, found",
        ),
        (
            "[[countdown]]",
            "taught = [2026-12-03]\n[[countdown]]",
            "line 14, child 1.taught: expected a table",
        ),
        (
            "[[countdown]]",
            "taught.make-ten = 2026-12-03T08:00:00\n[[countdown]]",
            "line 14, child 1.taught.make-ten: expected a date",
        ),
        (
            "[[countdown]]",
            'taught."a\\u001b[2Jb" = 2026-12-03\n[[countdown]]',
            "expected an item like make-ten/seven-three, found",
        ),
        (
            "[[countdown]]",
            f'taught."{"x" * 10_000}" = 2026-12-03\n[[countdown]]',
            "expected an item like make-ten/seven-three, found",
        ),
        (
            "[[countdown]]",
            f"taught = {{{', '.join(f'i{n} = 2026-12-03' for n in range(1001))}}}\n[[countdown]]",
            "line 14, child 1.taught: expected a table of at most 1000, found 1001",
        ),
        ("[[countdown]]", "paused = true\n[[countdown]]", "line 14, child 1.paused: expected a date"),
        ("[[countdown]]", "paused = 9999-12-31\n[[countdown]]", "between the years 1900 and 2999"),
        ("date = 2027-06-04", "", "line 14, countdown 1.date"),
        ("fourth Thursday", "fifth Thursday", "line 19, countdown 2.yearly: expected a day like"),
        ("fourth Thursday of November", "February 30", 'found "February 30"'),
        ('yearly = "', 'date = 2027-01-01\nyearly = "', "expected either date or yearly, found both"),
        (
            'theme = "dark"',
            'theme = "pink"',
            'line 21, preferences.theme: expected "dark" or "light", found "pink"',
        ),
        ("pennies = true", 'pennies = "yes"', "line 23, preferences.pennies: expected true or false"),
    ],
)
def test_every_slip_has_its_sentence(tmp_path: Path, old: str, new: str, words: str) -> None:
    said = complaint(tmp_path, old, new)
    assert said.startswith("family.toml, line ") and words in said and "\n" not in said


@pytest.mark.parametrize(
    "content", ["", "format = 1", "school = 1", "child = 3\nschool.first_day = 2026-08-31", b"\x89PNG\x00"]
)
def test_files_with_no_family_in_them(tmp_path: Path, content: str | bytes) -> None:
    with pytest.raises(FileProblem):
        load(written(tmp_path, content))


def test_no_file_and_a_folder_in_its_place(tmp_path: Path) -> None:
    with pytest.raises(Missing):
        load(tmp_path / "family.toml")
    (tmp_path / "family.toml").mkdir()
    with pytest.raises(FileProblem):
        load(tmp_path / "family.toml")
    with pytest.raises(FileProblem):
        save(tmp_path / "family.toml", FAMILY)


@pytest.mark.parametrize(
    ("raw", "kept"),
    [
        ("[bold red]Pip[/]", "[bold red]Pip[/]"),
        ("3 [/x] 4", "3 [/x] 4"),
        ("Pip\\u001b[2J\\u0007", "Pip[2J"),
        ("\\n Pip \\n", "Pip"),
        ("🐻👩‍👧", "🐻👩‍👧"),
        ("x" * 40, "x" * 40),
    ],
)
def test_a_nickname_is_shown_as_written_and_never_obeyed(tmp_path: Path, raw: str, kept: str) -> None:
    path = written(tmp_path, EXAMPLE.replace("Bean", raw))
    assert load(path).children[0].nickname == kept


names = st.text(st.characters(codec="utf-8"), min_size=1, max_size=40).map(clean).filter(visible)
refs = st.lists(st.sampled_from(["coins:dime", "no such:level", "count:to-20"]), unique=True).map(tuple)
dates = st.dates(day(2020, 1, 1), day(2040, 1, 1))
taught = st.dictionaries(
    st.sampled_from(["make-ten/seven-three", "no such/item", "[x] = 'q\"", "a.b"]), dates
).map(lambda found: tuple(found.items()))
rules = st.one_of(
    st.builds(CountdownRule, names, date=dates, yearly=st.just("")),
    st.builds(
        CountdownRule,
        names,
        date=st.none(),
        yearly=st.sampled_from(["December 25", "last Monday in May", "FIRST friday of june", "February 29"]),
    ),
)
a_family = st.builds(
    Family,
    first_day=dates,
    began=dates,
    children=st.lists(
        st.builds(Child, names, refs, refs, taught=taught, paused=st.none() | dates),
        min_size=1,
        max_size=3,
        unique_by=lambda c: c.nickname.casefold(),
    ).map(tuple),
    first_week=st.integers(1, 36),
    weekdays=st.sets(st.integers(0, 6), min_size=1).map(sorted).map(tuple),
    settled=st.none() | dates,
    off=st.lists(
        st.tuples(dates, st.integers(0, 365)).map(lambda p: (p[0], p[0] + dt.timedelta(p[1]))), max_size=4
    ).map(tuple),
    extra=st.lists(dates, max_size=3).map(tuple),
    countdowns=st.lists(rules, max_size=3).map(tuple),
    theme=st.sampled_from(["dark", "light"]),
    answers_shown=st.booleans(),
    pennies=st.booleans(),
    adult=st.just("") | names,
)


@quiet
@given(a_family, a_family)
def test_a_family_saved_is_the_family_loaded_whatever_lay_there(
    tmp_path_factory: pytest.TempPathFactory, before: Family, after: Family
) -> None:
    path = tmp_path_factory.getbasetemp() / "family.toml"
    path.unlink(missing_ok=True)
    save(path, before)
    assert load(path) == before
    save(path, after)
    assert load(path) == after


@quiet
@given(
    st.binary(max_size=300)
    | st.text(st.sampled_from('=[]{}"\n.,# school child nickname first_day 2026-08-31')).map(str.encode)
)
def test_any_bytes_give_a_family_or_a_problem(
    tmp_path_factory: pytest.TempPathFactory, content: bytes
) -> None:
    try:
        assert isinstance(load(written(tmp_path_factory.getbasetemp(), content)), Family)
    except FileProblem as found:
        assert str(found)


values = st.recursive(
    st.booleans() | st.integers() | st.dates() | st.text(st.characters(codec="utf-8"), max_size=5),
    lambda inner: (
        st.lists(inner, max_size=2)
        | st.dictionaries(st.sampled_from(["a", "from", "nickname"]), inner, max_size=2)
    ),
    max_leaves=3,
)
WAYS = [
    ("format",), ("school",), ("child",), ("countdown",), ("preferences",),
    *(("school", key) for key in tomllib.loads(EXAMPLE)["school"]),
    ("school", "days_off", 1, "from"), ("child", 0), ("child", 0, "nickname"), ("child", 0, "held"),
    ("child", 0, "paused"), ("child", 0, "taught"), ("child", 0, "taught", "make-ten/seven-three"),
    ("countdown", 0), ("countdown", 1, "yearly"), ("preferences", "theme"), ("preferences", "pennies"),
]  # fmt: skip


@settings(quiet, max_examples=300)
@given(st.sampled_from(WAYS), values)
def test_any_value_in_any_place_gives_a_family_or_a_problem(
    way: tuple[str | int, ...], value: object
) -> None:
    data = tomllib.loads(EXAMPLE)
    data["child"][0]["taught"] = {"make-ten/seven-three": day(2026, 12, 3)}
    at = data
    for key in way[:-1]:
        at = at[key]  # type: ignore[index]  # the ways are those of EXAMPLE
    at[way[-1]] = value  # type: ignore[index]
    try:
        assert isinstance(families.parse(families.Document(Path("family.toml"), data, "")), Family)
    except FileProblem as found:
        assert str(found)


def test_keys_unknown_here_survive_a_save(tmp_path: Path) -> None:
    more = EXAMPLE.replace("to = 2027-01-01", 'to = 2027-01-01, why = "snow"').replace(
        '[[child]]\nnickname = "Bean"',
        'colour = "blue"\n[[child]]\nnickname = "Pip"\nshoes = 9\n[[child]]\nnickname = "Bean"\nhat = true',
    )
    path = written(tmp_path, f'future = [1, 2]\n{more}font = "huge"\n[later]\nx = 1\n')
    family = load(path)
    pip, bean = family.children
    save(
        path,
        family._replace(children=(replace(bean, held=()), replace(pip, nickname="Pippa")), theme="light"),
    )
    data = tomllib.loads(path.read_text())
    assert data["future"] == [1, 2] and data["later"] == {"x": 1}
    assert data["school"]["colour"] == "blue" and data["preferences"]["font"] == "huge"
    assert data["school"]["days_off"][1]["why"] == "snow"
    bean_then = {"nickname": "Bean", "hat": True, "record": "Bean"}
    assert data["child"] == [bean_then, {"nickname": "Pippa", "record": "Pip"}]
    save(path, load(path)._replace(children=(bean, Child("Lark"))))
    assert tomllib.loads(path.read_text())["child"][0] == bean_then | {"held": ["coins:dime"]}


def test_what_was_taught_again_is_a_table_under_its_child(tmp_path: Path) -> None:
    rows = (("make-ten/seven-three", day(2026, 12, 3)), ("knots/one", day(2026, 12, 1)))
    path = written(tmp_path, EXAMPLE)
    bean = replace(load(path).children[0], taught=rows)
    save(path, FAMILY._replace(children=(bean, Child("Pip", taught=rows[:1], paused=day(2026, 12, 3)))))
    text = path.read_text()
    assert text.count('\n[child.taught]\n"make-ten/seven-three" = 2026-12-03\n') == 2
    assert "\npaused = 2026-12-03\n" in text and load(path).children[1].paused == day(2026, 12, 3)
    assert [child.taught for child in load(path).children] == [rows, rows[:1]]
    assert [warning for warning in warnings(load(path)) if "taught" in warning] == [
        'Bean has "knots/one" taught again, and there is no such item.'
    ]
    save(path, load(path)._replace(children=(replace(bean, taught=()), Child("Pip"))))
    assert "taught" not in path.read_text()


def test_a_child_renamed_in_its_place_keeps_its_record_and_what_else_stood_there() -> None:
    over = {"child": [{"nickname": "Bean", "hat": True}, {"nickname": "Pip"}]}
    bean, pip = Child("Bean"), Child("Pip")
    renamed = FAMILY._replace(children=(replace(bean, nickname="Beanie"), pip))
    assert dump(renamed, over)["child"] == [
        {"nickname": "Beanie", "hat": True, "record": "Bean"},
        {"nickname": "Pip", "record": "Pip"},
    ]
    assert over["child"][0] == {"nickname": "Bean", "hat": True}, "what was read is left as it was"


def test_two_children_never_share_a_record(tmp_path: Path) -> None:
    said = complaint(
        tmp_path, 'nickname = "Bean"', 'nickname = "Bean"\n[[child]]\nnickname = "Pip"\nrecord = "Bean"'
    )
    assert "line 15, child 2.record: expected a record no other child has" in said


def test_a_file_that_cannot_be_read_is_never_written_over(tmp_path: Path) -> None:
    for content in (b"\xff\xfe", b"[school", b"format = 2", EXAMPLE.replace("Bean", "").encode()):
        path = written(tmp_path, content)
        with pytest.raises(FileProblem):
            save(path, FAMILY)
        assert path.read_bytes() == content and [p.name for p in tmp_path.iterdir()] == ["family.toml"]


def test_a_family_that_would_not_load_again_is_not_saved(tmp_path: Path) -> None:
    path = tmp_path / "family.toml"
    for nickname in ("", "x" * 41, "\x07"):
        with pytest.raises(FileProblem, match=r"child 1\.nickname"):
            save(path, FAMILY._replace(children=(Child(nickname),)))
    with pytest.raises(FileProblem, match=r"first_day"):
        save(path, FAMILY._replace(first_day=day(1, 1, 1)))
    assert not path.exists()


@pytest.mark.parametrize(
    ("today", "first"),
    [
        # Mondays by tests/references/calendar.toml: 2026-08-31 is printed there as one.
        (day(2026, 7, 1), day(2026, 8, 31)),
        (day(2026, 12, 31), day(2026, 8, 31)),
        (day(2027, 6, 30), day(2026, 8, 31)),
        (day(2026, 6, 30), day(2025, 8, 25)),
        (day(2027, 7, 1), day(2027, 8, 30)),
    ],
)
def test_a_new_family_starts_on_the_last_monday_of_august(today: day, first: day, tmp_path: Path) -> None:
    family = default(today)
    assert (family.first_day, family.began, family.weekdays) == (first, today, (0, 1, 2, 3))
    save(tmp_path / "family.toml", family)
    assert load(tmp_path / "family.toml") == family and not warnings(family)


def holidays() -> list[dict[str, str]]:
    path = Path(__file__).parents[1] / "references" / "calendar.toml"
    rows: list[dict[str, str]] = tomllib.loads(path.read_text())["federal_holidays"]["rows"]
    return rows


@pytest.mark.parametrize("row", holidays(), ids=lambda row: row["date"])
def test_yearly_days_fall_where_the_law_puts_them(row: dict[str, str]) -> None:
    # 5 U.S.C. 6103(a), by the rows of tests/references/calendar.toml: the rule in words, and its date.
    rule, date = row["rule"], day.fromisoformat(row["date"])
    family = FAMILY._replace(countdowns=(CountdownRule("a day", yearly=rule),))
    assert countdowns(family, date - dt.timedelta(45)) == (Countdown("a day", date),)
    assert countdowns(family, date - dt.timedelta(1), ahead=1) == (Countdown("a day", date),)
    assert countdowns(family, date) == countdowns(family, date - dt.timedelta(61)) == ()
    assert countdowns(
        family._replace(countdowns=(CountdownRule("a day", yearly=rule.replace(" in ", " of ")),)), date, 371
    )


def test_countdowns_lie_ahead_nearest_first() -> None:
    family = FAMILY._replace(
        countdowns=(
            CountdownRule("far", date=day(2027, 1, 20)),
            CountdownRule("over", date=day(2026, 12, 1)),
            CountdownRule("new year", yearly="january 1"),
            CountdownRule("near", date=day(2026, 12, 2)),
            CountdownRule("too far", date=day(2027, 2, 1)),
        ),
    )
    assert [c.name for c in countdowns(family, day(2026, 12, 1))] == ["near", "new year", "far"]
    assert countdowns(family, day(9999, 12, 30)) == ()


def test_a_leap_day_comes_in_leap_years_only() -> None:
    family = FAMILY._replace(countdowns=(CountdownRule("leap day", yearly="February 29"),))
    assert countdowns(family, day(2028, 2, 1))[0].day == day(2028, 2, 29)
    assert countdowns(family, day(2027, 2, 1)) == ()


def test_odd_things_are_warned_of_and_kept() -> None:
    odd = FAMILY._replace(children=(Child("Bean", held=("count-on:within-11",)),), first_day=day(2026, 8, 30))
    levels, first = warnings(odd)
    assert (
        'Bean has "count-on:within-11" held back' in levels and 'did you mean "count-on:within-10"?' in levels
    )
    assert "is a Sunday" in first
