"""The wall calendar, the day strip and the month strip, read back from what is painted."""

import calendar

import pytest

from tests.pictures.blobs import pieces, pixels, span
from warmup.pictures import Picture, from_data, to_data
from warmup.pictures.cells import Drawing
from warmup.pictures.day_strip import DayStrip
from warmup.pictures.hundred_chart import HundredChart
from warmup.pictures.ink import Ink
from warmup.pictures.month_calendar import MonthCalendar
from warmup.pictures.month_strip import MonthStrip
from warmup.pictures.shapes import Polygon, Rect

PANES = ((40, 18), (56, 9), (60, 30))
DAYS = ("Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday")
MONTHS = tuple(calendar.month_name)[1:]
TILES = (Ink.TILE, Ink.TILE_ALT)


def words(drawing: Drawing) -> list[list[str]]:
    """The labels of a drawing, a list a row that has any."""
    rows = [
        line.replace("█", " ").translate({ord(c): " " for c in "▀▄▌▐▘▝▖▗▚▞▛▜▙▟"}).split()
        for line in drawing.text().splitlines()
    ]
    return [row for row in rows if row]


@pytest.mark.parametrize("pane", [*PANES, MonthCalendar(2026, 8).least()])
def test_a_wall_calendar_has_the_weeks_of_the_standard_library(pane: tuple[int, int]) -> None:
    # The US week begins on Sunday: calendar.toml, [rule] us_wall_calendar_week_starts.
    for year, month in ((2026, 8), (2027, 2), (2028, 2), (2026, 2), (2026, 11), (2027, 5), (2032, 2)):
        title, heads, *weeks = words(MonthCalendar(year, month).draw(*pane))
        assert title == [calendar.month_name[month], str(year)]
        assert heads == ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"]
        wanted = calendar.Calendar(firstweekday=calendar.SUNDAY).monthdayscalendar(year, month)
        assert weeks == [[str(day) for day in week if day] for week in wanted]


@pytest.mark.parametrize("pane", [*PANES, MonthCalendar(2026, 8).least()])
def test_each_number_stands_under_the_head_of_its_day(pane: tuple[int, int]) -> None:
    for year, month in ((2026, 8), (2027, 2), (2028, 2)):
        drawing = MonthCalendar(year, month).draw(*pane)
        lines = [line for line in drawing.text().splitlines() if any(c.isalnum() for c in line)]
        at = [lines[1].index(day[:3]) for day in DAYS]
        for line in lines[2:]:
            column = 0
            while column < len(line):
                if line[column].isdigit():
                    number = line[column : column + 2].rstrip(" █▀▄")
                    nearest = min(range(7), key=lambda n: abs(at[n] + 1 - column))
                    day = calendar.weekday(year, month, int(number))
                    assert DAYS[nearest] == calendar.day_name[day], (year, month, number)
                    column += 1
                column += 1


@pytest.mark.parametrize("pane", PANES)
def test_all_squares_of_a_calendar_are_alike_and_neighbors_differ(pane: tuple[int, int]) -> None:
    drawing = MonthCalendar(2026, 8).draw(*pane)
    sizes = set()
    for ink in TILES:
        for piece in pieces(pixels(drawing, ink)):
            left, top, right, bottom = span(piece)
            sizes.add((right - left + 1, bottom - top + 1))
            assert len(piece) == (right - left + 1) * (bottom - top + 1), "a square has a nub or a dent"
    assert len(sizes) == 1
    assert sum(len(pieces(pixels(drawing, ink))) for ink in TILES) == 31


def test_a_hidden_day_is_a_hole_and_tells_nothing_and_a_day_not_put_up_is_a_bare_square() -> None:
    for pane in PANES:
        drawing = MonthCalendar(2026, 8, hidden=(25,), pointed=(24,), upto=28).draw(*pane)
        assert len(pieces(pixels(drawing, Ink.HOLE))) == 1
        assert len(pieces(pixels(drawing, Ink.INK))) == 1
        shown = {word for row in words(drawing) for word in row}
        assert {"24", "26", "28"} <= shown and not {"25", "29", "30", "31"} & shown
    picture = MonthCalendar(2026, 8, hidden=(25,), pointed=(24,), upto=28)
    assert "25" not in picture.shows() and "29" not in picture.shows() and "28" in picture.shows()
    assert picture.marked() == ("24",)
    assert "25" not in picture.words()


@pytest.mark.parametrize("pane", [*PANES, DayStrip().least()])
@pytest.mark.parametrize("first", ["Sunday", "Wednesday"])
def test_a_strip_has_the_seven_days_in_order_and_one_hole(pane: tuple[int, int], first: str) -> None:
    order = DAYS[DAYS.index(first) :] + DAYS[: DAYS.index(first)]
    picture = DayStrip(first, hidden=("Friday",), pointed=("Thursday",))
    drawing = picture.draw(*pane)
    said = [word for row in words(drawing) for word in row]
    wanted = [day for day in order if day != "Friday"]
    assert said in (wanted, [day[:3] for day in wanted])
    squares = [piece for ink in (*TILES, Ink.HOLE, Ink.INK) for piece in pieces(pixels(drawing, ink))]
    assert len(squares) == 7
    assert len({(span(p)[2] - span(p)[0], span(p)[3] - span(p)[1]) for p in squares}) == 1
    assert len(pieces(pixels(drawing, Ink.HOLE))) == 1
    assert picture.shows() == tuple(wanted) and picture.marked() == ("Thursday",)


def test_whole_names_are_written_where_there_is_room_for_them() -> None:
    assert words(DayStrip().draw(40, 18))[:2] == [["Sunday"], ["Monday"]]
    assert words(DayStrip().draw(100, 12)) == [list(DAYS)]
    assert words(DayStrip().draw(56, 9)) == [[day[:3] for day in DAYS]]


@pytest.mark.slow
@pytest.mark.parametrize("pane", [*PANES, MonthStrip().least()])
@pytest.mark.parametrize("first", ["January", "July"])
def test_the_months_stand_in_order_in_equal_squares(pane: tuple[int, int], first: str) -> None:
    order = MONTHS[MONTHS.index(first) :] + MONTHS[: MONTHS.index(first)]
    picture = MonthStrip(first, hidden=("May",), pointed=("June",))
    drawing = picture.draw(*pane)
    rows = words(drawing)
    assert [month for row in rows for month in row] == [month for month in order if month != "May"]
    squares = [piece for ink in (*TILES, Ink.HOLE, Ink.INK) for piece in pieces(pixels(drawing, ink))]
    assert len(squares) == 12
    assert len({(span(p)[2] - span(p)[0], span(p)[3] - span(p)[1]) for p in squares}) == 1
    assert "May" not in picture.shows() and picture.marked() == ("June",)


@pytest.mark.parametrize("pane", PANES)
def test_pictures_stand_in_the_middle_of_the_pane(pane: tuple[int, int]) -> None:
    for picture in (DayStrip(), MonthStrip(), MonthCalendar(2026, 3)):
        drawing = picture.draw(*pane)
        left, top, right, bottom = span({p for ink in TILES for p in pixels(drawing, ink)})
        assert abs(left - (2 * pane[0] - 1 - right)) <= 2, picture.kind
        if picture.kind != "month-calendar":  # its name and heads, which are not painted, lie above
            assert abs(top - (2 * pane[1] - 1 - bottom)) <= 2, picture.kind


def test_a_picture_comes_back_from_plain_values() -> None:
    for picture in (
        DayStrip("Wednesday", ("Friday",), ("Thursday",)),
        MonthStrip("July", ("May",), ("June",)),
        MonthCalendar(2028, 2, (29,), (28,), 28),
    ):
        assert from_data(to_data(picture)) == picture
        assert picture.least()[0] <= 40 and picture.least()[1] <= 9


@pytest.mark.parametrize(
    ("picture", "shown"),
    [
        (HundredChart(1, 100, hidden=(56,)), 99),
        (MonthCalendar(2026, 8, hidden=(25,), upto=28), 27),
        (DayStrip(hidden=("Friday",)), 6),
        (MonthStrip(hidden=("May",)), 11),
    ],
    ids=["chart", "calendar", "days", "months"],
)
def test_wide_squares_have_block_numerals_or_letters(picture: Picture, shown: int) -> None:
    """At 160 by 45: one to every square that is not blank, clear of its edges and of the next one's."""
    numerals = [shape.box for shape, _ in picture.sketch(122, 43).shapes if isinstance(shape, Polygon)]
    squares = [shape.box for shape, _ in picture.sketch(122, 43).shapes if isinstance(shape, Rect)]
    homes = [
        square
        for left, top, right, bottom in numerals
        for square in squares
        if square[0] <= left and right <= square[2] and square[1] <= top and bottom <= square[3]
    ]
    assert len(homes) == len(set(homes)) == shown
    heads = 8 if picture.kind == "month-calendar" else 0
    assert len(numerals) == shown + heads, "the month's name and the days' stand above the squares"
