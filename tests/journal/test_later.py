"""A session that starts while the first frame is painted is on the disk right after, and before any mark."""

import pytest

from tests.journal.journals import DAY, ROWS, Hand, mark, open_session, step
from warmup.journal.journal import Changed, Journal
from warmup.model import Mark


def held(hand: Hand) -> Journal:
    journal = hand()
    journal.hold()
    journal.start("Bean", DAY, "daily", "{}", ROWS)
    return journal


def test_until_it_is_settled_this_window_alone_reads_it(hand: Hand) -> None:
    journal = held(hand)
    assert open_session(journal, "Bean", DAY) is not None
    assert open_session(hand(read_only=True), "Bean", DAY) is None, "it would have waited for the disk"
    journal.settle()
    assert open_session(hand(read_only=True), "Bean", DAY) == open_session(journal, "Bean", DAY)


def test_a_mark_is_on_the_disk_at_once_and_so_is_what_waited_for_it(hand: Hand) -> None:
    journal = held(hand)
    step(journal, "Bean", DAY, 1, 1, shown=1, at=0, mark=mark(Mark.HESITATED))
    other = hand(read_only=True)
    assert other.marks_of("Bean", DAY, 1)[0].mark is Mark.HESITATED


def test_what_waits_is_there_after_the_end(hand: Hand) -> None:
    assert held(hand).shut()
    assert open_session(hand(), "Bean", DAY) is not None


def test_a_disk_gone_before_it_was_settled_loses_nothing(hand: Hand) -> None:
    journal = held(hand)
    aside = journal.path.rename(journal.path.with_suffix(".gone"))
    journal.settle()
    assert not journal.saving and open_session(journal, "Bean", DAY) is not None
    aside.rename(journal.path)
    step(journal, "Bean", DAY, 1, 1, shown=1, at=0, mark=mark(Mark.FLUENT))
    assert journal.saving
    assert hand(read_only=True).marks_of("Bean", DAY, 1)[0].mark is Mark.FLUENT


def test_another_window_that_begins_meanwhile_finds_the_session_once_it_is_there(hand: Hand) -> None:
    first, second = hand(), hand()
    first.hold()
    first.start("Bean", DAY, "daily", "{}", ROWS, known=0)
    first.settle()
    with pytest.raises(Changed):
        second.start("Bean", DAY, "daily", "{}", ROWS, known=0)
