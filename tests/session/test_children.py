"""Adding, renaming, resting and taking out a child: what is refused, what is undone, what is copied first."""

import datetime as dt
import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest

from tests.household import FAMILY, TODAY, begun, context_at
from warmup.config.editor import FamilyEditor
from warmup.config.family import MOST_CHILDREN, Child, load
from warmup.config.toml_file import FileProblem
from warmup.journal.journal import Journal, JournalProblem
from warmup.model import Mark
from warmup.session import undoing
from warmup.session.children import (
    ChildForm,
    about,
    child_of,
    is_the_last_up,
    keep_copies,
    other_count,
    outcome,
)
from warmup.session.context import Context
from warmup.session.family_changes import changes_between, read_changes, taken_back
from warmup.session.first_form import Unclear, nickname_of
from warmup.session.undoing import CannotUndo, undo_day

Clock = Callable[[], dt.datetime]
TWO = FAMILY._replace(children=(Child("Fern", reads=False), Child("Sprout", journal_name="Moss")))


@pytest.fixture
def context(home: Path, clock: Clock) -> Context:
    return context_at(home, clock, TWO)


def journal_of(context: Context) -> Journal:
    assert context.journal is not None
    return context.journal


def kept(context: Context, what: str, work: Callable[[FamilyEditor], None]) -> None:
    undoing.logged(context, journal_of(context), what, lambda: work(context.editor), {})


@pytest.mark.parametrize("typed", ["", "  ", "\x1b\x07"])
def test_a_nickname_must_be_seen(typed: str) -> None:
    with pytest.raises(Unclear, match="A nickname, please"):
        nickname_of(typed, ())


def test_a_nickname_that_is_taken_is_refused_whatever_its_case() -> None:
    with pytest.raises(Unclear, match=r"There is another fern; a nickname of its own, please."):
        nickname_of(" fern ", TWO.children)
    assert nickname_of("[b]Wren[/b]\n", TWO.children) == "[b]Wren[/b]", "no markup is read into it"


def test_a_child_in_the_family_s_weeks_or_in_its_own() -> None:
    assert child_of(ChildForm("Wren"), TWO, TODAY) == Child("Wren", began=TODAY)
    own = child_of(ChildForm("Wren", "3/8/2027", "week 4"), TWO, TODAY)
    assert (own.first_day, own.first_week, own.began) == (dt.date(2027, 3, 8), 4, TODAY)
    assert child_of(ChildForm("Wren", "", "4"), TWO, TODAY).first_day == TODAY
    assert child_of(ChildForm("Wren", "2027-03-08"), TWO, TODAY).first_week == 1
    for form in (ChildForm("Wren", "soon"), ChildForm("Wren", "", "37"), ChildForm("Wren", "", "x")):
        with pytest.raises(Unclear):
            child_of(form, TWO, TODAY)


def test_a_new_child_never_gets_the_marks_of_another() -> None:
    """Moss is called Sprout now; its marks are kept as Moss."""
    assert child_of(ChildForm("Moss"), TWO, TODAY).journal_name == "Moss 2"


def test_a_family_has_room_for_so_many() -> None:
    many = TWO._replace(children=tuple(Child(f"Fern {n}") for n in range(MOST_CHILDREN)))
    with pytest.raises(Unclear, match="at most 30"):
        child_of(ChildForm("Wren"), many, TODAY)


def test_the_form_says_what_comes_of_it(context: Context, clock: Clock) -> None:
    journal = journal_of(context)
    said = outcome(ChildForm("Wren"), TWO, TODAY, journal)
    assert said == "The same weeks as the family: week 27."
    said = outcome(ChildForm("Wren", "2027-03-08", "4"), TWO, TODAY, journal)
    assert said == "Weeks of its own: week 4 from Monday, March 8 on."
    begun(context, clock)
    alone = TWO._replace(children=TWO.children[1:])
    assert "The journal has 1 morning of Fern: they count again." in outcome(
        ChildForm("Fern"), alone, TODAY, journal
    )


def test_what_the_list_says() -> None:
    child = Child("Wren", first_day=TODAY, first_week=4, prompts=6, resting=True)
    assert about(child, TWO, TODAY) == "rests · its own week 4 · 6 prompts"
    assert about(TWO.children[0], TWO, TODAY) == "week 27"


def test_the_number_of_prompts_goes_from_the_family_s_to_ten_and_back() -> None:
    counts, child = list[int | None](), Child("Wren")
    for by in (-1, *[1] * 8, *[-1] * 7):
        child = Child("Wren", prompts=other_count(child, by))
        counts.append(child.prompts)
    assert counts == [None, 4, 5, 6, 7, 8, 9, 10, 10, 9, 8, 7, 6, 5, 4, None]


def test_one_child_has_mornings() -> None:
    one, two = TWO.children
    assert not is_the_last_up(one, TWO)
    asleep = TWO._replace(children=(one, Child("Sprout", journal_name="Moss", resting=True)))
    assert is_the_last_up(one, asleep) and not is_the_last_up(two, asleep)


# -- in the file, and undone


def test_each_change_is_in_the_file_and_is_undone(context: Context, home: Path) -> None:
    fern = context.family.children[0]
    changes: list[tuple[str, Callable[[FamilyEditor], None], Callable[[], object], object]] = [
        (undoing.ADDED, lambda e: e.add(Child("Wren")), lambda: len(load(home / "family.toml").children), 3),
        (undoing.RENAMED, lambda e: e.rename(fern, "Ivy"), lambda: _first(home).nickname, "Ivy"),
        (undoing.RESTS, lambda e: e.rest(_first(home), resting=True), lambda: _first(home).resting, True),
        (undoing.PROMPTS, lambda e: e.prompts(_first(home), 6), lambda: _first(home).prompts, 6),
    ]
    before = load(home / "family.toml")
    for what, work, look, now in changes:
        was = look()
        kept(context, what, work)
        assert look() == now != was
    assert _first(home).journal_name == "Fern", "the marks stay with the child"
    words = [undone.words for _ in changes if (undone := undo_day(context, journal_of(context)))]
    assert words == ["how many prompts", "whether they rest", "the nickname", "the child added"]
    assert load(home / "family.toml") == before


def _first(home: Path) -> Child:
    return load(home / "family.toml").children[0]


def test_a_nickname_that_was_given_to_another_meanwhile_is_not_taken_back(context: Context) -> None:
    fern, sprout = context.family.children
    kept(context, undoing.RENAMED, lambda editor: editor.rename(fern, "Ivy"))
    context.editor.rename(sprout, "Fern")
    with pytest.raises(CannotUndo):
        undo_day(context, journal_of(context))
    assert [child.nickname for child in context.family.children] == ["Ivy", "Fern"]


def test_the_log_is_believed_value_by_value() -> None:
    changes = changes_between(TWO, TWO._replace(children=(*TWO.children, Child("Wren"))))
    assert read_changes([[*change] for change in changes]) == changes
    assert taken_back(TWO._replace(children=(Child("Wren"), *TWO.children)), changes) == TWO
    for value in (7, "a\x1bb", ""):
        with pytest.raises(TypeError):
            read_changes([["Fern", "nickname", value, "Ivy"]])
    with pytest.raises(ValueError):
        taken_back(TWO._replace(children=(Child("Wren"),)), changes)


def test_all_children_share_one_family(context: Context) -> None:
    other = context.of(context.family.children[1])
    context.editor.rename(context.child, "Ivy")
    assert other.family is context.family and other.child.nickname == "Sprout"
    other.editor.prompts(other.child, 5)
    assert context.family.children[1].prompts == 5 and other.child.prompts == 5


# -- before one is taken out


def test_a_copy_is_whole_before_a_child_is_taken_out(context: Context, home: Path, clock: Clock) -> None:
    begun(context, clock).mark(Mark.HESITATED)
    text = (home / "family.toml").read_bytes()
    copies = keep_copies(context, journal_of(context), context.child, dt.datetime(2027, 3, 3, 8, 5, 1))
    assert copies.journal.name == "journal-20270303-080501.db" and copies.mornings == 1
    assert "1 morning of this child" in copies.words() and str(home) in copies.words()
    assert copies.family.read_bytes() == text
    assert copies.journal.stat().st_mode & 0o077 == copies.family.stat().st_mode & 0o077 == 0
    context.editor.take_out(context.child)
    assert [child.nickname for child in load(home / "family.toml").children] == ["Sprout"]
    with closing(sqlite3.connect(copies.journal)) as copy:
        assert copy.execute("SELECT mark FROM marks WHERE child = 'Fern'").fetchall() == [("hesitated",)]
    assert journal_of(context).history("Fern")[0].mark is Mark.HESITATED, "its marks stay in the journal"


def test_a_copy_that_can_t_be_made_is_said_and_nothing_is_left(
    context: Context, home: Path, clock: Clock, monkeypatch: pytest.MonkeyPatch
) -> None:
    now, journal = dt.datetime(2027, 3, 3, 8, 5, 1), journal_of(context)
    taken = home / "journal-20270303-080501.db"
    taken.write_text("mine")
    with pytest.raises(JournalProblem, match=r"no copy could be made .* Nothing was changed"):
        keep_copies(context, journal, context.child, now)
    assert taken.read_text() == "mine", "a file that is there is never written over"
    taken.unlink()
    monkeypatch.setattr("warmup.journal.copies.counts", lambda _journal: [object()])
    with pytest.raises(JournalProblem, match="other rows than the journal"):
        keep_copies(context, journal, context.child, now)
    assert not taken.exists()
    monkeypatch.undo()
    (home / "family.toml").unlink()
    with pytest.raises(FileProblem):
        keep_copies(context, journal, context.child, now)
    assert not taken.exists()


def test_the_last_child_stays(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    with pytest.raises(ValueError):
        context.editor.take_out(context.child)
