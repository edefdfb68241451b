"""The log of actions by its smallest examples: moments, ids, what an undo leaves standing, one log of two."""

import datetime as dt
import sqlite3
import time
from collections.abc import Iterator
from typing import Any

import pytest

from tests.journal.journals import DAY, Hand, begun, mark, step
from warmup.journal import log, schema
from warmup.journal import rows as table_rows
from warmup.journal.log import Action, ActionRow
from warmup.journal.oddities import Notes, Odd
from warmup.journal.rows import About, Whole

DATE = DAY.isoformat()
KEY = ("Bean", DATE, 1)


def at(second: int) -> str:
    return f"2026-11-25T08:00:{second:02}.000000+00:00"


def row(name: str = "w-1", second: int = 1, **other: Any) -> ActionRow:
    return ActionRow(name, *KEY, at(second), "w", "swap", 1, "null", "null", "")._replace(**other)


@pytest.fixture
def db() -> Iterator[sqlite3.Connection]:
    """An empty journal."""
    connection = schema.in_memory()
    yield connection
    connection.close()


def kept(db: sqlite3.Connection) -> list[ActionRow]:
    found = db.execute(f"SELECT {log.COLUMNS} FROM actions ORDER BY at, id").fetchall()
    return [ActionRow(*values) for values in found]


# -- one row


def test_an_action_is_what_it_changed_and_nothing_by_default() -> None:
    assert Action("swap") == ("swap", None, "null", "null", "")


@pytest.mark.parametrize(
    "fine",
    [
        row(),
        row(position=None),
        row(session=0),
        row(position=100_000),
        row(what="x" * 80, window="y" * 80, id="z" * 80),
        row(before="", after="no JSON"),
    ],
)
def test_a_row_that_makes_sense_is_read_as_it_is(fine: ActionRow) -> None:
    assert log.row_of(tuple(fine)) == fine


@pytest.mark.parametrize(
    ("odd", "said"),
    [
        (row(child=None), "a child's name that is no text"),
        (row(date="2026-02-30"), "a date no calendar has"),
        (row(session=-1), "a session whose number is none"),
        (row(at="now"), "an action at a time that is none"),
        (row(id=""), "an action whose kind, window or id is no plain word"),
        (row(window=None), "an action whose kind, window or id is no plain word"),
        (row(what="a\tb"), "an action whose kind, window or id is no plain word"),
        (row(what="x" * 81), "an action whose kind, window or id is no plain word"),
        (row(before=None), "an action with something else where text should be"),
        (row(after=b"x"), "an action with something else where text should be"),
        (row(takes_back=3), "an action with something else where text should be"),
        (row(position=-1), "a position no prompt can have"),
    ],
)
def test_a_row_that_makes_no_sense_is_odd(odd: ActionRow, said: str) -> None:
    with pytest.raises(Odd, match=f"^{said}$"):
        log.row_of(tuple(odd))


def test_a_kind_word_of_forty_letters_may_be_logged_and_a_longer_one_is_named() -> None:
    log.check(Action("x" * 40))
    with pytest.raises(ValueError, match=r"^no plain word: 'x+'$"):
        log.check(Action("x" * 41))


# -- moments


@pytest.mark.parametrize(
    ("last", "now", "then"),
    [
        (at(1), at(2), at(2)),
        (at(2), at(2), "2026-11-25T08:00:02.000001+00:00"),
        (at(3), at(2), "2026-11-25T08:00:03.000001+00:00"),
        ("2026-11-25T10:00:00.000000+02:00", at(0), "2026-11-25T08:00:00.000001+00:00"),
        (None, at(2), at(2)),
        (b"\xff", at(2), at(2)),
        ("soon", at(2), at(2)),
        ("9999-12-31T23:59:59.999999+00:00", at(2), at(2)),
    ],
)
def test_a_moment_comes_after_the_last_one(last: object, now: str, then: str) -> None:
    assert log.after(last, now) == then


def test_a_moment_is_kept_in_utc_to_the_microsecond_wherever_the_machine_is(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    set_zone = getattr(time, "tzset", lambda: None)
    moment = dt.datetime(2026, 11, 25, 8, tzinfo=dt.timezone(dt.timedelta(hours=-5)))
    try:
        for zone in ("UTC0", "EAST-3", "WEST8"):
            monkeypatch.setenv("TZ", zone)
            set_zone()
            assert log.utc(moment) == "2026-11-25T13:00:00.000000+00:00"
    finally:
        monkeypatch.undo()
        set_zone()


# -- adding


def test_an_action_is_added_with_the_next_free_id_after_the_newest_moment(db: sqlite3.Connection) -> None:
    action = Action("mark", 2, '"a"', '"b"', "x-9")
    first = log.append(db, KEY, action, "w", 1, at(5))
    assert first == ActionRow("w-1", *KEY, at(5), "w", "mark", 2, '"a"', '"b"', "x-9")
    second = log.append(db, KEY, action, "w", 1, at(3))
    assert (second.id, second.at) == ("w-2", "2026-11-25T08:00:05.000001+00:00")
    third = log.append(db, ("Pip", DATE, 1), action, "v", 7, at(4))
    assert (third.id, third.at) == ("v-7", "2026-11-25T08:00:05.000002+00:00"), "in order within a journal"
    assert kept(db) == [first, second, third]


def test_a_moment_after_all_that_make_sense_moves_no_other(db: sqlite3.Connection) -> None:
    log.put(db, row("odd", at="3000-01-01T00:00:00.000000+00:00"))
    assert log.append(db, KEY, Action("mark"), "w", 1, at(3)).at == at(3)
    log.put(db, row("last", at="2999-12-31T00:00:00.000000+00:00"))
    late = log.append(db, KEY, Action("mark"), "w", 1, at(3))
    assert late.at == "2999-12-31T00:00:00.000001+00:00"


def test_a_row_whose_id_is_kept_already_changes_nothing(db: sqlite3.Connection) -> None:
    log.put(db, row())
    log.put(db, row(what="hold"))
    assert kept(db) == [row()]


def test_the_newest_action_is_that_of_the_child_and_date(db: sqlite3.Connection) -> None:
    assert log.newest(db, "Bean", DATE) == ""
    for each in (
        row("b", 2),
        row("c", 1),
        row("a", 2),
        row("other child", 9, child="Pip"),
        row("other date", 9, date="2026-11-24"),
    ):
        log.put(db, each)
    assert log.newest(db, "Bean", DATE) == "b", "the latest moment, then the greater id"


# -- what stands


def test_rows_are_read_in_order_of_time_without_odd_ones() -> None:
    rows = [row("c", 2), row("a", 2), row("b", 1), row("odd", 1, at="now")]
    assert [each.id for each in log.readable(tuple(each) for each in rows)] == ["b", "a", "c"]


def test_an_undo_takes_an_action_away_and_an_undo_taken_back_does_not() -> None:
    done = [row("a", 1), row("b", 2), row("c", 3)]
    undo = row("u", 4, what="undo", takes_back="b")
    again = row("v", 5, what="undo", takes_back="u")
    assert log.standing(iter(done)) == done
    assert log.standing(iter([*done, undo])) == [done[0], done[2]]
    assert log.standing(iter([*done, undo, again])) == done


# -- two logs made one


def test_the_check_names_odd_actions_and_whose_the_first_is(db: sqlite3.Connection) -> None:
    for each in (row(), row("odd", 2, at="now", child="Pip", session=3), row("also odd", 3, at="then")):
        log.put(db, each)
    notes = Notes()
    assert [each.what for each in log.actions(db, notes)] == ["swap"]
    assert notes.all() == (("an action at a time that is none", 2, f'"Pip", "{DATE}", 3'),)


def test_actions_that_are_lacking_are_taken_in_under_the_number_of_their_session(
    db: sqlite3.Connection,
) -> None:
    source = schema.in_memory()
    mine, other = row("here", 1), row("there", 2)
    log.put(db, mine)
    for each in (other, row("none", 3, session=0), row("elsewhere", 4, child="Pip"), row("odd", 5, at="now")):
        log.put(source, each)
    notes = Notes()
    log.merge_into(db, source, {KEY: ("Bean", DATE, 4)}, notes)
    source.close()
    assert kept(db) == [
        mine, other._replace(session=4), row("none", 3, session=0), row("elsewhere", 4, child="Pip")
    ]  # fmt: skip
    assert notes.all() == (("an action at a time that is none", 1, f'"Bean", "{DATE}", 1'),)


def test_of_two_actions_with_one_id_the_same_is_kept_in_either_order(db: sqlite3.Connection) -> None:
    early, late = row(what="hold"), row(what="swap")
    for first, second in ((early, late), (late, early)):
        db.execute("DELETE FROM actions")
        log.take_in(db, first, {})
        log.take_in(db, second, {})
        assert kept(db) == [late]


def test_of_two_actions_that_differ_in_their_session_it_is_that_which_began_later(
    db: sqlite3.Connection,
) -> None:
    for number, began in ((1, at(9)), (2, at(3))):
        whole = Whole(About(began, began, "daily", "{}", 0, 0, 0, ""), {}, {})
        table_rows.put_whole(db, ("Bean", DATE, number), whole)
        table_rows.put_whole(
            db, ("Pip", DATE, number), whole._replace(about=whole.about._replace(started=at(20)))
        )
    for first, second in ((1, 2), (2, 1)):
        db.execute("DELETE FROM actions")
        log.take_in(db, row(session=first), {})
        log.take_in(db, row(session=second), {})
        assert kept(db) == [row(session=1)], "whatever its number is"


def test_of_two_actions_alike_but_for_a_session_that_is_not_here_the_one_here_stays(
    db: sqlite3.Connection,
) -> None:
    log.put(db, row(session=2))
    log.take_in(db, row(session=1), {})
    assert kept(db) == [row(session=2)]


@pytest.mark.parametrize("year", [1, 9999])
def test_a_clock_that_jumps_to_a_year_without_sense_loses_nothing(hand: Hand, year: int) -> None:
    moments = [dt.datetime(2026, 11, 25, 8)]
    journal = begun(hand(now=lambda: moments[0]), marks=1)
    moments[0] = dt.datetime(year, 12, 31, 23)
    step(journal, "Bean", DAY, 1, 2, shown=2, at=1, mark=mark(), action=Action("mark", 1))
    assert [row.what for row in journal.actions_of("Bean", DAY)] == ["mark"]
    assert len(hand(now=lambda: moments[0]).marks_of("Bean", DAY, 1)) == 2
