"""symmetry: would the halves match? Where is the line? Finish the other half.

Toward 4.G.A.3: a line of symmetry as a fold that lands one half on the other (Common Core State
Standards for Mathematics, 2010), four grades on: offered as folding play. Fold lines are found by
mirroring the corners of the figure, never looked up.
"""

from math import atan2, degrees

from warmup import pictures
from warmup.english import listed
from warmup.model import Cue, Morning, Strand
from warmup.pictures.figures import points_of, turned
from warmup.pictures.shapes import Points
from warmup.randomness import SeededRandom
from warmup.skills._geometry import fold_lines, folds_onto_itself
from warmup.skills._halves import ask_finish, ask_flip_not_slide
from warmup.skills.base import Draft, Level, Skill

_MATCHING = ("heart", "arrow", "kite", "tall triangle", "trapezoid", "rhombus", "rectangle", "square", "star")
_LOPSIDED = ("slanted figure", "slanted triangle", "bent figure", "right triangle")
_TURNS = (0, 90, 180, 270)


def ask(item: str, _morning: Morning, rng: SeededRandom) -> Draft:
    """Judge a fold, make one, find the line, or finish a half."""
    match item:
        case "would-it-match":
            return _would_it_match(rng)
        case "rectangle-diagonal":
            return _diagonal(rng)
        case "make-a-fold":
            return _make_a_fold(rng)
        case "find-the-line":
            return _find_the_line(rng)
        case "finish":
            return ask_finish(rng)
        case _:
            return ask_flip_not_slide(rng)


# ---- would the halves match? -----------------------------------------------------------------------


def _would_it_match(rng: SeededRandom) -> Draft:
    """A figure and a line: half of the time they match."""
    turn = rng.pick(_TURNS)
    if rng.coin():
        figure = rng.pick(_MATCHING)
        lines = fold_lines(turned(points_of(figure), turn))
        plain = [line for line in lines if line % 45 < 0.01]  # A slanting line reads badly on a star.
        return _judged(figure, turn, rng.pick(plain), 0, rng)
    if rng.coin():
        return _judged(rng.pick(_LOPSIDED), turn, rng.pick((0.0, 90.0)), 0, rng)
    figure = rng.pick(_MATCHING)
    points = turned(points_of(figure), turn)
    if rng.coin():
        return _judged(figure, turn, rng.pick(fold_lines(points)), rng.pick((-45, 45)), rng)
    amiss = [line for line in (0.0, 45.0, 90.0, 135.0) if not folds_onto_itself(points, line)]
    # A square folds on all four of these: its line is moved aside in their place.
    return _judged(figure, turn, rng.pick(amiss or (0.0, 90.0)), 0 if amiss else rng.pick((-45, 45)), rng)


def _diagonal(rng: SeededRandom) -> Draft:
    """Corner to corner: a rectangle's halves miss, a square's match; and a rectangle folded edge to edge."""
    turn = rng.pick((0, 90))
    figure, slanted = rng.pick(
        (("rectangle", True), ("rectangle", True), ("rectangle", False), ("square", True))
    )
    points = turned(points_of(figure), turn)
    corner = rng.pick(points[:2])
    return _judged(figure, turn, _angle_to(corner) if slanted else rng.pick(fold_lines(points)), 0, rng)


def _angle_to(corner: tuple[float, float]) -> float:
    return round(degrees(atan2(-corner[1], corner[0])) % 180, 3)


def _judged(figure: str, turn: int, line: float, aside: int, rng: SeededRandom) -> Draft:
    from warmup.pictures.fold import line_through

    points = turned(points_of(figure), turn)
    through = line_through(points, line, aside)
    # Angles are kept to a thousandth of a degree; snapped back to a true fold line where there is one.
    true = next((fold for fold in fold_lines(points) if abs(fold - line) < 0.01), line)
    matches = folds_onto_itself(points, true, through)
    return Draft(
        say=rng.phrasing(
            "Pretend to fold on this line. Do the halves match?",
            "Can we fold here so the halves match? Tell me why.",
            "Would both sides match if we fold here?",
        ),
        answer="yes" if matches else "no",
        accept=("yes: each edge lands on an edge",) if matches else ("no: a piece sticks out",),
        working=f"lines that fold it in two: {len(fold_lines(points))}, with this one"
        if matches
        else "mirrored in this line, some corners land on no corner",
        cues=(
            Cue("Put a finger on one corner. Where would it land?"),
            Cue("Cut the shape from paper. Crease it along that line and peep inside."),
            Cue("Bend the paper over together, slowly. The child presses it flat and looks."),
        ),
        watch_for="A slanted cut makes two equal pieces, yet folded they miss. Fold it and see."
        if figure in ("rectangle", "slanted figure")
        else "Same size is not enough: the halves have to land on each other.",
        given={
            "figure": figure,
            "points": _rounded(points),
            "line": round(true, 6),
            "through": _rounded((through,))[0],
        },
        picture=pictures.Fold(figure, turn, line, aside),
    )


def _rounded(points: Points) -> list[list[float]]:
    return [[round(x, 4), round(y, 4)] for x, y in points]


_PAPERS = {"square": "a square napkin", "rectangle": "a sheet of paper", "circle": "a paper circle"}
_DO = ("edge to edge", "corner to corner")


def _make_a_fold(rng: SeededRandom) -> Draft:
    """Fold a real paper; what counts is worked out from its lines."""
    name = rng.pick(tuple(_PAPERS))
    paper = _PAPERS[name]
    points = points_of(name)
    if name == "circle":
        answer, ways = "any fold through the middle; the edges meet all around", "endless"
    else:
        slanted = [line for line in fold_lines(points) if line % 90 > 1]
        answer = " or ".join(_DO if slanted else _DO[:1])
        ways = str(len(fold_lines(points)))
    return Draft(
        say=rng.phrasing(
            f"Fold {paper} so both halves match.",
            f"Fold {paper} in half. Make the edges meet.",
            f"Take {paper}. Fold it in two matching halves.",
        ),
        answer=answer,
        accept=_DO if answer == " or ".join(_DO) else (),
        working=f"{name}: ways to fold it onto itself: {ways}",
        cues=(
            Cue("Which parts do you want to meet?"),
            Cue("Open a book and close it. See how its covers land on each other."),
            Cue("Bring the near edge up together. The child lines it up and presses."),
        ),
        watch_for="Pressing before the edges meet. Line up first, then press.",
        given={"figure": name, "points": [] if name == "circle" else _rounded(points)},
        table=paper,
        do=f"Hand over {paper}.",
    )


# ---- find the line ---------------------------------------------------------------------------------


def _direction(line: float) -> str:
    """How a line lies on the page."""
    if min(line, 180 - line) < 0.01:
        return "across"
    if abs(line - 90) < 0.01:
        return "up and down"
    return "slanting up to the right" if line < 90 else "slanting up to the left"


def _find_the_line(rng: SeededRandom) -> Draft:
    figure = rng.pick(
        ("heart", "arrow", "kite", "tall triangle", "trapezoid", "half circle", "rhombus", "rectangle")
    )
    turn = rng.pick((*_TURNS, 45, 135))
    points = turned(points_of(figure), turn)
    said = [_direction(line) for line in fold_lines(points)]
    return Draft(
        say=rng.phrasing(
            "Where can we fold this so the halves match?",
            "Show me a fold that makes both halves match.",
            "Draw the fold with your finger. Both halves must match.",
        ),
        answer=f"{listed(said, 'or')}, through the middle",
        accept=tuple(said),
        working=f"lines that fold it onto itself: {len(said)}",
        cues=(
            Cue("Find two corners or bumps that are twins."),
            Cue("Cut one like it from paper. Fold it one way, open it, then try another."),
            Cue("Lay a straw on it together and turn it slowly. The child says stop."),
        ),
        watch_for="A line that makes two equal pieces which do not match when folded.",
        given={"figure": figure, "points": _rounded(points)},
        picture=pictures.Fold(figure, turn),
    )


SKILL = Skill(
    id="symmetry",
    title="Matching halves",
    asks="would the halves match? finish the other half",
    strand=Strand.SHAPE,
    levels=(
        Level(
            "fold",
            "fold, find the line",
            ("would-it-match", "rectangle-diagonal", "make-a-fold", "find-the-line"),
            toward=("4.G.A.3",),
            stands_on=("flat-shapes:turned-and-thin",),
            guess=0.5,
            table="paper, straw",
            guesses=(("make-a-fold", 0.1), ("find-the-line", 0.3)),
            ends=("would-it-match",),
        ),
        Level(
            "finish-the-half",
            "finish the half",
            ("finish", "flip-not-slide"),
            toward=("4.G.A.3",),
            stands_on=("symmetry:fold",),
            guess=0.05,
            table="graph paper",
            seconds=60,
        ),
    ),
    ask=ask,
)
