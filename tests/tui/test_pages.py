"""What stands on the script of every prompt there is, at every size: nothing needed goes or is cut."""

import datetime as dt
import re
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from tests.household import FAMILY, TODAY
from warmup import skills
from warmup.config.family import year_of
from warmup.config.places import Places
from warmup.config.plan import load_plan
from warmup.model import Mark, Prompt
from warmup.randomness import SeededRandom
from warmup.session.summary import MANY_WOBBLED, Closing, Row
from warmup.session.words import SMALL_THINGS
from warmup.tui.actions import Hand
from warmup.tui.close import Part, close_page
from warmup.tui.pages import HOW_TO_WAIT, prompt_page
from warmup.tui.parts import Seen, View, year_head
from warmup.tui.script import Script, Span, Tone, cells_of

MORNING = year_of(FAMILY).morning(TODAY)
ROOMS = {"40x12": (38, 12), "60x20": (58, 9), "80x24": (38, 22), "120x36": (52, 34), "160x45": (68, 43)}
"""The cells and rows that the script has at the terminal's sizes; at 60x20 above the largest stage."""


def prompts() -> list[Prompt]:
    """One prompt of every item of the year plan that makes sense on the morning."""
    found = []
    for item in skills.items(load_plan(Places(Path("/none"), Path("/none")))):
        try:
            found.append(skills.prompt(item.id, MORNING, SeededRandom("pages", item.id), "new this week"))
        except ValueError:
            continue
    return found


def at(prompt: Prompt, cue: int, position: int = 0, before: tuple[Prompt, ...] = ()) -> Any:
    """A session as far as a page looks at it."""
    return SimpleNamespace(
        prompt=prompt,
        prompts=(*before, *[prompt] * 6),
        position=position,
        cue=cue,
        morning=MORNING,
        rough=False,
        at_opening=False,
        offers_stop=False,
        mark_at=lambda place: Mark.FLUENT if place < position else None,
    )


def spans(session: Any, view: View, *, early: bool = False) -> list[tuple[Span, ...]]:
    return prompt_page(session, view, early=early).fitted(view.height)


def words(lines: list[tuple[Span, ...]]) -> str:
    return " ".join(" ".join("".join(span.text for span in line) for line in lines).split())


@pytest.mark.slow
@pytest.mark.parametrize("room", ROOMS.values(), ids=ROOMS)
def test_what_an_adult_needs_is_there_whole(room: tuple[int, int]) -> None:
    """Every word to say and do, of the answer and the newest cue; what comes after the last; the marks."""
    every = prompts()
    assert len(every) > 300
    for prompt in every[:: 1 if room[1] <= 12 else 4]:
        for cue in range(4):
            lines = spans(at(prompt, cue), View(*room))
            assert len(lines) == room[1] and all(cells_of(line) <= room[0] for line in lines), prompt.item
            shown = set(words(lines).split())
            needed = f"{prompt.do} {prompt.say} {prompt.answer} {prompt.cues[cue - 1].text if cue else ''}"
            assert {*needed.split()} <= shown, (prompt.item, cue, {*needed.split()} - shown)
            assert "not yet" in words(lines)
            # The whole count is an answer of seven rows at the smallest size: that line alone goes there.
            full = room == ROOMS["40x12"] and prompt.item == "count/one-to-100"
            assert "After this: show it" in words(lines) or cue < 3 or full, prompt.item
            assert "Cue 2:" in words(lines) or cue < 3 or "Cue 1:" not in words(lines), "cue 2 goes first"


def test_amber_is_on_the_answer_alone_and_nowhere_while_it_is_covered() -> None:
    prompt = prompts()[0]
    for room in ROOMS.values():
        amber = [
            span for line in spans(at(prompt, 0), View(*room)) for span in line if span.tone is Tone.ANSWER
        ]
        assert " ".join(span.text for span in amber) == prompt.answer
        covered = [span for line in spans(at(prompt, 0), View(*room, covered=True)) for span in line]
        assert not any(span.tone is Tone.ANSWER for span in covered)
        assert "covered" in "".join(span.text for span in covered)


def test_in_the_first_weeks_one_line_says_how_and_none_after_a_cue() -> None:
    prompt, room = prompts()[0], View(*ROOMS["80x24"])
    how = HOW_TO_WAIT.replace("‹cue›", "Space")
    assert how in words(spans(at(prompt, 0), room, early=True))
    assert how not in words(spans(at(prompt, 1), room, early=True))
    assert how not in words(spans(at(prompt, 0), room))


def test_the_choking_warning_is_bold_and_stands_once_a_morning() -> None:
    quiet, small = (prompts()[0]._replace(table=table) for table in ("ten frame", "beans, cup"))
    room = View(*ROOMS["120x36"])
    assert SMALL_THINGS not in words(spans(at(quiet, 0), room))
    first = spans(at(small, 0), room)
    assert SMALL_THINGS in words(first)
    bold = [span.text for line in first for span in line if span.tone is Tone.STRONG]
    assert " ".join(bold) == SMALL_THINGS
    assert SMALL_THINGS in words(spans(at(small, 0, 1, before=(quiet,)), room))
    assert SMALL_THINGS not in words(spans(at(small, 0, 1, before=(small,)), room))


@pytest.mark.parametrize("hand", Hand)
def test_one_hand_s_keys_are_named_and_that_hand(hand: Hand) -> None:
    for room in ROOMS.values():
        shown = words(spans(at(prompts()[0], 0), View(*room, hand=hand)))
        assert (f"{'↑' if hand is Hand.RIGHT else 'w'} " in shown) and (" x not yet" in shown) is (
            hand is Hand.LEFT
        )
        assert hand.other.value not in shown
        assert hand.value in shown or room[1] < 20


def test_where_the_picture_is_is_said_when_it_is_not_beside_the_words() -> None:
    prompt = next(each for each in prompts() if each.picture)
    room = ROOMS["40x12"]
    assert "p shows it alone" in words(spans(at(prompt, 0), View(*room, seen=Seen.ALONE)))
    assert "Lay out:" in words(spans(at(prompt, 0), View(*room, seen=Seen.NOWHERE)))
    assert "alone" not in words(spans(at(prompt, 0), View(*room)))


def closing(rows: int) -> Closing:
    """A close after so many prompts, one in three of which came easily."""
    marks = (Mark.FLUENT, Mark.HESITATED, None)
    shown = tuple(
        Row(n, marks[n % 3], f"How many are there in row {n + 1}?", "soon" * (n % 3 == 1))
        for n in range(rows)
    )
    told = "It came easily.", 0, "Monday", "beans, cup", "day strip"
    return Closing(shown, *told, pause=MANY_WOBBLED, review="Review week.")


@pytest.mark.parametrize("room", [*ROOMS.values(), (58, 18)], ids=str)
@pytest.mark.parametrize("count", [1, 5, 10])
def test_the_close_has_a_row_for_each_prompt_or_says_how_many_more(room: tuple[int, int], count: int) -> None:
    session = at(prompts()[0], 0)
    session.closed, session.unmarked = False, (2,) * (count > 2)
    session.context = SimpleNamespace(child=SimpleNamespace(paused=None))
    lines = close_page([Part(session, closing(count))], View(*room)).fitted(room[1])
    shown = words(lines)
    assert len(lines) == room[1] and all(cells_of(line) <= room[0] for line in lines)
    rows = {span.bead for line in lines for span in line if span.bead is not None}
    more = re.search(r"↓ (\d+) more", shown)
    assert len(rows) + (int(more[1]) if more else 0) == count
    assert 0 in rows and "It came easily." in shown, "what went well stays"
    assert len(rows) >= min(count, 2 if room[1] < 12 else 3) and "finish" in shown
    assert (count > 1) is ("soon" in shown), "what comes back stays longest of the rest"


def test_three_other_forms_of_an_answer_are_named() -> None:
    forms = ("beads", "pegs", "shells", "spoons")
    for given, said in ((forms[:3], "beads, pegs, shells"), (forms, "beads, pegs, shells …")):
        for label, room in (("also:", (76, 45)), ("Also right:", (40, 24))):
            shown = words(spans(at(prompts()[0]._replace(accept=given), 0), View(*room)))
            assert f"{label} {said}" in shown and "spoons" not in shown
            assert ("shells …" in shown) is (len(given) > 3)


@pytest.mark.parametrize(
    ("width", "name", "said"),
    [
        (90, "", "Wednesday, June 16 · school day 144, the last · week 36 · quarter 4 · review"),
        (39, "", "Wed Jun 16 · school day 144, the last"),
        (39, "Fern", "Wed Jun 16 · school day 144 · Fern"),
        (30, "Fern", "Wed Jun 16 · Fern"),
    ],
)
def test_a_head_leaves_out_what_the_opening_says_before_the_school_day(
    width: int, name: str, said: str
) -> None:
    year = year_of(FAMILY)
    morning = year.morning(year.mornings[-1], reviews=(36,))._replace(date=dt.date(2027, 6, 16))
    page = Script(width)
    year_head(page, morning, View(width, 24, name=name))
    assert words([line for block in page.blocks for line in block.lines]) == said
