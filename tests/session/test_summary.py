"""The close: what went well, what comes back and when, and what to have at hand."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

from tests.household import FAMILY, TODAY, begun, context_at, start_fixed
from warmup.config.family import year_of
from warmup.engine.memory import Knowledge
from warmup.model import Mark
from warmup.pictures.ten_frame import TenFrame
from warmup.session.session import Session, resume
from warmup.session.summary import closing, materials


def test_the_close_says_what_went_well_what_comes_back_and_nothing_that_counts(session: Session) -> None:
    session.mark(Mark.FLUENT)
    session.mark(Mark.HESITATED)
    words = closing(session, Knowledge())
    assert "make ten" in words.well and "new" in words.well
    # Hesitated on Wednesday, March 3: due two school mornings on, which is the next Monday.
    assert words.back == "count on, to fifty, across a ten: again Monday"
    assert "%" not in f"{words.well}{words.back}{words.table}{words.handy}"


def test_what_comes_back_is_said_by_its_day(home: Path, clock: Callable[[], dt.datetime]) -> None:
    """Not yet: the next school morning. After a break the weekday alone would mislead."""
    away = FAMILY._replace(off=((TODAY + dt.timedelta(1), TODAY + dt.timedelta(11)),))
    for family, said in ((FAMILY, ": again Thursday"), (away, ": again March 15")):
        context = context_at(home / said[-5:].strip(), clock, family)
        assert context.journal is not None
        start_fixed(context)
        today = resume(context, context.journal, clock)
        assert today is not None
        today.mark(Mark.NOT_YET)
        assert closing(today, Knowledge()).back.endswith(said)


def test_no_day_is_named_after_the_last_morning(home: Path, clock: Callable[[], dt.datetime]) -> None:
    last = year_of(FAMILY).mornings[-1]
    context = context_at(home, clock, FAMILY._replace(known_until=last - dt.timedelta(1)), last)
    today = begun(context, clock)
    today.mark(Mark.NOT_YET)
    back = closing(today, Knowledge()).back
    assert back and "again" not in back


def test_a_picture_stands_in_for_a_thing_that_need_not_be_fetched(session: Session) -> None:
    one, two, three, *_ = session.prompts
    assert materials(
        (
            one._replace(table="beans, cup", picture=None),
            two._replace(table="real coins, cup", picture=TenFrame(3)),
            three._replace(table="beans", picture=None),
        )
    ) == (("beans", "cup"), ("real coins",))
    assert materials([one._replace(table="")]) == ((), ())


def test_the_close_has_a_kind_word_when_nothing_came_easily(session: Session) -> None:
    session.mark(Mark.NOT_YET)
    assert "sat down together" in closing(session, Knowledge()).well
