"""The close: what went well, what comes back, and what to have at hand."""

from warmup.engine.memory import Knowledge
from warmup.model import Mark
from warmup.pictures.ten_frame import TenFrame
from warmup.session.session import Session
from warmup.session.summary import closing, materials


def test_the_close_says_what_went_well_what_comes_back_and_nothing_that_counts(session: Session) -> None:
    session.mark(Mark.FLUENT)
    session.mark(Mark.HESITATED)
    words = closing(session, Knowledge())
    assert "new" in words.well and words.well_at == 0
    assert [(row.mark, row.say, row.note) for row in words.rows] == [
        (Mark.FLUENT, session.prompts[0].say, ""),
        (Mark.HESITATED, session.prompts[1].say, "soon"),
        (None, session.prompts[2].say, ""),
    ]
    assert "%" not in f"{words.well}{words.rows}{words.table}{words.handy}"


def test_what_comes_back_comes_soon_and_no_day_is_promised(session: Session) -> None:
    """Whatever its mark, and on the last morning of the year as on any other."""
    session.mark(Mark.NOT_YET)
    session.mark(Mark.HESITATED)
    assert [row.note for row in closing(session, Knowledge()).rows] == ["soon", "soon", ""]


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
