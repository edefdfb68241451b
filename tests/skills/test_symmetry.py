"""Matching halves: toward 4.G.A.3; tests/references/shapes.toml; worked examples ex63 and ex65."""

from collections import Counter

import pytest

from tests.bank import reference
from tests.oracles.symmetry import folds, lines
from tests.skills.asking import asked, example, sought
from warmup import skills
from warmup.pictures.figures import POLYGONS, points_of, turned
from warmup.pictures.fold import Fold
from warmup.pictures.half import Half
from warmup.skills._geometry import fold_lines
from warmup.skills._halves import fold_lines_of


def listed(figure: str, turn: float = 0) -> list[tuple[float, float]]:
    return [(point[0], point[1]) for point in turned(points_of(figure), turn)]


@pytest.mark.parametrize("figure", POLYGONS)
@pytest.mark.parametrize("turn", [0, 30, 90])
def test_fold_lines_agree_with_mirroring_the_outline(figure: str, turn: int) -> None:
    """Two ways to the same lines: corners onto corners, and outline onto outline."""
    mine = fold_lines(turned(points_of(figure), turn))
    assert list(mine) == pytest.approx(lines(listed(figure, turn)), abs=1e-3)


def test_a_rectangle_folds_two_ways_and_not_on_its_diagonal() -> None:
    """examples.toml, ex63: two ways."""
    p = sought("symmetry/find-the-line", {"figure": "rectangle"})
    assert len(p.accept) == example("ex63")["answer"] and f"itself: {len(p.accept)}" in p.working
    diagonals = [p for p in asked("symmetry/rectangle-diagonal") if p.given["line"] % 45]
    assert len(diagonals) > 60 and {p.answer for p in diagonals} == {"no"}
    assert all(p.given["figure"] == "rectangle" for p in diagonals)
    assert not folds(listed("rectangle"), (0, 0), (1, 0.6))


def test_a_circle_folds_as_many_ways_as_you_like() -> None:
    """examples.toml, ex65: so any fold through its middle is a right one, and none of them is judged."""
    assert example("ex65")["answer"] == "as many as you like"
    p = sought("symmetry/make-a-fold", {"figure": "circle"})
    assert p.answer.startswith("any fold through the middle") and "endless" in p.working
    for item in ("would-it-match", "find-the-line"):
        assert all(p.given["figure"] != "circle" for p in asked(f"symmetry/{item}"))


@pytest.mark.parametrize(
    ("figure", "row"),
    [("rhombus", "rhombus"), ("kite", "kite"), ("trapezoid", "trapezoid_isosceles"), ("arrow", "arrow")],
)
def test_every_line_published_is_a_right_answer(figure: str, row: str) -> None:
    """shapes.toml, flat: computed there with shapely."""
    p = sought("symmetry/find-the-line", {"figure": figure})
    assert len(p.accept) == reference("shapes")["flat"][row]["symmetry_lines"]


def test_folding_only_leads_to_its_code() -> None:
    """4.G.A.3 is four grades on (references/standards.toml): nothing here is said to exercise it."""
    for level in skills.SKILLS["symmetry"].levels:
        assert level.toward == ("4.G.A.3",) and not level.codes


@pytest.mark.slow
@pytest.mark.parametrize("item", ["would-it-match", "rectangle-diagonal"])
def test_yes_and_no_come_alike(item: str) -> None:
    prompts = asked(f"symmetry/{item}", 600)
    answers = Counter(p.answer for p in prompts)
    assert set(answers) == {"yes", "no"} and 240 < answers["yes"] < 360
    assert all(p.guess == 0.5 for p in prompts)


@pytest.mark.slow
def test_a_figure_that_folds_is_also_shown_with_a_line_that_does_not() -> None:
    """So the figure alone never tells the answer."""
    seen: dict[str, set[str]] = {}
    for p in asked("symmetry/would-it-match", 600):
        assert isinstance(p.picture, Fold)
        seen.setdefault(p.given["figure"], set()).add(p.answer)
    assert sum(answers == {"yes", "no"} for answers in seen.values()) >= 8


def test_the_half_to_finish_has_just_the_line_asked_for() -> None:
    """The finished squares, mirrored in each of a square's lines, match in one alone."""
    for p in asked("symmetry/finish"):
        runs = p.given["runs"]
        cells = {
            (r, side * (k - 0.5)) for r, run in enumerate(runs) for k in range(1, run + 1) for side in (1, -1)
        }
        down = (len(runs) - 1) / 2
        about = {(r - down, x) for r, x in cells}
        assert about == {(r, -x) for r, x in about}
        others = ({(-r, x) for r, x in about}, {(x, r) for r, x in about}, {(-x, -r) for r, x in about})
        assert about not in others
        assert isinstance(p.picture, Half)
        assert Counter(r for r, _ in p.picture.filled) == dict(enumerate(runs))
    assert fold_lines_of((2, 1, 1, 2)) == 2 and fold_lines_of((1, 2, 2, 1)) == 4


def test_the_twin_is_as_far_from_the_line_and_any_side_may_be_bare() -> None:
    sides = Counter(p.answer.split()[0] for p in asked("symmetry/flip-not-slide", 400))
    assert set(sides) == {"right", "left", "upper", "lower"} and min(sides.values()) > 60
    for p in asked("symmetry/flip-not-slide"):
        assert isinstance(p.picture, Half) and p.picture.filled == ((p.given["along"], p.given["away"]),)


def test_a_fold_that_is_asked_for_is_one_in_halves() -> None:
    """Any fold at all keeps its edges in; only one in half is meant."""
    for item in ("make-a-fold", "find-the-line"):
        assert all("half" in p.say or "halves" in p.say for p in asked(f"symmetry/{item}"))
    assert all(p.do == f"Hand over {p.table}." for p in asked("symmetry/make-a-fold"))


def test_the_working_counts_one_line_in_words_that_fit_one() -> None:
    workings = {p.working for p in asked("symmetry/would-it-match", 200) if p.answer == "yes"}
    counts = {working.partition(": ")[2].partition(",")[0] for working in workings}
    assert counts >= {"1", "2"} and not any("1 lines" in working for working in workings)
