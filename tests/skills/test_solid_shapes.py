"""Solids: references/shapes.toml (Euler, flat faces of curved solids); worked example ex67."""

from collections import Counter

import pytest
from num2words import num2words

from tests.bank import reference
from tests.oracles.solid_shapes import box_counts
from tests.skills.asking import asked, bounds, coded, example, sought
from tests.skills.in_week import opening
from warmup import skills
from warmup.pictures.solid_shape import SOLIDS, SolidShape

CURVED = ("sphere", "cylinder", "cone")


@pytest.mark.parametrize(("solid", "row"), [("cube", "cube"), ("box", "rectangular_prism")])
def test_faces_edges_and_corners_are_those_published(solid: str, row: str) -> None:
    """shapes.toml, solid: V - E + F = 2; counted there on the convex hull, here on the unit cube."""
    table = reference("shapes")["solid"][row]
    assert table["vertices"] - table["edges"] + table["faces"] == 2
    assert box_counts() == {"corners": table["vertices"], "edges": table["edges"], "faces": table["faces"]}
    for part, name in (("corners", "vertices"), ("edges", "edges"), ("faces", "faces")):
        p = sought("solid-shapes/count-on-a-box", {"solid": solid, "part": part})
        assert p.answer == num2words(table[name])


@pytest.mark.parametrize("solid", CURVED)
def test_a_curved_solid_is_asked_for_flat_faces_alone(solid: str) -> None:
    """shapes.toml, curved_solid: the safe question is "How many flat faces?"."""
    row = reference("shapes")["curved_solid"][solid]
    p = sought("solid-shapes/flat-faces", {"solid": solid})
    assert p.answer == num2words(row["flat_faces"]) and row["safe_answer"] == row["flat_faces"]
    for level in skills.SKILLS["solid-shapes"].levels:
        for name in level.items:
            for q in asked(f"solid-shapes/{name}", 80):
                if q.given.get("solid") == solid:
                    assert "edge" not in q.say and "corner" not in q.say
                    assert "face" not in q.say or "flat face" in q.say


def test_two_flat_faces_of_a_cylinder() -> None:
    row = example("ex67")
    p = sought("solid-shapes/flat-faces", {"solid": row["given"]})
    assert p.answer == num2words(row["answer"])


def test_only_solids_of_the_standard_are_named() -> None:
    """K.G.A.2: cube, cone, cylinder, sphere."""
    names = set(bounds("K.G.A.2")["named_solid"])
    assert {p.answer for p in asked("solid-shapes/name-any")} == names
    assert {p.answer for p in asked("solid-shapes/name")} == {"sphere", "cube"}
    assert names | {"box"} == set(SOLIDS)
    assert {
        p.given["solid"] for p in coded("solid-shapes", "K.G.A.2") if p.item.endswith("find-at-home")
    } <= names


def test_edges_and_corners_only_of_box_and_cube() -> None:
    parts = Counter((p.given["solid"], p.given["part"]) for p in asked("solid-shapes/count-on-a-box", 300))
    assert set(parts) == {(s, part) for s in ("cube", "box") for part in ("faces", "edges", "corners")}


@pytest.mark.parametrize(
    ("item", "answers"),
    [
        ("name", {"sphere", "cube"}),
        ("ball-or-circle", {"sphere", "circle"}),
        ("cone-or-triangle", {"cone", "triangle"}),
        ("flat-or-solid", {"flat", "solid"}),
        ("box-or-cube", {"yes", "no"}),
    ],
)
def test_two_way_answers_come_alike_and_own_up_to_it(item: str, answers: set[str]) -> None:
    prompts = asked(f"solid-shapes/{item}", 400)
    found = Counter(p.answer for p in prompts)
    assert set(found) == answers and max(found.values()) < 250
    assert all(p.guess == 0.5 for p in prompts)


def test_a_box_drawn_long_or_tall_is_no_cube() -> None:
    for p in asked("solid-shapes/box-or-cube"):
        assert isinstance(p.picture, SolidShape)
        assert (p.picture.name == "cube") == (p.answer == "yes")


def test_everything_does_something_and_only_the_can_does_all() -> None:
    """Rolls on a curved side, slides on a flat one, stacks between two: common practice, no source."""
    does = {p.given["solid"]: p.answer for p in asked("solid-shapes/roll-stack-slide")}
    assert set(does) == set(SOLIDS)
    assert [s for s in does if "roll" in does[s] and "stack" in does[s]] == ["cylinder"]
    assert does["sphere"] == "roll" and "stack" not in does["cone"]


@pytest.mark.parametrize("item", ["ball-or-circle", "cone-or-triangle"])
def test_a_thing_does_not_tell_its_shape_and_has_no_other(item: str) -> None:
    """A road cone says its name; a coat hanger has a hook, a funnel a spout, a hoop a hole."""
    things = {p.given["thing"]: p.answer for p in asked(f"solid-shapes/{item}")}
    assert len(things) >= 6
    for thing, shape in things.items():
        assert shape not in thing
        assert not any(word in thing for word in ("hanger", "funnel", "hoop", "globe", "glass"))


def test_a_ball_alone_is_felt_for_flat_faces() -> None:
    """An orange has a stem, and nobody pats flat faces on it."""
    for p in asked("solid-shapes/flat-faces", 400):
        if p.given["solid"] == "sphere":
            assert (
                p.table == "ball" and "Pat each" not in p.say and {"none", "no flat faces"} <= set(p.accept)
            )


@pytest.mark.parametrize("item", ["roll-stack-slide", "flat-faces", "print-of-a-face", "count-on-a-box"])
def test_what_is_felt_is_handed_over_first(item: str) -> None:
    for p in asked(f"solid-shapes/{item}"):
        thing = p.given.get("thing", p.table.removesuffix(" (unopened)"))
        assert p.do.startswith("Give your child a") and thing in p.do
        assert ("faces all alike" in p.do) == (thing == "block"), "not every toy block is a cube"


def test_no_cue_begins_the_name_that_is_asked_for() -> None:
    for item in ("name", "name-any"):
        assert not any("…" in cue.text for p in asked(f"solid-shapes/{item}") for cue in p.cues)


def test_flat_or_solid_comes_before_the_faces_and_knows_no_hexagon_yet() -> None:
    """K.G.A.3 tells flat from solid; the hexagon is met with sides and corners, later in the year."""
    _, second, third = skills.SKILLS["solid-shapes"].levels
    assert "flat-or-solid" in second.variants and "K.G.A.3" in second.codes
    assert opening("solid-shapes:cylinder-and-cone") < opening("flat-shapes:sides-and-corners")
    names = {p.given["name"] for p in asked("solid-shapes/flat-or-solid")}
    assert names == {"sphere", "cube", "cylinder", "cone", "circle", "triangle", "square", "rectangle"}
    assert {"count-on-a-box", "box-or-cube"} <= {*third.variants}


def test_flat_names_for_solid_things_make_the_next_two_wait() -> None:
    first, second, _ = skills.SKILLS["solid-shapes"].levels
    assert first.misconceptions == ("ball-or-circle",) and "ball-or-circle" not in first.variants
    assert second.waits_on == ("solid-shapes/ball-or-circle",)
