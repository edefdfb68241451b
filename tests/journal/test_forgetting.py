"""A child taken out of a journal: no byte of the name stays, and all others' rows do."""

import datetime as dt
import hashlib
import json
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from tests.journal.journals import DAY, ROWS, Hand, mark
from warmup.journal import forgetting, schema
from warmup.journal.journal import Action, Journal, JournalProblem
from warmup.session.family_changes import FamilyChange
from warmup.session.undoing import Before, before_of

NAMES = ["Quillon", "Žofinka", 'Qu"il\\lo']


def lived(journal: Journal, child: str, days: range) -> None:
    for day in days:
        date = dt.date(2026, 10, day)
        journal.start(child, date, "daily", f'{{"child":"{child}"}}' * 400, ROWS, [mark()] * 4)
        journal.log(child, date, 1, Action("rough", before="{}", after="{}"))


def dump(path: Path) -> list[str]:
    with closing(sqlite3.connect(path)) as db:
        return [line for line in db.iterdump() if not line.startswith("CREATE")]


@pytest.mark.slow
@pytest.mark.parametrize("name", NAMES)
def test_no_byte_of_the_name_stays_and_every_other_row_does(hand: Hand, tmp_path: Path, name: str) -> None:
    journal = hand()
    lived(journal, name, range(1, 12))
    lived(journal, "Bean", range(1, 12))
    lived(journal, name, range(12, 20))
    # What was written over before lies in the file's free pages.
    with closing(sqlite3.connect(journal.path)) as db, db:
        db.execute("PRAGMA secure_delete = OFF")
        db.execute("UPDATE sittings SET routine = '{}'")
    alone = hand(tmp_path / "alone")
    lived(alone, "Bean", range(1, 12))
    with closing(sqlite3.connect(alone.path)) as db, db:
        db.execute("UPDATE sittings SET routine = '{}'")
    alone.shut()
    journal.shut()
    with closing(sqlite3.connect(journal.path)) as db, db:
        for child, text in ((name, "so big"), ("Bean", f"taller than {name}")):
            row = (child, "2026-10-03", 1, -1, text, 0, "", "2026-10-03T08:00:00.000000+00:00")
            db.execute("INSERT INTO notes VALUES (?, ?, ?, ?, ?, ?, ?, ?)", row)
    with closing(sqlite3.connect(alone.path)) as db, db:
        row = ("Bean", "2026-10-03", 1, -1, "taller than …", 0, "", "2026-10-03T08:00:00.000000+00:00")
        db.execute("INSERT INTO notes VALUES (?, ?, ?, ?, ?, ?, ?, ?)", row)
    raw = journal.path.read_bytes()
    assert name.encode() in raw
    assert forgetting.forget_in(journal.path, name)
    for path in tmp_path.glob("journal*"):
        assert name.encode() not in path.read_bytes()
        assert json.dumps(name)[1:-1].encode() not in path.read_bytes()
    assert hand().mornings() == {"Bean": 11} and Journal.examine(tmp_path) == []
    kept, wanted = (
        [row for row in dump(path) if 'INTO "actions"' not in row] for path in (journal.path, alone.path)
    )
    assert sorted(kept) == sorted(wanted)
    assert not forgetting.forget_in(journal.path, name), "once is enough"


def test_what_other_children_s_actions_say_of_the_child_goes(hand: Hand) -> None:
    journal = hand()
    changes = (
        FamilyChange("Quillon", "reads", None, True),
        FamilyChange("Bean", "reads", None, True),
        FamilyChange("", "extra", [], ["2026-12-05"]),
    )
    after = '{"whom":"Quillon","Quillon":1,"items":["a","Quillon"]}'
    journal.log("Bean", DAY, 0, Action("days", before=Before(family=changes).text(), after=after))
    journal.shut()
    forgetting.forget_in(journal.path, "Quillon")
    (row,) = hand().actions_of("Bean", DAY)
    assert before_of(row).family == changes[1:]
    assert json.loads(row.after) == {"whom": "", "items": ["a", ""]}
    assert b"Quillon" not in journal.path.read_bytes()


def test_a_name_is_found_however_json_writes_it(hand: Hand) -> None:
    journal = hand()
    for escaped in (True, False):
        after = json.dumps({"whom": "Žofinka"}, ensure_ascii=escaped)
        journal.log("Bean", DAY, 0, Action("days", after=after))
    journal.shut()
    forgetting.forget_in(journal.path, "Žofinka")
    assert [row.after for row in hand().actions_of("Bean", DAY)] == ['{"whom":""}'] * 2


def test_a_name_that_is_part_of_another_is_not_that(hand: Hand) -> None:
    journal = hand()
    lived(journal, "Quill", range(1, 3))
    lived(journal, "Quillon", range(1, 3))
    journal.shut()
    forgetting.forget_in(journal.path, "Quill")
    assert (
        hand().mornings() == {"Quillon": 2} and len(hand().actions_of("Quillon", dt.date(2026, 10, 1))) == 1
    )


def test_a_journal_of_the_first_version_and_one_without_the_child(hand: Hand) -> None:
    journal = hand()
    lived(journal, "Quillon", range(1, 3))
    journal.shut()
    with closing(sqlite3.connect(journal.path)) as db:
        db.executescript("DROP TABLE actions; DROP TABLE notes; DROP TABLE practice; PRAGMA user_version = 1")
    before = journal.path.read_bytes()
    assert not forgetting.forget_in(journal.path, "Nobody") and journal.path.read_bytes() == before
    assert forgetting.forget_in(journal.path, "Quillon")
    assert b"Quillon" not in journal.path.read_bytes() and hand().mornings() == {}


def test_a_damaged_journal_is_left_as_it_is(hand: Hand) -> None:
    journal = hand()
    lived(journal, "Quillon", range(1, 9))
    journal.shut()
    cut = journal.path.read_bytes()[:-9000]
    journal.path.write_bytes(cut)
    with pytest.raises(forgetting.Unreadable, match=r"^journal\.db: the child could not be taken out"):
        forgetting.forget_in(journal.path, "Quillon")
    assert journal.path.read_bytes() == cut


def test_a_journal_another_program_holds_is_no_damaged_one(
    hand: Hand, monkeypatch: pytest.MonkeyPatch
) -> None:
    journal = hand()
    lived(journal, "Quillon", range(1, 3))
    journal.shut()
    monkeypatch.setattr(schema, "WAIT", 50)
    with closing(sqlite3.connect(journal.path, isolation_level=None)) as other:
        other.execute("BEGIN EXCLUSIVE")
        with pytest.raises(JournalProblem, match="locked") as caught:
            forgetting.forget_in(journal.path, "Quillon")
    assert not isinstance(caught.value, forgetting.Unreadable)
    assert hand().mornings() == {"Quillon": 2}


def test_a_digest_is_pbkdf2_and_knows_its_name_alone() -> None:
    """RFC 7914, section 11: PBKDF2-HMAC-SHA-256 of "passwd" and "salt", once (the first 16 bytes)."""
    vector = hashlib.pbkdf2_hmac("sha256", b"passwd", b"salt", 1, 64).hex()
    assert vector.startswith("55ac046e56e3089fec1691c22544b605")
    made = forgetting.digest("Quillon", b"s" * 16)
    again = hashlib.pbkdf2_hmac("sha256", b"Quillon", b"s" * 16, 100_000)[:16].hex()
    assert made == f"{(b's' * 16).hex()}-{again}" and "Quillon" not in made
    other = forgetting.digest("Quillon")
    assert other != made and forgetting.of_name([other, made, "no digest", "-"], "Quillon") == (other, made)
    assert forgetting.of_name([made], "quillon") == ()


def test_who_has_the_name_again_is_not_forgotten() -> None:
    with closing(schema.in_memory()) as db:
        values = ("Quillon", "2026-11-25", 1, "a", "b", "daily", "{}", 0, 0, 0, "")
        db.execute("INSERT INTO sittings VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)", values)
        digests = [forgetting.digest("Quillon")]
        assert forgetting.forgotten_in(db, digests, ["Bean"]) == {"Quillon"}
        assert forgetting.forgotten_in(db, digests, ["Quillon"]) == set()
        assert forgetting.forgotten_in(db, [], []) == set()
