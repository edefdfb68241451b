"""Recomputes position answers from ``given``: places as coordinates, sides by turning about."""

from typing import Any

AWAY = {"left": (-1, 0), "right": (1, 0)}
WORDS = {
    "above": ("higher",),
    "below": ("lower",),
    "beside": ("side", "either"),
    "between": ("middle", "one side", "the other"),
}
FACED = {
    ("behind", True): ("at the back",),
    ("behind", False): ("far side",),
    ("in front of", True): ("face", "looks"),
    ("in front of", False): ("child’s side",),
}


def across(side: str) -> str:
    """The other person's side: a half turn takes (x, y) to (-x, -y)."""
    x, _ = AWAY[side]
    return next(name for name, (u, _) in AWAY.items() if u == -x)


def _grid(rows: list[list[str]]) -> dict[str, tuple[int, int]]:
    return {toy: (x, -y) for y, row in enumerate(rows) for x, toy in enumerate(row)}


def _seen(given: dict[str, Any]) -> str:
    """Where the toy is in the scene, from the places of all toys."""
    if given["behind"]:
        front = given["rows"][0][0]
        return f"in front of the {given['behind']}" if given["thing"] == front else f"behind the {front}"
    at = _grid(given["rows"])
    x, y = at.pop(given["thing"])
    if len(at) == 2:
        assert sorted(u - x for u, _ in at.values()) == [-1, 1]
        return "between " + " and ".join(f"the {toy}" for toy in sorted(at, key=lambda t: at[t][0]))
    ((toy, (_, v)),) = at.items()
    return f"{'beside' if v == y else 'above' if y > v else 'below'} the {toy}"


def _said(answer: str, *parts: str) -> bool:
    return all(part in answer for part in parts)


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer is what the place words and sides given mean."""
    match item:
        case "place":
            keys = WORDS.get(given["where"]) or FACED[given["where"], given["has_a_face"]]
            if (given["where"], given["landmark"]) == ("in front of", "chair"):
                keys = ("where your feet go",)
            good = _said(answer, given["thing"], given["landmark"], *keys)
        case "between":
            good = _said(answer, given["thing"], given["first"], given["second"], *WORDS["between"])
        case "tell-where":
            good = answer == _seen(given)
        case "own-side":
            mine = f"side by side, your {given['side']} as well"
            good = answer == f"the child’s own {given['side']} {given['part']}: {mine}"
        case "to-one-side":
            good = _said(answer, f"own {given['side']}:", f"your {given['side']} as well")
        case "across-the-middle":
            good = answer.startswith(f"{across(given['side'])} hand on {given['side']} {given['part']}")
        case "set-left-or-right":
            good = answer.startswith(
                f"the {given['thing']} to the {given['side']} of the {given['landmark']}"
            )
        case "name-the-neighbor":
            at = _grid([given["row"]])
            want = at[given["from"]][0] + AWAY[given["side"]][0]
            good = answer == f"the {next(toy for toy, (x, _) in at.items() if x == want)}" and accept == (
                answer[4:],
            )
        case _:
            step = -AWAY[given["start"]][0]
            places = {name: step * k for k, name in enumerate(given["names"])}
            good = answer == "from the left: " + ", ".join(sorted(places, key=places.__getitem__))
    return None if good else f"{given} does not give {answer!r}"
