"""The merge by its smallest examples: two copies of a session made one, and the rows they come from."""

import sqlite3
from collections.abc import Iterator
from typing import Any

import pytest

from tests.journal.journals import DAY
from warmup import renames
from warmup.journal import merging, schema
from warmup.journal import rows as table_rows
from warmup.journal.log import ActionRow
from warmup.journal.merging import merged, take_in
from warmup.journal.oddities import Notes, Odd
from warmup.journal.rows import BESIDE, About, MarkRow, Whole, next_number
from warmup.model import Mark

DATE = DAY.isoformat()
KEY = ("Bean", DATE, 1)
PROMPTS = {0: ("coins/dime", "a"), 1: ("month/this", "b")}
HIGHEST = 2**40
"""The first number of a session that was never given, as the docstring of ``TOO_HIGH`` says."""


def at(second: int) -> str:
    return f"2026-11-25T08:00:{second:02}.000000+00:00"


def about(touched: int = 0, **other: Any) -> About:
    return About(at(0), at(touched), "daily", "{}", 0, 0, 0, "")._replace(**other)


def row(second: int, mark: Mark | None = Mark.FLUENT, cue: int = 0, adult: str = "") -> MarkRow:
    return MarkRow(mark, cue, adult, False, at(second))


@pytest.fixture
def db() -> Iterator[sqlite3.Connection]:
    """An empty journal."""
    connection = schema.in_memory()
    yield connection
    connection.close()


# -- two copies of a session


def both(one: Whole, other: Whole) -> Whole:
    """The copies as one: the same whichever is taken into which."""
    found = merged(one, other)
    assert merged(other, one) == found
    return found


@pytest.mark.parametrize(
    ("other", "touched"),
    [(about(3, shape="aaa"), 2), (about(2, shape="short"), 2), (about(2, routine="~"), 2)],
    ids=["touched later", "a later shape", "a later routine"],
)
def test_the_copy_touched_later_gives_what_is_said_of_the_session(other: About, touched: int) -> None:
    assert both(Whole(about(touched), {}, {}), Whole(other, {}, {})).about == other


def test_of_copies_that_tie_the_one_of_the_later_prompts_counts() -> None:
    later = {0: ("month/this", "b")}
    assert both(Whole(about(), {0: ("coins/dime", "a")}, {}), Whole(about(), later, {})).prompts == later


def test_of_copies_that_tie_in_all_but_their_marks_each_gives_its_own() -> None:
    one, other = (
        Whole(about(), {0: ("a/a", "a")}, {0: row(1)}),
        Whole(about(), {0: ("a/a", "a")}, {0: row(2)}),
    )
    assert both(one, other).marks == {0: row(2)}


@pytest.mark.parametrize(
    ("early", "late"),
    [
        (row(1), row(2, Mark.NOT_YET)),
        (row(2, Mark.HESITATED), row(2, Mark.NOT_YET)),
        (row(2, None), row(2, Mark.FLUENT)),
        (row(2, cue=1), row(2, cue=2)),
        (row(2, adult="Jo"), row(2, adult="Kim")),
        (row(2), row(2)._replace(from_memory=True)),
    ],
    ids=["moment", "mark", "taken back", "cue", "adult", "from memory"],
)
def test_of_two_marks_on_a_prompt_the_later_counts_whichever_copy_it_is_in(
    early: MarkRow, late: MarkRow
) -> None:
    for newer, older in ((early, late), (late, early)):
        assert both(Whole(about(9), PROMPTS, {1: newer}), Whole(about(1), PROMPTS, {1: older})).marks == {
            1: late
        }


def test_a_mark_goes_with_its_prompt_to_where_that_stands_in_the_later_copy() -> None:
    newer = Whole(about(9), {0: ("month/this", "b"), 1: ("coins/dime", "a")}, {})
    older = Whole(about(1), PROMPTS, {0: row(1), 1: row(2)})
    assert both(newer, older) == newer._replace(marks={1: row(1), 0: row(2)})


def test_a_prompt_that_stands_twice_keeps_its_own_mark() -> None:
    twice = {0: ("coins/dime", "a"), 1: ("coins/dime", "b")}
    assert both(Whole(about(9), twice, {}), Whole(about(1), twice, {1: row(1)})).marks == {1: row(1)}


def test_marked_prompts_of_the_older_copy_alone_stand_beside_the_others_in_their_order() -> None:
    newer = Whole(about(9), {0: ("numerals/six", "c")}, {0: row(3)})
    older = Whole(about(1), PROMPTS, {1: row(2), 0: row(1)})
    found = both(newer, older)
    assert found.prompts == {**newer.prompts, 1000: PROMPTS[0], 1001: PROMPTS[1]} and BESIDE == 1000
    assert found.marks == {0: row(3), 1000: row(1), 1001: row(2)}
    assert both(found, older) == both(found, newer) == found, "merging again changes nothing"


def test_the_first_beside_an_empty_session_stands_at_the_same_place() -> None:
    assert both(Whole(about(9), {}, {}), Whole(about(1), PROMPTS, {1: row(2)})).prompts == {1000: PROMPTS[1]}


def test_a_prompt_of_the_older_copy_without_a_mark_goes() -> None:
    newer = Whole(about(9), {0: ("numerals/six", "c")}, {})
    assert both(newer, Whole(about(1), PROMPTS, {0: row(1, None)})) == newer, "taken back, and not marked"
    assert both(newer, Whole(about(1), PROMPTS, {1: row(1)})).prompts == {**newer.prompts, 1000: PROMPTS[1]}


def test_a_mark_taken_back_later_is_taken_back_in_the_newer_copy() -> None:
    newer, older = Whole(about(9), PROMPTS, {0: row(1)}), Whole(about(5), PROMPTS, {0: row(5, None)})
    assert both(newer, older).marks == {0: row(5, None)}


def test_marks_whose_prompts_are_lost_are_kept_and_the_later_counts() -> None:
    newer = Whole(about(9), {}, {0: row(1), 1: row(5), 3: row(3)})
    older = Whole(about(1), {}, {0: row(4), 1: row(2), 2: row(2)})
    assert both(newer, older).marks == {0: row(4), 1: row(5), 2: row(2), 3: row(3)}


def test_a_mark_without_a_prompt_is_not_put_on_another_copy_s_prompt() -> None:
    newer, older = Whole(about(9), PROMPTS, {}), Whole(about(1), {}, {0: row(4), 7: row(5)})
    assert both(newer, older).marks == {7: row(5)}


def test_the_furthest_prompt_is_that_of_both_where_their_prompts_are_the_same() -> None:
    newer, older = Whole(about(9), PROMPTS, {}), Whole(about(1, furthest=1), PROMPTS, {})
    assert both(newer, older).about == about(9, furthest=1)
    further = newer._replace(about=about(9, furthest=2))
    assert both(further, older).about == about(9, furthest=2)
    assert both(newer, older._replace(prompts={0: PROMPTS[0]})).about == about(9), "others were shown there"


# -- taken into a journal


def stored(db: sqlite3.Connection, *sessions: int, started: str = "") -> None:
    """Sessions of these numbers, each begun at a moment of its own."""
    for number in sessions:
        table_rows.put_whole(
            db, ("Bean", DATE, number), Whole(about(started=started or at(number % 60)), {}, {})
        )


def numbers(db: sqlite3.Connection) -> list[int]:
    return [number for (number,) in db.execute("SELECT sitting FROM sittings ORDER BY sitting")]


@pytest.mark.parametrize(
    ("taken", "following"),
    [
        ((), 1),
        ((1,), 2),
        ((1, 3), 4),
        ((5, 2), 6),
        ((-4, 0), 1),
        ((2, HIGHEST), 3),
        ((HIGHEST + 7,), 1),
        ((HIGHEST - 1,), HIGHEST),
    ],
)
def test_one_more_session_is_numbered_after_all_that_were_given(
    taken: tuple[int, ...], following: int
) -> None:
    """Not by how many there are: a number that went would be given again."""
    assert next_number(taken) == following


@pytest.mark.parametrize(
    ("number", "stands"),
    [(2, 2), (1, 4), (3, 4), (HIGHEST - 1, HIGHEST - 1), (HIGHEST, 4), (HIGHEST + 1, 4)],
)
def test_a_session_from_elsewhere_keeps_its_number_where_that_is_free(
    db: sqlite3.Connection, number: int, stands: int
) -> None:
    stored(db, 1, 3)
    whole = Whole(about(5, started=at(50)), PROMPTS, {0: row(2)})
    assert take_in(db, ("Bean", DATE, number), whole) == ("Bean", DATE, stands)
    assert table_rows.read_whole(db, ("Bean", DATE, stands)) == whole
    assert numbers(db) == sorted({1, 3, stands})


def test_only_sessions_of_the_same_child_and_date_stand_in_the_way(db: sqlite3.Connection) -> None:
    table_rows.put_whole(db, ("Pip", DATE, 1), Whole(about(), {}, {}))
    table_rows.put_whole(db, ("Bean", "2026-11-24", 1), Whole(about(), {}, {}))
    assert take_in(db, KEY, Whole(about(), PROMPTS, {})) == KEY
    assert len(numbers(db)) == 3


def test_a_copy_is_merged_into_the_one_that_began_at_the_same_time(db: sqlite3.Connection) -> None:
    stored(db, 1, 2)
    whole = Whole(about(9, started=at(2)), PROMPTS, {0: row(2)})
    assert take_in(db, KEY, whole) == ("Bean", DATE, 2)
    assert numbers(db) == [1, 2] and table_rows.read_whole(db, ("Bean", DATE, 2)) == whole
    older = Whole(about(3, started=at(2), shape="short"), PROMPTS, {1: row(3)})
    assert take_in(db, KEY, older) == ("Bean", DATE, 2)
    assert table_rows.read_whole(db, ("Bean", DATE, 2)) == whole._replace(marks={0: row(2), 1: row(3)})


def test_a_copy_that_is_the_same_is_not_written(db: sqlite3.Connection) -> None:
    whole = Whole(about(), PROMPTS, {0: row(2)})
    take_in(db, KEY, whole)
    before = db.total_changes
    assert take_in(db, KEY, whole) == KEY and db.total_changes == before


def test_a_merge_tells_where_each_session_stands_and_moves_its_actions_there(db: sqlite3.Connection) -> None:
    with_actions(db, "here")
    stored(db, 1, started=at(59))
    source = schema.in_memory()
    stored(source, 1, 2)
    table_rows.put_whole(source, ("Pip", DATE, 1), Whole(about(), PROMPTS, {}))
    source.execute("UPDATE sittings SET date = '2026-31-26' WHERE sitting = 2")
    with_actions(source, "there")
    result = merging.merge_into(db, source)
    source.close()
    assert result.moved == {KEY: ("Bean", DATE, 2), ("Pip", DATE, 1): ("Pip", DATE, 1)}
    assert [(each.what, each.rows) for each in result.left] == [("a date no calendar has", 1)]
    assert "2026-31-26" in result.left[0].first and "2" in result.left[0].first
    assert db.execute("SELECT id, sitting FROM actions ORDER BY id").fetchall() == [("here", 1), ("there", 2)]


def with_actions(db: sqlite3.Connection, name: str) -> None:
    """One action of the first session, with this id."""
    values = ActionRow(name, *KEY, at(4), "w", "swap", 1, "null", "null", "")
    db.execute("INSERT INTO actions VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)", values)


def test_sessions_are_gone_through_in_order_and_what_is_odd_is_told_of_them(db: sqlite3.Connection) -> None:
    for key in (("Pip", DATE, 1), ("Bean", DATE, 2), ("Bean", DATE, 1), ("Zoe", "2026-11-24", 1)):
        table_rows.put_whole(db, key, Whole(about(), {}, {}))
    db.execute("UPDATE sittings SET sitting = -1 WHERE child = 'Pip'")
    notes = Notes()
    found = list(merging.keys(db, notes))
    assert found == [("Zoe", "2026-11-24", 1), ("Bean", DATE, 1), ("Bean", DATE, 2)]
    (left,) = notes.all()
    assert left.what == "a session whose number is none" and left.first == f'"Pip", "{DATE}", -1'


def test_the_check_names_items_that_are_not_known_and_odd_actions(db: sqlite3.Connection) -> None:
    names = ("make-ten/seven-three", "make-ten/no-such", "coins/dime", "number-words/forty")
    table_rows.put_whole(db, KEY, Whole(about(), {at: (name, "a") for at, name in enumerate(names)}, {}))
    assert merging.oddities_in(db) == ()
    (left,) = merging.oddities_in(db, ["make-ten/7+3", "make-ten/seven-three", "coins/dime"])
    assert renames.dropped("number-words/forty"), "asked once and no more is no oddity"
    assert left == ('an item this version does not know, "make-ten/no-such"', 1, f'"Bean", "{DATE}", 1')
    with_actions(db, "a\nb")
    assert [each.what for each in merging.oddities_in(db)] == [
        "an action whose kind, window or id is no plain word"
    ]


# -- rows


def test_a_session_is_read_as_it_was_written_and_one_that_is_not_there_is_none(
    db: sqlite3.Connection,
) -> None:
    whole = Whole(
        About(at(1), at(2), "daily", "{1}", 3, 4, 1, at(5)),
        PROMPTS,
        {0: MarkRow(Mark.NOT_YET, 3, "Jo", True, at(6)), 1: MarkRow(None, 0, "", False, at(7))},
    )
    table_rows.put_whole(db, KEY, whole)
    assert table_rows.read_whole(db, KEY) == whole
    assert table_rows.read_whole(db, ("Bean", DATE, 2)) is None
    fewer = Whole(about(), {0: ("numerals/six", "c")}, {})
    table_rows.put_whole(db, KEY, fewer)
    assert table_rows.read_whole(db, KEY) == fewer, "nothing stays of what stood there"


def test_odd_rows_are_left_out_of_a_session_that_is_read_and_told(db: sqlite3.Connection) -> None:
    table_rows.put_whole(db, KEY, Whole(about(), PROMPTS, {0: row(1), 1: row(2)}))
    db.execute("UPDATE prompts SET item = x'00' WHERE position = 0")
    db.execute("UPDATE marks SET position = -1 WHERE position = 1")
    said: list[str] = []
    whole = table_rows.read_whole(db, KEY, said.append)
    assert whole == Whole(about(), {1: PROMPTS[1]}, {0: row(1)})
    assert said == ["a prompt whose item is no text", "a position no prompt can have"]


FINE = (at(0), at(1), "daily", "{}", 2, 3, 1, at(4))


@pytest.mark.parametrize(
    ("column", "value", "said", "instead"),
    [
        (1, "soon", "a time that is none", ""),
        (2, b"x", "something else where text should be", ""),
        (3, 5, "something else where text should be", ""),
        (4, -1, "a number that can't be", 0),
        (5, 100_001, "a number that can't be", 0),
        (6, 2, "a number that can't be", 0),
        (7, b"x", "something else where text should be", ""),
    ],
)
def test_what_makes_no_sense_of_a_session_is_told_and_plain(
    column: int, value: object, said: str, instead: Any
) -> None:
    heard: list[str] = []
    values = [*FINE[:column], value, *FINE[column + 1 :]]
    found = table_rows.about_of(values, heard.append)
    assert heard == [said] and found == About(*FINE)._replace(**{About._fields[column]: instead})


def test_a_session_without_a_beginning_is_odd() -> None:
    with pytest.raises(Odd, match=r"^a session whose beginning is no text$"):
        table_rows.about_of((None, *FINE[1:]), lambda _: None)


@pytest.mark.parametrize(
    ("values", "said"),
    [
        ((0, "wrong", 0, "", 0, at(0)), "^a mark of no kind we know$"),
        ((0, None, 0, "", 0, at(0)), "^a mark of no kind we know$"),
        ((0, [], 0, "", 0, at(0)), "^a mark of no kind we know$"),
        ((-1, "fluent", 0, "", 0, at(0)), "^a position no prompt can have$"),
    ],
)
def test_a_mark_without_a_kind_or_a_place_is_odd(values: tuple[object, ...], said: str) -> None:
    with pytest.raises(Odd, match=said):
        table_rows.mark_of(values, lambda _: None)


@pytest.mark.parametrize(
    ("column", "value", "said", "read"),
    [
        (2, 3, [], row(0, cue=3)),
        (2, 4, ["a number that can't be"], row(0)),
        (3, b"Jo", ["something else where text should be"], row(0)),
        (4, 1, [], row(0)._replace(from_memory=True)),
        (4, 2, ["a number that can't be"], row(0)),
        (5, "soon", ["a time that is none"], row(0)._replace(at="")),
    ],
)
def test_what_makes_no_sense_of_a_mark_is_told_and_plain(
    column: int, value: object, said: list[str], read: MarkRow
) -> None:
    heard: list[str] = []
    values: list[object] = [7, "fluent", 0, "", 0, at(0)]
    values[column] = value
    assert table_rows.mark_of(values, heard.append) == (7, read) and heard == said


def test_what_makes_no_sense_of_a_prompt_is_told_and_plain() -> None:
    heard: list[str] = []
    assert table_rows.prompt_of((3, "coins/dime", b"a"), heard.append) == (3, ("coins/dime", ""))
    assert heard == ["something else where text should be"]
    with pytest.raises(Odd, match=r"^a prompt whose item is no text$"):
        table_rows.prompt_of((3, None, "a"), heard.append)
