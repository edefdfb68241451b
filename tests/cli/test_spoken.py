"""A morning in lines: every question, every mark, and whatever else may be typed."""

import contextlib
import datetime as dt
import io
import sys
import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.cli.typed_morning import Run, fixed, marks, on_disk
from tests.household import OPENING, TODAY, StandingClock, context_at
from warmup.cli import lines, spoken, spoken_lines, spoken_note
from warmup.cli.letters import chosen, of_action
from warmup.cli.main import UNUSABLE, main
from warmup.config.family import load
from warmup.journal.rows import MORNING
from warmup.model import Mark
from warmup.session.session import Session
from warmup.session.words import ELSEWHERE, MEANINGS
from warmup.text import clean
from warmup.tui.doing import STOPPED

# -- a morning


def test_a_whole_morning(home: Path, clock: StandingClock, typed: Run) -> None:
    context = fixed(home, clock, OPENING)
    said = typed(context, clock, "", "e", "w", "", "s", "n", "-", "t", "")
    text = "\n".join(said)
    assert f"Opening, said and not asked: {OPENING.say}" in said
    assert (
        text.index("Wants: ten frame")
        < text.index("Say: The ten frame has seven in it.")
        < text.index("Answer: three")
    )
    assert text.count("Cue 1:") == 1 and "Cue 2:" not in text
    assert [line for line in said if line.startswith("Prompt ")] == [f"Prompt {n} of 5." for n in range(1, 6)]
    assert "That was today’s warm-up." in said and "Marked came easily: one." in said
    assert any(line.startswith("“The ten frame has seven in it. ") for line in said)
    assert len({line for line in said if line.endswith((" Hesitated, soon.", " Not yet, soon."))}) == 2
    assert marks(context, clock) == [Mark.FLUENT, Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET, Mark.SKIPPED]
    assert on_disk(context, clock).closed and on_disk(context, clock).marks[0].cue == 1


def test_a_mark_is_on_disk_before_the_next_line_is_printed(
    home: Path, clock: StandingClock, monkeypatch: pytest.MonkeyPatch
) -> None:
    context = fixed(home, clock)
    seen: list[list[Mark | None]] = []
    answers = iter("wsn")

    def ask(_question: str) -> str:
        seen.append(marks(context, clock)[:3])
        return next(answers, "q")

    monkeypatch.setattr("warmup.cli.spoken_first.ask", ask)
    assert context.journal is not None
    spoken.run(context, context.journal, clock)
    done = [Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET]
    assert seen == [done[:n] + [None] * (3 - n) for n in range(4)]


def test_back_undo_and_leaving_go_on_from_the_same_prompt(
    home: Path, clock: StandingClock, typed: Run
) -> None:
    context = fixed(home, clock)
    said = typed(context, clock, "w", "a", "u", "s", "", "q", "w")
    assert "Prompt 1 of 5, came easily." in said and "Undone: came easily." in said
    assert marks(context, clock) == [Mark.HESITATED, *[None] * 4]
    again = typed(context_at(home, clock), clock)
    assert "Prompt 3 of 5." in again and "Prompt 1 of 5." not in again


def test_another_one_for_each_of_four_reasons(home: Path, clock: StandingClock, typed: Run) -> None:
    context = fixed(home, clock)
    before = on_disk(context, clock).items
    typed(context, clock, "k", "", "q")
    first = on_disk(context, clock).items
    assert first[0] != before[0] and first[1:] == before[1:]
    typed(context, clock, "k", "", "q")
    assert on_disk(context, clock).items[0] not in (before[0], first[0]), "what was declined came again"
    typed(context, clock, "u", "u", "k", "j", "q")
    assert on_disk(context, clock).items[0] != before[0]
    said = typed(context, clock, "u", "k", "y", "q")
    assert any(line.startswith("Held back: make ten") for line in said) and context.child.held == (
        "make-ten:all",
    )
    said = typed(context, clock, "u", "k", "they know it already", "q")
    assert not context.child.held and any(": make ten, " in line for line in said[-6:])
    items = on_disk(context, clock).items
    reasons = "Enter just another; j we don’t have it; y it isn’t taught yet; i they know it already; a back"
    assert reasons in said
    typed(context, clock, "k", "a", "q")
    assert on_disk(context, clock).items == items


def test_wind_down_short_or_stopped_or_rough(home: Path, clock: StandingClock, typed: Run) -> None:
    context = fixed(home, clock)
    said = typed(context, clock, "m", "h", "m", "", "m", "m", "q")
    assert "Rough day: marks lower nothing." in said and "A short morning: four in all." in said
    assert on_disk(context, clock).rough and len(on_disk(context, clock).prompts) == 4
    said = typed(context, clock, "m", "i", "q")
    assert STOPPED in said and len(on_disk(context, clock).prompts) == 2


def test_two_not_yet_running_offer_the_stop(home: Path, clock: StandingClock, typed: Run) -> None:
    said = typed(fixed(home, clock), clock, "n", "n", "m", "i", "q")
    assert any("m winds down" in line for line in said) and STOPPED in said


def test_a_covered_answer_is_shown_on_request(home: Path, clock: StandingClock, typed: Run) -> None:
    context = fixed(home, clock, answers_shown=False)
    said = typed(context, clock, "p", "q")
    assert "Answer: covered. o shows it." in said and any(line.startswith("Picture: ") for line in said)
    assert not any(line.startswith(("Answer: three", "Working: ")) for line in said)
    said = typed(context, clock, "o", "p", "q")
    assert "Answer: three" in said and any(line.startswith("Working: ") for line in said)
    assert load(home / "family.toml").answers_shown


def test_after_the_third_cue_show_it(home: Path, clock: StandingClock, typed: Run) -> None:
    said = typed(fixed(home, clock), clock, "e", "e", "e", "e", "q")
    assert [line[:6] for line in said if line.startswith("Cue ")] == ["Cue 1:", "Cue 2:", "Cue 3:"]
    assert sum("mark it not yet" in line for line in said) == 2


def test_a_note_is_written_read_back_and_taken_away(home: Path, clock: StandingClock, typed: Run) -> None:
    context = fixed(home, clock, OPENING)
    said = typed(context, clock, "7", "Slept \x1b[1mwell.", "", "5", "", "a note", "Six [b]eggs", "5", "")
    assert said.count("Noted.") == 2 and "On the morning as a whole." in said
    assert said.count("On this prompt.") == 2 and "On this prompt: Six [b]eggs" in said
    session = on_disk(context, clock)
    note, whole = session.note_at(0), session.note_at(MORNING)
    assert note and note.text == "Six [b]eggs" and whole and whole.text == "Slept [1mwell."
    said = typed(context, clock, "7", "-", "7", "-", "u")
    assert said.count("The note is taken away.") == 1 and "Undone: the note." in said
    after = on_disk(context, clock).note_at(0)
    assert after and after[:3] == note[:3]


@pytest.mark.parametrize("swaps", [False, True])
def test_a_note_is_not_lost_to_another_window(
    home: Path, clock: StandingClock, typed: Run, monkeypatch: pytest.MonkeyPatch, swaps: bool
) -> None:
    context = fixed(home, clock)

    def meanwhile(question: str) -> str:
        other = on_disk(context, clock)
        if swaps:
            assert other.swap()
        else:
            other.mark(Mark.FLUENT)
        return lines.ask(question)

    monkeypatch.setattr(spoken_note, "ask", meanwhile)
    said = typed(context, clock, "7", "Six.")
    note = on_disk(context, clock).note_at(0)
    if swaps:
        assert note is None and "Not kept: Six." in said and ELSEWHERE in said
    else:
        assert note and note.text == "Six." and marks(context, clock)[0] is Mark.FLUENT


def test_help_says_every_letter_and_what_the_marks_mean(home: Path, clock: StandingClock, typed: Run) -> None:
    said = typed(fixed(home, clock), clock, "?", "q")
    assert "n or x, or “not yet”: You had to show it. Marks it and goes on." in said
    assert all(f"{mark}: {meaning}." in said for mark, meaning in MEANINGS)


def test_a_word_does_as_well_as_a_letter(home: Path, clock: StandingClock, typed: Run) -> None:
    context = fixed(home, clock)
    typed(context, clock, "Came easily", "hes", "NOT YET", "leave", "quit")
    assert marks(context, clock)[:4] == [Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET, Mark.SKIPPED]


def test_what_may_be_asked_is_turned_by_its_number(home: Path, clock: StandingClock, typed: Run) -> None:
    context = fixed(home, clock)
    said = typed(context, clock, "l", "2", "99", "x", "", "q")
    row = next(line for line in said if line.startswith("2. week"))
    (held,) = context.child.held
    assert any(line.startswith("Held back: ") and line[11:-1] in row for line in said)
    assert sum("is no number from 1 to" in line for line in said) == 2
    typed(context, clock, "u", "q")
    assert held and not context.child.held


# -- trouble


def test_what_another_window_changed_is_said_and_shown(
    home: Path, clock: StandingClock, typed: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    context = fixed(home, clock)
    other, done = on_disk(context, clock), list[bool]()
    real = spoken.SpokenMorning._at

    def at(self: spoken.SpokenMorning, session: Session) -> None:
        if not done:
            done.append(other.swap())
        real(self, session)

    monkeypatch.setattr(spoken.SpokenMorning, "_at", at)
    said = typed(context, clock, "w", "q")
    assert ELSEWHERE in said and f"Say: {other.prompts[0].say}" in said and marks(context, clock)[0] is None


def test_what_is_not_saved_is_said_at_each_prompt(
    home: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], clock: StandingClock
) -> None:
    context = context_at(home, clock)
    assert context.journal is not None
    context.journal.shut()
    (home / "journal.db").unlink()
    (home / "journal.db").mkdir()
    monkeypatch.setattr(sys, "stdin", io.StringIO("\nw\nw\n"))
    assert main(["--plain"], clock) == UNUSABLE
    told = capsys.readouterr()
    assert told.out.count("Not being saved") >= 3 and "is not kept" in told.err


EVERY = [*spoken_lines.AT_A_PROMPT, *spoken_lines.AT_THE_OPENING, of_action("easy"), of_action("accept")]
MARKED = {"w": Mark.FLUENT, "s": Mark.HESITATED, "n": Mark.NOT_YET, "-": Mark.SKIPPED}
ODD = st.one_of(
    st.text(max_size=30),
    st.text("\x00\x07\x08\x0b\x1b[0;31m\u202e\ud800\u2028é", max_size=8),
    st.integers(1, 5).map(lambda n: "x" * 1000 * n),
).filter(lambda line: not chosen(clean(line.split("\n")[0]), EVERY) and clean(line.split("\n")[0]))


@pytest.mark.slow
@settings(max_examples=25)
@given(st.lists(st.one_of(ODD, st.sampled_from(["w", "s", "n", "-", "", "a"])), max_size=20))
def test_whatever_is_typed_gets_a_sentence_and_the_marks_are_those_of_the_letters(typed: list[str]) -> None:
    lines = [line.split("\n")[0] for line in typed]
    at, closed, odd = 0, False, 0
    marked: list[Mark | None] = [None] * 5
    for line in lines:
        if closed:
            break
        if line == "":
            at, closed = min(at + 1, 5), at == 5
        elif line == "a":
            at = max(0, at - 1)
        elif line in MARKED and at < 5:
            marked[at], at = MARKED[line], at + 1
        else:
            odd += 1
    clock, out = StandingClock(dt.datetime.combine(TODAY, dt.time(8))), io.StringIO()
    with tempfile.TemporaryDirectory() as folder, pytest.MonkeyPatch.context() as patch:
        context = fixed(Path(folder), clock)
        assert context.journal is not None
        patch.setattr(sys, "stdin", io.StringIO("".join(f"{line}\n" for line in lines), newline="\n"))
        with contextlib.redirect_stdout(out):
            spoken.run(context, context.journal, clock)
        context.journal.shut()
        found = on_disk(context, clock)
        assert [found.mark_at(n) for n in range(5)] == marked
        assert (found.position, found.closed) == (at, closed)
        found.journal.shut()
    said = out.getvalue()
    assert said.count(" is none of these: ") == odd
    assert all(clean(line) == line and len(line) < 500 for line in said.split("\n"))


# -- a week


def test_a_week_is_said_and_its_ticks_are_turned_by_number(
    home: Path, clock: StandingClock, typed: Run
) -> None:
    context = fixed(home, clock)
    said = typed(context, clock, "this week", "d", "1", "1", "0", "x", "", "u", "q")
    weeks = [line for line in said if line.startswith("Week ")]
    assert weeks == [
        "Week 27 of 36, quarter 3, review, this week: Bean.",
        "Week 28 of 36, quarter 4: Bean.",
    ]
    first = next(line for line in said[said.index(weeks[1]) :] if line.startswith("  New 1: "))
    name = first.removeprefix("  New 1: ")
    assert f"Taught: {name}. It may come from now on." in said
    assert f"Not taught yet, so held back: {name}." in said
    assert "‘0’" not in said and sum(" is no number from 1 to " in line for line in said) == 2
    assert "Undone: not taught yet." in said
    (child,) = load(home / "family.toml").children
    assert len(child.opened) == 1 and child.held == ()


def test_a_week_before_the_first_and_one_with_nothing_new(
    home: Path, clock: StandingClock, typed: Run
) -> None:
    context = fixed(home, clock, began=TODAY)
    said = typed(context, clock, "this week", "1", *["a"] * 28, "", "q")
    assert "Nothing is new this week." in said
    assert [line for line in said if line.startswith("Week ")][-2:] == [
        "Week 1 of 36, quarter 1: Bean.",
        "Week 1 of 36, quarter 1: Bean.",
    ]
