"""Flat shapes: tests/references/shapes.toml and standards.toml; worked examples ex61 and ex69."""

from collections import Counter

import pytest
from num2words import num2words

from tests.bank import reference
from tests.skills.asking import asked, bounds, coded, example, level_asked, sought
from tests.skills.in_week import asked_in, opening
from warmup import skills
from warmup.pictures.figures import points_of, reads_clean
from warmup.pictures.flat_shape import FlatShape
from warmup.pictures.shape_row import ShapeRow
from warmup.skills._geometry import count_sides, equal_sides, fold_lines, square_corners
from warmup.skills._joining import OPENS

ROWS = {
    "triangle": "triangle_equilateral",
    "tall triangle": "triangle_isosceles",
    "slanted triangle": "triangle_scalene",
    "square": "square",
    "rectangle": "rectangle",
    "rhombus": "rhombus",
    "slanted figure": "parallelogram",
    "trapezoid": "trapezoid_isosceles",
    "kite": "kite",
    "pentagon": "pentagon_regular",
    "hexagon": "hexagon_regular",
    "bent figure": "hexagon_L_shape",
    "star": "star_five_point",
    "arrow": "arrow",
}


@pytest.mark.parametrize("figure", ROWS)
def test_sides_corners_and_fold_lines_are_those_published(figure: str) -> None:
    """shapes.toml, flat: sides and corners by definition, fold lines computed there with shapely."""
    row = reference("shapes")["flat"][ROWS[figure]]
    assert count_sides(figure) == row["sides"] == row["corners"]
    assert len(fold_lines(points_of(figure))) == row["symmetry_lines"]


@pytest.mark.parametrize(
    ("figure", "row"), [("oval", "oval"), ("half circle", "half_circle"), ("heart", "heart")]
)
def test_curved_figures_fold_as_published(figure: str, row: str) -> None:
    """shapes.toml, curved."""
    assert len(fold_lines(points_of(figure))) == reference("shapes")["curved"][row]["symmetry_lines"]


def test_three_sides_of_a_triangle() -> None:
    row = example("ex61")
    p = sought("flat-shapes/count-sides", {"figure": row["given"], "part": "sides", "ask": "count"})
    assert p.answer == num2words(row["answer"])


def test_a_square_is_a_rectangle() -> None:
    row = example("ex69")
    p = sought("flat-shapes/square-is-a-rectangle", {"first": row["given"], "second": "rectangle"})
    assert p.answer == row["answer"]
    assert square_corners("square") and equal_sides("square") and square_corners("rectangle")
    assert not equal_sides("rectangle") and not square_corners("rhombus") and equal_sides("rhombus")


def test_no_shape_is_ever_called_a_diamond() -> None:
    """shapes.toml, inclusive.diamond: no such flat figure name. Only a slip to watch for names it."""
    for key in ("four-shapes", "turned-and-thin", "sides-and-corners", "put-together"):
        for p in level_asked("flat-shapes", key, 60):
            told = " ".join((p.say, p.answer, *p.accept, p.working, *(c.text for c in p.cues)))
            assert "diamond" not in told.lower()


def test_only_names_of_the_standard_are_asked_for() -> None:
    """K.G.A.2: square, circle, triangle, rectangle, hexagon."""
    names = set(bounds("K.G.A.2")["named_flat"])
    named = {p.answer for item in ("name", "turned") for p in asked(f"flat-shapes/{item}")}
    assert named <= names
    assert {p.given["figure"] for p in coded("flat-shapes", "K.G.A.1", 60)} <= names
    assert "hexagon" in {p.answer for p in asked("flat-shapes/count-sides")}


def test_a_turned_shape_does_not_sit_flat() -> None:
    for p in asked("flat-shapes/turned"):
        assert isinstance(p.picture, FlatShape)
        assert p.picture.turn == p.given["turn"] and p.given["turn"] >= 20
    for p in asked("flat-shapes/tilted-square"):
        assert isinstance(p.picture, ShapeRow) and all(turn % 90 for turn in p.picture.turns)


@pytest.mark.parametrize(
    "item", ["name", "turned", "tilted-square", "thin-triangle", "count-sides", "not-closed", "hexagon"]
)
def test_no_side_of_a_shape_is_drawn_as_stairs(item: str) -> None:
    """Each side lies level or upright, or leans by 20 degrees at least."""
    turns = set()
    for p in asked(f"flat-shapes/{item}", 150):
        match p.picture:
            case FlatShape(name, turn):
                assert reads_clean(name, turn), (name, turn)
                turns.add((name, turn))
            case ShapeRow(names, each):
                assert all(map(reads_clean, names, each)), (names, each)
                turns.update(zip(names, each, strict=True))
            case _:
                assert item == "count-sides" and p.picture is None, "a riddle has no picture"
    assert len(turns) >= 8


@pytest.mark.parametrize("item", ["tilted-square", "thin-triangle", "not-closed", "hexagon"])
def test_the_place_asked_for_is_any_of_three(item: str) -> None:
    places = Counter(p.answer for p in asked(f"flat-shapes/{item}", 300))
    assert len(places) == 3 and min(places.values()) > 70


def test_yes_and_no_come_alike() -> None:
    answers = Counter(p.answer for p in asked("flat-shapes/square-is-a-rectangle", 400))
    assert set(answers) == {"yes", "no"} and 150 < answers["yes"] < 250


def test_the_picture_is_the_figure_given() -> None:
    for item in ("name", "turned"):
        for p in asked(f"flat-shapes/{item}", 60):
            assert isinstance(p.picture, FlatShape) and p.picture.name == p.given["figure"]
    for p in asked("flat-shapes/not-closed", 60):
        assert isinstance(p.picture, ShapeRow)
        assert p.picture.gaps == (p.given["gap"],) and list(p.picture.names) == p.given["names"]


def test_tiles_that_fill_the_target_without_a_step() -> None:
    """Every build names all the grids there are: factor pairs by trial."""
    for p in asked_in(36, "flat-shapes/build"):
        count, square = p.given["count"], p.given["target"] == "square"
        pairs = [(a, count // a) for a in range(1, count + 1) if count % a == 0 and a * a <= count]
        wanted = [pair for pair in pairs if not square or pair[0] == pair[1]]
        assert p.working == " or ".join(f"{a} × {b}" for a, b in wanted)


def test_every_shape_with_so_many_sides_is_a_right_answer() -> None:
    """shapes.toml, flat: four sides are a square, a rectangle, a rhombus, a trapezoid and a kite."""
    rows = {row.partition("_")[0]: fields["sides"] for row, fields in reference("shapes")["flat"].items()}
    for p in (p for p in asked("flat-shapes/count-sides") if p.given["ask"] == "name"):
        told = {name.removeprefix("a ") for name in (*p.answer.split(" or "), *p.accept)}
        names = {"triangle", "square", "rectangle", "rhombus", "trapezoid", "kite", "hexagon"}
        assert told == {name for name in names if rows[name] == p.given["sides"]}
        assert not any(name in p.say for name in names), "the answer is not in the question"


def test_a_square_called_a_rectangle_is_told_as_true() -> None:
    """shapes.toml, inclusive.square_is_rectangle."""
    for item in ("name", "turned", "slide-together"):
        for p in asked(f"flat-shapes/{item}"):
            assert any(text.startswith("rectangle: true") for text in p.accept) == (p.answer == "square")


def test_no_cue_begins_the_name_that_is_asked_for() -> None:
    for item in ("name", "turned"):
        for p in asked(f"flat-shapes/{item}"):
            assert not any("…" in cue.text or "“" in cue.text for cue in p.cues)


def test_bigger_shapes_are_built_once_the_level_has_been_open() -> None:
    first = opening("flat-shapes:put-together")
    assert first == OPENS
    for early in (1, first, first + 1):
        assert {p.given["count"] for p in asked_in(early, "flat-shapes/build")} == {2, 3, 4}
    assert max(p.given["count"] for p in asked_in(first + 2, "flat-shapes/build")) == 9


def test_the_hexagon_is_the_one_with_the_sides_of_a_hexagon() -> None:
    """K.G.A.2 names the hexagon; shapes.toml, flat, has how many sides each figure has."""
    assert "hexagon" in bounds("K.G.A.2")["named_flat"]
    sides = reference("shapes")["flat"][ROWS["hexagon"]]["sides"]
    beside = set()
    for p in asked("flat-shapes/hexagon"):
        assert isinstance(p.picture, ShapeRow) and list(p.picture.names) == p.given["names"]
        counted = [len(points_of(name)) for name in p.picture.names]
        place = ("the left one", "the middle one", "the right one").index(p.answer)
        assert counted.count(sides) == 1 and counted[place] == sides
        beside |= {*p.given["names"]}
    assert len(beside) >= 6, "not to be told by what stands beside it"


def test_shapes_are_made_of_straws_a_straw_a_side() -> None:
    """K.G.B.5: shapes built of sticks; shapes.toml, flat: how many sides each has."""
    (level,) = {p.level for p in coded("flat-shapes", "K.G.B.5", 1)}
    assert level == "sides-and-corners"
    seen = set()
    for p in asked("flat-shapes/make-of-straws"):
        name = p.given["figure"]
        seen.add(name)
        sides = num2words(reference("shapes")["flat"][ROWS[name]]["sides"])
        assert p.answer.startswith(f"{sides} straws, end to end")
        assert p.guess == 0 and p.picture is None and "straws" in p.do and "?" not in p.say
        assert sides not in p.do.split(), "how many it takes is for the child to find out"
    assert seen == {"triangle", "square", "rectangle", "hexagon"}


def test_a_tilted_square_that_is_shaky_makes_its_sides_wait() -> None:
    """Named by its look alone, a square is turned before its sides are counted."""
    _, turned, sides, _ = skills.SKILLS["flat-shapes"].levels
    assert turned.misconceptions == ("tilted-square",) and "tilted-square" not in turned.variants
    assert sides.waits_on == ("flat-shapes/tilted-square",)
