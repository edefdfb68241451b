"""Notes of what the child said: kept, taken back, merged, salvaged, and going with their prompts."""

import datetime as dt
import sqlite3
from contextlib import closing
from pathlib import Path
from random import Random

import pytest

from tests.journal.journals import DAY, ROWS, Hand, begun, clock, mark
from tests.journal.test_actions import VERSION_1
from tests.journal.test_journal_salvage import SIZE, pages, spoil
from tests.journal.test_merged import PROMPTS, about, at, row
from warmup.journal import log, schema
from warmup.journal.journal import Change, Journal, NoteRow
from warmup.journal.merging import merged
from warmup.journal.rows import BESIDE, LONGEST_NOTE, MORNING, Whole, plain_note
from warmup.model import Mark
from warmup.text import clean

SAID = NoteRow("“Six and one more.”", adult="Jo")


def noted(journal: Journal, session: int = 1) -> dict[int, str]:
    """The texts of a session's notes."""
    whole = journal.whole_of("Bean", DAY, session)
    return {position: each.text for position, each in whole.notes.items()} if whole else {}


def put(journal: Journal, position: int, note: NoteRow = SAID, session: int = 1) -> None:
    journal.change("Bean", DAY, session, Change(notes={position: note}))


def items(journal: Journal) -> dict[int, str]:
    whole = journal.whole_of("Bean", DAY, 1)
    return {position: item for position, (item, _) in whole.prompts.items()} if whole else {}


# -- kept


def test_a_note_is_on_disk_with_its_moment_and_another_takes_its_place(hand: Hand) -> None:
    journal = begun(hand(), marks=1)
    put(journal, 0)
    put(journal, MORNING, SAID._replace(text="In a hurry.", shared=True))
    whole = hand().whole_of("Bean", DAY, 1)
    assert whole is not None
    first, morning = whole.notes[0], whole.notes[MORNING]
    assert (
        first == SAID._replace(at=first.at) and morning.shared and whole.marks[0].at < first.at < morning.at
    )
    both = Change(marks={1: mark()}, notes={1: SAID, 2: SAID})
    journal.change("Bean", DAY, 1, both)
    whole = hand().whole_of("Bean", DAY, 1)
    assert whole and whole.marks[1].at < whole.notes[1].at < whole.notes[2].at, "each has a moment of its own"
    journal.change("Bean", DAY, 1, Change(notes={1: NoteRow(""), 2: NoteRow("")}))
    put(journal, 0, NoteRow("Seven."))
    assert noted(hand()) == {0: "Seven.", 1: "", 2: "", MORNING: "In a hurry."}
    put(journal, 0, NoteRow(""))
    assert noted(hand())[0] == "", "taken back, it stays as a row without a text"
    assert journal.history("Bean") == hand().history("Bean") and len(journal.history("Bean")) == 2


@pytest.mark.parametrize(
    "text", ["a\x1b[31m\nb\tc", "\u202eabc\ufeff", "x" * 900, "x" * 399 + " yz", "e\0f" * 300]
)
def test_a_note_is_one_plain_line_of_at_most_400_characters(text: str) -> None:
    said = plain_note(text)
    assert clean(said) == said == plain_note(said) and len(said) <= LONGEST_NOTE == 400


def test_a_journal_of_version_2_gets_the_table_and_one_of_version_1_both(hand: Hand, tmp_path: Path) -> None:
    for version, more in ((1, ""), (2, ";".join(log.TABLES))):
        folder = tmp_path / str(version)
        folder.mkdir()
        with closing(sqlite3.connect(folder / "journal.db")) as db:
            db.executescript(f"{VERSION_1};{more};PRAGMA user_version = {version}")
        before = (folder / "journal.db").read_bytes()
        day = dt.date(2026, 11, 24)
        looked = hand(folder, read_only=True)
        whole = looked.whole_of("Bean", day, 1)
        assert whole is not None and not whole.notes and not looked.notice
        assert Journal.examine(folder) == [] and (folder / "journal.db").read_bytes() == before
        journal = hand(folder)
        assert not journal.notice and schema.version_written(journal.path) == 4
        journal.change("Bean", day, 1, Change(notes={1: SAID}))
        whole = hand(folder).whole_of("Bean", day, 1)
        assert whole is not None and whole.notes[1].text == SAID.text and whole.marks[0].mark is Mark.NOT_YET


def test_a_note_outlives_a_disk_that_goes_away(hand: Hand, tmp_path: Path) -> None:
    journal = begun(hand(), marks=1)
    put(journal, 0)
    journal.path.rename(tmp_path / "away")
    put(journal, 1, NoteRow("Eight."))
    assert not journal.saving and noted(journal) == {0: SAID.text, 1: "Eight."}
    (tmp_path / "away").rename(journal.path)
    put(journal, MORNING, NoteRow("Slept well."))
    assert journal.saving and noted(hand()) == {0: SAID.text, 1: "Eight.", MORNING: "Slept well."}


# -- other prompts in the place of those with notes


def test_a_note_goes_with_its_prompt_beside_the_others_and_back(hand: Hand) -> None:
    journal = begun(hand(), marks=1)
    put(journal, 2)
    put(journal, MORNING, NoteRow("Slept well."))
    other = [("coins/penny", "e"), ROWS[3]]
    journal.change("Bean", DAY, 1, Change(2, "[1]", other))
    assert noted(journal) == {BESIDE: SAID.text, MORNING: "Slept well."}
    assert items(journal)[BESIDE] == ROWS[2][0] and items(journal)[2] == "coins/penny"
    assert journal.items_of("Bean", DAY, 1)[2:] == ("coins/penny", "coins/dime")
    assert len(journal.history("Bean")) == 2, "what stands beside without a mark was not asked"
    put(journal, 2, NoteRow("A cent."))
    journal.change("Bean", DAY, 1, Change(2, "[2]", ROWS[2:]))
    assert noted(journal) == {2: SAID.text, BESIDE + 1: "A cent.", MORNING: "Slept well."}
    assert items(journal) == {**{n: item for n, (item, _) in enumerate(ROWS)}, BESIDE + 1: "coins/penny"}


def test_a_note_stays_where_its_prompt_stays(hand: Hand) -> None:
    journal = begun(hand())
    put(journal, 1)
    journal.change("Bean", DAY, 1, Change(1, "[1]", [ROWS[1], ("coins/penny", "e")]))
    assert noted(journal) == {1: SAID.text} and len(items(journal)) == 3


# -- merged


@pytest.mark.parametrize(
    ("early", "late"),
    [
        (NoteRow("b", at=at(1)), NoteRow("a", at=at(2))),
        (NoteRow("a", at=at(2)), NoteRow("b", at=at(2))),
        (NoteRow("", at=at(2)), NoteRow("a", at=at(2))),
        (NoteRow("a", at=at(1)), NoteRow("", at=at(2))),
        (NoteRow("a", at=at(2)), NoteRow("a", shared=True, at=at(2))),
        (NoteRow("a", adult="Jo", at=at(2)), NoteRow("a", adult="Kim", at=at(2))),
    ],
    ids=["moment", "text", "tie with one taken back", "taken back later", "shared", "adult"],
)
@pytest.mark.parametrize("position", [MORNING, 1])
def test_of_two_notes_in_one_place_the_later_counts_whichever_copy_it_is_in(
    position: int, early: NoteRow, late: NoteRow
) -> None:
    for newer, older in ((early, late), (late, early)):
        one, other = (
            Whole(about(9), PROMPTS, {}, {position: newer}),
            Whole(about(1), PROMPTS, {}, {position: older}),
        )
        assert merged(one, other) == merged(other, one) == one._replace(notes={position: late})


def test_a_noted_prompt_of_the_older_copy_stands_beside_and_one_with_nothing_goes() -> None:
    newer = Whole(about(9), {0: ("numerals/six", "c")}, {})
    older = Whole(about(1), PROMPTS, {1: row(1, None)}, {1: NoteRow("a", at=at(1)), 0: NoteRow("", at=at(1))})
    found = merged(newer, older)
    assert found.prompts == {**newer.prompts, BESIDE: PROMPTS[1]} and found.notes == {BESIDE: older.notes[1]}
    assert merged(older, newer) == merged(found, older) == merged(found, newer) == found


def test_of_three_laptops_the_newest_note_of_a_prompt_wins_in_every_order() -> None:
    chance = Random(36)
    for _ in range(2_000):
        copies = []
        for touched in chance.sample(range(10, 60), 3):
            notes = {
                position: NoteRow(
                    chance.choice(["", "a", "b"]), chance.random() < 0.5, "", at(chance.randrange(9))
                )
                for position in (MORNING, 0, 1)
                if chance.random() < 0.7
            }
            copies.append(Whole(about(touched), PROMPTS, {}, notes))
        one, two, three = copies
        found = merged(merged(one, two), three)
        assert found == merged(one, merged(two, three)) == merged(merged(three, one), two)
        for position in (MORNING, 0, 1):
            rows = [copy.notes[position] for copy in copies if position in copy.notes]
            assert not rows or found.notes[position].at == max(each.at for each in rows)


def test_two_laptops_both_keep_every_note(hand: Hand, tmp_path: Path) -> None:
    one = begun(hand(tmp_path / "one"), marks=1)
    two = hand(tmp_path / "two", clock(dt.datetime(2026, 11, 25, 10)))
    two.merge(one.path)
    put(one, 0)
    put(one, 1, NoteRow("Early."))
    put(two, 1, NoteRow("Late."))
    put(two, MORNING, NoteRow("Slept well."))
    for _ in range(3):
        one.merge(two.path)
        two.merge(one.path)
        for journal in (one, two):
            assert noted(journal) == {0: SAID.text, 1: "Late.", MORNING: "Slept well."}


# -- salvaged


def full(journal: Journal) -> list[dt.date]:
    """Sixty mornings with a long routine, each with three notes."""
    days = [DAY + dt.timedelta(number) for number in range(60)]
    for day in days:
        journal.start("Bean", day, "daily", "x" * 9000, ROWS, [mark(Mark.NOT_YET)] * 4)
        notes = {position: NoteRow(f"{day} {position} " + "x" * 60) for position in (MORNING, 0, 3)}
        journal.change("Bean", day, 1, Change(notes=notes))
    journal.shut()
    return days


def kept(journal: Journal, days: list[dt.date]) -> int:
    found = [journal.whole_of("Bean", day, 1) for day in days]
    return sum(len(whole.notes) for whole in found if whole)


@pytest.mark.slow
@pytest.mark.parametrize(
    ("table", "kind", "least", "most"),
    [("notes", "leaf", 120, 179), ("notes", "internal", 170, 180), ("sittings", "leaf", 180, 180)],
)
def test_what_can_be_read_of_damaged_notes_is_kept(
    hand: Hand, table: str, kind: str, least: int, most: int
) -> None:
    journal = hand()
    days = full(journal)
    numbers = pages(journal.path, table, kind)
    assert numbers
    spoil(journal.path, numbers[1:2] if (table, kind) == ("notes", "leaf") else numbers)
    new = hand()
    assert "was damaged" in new.notice and least <= kept(new, days) <= most
    assert (
        all(each.mark is Mark.NOT_YET for each in new.history("Bean")) and Journal.examine(new.folder) == []
    )


@pytest.mark.slow
def test_notes_are_read_from_the_pages_where_no_table_is_left(hand: Hand) -> None:
    journal = hand()
    days = full(journal)
    raw = journal.path.read_bytes()
    journal.path.write_bytes(b"\0" * SIZE + raw[SIZE:])
    assert kept(hand(), days) == 180
