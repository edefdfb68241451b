"""Today's prompts on one page: all of the words, as much help as there is room for, answers turned behind."""

from warmup.sheets.fridge import MARKS, Entry, page
from warmup.sheets.lettering import broken, width
from warmup.sheets.lines import Line, Stroke, Words
from warmup.sheets.paper import ROOM

LONG = "Put three spoons and two forks into a row, and say how many there are when you cover one of them. "


def entries(count: int, help_: int) -> list[Entry]:
    return [Entry(f"Ask {n}. {LONG}", (LONG * 2,) * help_, f"answer {n}") for n in range(count)]


def test_the_words_stand_above_the_fold_and_the_answers_turned_below() -> None:
    made = page(["Bean"], entries(5, 2), ["Have ready: spoons."])
    (fold,) = [part for part in made.drawn if isinstance(part, Stroke) and part.line is Line.FOLD]
    line = fold.points[0][1]
    words = [part for part in made.drawn if isinstance(part, Words)]
    behind = [part for part in words if part.turned]
    assert [part.text for part in behind] == [f"{n + 1}. answer {n}" for n in range(5)]
    assert all(part.at[1] > line for part in behind) and all(w.at[1] < line for w in words if not w.turned)
    # Turned half round, the first answer is at the bottom right: folded back it is at the top left.
    assert behind[0].at[1] == max(part.at[1] for part in behind) and behind[0].at[0] == ROOM.wide
    assert sum(part.text in MARKS for part in words) == 5 * len(MARKS)
    told = " ".join(part.text for part in words)
    assert told.count("Put three spoons") == 5 * (1 + 2 * 2)


def test_ten_long_prompts_fit_on_the_page_with_less_help() -> None:
    made = page(["Bean", LONG], entries(10, 3), [LONG])
    words = [part for part in made.drawn if isinstance(part, Words)]
    told = " ".join(part.text for part in words)
    assert all(f"Ask {n}." in told and f"answer {n}" in told for n in range(10))
    assert 12 <= told.count("Put three spoons") < 10 * 7
    for part in words:
        reach = width(part.text, part.size) * (-1 if part.turned else 1) * (1 if part.anchor == 0 else 0)
        assert -0.01 <= part.at[0] + reach <= ROOM.wide + 0.01 and 0 <= part.at[1] <= ROOM.high


def test_lines_are_no_wider_than_there_is_room_whatever_is_written() -> None:
    for text in ("", "a", LONG, "W" * 200, f"{LONG} {'m' * 90} end"):
        lines = [*broken(text, 4.0, 60.0)]
        assert all(width(line, 4.0) <= 60.0 for line in lines)
        assert "".join("".join(lines).split()) == "".join(text.split())
